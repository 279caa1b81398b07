package wording

import (
	"math"
	"regexp"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"rodsheet/geometry/measure"
	"rodsheet/templates"
	"rodsheet/templates/piece"
	"rodsheet/templates/piece/design"
	"rodsheet/templates/piece/internal/piecetest"
	"rodsheet/templates/piece/shop"
)

// eachCard calls f for every card of every case, at saws that reach less and less.
func eachCard(t *testing.T, f func(where string, p shop.Plan, c shop.Card, words templates.Card)) {
	for name, designs := range piecetest.Cases() {
		for _, highest := range []float64{0, 20, 1} {
			for i := range designs {
				designs[i].Saw.Highest, designs[i].Saw.StopReach = highest, 300
			}
			plan := planOf(t, designs...)
			for _, c := range plan.Cards {
				words := Card(plan, c)
				f(name+", "+words.Heading, plan, c, words)
			}
		}
	}
}

// A card holds every figure of every step on it, the gauge under both its names.
func TestCardsHoldTheFiguresOfTheirSteps(t *testing.T) {
	eachCard(t, func(where string, p shop.Plan, c shop.Card, words templates.Card) {
		s := speakerFor(p.Designs...)
		var values, said []string
		for _, f := range words.Figures {
			values = append(values, f.Value)
		}
		said = append(said, append(words.Text, words.Test, words.Heading)...)
		said = append(said, values...)
		all := strings.Join(said, "|")
		for _, step := range c.Steps {
			cut := step.Cut
			lengths := []float64{cut.Stop, cut.Spacer, cut.Line, cut.Along, c.Height}
			if c.Hand && c.How == shop.OnEnd {
				lengths[4] = cut.Depth()
			}
			for _, mm := range lengths {
				if mm > 0 && !slices.Contains(values, s.mm(mm)) {
					t.Errorf("%s: no %s among %v", where, s.mm(mm), values)
				}
			}
			if c.How == shop.OnGauge && cut.OffSquare > 0 &&
				(!strings.Contains(all, s.angle(cut.OffSquare)) || !slices.Contains(values, s.angle(math.Pi/2-cut.OffSquare))) {
				t.Errorf("%s: not both names of %v in %v", where, cut.OffSquare, values)
			}
			for _, n := range append(step.Then.All(), step.What, step.Test) {
				for _, a := range n.Args {
					if a.Is == shop.FigureArg && a.Figure.Kind != measure.KindNumber && !strings.Contains(all, a.Figure.Bare(s.unit)) {
						t.Errorf("%s: no %s in %s", where, a.Figure.Text(s.unit), all)
					}
				}
			}
			if step.Caution != "" && !strings.Contains(words.Caution, string(noteTexts()[step.Caution])) {
				t.Errorf("%s: its caution is %q", where, words.Caution)
			}
		}
	})
}

// There is a box for each part of every step, but that what is planed and glued in one
// go has one for all of its sizes too.
func TestCardsHaveABoxForEveryPart(t *testing.T) {
	eachCard(t, func(where string, _ shop.Plan, c shop.Card, words templates.Card) {
		want, got := 0, 0
		for _, s := range c.Steps {
			for _, b := range s.Parts {
				want += b.Count + b.Spares + b.Tests
			}
		}
		for _, tick := range words.Ticks {
			got += tick.Boxes
		}
		if got != want {
			t.Errorf("%s: %d boxes for %d parts", where, got, want)
		}
	})
}

var ends = regexp.MustCompile(`[.](?: |$)`)

// A card is read at the saw: up to three sentences, and a fourth that says why it is
// done by hand.
func TestCardsAreShort(t *testing.T) {
	eachCard(t, func(where string, _ shop.Plan, c shop.Card, words templates.Card) {
		most := 3
		if c.Hand {
			most++
		}
		if n := len(ends.FindAllString(strings.Join(words.Text, " "), -1)); n > most {
			t.Errorf("%s: %d sentences: %q", where, n, words.Text)
		}
	})
}

// Where the gauge is not square the card says which end of it is the farther one, as
// the value has it.
func TestCardsSayHowTheGaugeLeans(t *testing.T) {
	eachCard(t, func(where string, _ shop.Plan, c shop.Card, words templates.Card) {
		if c.How != shop.OnGauge || c.Hand || c.Swing == 0 {
			return
		}
		want := map[bool]string{true: "right end away", false: "left end away"}[c.Swing > 0]
		if !strings.Contains(words.Figures[0].Name, want) {
			t.Errorf("%s, %v: %s", where, c.Swing, words.Figures[0].Name)
		}
	})
}

