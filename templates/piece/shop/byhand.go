package shop

import (
	"math"

	"rodsheet/templates/piece"
)

// A handWork is what a step says where it is done by hand: all that is not empty
// stands in the place of what it says of the saw.
type handWork struct {
	Then   Notes
	Test   Note
	Line   float64 // from From, where that is not what the stop says
	From   Datum
	Narrow bool // the kerf is wider than what is sawn
}

// rises reports whether the blade rises so high.
func rises(p piece.Piece, height float64) bool {
	return p.Design.Saw.Highest == 0 || height <= p.Design.Saw.Highest
}

// byHand turns a step at the saw into one by hand, and says why. What the stop and
// the spacer give at the saw is measured and knifed: a line so far from the end,
// and a second one, for which the kerf counts too.
func (r *row) byHand(by Reason, why Note, kerf float64) {
	c, h := &r.Cut, r.hand
	switch {
	case h.From.Point != NoPoint:
		c.Line, c.From = h.Line, h.From
	case c.Stop > 0:
		c.Line, c.From = c.Stop, c.At
		c.From.Along = r.Lies[0].Fence
	}
	if c.Spacer > 0 {
		c.Along = c.Spacer + kerf/math.Cos(c.OffSquare)
	}
	c.By, c.Stop, c.At, c.Spacer = by, 0, Datum{}, 0
	r.Lies, r.From, r.Caution = [2]Lie{}, Bought, ""
	if h.Then.len() > 0 {
		r.Then = h.Then
	}
	if h.Test.ID != "" {
		r.Test = h.Test
	}
	r.Then = notes(why).with(r.Then.All()...)
}
