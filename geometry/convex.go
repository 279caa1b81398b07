package geometry

import (
	"cmp"
	"math"
	"slices"
)

// Hull returns the convex hull of points, counter-clockwise (Andrew's monotone
// chain). A point that stands out from the line between its neighbours by no
// more than a millionth of a mm is rounding, and no corner.
func Hull(points []Point) []Point {
	points = slices.Clone(points)
	slices.SortFunc(points, func(a, b Point) int {
		return cmp.Or(cmp.Compare(a.X, b.X), cmp.Compare(a.Y, b.Y))
	})
	points = slices.Compact(points)
	if len(points) == 0 {
		return nil
	}
	chain := func(out []Point) []Point {
		for _, p := range points {
			for len(out) > 1 && out[len(out)-1].Sub(out[len(out)-2]).Cross(p.Sub(out[len(out)-1])) <= 0 {
				out = out[:len(out)-1]
			}
			out = append(out, p)
		}
		return out[:len(out)-1]
	}
	lower := chain(nil)
	slices.Reverse(points)
	return withoutRounding(append(lower, chain(nil)...))
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

// ClipHalfPlane returns the part of a convex polygon where n·q ≤ limit.
func ClipHalfPlane(convex []Point, n Point, limit float64) []Point {
	var out []Point
	for i, q := range convex {
		r := convex[(i+1)%len(convex)]
		hq, hr := n.Dot(q)-limit, n.Dot(r)-limit
		if hq <= 0 {
			out = append(out, q)
		}
		if hq < 0 && hr > 0 || hq > 0 && hr < 0 {
			out = append(out, q.Lerp(r, hq/(hq-hr)))
		}
	}
	return out
}

// LeftOf returns the part of a convex polygon to the left of a line, on the way
// from its A to its B.
func LeftOf(convex []Point, line Segment) []Point {
	right := line.A.Sub(line.B).Perp()
	return ClipHalfPlane(convex, right, right.Dot(line.A))
}

// ClipConvex returns the part of s inside the convex polygon, whose corners run
// counter-clockwise, and reports whether there is one. What runs along a side
// is inside.
func ClipConvex(s Segment, convex []Point) (Segment, bool) {
	lo, hi, _ := crossing(s, convex)
	d := s.B.Sub(s.A)
	return Segment{s.A.Add(d.Mul(lo)), s.A.Add(d.Mul(hi))}, lo < hi
}

// CutOut returns the parts of s outside the convex polygon, whose corners run
// counter-clockwise: nothing, the whole of s, or one or two pieces of it. What
// runs along a side is outside.
func CutOut(s Segment, convex []Point) []Segment {
	lo, hi, along := crossing(s, convex)
	if along || lo >= hi {
		return []Segment{s}
	}
	d := s.B.Sub(s.A)
	var out []Segment
	if lo > 0 {
		out = append(out, Segment{s.A, s.A.Add(d.Mul(lo))})
	}
	if hi < 1 {
		out = append(out, Segment{s.A.Add(d.Mul(hi)), s.B})
	}
	return out
}

// Meets reports whether s runs through the inside of the convex polygon,
// whose corners run counter-clockwise.
func Meets(s Segment, convex []Point) bool {
	whole := CutOut(s, convex)
	return len(whole) != 1 || whole[0] != s
}

// crossing returns between which shares of the way from A to B the segment is
// inside the convex polygon, lo ≥ hi where it is nowhere, and whether it runs
// along one of the sides.
func crossing(s Segment, convex []Point) (lo, hi float64, along bool) {
	const rounding = 1e-9 // mm: corners nearer than that are one
	d := s.B.Sub(s.A)
	lo, hi = 0, 1
	for i, p := range convex {
		e := convex[(i+1)%len(convex)].Sub(p)
		if e.Norm() < rounding {
			continue
		}
		// The inside is to the left of e: e × (A + t·d − p) ≥ 0.
		at, slope := e.Cross(s.A.Sub(p)), e.Cross(d)
		switch {
		case slope > 0:
			lo = math.Max(lo, -at/slope)
		case slope < 0:
			hi = math.Min(hi, -at/slope)
		case at < 0:
			return 1, 0, false
		case at == 0:
			along = true
		}
	}
	return lo, hi, along
}
