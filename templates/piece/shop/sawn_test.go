package shop

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"rodsheet/geometry/solid"
	"rodsheet/templates/piece"
	"rodsheet/templates/piece/internal/piecetest"
)

// finished takes a part along all cards of a plan and puts it into the frame of its
// stretcher.
func finished(p piece.Piece, plan Plan, part Part) solid.Part {
	out := Blank(p, part)
	for w := range Works(p, plan.Cards, part) {
		out = w.After
	}
	if part == Leg {
		out = out.Transform(LegPlace(p))
	}
	return out
}

// What the cards leave of the blanks is the parts of the piece, which come about
// without any card: bars less what joints and tapers take.
func TestTheCardsMakeTheParts(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		var pieces []piece.Piece
		for _, d := range drawBuilt(t) {
			pieces = append(pieces, piecetest.Worked(t, d))
		}
		pieces = piece.ShareStops(pieces)
		plan := NewPlan(pieces)
		for _, p := range pieces {
			for part, want := range map[Part]solid.Part{Stretcher: p.Stretcher(), Leg: p.Leg()} {
				got := finished(p, plan, part)
				allowed := 1e-6 * want.Volume()
				if len(pieces) > 1 { // figures that print alike are one
					allowed += 0.01 * p.SawnLeg().Width * p.SawnLeg().Thickness
				}
				if off := amiss(got, want); math.Abs(off) > allowed {
					t.Errorf("part %d %s: %.4f mm³ left, want %.4f; %.6f mm³ are not where they should be", part, p.Design.Size,
						got.Volume(), want.Volume(), off)
				}
			}
		}
	})
}
