package render

import (
	"slices"
	"strings"

	"rodsheet/geometry"
	"rodsheet/render/lettering"
	"rodsheet/templates"
)

// Of a ruled table, in mm.
const (
	cellAir   = 1.5   // between a rule and the lettering beside it
	rowAir    = 1.2   // of a row, beyond its lines
	writeWide = 18.0  // least width of a column with a cell to write in
	writeHigh = 7.0   // least height of such a row
	wordy     = 25.0  // no figure takes more
	readable  = 120.0 // longest line of words that is easily followed
)

// A strip is a piece of a ruled panel that is not broken: a row of the table,
// or a line of words below it.
type strip struct {
	height float64
	cells  [][]string // the lines of each cell; nil for air
	across bool       // a row of one cell
	table  bool
	joined bool // never the last on its sheet: what follows belongs to it
}

// A ruledPanel is a panel over the whole width of a sheet.
type ruledPanel struct {
	templates.Panel
	width  float64
	widths []float64 // of the columns, without the air beside the rules
	head   *strip    // the first row of the table, printed again on every sheet
}

// layRuled lays a panel over the width of most in blocks no higher than it.
func layRuled(p templates.Panel, most geometry.Point) []item {
	r := ruledPanel{Panel: p, width: most.X, widths: ruledWidths(p.Table, most.X)}
	rows := r.rows()
	room := most.Y - r.top(say(continued, p.Heading))
	if len(rows) > 0 && rows[0].height < room/3 {
		r.head = &rows[0]
		room -= r.head.height
		rows = rows[1:]
	}
	var strips []strip
	for _, s := range rows {
		strips = append(strips, s.broken(room)...)
	}
	strips = append(strips, r.words()...)
	var out []item
	for len(strips) > 0 || out == nil {
		n := fitting(strips, room)
		out = append(out, item{r.block(strips[:n], len(out) > 0)})
		strips = strips[n:]
	}
	return chained(out)
}

// top returns the height of a heading.
func (r ruledPanel) top(heading string) float64 { return -(&words{}).heading(heading, r.width) }

// rows returns the rows of the table. An empty cell has room to write in.
func (r ruledPanel) rows() []strip {
	var out []strip
	for i, cells := range r.Table {
		s := strip{table: true, across: len(cells) == 1, joined: r.joined(i)}
		most := 1
		for k, cell := range cells {
			width := r.width
			if !s.across {
				width = r.widths[k]
			}
			lines := lettering.Wrap(cell, small, width+1e-6)
			most = max(most, len(lines))
			s.cells = append(s.cells, lines)
		}
		s.height = float64(most)*pitch(small) + rowAir
		if i > 0 && slices.Contains(cells, "") {
			s.height = max(s.height, writeHigh)
		}
		out = append(out, s)
	}
	return out
}

// joined reports whether row i is to stay with the next one: a heading, or a
// row with its words under it.
func (r ruledPanel) joined(i int) bool {
	across := func(k int) bool { return len(r.Table[k]) == 1 }
	switch {
	case i >= len(r.Table)-1:
		return false
	case !across(i):
		return r.Under && across(i+1)
	}
	words := r.Under && i > 1 && !across(i-1) // the first row is the head
	return !words
}

// words returns the lines below the table.
func (r ruledPanel) words() []strip {
	var out []strip
	for i, text := range r.Text {
		if i > 0 || len(r.Table) > 0 {
			out = append(out, strip{height: pitch(small) / 2})
		}
		for _, line := range lettering.Wrap(text, small, min(r.width, readable)) {
			out = append(out, strip{height: pitch(small), cells: [][]string{{line}}})
		}
	}
	return out
}

// broken returns the strip, or where it is higher than most, several.
func (s strip) broken(most float64) []strip {
	lines := max(1, int((most-rowAir)/pitch(small)))
	if s.height <= most {
		return []strip{s}
	}
	var out []strip
	for from, more := 0, true; more; from += lines {
		part := strip{table: true, across: s.across}
		more = false
		high := 1
		for _, cell := range s.cells {
			lo, hi := min(from, len(cell)), min(from+lines, len(cell))
			part.cells = append(part.cells, cell[lo:hi])
			high = max(high, hi-lo)
			more = more || len(cell) > from+lines
		}
		part.height = float64(high)*pitch(small) + rowAir
		out = append(out, part)
	}
	return out
}

