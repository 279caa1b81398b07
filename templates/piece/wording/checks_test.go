package wording

import (
	"fmt"
	"os"
	"reflect"
	"regexp"
	"rodsheet/templates/piece/kind"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"rodsheet/geometry/measure"
	"rodsheet/templates"
	"rodsheet/templates/piece"
	"rodsheet/templates/piece/checks"
	"rodsheet/templates/piece/design"
	"rodsheet/templates/piece/internal/piecetest"
	"rodsheet/templates/wording"
)

// examined returns what is found of one design.
func examined(t rapid.TB, d design.Design) checks.Findings {
	return checks.Examine([]piece.Piece{piecetest.Worked(t, d)})
}

// inTwice is a length in inches before the word "in".
var inTwice = regexp.MustCompile(`\bin( \([^)]*\))? in\b.*`)

// Whatever is found is said: every identity has its words, and no text holds a
// figure that is none.
func TestEveryFindingIsSaid(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p, err := piece.Solve(piecetest.Any(t))
		if err != nil {
			t.Skip("no such piece")
		}
		other := p
		other.Design.Size = "other"
		f := checks.Examine([]piece.Piece{p, other})
		for _, c := range slices.Concat(f.Sizes[0].Checks, f.Together) {
			for _, said := range []string{words(c, measure.Millimetre), checkName(c)} {
				if said == string(c.Question+"."+c.Found.ID) || said == string(c.Question) && checkTexts()[c.Question].name == "" {
					t.Errorf("no words for %q", said)
				}
			}
			if c.Figure != "" && checkFigures()[c.Figure] == "" {
				t.Errorf("no name for the figure %q", c.Figure)
			}
			for _, fix := range c.Fixes {
				if fixTexts()[fix.Key] == "" {
					t.Errorf("no words for the fix %q", fix.Key)
				}
				if fix.Key != "ring.plain-end" && !strings.Contains(fixWords(fix, measure.Millimetre), fix.To.Text(measure.Millimetre)) {
					t.Errorf("%q does not say %v", fixWords(fix, measure.Millimetre), fix.To)
				}
				for _, also := range fix.Follows {
					if followTexts()[also.Key] == "" {
						t.Errorf("no words for what follows: %q", also.Key)
					}
				}
			}
		}
		names, notes := figureNames(), groupNotes()
		for _, g := range f.Sizes[0].Groups {
			for _, figure := range g.Figures {
				if names[figure.ID] == "" {
					t.Errorf("no name for %q", figure.ID)
				}
			}
			for _, n := range g.Notes {
				if notes[n.ID] == "" {
					t.Errorf("no words for %q", n.ID)
				}
			}
		}
		text := fmt.Sprint(Report(f).CheckPanels())
		for _, bad := range []string{"NaN", "Inf", "-0 ", "%!"} {
			if strings.Contains(text, bad) {
				t.Errorf("%q in %s", bad, text)
			}
		}
		for i := range f.Sizes {
			f.Sizes[i].Piece.Design.Unit = measure.Inch
		}
		if twice := inTwice.FindString(fmt.Sprint(Report(f).CheckPanels())); twice != "" {
			t.Errorf("an inch runs into a word: %q", twice)
		}
	})
}

// With every sentence turned into nonsense the same checks come out in the same
// order, with the same grades, figures and fixes, and every panel has its rows.
func TestNoCheckHangsOnWords(t *testing.T) {
	low, tall := piecetest.Low(), piecetest.Low()
	low.Legs.At = piecetest.Worked(t, low).Frame.LeastAt(-2)
	low.Wood.Boards = []design.Board{{Length: 500, Width: 150, Thickness: 50, Count: 2}}
	low.Saw.Highest, low.Saw.StopReach = 20, 100
	tall.Size, tall.Legs.Given = "tall", tall.Legs.Given+measure.Radians(0.2)
	pieces := []piece.Piece{piecetest.Worked(t, low), piecetest.Worked(t, tall)}
	shape := func() (checks.Findings, []int) {
		f := checks.Examine(pieces)
		var rows []int
		for _, p := range Report(f).CheckPanels() {
			rows = append(rows, len(p.Table), len(p.Text))
		}
		return f, rows
	}
	found, rows := shape()
	defer wording.Garble(func(text wording.Text) string { return nonsense(text) })()
	garbled, rowsGarbled := shape()
	if !reflect.DeepEqual(found, garbled) {
		t.Errorf("other findings:\n%+v\n%+v", found, garbled)
	}
	if !slices.Equal(rows, rowsGarbled) {
		t.Errorf("other rows: %v, %v", rows, rowsGarbled)
	}
	if got := words(garbled.Sizes[0].Checks[1], measure.Millimetre); strings.Contains(got, "stretcher") {
		t.Errorf("the sentence is as it was: %q", got)
	}
}

