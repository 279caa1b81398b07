package render

import (
	"math"
	"slices"
	"strings"

	"rodsheet/geometry"
	"rodsheet/geometry/measure"
	"rodsheet/templates"
)

// A cross is one end of the check lengths of a drawing, in laid coordinates.
type cross struct {
	name string
	at   geometry.Point
}

// checkStep is what check lengths along and across are multiples of: a tape
// shows it without guessing.
func checkStep(u measure.Unit) float64 { return u.Round(10, 1.0/2) }

// addCrosses places the ends of the check lengths of a drawing of several
// tiles: A–B along, A–C across, B–C on the diagonal; A–B and A–C are whole
// multiples of step. They stand just outside the corners of the strokes or,
// where a corner's tile is dropped, as far apart on the others as can be.
// Where no length leads over some of the tiles at the rim, D stands on one of
// these, as far from the others as can be.
func (p *tiling) addCrosses(step float64) {
	if p.rows*p.cols == 1 {
		return
	}
	const out = room / 2
	b := p.bounds.Offset(out - room)
	whole := func(x float64) float64 { return math.Max(1, math.Floor(x/step)) * step }
	along, across := geometry.Pt(whole(b.Width()), 0), geometry.Pt(0, whole(b.Height()))
	corner := []geometry.Point{b.Min, b.Min.Add(along), b.Min.Add(across)}
	if !p.stand(corner...) {
		corner = p.widest(step)
	}
	for _, at := range corner {
		p.addCross(at)
	}
	if at, ok := p.unreached(b.Min.Add(along).Add(across)); ok {
		p.addCross(at)
	}
}

// addCross adds a cross and the lengths to those before it, to two of three.
func (p *tiling) addCross(at geometry.Point) {
	n := len(p.crosses)
	p.crosses = append(p.crosses, cross{string(rune('A' + n)), at})
	base := []int{0, 1, 2}[:min(n, 3)]
	if n == 3 {
		base = p.base(at)
	}
	for _, i := range base {
		p.lengths = append(p.lengths, [2]int{i, n})
	}
}

// base returns the two of the first three crosses between which and a further
// place the triangle is largest: they fix it best.
func (p *tiling) base(at geometry.Point) (pair []int) {
	widest := -1.0
	for _, k := range [][]int{{0, 1}, {0, 2}, {1, 2}} {
		a, b := p.crosses[k[0]].at.Sub(at), p.crosses[k[1]].at.Sub(at)
		if area := math.Abs(a.Cross(b)); area >= widest-hair {
			widest, pair = area, k
		}
	}
	return pair
}

// unreached returns a place on the tiles at the rim that no check length leads
// over: the preferred one, or that of a lattice which is farthest from all
// crosses.
func (p *tiling) unreached(preferred geometry.Point) (geometry.Point, bool) {
	if len(p.crosses) < 2 {
		return geometry.Point{}, false
	}
	reached := map[place]bool{}
	for _, l := range p.lengths {
		way := p.way(p.crosses[l[0]].at, p.crosses[l[1]].at)
		for i, on := range way {
			// Round a corner there may be other ways: only the ends are measured.
			if straight(way) || i == 0 || i == len(way)-1 {
				reached[on] = true
			}
		}
	}
	farthest, best := 0.0, geometry.Point{}
	ink := p.ink(false)
	for _, t := range p.tiles() {
		if reached[place{drawing: p, row: t.row, col: t.col}] || !t.atRim() {
			continue
		}
		if row, col := p.at(preferred); row == t.row && col == t.col {
			return preferred, true
		}
		for _, at := range t.lattice() {
			near := math.Inf(1)
			for _, x := range p.crosses {
				near = math.Min(near, x.at.Distance(at))
			}
			if near > farthest && nearest(at, ink) >= 1.5*markRadius {
				farthest, best = near, at
			}
		}
	}
	return best, farthest > 0
}

// straight reports whether a shortest way keeps to one row or one column.
func straight(way []place) bool {
	first, last := way[0], way[len(way)-1]
	down, over := abs(first.row-last.row), abs(first.col-last.col)
	return min(down, over) == 0 && down+over == len(way)-1
}

func (t *tile) atRim() bool {
	return !t.has(t.row-1, t.col) || !t.has(t.row+1, t.col) || !t.has(t.row, t.col-1) || !t.has(t.row, t.col+1)
}

// lattice returns places for a cross on a tile, clear of its trim lines.
func (t *tile) lattice() []geometry.Point {
	const n = 4
	r := t.core().Offset(-3 * markRadius)
	var out []geometry.Point
	for k := range n * n {
		out = append(out, geometry.Pt(
			r.Min.X+r.Width()*float64(k%n)/(n-1),
			r.Min.Y+r.Height()*float64(k/n)/(n-1)))
	}
	return out
}

func (p *tiling) stand(points ...geometry.Point) bool {
	return !slices.ContainsFunc(points, func(q geometry.Point) bool { return !p.has(p.at(q)) })
}

