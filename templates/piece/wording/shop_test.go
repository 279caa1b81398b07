package wording

import (
	"fmt"
	"go/ast"
	"go/parser"
	"go/token"
	"path/filepath"
	"reflect"
	"regexp"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"rodsheet/geometry"
	"rodsheet/geometry/measure"
	"rodsheet/templates"
	"rodsheet/templates/piece/design"
	"rodsheet/templates/piece/internal/piecetest"
	"rodsheet/templates/piece/shop"
	"rodsheet/templates/wording"
)

func planOf(t rapid.TB, designs ...design.Design) shop.Plan {
	return shop.NewPlan(piecetest.WorkedAll(t, designs...))
}

// lists are all that is printed of a plan.
func listed(p shop.Plan) []templates.Panel {
	return slices.Concat(CutList(p), GlueUp(p, true), cardPanels(p))
}

// cardPanels are the words of the cards of a plan, their figures as tables.
func cardPanels(p shop.Plan) []templates.Panel {
	var out []templates.Panel
	for _, c := range p.Cards {
		card := Card(p, c)
		panel := templates.Panel{Heading: card.Heading, Text: append(card.Text, card.Test, card.Caution)}
		for _, f := range card.Figures {
			panel.Table = append(panel.Table, []string{f.Name, f.Value})
		}
		for _, t := range card.Ticks {
			panel.Table = append(panel.Table, []string{t.Text, fmt.Sprint(t.Boxes)})
		}
		out = append(out, panel)
	}
	return out
}

// cardOf returns the first card that holds a step of one kind.
func cardOf(p shop.Plan, do shop.Do) templates.Card {
	i := slices.IndexFunc(p.Cards, func(c shop.Card) bool { return c.Steps[0].Do == do })
	return Card(p, p.Cards[i])
}

// Every note that package shop can make has a sentence, and there is no other.
func TestEveryNoteHasASentence(t *testing.T) {
	sources, err := filepath.Glob("../shop/*.go")
	if err != nil || len(sources) == 0 {
		t.Fatal(err)
	}
	made := map[shop.NoteID]bool{}
	for _, name := range sources {
		if strings.HasSuffix(name, "_test.go") {
			continue
		}
		file, err := parser.ParseFile(token.NewFileSet(), name, nil, parser.SkipObjectResolution)
		if err != nil {
			t.Fatal(err)
		}
		ast.Inspect(file, func(n ast.Node) bool {
			if _, ok := n.(*ast.ImportSpec); ok {
				return false
			}
			if l, ok := n.(*ast.BasicLit); ok && l.Kind == token.STRING && l.Value != `""` {
				id := shop.NoteID(strings.Trim(l.Value, `"`))
				made[id] = true
				if noteTexts()[id] == "" && !strings.Contains(string(id), " ") {
					t.Errorf("%s: %s has no sentence", name, id)
				}
			}
			return true
		})
	}
	for id := range noteTexts() {
		if !made[id] {
			t.Errorf("no note is %s", id)
		}
	}
	for _, all := range [][]wording.Text{faceNames[1:], sourceNames[1:], pointNames[1:], extraNames[1:]} {
		if i := slices.Index(all, ""); i >= 0 {
			t.Errorf("number %d has no words, after %q", i, all[:i])
		}
	}
}

var figures = regexp.MustCompile(`[0-9]+(?:\.[0-9]+)?`)

// nonsense puts another letter for every letter of a sentence, its verbs left.
func nonsense(text wording.Text) string {
	verb := false
	return strings.Map(func(r rune) rune {
		switch {
		case r == '%':
			verb = !verb
		case verb:
			verb = strings.ContainsRune("[]0123456789.", r)
		case r >= 'a' && r <= 'z':
			return 'z' - (r - 'a')
		case r >= '0' && r <= '9':
			return 'q'
		}
		return r
	}, string(text))
}

// No figure, step, merge or order hangs on words: with every sentence turned into
// nonsense the plan is the same and the lists print the same figures in the same
// places.
func TestListsOutOfNonsense(t *testing.T) {
	for name, designs := range piecetest.Cases() {
		plan := planOf(t, designs...)
		want := listed(plan)
		restore := wording.Garble(nonsense)
		again := planOf(t, designs...)
		got := listed(again)
		restore()
		if !reflect.DeepEqual(plan.Cards, again.Cards) || !reflect.DeepEqual(plan.Cuts, again.Cuts) || !reflect.DeepEqual(plan.Blocks, again.Blocks) {
			t.Errorf("%s: the plan hangs on words", name)
		}
		if len(got) != len(want) {
			t.Fatalf("%s: %d panels, want %d", name, len(got), len(want))
		}
		for i := range want {
			if got[i].Heading == want[i].Heading || len(got[i].Table) != len(want[i].Table) || len(got[i].Text) != len(want[i].Text) {
				t.Errorf("%s: panel %s became %s, with %d and %d rows", name, want[i].Heading, got[i].Heading, len(want[i].Table), len(got[i].Table))
				continue
			}
			for k, row := range want[i].Table {
				if len(row) != len(got[i].Table[k]) {
					t.Errorf("%s: row %q became %q", name, row, got[i].Table[k])
				}
				if got, want := figures.FindAllString(strings.Join(got[i].Table[k], " "), -1), figures.FindAllString(strings.Join(withoutFixed(row), " "), -1); !slices.Equal(got, want) {
					t.Errorf("%s: figures %v, want %v of %q", name, got, want, row)
				}
			}
		}
	}
}

