package piecetest

import (
	"slices"
	"strings"

	"pgregory.net/rapid"

	"rodsheet/geometry/measure"
	"rodsheet/geometry/solid"
	"rodsheet/templates"
	"rodsheet/templates/wording"
)

// Value reads a length in mm or an angle in rad as it is printed.
func Value(t rapid.TB, printed string) float64 {
	t.Helper()
	read := measure.ParseAngle
	if !strings.Contains(printed, "°") {
		read = func(s string) (float64, error) { return measure.ParseLength(s, measure.Millimetre) }
	}
	v, err := read(printed)
	if err != nil {
		t.Fatal(err)
	}
	return v
}

// Said reads the length that a sentence of one figure says.
func Said(t rapid.TB, sentence string, as wording.Text) float64 {
	t.Helper()
	before, after, _ := strings.Cut(string(as), "%s")
	return Value(t, strings.TrimSuffix(strings.TrimPrefix(sentence, before), after))
}

// Figure reads what a card says under one of some names, if it does.
func Figure(t rapid.TB, c templates.Card, names ...wording.Text) (float64, bool) {
	t.Helper()
	for _, r := range c.Figures {
		if slices.Contains(names, wording.Text(r.Name)) {
			return Value(t, r.Value), true
		}
	}
	return 0, false
}

// Grown moves all faces of a solid outward.
func Grown(s solid.Solid, mm float64) solid.Solid {
	room, more := s.Bounds(), solid.V(mm, mm, mm)
	out := solid.Box(room.Min.Sub(more), room.Max.Add(more))
	for _, f := range s.Faces() {
		out = out.Cut(solid.Plane{N: f.Plane.N, D: f.Plane.D + mm})
	}
	return out
}

// Same asks that of two parts none stands out of the other by more than slip.
func Same(t rapid.TB, what string, got, want solid.Part, slip float64) {
	t.Helper()
	over := func(p, q solid.Part) (sum float64) {
		var larger []solid.Solid
		var room []solid.Extent
		for _, s := range q.Pieces {
			larger = append(larger, Grown(s, slip))
			room = append(room, larger[len(larger)-1].Bounds())
		}
		for _, s := range p.Pieces {
			left, reach := solid.Stock("", s), s.Bounds()
			for i, r := range larger {
				if room[i].Overlaps(reach) && len(left.Pieces) > 0 {
					left = left.Subtract(r)
				}
			}
			if v := left.Volume(); v > 1e-3 {
				t.Log(what, "between", left.Bounds())
				sum += v
			}
		}
		return sum
	}
	if more, less := over(got, want), over(want, got); more > 1e-3 || less > 1e-3 {
		t.Errorf("%s: %.3f mm³ too much, %.3f mm³ too little", what, more, less)
	}
}
