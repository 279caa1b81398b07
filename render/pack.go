package render

import (
	"cmp"
	"math"
	"slices"

	"rodsheet/geometry"
	"rodsheet/render/table"
)

// An item is something to be packed, in each of the shapes it may take, the
// preferred one first.
type item []block

// area returns what the item takes of a sheet with the gap beside it, in the
// smallest of its shapes.
func (it item) area() float64 {
	least := math.Inf(1)
	for k := range it {
		size := it[k].spaced()
		least = math.Min(least, size.X*size.Y)
	}
	return least
}

// A placed block stands on a sheet with its upper left corner at At, counted
// from the upper left corner of the clear part, y down.
type placed struct {
	block
	at geometry.Point
}

// A bin is the free part of one sheet, as the largest free boxes in it; they
// overlap one another.
type bin struct {
	turned bool // the sheet stands on its side
	free   []geometry.Rect
	placed []placed
}

func newBin(size geometry.Point, turned bool) *bin {
	return &bin{turned: turned, free: []geometry.Rect{geometry.Box(0, 0, size.X+gap, size.Y+gap)}}
}

// A fit says how well shape k of an item, of a size, stands in the corner of a
// free box: the lower the better, number by number.
type fit func(free geometry.Rect, size geometry.Point, k float64) [3]float64

// fits are the ways in which sheets are filled.
var fits = [...]fit{
	topmost,
	func(f geometry.Rect, _ geometry.Point, k float64) [3]float64 { return [3]float64{f.Min.X, f.Min.Y, k} },
	func(f geometry.Rect, size geometry.Point, k float64) [3]float64 {
		w, h := f.Width()-size.X, f.Height()-size.Y
		return [3]float64{math.Min(w, h), math.Max(w, h), k}
	},
	func(f geometry.Rect, size geometry.Point, k float64) [3]float64 {
		return [3]float64{f.Width()*f.Height() - size.X*size.Y, math.Min(f.Width()-size.X, f.Height()-size.Y), k}
	},
}

// topmost takes the preferred shape, then the topmost and leftmost place.
func topmost(f geometry.Rect, _ geometry.Point, k float64) [3]float64 {
	return [3]float64{k, f.Min.Y, f.Min.X}
}

// put places the item in the shape and the corner that suit it best, and
// reports whether there is room for any.
func (n *bin) put(it item, fits fit) bool {
	const slack = 1e-9
	best := [3]float64{math.Inf(1)}
	shape, at := -1, geometry.Point{}
	for k := range it {
		if n.turned && it[k].upright {
			continue
		}
		size := it[k].spaced()
		for _, f := range n.free {
			if f.Width() < size.X-slack || f.Height() < size.Y-slack {
				continue
			}
			if q := fits(f, size, float64(k)); slices.Compare(q[:], best[:]) < 0 {
				best, shape, at = q, k, f.Min
			}
		}
	}
	if shape < 0 {
		return false
	}
	n.placed = append(n.placed, placed{it[shape], at})
	n.take(geometry.Rect{Min: at, Max: at.Add(it[shape].spaced())})
	return true
}

// spaced returns the size of a block with the gap to the next.
func (b *block) spaced() geometry.Point { return b.size.Add(geometry.Pt(gap, gap)) }

// take removes used from the free boxes: each box it overlaps is replaced by
// the largest boxes left on its four sides.
func (n *bin) take(used geometry.Rect) {
	free := make([]geometry.Rect, 0, len(n.free)+4)
	for _, f := range n.free {
		if used.Min.X >= f.Max.X || used.Max.X <= f.Min.X || used.Min.Y >= f.Max.Y || used.Max.Y <= f.Min.Y {
			free = append(free, f)
			continue
		}
		for _, r := range [...]geometry.Rect{
			{Min: f.Min, Max: geometry.Pt(used.Min.X, f.Max.Y)},
			{Min: geometry.Pt(used.Max.X, f.Min.Y), Max: f.Max},
			{Min: f.Min, Max: geometry.Pt(f.Max.X, used.Min.Y)},
			{Min: geometry.Pt(f.Min.X, used.Max.Y), Max: f.Max},
		} {
			if r.Width() > gap && r.Height() > gap {
				free = append(free, r)
			}
		}
	}
	n.free = largest(free)
}

// largest drops every box that lies inside another.
func largest(boxes []geometry.Rect) []geometry.Rect {
	slices.SortStableFunc(boxes, func(a, b geometry.Rect) int {
		return cmp.Compare(b.Width()*b.Height(), a.Width()*a.Height())
	})
	out := boxes[:0]
next:
	for _, b := range boxes {
		for _, o := range out {
			if o.Holds(b) {
				continue next
			}
		}
		out = append(out, b)
	}
	return out
}

// A packer lays items on sheets whose clear part has the first size, or on
// its side the second.
type packer struct{ size [2]geometry.Point }

func (p packer) open(turned bool) *bin {
	if turned {
		return newBin(p.size[1], true)
	}
	return newBin(p.size[0], false)
}

// repairs is how often the packer tries again with what ended on the last
// sheet put first.
const repairs = 3

