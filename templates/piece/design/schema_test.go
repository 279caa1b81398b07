package design

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"rodsheet/geometry/lists"
	"rodsheet/geometry/measure"
	"rodsheet/templates/wording"
)

// The starting design names every key there is, each in its table.
func TestStartNamesEveryKey(t *testing.T) {
	named := map[string]bool{}
	for i, kind := range schemas() {
		text := must(Start(Kind(i), kind.start.usual, measure.Millimetre))(t)
		nameKeys(named, text)
	}
	for _, f := range fields() {
		if !named[string(f.key)] {
			t.Errorf("%s is not explained", f.key)
		}
	}
}

func nameKeys(named map[string]bool, text []byte) {
	table := ""
	for line := range strings.Lines(string(text)) {
		line = strings.TrimPrefix(line, "# ")
		if strings.HasPrefix(line, "[") {
			table, _, _ = strings.Cut(strings.TrimLeft(line, "["), "]")
			named[table] = true
		}
		if word, _, found := strings.Cut(line, " = "); found {
			named[strings.TrimPrefix(table+"."+word, ".")] = true
		}
	}
}

// Tables, groups, needs and musts speak of keys that there are.
func TestSchemaIsWhole(t *testing.T) {
	keys := slices.Clone(tables())
	for _, f := range fields() {
		if slices.Contains(keys, f.key) {
			t.Errorf("%s stands twice", f.key)
		}
		keys = append(keys, f.key)
		if table := f.key.table(); table != "" && !slices.Contains(tables(), table) {
			t.Errorf("%s stands in no table", f.key)
		}
	}
	var spoken []Key
	for _, g := range groups() {
		spoken = append(spoken, g...)
	}
	for _, n := range needs() {
		spoken = append(spoken, n.key, n.of)
	}
	for _, m := range musts() {
		spoken = append(spoken, m...)
	}
	for _, key := range spoken {
		if !slices.Contains(keys, key) {
			t.Errorf("there is no key %s", key)
		}
	}
}

func TestSettersAreKeys(t *testing.T) {
	var keys []Key
	for _, f := range fields() {
		keys = append(keys, f.key)
	}
	seen := map[measure.ID]bool{}
	for _, s := range otherSetters() {
		for _, figure := range s.figures {
			if seen[figure] {
				t.Errorf("%s stands twice", figure)
			}
			seen[figure] = true
			for _, key := range setters(figure) {
				if !slices.Contains(keys, key) {
					t.Errorf("%s: there is no key %s", figure, key)
				}
			}
		}
	}
}

// The tables that are open on a page at first.
func TestTablesThatDraw(t *testing.T) {
	got := lists.Where(tables(), Key.Draws)
	want := []Key{"ring", "legs", "legs.taper", "top", "frame", "frame.legs", "frame.aprons", "box", "box.bottom",
		"seat", "seat.legs", "seat.mortise", "seat.front", "seat.middle", "seat.back", "seat.circle"}
	if !slices.Equal(got, want) {
		t.Errorf("got %v, want %v", got, want)
	}
}

// A figure is not judged where the key is in doubt that gives it a meaning.
func TestFiguresHangOnKeys(t *testing.T) {
	for key, want := range map[Key]Key{
		"frame.top.diameter": "frame.top.outline", "frame.top.corner-size": "frame.top.kind", "frame.stretchers.inset": "frame.stretchers.depth",
		"frame.milled.stretchers": "frame.stretchers.depth", "seat.front.splay": "seat.front.legs", "seat.width": "seat.shape",
		"box.side": "box.outline", "legs.splay": "legs.foot-circle", "top.pads.height": "top.kind",
	} {
		if !slices.Contains(hangsOn(key), want) || slices.Contains(hangsOn(key), "kind") {
			t.Errorf("%s hangs on %v, want %s among them", key, hangsOn(key), want)
		}
	}
}

// A figure that a design may have outside its limits has a name to be told by.
func TestFiguresHaveNames(t *testing.T) {
	for _, f := range fields() {
		if f.outside != nil && f.key != "wood.board" && f.key != "item" && wording.Name(measure.ID(f.key)) == string(f.key) {
			t.Errorf("%s has no name", f.key)
		}
	}
}

// What is outside its limits in a file is so in a design, however that was made.
func TestOutsideAsInAFile(t *testing.T) {
	file := must(Read([]byte(sound), nil))(t)
	for _, tt := range []struct {
		want   string
		change func(*Design)
	}{
		{"[]", func(*Design) {}},
		{"[ring.width 0.5 mm: not ≥ 1 mm]", func(d *Design) { d.Ring.Width = 0.5 }},
		{"[]", func(d *Design) { d.Legs.Tenon = 0 }},
		{"[legs.tenon 0.5 mm: not ≥ 1 mm]", func(d *Design) { d.Legs.Tenon = 0.5 }},
		{"[legs.splay 61°: not ≤ 60°]", func(d *Design) { d.Legs.Given = measure.Radians(61) }},
		{"[wood.waste 4: not ≤ 3]", func(d *Design) { d.Wood.Waste = 4 }},
		{"[top.kind 3: not ≤ 2]", func(d *Design) { d.Top.Kind = 3 }},
		{"[]", func(d *Design) { d.Top.Kind, d.Top.Thickness = NoTop, -1 }},
		{"[wood.board.count -1: not ≥ 1]", func(d *Design) { d.Wood.Boards = []Board{{9, 9, 9, -1}} }},
		{"[prices.glass-per-square-foot -1: not ≥ 0]", func(d *Design) { d.Prices.Glass = Rate{Price{-1, true}, measure.Inch} }},
		{"[item.price -2: not ≥ 0]", func(d *Design) { d.Items = []Item{{Name: "a", Count: 1, Price: Price{-2, true}}} }},
	} {
		d := file.Sizes[0]
		tt.change(&d)
		if got := fmt.Sprint(d.Outside(nil)); got != tt.want {
			t.Errorf("got %s, want %s", got, tt.want)
		}
	}
}
