package joint

import (
	"cmp"
	"math"

	"rodsheet/geometry"
	"rodsheet/geometry/measure"
)

// An Oval is a closed curve with two axes of symmetry: an ellipse or, for the compass,
// four arcs that run into each other.
//
// Frame: the centre in the origin, the length along x, the width along y.
type Oval struct {
	Length, Width float64 // its axes, mm
	EndRadius     float64 // of the two arcs at the ends, mm; 0: an ellipse
	Inset         float64 // of a line parallel to the rim inside it, mm; 0: none
}

// The slenderest oval is ten times as long as wide: a slimmer one is a slip, or a pair
// of flat arcs. Sides with a radius of more than ten lengths are all but straight.
const (
	slenderest    = 10
	straightSides = 10
)

// CompassEndRadius returns the end radius of the usual four-centred oval (from memory:
// handbooks of masonry and joinery). From the end of the long axis a line runs to that
// of the short one; it is shortened by the difference a − b of the half axes, and the
// line square to what is left, through its middle, meets both axes in the centres.
//
// With d = √(a² + b²), what is left is d − (a − b), and half of it reaches to the long
// axis at the angle whose cosine is a/d.
func CompassEndRadius(length, width float64) float64 {
	a, b := length/2, width/2
	d := math.Hypot(a, b)
	return (d - (a - b)) / 2 * d / a
}

// Ellipse reports whether the oval is one; otherwise it has four centres.
func (o Oval) Ellipse() bool { return o.EndRadius == 0 }

// Check returns a *measure.BoundError for the first figure no oval can have. The other
// methods take an Oval that has passed.
func (o Oval) Check() error {
	length, width := measure.Length(o.Length), measure.Length(o.Width)
	hint := measure.ID("oval.swapped")
	if o.Length == o.Width {
		hint = "oval.circle"
	}
	if err := cmp.Or(
		within("oval.length", o.Length),
		within("oval.width", o.Width),
		measure.Below("oval.width", width, "oval.length", length, hint),
		measure.AtLeast("oval.width", width, "oval.tenth", measure.Length(o.Length/slenderest), "oval.flat-arcs"),
	); err != nil {
		return err
	}
	if !o.Ellipse() {
		if err := cmp.Or(
			within("oval.end-radius", o.EndRadius),
			measure.Below("oval.end-radius", measure.Length(o.EndRadius), "oval.half-width", measure.Length(o.Width/2), "oval.slot"),
			measure.AtMost("oval.side-radius", measure.Length(o.AtSide()), "oval.ten-lengths", measure.Length(straightSides*o.Length), "oval.slot"),
		); err != nil {
			return err
		}
	}
	return cmp.Or(
		within("oval.inset", o.Inset),
		// Farther in than the least radius of the rim its parallel crosses itself.
		measure.Below("oval.inset", measure.Length(o.Inset), "oval.at-end", measure.Length(o.AtEnd()), "oval.inset-less"),
	)
}

// half returns the half axes.
func (o Oval) half() (a, b float64) { return o.Length / 2, o.Width / 2 }

// AtEnd returns the radius of the rim at an end of the long axis, its least: of an
// ellipse b²/a.
func (o Oval) AtEnd() float64 {
	a, b := o.half()
	if o.Ellipse() {
		return b * b / a
	}
	return o.EndRadius
}

// AtSide returns the radius of the rim at an end of the short axis, its largest: of an
// ellipse a²/b. Of four arcs the centre of one at the side lies k = R − b beyond the
// middle, that of one at an end a − r beside it, and arcs that touch have their centres
// R − r apart:
//
//	(R − b)² + (a − r)² = (R − r)², so R = ((a − r)² + b² − r²)/(2(b − r)).
func (o Oval) AtSide() float64 {
	a, b := o.half()
	if o.Ellipse() {
		return a * a / b
	}
	r := o.EndRadius
	return ((a-r)*(a-r) + (b-r)*(b+r)) / (2 * (b - r))
}

// Centres returns of four centres that on the long axis to the right and that on the
// short axis below the middle, which strikes the upper side.
func (o Oval) Centres() (end, side geometry.Point) {
	a, b := o.half()
	return geometry.Pt(a-o.EndRadius, 0), geometry.Pt(0, b-o.AtSide())
}

// JoinAngle returns the angle to the long axis of the line on which two centres and
// the join of their arcs stand.
func (o Oval) JoinAngle() float64 {
	end, side := o.Centres()
	return geometry.Segment{A: side, B: end}.Angle()
}

// Join returns where the arcs of the upper right quarter meet.
func (o Oval) Join() geometry.Point {
	end, _ := o.Centres()
	return end.Add(geometry.Polar(o.EndRadius, o.JoinAngle()))
}

// Focus returns how far from the middle the foci of an ellipse lie: √(a² − b²).
func (o Oval) Focus() float64 {
	a, b := o.half()
	return math.Sqrt((a - b) * (a + b))
}

