package joint_test

import (
	"cmp"
	"math"
	"testing"

	"gonum.org/v1/gonum/integrate/quad"
	"pgregory.net/rapid"

	"rodsheet/geometry"
	"rodsheet/geometry/joint"
	"rodsheet/geometry/measure"
)

// Machinery's Handbook, 31st ed., pp. 79 and 50. Its 67.13° is a little high
// (exact 67.115°), its chord of 59.86 a little low (exact 59.867).
func TestBowAgainstHandbook(t *testing.T) {
	within(t, "chord, r 60, rise 8", joint.SegmentOfRise(60, 8).Chord, 59.86, 0.0075)
	within(t, "radius, chord 16, rise 6", joint.CircularSegment{Chord: 16, Rise: 6}.Radius(), 8+1./3, 1e-9)

	b := joint.SegmentOfRise(12, 2)
	within(t, "chord, r 12, rise 2", b.Chord, 13.27, 0.005)
	within(t, "angle, r 12, rise 2", measure.Degrees(b.Angle()), 67.13, 0.02)
	within(t, "arc, r 12, rise 2", b.Length(), 14.06, 0.005)
}

func TestHalfCircle(t *testing.T) {
	b := joint.CircularSegment{Chord: 200, Rise: 100}
	within(t, "radius", b.Radius(), 100, 1e-9)
	within(t, "angle", b.Angle(), math.Pi, 1e-12)
	within(t, "length", b.Length(), 100*math.Pi, 1e-9)
	within(t, "area", b.Area(), 100*100*math.Pi/2, 1e-9)
	within(t, "height at the end", b.Height(100), 0, 1e-9)
	within(t, "height at 60", b.Height(60), 80, 1e-9)
	within(t, "across at 80", b.Across(80), 60, 1e-9)
	within(t, "centre", b.CentreBelow(), 0, 1e-9)
	within(t, "sticks", measure.Degrees(b.SticksAngle()), 90, 1e-9) // Thales
}

func someBow(t *rapid.T) joint.CircularSegment {
	chord := rapid.Float64Range(10, 5000).Draw(t, "chord")
	return joint.CircularSegment{Chord: chord, Rise: chord / 2 * rapid.Float64Range(0.001, 1).Draw(t, "share")}
}

// The arc goes through three points and stands level with its circle between.
func TestBowIsTheCircleThroughThreePoints(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		b := someBow(t)
		centre := geometry.Pt(0, b.Rise-b.Radius())
		at := b.Chord / 2 * rapid.Float64Range(-1, 1).Draw(t, "at")
		for _, p := range []geometry.Point{
			geometry.Pt(b.Chord/2, 0), geometry.Pt(-b.Chord/2, 0), geometry.Pt(0, b.Rise), geometry.Pt(at, b.Height(at)),
		} {
			if got := centre.Distance(p); !agree(got, b.Radius()) {
				t.Errorf("%v stands %.9f from the centre, want %.9f", p, got, b.Radius())
			}
		}
		if got := joint.Chord(b.Radius(), b.Angle()); !agree(got, b.Chord) {
			t.Errorf("chord of the angle %.9f, want %.9f", got, b.Chord)
		}
		if got := joint.SegmentOfRise(b.Radius(), b.Rise).Chord; !agree(got, b.Chord) {
			t.Errorf("chord by radius and rise %.9f, want %.9f", got, b.Chord)
		}
	})
}

// Through any three points of it the same arc is found again, wherever it lies; the
// sticks enclose the angle at which the chord is seen, and Across undoes Height.
func TestBowThroughThreePoints(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		b := someBow(t)
		turn := geometry.Polar(1, rapid.Float64Range(-3, 3).Draw(t, "turn"))
		move := geometry.Pt(rapid.Float64Range(-500, 500).Draw(t, "x"), 70)
		lay := func(p geometry.Point) geometry.Point { return turn.Mul(p.X).Add(turn.Perp().Mul(p.Y)).Add(move) }
		at := b.Chord / 2 * rapid.Float64Range(-0.99, 0.99).Draw(t, "at")
		p := geometry.Pt(at, b.Height(at))
		left, right := geometry.Pt(-b.Chord/2, 0), geometry.Pt(b.Chord/2, 0)
		got, err := joint.SegmentThrough(lay(left), lay(p), lay(right))
		if err != nil || !agree(got.Chord, b.Chord) || math.Abs(got.Rise-b.Rise) > 1e-7*b.Chord {
			t.Errorf("%+v, %v, want %+v", got, err, b)
		}
		l, r := left.Sub(p), right.Sub(p)
		if seen := math.Abs(math.Atan2(l.Cross(r), l.Dot(r))); math.Abs(seen-b.SticksAngle()) > 1e-7 {
			t.Errorf("the chord is seen at %.9f from %v, the sticks enclose %.9f", seen, p, b.SticksAngle())
		}
		if back := b.Across(p.Y); math.Abs(back-math.Abs(at)) > 1e-5*b.Chord {
			t.Errorf("across at %.9f: %.9f, want %.9f", p.Y, back, math.Abs(at))
		}
	})
	for _, through := range []geometry.Point{geometry.Pt(50, 51), geometry.Pt(0, 0), geometry.Pt(-1, 0)} {
		_, err := joint.SegmentThrough(geometry.Pt(0, 0), through, geometry.Pt(100, 0))
		checkBound(t, err, "segment.seen", "≥ 90°")
	}
}

