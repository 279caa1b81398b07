package shop

import (
	"math"
	"slices"
	"testing"

	"pgregory.net/rapid"

	"rodsheet/geometry/joint"
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
// without any card: bars less what joints and tapers take. It is so too where the blade
// does not rise and they are sawn by hand.
func TestTheCardsMakeTheParts(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		plan := drawPlan(t, rapid.SampledFrom([]float64{0, 0, 20, 1}).Draw(t, "blade rises"))
		pieces := plan.Pieces
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

// After every card, one away from the saw too, a part is what it is for one who does what
// the cards say by faces, edges and figures alone.
func TestEveryCardLeavesWhatItSays(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		plan := drawPlan(t, 0)
		for _, p := range plan.Pieces {
			for part, away := range map[Part]solid.Affine3{Stretcher: solid.Translate(solid.V(-p.SawnStretcher().Length/2, 0, 0)), Leg: solid.Identity()} {
				b := madeByTheList(t, p, part, plan)
				last := 0 // the card that it was sawn on last
				for i, got := range States(p, plan.Cards, part) {
					c := plan.Cards[i]
					if _, sawn := b.after[i]; sawn {
						last = i
					}
					if c.Stage == StockStage || c.Stage > TaperStage {
						continue
					}
					want := b.after[last].Transform(away)
					if math.Abs(got.Volume()-want.Volume()) > 1e-6*want.Volume() || got.Centroid().Distance(want.Centroid()) > 1e-4 {
						t.Errorf("part %d %s, card %d (%v): %.3f mm³ about %v, want %.3f about %v", part, p.Design.Size, c.Number, c.What.ID,
							got.Volume(), got.Centroid(), want.Volume(), want.Centroid())
					}
				}
			}
		}
	})
}

// The blade meets the part where it lies, and leaves nothing where it went.
func TestTheBladeGoesWhereTheWoodIsCut(t *testing.T) {
	for name, designs := range piecetest.Cases() {
		pieces := piecetest.WorkedAll(t, designs...)
		plan := NewPlan(pieces)
		for _, part := range []Part{Stretcher, Leg} {
			for w := range Works(pieces[0], plan.Cards, part) {
				s := plan.Cards[w.Card].Steps[w.Step]
				if s.Cut.How == AwayFromSaw {
					continue
				}
				cut, left := 0.0, 0.0
				for _, blade := range w.Blades {
					before := w.Before.Transform(w.At)
					room := blade.to(blade.far(), before)
					for _, q := range before.Pieces {
						cut += q.Intersect(room).Volume()
					}
					for _, q := range w.After.Transform(w.At).Pieces {
						left += q.Intersect(room).Volume()
					}
				}
				if left > 1e-3 || cut < 1 {
					t.Errorf("%s, part %d, %v: the blade takes %.4f mm³ and leaves %.4f of them", name, part, s.What.ID, cut, left)
				}
			}
		}
	}
}

// How parts are turned from one lie to the next, told from the words of the trade: a
// lap's other end comes by tumbling, the foot end for end after the head, the other
// face of a slot by half a roll, and a taper's next face by half a roll or a quarter.
func TestTurns(t *testing.T) {
	d := piecetest.Low()
	for faces, want := range map[joint.TaperFaces][]Turn{
		joint.OneFace: {NotTurned}, joint.AdjacentFaces: {NotTurned, RolledQuarter}, joint.OppositeFaces: {NotTurned, RolledHalf},
		joint.FourFaces: {NotTurned, RolledHalf, RolledQuarter, RolledHalf},
	} {
		d.Legs.Taper.Faces = faces
		p := piecetest.Worked(t, d)
		plan := NewPlan([]piece.Piece{p})
		got := map[Do][]Turn{}
		for _, part := range []Part{Stretcher, Leg} {
			for w := range Works(p, plan.Cards, part) {
				if do := plan.Cards[w.Card].Steps[w.Step].Do; do != SawEnd || part == Leg {
					got[do] = append(got[do], w.Turn)
				}
			}
		}
		for do, want := range map[Do][]Turn{
			CutLap: {NotTurned, Tumbled}, SawEnd: {NotTurned}, SawFoot: {EndForEnd}, CutSlot: {NotTurned, RolledHalf},
			CutCheeks: {NotTurned, RolledHalf}, CutTaper: want,
		} {
			if !slices.Equal(got[do], want) {
				t.Errorf("taper of %v: %v is turned %v, want %v", faces, do, got[do], want)
			}
		}
	}
}
