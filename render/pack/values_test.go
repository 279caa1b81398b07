package pack

import (
	"math"
	"reflect"
	"slices"
	"testing"

	"pgregory.net/rapid"

	"rodsheet/geometry"
)

// sheets that are packed in these tests, with a gap of 4 mm.
func jobOf(items ...Item) Job {
	return Job{Size: [2]geometry.Point{geometry.Pt(190, 250), geometry.Pt(270, 170)}, Gap: 4, Items: items}
}

// sized returns an item in one or two shapes, of which the second is the first
// turned by a quarter.
func sized(x, y float64, both bool) Item {
	it := Item{Shapes: []Shape{{Size: geometry.Pt(x, y)}}}
	if both {
		it.Shapes = append(it.Shapes, Shape{Size: geometry.Pt(y, x)})
	}
	return it
}

// Whatever is packed, each item stands once, on the sheet and clear of the
// others, the first on the first sheet, what is to be read in order in order;
// the sheets are no more than before and no fewer than the bound, and the same
// every time.
func TestFewerIsAPacking(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		j := jobOf()
		chain := 0
		for range rapid.IntRange(1, 40).Draw(t, "items") {
			it := sized(rapid.Float64Range(20, 150).Draw(t, "w"), rapid.Float64Range(20, 150).Draw(t, "h"), rapid.Bool().Draw(t, "both"))
			if rapid.Bool().Draw(t, "read in order") {
				it.Shapes, it.Chain = it.Shapes[:1], chain
			} else {
				chain++
			}
			j.Items = append(j.Items, it)
		}
		before := j.inOrder(j.orders()[0])
		after := j.Fewer(before)
		if len(after) > len(before) || len(after) < j.Least() {
			t.Fatalf("%d sheets after %d, not under %d", len(after), len(before), j.Least())
		}
		for _, sheets := range [][]*Sheet{j.Pack(), after, j.Collated(after)} {
			j.wantPacking(t, sheets)
		}
		if !reflect.DeepEqual(j.Fewer(before), after) {
			t.Fatal("the sheets differ the second time")
		}
	})
}

func (j *Job) wantPacking(t *rapid.T, sheets []*Sheet) {
	on := map[int]int{}
	for i, s := range sheets {
		var boxes []geometry.Rect
		clear := j.open(s.Turned).free[0]
		for _, p := range s.Placed {
			if _, twice := on[p.Item]; twice {
				t.Fatalf("item %d stands twice", p.Item)
			}
			on[p.Item] = i
			box := geometry.Rect{Min: p.At, Max: p.At.Add(j.spaced(j.Items[p.Item].Shapes[p.Shape]))}
			if !clear.Offset(1e-6).Holds(box) {
				t.Fatalf("item %d stands off the sheet", p.Item)
			}
			if slices.ContainsFunc(boxes, box.Offset(-1e-6).Overlaps) {
				t.Fatalf("item %d stands on another", p.Item)
			}
			boxes = append(boxes, box)
		}
	}
	if len(on) != len(j.Items) || on[0] != 0 {
		t.Fatalf("%d of %d items, the first on sheet %d", len(on), len(j.Items), on[0]+1)
	}
	reached := map[any]int{}
	for i, it := range j.Items {
		if it.Chain != nil {
			if on[i] < reached[it.Chain] {
				t.Fatalf("item %d stands before what is to be read first", i)
			}
			reached[it.Chain] = on[i]
		}
	}
}

// No two of these share a sheet, whatever their area.
func TestLeastByWhatSharesNoSheet(t *testing.T) {
	large, long := sized(150, 130, false), sized(185, 60, false)
	for _, c := range []struct {
		name  string
		items []Item
		want  int
	}{
		{"three large", []Item{large, large, large}, 3},
		{"long ones share", []Item{long, long, long}, 1},
		{"in their other shape", []Item{sized(150, 100, false), sized(30, 160, true)}, 1},
		{"by area", slices.Repeat([]Item{sized(80, 80, false)}, 20), int(math.Ceil(20 * 84.0 * 84 / (194 * 254)))},
	} {
		j := jobOf(c.items...)
		if got := j.Least(); got != c.want {
			t.Errorf("%s: %d sheets at least, want %d", c.name, got, c.want)
		}
	}
}

// An upright item stands on no sheet on its side.
func TestUprightStaysUpright(t *testing.T) {
	j := jobOf(Item{Shapes: []Shape{{Size: geometry.Pt(10, 10), Upright: true}}})
	if j.open(true).put(&j, 0, topmost) {
		t.Error("an upright item stands on a sheet on its side")
	}
	if !j.open(false).put(&j, 0, topmost) {
		t.Error("an upright item stands on no sheet")
	}
}

// What stands behind those above all others waits for the last of them, however much
// room there is before it.
func TestBehindTheFirstOnes(t *testing.T) {
	first := func(high float64) Item {
		it := sized(190, high, false)
		it.Chain, it.First = "cards", true
		return it
	}
	template, panel := sized(80, 60, true), sized(80, 60, false)
	template.Behind = true
	j := jobOf(first(150), first(150), first(150), template, panel)
	for _, sheets := range [][]*Sheet{j.Pack(), j.Fewer(j.Pack()), j.Collated(j.Pack())} {
		on := map[int]int{}
		for i, s := range sheets {
			for _, p := range s.Placed {
				on[p.Item] = i
			}
		}
		if len(sheets) != 3 || on[3] != 2 || on[4] == 2 {
			t.Errorf("%d sheets, the template on sheet %d, the panel on %d", len(sheets), on[3]+1, on[4]+1)
		}
	}
}

// What a job is packed into stays, and comes out again, however often it and others
// alike are packed: tries that were no better lend their memory to later ones.
func TestPackedAgain(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		var items []Item
		for range rapid.IntRange(2, 30).Draw(t, "items") {
			items = append(items, sized(rapid.Float64Range(20, 150).Draw(t, "w"), rapid.Float64Range(20, 150).Draw(t, "h"), rapid.Bool().Draw(t, "both")))
		}
		j, again := jobOf(items...), jobOf(slices.Clone(items)...)
		first := j.Pack()
		second := j.Pack()
		if !slices.EqualFunc(first, second, sameSheet) || !j.Alike(&again) || !slices.EqualFunc(first, again.Pack(), sameSheet) {
			t.Fatal("the sheets differ the second time")
		}
		j.wantPacking(t, first)
		again.Items[len(items)-1].Shapes = []Shape{{Size: geometry.Pt(10, 10)}}
		if j.Alike(&again) {
			t.Fatal("a job with another shape counts as alike")
		}
	})
}

func sameSheet(a, b *Sheet) bool { return a.Turned == b.Turned && slices.Equal(a.Placed, b.Placed) }