// The identities that scripts go by are those in the file: one more is a new line
// there, and none goes or changes.
func TestIdentitiesStay(t *testing.T) {
	var ids []string
	for head, table := range map[string]map[measure.ID]wording.Text{
		"figure": figureNames(), "setting": settingNames(), "measured": checkFigures(),
	} {
		for id := range table {
			ids = append(ids, head+" "+string(id))
		}
	}
	for id := range checkTexts() {
		ids = append(ids, "check "+string(id))
	}
	for key := range fixTexts() {
		ids = append(ids, "fix "+string(key))
	}
	slices.Sort(ids)
	got := strings.Join(ids, "\n") + "\n"
	const golden = "testdata/ids.txt"
	want, err := os.ReadFile(golden)
	if err != nil || got != string(want) {
		t.Errorf("the identities are not those of %s (%v):\n%s", golden, err, got)
	}
}

// said returns the words of one check of a design.
func saidOf(t *testing.T, d design.Design, id measure.ID) string {
	t.Helper()
	for _, c := range examined(t, d).Sizes[0].Checks {
		if c.ID() == id {
			return checkName(c) + "|" + words(c, d.Unit) + "|" + adviceOf(c, d.Unit)
		}
	}
	t.Errorf("no check %q", id)
	return ""
}

// What is said of some checks, word for word.
func TestWordsOfChecks(t *testing.T) {
	for _, tt := range []struct {
		id     measure.ID
		change func(*design.Design)
		want   []string
	}{
		{"leg-head", func(d *design.Design) { d.Legs.At = piecetest.Worked(t, *d).Frame.LeastAt(-6.75) }, []string{
			"leg head and lap|The leg's stretcher side reaches 6.75 mm into the neighbour, over the middle 9.33 mm of its width, at the top of the stretcher, where the neighbour passes over.",
			"|lengthen the stretchers by 6.83 mm (the legs then stand 214.8 mm from mid-length), or reduce the leg's breadth at the joint to 33.5 mm"}},
		{"clash.stretcher-1.leg-2", func(d *design.Design) { d.Legs.At = piecetest.Worked(t, *d).Frame.LeastAt(-6.75) }, []string{
			"stretcher 1 and leg 2|stretcher 1 and leg 2 clash: they share ", "cm³", "above its underside. So it is at every corner."}},
		{"feet", func(d *design.Design) { d.Ring.Sides, d.Top.Diameter = 4, 900 }, []string{
			"The feet stand 106.76 mm inside the rim. On a floor that is not flat 4 legs rock: level the feet on a flat bench."}},
		{"feet", func(*design.Design) {}, []string{
			"The feet stand 18.61 mm outside the rim, where a shoe may catch on them. Three legs never rock."}},
		{"feet", func(d *design.Design) { d.Top.Kind = design.NoTop }, []string{"feet|Three legs never rock.|"}},
		{"cheeks", func(d *design.Design) { d.Legs.Tenon = 17 }, []string{
			"|make the stretchers 29 mm wide and the legs as thick, or make the tenon 16 mm thick"}},
		{"horn", func(d *design.Design) { d.Ring.Plain, d.Ring.Slack, d.Ring.Horn = design.ClosedEnd, 0.5, 9 }, []string{
			"|leave a horn of 10.6 mm, or leave the outer shoulder at every plain end open"}},
		{"dado", func(d *design.Design) { d.Saw.Dado = 14 }, []string{"The dado set clears a lap in 2 passes."}},
		{"dado", func(d *design.Design) { d.Saw.Dado = 28 }, []string{"The dado set clears a lap in one pass."}},
		{"blade-stock", func(d *design.Design) { d.Saw.Highest = 30 }, []string{
			"The blade does not come through at: stretcher, square to length"}},
		{"board.test-leg", func(d *design.Design) {
			d.Ring.Inside, d.Legs.Height, d.Top.Pads = 120, 200, design.Pads{}
			d.Wood.Boards = []design.Board{{Length: 319, Width: 150, Thickness: 50, Count: 9}}
		}, []string{"boards for the test pieces, leg stock|No board listed is as long as the blank."}},
	} {
		d := piecetest.Low()
		tt.change(&d)
		got := saidOf(t, d, tt.id)
		for _, want := range tt.want {
			if !strings.Contains(got, want) {
				t.Errorf("%s: %q lacks %q", tt.id, got, want)
			}
		}
	}
}

func TestWordsOfSettings(t *testing.T) {
	near := piecetest.Low()
	near.Size, near.Legs.Given = "tall", measure.Radians(16.2)
	pieces := []piece.Piece{piecetest.Worked(t, piecetest.Low()), piecetest.Worked(t, near)}
	var all []string
	for _, c := range checks.Examine(pieces).Together {
		all = append(all, checkName(c)+"|"+words(c, measure.Millimetre)+"|"+adviceOf(c, measure.Millimetre))
	}
	for _, want := range []string{
		"shared: spacer at the laps|Spacer at the laps: 28.64 mm for low and tall; set it once and cut them together.|",
		"nearly shared: splay, gauge at heads, feet and bridles|Splay, gauge at heads, feet and bridles: 16° for low but 16.2° for tall. Make them equal and set once.|splay the legs of tall by 16°",
	} {
		if !slices.Contains(all, want) {
			t.Errorf("%q is not among %q", want, all)
		}
	}
}

