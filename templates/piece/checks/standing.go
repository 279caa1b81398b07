package checks

import (
	"math"

	"rodsheet/geometry/joint"
	"rodsheet/geometry/measure"
	"rodsheet/templates/piece"
	"rodsheet/templates/piece/design"
	"rodsheet/templates/piece/kind"
)

// askStanding asks what load at the rim tips the piece.
func askStanding(m model) []Check {
	if m.Design.Top.Kind == design.NoTop {
		return nil
	}
	return []Check{askTipping("tipping-load", m.Standing(m.frameMass()))}
}

// askLooseTop asks what load tips a pane off what it lies on.
func askLooseTop(p piece.Piece) (Check, bool) {
	if p.Design.Top.Kind != design.GlassTop {
		return Check{}, false
	}
	if bonded(p) {
		return bondedTop(p), true
	}
	return askTipping("loose-top-load", p.LooseTop()), true
}

// askTipping asks what load at the rim tips a body.
func askTipping(figure measure.ID, s piece.Stand) Check {
	if s.Falls() {
		return finding(kind.Fail, "falls")
	}
	w := s.Weakest(0)
	if w.NeverTips() {
		return finding(kind.Pass, "never-tips")
	}
	return limited(figure, measure.Mass(w.TippingLoad(0)), measure.IsAtLeast, measure.Mass(design.HandLoad), kind.Warn)
}

// askFeet says whether the feet stand inside the rim, and whether they rock: three
// never do. Its remark says by how much, and how many there are.
func askFeet(p piece.Piece) (Check, bool) {
	c := Check{Found: remark("rock")}
	past := 0.0
	if p.Design.Top.Kind != design.NoTop {
		past = math.Inf(-1)
		for i := range p.Frame.Ring.Sides {
			past = math.Max(past, -p.TopShape().Inside(p.FootPoint(i)))
		}
		c.Found.ID = "inside-and-rock"
		if past > piece.Slip {
			c.Found.ID = "outside-and-rock"
		}
	}
	if p.Frame.Ring.Sides == 3 {
		c.Found.ID += "-never"
	}
	c.Found.Figures = []measure.Quantity{measure.Length(math.Abs(past)), measure.Number(float64(p.Frame.Ring.Sides))}
	return c, true
}

// stands reports whether a body bears a modest load.
func stands(s piece.Stand) bool { return askTipping("", s).Grade == kind.Pass }

// fixStanding draws in the rim or spreads the feet.
func fixStanding(m model, _ Check, _ func(piece.Piece) bool) []change {
	frame := m.frameMass() // a top of another size leaves it as it is
	return append(
		resizeTop(less)(m.Piece, func(w piece.Piece) bool { return stands(w.Standing(frame)) }),
		search(m.Piece, leanKeys[m.Design.Legs.Lean], more, func(w piece.Piece) bool {
			return stands(w.Standing(w.FrameMass(w.Stretcher(), w.Leg())))
		})...)
}

func fixLooseTop(p piece.Piece, holds func(piece.Piece) bool) []change {
	return append(resizeTop(less)(p, holds), movePads(more)(p, holds)...)
}

// standingGroup is the figures of how the piece stands.
func (m model) standingGroup() Group {
	g := Group{ID: "standing"}
	s := m.Standing(m.frameMass())
	if s.Falls() {
		g.note("falls")
		return g
	}
	w := s.Weakest(0)
	g.add("standing.line", measure.Length(w.TippingLine()))
	if m.Design.Top.Kind == design.NoTop {
		return g
	}
	g.add("standing.rim", measure.Length(w.Rim))
	g.tipping("standing", s, edgeInset(m.Piece))
	if loose := m.Piece.LooseTop(); m.Design.Top.Kind == design.GlassTop && !loose.Falls() {
		g.add("loose-top.line", measure.Length(loose.Weakest(0).TippingLine()))
		g.tipping("loose-top", loose, edgeInset(m.Piece))
	}
	return g
}

// edgeInset returns how far in from the rim a piece is pressed: as the test of
// ISO 7172 does it, or where inches are set the 2 in next to that.
func edgeInset(p piece.Piece) float64 { return p.Design.Unit.Round(joint.EdgeInset, 2) }

// tipping adds what tips a body: at the rim, and pressed so many mm in from it,
// each over the line where the least does it. Figures only; what a piece must bear
// is not said.
func (g *Group) tipping(body measure.ID, s piece.Stand, in float64) {
	rim, inset := s.Weakest(0), s.Weakest(in)
	within := measure.Length(in)
	if rim.NeverTips() {
		g.note(body + ".never-tips")
		return
	}
	g.add(body+".load", measure.Mass(rim.TippingLoad(0)))
	if math.IsInf(inset.TippingLoad(in), 1) {
		g.note(body+".inset-never-tips", within)
		return
	}
	g.add(body+".inset-load", measure.Mass(inset.TippingLoad(in)), within)
	g.add(body+".inset-force", measure.Force(inset.TippingForce(in)))
	if math.Abs(inset.TippingLine()-rim.TippingLine()) > piece.Slip || math.Abs(inset.Rim-rim.Rim) > piece.Slip {
		g.add(body+".inset-line", measure.Length(inset.TippingLine()))
		g.add(body+".inset-rim", measure.Length(inset.Rim))
	}
}
