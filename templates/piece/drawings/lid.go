package drawings

import (
	"math"

	"rodsheet/geometry"
	"rodsheet/geometry/solid"
)

// A lid lies level over the frame: a pad or the top. Round ones are cylinders,
// of which no picture shows the facets.
type lid struct {
	outline   []geometry.Point // convex, counter-clockwise in plan
	low, high float64          // over the floor
}

// ends returns the lower and the upper outline as a view shows them.
func (l lid) ends(v solid.View) (lower, upper []geometry.Point) {
	for _, c := range l.outline {
		lower = append(lower, v.Point(solid.V(c.X, c.Y, l.low)))
		upper = append(upper, v.Point(solid.V(c.X, c.Y, l.high)))
	}
	return lower, upper
}

// silhouette returns what the lid covers on the paper. The lid hides just
// that: a line below it meets the lid on its way to a viewer above wherever
// the two fall together.
func (l lid) silhouette(v solid.View) []geometry.Point {
	lower, upper := l.ends(v)
	return geometry.Hull(append(lower, upper...))
}

// edges returns what is seen of the lid from above or from the side: the
// silhouette, the upper outline and the corners between near sides.
func (l lid) edges(v solid.View) []geometry.Segment {
	lower, upper := l.ends(v)
	out := around(l.silhouette(v))
	if v.Out.Z < grazing {
		return append(out, l.corners(v, lower, upper)...)
	}
	if v.Out.Z > 1-grazing {
		return out
	}
	for i := range upper {
		j := (i + 1) % len(upper)
		if l.faces(v, i) { // the others are part of the silhouette
			out = append(out, geometry.Segment{A: upper[i], B: upper[j]})
		}
	}
	return append(out, l.corners(v, lower, upper)...)
}

// grazing is the sine of the angle up to which a view counts as an elevation or
// a plan, and a side as seen edge on.
const grazing = 1e-9

// faces reports whether side i of the lid looks towards the viewer.
func (l lid) faces(v solid.View, i int) bool {
	side := l.outline[(i+1)%len(l.outline)].Sub(l.outline[i])
	return v.Out.X*side.Y-v.Out.Y*side.X > grazing*side.Norm()
}

// corners returns the upright edges that stand between two sides that both
// look towards the viewer, where the outline turns by more than an arc does.
func (l lid) corners(v solid.View, lower, upper []geometry.Point) []geometry.Segment {
	const sharp = 20 * math.Pi / 180
	var out []geometry.Segment
	n := len(l.outline)
	for i, c := range l.outline {
		before := (i + n - 1) % n
		in, on := c.Sub(l.outline[before]), l.outline[(i+1)%n].Sub(c)
		turn := math.Atan2(in.Cross(on), in.Dot(on))
		if turn > sharp && l.faces(v, before) && l.faces(v, i) {
			out = append(out, geometry.Segment{A: lower[i], B: upper[i]})
		}
	}
	return out
}

// around returns the sides of a polygon.
func around(polygon []geometry.Point) []geometry.Segment {
	out := make([]geometry.Segment, len(polygon))
	for i, c := range polygon {
		out[i] = geometry.Segment{A: c, B: polygon[(i+1)%len(polygon)]}
	}
	return out
}
