package render

import (
	"math"
	"slices"
	"sort"

	"rodsheet/geometry"
	"rodsheet/geometry/lists"
	"rodsheet/render/accuracy"
	"rodsheet/render/lettering"
	"rodsheet/render/table"
	"rodsheet/templates"
)

// A block is a box of a sheet: one tile of a drawing, a panel of words or a
// picture.
type block struct {
	size    geometry.Point // width and height
	caption []string
	tile    *tile
	panel   *table.Block
	view    *view
	card    *card
	parts   []placed // of several blocks in one, which is none of the above
	chain   any      // what is to be read in order has it in common; nil: nothing
	group   any      // so has what stands on sheets that follow one another
	with    any      // the view that it stands with where there is room; nil: none
	first   bool     // stands above all others of its sheet
	behind  bool     // stands on no sheet before the last card's
	named   bool     // its title tells one sheet from another
	turned  bool     // made for a sheet turned on its side
	upright bool     // stands on no turned sheet
}

// shows returns the view that is seen on a block; nil: none.
func (b block) shows() any {
	switch {
	case b.tile != nil:
		return b.tile.View
	case b.view != nil:
		return b.view.View
	}
	return nil
}

// title is what a block is called in the name of its sheet.
func (b block) title() string {
	switch {
	case b.tile != nil:
		return b.tile.title()
	case b.view != nil:
		return b.view.Heading
	case b.card != nil:
		return b.card.words.Title
	}
	return b.panel.Title
}

// all returns the block where it stands, or the blocks that it is made of.
func (p placed) all() []placed {
	if p.parts == nil {
		return []placed{p}
	}
	var out []placed
	for _, q := range p.parts {
		q.at = q.at.Add(p.at)
		out = append(out, q.all()...)
	}
	return out
}

// An item is what is to be packed, in each of the blocks that it may be, the
// preferred one first.
type item []block

// A placed block stands on a sheet with its upper left corner at a place, from
// the upper left corner of the clear part, y down.
type placed struct {
	block
	at geometry.Point
}

// A tiling drawing is a drawing turned as it will stand on paper and cut into
// rows × columns of tiles, of which those without ink may be dropped.
// Everything in it but the drawing itself is in tiling coordinates: template
// coordinates after turn.
type tiling struct {
	templates.Drawing
	orientation
	turn       geometry.Affine
	bounds     geometry.Rect // of the strokes, with room round them
	xs, ys     []float64     // borders and trim lines: from the left, from the top
	rows, cols int
	kept       []bool // row by row
	overlap    float64
	most       geometry.Point   // the sheet offers a block so much
	marks      []geometry.Point // centres of registration marks
	verniers   []vernier
	crosses    []cross
	lengths    [][2]int // the crosses at both ends of each check length
	trust      accuracy.Accuracy
}

// A tile is the piece of a laid drawing inside window. Rows count from the
// top and columns from the left, from 1.
type tile struct {
	*tiling
	row, col int
	window   geometry.Rect
}

// lay turns d as s says and cuts it into the fewest equal tiles that need no
// more than size, caption included.
func lay(d templates.Drawing, s orientation, size geometry.Point, overlap float64) *tiling {
	p := &tiling{Drawing: d, orientation: s, turn: geometry.Rotate(s.angle), overlap: overlap, most: size}
	all := lists.Flat(p.Strokes, func(s templates.Stroke) []geometry.Point { return p.turn.ApplyAll(s.Points) })
	p.bounds = geometry.Bounds(all...).Offset(room)
	x, y := p.axes(size)
	p.cut(x.equal(x.least()), negated(y.equal(y.least())))
	return p
}

// cut sets the borders and trim lines, and keeps every tile.
func (p *tiling) cut(xs, ys []float64) {
	p.xs, p.ys = xs, ys
	p.cols, p.rows = len(xs)-1, len(ys)-1
	p.kept = make([]bool, p.cols*p.rows)
	for i := range p.kept {
		p.kept[i] = true
	}
}

// has reports whether there is a tile in row and col and it is kept.
func (p *tiling) has(row, col int) bool {
	return 1 <= row && row <= p.rows && 1 <= col && col <= p.cols && p.kept[(row-1)*p.cols+col-1]
}

// tiles returns the kept tiles of p row by row.
func (p *tiling) tiles() []*tile {
	var out []*tile
	for row := 1; row <= p.rows; row++ {
		for col := 1; col <= p.cols; col++ {
			if p.has(row, col) {
				out = append(out, &tile{p, row, col, p.window(row, col)})
			}
		}
	}
	return out
}

// core returns the part of a tile that shows when all sheets are taped up: it
// ends at the trim lines, which run along the middle of each shared strip.
func (p *tiling) core(row, col int) geometry.Rect {
	return geometry.Box(p.xs[col-1], p.ys[row], p.xs[col], p.ys[row-1])
}

