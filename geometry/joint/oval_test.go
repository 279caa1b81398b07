package joint_test

import (
	"errors"
	"math"
	"testing"

	"gonum.org/v1/gonum/integrate/quad"
	"pgregory.net/rapid"

	"rodsheet/geometry"
	"rodsheet/geometry/joint"
	"rodsheet/geometry/measure"
)

// Machinery's Handbook, 31st ed., p. 81.
func TestEllipseAgainstHandbook(t *testing.T) {
	within(t, "area of 200 × 150", joint.Oval{Length: 200, Width: 150}.Area(), 23562, 0.5)
}

// Abramowitz and Stegun, table 17.1 (from memory): E(m = 0.5) = 1.35064 38810, so an
// ellipse with b² = a²/2 is 4·E·a round.
func TestEllipsePerimeterAgainstTable(t *testing.T) {
	o := joint.Oval{Length: 2000, Width: 2000 * math.Sqrt(0.5)}
	within(t, "perimeter", o.Perimeter(), 4*1.3506438810*1000, 1e-5)
}

// The construction of two circles that pass through each other's centres (from memory:
// Serlio, book I): the ends have the radius r and their centres stand r apart, the
// sides have 2r and their centres where the circles cross, so that all joins stand at
// 60° and the oval is 3r × (4 − √3)r.
func TestOvalOfTwoCircles(t *testing.T) {
	const r = 200.0
	o := joint.Oval{Length: 3 * r, Width: (4 - math.Sqrt(3)) * r, EndRadius: r}
	end, side := o.Centres()
	within(t, "side radius", o.AtSide(), 2*r, 1e-9)
	within(t, "joins", measure.Degrees(o.JoinAngle()), 60, 1e-9)
	within(t, "end centre", end.X, r/2, 1e-9)
	within(t, "side centre", side.Y, -r*math.Sqrt(3)/2, 1e-9)
}

// The usual compass oval struck by its construction: the side radius that the tangent
// arcs ask for has its centre on the same line square to what is left of the diagonal.
func TestCompassOval(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		length := rapid.Float64Range(10, 5000).Draw(t, "length")
		width := length * rapid.Float64Range(0.11, 0.99).Draw(t, "share")
		o := joint.Oval{Length: length, Width: width, EndRadius: joint.CompassEndRadius(length, width)}
		a, b := geometry.Pt(length/2, 0), geometry.Pt(0, width/2)
		if err := o.Check(); err != nil && o.EndRadius > 1 {
			t.Error(err)
		}
		left := a.Distance(b) - (length-width)/2
		mid := a.Add(b.Sub(a).Unit().Mul(left / 2))
		end, side := o.Centres()
		for _, c := range []geometry.Point{end, side} {
			if off := c.Sub(mid).Dot(b.Sub(a).Unit()); math.Abs(off) > 1e-9*length {
				t.Errorf("%v stands %.9f off the line of the centres", c, off)
			}
		}
		if !agree(math.Tan(o.JoinAngle()), length/width) {
			t.Errorf("joins at %v, want square to the line between the ends of the axes", o.JoinAngle())
		}
	})
}

func someOval(t *rapid.T) joint.Oval {
	o := joint.Oval{Length: rapid.Float64Range(20, 5000).Draw(t, "length")}
	o.Width = o.Length * rapid.Float64Range(0.11, 0.99).Draw(t, "share")
	if rapid.Bool().Draw(t, "four centres") {
		o.EndRadius = o.Width / 2 * rapid.Float64Range(0.2, 0.94).Draw(t, "end")
	}
	o.Inset = o.AtEnd() * rapid.Float64Range(0, 0.9).Draw(t, "inset")
	return o
}

// The arcs meet in the join with one tangent: each passes through it, and its centre
// stands with the other on one line to it.
func TestOvalArcsAreTangent(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		o := someOval(t)
		if o.Ellipse() {
			return
		}
		end, side := o.Centres()
		j := o.Join()
		if !agree(j.Distance(end), o.EndRadius) || !agree(j.Distance(side), o.AtSide()) {
			t.Errorf("the join %v is off the arcs", j)
		}
		if off := end.Sub(side).Unit().Cross(j.Sub(side)); math.Abs(off) > 1e-9*o.Length {
			t.Errorf("the join stands %.9f off the line of the centres", off)
		}
	})
}

