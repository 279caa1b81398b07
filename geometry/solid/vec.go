// Package solid holds convex solids and what is asked of them: do two parts
// clash, how much wood is left, and what is seen from where.
//
// Lengths are in millimetres and angles in radians. x runs to the right, y
// away from the maker and z up, so a plan shows x and y. Every value is left
// as it is by every function; results share corners with their arguments but
// never change them.
package solid

import "math"

// A Vec is a position in space, or the step from one position to another, in mm.
type Vec struct{ X, Y, Z float64 }

// V is shorthand for Vec{x, y, z}.
func V(x, y, z float64) Vec { return Vec{x, y, z} }

func (a Vec) Add(b Vec) Vec          { return Vec{a.X + b.X, a.Y + b.Y, a.Z + b.Z} }
func (a Vec) Sub(b Vec) Vec          { return Vec{a.X - b.X, a.Y - b.Y, a.Z - b.Z} }
func (a Vec) Mul(k float64) Vec      { return Vec{a.X * k, a.Y * k, a.Z * k} }
func (a Vec) Dot(b Vec) float64      { return a.X*b.X + a.Y*b.Y + a.Z*b.Z }
func (a Vec) Norm() float64          { return math.Sqrt(a.Dot(a)) }
func (a Vec) Distance(b Vec) float64 { return a.Sub(b).Norm() }

// Cross returns the vector product: for x and y it is z.
func (a Vec) Cross(b Vec) Vec { return Vec{a.Y*b.Z - a.Z*b.Y, a.Z*b.X - a.X*b.Z, a.X*b.Y - a.Y*b.X} }

// Unit returns a at length 1. The zero Vec stays as it is.
func (a Vec) Unit() Vec {
	if n := a.Norm(); n > 0 {
		return a.Mul(1 / n)
	}
	return a
}

// Lerp returns the point at share t of the way from a to b.
func (a Vec) Lerp(b Vec, t float64) Vec { return a.Add(b.Sub(a).Mul(t)) }

// square returns two unit vectors that complete the unit vector a to a
// right-handed frame: a × u = v.
func (a Vec) square() (u, v Vec) {
	u = Vec{Z: 1}
	if math.Abs(a.Z) > 0.7 { // too near to z to be crossed with it
		u = Vec{X: 1}
	}
	u = u.Cross(a).Unit()
	return u, a.Cross(u)
}

// largest returns the largest coordinate of a, sign dropped.
func (a Vec) largest() float64 { return max(math.Abs(a.X), math.Abs(a.Y), math.Abs(a.Z)) }

// before orders points by x, then y, then z.
func (a Vec) before(b Vec) bool {
	if a.X != b.X {
		return a.X < b.X
	}
	if a.Y != b.Y {
		return a.Y < b.Y
	}
	return a.Z < b.Z
}

// An Extent is the closed box Min ≤ p ≤ Max, axis by axis. The zero Extent is
// the single point at the origin.
type Extent struct{ Min, Max Vec }

// Size returns the length of the box along each axis.
func (e Extent) Size() Vec { return e.Max.Sub(e.Min) }

// Overlaps reports whether e and f share a point.
func (e Extent) Overlaps(f Extent) bool {
	return e.Min.X <= f.Max.X && f.Min.X <= e.Max.X &&
		e.Min.Y <= f.Max.Y && f.Min.Y <= e.Max.Y &&
		e.Min.Z <= f.Max.Z && f.Min.Z <= e.Max.Z
}

// grown moves all sides of e outward.
func (e Extent) grown(mm float64) Extent {
	more := V(mm, mm, mm)
	return Extent{e.Min.Sub(more), e.Max.Add(more)}
}

// Transform returns the smallest Extent that holds the image of e: along each axis
// every coordinate adds its least and its greatest share by itself.
func (e Extent) Transform(m Affine3) Extent {
	out := Extent{m.O, m.O}
	for _, ends := range [][2]Vec{
		{m.X.Mul(e.Min.X), m.X.Mul(e.Max.X)}, {m.Y.Mul(e.Min.Y), m.Y.Mul(e.Max.Y)}, {m.Z.Mul(e.Min.Z), m.Z.Mul(e.Max.Z)},
	} {
		share := Extent{ends[0], ends[0]}.Union(Extent{ends[1], ends[1]})
		out.Min, out.Max = out.Min.Add(share.Min), out.Max.Add(share.Max)
	}
	return out
}

// Union returns the smallest Extent that holds e and f.
func (e Extent) Union(f Extent) Extent {
	return Extent{
		Vec{min(e.Min.X, f.Min.X), min(e.Min.Y, f.Min.Y), min(e.Min.Z, f.Min.Z)},
		Vec{max(e.Max.X, f.Max.X), max(e.Max.Y, f.Max.Y), max(e.Max.Z, f.Max.Z)},
	}
}
