package live_test

import (
	"fmt"
	"math"
	"os"
	"regexp"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"rodsheet/cmd/internal/live"
	"rodsheet/geometry/measure"
	"rodsheet/render/lettering"
	"rodsheet/templates/piece"
	"rodsheet/templates/piece/checks"
	"rodsheet/templates/piece/design"
	"rodsheet/templates/piece/kind"
	"rodsheet/templates/piece/kinds"
)

func exampleDesign(t interface{ Fatal(...any) }, name string) string {
	data, err := os.ReadFile("../../../examples/" + name + ".toml")
	if err != nil {
		t.Fatal(err)
	}
	return string(data)
}

// examined reads a text as the commands do.
func examined(t interface{ Fatal(...any) }, text string) checks.Findings {
	f, err := design.ReadLettered([]byte(text), new(kinds.Sizes).Add, lettering.Missing)
	if err != nil {
		t.Fatal(err)
	}
	var all []piece.Piece
	for _, d := range f.Sizes {
		p, err := piece.Solve(d)
		if err != nil {
			t.Fatal(err)
		}
		all = append(all, p)
	}
	return checks.Examine(piece.ShareStops(all))
}

// changing are figures over which pieces come to fail.
var changing = map[design.Key][2]float64{
	"legs.mid-to-leg": {160, 240}, "legs.breadth": {20, 80}, "ring.horn": {0, 60}, "ring.width": {20, 45},
	"top.pads.diameter": {10, 60}, "top.diameter": {380, 800}, "legs.taper.foot": {4, 36}, "legs.height": {250, 900},
}

func keys() []design.Key {
	var out []design.Key
	for k := range changing {
		out = append(out, k)
	}
	return out
}

// Each fix that the page offers, written into the text, mends its check.
func TestFixesMend(t *testing.T) {
	desk := &live.Desk{}
	start := exampleDesign(t, "window-seat")
	tried := 0
	rapid.Check(t, func(t *rapid.T) {
		r := live.Request{Text: start}
		for range rapid.IntRange(1, 3).Draw(t, "changes") {
			key := rapid.SampledFrom(keys()).Draw(t, "key")
			mm := rapid.Float64Range(changing[key][0], changing[key][1]).Draw(t, "mm")
			r.Changes = []live.Change{{Key: key, Value: fmt.Sprintf("%.1f", mm)}}
			r.Text = desk.Ask(t.Context(), r).Text
		}
		for _, s := range examined(t, r.Text).Sizes {
			for _, c := range s.Checks {
				for i := range c.Fixes {
					tried++
					size := s.Piece.Design.Size
					a := desk.Ask(t.Context(), live.Request{Text: r.Text, Fix: &live.Fix{Size: size, Check: c.ID(), Index: i}})
					if a.Text == r.Text {
						t.Fatalf("fix %d of %s changes nothing: %v", i, c.ID(), a.Faults)
					}
					for _, now := range examined(t, a.Text).Sizes {
						for _, n := range now.Checks {
							if now.Piece.Design.Size == size && n.ID() == c.ID() && n.Grade >= c.Grade {
								t.Fatalf("fix %d of %s leaves it as it was", i, c.ID())
							}
						}
					}
				}
			}
		}
	})
	if tried == 0 {
		t.Error("no fix was tried")
	}
}

