package joint_test

import (
	"encoding/csv"
	"errors"
	"math"
	"os"
	"path/filepath"
	"rodsheet/geometry/joint"
	"strconv"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"rodsheet/geometry"
	"rodsheet/geometry/measure"
)

// tableRows reads a table of testdata without its head.
func tableRows(t *testing.T, name string) [][]string {
	t.Helper()
	f, err := os.Open(filepath.Join("testdata", name))
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	r := csv.NewReader(f)
	r.Comment = '#'
	rows, err := r.ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	if len(rows) < 2 {
		t.Fatalf("%s holds no rows", name)
	}
	return rows[1:]
}

// fraction reads "3 7/32", "7/2" or "12".
func fraction(t *testing.T, s string) float64 {
	t.Helper()
	sum := 0.0
	for _, part := range strings.Fields(s) {
		num, den, isFraction := strings.Cut(part, "/")
		n, err := strconv.ParseFloat(num, 64)
		if err != nil {
			t.Fatal(err)
		}
		if isFraction {
			d, err := strconv.ParseFloat(den, 64)
			if err != nil {
				t.Fatal(err)
			}
			n /= d
		}
		sum += n
	}
	return sum
}

// dms is an angle in radians from degrees, minutes and seconds.
func dms(deg, min, sec float64) float64 { return measure.Radians(deg + min/60 + sec/3600) }

func within(t interface {
	Helper()
	Errorf(string, ...any)
}, what string, got, want, tolerance float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tolerance) {
		t.Errorf("%s = %.9f, want %.9f ± %.9f", what, got, want, tolerance)
	}
}

// The Building Trades Pocketbook, International Correspondence Schools,
// "Laying-Out Angles": good to 1/64 in.
func TestRiseAgainstBevelTable(t *testing.T) {
	for _, row := range tableRows(t, "bevel-triangles.csv") {
		angle, base := measure.Radians(fraction(t, row[0])), fraction(t, row[1])
		tri := joint.Triangle{Angle: angle, Base: base}
		within(t, "rise at "+row[0]+"°", tri.Rise(), fraction(t, row[2]), 1.0/64)
	}
}

// The same page: good to 1/64 in.
func TestChordAgainstTable(t *testing.T) {
	for _, row := range tableRows(t, "chords-r6.csv") {
		got := joint.Chord(6, measure.Radians(fraction(t, row[0])))
		within(t, "chord of "+row[0]+"°", got, fraction(t, row[1]), 1.0/64)
	}
}

// Rise in inches over a run of 12 in.
func TestPitches(t *testing.T) {
	for _, c := range []struct {
		name            string
		rise, angle, by float64 // by is the tolerance in degrees
	}{
		// The Building Trades Pocketbook, same page: good to 2′.
		{"4:12", 4, dms(18, 25, 0), 2.0 / 60},
		{"6:12", 6, dms(26, 33, 0), 2.0 / 60},
		{"8:12", 8, dms(33, 42, 0), 2.0 / 60},
		{"16:12", 16, dms(53, 7, 0), 2.0 / 60},
		// Hodgson, ABC of the Steel Square, Fig. 33: half, "nearly 34", "about 27".
		{"half pitch", 12, measure.Radians(45), 1e-9},
		{"third pitch", 8, measure.Radians(34), 0.5},
		{"quarter pitch", 6, measure.Radians(27), 0.5},
	} {
		at := func(deg float64) float64 { return joint.RiseOver(12, c.angle+measure.Radians(deg)) }
		if !(at(-c.by) <= c.rise && c.rise <= at(c.by)) {
			t.Errorf("%s: rise %.3f is outside %.3f to %.3f", c.name, c.rise, at(-c.by), at(c.by))
		}
	}
}

// Machinery's Handbook, 31st ed., pp. 99–101, right-angled triangles.
func TestTriangleAgainstHandbook(t *testing.T) {
	slope := func(t joint.Triangle) float64 { return math.Hypot(t.Base, t.Rise()) }
	// Hypotenuse 22, angle 41°36′: sides 16.4516 and 14.6065.
	a := joint.Triangle{Angle: dms(41, 36, 0), Base: 16.4516}
	within(t, "slope", slope(a), 22, 1e-4)
	within(t, "rise", a.Rise(), 14.6065, 1e-4)
	// Hypotenuse 25, side 20: 53°8′ opposite that side.
	b := joint.Triangle{Angle: dms(53, 8, 0), Base: 15}
	within(t, "slope", slope(b), 25, 0.006)
	within(t, "rise", b.Rise(), 20, 0.006)
	// Sides 36 and 15: hypotenuse 39, angle 67°23′.
	c := joint.Triangle{Angle: math.Atan2(36, 15), Base: 15}
	within(t, "slope", slope(c), 39, 1e-9)
	within(t, "angle in degrees", measure.Degrees(c.Angle), 67+23.0/60, 0.5/60)
	// Side 12 opposite 65°: hypotenuse 13.2405, other side 5.5957.
	d := joint.Triangle{Angle: dms(65, 0, 0), Base: 5.5957}
	within(t, "slope", slope(d), 13.2405, 2e-4)
	within(t, "rise", d.Rise(), 12, 2e-4)
}

