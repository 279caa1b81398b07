package solid

import (
	"math"
	"slices"

	"rodsheet/geometry"
	"rodsheet/geometry/lists"
)

// A Face is a convex polygon. Its corners run counter-clockwise for one who
// looks at it from outside; Plane.N has length 1 and points outward.
type Face struct {
	Plane   Plane
	Corners []Vec
}

// A Solid is a convex polyhedron. Faces that meet share their corners to the
// last bit. The zero Solid is empty.
type Solid struct{ faces []Face }

// An Edge is a straight edge from A to B.
type Edge struct{ A, B Vec }

// Box returns the box between two opposite corners, its sides along the axes.
func Box(a, b Vec) Solid {
	e := Extent{a, a}.Union(Extent{b, b})
	base := geometry.Box(e.Min.X, e.Min.Y, e.Max.X, e.Max.Y).Corners()
	return Prism(Lift(base, e.Min.Z), V(0, 0, e.Size().Z))
}

// Lift returns the polygon of a plan as corners at height z.
func Lift(polygon []geometry.Point, z float64) []Vec {
	return lists.Map(polygon, func(p geometry.Point) Vec { return V(p.X, p.Y, z) })
}

// Prism returns what base sweeps on its way along extrude. The corners of
// base lie in one plane and go round a convex polygon, either way. With no thickness the Solid is empty.
func Prism(base []Vec, extrude Vec) Solid {
	return Frustum(base, lists.Map(base, func(p Vec) Vec { return p.Add(extrude) }))
}

// Frustum returns what lies between two convex polygons in parallel planes, each side of
// one parallel to that of the other between the same corners.
func Frustum(base, top []Vec) Solid {
	if len(base) == 0 {
		return Solid{}
	}
	back := func(corners []Vec) []Vec {
		corners = slices.Clone(corners)
		slices.Reverse(corners)
		return corners
	}
	switch sense := around(base).Dot(top[0].Sub(base[0])); {
	case sense == 0:
		return Solid{}
	case sense < 0:
		base, top = back(base), back(top)
	}
	s := Solid{make([]Face, 0, len(base)+2)}
	for i, p := range base {
		j := (i + 1) % len(base)
		if p != base[j] {
			s.faces = append(s.faces, facing(p, base[j], top[j], top[i]))
		}
	}
	s.faces = append(s.faces, facing(back(base)...), facing(top...))
	return s
}

// facing returns the Face with the given corners.
func facing(corners ...Vec) Face { return Face{Through(corners[0], around(corners)), corners} }

// around returns twice the area of a polygon as a vector square to it, towards
// the side from which the corners run counter-clockwise (Newell's formula).
func around(corners []Vec) Vec {
	var sum Vec
	for i := 1; i+1 < len(corners); i++ {
		sum = sum.Add(corners[i].Sub(corners[0]).Cross(corners[i+1].Sub(corners[0])))
	}
	return sum
}

// Empty reports whether s holds nothing.
func (s Solid) Empty() bool { return len(s.faces) == 0 }

// Faces returns the faces of s.
func (s Solid) Faces() []Face { return slices.Clone(s.faces) }

// Edges returns every edge once. Two faces run along it in opposite senses;
// it is taken from the one that begins at the smaller end.
func (s Solid) Edges() []Edge {
	out := make([]Edge, 0, s.corners()/2)
	for _, f := range s.faces {
		for i, a := range f.Corners {
			if b := f.Corners[(i+1)%len(f.Corners)]; a.before(b) {
				out = append(out, Edge{a, b})
			}
		}
	}
	return out
}

// Bounds returns the smallest Extent that holds s, the zero Extent if s is empty.
func (s Solid) Bounds() Extent {
	if s.Empty() {
		return Extent{}
	}
	lo := s.faces[0].Corners[0]
	hi := lo
	for _, f := range s.faces {
		for _, p := range f.Corners {
			lo = V(min(lo.X, p.X), min(lo.Y, p.Y), min(lo.Z, p.Z))
			hi = V(max(hi.X, p.X), max(hi.Y, p.Y), max(hi.Z, p.Z))
		}
	}
	return Extent{lo, hi}
}

// Volume returns the volume of s in mm³.
func (s Solid) Volume() float64 {
	v, _ := s.moment()
	return v
}

// Centroid returns the centre of gravity of s, NaN if s is empty.
func (s Solid) Centroid() Vec {
	v, m := s.moment()
	if v == 0 {
		return V(math.NaN(), math.NaN(), math.NaN())
	}
	return m.Mul(1 / v).Add(s.faces[0].Corners[0])
}

// moment returns the volume, and the volume times the centroid as seen from
// the first corner. It adds up the tetrahedra between that corner and the
// triangles of the faces: six times the volume is a product of three edges,
// the centroid a quarter of their sum.
func (s Solid) moment() (volume float64, moment Vec) {
	if s.Empty() {
		return 0, Vec{}
	}
	o := s.faces[0].Corners[0]
	for _, f := range s.faces {
		a := f.Corners[0].Sub(o)
		for i := 1; i+1 < len(f.Corners); i++ {
			b, c := f.Corners[i].Sub(o), f.Corners[i+1].Sub(o)
			v := a.Cross(b).Dot(c)
			volume += v
			moment = moment.Add(a.Add(b).Add(c).Mul(v))
		}
	}
	return volume / 6, moment.Mul(1.0 / 24)
}

// corners returns the number of corners of all faces.
func (s Solid) corners() int { return lists.Sum(s.faces, func(f Face) int { return len(f.Corners) }) }

// Transform returns the image of s. A mirrored Solid keeps its faces outward;
// one that m flattens is empty.
func (s Solid) Transform(m Affine3) Solid {
	det := m.Det()
	if det == 0 || s.Empty() {
		return Solid{}
	}
	out := Solid{make([]Face, len(s.faces))}
	room := make([]Vec, s.corners())
	normals := m.normals()
	for i, f := range s.faces {
		var corners []Vec
		corners, room = room[:len(f.Corners):len(f.Corners)], room[len(f.Corners):]
		for j, p := range f.Corners {
			corners[j] = m.Apply(p)
		}
		if det < 0 {
			slices.Reverse(corners)
		}
		out.faces[i] = Face{Through(corners[0], normals.step(f.Plane.N).Unit()), corners}
	}
	return out
}
