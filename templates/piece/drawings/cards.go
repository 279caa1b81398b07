package drawings

import (
	"slices"
	"sync"

	"rodsheet/geometry"
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
	pictures, words := galleries(plan, whole), make([]templates.Card, len(plan.Cards))
	lists.Each(len(words), func(i int) { words[i] = wording.Card(plan, plan.Cards[i]) })
	for i, card := range words {
		card.Setup, card.After = pictures[i].setup, pictures[i].after
		stage := plan.Cards[i].Stage
		out[stage] = append(out[stage], card)
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
	sawn := lists.Map(plan.Pieces, func(p piece.Piece) func() sawnSoFar {
		return sync.OnceValue(func() sawnSoFar {
			return sawnSoFar{shop.States(p, plan.Cards, shop.Stretcher), shop.States(p, plan.Cards, shop.Leg)}
		})
	})
	out := make([]gallery, len(plan.Cards))
	lists.Each(len(out), func(i int) {
		c, g := plan.Cards[i], &out[i]
		switch view, ok := benchViews[c.Steps[0].Do]; {
		case c.Steps[0].Do == shop.FitTop:
			g.after = []templates.Picture{whole}
			return
		case ok:
			k := max(0, slices.IndexFunc(plan.Pieces, func(p piece.Piece) bool { return p.Design.Size == c.Steps[0].Parts[0].Size }))
			g.after = []templates.Picture{view(sawn[k]().at(plan.Pieces[k], i))}
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

// sawnSoFar are the parts of one size as they stand after every card.
type sawnSoFar struct{ stretcher, leg []solid.Part }

// at returns what lies on the bench at a card.
func (s sawnSoFar) at(p piece.Piece, card int) bench {
	return bench{p, s.stretcher[card], s.leg[card], s.stretcher[max(0, card-1)], s.leg[max(0, card-1)]}
}

// A bench is what a picture of work away from the saw shows: the parts of one size as
// they are after a card, and before it, each in its own frame.
type bench struct {
	piece.Piece
	stretcher, leg             solid.Part
	stretcherBefore, legBefore solid.Part
}

// benchViews draw what work away from the saw is about, but for the whole piece.
var benchViews = map[shop.Do]func(bench) templates.Picture{
	shop.Mill: bench.blanks, shop.DryRing: bench.ring, shop.DryTrimmedRing: bench.ring, shop.FitBridle: bench.joint,
	shop.GlueLegs: bench.joint, shop.TrimHeads: bench.trimmed, shop.GlueRing: bench.frame, shop.DrillFixings: bench.below, shop.FitPads: padsView,
}

func toneView(v solid.View, parts ...solid.Part) templates.Picture {
	p := templates.Picture{NoScale: true}
	Toned(&p, parts, v)
	return p
}

// hung returns a leg where it stands in its stretcher.
func (b bench) hung(leg solid.Part) solid.Part { return leg.Transform(shop.LegPlace(b.Piece)) }

// blanks shows a stretcher and a leg apart.
func (b bench) blanks() templates.Picture {
	apart := solid.Translate(solid.V(-b.SawnLeg().Length/2, -3*b.SawnLeg().Thickness, 0))
	parts := lists.Flat([]solid.Part{b.stretcher, b.leg.Transform(apart)}, func(q solid.Part) []solid.Part { return gapOf(q, solid.Part{}).close(q) })
	return toneView(fromRingSide(), parts...)
}

// ring shows the stretchers together.
func (b bench) ring() templates.Picture {
	return toneView(kind.AtCorner(), b.Around(b.Place, b.stretcher)...)
}

// jointApart is how far the parts of an open bridle stand apart, in depths of the
// stretcher.
const jointApart = 1.5

// atJoint returns what is seen of a part near the bridle.
func atJoint(p piece.Piece, part solid.Part) solid.Part {
	shown := 4 * p.Frame.Ring.Width
	return part.Cut(solid.Plane{N: solid.V(-1, 0, 0), D: shown - p.Frame.Leg.StretcherSide(0)}).Cut(solid.Plane{N: solid.V(0, 0, -1), D: shown})
}

// jointView shows the bridle open: the leg, which stands in its stretcher, drawn down
// along itself.
func jointView(p piece.Piece, stretcher, leg solid.Part) templates.Picture {
	down := shop.LegPlace(p).X.Mul(-jointApart * p.Frame.Ring.Depth)
	return toneView(fromRingSide(), atJoint(p, stretcher), atJoint(p, leg).Transform(solid.Translate(down)))
}

func (b bench) joint() templates.Picture { return jointView(b.Piece, b.stretcher, b.hung(b.leg)) }

// trimmed shows the bridle closed, and in thin lines what was trimmed off it.
func (b bench) trimmed() templates.Picture {
	stretcher, leg := atJoint(b.Piece, b.stretcher), atJoint(b.Piece, b.hung(b.leg))
	k := Sketch{Picture: toneView(fromRingSide(), stretcher, leg), To: geometry.Identity()}
	taken, _ := solid.Project([]solid.Part{
		without(atJoint(b.Piece, b.stretcherBefore), stretcher), without(atJoint(b.Piece, b.hung(b.legBefore)), leg),
	}, fromRingSide())
	k.Lines(templates.Construction, taken)
	return k.Picture
}

// frame shows the ring on its legs.
func (b bench) frame() templates.Picture {
	return toneView(kind.AtCorner(), b.Around(b.Place, b.stretcher, b.hung(b.leg))...)
}

// padsView shows the frame with its pads, the top still off.
func padsView(b bench) templates.Picture {
	s := sceneOf(b.Piece)
	s.top = nil
	picture := cornerView(b.Piece, s)
	picture.Heading = ""
	return picture
}

// below shows a stretcher from below, as it is drilled.
func (b bench) below() templates.Picture {
	return toneView(solid.Look(solid.V(0.5, -1, -0.6), solid.V(0, 0, 1)), gapOf(b.stretcher, solid.Part{}).close(b.stretcher)...)
}
