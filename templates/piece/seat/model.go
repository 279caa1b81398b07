// Package seat is the kind of piece whose legs are staked into a slab: stools and benches.
// The slab is bored square to nothing: every leg leans by its resultant along its
// sightline, and the feet are cut level once it stands.
package seat

import (
	"cmp"
	"math"
	"sync"

	"rodsheet/geometry"
	"rodsheet/geometry/joint"
	"rodsheet/geometry/measure"
	"rodsheet/geometry/solid"
	"rodsheet/templates/piece/design"
)

// A Seat is one size worked out.
//
// Frame of the slab: its underside is z = 0, the middle of its outline the origin, x runs to
// the right and y away from the front. It lies in the room as room says, its back lower
// by tilt.
type Seat struct {
	design design.Design
	rim    joint.Top
	tilt   float64 // rad
	legs   []leg   // from left to right, the front row first
	rods   []rod
	built  func() built
}

// A built seat is its legs and stretchers as solids, which take longer to make than all the
// rest, the volume of all wood in mm³ and its centre, in the frame of the slab.
type built struct {
	legs, rods []solid.Part
	volume     float64
	centre     solid.Vec
}

// A leg is staked into the slab. Its axis runs down from at, the place on the face that
// is bored, along the unit vector axis.
type leg struct {
	sort  sort
	side  float64 // −1 on the left, 1 on the right, 0 on the centre line
	at    solid.Vec
	axis  solid.Vec
	lean  joint.Compound // the foot outward: forward or backward, and to its side
	stake joint.Stake
	foot  float64 // along the axis from at to the floor
}

// A sort is what the legs of a seat differ by but for their hand: the row, and of a row
// of three or four whether they stand inside.
type sort struct {
	back, inner bool
}

// row returns the row of a sort.
func (s sort) row(d design.Design) design.LegRow {
	if s.back {
		return d.Seat.Back
	}
	return d.Seat.Front
}

// outward is 1 where the row leans backward and −1 where it leans forward.
func (s sort) outward() float64 {
	if s.back {
		return 1
	}
	return -1
}

// newSeat works a design out whose figures stand within their limits.
func newSeat(d design.Design) Seat {
	s := Seat{design: d, rim: rim(d.Seat)}
	fall := d.Seat.Height - cmp.Or(d.Seat.BackHeight, d.Seat.Height)
	s.tilt = math.Asin(math.Max(-1, math.Min(1, fall/(s.backEdge()-s.frontEdge()))))
	for _, back := range []bool{false, true} {
		n := sort{back: back}.row(d).Legs
		for i := range n {
			s.legs = append(s.legs, s.stake(back, i, n))
		}
	}
	s.rods = s.stretchers()
	s.built = sync.OnceValue(s.build)
	return s
}

// rim returns the outline of the seat from above.
func rim(s design.Seat) joint.Top {
	w, d := s.Width/2, s.Depth/2
	switch s.Shape {
	case design.RoundSeat:
		return joint.Top{Diameter: s.Diameter}
	case design.OvalSeat:
		return joint.Top{Corners: ellipse(s.Width, s.Depth)}
	case design.ShieldSeat:
		// The rim is a band round three circles: two at the corners of the front, one that
		// touches the back.
		r, b := s.Corner, s.BackWidth/2
		var all []geometry.Point
		for _, c := range []struct {
			at     geometry.Point
			radius float64
		}{{geometry.Pt(r-w, r-d), r}, {geometry.Pt(w-r, r-d), r}, {geometry.Pt(0, d-b), b}} {
			if c.radius == 0 {
				all = append(all, c.at)
				continue
			}
			all = append(all, geometry.Arc(c.at, c.radius, 0, 2*math.Pi)...)
		}
		return joint.Top{Corners: geometry.Hull(all)}
	case design.FreeSeat:
		return joint.Top{Corners: s.Points, Round: s.Corner}
	}
	top := joint.RectangleTop(s.Width, s.Depth)
	top.Round = s.Corner
	return top
}

