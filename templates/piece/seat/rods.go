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
	front := s.design.Seat.Front.Legs
	last := len(s.legs) - 1
	var out []rod
	legs := func(kind rodKind, i, j int) {
		h := k.Height
		if kind == sideRod {
			h = cmp.Or(k.SideHeight, k.Height)
		}
		out = append(out, rod{kind, [2]rodEnd{s.intoLeg(i, h), s.intoLeg(j, h)}})
	}
	switch k.Shape {
	case design.BoxStretchers:
		for i := range last {
			switch {
			case i+1 < front:
				legs(frontRod, i, i+1)
			case i >= front:
				legs(backRod, i, i+1)
			}
		}
		legs(sideRod, 0, front)
		legs(sideRod, front-1, last)
	case design.HStretchers:
		legs(sideRod, 0, front)
		legs(sideRod, front-1, last)
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

func (s Seat) intoLeg(i int, height float64) rodEnd {
	l := s.legs[i]
	return rodEnd{into: i, at: l.point(s.alongAt(l, height))}
}

// alongAt returns where the axis of a leg stands so high over the floor.
func (s Seat) alongAt(l leg, height float64) float64 { return l.foot + height/l.axis.Dot(s.up()) }

func (r rod) middle() solid.Vec { return r.ends[0].at.Lerp(r.ends[1].at, 0.5) }

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
	d := r.ends[0].at.Distance(r.ends[1].at)
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
