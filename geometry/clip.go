package geometry

// ClipHalfPlane appends to out the part of a convex polygon where n·q ≤ limit,
// its corners in the same order.
func ClipHalfPlane(out, convex []Point, n Point, limit float64) []Point {
	for i, q := range convex {
		r := convex[(i+1)%len(convex)]
		hq, hr := n.Dot(q)-limit, n.Dot(r)-limit
		if hq <= 0 {
			out = append(out, q)
		}
		if hq < 0 && hr > 0 || hq > 0 && hr < 0 {
			out = append(out, q.Lerp(r, hq/(hq-hr)))
		}
	}
	return out
}

// LeftOf returns the part of a convex polygon to the left of a line, on the way
// from its A to its B.
func LeftOf(convex []Point, line Segment) []Point {
	right := line.A.Sub(line.B).Perp()
	return ClipHalfPlane(nil, convex, right, right.Dot(line.A))
}

// CutAway returns the parts of a convex polygon outside another one, both
// counter-clockwise: convex polygons that share sides but no area. Parts smaller
// than least, in mm², are left out. Each side of the other splits off what lies
// beyond it.
func CutAway(polygon, convex []Point, least float64) [][]Point {
	var out [][]Point
	left := polygon
	for i, a := range convex {
		b := convex[(i+1)%len(convex)]
		if beyond := LeftOf(left, Segment{b, a}); Area(beyond) > least {
			out = append(out, beyond)
		}
		left = LeftOf(left, Segment{a, b})
	}
	if len(convex) < 3 || Area(left) <= least {
		return [][]Point{polygon}
	}
	return out
}

// A stretch is what lies between two shares of the way from A to B of a segment;
// there is nothing of it where lo > hi.
type stretch struct{ lo, hi float64 }

// clip keeps the shares t at which height + t·slope ≥ 0.
//
// It is Liang and Barsky's method: each side of a convex figure bounds t from
// below or from above.
func (w *stretch) clip(height, slope float64) {
	switch {
	case slope > 0:
		w.lo = max(w.lo, -height/slope)
	case slope < 0:
		w.hi = min(w.hi, -height/slope)
	case height < 0:
		*w = stretch{1, 0}
	}
}

// of returns the stretch of s, with its own ends where it reaches them.
func (w stretch) of(s Segment) Segment {
	out, d := s, s.B.Sub(s.A)
	if w.lo > 0 {
		out.A = s.A.Add(d.Mul(w.lo))
	}
	if w.hi < 1 {
		out.B = s.A.Add(d.Mul(w.hi))
	}
	return out
}

// within returns the stretch of s inside the convex polygon, and where there is some
// whether s runs along a side.
func within(s Segment, convex []Point) (w stretch, along bool) {
	const rounding = 1e-9 // mm: corners nearer than that are one
	d := s.B.Sub(s.A)
	w = stretch{0, 1}
	p := convex[len(convex)-1]
	for i := 0; i < len(convex) && w.lo < w.hi; i++ {
		// The inside is to the left of e: e × (A + t·d − p) ≥ 0.
		q := convex[i]
		if e := q.Sub(p); e.Dot(e) >= rounding*rounding {
			height, slope := e.Cross(s.A.Sub(p)), e.Cross(d)
			w.clip(height, slope)
			along = along || height == 0 && slope == 0
		}
		p = q
	}
	return w, along
}

// ClipSegment returns the part of s inside r and reports whether there is
// one. A segment that only touches r is returned as its touching part.
func ClipSegment(s Segment, r Rect) (Segment, bool) {
	d := s.B.Sub(s.A)
	w := stretch{0, 1}
	w.clip(s.A.X-r.Min.X, d.X)
	w.clip(r.Max.X-s.A.X, -d.X)
	w.clip(s.A.Y-r.Min.Y, d.Y)
	w.clip(r.Max.Y-s.A.Y, -d.Y)
	if w.lo > w.hi {
		return Segment{}, false
	}
	return w.of(s), true
}

// ClipConvex returns the part of s inside the convex polygon, whose corners run
// counter-clockwise, and reports whether there is one. What runs along a side
// is inside; what only touches is not.
func ClipConvex(s Segment, convex []Point) (Segment, bool) {
	w, _ := within(s, convex)
	return w.of(s), w.lo < w.hi
}

// CutOut returns the parts of s outside the convex polygon, whose corners run
// counter-clockwise: nothing, the whole of s, or one or two pieces of it. What
// runs along a side is outside.
func CutOut(s Segment, convex []Point) []Segment {
	w, along := within(s, convex)
	if along || w.lo >= w.hi {
		return []Segment{s}
	}
	var out []Segment
	if w.lo > 0 {
		out = append(out, stretch{0, w.lo}.of(s))
	}
	if w.hi < 1 {
		out = append(out, stretch{w.hi, 1}.of(s))
	}
	return out
}

// Meets reports whether s runs through the inside of the convex polygon,
// whose corners run counter-clockwise.
func Meets(s Segment, convex []Point) bool {
	w, along := within(s, convex)
	return !along && w.lo < w.hi
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
