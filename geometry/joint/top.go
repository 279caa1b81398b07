package joint

import (
	"cmp"
	"math"

	"rodsheet/geometry"
	"rodsheet/geometry/measure"
)

// A Top is the outline of a table top about its centre, the origin: a circle,
// or a convex polygon whose corners may be clipped or rounded.
type Top struct {
	Diameter float64     // of a round top, mm; 0 for a polygon
	Corners  []geometry. // of the polygon before they are worked, counter-clockwise
			Point
	Clip  float64 // taken off each corner along both its sides, mm
	Round float64 // radius of each corner, mm
}

// RectangleTop returns a rectangle, length along x.
func RectangleTop(length, width float64) Top {
	return Top{Corners: geometry.Box(-length/2, -width/2, length/2, width/2).Corners()}
}

// OvalTop returns an ellipse of two axes along x and y, by its chords.
func OvalTop(x, y float64) Top {
	if x >= y {
		return Top{Corners: Oval{Length: x, Width: y}.Outline(0)}
	}
	out := Oval{Length: y, Width: x}.Outline(0)
	for i, p := range out {
		out[i] = p.Perp()
	}
	return Top{Corners: out}
}

// ChordTop returns a top whose edge is given by points on it, counter-clockwise; those that
// stand on the one before are left out.
func ChordTop(points []geometry.Point) Top { return Top{Corners: distinct(points)} }

// Check returns a *measure.BoundError for the first figure no top can have.
// The other methods take a Top that has passed.
func (t Top) Check() error {
	if t.Diameter != 0 {
		return within("outline.diameter", t.Diameter)
	}
	// Each question is asked only once those before it are answered.
	for _, ask := range []func() error{t.checkPoints, t.checkTurns, t.checkWork} {
		if err := ask(); err != nil {
			return err
		}
	}
	return nil
}

// checkPoints refuses corners that are too few, too close or out of reach.
func (t Top) checkPoints() error {
	if len(t.Corners) < 3 {
		return within("outline.corners", float64(len(t.Corners)))
	}
	for _, c := range t.Corners {
		if err := within("outline.reach", c.Norm()); err != nil {
			return err
		}
	}
	for i := range t.Corners {
		in, _ := t.sides(i)
		if err := within("outline.side", in.Norm()); err != nil {
			return err
		}
	}
	return nil
}

// checkTurns refuses corners that do not go once round, always to the left.
func (t Top) checkTurns() error {
	const straight = 1e-6 // rad, less than any saw can make
	sum, n := 0.0, len(t.Corners)
	for i := range t.Corners {
		turn := turnOf(t.sides(i))
		if turn < straight || turn > math.Pi-straight {
			return &measure.BoundError{
				Figure: "outline.corner", Value: measure.Number(float64(i + 1)),
				Relation: measure.IsLeftOf, Limit: measure.Number(float64((i+n-1)%n + 1)),
				Hint: "outline.counter-clockwise",
			}
		}
		sum += turn
	}
	return within("outline.turns", math.Round(sum/(2*math.Pi)))
}

// checkWork refuses a clip or rounding that takes more than half of a side.
func (t Top) checkWork() error {
	const trace = 1e-9 // mm, of rounding where two corners share a whole side
	clip, round := measure.Length(t.Clip), measure.Length(t.Round)
	const hint = "outline.take-less"
	for i := range t.Corners {
		in, out := t.sides(i)
		half := math.Min(in.Norm(), out.Norm())/2 + trace
		if err := cmp.Or(
			within("outline.clip", t.Clip),
			within("outline.round", t.Round),
			measure.AtMost("outline.clip", clip, "polygon.half-side", measure.Length(half), hint),
			// The arc begins r·tan(turn/2) from the corner.
			measure.AtMost("outline.round", round, "outline.half-side-holds",
				measure.Length(half/math.Tan(turnOf(in, out)/2)), hint),
		); err != nil {
			return err
		}
	}
	if t.Clip > 0 {
		return measure.AtMost("outline.round", round, "outline.clipped-corner", measure.Length(0), "outline.clip-or-round")
	}
	return nil
}

// sides returns the sides before and after corner i, along the outline.
func (t Top) sides(i int) (in, out geometry.Point) {
	n := len(t.Corners)
	c := t.Corners[i]
	return c.Sub(t.Corners[(i+n-1)%n]), t.Corners[(i+1)%n].Sub(c)
}

// turnOf returns the change of direction from in to out, counter-clockwise.
func turnOf(in, out geometry.Point) float64 { return math.Atan2(in.Cross(out), in.Dot(out)) }

// Outline returns the worked outline counter-clockwise, arcs as chords that
// leave them by at most Sagitta. Where two corners take a whole side between
// them they share a point.
func (t Top) Outline() []geometry.Point {
	if t.Diameter > 0 {
		round := geometry.Arc(geometry.Point{}, t.Diameter/2, 0, 2*math.Pi)
		return round[:len(round)-1]
	}
	if t.Clip == 0 && t.Round == 0 {
		return t.Corners
	}
	var out []geometry.Point
	for i := range t.Corners {
		out = append(out, t.Worked(i)...)
	}
	return distinct(out)
}

// Worked returns the outline at corner i from where it leaves the edge before to where
// it meets the next one: both ends of the clip, the arc, or the corner itself.
func (t Top) Worked(i int) []geometry.Point {
	c := t.Corners[i]
	in, on := t.sides(i)
	switch {
	case t.Clip > 0:
		return []geometry.Point{c.Sub(in.Unit().Mul(t.Clip)), c.Add(on.Unit().Mul(t.Clip))}
	case t.Round > 0:
		return t.rounded(i)
	}
	return []geometry.Point{c}
}

// Turn returns by how much the outline turns at corner i, in radians: 180° less what
// its edges enclose.
func (t Top) Turn(i int) float64 { return turnOf(t.sides(i)) }

// distinct leaves out every point that stands on the one before.
func distinct(points []geometry.Point) []geometry.Point {
	const near = 1e-8 // mm, rounding
	var out []geometry.Point
	for i, p := range points {
		if p.Distance(points[(i+len(points)-1)%len(points)]) > near {
			out = append(out, p)
		}
	}
	return out
}

// rounded returns the arc at corner i.
func (t Top) rounded(i int) []geometry.Point {
	in, out := t.sides(i)
	from := geometry.Segment{B: in}.Angle() - math.Pi/2
	return geometry.Arc(t.arcCentre(i), t.Round, from, from+turnOf(in, out))
}

// Area returns the area in mm², from the figures and not from the chords.
func (t Top) Area() float64 {
	switch {
	case t.Diameter > 0:
		return math.Pi * t.Diameter * t.Diameter / 4
	case t.Round > 0:
		return RoundedArea(t.Corners, t.Round)
	case t.Clip > 0:
		return geometry.Area(t.Outline())
	}
	return geometry.Area(t.Corners)
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

// Box returns the box round the outline, in mm, from the figures and not from the chords.
func (t Top) Box() geometry.Rect {
	polygon, radius := t.core()
	return geometry.Bounds(polygon...).Offset(radius)
}

// Size returns the width and height of that box.
func (t Top) Size() geometry.Point { return t.Box().Size() }