// Area returns the area in mm²: of an ellipse πab. A quarter of four arcs is a sector
// of each; below the long axis the larger one has a triangle between the centres and
// the middle that does not belong to it.
func (o Oval) Area() float64 {
	a, b := o.half()
	if o.Ellipse() {
		return math.Pi * a * b
	}
	r, side, at := o.EndRadius, o.AtSide(), o.JoinAngle()
	return 2 * (r*r*at + side*side*(math.Pi/2-at) - (side-b)*(a-r))
}

// Perimeter returns the length of the rim in mm. That of an ellipse comes from the
// arithmetic and the geometric mean of the half axes, taken again and again until they
// meet in M (Gauss; DLMF 19.8):
//
//	2π·(a² − Σ 2ⁿ⁻¹·cₙ²)/M, with c₀² = a² − b² and then half the difference of the means.
func (o Oval) Perimeter() float64 {
	a, b := o.half()
	if !o.Ellipse() {
		at := o.JoinAngle()
		return 4 * (o.EndRadius*at + o.AtSide()*(math.Pi/2-at))
	}
	sum, share := a*a-(a-b)*(a+b)/2, 1.0
	for range 6 { // each round doubles the figures that are right
		c := (a - b) / 2
		a, b = (a+b)/2, math.Sqrt(a*b)
		sum, share = sum-share*c*c, 2*share
	}
	return 2 * math.Pi * sum / a
}

// InsetArea returns the area inside the parallel. A line d inside a convex rim of length P
// takes P·d − π·d² from its area (Steiner).
func (o Oval) InsetArea() float64 { return o.Area() - o.Perimeter()*o.Inset + math.Pi*o.Inset*o.Inset }

// Height returns how far the rim stands from the long axis x mm from the middle.
func (o Oval) Height(x float64) float64 {
	a, b := o.half()
	if o.Ellipse() {
		return b * leg(a, x) / a
	}
	end, side := o.Centres()
	if x < o.Join().X {
		return side.Y + leg(o.AtSide(), x)
	}
	return leg(o.EndRadius, x-end.X)
}

// Across returns how far the rim stands from the short axis y mm from the middle.
func (o Oval) Across(y float64) float64 {
	a, b := o.half()
	if o.Ellipse() {
		return a * leg(b, y) / b
	}
	end, side := o.Centres()
	if y > o.Join().Y {
		return leg(o.AtSide(), y-side.Y)
	}
	return end.X + leg(o.EndRadius, y)
}

// leg returns √(r² − x²), of a right triangle with the long side r.
func leg(r, x float64) float64 { return math.Sqrt(math.Max(0, (r-x)*(r+x))) }

// Quarter returns the upper right quarter of the line that runs in mm inside the rim,
// 0 for the rim itself, from the long axis to the short one, as chords that leave it by
// at most Sagitta.
func (o Oval) Quarter(in float64) []geometry.Point {
	if o.Ellipse() {
		return o.ellipse(in)
	}
	end, side := o.Centres()
	at := o.JoinAngle()
	return append(geometry.Arc(end, o.EndRadius-in, 0, at), geometry.Arc(side, o.AtSide()-in, at, math.Pi/2)[1:]...)
}

// ellipse is Quarter of one. The rim has the outward normal of direction φ in
//
//	(a²·cos φ, b²·sin φ)/√(a²·cos² φ + b²·sin² φ),
//
// and a parallel, which is no ellipse, the same normal there. Between two normals δ
// apart a curve whose radius is nowhere more than ρ leaves its chord by at most
// ρ·(1 − cos(δ/2)).
func (o Oval) ellipse(in float64) []geometry.Point {
	a, b := o.half()
	n := geometry.Chords(o.AtSide()-in, math.Pi/2)
	out := make([]geometry.Point, n+1)
	for i := range out {
		normal := geometry.Polar(1, math.Pi/2*float64(i)/float64(n))
		reach := math.Hypot(a*normal.X, b*normal.Y)
		out[i] = geometry.Pt(normal.X*(a*a/reach-in), normal.Y*(b*b/reach-in))
	}
	out[0], out[n] = geometry.Pt(a-in, 0), geometry.Pt(0, b-in) // without rounding
	return out
}

// Outline returns the whole of the line that runs in mm inside the rim, counter-clockwise.
func (o Oval) Outline(in float64) []geometry.Point {
	quarter := o.Quarter(in)
	n := len(quarter) - 1
	out := make([]geometry.Point, 0, 4*n)
	for k := range 4 {
		for i := range n { // the end of a quarter begins the next
			p := quarter[i]
			if k%2 == 1 {
				p = quarter[n-i]
				p.X = -p.X
			}
			if k >= 2 {
				p = p.Mul(-1)
			}
			out = append(out, p)
		}
	}
	return out
}
