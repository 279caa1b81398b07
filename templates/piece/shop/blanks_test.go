package shop

import (
	"testing"

	"rodsheet/templates/piece"
	"rodsheet/templates/piece/design"
	"rodsheet/templates/piece/internal/piecetest"
)

// The blanks of a piece, by which its boards are checked, are all that the plan
// saws from them.
func TestBlanksAreWhatThePlanTakes(t *testing.T) {
	wood := piecetest.Low()
	wood.Top = design.Top{Kind: design.WoodTop, Outline: design.RingTop, Thickness: 18, Overhang: 60}
	bare := piecetest.Low()
	bare.Wood.Tests = 0
	for _, d := range append(piecetest.Bases(), wood, bare) {
		d.Wood.Boards = []design.Board{{Length: 2400, Width: 200, Thickness: 45, Count: 2}}
		p := piecetest.Worked(t, d)
		blanks := map[piece.StockSize]bool{}
		for _, b := range p.Blanks() {
			blanks[p.Roughed(b.Sawn)] = false
		}
		for _, r := range cutListOf([]piece.Piece{p}).roughPieces() {
			if r.Name.Part.IsStick() { // of the section of a part, see TestSticksAreSafeAndEnough
				continue
			}
			if _, known := blanks[r.Size]; !known {
				t.Errorf("%v %v is no blank", r.Name, r.Size)
			}
			blanks[r.Size] = true
		}
		for size, taken := range blanks {
			if !taken {
				t.Errorf("no part is sawn from a blank of %v", size)
			}
		}
	}
}
