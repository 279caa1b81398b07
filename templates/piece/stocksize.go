package piece

import (
	"math"

	"rodsheet/geometry/joint"
	"rodsheet/geometry/measure"
	"rodsheet/templates/piece/design"
)

// Slip is what sizes may exceed their room by, mm: less than any saw knows, more
// than arithmetic makes. A clash so thin is below solid.ClashFloor in any joint.
const Slip = 1e-6

// A StockSize is the size of a piece of wood in mm, its length along the grain.
type StockSize struct{ Length, Width, Thickness float64 }

// Volume returns the volume in mm³.
func (s StockSize) Volume() float64 { return s.Length * s.Width * s.Thickness }

// Ripped returns the least width to which a stick is ripped from a board so
// thick, infinite where it is too thick for the board: it may lie either way
// round, its thickness within the board's.
func (s StockSize) Ripped(thickness float64) float64 {
	width := math.Inf(1)
	for _, lie := range [2][2]float64{{s.Width, s.Thickness}, {s.Thickness, s.Width}} {
		if lie[1] <= thickness+Slip {
			width = math.Min(width, lie[0])
		}
	}
	return width
}

// Roughed returns a stick with the rough allowances of a design, rounded up
// to whole millimetres or sixteenths of an inch: rough wood is not sawn finer.
func Roughed(d design.Design, s StockSize) StockSize {
	w, up := d.Wood, func(mm float64) float64 { return WholeUp(d.Unit, mm) }
	return StockSize{up(s.Length + w.ExtraLength), up(s.Width + w.ExtraWidth), up(s.Thickness + w.ExtraThickness)}
}

// Roughed is that of the design of the piece.
func (p Piece) Roughed(s StockSize) StockSize { return Roughed(p.Design, s) }

// WholeUp rounds up to whole millimetres or sixteenths of an inch.
func (p Piece) WholeUp(mm float64) float64 { return WholeUp(p.Design.Unit, mm) }

// WholeDown rounds down to them.
func (p Piece) WholeDown(mm float64) float64 { return wholeDown(p.Design.Unit, mm) }

// WholeUp rounds up to them.
func WholeUp(u measure.Unit, mm float64) float64 { return -wholeDown(u, -mm) }

func wholeDown(u measure.Unit, mm float64) float64 {
	step := u.Round(1, 1.0/16)
	return step * math.Floor(mm/step+1e-6)
}

// SawnStretcher returns a stretcher squared to length, before it is worked.
func (p Piece) SawnStretcher() StockSize {
	return StockSize{p.RoughStretcher(), p.Frame.Ring.Width, p.Frame.Ring.Depth}
}

// SawnLeg returns a leg squared to length: both level cuts and what the head
// is left long go into it.
func (p Piece) SawnLeg() StockSize {
	return StockSize{p.Frame.Leg.Blank() + p.HeadLong(), p.Frame.Leg.Breadth, p.Frame.Leg.Thickness}
}

// FinishedLeg returns the length of the finished leg from tip to tip, along
// the grain.
func (p Piece) FinishedLeg() float64 { return p.Frame.Leg.Blank() + p.HeadProud() }

// LegEdge returns the length of any edge of the finished leg, from one level cut
// to the other.
func (p Piece) LegEdge() float64 { return p.Frame.Leg.Length() + p.HeadProud() }

// HeadProud is what a proud head takes along the leg, from the top of the
// stretcher to the trim line.
func (p Piece) HeadProud() float64 { return p.Design.Legs.Proud / math.Cos(p.Frame.Leg.Splay) }

// HeadLong is what the head of a leg stands beyond the top of the stretcher
// until it is trimmed, along the leg.
func (p Piece) HeadLong() float64 { return p.HeadProud() + p.Bridle.Long }

// CutHeights returns how high the blade stands above the table for slot and
// cheeks: the stretcher on its sawn end, the leg on its sawn head.
func (p Piece) CutHeights() (stretcher, leg float64) {
	return onEnd(p.Bridle.Stretcher(), p.Bridle.Long), onEnd(p.Bridle.Head(), p.HeadLong())
}

// onEnd returns how high the cut of an end stands above its rough end, so much
// longer along the part, square to the bottom of the slot.
func onEnd(e joint.BridleEnd, long float64) float64 { return e.Across + long*math.Cos(e.OffSquare) }

// Passes returns in how many passes the dado set, of which there must be one,
// clears a width in mm, square to the blade.
func (p Piece) Passes(width float64) int { return int(math.Ceil(width/p.Design.Saw.Dado - 1e-9)) }
