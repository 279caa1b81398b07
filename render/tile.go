package render

import (
	"fmt"
	"math"

	"rodsheet/geometry"
	"rodsheet/render/lettering"
	"rodsheet/templates"
)

// A block is a box of a sheet: one tile of a drawing, or a panel of words.
type block struct {
	size    geometry.Point // width and height
	caption []string
	tile    *tile
	panel   *words
}

// A laid drawing is a drawing turned as it will stand on paper and cut into
// rows × columns of tiles. Everything in it but the drawing itself is in laid
// coordinates: template coordinates after turn.
type laid struct {
	templates.Drawing
	turn       geometry.Affine
	bounds     geometry.Rect // of the strokes, with room round them
	rows, cols int
	tile       geometry.Point // width and height of one tile
	overlap    float64
	marks      []geometry.Point // centres of registration marks
	crosses    []cross
}

// A tile is the piece of a laid drawing inside window. Rows count from the
// top and columns from the left, from 1.
type tile struct {
	*laid
	row, col int
	window   geometry.Rect
}

// lay turns d, or not, and works out the tiles that need no more than size,
// caption included.
func lay(d templates.Drawing, turned bool, size geometry.Point, overlap float64) *laid {
	p := &laid{Drawing: d, turn: geometry.Identity(), overlap: overlap}
	if turned {
		p.turn = geometry.Rotate(math.Pi / 2)
	}
	b := d.Bounds()
	p.bounds = geometry.Bounds(p.turn.ApplyAll(b.Corners())...).Grow(room)
	p.cols, p.tile.X = share(p.bounds.Width(), size.X, overlap)
	p.rows, p.tile.Y = share(p.bounds.Height(), size.Y-captionHeight(2), overlap)
	return p
}

// share cuts extent into the least number of equal parts, each no longer than
// most, that overlap by overlap; it returns the number and the length of one.
func share(extent, most, overlap float64) (int, float64) {
	if extent <= most {
		return 1, extent
	}
	n := math.Ceil((extent - overlap) / (most - overlap))
	return int(n), (extent + (n-1)*overlap) / n
}

// tiles returns the tiles of p row by row.
func (p *laid) tiles() []*tile {
	var out []*tile
	for row := 1; row <= p.rows; row++ {
		for col := 1; col <= p.cols; col++ {
			x := p.bounds.Min.X + float64(col-1)*(p.tile.X-p.overlap)
			y := p.bounds.Max.Y - float64(row-1)*(p.tile.Y-p.overlap)
			out = append(out, &tile{p, row, col, geometry.Box(x, y-p.tile.Y, x+p.tile.X, y)})
		}
	}
	return out
}

// core returns the part of the tile that shows when all sheets are taped up:
// it ends at the trim lines, which run along the middle of each shared strip.
func (t *tile) core() geometry.Rect {
	r, half := t.window, t.overlap/2
	if t.col > 1 {
		r.Min.X += half
	}
	if t.col < t.cols {
		r.Max.X -= half
	}
	if t.row > 1 {
		r.Max.Y -= half
	}
	if t.row < t.rows {
		r.Min.Y += half
	}
	return r
}

// title names the tile for its caption.
func (t *tile) title() string {
	switch {
	case t.rows*t.cols == 1:
		return t.Name
	case t.cols == 1:
		return fmt.Sprintf("%s: row %d of %d", t.Name, t.row, t.rows)
	case t.rows == 1:
		return fmt.Sprintf("%s: column %d of %d", t.Name, t.col, t.cols)
	}
	return fmt.Sprintf("%s: row %d of %d, column %d of %d", t.Name, t.row, t.rows, t.col, t.cols)
}

const (
	mapCell  = 4.0 // of the key map, at most
	mapLimit = 8.0 // its height and half its width, at most
)

// mapSize returns the width and height of the key map of p and the size of
// one of its cells; a drawing of one tile has none.
func (p *laid) mapSize() (size geometry.Point, cell float64) {
	if p.rows*p.cols == 1 {
		return geometry.Point{}, 0
	}
	cell = math.Min(mapCell, math.Min(mapLimit/float64(p.rows), 2*mapLimit/float64(p.cols)))
	return geometry.Pt(float64(p.cols)*cell, float64(p.rows)*cell), cell
}

// captionHeight is the strip under a drawing that holds n lines.
func captionHeight(n int) float64 { return float64(n)*pitch(small) + 1 }

// block returns the tile with its caption.
func (t *tile) block() block {
	const narrowest = 45
	b := block{tile: t, size: geometry.Pt(math.Max(t.window.Width(), narrowest), t.window.Height())}
	m, _ := t.mapSize()
	width := b.size.X
	if m.X > 0 {
		width -= m.X + 2
	}
	b.caption = lettering.Wrap(t.title(), small, width)
	b.size.Y += math.Max(captionHeight(len(b.caption)), m.Y+1)
	return b
}

// toPage returns the way from template millimetres to the page, given where
// the lower left corner of the window stands on the page.
func (t *tile) toPage(corner geometry.Point) geometry.Affine {
	return t.turn.Then(geometry.Translate(corner.Sub(t.window.Min)))
}
