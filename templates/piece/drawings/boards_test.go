package drawings

import (
	"math"
	"slices"
	"testing"

	"rodsheet/geometry"
	"rodsheet/geometry/lists"
	"rodsheet/templates"
	"rodsheet/templates/piece/design"
	"rodsheet/templates/piece/internal/piecetest"
	"rodsheet/templates/piece/shop"
)

// The picture of a board shows every piece of it where the plan has it: as long as it
// is, as wide as the stretch says, named, apart from all others; and an arrow along the grain.
func TestBoardPictures(t *testing.T) {
	for _, thick := range []float64{46, 80} {
		d := piecetest.Low()
		d.Wood.Boards = []design.Board{{Length: 2400, Width: 160, Thickness: thick, Count: 2}}
		pieces := piecetest.WorkedAll(t, d, piecetest.Tall())
		plan := shop.NewPlan(pieces).Cuts.Boards
		pictures := boardPictures(pieces[0].Design.Unit, plan)
		if len(pictures) != len(plan.Boards) {
			t.Fatalf("%d pictures of %d boards", len(pictures), len(plan.Boards))
		}
		for i, b := range plan.Boards {
			across := stretch(b)
			var want []geometry.Point // length and width of every piece
			resawn := false
			for _, l := range b.Lanes {
				resawn = resawn || len(l.Strips) > 1
				for _, p := range slices.Concat(l.Strips...) {
					wide := p.Size.Width
					if wide > l.Width+1e-6 || p.Size.Thickness > l.Thickness+1e-6 {
						wide = p.Size.Thickness
					}
					want = append(want, geometry.Pt(p.Size.Length, wide*across))
				}
			}
			checkPieces(t, pictures[i], want)
			rips := lists.Where(pictures[i].Labels, func(l templates.Label) bool { return l.ID == "rip" })
			for n, l := range rips { // each names an arrow from edge to edge of its lane
				lane, a := b.Lanes[n], pictures[i].Arrows[n]
				want := []geometry.Point{geometry.Pt(l.On.A.X, across*lane.At), geometry.Pt(l.On.A.X, across*(lane.At+lane.Width))}
				if !a.Both || !slices.Equal(a.Points, want) || l.On.A != l.On.B || l.On.A.Distance(want[0].Lerp(want[1], 0.5)) > 1e-9 {
					t.Errorf("%q is at %v beside %v, want the middle of %v", l.Text, l.On.A, a.Points, want)
				}
			}
			if thick == 80 && i == 0 && !resawn {
				t.Error("a thick board is not resawn")
			}
			if a := pictures[i].Arrows[len(rips):]; len(rips) == 0 || len(a) != 1 || math.Abs(a[0].Points[0].Y-a[0].Points[1].Y) > 1e-9 {
				t.Errorf("%d rips and arrows %v, want one along the board", len(rips), a)
			}
		}
	}
}

func checkPieces(t *testing.T, p templates.Picture, want []geometry.Point) {
	t.Helper()
	var boxes []geometry.Rect
	for _, a := range p.Areas {
		box := geometry.Bounds(a.Points...)
		size := geometry.Pt(box.Width(), box.Height())
		k := slices.IndexFunc(want, func(w geometry.Point) bool { return w.Sub(size).Norm() < 1e-6 })
		if k < 0 {
			t.Errorf("an area of %v is no piece", size)
			continue
		}
		want = slices.Delete(want, k, k+1)
		for _, other := range boxes {
			if box.Offset(-1e-6).Overlaps(other) {
				t.Errorf("pieces %v and %v overlap", box, other)
			}
		}
		boxes = append(boxes, box)
		if !slices.ContainsFunc(p.Labels, func(l templates.Label) bool { return l.ID == "board-piece" && l.Text != "" && box.Contains(l.On.A) }) {
			t.Errorf("the piece at %v has no name", box)
		}
	}
	if len(want) > 0 {
		t.Errorf("pieces %v are not drawn", want)
	}
}
