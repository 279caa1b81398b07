package geometry

import (
	"cmp"
	"math"

	"rodsheet/geometry/measure"
)

// A Top is the outline of a table top about its centre, the origin: a circle,
// or a convex polygon whose corners may be clipped or rounded.
type Top struct {
	Diameter float64 // of a round top, mm; 0 for a polygon
	Corners  []Point // of the polygon before they are worked, counter-clockwise
	Clip     float64 // taken off each corner along both its sides, mm
	Round    float64 // radius of each corner, mm
}

// RectangleTop returns a rectangle, length along x.
func RectangleTop(length, width float64) Top {
	return Top{Corners: Box(-length/2, -width/2, length/2, width/2).Corners()}
}

// Check returns a *measure.BoundError for the first figure no top can have.
// The other methods take a Top that has passed.
func (t Top) Check() error {
	if t.Diameter != 0 {
		diameter := measure.Length(t.Diameter)
		return cmp.Or(
			measure.Positive("diameter", diameter),
			measure.AtMost("diameter", diameter, "", measure.Length(longestPart), ""),
		)
	}
	err := cmp.Or(
		measure.AtLeast("number of corners", measure.Number(float64(len(t.Corners))), "", measure.Number(3), ""),
		measure.NotNegative("clip", measure.Length(t.Clip)),
		measure.NotNegative("corner radius", measure.Length(t.Round)),
	)
	if err == nil && t.Clip > 0 {
		err = cmp.Or(err, measure.AtMost("corner radius", measure.Length(t.Round), "none beside a clip",
			measure.Length(0), "clip the corners or round them"))
	}
	for i := 0; err == nil && i < len(t.Corners); i++ {
		err = t.checkCorner(i)
	}
	return err
}

// checkCorner refuses a corner that turns inward or not at all, and one whose
// working takes more than half of a side.
func (t Top) checkCorner(i int) error {
	in, out := t.sides(i)
	number := measure.Number(float64(i + 1))
	for _, v := range []float64{t.Corners[i].X, t.Corners[i].Y} {
		if err := measure.AtMost("corner of the top", measure.Length(math.Abs(v)), "", measure.Length(longestPart), ""); err != nil {
			return err
		}
	}
	if in.Cross(out) <= 1e-9*in.Norm()*out.Norm() || t.wraps() {
		return &measure.BoundError{
			Figure: "corner of the top", Value: number, Relation: "must turn left, one turn in all, from corner",
			Limit: measure.Number(float64((i+len(t.Corners)-1)%len(t.Corners) + 1)),
			Hint:  "give the corners counter-clockwise; one that turns inward cannot be worked",
		}
	}
	half := measure.Length(math.Min(in.Norm(), out.Norm()) / 2)
	const hint = "take a smaller one, or clip or round a longer side"
	return cmp.Or(
		measure.AtMost("clip", measure.Length(t.Clip), "half a side", half, hint),
		measure.AtMost("length taken by a corner radius", measure.Length(t.Round*math.Tan(turnOf(in, out)/2)), "half a side", half, hint),
	)
}

// wraps reports whether the corners go round more than once.
func (t Top) wraps() bool {
	sum := 0.0
	for i := range t.Corners {
		sum += turnOf(t.sides(i))
	}
	return sum > 3*math.Pi
}

// sides returns the sides before and after corner i, along the outline.
func (t Top) sides(i int) (in, out Point) {
	n := len(t.Corners)
	c := t.Corners[i]
	return c.Sub(t.Corners[(i+n-1)%n]), t.Corners[(i+1)%n].Sub(c)
}

// turnOf returns the change of direction from in to out.
func turnOf(in, out Point) float64 { return math.Atan2(in.Cross(out), in.Dot(out)) }

// Outline returns the worked outline counter-clockwise, arcs as chords.
func (t Top) Outline() []Point {
	if t.Diameter > 0 {
		round := Arc(Point{}, t.Diameter/2, 0, 2*math.Pi)
		return round[:len(round)-1]
	}
	var out []Point
	for i, c := range t.Corners {
		in, on := t.sides(i)
		switch {
		case t.Clip > 0:
			out = append(out, c.Sub(in.Unit().Mul(t.Clip)), c.Add(on.Unit().Mul(t.Clip)))
		case t.Round > 0:
			out = append(out, t.rounded(i)...)
		default:
			out = append(out, c)
		}
	}
	return out
}

// rounded returns the arc at corner i. It touches both sides Round·tan(turn/2)
// from the corner.
func (t Top) rounded(i int) []Point {
	in, out := t.sides(i)
	turn := turnOf(in, out)
	along := in.Unit()
	centre := t.Corners[i].Sub(along.Mul(t.Round * math.Tan(turn/2))).Add(along.Turn().Mul(t.Round))
	from := Segment{B: along}.Angle() - math.Pi/2
	return Arc(centre, t.Round, from, from+turn)
}

// Area returns the area in mm², from the figures and not from the chords.
func (t Top) Area() float64 {
	switch {
	case t.Diameter > 0:
		return math.Pi * t.Diameter * t.Diameter / 4
	case t.Round > 0:
		return RoundedArea(t.Corners, t.Round)
	case t.Clip > 0:
		return Area(t.Outline())
	}
	return Area(t.Corners)
}

// Perimeter returns the length of the edge in mm.
func (t Top) Perimeter() float64 {
	if t.Diameter > 0 {
		return math.Pi * t.Diameter
	}
	sum := 0.0
	for i := range t.Corners {
		in, out := t.sides(i)
		turn := turnOf(in, out)
		sum += in.Norm()
		switch {
		case t.Clip > 0:
			sum += 2*t.Clip*math.Cos(turn/2) - 2*t.Clip
		case t.Round > 0:
			sum += t.Round*turn - 2*t.Round*math.Tan(turn/2)
		}
	}
	return sum
}

// Size returns the width and height of the box round the outline, in mm.
func (t Top) Size() Point {
	if t.Diameter > 0 {
		return Pt(t.Diameter, t.Diameter)
	}
	b := Bounds(t.Outline()...)
	return Pt(b.Width(), b.Height())
}
