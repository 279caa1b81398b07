package render

import "rodsheet/render/table"

// A collator puts the sheets of a job in the order in which they are used.
type collator struct {
	sheets []*bin
	holds  map[any]int       // the sheet that a tile, view or panel stands on
	tiles  map[*tiling][]int // the sheets of a template of several tiles, tile by tile
	done   []bool
	out    []*bin
}

// collated returns the sheets of a packing so that those of one template
// follow one another and templates come in the order of the job, as far as
// sheets that they share allow. The first sheet, with the first item, stays the
// first, and what is to be read in order stays in order.
func collated(items []item, sheets []*bin) []*bin {
	c := collator{sheets, map[any]int{}, map[*tiling][]int{}, make([]bool, len(sheets)), nil}
	for i, s := range sheets {
		for _, b := range s.placed {
			c.holds[b.content()] = i
		}
	}
	for _, it := range items {
		if t := it[0].tile; t != nil && t.rows*t.cols > 1 {
			c.tiles[t.tiling] = append(c.tiles[t.tiling], c.holds[t])
		}
	}
	c.take(0)
	for _, it := range items {
		for _, shape := range it {
			if i, ok := c.holds[shape.content()]; ok {
				c.use(i)
			}
		}
	}
	return c.out
}

// use takes sheet i, with all the sheets of the templates that have tiles on
// it where there are such.
func (c *collator) use(i int) {
	for _, b := range c.sheets[i].placed {
		if b.tile != nil {
			for _, k := range c.tiles[b.tile.tiling] {
				c.take(k)
			}
		}
	}
	c.take(i)
}

// take takes sheet i behind those that are to be read before it.
func (c *collator) take(i int) {
	if c.done[i] {
		return
	}
	c.done[i] = true
	for _, b := range c.sheets[i].placed {
		for k := range c.sheets[:i] {
			if b.chain != nil && !c.done[k] && c.sheets[k].carries(b.chain) {
				c.take(k)
			}
		}
	}
	c.out = append(c.out, c.sheets[i])
}

// carries reports whether a part of what is to be read in order is on the
// sheet.
func (n *bin) carries(chain *table.Block) bool {
	for _, b := range n.placed {
		if b.chain == chain {
			return true
		}
	}
	return false
}
