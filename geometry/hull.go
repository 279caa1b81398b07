package geometry

import (
	"cmp"
	"slices"
)

// Hull returns the convex hull of points, counter-clockwise (Andrew's monotone
// chain). A point that stands out from the line between its neighbours by no
// more than a millionth of a mm is rounding, and no corner.
func Hull(points []Point) []Point {
	points = slices.Clone(points)
	slices.SortFunc(points, func(a, b Point) int {
		if a.X != b.X { // as most do
			return cmp.Compare(a.X, b.X)
		}
		return cmp.Compare(a.Y, b.Y)
	})
	points = slices.Compact(points)
	if len(points) == 0 {
		return nil
	}
	chain := func() []Point {
		out := make([]Point, 0, len(points))
		for _, p := range points {
			for len(out) > 1 && out[len(out)-1].Sub(out[len(out)-2]).Cross(p.Sub(out[len(out)-1])) <= 0 {
				out = out[:len(out)-1]
			}
			out = append(out, p)
		}
		return out[:len(out)-1]
	}
	lower := chain()
	slices.Reverse(points)
	return withoutRounding(append(lower, chain()...))
}

// withoutRounding leaves out the corners of a convex polygon that are none but
// for rounding. It waits for the hull to be complete: a chain that forgave as
// it went would let a far point go with a near one.
func withoutRounding(hull []Point) []Point {
	const rounding = 1e-6 // mm
	for i := 0; i < len(hull) && len(hull) > 2; {
		before, after := hull[(i+len(hull)-1)%len(hull)], hull[(i+1)%len(hull)]
		if (Segment{before, after}).Distance(hull[i]) > rounding {
			i++
			continue
		}
		hull = slices.Delete(hull, i, i+1)
	}
	return hull
}
