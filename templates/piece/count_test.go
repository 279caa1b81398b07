package piece_test

import (
	"errors"
	"testing"

	"rodsheet/geometry/measure"
	"rodsheet/templates/piece"
	"rodsheet/templates/piece/internal/piecetest"
)

// A hundred spares are a wish, one more is a slip of the keyboard.
func TestCountsHaveALimit(t *testing.T) {
	for spares, want := range map[int]measure.ID{0: "", 100: "", 101: "wood.spares", -1: "wood.spares"} {
		d := piecetest.Low()
		d.Wood.Spares = spares
		_, err := piece.Solve(d)
		var bound *measure.BoundError
		if got := errors.As(err, &bound); got != (want != "") || got && bound.Figure != want {
			t.Errorf("%d spares: %v, want a fault of %q", spares, err, want)
		}
	}
}