// ellipse returns that of two axes along x and y.
func ellipse(x, y float64) []geometry.Point {
	if x >= y {
		return joint.Oval{Length: x, Width: y}.Outline(0)
	}
	out := joint.Oval{Length: y, Width: x}.Outline(0)
	for i, p := range out {
		out[i] = p.Perp()
	}
	return out
}

// frontEdge and backEdge are where the outline reaches farthest.
func (s Seat) frontEdge() float64 { return -s.rim.Support(geometry.Pt(0, -1)) }
func (s Seat) backEdge() float64  { return s.rim.Support(geometry.Pt(0, 1)) }

func (s Seat) thickness() float64 { return s.design.Seat.Thickness }

// bored is the height of the face that is bored.
func (s Seat) bored() float64 {
	if s.design.Seat.Mortise.Upper {
		return s.thickness()
	}
	return 0
}

// up is the direction up in the room. The room is that of assembly.Part, with the middle
// of the upper face over its origin.
func (s Seat) up() solid.Vec {
	sin, cos := math.Sincos(s.tilt)
	return solid.V(0, -sin, cos)
}

func (s Seat) room() solid.Affine3 {
	sin, cos := math.Sincos(s.tilt)
	t := s.thickness()
	return solid.Affine3{
		X: solid.V(1, 0, 0), Y: solid.V(0, cos, -sin), Z: solid.V(0, sin, cos),
		O: solid.V(0, -t*sin, s.design.Seat.Height+s.frontEdge()*sin-t*cos),
	}
}

// floor returns what lies above the floor.
func (s Seat) floor() solid.Plane {
	return solid.Plane{N: s.up().Mul(-1), D: s.room().O.Z}
}

// height returns that of a point of the slab's frame over the floor.
func (s Seat) height(p solid.Vec) float64 { return -s.floor().Height(p) }

// share returns where leg i of n stands in its row: −1 to 1 from the outermost on the
// left to that on the right.
func share(i, n int) float64 {
	if n == 1 {
		return 0
	}
	return 2*float64(i)/float64(n-1) - 1
}

// stake returns leg i of n of a row.
func (s Seat) stake(back bool, i, n int) leg {
	part := share(i, n)
	l := leg{sort: sort{back, n > 2 && math.Abs(part) < 1}}
	row, out := l.sort.row(s.design), l.sort.outward()
	if part != 0 {
		l.side = math.Copysign(1, part)
	}
	l.at = solid.V(part*row.Apart/2, out*row.From, s.bored())
	l.axis = s.axis(row, l.at, part, out)
	l.lean = joint.Compound{
		Rake:  math.Atan2(out*l.axis.Y, -l.axis.Z),
		Splay: math.Atan2(cmp.Or(l.side, 1)*l.axis.X, -l.axis.Z),
	}
	l.stake = joint.Stake{Compound: l.lean, Tilt: -out * s.tilt}
	l.foot = s.height(l.at) / -l.axis.Dot(s.up())
	return l
}

// axis returns the direction of a leg, downward.
//
// The tangents of the splays of a row are as its places, so its feet too stand equally far
// apart. By its foot a leg runs from its hole to that: on the floor, so far from the point
// below the middle of the upper face.
func (s Seat) axis(row design.LegRow, at solid.Vec, part, out float64) solid.Vec {
	lean := joint.Compound{Rake: row.FrontBack, Splay: row.Aside}
	switch row.By {
	case design.ByResultant:
		lean = joint.CompoundOf(row.FrontBack, row.Aside)
		if row.Legs == 1 {
			lean.Splay = 0
		}
	case design.ByFeet:
		m := s.room()
		inRoom := solid.V(part*cmp.Or(row.Aside, row.Apart)/2, out*row.FrontBack, 0).Sub(m.O)
		// The axes of the room are unit vectors square to each other: back by products.
		foot := solid.V(inRoom.Dot(m.X), inRoom.Dot(m.Y), inRoom.Dot(m.Z))
		return foot.Sub(at).Unit()
	}
	return solid.V(part*math.Tan(lean.Splay), out*math.Tan(lean.Rake), -1).Unit()
}

