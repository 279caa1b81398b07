package shop

import (
	"fmt"
	"math"
	"regexp"
	"strings"
	"testing"

	"rodsheet/geometry"
	"rodsheet/geometry/measure"
	"rodsheet/templates/piece/design"
	"rodsheet/templates/piece/internal/piecetest"
)

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
