package measure_test

import (
	"testing"

	"rodsheet/geometry/measure"
)

func TestRound(t *testing.T) {
	for u, want := range map[measure.Unit]float64{measure.Millimetre: 100, measure.Inch: 101.6} {
		if got := u.Round(100, 4); got != want {
			t.Errorf("%s: %v mm, want %v", u, got, want)
		}
	}
}

// A half is rounded one way, whatever arithmetic it comes from.
func TestHalvesRoundAway(t *testing.T) {
	for want, all := range map[string][]float64{
		"3.18":  {3.175, 25.4 / 8, 0.125 * 25.4, 3.175 - 1e-12},
		"22.23": {22.225, 25.4 * 7 / 8, 0.875 * 25.4},
		"-3.18": {-3.175},
		"3.17":  {3.1749},
	} {
		for _, mm := range all {
			if got := measure.Length(mm).Bare(measure.Millimetre); got != want {
				t.Errorf("%v mm is written %s, want %s", mm, got, want)
			}
		}
	}
}
