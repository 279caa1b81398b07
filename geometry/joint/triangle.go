package joint

import (
	"cmp"
	"math"

	"rodsheet/geometry"
	"rodsheet/geometry/measure"
)

// A Triangle is right-angled: its base lies along x from the origin, where
// Angle stands, and its rise is square to the base at the far end.
type Triangle struct {
	Angle float64 // at the origin, rad, between 0 and a right angle
	Base  float64 // mm
}

// Rise returns the height at the far end: Base·tan Angle.
func (t Triangle) Rise() float64 { return RiseOver(t.Base, t.Angle) }

// OffSquare returns how far off square a gauge set to the corner at the origin
// scribes, 90° less Angle. It is the angle at the top corner as well: the two
// acute corners are each other's bevel and off square.
func (t Triangle) OffSquare() float64 { return math.Pi/2 - t.Angle }

// Corners returns the corners counter-clockwise from the origin.
func (t Triangle) Corners() []geometry.Point {
	return []geometry.Point{{}, geometry.Pt(t.Base, 0), geometry.Pt(t.Base, t.Rise())}
}

// SlipError returns the angle lost when a gauge is set wrong by slip mm at the
// far end of the sloping edge: slip over the longer leg. The slope itself is
// longer still, so the true error is never more.
func (t Triangle) SlipError(slip float64) float64 {
	return math.Atan(slip / math.Max(t.Base, t.Rise()))
}

// RiseOver returns the rise in mm over a level run in mm.
func RiseOver(run, angle float64) float64 { return run * math.Tan(angle) }

// Chord returns the straight distance between two points on a circle of
// radius r that stand angle apart: 2·r·sin(angle/2).
func Chord(r, angle float64) float64 { return 2 * r * math.Sin(angle/2) }

// Acute returns the acute angle between the same two lines: angle itself, or
// its supplement where angle is obtuse, which obtuse then reports.
//
// It returns a *measure.BoundError for what no triangle is drawn for: anything
// outside 0 to 180°, and anything within half a degree of level or of square,
// where one leg is too short to set a gauge from.
func Acute(angle float64) (acute float64, obtuse bool, err error) {
	const (
		flat   = "triangle.flat"
		square = "triangle.square"
	)
	value := measure.Angle(angle)
	limit := func(deg float64) measure.Quantity { return measure.Angle(measure.Radians(deg)) }
	if angle > math.Pi/2 {
		return math.Pi - angle, true, cmp.Or(
			measure.AtLeast("triangle.angle", value, "", limit(90.5), square),
			measure.AtMost("triangle.angle", value, "", limit(179.5), flat),
		)
	}
	return angle, false, cmp.Or(
		measure.AtLeast("triangle.angle", value, "", limit(0.5), flat),
		measure.AtMost("triangle.angle", value, "", limit(89.5), square),
	)
}

// An AngleGauge is the outline that a bevel gauge is set from. The gauge's
// stock lies along the gauge edge, which runs from the origin along x;
// the sloping edge leaves the origin at Angle.
//
// A steep angle would rise past any paper, so its triangle gets a shorter
// base while the gauge edge keeps its length.
type AngleGauge struct {
	Angle  float64 // rad, as Acute returns it
	Length float64 // of the gauge edge, mm
	Height float64 // the most it may rise, mm
}

// Triangle returns the triangle below the sloping edge. Its base is Length, or
// what rises to Height where that is less.
func (g AngleGauge) Triangle() Triangle {
	return Triangle{Angle: g.Angle, Base: math.Min(g.Length, g.Height/math.Tan(g.Angle))}
}

// Outline returns the corners counter-clockwise from the origin: the triangle
// itself, or where its base is shorter than Length the trapezoid that the rest
// of the gauge edge makes of it.
func (g AngleGauge) Outline() []geometry.Point {
	t := g.Triangle()
	if t.Base == g.Length {
		return t.Corners()
	}
	return []geometry.Point{{}, geometry.Pt(g.Length, 0), geometry.Pt(g.Length, t.Rise()), geometry.Pt(t.Base, t.Rise())}
}
