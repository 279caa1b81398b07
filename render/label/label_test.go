package label

import (
	"math"
	"testing"

	"rodsheet/geometry"
	"rodsheet/render/lettering"
)

// Between a label and what it names lies no line, and a leader would not be
// seen on one. It may end on a line.
func TestNothingBetweenLabelAndLine(t *testing.T) {
	p := &Placer{Window: geometry.Box(0, 0, 200, 100)}
	p.Bar(geometry.Pt(0, 50), geometry.Pt(200, 50))
	p.Bar(geometry.Pt(150, 0), geometry.Pt(150, 60))
	p.Leaders = []geometry.Segment{{A: geometry.Pt(20, 80), B: geometry.Pt(20, 60)}}
	size := geometry.Pt(30, 2.5)
	for _, c := range []struct {
		name string
		link geometry.Segment
		want int
	}{
		{"a leader to the line", geometry.Segment{A: geometry.Pt(100, 75), B: geometry.Pt(100, 50)}, 0},
		{"a leader past it", geometry.Segment{A: geometry.Pt(100, 75), B: geometry.Pt(100, 40)}, 1},
		{"close by, past it", geometry.Segment{A: geometry.Pt(100, 51), B: geometry.Pt(100, 49)}, 1},
		{"a leader across another", geometry.Segment{A: geometry.Pt(30, 75), B: geometry.Pt(10, 65)}, tangled},
		{"a leader on a line", geometry.Segment{A: geometry.Pt(150, 75), B: geometry.Pt(150, 50)}, 1},
	} {
		s := spot{centre: geometry.Pt(100, 80), link: c.link}
		if got := p.touches(s, roomOf(size), math.MaxInt); got != c.want {
			t.Errorf("%s touches %d lines, want %d", c.name, got, c.want)
		}
	}
}

// Two names on one line stand so far apart that they are not read as one.
func TestNamesStandApart(t *testing.T) {
	const least = 2.5 // mm, as wide as the letters are high
	p := &Placer{Window: geometry.Box(0, 0, 80, 5)}
	point := func(x float64) geometry.Segment {
		return geometry.Segment{A: geometry.Pt(x, 2.5), B: geometry.Pt(x, 2.5)}
	}
	names := (lettering.Width("underside", 2.5) + lettering.Width("cheek", 2.5)) / 2
	p.Set("underside", 2.5, point(20))
	p.Set("cheek", 2.5, point(20+names+1.5))
	end := p.Texts[0].At.X + lettering.Width("underside", 2.5)
	if gap := p.Texts[1].At.X - end; gap < least {
		t.Errorf("the second name starts %.2f mm after the first, want %.1f at least", gap, least)
	}
}

// Lettering on end beside a level line is led to it, though it stands close by.
func TestLetteringOnEndIsLedToItsLine(t *testing.T) {
	p := &Placer{Window: geometry.Box(0, 0, 12, 100)}
	on := geometry.Segment{A: geometry.Pt(3, 20), B: geometry.Pt(9, 20)}
	p.Bar(on.A, on.B)
	p.Set("edge 15/64 in up", 2.5, on)
	if p.Texts[0].Angle == 0 || len(p.Leaders) != 1 || on.Distance(p.Leaders[0].B) > hair {
		t.Errorf("lettering at angle %.2f has the leaders %v, want one to %v", p.Texts[0].Angle, p.Leaders, on)
	}
}

// So it is to a point.
func TestLetteringOnEndIsLedToItsPoint(t *testing.T) {
	p := &Placer{Window: geometry.Box(0, 0, 9, 100)}
	at := geometry.Pt(3, 20)
	p.Bar(geometry.Pt(0, 20), geometry.Pt(9, 20))
	p.Set("pencil, 30 mm up", 2.5, geometry.Segment{A: at, B: at})
	if p.Texts[0].Angle == 0 || len(p.Leaders) != 1 || p.Leaders[0].B != at {
		t.Errorf("lettering at angle %.2f has the leaders %v, want one to %v", p.Texts[0].Angle, p.Leaders, at)
	}
}
