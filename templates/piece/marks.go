package piece

import (
	"math"

	"rodsheet/geometry"
	"rodsheet/templates"
)

// beyond is how far past what is drawn of a part its edges and centre lines
// run on, in mm.
const beyond = 30.0

// keep returns the part of a convex polygon where n·q ≤ c.
func keep(polygon []geometry.Point, n geometry.Point, c float64) []geometry.Point {
	var out []geometry.Point
	for i, q := range polygon {
		r := polygon[(i+1)%len(polygon)]
		hq, hr := n.Dot(q)-c, n.Dot(r)-c
		if hq <= 0 {
			out = append(out, q)
		}
		if hq < 0 && hr > 0 || hq > 0 && hr < 0 {
			out = append(out, q.Lerp(r, hq/(hq-hr)))
		}
	}
	return out
}

// leftOf returns the part of a convex polygon to the left of a line, on the way
// from its A to its B.
func leftOf(polygon []geometry.Point, line geometry.Segment) []geometry.Point {
	right := line.A.Sub(line.B).Turn()
	return keep(polygon, right, right.Dot(line.A))
}

// cropped returns the part of s inside a convex polygon, corners
// counter-clockwise, and reports whether there is one.
func cropped(s geometry.Segment, convex []geometry.Point) (geometry.Segment, bool) {
	d := s.B.Sub(s.A)
	lo, hi := 0.0, 1.0
	for i, q := range convex {
		side := convex[(i+1)%len(convex)].Sub(q)
		if side.Norm() < 1e-9 {
			continue // two corners that are one but for rounding
		}
		at, slope := side.Cross(s.A.Sub(q)), side.Cross(d)
		switch {
		case slope > 0:
			lo = math.Max(lo, -at/slope)
		case slope < 0:
			hi = math.Min(hi, -at/slope)
		case at < 0:
			return s, false
		}
	}
	return geometry.Segment{A: s.A.Add(d.Mul(lo)), B: s.A.Add(d.Mul(hi))}, lo < hi
}

// grainArrow draws an arrow along the grain about the point mid.
func grainArrow(d *templates.Drawing, mid, along geometry.Point, long float64) {
	along = along.Unit()
	tail, head := mid.Sub(along.Mul(long/2)), mid.Add(along.Mul(long/2))
	arrow(d, tail, head)
	d.LabelLine(tail, head, "grain")
}

// arrow draws a line with a head.
func arrow(d *templates.Drawing, tail, head geometry.Point) {
	back := tail.Sub(head).Unit().Mul(4)
	side := back.Turn().Mul(0.25)
	d.Line(templates.Construction, tail, head)
	d.Line(templates.Construction, head.Add(back).Add(side), head, head.Add(back).Sub(side))
}

// cross marks a centre with two short centre lines.
func cross(d *templates.Drawing, c geometry.Point, arm float64) {
	d.Line(templates.Centre, c.Sub(geometry.Pt(arm, 0)), c.Add(geometry.Pt(arm, 0)))
	d.Line(templates.Centre, c.Sub(geometry.Pt(0, arm)), c.Add(geometry.Pt(0, arm)))
}

// circle draws a whole circle.
func circle(d *templates.Drawing, role templates.Role, c geometry.Point, radius float64) {
	d.Line(role, geometry.Arc(c, radius, 0, 2*math.Pi)...)
}

// relabelled returns d with the labels that are keys of words replaced; an
// empty word takes the label away.
func relabelled(d templates.Drawing, words map[string]string) templates.Drawing {
	var labels []templates.Label
	for _, l := range d.Labels {
		if text, ok := words[l.Text]; ok {
			l.Text = text
		}
		if l.Text != "" {
			labels = append(labels, l)
		}
	}
	d.Labels = labels
	return d
}
