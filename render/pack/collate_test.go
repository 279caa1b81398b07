package pack

import (
	"slices"
	"testing"

	"pgregory.net/rapid"
)

// drawPacked scatters items of groups and items to be read in order over sheets.
func drawPacked(t *rapid.T) (j Job, sheets []*Sheet) {
	for range rapid.IntRange(1, 12).Draw(t, "sheets") {
		sheets = append(sheets, &Sheet{})
	}
	put := func(it Item, from int) int {
		i := 0 // of the first item, as the packer has it
		if len(j.Items) > 0 {
			i = rapid.IntRange(from, len(sheets)-1).Draw(t, "on")
		}
		sheets[i].Placed = append(sheets[i].Placed, Placed{Item: len(j.Items)})
		j.Items = append(j.Items, it)
		return i
	}
	for n := range rapid.IntRange(1, 8).Draw(t, "templates") {
		if rapid.Bool().Draw(t, "alone") {
			put(Item{}, 0)
			continue
		}
		for range rapid.IntRange(2, 5).Draw(t, "tiles") {
			put(Item{Group: n}, 0)
		}
	}
	for n := range rapid.IntRange(0, 2).Draw(t, "texts") {
		at := 0
		for range rapid.IntRange(1, 4).Draw(t, "parts") {
			at = put(Item{Chain: n}, at)
		}
	}
	return j, slices.DeleteFunc(sheets, func(s *Sheet) bool { return len(s.Placed) == 0 })
}

// placesOf returns on which sheets stands what ask reports, in their order.
func (j *Job) placesOf(sheets []*Sheet, ask func(Item) bool) (at []int) {
	for i, s := range sheets {
		if slices.ContainsFunc(s.Placed, func(p Placed) bool { return ask(j.Items[p.Item]) }) {
			at = append(at, i)
		}
	}
	return at
}

// Sorting sheets loses none, leaves the first item on the first and words in
// their order, and parts no group that has its sheets to itself.
func TestCollated(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		j, sheets := drawPacked(t)
		got := j.Collated(sheets)
		if len(got) != len(sheets) || slices.ContainsFunc(sheets, func(s *Sheet) bool { return !slices.Contains(got, s) }) {
			t.Fatalf("%d sheets of %d", len(got), len(sheets))
		}
		if got[0] != sheets[0] {
			t.Error("the first sheet is another")
		}
		for _, it := range j.Items {
			if it.Group == nil {
				continue
			}
			at := j.placesOf(got, func(o Item) bool { return o.Group == it.Group })
			others := j.placesOf(got, func(o Item) bool { return o.Chain != nil || o.Group != nil && o.Group != it.Group })
			alone := !slices.ContainsFunc(at, func(i int) bool { return slices.Contains(others, i) })
			if alone && at[len(at)-1]-at[0] >= len(at) {
				t.Errorf("a group of its own stands on sheets %v", at)
			}
		}
	})
}

// Words are read on in the order they had, whatever stands beside them.
func TestCollatedKeepsTheWordsInOrder(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		j, sheets := drawPacked(t)
		got := j.Collated(sheets)
		for _, it := range j.Items {
			if it.Chain == nil {
				continue
			}
			ask := func(o Item) bool { return o.Chain == it.Chain }
			before, after := j.placesOf(sheets, ask), j.placesOf(got, ask)
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
	j := Job{Items: []Item{{Group: "a"}, {Group: "a"}, {}, {Group: "b"}, {Group: "b"}}}
	on := func(items ...int) *Sheet {
		s := &Sheet{}
		for _, i := range items {
			s.Placed = append(s.Placed, Placed{Item: i})
		}
		return s
	}
	sheets := []*Sheet{on(0), on(3), on(1), on(4, 2)}
	got := j.Collated(sheets)
	for i, want := range []*Sheet{sheets[0], sheets[2], sheets[1], sheets[3]} {
		if got[i] != want {
			t.Errorf("sheet %d is not the one expected", i+1)
		}
	}
}
