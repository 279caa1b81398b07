package render

import (
	"iter"
	"math"

	"rodsheet/geometry"
	"rodsheet/render/lettering"
	"rodsheet/render/page"
)

// A placer finds room for lettering among the lines of one tile. Everything
// is in page coordinates.
type placer struct {
	window  geometry.Rect
	strike  int                // a line under lettering is as bad as so many that a leader crosses; at least 1
	lines   []obstacle         // what lettering must not touch
	boxes   [][]geometry.Point // lettering already set, corners counter-clockwise
	texts   []page.Text
	leaders []geometry.Segment
}

// An obstacle is a line with the box round it.
type obstacle struct {
	geometry.Segment
	bounds geometry.Rect
}

// bar keeps lettering off lines.
func (p *placer) bar(lines ...geometry.Segment) {
	for _, l := range lines {
		p.lines = append(p.lines, obstacle{l, geometry.Bounds(l.A, l.B)})
	}
}

// A spot is one place where a label may stand.
type spot struct {
	centre geometry.Point
	angle  float64
	leader geometry.Segment // from the label to what it names; no length: none
}

// set places text for the line or point on, at the first spot that is free.
// Where none is, it takes the one that touches the fewest lines: a label is
// never dropped.
func (p *placer) set(text string, height float64, on geometry.Segment) {
	size := geometry.Pt(lettering.Width(text, height), height)
	fewest := math.MaxInt
	var best spot
	for s := range spots(on, size) {
		n := p.touches(s, size, fewest)
		if n < fewest {
			fewest, best = n, s
		}
		if n == 0 {
			break
		}
	}
	if fewest == math.MaxInt {
		return
	}
	p.put(text, height, size, best)
}

// avoid keeps lettering out of a box.
func (p *placer) avoid(r geometry.Rect) { p.boxes = append(p.boxes, r.Corners()) }

func (p *placer) put(text string, height float64, size geometry.Point, s spot) {
	along := geometry.Polar(1, s.angle)
	start := s.centre.Sub(along.Mul(size.X / 2)).Sub(along.Turn().Mul(size.Y / 2))
	p.texts = append(p.texts, page.Text{At: start, Height: height, Angle: s.angle, String: text})
	p.boxes = append(p.boxes, s.box(size))
	if s.leader.A != s.leader.B {
		p.leaders = append(p.leaders, s.leader)
		p.bar(s.leader)
	}
}

// box returns the corners of what the label covers: its letters, what hangs
// below the base line, and a little air.
func (s spot) box(size geometry.Point) []geometry.Point {
	const air = 0.7
	u := geometry.Polar(1, s.angle)
	v := u.Turn()
	down := lettering.Descent(size.Y)
	left, right := -size.X/2-air, size.X/2+air
	low, high := -size.Y/2-down-air/2, size.Y/2+air
	corner := func(x, y float64) geometry.Point { return s.centre.Add(u.Mul(x)).Add(v.Mul(y)) }
	return []geometry.Point{corner(left, low), corner(right, low), corner(right, high), corner(left, high)}
}

// touches counts what is wrong with a spot: lines under it, lettering under
// it or under its leader. A spot off the window counts as impossible. It stops
// counting lines at enough.
func (p *placer) touches(s spot, size geometry.Point, enough int) int {
	box := s.box(size)
	bounds := geometry.Bounds(box...)
	if !p.window.Holds(bounds) {
		return math.MaxInt
	}
	n := 0
	for _, l := range p.lines {
		if bounds.Overlaps(l.bounds) && geometry.Meets(l.Segment, box) {
			if n += max(1, p.strike); n >= enough {
				return n
			}
		}
	}
	const crossing = 100 // lettering over lettering is worse than over any line
	leads := s.leader.A != s.leader.B
	for _, b := range p.boxes {
		if bounds.Overlaps(geometry.Bounds(b...)) && overlap(box, b) {
			n += crossing
		}
		if leads && geometry.Meets(s.leader, b) {
			n += crossing
		}
	}
	if leads && n == 0 {
		n += p.crosses(s.leader)
	}
	return n
}

