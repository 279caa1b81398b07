package joint_test

import (
	"errors"
	"fmt"
	"math"
	"rodsheet/geometry/joint"
	"slices"
	"testing"

	"pgregory.net/rapid"

	"rodsheet/geometry"
	"rodsheet/geometry/measure"
)

// perFoot is a bar an inch wider than its taper over one foot of run, in
// inches, tapered on opposite faces.
func perFoot(taper float64) joint.Taper {
	return joint.Taper{Length: 12, Top: taper + 1, Foot: 1, Faces: joint.OppositeFaces}
}

// "Tapers per Foot and Corresponding Angles", a machinists' table: good to
// 0.006°, but for two rows that are about 19″ low.
func TestIncludedAgainstTapersPerFoot(t *testing.T) {
	for _, row := range tableRows(t, "tapers-per-foot.csv") {
		if row[0] == "9/2" || row[0] == "6" {
			continue
		}
		want := dms(fraction(t, row[1]), fraction(t, row[2]), fraction(t, row[3]))
		got := perFoot(fraction(t, row[0])).Included()
		within(t, row[0]+" in per foot", measure.Degrees(got), measure.Degrees(want), 0.006)
	}
}

func TestIncludedAgainstBooks(t *testing.T) {
	for _, c := range []struct {
		name        string
		perFoot     float64
		want, bySec float64 // rad, tolerance in seconds
	}{
		// Machinery's Handbook, 31st ed., p. 695.
		{"6 1/8 in per foot", 6.125, dms(28, 38, 1), 1},
		// 7:24 and 1:10 are from memory.
		{"7:24", 3.5, dms(16, 35, 39), 1},
		{"1:10", 1.2, dms(5, 43, 29), 1},
	} {
		got := perFoot(c.perFoot).Included()
		within(t, c.name, measure.Degrees(got), measure.Degrees(c.want), c.bySec/3600)
	}
}

// One tapered face and two opposite ones with the same top and foot do not
// make the same angle.
func TestOneFaceIsNotOpposite(t *testing.T) {
	one := joint.Taper{Length: 400, Top: 90, Foot: 30, Faces: joint.OneFace}
	both := one
	both.Faces = joint.OppositeFaces
	within(t, "one face", measure.Degrees(one.ToEdge()), 8.530766, 1e-6)    // atan(60/400)
	within(t, "opposite", measure.Degrees(both.ToEdge()), 4.289153, 1e-6)   // atan(30/400)
	within(t, "included", measure.Degrees(both.Included()), 8.578307, 1e-6) // twice that
	if one.Included() != one.ToEdge() {
		t.Errorf("one face: included %.9f, want the taper itself", one.Included())
	}
}

func TestTaperFacesAreNamed(t *testing.T) {
	for want, f := range map[string]joint.TaperFaces{
		"one": joint.OneFace, "adjacent": joint.AdjacentFaces,
		"opposite": joint.OppositeFaces, "four": joint.FourFaces,
	} {
		if got := f.String(); got != want {
			t.Errorf("named %q, want %q", got, want)
		}
	}
}

func TestTaperCheck(t *testing.T) {
	good := joint.Taper{Length: 700, Top: 40, Foot: 22, Start: 100}
	if err := good.Check(); err != nil {
		t.Fatalf("good taper: %v", err)
	}
	for _, c := range []struct {
		name   string
		change func(*joint.Taper)
		figure measure.ID
	}{
		{"no length", func(t *joint.Taper) { t.Length = 0 }, "taper.length"},
		{"absurd length", func(t *joint.Taper) { t.Length = 3001 }, "taper.length"},
		{"length NaN", func(t *joint.Taper) { t.Length = math.NaN() }, "taper.length"},
		{"no top", func(t *joint.Taper) { t.Top = 0 }, "taper.top"},
		{"absurd top", func(t *joint.Taper) { t.Top = 601 }, "taper.top"},
		{"top infinite", func(t *joint.Taper) { t.Top = math.Inf(1) }, "taper.top"},
		{"no foot", func(t *joint.Taper) { t.Foot = 0 }, "taper.foot"},
		{"foot negative", func(t *joint.Taper) { t.Foot = -1 }, "taper.foot"},
		{"foot NaN", func(t *joint.Taper) { t.Foot = math.NaN() }, "taper.foot"},
		{"foot wider", func(t *joint.Taper) { t.Foot = 50 }, "taper.foot"},
		{"foot as wide", func(t *joint.Taper) { t.Foot = 40 }, "taper.foot"},
		{"start negative", func(t *joint.Taper) { t.Start = -1 }, "taper.start"},
		{"start at the foot", func(t *joint.Taper) { t.Start = 700 }, "taper.start"},
		{"start beyond", func(t *joint.Taper) { t.Start = 800 }, "taper.start"},
		{"start NaN", func(t *joint.Taper) { t.Start = math.NaN() }, "taper.start"},
		{"steeper than 45°", func(t *joint.Taper) { t.Start = 690 }, "taper.run"},
		{"no such faces", func(t *joint.Taper) { t.Faces = 9 }, "taper.faces"},
	} {
		bad := good
		c.change(&bad)
		var bound *measure.BoundError
		if err := bad.Check(); !errors.As(err, &bound) || bound.Figure != c.figure {
			t.Errorf("%s: err = %v, want a bound on %q", c.name, err, c.figure)
		}
	}
}

