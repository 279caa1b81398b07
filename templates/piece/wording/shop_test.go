package wording

import (
	"fmt"
	"go/ast"
	"go/parser"
	"go/token"
	"math"
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
func lists(p shop.Plan) []templates.Panel {
	return slices.Concat(CutList(p), Settings(p), GlueUp(p), cardPanels(p))
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

// under returns what stands under the first step of one kind.
func under(p shop.Plan, do shop.Do) string {
	i := slices.IndexFunc(p.Steps, func(s shop.Step) bool { return s.Do == do })
	return speakerFor(p.Pieces).under(p.Steps[i])
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
				if noteTexts[id] == "" && !strings.Contains(string(id), " ") {
					t.Errorf("%s: %s has no sentence", name, id)
				}
			}
			return true
		})
	}
	for id := range noteTexts {
		if !made[id] {
			t.Errorf("no note is %s", id)
		}
	}
	for _, all := range [][]wording.Text{faceNames[1:], sourceNames[1:], stageNames[:], likeTexts[1:], pointNames[1:], extraNames[1:]} {
		if i := slices.Index(all, ""); i >= 0 {
			t.Errorf("number %d has no words, after %q", i, all[:i])
		}
	}
}

// The words of a row hold every figure of its operation.
func TestRowsHoldTheFiguresOfTheirOperation(t *testing.T) {
	for name, designs := range piecetest.Cases() {
		for _, highest := range []float64{0, 20, 1} {
			for i := range designs {
				designs[i].Saw.Highest, designs[i].Saw.StopReach = highest, 300
			}
			plan := planOf(t, designs...)
			s := speakerFor(plan.Pieces)
			for i, step := range plan.Steps {
				row := strings.Join(s.row("", step), "|")
				c := step.Cut
				lengths := []float64{c.Stop, c.Spacer, c.Line, c.Along, c.Height}
				if c.ByHand() && c.How == shop.OnEnd {
					lengths[4] = c.Height / math.Cos(c.OffSquare) // along the edge
				}
				for _, mm := range lengths {
					if mm > 0 && !strings.Contains(row, s.mm(mm)) {
						t.Errorf("%s, row %d: no %s in %s", name, i+1, s.mm(mm), row)
					}
				}
				if c.How == shop.OnGauge && !strings.Contains(row, s.angle(c.OffSquare)+" off square, bevel "+s.angle(math.Pi/2-c.OffSquare)) {
					t.Errorf("%s, row %d: not both names of %v in %s", name, i+1, c.OffSquare, row)
				}
				if c.How == shop.OnTaper && !strings.Contains(row, s.angle(c.OffSquare)+" to the edge") {
					t.Errorf("%s, row %d: not %v to the edge in %s", name, i+1, c.OffSquare, row)
				}
				for _, l := range step.Lies {
					for _, f := range []shop.Face{l.Down, l.Fence} {
						if f != shop.NoFace && !strings.Contains(row, Face(f)) {
							t.Errorf("%s, row %d: no %s in %s", name, i+1, Face(f), row)
						}
					}
				}
				said := row + s.under(step)
				for _, n := range slices.Concat(step.Then.All(), step.Once.All(), []shop.Note{step.What, step.Test}) {
					for _, a := range n.Args {
						if a.Is == shop.FigureArg && a.Figure.Kind != measure.KindNumber && !strings.Contains(said, a.Figure.Bare(s.unit)) {
							t.Errorf("%s, row %d: no %s in %s", name, i+1, a.Figure.Text(s.unit), said)
						}
					}
				}
			}
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
		want := lists(plan)
		restore := wording.Garble(nonsense)
		again := planOf(t, designs...)
		got := lists(again)
		restore()
		if !reflect.DeepEqual(plan.Steps, again.Steps) || !reflect.DeepEqual(plan.Cuts, again.Cuts) || !reflect.DeepEqual(plan.Blocks, again.Blocks) {
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

// The list is one table, so that no stage comes to stand on a sheet before the
// one that it follows, and the row above a heading has its words between them.
func TestTheListIsOneTable(t *testing.T) {
	for name, designs := range piecetest.Cases() {
		panels := Settings(planOf(t, designs...))
		if len(panels) != 1 {
			t.Fatalf("%s: %d tables", name, len(panels))
		}
		var headings []string
		number, above := 0, 1
		for _, r := range panels[0].Table[1:] {
			switch {
			case len(r) > 1:
				number++
				if r[0] != fmt.Sprint(number) {
					t.Errorf("%s: row %q comes as number %d", name, r[0], number)
				}
			case r[0] == strings.ToUpper(r[0]):
				headings = append(headings, r[0])
				if above > 1 {
					t.Errorf("%s: %s stands right under row %d", name, r[0], number)
				}
			}
			above = len(r)
		}
		if got, want := strings.Join(headings, "; "), "STOCK; LAPS; BRIDLE JOINTS; TAPERS, PLAIN ENDS; GLUE-UP; TOP; FINISH"; got != want {
			t.Errorf("%s: headings %s, want %s", name, got, want)
		}
	}
}

// Each table has its head, each row its number and an empty cell to write in.
func TestSettingsPanels(t *testing.T) {
	for name, designs := range piecetest.Cases() {
		plan := planOf(t, designs...)
		rows := 0
		for _, p := range Settings(plan) {
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
		if want := len(plan.Steps); rows != want {
			t.Errorf("%s: %d rows printed, want %d", name, rows, want)
		}
	}
	if got := lists(shop.Plan{}); got != nil {
		t.Errorf("no pieces give %v", got)
	}
}

func TestCautionsAreGivenOnce(t *testing.T) {
	for name, designs := range piecetest.Cases() {
		all := fmt.Sprint(Settings(planOf(t, designs...)))
		for _, id := range []shop.NoteID{"isolate-power", "free-offcut", "hands-on-jig", "small-parts", "taper-in-jig", "data-sheets", "glass-care"} {
			c := noteTexts[id]
			if n := strings.Count(all, string(c)); c == "" || n != 1 {
				t.Errorf("%s: %d times %q", name, n, c)
			}
		}
	}
}

// A row that the saw cannot do speaks of no setting of the saw, and one that it
// can does not speak of hands.
func TestRowsByHandSpeakOfNoMachine(t *testing.T) {
	machine := []string{"stop", "spacer", "passes", "blade height", "blade stays", "jig", "fence", "guard", "setting of the gauge", "filler strip"}
	for name, designs := range piecetest.Cases() {
		for _, highest := range []float64{1, 10, 15, 20, 30} {
			for i := range designs {
				designs[i].Saw.Highest = highest
			}
			plan := planOf(t, designs...)
			for i, s := range plan.Steps {
				if s.Cut.How == shop.AwayFromSaw || s.Do == shop.SawBlocks {
					continue
				}
				say := speakerFor(plan.Pieces)
				said := strings.Join(say.row("", s), " ") + " " + say.under(s)
				if byHand := strings.Contains(said, "by hand, "); byHand != s.Cut.ByHand() {
					t.Errorf("%s, blade %v, row %d: by hand %v in %s", name, highest, i+1, s.Cut.ByHand(), said)
				}
				for _, w := range machine {
					if s.Cut.ByHand() && strings.Contains(strings.ToLower(said), w) {
						t.Errorf("%s, blade %v, row %d is by hand and speaks of %q: %s", name, highest, i+1, w, said)
					}
				}
			}
			for i, p := range cardPanels(plan) {
				said := strings.ToLower(fmt.Sprint(p))
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
	for _, s := range plan.Steps {
		if s.Cut.How == shop.AwayFromSaw {
			continue
		}
		words := speakerFor(plan.Pieces).under(s)
		if want := s.Cut.Height > 40; s.Cut.ByHand() != want || strings.Contains(words, "by hand or at the bandsaw") != want {
			t.Errorf("%v, %.2f mm high: by hand %v, want %v", s.What, s.Cut.Height, s.Cut.ByHand(), want)
		}
		if want := s.Cut.How == shop.OnGauge && s.Cut.Stop > 400; s.Cut.Beyond != want {
			t.Errorf("%v, stop %.2f mm: beyond the stop %v, want %v", s.What, s.Cut.Stop, s.Cut.Beyond, want)
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
		all := fmt.Sprint(CutList(plan), Settings(plan))
		if got := strings.Contains(all, "est piece"); got != (c.want > 0) {
			t.Errorf("%v: a word of test pieces %v", c, got)
		}
		if got := plan.Steps[0].Parts[0].Tests; plan.Steps[0].Do != shop.Mill || got != c.want {
			t.Errorf("%v: %d milled, want %d", c, got, c.want)
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
			all := fmt.Sprint(cuts[0].Table[1:], cuts[1], Settings(plan))
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
		words := under(planOf(t, d), shop.FitTop)
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
	if words := under(planOf(t, d), shop.FitTop); !strings.Contains(words, "same overhang all round") {
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
				for _, p := range lists(planOf(t, designs...)) {
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
	for _, want := range []string{"30° off square, bevel 60°", "bevel 60°, 30° off square"} {
		plan := planOf(t, d)
		i := slices.IndexFunc(plan.Steps, func(s shop.Step) bool { return s.Do == shop.CutLap })
		if got := speakerFor(plan.Pieces).gauge(plan.Steps[i].Operation); !strings.HasPrefix(got, want) {
			t.Errorf("gauge %q, want %q first", got, want)
		}
		d.Saw.FromFence = true
	}
}

// A shoulder that stands at s/2 from mid-length on the ring side stands at
// s/2 + w·cot φ on the outer side: up to four sides nearer the end there, beyond that
// farther from it. The end of a part that leans is longest on the edge named.
func TestTheGaugeSwingsTheRightWay(t *testing.T) {
	for sides, want := range map[int]string{3: "the cut nearer the end on the outer side", 4: "bevel 90°", 6: "the cut nearer the end on the ring side"} {
		d := piecetest.Low()
		d.Ring.Sides, d.Ring.Inside = sides, 400
		plan := planOf(t, d)
		for _, step := range plan.Steps {
			text := speakerFor(plan.Pieces).gauge(step.Operation)
			if step.Do == shop.CutLap && !strings.HasSuffix(text, want) {
				t.Errorf("%d sides: %s, want %s", sides, text, want)
			}
			long := map[shop.NoteID]string{"step.head": "the stretcher side longer", "step.leg-end": "the underside longer"}[step.What.ID]
			if !strings.HasSuffix(text, long) {
				t.Errorf("%s, want %s", text, long)
			}
		}
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
		if text := string(noteTexts[id]); !strings.HasSuffix(text, want) {
			t.Errorf("%s says %q", id, text)
		}
	}
}

func TestWordsThatHangOnTheSaw(t *testing.T) {
	v, passes := "the teeth leave a V", "2 passes; the shoulders"
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
		all := fmt.Sprint(Settings(planOf(t, d)))
		if !strings.Contains(all, c.has) || strings.Contains(all, c.no) {
			t.Errorf("flat tooth %v, dado %v: want %q and not %q", c.flat, c.dado, c.has, c.no)
		}
	}
}

// A step says which sizes are cut together, and what of the row above holds.
func TestWhatIsShared(t *testing.T) {
	a, b := piecetest.Low(), piecetest.Tall()
	a.Ring.Horn, b.Ring.Horn = 60, 60
	if words := under(planOf(t, a, b), shop.CutLap); !strings.HasPrefix(words, "Both sizes: cut them together.") {
		t.Errorf("one row for both: %s", words)
	}
	plan := planOf(t, a, b)
	i := slices.IndexFunc(plan.Steps, func(s shop.Step) bool { return s.Do == shop.CutLap })
	if got, want := speakerFor(plan.Pieces).parts(plan.Steps[i].Parts), "stretcher: 3 low, 3 tall, 2 spare"; got != want {
		t.Errorf("parts %q, want %q", got, want)
	}
	if all := fmt.Sprint(Settings(planOf(t, piecetest.Low(), piecetest.Tall()))); !strings.Contains(all, "As the row above: only the stop moves.") {
		t.Error("no row is like the one above")
	}
}
