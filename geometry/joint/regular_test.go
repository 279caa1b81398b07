package joint_test

import (
	"fmt"
	"math"
	"rodsheet/geometry/joint"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"rodsheet/geometry"
	"rodsheet/geometry/measure"
)

// printed is a figure as a table prints it and half a unit of its last place.
func printed(t *testing.T, s string) (value, tolerance float64) {
	t.Helper()
	_, decimals, _ := strings.Cut(s, ".")
	return fraction(t, s), 0.5001 * math.Pow(10, -float64(len(decimals)))
}

// Machinery's Handbook, 31st ed., p. 82.
func TestRegularAgainstTable(t *testing.T) {
	for _, row := range tableRows(t, "regular-polygons.csv") {
		r := joint.RegularBySide(int(fraction(t, row[0])), 1)
		for i, got := range []float64{r.Circumradius(), r.Apothem, r.Area()} {
			want, tolerance := printed(t, row[i+1])
			within(t, fmt.Sprintf("%s sides, column %d", row[0], i+2), got, want, tolerance)
		}
	}
}

// The same book, pp. 77 and 78, which rounds the last to 191.98.
func TestRegularAgainstExamples(t *testing.T) {
	hexagon := joint.RegularBySide(6, 40)
	within(t, "hexagon of side 40, area", hexagon.Area(), 4156.8, 0.15)
	within(t, "hexagon of side 40, inradius", hexagon.Apothem, 34.64, 0.005)

	twelve := joint.Regular{Sides: 12, Apothem: 8 * math.Cos(math.Pi/12)}
	within(t, "12 sides of circumradius 8, area", twelve.Area(), 192, 1e-9)
}

func someRegular(t *rapid.T) joint.Regular {
	return joint.Regular{
		Sides:   rapid.IntRange(3, 36).Draw(t, "sides"),
		Apothem: rapid.Float64Range(1, 5000).Draw(t, "apothem"),
	}
}

func TestRegularCorners(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r := someRegular(t)
		by := rapid.Float64Range(-r.Apothem/2, r.Apothem).Draw(t, "by")
		corners, grown := r.Corners(), r.Offset(by).Corners()
		if len(corners) != r.Sides {
			t.Fatalf("%d corners, want %d", len(corners), r.Sides)
		}
		if got := geometry.Area(corners); !agree(got, r.Area()) {
			t.Errorf("area of the corners %.9f, want %.9f", got, r.Area())
		}
		for i, c := range corners {
			next := corners[(i+1)%r.Sides]
			side := geometry.Segment{A: c, B: next}
			if got := side.Length(); !agree(got, r.Side()) {
				t.Errorf("side %d is %.9f long, want %.9f", i, got, r.Side())
			}
			if got := side.Distance(geometry.Point{}); !agree(got, r.Apothem) {
				t.Errorf("side %d stands %.9f from the centre, want %.9f", i, got, r.Apothem)
			}
			out := next.Sub(c).Perp().Mul(-1).Unit()
			if got := grown[i].Sub(c).Dot(out); !agree(got, by) {
				t.Errorf("corner %d moved %.9f square to its side, want %.9f", i, got, by)
			}
		}
		if first := (geometry.Segment{A: corners[0], B: corners[1]}).Mid(); first.Distance(geometry.Pt(0, r.Apothem)) > 1e-9*r.Apothem {
			t.Errorf("mid of side 0 at %v, want it straight above the centre", first)
		}
	})
}

func TestClipped(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r := someRegular(t)
		back := r.Side() / 2 * rapid.Float64Range(0.01, 0.99).Draw(t, "share")
		corners := r.Corners()
		clipped := joint.Top{Corners: corners, Clip: back}.Outline()
		// Each corner loses a triangle of two sides back with Angle between them.
		want := r.Area() - float64(r.Sides)*back*back*math.Sin(r.Angle())/2
		if got := geometry.Area(clipped); !agree(got/want, 1) {
			t.Errorf("area of the corners %.9f, want %.9f", got, want)
		}
		for i, c := range corners {
			before, after := clipped[2*i], clipped[2*i+1]
			if !agree(before.Distance(c), back) || !agree(after.Distance(c), back) {
				t.Errorf("corner %d clipped %.9f and %.9f back, want %.9f", i, before.Distance(c), after.Distance(c), back)
			}
			if got := before.Distance(after); !agree(got, r.ClipFlat(back)) {
				t.Errorf("flat %d is %.9f, want %.9f", i, got, r.ClipFlat(back))
			}
			next := clipped[(2*i+2)%len(clipped)]
			if got := after.Distance(next); !agree(got, r.Side()-2*back) {
				t.Errorf("what is left of side %d is %.9f, want %.9f", i, got, r.Side()-2*back)
			}
		}
	})
}

// A square clipped by 1 − 1/√2 of its side is a regular octagon.
func TestClippedSquareIsAnOctagon(t *testing.T) {
	square := joint.RegularBySide(4, 100)
	back := 100 * (1 - math.Sqrt2/2)
	within(t, "flat", square.ClipFlat(back), 100-2*back, 1e-9)
	within(t, "area", joint.Top{Corners: square.Corners(), Clip: back}.Area(), joint.Regular{Sides: 8, Apothem: 50}.Area(), 1e-9)
}

func TestRegularCheck(t *testing.T) {
	good := joint.Regular{Sides: 6, Apothem: 300}
	if err := good.Check(); err != nil {
		t.Errorf("%+v: %v", good, err)
	}
	for _, tt := range []struct {
		figure measure.ID
		want   string
		bad    joint.Regular
	}{
		{"polygon.sides", "≥ 3", joint.Regular{Sides: 2, Apothem: 300}},
		{"polygon.sides", "≤ 36", joint.Regular{Sides: 37, Apothem: 300}},
		{"polygon.apothem", "> 0 mm", joint.Regular{Sides: 6}},
		{"polygon.apothem", "≤ 10000 mm", joint.Regular{Sides: 6, Apothem: 10001}},
		{"polygon.apothem", "finite", joint.Regular{Sides: 6, Apothem: math.NaN()}},
	} {
		checkBound(t, tt.bad.Check(), tt.figure, tt.want)
	}
}

func ExampleRegular_Offset() {
	ring := joint.Ring{Sides: 6, Inside: 180, Width: 45, Depth: 30}
	top := ring.Polygon().Offset(ring.Width + 60) // overhangs the stretchers by 60 mm
	fmt.Println("side", measure.Length(top.Side()).Text(measure.Millimetre))
	fmt.Println("across flats", measure.Length(2*top.Apothem).Text(measure.Millimetre))
	// Output:
	// side 301.24 mm
	// across flats 521.77 mm
}
