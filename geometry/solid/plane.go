package solid

// A Plane is the half of space N·p ≤ D; its boundary is the plane itself. N
// points out of the half that is meant. Where N has length 1, D is in mm.
type Plane struct {
	N Vec
	D float64
}

// Through returns the Plane whose boundary passes through the point at and
// whose outside lies in direction out.
func Through(at, out Vec) Plane {
	n := out.Unit()
	return Plane{n, n.Dot(at)}
}

// Flip returns the other half of space.
func (p Plane) Flip() Plane { return Plane{p.N.Mul(-1), -p.D} }

// Height returns how far q lies outside p in mm (where N has length 1),
// negative inside.
func (p Plane) Height(q Vec) float64 { return p.N.Dot(q) - p.D }

// Meet returns the point in which the boundaries of three planes meet (Cramer's rule).
func Meet(a, b, c Plane) Vec {
	bc, ca, ab := b.N.Cross(c.N), c.N.Cross(a.N), a.N.Cross(b.N)
	return bc.Mul(a.D).Add(ca.Mul(b.D)).Add(ab.Mul(c.D)).Mul(1 / a.N.Dot(bc))
}

// unit returns the same half of space with N at length 1. Without a normal
// the Plane is all of space (D ≥ 0) or nothing, and stays so.
func (p Plane) unit() Plane {
	if n := p.N.Norm(); n > 0 && n != 1 {
		return Plane{p.N.Mul(1 / n), p.D / n}
	}
	return p
}
