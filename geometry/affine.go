package geometry

import "math"

// An Affine takes (x, y) to (A·x + C·y + E, B·x + D·y + F): the six numbers
// stand in the order of the matrix operator of a PDF page.
type Affine struct{ A, B, C, D, E, F float64 }

// Identity returns the Affine that leaves every point where it is.
func Identity() Affine { return Affine{A: 1, D: 1} }

// Translate moves by p.
func Translate(p Point) Affine { return Affine{A: 1, D: 1, E: p.X, F: p.Y} }

// Rotate turns counter-clockwise by a about the origin. The four quarter
// turns are exact.
func Rotate(a float64) Affine {
	s, c := math.Sincos(a)
	if q := a / (math.Pi / 2); q == math.Trunc(q) {
		s, c = math.Round(s), math.Round(c)
	}
	return Affine{A: c, B: s, C: -s, D: c}
}

// Scale stretches x by kx and y by ky.
func Scale(kx, ky float64) Affine { return Affine{A: kx, D: ky} }

// MirrorX reflects in the y axis, so that left hand becomes right.
func MirrorX() Affine { return Affine{A: -1, D: 1} }

// Apply returns the image of p.
func (m Affine) Apply(p Point) Point { return Point{m.A*p.X + m.C*p.Y + m.E, m.B*p.X + m.D*p.Y + m.F} }

// ApplyAll returns the images of all points in a new slice.
func (m Affine) ApplyAll(points []Point) []Point {
	return m.Append(make([]Point, 0, len(points)), points)
}

// Append appends the images of all points to out.
func (m Affine) Append(out, points []Point) []Point {
	for _, p := range points {
		out = append(out, m.Apply(p))
	}
	return out
}

// Then returns the Affine that applies m first and n after it.
func (m Affine) Then(n Affine) Affine {
	return Affine{
		A: n.A*m.A + n.C*m.B, B: n.B*m.A + n.D*m.B,
		C: n.A*m.C + n.C*m.D, D: n.B*m.C + n.D*m.D,
		E: n.A*m.E + n.C*m.F + n.E, F: n.B*m.E + n.D*m.F + n.F,
	}
}

// Inverse returns the Affine that undoes m. The result holds infinities when
// m flattens the plane (A·D = B·C).
func (m Affine) Inverse() Affine {
	k := 1 / (m.A*m.D - m.B*m.C)
	inv := Affine{A: m.D * k, B: -m.B * k, C: -m.C * k, D: m.A * k}
	o := inv.Apply(Pt(m.E, m.F))
	inv.E, inv.F = -o.X, -o.Y
	return inv
}
