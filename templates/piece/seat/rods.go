package seat

import (
	"cmp"
	"math"

	"rodsheet/geometry/solid"
	"rodsheet/templates/piece/design"
)

// A rod is a round stretcher. Its axis runs from a point on that of what it enters at
// one end to the other, in the frame of the slab.
type rod struct {
	kind rodKind
	ends [2]rodEnd
}

type rodKind uint8

const (
	frontRod rodKind = iota // along the front row
	backRod                 // along the back row
	sideRod                 // from the front row to the back row
	crossRod                // from one side rod to the other
	roundRod                // from leg to leg round the circle
)

// A rodEnd is where a rod enters a leg, or a side rod.
type rodEnd struct {
	into     int // number of the leg, or of the rod
	at       solid.Vec
	surface  float64 // from at to where the axis leaves what it enters
	shoulder float64 // from at to the shoulder, which touches the surface
	hole     float64 // depth, along the rod, from the surface
}

// stretchers returns the rods of a design.
func (s Seat) stretchers() []rod {
	k := s.design.Seat.Stretchers
	var out []rod
	heights := [2]float64{k.Height, cmp.Or(k.SideHeight, k.Height)}
	legs := func(kind rodKind, i, j int, height float64) {
		out = append(out, rod{kind, [2]rodEnd{s.intoLeg(i, height), s.intoLeg(j, height)}})
	}
	rows, circle := s.spans()
	if k.Shape == design.BoxStretchers {
		for i, r := range rows {
			kind := frontRod
			if i > 0 {
				kind = backRod
			}
			for j := r.first; j < r.last && (i == 0 || i == len(rows)-1); j++ {
				legs(kind, j, j+1, heights[0])
			}
		}
		for i := range circle.last - circle.first {
			legs(roundRod, circle.first+i, circle.first+(i+1)%(circle.last-circle.first), heights[i%2])
		}
	}
	if k.Shape == design.HStretchers {
		rows = []span{rows[0], rows[len(rows)-1]}
	}
	for i := 1; i < len(rows) && k.Shape != design.NoStretchers; i++ {
		a, b := rows[i-1], rows[i]
		legs(sideRod, a.first, b.first, heights[1])
		if a.first != a.last || b.first != b.last {
			legs(sideRod, a.last, b.last, heights[1])
		}
	}
	for i := range out {
		s.settle(&out[i], func(end rodEnd) solid.Solid { return s.shaft(s.legs[end.into]) })
	}
	if k.Shape == design.HStretchers {
		cross := rod{crossRod, [2]rodEnd{{into: 0, at: out[0].middle()}, {into: 1, at: out[1].middle()}}}
		s.settle(&cross, func(end rodEnd) solid.Solid { return s.rodShaft(out[end.into]) })
		out = append(out, cross)
	}
	return out
}

// A span is the legs of a row, by the numbers of its outermost ones.
type span struct{ first, last int }

// spans returns the rows that side stretchers run along, and the legs of the circle, the
// last of them excluded: one leg in the middle of a seat between two rows has none.
func (s Seat) spans() (rows []span, circle span) {
	n := 0
	for _, r := range s.design.Seat.Rows() {
		first := n
		n += s.row(r).Legs
		switch {
		case r == design.CircleRow:
			circle = span{first, n}
		case r != design.MiddleRow || n-first > 1 || first == 0 || s.design.Seat.Back.Legs == 0:
			rows = append(rows, span{first, n - 1})
		}
	}
	return rows, circle
}

// intoLeg is the end in a leg whose axis stands so high over the floor there.
func (s Seat) intoLeg(i int, height float64) rodEnd {
	l := s.legs[i]
	return rodEnd{into: i, at: l.point(l.foot + height/l.axis.Dot(s.up()))}
}

// middle is that between the shoulders, from which a maker measures.
func (r rod) middle() solid.Vec {
	return r.ends[0].at.Add(r.along(0).Mul((r.ends[0].shoulder + r.reach() - r.ends[1].shoulder) / 2))
}

// along returns the direction of the rod from an end.
func (r rod) along(end int) solid.Vec { return r.ends[1-end].at.Sub(r.ends[end].at).Unit() }

// settle finds where a rod meets what it enters.
//
// What it enters is convex, so all of it lies inside the plane of the face in which the axis
// leaves it. A disc of radius r square to the axis u, t along it, lies outside of a plane
// N·p = D where t·(u·N) − r·√(1 − (u·N)²) ≥ D − N·at.
func (s Seat) settle(r *rod, of func(rodEnd) solid.Solid) {
	k := s.design.Seat.Stretchers
	for i := range r.ends {
		e, u := &r.ends[i], r.along(i)
		body := of(*e)
		out, face := leaves(body, e.at, u)
		back, _ := leaves(body, e.at, u.Mul(-1))
		e.surface = out
		e.shoulder = out
		if k.Tenon > 0 && k.Tenon < k.Diameter {
			c := face.N.Dot(u)
			// The corners of the polygon that stands for the disc reach a little further.
			r := across(tenonCorners, k.Diameter, true) / math.Cos(math.Pi/tenonCorners)
			e.shoulder = out + r*math.Sqrt(math.Max(0, 1-c*c))/c
		}
		e.hole = cmp.Or(k.Hole, (out+back)/2)
	}
}

// leaves returns how far from a point inside a solid a line leaves it, and through which face.
func leaves(s solid.Solid, at, u solid.Vec) (float64, solid.Plane) {
	least, through := math.Inf(1), solid.Plane{}
	for _, f := range s.Faces() {
		if slope := f.Plane.N.Dot(u); slope > 1e-12 {
			if t := -f.Plane.Height(at) / slope; t < least {
				least, through = t, f.Plane
			}
		}
	}
	return least, through
}

// length returns that of a rod from tip to tip of its tenons, and between its shoulders.
func (r rod) length() (whole, between float64) {
	d := r.reach()
	for _, e := range r.ends {
		whole -= e.surface - e.hole
		between -= e.shoulder
	}
	return d + whole, d + between
}

// tenon returns the diameter of the tenons of the rods.
func (s Seat) tenon() float64 {
	k := s.design.Seat.Stretchers
	return cmp.Or(k.Tenon, k.Diameter)
}