// widest returns A, B to the right of it and C above or below it, on kept
// tiles, clear of trim lines and strokes, with the longest lengths a lattice
// of places finds. Where nothing is across it returns two points, and none
// where nothing is along either.
func (p *tiling) widest(step float64) []geometry.Point {
	ink := p.ink(false)
	var best []geometry.Point
	longest := 0.0
	for _, t := range p.tiles() {
		for _, a := range t.lattice() {
			b, along := p.farthest(a, geometry.Pt(step, 0))
			c, across := p.farthest(a, geometry.Pt(0, step))
			if d, down := p.farthest(a, geometry.Pt(0, -step)); down > across {
				c, across = d, down
			}
			if along+across <= longest || nearest(a, ink) < 1.5*markRadius {
				continue
			}
			longest, best = along+across, []geometry.Point{a}
			for _, end := range []geometry.Point{b, c} {
				if end != a {
					best = append(best, end)
				}
			}
		}
	}
	if len(best) < 2 {
		return nil
	}
	return best
}

// farthest returns the last point from a by whole steps that is on a kept
// tile and clear of its trim lines, and how far it is; a itself where none is.
func (p *tiling) farthest(a, step geometry.Point) (geometry.Point, float64) {
	reach := p.bounds.Width()
	if step.X == 0 {
		reach = p.bounds.Height()
	}
	for n := int(reach / step.Norm()); n > 0; n-- {
		at := a.Add(step.Mul(float64(n)))
		row, col := p.at(at)
		if p.has(row, col) && p.core(row, col).Offset(-2*markRadius).Contains(at) {
			return at, at.Distance(a)
		}
	}
	return a, 0
}

// checkPanel states the check lengths of every drawing of several tiles, and
// what a wrong one means.
func checkPanel(laids []*tiling, u measure.Unit, n numbers) (templates.Panel, bool) {
	p := templates.Panel{
		Heading: say(checkHeading),
		Text:    checkText(u),
	}
	for _, d := range laids {
		if len(d.crosses) < 2 {
			continue
		}
		p.Table = append(p.Table, []string{d.Name})
		for _, l := range d.lengths {
			a, b := d.crosses[l[0]], d.crosses[l[1]]
			p.Table = append(p.Table, []string{say(fromTo, a.name, b.name), bothUnits(a.at.Distance(b.at), u)})
		}
		p.Table = append(p.Table, []string{d.retape(u, n)})
	}
	return p, len(p.Table) > 0
}

// retape says at which seams the fault lies when a check length is wrong. Of the lengths
// to a cross the first tells its seams, and each that keeps to a row or column of others.
func (p *tiling) retape(u measure.Unit, n numbers) string {
	off := measure.Length(u.Round(1, 1.0/32))
	var words []string
	last, seams := 0, map[[2]place]bool{}
	for _, l := range p.lengths {
		a, b := p.crosses[l[0]], p.crosses[l[1]]
		way := p.way(a.at, b.at)
		known := len(seams)
		if first := l[1] > last; first || straight(way) {
			for i := 1; i < len(way); i++ {
				a, b := way[i-1], way[i]
				if a.row > b.row || a.col > b.col { // a seam is one whichever way it is crossed
					a, b = b, a
				}
				seams[[2]place{a, b}] = true
			}
			if len(way) > 1 && (first || len(seams) > known) {
				words = append(words, say(seamsBetween, seamsAmong(n, way), a.name, b.name))
			}
		}
		last = l[1]
	}
	switch len(seams) {
	case 0:
		return say(wrongSingle)
	case 1:
		return say(retapeSeam, off.Text(u), words[0])
	}
	return say(retapeSeams, off.Text(u), strings.Join(words, ", "))
}

// seamsAmong names the seams on the way over several tiles by their sheets
// and, where these hold more than one of the tiles, by their rows or columns.
func seamsAmong(n numbers, way []place) string {
	among := ""
	switch first, last := way[0], way[len(way)-1]; {
	case n.apart(way) || first.row != last.row && first.col != last.col:
	case first.row == last.row:
		among = span(columnRun, first.col, last.col)
	default:
		among = span(rowRun, first.row, last.row)
	}
	return among + n.sheets(way)
}

// span names a run of rows or columns before their sheets.
func span(words runWords, a, b int) string {
	if abs(a-b) == 1 {
		return say(words.two, min(a, b), max(a, b))
	}
	return say(words.more, min(a, b), max(a, b))
}

// way returns the tiles on the shortest way over kept tiles from the owner of
// one point to that of another (breadth first, so that along one row or
// column of kept tiles it is straight).
func (p *tiling) way(from, to geometry.Point) []place {
	tile := func(row, col int) place { return place{drawing: p, row: row, col: col} }
	start, end := tile(p.owner(to)), tile(p.owner(from))
	next := map[place]place{start: start} // towards the start
	for open := []place{start}; len(open) > 0 && next[end] == (place{}); open = open[1:] {
		o := open[0]
		for _, q := range [...]place{tile(o.row, o.col-1), tile(o.row, o.col+1), tile(o.row-1, o.col), tile(o.row+1, o.col)} {
			if _, seen := next[q]; !seen && p.has(q.row, q.col) {
				next[q] = o
				open = append(open, q)
			}
		}
	}
	out := []place{end}
	for end != start {
		if end = next[end]; end == (place{}) {
			return nil // not in one piece, which drop does not leave
		}
		out = append(out, end)
	}
	return out
}

// bothUnits prints a length in mm and in inches, the job's own unit first.
func bothUnits(mm float64, u measure.Unit) string {
	q := measure.Length(mm)
	if u == measure.Inch {
		return say(inBoth, q.Text(measure.Inch), q.Text(measure.Millimetre))
	}
	return say(inBoth, q.Text(measure.Millimetre), q.Text(measure.Inch))
}
