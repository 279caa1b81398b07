package table

import (
	"math"
	"slices"
	"strings"

	"rodsheet/geometry/lists"
	"rodsheet/render/lettering"
	"rodsheet/templates"
)

const (
	writeWide = 18.0 // least width of a column with a cell to write in
	wordy     = 25.0 // no figure takes more
)

// columnWidths returns the widths of the columns of a table that is to be no
// wider than given; a row of one cell runs across all and has no say. Without
// rules each is as wide as its longest cell, and where together they are too
// wide, the widest is narrowed. With rules they share the whole width.
func columnWidths(p templates.Panel, width, between float64) []float64 {
	var all []column
	for i, cells := range p.Table {
		if len(cells) == 1 {
			continue
		}
		for k, cell := range cells {
			if k == len(all) {
				all = append(all, column{})
			}
			all[k].add(cell, p.Ruled, p.Ruled && i == 0)
		}
	}
	width -= float64(len(all)-1) * between
	if p.Ruled {
		return lowest(share(all, width), all)
	}
	var out []float64
	for _, c := range all {
		out = append(out, c.natural)
		width -= c.natural
	}
	narrow(out, -width)
	return out
}

// narrow takes what is over from the widest.
func narrow(widths []float64, over float64) {
	const narrowest = 15
	for over > 0 {
		k := slices.Index(widths, slices.Max(widths))
		by := min(over, widths[k]-narrowest)
		if by <= 0 {
			return
		}
		widths[k] -= by
		over -= by
	}
}

// A column is what the cells of one column of a table ask for in width.
type column struct {
	least, natural float64
	write          bool
	cells          []float64 // how wide each would be in one line; 0 in a head
}

// add counts one cell in. A head may always be broken between words.
func (c *column) add(cell string, ruled, head bool) {
	if cell == "" && ruled && !head {
		c.write = true
		c.least, c.natural = max(c.least, writeWide), max(c.natural, writeWide)
	}
	whole := lettering.Width(cell, lettering.Small)
	if head {
		c.cells = append(c.cells, 0)
	} else {
		c.cells = append(c.cells, whole)
		c.natural = max(c.natural, whole)
	}
	if strings.ContainsAny(cell, "0123456789") && whole <= wordy {
		c.least = max(c.least, whole) // a figure stays with its unit
	}
	for _, word := range strings.Fields(cell) {
		c.least = max(c.least, lettering.Width(word, lettering.Small))
	}
	c.natural = max(c.natural, c.least)
}

// share returns the widths of columns that together are as wide as given. Each
// has what its longest word needs, and no more than its longest cell while others
// lack room; what is left over goes to the columns of words and to those to write
// in.
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
	if rest := width - natural; rest > 0 {
		spread(out, all, rest)
	}
	return out
}

// lowest moves width from one column to another as long as that saves lines of the
// table: each time what saves most, up to the width of a cell.
func lowest(widths []float64, all []column) []float64 {
	const most = 20 // moves
	fewest := lines(widths, all)
	for range most {
		var best []float64
		for to, c := range all {
			for _, cell := range c.cells {
				more := cell - widths[to]
				if more <= 0 {
					continue
				}
				for from := range all {
					if from == to || widths[from]-more < all[from].least {
						continue
					}
					w := slices.Clone(widths)
					w[to], w[from] = w[to]+more, w[from]-more
					if n := lines(w, all); n < fewest {
						best, fewest = w, n
					}
				}
			}
		}
		if best == nil {
			break
		}
		widths = best
	}
	return widths
}

// lines returns about how many lines the rows of a table take: no word is broken.
func lines(widths []float64, all []column) int {
	var rows []float64
	for k, c := range all {
		for i, wide := range c.cells {
			if i == len(rows) {
				rows = append(rows, 0)
			}
			rows[i] = max(rows[i], math.Ceil((wide-rounding)/widths[k]))
		}
	}
	sum := lists.Sum(rows, func(n float64) float64 { return n })
	return int(sum)
}

// spread shares out what is left over: among columns to write in and columns
// of words, or where all are narrow among all.
func spread(widths []float64, all []column, rest float64) {
	asks := make([]float64, len(all))
	sum := 0.0
	for i, c := range all {
		if c.write || c.natural > wordy {
			asks[i] = c.natural
		}
		sum += asks[i]
	}
	for i := range widths {
		if sum > 0 {
			widths[i] += rest * asks[i] / sum
		} else {
			widths[i] += rest / float64(len(all))
		}
	}
}
