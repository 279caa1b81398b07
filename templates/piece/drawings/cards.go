package drawings

import (
	"slices"
	"sync"

	"rodsheet/geometry/lists"
	"rodsheet/geometry/solid"
	"rodsheet/templates"
	"rodsheet/templates/piece"
	"rodsheet/templates/piece/kind"
	"rodsheet/templates/piece/shop"
	"rodsheet/templates/piece/wording"
)

// cardsOf returns the cards of every stage with their pictures; whole is that of the
// piece put together.
func cardsOf(plan shop.Plan, whole templates.Picture) map[shop.Stage][]templates.Card {
	out := map[shop.Stage][]templates.Card{}
	pictures := galleries(plan, whole)
	for i, c := range plan.Cards {
		card := wording.Card(plan, c)
		card.Setup, card.After = pictures[i].setup, pictures[i].after
		out[c.Stage] = append(out[c.Stage], card)
	}
	return out
}

// A gallery is the pictures of one card, and the kinds of part that are seen on them
// as they are afterwards.
type gallery struct {
	setup, after []templates.Picture
	parts        []shop.Part
}

// galleries returns the pictures of every card: each step as it is set up for its
// first size, with what is turned on the way, and every kind of part once the card is
// done, of the size that comes to it first.
func galleries(plan shop.Plan, whole templates.Picture) []gallery {
	adds := make([][]func(*gallery), len(plan.Cards))
	shown := map[[2]int]bool{} // card and step
	for _, part := range []shop.Part{shop.Stretcher, shop.Leg, shop.StretcherTest} {
		for _, p := range plan.Pieces {
			for _, works := range byCard(shop.Works(p, plan.Cards, part)) {
				i := slices.IndexFunc(works, func(w shop.Work) bool { return w.Lie == 0 && !shown[[2]int{w.Card, w.Step}] })
				if i >= 0 {
					c := works[i].Card
					shown[[2]int{c, works[i].Step}] = true
					adds[c] = append(adds[c], func(g *gallery) { g.add(p, plan.Cards[c], works) })
				}
			}
		}
	}
	whole.Heading = ""
	views := map[bench]func() templates.Picture{wholePiece: func() templates.Picture { return whole }}
	for of, view := range benchViews {
		views[bench(of)] = sync.OnceValue(func() templates.Picture { return view(plan.Pieces[0]) })
	}
	out := make([]gallery, len(plan.Cards))
	lists.Each(len(out), func(i int) {
		c, g := plan.Cards[i], &out[i]
		if of, ok := benchPictures[c.Steps[0].Do]; ok {
			g.after = []templates.Picture{views[of]()}
			return
		}
		for _, add := range adds[i] {
			add(g)
		}
		for _, s := range c.Steps {
			if s.Do == shop.SawBlocks {
				g.after = append(g.after, blockPictures(plan, s.Parts)...)
			}
		}
	})
	return out
}

// byCard parts the works of one part by their cards.
func byCard(all func(func(shop.Work) bool)) [][]shop.Work {
	var out [][]shop.Work
	for w := range all {
		if n := len(out); n == 0 || out[n-1][0].Card != w.Card {
			out = append(out, nil)
		}
		out[len(out)-1] = append(out[len(out)-1], w)
	}
	return out
}

// add adds what one part goes through on a card.
func (g *gallery) add(p piece.Piece, c shop.Card, works []shop.Work) {
	for i, w := range works {
		if g.knows(c, w.Step) {
			continue
		}
		if w.Lie == 0 && !c.Hand {
			g.setup = append(g.setup, newSetUp(p, c.Steps[w.Step], w).pictures()...)
		}
		if i > 0 && len(g.setup) > 0 {
			if t, ok := turned(works[i-1], w.Turn); ok {
				g.setup = append(g.setup, t)
			}
		}
	}
	part := c.Steps[works[0].Step].Parts[0].Part
	before, after := works[0].Before, works[len(works)-1].After
	if (part != shop.TestPiece || len(g.after) == 0) && !slices.Contains(g.parts, part) && len(without(before, after).Pieces) > 0 {
		g.parts = append(g.parts, part)
		g.after = append(g.after, afterwards(before, after))
	}
}

