package piece_test

import (
	"testing"

	"rodsheet/geometry/solid"
	"rodsheet/templates/piece"
	"rodsheet/templates/piece/internal/piecetest"
)

func TestSoundPieceHasNoClash(t *testing.T) {
	p, err := piece.Solve(piecetest.Low())
	if err != nil {
		t.Fatal(err)
	}
	parts := p.Parts()
	for i, a := range parts {
		for _, b := range parts[:i] {
			for _, c := range solid.Clash(a, b) {
				t.Errorf("%s and %s clash: %.3f mm³ at %v", a.Name, b.Name, c.Volume(), c.Bounds())
			}
		}
	}
}
