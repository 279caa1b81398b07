package joint

import (
	"cmp"
	"math"

	"rodsheet/geometry"
)

// A Regular is a regular polygon about the origin. Side 0 lies across the y
// axis, above the origin; sides and corners count counter-clockwise from
// there, and side i runs from corner i to corner i + 1.
type Regular struct {
	Sides   int
	Apothem float64 // from the centre to mid-side, mm
}

// RegularBySide returns the polygon whose sides are so long: its apothem is
// side/(2·tan(π/n)).
func RegularBySide(sides int, side float64) Regular {
	return Regular{sides, side / (2 * math.Tan(math.Pi/float64(sides)))}
}

// Check returns a *measure.BoundError for the first figure that no polygon
// can have. The other methods take a Regular that has passed.
func (r Regular) Check() error {
	return cmp.Or(within("polygon.sides", float64(r.Sides)), within("polygon.apothem", r.Apothem))
}

// Turn returns by how much the direction changes from one side to the next,
// 2π/n.
func (r Regular) Turn() float64 { return 2 * math.Pi / float64(r.Sides) }

// Angle returns the angle inside a corner, π·(n − 2)/n.
func (r Regular) Angle() float64 { return math.Pi * float64(r.Sides-2) / float64(r.Sides) }

// Side returns the length of a side.
func (r Regular) Side() float64 { return 2 * r.Apothem * math.Tan(r.Turn()/2) }

// Circumradius returns the distance from the centre to a corner.
func (r Regular) Circumradius() float64 { return r.Apothem / math.Cos(r.Turn()/2) }

// Area returns the area in mm²: n triangles of Side by Apothem.
func (r Regular) Area() float64 { return float64(r.Sides) * r.Side() * r.Apothem / 2 }

// Offset returns the polygon whose sides lie by mm further out, inward where by
// is negative.
func (r Regular) Offset(by float64) Regular { return Regular{r.Sides, r.Apothem + by} }

// Corners returns the corners counter-clockwise, corner 0 first.
func (r Regular) Corners() []geometry.Point {
	out := make([]geometry.Point, r.Sides)
	for i := range out {
		out[i] = geometry.Polar(r.Circumradius(), math.Pi/2+(float64(i)-0.5)*r.Turn())
	}
	return out
}

// ClipFlat returns the length of the flat that is left where a corner is cut off
// back mm along both its sides: 2·back·sin(Angle/2).
func (r Regular) ClipFlat(back float64) float64 { return 2 * back * math.Sin(r.Angle()/2) }
