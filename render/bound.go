package render

import (
	"math"
	"rodsheet/templates/wording"
	"strings"

	"rodsheet/geometry"
)

// A Bound is what a plan comes to and what it cannot do with less of.
type Bound struct {
	Sheets int // that the plan takes
	// Least is a number of sheets below which no packing of the same tiles
	// goes: they cover its area, or so many share no sheet. Tiles cut elsewhere
	// may take less.
	Least int
	Tiles []TileBound // of each drawing that one sheet does not hold
}

// A TileBound is the number of tiles of one drawing.
type TileBound struct {
	Template string
	Tiles    int
	// Least is a number of tiles below which no grid of seams goes, however it
	// is shifted: no sheet holds two of that many points of the drawing, or
	// tiles that hang together must reach that far.
	Least int
}

// String states the count and what proves it: "12 sheets, no fewer than 11 by
// what a sheet holds of these tiles; top: 10 tiles, no fewer than 9 by extent".
func (b Bound) String() string {
	by := bySheet
	if len(b.Tiles) > 0 {
		by = byTheseTo
	}
	parts := []string{counted(b.Sheets, b.Least, oneSheet, manySheet, by)}
	for _, t := range b.Tiles {
		parts = append(parts, say(boundOf, t.Template, counted(t.Tiles, t.Least, oneTile, manyTiles, byExtent)))
	}
	return strings.Join(parts, "; ")
}

func counted(n, least int, one, many, by wording.Text) string {
	what := say(many, n)
	if n == 1 {
		what = say(one, n)
	}
	if n <= least {
		return say(fewestBy, what, say(by))
	}
	return say(noFewerBy, what, least, say(by))
}

// Bound returns the count of the plan and its bounds.
func (p Plan) Bound() Bound {
	out := Bound{Sheets: len(p.sheets)}
	for _, j := range p.sections {
		out.Least += j.packing(j.items).Least()
		for i, d := range j.laids {
			if d.rows*d.cols > 1 {
				out.Tiles = append(out.Tiles, TileBound{d.Name, number(d.kept), j.surveys[i].leastTiles()})
			}
		}
	}
	return out
}

// leastTiles returns the bound by extent: the least one of all stances that
// the layout allows. A drawing that may be turned by any angle is judged by
// the diagonal of a sheet.
func (c cutter) leastTiles() int {
	free := c.free()
	best := math.MaxInt
	for _, s := range c.stances(strategy{}) {
		if !free || s.angle == 0 {
			size := c.clear(s.turned)
			best = min(best, lay(c.drawing, s, size, c.overlap).leastTiles(size, free))
		}
	}
	return best
}

// leastTiles returns the bound for one stance: the number of points of the
// ink of which no two fit in one core, as a simple search finds them, or the
// number of rows and columns that tiles in one piece must reach through.
func (p *tiling) leastTiles(size geometry.Point, free bool) int {
	x, y := p.axes(size)
	alone := func(a, b geometry.Point) bool {
		return math.Abs(a.X-b.X) > x.core() || math.Abs(a.Y-b.Y) > y.core()
	}
	n := x.least() + y.least() - 1
	if free {
		diagonal := math.Hypot(x.core(), y.core())
		alone = func(a, b geometry.Point) bool { return a.Distance(b) > diagonal }
		n = 1
	}
	places := p.places()
	const starts = 12
	for k := range starts {
		n = max(n, len(apartFrom(places, k*len(places)/starts, alone)))
	}
	return n
}

// core returns the longest stretch of ink that one tile can show inside its
// trim lines. A tile at an end of several has one seam, but the room beside
// the strokes as well.
func (a axis) core() float64 {
	if a.least() == 1 {
		return a.most
	}
	return a.most - a.overlap/2 - math.Min(room, a.overlap/2) + inkEdge
}

// places returns points along the ink of p, a few millimetres apart.
func (p *tiling) places() []geometry.Point {
	const step = 5.0
	var out []geometry.Point
	for _, s := range p.laidOut(sketch(p.Drawing)) {
		n := int(s.Length()/step) + 1
		for k := range n + 1 {
			out = append(out, s.A.Lerp(s.B, float64(k)/float64(n)))
		}
	}
	return out
}

// apartFrom walks round the places from start and takes each that is alone
// with all taken before it.
func apartFrom(places []geometry.Point, start int, alone func(a, b geometry.Point) bool) []geometry.Point {
	var out []geometry.Point
next:
	for i := range places {
		q := places[(start+i)%len(places)]
		for _, o := range out {
			if !alone(q, o) {
				continue next
			}
		}
		out = append(out, q)
	}
	return out
}
