package readback

import "rodsheet/geometry"

// Strays returns the segments of a that have no partner in b: one whose ends
// lie within tolerance mm of its own, in either direction. Every segment of b
// is partner to one only. Two drawings agree when Strays is empty both ways,
// or one way where they have as many segments.
func Strays(a, b []geometry.Segment, tolerance float64) []geometry.Segment {
	taken := make([]bool, len(b))
	var out []geometry.Segment
	for i, s := range a {
		if k := partner(s, b, taken, i, tolerance); k >= 0 {
			taken[k] = true
		} else {
			out = append(out, s)
		}
	}
	return out
}

// partner looks at segment first before all others: mostly both sides stand
// in the same order.
func partner(s geometry.Segment, b []geometry.Segment, taken []bool, first int, tolerance float64) int {
	fits := func(k int) bool {
		p := b[k]
		return !taken[k] && (within(s.A, p.A, tolerance) && within(s.B, p.B, tolerance) ||
			within(s.A, p.B, tolerance) && within(s.B, p.A, tolerance))
	}
	if first < len(b) && fits(first) {
		return first
	}
	for k := range b {
		if fits(k) {
			return k
		}
	}
	return -1
}

func within(p, q geometry.Point, tolerance float64) bool { return p.Distance(q) <= tolerance }
