package solid

import (
	"math"
	"slices"
	"testing"

	"rodsheet/geometry"
)

func TestMinus(t *testing.T) {
	tests := []struct {
		name       string
		a, b, want []span
		gap        float64
	}{
		{name: "nothing taken", a: []span{{1, 4}}, want: []span{{1, 4}}},
		{name: "before", a: []span{{1, 4}}, b: []span{{-2, 0}}, want: []span{{1, 4}}},
		{name: "after", a: []span{{1, 4}}, b: []span{{5, 6}}, want: []span{{1, 4}}},
		{name: "start", a: []span{{1, 4}}, b: []span{{0, 2}}, want: []span{{2, 4}}},
		{name: "end", a: []span{{1, 4}}, b: []span{{3, 9}}, want: []span{{1, 3}}},
		{name: "middle, twice", a: []span{{1, 8}}, b: []span{{2, 3}, {5, 6}}, want: []span{{1, 2}, {3, 5}, {6, 8}}},
		{name: "all", a: []span{{1, 4}}, b: []span{{0, 5}}},
		{name: "one over two", a: []span{{1, 4}, {6, 9}}, b: []span{{3, 7}}, want: []span{{1, 3}, {7, 9}}},
		{name: "too short a rest", a: []span{{1, 4}}, b: []span{{1.25, 4}}, gap: 0.5},
	}
	for _, tt := range tests {
		if got := minus(tt.a, tt.b, tt.gap); !slices.Equal(got, tt.want) {
			t.Errorf("%s: got %v, want %v", tt.name, got, tt.want)
		}
	}
}

func TestMerge(t *testing.T) {
	got := merge([]span{{5, 6}, {0, 4}, {1, 2}, {4.5, 4.75}, {9, 10}}, 0.25)
	if want := []span{{0, 4}, {4.5, 6}, {9, 10}}; !slices.Equal(got, want) {
		t.Errorf("got %v, want %v", got, want)
	}
}

// One line in four strokes: a short one that points a little astray, one drawn
// backwards, one hidden for the most part, and one far along.
func TestTidy(t *testing.T) {
	visible, hidden := tidy([]ink{
		{seg(0, 0, 0.001, 1e-9), nil},
		{seg(100, 0, 0, 0), nil},
		{seg(50, 0, 150, 0), []span{{0.2, 1}}},
		{seg(1000, 0, 900, 0), []span{{0.25, 0.5}}},
	})
	same(t, "visible", visible, []geometry.Segment{seg(0, 0, 100, 0), seg(1000, 0, 975, 0), seg(950, 0, 900, 0)})
	same(t, "hidden", hidden, []geometry.Segment{seg(100, 0, 150, 0), seg(975, 0, 950, 0)})

	// Lines that only cross or run beside each other stay apart.
	visible, _ = tidy([]ink{{seg(0, 0, 9, 0), nil}, {seg(0, 0, 0, 5), nil}, {seg(3, 0, 3, 5), nil}, {seg(4, 2, 4, 0), nil}})
	if len(visible) != 4 {
		t.Errorf("got %d lines, want 4", len(visible))
	}
}

// Wedges round a line, in degrees, and whether they leave an edge there.
func TestBroken(t *testing.T) {
	tests := []struct {
		name   string
		wedges [][2]float64
		want   bool
	}{
		{"none", nil, false},
		{"arris", [][2]float64{{0, 90}}, true},
		{"arris across the start", [][2]float64{{-30, 60}}, true},
		{"flat", [][2]float64{{-90, 90}}, false},
		{"flat in two", [][2]float64{{200, 290}, {290, 380}}, false},
		{"flat in two, turned once round", [][2]float64{{-160, -70}, {290, 380}}, false},
		{"inner corner", [][2]float64{{0, 180}, {180, 270}}, true},
		{"full in two", [][2]float64{{10, 190}, {190, 370}}, false},
		{"full in three", [][2]float64{{-60, 60}, {60, 180}, {180, 300}}, false},
		{"two that touch on the line", [][2]float64{{0, 90}, {180, 270}}, true},
		{"two that leave half, but apart", [][2]float64{{0, 90}, {135, 225}}, true},
		{"overlapping, flat", [][2]float64{{0, 100}, {50, 180}}, false},
		{"overlapping across the start", [][2]float64{{0, 20}, {270, 450}}, false},
	}
	for _, tt := range tests {
		var wedges []wedge
		for _, w := range tt.wedges {
			wedges = append(wedges, wedge{lo: w[0] * math.Pi / 180, hi: w[1] * math.Pi / 180})
		}
		if got := broken(wedges); got != tt.want {
			t.Errorf("%s: got %v, want %v", tt.name, got, tt.want)
		}
	}
}