// withoutFixed leaves out the figures that are part of a sentence itself.
func withoutFixed(row []string) []string {
	out := slices.Clone(row)
	for i := range out {
		out[i] = strings.ReplaceAll(out[i], "at 90°.", "at .")
	}
	return out
}

// A card of what the saw cannot do speaks of no setting of the saw, and one of what it
// can does not speak of hands.
func TestCardsByHandSpeakOfNoMachine(t *testing.T) {
	machine := []string{"stop", "spacer", "passes", "blade height", "blade stays", "jig", "fence", "guard", "setting of the gauge", "filler strip"}
	for name, designs := range piecetest.Cases() {
		for _, highest := range []float64{1, 10, 15, 20, 30} {
			for i := range designs {
				designs[i].Saw.Highest = highest
			}
			plan := planOf(t, designs...)
			for i, p := range cardPanels(plan) {
				said := strings.ToLower(fmt.Sprint(p))
				if c := plan.Cards[i]; c.How != shop.AwayFromSaw && c.Steps[0].Do != shop.SawBlocks && strings.Contains(said, "by hand, ") != c.Hand {
					t.Errorf("%s, blade %v, card %d: by hand %v in %s", name, highest, i+1, c.Hand, said)
				}
				for _, w := range machine {
					if plan.Cards[i].Hand && strings.Contains(said, w) {
						t.Errorf("%s, blade %v, card %d is by hand and speaks of %q: %s", name, highest, i+1, w, said)
					}
				}
			}
		}
	}
}

func TestWhatTheSawCannotReach(t *testing.T) {
	d := piecetest.Low()
	d.Saw.Highest, d.Saw.StopReach = 40, 400
	plan := planOf(t, d)
	for _, c := range plan.Cards {
		words := strings.Join(Card(plan, c).Text, " ")
		for _, s := range c.Steps {
			if s.Cut.How == shop.AwayFromSaw {
				continue
			}
			if want := s.Cut.Height > 40; s.Cut.ByHand() != want || strings.Contains(words, "by hand or at the bandsaw") != want {
				t.Errorf("%v, %.2f mm high: by hand %v, want %v", s.What, s.Cut.Height, s.Cut.ByHand(), want)
			}
			if want := s.Cut.How == shop.OnGauge && s.Cut.Stop > 400; s.Cut.Beyond != want {
				t.Errorf("%v, stop %.2f mm: beyond the stop %v, want %v", s.What, s.Cut.Stop, s.Cut.Beyond, want)
			}
		}
	}
}

// Without test pieces no list speaks of them; where one size asks for some, they
// are counted in both lists.
func TestTestPiecesAreAskedFor(t *testing.T) {
	low, other := piecetest.Low(), piecetest.Tall()
	for _, c := range []struct{ first, second, want int }{{0, 0, 0}, {1, 1, 1}, {0, 2, 2}} {
		low.Wood.Tests, other.Wood.Tests = c.first, c.second
		plan := planOf(t, low, other)
		all := fmt.Sprint(CutList(plan), cardPanels(plan))
		if got := strings.Contains(all, "est piece"); got != (c.want > 0) {
			t.Errorf("%v: a word of test pieces %v", c, got)
		}
		if first := plan.Cards[0].Steps[0]; first.Do != shop.Mill || first.Parts[0].Tests != c.want {
			t.Errorf("%v: %d milled, want %d", c, first.Parts[0].Tests, c.want)
		}
		listed := 0
		for _, r := range plan.Cuts.Rows {
			if r.Part == shop.StretcherTest {
				listed += r.Serves
			}
		}
		if listed != c.want {
			t.Errorf("%v: %d listed, want %d", c, listed, c.want)
		}
	}
}

// A design that asks for no spares gets none, and no list speaks of any but to say
// so.
func TestNoSpares(t *testing.T) {
	d := piecetest.Low()
	for _, spares := range []int{0, 1} {
		d.Wood.Spares = spares
		for _, tests := range []int{0, 1} {
			d.Wood.Tests = tests
			plan := planOf(t, d)
			cuts := CutList(plan)
			if got, want := strings.Contains(strings.Join(cuts[0].Text, "\n"), "asks for no spares"), spares == 0; got != want {
				t.Errorf("%d spares asked for: said that there are none %v, want %v", spares, got, want)
			}
			all := fmt.Sprint(cuts[0].Table[1:], cuts[1], cardPanels(plan))
			if got := strings.Contains(all, "spare"); got != (spares > 0) {
				t.Errorf("%d spares, %d test pieces: a word of spares %v", spares, tests, got)
			}
		}
	}
}

