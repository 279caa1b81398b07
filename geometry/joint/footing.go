package joint

import (
	"math"

	"rodsheet/geometry"
)

// A Footing is a piece on feet anywhere: it tips over one of the sides of the polygon
// that holds them all.
type Footing struct {
	Feet   []geometry.Point // convex, counter-clockwise: where it touches the floor, mm
	Centre geometry.Point   // below the centre of mass
	Mass   float64          // kg
}

// NewFooting returns the footing on some points of the floor.
func NewFooting(touching []geometry.Point, centre geometry.Point, mass float64) Footing {
	return Footing{geometry.Hull(touching), centre, mass}
}

// edges calls f with each side's outward unit normal and its distance from the origin
// along that.
func (f Footing) edges(each func(out geometry.Point, at float64)) {
	for i, a := range f.Feet {
		out := f.Feet[(i+1)%len(f.Feet)].Sub(a).Unit().Perp().Mul(-1)
		each(out, out.Dot(a))
	}
}

// Inside returns how far a point lies inside the polygon, negative outside of it, where
// it is the distance to the line of the side that it is farthest beyond.
func (f Footing) Inside(p geometry.Point) float64 {
	least := math.Inf(1)
	f.edges(func(out geometry.Point, at float64) { least = math.Min(least, at-out.Dot(p)) })
	return least
}

// TippingForce returns the force in N, straight down at a point, that is about to tip the
// piece: with a and o how far centre and point lie inside and outside of a side it is
// Mass·g·a/o, the least of all sides that the point is outside of; infinite for none.
func (f Footing) TippingForce(p geometry.Point) float64 {
	least := math.Inf(1)
	f.edges(func(out geometry.Point, at float64) {
		if o := out.Dot(p) - at; o > 0 {
			least = math.Min(least, f.Mass*StandardGravity*math.Max(0, at-out.Dot(f.Centre))/o)
		}
	})
	return least
}

// Pull returns the level force in N in a direction, so high above the floor, that is
// about to tip the piece while a force of load N presses straight down at a point.
// It is negative where the load tips it by itself, infinite where nothing does.
//
// About a side with the outward normal n: Mass·g·a + load·b = pull·height·(n·direction),
// a and b how far centre and point lie inside of it.
func (f Footing) Pull(load float64, p, direction geometry.Point, height float64) float64 {
	least := math.Inf(1)
	f.edges(func(out geometry.Point, at float64) {
		if turn := out.Dot(direction) * height; turn > 1e-9 {
			hold := f.Mass*StandardGravity*(at-out.Dot(f.Centre)) + load*(at-out.Dot(p))
			least = math.Min(least, hold/turn)
		}
	})
	return least
}