// knows reports whether a step differs from an earlier one of its card in nothing that
// is drawn but a figure: the stop, or the filler strip on end.
func (g *gallery) knows(c shop.Card, step int) bool {
	s := c.Steps[step]
	return len(g.setup) > 0 && slices.ContainsFunc(c.Steps[:step], func(q shop.Step) bool {
		alike := q.Parts[0].Part == s.Parts[0].Part || s.Parts[0].Part == shop.TestPiece
		return q.Do == s.Do && alike && (c.How == shop.OnEnd || q.Do == shop.Crosscut)
	})
}

// pictures returns the set-up as it is seen.
func (s setUp) pictures() []templates.Picture {
	switch s.cut().How {
	case shop.OnGauge:
		return []templates.Picture{s.onGauge()}
	case shop.OnEnd:
		return s.onEnd()
	case shop.OnTaper:
		return []templates.Picture{s.onTaper()}
	}
	return nil
}

// A bench is what a picture of work away from the saw shows.
type bench uint8

const (
	squaredBlanks bench = iota
	ringAlone
	openJoint
	frameAlone
	stretcherBelow
	wholePiece
)

// benchPictures show what work away from the saw is about.
var benchPictures = map[shop.Do]bench{
	shop.Mill:           squaredBlanks,
	shop.DryRing:        ringAlone,
	shop.DryTrimmedRing: ringAlone,
	shop.FitBridle:      openJoint,
	shop.GlueLegs:       openJoint,
	shop.GlueRing:       frameAlone,
	shop.DrillFixings:   stretcherBelow,
	shop.FitPads:        wholePiece,
	shop.FitTop:         wholePiece,
}

// benchViews draw them, but for the whole piece.
var benchViews = [...]func(piece.Piece) templates.Picture{
	squaredBlanks: blanksView, ringAlone: ringView, openJoint: jointView, frameAlone: frameView,
	stretcherBelow: belowView,
}

func toneView(v solid.View, parts ...solid.Part) templates.Picture {
	p := templates.Picture{NoScale: true}
	Toned(&p, parts, v)
	return p
}

// blanksView shows a stretcher and a leg squared.
func blanksView(p piece.Piece) templates.Picture {
	stretcher, leg := shop.Blank(p, shop.Stretcher), shop.Blank(p, shop.Leg)
	apart := solid.Translate(solid.V(-p.SawnLeg().Length/2, -3*p.SawnLeg().Thickness, 0))
	parts := lists.Flat([]solid.Part{stretcher, leg.Transform(apart)}, func(q solid.Part) []solid.Part { return gapOf(q, solid.Part{}).close(q) })
	return toneView(fromRingSide(), parts...)
}

// ringView shows the stretchers together.
func ringView(p piece.Piece) templates.Picture {
	return toneView(kind.AtCorner(), p.Around(p.Place, p.Stretcher())...)
}

// jointApart is how far the parts of an open bridle stand apart, in depths of the
// stretcher.
const jointApart = 1.5

// jointView shows the bridle open: the leg drawn down from its stretcher, along itself.
func jointView(p piece.Piece) templates.Picture {
	const shown = 4 // widths of the stretcher that are seen of either part
	w := p.Frame.Ring.Width
	near := solid.Plane{N: solid.V(-1, 0, 0), D: -(p.Frame.Leg.StretcherSide(0) - shown*w)}
	low := solid.Plane{N: solid.V(0, 0, -1), D: shown * w}
	down := shop.LegPlace(p).X.Mul(-jointApart * p.Frame.Ring.Depth)
	return toneView(fromRingSide(), p.Stretcher().Cut(near), p.Leg().Cut(low).Transform(solid.Translate(down)))
}

// frameView shows the ring on its legs.
func frameView(p piece.Piece) templates.Picture {
	return toneView(kind.AtCorner(), p.Around(p.Place, p.Stretcher(), p.Leg())...)
}

// belowView shows a stretcher from below, as it is drilled.
func belowView(p piece.Piece) templates.Picture {
	return toneView(solid.Look(solid.V(0.5, -1, -0.6), solid.V(0, 0, 1)), gapOf(p.Stretcher(), solid.Part{}).close(p.Stretcher())...)
}
