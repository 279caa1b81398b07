package render

import (
	"cmp"
	"math"
	"slices"
	"sort"

	"rodsheet/geometry"
)

// An item is something to be packed, in each of the shapes it may take, the
// preferred one first.
type item []block

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

// put places b at the topmost, then leftmost, free spot and reports whether
// there was one.
func (n *bin) put(b block) bool {
	if n.turned && b.upright {
		return false
	}
	size := b.size.Add(geometry.Pt(gap, gap))
	best := geometry.Pt(math.Inf(1), math.Inf(1))
	for _, f := range n.free {
		const slack = 1e-9
		if f.Width() < size.X-slack || f.Height() < size.Y-slack {
			continue
		}
		if f.Min.Y < best.Y || f.Min.Y == best.Y && f.Min.X < best.X {
			best = f.Min
		}
	}
	if math.IsInf(best.X, 1) {
		return false
	}
	n.placed = append(n.placed, placed{b, best})
	n.take(geometry.Rect{Min: best, Max: best.Add(size)})
	return true
}

// take removes used from the free boxes: each box it overlaps is replaced by
// the largest boxes left on its four sides.
func (n *bin) take(used geometry.Rect) {
	var free []geometry.Rect
	for _, f := range n.free {
		free = append(free, leftOf(f, used)...)
	}
	n.free = largest(free)
}

func leftOf(f, used geometry.Rect) []geometry.Rect {
	if used.Min.X >= f.Max.X || used.Max.X <= f.Min.X || used.Min.Y >= f.Max.Y || used.Max.Y <= f.Min.Y {
		return []geometry.Rect{f}
	}
	var out []geometry.Rect
	for _, r := range []geometry.Rect{
		{Min: f.Min, Max: geometry.Pt(used.Min.X, f.Max.Y)},
		{Min: geometry.Pt(used.Max.X, f.Min.Y), Max: f.Max},
		{Min: f.Min, Max: geometry.Pt(f.Max.X, used.Min.Y)},
		{Min: geometry.Pt(f.Min.X, used.Max.Y), Max: f.Max},
	} {
		if r.Width() > gap && r.Height() > gap {
			out = append(out, r)
		}
	}
	return out
}

// largest drops every box that lies inside another.
func largest(boxes []geometry.Rect) []geometry.Rect {
	sort.SliceStable(boxes, func(i, j int) bool {
		return boxes[i].Width()*boxes[i].Height() > boxes[j].Width()*boxes[j].Height()
	})
	var out []geometry.Rect
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

// least is a bound by area: no packing of the items needs fewer sheets.
func (p packer) least(items []item) int {
	sum, most := 0.0, 0.0
	for _, it := range items {
		area := math.Inf(1)
		for _, b := range it {
			area = math.Min(area, (b.size.X+gap)*(b.size.Y+gap))
		}
		sum += area
	}
	for _, s := range p.size {
		most = math.Max(most, (s.X+gap)*(s.Y+gap))
	}
	return int(math.Ceil(sum/most - 1e-9))
}

// lastFirst moves what stands on a sheet to the front, behind the first item;
// what is to be read in order moves together. It returns nil where that
// changes nothing.
func lastFirst(items []item, last *bin) []item {
	on, read := map[any]bool{}, map[*words]bool{}
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

func (p packer) packInOrder(items []item) []*bin {
	var bins []*bin
	reached := map[*words]int{} // the sheet up to which a chain is laid
	for _, it := range items {
		from := reached[it[0].chain]
		at := putFirst(bins[from:], it)
		if at < 0 {
			n := p.open(it[0].turned)
			if putFirst([]*bin{n}, it) < 0 {
				n.placed = append(n.placed, placed{it[0], geometry.Pt(0, 0)})
				n.free = nil
			}
			at = len(bins) - from
			bins = append(bins, n)
		}
		if c := it[0].chain; c != nil {
			reached[c] = from + at
		}
	}
	return bins
}

// putFirst puts an item on the first sheet that has room, in the first shape
// that fits, and returns which; −1 where none has.
func putFirst(bins []*bin, it item) int {
	for i, n := range bins {
		if len(n.free) == 0 {
			continue
		}
		for _, b := range it {
			if n.put(b) {
				return i
			}
		}
	}
	return -1
}
