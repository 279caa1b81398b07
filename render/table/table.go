// Package table sets panels of words and figures in lines: in columns, with or
// without rules between them, and broken into blocks where one sheet does not
// hold them. It knows no sheet.
package table

import (
	"math"
	"slices"

	"rodsheet/geometry"
	"rodsheet/geometry/lists"
	"rodsheet/render/lettering"
	"rodsheet/render/page"
	"rodsheet/templates"
)

// A Block is words that stand together on a sheet. Places are from its upper
// left corner, y up, so they are negative.
type Block struct {
	Title string // its first words
	Size  geometry.Point
	Texts []page.Text
	Lines []Line
}

// A Line is a rule under a heading or, if fine, between rows and columns.
type Line struct {
	geometry.Segment
	Fine bool
}

// Text sets a line with the left end of its base line at x, y.
func (b *Block) Text(x, y, height float64, s string) {
	if s == "" {
		return
	}
	if b.Title == "" {
		b.Title = s
	}
	b.Texts = append(b.Texts, page.Text{At: geometry.Pt(x, y), Height: height, String: s})
}

// Heading sets the heading over a line of its own and returns the level of that
// line.
func (b *Block) Heading(text string, width float64) float64 {
	b.Title = text
	y := -lettering.Ascent(lettering.Large)
	for _, line := range lettering.Wrap(text, lettering.Large, width) {
		b.Text(0, y, lettering.Large, line)
		y -= lettering.Pitch(lettering.Large)
	}
	y += lettering.Pitch(lettering.Large) - 1.6
	b.line(false, geometry.Pt(0, y), geometry.Pt(width, y))
	return y
}

func (b *Block) line(fine bool, from, to geometry.Point) {
	b.Lines = append(b.Lines, Line{geometry.Segment{A: from, B: to}, fine})
}

// Top returns the height of a heading.
func Top(heading string, width float64) float64 { return -(&Block{}).Heading(heading, width) }

// A form is the air in a table, in mm.
type form struct {
	between  float64 // columns
	row      float64 // in a row, beyond its lines
	above    float64 // the first capitals of a row
	words    float64 // above the capitals of a line of words
	below    float64 // all
	readable float64 // longest line of words
}

const (
	writeHigh = 7.0                   // least height of a row with a cell to write in
	line      = 1.6 * lettering.Small // lettering.Pitch of it
	rounding  = 1e-6                  // of a width
)

// formOf returns the form of a panel. Across a whole sheet a line longer than
// 120 mm is not easily followed.
func formOf(p templates.Panel) form {
	if p.Ruled {
		return form{between: 3, row: 1.2, above: 1.1, words: 0.7, readable: 120}
	}
	return form{between: 4, above: 1.6, words: 1.6, below: 2.6, readable: math.Inf(1)}
}

// A strip is a piece of a panel that is not broken: a row of the table, or a
// line of words below it.
type strip struct {
	height float64
	cells  [][]string // the lines of each cell; nil for air
	table  bool
	joined bool // never the last in its block: what follows belongs to it
}

// A setter sets one panel.
type setter struct {
	templates.Panel
	form
	width  float64
	widths []float64 // of the columns, without the air between them
	head   *strip    // the first row of a ruled table, set again in every block
}

// Lay sets a panel in blocks no larger than most, each of them in the shapes it
// may take, the preferred one first. A ruled panel is as wide as most. Another is
// as wide as the first of the columns, or as its table needs; one that needs one
// block only may take any of the other columns that hold its table.
func Lay(p templates.Panel, columns []float64, most geometry.Point) [][]*Block {
	if p.Ruled {
		columns = []float64{most.X}
	}
	const little = 1.15
	var shapes []*Block
	for i, column := range columns {
		room := most
		// A table a little too wide for half a sheet wraps: grown, it would leave
		// the other half to nothing.
		if i == 0 && newSetter(p, column, most.X).width <= little*column {
			room.X = column
		}
		blocks := Set(p, column, room)
		if i == 0 && len(blocks) > 1 {
			return lists.Map(blocks, func(b *Block) []*Block { return []*Block{b} })
		}
		if len(blocks) == 1 && (i == 0 || blocks[0].Size.X == column) {
			shapes = append(shapes, blocks[0])
		}
	}
	return [][]*Block{shapes}
}

// newSetter returns a setter for a column, which grows up to most where a table
// without rules needs more.
func newSetter(p templates.Panel, column, most float64) setter {
	s := setter{Panel: p, form: formOf(p), width: column}
	s.widths = columnWidths(p, most, s.between)
	total := -s.between
	for _, w := range s.widths {
		total += s.between + w
	}
	if !p.Ruled {
		s.width = max(column, total)
	}
	return s
}

