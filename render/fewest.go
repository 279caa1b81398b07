package render

import (
	"cmp"
	"math"
	"slices"

	"rodsheet/geometry"
	"rodsheet/geometry/lists"
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
	plain  bool // equal tiles on sheets as they are, none dropped
	level  bool // no sheet turned on its side
	prefer preference
}

// A preference is what tells the best cut of a drawing from the others.
type preference int

const (
	evenly      preference = iota // the fewest tiles, between equals equal ones
	fullest                       // the fewest tiles, between equals full ones first and the rest last
	sharing                       // tiles that share sheets, where that takes fewer sheets though more tiles
	preferences = iota
)

// strategies lists what is compared for a layout, the preferred one first.
func (l Layout) strategies() []strategy {
	plain := strategy{plain: true}
	level := []strategy{{level: true}, {level: true, prefer: fullest}, {level: true, prefer: sharing}}
	switch {
	case l.Plain:
		return []strategy{plain}
	case !l.turns():
		return append(level, plain)
	}
	return append([]strategy{{}, {prefer: fullest}, {prefer: sharing}}, append(level, plain)...)
}

// turns reports whether a sheet may be turned on its side.
func (l Layout) turns() bool {
	return !l.Plain && !l.Paper.Whole && l.Paper.Width != l.Paper.Height && l.onSide().Check() == nil
}

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
	sheets       float64   // where the tiles of each size stand as many on a sheet as it holds; asked by sharing alone
	tiles, harms int
	rank         int // between equals the lower is preferred
}

// better reports whether c takes fewer sheets or tiles than d, or as many with
// seams that do less harm, or is preferred.
func (c cut) better(d cut) bool {
	return cmp.Or(cmp.Compare(c.sheets, d.sheets), cmp.Compare(c.tiles, d.tiles), cmp.Compare(c.harms, d.harms), cmp.Compare(c.rank, d.rank)) < 0
}

// A survey is what a cutter found out about one drawing: how it may stand, and
// for each stance the best cut by each preference.
type survey struct {
	cutter
	all  []*tiling
	cuts [][preferences]cut
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
	v.cuts = make([][preferences]cut, len(v.all))
	for i, p := range v.all {
		order[i] = i
		if len(v.all) > finest {
			v.cuts[i] = p.bestCuts(c.clear(p.turned), coarse, rough)
		}
	}
	slices.SortStableFunc(order, func(i, j int) int {
		a, b := v.cuts[i][evenly], v.cuts[j][evenly]
		return cmp.Or(cmp.Compare(a.tiles, b.tiles), cmp.Compare(a.harms, b.harms))
	})
	for _, i := range order[:min(finest, len(order))] {
		v.cuts[i] = v.all[i].bestCuts(c.clear(v.all[i].turned), fine, rough)
	}
	return v
}

// lay returns the drawing in the stance and the cut with the fewest tiles that
// a strategy allows.
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
	if v.cuts != nil {
		p.cut(v.cuts[best][m.prefer].xs, v.cuts[best][m.prefer].ys)
	}
	p.drop()
	return p
}

// allows reports whether a drawing may stand so.
func (m strategy) allows(s orientation) bool {
	return !(s.turned && (m.level || m.plain)) && (!m.plain || s.angle == 0 || s.angle == math.Pi/2)
}

// better reports whether stance i takes fewer tiles than j, or as many with
// less harm.
func (v survey) better(m strategy, i, j int) bool {
	if m.plain || v.cuts == nil {
		p, q := v.all[i], v.all[j]
		return p.rows*p.cols < q.rows*q.cols
	}
	a, b := v.cuts[i][m.prefer], v.cuts[j][m.prefer]
	a.rank, b.rank = 0, 0
	return a.better(b)
}