func TestStations(t *testing.T) {
	for _, c := range []struct {
		length, start float64
		want          []float64
	}{
		{200, 0, []float64{0, 50, 100, 150, 200}},
		{210, 60, []float64{0, 50, 60, 100, 150, 200, 210}},
		{210, 100.05, []float64{0, 50, 100, 150, 200, 210}},
		{200.04, 199, []float64{0, 50, 100, 150, 199, 200.04}},
		{30, 0, []float64{0, 30}},
	} {
		got := joint.Taper{Length: c.length, Top: 40, Foot: 39, Start: c.start}.Stations(50)
		if !slices.Equal(got, c.want) {
			t.Errorf("length %.2f, start %.2f: %v, want %v", c.length, c.start, got, c.want)
		}
	}
}

func drawTaper(t *rapid.T) joint.Taper {
	length := rapid.Float64Range(100, 3000).Draw(t, "length")
	top := rapid.Float64Range(10, 100).Draw(t, "top")
	taper := joint.Taper{
		Length: length, Top: top,
		Foot:  top * rapid.Float64Range(0.05, 0.95).Draw(t, "foot"),
		Start: rapid.Float64Range(0, 0.9).Draw(t, "start") * (length - top),
		Faces: joint.TaperFaces(rapid.IntRange(0, 3).Draw(t, "faces")),
	}
	if err := taper.Check(); err != nil {
		t.Skip("no such leg")
	}
	return taper
}

// What is cut off is half of the box about it, on one edge or shared by two.
func TestTaperAreas(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		taper := drawTaper(t)
		sum := 0.0
		for _, w := range taper.Waste() {
			if geometry.Area(w) <= 0 {
				t.Fatalf("waste %v does not run counter-clockwise", w)
			}
			sum += geometry.Area(w)
		}
		want := (taper.Length - taper.Start) * (taper.Top - taper.Foot) / 2
		if math.Abs(sum-want) > 1e-9*taper.Length*taper.Top {
			t.Fatalf("waste %.9f, want %.9f", sum, want)
		}
	})
}

// The cuts start at full width, end at the foot, lean by the angle, and the
// widths along the leg lie on them.
func TestTaperCuts(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		taper := drawTaper(t)
		same := func(what string, got, want float64) {
			if math.Abs(got-want) > 1e-9 {
				t.Fatalf("%s = %.12f, want %.12f", what, got, want)
			}
		}
		same("width at the top", taper.Width(0), taper.Top)
		same("width at the start", taper.Width(taper.Start), taper.Top)
		same("width at the foot", taper.Width(taper.Length), taper.Foot)
		same("taper over the run", taper.NarrowingOver(taper.Run()), taper.Top-taper.Foot)

		cuts := taper.Cuts()
		far := cuts[0]
		same("start of the cut, x", far.A.X, taper.Start)
		same("start of the cut, y", far.A.Y, taper.Top)
		same("foot of the cut, x", far.B.X, taper.Length)
		same("lean of the cut", -far.Angle(), taper.ToEdge())

		x := taper.Start + taper.Run()*rapid.Float64Range(0, 1).Draw(t, "share")
		lo, hi := taper.Edges(x)
		same("far edge", far.Distance(geometry.Pt(x, hi)), 0)
		if !taper.Faces.Symmetric() {
			same("foot of the cut, y", far.B.Y, taper.Foot)
			same("reference edge", lo, 0)
			return
		}
		near := cuts[1]
		same("near edge", near.Distance(geometry.Pt(x, lo)), 0)
		same("foot", far.B.Y-near.B.Y, taper.Foot)
		same("centre", far.B.Y+near.B.Y, taper.Top)
		same("included", near.Angle()-far.Angle(), taper.Included())
	})
}

func TestTaperHatchStaysInWaste(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		taper := drawTaper(t)
		for i, w := range taper.Waste() {
			for _, s := range geometry.Hatch(w, math.Pi/4, 3) {
				for _, p := range []geometry.Point{s.A, s.Mid(), s.B} {
					if inside(w, p) < -1e-9 {
						t.Fatalf("waste %d: hatch leaves it at %v", i, p)
					}
				}
			}
		}
	})
}

// inside returns the least distance in mm from p to the sides of a convex
// polygon, negative where p is outside.
func inside(convex []geometry.Point, p geometry.Point) float64 {
	least := math.Inf(1)
	for i, a := range convex {
		side := convex[(i+1)%len(convex)].Sub(a)
		least = math.Min(least, side.Unit().Cross(p.Sub(a)))
	}
	return least
}

func ExampleTaper() {
	leg := joint.Taper{Length: 700, Top: 40, Foot: 22, Start: 150, Faces: joint.OneFace}
	fmt.Println("taper", measure.Angle(leg.ToEdge()).Text(measure.Millimetre))
	fmt.Println("width 400 mm down", measure.Length(leg.Width(400)).Text(measure.Millimetre))
	// Output:
	// taper 1.87°
	// width 400 mm down 31.82 mm
}
