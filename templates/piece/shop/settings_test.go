package shop

import (
	"math"
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

// tall is the second size of low: the same ring on longer legs.
func tall() design.Design {
	d := piecetest.Low()
	d.Size, d.Legs.Height, d.Legs.Given = "tall", 560, measure.Radians(11)
	return d
}

func workAll(t rapid.TB, designs ...design.Design) []piece.Piece {
	t.Helper()
	out := make([]piece.Piece, len(designs))
	for i, d := range designs {
		p, err := piece.Solve(d)
		if err != nil {
			t.Fatal(err)
		}
		out[i] = p
	}
	return out
}

// settingsCases returns designs in which everything that changes the list differs.
func settingsCases() map[string][]design.Design {
	change := func(d design.Design, f func(*design.Design)) design.Design {
		f(&d)
		return d
	}
	deep := change(tall(), func(d *design.Design) { d.Ring.Depth = 44 })
	flush := func(d *design.Design) { d.Ring.Plain, d.Ring.Horn = design.FlushEnd, 0 }
	closed := func(d *design.Design) { d.Ring.Plain, d.Ring.Slack = design.ClosedEnd, 0.5 }
	inLeg := func(d *design.Design) { d.Legs.Mortise = joint.MortiseInLeg; d.Ring.LegEndOver = true }
	third := change(tall(), func(d *design.Design) { d.Size = "bench" })
	return map[string][]design.Design{
		"one":         {piecetest.Low()},
		"pair":        {piecetest.Low(), tall()},
		"two depths":  {piecetest.Low(), deep},
		"interlaced":  {piecetest.Low(), deep, third},
		"flush":       {change(piecetest.Low(), flush), change(tall(), flush)},
		"closed":      {change(piecetest.Low(), closed)},
		"leg slotted": {change(piecetest.Low(), inLeg), tall()},
	}
}

func TestLapsOfOneHeightFollowEachOther(t *testing.T) {
	for name, designs := range settingsCases() {
		pieces := workAll(t, designs...)
		done := map[float64]bool{}
		last, laps := 0.0, 0
		for i, s := range workingOrder(pieces) {
			if s.Op != doTestLap && s.Op != doCutLap && s.Op != doOpenEnd {
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
	for name, designs := range settingsCases() {
		steps := workingOrder(workAll(t, designs...))
		opened := 0
		for i, s := range steps {
			if s.Op != doOpenEnd {
				continue
			}
			before := steps[i-1]
			if before.Op != doCutLap && before.Op != doOpenEnd || before.Cut.Height != s.Cut.Height || before.Cut.Square != s.Cut.Square {
				t.Errorf("%s: the plain ends come after %q, not after laps of their height", name, before.Name)
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
	// Each of the first is done before any of the second.
	laws := []struct{ before, after operation }{
		{doMill, doMeasure}, {doMill, doCrosscut}, {doMeasure, doCrosscut}, {doCrosscut, doTestLap}, {doCutLap, doDryRing}, {doOpenEnd, doDryRing},
		{doDryRing, doSawEnd}, {doSawEnd, doCutSlot}, {doSawEnd, doCutCheeks}, {doKnifeShoulders, doCutSlot}, {doCutCheeks, doCutShoulders},
		{doCutSlot, doSawFoot}, {doCutCheeks, doSawFoot}, {doCutShoulders, doSawFoot}, {doFitBridle, doSawFoot},
		{doCutSlot, doCutTaper}, {doCutCheeks, doCutTaper}, {doCutShoulders, doCutTaper}, {doCutLap, doCutTaper},
		{doSawFoot, doCutTaper}, {doCutTaper, doGlueLegs}, {doTrimPlainEnd, doGlueLegs}, {doGlueLegs, doTrimHeads},
		{doTrimHeads, doGlueRing}, {doGlueRing, doFitPads}, {doFitPads, doFitTop},
	}
	for name, designs := range settingsCases() {
		first, last := map[operation]int{}, map[operation]int{}
		for i, s := range workingOrder(workAll(t, designs...)) {
			if _, ok := first[s.Op]; !ok {
				first[s.Op] = i + 1
			}
			last[s.Op] = i + 1
		}
		for _, l := range laws {
			if first[l.before] == 0 || first[l.after] == 0 {
				if l.before != doOpenEnd || designs[0].Ring.Plain != design.ClosedEnd {
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

// Every row that cuts an angle into a stretcher or leg cuts its spare too, even
// where the design asks for none.
func TestEveryAngledPartHasASpare(t *testing.T) {
	for name, designs := range settingsCases() {
		for i := range designs {
			designs[i].Wood.Spares = 0
		}
		angled := 0
		for _, s := range workingOrder(workAll(t, designs...)) {
			if s.Cut == nil || s.Cut.Square == 0 || (s.Parts[0].Part != "stretcher" && s.Parts[0].Part != "leg") {
				continue
			}
			angled++
			spares := 0
			for _, b := range s.Parts {
				spares += b.Spares
			}
			if spares == 0 {
				t.Errorf("%s: %q has no spare", name, s.Name)
			}
		}
		if angled < 5 {
			t.Errorf("%s: only %d rows cut at an angle", name, angled)
		}
	}
}

func only(steps []step, o operation) []step {
	var out []step
	for _, s := range steps {
		if s.Op == o {
			out = append(out, s)
		}
	}
	return out
}

// With horns so long that the plain end decides the length, both sizes have
// one stretcher but for its leg end, and one row of laps.
func TestOneRingOneLapRow(t *testing.T) {
	a, b := piecetest.Low(), tall()
	a.Ring.Horn, b.Ring.Horn = 60, 60
	laps := only(workingOrder(workAll(t, a, b)), doCutLap)
	if len(laps) != 1 {
		t.Fatalf("%d rows of laps, want 1", len(laps))
	}
	if got, want := laps[0].partText(), "stretcher: 3 low, 3 tall, 2 spare"; got != want {
		t.Errorf("parts %q, want %q", got, want)
	}
	if want := "Both sizes: cut them together."; laps[0].Then[0] != want {
		t.Errorf("row begins %q, want %q", laps[0].Then[0], want)
	}
}

// The short horns of the pair leave the stop to the legs: two rows, one after
// the other, and the second says that only the stop moves.
func TestOnlyTheStopMoves(t *testing.T) {
	odd := piecetest.Low()
	odd.Size, odd.Ring.Width = "wide", 34
	laps := only(workingOrder(workAll(t, piecetest.Low(), odd, tall())), doCutLap)
	var sizes []string
	for _, s := range laps {
		sizes = append(sizes, s.Parts[0].Size)
	}
	if got, want := strings.Join(sizes, " "), "low tall wide"; got != want {
		t.Fatalf("laps in the order %s, want %s", got, want)
	}
	if want := "As the row above: only the stop moves."; laps[1].Then[0] != want {
		t.Errorf("row begins %q, want %q", laps[1].Then[0], want)
	}
	if strings.Contains(laps[2].words(), "only the stop") {
		t.Errorf("a wider lap is said to differ in the stop only: %s", laps[2].words())
	}
}

func TestLapRowHoldsTheLap(t *testing.T) {
	for name, designs := range settingsCases() {
		for _, p := range workAll(t, designs...) {
			l := p.EndLap()
			_, square := l.Gauge()
			cut := *only(workingOrder([]piece.Piece{p}), doCutLap)[0].Cut
			for _, f := range []struct {
				figure    string
				got, want float64
			}{
				{"stop", cut.Stop, l.Stop()}, {"spacer", cut.Spacer, l.Spacer()},
				{"height", cut.Height, p.Frame.Ring.Depth / 2}, {"gauge", cut.Square, square}, {"tilt", cut.Tilt, 0},
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
		p := workAll(t, d)[0]
		steps := workingOrder([]piece.Piece{p})
		stop := func(o operation, i int) float64 { return only(steps, o)[i].Cut.Stop }
		close := func(figure string, got, want float64) {
			if math.Abs(got-want) > 1e-6 {
				t.Errorf("%s: stop %.6f, want %.6f", figure, got, want)
			}
		}
		stretcher := p.Stretcher().Bounds()
		close("stretcher end", stop(doSawEnd, 0), p.RoughReach()+stretcher.Max.X+joint.BridleLong)
		// Down the leg is z; the long corner of the foot lies lowest.
		leg := p.Leg().Transform(solid.TurnY(p.Frame.Leg.Splay))
		long := leg.Bounds().Size().Z + joint.BridleLong
		close("leg head", stop(doSawEnd, 1), long)
		close("foot", stop(doSawFoot, 0), long)
		for i, at := range shoulderCorners(p) {
			turned := solid.TurnY(p.Frame.Leg.Splay).Apply(at)
			want := turned.Z - leg.Bounds().Min.Z
			if p.Design.Legs.Mortise == joint.MortiseInLeg {
				want = p.RoughReach() + at.X
			}
			close("shoulder", stop(doCutShoulders, i), want)
		}
	})
}

// shoulderCorners returns where a shoulder leaves the reference edge of its
// part and the other one: the corners of the leg's crossing with the stretcher.
func shoulderCorners(p piece.Piece) []solid.Vec {
	d := p.Frame.Ring.Depth
	if p.Design.Legs.Mortise == joint.MortiseInLeg {
		return []solid.Vec{{X: p.Frame.Leg.Inner(d)}, {X: p.Frame.Leg.Inner(0), Z: d}}
	}
	return []solid.Vec{{X: p.Frame.Leg.Inner(d)}, {X: p.Frame.Leg.Outer(d)}}
}

// A head that stands proud is sawn as far beyond its own trim line as any other.
func TestHeadsAreSawnBeyondTheirTrimLine(t *testing.T) {
	d := piecetest.Low()
	for proud, want := range map[float64]string{
		0: "3 mm beyond the trim line.",
		// 5/cos 16° and 3
		5: "3 mm beyond the trim line, 8.2 mm beyond the line of the stretcher's top.",
	} {
		d.Legs.Proud, d.Top.Kind = proud, design.NoTop
		head := only(workingOrder(workAll(t, d)), doSawEnd)[1]
		if got := head.Then[0]; head.Name != "leg head, at the splay" || got != want {
			t.Errorf("proud by %v, %s: %q, want %q", proud, head.Name, got, want)
		}
	}
}
