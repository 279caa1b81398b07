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
	"rodsheet/geometry/lists"
	"rodsheet/geometry/measure"
	"rodsheet/geometry/solid"
	"rodsheet/templates/piece/design"
)

// A Seat is one size worked out. Its design is shared by its copies and never changed.
//
// Frame of the slab: its underside is z = 0, the middle of its outline the origin, x runs to
// the right and y away from the front. It lies in the room as room says, its back lower
// by tilt.
type Seat struct {
	design *design.Design
	rim    joint.Top
	box    geometry.Rect  // round the rim
	middle geometry.Point // of gravity of what the rim holds
	tilt   float64        // rad
	room   solid.Affine3
	legs   []leg // row by row from the front, each from left to right; round the circle counter-clockwise
	rods   []rod
	built  func() built
	// footing is what the seat stands on, and how high its centre of mass is.
	footing func() (joint.Footing, float64)
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
	out   float64 // 1 where it leans backward, −1 where it leans forward
	at    solid.Vec
	axis  solid.Vec
	lean  joint.Compound // the foot outward: forward or backward, and to its side
	stake joint.Stake
	foot  float64 // along the axis from at to the floor
}

// A sort is what the legs of a seat differ by but for their hand, or their place on the
// circle: the row, and of a row of three or four whether they stand inside.
type sort struct {
	row   design.SeatRow
	inner bool
}

func (s sort) round() bool { return s.row == design.CircleRow }

// row returns the decisions of a row.
func (s Seat) row(r design.SeatRow) design.LegRow { return *s.design.Seat.Row(r) }

// newSeat works a design out whose figures stand within their limits.
func newSeat(d design.Design) Seat {
	s := Seat{design: &d, rim: rim(d.Seat)}
	s.box, s.middle = s.rim.Box(), s.rim.Centroid()
	fall := d.Seat.Height - cmp.Or(d.Seat.BackHeight, d.Seat.Height)
	s.tilt = math.Asin(math.Max(-1, math.Min(1, fall/(s.backEdge()-s.frontEdge()))))
	s.room = s.inRoom()
	for _, row := range d.Seat.Rows() {
		for i := range d.Seat.Row(row).Legs {
			s.legs = append(s.legs, s.stake(row, i))
		}
	}
	s.rods = s.stretchers()
	s.built = sync.OnceValue(s.build)
	s.footing = sync.OnceValues(s.stand)
	return s
}

// rim returns the outline of the seat from above.
func rim(s design.Seat) joint.Top {
	w, d := s.Width/2, s.Depth/2
	switch s.Shape {
	case design.RoundSeat:
		return joint.Top{Diameter: s.Diameter}
	case design.OvalSeat:
		return joint.OvalTop(s.Width, s.Depth)
	case design.ShieldSeat:
		// The rim is a band round three circles: two at the corners of the front, one that
		// touches the back.
		r, b := s.Corner, s.BackWidth/2
		return joint.ChordTop(geometry.RoundHull(
			geometry.Circle{Centre: geometry.Pt(r-w, r-d), Radius: r}, geometry.Circle{Centre: geometry.Pt(w-r, r-d), Radius: r},
			geometry.Circle{Centre: geometry.Pt(0, d-b), Radius: b}))
	case design.FreeSeat:
		return joint.Top{Corners: s.Points, Round: s.Corner}
	}
	top := joint.RectangleTop(s.Width, s.Depth)
	top.Round = s.Corner
	return top
}

// frontEdge and backEdge are where the outline reaches farthest.
func (s Seat) frontEdge() float64 { return s.box.Min.Y }
func (s Seat) backEdge() float64  { return s.box.Max.Y }

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
func (s Seat) up() solid.Vec { return solid.V(0, s.room.Y.Z, s.room.Z.Z) }

func (s Seat) inRoom() solid.Affine3 {
	sin, cos := math.Sincos(s.tilt)
	t := s.thickness()
	return solid.Affine3{
		X: solid.V(1, 0, 0), Y: solid.V(0, cos, -sin), Z: solid.V(0, sin, cos),
		O: solid.V(0, -t*sin, s.design.Seat.Height+s.frontEdge()*sin-t*cos),
	}
}

// floor returns what lies above the floor.
func (s Seat) floor() solid.Plane { return solid.Plane{N: s.up().Mul(-1), D: s.room.O.Z} }

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

