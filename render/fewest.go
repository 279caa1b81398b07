package render

import (
	"cmp"
	"math"
	"slices"

	"rodsheet/geometry"
	"rodsheet/templates"
)

// A orientation is how a drawing stands on its sheets: turned by an angle, counter-
// clockwise in radians, on sheets as they are or turned on their side.
type orientation struct {
	angle  float64
	turned bool
}

// A strategy is one of the ways in which a job is laid that are compared by the
// number of sheets they take.
type strategy struct {
	plain   bool // equal tiles on sheets as they are, none dropped
	level   bool // no sheet turned on its side
	fullest bool // between equals, full tiles first and the rest last
}

// manners lists what is compared for a layout, the preferred one first.
func (l Layout) manners() []strategy {
	plain, level := strategy{plain: true}, []strategy{{level: true}, {level: true, fullest: true}}
	switch {
	case l.Plain:
		return []strategy{plain}
	case !l.turns():
		return append(level, plain)
	}
	return append([]strategy{{}, {fullest: true}}, append(level, plain)...)
}

// turns reports whether a sheet may be turned on its side.
func (l Layout) turns() bool {
	return !l.Plain && !l.Paper.Whole && l.Paper.Width != l.Paper.Height && l.onSide().Check() == nil
}

// onSide returns the layout of a sheet turned on its side.
func (l Layout) onSide() Layout {
	l.Paper.Width, l.Paper.Height = l.Paper.Height, l.Paper.Width
	return l
}

// largestSearch is the number of tiles past which no better cut is looked for.
const largestSearch = 2500

// A cutter finds the cut of one drawing.
type cutter struct {
	drawing templates.Drawing
	overlap float64
	size    [2]geometry.Point // clear part of a sheet as it is, and on its side
}

func (c cutter) clear(turned bool) geometry.Point {
	if turned {
		return c.size[1]
	}
	return c.size[0]
}

// free reports whether the drawing may be turned by any angle.
func (c cutter) free() bool { return c.drawing.Free && !c.drawing.Upright }

// stances lists how the drawing may stand, the preferred one first: as drawn
// and turned by a quarter; where it is free, also along each of its longer
// edges and at every fifth degree.
func (c cutter) stances(m strategy) []orientation {
	angles := []float64{0}
	if !c.drawing.Upright {
		angles = append(angles, math.Pi/2)
	}
	if c.free() {
		angles = append(angles, edgeAngles(c.drawing)...)
		for k := 1; k < 18; k++ {
			a := float64(k) * math.Pi / 36
			angles = append(angles, a, a+math.Pi/2)
		}
	}
	var out []orientation
	for _, turned := range []bool{false, true} {
		if turned && (c.size[1] == c.size[0] || c.drawing.Upright) {
			break
		}
		for _, a := range angles {
			if s := (orientation{a, turned}); m.allows(s) {
				out = append(out, s)
			}
		}
	}
	return out
}

// edgeAngles returns the turns that lay a long edge of d level or plumb.
func edgeAngles(d templates.Drawing) []float64 {
	const most = 12
	longest := 0.0
	var edges []geometry.Segment
	for _, s := range d.Strokes {
		if light(s.Role) {
			continue
		}
		for _, e := range chain(s.Points) {
			edges = append(edges, e)
			longest = math.Max(longest, e.Length())
		}
	}
	var out []float64
	for _, e := range edges {
		level := math.Mod(2*fullTurn-e.Angle(), math.Pi/2)
		if e.Length() < longest/4 || len(out) >= most || level < 1e-9 || level > math.Pi/2-1e-9 ||
			slices.ContainsFunc(out, func(a float64) bool { return math.Abs(a-level) < 0.01 }) {
			continue
		}
		out = append(out, level, level+math.Pi/2)
	}
	return out
}

// A cut is one way through a drawing, and what it costs.
type cut struct {
	xs, ys       []float64 // xs to the right; ys down
	tiles, harms int
	rank         int // between equals the lower is preferred
}

// better reports whether c takes fewer tiles than d, or as many with seams
// that do less harm, or is preferred.
func (c cut) better(d cut) bool {
	return cmp.Or(cmp.Compare(c.tiles, d.tiles), cmp.Compare(c.harms, d.harms), cmp.Compare(c.rank, d.rank)) < 0
}

// A survey is what a cutter found out about one drawing: how it may stand, and
// for each stance the best cut, with even tiles preferred and with full ones.
type survey struct {
	cutter
	all        []*tiling
	even, full []cut
}

// survey looks at every stance. Cuts are looked for where no stance holds the
// drawing on one sheet: first coarsely, then finely in the stances that did
// best.
func (c cutter) survey() survey {
	v := survey{cutter: c}
	whole, fewest := false, math.MaxInt
	for _, s := range c.stances(strategy{}) {
		p := lay(c.drawing, s, c.clear(s.turned), c.overlap)
		whole = whole || p.rows*p.cols == 1 && !s.turned
		fewest = min(fewest, p.rows*p.cols)
		v.all = append(v.all, p)
	}
	if whole || fewest > largestSearch {
		return v
	}
	const finest, few = 4, 12
	coarse, fine := 1, 8
	if fewest <= few {
		coarse, fine = 2, 32
	}
	rough := sketch(c.drawing)
	order := make([]int, len(v.all))
	v.even, v.full = make([]cut, len(v.all)), make([]cut, len(v.all))
	for i, p := range v.all {
		order[i] = i
		if len(v.all) > finest {
			v.even[i], v.full[i] = p.bestCuts(c.clear(p.turned), coarse, rough)
		}
	}
	slices.SortStableFunc(order, func(i, j int) int {
		return cmp.Or(cmp.Compare(v.even[i].tiles, v.even[j].tiles), cmp.Compare(v.even[i].harms, v.even[j].harms))
	})
	for _, i := range order[:min(finest, len(order))] {
		v.even[i], v.full[i] = v.all[i].bestCuts(c.clear(v.all[i].turned), fine, rough)
	}
	return v
}

