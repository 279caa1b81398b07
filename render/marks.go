package render

import (
	"math"

	"rodsheet/geometry"
)

// A cross is one end of the check lengths of a drawing, in laid coordinates.
type cross struct {
	name string
	at   geometry.Point
}

const (
	markRadius = 2.0 // of a registration mark; its cross is twice as wide
	fullTurn   = 2 * math.Pi
)

// register places two registration marks on the seam of every pair of
// neighbouring tiles. They stand on the trim line, so that a trimmed sheet
// shows half of each mark and its neighbour the other half.
func (p *laid) register() {
	if p.rows*p.cols == 1 {
		return
	}
	strokes := p.segments()
	for _, t := range p.tiles() {
		core := t.core()
		if t.col < t.cols {
			a, b := geometry.Pt(core.Max.X, core.Min.Y), core.Max
			p.marks = append(p.marks, clearest(a, b, strokes), clearest(b, a, strokes))
		}
		if t.row < t.rows {
			a, b := core.Min, geometry.Pt(core.Max.X, core.Min.Y)
			p.marks = append(p.marks, clearest(a, b, strokes), clearest(b, a, strokes))
		}
	}
}

// segments returns the strokes of p, hatching left out, in laid coordinates.
func (p *laid) segments() []geometry.Segment {
	var out []geometry.Segment
	for _, s := range p.Strokes {
		if !light(s.Role) {
			out = append(out, chain(p.turn.ApplyAll(s.Points))...)
		}
	}
	return out
}

// clearest returns the point in the first part of the way from a to b that is
// farthest from all strokes, as near to a as can be among those far enough.
func clearest(a, b geometry.Point, strokes []geometry.Segment) geometry.Point {
	length := a.Distance(b)
	first, last := math.Min(0.25, (2*markRadius+1)/length), 0.4
	const enough = 2 * markRadius
	var best geometry.Point
	widest := -1.0
	for k := range 9 {
		at := a.Lerp(b, first+(last-first)*float64(k)/8)
		free := math.Min(nearest(at, strokes), enough)
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

// addCrosses places the ends of the check lengths of a drawing of several
// tiles just outside its strokes: A–B along, A–C across, B–C on the diagonal.
// A–B and A–C are whole multiples of step, which a tape shows without guessing.
func (p *laid) addCrosses(step float64) {
	if p.rows*p.cols == 1 {
		return
	}
	const out = room / 2
	b := p.bounds.Grow(out - room)
	whole := func(x float64) float64 { return math.Max(1, math.Floor(x/step)) * step }
	w, h := whole(b.Width()), whole(b.Height())
	p.crosses = []cross{
		{"A", b.Min},
		{"B", b.Min.Add(geometry.Pt(w, 0))},
		{"C", b.Min.Add(geometry.Pt(0, h))},
	}
}

// chain returns the segments of a polyline.
func chain(points []geometry.Point) []geometry.Segment {
	var out []geometry.Segment
	for i := 1; i < len(points); i++ {
		out = append(out, geometry.Segment{A: points[i-1], B: points[i]})
	}
	return out
}
