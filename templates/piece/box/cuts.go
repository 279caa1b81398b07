package box

import (
	"math"

	"rodsheet/geometry"
	"rodsheet/geometry/solid"
)

// An endCut is one end sawn on the mitre gauge, in the frame of assembly.Crosscut: the part
// left of the blade, its longer face down, so that the blade leans over the part and the
// waste falls free.
type endCut struct {
	sort
	outerDown bool
	upper     bool    // the upper edge lies against the gauge, else the lower one
	swing     float64 // of the blade off square, rad; positive: to the right
	tilt      float64 // of the blade towards the part, rad
	stop      float64 // along the fence from the blade; 0: none
}

// endCuts are both ends of a sort: the one with the shorter edge against the gauge, then,
// turned round on the table, the other with the longer one and the stop at its tip.
func (b Box) endCuts(s sort) [2]endCut {
	outer := b.tilt(s.first) >= 0
	c := endCut{sort: s, outerDown: outer, tilt: math.Abs(b.tilt(s.first)), swing: b.corner(s.first).OffSquare()}
	low, high := b.downEdges(s.first, outer)
	lower, upper := c, c
	upper.upper, upper.swing = true, -c.swing
	if high >= low {
		upper.stop = high
		return [2]endCut{lower, upper}
	}
	lower.stop = low
	return [2]endCut{upper, lower}
}

// down returns the corners of the face that lies on the table, in the frame of table,
// counter-clockwise from its lower left.
func (b Box) down(i int, outer bool) []geometry.Point {
	inward := 0.0
	if !outer {
		inward = b.thickness()
	}
	face, m := b.faces[i].inside(inward), b.table(i, outer)
	var out []geometry.Point
	lowest, highest := b.edges(i)
	for _, z := range []float64{lowest, highest} {
		edge := b.edgePlane(i, z)
		for _, j := range []int{b.before(i), b.next(i)} {
			p := m.Apply(solid.Meet(face, edge, b.end(i, j)))
			out = append(out, geometry.Pt(p.X, p.Y))
		}
	}
	if out[0].X > out[1].X {
		out[0], out[1], out[2], out[3] = out[1], out[0], out[3], out[2]
	}
	return []geometry.Point{out[0], out[1], out[3], out[2]}
}

// edgePlane returns the plane of an edge of side i as it comes from the saw, whose arris on
// the outer face is at that height: level, or square to the face where it is planed later.
func (b Box) edgePlane(i int, z float64) solid.Plane {
	f := b.faces[i]
	if b.dovetailed() {
		return solid.Through(f.out.Mul(f.apothem).Add(f.up().Mul(z/math.Cos(f.slope))), f.up())
	}
	return solid.Plane{N: solid.V(0, 0, 1), D: z}
}

// downEdges returns how long the lower and the upper edge of that face are.
func (b Box) downEdges(i int, outer bool) (low, high float64) {
	c := b.down(i, outer)
	return c[1].X - c[0].X, c[2].X - c[3].X
}

// board returns the face of the board that lies on the table before a cut, in the frame of
// assembly.Crosscut. Before the second cut the first end is sawn.
func (b Box) board(c endCut) []geometry.Point {
	face := b.down(c.first, c.outerDown)
	half := b.longest(c.first)/2 + b.trim()
	low, high := face[0].Y, face[2].Y
	blank := geometry.Box(-half, low, half, high).Corners()
	if c.stop > 0 {
		// The end sawn first is now the left one on the gauge.
		sawn := geometry.Segment{A: face[3], B: face[0]}
		if c.upper {
			sawn = geometry.Segment{A: face[1], B: face[2]}
		}
		blank = geometry.LeftOf(blank, sawn)
	}
	turn, edge := geometry.Identity(), face[1]
	if c.upper {
		turn, edge = geometry.Rotate(math.Pi), face[3]
	}
	at := turn.Apply(edge)
	return turn.Then(geometry.Translate(geometry.Pt(-at.X, -at.Y))).ApplyAll(blank)
}

// A ripCut leaves the edges of a sort level: the blade tilted by the slope, away from the
// fence. Frame: that of assembly.Rip, the fence on the left at x = 0, the sawn edge against
// it.
//
// The upper face comes out to the right of the lower one. Of a side that slopes outward the
// outer face stands higher up the slope than the hollow one: so the lower edge is sawn with
// the outer side down, and the upper edge with the hollow side down.
type ripCut struct {
	sort
	tilt       float64 // rad
	width      float64 // from the fence to the blade at the table
	outerFirst bool    // the outer side lies down for the lower edge
}

func (b Box) ripCut(s sort) ripCut {
	slope := b.faces[s.first].slope
	if b.dovetailed() { // the level edges are planed last
		slope = 0
	}
	return ripCut{s, math.Abs(slope), b.ripped(s.first), slope >= 0}
}

// ripped returns how wide side i is up its outer face when it comes from the saw.
func (b Box) ripped(i int) float64 {
	if b.dovetailed() {
		return b.blank(i)
	}
	return b.wide(i)
}

// section returns the board before the second rip, seen along it.
func (r ripCut) section(thick, over float64) []geometry.Point {
	lean := thick * math.Tan(r.tilt)
	right := r.width + lean + over
	return []geometry.Point{{}, geometry.Pt(right, 0), geometry.Pt(right, thick), geometry.Pt(lean, thick)}
}

// line is where the blade leaves the part.
func (r ripCut) line(thick float64) geometry.Segment {
	return geometry.Segment{A: geometry.Pt(r.width, 0), B: geometry.Pt(r.width+thick*math.Tan(r.tilt), thick)}
}