// lay returns the drawing in the stance and the cut with the fewest tiles that
// a manner allows.
func (v survey) lay(m strategy) *tiling {
	best := -1
	for i, p := range v.all {
		switch {
		case !m.allows(p.orientation):
		case p.rows*p.cols == 1:
			return p.copy()
		case best < 0 || v.better(m, i, best):
			best = i
		}
	}
	p := v.all[best].copy()
	if m.plain {
		return p
	}
	if c, ok := v.cut(m, best); ok {
		p.cut(c.xs, c.ys)
	}
	p.drop()
	return p
}

// allows reports whether a drawing may stand so.
func (m strategy) allows(s orientation) bool {
	return !(s.turned && (m.level || m.plain)) && (!m.plain || s.angle == 0 || s.angle == math.Pi/2)
}

// cut returns the best cut of stance i, if one was looked for.
func (v survey) cut(m strategy, i int) (cut, bool) {
	switch {
	case v.even == nil:
		return cut{}, false
	case m.fullest:
		return v.full[i], true
	}
	return v.even[i], true
}

// better reports whether stance i takes fewer tiles than j, or as many with
// less harm.
func (v survey) better(m strategy, i, j int) bool {
	a, ok := v.cut(m, i)
	if m.plain || !ok {
		p, q := v.all[i], v.all[j]
		return p.rows*p.cols < q.rows*q.cols
	}
	b, _ := v.cut(m, j)
	a.rank, b.rank = 0, 0
	return a.better(b)
}

// bestCuts compares cuts of p: windows whose seams do the least harm, equal
// windows, and full windows shifted by parts of their slack, with the least
// number of rows and columns and with one more of either. It returns the best
// with even tiles preferred and with full ones first. The sketch of the drawing
// stands for its ink.
func (p *tiling) bestCuts(size geometry.Point, parts int, sketch []geometry.Segment) (even, full cut) {
	x, y := p.axes(size)
	p.avoid(&x, &y)
	ink := p.laidOut(sketch)
	even.tiles = math.MaxInt
	full.tiles = math.MaxInt
	xs, ys := x.tries(parts), y.tries(parts)
	columns := make([][][]reach, len(xs))
	across := make([]int, len(xs)) // harm of the seams
	for i, u := range xs {
		columns[i], across[i] = inColumns(ink, u), x.harms(u)
	}
	for j, v := range ys {
		down, harms := negated(v), y.harms(v)
		for i, u := range xs {
			// Tiles that hang together and reach through c columns and r rows
			// are at least c + r − 1.
			if len(u)+len(v)-3 > even.tiles {
				continue
			}
			kept := touched(columns[i], down)
			join(kept, len(u)-1)
			c := cut{u, down, number(kept), harms + across[i], i + j}
			if c.better(even) {
				even = c
			}
			c.rank = (i+len(xs)-2)%len(xs) + (j+len(ys)-2)%len(ys)
			if c.better(full) {
				full = c
			}
		}
	}
	return even, full
}

// tries returns the borders to compare along an axis: those that do the least
// harm, equal windows, then full ones with the short one last, and so on.
func (a axis) tries(parts int) [][]float64 {
	n := a.least()
	if n == 1 {
		return [][]float64{a.equal(1)}
	}
	if parts == 1 {
		return [][]float64{a.equal(n), a.equal(n + 1)}
	}
	out := [][]float64{a.bestSeams(n), a.equal(n)}
	for _, m := range []int{n, n + 1} {
		for k := range parts + 1 {
			if v := a.shifted(m, float64(k)/float64(parts)); v != nil {
				out = append(out, v)
			}
		}
	}
	return out
}

// copy returns a laid drawing that may be cut and marked apart from p.
func (p *tiling) copy() *tiling {
	q := *p
	q.kept = slices.Clone(p.kept)
	return &q
}

// drop drops the tiles of p without ink, but for those that tie it together.
func (p *tiling) drop() {
	p.kept = touched(inColumns(p.ink(), p.xs), p.ys)
	join(p.kept, p.cols)
}

// filled returns a number of tiles that the drawing takes in any stance: those
// in one piece that reach through its rows and columns.
func (c cutter) filled() int {
	n := math.MaxInt
	for _, s := range c.stances(strategy{}) {
		p := lay(c.drawing, s, c.clear(s.turned), c.overlap)
		n = min(n, p.rows+p.cols-1)
	}
	return n
}

// large returns the number of tiles that share no sheet with one another.
func (p *tiling) large(size [2]geometry.Point) int {
	half := max(size[0].X, size[0].Y, size[1].X, size[1].Y) / 2
	n := 0
	for _, t := range p.tiles() {
		if math.Min(t.window.Width(), t.window.Height()) > half {
			n++
		}
	}
	return n
}
