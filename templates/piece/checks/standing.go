package checks

import (
	"fmt"
	"math"

	"rodsheet/geometry"
	"rodsheet/geometry/joint"
	"rodsheet/geometry/measure"
	"rodsheet/templates"
	"rodsheet/templates/piece"
	"rodsheet/templates/piece/design"
)

// A stand is a body on as many supports as the ring has sides, seen about its
// own centre of gravity: one geometry.Standing for each line it may tip over.
type stand []joint.Standing

// standOn returns a body of so many kg on supports, one a side, that carries the
// top. Its centre of gravity is the centre of the ring moved by off.
func standOn(p piece.Piece, support func(i int) geometry.Point, mass float64, off geometry.Point) stand {
	n := p.Frame.Ring.Sides
	out := make(stand, n)
	for i := range out {
		a, b := support(i), support(i+1)
		square := a.Lerp(b, 0.5).Unit() // to the line through both, outward
		line, rim := a.Dot(square), rimToward(p, square)
		shift := off.Dot(square)
		out[i] = joint.Standing{
			Feet:       n,
			FootRadius: (line - shift) / math.Cos(math.Pi/float64(n)),
			Rim:        rim - shift,
			Mass:       mass,
		}
	}
	return out
}

// rimToward returns how far the edge of the top stands from the centre of the
// ring in a direction in plan, counted along it.
func rimToward(p piece.Piece, out geometry.Point) float64 {
	if p.Design.Top.Outline == design.RoundTop {
		return p.TopRadius()
	}
	most := 0.0
	for _, c := range p.TopCorners() {
		most = math.Max(most, c.Dot(out))
	}
	return most
}

// weakest returns the line over which the least load at the rim tips it.
func (s stand) weakest() joint.Standing {
	least := s[0]
	for _, t := range s[1:] {
		if t.TippingLoad(0) < least.TippingLoad(0) {
			least = t
		}
	}
	return least
}

// falls reports whether the body tips with no load at all: its centre of gravity
// lies outside its supports.
func (s stand) falls() bool {
	for _, t := range s {
		if t.FootRadius <= 0 {
			return true
		}
	}
	return false
}

// whole returns the piece on its feet, its frame weighing so many kg. Where it
// has no top it has no rim.
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
	var sum geometry.Point
	corners := p.TopCorners()
	for i, a := range corners {
		b := corners[(i+1)%len(corners)]
		sum = sum.Add(a.Add(b).Mul(a.Cross(b) / 6)) // a triangle with the centre
	}
	return sum.Mul(1 / geometry.Area(corners))
}

// modestLoad in kg is what a piece should bear at its rim: a hand that is
// leaned on (common practice, no source; no standard is meant).
const modestLoad = 10.0

// askStanding asks where the feet stand and how the piece stands on them.
func askStanding(m model) []Check {
	p := m.Piece
	out := []Check{askFeet(p)}
	if p.Design.Top.Kind == design.NoTop {
		return out
	}
	out = append(out, askTipping("standing", "the piece", whole(p, m.FrameMass(m.parts[0], m.parts[1]))))
	if p.Design.Top.Kind == design.GlassTop {
		loose := askTipping("loose top", "the loose top", looseTop(p))
		if loose.Grade == Warn {
			loose.Words += " Stick it to its supports, or set them further out."
		}
		out = append(out, loose)
	}
	return out
}

// askTipping asks what load at the rim tips a body.
func askTipping(name, what string, s stand) Check {
	if s.falls() {
		return Check{Name: name, Grade: Fail, Words: "The weight of " + what + " lies outside what it stands on: it falls by itself."}
	}
	w := s.weakest()
	if w.NeverTips() {
		return Check{Name: name, Words: "No load on the top tips " + what + ": its rim stands nowhere outside what it stands on."}
	}
	load := measure.Mass(w.TippingLoad(0))
	return limited(name, "load at the rim that tips "+what, load, atLeast, measure.Mass(modestLoad), Warn).with(
		"A hand leaned on the rim does not tip "+what+".",
		"A hand leaned on the rim may tip "+what+".")
}

