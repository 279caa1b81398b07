package geometry_test

import (
	"math"
	"slices"
	"testing"

	"pgregory.net/rapid"

	"rodsheet/geometry"
	"rodsheet/geometry/joint"
)

func somePoint(t *rapid.T, name string) geometry.Point {
	return geometry.Pt(rapid.Float64Range(-50, 50).Draw(t, name+" x"), rapid.Float64Range(-50, 50).Draw(t, name+" y"))
}

// A segment is what lies inside a convex outline and what lies outside.
func TestCropAndCutOutMakeTheWhole(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := geometry.Segment{A: somePoint(t, "a"), B: somePoint(t, "b")}
		convex := joint.RegularBySide(rapid.IntRange(3, 8).Draw(t, "sides"), 40).Corners()
		sum := 0.0
		for _, part := range geometry.CutOut(s, convex) {
			sum += part.Length()
		}
		if part, ok := geometry.ClipConvex(s, convex); ok {
			sum += part.Length()
			for i, c := range convex {
				if side := convex[(i+1)%len(convex)].Sub(c); side.Cross(part.Mid().Sub(c)) < -1e-9 {
					t.Errorf("%v is said to be inside", part.Mid())
				}
			}
		}
		if math.Abs(sum-s.Length()) > 1e-9 {
			t.Errorf("%.9f mm inside and outside, want %.9f", sum, s.Length())
		}
	})
}

// A corner given twice takes nothing from an outline.
func TestCutOutOfADoubledCorner(t *testing.T) {
	square := geometry.Box(0, 0, 10, 10).Corners()
	doubled := append(square[:2:2], square[1:]...)
	got := geometry.CutOut(geometry.Segment{A: geometry.Pt(-5, 5), B: geometry.Pt(15, 5)}, doubled)
	if len(got) != 2 || !agree(got[0].Length(), 5) || !agree(got[1].Length(), 5) {
		t.Errorf("outside lie %v", got)
	}
}

// outside returns how far p lies from the convex polygon, 0 for one inside.
func outside(p geometry.Point, convex []geometry.Point) float64 {
	nearest, inside := math.Inf(1), true
	for i, a := range convex {
		b := convex[(i+1)%len(convex)]
		side := b.Sub(a)
		inside = inside && side.Cross(p.Sub(a)) >= 0
		share := math.Max(0, math.Min(1, p.Sub(a).Dot(side)/side.Dot(side)))
		nearest = math.Min(nearest, p.Distance(a.Lerp(b, share)))
	}
	if inside {
		return 0
	}
	return nearest
}

// The hull of points holds every one of them, turns left all the way, and has
// no corner that is not one of them.
func TestHull(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		points := make([]geometry.Point, rapid.IntRange(3, 20).Draw(t, "points"))
		for i := range points {
			points[i] = somePoint(t, "p")
		}
		hull := geometry.Hull(points)
		if len(hull) < 3 {
			t.Skip("all in one line")
		}
		for _, p := range points {
			if off := outside(p, hull); off > 1e-4 {
				t.Errorf("%v lies %.6f mm outside", p, off)
			}
		}
		for i, c := range hull {
			d, e := hull[(i+1)%len(hull)], hull[(i+2)%len(hull)]
			if !slices.Contains(points, c) || d.Sub(c).Cross(e.Sub(d)) <= 0 {
				t.Errorf("no corner of the hull: %v, of %v", d, hull)
			}
		}
	})
	if got := geometry.Hull(nil); got != nil {
		t.Errorf("the hull of nothing is %v", got)
	}
}

// A line divides a convex polygon into two that make up the whole.
func TestLeftAndRightMakeTheWhole(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		convex := joint.RegularBySide(rapid.IntRange(3, 8).Draw(t, "sides"), 40).Corners()
		line := geometry.Segment{A: somePoint(t, "a"), B: somePoint(t, "b")}
		if line.Length() < 1 {
			t.Skip("no direction")
		}
		left, right := geometry.LeftOf(convex, line), geometry.LeftOf(convex, geometry.Segment{A: line.B, B: line.A})
		if got, want := geometry.Area(left)+geometry.Area(right), geometry.Area(convex); !agree(got/want, 1) {
			t.Errorf("both sides hold %.9f mm², want %.9f", got, want)
		}
		for _, q := range left {
			if line.B.Sub(line.A).Cross(q.Sub(line.A)) < -1e-6 {
				t.Errorf("%v lies to the right", q)
			}
		}
	})
}

// agree reports whether two lengths agree to 1e-9 of their size.
func agree(got, want float64) bool {
	return math.Abs(got-want) <= 1e-9*math.Max(1, math.Abs(want))
}

// A band round circles is the hull of points on all of them, and touches the farthest in
// every direction; so it does where some hold others, stand on each other or are points.
func TestRoundHull(t *testing.T) {
	held := 0
	rapid.Check(t, func(t *rapid.T) {
		var circles []geometry.Circle
		grid := func(name string, most int) float64 { return 10 * float64(rapid.IntRange(0, most).Draw(t, name)) }
		for range rapid.IntRange(1, 5).Draw(t, "circles") {
			circles = append(circles, geometry.Circle{Centre: geometry.Pt(grid("x", 9), grid("y", 9)), Radius: grid("radius", 5)})
		}
		for i, c := range circles {
			if slices.ContainsFunc(circles[:i], func(d geometry.Circle) bool { return c.Centre.Distance(d.Centre) < math.Abs(c.Radius-d.Radius) }) {
				held++
			}
		}
		got := geometry.RoundHull(circles...)
		var points []geometry.Point
		for _, c := range circles {
			for k := range 720 {
				points = append(points, c.Centre.Add(geometry.Polar(c.Radius, math.Pi*float64(k)/360)))
			}
		}
		// Half a degree leaves a circle of 50 mm by 0.0005 mm, its chords by a Sagitta.
		if a, b := geometry.Area(got), geometry.Area(geometry.Hull(points)); math.Abs(a-b) > 1e-5*(b+1)+0.002*600 {
			t.Fatalf("%v: area %.4f mm², want %.4f", circles, a, b)
		}
		for k := range 90 {
			way := geometry.Polar(1, math.Pi*float64(k)/45+0.01)
			reaches, want := math.Inf(-1), math.Inf(-1)
			for _, p := range got {
				reaches = math.Max(reaches, p.Dot(way))
			}
			for _, c := range circles {
				want = math.Max(want, c.Centre.Dot(way)+c.Radius)
			}
			if math.Abs(reaches-want) > geometry.Sagitta {
				t.Fatalf("%v: reaches %.4f mm, want %.4f", circles, reaches, want)
			}
		}
		for i, p := range got { // it turns to the left only
			a, b := got[(i+len(got)-1)%len(got)], got[(i+1)%len(got)]
			if p.Sub(a).Cross(b.Sub(p)) < -1e-6 {
				t.Fatalf("%v: turns to the right at %v", circles, p)
			}
		}
	})
	if held == 0 {
		t.Error("no circle held another")
	}
}
