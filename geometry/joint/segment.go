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
	return CircularSegment{Chord: chord, Rise: half * half / (radius + math.Sqrt((radius-half)*(radius+half)))}
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

// Points returns the arc from the left end of its chord to the right one, as
// Arc draws it.
func (b CircularSegment) Points() []geometry.Point {
	r, half := b.Radius(), b.Angle()/2
	return geometry.Arc(geometry.Pt(0, b.Rise-r), r, math.Pi/2+half, math.Pi/2-half)
}
