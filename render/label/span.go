package label

import (
	"math"
	"slices"

	"rodsheet/geometry"
	"rodsheet/render/lettering"
	"rodsheet/render/page"
)

// A Span is a dimension as it stands on a page: its line from end to end and what its
// figure covers.
type Span struct {
	Line  geometry.Segment
	Box   [4]geometry.Point
	leads [2]geometry.Segment // out to it from what is measured
	led   bool
}

// Drawn returns the lines of a span as they are drawn: those that lead out to it, if any,
// and its own.
func (s Span) Drawn() []geometry.Segment {
	lines := []geometry.Segment{s.leads[0], s.leads[1], DrawnOn(s.Line)}
	if !s.led {
		return lines[2:]
	}
	return lines
}

// Sizes in mm on paper; common practice, no source.
const (
	leastAway = 3.0            // from what is measured to the line
	lane      = 5.5            // from one line to the next
	past      = 0.5            // what leads reach beyond the line
	short     = 5.0            // a line with no room for two heads
	tail      = 1.6 * HeadLong // of a short line, beyond its heads, which stand outside
	overhang  = 12.0           // of a figure on end beyond its line, where it takes less room than level
	nearest   = 2.0            // what a name keeps from a line of another
)

// HeadLong is the length of the head of an arrow, mm.
const HeadLong = 2.4

// Short reports whether the heads of a line stand outside, on the line drawn on.
func Short(line geometry.Segment) bool { return line.Length() < short }

// DrawnOn returns a line with what of it is drawn beyond its heads.
func DrawnOn(line geometry.Segment) geometry.Segment {
	if !Short(line) {
		return line
	}
	on := line.B.Sub(line.A).Unit().Mul(tail)
	return geometry.Segment{A: line.A.Sub(on), B: line.B.Add(on)}
}

// spanAt returns the span of a distance without its figure, in a lane counted outwards.
func spanAt(feet geometry.Segment, away geometry.Point, n int) Span {
	far := away.Norm()
	if far == 0 {
		return Span{Line: feet}
	}
	out := away.Unit()
	move := out.Mul(math.Max(far, leastAway) + float64(n)*lane)
	led := func(foot geometry.Point) geometry.Segment {
		return geometry.Segment{A: foot.Add(out.Mul(past)), B: foot.Add(move).Add(out.Mul(past))}
	}
	return Span{
		Line:  geometry.Segment{A: feet.A.Add(move), B: feet.B.Add(move)},
		leads: [2]geometry.Segment{led(feet.A), led(feet.B)},
		led:   true,
	}
}

// Room returns what a span takes with its figure where nothing is in the way.
func Room(text string, height float64, feet geometry.Segment, away geometry.Point) geometry.Rect {
	size := geometry.Pt(lettering.Width(text, height), height)
	f := spanAt(feet, away, 0).figure(size, away)
	at := f.along(0.5, f.out)
	if f.steep && size.X > f.long+overhang {
		at = f.level(0.5, f.out)
	}
	on := DrawnOn(f.Line)
	return at.reach(roomOf(size).box).Union(geometry.Bounds(on.A, on.B))
}

func steep(l geometry.Segment) bool {
	d := l.B.Sub(l.A)
	return math.Abs(d.Y) > math.Abs(d.X)
}

// A figure is the lettering of a span, with what its spots have in common.
type figure struct {
	Span
	size      geometry.Point
	unit, out geometry.Point // along the line; across it, away from what is measured
	long      float64
	angle     float64        // of lettering along the line
	reads     geometry.Point // of length 1, at the angle
	steep     bool
}

func (s Span) figure(size, away geometry.Point) figure {
	f := figure{Span: s, size: size, unit: s.Line.B.Sub(s.Line.A).Unit(), long: s.Line.Length(), angle: upright(s.Line.Angle()), steep: steep(s.Line)}
	f.reads = geometry.Polar(1, f.angle)
	if f.out = f.unit.Perp(); f.out.Dot(away) < 0 {
		f.out = f.out.Mul(-1)
	}
	return f
}

// beside returns the place so far off a share of the line; the ends of the leads are clear
// of what extends so far along it.
func (f figure) beside(t float64, side geometry.Point, extent, off float64) geometry.Point {
	if f.led && extent+1.4 > f.long && side == f.out {
		off += past
	}
	return f.Line.A.Lerp(f.Line.B, t).Add(side.Mul(off))
}

// level returns the spot of a level figure, along that of one along the line.
func (f figure) level(t float64, side geometry.Point) spot {
	return spot{centre: f.beside(t, side, f.size.Y, f.reach(side)+1.2), along: directions[0]}
}

func (f figure) along(t float64, side geometry.Point) spot {
	off := f.size.Y/2 + 1.3
	if side.Dot(f.reads.Perp()) > 0 {
		off = f.size.Y/2 + lettering.Descent(f.size.Y) + 0.9
	}
	return spot{centre: f.beside(t, side, f.size.X, off), angle: f.angle, along: f.reads}
}

// reach is how far a level figure reaches from its middle.
func (f figure) reach(d geometry.Point) float64 {
	return math.Abs(d.X)*f.size.X/2 + math.Abs(d.Y)*f.size.Y/2
}

