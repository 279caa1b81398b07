// Package drawings draws the templates and pictures of a piece, and puts them
// and all lists together as the pack that is printed.
package drawings

import (
	"cmp"
	"slices"

	"rodsheet/geometry/lists"
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
	s.Unit, s.Proved = pieces[0].Design.Unit, true
	plan, report := shop.NewPlan(pieces), wording.Report(f)
	corners, rows := make([]templates.Picture, len(pieces)), make([][][2]string, len(pieces))
	lists.Each(len(pieces), func(i int) {
		corners[i], rows[i] = cornerView(pieces[i], sceneOf(pieces[i])), sizeRows(pieces[i])
	})
	k := packer{o, pieces, plan, report.DoubtPanels(), cardsOf(plan, corners[0]), s}
	var onCover []templates.Panel
	if len(pieces) == 1 {
		onCover, k.doubts = k.doubts, nil
	}
	all := []Envelope{
		Cover(plan.Designs, corners, rows, onCover),
		{"names", namesHeading, kind.Bench, false, func() (templates.Section, error) { return namesJob(pieces[0]), nil }},
		Wood(plan),
	}
	ends := plainEndsHeading
	if slices.ContainsFunc(pieces, func(p piece.Piece) bool { return p.Taper != nil }) {
		ends = tapersHeading
	}
	for _, e := range []struct {
		id      measure.ID
		heading plain.Text
		at      shop.Stage
	}{
		{"stock", stockHeading, shop.StockStage}, {"laps", lapsHeading, shop.LapStage}, {"bridles", bridlesHeading, shop.BridleStage},
		{"tapers", ends, shop.TaperStage}, {"top", topHeading, shop.TopStage}, {"glue-up", glueHeading, shop.GlueStage},
		{"finish", finishHeading, shop.FinishStage},
	} {
		fill := func() (templates.Section, error) { return k.stage(e.at) }
		all = append(all, Envelope{e.id, e.heading, kind.Bench, e.at != shop.FinishStage, fill})
	}
	return Packed(plan.Designs[0].Title, o, append(all, Record(report)))
}

// A packer fills envelopes.
type packer struct {
	kind.Options
	pieces []piece.Piece
	plan   shop.Plan
	// doubts go with the stock where the cover has no room for them, as pictures of several
	// sizes leave none: so they are said before the first cut.
	doubts []templates.Panel
	cards  map[shop.Stage][]templates.Card
	templates.Setting
}

// An Envelope is one section of a pack.
type Envelope struct {
	ID      measure.ID
	Heading plain.Text
	For     kind.Purposes
	Milled  bool // it hangs on the sizes as milled
	Fill    func() (templates.Section, error)
}

// Packed returns those envelopes that are asked for and hold something. They are filled
// several at a time.
func Packed(title string, o kind.Options, all []Envelope) (templates.Job, error) {
	asked := lists.Where(all, func(e Envelope) bool { return e.For&cmp.Or(o.For, kind.Buying|kind.Bench) != 0 })
	filled, errs := make([]templates.Section, len(asked)), make([]error, len(asked))
	lists.Each(len(asked), func(i int) {
		e := asked[i]
		filled[i], errs[i] = e.Fill()
		filled[i].ID, filled[i].Heading, filled[i].Milled = e.ID, say(e.Heading), e.Milled
	})
	if err := cmp.Or(errs...); err != nil {
		return templates.Job{}, err
	}
	return templates.Job{Title: title, Sections: lists.Where(filled, func(s templates.Section) bool { return !s.Empty() })}, nil
}

// Wood is what is bought, and the boards as they are sawn.
func Wood(plan shop.Plan) Envelope {
	return Envelope{"wood", woodHeading, kind.Buying, false, func() (templates.Section, error) {
		return templates.Section{Pictures: boardPictures(plan.Designs[0].Unit, plan.Cuts.Boards), Panels: wording.CutList(plan)}, nil
	}}
}

// Record is every figure and check.
func Record(r kind.Report) Envelope {
	return Envelope{"record", checksHeading, kind.Record, true, func() (templates.Section, error) {
		return templates.Section{Panels: r.CheckPanels()}, nil
	}}
}

// stage returns what fills the envelope of a part of the work: its cards, and
// then the templates of every kind that they call for.
func (k packer) stage(at shop.Stage) (templates.Section, error) {
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
		out.Panels = append(out.Panels, k.doubts...)
	case shop.GlueStage:
		out.Panels = append(out.Panels, wording.GlueUp(k.plan, k.Full)...)
	case shop.TopStage:
		out.Panels = append(out.Panels, wording.Fixings(k.plan)...)
	}
	return out, nil
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
		{at: shop.TopStage, draw: fixingsJob},
		{at: shop.GlueStage, draw: blocksJob(shop.LegCaul, shop.EndCaul, shop.FoldingWedge), fullOnly: true},
		{at: shop.GlueStage, draw: planJob, planOnly: true},
		{at: shop.GlueStage, draw: padJob, fullOnly: true},
	}
}
