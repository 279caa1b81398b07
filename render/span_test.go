package render

import (
	"math"
	"testing"

	"rodsheet/geometry"
	"rodsheet/geometry/measure"
	"rodsheet/render/page"
	"rodsheet/templates"
	"rodsheet/templates/piece/kind"
	"rodsheet/templates/piece/kinds"
)

// spansOf returns the dimension lines of a page: lines in pictures on which the tips of
// two heads of arrows stand.
func spansOf(p page.Page) (out []geometry.Segment) {
	var heads []geometry.Segment // from the tip
	for _, a := range p.Areas {
		if a.Gray == 0 && len(a.Points) == 3 {
			heads = append(heads, geometry.Segment{A: a.Points[0], B: a.Points[1].Lerp(a.Points[2], 0.5)})
		}
	}
	for _, s := range p.Strokes {
		if s.Line != pictured(templates.Construction) || len(s.Points) != 2 {
			continue
		}
		line := geometry.Segment{A: s.Points[0], B: s.Points[1]}
		var on []geometry.Point
		for _, h := range heads {
			if line.Distance(h.A) < 1e-6 && line.Distance(h.B) < 1e-6 {
				on = append(on, h.A)
			}
		}
		if len(on) == 2 {
			out = append(out, geometry.Segment{A: on[0], B: on[1]})
		}
	}
	return out
}

// away is how far lettering stands from a line.
func away(x page.Text, l geometry.Segment) float64 {
	box := letters(x)
	if geometry.Meets(l, box) {
		return 0
	}
	least := math.Inf(1)
	for i, c := range box {
		side := geometry.Segment{A: c, B: box[(i+1)%len(box)]}
		least = min(least, l.Distance(c), side.Distance(l.A), side.Distance(l.B))
	}
	return least
}

// On every sheet of the examples, on both papers and in both units, each dimension line
// has lettering close by that stands nearer to no other: no arrow is bare, and none
// carries the figure of another.
func TestEveryFigureStandsByItsOwnLine(t *testing.T) {
	const close = 6 // mm: beyond a short line stands what its heads are drawn on
	read := 0
	for _, name := range []string{"hall-table", "plant-stand", "window-seat", "staked-stool", "side-table", "planter"} {
		for _, u := range []measure.Unit{measure.Millimetre, measure.Inch} {
			sizes := exampleSizes(t, name)
			for i := range sizes {
				sizes[i].Unit = u
			}
			for _, paper := range []Paper{papers()[3], papers()[0]} {
				l := DefaultLayout(u, paper)
				work, err := kinds.Solve(sizes)
				if err != nil {
					t.Fatal(err)
				}
				job, err := work.Pack(kind.Options{For: kind.Buying | kind.Bench, Plan: true}, templates.Setting{Unit: u, Clear: l.Clear()})
				if err != nil {
					t.Fatal(err)
				}
				plan, err := Lay(job, l)
				if err != nil {
					t.Fatal(err)
				}
				for i, p := range plan.Document().Pages {
					spans := spansOf(p)
					read += len(spans)
					for k, s := range spans {
						own := 0
						for _, x := range p.Texts {
							far := away(x, s)
							nearer := far > close
							for m, o := range spans {
								nearer = nearer || m != k && away(x, o) < far
							}
							if !nearer {
								own++
							}
						}
						if own == 0 {
							t.Errorf("%s on %s in %v, sheet %d: the line from %.0f to %.0f has no figure", name, paper.Name, u, i+1, s.A, s.B)
						}
					}
				}
			}
		}
	}
	if read < 200 {
		t.Errorf("%d dimension lines are read", read)
	}
}