// Set sets a panel in blocks as wide as a column, or up to the width of most
// where the table needs more.
func Set(p templates.Panel, column float64, most geometry.Point) []*Block {
	s := newSetter(p, column, most.X)
	room := most.Y - s.below - Top(say(continued, p.Heading), s.width)
	rows := s.rows()
	if p.Ruled && len(rows) > 0 && rows[0].height < room/3 {
		s.head = &rows[0]
		room -= s.head.height
		rows = rows[1:]
	}
	strips := lists.Flat(rows, func(r strip) []strip { return s.broken(r, room) })
	strips = append(strips, s.text()...)
	var out []*Block
	for len(strips) > 0 || out == nil {
		n := fitting(strips, room)
		out = append(out, s.block(strips[:n], len(out) > 0))
		strips = strips[n:]
	}
	return out
}

// rows returns the rows of the table, those of one cell running across. In a
// ruled one an empty cell has room to write in.
func (s *setter) rows() []strip {
	var out []strip
	for i, cells := range s.Table {
		var wrapped [][]string
		for k, cell := range cells {
			width := s.width
			if len(cells) > 1 {
				width = s.widths[k]
			}
			wrapped = append(wrapped, lettering.Wrap(cell, lettering.Small, width+rounding))
		}
		r := s.strip(wrapped)
		r.joined = s.joined(i)
		if s.Ruled && i > 0 && slices.Contains(cells, "") {
			r.height = max(r.height, writeHigh)
		}
		out = append(out, r)
	}
	return out
}

// strip returns a row of cells.
func (s *setter) strip(cells [][]string) strip {
	return strip{height: float64(max(1, highest(cells)))*line + s.row, cells: cells, table: true}
}

// highest returns the lines of the cell that has the most.
func highest(cells [][]string) int { return lists.Most(cells, func(c []string) int { return len(c) }) }

// joined reports whether row i is to stay with the next one: a heading, or a
// row with its words under it.
func (s *setter) joined(i int) bool {
	across := func(k int) bool { return len(s.Table[k]) == 1 }
	switch {
	case !s.Ruled || i >= len(s.Table)-1:
		return false
	case !across(i):
		return s.Under && across(i+1)
	}
	words := s.Under && i > 1 && !across(i-1) // the first row is the head
	return !words
}

// text returns the lines below the table.
func (s *setter) text() []strip {
	var out []strip
	for i, text := range s.Text {
		if i > 0 || len(s.Table) > 0 {
			out = append(out, strip{height: line / 2})
		}
		for _, words := range lettering.Wrap(text, lettering.Small, min(s.width, s.readable)) {
			out = append(out, strip{height: line, cells: [][]string{{words}}})
		}
	}
	return out
}

// broken returns the row, or where it is higher than most, several.
func (s *setter) broken(r strip, most float64) []strip {
	lines := max(1, int((most-s.row)/line))
	if r.height <= most || highest(r.cells) <= lines {
		return []strip{r}
	}
	var first, rest [][]string
	for _, cell := range r.cells {
		n := min(lines, len(cell))
		first, rest = append(first, cell[:n]), append(rest, cell[n:])
	}
	return append([]strip{s.strip(first)}, s.broken(s.strip(rest), most)...)
}

// fitting returns how many strips one block takes: one at least, and none last
// that is joined to the next where that can be.
func fitting(strips []strip, room float64) int {
	n, used := 0, 0.0
	for n < len(strips) && used+strips[n].height <= room {
		used += strips[n].height
		n++
	}
	for k := n; n < len(strips) && k > 1; k-- {
		if !strips[k-1].joined {
			return k
		}
	}
	return min(max(n, 1), len(strips))
}

// block sets strips under the heading and, where rows are among them, under
// the head of the table.
func (s *setter) block(strips []strip, again bool) *Block {
	b := &Block{}
	heading := s.Heading
	if again && heading != "" {
		heading = say(continued, heading)
	}
	y := b.Heading(heading, s.width)
	if s.head != nil && (!again || strips[0].table) {
		y = s.set(b, *s.head, y)
		b.Lines[len(b.Lines)-1].Fine = false
	}
	for _, r := range strips {
		y = s.set(b, r, y)
	}
	b.Size = geometry.Pt(s.width, s.below-y)
	return b
}

// set sets a strip from the level y down and returns the level under it. The
// last line of a ruled row is the one below it.
func (s *setter) set(b *Block, r strip, y float64) float64 {
	air, ruled := s.words, r.table && s.Ruled
	if r.table {
		air = s.above
	}
	x, low := 0.0, y-r.height
	for i, lines := range r.cells {
		if i > 0 && ruled {
			b.line(true, geometry.Pt(x-s.between/2, y), geometry.Pt(x-s.between/2, low))
		}
		for k, text := range lines {
			b.Text(x, y-air-lettering.Small-float64(k)*line, lettering.Small, text)
		}
		if i < len(s.widths) {
			x += s.widths[i] + s.between
		}
	}
	if ruled {
		b.line(true, geometry.Pt(0, low), geometry.Pt(s.width, low))
	}
	return low
}