// What is said below a picture of a set-up names every face as the step has it.
func TestLyingNamesEveryFace(t *testing.T) {
	stop := shop.Cut{How: shop.OnGauge, Stop: 300}
	for _, tt := range []struct {
		lie  shop.Lie
		cut  shop.Cut
		want string
	}{
		{shop.Lie{Down: shop.RingSide, Fence: shop.Back, Rest: shop.Foot}, stop, "ring side down, back on the fence, foot at the stop"},
		{shop.Lie{Fence: shop.Back}, stop, "back on the fence"},
		{shop.Lie{Down: shop.Underside, Fence: shop.RingSide, Rest: shop.PlainEnd}, shop.Cut{How: shop.OnGauge, Line: 20}, "underside down, ring side on the fence"},
		{shop.Lie{Down: shop.RoughEnd, Fence: shop.RingSide}, shop.Cut{How: shop.OnEnd, Stop: 9}, "on its sawn end, ring side on the jig"},
		{shop.Lie{Fence: shop.Back}, shop.Cut{How: shop.OnTaper}, "back on the jig, foot first"},
	} {
		if got := Lying(tt.lie, tt.cut); got != tt.want {
			t.Errorf("%v: %q, want %q", tt.lie, got, tt.want)
		}
	}
}

// Parts that differ in nothing said are counted together, and so are the two ends of a
// test piece.
func TestCountsAreSaidOnce(t *testing.T) {
	s := speaker{sizes: 2}
	for want, parts := range map[string][]shop.Batch{
		"block stick, stretcher stock: 2":    {{Part: shop.StretcherStick, Count: 1}, {Part: shop.StretcherStick, Count: 1}},
		"leg: 3 low, 3 tall":                 {{Part: shop.Leg, Size: "low", Count: 3}, {Part: shop.Leg, Size: "tall", Count: 3}},
		"leg: 1 test piece, both its ends":   {{Part: shop.Leg, Tests: 1}, {Part: shop.Leg, Tests: 1, OtherEnd: true}},
		"leg: 1 test piece, its other end":   {{Part: shop.Leg, Tests: 1, OtherEnd: true}},
		"leg: 2 test pieces, both ends of 1": {{Part: shop.Leg, Tests: 2}, {Part: shop.Leg, Tests: 1, OtherEnd: true}},
	} {
		if got := s.counts(parts[0].Part, parts); got != want {
			t.Errorf("%q, want %q", got, want)
		}
	}
}

// Every card of any ring says what is done, how it is proved and what to beware of.
func TestCardsAreWhole(t *testing.T) {
	whole := func(t rapid.TB, where string, words templates.Card) {
		if words.Heading == "" || len(words.Text) == 0 || slices.Contains(words.Text, "") || words.Test == "" || words.Caution == "" {
			t.Errorf("%s lacks words: %q", where, []any{words.Heading, words.Text, words.Test, words.Caution})
		}
	}
	eachCard(t, func(where string, _ shop.Plan, _ shop.Card, words templates.Card) { whole(t, where, words) })
	rapid.Check(t, func(t *rapid.T) {
		d := piecetest.Any(t)
		d.Top.Fixing = design.Fixing{Kind: design.FixingKind(rapid.IntRange(0, 2).Draw(t, "fixing")), Bond: design.Bond(rapid.IntRange(0, 1).Draw(t, "bond"))}
		d.Top.Pads.Bumpers = d.Top.Kind == design.GlassTop && rapid.Bool().Draw(t, "bumpers")
		d.Saw.FlatTooth, d.Wood.Spares = rapid.Bool().Draw(t, "flat tooth"), rapid.IntRange(0, 1).Draw(t, "spares")
		d.Wood.Tests = rapid.IntRange(0, 1).Draw(t, "tests")
		p, err := piece.Solve(d)
		if err != nil {
			t.Skip("no such piece")
		}
		plan := shop.NewPlan([]piece.Piece{p})
		for _, c := range plan.Cards {
			words := Card(plan, c)
			whole(t, words.Heading, words)
		}
	})
}

// Where a stop serves the parts a card says what serves the test pieces that it ticks, and
// nowhere else.
func TestCardsSayWhatTestPiecesAreSawnBy(t *testing.T) {
	said := 0
	eachCard(t, func(where string, _ shop.Plan, c shop.Card, words templates.Card) {
		want := false
		for _, s := range c.Steps {
			for _, b := range s.Parts {
				want = want || b.Tests > 0 && s.Cut.Stop > 0 && s.Cut.How == shop.OnGauge
			}
		}
		got := slices.ContainsFunc(words.Figures, func(r templates.Reading) bool { return r.Value == string(testsToLines) })
		if got != want {
			t.Errorf("%s: test pieces are ticked at a stop %v, said to go by their lines %v", where, want, got)
		}
		if want {
			said++
		}
	})
	if said == 0 {
		t.Error("no card has a test piece at a stop")
	}
}

// There is one tapering jig, and the card that makes it says for whom its fence is set anew.
func TestOneTaperingJigForTwoTapers(t *testing.T) {
	card := cardOf(planOf(t, piecetest.Low(), piecetest.Tall()), shop.MakeJigs)
	i := slices.IndexFunc(card.Ticks, func(k templates.Tick) bool { return strings.HasPrefix(k.Text, "tapering jig") })
	if i < 0 || card.Ticks[i].Boxes != 1 || card.Ticks[i].Text != "tapering jig: 1 for size low, its fence anew for size tall" {
		t.Errorf("ticks %+v", card.Ticks)
	}
}
