package render

import (
	"math"
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
	free   []geometry.Rect
	placed []placed
}

func newBin(size geometry.Point) *bin {
	return &bin{free: []geometry.Rect{geometry.Box(0, 0, size.X+gap, size.Y+gap)}}
}

// put places b at the topmost, then leftmost, free spot and reports whether
// there was one.
func (n *bin) put(b block) bool {
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

// pack lays the items on as few sheets of the given size as several simple
// orders find; the first item always opens the first sheet. Between equals
// the order of the job wins.
func pack(items []item, size geometry.Point) [][]placed {
	var best [][]placed
	for _, order := range orders(items) {
		sheets := packInOrder(order, size)
		if best == nil || len(sheets) < len(best) {
			best = sheets
		}
		if float64(len(best)) <= math.Ceil(leastSheets(items, size)) {
			break
		}
	}
	return best
}

// leastSheets is a bound by area: no packing needs fewer.
func leastSheets(items []item, size geometry.Point) float64 {
	sum := 0.0
	for _, it := range items {
		sum += it[0].size.X * it[0].size.Y
	}
	return sum / (size.X * size.Y)
}

// orders returns the items in the orders that pack tries: as given, by height
// and by area, each with the shapes as preferred and the other way about.
func orders(items []item) [][]item {
	sorted := func(key func(block) float64) []item {
		out := append([]item{}, items...)
		rest := out[1:]
		sort.SliceStable(rest, func(i, j int) bool { return key(rest[i][0]) > key(rest[j][0]) })
		return out
	}
	out := [][]item{
		items,
		sorted(func(b block) float64 { return math.Max(b.size.X, b.size.Y) }),
		sorted(func(b block) float64 { return b.size.X * b.size.Y }),
	}
	for _, o := range out[:3] {
		out = append(out, turnedFirst(o))
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

func packInOrder(items []item, size geometry.Point) [][]placed {
	var bins []*bin
	for _, it := range items {
		if !putFirst(bins, it) {
			n := newBin(size)
			if !putFirst([]*bin{n}, it) {
				n.placed = append(n.placed, placed{it[0], geometry.Pt(0, 0)})
				n.free = nil
			}
			bins = append(bins, n)
		}
	}
	sheets := make([][]placed, len(bins))
	for i, n := range bins {
		sheets[i] = n.placed
	}
	return sheets
}

func putFirst(bins []*bin, it item) bool {
	for _, n := range bins {
		for _, b := range it {
			if n.put(b) {
				return true
			}
		}
	}
	return false
}
