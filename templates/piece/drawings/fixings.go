package drawings

import (
	"math"
	"strconv"

	"rodsheet/geometry"
	"rodsheet/geometry/solid"
	"rodsheet/templates"
	"rodsheet/templates/piece"
	"rodsheet/templates/piece/design"
	"rodsheet/templates/piece/shop"
	"rodsheet/templates/piece/wording"
)

// fromBelow is how the frame is seen when its undersides are drilled, and as it stands
// on its top to be screwed down.
func fromBelow() solid.View { return solid.Look(solid.V(0, 0, -1), solid.V(0, 1, 0)) }

// fixingsJob shows the ring from below with the holes and slots for the screws of the
// top, which are drawn larger, and the grain that slots run across.
func fixingsJob(p piece.Piece, _ templates.Setting) (templates.Section, error) {
	f, fixed := shop.FixingOf(p)
	if !fixed || f.Kind != design.Screws {
		return templates.Section{}, nil
	}
	k, v, r := NewSketch(), fromBelow(), p.Frame.Ring
	k.Heading, k.View, k.NoScale = say(fixingsHeading), wording.FixingsView, true
	k.stand(p.Around(p.Place, p.Stretcher()), v)
	k.To = geometry.MirrorX()
	for _, h := range f.Holes {
		k.Line(templates.Cut, geometry.Closed(slotOutline(p, h))...)
	}
	for i := range r.Sides {
		at := r.Place(i, 0).Apply(geometry.Pt(0, -r.Width))
		k.Label(at, at, tag("plain-figure", strconv.Itoa(i+1)))
	}
	half := p.TopAlong().Mul(r.Inside / 3)
	below := p.TopAlong().Perp().Mul(-r.Polygon().Offset(4 * r.Width).Circumradius())
	k.Arrow(below.Sub(half), below.Add(half))
	k.Label(below.Sub(half), below.Add(half), tag("grain"))
	return templates.Section{Pictures: []templates.Picture{k.Picture}}, nil
}

// slotOutline returns a hole in plan, half as wide as its stretcher and as long as that
// where it is round. A slot runs from the ring side to the outer side, nearer there to the
// end that it leans to.
func slotOutline(p piece.Piece, h shop.Hole) []geometry.Point {
	const sides = 12 // of half a circle
	ring := p.Frame.Ring
	radius, long := ring.Width/6, 0.0
	if h.Slotted {
		long = ring.Width / 3
	}
	lean := h.Lean
	if h.Leans == shop.PlainEnd {
		lean = math.Pi - lean
	}
	place := ring.Place(h.Part, 0)
	var out []geometry.Point
	for end, sign := range []float64{1, -1} {
		centre := geometry.Pt(h.At, ring.Width/2).Add(geometry.Polar(sign*long/2, lean))
		for i := range sides + 1 {
			a := lean + (float64(end)-0.5)*math.Pi + math.Pi*float64(i)/sides
			out = append(out, place.Apply(centre.Add(geometry.Polar(radius, a))))
		}
	}
	return out
}
