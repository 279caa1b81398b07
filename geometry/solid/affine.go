package solid

import "math"

// An Affine3 takes p to p.X·X + p.Y·Y + p.Z·Z + O: X, Y and Z are where the
// unit steps along the axes go, O is where the origin goes.
type Affine3 struct{ X, Y, Z, O Vec }

// Identity returns the Affine3 that leaves every point where it is.
func Identity() Affine3 { return Affine3{X: V(1, 0, 0), Y: V(0, 1, 0), Z: V(0, 0, 1)} }

// Translate moves by v.
func Translate(v Vec) Affine3 {
	m := Identity()
	m.O = v
	return m
}

// Rotate turns by a about the axis through the origin, counter-clockwise for one
// who looks against the axis (Rodrigues' formula). The four quarter turns
// have exact sines. The axis need not be of length 1, but not zero.
func Rotate(axis Vec, a float64) Affine3 {
	s, c := math.Sincos(a)
	if q := a / (math.Pi / 2); q == math.Trunc(q) {
		s, c = math.Round(s), math.Round(c)
	}
	k := axis.Unit()
	turn := func(p Vec) Vec {
		return p.Mul(c).Add(k.Cross(p).Mul(s)).Add(k.Mul(k.Dot(p) * (1 - c)))
	}
	m := Identity()
	return Affine3{X: turn(m.X), Y: turn(m.Y), Z: turn(m.Z)}
}

// RotateY turns about the y axis, from z towards x.
func RotateY(a float64) Affine3 { return Rotate(V(0, 1, 0), a) }

// RotateZ turns about the z axis, from x towards y.
func RotateZ(a float64) Affine3 { return Rotate(V(0, 0, 1), a) }

// Mirror reflects in the plane p: left hand becomes right.
func Mirror(p Plane) Affine3 {
	p = p.unit()
	m := Identity()
	flip := func(v Vec) Vec { return v.Sub(p.N.Mul(2 * p.N.Dot(v))) }
	return Affine3{X: flip(m.X), Y: flip(m.Y), Z: flip(m.Z), O: p.N.Mul(2 * p.D)}
}

// Into returns what takes the room into a frame: axes of length 1, square to each other,
// that meet in o.
func Into(x, y, z, o Vec) Affine3 {
	m := Affine3{X: V(x.X, y.X, z.X), Y: V(x.Y, y.Y, z.Y), Z: V(x.Z, y.Z, z.Z)}
	m.O = m.step(o).Mul(-1)
	return m
}

// Apply returns the image of p.
func (m Affine3) Apply(p Vec) Vec { return m.step(p).Add(m.O) }

// step returns the image of a step, which the origin does not move.
func (m Affine3) step(v Vec) Vec { return m.X.Mul(v.X).Add(m.Y.Mul(v.Y)).Add(m.Z.Mul(v.Z)) }

// Then returns the Affine3 that applies m first and n after it.
func (m Affine3) Then(n Affine3) Affine3 {
	return Affine3{X: n.step(m.X), Y: n.step(m.Y), Z: n.step(m.Z), O: n.Apply(m.O)}
}

// Det returns the factor by which volumes grow, negative where m mirrors.
func (m Affine3) Det() float64 { return m.X.Cross(m.Y).Dot(m.Z) }

// normals returns what takes the outward normal of a face to one of its image: normals
// go by the cofactors, not as steps do.
func (m Affine3) normals() Affine3 {
	sign := math.Copysign(1, m.Det())
	return Affine3{X: m.Y.Cross(m.Z).Mul(sign), Y: m.Z.Cross(m.X).Mul(sign), Z: m.X.Cross(m.Y).Mul(sign)}
}
