package joint_test

import (
	"math"
	"rodsheet/geometry/joint"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"
	"pgregory.net/rapid"

	"rodsheet/geometry"
	"rodsheet/geometry/measure"
)

func someBridle(t *rapid.T) joint.Bridle {
	width := rapid.Float64Range(5, 100).Draw(t, "width")
	return joint.Bridle{
		Width: width,
		Depth: rapid.Float64Range(5, 150).Draw(t, "depth"),
		Angle: measure.Radians(rapid.Float64Range(0, 60).Draw(t, "splay")),
		Leg:   rapid.Float64Range(5, 150).Draw(t, "leg"),
		Tenon: width * rapid.Float64Range(0.01, 0.99).Draw(t, "tenon share"),
	}
}

// A plane is {p : n·p = c}.
type plane struct {
	n r3.Vec
	c float64
}

// meet returns the point on three planes, by Cramer's rule in vector form.
func meet(a, b, c plane) r3.Vec {
	bc, ca, ab := r3.Cross(b.n, c.n), r3.Cross(c.n, a.n), r3.Cross(a.n, b.n)
	sum := r3.Add(r3.Add(r3.Scale(a.c, bc), r3.Scale(b.c, ca)), r3.Scale(c.c, ab))
	return r3.Scale(1/r3.Dot(a.n, bc), sum)
}

// The corner in space, foot leaning out towards −x: stretcher along x between
// z = 0 and its top, the leg between two planes tilted by the splay, the
// outer one through the origin. Every shoulder and end is where planes meet.
func TestBridleEndsAreWherePlanesMeet(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		b := someBridle(t)
		front := plane{r3.Vec{Y: -1}, 0}
		under, top := plane{r3.Vec{Z: 1}, 0}, plane{r3.Vec{Z: 1}, b.Depth}
		tilted := r3.NewRotation(b.Angle, r3.Vec{Y: 1}).Rotate(r3.Vec{X: 1})
		outer, inner := plane{tilted, 0}, plane{tilted, b.Leg}

		foot := meet(outer, under, front)
		s := b.Stretcher()
		for _, tt := range []struct {
			name string
			at   r3.Vec
			got  float64
		}{
			{"shoulder, underside", meet(inner, under, front), s.Shoulder(0)},
			{"shoulder, top", meet(inner, top, front), s.Shoulder(b.Depth)},
			{"end, underside", foot, s.End(0)},
			{"end, top", meet(outer, top, front), s.End(b.Depth)},
		} {
			if want := tt.at.X - foot.X; !agree(tt.got, want) {
				t.Errorf("stretcher %s at %v, planes meet at %v", tt.name, tt.got, want)
			}
		}

		down := r3.Unit(r3.Sub(meet(inner, under, front), meet(inner, top, front)))
		datum := meet(outer, top, front)
		h := b.Head()
		for _, tt := range []struct {
			name string
			at   r3.Vec
			got  float64
		}{
			{"shoulder, back", meet(outer, under, front), h.Shoulder(0)},
			{"shoulder, stretcher side", meet(inner, under, front), h.Shoulder(b.Leg)},
			{"head, back", datum, h.End(0)},
			{"head, stretcher side", meet(inner, top, front), h.End(b.Leg)},
		} {
			if want := r3.Dot(r3.Sub(tt.at, datum), down); !agree(tt.got, want) {
				t.Errorf("leg %s at %v, planes meet at %v", tt.name, tt.got, want)
			}
		}
	})
}

// On the level the leg measures Leg/cos, along the leg the stretcher takes
// Depth/cos: at 60° both are doubled.
func TestBridleLengths(t *testing.T) {
	b := joint.Bridle{Width: 24, Depth: 30, Leg: 45, Angle: measure.Radians(60)}
	if got := b.Stretcher().Length(); !agree(got, 90) {
		t.Errorf("leg on the level %v, want 90", got)
	}
	if got := b.Head().Length(); !agree(got, 60) {
		t.Errorf("stretcher along the leg %v, want 60", got)
	}
}

