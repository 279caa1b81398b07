package piece_test

import (
	"strings"
	"testing"

	"rodsheet/geometry"
	"rodsheet/templates/piece"
	"rodsheet/templates/piece/design"
	"rodsheet/templates/piece/internal/piecetest"
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
	_, err := design.Read([]byte(text), piecetest.Faults(piece.Judge))
	if err == nil || !strings.Contains(err.Error(), "line 9, column 1: top.overhang: ") || strings.Contains(err.Error(), "design:") {
		t.Errorf("%v", err)
	}
}

// The panel of a top holds every corner that is set out on it, also those that are
// clipped or rounded afterwards.
func TestPanelHoldsTheCorners(t *testing.T) {
	for sides := 3; sides <= 8; sides++ {
		for _, corner := range []design.Corner{design.SharpCorner, design.ClippedCorner, design.RoundedCorner} {
			d := piecetest.Low()
			d.Ring.Sides, d.Top.Kind, d.Top.Outline, d.Top.Overhang = sides, design.WoodTop, design.RingTop, 60
			d.Top.Corner, d.Top.CornerSize = corner, 20
			p, err := piece.Solve(d)
			if err != nil {
				t.Fatal(err)
			}
			along, panel := p.TopAlong(), p.TopPanel()
			box := geometry.Bounds(p.RegularTop().Corners()...)
			length, width := box.Width(), box.Height()
			if along.Y > 0 {
				length, width = width, length
			}
			if panel.Length < length-1e-9 || panel.Width < width-1e-9 {
				t.Errorf("%d sides, corner %d: a panel of %.2f × %.2f mm, corners on %.2f × %.2f", sides, corner, panel.Length, panel.Width, length, width)
			}
		}
	}
}
