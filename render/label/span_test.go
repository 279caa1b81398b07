package label

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"rodsheet/geometry"
)

// apartFrom is the distance between a box and a line by ternary search: along a line the
// distance from what is convex has one valley.
func apartFrom(box [4]geometry.Point, l geometry.Segment) float64 {
	u, v := box[1].Sub(box[0]), box[3].Sub(box[0])
	at := func(t float64) float64 {
		p := l.A.Lerp(l.B, t).Sub(box[0])
		beyond := func(d geometry.Point) float64 {
			x := p.Dot(d.Unit())
			return math.Max(math.Max(-x, x-d.Norm()), 0)
		}
		return math.Hypot(beyond(u), beyond(v))
	}
	low, high := 0.0, 1.0
	for range 100 {
		third := (high - low) / 3
		if at(low+third) < at(high-third) {
			high -= third
		} else {
			low += third
		}
	}
	return at(low)
}

type asked struct {
	text string
	feet geometry.Segment
	away geometry.Point
}

// aSpan is level, upright or at a slant, led out to either side or not at all.
func aSpan(t *rapid.T) asked {
	const step = 30.0 // degrees
	place := rapid.Custom(func(t *rapid.T) geometry.Point {
		return geometry.Pt(float64(rapid.IntRange(90, 110).Draw(t, "x")), float64(rapid.IntRange(70, 80).Draw(t, "y")))
	})
	along := geometry.Polar(1, float64(rapid.IntRange(0, 11).Draw(t, "angle"))*step*math.Pi/180)
	from := place.Draw(t, "from")
	return asked{
		text: rapid.SampledFrom([]string{"5", "112", "1 3/16 in", "450 mm at the heads"}).Draw(t, "text"),
		feet: geometry.Segment{A: from, B: from.Add(along.Mul(float64(rapid.IntRange(2, 60).Draw(t, "long"))))},
		away: along.Perp().Mul(float64(rapid.IntRange(-8, 8).Draw(t, "away"))),
	}
}

// Whatever spans meet, each has its figure, once and upright or level to read; those that
// find room stand nearer to their own line than to any other.
func TestAFigureIsNearestToItsOwnLine(t *testing.T) {
	all, clear := 0, 0
	rapid.Check(t, func(t *rapid.T) {
		p := &Placer{Window: geometry.Box(0, 0, 200, 150)}
		want := rapid.SliceOfN(rapid.Custom(aSpan), 2, 5).Draw(t, "spans")
		var spans []Span
		for _, a := range want {
			p.Lead(a.feet, a.away)
		}
		for _, a := range want {
			spans = append(spans, p.Span(a.text, 2.5, a.feet, a.away))
		}
		if len(p.Texts) != len(want) {
			t.Fatalf("%d figures for %d spans", len(p.Texts), len(want))
		}
		for i, a := range want {
			if x := p.Texts[i]; x.String != a.text || apartFrom(spans[i].Box, geometry.Segment{A: x.At, B: x.At}) > 0 {
				t.Errorf("span %d has %q at %v, want %q in %v", i, x.String, x.At, a.text, spans[i].Box)
			}
		}
		if all++; p.Struck > 0 {
			return
		}
		clear++
		for i, s := range spans {
			for k, o := range spans {
				if own, other := apartFrom(s.Box, s.Line), apartFrom(s.Box, o.Line); i != k && other < own {
					t.Errorf("%q stands %.2f mm from its line, %.2f mm from that of %q", want[i].text, own, other, want[k].text)
				}
			}
		}
	})
	if clear < all/3 {
		t.Errorf("%d of %d sets find room", clear, all)
	}
}

// Alone, a figure beside a steep line is level, and nothing is struck.
func TestAFigureIsLevelWhereThereIsRoom(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := &Placer{Window: geometry.Box(-100, -100, 300, 250)}
		a := aSpan(t)
		s := p.Span(a.text, 2.5, a.feet, a.away)
		if steep(s.Line) && p.Texts[0].Angle != 0 || p.Struck > 0 {
			t.Errorf("a figure at %.0f°, %d struck", p.Texts[0].Angle*180/math.Pi, p.Struck)
		}
		if room := Room(a.text, 2.5, a.feet, a.away).Offset(1e-9); !steep(s.Line) && !room.Holds(geometry.Bounds(s.Box[:]...)) {
			t.Errorf("%q takes %v, more than its room %v", a.text, s.Box, room)
		}
	})
}
