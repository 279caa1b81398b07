package drawings

import (
	"math"

	"rodsheet/geometry"
	"rodsheet/templates"
)

// beyond is how far past what is drawn of a part its edges and centre lines
// run on, in mm.
const beyond = 30.0

// grainArrow draws an arrow along the grain about the point mid.
func grainArrow(d *templates.Drawing, mid, along geometry.Point, long float64) {
	along = along.Unit()
	tail, head := mid.Sub(along.Mul(long/2)), mid.Add(along.Mul(long/2))
	arrow(d, tail, head)
	d.LabelLine(tail, head, tag("grain"))
}

// arrow draws a line with a head.
func arrow(d *templates.Drawing, tail, head geometry.Point) {
	back := tail.Sub(head).Unit().Mul(4)
	side := back.Perp().Mul(0.25)
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