// fitting returns how many strips one block takes: one at least, and no
// heading last where that can be.
func fitting(strips []strip, room float64) int {
	n, used := 0, 0.0
	for n < len(strips) && used+strips[n].height <= room {
		used += strips[n].height
		n++
	}
	whole := n == len(strips)
	for k := n; !whole && k > 1; k-- {
		if !strips[k-1].joined {
			return k
		}
	}
	return min(max(n, 1), len(strips))
}

// block sets strips under the heading and, where rows are among them, under
// the head of the table.
func (r ruledPanel) block(strips []strip, again bool) block {
	w := &words{}
	heading := r.Heading
	if again && heading != "" {
		heading = say(continued, heading)
	}
	y := w.heading(heading, r.width)
	if r.head != nil && (!again || strips[0].table) {
		y = r.set(w, *r.head, y)
		w.strokes[len(w.strokes)-1].Line = rule
	}
	for _, s := range strips {
		y = r.set(w, s, y)
	}
	return block{panel: w, size: geometry.Pt(r.width, -y), named: true, upright: true}
}

// set sets a strip from the level y down and returns the level under it. The
// last stroke of a row is the one below it.
func (r ruledPanel) set(w *words, s strip, y float64) float64 {
	air := 0.7 // above capitals: what hangs below the last line stays in
	if s.table {
		air = 1.1
	}
	x, low := 0.0, y-s.height
	for i, lines := range s.cells {
		if i > 0 {
			w.line(tableLine, geometry.Pt(x-cellAir, y), geometry.Pt(x-cellAir, low))
		}
		for k, line := range lines {
			w.text(x, y-air-small-float64(k)*pitch(small), small, line)
		}
		if i < len(r.widths) {
			x += r.widths[i] + 2*cellAir
		}
	}
	if s.table {
		w.line(tableLine, geometry.Pt(0, low), geometry.Pt(r.width, low))
	}
	return low
}

// ruledWidths shares a width out among the columns of a table. Each has what
// its longest word needs, and no more than its longest cell while others lack
// room; what is left over goes to the columns of words and to those to write
// in.
func ruledWidths(table [][]string, width float64) []float64 {
	var all []column
	for i, cells := range table {
		if len(cells) == 1 {
			continue
		}
		for k, cell := range cells {
			if k == len(all) {
				all = append(all, column{})
			}
			all[k].add(cell, i == 0)
		}
	}
	if len(all) == 0 {
		return nil
	}
	return share(all, width-float64(len(all)-1)*2*cellAir)
}

// A column is what the cells of one column of a table ask for in width.
type column struct {
	least, natural float64
	write          bool
}

// add counts one cell in. A head may always be broken between words.
func (c *column) add(cell string, head bool) {
	if cell == "" && !head {
		c.write = true
		c.least, c.natural = max(c.least, writeWide), max(c.natural, writeWide)
	}
	whole := lettering.Width(cell, small)
	if !head {
		c.natural = max(c.natural, whole)
	}
	if strings.ContainsAny(cell, "0123456789") && whole <= wordy {
		c.least = max(c.least, whole) // a figure stays with its unit
	}
	for _, word := range strings.Fields(cell) {
		c.least = max(c.least, lettering.Width(word, small))
	}
	c.natural = max(c.natural, c.least)
}

// share returns the widths of columns that together are as wide as given.
func share(all []column, width float64) []float64 {
	least, natural, fixed := 0.0, 0.0, 0.0
	for _, c := range all {
		least += c.least
		natural += c.natural
		if c.write {
			fixed += writeWide
		}
	}
	out := make([]float64, len(all))
	for i, c := range all {
		switch {
		case natural <= width:
			out[i] = c.natural
		case least < width:
			out[i] = c.least + (c.natural-c.least)*(width-least)/(natural-least)
		case fixed < width && fixed < least: // words break; the room to write in stays
			if c.write {
				out[i] = writeWide
				c.least -= writeWide
			}
			out[i] += c.least * (width - fixed) / (least - fixed)
		default:
			out[i] = width / float64(len(all))
		}
	}
	return spread(out, all, width-natural)
}

// spread shares out what is left over: among columns to write in and columns
// of words, or where all are narrow among all.
func spread(widths []float64, all []column, rest float64) []float64 {
	asks := make([]float64, len(all))
	sum := 0.0
	for i, c := range all {
		if c.write || c.natural > wordy {
			asks[i] = c.natural
		}
		sum += asks[i]
	}
	for i := range widths {
		switch {
		case rest <= 0:
		case sum > 0:
			widths[i] += rest * asks[i] / sum
		default:
			widths[i] += rest / float64(len(all))
		}
	}
	return widths
}
