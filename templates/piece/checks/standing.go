package checks

import (
	"math"
	"slices"

	"rodsheet/geometry"
	"rodsheet/geometry/joint"
	"rodsheet/geometry/measure"
	"rodsheet/templates/piece"
	"rodsheet/templates/piece/design"
	"rodsheet/templates/piece/kind"
)

// A stand is a body on as many supports as the ring has sides, seen about its
// own centre of gravity: one Standing for each line it may tip over.
type stand []joint.Standing

// standOn returns a body of so many kg on supports, one a side, that carries the
// top. Its centre of gravity is the centre of the ring moved by off. A piece
// without a top has no rim.
func standOn(p piece.Piece, support func(i int) geometry.Point, mass float64, off geometry.Point) stand {
	n := p.Frame.Ring.Sides
	top := p.TopShape()
	out := make(stand, n)
	for i := range out {
		a, b := support(i), support(i+1)
		square := a.Lerp(b, 0.5).Unit() // to the line through both, outward
		line, shift, rim := a.Dot(square), off.Dot(square), 0.0
		if p.Design.Top.Kind != design.NoTop {
			rim = top.Support(square)
		}
		out[i] = joint.Standing{
			Feet:       n,
			FootRadius: (line - shift) / math.Cos(math.Pi/float64(n)),
			Rim:        rim - shift,
			Mass:       mass,
		}
	}
	return out
}

// weakest returns the line over which the least load inset mm in from the rim tips
// the body; where none does, the one that the rim stands out from most.
func (s stand) weakest(inset float64) joint.Standing {
	weak := s[0]
	for _, t := range s[1:] {
		load, least := t.TippingLoad(inset), weak.TippingLoad(inset)
		if load < least || load == least && t.Overhang() > weak.Overhang() {
			weak = t
		}
	}
	return weak
}

// falls reports whether the body tips with no load at all: its centre of gravity
// lies outside its supports.
func (s stand) falls() bool {
	return slices.ContainsFunc(s, func(t joint.Standing) bool { return t.FootRadius <= 0 })
}

// whole returns the piece on its feet, its frame weighing so many kg.
func whole(p piece.Piece, frame float64) stand {
	mass := frame + p.TopMass()
	return standOn(p, p.FootPoint, mass, topCentre(p).Mul(p.TopMass()/mass))
}

// looseTop returns the top on its own on the centres of its pads or, without
// pads, on the outside corners of the ring.
func looseTop(p piece.Piece) stand {
	support := func(i int) geometry.Point { return padPoint(p, i) }
	return standOn(p, support, p.TopMass(), topCentre(p))
}

// padPoint returns the centre of pad i in plan, or that corner of the ring.
func padPoint(p piece.Piece, i int) geometry.Point {
	r := p.Frame.Ring
	if p.Design.Top.PadHeight() == 0 {
		corners := r.Polygon().Offset(r.Width).Corners()
		return corners[(i+1)%len(corners)] // at the leg end of stretcher i
	}
	return r.Place(i, 0).Apply(p.PadCentre())
}

// topCentre returns the centre of gravity of the top in plan. Only a free
// outline has it anywhere but over the centre of the ring.
func topCentre(p piece.Piece) geometry.Point {
	if p.Design.Top.Kind == design.NoTop || p.Design.Top.Outline != design.FreeOutline {
		return geometry.Point{}
	}
	return p.TopShape().Centroid()
}

// modestLoad in kg is what a piece should bear at its rim: a hand that is
// leaned on (common practice, no source; no standard is meant).
const modestLoad = 10.0

// askStanding asks what load at the rim tips the piece.
func askStanding(m model) []Check {
	if m.Design.Top.Kind == design.NoTop {
		return nil
	}
	return []Check{askTipping("tipping-load", whole(m.Piece, m.frameMass()))}
}

// askLooseTop asks what load tips a pane off what it lies on.
func askLooseTop(p piece.Piece) (Check, bool) {
	if p.Design.Top.Kind != design.GlassTop {
		return Check{}, false
	}
	if bonded(p) {
		return bondedTop(p), true
	}
	return askTipping("loose-top-load", looseTop(p)), true
}

// askTipping asks what load at the rim tips a body.
func askTipping(figure measure.ID, s stand) Check {
	if s.falls() {
		return finding(kind.Fail, "falls")
	}
	w := s.weakest(0)
	if w.NeverTips() {
		return finding(kind.Pass, "never-tips")
	}
	return limited(figure, measure.Mass(w.TippingLoad(0)), measure.IsAtLeast, measure.Mass(modestLoad), kind.Warn)
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
func stands(s stand) bool { return askTipping("", s).Grade == kind.Pass }

// fixStanding draws in the rim or spreads the feet.
func fixStanding(m model, _ Check, _ func(piece.Piece) bool) []change {
	frame := m.frameMass() // a top of another size leaves it as it is
	return append(
		resizeTop(less)(m.Piece, func(w piece.Piece) bool { return stands(whole(w, frame)) }),
		search(m.Piece, leanKeys[m.Design.Legs.Lean], more, func(w piece.Piece) bool {
			return stands(whole(w, w.FrameMass(w.Stretcher(), w.Leg())))
		})...)
}

func fixLooseTop(p piece.Piece, holds func(piece.Piece) bool) []change {
	return append(resizeTop(less)(p, holds), movePads(more)(p, holds)...)
}

// standingGroup is the figures of how the piece stands.
func (m model) standingGroup() Group {
	g := Group{ID: "standing"}
	s := whole(m.Piece, m.frameMass())
	if s.falls() {
		g.note("falls")
		return g
	}
	w := s.weakest(0)
	g.add("standing.line", measure.Length(w.TippingLine()))
	if m.Design.Top.Kind == design.NoTop {
		return g
	}
	g.add("standing.rim", measure.Length(w.Rim))
	g.tipping("standing", s, edgeInset(m.Piece))
	if loose := looseTop(m.Piece); m.Design.Top.Kind == design.GlassTop && !loose.falls() {
		g.add("loose-top.line", measure.Length(loose.weakest(0).TippingLine()))
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
func (g *Group) tipping(body measure.ID, s stand, in float64) {
	rim, inset := s.weakest(0), s.weakest(in)
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