// Half a circle is not made more than that by rounding.
func TestHalfCirclesPass(t *testing.T) {
	for mm := 0.1; mm < 300; mm += 0.7 {
		through, err := joint.SegmentThrough(geometry.Pt(0, 0), geometry.Pt(mm/5, mm*2/5), geometry.Pt(mm, 0))
		for _, b := range []joint.CircularSegment{through, joint.SegmentOverChord(mm, 2*mm), joint.SegmentOfRise(mm, mm)} {
			if b.Rise > 0.1 && cmp.Or(err, b.Check()) != nil {
				t.Errorf("%v: %v %v", b, err, b.Check())
			}
		}
	}
}

// Area and length by gonum's quadrature: the area over the ordinates, x = (c/2)·sin u;
// the length over half the arc as a rational curve of the second degree, which takes
// the ends, where the tangents meet and a weight from chord and rise alone.
func TestBowByQuadrature(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		b := someBow(t)
		half := b.Chord / 2
		area := quad.Fixed(func(u float64) float64 {
			return b.Height(half*math.Sin(u)) * half * math.Cos(u)
		}, -math.Pi/2, math.Pi/2, 100, nil, 0)
		if math.Abs(area/b.Area()-1) > 1e-6 {
			t.Errorf("%+v: area %.9f, by quadrature %.9f", b, b.Area(), area)
		}

		crown, end := geometry.Pt(0, b.Rise), geometry.Pt(half, 0)
		tangent := geometry.Pt((half*half+b.Rise*b.Rise)/b.Chord, b.Rise) // as far from both
		weight := crown.Distance(end) / 2 / tangent.X
		at := func(u float64) geometry.Point {
			p, q, r := (1-u)*(1-u), 2*u*(1-u)*weight, u*u
			return crown.Mul(p).Add(tangent.Mul(q)).Add(end.Mul(r)).Mul(1 / (p + q + r))
		}
		const h = 1e-5
		length := 2 * quad.Fixed(func(u float64) float64 { return at(u+h).Distance(at(u-h)) / (2 * h) }, 0, 1, 60, nil, 0)
		if math.Abs(length/b.Length()-1) > 1e-8 {
			t.Errorf("%+v: length %.9f, by quadrature %.9f", b, b.Length(), length)
		}
	})
}

func TestCheckCircle(t *testing.T) {
	for _, tt := range []struct {
		figure              measure.ID
		want                string
		radius, chord, rise float64
	}{
		{"segment.radius", "> 0 mm", 0, 100, 0},
		{"segment.radius", "segment.half-chord, 50 mm", 49, 100, 0},
		{"segment.rise", "segment.radius, 60 mm", 60, 0, 61},
	} {
		checkBound(t, joint.CheckCircle(tt.radius, tt.chord, tt.rise), tt.figure, tt.want)
	}
	if err := joint.CheckCircle(50, 100, 0); err != nil {
		t.Error(err)
	}
}

// Flat arcs, where radius less root would lose its figures.
func TestBowOver(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		radius := rapid.Float64Range(1, 1e7).Draw(t, "radius")
		chord := math.Min(2*radius, 1000) * rapid.Float64Range(0.01, 0.999).Draw(t, "share")
		b := joint.SegmentOverChord(radius, chord)
		if got := b.Radius(); !agree(got, radius) || b.Chord != chord {
			t.Errorf("chord %.9f, rise %.12f: radius %.9f, want %.9f", b.Chord, b.Rise, got, radius)
		}
	})
}

// The polyline closes, by its own chord, on nearly the area of the segment,
// and it is nearly as long as the arc.
func TestBowPoints(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		b := someBow(t)
		points := b.Points()
		first, last := points[0], points[len(points)-1]
		if first.Distance(geometry.Pt(-b.Chord/2, 0)) > 1e-6 || last.Distance(geometry.Pt(b.Chord/2, 0)) > 1e-6 {
			t.Errorf("from %v to %v, want from end to end of a chord of %.9f", first, last, b.Chord)
		}
		length := 0.0
		for i := 1; i < len(points); i++ {
			length += points[i].Distance(points[i-1])
		}
		if length > b.Length()+1e-6 || length < b.Length()*(1-1e-3) {
			t.Errorf("polyline %.9f long, the arc %.9f", length, b.Length())
		}
		short := b.Area() + geometry.Area(points) // clockwise, so negative
		if short < -1e-6*b.Area()-1e-6 || short > geometry.Sagitta*b.Length()+1e-6 {
			t.Errorf("polyline holds %.9f less than %.9f", short, b.Area())
		}
	})
}

func TestBowCheck(t *testing.T) {
	if err := (joint.CircularSegment{Chord: 100, Rise: 50}).Check(); err != nil {
		t.Error(err)
	}
	for _, tt := range []struct {
		figure measure.ID
		want   string
		bad    joint.CircularSegment
	}{
		{"segment.chord", "> 0 mm", joint.CircularSegment{Rise: 1}},
		{"segment.chord", "≤ 10000 mm", joint.CircularSegment{Chord: 10001, Rise: 1}},
		{"segment.rise", "≥ 0.1 mm", joint.CircularSegment{Chord: 100}},
		{"segment.rise", "segment.half-chord, 50 mm", joint.CircularSegment{Chord: 100, Rise: 51}},
		{"segment.rise", "finite", joint.CircularSegment{Chord: 100, Rise: math.NaN()}},
	} {
		checkBound(t, tt.bad.Check(), tt.figure, tt.want)
	}
}
