package page

import "rodsheet/geometry"

// Outline returns the points to join up and reports whether the last of them
// is to be joined to the first, as it is where a stroke of three sides or
// more comes back to its beginning.
func (s Stroke) Outline() (points []geometry.Point, closed bool) {
	last := len(s.Points) - 1
	if last > 2 && s.Points[0] == s.Points[last] {
		return s.Points[:last], true
	}
	return s.Points, false
}
