package seat

import (
	"cmp"
	"math"
	"slices"
	"sync"

	"rodsheet/geometry"
	"rodsheet/geometry/joint"
	"rodsheet/geometry/lists"
	"rodsheet/geometry/measure"
	"rodsheet/geometry/solid"
	"rodsheet/templates/piece/design"
	"rodsheet/templates/piece/kind"
)

// What is asked of the wood round a hole (common practice, no source).
const (
	edgeShare    = 0.5 // of the diameter, between a hole and the edge of the seat, or another hole
	grainShare   = 1.0 // of the diameter, along the grain between a wedged hole and the edge
	leastBottom  = 6.0 // mm, under a blind hole
	mostLean     = 25  // degrees: beyond it a bit walks off before it bites
	mostOfLeg    = 0.5 // of the thickness of what a stretcher enters
	leastRodHole = 0.5 // of the diameter of its tenon, that a hole for a stretcher is deep
	mouthCorners = 36  // of the polygon that stands for the mouth of a hole
)

// Checks are the questions asked before wood is cut.
func (s Seat) Checks() []kind.Check {
	var out []kind.Check
	u, k := s.unit(), s.design.Seat
	grade := kind.Pass
	if len(s.clashes()) > 0 {
		grade = kind.Fail
	}
	out = append(out, texts().Found("seat.clash", grade))
	d := k.Mortise.Diameter
	var rim []geometry.Point
	if k.Mortise.Wedged() && s.rim.Diameter == 0 {
		rim = s.rim.Outline()
	}
	for _, row := range k.Rows() {
		id := measure.ID(row.Table())
		edge := s.edge(row)
		out = append(out, texts().AtLeast(u, id+".inside", edge, 0, kind.Fail))
		out = append(out, texts().AtLeast(u, id+".edge", edge, edgeShare*d, kind.Warn))
		lean := 0.0
		for _, l := range s.unlike(row) {
			lean = math.Max(lean, l.lean.Resultant())
		}
		out = append(out, texts().Limited(u, id+".steep", measure.Angle(lean), measure.IsAtMost, measure.Angle(measure.Radians(mostLean)), kind.Warn))
		if k.Mortise.Wedged() {
			out = append(out, texts().AtLeast(u, id+".short-grain", s.shortGrain(row, rim), grainShare*d, kind.Warn))
		}
	}
	out = append(out, texts().AtLeast(u, "seat.holes", s.between(), edgeShare*d, kind.Warn))
	if k.Mortise.Depth > 0 {
		out = append(out, texts().AtLeast(u, "seat.under-hole", s.thickness()-k.Mortise.Depth, leastBottom, kind.Warn))
	}
	if len(s.rods) > 0 {
		out = append(out, texts().AtMost(u, "seat.stretcher-hole", s.tenon(), mostOfLeg*s.slimmest(), kind.Warn))
		out = append(out, texts().AtLeast(u, "seat.stretcher-depth", s.shallowest(), leastRodHole*s.tenon(), kind.Warn))
	}
	f, _ := s.footing()
	out = append(out, texts().AtLeast(u, "seat.stands", f.Inside(f.Centre), 0, kind.Fail))
	for _, side := range s.sides() {
		out = append(out, texts().AtLeast(u, "seat.feet-"+side.id, f.Inside(side.inset(joint.EdgeInset)), 0, kind.Warn))
	}
	return out
}

// clashes returns what parts share that should only touch.
func (s Seat) clashes() []solid.Solid {
	return solid.Clashes(slices.Concat(s.built().legs, s.built().rods))
}

// mouth returns the edge of a hole on the face at a height, as a polygon.
func (s Seat) mouth(l leg, z float64) []geometry.Point {
	off, a, b := s.bore(l, z).Mouth()
	p := flat(l.point(l.to(z)))
	along := l.sightline()
	return lists.Map(round(), func(c geometry.Point) geometry.Point {
		return p.Add(along.Mul(off + a*c.X)).Add(along.Perp().Mul(b * c.Y))
	})
}

