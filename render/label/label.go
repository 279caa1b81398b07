// Package label finds room for lettering among lines. It knows no drawing.
package label

import (
	"iter"
	"math"
	"slices"

	"rodsheet/geometry"
	"rodsheet/render/lettering"
	"rodsheet/render/page"
)

// A Placer finds room for lettering in a window. Everything is in page
// coordinates.
type Placer struct {
	Window  geometry.Rect
	Texts   []page.Text        // lettering that is set
	Leaders []geometry.Segment // from it to what it names
	Grounds [][]geometry.Point // areas under it, convex, each over those before it
	Named   []geometry.Segment // lines that lettering names
	Boxes   [][]geometry.Point // marks of seams, then what lettering covers; corners counter-clockwise
	Struck  int                // how much of the lettering stands on something
	Cost    int                // what is wrong with where the rest stands, in lines between it and what it names
	Strict  bool               // that is not set, only counted
	lines   []obstacle         // what lettering must not touch
	bounds  []geometry.Rect    // of the boxes
	spans   []Span
	marks   int // how many of the boxes are marks
}

// An obstacle is a line with the box round it.
type obstacle struct {
	geometry.Segment
	bounds geometry.Rect
}

// Reserve makes room for so many lines to come.
func (p *Placer) Reserve(lines int) { p.lines = slices.Grow(p.lines, lines) }

// Bar keeps lettering off a line from point to point.
func (p *Placer) Bar(points ...geometry.Point) {
	for i := 1; i < len(points); i++ {
		l := geometry.Segment{A: points[i-1], B: points[i]}
		p.lines = append(p.lines, obstacle{l, geometry.Bounds(l.A, l.B)})
	}
}

// Copy returns a placer with all that is set, to try a way of setting the rest.
func (p *Placer) Copy() *Placer {
	c := *p
	c.Texts, c.Leaders, c.Boxes = slices.Clone(p.Texts), slices.Clone(p.Leaders), slices.Clone(p.Boxes)
	c.lines, c.bounds = slices.Clone(p.lines), slices.Clone(p.bounds)
	return &c
}

// A spot is one place where a label may stand.
type spot struct {
	centre geometry.Point
	angle  float64
	along  geometry.Point   // of length 1, at the angle
	link   geometry.Segment // from the label to what it names; no length: it lies beside it
	onEnd  bool             // and so runs away from the line that it names
}

// led reports whether a leader is drawn along the link: without one the eye
// finds the way over a few millimetres only, and from lettering that runs away not even so.
func (s spot) led() bool {
	const close = 4
	return s.onEnd || s.link.Length() >= close-1e-9
}

// Set places text for the line or point on, at the first spot that is free.
// Where none is, it takes the one that touches the fewest lines: a label is
// dropped only by a strict placer, or where it is wider than the window.
func (p *Placer) Set(text string, height float64, on geometry.Segment) {
	size := geometry.Pt(lettering.Width(text, height), height)
	r := roomOf(size)
	fewest, struck := math.MaxInt, true
	if p.Strict {
		fewest = striking + misread
	}
	best := p.anyhow(on.Mid(), size)
	for s := range spots(on, size, p.Window) {
		n := p.touches(s, r, fewest)
		if n >= fewest {
			continue
		}
		cost := n + misread // what stands on a line is worse than what may be misread
		if n < striking {
			cost = n + p.mistaken(s, r, on)
		}
		if cost < fewest {
			fewest, best, struck = cost, s, n >= striking
		}
		if fewest == 0 {
			break
		}
	}
	if !struck {
		p.Cost += fewest
	} else if p.Struck++; p.Strict {
		return
	}
	if fewest == math.MaxInt && !p.Window.Holds(best.reach(r.box)) {
		return // wider than the window
	}
	start := best.at(-size.X/2, -size.Y/2)
	p.Texts = append(p.Texts, page.Text{At: start, Height: height, Angle: best.angle, String: text})
	box := best.box(r.box)
	p.keep(box[:])
	if best.led() || best.link.Length() > 0 && on.A == on.B && p.elsewhere(best, on.A) {
		p.Leaders = append(p.Leaders, best.link)
		p.Bar(best.link.A, best.link.B)
	}
}

// anyhow returns where lettering that has room nowhere stands: as near to a place as the
// window lets it.
func (p *Placer) anyhow(at, size geometry.Point) spot {
	within := func(x, low, high float64) float64 { return math.Max(math.Min(x, high), math.Min(low, high)) }
	return spot{along: geometry.Pt(1, 0), centre: geometry.Pt(
		within(at.X, p.Window.Min.X+size.X/2, p.Window.Max.X-size.X/2),
		within(at.Y, p.Window.Min.Y+size.Y/2, p.Window.Max.Y-size.Y/2))}
}

// Avoid keeps lettering out of the box round a mark of a seam. All of them come
// before any lettering.
func (p *Placer) Avoid(r geometry.Rect) {
	p.keep(r.Corners())
	p.marks++
}

func (p *Placer) keep(box []geometry.Point) {
	p.Boxes = append(p.Boxes, box)
	p.bounds = append(p.bounds, geometry.Bounds(box...))
}

