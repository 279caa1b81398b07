package shop

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"rodsheet/geometry/joint"
	"rodsheet/geometry/measure"
	"rodsheet/geometry/solid"
	"rodsheet/templates/piece"
	"rodsheet/templates/piece/design"
	"rodsheet/templates/piece/internal/piecetest"
)

// steps returns every step of the cards in working order.
func (p Plan) steps() []Step {
	var out []Step
	for _, c := range p.Cards {
		out = append(out, c.Steps...)
	}
	return out
}

func stepsOf(pieces []piece.Piece) []Step { return NewPlan(pieces).steps() }

func cutListOf(pieces []piece.Piece) CutList { return NewPlan(pieces).Cuts }

func TestLapsOfOneHeightFollowEachOther(t *testing.T) {
	for name, designs := range piecetest.Cases() {
		pieces := piecetest.WorkedAll(t, designs...)
		done := map[float64]bool{}
		last, laps := 0.0, 0
		for i, s := range stepsOf(pieces) {
			if s.Do != TestLap && s.Do != CutLap && s.Do != OpenEnd {
				last = 0
				continue
			}
			h := quantize(s.Cut.Height)
			if h != last && done[h] {
				t.Errorf("%s: row %d cuts at %v mm again, after another height", name, i+1, h)
			}
			last, done[h] = h, true
			laps++
		}
		if laps < 2 {
			t.Errorf("%s: %d rows for laps", name, laps)
		}
	}
}

func TestOpenEndsFollowTheirLaps(t *testing.T) {
	for name, designs := range piecetest.Cases() {
		steps := stepsOf(piecetest.WorkedAll(t, designs...))
		opened := 0
		for i, s := range steps {
			if s.Do != OpenEnd {
				continue
			}
			before := steps[i-1]
			if before.Do != CutLap && before.Do != OpenEnd || before.Cut.Height != s.Cut.Height || before.Cut.OffSquare != s.Cut.OffSquare {
				t.Errorf("%s: the plain ends come after %v, not after laps of their height", name, before.What)
			}
			for _, b := range s.Parts {
				opened += b.Count
			}
		}
		want := 0
		for _, d := range designs {
			if d.Ring.Plain != design.ClosedEnd {
				want += d.Ring.Sides
			}
		}
		if opened != want {
			t.Errorf("%s: %d plain ends opened, want %d", name, opened, want)
		}
	}
}

func TestOrderOfOperations(t *testing.T) {
	// Each of the first is done before any of the second: to all sizes, or to any one.
	type law struct{ before, after Do }
	laws := map[bool][]law{
		true: {
			{Mill, Measure}, {Mill, Crosscut}, {Measure, Crosscut}, {Crosscut, TestLap}, {CutLap, DryRing}, {OpenEnd, DryRing},
			{DryRing, KnifeShoulders}, {KnifeShoulders, CutShoulders}, {SawEnd, CutSlot}, {SawEnd, CutCheeks}, {CutShoulders, CutCheeks},
			{CutSlot, FitBridle}, {CutCheeks, FitBridle}, {FitBridle, CutTaper}, {SawFoot, CutTaper}, {CutLap, TrimPlainEnd},
			{CutTaper, GlueLegs}, {TrimPlainEnd, GlueLegs}, {GlueLegs, TrimHeads},
			{TrimHeads, GlueRing}, {GlueRing, FitPads}, {FitPads, FitTop},
		},
		// The stops of shoulders, leg end and head touch far ends that are square yet.
		false: {{CutShoulders, SawFoot}, {SawEnd, SawFoot}, {CutShoulders, SawEnd}, {SawEnd, TrimPlainEnd}, {CutShoulders, TrimPlainEnd}},
	}
	for name, designs := range piecetest.Cases() {
		steps := stepsOf(piecetest.WorkedAll(t, designs...))
		for all, laws := range laws {
			for _, d := range designs {
				first, last := map[Do]int{}, map[Do]int{}
				for i, s := range steps {
					if !all && !s.does(Stretcher, d.Size) && !s.does(Leg, d.Size) {
						continue
					}
					if _, ok := first[s.Do]; !ok {
						first[s.Do] = i + 1
					}
					last[s.Do] = i + 1
				}
				for _, l := range laws {
					if first[l.before] == 0 || first[l.after] == 0 {
						if l.before != OpenEnd || designs[0].Ring.Plain != design.ClosedEnd {
							t.Errorf("%s: no row for %v or %v", name, l.before, l.after)
						}
						continue
					}
					if last[l.before] > first[l.after] {
						t.Errorf("%s: row %d (%v) comes after row %d (%v)", name, last[l.before], l.before, first[l.after], l.after)
					}
				}
			}
		}
	}
}