// Area and perimeter by gonum's quadrature over the ordinates, in the angle that takes
// their steep end away: x = a·sin u. What the rim does between two ordinates is asked
// of Height alone.
func TestOvalByQuadrature(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		o := someOval(t)
		o.Width = max(o.Width, o.Length/4) // a smooth enough integrand
		if !o.Ellipse() {
			o.EndRadius = max(o.EndRadius, o.Width/4)
		}
		a := o.Length / 2
		breaks := []float64{0, math.Pi / 2}
		if !o.Ellipse() { // the curvature leaps at the join
			breaks = []float64{0, math.Asin(o.Join().X / a), math.Pi / 2}
		}
		area, rim := 0.0, 0.0
		for i := range len(breaks) - 1 {
			area += 4 * quad.Fixed(func(u float64) float64 {
				return o.Height(a*math.Sin(u)) * a * math.Cos(u)
			}, breaks[i], breaks[i+1], 200, nil, 0)
			rim += 4 * quad.Fixed(func(u float64) float64 { return speed(o, u) }, breaks[i], breaks[i+1], 200, nil, 0)
		}
		if math.Abs(area/o.Area()-1) > 1e-7 {
			t.Errorf("area %.6f, by quadrature %.6f", o.Area(), area)
		}
		if math.Abs(rim/o.Perimeter()-1) > 1e-5 {
			t.Errorf("perimeter %.6f, by quadrature %.6f", o.Perimeter(), rim)
		}
	})
}

// speed is how fast the rim is run along at x = a·sin u, by differences of Height.
func speed(o joint.Oval, u float64) float64 {
	const h = 1e-6
	a := o.Length / 2
	dx, dy := a*math.Cos(u), (o.Height(a*math.Sin(u+h))-o.Height(a*math.Sin(u-h)))/(2*h)
	return math.Hypot(dx, dy)
}

// The polyline of the rim lies on it, that of a parallel the inset inside it, and no
// chord leaves either by more than is promised; the parallel holds the area of its
// formula.
func TestOvalOutline(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		o := someOval(t)
		rim, inner := o.Outline(0), o.Outline(o.Inset)
		if len(rim)%4 != 0 || rim[0].Distance(geometry.Pt(o.Length/2, 0)) > 1e-9 || geometry.Area(rim) <= 0 {
			t.Fatalf("%d points from %v, want a closed line from the end of the long axis", len(rim), rim[0])
		}
		for i, p := range rim {
			if p.X >= 0 && p.Y >= 0 {
				mid := p.Lerp(rim[(i+1)%len(rim)], 0.5)
				for _, q := range []geometry.Point{p, mid} {
					off := math.Min(math.Abs(o.Height(q.X)-q.Y), math.Abs(o.Across(q.Y)-q.X))
					if off > 1.5*geometry.Sagitta { // along an axis, up to √2 of it
						t.Errorf("%v stands %.6f off the rim", q, off)
					}
				}
			}
		}
		if got, want := geometry.Area(inner), o.InsetArea(); math.Abs(got-want) > geometry.Sagitta*o.Perimeter() {
			t.Errorf("parallel %.4f inside holds %.4f, want %.4f", o.Inset, got, want)
		}
		for i := 0; i < len(inner); i += 37 {
			least := math.Inf(1)
			for k, p := range rim {
				least = math.Min(least, geometry.Segment{A: p, B: rim[(k+1)%len(rim)]}.Distance(inner[i]))
			}
			if math.Abs(least-o.Inset) > 2*geometry.Sagitta {
				t.Errorf("%v of the parallel stands %.6f inside the rim, want %.6f", inner[i], least, o.Inset)
			}
		}
	})
}