// spots lists where the figure of a span may stand, best first: beside its line, away
// from what is measured, then on the other side where that is wide enough, then beyond its
// ends. Beside a steep line it stands level before it stands on end.
func (f figure) spots(yield func(spot) bool) {
	sides := [2]geometry.Point{f.out, f.out.Mul(-1)}
	if f.steep && !yield(f.level(0.5, f.out)) {
		return
	}
	for _, t := range shares() {
		for _, side := range sides {
			inside := math.Min(t, 1-t)*f.long > f.size.X/2+0.7
			if (inside || side == f.out) && !yield(f.along(t, side)) {
				return
			}
		}
	}
	if f.steep {
		for _, t := range shares() {
			for _, side := range sides {
				if math.Min(t, 1-t)*f.long > f.size.Y/2 && !yield(f.level(t, side)) {
					return
				}
			}
		}
	}
	on := DrawnOn(f.Line)
	for _, end := range [2]spot{{centre: on.B, along: f.unit}, {centre: on.A, along: f.unit.Mul(-1)}} {
		beyond := spot{centre: end.centre.Add(end.along.Mul(f.size.X/2 + 1.5)), angle: f.angle, along: f.reads}
		if f.steep {
			beyond = spot{centre: end.centre.Add(end.along.Mul(f.reach(end.along) + 1.5)), along: directions[0]}
		}
		if !yield(beyond) {
			return
		}
	}
}

// Lead keeps lettering off where the lines of a span lead out from what is measured, before
// any of them has its place.
func (p *Placer) Lead(feet geometry.Segment, away geometry.Point) {
	lines := spanAt(feet, away, 0).Drawn()
	for _, l := range lines[:len(lines)-1] {
		p.Bar(l.A, l.B)
	}
}

// Span places a distance with its figure: in the lane and at the spot that are free, or
// that touch least. It is never left out.
func (p *Placer) Span(text string, height float64, feet geometry.Segment, away geometry.Point) Span {
	size := geometry.Pt(lettering.Width(text, height), height)
	r := roomOf(size)
	lanes := 4
	if away.Norm() == 0 {
		lanes = 1
	}
	fewest := math.MaxInt
	var best Span
	var at spot
	for n := 0; n < lanes && fewest > 0; n++ {
		s := spanAt(feet, away, n)
		blocked := p.blocked(s)
		for c := range s.figure(size, away).spots {
			if best.Line == (geometry.Segment{}) {
				best, at = s, c
			}
			if blocked >= fewest {
				break
			}
			cost := p.touches(c, r, fewest-blocked)
			if cost < math.MaxInt {
				cost += blocked + n + p.stranger(c.box(r.box), s.Line)
			}
			if cost < fewest {
				fewest, best, at = cost, s, c
			}
			if fewest <= n {
				break
			}
		}
	}
	if fewest >= striking {
		p.Struck++
	}
	p.Texts = append(p.Texts, page.Text{At: at.at(-size.X/2, -size.Y/2), Height: height, Angle: at.angle, String: text})
	best.Box = at.box(r.box)
	p.keep(best.Box[:])
	for _, l := range best.Drawn() {
		p.Bar(l.A, l.B)
	}
	p.spans = append(p.spans, best)
	return best
}

// blocked counts what is wrong with where the lines of a span run: over lettering, close
// beside another one, along a line, or so that its figure is the nearest to another line.
func (p *Placer) blocked(s Span) int {
	n := 0
	on := DrawnOn(s.Line)
	for _, l := range s.Drawn() {
		bounds := geometry.Bounds(l.A, l.B)
		for i, b := range p.bounds {
			if bounds.Overlaps(b) && geometry.Meets(l, p.Boxes[i]) {
				n += hiding
			}
		}
		for _, o := range p.spans {
			if across(l, o.Line) {
				n++
			}
		}
	}
	for _, o := range p.spans {
		if gap(o.Box, s.Line) < gap(o.Box, o.Line)+hair || along(on, DrawnOn(o.Line)) {
			n += hiding
		}
	}
	if s.led {
		for i := range p.lines {
			if along(on, p.lines[i].Segment) {
				n += striking
			}
		}
	}
	return n
}

// stranger is what it costs that a figure stands as near to the line of another span as
// to its own.
func (p *Placer) stranger(box [4]geometry.Point, own geometry.Segment) int {
	for _, o := range p.spans {
		if gap(box, o.Line) < gap(box, own)+hair {
			return hiding
		}
	}
	return 0
}

// mistaken is what it costs that a name would be read as that of another line or place:
// it stands nearer to a line that has a name or figure of its own, or on another area.
func (p *Placer) mistaken(s spot, r room, on geometry.Segment) int {
	point := on.A == on.B
	if point && s.link.Length() > 0 && p.elsewhere(s, on.A) {
		return 1
	}
	box := s.box(r.box)
	clear := nearest
	if !point {
		clear = min(clear, gap(box, on))
	}
	near := func(l geometry.Segment) bool { return l != on && gap(box, l) < clear-hair }
	for _, o := range p.spans {
		if near(o.Line) {
			return misread
		}
	}
	if !point && slices.ContainsFunc(p.Named, near) {
		return misread
	}
	return 0
}

// elsewhere reports whether lettering stands on an area, another than a point lies on.
func (p *Placer) elsewhere(s spot, at geometry.Point) bool {
	under := p.ground(s.centre)
	return under >= 0 && under != p.ground(at)
}

// ground returns which area is seen at a point, −1 where there is none.
func (p *Placer) ground(at geometry.Point) int {
	for i := len(p.Grounds) - 1; i >= 0; i-- {
		if geometry.Meets(geometry.Segment{A: at, B: at}, p.Grounds[i]) {
			return i
		}
	}
	return -1
}

// gap is the distance between lettering and a line.
func gap(box [4]geometry.Point, l geometry.Segment) float64 {
	if geometry.Meets(l, box[:]) {
		return 0
	}
	least := math.Inf(1)
	for i, c := range box {
		side := geometry.Segment{A: c, B: box[(i+1)%len(box)]}
		least = min(least, l.Distance(c), side.Distance(l.A), side.Distance(l.B))
	}
	return least
}
