package pack

import (
	"testing"

	"pgregory.net/rapid"

	"rodsheet/geometry"
)

// An exchange loses no item, lays none over another or off its sheet, moves nothing that
// has a place in an order, and no fewer items stand with what they want to stand with.
func TestJoined(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		side := rapid.IntRange(10, 95)
		j := &Job{Size: [2]geometry.Point{{X: 100, Y: 140}, {X: 140, Y: 100}}, Gap: 5}
		for n := range rapid.IntRange(6, 14).Draw(t, "items") {
			it := Item{Shapes: []Shape{{Size: geometry.Pt(float64(side.Draw(t, "wide")), float64(side.Draw(t, "high")))}}}
			switch rapid.IntRange(0, 5).Draw(t, "kind") {
			case 0:
				it.Chain = "cards"
			case 1:
				it.Group = "tiles"
			case 2, 3:
				it.Shows = n
			default:
				it.With = rapid.IntRange(0, n).Draw(t, "with")
			}
			j.Items = append(j.Items, it)
		}
		before := j.Pack()
		after := j.Joined(before)
		if len(after) != len(before) {
			t.Fatalf("%d sheets of %d", len(after), len(before))
		}
		was, is := placed(t, j, before), placed(t, j, after)
		for i := range j.Items {
			if !j.free(i, true) && was[i] != is[i] {
				t.Errorf("item %d went from sheet %d to %d", i, was[i], is[i])
			}
		}
		if more := j.Apart(after) - j.Apart(before); more > 0 {
			t.Errorf("%d pairs more stand apart", more)
		}
	})
}

// Words on the sheet after their picture change places with what stands beside it,
// whatever that is: a template too where no card is to come.
func TestJoinedByExchange(t *testing.T) {
	box := func(w, h float64) []Shape { return []Shape{{Size: geometry.Pt(w, h)}} }
	for _, behind := range []bool{false, true} {
		j := &Job{Size: [2]geometry.Point{{X: 100, Y: 140}, {X: 140, Y: 100}}, Gap: 5, Items: []Item{
			{Shapes: box(100, 20), Chain: "card", First: true}, {Shapes: box(100, 75), Shows: "jig"}, {Shapes: box(60, 30), Behind: behind},
			{Shapes: box(100, 100)}, {Shapes: box(60, 30), With: "jig"},
		}}
		before := j.Pack()
		if len(before) != 2 || j.Apart(before) != 1 {
			t.Fatalf("%d sheets, %d pairs apart, want the words on the second", len(before), j.Apart(before))
		}
		if after := j.Joined(before); j.Apart(after) != 0 || sheetOf(after, 2) != 1 {
			t.Errorf("%d pairs apart, the other box on sheet %d", j.Apart(after), sheetOf(after, 2))
		}
		j.Items[3].Chain, j.Items[3].First = "card", true
		if moved := sheetOf(j.Joined(before), 2) != 0; moved == behind {
			t.Errorf("before a card, a template %v moves: %v", behind, moved)
		}
	}
}

// placed returns the sheet of each item, and wants all to stand once, on their sheet and apart.
func placed(t *rapid.T, j *Job, sheets []*Sheet) map[int]int {
	on := map[int]int{}
	for n, s := range sheets {
		var boxes []geometry.Rect
		for _, p := range s.Placed {
			if _, twice := on[p.Item]; twice {
				t.Fatalf("item %d stands twice", p.Item)
			}
			on[p.Item] = n
			box := geometry.Rect{Min: p.At, Max: p.At.Add(j.Items[p.Item].Shapes[p.Shape].Size)}
			if size := j.Size[0]; box.Max.X > size.X+slack || box.Max.Y > size.Y+slack {
				t.Fatalf("item %d reaches out of sheet %d", p.Item, n)
			}
			for _, o := range boxes {
				if box.Offset(-slack).Overlaps(o) {
					t.Fatalf("item %d lies over another", p.Item)
				}
			}
			boxes = append(boxes, box)
		}
	}
	if len(on) != len(j.Items) {
		t.Fatalf("%d items stand, of %d", len(on), len(j.Items))
	}
	return on
}