// Dovetails of 1 in 6 and 1 in 8: common practice, no source.
func TestDovetailSlopes(t *testing.T) {
	within(t, "1:6", joint.RiseOver(6, measure.Radians(9.4623)), 1, 1e-5)
	within(t, "1:8", joint.RiseOver(8, measure.Radians(7.1250)), 1, 1e-5)
}

func TestSlipError(t *testing.T) {
	flat := joint.Triangle{Angle: dms(14, 30, 0), Base: 200}
	within(t, "at a base of 200", measure.Degrees(flat.SlipError(0.25)), 0.0716, 1e-4)
	half := joint.Triangle{Angle: dms(14, 30, 0), Base: 100}
	within(t, "at a base of 100", measure.Degrees(half.SlipError(0.25)), 0.1432, 1e-4)
	// A steep triangle stands on its rise: 25·tan 80° = 141.78.
	steep := joint.Triangle{Angle: dms(80, 0, 0), Base: 25}
	within(t, "at a rise of 141.78", steep.SlipError(0.25), math.Atan(0.25/141.782), 1e-7)
}

func TestAcute(t *testing.T) {
	for _, c := range []struct {
		deg, want float64
		obtuse    bool
	}{
		{0.5, 0.5, false}, {14.5, 14.5, false}, {89.5, 89.5, false},
		{90.5, 89.5, true}, {120, 60, true}, {179.5, 0.5, true},
	} {
		got, obtuse, err := joint.Acute(measure.Radians(c.deg))
		if err != nil || obtuse != c.obtuse {
			t.Errorf("Acute(%.1f°) obtuse = %v, err %v, want %v", c.deg, obtuse, err, c.obtuse)
		}
		within(t, "acute", measure.Degrees(got), c.want, 1e-9)
	}
}

func TestAcuteRefuses(t *testing.T) {
	for _, deg := range []float64{0, -1, 0.49, 89.51, 90, 90.49, 179.51, 180, 1e9, math.NaN(), math.Inf(1), math.Inf(-1)} {
		_, _, err := joint.Acute(measure.Radians(deg))
		var bound *measure.BoundError
		if !errors.As(err, &bound) || bound.Figure != "triangle.angle" {
			t.Errorf("Acute(%.2f°) err = %v, want a bound on the angle", deg, err)
		}
	}
}

func drawGauge(t *rapid.T) joint.AngleGauge {
	return joint.AngleGauge{
		Angle:  measure.Radians(rapid.Float64Range(0.5, 89.5).Draw(t, "degrees")),
		Length: rapid.Float64Range(100, 1000).Draw(t, "length"),
		Height: rapid.Float64Range(50, 1000).Draw(t, "height"),
	}
}

// Every corner of the outline is where its figures say, and the outline keeps
// to its bounds.
func TestAngleGaugeLaws(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		g := drawGauge(t)
		tri, out := g.Triangle(), g.Outline()
		box := geometry.Bounds(out...)
		if math.Abs(box.Width()-g.Length) > 1e-9 || math.Abs(box.Height()-tri.Rise()) > 1e-9 {
			t.Fatalf("outline %.9f × %.9f, want %.9f × %.9f", box.Width(), box.Height(), g.Length, tri.Rise())
		}
		if tri.Rise() > g.Height*(1+1e-9) {
			t.Fatalf("rise %.9f passes %.9f", tri.Rise(), g.Height)
		}
		if tri.Base < g.Length && math.Abs(tri.Rise()-g.Height) > 1e-9*g.Height {
			t.Fatalf("rise %.9f wastes some of %.9f", tri.Rise(), g.Height)
		}
		want := (g.Length - tri.Base/2) * tri.Rise()
		if math.Abs(geometry.Area(out)-want) > 1e-9*want {
			t.Fatalf("area %.9f, want %.9f", geometry.Area(out), want)
		}
		long := math.Hypot(tri.Base, tri.Rise())
		slope := geometry.Segment{A: out[0], B: out[len(out)-1]}
		if math.Abs(slope.Angle()-g.Angle) > 1e-9 || math.Abs(slope.Length()-long) > 1e-9*long {
			t.Fatalf("sloping edge %.9f long at %.9f, want %.9f at %.9f", slope.Length(), slope.Angle(), long, g.Angle)
		}
	})
}

// The angles at the corners of the triangle, measured between its sides.
func TestTriangleAngles(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		tri := drawGauge(t).Triangle()
		c := tri.Corners()
		want := []float64{tri.Angle, math.Pi / 2, tri.OffSquare()}
		sum := 0.0
		for i, p := range c {
			next, last := c[(i+1)%3].Sub(p), c[(i+2)%3].Sub(p)
			got := math.Atan2(next.Cross(last), next.Dot(last))
			sum += got
			if math.Abs(got-want[i]) > 1e-9 {
				t.Fatalf("angle %d is %.12f, want %.12f", i, got, want[i])
			}
		}
		if math.Abs(sum-math.Pi) > 1e-12 {
			t.Fatalf("angles sum to %.15f", sum)
		}
	})
}
