package seat

import (
	"fmt"
	"math"
	"slices"

	"rodsheet/geometry"
	"rodsheet/geometry/lists"
	"rodsheet/geometry/measure"
	"rodsheet/geometry/solid"
	"rodsheet/templates/piece/assembly"
	"rodsheet/templates/piece/design"
)

// Corners of the polygons that stand for circles in the solids. Each has the area of its
// circle, and hole and tenon have the same, so that volumes are true and parts touch.
const (
	tenonCorners = 12
	roundCorners = 24
)

// rimSlip is by how much the solid of the slab may leave its curved outline, mm: its rim is
// looked at and nothing is taken from it.
const rimSlip = 0.8

// flats returns how many flats the section of a leg has.
func flats(s design.LegSection) int {
	return [...]int{design.OctagonLeg: 8, design.SquareLeg: 4, design.RoundLeg: roundCorners}[s]
}

// across returns how far the flats of a polygon stand from its axis that is the section
// of a leg or a rod of some size: a circle's is that of a polygon of the same area,
// n·a²·tan(π/n) = π·r².
func across(corners int, size float64, round bool) float64 {
	if !round {
		return size / 2
	}
	n := float64(corners)
	return size / 2 * math.Sqrt(math.Pi/(n*math.Tan(math.Pi/n)))
}

// ring returns the polygon whose flats stand so far from its middle, the first along x.
func ring(corners int, flat float64) []geometry.Point {
	turn := 2 * math.Pi / float64(corners)
	out := make([]geometry.Point, corners)
	for i := range out {
		out[i] = geometry.Polar(flat/math.Cos(turn/2), (float64(i)-0.5)*turn)
	}
	return out
}

// taperedPrism returns a prism about the z axis of a frame between two heights whose flats
// stand so far from it at either, the first looking along x. It ends short of where it comes
// to a point, and has some size at one end at least.
func taperedPrism(m solid.Affine3, corners int, z0, a0, z1, a1 float64) solid.Solid {
	const least = 1e-3 // mm
	if a0 < least {
		z0, a0 = z0+(z1-z0)*(least-a0)/(a1-a0), least
	}
	if a1 < least {
		z1, a1 = z1+(z0-z1)*(least-a1)/(a0-a1), least
	}
	lift := func(z, a float64) []solid.Vec { return lists.Map(solid.Lift(ring(corners, a), z), m.Apply) }
	return solid.Frustum(lift(z0, a0), lift(z1, a1))
}

// beyond is more than any part reaches past a face that cuts it, as a share of its size.
const beyond = 3

// tenonFrom returns the tenon of a leg about its axis, from one place to another.
func (s Seat) tenonFrom(l leg, from, to float64) solid.Solid {
	flat := func(t float64) float64 { return across(tenonCorners, 2*s.radius(l, t), true) }
	return taperedPrism(l.frame(), tenonCorners, from, flat(from), to, flat(to))
}

// slant is more than the slope of a mouth reaches along the axis of its hole.
func (s Seat) slant(l leg) float64 {
	return s.design.Seat.Mortise.Diameter * math.Tan(l.lean.Resultant())
}

// top returns where a tenon begins before it is cut flush: beyond the upper face where it goes
// through.
func (s Seat) top(l leg) float64 {
	if s.design.Seat.Mortise.Depth > 0 {
		return s.tip(l)
	}
	return s.tip(l) - s.slant(l)
}

// hole returns what is bored for a leg: it reaches beyond the underside, and through the
// upper face where it goes through.
func (s Seat) hole(l leg) solid.Solid { return s.tenonFrom(l, s.top(l), l.to(0)+s.slant(l)+1) }

// slab returns the seat with its holes.
func (s Seat) slab() solid.Part {
	out := solid.Stock("seat", s.board())
	for _, l := range s.legs {
		out = out.Subtract(s.hole(l))
	}
	return out
}

// board is the seat before it is bored.
func (s Seat) board() solid.Solid {
	return solid.Prism(solid.Lift(coarse(s.rim.Outline(), rimSlip), 0), solid.V(0, 0, s.thickness()))
}

// coarse leaves out corners of a convex outline that lie so near to the chords of the rest.
func coarse(outline []geometry.Point, slip float64) []geometry.Point {
	out := outline[:1:1]
	last := 0
	for i := 2; i < len(outline); i++ {
		chord := geometry.Segment{A: outline[last], B: outline[i]}
		for _, p := range outline[last+1 : i] {
			if chord.Distance(p) > slip {
				last = i - 1
				out = append(out, outline[last])
				break
			}
		}
	}
	return append(out, outline[len(outline)-1])
}

// shaft returns a leg below its shoulder, before any stretcher enters it.
func (s Seat) shaft(l leg) solid.Solid {
	k := s.design.Seat.Legs
	return s.shaftTo(l, l.foot+beyond*k.Size*math.Tan(l.stake.FromPlumb())).Cut(s.floor())
}

// shaftTo returns a leg from its shoulder to an end square to its axis.
func (s Seat) shaftTo(l leg, to float64) solid.Solid {
	k := s.design.Seat.Legs
	n, round := flats(k.Section), k.Section == design.RoundLeg
	from := s.shoulder(l)
	return taperedPrism(l.frame(), n, from, across(n, k.Size, round), to, across(n, s.size(l, to), round))
}

