package solid

import (
	"math"

	"rodsheet/geometry/lists"
)

// ClashFloor is the volume in mm³ up to which a shared piece is no clash: a
// cube of 0.1 mm. Parts that touch share less.
const ClashFloor = 1e-3

// A Part is one piece of wood: convex solids that share faces but no volume.
type Part struct {
	Name   string
	Pieces []Solid
}

// Stock returns the Part that is s and nothing else.
func Stock(name string, s Solid) Part { return Part{name, []Solid{s}} }

// each returns the Part of what become makes of each piece.
func (p Part) each(become func(Solid) []Solid) Part {
	out := Part{Name: p.Name}
	for _, s := range p.Pieces {
		for _, t := range become(s) {
			if !t.Empty() {
				out.Pieces = append(out.Pieces, t)
			}
		}
	}
	return out
}

// Subtract returns p without the waste: a notch, an open mortise.
func (p Part) Subtract(waste Solid) Part {
	return p.each(func(s Solid) []Solid { return s.Subtract(waste) })
}

// Cut returns the part of p inside q.
func (p Part) Cut(q Plane) Part { return p.each(func(s Solid) []Solid { return []Solid{s.Cut(q)} }) }

// Transform returns the image of p.
func (p Part) Transform(m Affine3) Part {
	return p.each(func(s Solid) []Solid { return []Solid{s.Transform(m)} })
}

// Reaching returns the image of those pieces of p that may reach into e: the boxes
// round them do.
func (p Part) Reaching(e Extent, m Affine3) Part {
	return p.each(func(s Solid) []Solid {
		if s.Bounds().Transform(m).Overlaps(e) {
			return []Solid{s.Transform(m)}
		}
		return nil
	})
}

// Volume returns the volume of p in mm³.
func (p Part) Volume() float64 { return lists.Sum(p.Pieces, Solid.Volume) }

// Centroid returns the centre of gravity of p, NaN if p is empty.
func (p Part) Centroid() Vec {
	var sum Vec
	volume := 0.0
	for _, s := range p.Pieces {
		if v := s.Volume(); v > 0 {
			sum = sum.Add(s.Centroid().Mul(v))
			volume += v
		}
	}
	if volume == 0 {
		return V(math.NaN(), math.NaN(), math.NaN())
	}
	return sum.Mul(1 / volume)
}

// Bounds returns the smallest Extent that holds p, the zero Extent if p is empty.
func (p Part) Bounds() Extent {
	var all Extent
	for i, s := range p.Pieces {
		if e := s.Bounds(); i == 0 {
			all = e
		} else {
			all = all.Union(e)
		}
	}
	return all
}

// Clash returns what two parts share, in convex pieces larger than ClashFloor. Parts that only touch do not clash.
func Clash(a, b Part) []Solid {
	room := lists.Map(b.Pieces, Solid.Bounds)
	var out []Solid
	for _, s := range a.Pieces {
		reach := s.Bounds()
		for i, t := range b.Pieces {
			if !reach.Overlaps(room[i]) || s.apart(t) {
				continue
			}
			if shared := s.Intersect(t); shared.Volume() > ClashFloor {
				out = append(out, shared)
			}
		}
	}
	return out
}

// Clashes returns what any two of the parts share, as Clash has it.
func Clashes(parts []Part) []Solid {
	var out []Solid
	room := lists.Map(parts, Part.Bounds)
	for i, a := range parts {
		for j, b := range parts[:i] {
			if room[i].Overlaps(room[j]) {
				out = append(out, Clash(a, b)...)
			}
		}
	}
	return out
}
