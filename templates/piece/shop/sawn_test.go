package shop

import (
	"math"
	"slices"
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

// unpared is the most wood, in mm³, that shared settings leave to be pared away.
func unpared(p piece.Piece, plan Plan, part Part) float64 {
	left := 0.0
	for _, c := range plan.Cards {
		for _, s := range c.Steps {
			if s.does(part, p.Design.Size) {
				left += s.Left
			}
		}
	}
	from := map[Part]piece.StockSize{Stretcher: p.SawnStretcher(), Leg: p.SawnLeg()}[part]
	return left * from.Width * from.Thickness
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
				allowed := 1e-6*want.Volume() + unpared(p, plan, part)
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

// Two sizes whose settings hardly differ have one of each, and what it leaves is on
// the side of the waste.
func TestSettingsNearToEachOtherAreOne(t *testing.T) {
	low, twin := piecetest.Low(), piecetest.Low()
	low.Size, twin.Size = "low", "twin"
	for higher, shared := range map[float64]bool{0.1: true, 0.2: false} {
		twin.Legs.Height = low.Legs.Height + higher
		pieces := piecetest.WorkedAll(t, low, twin)
		plan := NewPlan(pieces)
		for _, do := range []Do{Crosscut, SawEnd, CutShoulders, SawFoot} {
			var stops []float64
			for _, c := range plan.Cards {
				for _, s := range c.Steps {
					if s.Do == do && s.What.ID != "step.leg-end" && (s.does(Leg, "low") || s.does(Leg, "twin")) {
						stops = append(stops, s.Cut.Stop)
					}
				}
			}
			slices.Sort(stops)
			kinds := len(slices.Compact(stops))
			want := map[bool]int{true: 1, false: 2}[shared]
			if do == CutShoulders { // ring side and outer side
				want *= 2
			}
			if kinds != want {
				t.Errorf("higher by %v mm: %d stops for %v, want %d", higher, kinds, do, want)
			}
		}
		for i, p := range pieces {
			for part, want := range map[Part]solid.Part{Stretcher: p.Stretcher(), Leg: p.Leg()} {
				got := finished(p, plan, part)
				short := 0.0
				for _, s := range want.Pieces {
					short += s.Volume()
					for _, q := range got.Pieces {
						short -= s.Intersect(q).Volume()
					}
				}
				if short > 1e-6*want.Volume() {
					t.Errorf("higher by %v mm: part %d of size %d has lost %v mm³", higher, part, i, short)
				}
			}
		}
	}
}
