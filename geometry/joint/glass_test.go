package joint_test

import (
	"math"
	"rodsheet/geometry/joint"
	"testing"

	"pgregory.net/rapid"

	"rodsheet/geometry"
)

// EN 572-1: 2500 kg/m³, so 6 mm glass has 15.0 kg in each m².
func TestGlassMass(t *testing.T) {
	within(t, "1 m² of 6 mm", joint.Glass{Area: 1e6, Thickness: 6}.Mass(), 15, 1e-12)
	within(t, "500 × 400 × 10", joint.Glass{Area: 500 * 400, Thickness: 10}.Mass(), 5, 1e-12)
	within(t, "a litre of water", joint.Mass(1e6, 1000), 1, 1e-12)
	within(t, "corner radius of 8 mm", joint.Glass{Area: 1e6, Thickness: 8}.LeastCornerRadius(), 8, 0)
}

// A square rounded to half its side is a circle.
func TestRoundedSquareIsACircle(t *testing.T) {
	square := joint.RegularBySide(4, 100)
	within(t, "area", joint.RoundedArea(square.Corners(), 50), math.Pi*50*50, 1e-9)
}

// Any regular polygon rounded to its apothem is a circle; rounded less, it
// loses in proportion to the square of the radius.
func TestRoundedPolygons(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r := someRegular(t)
		share := rapid.Float64Range(0, 1).Draw(t, "share")
		lost := share * share * (r.Area() - math.Pi*r.Apothem*r.Apothem)
		if got := joint.RoundedArea(r.Corners(), share*r.Apothem); !agree(got, r.Area()-lost) {
			t.Errorf("area %.9f, want %.9f", got, r.Area()-lost)
		}
	})
}

// The rounding drawn out: a right triangle with legs of 300 and 400 mm, whose
// corners are all unlike, against its outline with arcs.
func TestRoundedAreaAgainstOutline(t *testing.T) {
	const radius = 40
	triangle := []geometry.Point{{}, geometry.Pt(400, 0), geometry.Pt(0, 300)}
	var outline []geometry.Point
	for i, p := range triangle {
		before, after := triangle[(i+2)%3].Sub(p).Unit(), triangle[(i+1)%3].Sub(p).Unit()
		half := math.Acos(before.Dot(after)) / 2
		centre := p.Add(before.Add(after).Unit().Mul(radius / math.Sin(half)))
		out := before.Perp() // square to the side before, outward
		from := math.Atan2(out.Y, out.X)
		outline = append(outline, geometry.Arc(centre, radius, from, from+math.Pi-2*half)...)
	}
	within(t, "area", joint.RoundedArea(triangle, radius), geometry.Area(outline), 0.6)
}

func TestGlassCheck(t *testing.T) {
	if err := (joint.Glass{Area: 1e6, Thickness: 8}).Check(); err != nil {
		t.Error(err)
	}
	checkBound(t, joint.Glass{Thickness: 8}.Check(), "glass.area", "> 0 mm²")
	checkBound(t, joint.Glass{Area: 1e6, Thickness: 1.9}.Check(), "glass.thickness", "≥ 2 mm")
	checkBound(t, joint.Glass{Area: 1e6, Thickness: 26}.Check(), "glass.thickness", "≤ 25 mm")
	checkBound(t, joint.Glass{Area: math.NaN(), Thickness: 8}.Check(), "glass.area", "finite")
}
