package render

import (
	"slices"
	"testing"

	"pgregory.net/rapid"

	"rodsheet/geometry"
)

// Joined reaches touch the same cores as the segments one by one.
func TestTouchedBySegments(t *testing.T) {
	at := rapid.Float64Range(-50, 350)
	rapid.Check(t, func(t *rapid.T) {
		point := rapid.Custom(func(t *rapid.T) geometry.Point {
			return geometry.Pt(at.Draw(t, "x"), at.Draw(t, "y"))
		})
		ink := chain(rapid.SliceOfN(point, 2, 12).Draw(t, "points"))
		xs, ys := []float64{0, 90, 180, 300}, []float64{300, 210, 120, 0}
		want := make([]bool, 9)
		for _, s := range ink {
			for i, k := range touched(inColumns([]geometry.Segment{s}, xs), ys) {
				want[i] = want[i] || k
			}
		}
		if got := touched(inColumns(ink, xs), ys); !slices.Equal(got, want) {
			t.Fatalf("touched %v, segment by segment %v", got, want)
		}
		for i, k := range want {
			core := geometry.Box(xs[i%3], ys[i/3+1], xs[i%3+1], ys[i/3])
			if k && !slices.ContainsFunc(ink, func(s geometry.Segment) bool { return meets(s, core) }) {
				t.Fatalf("core %v is touched by nothing", core)
			}
		}
	})
}

// meets reports whether s comes within a millimetre of r, by walking along it.
func meets(s geometry.Segment, r geometry.Rect) bool {
	const steps = 2000
	for k := range steps + 1 {
		if q := s.A.Lerp(s.B, float64(k)/steps); clamp(q, r).Distance(q) < 1 {
			return true
		}
	}
	return false
}