// Whatever is answered to the first questions, the design passes its checks and is as
// tall and as wide as was asked.
func TestBegin(t *testing.T) {
	desk := &live.Desk{}
	rapid.Check(t, func(t *rapid.T) {
		b := live.Begin{
			Units: "mm", Legs: rapid.IntRange(3, 8).Draw(t, "legs"), Top: rapid.SampledFrom([]string{"glass", "wood", "none"}).Draw(t, "top"),
			Height: fmt.Sprint(rapid.IntRange(380, 780).Draw(t, "height")), Width: fmt.Sprint(rapid.IntRange(450, 900).Draw(t, "width")),
		}
		if rapid.Bool().Draw(t, "inches") {
			b.Units, b.Height, b.Width = "in", fmt.Sprint(rapid.IntRange(15, 30).Draw(t, "height in")), fmt.Sprint(rapid.IntRange(18, 36).Draw(t, "width in"))
		}
		a := desk.Ask(t.Context(), live.Request{Begin: &b})
		if len(a.Faults) > 0 {
			t.Fatalf("%+v: %v", b, a.Faults)
		}
		found := examined(t, a.Text)
		for _, c := range found.All() {
			if c.Grade == kind.Fail {
				t.Errorf("%+v: %s fails", b, c.ID())
			}
		}
		u, _ := measure.ParseUnit(b.Units)
		if want, _ := measure.ParseLength(b.Height, u); math.Abs(found.Sizes[0].Piece.Overall()-want) > 1e-6 {
			t.Errorf("%+v: %g mm tall", b, found.Sizes[0].Piece.Overall())
		}
		if got := found.Sizes[0].Piece.Frame.Ring.Sides; got != b.Legs {
			t.Errorf("%+v: %d legs", b, got)
		}
	})
}

// Nothing that is typed breaks the page or the text: what comes back is a design that
// can be read, the old one where the new is not sound.
func TestWhateverIsTyped(t *testing.T) {
	desk := &live.Desk{}
	form, err := design.FormOf([]byte(exampleDesign(t, "window-seat")))
	if err != nil {
		t.Fatal(err)
	}
	var all []live.Change
	for _, g := range form.Groups {
		for _, f := range g.Fields {
			for _, size := range append(form.Sizes, "") {
				all = append(all, live.Change{Size: size, Key: f.Key})
			}
		}
	}
	typed := rapid.OneOf(rapid.String(), rapid.SampledFrom([]string{"", "0", "-1", "1e99", "NaN", `"`, "'''", "]\n[x", "25 1/4", "14°30'", "glass", "true", strings.Repeat("9", 10000)}),
		rapid.Map(rapid.Float64Range(0, 2000), func(v float64) string { return fmt.Sprintf("%.2f", v) }))
	rapid.Check(t, func(t *rapid.T) {
		text := exampleDesign(t, "window-seat")
		for range rapid.IntRange(1, 4).Draw(t, "steps") {
			c := rapid.SampledFrom(all).Draw(t, "field")
			c.Row, c.Value = rapid.IntRange(0, 2).Draw(t, "row"), typed.Draw(t, "value")
			a := desk.Ask(t.Context(), live.Request{Text: text, Changes: []live.Change{c}, Want: []string{"form", "plan", "front", "corner", "checks", "figures"}})
			if len(a.Faults) == 0 == (len(a.Pending) > 0) {
				t.Fatalf("%d faults and %d changes that wait", len(a.Faults), len(a.Pending))
			}
			if a.Text != text {
				examined(t, a.Text)
			}
			if !strings.Contains(a.Swap["corner"], "<svg") || !strings.Contains(a.Swap["form"], "f-ring-inside") {
				t.Fatal("the page is not whole")
			}
			text = a.Text
		}
	})
}

// A handle follows the hand to within what figures are rounded to.
func TestDrag(t *testing.T) {
	desk := &live.Desk{}
	text := exampleDesign(t, "hall-table")
	rapid.Check(t, func(t *rapid.T) {
		p := examined(t, text).Sizes[0].Piece
		top := rapid.Float64Range(500, 900).Draw(t, "height")
		foot := -p.FootPoint(0).X + rapid.Float64Range(-60, 40).Draw(t, "foot")
		a := desk.Ask(t.Context(), live.Request{Text: text, Drag: &live.Drag{Handle: "height", Y: top}})
		if got := examined(t, a.Text).Sizes[0].Piece.Overall(); math.Abs(got-top) > 0.51 {
			t.Errorf("height dragged to %g stands at %g: %v", top, got, a.Faults)
		}
		a = desk.Ask(t.Context(), live.Request{Text: text, Drag: &live.Drag{Handle: "foot", X: foot}})
		got := examined(t, a.Text).Sizes[0].Piece
		if step := got.Frame.Leg.Height * math.Tan(measure.Radians(0.2)) / math.Pow(math.Cos(got.Frame.Leg.Splay), 2); math.Abs(-got.FootPoint(0).X-foot) > step {
			t.Errorf("foot dragged to %g stands at %g: %v", foot, -got.FootPoint(0).X, a.Faults)
		}
	})
}

