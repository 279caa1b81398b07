package drawings

import (
	"math"
	"slices"

	"rodsheet/geometry"
	"rodsheet/geometry/solid"
	"rodsheet/templates"
	"rodsheet/templates/piece/kind"
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
	if v.Out.Z > 1-grazing {
		return out
	}
	for i, side := range around(upper) {
		if v.Out.Z >= grazing && l.looks(v, i) { // the others are part of the silhouette
			out = append(out, side)
		}
	}
	return append(out, l.corners(v, lower, upper)...)
}

// faces returns the sides that look towards a viewer above, neighbours of one tone
// as one, and over them the upper face.
func (l lid) faces(v solid.View) []templates.Area {
	lower, upper := l.ends(v)
	var out []templates.Area
	n := len(upper)
	for i := range n {
		j := (i + 1) % n
		if !l.looks(v, i) {
			continue
		}
		tone := l.tone(v, i)
		if k := len(out) - 1; k >= 0 && l.looks(v, (i+n-1)%n) && out[k].Tone == tone {
			out[k].Points = slices.Insert(out[k].Points, len(out[k].Points)/2, lower[j], upper[j])
			continue
		}
		out = append(out, templates.Area{Tone: tone, Points: []geometry.Point{lower[i], lower[j], upper[j], upper[i]}})
	}
	return append(out, templates.Area{Tone: templates.White, Points: upper})
}

// tone returns the tone of side i.
func (l lid) tone(v solid.View, i int) templates.Tone {
	side := l.outline[(i+1)%len(l.outline)].Sub(l.outline[i])
	return kind.ToneOf(solid.V(side.Y, -side.X, 0).Unit(), v)
}

// glints returns the two short strokes on the upper face that mark glass, in the
// quarter to the right where little of the frame lies under them.
func (l lid) glints(v solid.View) []geometry.Segment {
	if v.Out.Z < grazing {
		return nil
	}
	room := geometry.Bounds(l.outline...)
	long := math.Min(room.Width(), room.Height()) / 8
	var out []geometry.Segment
	for i := range 2 {
		at := room.Centre().Add(geometry.Polar(1.2*long, math.Pi/4)).Add(geometry.Pt(1, -1).Mul(float64(i) * long / 4))
		mid := func(along float64) geometry.Point {
			q := at.Add(geometry.Polar(along, math.Pi/4))
			return v.Point(solid.V(q.X, q.Y, l.high))
		}
		out = append(out, geometry.Segment{A: mid(-long / 2), B: mid(long / 2)})
	}
	return out
}

// grazing is the sine of the angle up to which a view counts as an elevation or
// a plan, and a side as seen edge on.
const grazing = 1e-9

// looks reports whether side i of the lid looks towards the viewer.
func (l lid) looks(v solid.View, i int) bool {
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
		if turn > sharp && l.looks(v, before) && l.looks(v, i) {
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
