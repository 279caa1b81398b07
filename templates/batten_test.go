package templates

import (
	"testing"

	"rodsheet/geometry/measure"
)

// Points stand 50 mm or 2 in apart, but on a curve too small for that.
func TestBattenStep(t *testing.T) {
	for _, tt := range []struct{ half, mm, inch float64 }{
		{450, 50, 50.8}, {151, 50, 25.4}, {100, 20, 25.4}, {61, 20, 12.7}, {30, 10, 12.7},
	} {
		if mm, inch := battenStep(tt.half, measure.Millimetre), battenStep(tt.half, measure.Inch); mm != tt.mm || inch != tt.inch {
			t.Errorf("half %v: %v and %v, want %v and %v", tt.half, mm, inch, tt.mm, tt.inch)
		}
	}
}