// pack lays the items on as few sheets as several simple orders find, each
// order mended by putting first what came out last; the first item always
// opens the first sheet. Between equals the order of the job wins.
func (p packer) pack(items []item) []*bin {
	bound := p.least(items)
	var best []*bin
	for _, order := range orders(items) {
		for range repairs {
			sheets := p.packInOrder(order)
			if best == nil || len(sheets) < len(best) {
				best = sheets
			}
			if len(best) <= bound {
				return best
			}
			if order = lastFirst(order, sheets[len(sheets)-1]); order == nil {
				break
			}
		}
	}
	return best
}

// least is a bound: no packing of the items takes fewer sheets, since these
// have no more area, and since so many items share no sheet with one another
// (the largest are asked first, which need not find the most).
func (p packer) least(items []item) int {
	sum, most := 0.0, 0.0
	for _, it := range items {
		sum += it.area()
	}
	for _, s := range p.size {
		most = math.Max(most, (s.X+gap)*(s.Y+gap))
	}
	var alone []item
	for _, it := range sorted(items, func(b block) float64 { return b.size.X * b.size.Y }) {
		if !slices.ContainsFunc(alone, func(o item) bool { return p.share(it, o) }) {
			alone = append(alone, it)
		}
	}
	return max(int(math.Ceil(sum/most-1e-9)), len(alone))
}

// share reports whether two items stand on one sheet, beside or above one
// another in any of their shapes.
func (p packer) share(a, b item) bool {
	const slack = 1e-9
	for _, s := range p.size {
		for _, x := range a {
			for _, y := range b {
				if x.size.X+gap+y.size.X <= s.X+slack || x.size.Y+gap+y.size.Y <= s.Y+slack {
					return true
				}
			}
		}
	}
	return false
}

// lastFirst moves what stands on a sheet to the front, behind the first item;
// what is to be read in order moves together. It returns nil where that
// changes nothing.
func lastFirst(items []item, last *bin) []item {
	on, read := map[any]bool{}, map[*table.Block]bool{}
	for _, b := range last.placed {
		on[b.content()] = true
		read[b.chain] = b.chain != nil
	}
	var front, back []item
	for _, it := range items[1:] {
		if slices.ContainsFunc(it, func(b block) bool { return on[b.content()] || read[b.chain] }) {
			front = append(front, it)
		} else {
			back = append(back, it)
		}
	}
	if len(front) == 0 || len(back) == 0 {
		return nil
	}
	return slices.Concat(items[:1], front, back)
}

// orders returns the items in the orders that pack tries: as given, by height
// and by area, each with the shapes as preferred and, where there is a choice,
// the other way about.
func orders(items []item) [][]item {
	out := [][]item{
		items,
		sorted(items, func(b block) float64 { return math.Max(b.size.X, b.size.Y) }),
		sorted(items, func(b block) float64 { return b.size.X * b.size.Y }),
	}
	if slices.ContainsFunc(items, func(it item) bool { return len(it) > 1 }) {
		for _, o := range out[:3] {
			out = append(out, turnedFirst(o))
		}
	}
	return out
}

// sorted returns the items behind the first by falling key. What is to be read
// in order goes by the key of its first block.
func sorted(items []item, key func(block) float64) []item {
	type keyed struct {
		item
		key float64
	}
	all := make([]keyed, len(items))
	for i, it := range items {
		all[i] = keyed{it, key(it[0])}
		if c := it[0].chain; i > 0 && c != nil && c == items[i-1][0].chain {
			all[i].key = all[i-1].key
		}
	}
	slices.SortStableFunc(all[1:], func(a, b keyed) int { return cmp.Compare(b.key, a.key) })
	out := make([]item, len(items))
	for i, k := range all {
		out[i] = k.item
	}
	return out
}

func turnedFirst(items []item) []item {
	out := make([]item, len(items))
	for i, it := range items {
		for _, b := range it {
			out[i] = append(item{b}, out[i]...)
		}
	}
	return out
}

// packInOrder puts each item on the first sheet that has room.
func (p packer) packInOrder(items []item) []*bin {
	left := make([]int, len(items))
	for i := range left {
		left[i] = i
	}
	var bins []*bin
	for len(left) > 0 {
		var b *bin
		b, left = p.fill(items, left, topmost)
		bins = append(bins, b)
	}
	return bins
}

// fill lays one sheet with what there is room for of the items left, in their
// order, and returns those that are left still. The first of them is laid even
// where it is too large. What is to be read in order is laid up to the first
// part without room.
func (p packer) fill(items []item, left []int, r fit) (b *bin, still []int) {
	b = p.open(items[left[0]][0].turned)
	ended := map[*table.Block]bool{}
	for k, i := range left {
		it := items[i]
		chain := it[0].chain
		switch {
		case len(b.free) > 0 && !ended[chain] && b.put(it, r):
		case k == 0:
			b.placed, b.free = append(b.placed, placed{it[0], geometry.Pt(0, 0)}), nil
		default:
			if chain != nil {
				ended[chain] = true
			}
			still = append(still, i)
		}
	}
	return b, still
}