// askFeet says whether the feet stand inside the rim, and whether they rock.
func askFeet(p piece.Piece) Check {
	rock := "Three legs never rock."
	if p.Frame.Ring.Sides > 3 {
		rock = fmt.Sprintf("On a floor that is not flat %d legs rock: level the feet on a flat bench.", p.Frame.Ring.Sides)
	}
	c := Check{Name: "feet"}
	if p.Design.Top.Kind == design.NoTop {
		c.Words = rock
		return c
	}
	past := -math.MaxFloat64
	for i := range p.Frame.Ring.Sides {
		past = math.Max(past, -insideTop(p, p.FootPoint(i)))
	}
	where := fmt.Sprintf("The feet stand %s inside the rim. ", p.MM(-past))
	if past > piece.Slip {
		where = fmt.Sprintf("The feet stand %s outside the rim, where a shoe may catch on them. ", p.MM(past))
	}
	c.Words = where + rock
	return c
}

// fixStanding spreads the feet or draws in the rim.
func fixStanding(m model, c Check) []change {
	stands := func(s stand) bool { return askTipping("", "", s).Grade == Pass }
	if c.Name == "loose top" {
		holds := func(w piece.Piece) bool { return stands(looseTop(w)) }
		return append(smallerTop(m.Piece, holds), outerPads(m.Piece, holds)...)
	}
	frame := m.FrameMass(m.parts[0], m.parts[1]) // a top of another size leaves it as it is
	return append(
		smallerTop(m.Piece, func(w piece.Piece) bool { return stands(whole(w, frame)) }),
		spreadFeet(m.Piece, func(w piece.Piece) bool { return stands(whole(w, w.FrameMass(w.Stretcher(), w.Leg()))) })...)
}

// spreadFeet turns whichever decision fixes the splay.
func spreadFeet(p piece.Piece, holds func(piece.Piece) bool) []change {
	k := parameter{now: p.Design.Legs.Given, set: func(d *design.Design, v float64) { d.Legs.Given = v }}
	switch p.Design.Legs.Lean {
	case design.BySplay:
		k.step = fineAngle
		k.words = func(v float64) string { return "splay the legs by " + p.Say(measure.Angle(v)) }
	case design.ByFootCircle:
		k.step = coarseGrid(p.Design.Unit)
		k.words = func(v float64) string { return "set the feet on a circle of " + p.MM(v) }
	default:
		k.step = coarseGrid(p.Design.Unit)
		k.words = func(v float64) string { return "set the feet " + p.MM(v) + " apart" }
	}
	return search(p, k, holds)
}

// standingGroup is the figures of how the piece stands.
func (m model) standingGroup() Group {
	p := m.Piece
	g := Group{Heading: "Standing"}
	s := whole(p, m.FrameMass(m.parts[0], m.parts[1]))
	if s.falls() {
		g.Text = []string{"Its weight lies outside its feet: it falls by itself."}
		return g
	}
	w := s.weakest()
	g.add("tipping line from the centre of gravity", measure.Length(w.TippingLine()))
	if p.Design.Top.Kind == design.NoTop {
		return g
	}
	g.add("rim from the centre of gravity, square to it", measure.Length(w.Rim))
	g.tipping(w, "the piece", p.MM(joint.EdgeInset))
	if p.Design.Top.Kind == design.GlassTop && !looseTop(p).falls() {
		t := looseTop(p).weakest()
		g.add("loose top: line through its supports, from its centre", measure.Length(t.TippingLine()))
		g.tipping(t, "the loose top", p.MM(joint.EdgeInset))
	}
	return g
}

// tipping adds what tips a body: at the rim, and pressed 50 mm in as the test
// of ISO 7172 does. Figures only; what a piece must bear is not said.
func (g *Group) tipping(s joint.Standing, what, inset string) {
	if s.NeverTips() {
		g.Text = append(g.Text, "No load on the top tips "+what+".")
		return
	}
	g.add("load at the rim that tips "+what, measure.Mass(s.TippingLoad(0)))
	if math.IsInf(s.TippingLoad(joint.EdgeInset), 1) {
		g.Text = append(g.Text, "No load "+inset+" inside the rim tips "+what+".")
		return
	}
	g.add("load "+inset+" inside the rim that tips "+what, measure.Mass(s.TippingLoad(joint.EdgeInset)))
	g.add("the same as a force", measure.Force(s.TippingForce(joint.EdgeInset)))
}

// add appends a figure.
func (g *Group) add(name string, value measure.Quantity) {
	g.Figures = append(g.Figures, templates.Figure{Name: name, Value: value})
}
