package render

import (
	"rodsheet/geometry"
	"rodsheet/render/lettering"
	"rodsheet/render/page"
	"rodsheet/templates"
)

// Words is a panel set in lines. Places are from its upper left corner, y up,
// so they are negative.
type words struct {
	title   string
	texts   []page.Text
	strokes []page.Stroke
}

// text sets a line with the left end of its base line at x, y.
func (w *words) text(x, y, height float64, s string) {
	if s == "" {
		return
	}
	if w.title == "" {
		w.title = s
	}
	w.texts = append(w.texts, page.Text{At: geometry.Pt(x, y), Height: height, String: s})
}

func (w *words) line(line int, points ...geometry.Point) {
	w.strokes = append(w.strokes, page.Stroke{Line: line, Points: points})
}

// heading sets the heading over a line of its own and returns the level of
// that line.
func (w *words) heading(text string, width float64) float64 {
	w.title = text
	y := -lettering.Ascent(large)
	for _, line := range lettering.Wrap(text, large, width) {
		w.text(0, y, large, line)
		y -= pitch(large)
	}
	y += pitch(large) - 1.6
	w.line(rule, geometry.Pt(0, y), geometry.Pt(width, y))
	return y
}

const columnGap = 4.0

// layPanel sets a panel in blocks no larger than most. A panel that needs one
// block only may take any of the widths of a column that hold its table, the
// first of them by preference; a longer one is broken over several blocks.
//
// Like is the panel that decides where lines and columns end: p itself, or one
// with the same words of which none is shorter. So words that are known only
// after everything is packed can take the places kept for them.
func layPanel(p, like templates.Panel, columns []float64, most geometry.Point) []item {
	const little = 1.15
	var shapes item
	for i, column := range columns {
		room := most
		// A table a little too wide for half a sheet wraps: grown, it would
		// leave the other half to nothing.
		if i == 0 && total(columnWidths(like.Table, most.X)) <= little*column {
			room.X = column
		}
		blocks := panelBlocks(p, like, column, room)
		if i == 0 && len(blocks) > 1 {
			return blocks
		}
		if len(blocks) == 1 && (i == 0 || blocks[0][0].size.X == column) {
			shapes = append(shapes, blocks[0][0])
		}
	}
	return []item{shapes}
}

// panelRows sets a panel in lines for a column, which grows where the table
// needs more.
func panelRows(p, like templates.Panel, column, most float64) (rows []row, widths []float64, width float64) {
	widths = columnWidths(like.Table, most)
	width = max(column, total(widths))
	rows = tableLines(p.Table, like.Table, widths, width)
	for i, text := range p.Text {
		if i > 0 || len(rows) > 0 {
			rows = append(rows, row{air: true})
		}
		for _, line := range wrapLike(text, like.Text[i], width) {
			rows = append(rows, row{cells: []string{line}})
		}
	}
	return rows, widths, width
}

// wrapLike wraps a text in as many lines as its like takes, the last of them
// blank where it needs fewer.
func wrapLike(text, like string, width float64) []string {
	lines := lettering.Wrap(text, small, width)
	for n := len(lettering.Wrap(like, small, width)); len(lines) < n; {
		lines = append(lines, "")
	}
	return lines
}

// A row is one line of print: a cell for each column, or a single cell that
// may run across all of them; or half a line of air.
type row struct {
	cells []string
	air   bool
}

func total(widths []float64) float64 {
	sum := 0.0
	for i, w := range widths {
		if i > 0 {
			sum += columnGap
		}
		sum += w
	}
	return sum
}

// columnWidths returns the width of each column; a row of one cell runs across
// all and has no say. Where together they are wider than most, the widest is
// narrowed and its cells wrap.
func columnWidths(table [][]string, most float64) []float64 {
	var widths []float64
	for _, cells := range table {
		if len(cells) == 1 {
			continue
		}
		for i, cell := range cells {
			if i == len(widths) {
				widths = append(widths, 0)
			}
			widths[i] = max(widths[i], lettering.Width(cell, small))
		}
	}
	const narrowest = 15
	for total(widths) > most {
		widest := 0
		for i, w := range widths {
			if w > widths[widest] {
				widest = i
			}
		}
		if widths[widest] <= narrowest {
			break
		}
		widths[widest] = max(narrowest, widths[widest]-(total(widths)-most))
	}
	return widths
}

// tableLines wraps the cells of a table to their columns, and a row of a
// single cell to the whole width.
func tableLines(table, like [][]string, widths []float64, width float64) []row {
	var out []row
	for r, cells := range table {
		columns := widths
		if len(cells) == 1 {
			columns = []float64{width}
		}
		wrapped := make([][]string, len(cells))
		most := 0
		for i, cell := range cells {
			wrapped[i] = wrapLike(cell, like[r][i], columns[i]+1e-6)
			most = max(most, len(wrapped[i]))
		}
		for k := range most {
			line := row{cells: make([]string, len(cells))}
			for i := range cells {
				if k < len(wrapped[i]) {
					line.cells[i] = wrapped[i][k]
				}
			}
			out = append(out, line)
		}
	}
	return out
}

// panelBlocks breaks a panel into blocks no higher than most, each with the
// heading.
func panelBlocks(p, like templates.Panel, column float64, most geometry.Point) []item {
	rows, widths, width := panelRows(p, like, column, most.X)
	heading := p.Heading
	var out []item
	for len(rows) > 0 || out == nil {
		w := &words{}
		y := w.heading(heading, width) - 1.6 - small
		for len(rows) > 0 && -y <= most.Y-1 {
			y = w.set(rows[0], widths, y)
			rows = rows[1:]
		}
		height := -y - pitch(small) + small
		out = append(out, item{{panel: w, size: geometry.Pt(width, height)}})
		if heading != "" && len(rows) > 0 && len(out) == 1 {
			heading = say(continued, heading)
		}
	}
	return chained(out)
}

// chained ties blocks together that are to be read in order.
func chained(items []item) []item {
	if len(items) > 1 {
		for _, it := range items {
			it[0].chain = items[0][0].panel
		}
	}
	return items
}

// set sets one row with its base line at y and returns the next base line.
func (w *words) set(r row, widths []float64, y float64) float64 {
	if r.air {
		return y - pitch(small)/2
	}
	x := 0.0
	for i, cell := range r.cells {
		w.text(x, y, small, cell)
		if i < len(widths) {
			x += widths[i] + columnGap
		}
	}
	return y - pitch(small)
}
