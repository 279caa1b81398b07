package aprons

import (
	"math"
	"slices"

	"rodsheet/geometry/joint"
	"rodsheet/geometry/lists"
	"rodsheet/geometry/measure"
	"rodsheet/geometry/solid"
)

// A Pass is one cut at the saw, in the frame of the part that is cut: it lies with its
// outer side on the table, or turned over.
type Pass struct {
	ID     measure.ID
	Along  solid.Vec // towards the waste, an axis of the frame
	Turned bool      // the other side lies on the table
	Saw    joint.SawCut
	// At is where the blade meets the outer side on the line of the frame that runs
	// along, mm.
	At   float64
	Deep float64 // how deep it cuts square to the side that lies on the table; 0: through
}

// down returns the normal of the side that lies on the table.
func (p Pass) down() solid.Vec {
	if p.Turned {
		return solid.V(0, 0, 1)
	}
	return solid.V(0, 0, -1)
}

// newPass reads the cut of a plane, given in the frame of the part with the waste
// outside.
func newPass(id measure.ID, along solid.Vec, turned bool, plane solid.Plane, deep float64) Pass {
	p := Pass{ID: id, Along: along, Turned: turned, Deep: deep}
	p.Saw = joint.SawCutOf(along, p.down(), plane.N)
	p.At = plane.D / plane.N.Dot(along)
	return p
}

// turned returns the same cut with the part turned over.
func (p Pass) turned() Pass { return newPass(p.ID, p.Along, !p.Turned, p.plane(), p.Deep) }

// overPart returns the same cut with the part lying so that the blade leans over it: on the
// mitre gauge that leaves the waste free.
func (p Pass) overPart() Pass {
	if p.Saw.Tilt >= -1e-12 {
		return p
	}
	return p.turned()
}

// fromFence returns the same cut with the part lying so that the blade leans away from it,
// and from the rip fence behind it: else the part is shut in under the blade.
func (p Pass) fromFence() Pass {
	if p.Saw.Tilt <= 1e-12 {
		return p
	}
	return p.turned()
}

// plane returns the plane of the cut from its settings.
func (p Pass) plane() solid.Plane {
	n, up := p.Saw.Normal(), p.down().Mul(-1)
	left := up.Cross(p.Along)
	return solid.Through(p.Along.Mul(p.At), p.Along.Mul(n.X).Add(left.Mul(n.Y)).Add(up.Mul(n.Z)))
}

// moved returns a plane of the room in a frame.
func (f frame) moved(p solid.Plane) solid.Plane {
	n := solid.V(p.N.Dot(f.x), p.N.Dot(f.y), p.N.Dot(f.z))
	return solid.Plane{N: n, D: p.D - p.N.Dot(f.o)}
}

var (
	alongX = solid.V(1, 0, 0)
	alongY = solid.V(0, 1, 0)
)

// end returns the plane in which a tenon ends, its rail inside.
func (r Rail) end(k int) solid.Plane {
	if long := r.Row.Of.Long; long > 0 {
		return r.Ends[k].bluntAt(long)
	}
	return inward(r.Ends[k].meets, tenonRoom)
}

// stop returns how far the blade stands from the tip of the end that is sawn first, along
// the gauge, as it saws the other end; longTop says that the tip is at the top of the rail.
//
// The tip lies on the longer edge: at the table, since the blade leans over the part, or on
// the other side where the edge is bevelled more than the blade leans. For the other end that
// edge meets the gauge at the table or on its other side, where the blade passes sooner or
// later.
func (r Rail) stop(p Pass) (mm float64, longTop bool) {
	f, end, thick := r.frame(), p.plane(), r.Row.Of.Thickness
	table, over := 0.0, thick
	if p.Turned {
		table, over = over, table
	}
	longTop = end.N.Y*end.N.X < 0
	edge, most := f.moved(r.downTo(0)), math.Min
	if longTop {
		edge, most = f.moved(r.upTo(0)), math.Max
	}
	at := func(z float64) float64 { return (edge.D - edge.N.Z*z) / edge.N.Y }
	half := func(y, z float64) float64 { return (end.D - end.N.Y*y - end.N.Z*z) / end.N.X }
	tip := math.Max(half(at(table), table), half(at(over), over))
	return tip + half(most(at(table), at(over)), table), longTop
}