// bestCuts compares cuts of p: windows whose seams do the least harm, equal
// windows, and full windows shifted by parts of their slack, with the least
// number of rows and columns and with one more of either. It returns the best
// by each preference. The sketch of the drawing stands for its ink.
func (p *tiling) bestCuts(size geometry.Point, parts int, sketch []geometry.Segment) (best [preferences]cut) {
	x, y := p.axes(size)
	p.avoid(&x, &y)
	ink := p.laidOut(sketch)
	for k := range best {
		best[k].tiles = math.MaxInt
	}
	best[sharing].sheets = math.Inf(1)
	xs, ys := x.tries(parts), y.tries(parts)
	columns := make([][][]reach, len(xs))
	across := make([]int, len(xs)) // harm of the seams
	beside := make([][]float64, len(xs))
	for i, u := range xs {
		columns[i], across[i], beside[i] = inColumns(ink, u), x.harms(u), x.toSheet(u, gap)
	}
	for j, v := range ys {
		down, harms, below := negated(v), y.harms(v), y.toSheet(v, gap+captionHeight(2))
		for i, u := range xs {
			// Tiles that hang together and reach through c columns and r rows
			// are at least c + r − 1. Two to a sheet are of no use where they
			// are more than twice as many.
			if (len(u)+len(v)-3)/2 > best[evenly].tiles {
				continue
			}
			kept := touched(columns[i], down)
			join(kept, len(u)-1)
			var c [preferences]cut
			for k := range c {
				c[k] = cut{xs: u, ys: down, tiles: number(kept), harms: harms + across[i], rank: i + j}
			}
			c[fullest].rank = (i+len(xs)-2)%len(xs) + (j+len(ys)-2)%len(ys)
			c[sharing].sheets = sheets(kept, beside[i], below)
			for k := range c {
				if c[k].better(best[k]) {
					best[k] = c[k]
				}
			}
		}
	}
	return best
}

// leastShared is the side in mm below which a tile is not made to share a
// sheet: over so short a seam sheets lie crooked, and that would be what most
// of the accuracy of the template is lost by.
const leastShared = 100.0

// toSheet returns how many of each window stand side by side on a sheet, with
// more between them; none of one that is too short to share.
func (a axis) toSheet(borders []float64, more float64) []float64 {
	out := make([]float64, len(borders)-1)
	for i := range out {
		w := borders[i+1] - borders[i] + a.overlap
		if i == 0 {
			w -= a.overlap / 2
		}
		if i == len(out)-1 {
			w -= a.overlap / 2
		}
		if w >= leastShared {
			out[i] = math.Floor((a.most+more)/(w+more) + 1e-9)
		}
	}
	return out
}

// sheets adds up the shares that the tiles have of a sheet.
func sheets(kept []bool, beside, below []float64) float64 {
	sum := 0.0
	for i, k := range kept {
		if k {
			sum += 1 / (beside[i%len(beside)] * below[i/len(beside)])
		}
	}
	return sum
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

func (p *tiling) copy() *tiling {
	q := *p
	q.kept = slices.Clone(p.kept)
	return &q
}

// drop drops the tiles of p without ink, but for those that tie it together.
func (p *tiling) drop() {
	p.kept = touched(inColumns(p.ink(true), p.xs), p.ys)
	join(p.kept, p.cols)
}

// leastSheets returns a number of sheets below which the drawing goes in no
// orientation. In one piece it reaches through every row and column of its
// smallest grid, which takes rows + columns - 1 tiles at least; none of them is
// smaller than the narrowest column by the lowest row, and no sheet holds more
// than its area.
func (c cutter) leastSheets() int {
	least := math.Inf(1)
	for _, s := range c.stances(strategy{}) {
		size := c.clear(s.turned)
		p := lay(c.drawing, s, size, c.overlap)
		tile := smallestStep(p.xs) * smallestStep(p.ys)
		least = math.Min(least, float64(p.rows+p.cols-1)*tile/(size.X*size.Y))
	}
	return int(math.Ceil(least - hair))
}

// smallestStep returns the least distance from one seam to the next.
func smallestStep(seams []float64) float64 {
	least := math.Inf(1)
	for i := 1; i < len(seams); i++ {
		least = math.Min(least, math.Abs(seams[i]-seams[i-1]))
	}
	return least
}

// large returns the number of tiles that share no sheet with one another.
func (p *tiling) large(size [2]geometry.Point) int {
	half := max(size[0].X, size[0].Y, size[1].X, size[1].Y) / 2
	return lists.Count(p.tiles(), func(t *tile) bool { return math.Min(t.window.Width(), t.window.Height()) > half })
}
