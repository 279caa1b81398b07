package joint

import (
	"cmp"
	"math"

	"rodsheet/geometry"
	"rodsheet/geometry/measure"
)

// A Lap is a half-lap: a part Width wide, crossed at Angle by a part Other
// wide, each cut away to half its depth.
//
// Frame: the face that is cut towards the reader, x along the part from the
// datum, y = 0 the reference edge, y = Width the far edge. The near shoulder
// meets the reference edge at x = At and leans by Angle counter-clockwise
// from it; an obtuse Angle leans back over the datum. The part that crosses
// has the same lap, width and crossing width exchanged, on the face that
// meets this one.
type Lap struct {
	Width float64 // across the face, mm
	Other float64 // of the part that crosses, square to its own edge, mm
	Depth float64 // of the stock, square to the face, mm
	Angle float64 // between the two parts, rad
	Kerf  float64 // of the blade, square to the blade, mm
	At    float64 // from the datum to the near shoulder on the reference edge, mm
}

// Check returns a *measure.BoundError for the first figure that no lap can
// have. The other methods take a Lap that has passed.
func (l Lap) Check() error {
	return cmp.Or(
		within("lap.width", l.Width),
		within("lap.crossing-width", l.Other),
		within("lap.depth", l.Depth),
		within("lap.angle", l.Angle),
		within("lap.kerf", l.Kerf),
		measure.Below("lap.kerf", measure.Length(l.Kerf), "lap.crossing-width", measure.Length(l.Other), "lap.thinner-blade"),
		within("lap.at", l.At),
	)
}

// EdgeLength returns the length of the lap along either edge: a strip Other
// wide, crossed at Angle, is Other/sin Angle long.
func (l Lap) EdgeLength() float64 { return l.Other / math.Sin(l.Angle) }

// Shift returns by how much the corners on the far edge stand further from
// the datum than those on the reference edge. It is negative where Angle is
// obtuse and zero where it is square.
func (l Lap) Shift() float64 { return l.Width * cot(l.Angle) }

// Shoulders returns where the two shoulders cross the line y mm from the
// reference edge: y = 0 for that edge, y = Width for the far one.
func (l Lap) Shoulders(y float64) (near, far float64) {
	near = l.At + y*cot(l.Angle)
	return near, near + l.EdgeLength()
}

// Corners returns the corners of the lap counter-clockwise from the near one
// on the reference edge.
func (l Lap) Corners() []geometry.Point {
	near, far := l.Shoulders(0)
	farNear, farFar := l.Shoulders(l.Width)
	return []geometry.Point{geometry.Pt(near, 0), geometry.Pt(far, 0), geometry.Pt(farFar, l.Width), geometry.Pt(farNear, l.Width)}
}

// Area returns the area of the lap on the face in mm².
func (l Lap) Area() float64 { return l.Width * l.EdgeLength() }

// Spacer returns the length of the block by which the part moves along its
// own edge between the two shoulder cuts. The blade crosses that edge at
// Angle, so the kerf takes Kerf/sin Angle of it: what is left of the edge
// length is (Other − Kerf)/sin Angle.
func (l Lap) Spacer() float64 { return (l.Other - l.Kerf) / math.Sin(l.Angle) }

// Stop returns the distance along the fence from the blade, at its side
// nearer the stop, to a stop that holds the datum end for the far shoulder.
// With the spacer between part and stop the near shoulder comes to the blade.
func (l Lap) Stop() float64 { return l.At + l.Spacer() }

// UsualRuleExcess returns how much too wide the lap comes by the usual rule
// "spacer = edge length less the kerf": Kerf·(1 − sin Angle) square to the
// lap, and that over sin Angle along the edge. Both are zero at 90°.
func (l Lap) UsualRuleExcess() (square, along float64) {
	s := math.Sin(l.Angle)
	square = l.Kerf * (1 - s)
	return square, square / s
}

// BladeHeight returns the depth of the lap: half the stock.
func (l Lap) BladeHeight() float64 { return l.Depth / 2 }

// OffSquare returns how far the shoulders run off square, 0 for a square lap: what
// a mitre gauge is turned by. To which side is the hand of the lap.
func (l Lap) OffSquare() float64 { return math.Abs(math.Pi/2 - l.Angle) }

// Bevel returns the acute corner that the shoulders make with either edge: what a
// bevel gauge encloses as it lies on the part. It is 90° less OffSquare.
func (l Lap) Bevel() float64 { return math.Min(l.Angle, math.Pi-l.Angle) }

// cot returns the cotangent of a, exactly 0 at a right angle, where
// 1/math.Tan leaves a rest.
func cot(a float64) float64 {
	if a == math.Pi/2 {
		return 0
	}
	return 1 / math.Tan(a)
}
