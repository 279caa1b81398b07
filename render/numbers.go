package render

import (
	"slices"
	"strconv"

	"rodsheet/geometry"
	"rodsheet/render/table"
	"rodsheet/templates"
	"rodsheet/templates/wording"
)

// Numbers say on which sheets things stand. As long as that is not known they
// are the widest there can be, so that words set with them keep room enough;
// they do not hang on the limit of the job, or sheets printed again would not be
// the same.
type numbers struct {
	tiles    map[place]int // nil: not known
	sections [][2]int      // first and last sheet of each section; nil: not known
}

// A deferredWords is a panel that speaks of sheets by their numbers.
type deferredWords func(numbers) templates.Panel

// A deferredPanel is such a panel once it is laid, on sheets so high.
type deferredPanel struct {
	words deferredWords
	items []item
	high  float64
}

// set sets the panel again with numbers that are known: it needs no more lines
// than with the widest.
func (p deferredPanel) set(n numbers) {
	for k, shape := range p.items[0] {
		blocks := table.Set(p.words(n), shape.size.X, geometry.Pt(shape.size.X, p.high))
		for i, it := range p.items {
			*it[k].panel = table.Block{}
			if i < len(blocks) {
				*it[k].panel = *blocks[i]
			}
		}
	}
}

// panelItems sets a panel in blocks. Several of them are to be read in order.
func panelItems(p templates.Panel, columns []float64, most geometry.Point) []item {
	var out []item
	laid := table.Lay(p, columns, most)
	for _, shapes := range laid {
		var it item
		for _, b := range shapes {
			k := block{panel: b, size: b.Size, named: p.Ruled, upright: p.Ruled}
			if len(laid) > 1 {
				k.chain = laid[0][0]
			}
			it = append(it, k)
		}
		out = append(out, it)
	}
	return out
}

func (n numbers) section(i int) string {
	if n.sections == nil {
		return run(MostSheets-1, MostSheets)
	}
	return run(n.sections[i][0], n.sections[i][1])
}

// apart reports whether each of several tiles has a sheet of its own.
func (n numbers) apart(places []place) bool {
	return n.tiles != nil && len(n.of(places)) == len(places)
}

// tile names a tile by its sheet and, where that has another one of its drawing, by its
// row and column.
func (n numbers) tile(at place) string {
	for other, sheet := range n.tiles {
		if other.drawing == at.drawing && other != at && sheet == n.tiles[at] {
			return say(tileOnSheet, at.name(), sheet)
		}
	}
	return n.sheets([]place{at})
}

// of returns the sheets of several tiles in order, each once. All figures are
// equally wide, and numbers that do not follow one another take the most words.
func (n numbers) of(places []place) []int {
	var all []int
	for i, p := range places {
		sheet, known := n.tiles[p]
		if !known {
			sheet = MostSheets - 2*i
		}
		all = append(all, sheet)
	}
	slices.Sort(all)
	return slices.Compact(all)
}

// sheets names the sheets of several tiles, in order: "sheets 3 to 5, 7 and 9".
func (n numbers) sheets(places []place) string {
	all := n.of(places)
	if len(all) == 1 {
		return say(sheetWord, strconv.Itoa(all[0]))
	}
	var parts []string
	for len(all) > 0 {
		k := 1
		for k < len(all) && all[k] == all[0]+k {
			k++
		}
		if k < 3 {
			k = 1
		}
		parts = append(parts, run(all[0], all[k-1]))
		all = all[k:]
	}
	return say(sheetWords, wording.And(parts...))
}

// run names the numbers from one to another.
func run(first, last int) string {
	if first == last {
		return strconv.Itoa(first)
	}
	return say(fromTo, strconv.Itoa(first), strconv.Itoa(last))
}

func contents(sections []templates.Section) deferredWords {
	return func(n numbers) templates.Panel {
		p := templates.Panel{Heading: say(contentsHead)}
		for i, s := range sections {
			row := []string{s.Heading, n.section(i)}
			if s.Milled {
				row = append(row, say(againOnceMilled))
			}
			p.Table = append(p.Table, row)
		}
		return p
	}
}
