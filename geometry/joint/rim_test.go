package joint

import (
	"errors"
	"math"
	"testing"

	"pgregory.net/rapid"

	"rodsheet/geometry"
	"rodsheet/geometry/measure"
)

// anyTop draws a top of each kind: round, or a polygon about the origin whose
// corners are sharp, clipped or rounded.
func anyTop(t *rapid.T) Top {
	mm := func(lo, hi float64, name string) float64 { return rapid.Float64Range(lo, hi).Draw(t, name) }
	if rapid.Bool().Draw(t, "round") {
		return Top{Diameter: mm(50, 900, "diameter")}
	}
	top := Top{Corners: []geometry.Point{
		{X: -mm(150, 300, "a"), Y: -mm(150, 300, "b")}, {X: mm(150, 300, "c"), Y: -mm(150, 300, "d")},
		{X: mm(150, 300, "e"), Y: mm(150, 300, "f")}, {X: -mm(150, 300, "g"), Y: mm(150, 300, "h")}}}
	switch rapid.IntRange(0, 2).Draw(t, "corners") {
	case 1:
		top.Clip = mm(1, 60, "clip")
	case 2:
		top.Round = mm(1, 60, "radius")
	}
	return top
}

// The figures of the edge against its outline as it is drawn, whose chords leave it
// by 0.002 mm at most: none may lie beyond it, nor farther within.
func TestRimAgainstItsChords(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		top := anyTop(t)
		if top.Check() != nil {
			t.Skip("no such top")
		}
		const chord = geometry.Sagitta
		out := top.Outline()
		u := geometry.Polar(1, rapid.Float64Range(0, 2*math.Pi).Draw(t, "direction"))
		support := math.Inf(-1)
		for _, p := range out {
			support = math.Max(support, p.Dot(u))
			if in := top.Inside(p); math.Abs(in) > 1e-9 {
				t.Errorf("a point of the edge lies %.9f inside it", in)
			}
			if d := top.Along(p.Unit()) - p.Norm(); math.Abs(d) > 1e-9 {
				t.Errorf("along it the edge is %.9f from its own point", d)
			}
		}
		if d := top.Support(u) - support; d < -1e-9 || d > chord+1e-9 {
			t.Errorf("support %.6f beyond the chords", d)
		}
		if in := top.Inside(u.Mul(top.Along(u))); math.Abs(in) > 1e-9 {
			t.Errorf("where the edge is met it lies %.9f inside", in)
		}
		var moment geometry.Point
		for i, a := range out {
			b := out[(i+1)%len(out)]
			moment = moment.Add(a.Add(b).Mul(a.Cross(b) / 6))
		}
		if d := top.Centroid().Distance(moment.Mul(1 / geometry.Area(out))); d > 2*chord {
			t.Errorf("centre of gravity %.6f from that of the chords", d)
		}
	})
}

// By hand: a square of 200 with corners of radius 40 reaches 60·√2 + 40 along its
// diagonal. A point 10 mm short of that lies 10 mm within, one 50 mm out 100 −
// 50/√2, for there the sides are nearer.
func TestRimByHand(t *testing.T) {
	top := RectangleTop(200, 200)
	top.Round = 40
	u, reach := geometry.Pt(1, 1).Unit(), 60*math.Sqrt2+40
	for _, tt := range []struct {
		name      string
		got, want float64
	}{
		{"support", top.Support(u), reach},
		{"along", top.Along(u), reach},
		{"at the corner", top.Inside(u.Mul(reach - 10)), 10},
		{"beyond it", top.Inside(u.Mul(reach + 10)), -10},
		{"near the sides", top.Inside(u.Mul(50)), 100 - 50/math.Sqrt2},
		{"width", top.Size().X, 200},
		{"centre", top.Centroid().Norm(), 0},
	} {
		if math.Abs(tt.got-tt.want) > 1e-9 {
			t.Errorf("%s %.9f, want %.9f", tt.name, tt.got, tt.want)
		}
	}
}

// A corner cannot be rounded to less than nothing, where no other figure is wrong;
// with none at all the corners are sharp.
func TestCornerRadiusIsNotNegative(t *testing.T) {
	top := RectangleTop(200, 200)
	if err := top.Check(); err != nil {
		t.Errorf("sharp corners: %v", err)
	}
	top.Round = -0.001
	var bound *measure.BoundError
	if err := top.Check(); !errors.As(err, &bound) || bound.Figure != "outline.round" || bound.Limit.Value != 0 {
		t.Errorf("a radius of %v: %v", top.Round, err)
	}
}

// Of several points that which lies least inside counts.
func TestInsideOfSeveral(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		top, want := anyTop(t), math.Inf(1)
		points := make([]geometry.Point, rapid.IntRange(1, 20).Draw(t, "points"))
		for i := range points {
			points[i] = geometry.Pt(rapid.Float64Range(-900, 900).Draw(t, "x"), rapid.Float64Range(-900, 900).Draw(t, "y"))
			want = min(want, top.Inside(points[i]))
		}
		if got := top.Inside(points...); math.Abs(got-want) > 1e-9 {
			t.Fatalf("%g inside, want %g", got, want)
		}
	})
}
