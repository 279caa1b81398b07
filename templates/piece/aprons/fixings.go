package aprons

import (
	"slices"

	"rodsheet/geometry"
	"rodsheet/geometry/lists"
	"rodsheet/geometry/solid"
	"rodsheet/templates/piece/shop"
)

// withFixings are all parts with the groove for buttons or the holes for screws in the aprons.
func (m Model) withFixings() []solid.Part {
	out := m.solids()
	for i := range m.sides {
		at := len(m.legs) + i
		out[at] = m.fixed(out[at], i)
	}
	return out
}

// fixed returns apron i with what the fixings take from it.
func (m Model) fixed(apron solid.Part, i int) solid.Part {
	r := m.Rows[0].Rails[i]
	if f, ok := m.Screws(); ok {
		return r.drilled(apron, m.holes(f, i))
	}
	if m.Buttons() > 0 {
		return apron.Subtract(r.grooved(m.button()))
	}
	return apron
}

// grooved is what the groove for buttons takes. It is empty where the shoulders leave it no
// way.
func (r Rail) grooved(b button) solid.Solid {
	from, to := r.grooveEnds(b)
	long := to.Sub(from).Dot(r.Along)
	if long < b.high {
		return solid.Solid{}
	}
	return solid.Slot(from.Lerp(to, 0.5), r.Along, r.In.Mul(-b.deep), b.high, long)
}

// grooveEnds are the ends of the groove for buttons: a bit as wide as it is high stops as far
// short of the shoulders as the apron is thick.
func (r Rail) grooveEnds(b button) (from, to solid.Vec) {
	t, high := r.Row.Of.Thickness, geometry.Bounds(r.groove(b)...)
	mouth := r.Ends[left].Mouth[1].Add(r.Up.Mul(high.Centre().Y)) // then in to the frame side
	at := func(e End) solid.Vec {
		return solid.Meet(e.shoulder, r.deep(t), solid.Through(mouth, r.Up))
	}
	stop := r.Along.Mul(t)
	return at(r.Ends[left]).Add(stop), at(r.Ends[right]).Sub(stop)
}

// holes are what is bored for each screw of an apron: for its head, so that the hole for the
// shank has only the wood over it to go through, and for that.
func (m Model) holes(f shop.Fixing, i int) [][]solid.Solid {
	u, r := m.Design.Unit, m.Rows[0].Rails[i]
	shank, head := shop.Bits(u)
	deep, bore := m.deep(m.Rows[0], i), m.heads(f)[i%m.RailSorts()]
	mid, inward := r.Ends[left].Mouth[0].Lerp(r.Ends[right].Mouth[0], 0.5), flat(m.sides[i].out).Mul(-1)
	level := func(p geometry.Point) solid.Vec { return r.Along.Mul(p.X).Sub(inward.Mul(p.Y)) }
	return lists.Map(m.slots(f, i), func(h screwHole) []solid.Solid {
		sunk := func(deep, wide, long float64) solid.Solid {
			way := h.way
			if way == (geometry.Point{}) {
				way, long = geometry.Pt(1, 0), wide
			}
			below := r.Up.Mul(long) // from clear of the underside
			return solid.Slot(mid.Add(level(h.at)).Sub(below), level(way), below.Add(r.Up.Mul(deep)), wide, long)
		}
		through := sunk(2*deep, shank, f.Slot(u))
		if bore == 0 {
			return []solid.Solid{through}
		}
		return []solid.Solid{sunk(bore, head, f.HeadSlot(u)), through}
	})
}

// drilled takes holes out of an apron, each from a piece of it that holds no other: so they
// do not cut up each other's wood.
func (r Rail) drilled(apron solid.Part, holes [][]solid.Solid) solid.Part {
	rest, out := apron, solid.Part{Name: apron.Name}
	for _, hole := range holes {
		room := geometry.Bounds(lists.Map(lists.Flat(hole, corners), func(p solid.Vec) geometry.Point { return geometry.Pt(p.Dot(r.Along), 0) })...)
		from, to := solid.Plane{N: r.Along, D: room.Min.X}, solid.Plane{N: r.Along, D: room.Max.X}
		piece := rest.Cut(from.Flip()).Cut(to)
		for _, h := range hole {
			piece = piece.Subtract(h)
		}
		out.Pieces = slices.Concat(out.Pieces, rest.Cut(from).Pieces, piece.Pieces)
		rest = rest.Cut(to.Flip())
	}
	out.Pieces = append(out.Pieces, rest.Pieces...)
	return out
}