// A room is what lettering covers about the middle of its capitals, with a little
// air, as it is read: all of it, and what other lettering keeps clear of.
type room struct{ box, wider geometry.Rect }

// apart is what is left free beside lettering, in mm, more than a line needs: two
// names at a space's width are read as one.
const apart = 1.2

func roomOf(size geometry.Point) room {
	const air = 0.7
	across := func(half float64) geometry.Rect {
		return geometry.Rect{
			Min: geometry.Pt(-half-air, -size.Y/2-lettering.Descent(size.Y)-air/2),
			Max: geometry.Pt(half+air, size.Y/2+air),
		}
	}
	return room{across(size.X / 2), across((size.X + 2*apart) / 2)}
}

// at returns the place x along the lettering and y up it from its middle.
func (s spot) at(x, y float64) geometry.Point {
	return s.centre.Add(s.along.Mul(x)).Add(s.along.Perp().Mul(y))
}

// reach returns the box on the page round r at the spot.
func (s spot) reach(r geometry.Rect) geometry.Rect {
	u, v := s.along, s.along.Perp()
	a, b, c, d := u.Mul(r.Min.X), u.Mul(r.Max.X), v.Mul(r.Min.Y), v.Mul(r.Max.Y)
	return geometry.Rect{
		Min: s.centre.Add(geometry.Pt(min(a.X, b.X), min(a.Y, b.Y))).Add(geometry.Pt(min(c.X, d.X), min(c.Y, d.Y))),
		Max: s.centre.Add(geometry.Pt(max(a.X, b.X), max(a.Y, b.Y))).Add(geometry.Pt(max(c.X, d.X), max(c.Y, d.Y))),
	}
}

// box returns the corners of r at the spot.
func (s spot) box(r geometry.Rect) [4]geometry.Point {
	return [4]geometry.Point{s.at(r.Min.X, r.Min.Y), s.at(r.Max.X, r.Min.Y), s.at(r.Max.X, r.Max.Y), s.at(r.Min.X, r.Max.Y)}
}

// What is wrong with a spot, counted in lines between a label and what it
// names.
const (
	misread  = 4   // lettering nearer to what another speaks of
	tangled  = 3   // a leader across another, more than across a line: the eye follows the wrong one
	striking = 5   // a line under lettering
	hiding   = 100 // lettering under lettering or under a leader
)

// touches counts what is wrong with a spot: lines under it, lettering under
// it or under its leader, lines on the way to what it names. A spot off the
// window counts as impossible. It stops counting at enough.
func (p *Placer) touches(s spot, r room, enough int) int {
	bounds := s.reach(r.box)
	if !p.Window.Holds(bounds) {
		return math.MaxInt
	}
	n := 0
	corners := s.box(r.box)
	for i := range p.lines {
		l := &p.lines[i] // most lie elsewhere: they are not copied
		if bounds.Overlaps(l.bounds) && geometry.Meets(l.Segment, corners[:]) {
			if n += striking; n >= enough {
				p.lines[0], p.lines[i] = p.lines[i], p.lines[0] // the next spot is likely to meet it too
				return n
			}
		}
	}
	wider, led := s.box(r.wider), s.led()
	around, way := s.reach(r.wider), geometry.Bounds(s.link.A, s.link.B)
	for i, b := range p.bounds {
		if around.Overlaps(b) && Overlap(wider[:], p.Boxes[i]) {
			n += hiding
		}
		// A leader has to reach what lies among the marks of a seam.
		if led && way.Overlaps(b) && geometry.Meets(s.link, p.Boxes[i]) && !(i < p.marks && b.Contains(s.link.B)) {
			n += hiding
		}
		if n >= enough {
			return n
		}
	}
	if n < enough && s.link.A != s.link.B {
		n += p.crosses(s.link)
	}
	return n
}

// crosses counts the lines that a link runs across, from one side of each to
// the other, or along.
func (p *Placer) crosses(link geometry.Segment) int {
	n := 0
	bounds := geometry.Bounds(link.A, link.B)
	for i := range p.lines {
		l := &p.lines[i] // most lie elsewhere: they are not copied
		if bounds.Overlaps(l.bounds) && (across(link, l.Segment) || along(link, l.Segment)) {
			n++
		}
	}
	for _, l := range p.Leaders {
		if across(link, l) {
			n += tangled
		}
	}
	return n
}

// hair is what rounding may do to a place on a page, in mm.
const hair = 1e-6

// across reports whether a link runs from one side of a line to the other. It
// does not cross what it ends on.
func across(link, l geometry.Segment) bool {
	d, e := link.B.Sub(link.A), l.B.Sub(l.A)
	return d.Cross(l.A.Sub(link.A))*d.Cross(l.B.Sub(link.A)) < -hair &&
		e.Cross(link.A.Sub(l.A))*e.Cross(link.B.Sub(l.A)) < -hair
}

