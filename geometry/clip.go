package geometry

import "math"

// ClipSegment returns the part of s inside r and reports whether there is
// one. A segment that only touches r is returned as its touching part.
//
// The method is Liang and Barsky's: the segment is A + t·(B − A), and each
// side of r bounds t from below or from above.
func ClipSegment(s Segment, r Rect) (Segment, bool) {
	d := s.B.Sub(s.A)
	lo, hi := 0.0, 1.0
	for _, side := range [4][2]float64{
		{-d.X, s.A.X - r.Min.X}, {d.X, r.Max.X - s.A.X},
		{-d.Y, s.A.Y - r.Min.Y}, {d.Y, r.Max.Y - s.A.Y},
	} {
		p, q := side[0], side[1]
		switch {
		case p == 0 && q < 0:
			return Segment{}, false
		case p < 0:
			lo = math.Max(lo, q/p)
		case p > 0:
			hi = math.Min(hi, q/p)
		}
	}
	if lo > hi {
		return Segment{}, false
	}
	out := s
	if lo > 0 {
		out.A = s.A.Add(d.Mul(lo))
	}
	if hi < 1 {
		out.B = s.A.Add(d.Mul(hi))
	}
	return out, true
}

// ClipLine returns the runs of an open polyline that lie inside r. The
// polyline is never closed along the sides of r, so no edge appears that was
// not there. Runs of no length are left out.
func ClipLine(line []Point, r Rect) [][]Point {
	var runs [][]Point
	var run []Point
	flush := func() {
		if len(run) > 1 {
			runs = append(runs, run)
		}
		run = nil
	}
	for i := 1; i < len(line); i++ {
		s := Segment{line[i-1], line[i]}
		c, ok := ClipSegment(s, r)
		if !ok || c.A == c.B {
			if !ok {
				flush()
			}
			continue
		}
		if len(run) == 0 || run[len(run)-1] != c.A {
			flush()
			run = append(run, c.A)
		}
		run = append(run, c.B)
		if c.B != s.B {
			flush()
		}
	}
	flush()
	return runs
}
