package joint

import (
	"cmp"
	"math"

	"rodsheet/geometry"
	"rodsheet/geometry/measure"
)

// A CircularSegment is an arc of up to half a circle, given as a maker measures it: by its
// chord and by its rise over mid-chord.
//
// Frame: x along the chord from mid-chord, the arc above it.
type CircularSegment struct {
	Chord float64 // mm
	Rise  float64 // mm
}

// SegmentOfRise returns the bow that rises so far on a circle of the given radius:
// its chord is 2·√(rise·(2·radius − rise)).
func SegmentOfRise(radius, rise float64) CircularSegment {
	return CircularSegment{Chord: 2 * math.Sqrt(rise*(2*radius-rise)), Rise: rise}
}

// SegmentOverChord returns the bow over a chord on a circle of the given radius. Its
// rise is radius − √(radius² − (chord/2)²), in the form that keeps its figures
// when the arc is flat.
func SegmentOverChord(radius, chord float64) CircularSegment {
	half := chord / 2
	rise := half * half / (radius + math.Sqrt((radius-half)*(radius+half)))
	return CircularSegment{Chord: chord, Rise: math.Min(half, rise)} // half a circle stays one
}

// SegmentThrough returns the bow that runs from one point through another to a third:
// its chord joins the first to the last. The error is a *measure.BoundError where the
// point between does not see the ends at a right angle or more: the arc would be more
// than half a circle, or none.
//
// Seen at an angle δ the chord is 2r·sin δ long (the law of sines). The arc on its
// other side takes 2δ of the circle, so the rise is r·(1 + cos δ) = (c/2)/tan(δ/2).
func SegmentThrough(from, through, to geometry.Point) (CircularSegment, error) {
	a, b := from.Sub(through), to.Sub(through)
	seen := math.Atan2(math.Abs(a.Cross(b)), a.Dot(b))
	half := from.Distance(to) / 2
	// Half a circle stays one, whatever is rounded.
	return CircularSegment{Chord: 2 * half, Rise: math.Min(half, half/math.Tan(seen/2))}, within("segment.seen", seen)
}

// CheckCircle returns a *measure.BoundError where no bow of up to half a circle has
// the radius: one over a chord, or one that rises so far. A figure of 0 is not given.
func CheckCircle(radius, chord, rise float64) error {
	r := measure.Length(radius)
	return cmp.Or(
		within("segment.radius", radius),
		measure.AtLeast("segment.radius", r, "segment.half-chord", measure.Length(chord/2), "segment.chord-reaches"),
		measure.AtMost("segment.rise", measure.Length(rise), "segment.radius", r, "segment.more-than-half"),
	)
}

// Check returns a *measure.BoundError for a figure no segment can have. The
// other methods take a CircularSegment that has passed.
func (b CircularSegment) Check() error {
	return cmp.Or(
		within("segment.chord", b.Chord),
		within("segment.rise", b.Rise),
		measure.AtMost("segment.rise", measure.Length(b.Rise), "segment.half-chord", measure.Length(b.Chord/2), "segment.more-than-half"),
	)
}

// Radius returns the radius of the arc: (c² + 4h²)/8h, with c the chord and h
// the rise (The Building Trades Pocketbook, International Correspondence
// Schools).
func (b CircularSegment) Radius() float64 { return (b.Chord*b.Chord/(4*b.Rise) + b.Rise) / 2 }

// Angle returns the angle of the arc at its centre: 4·atan(2h/c). The angle
// between the chord and the line from its end to the crown is a quarter of it.
func (b CircularSegment) Angle() float64 { return 4 * math.Atan(2*b.Rise/b.Chord) }

// Length returns the length along the arc.
func (b CircularSegment) Length() float64 { return b.Radius() * b.Angle() }

// Area returns the area in mm² between chord and arc.
func (b CircularSegment) Area() float64 {
	r, a := b.Radius(), b.Angle()
	return r * r * (a - math.Sin(a)) / 2
}

// Height returns how high the arc stands over the chord x mm from mid-chord,
// for |x| up to half the chord.
func (b CircularSegment) Height(x float64) float64 {
	r := b.Radius()
	// At the ends of half a circle rounding may leave a trace below 0.
	return b.Rise - x*x/(r+math.Sqrt(math.Max(0, r*r-x*x)))
}

// Across returns how far from mid-chord the arc stands y mm over the chord, for y
// from 0 to the rise.
func (b CircularSegment) Across(y float64) float64 {
	down := b.Rise - y // from the crown; x² = down·(2r − down)
	return math.Sqrt(math.Max(0, down*(2*b.Radius()-down)))
}

// CentreBelow returns how far the centre lies below the chord.
func (b CircularSegment) CentreBelow() float64 {
	// r − h = (c²/4 − h²)/2h, which is exact where the two are nearly alike.
	return (b.Chord/2 - b.Rise) * (b.Chord/2 + b.Rise) / (2 * b.Rise)
}

// SticksAngle returns the angle between two sticks that, slid along pins at both ends
// of the chord, carry a pencil at their corner round the arc: from every point of it
// the chord is seen at the same angle, 180° less half the angle of the arc (Euclid,
// Elements III, 20 to 22).
func (b CircularSegment) SticksAngle() float64 { return math.Pi - b.Angle()/2 }

// Parallel returns the arc moved away from its centre by d mm, towards it where d < 0,
// from left to right.
func (b CircularSegment) Parallel(d float64) []geometry.Point {
	half := b.Angle() / 2
	return geometry.Arc(geometry.Pt(0, -b.CentreBelow()), b.Radius()+d, math.Pi/2+half, math.Pi/2-half)
}

// Points returns the arc from the left end of its chord to the right one, as
// Arc draws it.
func (b CircularSegment) Points() []geometry.Point { return b.Parallel(0) }
