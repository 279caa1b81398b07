package solid

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"rodsheet/geometry"
)

// foremost returns the normal of the face that the sight line through a point of
// the paper meets first, straight from the planes of every solid.
func foremost(all []Solid, v View, p geometry.Point) (n Vec, met, doubtful bool) {
	at := v.Right.Mul(p.X).Add(v.Up.Mul(p.Y))
	best := math.Inf(-1)
	for _, s := range all {
		low, high := math.Inf(-1), math.Inf(1)
		var face Vec
		for _, f := range s.Faces() {
			q := f.Plane
			slope, height := q.N.Dot(v.Out), q.Height(at)
			switch {
			case math.Abs(slope) < 1e-9:
				if height > 0 {
					low, high = 1, 0
				}
				doubtful = doubtful || math.Abs(height) < 1e-3
			case slope > 0:
				if t := -height / slope; t < high {
					high, face = t, q.N
				}
			default:
				low = math.Max(low, -height/slope)
			}
		}
		doubtful = doubtful || math.Abs(high-low) < 1e-2 || math.Abs(high-best) < 1e-2
		if low < high && high > best {
			best, n, met = high, face, true
		}
	}
	return n, met, doubtful
}

func TestPatches(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		var parts []Part
		var all []Solid
		place := rapid.Float64Range(-60, 60)
		for range rapid.IntRange(1, 4).Draw(t, "solids") {
			at := V(place.Draw(t, "x"), place.Draw(t, "y"), place.Draw(t, "z"))
			size := V(20+math.Abs(place.Draw(t, "w")), 20+math.Abs(place.Draw(t, "d")), 20+math.Abs(place.Draw(t, "h")))
			s := Box(V(0, 0, 0), size).Transform(Rotate(axes.Draw(t, "axis"), place.Draw(t, "turn"))).Transform(Translate(at))
			for _, o := range all { // parts of a scene do not clash
				if rest := s.Subtract(o); len(rest) > 0 {
					s = rest[0]
				}
			}
			if s.Volume() > 1 && !clashes(s, all) {
				all, parts = append(all, s), append(parts, Stock("box", s))
			}
		}
		n := axes.Draw(t, "from")
		v := Look(n, n.Cross(axes.Draw(t, "tilt")).Unit())
		if math.Abs(v.Up.Norm()-1) > 1e-9 {
			t.Skip("up runs along from")
		}
		patches := NewScene(parts).Patches(v)
		for range 20 {
			p := geometry.Pt(place.Draw(t, "px"), place.Draw(t, "py"))
			want, met, doubtful := foremost(all, v, p)
			var got []Vec
			for _, q := range patches {
				deep := math.Inf(1) // how far inside the patch
				for i, c := range q.Corners {
					if side := q.Corners[(i+1)%len(q.Corners)].Sub(c); side.Norm() > 1e-9 {
						deep = math.Min(deep, side.Unit().Cross(p.Sub(c)))
					}
				}
				doubtful = doubtful || math.Abs(deep) < 1e-3
				if deep > 0 {
					got = append(got, q.N)
				}
			}
			if doubtful {
				continue
			}
			switch {
			case !met && len(got) > 0:
				t.Fatalf("at %v nothing stands, and %d patches cover it", p, len(got))
			case met && len(got) == 0:
				t.Fatalf("at %v no patch shows the face %v", p, want)
			case len(got) > 1:
				t.Fatalf("at %v patches overlap: %v", p, got)
			case met && got[0].Distance(want) > 1e-6:
				t.Fatalf("at %v the patch shows %v, in front is %v", p, got[0], want)
			}
		}
	})
}

func clashes(s Solid, all []Solid) bool {
	for _, o := range all {
		if s.Intersect(o).Volume() > 1e-6 {
			return true
		}
	}
	return false
}
