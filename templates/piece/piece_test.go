package piece

import (
	"testing"

	"rodsheet/geometry/solid"
)

func TestSoundPieceHasNoClash(t *testing.T) {
	p, err := Work(Low())
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