func (t *tile) core() geometry.Rect { return t.tiling.core(t.row, t.col) }

// window returns the core with half the shared strip at every trim line.
func (p *tiling) window(row, col int) geometry.Rect {
	r, half := p.core(row, col), p.overlap/2
	if col > 1 {
		r.Min.X -= half
	}
	if col < p.cols {
		r.Max.X += half
	}
	if row > 1 {
		r.Max.Y += half
	}
	if row < p.rows {
		r.Min.Y -= half
	}
	return r
}

// at returns the row and column whose core holds q, a core being open to the
// right and below; what lies outside the bounds belongs to the outermost.
func (p *tiling) at(q geometry.Point) (row, col int) {
	col = sort.Search(p.cols-1, func(i int) bool { return p.xs[i+1] > q.X }) + 1
	row = sort.Search(p.rows-1, func(i int) bool { return p.ys[i+1] < q.Y }) + 1
	return row, col
}

// owner returns the kept tile that q belongs to: the one whose core holds it
// or, where that is dropped, the nearest.
func (p *tiling) owner(q geometry.Point) (row, col int) {
	if row, col = p.at(q); p.has(row, col) {
		return row, col
	}
	best := math.Inf(1)
	for r := 1; r <= p.rows; r++ {
		for c := 1; c <= p.cols; c++ {
			if !p.has(r, c) {
				continue
			}
			if far := clamp(q, p.core(r, c)).Distance(q); far < best {
				row, col, best = r, c, far
			}
		}
	}
	return row, col
}

// clamp returns the point of r nearest to q.
func clamp(q geometry.Point, r geometry.Rect) geometry.Point {
	return geometry.Pt(
		math.Max(r.Min.X, math.Min(r.Max.X, q.X)),
		math.Max(r.Min.Y, math.Min(r.Max.Y, q.Y)))
}

// title names the tile for its caption.
func (t *tile) title() string {
	switch {
	case t.rows*t.cols == 1:
		return t.Name
	case t.cols == 1:
		return say(rowOf, t.Name, t.row, t.rows)
	case t.rows == 1:
		return say(columnOf, t.Name, t.col, t.cols)
	}
	return say(rowColumns, t.Name, t.row, t.rows, t.col, t.cols)
}

const (
	mapCell  = 4.0 // of the key map, at most
	mapLimit = 8.0 // its height and half its width, at most
)

// mapSize returns the width and height of the key map of p and the size of
// one of its cells; a drawing of one tile has none.
func (p *tiling) mapSize() (size geometry.Point, cell float64) {
	if p.rows*p.cols == 1 {
		return geometry.Point{}, 0
	}
	cell = math.Min(mapCell, math.Min(mapLimit/float64(p.rows), 2*mapLimit/float64(p.cols)))
	return geometry.Pt(float64(p.cols)*cell, float64(p.rows)*cell), cell
}

// captionHeight is the strip under a drawing that holds n lines.
func captionHeight(n int) float64 { return float64(n)*lettering.Pitch(small) + 1 }

// block returns the tile with its caption: its name and, on the first tile of
// a template, how far it is to be trusted. It is as wide as it takes for the
// caption to fit under it.
func (t *tile) block() block {
	const narrowest = 45.0
	b := block{tile: t, named: true, turned: t.turned, upright: t.Upright}
	if t.rows*t.cols > 1 {
		b.group = t.tiling
	}
	b.size = geometry.Pt(math.Max(t.window.Width(), narrowest), t.window.Height())
	m, _ := t.mapSize()
	if m.X > 0 {
		m.X += 2
	}
	text := []string{t.title()}
	if words := t.trust.String(); words != "" && t.first() {
		text = append(text, words)
	}
	for {
		b.caption = nil
		for _, s := range text {
			b.caption = append(b.caption, lettering.Wrap(s, small, b.size.X-m.X)...)
		}
		const step = 5.0
		if b.size.Y+captionHeight(len(b.caption)) <= t.most.Y || b.size.X+step > t.most.X {
			break
		}
		b.size.X += step
	}
	b.size.Y += math.Max(captionHeight(len(b.caption)), m.Y+1)
	return b
}

// first reports whether t is the first of the tiles that are kept.
func (t *tile) first() bool { return slices.Index(t.kept, true) == (t.row-1)*t.cols+t.col-1 }

// toPage returns the way from template millimetres to the page, given where
// the lower left corner of the window stands on the page.
func (t *tile) toPage(corner geometry.Point) geometry.Affine {
	return t.turn.Then(geometry.Translate(corner.Sub(t.window.Min)))
}
