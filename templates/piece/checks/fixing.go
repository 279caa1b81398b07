package checks

import (
	"math"

	"rodsheet/geometry/lists"
	"rodsheet/geometry/measure"
	"rodsheet/templates/piece"
	"rodsheet/templates/piece/design"
	"rodsheet/templates/piece/kind"
	"rodsheet/templates/piece/shop"
)

// askScrewThrough asks whether the screws end well inside the top: two thirds of it at
// most (common practice, no source). One as long as the top is thick breaks through.
func askScrewThrough(p piece.Piece) (Check, bool) {
	f, held := shop.FixingOf(p)
	grade := kind.Warn
	if f.Bite > p.Design.Top.Thickness-piece.Slip {
		grade = kind.Fail
	}
	return atMost("screw-bite", f.Bite, p.Design.Top.Thickness*2/3, grade), held
}

// LeastBite returns the least that a screw goes into a top, mm: two turns of its
// thread behind the point (common practice, no source).
func LeastBite(u measure.Unit) float64 { return u.Round(8, 5.0/16) }

func askScrewHold(p piece.Piece) (Check, bool) {
	f, held := shop.FixingOf(p)
	return atLeast("screw-bite", f.Bite, LeastBite(p.Design.Unit), kind.Warn), held
}

// LeastBeside returns the least wood beside a hole, mm (common practice, no source).
func LeastBeside(u measure.Unit) float64 { return u.Round(5, 3.0/16) }

// askHoleEdge asks it of the hole that takes most of its stretcher's width: a slot
// across it, where the top moves most.
func askHoleEdge(p piece.Piece) (Check, bool) {
	f, held := shop.FixingOf(p)
	widest := lists.Most(f.Holes, func(h shop.Hole) float64 { return f.Across(p.Design.Unit, h) })
	return atLeast("wood-beside-hole", (p.Frame.Ring.Width-widest)/2, LeastBeside(p.Design.Unit), kind.Warn), held && f.Kind == design.Screws
}

// leastToLap returns the least from the middle of a hole to the shoulder of a lap, mm:
// nearer, the short grain between them breaks out (common practice, no source).
func leastToLap(p piece.Piece) float64 { return p.Design.Unit.Round(12, 1.0/2) }

func askHoleLap(p piece.Piece) (Check, bool) {
	f, held := shop.FixingOf(p)
	farthest := lists.Most(f.Holes, func(h shop.Hole) float64 { return math.Abs(h.At) })
	return atLeast("hole-to-lap", shop.HoleReach(p)-farthest, leastToLap(p), kind.Warn), held
}

// bonded reports whether a pane is held by more than its weight.
func bonded(p piece.Piece) bool {
	return p.Design.Top.Kind == design.GlassTop && p.Design.Top.Fixing.Bond == design.Silicone
}

// bondedTop is the check of a loose top that is none. What the bond bears its own
// data sheet says; what it would have to is the load that tips it loose.
func bondedTop(p piece.Piece) Check {
	s := p.LooseTop()
	if s.Falls() {
		return finding(kind.Warn, "falls-but-bonded")
	}
	w := s.Weakest(0)
	if w.NeverTips() {
		return finding(kind.Pass, "never-tips")
	}
	c := finding(kind.Pass, "bonded")
	c.Found.Figures = []measure.Quantity{measure.Mass(w.TippingLoad(0))}
	return c
}