// Each field of a form has an identity of its own, however many rows a table has.
func TestFieldsAreApart(t *testing.T) {
	text := exampleDesign(t, "window-seat")
	for i := range 12 {
		text += fmt.Sprintf("\n[[item]]\nname = \"item %d\"\n", i+1)
	}
	a := (&live.Desk{}).Ask(t.Context(), live.Request{Text: text, Want: []string{"form"}})
	seen := map[string]bool{}
	for _, m := range regexp.MustCompile(` id="([^"]*)"`).FindAllStringSubmatch(a.Swap["form"], -1) {
		if seen[m[1]] {
			t.Errorf("%s stands twice", m[1])
		}
		seen[m[1]] = true
	}
	if !seen["f-item-name-12"] {
		t.Errorf("no field of item 12: %v", a.Faults)
	}
}

// Without sizes, with sizes, without a top: each element of the page is drawn.
func TestElementsOfAnyDesign(t *testing.T) {
	desk := &live.Desk{}
	for _, name := range []string{"window-seat", "hall-table", "plant-stand"} {
		a := desk.Ask(t.Context(), live.Request{Text: exampleDesign(t, name), Want: []string{"form", "plan", "front", "corner", "checks", "figures", "cards", "buying", "glue"}})
		for part, html := range a.Swap {
			if len(html) < 200 || strings.Contains(html, "NaN") || strings.Contains(html, "%!") || strings.Contains(html, "ZgotmplZ") {
				t.Errorf("%s, %s: %.300s", name, part, html)
			}
		}
		if len(a.Swap) != 9 {
			t.Errorf("%s: %d elements", name, len(a.Swap))
		}
	}
}

// Every table of every kind has a heading in the form, and every field its label.
func TestFormOfEveryKind(t *testing.T) {
	desk := &live.Desk{}
	for _, name := range design.Kinds() {
		a := desk.Ask(t.Context(), live.Request{Begin: &live.Begin{Kind: name, Units: "mm", Legs: 3, Top: "wood"}, Want: []string{"form"}})
		if len(a.Faults) > 0 {
			t.Fatal(name, a.Faults)
		}
		form, err := design.FormOf([]byte(a.Text))
		if err != nil {
			t.Fatal(err)
		}
		for _, g := range form.Groups {
			if g.Table != "" && strings.Contains(a.Swap["form"], "<summary>"+string(g.Table)+"</summary>") {
				t.Errorf("%s: the table %s has no heading", name, g.Table)
			}
		}
		if !strings.Contains(a.Swap["form"], "<details") || strings.Contains(a.Swap["form"], `id="f-kind"`) {
			t.Errorf("%s: the form has no tables, or asks for the kind", name)
		}
	}
}

// Every figure of the drawings is called by the label of its field, and can be typed over.
func TestFiguresOfEveryKind(t *testing.T) {
	desk := &live.Desk{}
	shown := regexp.MustCompile(`data-key="([^"]*)" aria-label="([^"]*): ([0-9.]+)( mm|°)"`)
	for _, name := range design.Kinds() {
		a := desk.Ask(t.Context(), live.Request{Begin: &live.Begin{Kind: name, Units: "mm", Legs: 3, Top: "wood"}, Want: []string{"plan", "front"}})
		found := shown.FindAllStringSubmatch(a.Swap["plan"]+a.Swap["front"], -1)
		if len(found) < 2 {
			t.Errorf("%s: %d figures", name, len(found))
		}
		for _, f := range found {
			if strings.Contains(f[2], ".") {
				t.Errorf("%s: %s has no label of its own: %s", name, f[1], f[2])
			}
			r := desk.Ask(t.Context(), live.Request{Text: a.Text, Changes: []live.Change{{Key: design.Key(f[1]), Value: f[3]}}})
			if len(r.Faults) > 0 || len(r.Pending) > 0 {
				t.Errorf("%s: %s cannot be given as %s%s: %v", name, f[1], f[3], f[4], r.Faults)
			}
		}
	}
}
