package piece

import (
	"math"
	"slices"

	"rodsheet/geometry"
	"rodsheet/geometry/joint"
	"rodsheet/templates/piece/design"
)

// A Stand is a body on as many supports as the ring has sides, seen about its
// own centre of gravity: one Standing for each line it may tip over.
type Stand []joint.Standing

// standOn returns a body of so many kg on supports, one a side, that carries the
// top. Its centre of gravity is the centre of the ring moved by off. A piece
// without a top has no rim.
func (p Piece) standOn(support func(i int) geometry.Point, mass float64, off geometry.Point) Stand {
	n := p.Frame.Ring.Sides
	top := p.TopShape()
	out := make(Stand, n)
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

// Weakest returns the line over which the least load inset mm in from the rim tips
// the body; where none does, the one that the rim stands out from most.
func (s Stand) Weakest(inset float64) joint.Standing {
	weak := s[0]
	for _, t := range s[1:] {
		load, least := t.TippingLoad(inset), weak.TippingLoad(inset)
		if load < least || load == least && t.Overhang() > weak.Overhang() {
			weak = t
		}
	}
	return weak
}

// Falls reports whether the body tips with no load at all: its centre of gravity
// lies outside its supports.
func (s Stand) Falls() bool {
	return slices.ContainsFunc(s, func(t joint.Standing) bool { return t.FootRadius <= 0 })
}

// Standing returns the piece on its feet, its frame weighing so many kg.
func (p Piece) Standing(frame float64) Stand {
	mass := frame + p.TopMass()
	return p.standOn(p.FootPoint, mass, p.topCentre().Mul(p.TopMass()/mass))
}

// LooseTop returns the top on its own on the centres of its pads or, without
// pads, on the outside corners of the ring.
func (p Piece) LooseTop() Stand {
	support := func(i int) geometry.Point { return p.PadPoint(i) }
	return p.standOn(support, p.TopMass(), p.topCentre())
}

// PadPoint returns the centre of pad i in plan, or that corner of the ring.
func (p Piece) PadPoint(i int) geometry.Point {
	r := p.Frame.Ring
	if p.Design.Top.PadHeight() == 0 {
		corners := r.Polygon().Offset(r.Width).Corners()
		return corners[(i+1)%len(corners)] // at the leg end of stretcher i
	}
	return r.Place(i, 0).Apply(p.PadCentre())
}

// topCentre returns the centre of gravity of the top in plan. Only a free
// outline has it anywhere but over the centre of the ring.
func (p Piece) topCentre() geometry.Point {
	if p.Design.Top.Kind == design.NoTop || p.Design.Top.Outline != design.FreeOutline {
		return geometry.Point{}
	}
	return p.TopShape().Centroid()
}
