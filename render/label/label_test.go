package label

import (
	"math"
	"testing"

	"rodsheet/geometry"
)

// Between a label and what it names lies no line, and a leader would not be
// seen on one. It may end on a line.
func TestNothingBetweenLabelAndLine(t *testing.T) {
	p := &Placer{Window: geometry.Box(0, 0, 200, 100)}
	p.Bar(
		geometry.Segment{A: geometry.Pt(0, 50), B: geometry.Pt(200, 50)},
		geometry.Segment{A: geometry.Pt(150, 0), B: geometry.Pt(150, 60)})
	size := geometry.Pt(30, 2.5)
	for _, c := range []struct {
		name string
		link geometry.Segment
		want int
	}{
		{"a leader to the line", geometry.Segment{A: geometry.Pt(100, 75), B: geometry.Pt(100, 50)}, 0},
		{"a leader past it", geometry.Segment{A: geometry.Pt(100, 75), B: geometry.Pt(100, 40)}, 1},
		{"close by, past it", geometry.Segment{A: geometry.Pt(100, 51), B: geometry.Pt(100, 49)}, 1},
		{"a leader on a line", geometry.Segment{A: geometry.Pt(150, 75), B: geometry.Pt(150, 50)}, 1},
	} {
		s := spot{centre: geometry.Pt(100, 80), link: c.link}
		if got := p.touches(s, size, math.MaxInt); got != c.want {
			t.Errorf("%s touches %d lines, want %d", c.name, got, c.want)
		}
	}
}