// stake returns leg i of a row.
func (s Seat) stake(of design.SeatRow, i int) leg {
	row := s.row(of)
	part := share(i, row.Legs)
	l := leg{sort: sort{of, row.Legs > 2 && math.Abs(part) < 1}, out: 1}
	way := geometry.Pt(0, 1) // of the lean to the front or the back, or outward
	place := geometry.Pt(part*row.Apart/2, row.From)
	if of == design.FrontRow {
		l.out, way.Y, place.Y = -1, -1, -row.From
	}
	if l.sort.round() {
		l.sort.inner = false
		way = s.spoke(i)
		place, part, l.out = way.Mul(row.From), way.X, math.Copysign(1, way.Y)
	}
	if math.Abs(part) > 1e-9 {
		l.side = math.Copysign(1, part)
	}
	l.at = solid.V(place.X, place.Y, s.bored())
	l.axis = s.axis(l, row, way, part)
	l.lean = joint.Compound{
		Rake:  math.Atan2(l.out*l.axis.Y, -l.axis.Z),
		Splay: math.Atan2(cmp.Or(l.side, 1)*l.axis.X, -l.axis.Z),
	}
	l.stake = joint.Stake{Compound: l.lean, Tilt: -l.out * s.tilt}
	l.foot = s.height(l.at) / -l.axis.Dot(s.up())
	return l
}

// spoke returns the way from the middle of the seat to a leg on the circle; the first
// stands at the front, or right of a gap there.
func (s Seat) spoke(i int) geometry.Point {
	k, first := s.design.Seat, 0.5
	if k.LegAhead {
		first = 0
	}
	sin, cos := math.Sincos(2 * math.Pi * (float64(i) + first) / float64(k.Circle.Legs))
	return geometry.Pt(sin, -cos)
}

// axis returns the direction of a leg, downward.
//
// The tangents of the splays of a row are as its places, so its feet too stand equally far
// apart. By its foot a leg runs from its hole to that: on the floor, so far from the point
// below the middle of the upper face.
func (s Seat) axis(l leg, row design.LegRow, way geometry.Point, part float64) solid.Vec {
	lean := joint.Compound{Rake: row.FrontBack, Splay: row.Aside}
	aside := geometry.Pt(part, 0)
	if row.Legs == 1 || l.sort.round() {
		aside = geometry.Point{}
	}
	switch row.By {
	case design.ByResultant:
		lean = joint.CompoundOf(row.FrontBack, row.Aside)
	case design.ByFeet:
		m := s.room
		at := way.Mul(row.FrontBack).Add(aside.Mul(cmp.Or(row.Aside, row.Apart) / 2))
		inRoom := solid.V(at.X, at.Y, 0).Sub(m.O)
		// The axes of the room are unit vectors square to each other: back by products.
		foot := solid.V(inRoom.Dot(m.X), inRoom.Dot(m.Y), inRoom.Dot(m.Z))
		return foot.Sub(l.at).Unit()
	}
	to := way.Mul(math.Tan(lean.Rake)).Add(aside.Mul(math.Tan(lean.Splay)))
	return solid.V(to.X, to.Y, -1).Unit()
}

// point returns the point of the axis so far down from the face that is bored.
func (l leg) point(along float64) solid.Vec { return l.at.Add(l.axis.Mul(along)) }

// to returns how far along the axis a height of the slab's frame is.
func (l leg) to(z float64) float64 { return (l.at.Z - z) / -l.axis.Z }

// sightline returns the unit vector in the plane of the slab along which the leg leans; of
// a leg square to the slab that in which its row or its circle would.
func (l leg) sightline() geometry.Point {
	if p := geometry.Pt(l.axis.X, l.axis.Y); p.Norm() > 1e-12 {
		return p.Unit()
	}
	if l.sort.round() {
		return flat(l.at).Unit()
	}
	return geometry.Pt(0, l.out)
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

// tapered reports whether the legs are, towards the foot.
func (s Seat) tapered() bool {
	k := s.design.Seat.Legs
	return k.Foot > 0 && k.Foot < k.Size
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
	for i, l := range s.legs { // the outermost, or the only one, of a row is its last
		if i+1 == len(s.legs) || s.legs[i+1].sort.row != l.sort.row || l.sort.inner && !s.legs[i+1].sort.inner {
			out = append(out, l)
		}
	}
	return out
}

// unlike returns the legs of a row but those on the left of a seat that is mirrored there.
func (s Seat) unlike(of design.SeatRow) []leg {
	return lists.Where(s.legs, func(l leg) bool {
		return l.sort.row == of && (l.side >= 0 || s.design.Seat.Shape == design.FreeSeat)
	})
}

// count returns how many legs are of a sort.
func (s Seat) count(of sort) int {
	return lists.Count(s.legs, func(l leg) bool { return l.sort == of })
}

// Decided is the design.
func (s Seat) Decided() design.Design { return *s.design }

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