// Passes returns the cuts of a rail in working order: its edges, its left end, the
// shoulder there on the outer side and on the frame side. The right end is the mirror
// image of it.
func (r Rail) Passes() []Pass {
	f := r.frame()
	outer, _ := r.Row.Cheeks()
	shoulder := f.moved(r.Ends[left].shoulder)
	var out []Pass
	if top := f.moved(r.upTo(0)); math.Abs(top.N.Z) > 1e-9 {
		out = append(out,
			newPass("underside", alongY.Mul(-1), false, f.moved(r.downTo(0)), 0).fromFence(),
			newPass("top", alongY, false, top, 0).fromFence())
	}
	return append(out,
		newPass("end", alongX, false, f.moved(r.end(left)), 0).overPart(),
		newPass("shoulder-outer", alongX, false, shoulder, outer),
		newPass("shoulder-frame", alongX, true, shoulder, outer),
	)
}

// Passes returns the cuts of a leg in working order: the edges of its section beside the
// outer side that it lies on, its foot and its head.
func (l leg) Passes() []Pass {
	f := l.frame()
	head, _ := level(l.at.Z)
	_, foot := level(0)
	var out []Pass
	for _, edge := range []struct {
		id    measure.ID
		along solid.Vec
		plane solid.Plane
	}{
		{"outer-edge", alongY.Mul(-1), solid.Through(l.at, l.outer[before])},
		{"rail-edge", alongY, l.straight(own)},
	} {
		if p := f.moved(edge.plane); math.Abs(p.N.Z) > 1e-9 {
			out = append(out, newPass(edge.id, edge.along, false, p, 0).fromFence())
		}
	}
	sole := newPass("foot", alongX.Mul(-1), false, f.moved(foot), 0).overPart()
	// Turned end over end: the same side stays against the gauge, the other one lies down.
	return append(out, sole, newPass("head", alongX, !sole.Turned, f.moved(head), 0))
}

// taperPass is sawing a side that takes rails to its taper, an outer side down: the blade
// leans as that side did before.
func (l leg) taperPass() Pass {
	return newPass("taper", alongY, false, l.frame().moved(l.straight(own)), 0)
}

// legPasses returns the cuts of a leg that are set at the saw: only those with four sides are
// ripped to their section, others are planed to it.
func (m Model) legPasses(i int) []Pass {
	out := slices.DeleteFunc(m.legs[i].Passes(), func(p Pass) bool {
		return len(m.sides) != 4 && p.ID != "foot" && p.ID != "head"
	})
	if m.legs[i].taper.Top > 0 {
		out = append(out, m.legs[i].taperPass())
	}
	return out
}

// TaperAngle returns how far a tapered side runs to the edge, seen on the outer side
// beside it, 0 where the legs are not tapered; narrow is what is left of that outer side
// at the foot, wide what it has at the start.
//
// At an angle c to the tapered side an outer side is 1/sin c as wide as the leg is thick.
func (l leg) TaperAngle() (rad, wide, narrow float64) {
	c := -l.outer[own].Dot(l.inner[own])
	sin := math.Sqrt(1 - c*c)
	wide = l.size / sin
	if l.taper.Top == 0 {
		return 0, wide, wide
	}
	return math.Atan(l.taper.Loss() / l.taper.Run() / sin), wide, l.taper.Foot / sin
}

// passes are those of all sorts of parts that are set at the saw, in working order.
func (m Model) passes() []Pass {
	var out []Pass
	for i := range m.LegSorts() {
		out = append(out, m.legPasses(i)...)
	}
	for _, row := range m.Rows {
		for _, r := range m.sorts(row) {
			out = append(out, r.Passes()...)
		}
	}
	return out
}

// steepest returns the most that the blade is tilted in any pass.
func (m Model) steepest() float64 {
	return lists.Most(m.passes(), func(p Pass) float64 { return math.Abs(p.Saw.Tilt) })
}
