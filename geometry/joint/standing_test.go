package joint_test

import (
	"math"
	"rodsheet/geometry/joint"
	"testing"

	"pgregory.net/rapid"

	"rodsheet/geometry"
)

func TestTippingLine(t *testing.T) {
	for _, tt := range []struct {
		feet int
		want float64
	}{
		{3, 0.5}, {4, math.Sqrt2 / 2}, {6, math.Sqrt(3) / 2},
	} {
		s := joint.Standing{Feet: tt.feet, FootRadius: 400}
		within(t, "tipping line", s.TippingLine(), 400*tt.want, 1e-9)
	}
}

// ISO 7172: F = m·g·a/(o − 50 mm), with a the distance to the tipping line and
// o the overhang. Computed with g = 9.81 m/s², hence the tolerance.
func TestTippingForceByStandard(t *testing.T) {
	for _, tt := range []struct{ mass, a, o, want float64 }{
		{20, 300, 150, 588.6},
		{20, 250, 200, 327.0},
	} {
		s := joint.Standing{Feet: 3, FootRadius: 2 * tt.a, Rim: tt.a + tt.o, Mass: tt.mass}
		within(t, "force", s.TippingForce(joint.EdgeInset), tt.want, 0.0004*tt.want)
		within(t, "force in kg", s.TippingLoad(joint.EdgeInset)*9.81, tt.want, 0.05)
	}
}

// tips reports whether a load on the floor plan lifts a foot: for some line of
// two neighbouring feet the moments of piece and load about it turn outward.
func tips(s joint.Standing, load float64, at geometry.Point) bool {
	for i := range s.Feet {
		foot := func(k int) geometry.Point {
			return geometry.Polar(s.FootRadius, 2*math.Pi*float64(k)/float64(s.Feet))
		}
		line := foot(i + 1).Sub(foot(i)).Unit()
		inside := func(p geometry.Point) float64 { return line.Cross(p.Sub(foot(i))) }
		if s.Mass*inside(geometry.Point{})+load*inside(at) < 0 {
			return true
		}
	}
	return false
}

// A load a little over TippingLoad tips the piece at its worst place on the
// rim, and one a little under does so nowhere.
func TestTippingLoadAgainstMoments(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := joint.Standing{
			Feet:       rapid.IntRange(3, 8).Draw(t, "feet"),
			FootRadius: rapid.Float64Range(100, 600).Draw(t, "foot radius"),
			Rim:        rapid.Float64Range(100, 900).Draw(t, "rim"),
			Mass:       rapid.Float64Range(2, 80).Draw(t, "mass"),
		}
		inset := rapid.Float64Range(0, 60).Draw(t, "inset")
		load := s.TippingLoad(inset)
		if s.NeverTips() != math.IsInf(s.TippingLoad(0), 1) {
			t.Errorf("never tips: %v, load at the rim %v", s.NeverTips(), s.TippingLoad(0))
		}
		anywhere := func(load float64) bool {
			for i := range 2 * s.Feet * 8 {
				around := math.Pi * float64(i) / float64(s.Feet*8)
				if tips(s, load, geometry.Polar(s.Rim-inset, around)) {
					return true
				}
			}
			return false
		}
		if math.IsInf(load, 1) {
			if anywhere(1e6) {
				t.Error("tips, though it should not at any load")
			}
			return
		}
		if anywhere(load * (1 - 1e-6)) {
			t.Errorf("tips under %.6f kg", load)
		}
		if load < 1e6 && !anywhere(load*(1+1e-6)) {
			t.Errorf("stands over %.6f kg", load)
		}
	})
}

func TestNeverTips(t *testing.T) {
	s := joint.Standing{Feet: 4, FootRadius: 400, Mass: 20}
	s.Rim = s.TippingLine()
	if !s.NeverTips() || !math.IsInf(s.TippingForce(0), 1) {
		t.Errorf("rim over the tipping line: force %v, want none to tip it", s.TippingForce(0))
	}
	s.Rim += 1
	within(t, "force 1 mm out", s.TippingForce(0), 20*9.80665*s.TippingLine(), 1e-6)
}