// Thirds: Fairham, Woodwork Joints; "ordinarily one-third" of the thickness:
// Noyes, Handwork in Wood (1910).
func TestBridleTenonIsAThird(t *testing.T) {
	b := joint.Bridle{Width: 24, Depth: 30, Leg: 45}
	if got := b.Third(); got != 8 {
		t.Errorf("tenon in 24 mm %v, want 8", got)
	}
	b.Tenon = 9.5
	if got := b.Third(); got != 9.5 {
		t.Errorf("tenon as given %v, want 9.5", got)
	}
}

// Tenon and two cheeks make up the thickness, and tenon and slot are one
// width, whichever part carries which.
func TestBridleTenonFillsTheSlot(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		b := someBridle(t)
		b.Mortise = rapid.SampledFrom([]joint.BridleMember{
			joint.MortiseInStretcher, joint.MortiseInLeg}).Draw(t, "mortise")
		s, h := b.Stretcher(), b.Head()
		if s.Slot == h.Slot {
			t.Errorf("stretcher slot %v and leg slot %v", s.Slot, h.Slot)
		}
		if want := b.Mortise == joint.MortiseInStretcher; s.Slot != want {
			t.Errorf("stretcher slot %v, want %v", s.Slot, want)
		}
		for _, e := range []joint.BridleEnd{s, h} {
			upper, lower := e.Cheeks()
			if !agree(lower-upper, b.Tenon) || !agree(upper, b.Width-lower) {
				t.Errorf("cheeks %v and %v, tenon %v not centred in %v", upper, lower, b.Tenon, b.Width)
			}
		}
		// The cheeks that are glued are one patch seen from either part.
		if !agree(s.CheekArea()/h.CheekArea(), 1) {
			t.Errorf("cheek of the stretcher %v mm², of the leg %v mm²", s.CheekArea(), h.CheekArea())
		}
	})
}

// The cut height is the distance of two parallel lines, measured on the
// drawing: rough end and shoulder.
func TestBridleCutHeight(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		e := someBridle(t).Stretcher()
		a, b := geometry.Pt(e.RoughEnd(0), 0), geometry.Pt(e.RoughEnd(e.Width), e.Width)
		want := math.Abs(b.Sub(a).Unit().Cross(geometry.Pt(e.Shoulder(0), 0).Sub(a)))
		if got := e.CutHeight(); !agree(got, want) {
			t.Errorf("cut height %v, measured %v", got, want)
		}
	})
}

func TestBridleCheck(t *testing.T) {
	good := joint.Bridle{Width: 24, Depth: 30, Leg: 45, Angle: measure.Radians(5)}
	for _, deg := range []float64{0, 5, 60} {
		b := good
		b.Angle = measure.Radians(deg)
		if err := b.Check(); err != nil {
			t.Errorf("%v°: %v", deg, err)
		}
	}
	refuses(t, good, []refused[joint.Bridle]{
		{"bridle.width", "> 0 mm", func(b *joint.Bridle) { b.Width = 0 }},
		{"bridle.depth", "> 0 mm", func(b *joint.Bridle) { b.Depth = -30 }},
		{"bridle.leg", "finite", func(b *joint.Bridle) { b.Leg = math.NaN() }},
		{"bridle.leg", "≤ 1000 mm", func(b *joint.Bridle) { b.Leg = 1000.5 }},
		{"bridle.splay", "≥ 0°", func(b *joint.Bridle) { b.Angle = -0.01 }},
		{"bridle.splay", "≤ 60°", func(b *joint.Bridle) { b.Angle = measure.Radians(60.1) }},
		{"bridle.splay", "finite", func(b *joint.Bridle) { b.Angle = math.Inf(-1) }},
		{"bridle.tenon", "≥ 0 mm", func(b *joint.Bridle) { b.Tenon = -8 }},
		{"bridle.tenon", "< bridle.width, 24 mm", func(b *joint.Bridle) { b.Tenon = 24 }},
		{"bridle.mortise", "≤ 1", func(b *joint.Bridle) { b.Mortise = 2 }},
	})
}
