package render

import (
	"math"

	"rodsheet/geometry"
	"rodsheet/geometry/lists"
	"rodsheet/geometry/measure"
	"rodsheet/render/accuracy"
	"rodsheet/templates"
)

const (
	hair       = 1e-6 // what rounding may do to a place, in mm
	markRadius = 2.0  // of a registration mark; its cross is twice as wide
	fullTurn   = 2 * math.Pi
)

// A seam is the trim line between two kept tiles, with the strokes near it.
// The tile on its left is trimmed and laid on the other.
type seam struct {
	geometry.Segment
	ink []geometry.Segment
}

// seams returns the seams of p, in laid coordinates. A column's seam runs up
// and a row's seam to the right, so that the left and the upper tile, which
// are trimmed, are to the left.
func (p *tiling) seams(ink []geometry.Segment) []seam {
	var out []seam
	add := func(a, b geometry.Point) {
		near := geometry.Bounds(a, b).Offset(4 * markRadius)
		beside := lists.Where(ink, func(l geometry.Segment) bool { return near.Overlaps(geometry.Bounds(l.A, l.B)) })
		out = append(out, seam{geometry.Segment{A: a, B: b}, beside})
	}
	for _, t := range p.tiles() {
		core := t.core()
		if p.has(t.row, t.col+1) {
			add(geometry.Pt(core.Max.X, core.Min.Y), core.Max)
		}
		if p.has(t.row+1, t.col) {
			add(core.Min, geometry.Pt(core.Max.X, core.Min.Y))
		}
	}
	return out
}

// register places two registration marks and two verniers on every seam. They
// stand on the trim line, so that a trimmed sheet shows half of each and its
// neighbour the other half.
func (p *tiling) register(u measure.Unit) {
	if p.rows*p.cols == 1 {
		return
	}
	for _, s := range p.seams(p.ink(false)) {
		first, last := s.clearest(s.A, s.B), s.clearest(s.B, s.A)
		p.marks = append(p.marks, first, last)
		p.verniers = append(p.verniers, s.verniers(first, last, vernierStep(u))...)
	}
}

// clearest returns the point in the first part of the way from a to b that is
// farthest from all strokes, as near to a as can be among those far enough.
func (s seam) clearest(a, b geometry.Point) geometry.Point {
	length := a.Distance(b)
	first, last := math.Min(0.25, (2*markRadius+1)/length), 0.4
	const enough = 2 * markRadius
	var best geometry.Point
	widest := -1.0
	for k := range 9 {
		at := a.Lerp(b, first+(last-first)*float64(k)/8)
		free := math.Min(nearest(at, s.ink), enough)
		if free > widest {
			best, widest = at, free
		}
	}
	return best
}

func nearest(p geometry.Point, strokes []geometry.Segment) float64 {
	best := math.Inf(1)
	for _, s := range strokes {
		best = math.Min(best, s.Distance(p))
	}
	return best
}

func chain(points []geometry.Point) []geometry.Segment {
	out := make([]geometry.Segment, max(0, len(points)-1))
	for i := range out {
		out[i] = geometry.Segment{A: points[i], B: points[i+1]}
	}
	return out
}

// assess fills in how far p is to be trusted. What proves a printer is not
// judged by the model.
func (p *tiling) assess(l Layout) {
	if p.Proof {
		return
	}
	base, b := 0.0, p.Bounds()
	for _, s := range p.Strokes {
		if s.Role != templates.Cut && s.Role != templates.Outline {
			continue
		}
		for _, e := range chain(s.Points) {
			base = max(base, e.Length())
		}
	}
	p.trust = accuracy.Assess(base, math.Max(b.Width(), b.Height()), p.taping(), !l.Correct.none(), l.Unit)
}

// taping returns the seams on the way through all rows and columns of p.
func (p *tiling) taping() accuracy.Taping {
	t := accuracy.Taping{Seams: p.rows + p.cols - 2, Shortest: math.Inf(1)}
	for _, s := range p.seams(nil) {
		t.Shortest = min(t.Shortest, s.Length())
	}
	return t
}
