package render

import (
	"slices"
	"testing"

	"pgregory.net/rapid"

	"rodsheet/render/table"
)

// drawPacked scatters templates of one and of several tiles and words to be
// read in order over sheets.
func drawPacked(t *rapid.T) (items []item, sheets []*bin) {
	for range rapid.IntRange(1, 12).Draw(t, "sheets") {
		sheets = append(sheets, &bin{})
	}
	put := func(b block, from int) int {
		i := 0 // of the first item, as the packer has it
		if len(items) > 0 {
			i = rapid.IntRange(from, len(sheets)-1).Draw(t, "on")
		}
		items = append(items, item{b})
		sheets[i].placed = append(sheets[i].placed, placed{block: b})
		return i
	}
	for range rapid.IntRange(1, 8).Draw(t, "templates") {
		p := &tiling{rows: 1, cols: rapid.IntRange(1, 5).Draw(t, "tiles")}
		for c := range p.cols {
			put(block{tile: &tile{tiling: p, col: c}}, 0)
		}
	}
	for range rapid.IntRange(0, 2).Draw(t, "texts") {
		first, at := &table.Block{}, 0
		for range rapid.IntRange(1, 4).Draw(t, "parts") {
			at = put(block{panel: &table.Block{}, chain: first}, at)
		}
	}
	return items, slices.DeleteFunc(sheets, func(n *bin) bool { return len(n.placed) == 0 })
}

// placesOf returns on which sheets stands what ask reports, in their order.
func placesOf(sheets []*bin, ask func(block) bool) (at []int) {
	for i, n := range sheets {
		if slices.ContainsFunc(n.placed, func(p placed) bool { return ask(p.block) }) {
			at = append(at, i)
		}
	}
	return at
}

// Sorting sheets loses none, leaves the first item on the first and words in
// their order, and parts no template that has its sheets to itself.
func TestCollated(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		items, sheets := drawPacked(t)
		got := collated(items, sheets)
		if len(got) != len(sheets) || slices.ContainsFunc(sheets, func(n *bin) bool { return !slices.Contains(got, n) }) {
			t.Fatalf("%d sheets of %d", len(got), len(sheets))
		}
		if got[0] != sheets[0] {
			t.Error("the first sheet is another")
		}
		for _, it := range items {
			p := it[0].tile
			if p == nil {
				continue
			}
			at := placesOf(got, func(b block) bool { return b.tile != nil && b.tile.tiling == p.tiling })
			others := placesOf(got, func(b block) bool {
				return b.chain != nil || b.tile != nil && b.tile.tiling != p.tiling && b.tile.cols > 1
			})
			alone := !slices.ContainsFunc(at, func(i int) bool { return slices.Contains(others, i) })
			if alone && at[len(at)-1]-at[0] >= len(at) {
				t.Errorf("a template of its own stands on sheets %v", at)
			}
		}
	})
}

// Words are read on in the order they had, whatever stands beside them.
func TestCollatedKeepsTheWordsInOrder(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		items, sheets := drawPacked(t)
		got := collated(items, sheets)
		for _, it := range items {
			c := it[0].chain
			if c == nil {
				continue
			}
			ask := func(b block) bool { return b.chain == c }
			before, after := placesOf(sheets, ask), placesOf(got, ask)
			for i := range before {
				if sheets[before[i]] != got[after[i]] {
					t.Fatalf("words on sheets %v came to sheets %v", before, after)
				}
			}
		}
	})
}

// A template follows the one before it, and its tiles follow one another,
// where the packer had laid two of them over each other.
func TestCollatedByTheJob(t *testing.T) {
	a, b := &tiling{rows: 1, cols: 2}, &tiling{rows: 2, cols: 1}
	small := &tiling{rows: 1, cols: 1}
	tiles := []block{
		{tile: &tile{tiling: a}}, {tile: &tile{tiling: a, col: 1}},
		{tile: &tile{tiling: small}},
		{tile: &tile{tiling: b}}, {tile: &tile{tiling: b, row: 1}},
	}
	var items []item
	for _, b := range tiles {
		items = append(items, item{b})
	}
	on := func(blocks ...int) *bin {
		n := &bin{}
		for _, i := range blocks {
			n.placed = append(n.placed, placed{block: tiles[i]})
		}
		return n
	}
	sheets := []*bin{on(0), on(3), on(1), on(4, 2)}
	got := collated(items, sheets)
	for i, want := range []*bin{sheets[0], sheets[2], sheets[1], sheets[3]} {
		if got[i] != want {
			t.Errorf("sheet %d is not the one expected", i+1)
		}
	}
}
