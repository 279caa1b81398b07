package solid

import (
	"math"
	"testing"

	"pgregory.net/rapid"
)

// A slot is as wide, as long and as deep as it says, whichever way it lies; what stands out
// of its round ends is told by the area of the polygon about a circle, n·r²·tan π/n.
func TestSlot(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		num := func(name string, lo, hi float64) float64 { return rapid.Float64Range(lo, hi).Draw(t, name) }
		wide, run, deep := num("wide", 3, 12), num("run", 0, 40), num("deep", 5, 90)
		m := Rotate(V(num("x", -1, 1), num("y", -1, 1), 2), num("turn", 0, 6)).Then(Translate(V(300, -70, 40)))
		s := Slot(m.Apply(Vec{}), m.step(V(2, 0, num("slant", -1, 1))), m.step(V(0, 0, deep)), wide, wide+run)
		area := wide*run + slotCorners*wide*wide/4*math.Tan(math.Pi/slotCorners)
		if got := s.Volume(); math.Abs(got-area*deep) > 1e-6*got {
			t.Errorf("%g mm³, want %g", got, area*deep)
		}
		for _, p := range []Vec{V(0, wide/2, 0), V(0, -wide/2, 0), V((wide+run)/2, 0, 0), V(-(wide+run)/2, 0, 0)} {
			if _, hi, _ := s.span(Through(m.Apply(p), m.step(p))); math.Abs(hi) > 1e-6 {
				t.Errorf("it reaches %g past %v", hi, p)
			}
		}
	})
}