// crosses counts the lines that a leader runs across, from one side of each
// to the other.
func (p *placer) crosses(leader geometry.Segment) int {
	n := 0
	bounds := geometry.Bounds(leader.A, leader.B)
	d := leader.B.Sub(leader.A)
	for _, l := range p.lines {
		if !bounds.Overlaps(l.bounds) {
			continue
		}
		e := l.B.Sub(l.A)
		const hair = 1e-6 // what a leader ends on it does not cross
		if d.Cross(l.A.Sub(leader.A))*d.Cross(l.B.Sub(leader.A)) < -hair &&
			e.Cross(leader.A.Sub(l.A))*e.Cross(leader.B.Sub(l.A)) < -hair {
			n++
		}
	}
	return n
}

// overlap reports whether two convex polygons share more than a border: no
// side of either separates them.
func overlap(a, b []geometry.Point) bool {
	return !separated(a, b) && !separated(b, a)
}

func separated(a, b []geometry.Point) bool {
	for i, p := range a {
		side := a[(i+1)%len(a)].Sub(p)
		outside := true
		for _, q := range b {
			if side.Cross(q.Sub(p)) > 0 {
				outside = false
				break
			}
		}
		if outside {
			return true
		}
	}
	return false
}

// spots lists where a label for on may stand, best first: a line's along it,
// then beside it, level, with a leader; a point's round it, ever farther off.
func spots(on geometry.Segment, size geometry.Point) iter.Seq[spot] {
	return func(yield func(spot) bool) {
		if on.A == on.B {
			around(on.A, size, yield)
			return
		}
		for _, s := range alongside(on, size) {
			if !yield(s) {
				return
			}
		}
		for _, t := range shares() {
			if !around(on.A.Lerp(on.B, t), size, yield) {
				return
			}
		}
	}
}

// shares are the places along a line that are tried, from its middle out.
func shares() [9]float64 { return [9]float64{0.5, 0.4, 0.6, 0.3, 0.7, 0.22, 0.78, 0.15, 0.85} }

func alongside(on geometry.Segment, size geometry.Point) []spot {
	if on.Length() < size.X+2 {
		return nil
	}
	angle := upright(on.Angle())
	away := geometry.Polar(1, angle).Turn()
	down := lettering.Descent(size.Y)
	var out []spot
	for _, t := range shares() {
		at := on.A.Lerp(on.B, t)
		if end := math.Min(t, 1-t) * on.Length(); end < size.X/2 {
			continue
		}
		above := size.Y/2 + 1.2
		if down > 0 {
			above = size.Y/2 + down + 0.9
		}
		out = append(out,
			spot{centre: at.Add(away.Mul(above)), angle: angle},
			spot{centre: at.Sub(away.Mul(size.Y/2 + 1.3)), angle: angle})
	}
	return out
}

// upright turns a direction so that lettering along it is read from below or
// from the right: the angle lies in (−90°, 90°].
func upright(a float64) float64 {
	const slack = 1e-9
	for a > math.Pi/2+slack {
		a -= math.Pi
	}
	for a <= -math.Pi/2+slack {
		a += math.Pi
	}
	return a
}

// around yields spots round a point, level and upright by turns, and reports
// whether more are wanted.
func around(at geometry.Point, size geometry.Point, yield func(spot) bool) bool {
	if !yield(spot{centre: at}) {
		return false
	}
	for _, far := range [...]float64{1.5, 3, 5, 8, 12, 17, 23, 30, 40, 55} {
		for _, turned := range [...]bool{false, true} {
			for k := range 16 {
				if !yield(beside(at, size, far, float64(k)*math.Pi/8, turned)) {
					return false
				}
			}
		}
	}
	return true
}

// beside returns the spot whose box is nearest to at in direction dir, at
// distance far.
func beside(at, size geometry.Point, far, dir float64, turned bool) spot {
	half := geometry.Pt(size.X/2+0.7, size.Y/2+0.9)
	angle := 0.0
	if turned {
		half.X, half.Y = half.Y, half.X
		angle = math.Pi / 2
	}
	u := geometry.Polar(1, dir)
	// The centre moves out until the near side of the box is far away: the
	// box's corner, side or end, whichever faces the point.
	edge := geometry.Pt(u.X*far+sign(u.X)*half.X, u.Y*far+sign(u.Y)*half.Y)
	s := spot{centre: at.Add(edge), angle: angle}
	const close = 4
	if far >= close {
		s.leader = geometry.Segment{A: at.Add(u.Mul(far)), B: at}
	}
	return s
}

func sign(x float64) float64 {
	switch {
	case x > 1e-9:
		return 1
	case x < -1e-9:
		return -1
	}
	return 0
}