// legPart returns a leg with the holes of its stretchers.
func (s Seat) legPart(i int) solid.Part {
	l := s.legs[i]
	tenon := s.tenonFrom(l, s.top(l), s.shoulder(l)).Cut(solid.Plane{N: solid.V(0, 0, 1), D: s.thickness()})
	return solid.Part{Name: legPartName(i), Pieces: append([]solid.Solid{tenon}, s.drilled(s.shaft(l), i, false)...)}
}

// drilled takes from leg i the holes of its stretchers, or from a stretcher those of the ones
// that cross it.
func (s Seat) drilled(shaft solid.Solid, i int, crossed bool) []solid.Solid {
	out := solid.Stock("", shaft)
	for _, r := range s.rods {
		for end, e := range r.ends {
			if (r.kind == crossRod) == crossed && e.into == i {
				out = out.Subtract(r.tenon(end, s.tenon(), e.surface+s.tenon()*beyond))
			}
		}
	}
	return out.Pieces
}

// frame takes a rod that stands on the z axis from its first end to its place.
func (r rod) frame() solid.Affine3 {
	z := r.along(0)
	x := solid.V(0, 0, 1).Sub(z.Mul(z.Z)).Unit()
	return solid.Affine3{X: x, Y: z.Cross(x), Z: z, O: r.ends[0].at}
}

// span returns a piece of a rod of a diameter, from one place to another.
func (r rod) span(diameter, from, to float64) solid.Solid {
	a := across(tenonCorners, diameter, true)
	return taperedPrism(r.frame(), tenonCorners, from, a, to, a)
}

// reach returns the distance of the two points between which a rod runs.
func (r rod) reach() float64 { return r.ends[0].at.Distance(r.ends[1].at) }

// rodShaft returns a rod between its shoulders, before another enters it.
func (s Seat) rodShaft(r rod) solid.Solid {
	return r.span(s.design.Seat.Stretchers.Diameter, r.ends[0].shoulder, r.reach()-r.ends[1].shoulder)
}

// tenon returns an end of a rod from the bottom of its hole on, to some distance from the
// point to which its axis runs.
func (r rod) tenon(end int, diameter, to float64) solid.Solid {
	from := r.ends[end].surface - r.ends[end].hole
	if end == 1 {
		from, to = r.reach()-to, r.reach()-from
	}
	return r.span(diameter, from, to)
}

// rodPart returns a stretcher, with the hole of the one that crosses, which itself enters
// only those before it.
func (s Seat) rodPart(i int) solid.Part {
	r := s.rods[i]
	pieces := s.drilled(s.rodShaft(r), i, true)
	for end, e := range r.ends {
		pieces = append(pieces, r.tenon(end, s.tenon(), e.shoulder))
	}
	return solid.Part{Name: fmt.Sprintf("stretcher %d", i+1), Pieces: pieces}
}

// mirrored changes left and right.
var mirrored = solid.Affine3{X: solid.V(-1, 0, 0), Y: solid.V(0, 1, 0), Z: solid.V(0, 0, 1)}

func legPartName(i int) string { return fmt.Sprintf("leg %d", i+1) }

// build makes the solids of legs and stretchers, and weighs them with the slab.
func (s Seat) build() built {
	var b built
	add := func(v float64, at solid.Vec) {
		b.volume += v
		b.centre = b.centre.Add(at.Mul(v))
	}
	add(s.rim.Area()*s.thickness(), solid.V(s.middle.X, s.middle.Y, s.thickness()/2))
	var filled []solid.Solid // by the tenons, the first pieces of the legs: it was counted with the slab
	for i, l := range s.legs {
		twin := -1 // on the left of its row, where both are alike to their stretchers
		if l.side > 0 && !l.sort.round() {
			twin = slices.IndexFunc(s.legs[:i], func(m leg) bool { return m.sort == l.sort })
		}
		if twin >= 0 {
			b.legs = append(b.legs, b.legs[twin].Transform(mirrored))
			b.legs[i].Name = legPartName(i)
			filled = append(filled, filled[twin].Transform(mirrored))
		} else {
			b.legs = append(b.legs, s.legPart(i))
			filled = append(filled, b.legs[i].Pieces[0].Cut(solid.Plane{N: solid.V(0, 0, -1)}))
		}
		add(-filled[i].Volume(), filled[i].Centroid())
	}
	for i := range s.rods {
		b.rods = append(b.rods, s.rodPart(i))
	}
	for _, p := range slices.Concat(b.legs, b.rods) {
		add(p.Volume(), p.Centroid())
	}
	b.centre = b.centre.Mul(1 / b.volume)
	return b
}

// Parts returns all parts as they stand in the room.
func (s Seat) Parts() []assembly.Part {
	var out []assembly.Part
	add := func(p solid.Part, kind measure.ID, name string) {
		out = append(out, assembly.Part{Part: p.Transform(s.room), Kind: kind, Name: name})
	}
	add(s.slab(), "seat", slabNamed.With(s.mm(s.thickness())))
	for i, p := range s.built().legs {
		add(p, "leg", legNamed.With(i+1, s.mm(s.blankLength(s.legs[i]))))
	}
	for i, p := range s.built().rods {
		whole, _ := s.rods[i].length()
		add(p, "stretcher", rodNamed.With(i+1, s.mm(whole)))
	}
	return out
}
