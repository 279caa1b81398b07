package design

import (
	"testing"

	"pgregory.net/rapid"
)

// TestDistance wants the laws of a distance, short of the triangle's, which
// the swap breaks.
func TestDistance(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		word := rapid.StringMatching(`[abc]{0,6}`)
		a, b := word.Draw(t, "a"), word.Draw(t, "b")
		d := distance(a, b)
		if d != distance(b, a) {
			t.Errorf("distance(%q, %q) depends on the order", a, b)
		}
		if (d == 0) != (a == b) {
			t.Errorf("distance(%q, %q) = %d", a, b, d)
		}
		if low, high := max(len(a), len(b))-min(len(a), len(b)), max(len(a), len(b)); d < low || d > high {
			t.Errorf("distance(%q, %q) = %d, want %d to %d", a, b, d, low, high)
		}
	})
}