// round returns the corners of the polygon that stands for a circle of radius 1.
var round = sync.OnceValue(func() []geometry.Point {
	out := make([]geometry.Point, mouthCorners)
	for i := range out {
		out[i] = geometry.Polar(1, 2*math.Pi*float64(i)/mouthCorners)
	}
	return out
})

// faces are the heights of the faces on which a hole has a mouth.
func (s Seat) faces() []float64 {
	if s.design.Seat.Mortise.Depth > 0 {
		return []float64{0}
	}
	return []float64{0, s.thickness()}
}

// edge returns the least wood between the holes of a row and the edge of the seat.
func (s Seat) edge(of design.SeatRow) float64 {
	least := math.Inf(1)
	for _, l := range s.unlike(of) {
		for _, z := range s.faces() {
			least = math.Min(least, s.rim.Inside(s.mouth(l, z)...))
		}
	}
	return least
}

// between returns the least wood between two holes, on either face.
func (s Seat) between() float64 {
	least := math.Inf(1)
	for _, z := range s.faces() {
		mouths := lists.Map(s.legs, func(l leg) []geometry.Point { return s.mouth(l, z) })
		for i, a := range mouths {
			for _, b := range mouths[:i] {
				if geometry.Bounds(a...).Offset(least).Overlaps(geometry.Bounds(b...)) {
					least = math.Min(least, apart(a, b))
				}
			}
		}
	}
	return least
}

// apart returns the least distance from a corner of one polygon to the rim of another. Begun
// with the corner next to the middle of that, few others can be nearer.
func apart(a, b []geometry.Point) float64 {
	middle := geometry.Bounds(b...).Centre()
	reach := lists.Most(b, middle.Distance)
	toRim := func(p geometry.Point) float64 {
		least := math.Inf(1)
		for j := range b {
			step := geometry.Segment{A: b[j], B: b[(j+1)%len(b)]}.Nearest(p).Sub(p)
			least = min(least, step.Dot(step))
		}
		return math.Sqrt(least)
	}
	least := toRim(slices.MinFunc(a, func(p, q geometry.Point) int { return cmp.Compare(p.Distance(middle), q.Distance(middle)) }))
	for _, p := range a {
		if p.Distance(middle)-reach < least {
			least = min(least, toRim(p))
		}
	}
	return least
}

// shortGrain returns the least length of grain between a wedged hole of a row and the edge
// of the upper face, which is given as a convex polygon where it is not round. What lies
// beyond the edge has none.
func (s Seat) shortGrain(of design.SeatRow, rim []geometry.Point) float64 {
	least := math.Inf(1)
	g := flat(s.grain())
	for _, l := range s.unlike(of) {
		mouth := s.mouth(l, s.thickness())
		beside := lists.Map(mouth, g.Cross)
		if r := s.rim.Diameter / 2; r > 0 { // half the chord, less the way from its middle
			for i, p := range mouth {
				least = min(least, max(0, math.Sqrt(max(0, r*r-beside[i]*beside[i]))-math.Abs(g.Dot(p))))
			}
			continue
		}
		ends := strip(rim, g, slices.Min(beside), slices.Max(beside))
		for i, p := range mouth {
			inside := false // so where the grain through p runs out an odd number of times ahead
			for _, e := range ends {
				a, b := e.a-beside[i], e.b-beside[i]
				if (a < 0) != (b < 0) { // it runs out here
					way := g.Dot(e.A.Lerp(e.B, a/(a-b)).Sub(p))
					inside = inside != (way > 0)
					least = min(least, math.Abs(way))
				}
			}
			if !inside {
				return 0
			}
		}
	}
	return least
}

// A rimSide has its ends so far beside a line along the grain.
type rimSide struct {
	geometry.Segment
	a, b float64
}

// strip returns the sides of a polygon that lie between two lines along the grain, or across
// one of them.
func strip(rim []geometry.Point, g geometry.Point, lo, hi float64) []rimSide {
	var out []rimSide
	a := rim[len(rim)-1]
	before := g.Cross(a)
	for _, b := range rim {
		beside := g.Cross(b)
		if min(before, beside) <= hi && max(before, beside) >= lo {
			out = append(out, rimSide{geometry.Segment{A: a, B: b}, before, beside})
		}
		a, before = b, beside
	}
	return out
}