// A trapezium over a square ring: reckoned in the head from its corners, and its
// slanting sides from x = 350 − 50·(y + 250)/550.
func TestAFreeTopIsPlacedByFigures(t *testing.T) {
	d := piecetest.Square() // its outer sides stand 130 mm from the centre
	d.Top = design.Top{
		Kind: design.GlassTop, Outline: design.FreeOutline, Thickness: 8,
		Points: []geometry.Point{{X: -350, Y: -250}, {X: 350, Y: -250}, {X: 300, Y: 300}, {X: -300, Y: 300}},
	}
	for _, kind := range []design.TopKind{design.GlassTop, design.WoodTop} {
		d.Top.Kind = kind
		words := strings.Join(cardOf(planOf(t, d), shop.FitTop).Text, " ")
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
	if words := strings.Join(cardOf(planOf(t, d), shop.FitTop).Text, " "); !strings.Contains(words, "same overhang all round") {
		t.Errorf("a top that follows the ring: %s", words)
	}
}

// No sentence has the word "in" right behind a length in inches, and none a figure
// that is no number or a verb that was not filled.
func TestListsReadWell(t *testing.T) {
	odd := regexp.MustCompile(`.{0,30}(\bin( \([0-9.]+\))? in\b|NaN|Inf|-0 |%!|  |from (square|the edge)|inner (face|edge)|outer (face|edge)|inside (edge|face)|outside edge|face side|upright jig).{0,20}`)
	decimals := regexp.MustCompile(` \([0-9.]+\)`)
	cases := piecetest.Cases()
	cases["bases"] = piecetest.Bases()
	for name, designs := range cases {
		for _, u := range []measure.Unit{measure.Inch, measure.Millimetre} {
			for _, highest := range []float64{0, 20} {
				for i := range designs {
					designs[i].Unit, designs[i].Saw.Highest = u, highest
				}
				for _, p := range listed(planOf(t, designs...)) {
					all := p.Text
					for _, r := range p.Table {
						all = append(all, r...)
					}
					for _, text := range all {
						if said := odd.FindString(decimals.ReplaceAllString(text, "")); said != "" {
							t.Errorf("%s: %q", name, said)
						}
					}
				}
			}
		}
	}
}

func TestGaugeReadsAsTheDesignSays(t *testing.T) {
	d := piecetest.Low()
	for _, want := range []string{"30° off square, bevel 60°", "bevel 60°, off square 30°"} {
		plan := planOf(t, d)
		f := cardOf(plan, shop.CutLap).Figures
		if got := fmt.Sprintf("%s, %s %s", f[0].Value, f[1].Name, f[1].Value); got != want {
			t.Errorf("gauge %q, want %q first", got, want)
		}
		d.Saw.FromFence = true
	}
}

// The marks stand on the hand on which the geometry has them: seen on its ring side
// a stretcher has its leg end on the right, and a leg leans away from mid-length, so
// that its stretcher side is on the left.
func TestMarksStandOnTheRightHand(t *testing.T) {
	for id, want := range map[shop.NoteID]string{
		"mark-stretchers": "seen on the ring side, top up, the leg end is on the right.",
		"mark-legs":       "seen on the ring side, head up, the stretcher side is on the left.",
	} {
		if text := string(noteTexts()[id]); !strings.HasSuffix(text, want) {
			t.Errorf("%s says %q", id, text)
		}
	}
}

func TestWordsThatHangOnTheSaw(t *testing.T) {
	v, passes := "the teeth leave a V", "2 passes; the spacer"
	d := piecetest.Low()
	for _, c := range []struct {
		flat    bool
		dado    float64
		has, no string
	}{
		{false, 0, v, passes},
		{true, 15, passes, v},
	} {
		d.Saw.FlatTooth, d.Saw.Dado = c.flat, c.dado
		all := fmt.Sprint(cardPanels(planOf(t, d)))
		if !strings.Contains(all, c.has) || strings.Contains(all, c.no) {
			t.Errorf("flat tooth %v, dado %v: want %q and not %q", c.flat, c.dado, c.has, c.no)
		}
	}
}

// A part is named once for all the sizes that are cut together.
func TestWhatIsShared(t *testing.T) {
	a, b := piecetest.Low(), piecetest.Tall()
	a.Ring.Horn, b.Ring.Horn = 60, 60
	if got, want := cardOf(planOf(t, a, b), shop.CutLap).Ticks[0].Text, "stretcher: 3 low, 3 tall, 2 spare"; got != want {
		t.Errorf("parts %q, want %q", got, want)
	}
}
