package joint_test

import (
	"errors"
	"math"
	"rodsheet/geometry/joint"
	"testing"

	"pgregory.net/rapid"

	"rodsheet/geometry"
	"rodsheet/geometry/measure"
)

func perimeter(outline []geometry.Point) float64 {
	sum := 0.0
	for i, p := range outline {
		sum += p.Distance(outline[(i+1)%len(outline)])
	}
	return sum
}

// The figures of any top are those of its outline, which the chords of its
// arcs miss by little.
func TestTopAgainstItsOutline(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		sides := rapid.IntRange(3, 12).Draw(t, "sides")
		r := joint.RegularBySide(sides, rapid.Float64Range(100, 1000).Draw(t, "side"))
		top := joint.Top{Corners: geometry.Scale(1, rapid.Float64Range(0.5, 2).Draw(t, "stretch")).ApplyAll(r.Corners())}
		most := math.Inf(1)
		for i, c := range top.Corners {
			most = math.Min(most, c.Distance(top.Corners[(i+1)%sides])/2)
		}
		size := rapid.Float64Range(1, most/5).Draw(t, "size")
		switch rapid.IntRange(0, 2).Draw(t, "corner") {
		case 1:
			top.Clip = size
		case 2:
			top.Round = size
		}
		if err := top.Check(); err != nil {
			if top.Round > 0 {
				t.Skip("the rounding of a sharp corner takes more than half a side")
			}
			t.Fatal(err)
		}
		outline := top.Outline()
		chord := 1e-4 * float64(sides)
		if got := geometry.Area(outline) / top.Area(); math.Abs(got-1) > chord {
			t.Errorf("the outline has %.7f of the area", got)
		}
		if got := perimeter(outline) / top.Perimeter(); math.Abs(got-1) > chord {
			t.Errorf("the outline has %.7f of the perimeter", got)
		}
		for i, p := range outline {
			in, out := p.Sub(outline[(i+len(outline)-1)%len(outline)]), outline[(i+1)%len(outline)].Sub(p)
			if in.Cross(out) < -1e-9 {
				t.Fatalf("point %d of the outline turns inward", i)
			}
		}
	})
}

// Machinery's Handbook, 31st ed., p. 81, gives the area of an ellipse; here a
// circle of 400 mm by π·r², and a square of 1000 mm whose corners of 100 mm
// lose (4 − π)·r².
func TestTopFigures(t *testing.T) {
	round := joint.Top{Diameter: 400}
	within(t, "area of a circle", round.Area(), math.Pi*200*200, 1e-9)
	within(t, "its perimeter", round.Perimeter(), math.Pi*400, 1e-9)
	square := joint.RectangleTop(1000, 1000)
	square.Round = 100
	within(t, "rounded square", square.Area(), 1e6-(4-math.Pi)*1e4, 1e-6)
	within(t, "its perimeter", square.Perimeter(), 4*800+2*math.Pi*100, 1e-9)
	clipped := joint.RectangleTop(800, 600)
	clipped.Clip = 50
	within(t, "clipped rectangle", clipped.Area(), 800*600-2*50*50, 1e-6)
	within(t, "its perimeter", clipped.Perimeter(), 2*700+2*500+4*50*math.Sqrt2, 1e-9)
}

func TestTopRefuses(t *testing.T) {
	rectangle := joint.RectangleTop(800, 600)
	star := make([]geometry.Point, 5)
	for i := range star {
		star[i] = geometry.Polar(300, float64(i)*4*math.Pi/5)
	}
	for _, c := range []struct {
		name   string
		top    joint.Top
		figure measure.ID
	}{
		{"nothing", joint.Top{}, "outline.corners"},
		{"diameter below zero", joint.Top{Diameter: -1}, "outline.diameter"},
		{"diameter of 11 m", joint.Top{Diameter: 11000}, "outline.diameter"},
		{"diameter not a number", joint.Top{Diameter: math.NaN()}, "outline.diameter"},
		{"clockwise", joint.Top{Corners: []geometry.Point{{X: 0, Y: 100}, {X: 100, Y: 0}, {X: 0, Y: 0}}}, "outline.corner"},
		{"corner twice", joint.Top{Corners: []geometry.Point{{}, {}, {X: 100, Y: 0}, {X: 0, Y: 100}}}, "outline.side"},
		{"star", joint.Top{Corners: star}, "outline.turns"},
		{"clip of half a side", joint.Top{Corners: rectangle.Corners, Clip: 300.1}, "outline.clip"},
		{"radius over half a side", joint.Top{Corners: rectangle.Corners, Round: 300.1}, "outline.round"},
		{"clip and radius", joint.Top{Corners: rectangle.Corners, Clip: 10, Round: 10}, "outline.round"},
		{"far away", joint.Top{Corners: []geometry.Point{{}, {X: 1e5}, {X: 1e5, Y: 1e5}}}, "outline.reach"},
	} {
		var bound *measure.BoundError
		if err := c.top.Check(); !errors.As(err, &bound) || bound.Figure != c.figure {
			t.Errorf("%s: got %v, want an error about %q", c.name, err, c.figure)
		}
	}
}
