package solid

import (
	"cmp"
	"math"
	"slices"
)

// Tolerance is the share of the largest coordinate of a Solid within which a
// corner counts as lying on a cutting plane: 1e-8 mm where that coordinate is
// a metre. It is far above what rounding does (1e-13 mm there) and below
// anything that a volume shows. A slice thinner than that is not cut off, and
// a Solid thinner than that is not left over.
const Tolerance = 1e-11

// Cut returns the part of s inside p. It is empty when nothing is left, and s
// itself when nothing goes.
func (s Solid) Cut(p Plane) Solid {
	p = p.unit()
	lo, hi, slack := s.span(p)
	switch {
	case hi <= slack:
		return s
	case lo >= -slack:
		return Solid{}
	}
	out := Solid{make([]Face, 0, len(s.faces)+1)}
	rim := make([]Vec, 0, 8)
	for _, f := range s.faces {
		var left Face
		left, rim = f.cut(p, slack, rim)
		if len(left.Corners) > 2 {
			out.faces = append(out.faces, left)
		}
	}
	out.faces = append(out.faces, Face{p, goRound(rim, p.N)})
	return out
}

// Intersect returns what s and t share.
func (s Solid) Intersect(t Solid) Solid {
	if t.Empty() {
		return Solid{}
	}
	for _, f := range t.faces {
		if s = s.Cut(f.Plane); s.Empty() {
			break
		}
	}
	return s
}

// apart reports whether a face of s or of t has all of the other solid outside
// it: they share no volume then. It is quick to ask, and most pairs are so.
func (s Solid) apart(t Solid) bool { return s.outside(t) || t.outside(s) }

// outside reports whether s lies outside some face of t.
func (s Solid) outside(t Solid) bool {
	for _, f := range t.faces {
		if lo, _, slack := s.span(f.Plane); lo >= -slack {
			return true
		}
	}
	return false
}

// Subtract returns s without t as convex pieces that share faces but no
// volume: s itself in one piece where t takes nothing from it.
//
// Each plane of t in turn splits off what lies outside it.
func (s Solid) Subtract(t Solid) []Solid {
	if s.Empty() {
		return nil
	}
	if t.Empty() || s.outside(t) {
		return []Solid{s}
	}
	var out []Solid
	shared := s
	for _, f := range t.faces {
		piece := shared.Cut(f.Plane.Flip())
		if piece.Empty() {
			continue
		}
		if shared = shared.Cut(f.Plane); shared.Empty() {
			return []Solid{s}
		}
		out = append(out, piece)
	}
	return out
}

// span returns the least and the greatest height of s over p, and the slack
// that the size of s gives. If s is empty, lo is +Inf and hi is -Inf.
func (s Solid) span(p Plane) (lo, hi, slack float64) {
	lo, hi = math.Inf(1), math.Inf(-1)
	for _, f := range s.faces {
		least, most := f.span(p)
		lo, hi = min(lo, least), max(hi, most)
		for _, q := range f.Corners {
			slack = max(slack, q.largest())
		}
	}
	return lo, hi, slack * Tolerance
}

// cut returns what p leaves of f, f itself where that is all of it, without
// corners if nothing of it lies deeper than slack, and adds to rim the corners that lie on p.
//
// A crossing is reckoned from the inner end of its edge to the outer one, so
// both faces of the edge find the same point.
func (f Face) cut(p Plane, slack float64, rim []Vec) (Face, []Vec) {
	lo, hi := f.span(p)
	if hi < -slack {
		return f, rim
	}
	if lo > slack {
		return Face{}, rim
	}
	left := make([]Vec, 0, len(f.Corners)+1)
	on := func(q Vec) {
		left = append(left, q)
		if !slices.Contains(rim, q) {
			rim = append(rim, q)
		}
	}
	hb := p.Height(f.Corners[0])
	for i, a := range f.Corners {
		b := f.Corners[(i+1)%len(f.Corners)]
		ha := hb
		hb = p.Height(b)
		switch {
		case ha < -slack:
			left = append(left, a)
		case ha <= slack:
			on(a)
		}
		switch {
		case ha < -slack && hb > slack:
			on(a.Lerp(b, ha/(ha-hb)))
		case ha > slack && hb < -slack:
			on(b.Lerp(a, hb/(hb-ha)))
		}
	}
	if lo >= -slack {
		left = nil
	}
	return Face{f.Plane, left}, rim
}

// span returns the least and the greatest height of a corner of f over p.
func (f Face) span(p Plane) (lo, hi float64) {
	lo, hi = math.Inf(1), math.Inf(-1)
	for _, q := range f.Corners {
		h := p.Height(q)
		lo, hi = min(lo, h), max(hi, h)
	}
	return lo, hi
}

// goRound sorts the corners of a convex polygon in the plane square to the
// unit vector n: counter-clockwise for one who looks against n.
func goRound(corners []Vec, n Vec) []Vec {
	var centre Vec
	for _, p := range corners {
		centre = centre.Add(p.Mul(1 / float64(len(corners))))
	}
	u, v := n.square()
	type bearing struct {
		at    Vec
		angle float64
	}
	round := make([]bearing, 0, 16)
	for _, p := range corners {
		d := p.Sub(centre)
		round = append(round, bearing{p, math.Atan2(d.Dot(v), d.Dot(u))})
	}
	slices.SortFunc(round, func(a, b bearing) int { return cmp.Compare(a.angle, b.angle) })
	for i, b := range round {
		corners[i] = b.at
	}
	return corners
}
