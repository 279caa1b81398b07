package joint

import (
	"errors"
	"math"
	"testing"

	"rodsheet/geometry/measure"
)

// Every limit refuses what lies beyond it, itself where it is open, and whatever is
// not finite; the error names the figure and a finite limit.
func TestLimits(t *testing.T) {
	for id, l := range limits() {
		ends := []struct {
			value   float64
			refused bool
		}{
			{l.least, l.openLow}, {math.Nextafter(l.least, -1e9), true}, {math.Nextafter(l.least, 1e9), false},
			{math.NaN(), true}, {math.Inf(1), true}, {math.Inf(-1), true},
		}
		if !math.IsInf(l.most, 1) {
			ends = append(ends, []struct {
				value   float64
				refused bool
			}{{l.most, l.openHigh}, {math.Nextafter(l.most, 1e9), true}, {math.Nextafter(l.most, 0), false}}...)
		}
		for _, e := range ends {
			err := within(id, e.value)
			var bound *measure.BoundError
			if refused := errors.As(err, &bound); refused != e.refused {
				t.Errorf("%s %v: %v", id, e.value, err)
			} else if refused && (bound.Figure != id || !bound.Limit.Finite()) {
				t.Errorf("%s %v: %+v", id, e.value, bound)
			}
		}
	}
}
