package render

import (
	"rodsheet/geometry"
	"rodsheet/render/lettering"
	"rodsheet/templates"
)

// Words is a panel set in lines. Places are from its upper left corner, y up,
// so they are negative; At is the left end of a base line.
type words struct {
	lines []wordLine
	rule  float64 // level of the line under the heading
	width float64
}

type wordLine struct {
	at     geometry.Point
	height float64
	text   string
}

const columnGap = 4.0

// layPanel sets a panel in blocks no larger than most. A panel that needs one
// block only may take any of the widths of a column that hold its table, the
// first of them by preference; a longer one is broken over several blocks.
func layPanel(p templates.Panel, columns []float64, most geometry.Point) []item {
	var shapes item
	for i, column := range columns {
		blocks := panelBlocks(p, column, most)
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
func panelRows(p templates.Panel, column, most float64) (rows []row, widths []float64, width float64) {
	widths = columnWidths(p.Table, most)
	width = max(column, total(widths))
	rows = tableLines(p.Table, widths, width)
	for i, text := range p.Text {
		if i > 0 || len(rows) > 0 {
			rows = append(rows, row{air: true})
		}
		for _, line := range lettering.Wrap(text, small, width) {
			rows = append(rows, row{cells: []string{line}})
		}
	}
	return rows, widths, width
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
func tableLines(table [][]string, widths []float64, width float64) []row {
	var out []row
	for _, cells := range table {
		columns := widths
		if len(cells) == 1 {
			columns = []float64{width}
		}
		wrapped := make([][]string, len(cells))
		most := 0
		for i, cell := range cells {
			wrapped[i] = lettering.Wrap(cell, small, columns[i]+1e-6)
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
func panelBlocks(p templates.Panel, column float64, most geometry.Point) []item {
	rows, widths, width := panelRows(p, column, most.X)
	heading := p.Heading
	var out []item
	for len(rows) > 0 || out == nil {
		w := &words{width: width}
		y := -lettering.Ascent(large)
		for _, line := range lettering.Wrap(heading, large, width) {
			w.lines = append(w.lines, wordLine{geometry.Pt(0, y), large, line})
			y -= pitch(large)
		}
		y += pitch(large) - 1.6
		w.rule = y
		y -= 1.6 + small
		for len(rows) > 0 && -y <= most.Y-1 {
			y = w.set(rows[0], widths, y)
			rows = rows[1:]
		}
		height := -y - pitch(small) + small
		out = append(out, item{{panel: w, size: geometry.Pt(width, height)}})
		if heading != "" && len(rows) > 0 && len(out) == 1 {
			heading += ", continued"
		}
	}
	return out
}

// set sets one row with its base line at y and returns the next base line.
func (w *words) set(r row, widths []float64, y float64) float64 {
	if r.air {
		return y - pitch(small)/2
	}
	x := 0.0
	for i, cell := range r.cells {
		if cell != "" {
			w.lines = append(w.lines, wordLine{geometry.Pt(x, y), small, cell})
		}
		if i < len(widths) {
			x += widths[i] + columnGap
		}
	}
	return y - pitch(small)
}
