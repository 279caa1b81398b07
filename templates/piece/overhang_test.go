package piece_test

import (
	"strings"
	"testing"

	"rodsheet/templates/piece"
	"rodsheet/templates/piece/design"
)

// A round top that is too large for its overhang is told at the overhang.
func TestOverhangIsNamed(t *testing.T) {
	text := `units = "mm"
ring = {sides = 3, inside = 260, width = 28, depth = 36}
legs = {breadth = 36, splay = 14, height = 450}
wood = {species = "white ash"}
saw = {kerf = 3.2}
[top]
kind = "wood"
thickness = 18
overhang = 9000
`
	_, err := design.Read([]byte(text), piece.Faults)
	if err == nil || !strings.Contains(err.Error(), "line 9, column 1: top.overhang: ") || strings.Contains(err.Error(), "design:") {
		t.Errorf("%v", err)
	}
}