// slimmest is the thickness of the thinnest part that a stretcher enters, where it does.
func (s Seat) slimmest() float64 {
	into := func(r rod, e rodEnd) float64 {
		if r.kind == crossRod {
			return s.design.Seat.Stretchers.Diameter
		}
		l := s.legs[e.into]
		return s.size(l, e.at.Sub(l.at).Dot(l.axis))
	}
	return lists.Least(s.rods, func(r rod) float64 { return min(into(r, r.ends[0]), into(r, r.ends[1])) })
}

// shallowest is the least depth of a hole for a stretcher.
func (s Seat) shallowest() float64 {
	return lists.Least(s.rods, func(r rod) float64 { return math.Min(r.ends[0].hole, r.ends[1].hole) })
}

// stand returns the footing.
func (s Seat) stand() (joint.Footing, float64) {
	m, up := s.room, s.up()
	centre := m.Apply(s.built().centre)
	var touching []geometry.Point
	for _, p := range s.built().legs {
		for _, piece := range p.Pieces {
			for _, f := range piece.Faces() {
				if f.Plane.N.Dot(up) > -1+1e-9 || s.height(f.Corners[0]) > 1e-6 {
					continue
				}
				for _, c := range f.Corners {
					touching = append(touching, flat(m.Apply(c)))
				}
			}
		}
	}
	return joint.NewFooting(touching, flat(centre), s.mass()), centre.Z
}

// A side of the seat is where somebody presses on its edge.
type side struct {
	id   measure.ID
	rim  geometry.Point // of the upper face, as it stands in the room
	out  geometry.Point
	high float64
}

// inset is so far in from the edge.
func (s side) inset(mm float64) geometry.Point { return s.rim.Sub(s.out.Mul(mm)) }

// sides are front, right-hand side and back; the left is as the right.
func (s Seat) sides() []side {
	var out []side
	for _, of := range []struct {
		id  measure.ID
		out geometry.Point
	}{{"front", geometry.Pt(0, -1)}, {"side", geometry.Pt(1, 0)}, {"back", geometry.Pt(0, 1)}} {
		at := of.out.Mul(max(of.out.Dot(s.box.Min), of.out.Dot(s.box.Max)))
		if of.out.X != 0 {
			at.Y = s.middle.Y
		}
		p := s.room.Apply(solid.V(at.X, at.Y, s.thickness()))
		out = append(out, side{of.id, flat(p), of.out, p.Z})
	}
	return out
}

// mends are the keys that may mend a check.
func mends() map[measure.ID][]design.Key {
	out := map[measure.ID][]design.Key{
		"seat.clash":           {"seat.stretchers.side-height", "seat.stretchers.hole"},
		"seat.under-hole":      {"seat.mortise.depth", "seat.thickness"},
		"seat.stretcher-hole":  {"seat.stretchers.tenon"},
		"seat.stretcher-depth": {"seat.stretchers.hole", "seat.stretchers.tenon"},
		"seat.feet-front":      {"seat.front.rake", "seat.circle.resultant"},
		"seat.feet-back":       {"seat.back.rake", "seat.circle.resultant"},
		"seat.feet-side":       {"seat.front.splay", "seat.middle.splay", "seat.back.splay", "seat.circle.resultant"},
		"seat.circle.steep":    {"seat.circle.resultant"},
	}
	for row := range design.CircleRow + 1 {
		id := measure.ID(row.Table())
		if row != design.CircleRow {
			lean := row.Ways()[design.ByRake]
			out[id+".steep"] = lean[:]
		}
		for _, asked := range []measure.ID{".inside", ".edge", ".short-grain"} {
			out[id+asked] = row.Places()
		}
	}
	return out
}

// usual are the depths of holes about as they follow.
func usual() map[design.Key]func(design.Design) float64 {
	return map[design.Key]func(design.Design) float64{"seat.stretchers.hole": func(d design.Design) float64 { return d.Seat.Legs.Size / 2 }}
}
