package solid

import (
	"math"

	"rodsheet/geometry"
)

// hair is the length in mm below which a drawing knows no difference: lines
// closer than this are one line, shorter pieces are not drawn.
const hair = 1e-6

// parallel is the sine of the angle below which directions count as the same.
const parallel = 1e-9

// A View looks at the parts along parallel lines, square to the paper. Right
// and Up are the axes of the paper, Out points from the parts to the viewer;
// the three are unit vectors square to each other.
type View struct{ Right, Up, Out Vec }

// Look returns the View of a viewer who stands far off in direction from. Up
// on the paper is the direction up as far as the view shows it; up must not
// run along from.
func Look(from, up Vec) View {
	out := from.Unit()
	right := up.Cross(out).Unit()
	return View{right, out.Cross(right), out}
}

// Plan looks straight down: x to the right, y up the paper.
func Plan() View { return Look(V(0, 0, 1), V(0, 1, 0)) }

// Front is the elevation from the front: x to the right, z up the paper.
func Front() View { return Look(V(0, -1, 0), V(0, 0, 1)) }

// Side is the elevation from the right-hand side: y to the right, z up the paper.
func Side() View { return Look(V(1, 0, 0), V(0, 0, 1)) }

// Point returns where p falls on the paper.
func (v View) Point(p Vec) geometry.Point { return geometry.Pt(p.Dot(v.Right), p.Dot(v.Up)) }

// A Scene is parts to be looked at, with their edges, which are the same from
// everywhere.
type Scene struct {
	parts []Part
	edges []Edge
}

// NewScene returns the scene of the parts.
func NewScene(parts []Part) Scene {
	s := Scene{parts: parts}
	for _, p := range parts {
		s.edges = append(s.edges, p.Edges()...)
	}
	return s
}

// Project draws the parts of a scene that is looked at once.
func Project(parts []Part, v View) (visible, hidden []geometry.Segment) {
	return NewScene(parts).Project(v)
}

// Project draws the edges of the parts as v shows them: visible ones, and
// those that some part hides. Lines that fall on one another are drawn once,
// and a hidden line is left out where a visible one covers it. Where two
// parts clash, the lines in which their surfaces cross are not drawn.
func (s Scene) Project(v View) (visible, hidden []geometry.Segment) {
	front := math.Inf(-1)
	screens := make([]screen, len(s.parts))
	for i, p := range s.parts {
		screens[i] = v.screen(p)
		front = math.Max(front, screens[i].room.Max.Z)
	}
	var inks []ink
	for _, e := range s.edges {
		if flat := v.segment(e); flat.Length() > hair {
			inks = append(inks, ink{flat, v.curtain(e, front).shadows(screens)})
		}
	}
	return tidy(inks)
}

func (v View) segment(e Edge) geometry.Segment {
	return geometry.Segment{A: v.Point(e.A), B: v.Point(e.B)}
}