// along reports whether a link lies on a line, where it would not be seen.
func along(link, l geometry.Segment) bool {
	u := link.B.Sub(link.A).Unit()
	a, b := l.A.Sub(link.A), l.B.Sub(link.A)
	if math.Abs(u.Cross(a)) > hair || math.Abs(u.Cross(b)) > hair {
		return false
	}
	from, to := math.Min(u.Dot(a), u.Dot(b)), math.Max(u.Dot(a), u.Dot(b))
	return math.Min(to, link.Length())-math.Max(from, 0) > hair
}

// Overlap reports whether two convex polygons share more than a border: no
// side of either separates them.
func Overlap(a, b []geometry.Point) bool { return !separated(a, b) && !separated(b, a) }

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

// spots lists where a label for on may stand in a window, best first: a line's along
// it, then beside it, level or upright, ever farther off; a point's on it, then
// round it.
func spots(on geometry.Segment, size geometry.Point, window geometry.Rect) iter.Seq[spot] {
	return func(yield func(spot) bool) {
		near := alongside(on, size)
		at := []geometry.Point{on.A}
		if on.A == on.B {
			near = []spot{{centre: on.A, along: geometry.Pt(1, 0)}}
		} else {
			at = at[:0]
			for _, t := range shares() {
				at = append(at, on.A.Lerp(on.B, t))
			}
		}
		for _, s := range near {
			if !yield(s) {
				return
			}
		}
		around(at, size, window, steep(on), yield)
	}
}

// shares are the places along a line that are tried, from its middle out.
func shares() [9]float64 { return [9]float64{0.5, 0.4, 0.6, 0.3, 0.7, 0.22, 0.78, 0.15, 0.85} }

func alongside(on geometry.Segment, size geometry.Point) []spot {
	if on.Length() < size.X+2 {
		return nil
	}
	angle := upright(on.Angle())
	along := geometry.Polar(1, angle)
	away := along.Perp()
	down := lettering.Descent(size.Y)
	var out []spot
	for _, t := range shares() {
		at := on.A.Lerp(on.B, t)
		if end := math.Min(t, 1-t) * on.Length(); end < size.X/2 {
			continue
		}
		out = append(out,
			spot{centre: at.Add(away.Mul(size.Y/2 + down + 0.9)), angle: angle, along: along},
			spot{centre: at.Sub(away.Mul(size.Y/2 + 1.3)), angle: angle, along: along})
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

// directions are the sixteen in which labels stand round a point, from the right.
var directions = func() (all [16]geometry.Point) {
	for k := range all {
		all[k] = geometry.Polar(1, float64(k)*math.Pi/8)
	}
	return all
}()

// sides tell where the middle of lettering lies from the nearest place of its box, in each
// direction: this is the corner, side or end that faces the point.
var sides = func() (all [16]geometry.Point) {
	for k, u := range directions {
		all[k] = geometry.Pt(sign(u.X), sign(u.Y))
	}
	return all
}()

// A stance is how lettering stands, level or upright.
type stance struct {
	angle float64
	along geometry.Point
	half  geometry.Point // from its middle to what is free beside it and above
	room  geometry.Rect  // its middle lies there, or it reaches out of the window
}

func stanceOf(size geometry.Point, window geometry.Rect, upright bool) stance {
	s := stance{along: directions[0], half: geometry.Pt(size.X/2+0.7, size.Y/2+0.9)}
	if upright {
		s.angle, s.along = math.Pi/2, directions[4]
		s.half.X, s.half.Y = size.Y/2+0.9, size.X/2+0.7
		size.X, size.Y = size.Y, size.X
	}
	s.room = geometry.Rect{Min: window.Min.Add(size.Mul(0.5)), Max: window.Max.Sub(size.Mul(0.5))}
	return s
}

// around yields spots round points: level ones nearby, for a steep line upright ones by
// turns, and those that are left. A letter by itself stays level: upright it takes as
// much room, and a C is read as a U. What reaches out of the window is most of all, and
// left out at once.
func around(points []geometry.Point, size geometry.Point, window geometry.Rect, steep bool, yield func(spot) bool) {
	level, upright := stanceOf(size, window, false), stanceOf(size, window, true)
	at := func(far float64, stances ...stance) bool {
		for _, p := range points {
			for _, s := range stances {
				for i, u := range directions {
					centre := p.Add(geometry.Pt(u.X*far+sides[i].X*s.half.X, u.Y*far+sides[i].Y*s.half.Y))
					if s.room.Contains(centre) && !yield(spot{centre, s.angle, s.along, geometry.Segment{A: p.Add(u.Mul(far)), B: p}, s.angle != 0}) {
						return false
					}
				}
			}
		}
		return true
	}
	each := func(distances []float64, stances ...stance) bool {
		return !slices.ContainsFunc(distances, func(far float64) bool { return !at(far, stances...) })
	}
	near, far := []float64{1.5, 3, 5, 8, 12}, []float64{17, 23, 30, 40, 55}
	switch {
	case size.X <= 1.2*size.Y:
		_ = each(near, level) && each(far, level)
	case steep:
		_ = each(near, level, upright) && each(far, level, upright)
	default:
		_ = each(near, level) && each(near, upright) && each(far, level, upright)
	}
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
