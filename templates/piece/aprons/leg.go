package aprons

import (
	"rodsheet/geometry"
	"rodsheet/geometry/joint"
	"rodsheet/geometry/lists"
	"rodsheet/geometry/solid"
	"rodsheet/templates/piece/design"
)

// A leg stands at a corner of the frame. Its corner arris runs through the corner; two
// outer sides meet there, and each of the two others takes the rails of one side.
type leg struct {
	corner int
	at     solid.Vec    // the corner arris at the head
	along  solid.Vec    // down the leg, of length 1
	outer  [2]solid.Vec // normals of the outer sides: of the side before, of its own
	inner  [2]solid.Vec // of the sides that take the rails of the side before, of its own
	taper  joint.Taper  // of either side that takes rails; Top is 0 where there is none
	size   float64
}

// The two sides that meet at a corner, as a leg counts them: at the right end of the
// side before stands its leg, at the left end of its own.
const (
	before = iota
	own
)

// newLeg returns leg i without its taper.
//
// The planes of the two sides, with normals A and B, meet in its corner arris, which
// runs along A × B. With the faces to the room its outer sides lie in these planes, and
// the side that takes a rail holds the leg and the level direction square to the
// rail. Square stock stands with one diagonal in the plane of the lean: with d in
// that plane square to the leg and e level, its outer sides look along d ± e.
func (m Model) newLeg(i int, corner geometry.Point) leg {
	a, b := m.sides[m.before(i)], m.sides[i]
	l := leg{
		corner: i, at: solid.V(corner.X, corner.Y, m.Head), size: m.Design.Frame.Legs.Size,
		along: a.plane.N.Cross(b.plane.N).Unit().Mul(-1),
	}
	if m.Design.Frame.Legs.Faces == design.ToSightline {
		out := geometry.Pt(l.along.X, l.along.Y)
		if out.Norm() < 1e-9 {
			out = a.out.Add(b.out) // a plumb leg looks along the middle of its corner
		}
		d := flat(out.Unit())
		d = d.Sub(l.along.Mul(d.Dot(l.along))).Unit()
		e := d.Cross(l.along).Unit()
		one, two := d.Add(e).Unit(), d.Sub(e).Unit()
		if one.Dot(a.plane.N) < two.Dot(a.plane.N) {
			one, two = two, one
		}
		l.outer = [2]solid.Vec{before: one, own: two}
		l.inner = [2]solid.Vec{before: two.Mul(-1), own: one.Mul(-1)}
		return l
	}
	towards := func(s side, rail geometry.Point) solid.Vec {
		n := l.along.Cross(flat(s.out)).Unit()
		if n.Dot(flat(rail)) < 0 {
			return n.Mul(-1)
		}
		return n
	}
	l.outer = [2]solid.Vec{before: a.plane.N, own: b.plane.N}
	l.inner = [2]solid.Vec{before: towards(a, a.along.Mul(-1)), own: towards(b, b.along)}
	return l
}

// length returns the length of the leg along its corner arris.
func (l leg) length() float64 { return l.at.Z / -l.along.Z }

// down returns how far below the head a point lies, along the leg.
func (l leg) down(p solid.Vec) float64 { return p.Sub(l.at).Dot(l.along) }

// span returns how far below the head the first and the last of some points lie.
func (l leg) span(points []solid.Vec) (first, last float64) {
	first, last = l.down(points[0]), l.down(points[0])
	for _, p := range points[1:] {
		first, last = min(first, l.down(p)), max(last, l.down(p))
	}
	return first, last
}

// straight returns one of the sides that take rails, as it is above the taper.
func (l leg) straight(k int) solid.Plane {
	return solid.Through(l.at.Add(l.inner[k].Mul(l.size)), l.inner[k])
}

// tapered returns the same side below the start of the taper.
//
// It turns from the straight side by the loss of a mm along the leg, about the line
// that is size away from the arris at the start.
func (l leg) tapered(k int) solid.Plane {
	if l.taper.Top == 0 {
		return l.straight(k)
	}
	loss := l.taper.Loss() / l.taper.Run()
	at := l.at.Add(l.along.Mul(l.taper.Start)).Add(l.inner[k].Mul(l.size))
	return solid.Through(at, l.inner[k].Add(l.along.Mul(loss)))
}

// planes are those of the finished leg without its mortises.
func (l leg) planes() []solid.Plane {
	head, _ := level(l.at.Z)
	_, foot := level(0)
	out := []solid.Plane{head, foot}
	for k := range l.outer {
		out = append(out, solid.Through(l.at, l.outer[k]), l.straight(k))
		if l.taper.Top > 0 {
			out = append(out, l.tapered(k))
		}
	}
	return out
}

// taperClear is what a taper starts below the aprons where the design does not say
// (common practice, no source).
const taperClear = 10.0

// taper gives every leg its taper, which begins below the aprons.
func (m *Model) taper() {
	f := m.Design.Frame.Legs
	if f.Foot == 0 {
		return
	}
	for i := range m.legs {
		l := &m.legs[i]
		start := f.Start
		if start == 0 {
			start = m.below(m.Rows[0], i) + taperClear
		}
		l.taper = joint.Taper{Length: l.length(), Top: l.size, Foot: f.Foot, Start: start, Faces: joint.AdjacentFaces}
	}
}

// below returns how far below the head of leg i the lower of the two rails of a row ends.
func (m Model) below(row *Row, i int) float64 {
	_, a := m.legs[i].span(row.Rails[i].Ends[left].Mouth[:])
	_, b := m.legs[i].span(row.Rails[m.before(i)].Ends[right].Mouth[:])
	return max(a, b)
}

// Section returns the corners of a leg square to its length at the head, and their
// angles, beginning at the corner arris and going round by its own outer side; the plan
// is that of one who looks at it from above, the corner arris at the origin and its own
// outer side along x.
func (l leg) Section() []geometry.Point {
	normals := []solid.Vec{l.outer[own], l.inner[own], l.inner[before], l.outer[before]}
	offsets := []float64{0, l.size, l.size, 0}
	x := l.along.Cross(l.outer[own]).Unit().Mul(-1)
	if x.Dot(l.inner[own]) < 0 {
		x = x.Mul(-1)
	}
	y := l.outer[own].Mul(-1)
	point := func(i, j int) geometry.Point {
		p := meet(normals[i], offsets[i], normals[j], offsets[j])
		return geometry.Pt(p.Dot(x), p.Dot(y))
	}
	return []geometry.Point{point(3, 0), point(0, 1), point(1, 2), point(2, 3)}
}

// meet returns the point square to the leg in which two planes along it meet: the
// p in the span of m and n with m·p = a and n·p = b.
func meet(m solid.Vec, a float64, n solid.Vec, b float64) solid.Vec {
	c := m.Dot(n)
	det := 1 - c*c
	return m.Mul((a - b*c) / det).Add(n.Mul((b - a*c) / det))
}

// LevelSection returns the same four corners of a level section at the head, in the room.
func (l leg) LevelSection() []geometry.Point {
	head, _ := level(l.at.Z)
	s := block(append([]solid.Plane{head}, l.sides()...)...)
	for _, f := range s.Faces() {
		if f.Plane.N.Z > 1-1e-9 {
			return lists.Map(f.Corners, func(p solid.Vec) geometry.Point { return geometry.Pt(p.X, p.Y) })
		}
	}
	return nil
}

// sides are the four sides of the leg before it is tapered.
func (l leg) sides() []solid.Plane {
	var out []solid.Plane
	for k := range l.outer {
		out = append(out, solid.Through(l.at, l.outer[k]), l.straight(k))
	}
	return out
}