// group returns the group of that ID as one text.
func group(t *testing.T, d design.Design, id measure.ID) string {
	t.Helper()
	for _, g := range groupsOf(examined(t, d).Sizes[0], d.Unit) {
		if g.ID == id {
			return g.Heading + " " + strings.Join(g.Text, " ")
		}
	}
	t.Errorf("no group %q", id)
	return ""
}

func TestMovementWords(t *testing.T) {
	words := func(d design.Design) string {
		t.Helper()
		return group(t, d, "movement")
	}
	d := piecetest.Low()
	for _, want := range []string{"8 % to 12 %", "Laps: ", "fit them at the moisture", "glued across the grain"} {
		if got := words(d); !strings.Contains(got, want) {
			t.Errorf("%q lacks %q", got, want)
		}
	}
	d.Wood.MoistureTo = 9
	if got := words(d); !strings.Contains(got, "does not mind") {
		t.Errorf("one per cent of moisture: %q", got)
	}
	d.Legs.Breadth, d.Wood.MoistureTo = 80, 12
	if got := words(d); !strings.Contains(got, "may break their glue") {
		t.Errorf("wide cheeks: %q", got)
	}
	d.Wood.Species, d.Wood.Density = "bog wood", 650
	if got := words(d); !strings.Contains(got, "Nothing is known") {
		t.Errorf("an unknown wood: %q", got)
	}
	d = piecetest.Low()
	d.Top.Kind = design.WoodTop
	if got := words(d); !strings.Contains(got, "do not glue it to the frame") {
		t.Errorf("a wooden top: %q", got)
	}
}

// The panels hold every figure and every check once, and one size has no heading
// of all sizes.
func TestPanels(t *testing.T) {
	d := piecetest.Low()
	d.Legs.At = piecetest.Worked(t, d).Frame.LeastAt(-5)
	d.Wood.Boards = []design.Board{{Length: 1000, Width: 60, Thickness: 50, Count: 1}}
	f := examined(t, d)
	panels := Report(f).CheckPanels()
	if panels[0].Heading != "Checks that fail" {
		t.Errorf("first panel %q", panels[0].Heading)
	}
	rows := map[string]int{}
	for _, panel := range panels {
		if strings.Contains(panel.Heading, "all sizes") {
			t.Errorf("one size has the heading %q", panel.Heading)
		}
		for _, row := range panel.Table {
			rows[row[0]]++
		}
	}
	for _, c := range slices.Concat(f.Sizes[0].Checks, f.Together) {
		if rows[checkName(c)] == 0 || c.Fixes != nil && rows["To mend it: "+adviceOf(c, d.Unit)+"."] == 0 {
			t.Errorf("check %q is not there, or lacks its advice", checkName(c))
		}
	}
	for _, g := range groupsOf(f.Sizes[0], d.Unit) {
		i := slices.IndexFunc(panels, func(p templates.Panel) bool { return p.Heading == g.Heading })
		if i < 0 || len(panels[i].Table) != len(g.Figures) {
			t.Errorf("group %q has no panel with its %d figures", g.Heading, len(g.Figures))
		}
	}
}

// What is in doubt is said on the cover in a line each, and nothing where all holds.
func TestDoubtsInLines(t *testing.T) {
	d := piecetest.Low()
	d.Ring.Plain, d.Ring.Slack = design.ClosedEnd, 0.3
	f := checks.Examine(piecetest.WorkedAll(t, d))
	var doubts []string
	for _, c := range f.All() {
		if c.Grade != kind.Pass {
			doubts = append(doubts, words(c, d.Unit))
		}
	}
	panels := Report(f).DoubtPanels()
	if len(doubts) == 0 || len(panels) != 1 || len(panels[0].Text) != min(len(doubts), 4) {
		t.Fatalf("%d doubts, panels %v", len(doubts), panels)
	}
	for i, s := range panels[0].Text {
		if !strings.HasSuffix(s, doubts[i]) {
			t.Errorf("%q does not say %q", s, doubts[i])
		}
	}
	d = piecetest.Low()
	f = checks.Examine(piecetest.WorkedAll(t, d))
	f.Sizes[0].Checks, f.Together = nil, nil
	if got := Report(f).DoubtPanels(); got != nil {
		t.Errorf("nothing is in doubt, but %v is said", got)
	}
}

// adviceOf says the fixes of a check as they are printed.
func adviceOf(c checks.Check, u measure.Unit) string {
	return Checks([]checks.Check{c}, u)[0].Advice()
}