// point returns the point of the axis so far down from the face that is bored.
func (l leg) point(along float64) solid.Vec { return l.at.Add(l.axis.Mul(along)) }

// to returns how far along the axis a height of the slab's frame is.
func (l leg) to(z float64) float64 { return (l.at.Z - z) / -l.axis.Z }

// sightline returns the unit vector in the plane of the slab along which the leg leans; of
// a leg square to the slab that in which its row would.
func (l leg) sightline() geometry.Point {
	if p := geometry.Pt(l.axis.X, l.axis.Y); p.Norm() > 1e-12 {
		return p.Unit()
	}
	return geometry.Pt(0, l.sort.outward())
}

// frame takes a leg that stands on its axis, z down from the face that is bored, x towards
// its outer side, to its place.
//
// Square to the axis the outer side looks along (cos R along the sightline, sin R up).
func (l leg) frame() solid.Affine3 {
	sin, cos := math.Sincos(l.lean.Resultant())
	p := l.sightline()
	x := solid.V(cos*p.X, cos*p.Y, sin)
	return solid.Affine3{X: x, Y: l.axis.Cross(x), Z: l.axis, O: l.at}
}

// bore returns the hole of a leg as the face at a height cuts it.
func (s Seat) bore(l leg, z float64) joint.Bore {
	return joint.Bore{Radius: s.radius(l, l.to(z)), Lean: l.lean.Resultant(), Narrow: s.design.Seat.Mortise.Taper / 2}
}

// radius returns that of the tenon so far down its axis: as decided at the underside.
func (s Seat) radius(l leg, along float64) float64 {
	m := s.design.Seat.Mortise
	return m.Diameter/2 + (along-l.to(0))*math.Tan(m.Taper/2)
}

// tip returns where the tenon ends, along the axis: at the bottom of a blind hole, or
// where the middle of a through one meets the upper face.
func (s Seat) tip(l leg) float64 {
	if depth := s.design.Seat.Mortise.Depth; depth > 0 {
		return l.to(0) - s.bore(l, 0).BlindReach(depth)
	}
	return l.to(s.thickness())
}

// shoulder returns where the tenon begins, along the axis. It is square to the axis and its
// outer edge touches the underside, size/2·tan R below the middle of the hole. A round leg
// no thicker than its tenon has none that shows.
func (s Seat) shoulder(l leg) float64 {
	return l.to(0) + s.design.Seat.Legs.Size/2*math.Tan(l.lean.Resultant())
}

// size returns how thick a leg is across its flats so far down its axis.
func (s Seat) size(l leg, along float64) float64 {
	k := s.design.Seat.Legs
	from := s.shoulder(l)
	return k.Size + (cmp.Or(k.Foot, k.Size)-k.Size)*(along-from)/(l.foot-from)
}

// sorts returns one leg of each sort: the rightmost.
func (s Seat) sorts() []leg {
	var out []leg
	for i, l := range s.legs {
		if i+1 == len(s.legs) || s.legs[i+1].sort.back != l.sort.back {
			out = append(out, l) // the outermost, or the only one
			continue
		}
		if l.sort.inner && !s.legs[i+1].sort.inner {
			out = append(out, l)
		}
	}
	return out
}

// count returns how many legs are of a sort.
func (s Seat) count(of sort) int {
	n := 0
	for _, l := range s.legs {
		if l.sort == of {
			n++
		}
	}
	return n
}

// Decided is the design.
func (s Seat) Decided() design.Design { return s.design }

func (s Seat) unit() measure.Unit { return s.design.Unit }

// flat drops the height of a point.
func flat(p solid.Vec) geometry.Point { return geometry.Pt(p.X, p.Y) }

// blankLength returns how long a leg is from the tip of its tenon to the farthest point
// of its foot, along its axis.
func (s Seat) blankLength(l leg) float64 {
	over := 0.0
	if s.design.Seat.Mortise.Depth == 0 { // cut flush it is a slope
		over = s.radius(l, s.tip(l)) * math.Tan(l.lean.Resultant())
	}
	return over + l.foot - s.tip(l) + s.size(l, l.foot)/2*math.Tan(l.stake.FromPlumb())
}
