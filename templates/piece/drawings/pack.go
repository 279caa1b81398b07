// Package drawings draws the templates and pictures of a piece, and puts them
// and all lists together as the pack that is printed.
package drawings

import (
	"rodsheet/geometry/measure"
	"rodsheet/templates"
	"rodsheet/templates/piece"
	"rodsheet/templates/piece/checks"
	"rodsheet/templates/piece/kind"
	"rodsheet/templates/piece/shop"
	"rodsheet/templates/piece/wording"
	plain "rodsheet/templates/wording"
)

// Pack returns the pack in its envelopes, in the order in which they are needed.
//
// The error is a *measure.BoundError. There is none for a Piece that Work has
// returned without one.
func Pack(f checks.Findings, o kind.Options, s templates.Setting) (templates.Job, error) {
	pieces := f.Pieces()
	if len(pieces) == 0 {
		return templates.Job{}, nil
	}
	if o.For == 0 {
		o.For = kind.Buying | kind.Bench
	}
	s.Unit = pieces[0].Design.Unit
	plan := shop.NewPlan(pieces)
	var corners []templates.Picture
	for _, p := range pieces {
		corners = append(corners, cornerView(p, sceneOf(p)))
	}
	k := packer{o, wording.Report(f), pieces, plan, corners, cardsOf(plan, corners[0]), s}
	out := templates.Job{Title: pieces[0].Design.Title}
	for _, e := range envelopes() {
		if e.of&o.For == 0 {
			continue
		}
		section, err := e.fill(k)
		if err != nil {
			return templates.Job{}, err
		}
		if section.Empty() {
			continue
		}
		section.ID, section.Heading, section.Milled = e.id, say(e.heading), e.milled
		out.Sections = append(out.Sections, section)
	}
	return out, nil
}

// A packer fills envelopes.
type packer struct {
	kind.Options
	report kind.Report
	pieces []piece.Piece
	plan   shop.Plan
	// corners are the views of the pieces at a corner.
	corners []templates.Picture
	cards   map[shop.Stage][]templates.Card
	templates.Setting
}

// An envelope is one section of the pack.
type envelope struct {
	id      measure.ID
	heading plain.Text
	of      kind.Purposes
	milled  bool // it hangs on the sizes as milled
	fill    func(packer) (templates.Section, error)
}

// envelopes returns all of them, in their order.
func envelopes() []envelope {
	panels := func(of func(packer) []templates.Panel) func(packer) (templates.Section, error) {
		return func(k packer) (templates.Section, error) { return templates.Section{Panels: of(k)}, nil }
	}
	return []envelope{
		{"cover", coverHeading, kind.Buying | kind.Bench, false, func(k packer) (templates.Section, error) { return coverJob(k.pieces, k.corners, k.report), nil }},
		{"names", namesHeading, kind.Bench, false, func(k packer) (templates.Section, error) { return namesJob(k.pieces[0]), nil }},
		{"wood", woodHeading, kind.Buying, false, packer.wood},
		{"stock", stockHeading, kind.Bench, true, stage(shop.StockStage)},
		{"laps", lapsHeading, kind.Bench, true, stage(shop.LapStage)},
		{"bridles", bridlesHeading, kind.Bench, true, stage(shop.BridleStage)},
		{"tapers", tapersHeading, kind.Bench, true, stage(shop.TaperStage)},
		{"top", topHeading, kind.Bench, true, stage(shop.TopStage)},
		{"glue-up", glueHeading, kind.Bench, true, stage(shop.GlueStage)},
		{"finish", finishHeading, kind.Bench, false, stage(shop.FinishStage)},
		{"record", checksHeading, kind.Record, true, panels(func(k packer) []templates.Panel { return k.report.CheckPanels() })},
	}
}

// wood returns what is bought, and the boards as they are sawn.
func (k packer) wood() (templates.Section, error) {
	return templates.Section{Pictures: BoardPictures(k.Unit, k.plan.Cuts.Boards), Panels: wording.CutList(k.plan)}, nil
}

// stage returns what fills the envelope of a part of the work: its cards, and
// then the templates of every kind that they call for.
func stage(at shop.Stage) func(packer) (templates.Section, error) {
	return func(k packer) (templates.Section, error) {
		out := jigs(k.pieces, at)
		out.Cards = k.cards[at]
		angles, err := anglesJob(k.pieces, at, k.Setting)
		if err != nil {
			return out, err
		}
		out.Append(angles)
		for _, each := range stageKinds() {
			if each.at != at || each.planOnly && !k.Plan || each.fullOnly && !k.Full {
				continue
			}
			job, err := each.draw.shared(k.pieces, k.Setting)
			if err != nil {
				return out, err
			}
			out.Append(job)
		}
		switch at {
		case shop.StockStage:
			if !doubtsOnCover(k.pieces) {
				out.Panels = append(out.Panels, k.report.DoubtPanels()...)
			}
		case shop.GlueStage:
			out.Panels = append(out.Panels, wording.GlueUp(k.plan, k.Full)...)
		case shop.TopStage:
			out.Panels = append(out.Panels, wording.Fixings(k.plan)...)
		}
		return out, nil
	}
}

// A stageKind is a kind of template and the part of the work that it serves.
type stageKind struct {
	at       shop.Stage
	draw     drawer
	planOnly bool // where the plan of the ring is asked for
	fullOnly bool // straight lines between figures, which a rule does as well
}

// stageKinds returns all of them, in the order in which they are printed.
func stageKinds() []stageKind {
	return []stageKind{
		{at: shop.LapStage, draw: lapJob},
		{at: shop.BridleStage, draw: bridleJob},
		{at: shop.BridleStage, draw: blocksJob(shop.FillerStrip), fullOnly: true},
		{at: shop.TaperStage, draw: legJob},
		{at: shop.TopStage, draw: topJob},
		{at: shop.GlueStage, draw: blocksJob(shop.LegCaul, shop.EndCaul, shop.FoldingWedge), fullOnly: true},
		{at: shop.GlueStage, draw: planJob, planOnly: true},
		{at: shop.GlueStage, draw: padJob, fullOnly: true},
	}
}
