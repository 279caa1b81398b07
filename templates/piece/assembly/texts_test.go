package assembly

import (
	"testing"

	"rodsheet/geometry/measure"
	"rodsheet/templates/piece/kind"
)

// The sentence of a check tells a figure from its limit as the figure beside it does.
func TestWordsTellFigureAndLimitApart(t *testing.T) {
	texts := Texts{"tenon": {Lacks: "%[1]s long; %[2]s should be."}}
	for mm, want := range map[float64]string{7.9978: "7.998 mm long; 8 mm should be.", 7: "7 mm long; 8 mm should be."} {
		c := texts.AtLeast(measure.Millimetre, "tenon", mm, 8, kind.Warn)
		if c.Words != want {
			t.Errorf("%g: %q, want %q", mm, c.Words, want)
		}
	}
}
