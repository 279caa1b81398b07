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
