package bench

import (
	"fmt"
	"math"
	"regexp"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"rodsheet/geometry"
	"rodsheet/geometry/measure"
	"rodsheet/geometry/solid"
	"rodsheet/templates/piece"
	"rodsheet/templates/piece/design"
	"rodsheet/templates/piece/piecetest"
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
		p, err := piece.Work(d)
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
	inLeg := func(d *design.Design) { d.Legs.Mortise = geometry.MortiseInLeg; d.Ring.LegEndOver = true }
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
			h := steady(s.Cut.Height)
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
		d.Legs.Mortise = geometry.BridleMember(rapid.IntRange(0, 1).Draw(t, "mortise"))
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
		close("stretcher end", stop(doSawEnd, 0), p.RoughReach()+stretcher.Max.X+geometry.BridleLong)
		// Down the leg is z; the long corner of the foot lies lowest.
		leg := p.Leg().Transform(solid.TurnY(p.Frame.Leg.Splay))
		long := leg.Bounds().Size().Z + geometry.BridleLong
		close("leg head", stop(doSawEnd, 1), long)
		close("foot", stop(doSawFoot, 0), long)
		for i, at := range shoulderCorners(p) {
			turned := solid.TurnY(p.Frame.Leg.Splay).Apply(at)
			want := turned.Z - leg.Bounds().Min.Z
			if p.Design.Legs.Mortise == geometry.MortiseInLeg {
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
	if p.Design.Legs.Mortise == geometry.MortiseInLeg {
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

func TestCautionsAreGivenOnce(t *testing.T) {
	for name, designs := range settingsCases() {
		given := map[string]int{}
		for _, s := range workingOrder(workAll(t, designs...)) {
			given[s.Caution]++
		}
		for _, c := range []string{cautionPower, cautionOffcut, cautionJig, cautionSmall, cautionTaper, cautionGlue, cautionGlass} {
			if given[c] != 1 {
				t.Errorf("%s: %d times %q", name, given[c], c)
			}
		}
	}
}

func TestWhatTheSawCannotReach(t *testing.T) {
	d := piecetest.Low()
	d.Saw.Highest, d.Saw.StopReach = 40, 400
	for _, s := range workingOrder(workAll(t, d)) {
		if s.Cut == nil {
			continue
		}
		if want := s.Cut.Height > 40; s.Cut.ByHand != want || strings.Contains(s.words(), "by hand or at the bandsaw") != want {
			t.Errorf("%s, %.2f mm high: by hand %v, want %v", s.Name, s.Cut.Height, s.Cut.ByHand, want)
		}
		if want := s.Cut.How == onGauge && s.Cut.Stop > 400; s.Cut.Beyond != want {
			t.Errorf("%s, stop %.2f mm: beyond the stop %v, want %v", s.Name, s.Cut.Stop, s.Cut.Beyond, want)
		}
	}
}

// Without test pieces no list speaks of them; where one size asks for some, they
// are counted in both lists.
func TestTestPiecesAreAskedFor(t *testing.T) {
	low, other := piecetest.Low(), tall()
	for _, c := range []struct{ first, second, want int }{{0, 0, 0}, {1, 1, 1}, {0, 2, 2}} {
		low.Wood.Tests, other.Wood.Tests = c.first, c.second
		pieces := workAll(t, low, other)
		all := fmt.Sprint(CutList(pieces), Settings(pieces))
		if got := strings.Contains(all, "est piece"); got != (c.want > 0) {
			t.Errorf("%v: a word of test pieces %v", c, got)
		}
		if got := only(workingOrder(pieces), doMill)[0].Parts[0].Tests; got != c.want {
			t.Errorf("%v: %d milled, want %d", c, got, c.want)
		}
		if got := newCutList(pieces).tests("stretcher", pieces[0].SawnStretcher()); got != c.want {
			t.Errorf("%v: %d listed, want %d", c, got, c.want)
		}
	}
}

// A trapezium over a square ring: reckoned in the head from its corners, and its
// slanting sides from x = 350 − 50·(y + 250)/550.
func TestAFreeTopIsPlacedByFigures(t *testing.T) {
	d := piecetest.Square() // its outside edges stand 130 mm from the centre
	d.Top = design.Top{
		Kind: design.GlassTop, Outline: design.FreeOutline, Thickness: 8,
		Points: []geometry.Point{{X: -350, Y: -250}, {X: 350, Y: -250}, {X: 300, Y: 300}, {X: -300, Y: 300}},
	}
	for _, kind := range []design.TopKind{design.GlassTop, design.WoodTop} {
		d.Top.Kind = kind
		words := only(workingOrder(workAll(t, d)), doFitTop)[0].words()
		for _, want := range []string{
			"170 mm at stretcher 1, 197.27 mm at stretcher 2, 120 mm at stretcher 3, 197.27 mm at stretcher 4",
			"240.42 mm at stretcher 1, 240.42 mm at stretcher 2, 169.71 mm at stretcher 3, 169.71 mm at stretcher 4",
		} {
			if !strings.Contains(words, want) || strings.Contains(words, "same overhang") {
				t.Errorf("want %q in %s", want, words)
			}
		}
	}
	d.Top.Outline, d.Top.Overhang = design.RingTop, 20
	if words := only(workingOrder(workAll(t, d)), doFitTop)[0].words(); !strings.Contains(words, "same overhang all round") {
		t.Errorf("a top that follows the ring: %s", words)
	}
}

// No sentence has the word "in" right behind a length in inches.
func TestInchesAreNotDoubled(t *testing.T) {
	doubled := regexp.MustCompile(`.{0,30}\bin( \([0-9.]+\))? in\b.{0,20}`)
	cases := settingsCases()
	cases["bases"] = piecetest.Bases()
	for name, designs := range cases {
		for i := range designs {
			designs[i].Unit = measure.Inch
		}
		pieces := workAll(t, designs...)
		for _, said := range doubled.FindAllString(fmt.Sprint(CutList(pieces), Settings(pieces), GlueUp(pieces)), -1) {
			t.Errorf("%s: %q", name, said)
		}
	}
}

func TestGaugeReadsAsTheDesignSays(t *testing.T) {
	d := piecetest.Low()
	for _, want := range []string{"30° from square, 60° from the edge", "60° from the edge, 30° from square"} {
		lap := only(workingOrder(workAll(t, d)), doCutLap)[0]
		if got := lap.gaugeText(); !strings.HasPrefix(got, want) {
			t.Errorf("gauge %q, want %q first", got, want)
		}
		d.Saw.FromFence = true
	}
}

// The sizes as milled decide every setting.
func TestMilledSizesDecide(t *testing.T) {
	d := piecetest.Low()
	d.Milled = design.Milled{Width: 27.4, Depth: 35, Kerf: 2.8}
	lap := only(workingOrder(workAll(t, d)), doCutLap)[0].Cut
	if lap.Height != 17.5 {
		t.Errorf("blade height %v, want 17.5", lap.Height)
	}
	if want := (27.4 - 2.8) / math.Sin(math.Pi/3); math.Abs(lap.Spacer-want) > 1e-9 {
		t.Errorf("spacer %v, want %v", lap.Spacer, want)
	}
}

func TestWordsThatHangOnTheSaw(t *testing.T) {
	v, passes := "the teeth leave a V", "2 passes; the shoulders"
	d := piecetest.Low()
	for _, c := range []struct {
		flat    bool
		dado    float64
		has, no []string
	}{
		{false, 0, []string{v}, []string{passes}},
		{true, 15, []string{passes}, []string{v}},
	} {
		d.Saw.FlatTooth, d.Saw.Dado = c.flat, c.dado
		var all strings.Builder
		for _, s := range workingOrder(workAll(t, d)) {
			all.WriteString(s.words())
		}
		for _, w := range c.has {
			if !strings.Contains(all.String(), w) {
				t.Errorf("flat tooth %v, dado %v: no word of %q", c.flat, c.dado, w)
			}
		}
		for _, w := range c.no {
			if strings.Contains(all.String(), w) {
				t.Errorf("flat tooth %v, dado %v: says %q", c.flat, c.dado, w)
			}
		}
	}
}

// Each table has its head, each row its number and an empty cell to write in.
func TestSettingsPanels(t *testing.T) {
	for name, designs := range settingsCases() {
		pieces := workAll(t, designs...)
		rows := 0
		for _, p := range Settings(pieces) {
			head := p.Table[0]
			if !p.Ruled || head[len(head)-1] != "used" {
				t.Errorf("%s: %s is no list to write in: %v", name, p.Heading, head)
			}
			for _, r := range p.Table[1:] {
				if len(r) == 1 {
					continue
				}
				rows++
				if len(r) != len(head) || r[len(r)-1] != "" {
					t.Errorf("%s: row %v does not fit its head", name, r)
				}
				for _, cell := range r[:len(r)-1] {
					if cell == "" {
						t.Errorf("%s: row %v has an empty cell before the last", name, r)
					}
				}
			}
		}
		if want := len(workingOrder(pieces)); rows != want {
			t.Errorf("%s: %d rows printed, want %d", name, rows, want)
		}
	}
	if got := Settings(nil); got != nil {
		t.Errorf("no pieces give %v", got)
	}
}
