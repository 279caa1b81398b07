package render

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"testing"

	"pgregory.net/rapid"

	"rodsheet/geometry"
	"rodsheet/render/table"
)

// numbered returns an item in one or two shapes, of which the second is the
// first turned by a quarter.
func numbered(n int, size geometry.Point, both bool) item {
	w := &table.Block{Title: fmt.Sprint(n)}
	out := item{{size: size, panel: w}}
	if both {
		out = append(out, block{size: geometry.Pt(size.Y, size.X), panel: w})
	}
	return out
}

// Whatever is packed, each item stands once, on the sheet and clear of the
// others, the first on the first sheet, what is to be read in order in order;
// the sheets are no more than before and no fewer than the bound, and the same
// every time.
func TestFewerIsAPacking(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := packer{[2]geometry.Point{geometry.Pt(190, 250), geometry.Pt(270, 170)}}
		var items []item
		var chain *table.Block
		for n := range rapid.IntRange(1, 40).Draw(t, "items") {
			size := geometry.Pt(rapid.Float64Range(20, 150).Draw(t, "w"), rapid.Float64Range(20, 150).Draw(t, "h"))
			it := numbered(n, size, rapid.Bool().Draw(t, "both"))
			if rapid.Bool().Draw(t, "read in order") {
				chain = cmp.Or(chain, it[0].panel)
				it = it[:1]
				it[0].chain = chain
			} else {
				chain = nil
			}
			items = append(items, it)
		}
		before := p.packInOrder(items)
		after := p.fewer(items, before)
		if len(after) > len(before) || len(after) < p.least(items) {
			t.Fatalf("%d sheets after %d, not under %d", len(after), len(before), p.least(items))
		}
		wantPacking(t, p, items, after)
		for i, b := range p.fewer(items, before) {
			if !slices.EqualFunc(b.placed, after[i].placed, func(a, b placed) bool { return a.panel == b.panel && a.at == b.at }) {
				t.Fatalf("sheet %d differs the second time", i+1)
			}
		}
	})
}

func wantPacking(t *rapid.T, p packer, items []item, sheets []*bin) {
	on := map[*table.Block]int{}
	for i, s := range sheets {
		var boxes []geometry.Rect
		clear := p.open(s.turned).free[0]
		for _, b := range s.placed {
			if _, twice := on[b.panel]; twice {
				t.Fatalf("item %s stands twice", b.panel.Title)
			}
			on[b.panel] = i
			box := geometry.Rect{Min: b.at, Max: b.at.Add(b.spaced())}
			if !clear.Offset(1e-6).Holds(box) {
				t.Fatalf("item %s stands off the sheet", b.panel.Title)
			}
			for _, o := range boxes {
				if o.Offset(-1e-6).Overlaps(box) {
					t.Fatalf("item %s stands on another", b.panel.Title)
				}
			}
			boxes = append(boxes, box)
		}
	}
	if len(on) != len(items) || on[items[0][0].panel] != 0 {
		t.Fatalf("%d of %d items, the first on sheet %d", len(on), len(items), on[items[0][0].panel]+1)
	}
	reached := map[*table.Block]int{}
	for _, it := range items {
		if c := it[0].chain; c != nil {
			if on[it[0].panel] < reached[c] {
				t.Fatalf("item %s stands before what is to be read first", it[0].panel.Title)
			}
			reached[c] = on[it[0].panel]
		}
	}
}

// Packs of small templates take so many sheets at most; filled item by item in
// the best of simple orders they took 6, 14 and 26.
func TestSheetsOfPacks(t *testing.T) {
	for _, c := range []struct{ templates, sheets int }{{20, 6}, {50, 13}, {100, 26}} {
		if got := layOne(t, a4(), smallDrawings(c.templates)...).Count(); got > c.sheets {
			t.Errorf("%d templates take %d sheets, want %d", c.templates, got, c.sheets)
		}
	}
}

// No two of these share a sheet, whatever their area.
func TestLeastByWhatSharesNoSheet(t *testing.T) {
	p := packer{[2]geometry.Point{geometry.Pt(190, 250), geometry.Pt(270, 170)}}
	large, long := numbered(1, geometry.Pt(150, 130), false), numbered(2, geometry.Pt(185, 60), false)
	for _, c := range []struct {
		name  string
		items []item
		want  int
	}{
		{"three large", []item{large, large, large}, 3},
		{"long ones share", []item{long, long, long}, 1},
		{"in their other shape", []item{numbered(1, geometry.Pt(150, 100), false), numbered(2, geometry.Pt(30, 160), true)}, 1},
		{"by area", slices.Repeat([]item{numbered(1, geometry.Pt(80, 80), false)}, 20), int(math.Ceil(20 * (80 + gap) * (80 + gap) / ((190 + gap) * (250 + gap))))},
	} {
		if got := p.least(c.items); got != c.want {
			t.Errorf("%s: %d sheets at least, want %d", c.name, got, c.want)
		}
	}
}
