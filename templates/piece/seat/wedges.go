package seat

import (
	"math"

	"rodsheet/geometry/lists"
	"rodsheet/templates"
	"rodsheet/templates/piece"
	"rodsheet/templates/piece/assembly"
	"rodsheet/templates/piece/shop"
)

// tenonWedges are how many there are for the tenons, and one of them, thick at its head; none
// where the tenons are not wedged.
func (s Seat) tenonWedges() (n int, each piece.StockSize) {
	if !s.design.Seat.Mortise.Wedged() {
		return 0, each
	}
	w := s.wedging()
	return len(s.legs) + s.design.Wood.Spares, piece.StockSize{Length: w.long, Width: w.wide, Thickness: w.head}
}

// levelWedges are those under the feet, one for each: as thick at the head as a foot stands
// too high at the most, and some more.
func (s Seat) levelWedges() (n int, each piece.StockSize) {
	least := lists.Least(s.sorts(), s.below)
	step, more := s.unit().Round(1, 1.0/16), s.unit().Round(3, 1.0/8)
	head := math.Ceil((s.levelling().pencil-least)/step)*step + more
	return len(s.legs), piece.StockSize{Length: s.unit().Round(80, 3), Width: s.unit().Round(30, 5.0/4), Thickness: head}
}

// wedgeStrip is what all wedges are sawn from, one after the other, their grain along it: so
// much longer that the last wedge is still sawn from something that can be held.
func (s Seat) wedgeStrip() piece.StockSize {
	strip := piece.StockSize{Length: s.unit().Round(150, 6)}
	for _, of := range []func() (int, piece.StockSize){s.tenonWedges, s.levelWedges} {
		n, each := of()
		strip.Length += float64(n) * (each.Length + s.design.Saw.Kerf)
		strip.Width, strip.Thickness = math.Max(strip.Width, each.Width), math.Max(strip.Thickness, each.Thickness)
	}
	return strip
}

// wedgeCut is the strip on the cut list.
func (s Seat) wedgeCut() shop.CutRow {
	return shop.RowOfStock(*s.design, shop.SeatWedge, s.wedgeStrip(), 0)
}

// wedgeCard is how the wedges are made.
func (s Seat) wedgeCard() templates.Card {
	c := wedgeCard.Card(s.unit(), assembly.Ticked(wedgeStrip, 1))
	for _, w := range []struct {
		name text
		of   func() (int, piece.StockSize)
	}{{tenonWedges, s.tenonWedges}, {levelWedges, s.levelWedges}} {
		if n, each := w.of(); n > 0 {
			c.Ticks = append(c.Ticks, assembly.Ticked(w.name, n)...)
			c.Figures = append(c.Figures, templates.Reading{Name: w.name.With(), Value: sizes.With(s.mm(each.Length), s.mm(each.Width), s.mm(each.Thickness))})
		}
	}
	return c.Card
}