// Once the gauge has left a setting it does not come back to it in one stage, but for
// laps of another depth.
func TestTheGaugeNeverComesBack(t *testing.T) {
	for name, designs := range piecetest.Cases() {
		left, last := map[float64]bool{}, Card{}
		for _, c := range NewPlan(piecetest.WorkedAll(t, designs...)).Cards {
			if c.Stage != last.Stage || c.Stage == LapStage && c.Height != last.Height {
				clear(left)
			}
			if c.How != OnGauge {
				continue
			}
			if c.Swing != last.Swing {
				left[last.Swing] = true
				if left[c.Swing] {
					t.Errorf("%s: card %d turns the gauge to %v° again", name, c.Number, c.Swing*180/math.Pi)
				}
			}
			last = c
		}
	}
}

// Every row that cuts an angle into a stretcher or leg cuts as many spares as the
// design asks for: none where it asks for none.
func TestAngledPartsHaveTheirSpares(t *testing.T) {
	for name, designs := range piecetest.Cases() {
		for _, asked := range []int{0, 1, 3} {
			for i := range designs {
				designs[i].Wood.Spares = asked
			}
			plan, angled := NewPlan(piecetest.WorkedAll(t, designs...)), 0
			for _, s := range plan.steps() {
				if s.Cut.OffSquare == 0 || s.Parts[0].Part != Stretcher && s.Parts[0].Part != Leg {
					continue
				}
				angled++
				spares := 0
				for _, b := range s.Parts {
					spares += b.Spares
				}
				if spares < asked || asked == 0 && spares > 0 {
					t.Errorf("%s: %v has %d spares, want %d for each kind", name, s.What, spares, asked)
				}
			}
			if angled < 5 {
				t.Errorf("%s: only %d rows cut at an angle", name, angled)
			}
			if plan.Cuts.NoSpares != (asked == 0) || (plan.Cuts.Extras()&Spares == 0) != (asked == 0) {
				t.Errorf("%s, %d asked for: the list has none %v", name, asked, plan.Cuts.NoSpares)
			}
		}
	}
}

func only(steps []Step, o Do) []Step {
	var out []Step
	for _, s := range steps {
		if s.Do == o {
			out = append(out, s)
		}
	}
	return out
}

// With horns so long that the plain end decides the length, both sizes have
// one stretcher but for its leg end, and one row of laps.
func TestOneRingOneLapRow(t *testing.T) {
	a, b := piecetest.Low(), piecetest.Tall()
	a.Ring.Horn, b.Ring.Horn = 60, 60
	laps := only(stepsOf(piecetest.WorkedAll(t, a, b)), CutLap)
	if len(laps) != 1 {
		t.Fatalf("%d rows of laps, want 1", len(laps))
	}
	want := []Batch{{Part: Stretcher, Size: "low", Count: 3, Spares: 1}, {Part: Stretcher, Size: "tall", Count: 3, Spares: 1}}
	if got := laps[0].Parts; !slices.EqualFunc(got, want, func(a, b Batch) bool { return fmt.Sprint(a) == fmt.Sprint(b) }) {
		t.Errorf("parts %v, want %v", got, want)
	}
}

// Splays that the list prints alike are one setting, others are not; and a spare
// that serves both sizes is counted once.
func TestSettingsThatPrintAlikeAreOne(t *testing.T) {
	for apart, want := range map[float64]int{0: 1, 0.0005: 1, 0.02: 2} {
		twin := piecetest.Low()
		twin.Size = "twin"
		twin.Legs.Given = measure.Radians(16 + apart)
		ends := only(stepsOf(piecetest.WorkedAll(t, piecetest.Low(), twin)), SawEnd)
		heads, spares := 0, 0
		for _, s := range ends {
			if s.What.ID == "step.head" {
				heads++
				for _, b := range s.Parts {
					spares += b.Spares
				}
			}
		}
		if heads != want {
			t.Errorf("%v° apart: %d rows for the head, want %d", apart, heads, want)
		}
		if kinds := map[bool]int{true: 1, false: 2}[apart == 0]; spares != kinds {
			t.Errorf("%v° apart: %d spare legs, want %d", apart, spares, kinds)
		}
	}
}

// The short horns of the pair leave the stop to the legs: what differs in the stop only
// follows each other, and another width comes behind.
func TestOnlyTheStopMoves(t *testing.T) {
	odd := piecetest.Low()
	odd.Size, odd.Ring.Width = "wide", 34
	laps := only(stepsOf(piecetest.WorkedAll(t, piecetest.Low(), odd, piecetest.Tall())), CutLap)
	var sizes []string
	for _, s := range laps {
		sizes = append(sizes, s.Parts[0].Size)
	}
	if got, want := strings.Join(sizes, " "), "low tall wide"; got != want {
		t.Fatalf("laps in the order %s, want %s", got, want)
	}
}