func TestOvalCheck(t *testing.T) {
	for _, o := range []joint.Oval{{Length: 900, Width: 600}, {Length: 900, Width: 90}, {Length: 900, Width: 600, EndRadius: 200, Inset: 199}} {
		if err := o.Check(); err != nil {
			t.Error(err)
		}
	}
	for _, tt := range []struct {
		figure measure.ID
		want   string
		bad    joint.Oval
	}{
		{"oval.length", "> 0 mm", joint.Oval{Width: 1}},
		{"oval.length", "≤ 10000 mm", joint.Oval{Length: 10001, Width: 9000}},
		{"oval.width", "> 0 mm", joint.Oval{Length: 900}},
		{"oval.width", "oval.length, 600 mm", joint.Oval{Length: 600, Width: 900}},
		{"oval.width", "oval.length, 600 mm", joint.Oval{Length: 600, Width: 600}},
		{"oval.width", "oval.tenth, 90 mm", joint.Oval{Length: 900, Width: 89}},
		{"oval.end-radius", "≥ 1 mm", joint.Oval{Length: 900, Width: 600, EndRadius: 0.5}},
		{"oval.end-radius", "oval.half-width, 300 mm", joint.Oval{Length: 900, Width: 600, EndRadius: 300}},
		{"oval.side-radius", "oval.ten-lengths, 9000 mm", joint.Oval{Length: 900, Width: 600, EndRadius: 299}},
		{"oval.inset", "≥ 0 mm", joint.Oval{Length: 900, Width: 600, Inset: -1}},
		{"oval.inset", "oval.at-end, 200 mm", joint.Oval{Length: 900, Width: 600, Inset: 200}},
		{"oval.width", "finite", joint.Oval{Length: 900, Width: math.NaN()}},
	} {
		checkBound(t, tt.bad.Check(), tt.figure, tt.want)
	}
}

// Swapped axes and equal ones are told apart.
func TestOvalHints(t *testing.T) {
	for width, want := range map[float64]measure.ID{900: "oval.swapped", 600: "oval.circle"} {
		var bound *measure.BoundError
		if err := (joint.Oval{Length: 600, Width: width}).Check(); !errors.As(err, &bound) || bound.Hint != want {
			t.Errorf("width %v: %+v, want the hint %s", width, bound, want)
		}
	}
}

// The points of a batten stand on the curve, none of them on the next and none far
// from it, with round figures but for the last.
func TestOffsets(t *testing.T) {
	const step = 50
	for name, c := range map[string]struct {
		joint.Crown
		half, rise float64
	}{
		"flat arc":     {joint.CircularSegment{Chord: 1210, Rise: 60}, 605, 60},
		"half circle":  {joint.CircularSegment{Chord: 900, Rise: 450}, 450, 450},
		"ellipse":      {joint.Oval{Length: 900, Width: 600}, 450, 300},
		"four centres": {joint.Oval{Length: 900, Width: 300, EndRadius: 90}, 450, 150},
		"small":        {joint.CircularSegment{Chord: 40, Rise: 15}, 20, 15},
	} {
		points := joint.Offsets(c, c.half, step)
		if points[0] != geometry.Pt(0, c.Height(0)) || points[len(points)-1] != geometry.Pt(c.half, 0) || math.Abs(points[0].Y-c.rise) > 1e-9 {
			t.Errorf("%s: from %v to %v", name, points[0], points[len(points)-1])
		}
		for i, p := range points[1:] {
			if d := p.Distance(points[i]); d > 1.6*step || d < step/5.0 {
				t.Errorf("%s: %v stands %.3f from %v", name, p, d, points[i])
			}
			round := math.Mod(p.X+1e-9, step) < 1e-6 || math.Mod(p.Y+1e-9, step) < 1e-6
			if on := math.Min(math.Abs(c.Height(p.X)-p.Y), math.Abs(c.Across(p.Y)-p.X)); !round || on > 1e-6 {
				t.Errorf("%s: %v is not round, or %.9f off the curve", name, p, on)
			}
		}
	}
}
