package shop

import (
	"math"

	"rodsheet/templates/piece"
)

// rises reports whether the blade rises so high.
func rises(p piece.Piece, height float64) bool {
	return p.Design.Saw.Highest == 0 || height <= p.Design.Saw.Highest
}

// byHand turns a step at the saw into one by hand, and says why. What the stop and
// the spacer give at the saw is measured and knifed: a line so far from the end,
// and a second one, for which the kerf counts too.
func (s *step) byHand(why string, kerf float64) {
	c, h := s.Cut, s.Hand
	switch {
	case h.From != "":
		c.Line, c.From = h.Line, h.From
	case c.Stop > 0:
		c.Line, c.From = c.Stop, "the "+c.Against
		if s.Fence != "" {
			c.From += ", along the " + s.Fence
		}
	}
	if c.Spacer > 0 {
		c.Along = c.Spacer + kerf/math.Cos(c.Square)
	}
	c.ByHand, c.Stop, c.Against, c.Spacer = true, 0, "", 0
	s.Down, s.Fence, s.Caution = "", "", ""
	if h.Then != nil {
		s.Then, s.Once = h.Then, h.Once
	}
	if h.Test != "" {
		s.Test = h.Test
	}
	s.Then = append([]string{why}, s.Then...)
}

// Words of the work by hand and of what both ways have alike.
const (
	squareByHand = "Square one end, then saw to the line, squared round all four sides."
	lapByHand    = "Saw the shoulders in the waste beside the knifed lines, as deep as the lap, chop out the wood between them from both edges and pare to the lines."
	besideLine   = "Saw in the waste beside the knifed line and pare to it."
	taperToLine  = "Saw beside the line, in the waste, and plane to it."
)
