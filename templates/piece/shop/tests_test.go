package shop

import (
	"maps"
	"math"
	"slices"
	"testing"

	"pgregory.net/rapid"

	"rodsheet/geometry/measure"
	"rodsheet/templates/piece"
	"rodsheet/templates/piece/design"
	"rodsheet/templates/piece/internal/piecetest"
)

// Every joint at its own setting has test pieces, and no end of one is cut twice:
// the ends that the rows take are at most those of the pieces that are milled.
func TestEverySettingHasATestPiece(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		splays := rapid.SliceOfN(rapid.SampledFrom([]float64{8, 11, 13, 16}), 1, 4).Draw(t, "splays")
		wanted := rapid.IntRange(1, 2).Draw(t, "tests")
		var designs []design.Design
		different := map[float64]bool{}
		for i, s := range splays {
			d := piecetest.Low()
			d.Size, d.Legs.Given, d.Wood.Tests = string(rune('a'+i)), measure.Radians(s), wanted
			designs = append(designs, d)
			different[s] = true
		}
		plan := NewPlan(piecetest.WorkedAll(t, designs...))
		pieces := wanted * ((len(different) + 1) / 2)
		for _, r := range plan.Cuts.Rows {
			if (r.Part == StretcherTest || r.Part == LegTest) && r.Serves != pieces {
				t.Fatalf("%v: %d test pieces of %v, want %d", splays, r.Serves, r.Part, pieces)
			}
		}
		for _, do := range []Do{CutSlot, CutCheeks, CutShoulders, KnifeShoulders} {
			ends := map[bool]int{}
			for _, s := range only(plan.steps(), do) {
				tests := 0
				for _, b := range s.Parts {
					ends[b.OtherEnd] += b.Tests
					tests += b.Tests
				}
				if tests == 0 {
					t.Fatalf("%v: a setting of %v has no test piece", splays, do)
				}
			}
			if do == CutSlot {
				n := len(different)
				if want := (map[bool]int{false: wanted * ((n + 1) / 2), true: wanted * (n / 2)}); n > 1 && !maps.Equal(ends, want) {
					t.Fatalf("%v: ends %v, want %v", splays, ends, want)
				}
			}
		}
		laps := 0
		for _, s := range only(plan.steps(), TestLap) {
			laps += s.Parts[0].Count
		}
		if laps != wanted {
			t.Fatalf("%d test pieces for one lap, want %d", laps, wanted)
		}
	})
}

// Every setting of the saw is tried: a test piece or a block goes through it, or a test
// says what shows that it is right.
func TestEverySettingIsTried(t *testing.T) {
	for name, designs := range piecetest.Cases() {
		for _, c := range NewPlan(piecetest.WorkedAll(t, designs...)).Cards {
			tried := c.How == AwayFromSaw
			for _, s := range c.Steps {
				tried = tried || s.Test.ID != ""
				for _, b := range s.Parts {
					tried = tried || b.Tests > 0 || b.Part == TestPiece
				}
			}
			if !tried {
				t.Errorf("%s: nothing tries %v", name, c.Steps[0].What)
			}
		}
	}
}

// The datum of a test piece is as far from its sawn end as that of a part from its own,
// along the same edge: by the finished part, from the corner where the joint ends at the
// reference to the tip that its blank reaches.
func TestDatumOfTestPieces(t *testing.T) {
	for name, designs := range piecetest.Cases() {
		for _, p := range piecetest.WorkedAll(t, designs...) {
			size := uncounted(p)
			head, tan := size.legHead(), math.Tan(p.Frame.Leg.Splay)
			if got, want := head.beyondDatum(), head.long+p.Frame.Leg.Breadth*tan; math.Abs(got-want) > 1e-9 {
				t.Errorf("%s: %v from the end of leg stock, want %v", name, got, want)
			}
			if got, want := size.stretcherEnd().beyondDatum(), p.Bridle.Long; math.Abs(got-want) > 1e-9 {
				t.Errorf("%s: %v from the end, want %v", name, got, want)
			}
		}
	}
}

// Where the teeth leave a V every card says so that cuts a lap's bottom: the test, the laps
// and the open ends. Flat teeth leave none, and a dado set comes last.
func TestWhatTheTeethLeaveIsSaid(t *testing.T) {
	d := piecetest.Low()
	for _, c := range []struct {
		flat bool
		dado float64
		want int
	}{{false, 0, 3}, {true, 0, 0}, {false, 16, 1}} {
		d.Saw.FlatTooth, d.Saw.Dado = c.flat, c.dado
		got := 0
		for _, s := range stepsOf(piecetest.WorkedAll(t, d)) {
			for _, n := range s.Then.All() {
				if n.ID == "leave-lap-bottom" || n.ID == "laps-order-vee" {
					got++
				}
			}
		}
		if got != c.want {
			t.Errorf("%+v: said on %d cards", c, got)
		}
	}
}

// Every test piece that is ticked can be sawn as its card says: a stop stands farther from
// the blade than the piece is long, so it goes by its own lines, and these and all that is
// sawn there lie on the half of the piece that belongs to this joint.
func TestTestPiecesCanBeSawnAsTheCardsSay(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		designs := drawBuilt(t)
		var pieces []piece.Piece
		for _, d := range designs {
			d.Saw.Highest, d.Wood.Tests = 0, rapid.IntRange(1, 2).Draw(t, "tests")
			pieces = append(pieces, piecetest.Worked(t, d))
		}
		plan := NewPlan(piece.ShareStops(pieces))
		for _, p := range plan.Pieces {
			long := p.TestPiece(p.SawnStretcher()).Length
			for _, part := range []Part{Stretcher, Leg} {
				for w := range Works(p, plan.Cards, part) {
					c := plan.Cards[w.Card]
					s := c.Steps[w.Step]
					if s.Cut.How != OnGauge || !slices.ContainsFunc(s.Parts, func(b Batch) bool { return b.Part == part && b.Size == p.Design.Size && b.Tests > 0 }) {
						continue
					}
					if s.Cut.Stop > 0 && !c.TestsToLines() {
						t.Errorf("card %d, %v: a piece of %.1f mm at a stop of %.1f", c.Number, s.What.ID, long, s.Cut.Stop)
					}
					end, waste := w.Before.Bounds().Max.X, w.Before
					for _, q := range w.After.Pieces {
						waste = waste.Subtract(q)
					}
					if from := waste.Bounds().Min.X; end-from > long/2 {
						t.Errorf("card %d, %v: sawn up to %.1f mm from the end of a piece of %.1f", c.Number, s.What.ID, end-from, long)
					}
				}
			}
		}
	})
}
