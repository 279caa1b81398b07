package piece

import (
	"math"

	"rodsheet/geometry/measure"
	"rodsheet/templates/piece/design"
)

// A Blank is a part as it is sawn from a board, its rough allowances not in it.
type Blank struct {
	ID   measure.ID // "stretcher", "leg", "top-board", "test-stretcher", "test-leg"
	Test bool       // a test piece
	Sawn StockSize
}

// Blanks returns one of every part for which wood is bought: all but what comes
// from offcuts.
func (p Piece) Blanks() []Blank {
	stretcher, leg := p.SawnStretcher(), p.SawnLeg()
	out := []Blank{{"stretcher", false, stretcher}, {"leg", false, leg}}
	if p.Design.Top.Kind == design.WoodTop {
		board, _ := p.TopBoards()
		out = append(out, Blank{"top-board", false, board})
	}
	if p.Design.Wood.Tests > 0 {
		out = append(out, Blank{"test-stretcher", true, p.TestPiece(stretcher)}, Blank{"test-leg", true, p.TestPiece(leg)})
	}
	return out
}

// usualBoard returns the width of board that a top is glued up from where the
// design lists none that serves: 150 mm or 6 in (common practice, no source).
func usualBoard(p Piece) float64 { return p.Design.Unit.Round(150, 6) }

// TopBoards returns the boards of equal width that a wooden top is glued up
// from: one of them, and how many. They are as few as the widest listed board
// allows.
func (p Piece) TopBoards() (board StockSize, count int) {
	board = p.TopPanel()
	widest := 0.0
	for _, b := range p.Design.Wood.Boards {
		long := b.Length >= board.Length+p.Design.Wood.ExtraLength
		if b.Count > 0 && long && b.Thickness >= board.Thickness+p.Design.Wood.ExtraThickness {
			widest = math.Max(widest, b.Width)
		}
	}
	// A board hardly wider than its allowance yields nothing to glue.
	if widest -= p.Design.Wood.ExtraWidth; widest <= p.Design.Wood.ExtraWidth {
		widest = usualBoard(p)
	}
	count = int(math.Ceil(board.Width/widest - 1e-9))
	board.Width /= float64(count)
	return board, count
}

// TestPiece returns the test piece of the stock of a part: as long as is safely
// held at a saw, and no less than half a stretcher, so that the stop of the real
// lap serves.
func (p Piece) TestPiece(stock StockSize) StockSize {
	stock.Length = math.Max(p.SafeLength(), p.RoughReach())
	return stock
}

// SafeLength is the least length of wood to hold at a saw: 300 mm or 12 in
// (common practice, no source).
func (p Piece) SafeLength() float64 { return p.Design.Unit.Round(300, 12) }