func TestLapRowHoldsTheLap(t *testing.T) {
	for name, designs := range piecetest.Cases() {
		for _, p := range piecetest.WorkedAll(t, designs...) {
			l := p.EndLap()
			square := l.OffSquare()
			cut := only(stepsOf([]piece.Piece{p}), CutLap)[0].Cut
			for _, f := range []struct {
				figure    string
				got, want float64
			}{
				{"stop", cut.Stop, l.Stop()}, {"spacer", cut.Spacer, l.Spacer()},
				{"height", cut.Height, p.Frame.Ring.Depth / 2}, {"gauge", cut.OffSquare, square}, {"tilt", cut.Tilt, 0},
			} {
				if f.got != f.want {
					t.Errorf("%s: %s %v, want %v", name, f.figure, f.got, f.want)
				}
			}
		}
	}
}

// Stops of ends, feet and shoulders against the finished parts as solids: the
// stop is what lies between the far end and the cut.
func TestStopsAgainstTheSolids(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d := piecetest.Low()
		d.Ring.Sides = rapid.IntRange(3, 8).Draw(t, "sides")
		d.Ring.Inside = rapid.Float64Range(250, 400).Draw(t, "inside")
		d.Legs.Given = measure.Radians(rapid.Float64Range(1, 30).Draw(t, "splay"))
		d.Legs.Mortise = joint.BridleMember(rapid.IntRange(0, 1).Draw(t, "mortise"))
		d.Legs.Proud = rapid.Float64Range(0, 10).Draw(t, "proud")
		d.Top.Kind = design.NoTop
		p := piecetest.WorkedAll(t, d)[0]
		steps := stepsOf([]piece.Piece{p})
		stop := func(o Do, i int) float64 { // its own, where it has given way to a neighbour's
			s := only(steps, o)[i]
			return s.Cut.Stop - s.Left
		}
		close := func(figure string, got, want float64) {
			if math.Abs(got-want) > 1e-6 {
				t.Errorf("%s: stop %.6f, want %.6f", figure, got, want)
			}
		}
		stretcher := p.Stretcher().Bounds()
		close("stretcher end", stop(SawEnd, 0), p.RoughReach()+stretcher.Max.X+p.Bridle.Long)
		// Down the leg is z; the long corner of the foot lies lowest.
		leg := p.Leg().Transform(solid.RotateY(p.Frame.Leg.Splay))
		long := leg.Bounds().Size().Z + p.Bridle.Long
		close("leg head", stop(SawEnd, 1), long)
		close("foot", stop(SawFoot, 0), long)
		ring, outer := 1, 0 // which is sawn first
		if p.Design.Legs.Mortise == joint.MortiseInLeg {
			ring, outer = 0, 1
		}
		for i, at := range shoulderCorners(p) {
			turned := solid.RotateY(p.Frame.Leg.Splay).Apply(at)
			want := turned.Z - leg.Bounds().Min.Z
			if p.Design.Legs.Mortise == joint.MortiseInLeg {
				want = p.RoughReach() + at.X
			}
			close("shoulder", stop(CutShoulders, []int{ring, outer}[i]), want)
		}
	})
}

// shoulderCorners returns where a shoulder leaves the reference edge of its
// part and the other one: the corners of the leg's crossing with the stretcher.
func shoulderCorners(p piece.Piece) []solid.Vec {
	d := p.Frame.Ring.Depth
	if p.Design.Legs.Mortise == joint.MortiseInLeg {
		return []solid.Vec{{X: p.Frame.Leg.StretcherSide(d)}, {X: p.Frame.Leg.StretcherSide(0), Z: d}}
	}
	return []solid.Vec{{X: p.Frame.Leg.StretcherSide(d)}, {X: p.Frame.Leg.Back(d)}}
}

// A head that stands proud is sawn as far beyond its own trim line as any other.
func TestHeadsAreSawnBeyondTheirTrimLine(t *testing.T) {
	d := piecetest.Low()
	for proud, want := range map[float64]Note{
		0: note("beyond-trim", length(3)),
		5: note("beyond-trim-and-top", length(3), length(8.2)), // 5/cos 16° and 3
	} {
		d.Legs.Proud, d.Top.Kind = proud, design.NoTop
		head := only(stepsOf(piecetest.WorkedAll(t, d)), SawEnd)[1]
		if got := head.Then[0].onGrid(); head.What.ID != "step.head" || got != want.onGrid() {
			t.Errorf("proud by %v, %v: %v, want %v", proud, head.What, got, want)
		}
	}
}
