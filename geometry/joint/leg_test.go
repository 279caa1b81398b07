package joint_test

import (
	"fmt"
	"math"
	"rodsheet/geometry/joint"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"
	"pgregory.net/rapid"

	"rodsheet/geometry/measure"
)

func someLeg(t *rapid.T) joint.Leg {
	return joint.Leg{
		Breadth:   rapid.Float64Range(10, 120).Draw(t, "breadth"),
		Thickness: rapid.Float64Range(10, 120).Draw(t, "thickness"),
		Height:    rapid.Float64Range(100, 1200).Draw(t, "height"),
		Splay:     measure.Radians(rapid.Float64Range(0, 59.9).Draw(t, "splay")),
		At:        rapid.Float64Range(50, 900).Draw(t, "at"),
	}
}

// Worked by hand from the triangle 3-4-5: tan Splay is 3/4.
func TestLegByHand(t *testing.T) {
	l := joint.Leg{Breadth: 40, Thickness: 20, Height: 400, Splay: math.Atan(0.75), At: 250}
	for _, tt := range []struct {
		name      string
		got, want float64
	}{
		{"length", l.Length(), 500},
		{"blank", l.Blank(), 530},
		{"section", l.Section(), 50},
		{"foot", l.Foot(), 550},
		{"back, half way", l.Back(200), 400},
		{"stretcher side, half way", l.StretcherSide(200), 350},
	} {
		within(t, tt.name, tt.got, tt.want, 1e-9)
	}
}

// The leg in space: two faces turned by the splay, the first through the
// outer edge of the head, cut by the two levels.
func TestLegIsWherePlanesMeet(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		l := someLeg(t)
		tilt := r3.NewRotation(-l.Splay, r3.Vec{Y: 1})
		normal, along := tilt.Rotate(r3.Vec{X: 1}), tilt.Rotate(r3.Vec{Z: -1})
		head := r3.Vec{X: l.At, Z: l.Height}
		front := plane{r3.Vec{Y: 1}, 0}
		outer := plane{normal, r3.Dot(normal, head)}
		inner := plane{normal, outer.c - l.Breadth}
		at := func(face plane, z float64) r3.Vec { return meet(face, front, plane{r3.Vec{Z: 1}, z}) }

		if got := at(outer, 0).X; !agree(l.Foot(), got) {
			t.Errorf("foot %.9f, want %.9f", l.Foot(), got)
		}
		if got := r3.Norm(r3.Sub(at(outer, l.Height), at(outer, 0))); !agree(l.Length(), got) {
			t.Errorf("length %.9f, want %.9f", l.Length(), got)
		}
		below := l.Height * rapid.Float64Range(0, 1).Draw(t, "share")
		if got := at(inner, l.Height-below).X; !agree(l.StretcherSide(below), got) {
			t.Errorf("inner face %.9f, want %.9f", l.StretcherSide(below), got)
		}
		top := r3.Dot(along, at(inner, l.Height))
		if want := math.Max(top, r3.Dot(along, at(outer, 0))) - math.Min(r3.Dot(along, head), top); l.Blank() < want-1e-9 {
			t.Errorf("blank %.9f, the leg needs %.9f", l.Blank(), want)
		}
	})
}

func TestLegCheck(t *testing.T) {
	good := joint.Leg{Breadth: 45, Thickness: 30, Height: 420, Splay: 0.2, At: 300}
	refuses(t, good, []refused[joint.Leg]{
		{"leg.breadth", "> 0 mm", func(l *joint.Leg) { l.Breadth = 0 }},
		{"leg.thickness", "≤ 1000 mm", func(l *joint.Leg) { l.Thickness = 1001 }},
		{"leg.height", "> 0 mm", func(l *joint.Leg) { l.Height = 0 }},
		{"leg.height", "≤ 10000 mm", func(l *joint.Leg) { l.Height = 10001 }},
		{"leg.splay", "≥ 0°", func(l *joint.Leg) { l.Splay = -0.1 }},
		{"leg.splay", "≤ 60°", func(l *joint.Leg) { l.Splay = 1.1 }},
		{"leg.splay", "finite", func(l *joint.Leg) { l.Splay = math.NaN() }},
		{"leg.at", "> 0 mm", func(l *joint.Leg) { l.At = 0 }},
		{"leg.at", "≤ 10000 mm", func(l *joint.Leg) { l.At = 10001 }},
	})
}

func ExampleLeg() {
	leg := joint.Leg{Breadth: 45, Thickness: 40, Height: 420, Splay: measure.Radians(14.5), At: 260}
	for _, f := range []struct {
		name string
		mm   float64
	}{{"between level cuts", leg.Length()}, {"blank", leg.Blank()}, {"foot from mid-length", leg.Foot()}} {
		fmt.Println(f.name, measure.Length(f.mm).Text(measure.Millimetre))
	}
	// Output:
	// between level cuts 433.82 mm
	// blank 445.46 mm
	// foot from mid-length 368.62 mm
}
