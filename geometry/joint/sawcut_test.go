package joint

import (
	"math"
	"testing"

	"rodsheet/geometry/solid"
)

// A cut read from its plane makes that plane again, whichever way the part lies.
func TestSawCutRoundTrip(t *testing.T) {
	for _, a := range []float64{-0.8, -0.1, 0, 0.3, 1} {
		for _, tilt := range []float64{-0.7, 0, 0.2, 0.6} {
			want := SawCut{a, tilt}
			turn := solid.Rotate(solid.V(1, 2, 3), 0.7)
			got := SawCutOf(turn.Apply(solid.V(2, 0, 0)), turn.Apply(solid.V(0, 0, -3)), turn.Apply(want.Normal()).Mul(4))
			if math.Abs(got.OffSquare-a) > 1e-12 || math.Abs(got.Tilt-tilt) > 1e-12 {
				t.Errorf("got %v, want %v", got, want)
			}
		}
	}
}

// The mitred corner of sloping sides is the same cut by its own formulas.
func TestSawCutIsThatOfASlopingCorner(t *testing.T) {
	for _, c := range []SlopingCorner{HopperCorner(4, 1.2), HopperCorner(3, 0.9), HopperCorner(7, 0.4), {1.1, 1.1, 2}} {
		ss, cs := math.Sincos(c.Slope)
		outer := func(a solid.Vec) solid.Vec { return a.Mul(ss).Add(solid.V(0, 0, -cs)) }
		sa, ca := math.Sincos(c.Angle)
		one, two := outer(solid.V(0, -1, 0)), outer(solid.V(-sa, ca, 0))
		// The board lies on its inner face, which looks the other way.
		got := SawCutOf(solid.V(-1, 0, 0), one.Mul(-1), two.Sub(one))
		if math.Abs(math.Abs(got.OffSquare)-math.Abs(c.OffSquare())) > 1e-12 || math.Abs(math.Abs(got.Tilt)-math.Abs(c.Tilt())) > 1e-12 {
			t.Errorf("%v: got %v, want %v and %v", c, got, c.OffSquare(), c.Tilt())
		}
	}
}
