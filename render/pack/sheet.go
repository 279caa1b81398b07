package pack

import (
	"cmp"
	"math"
	"slices"

	"rodsheet/geometry"
)

// A Sheet holds items, and what is free of it as the largest free boxes; these
// overlap one another.
type Sheet struct {
	Turned bool // it stands on its side
	Placed []Placed
	free   []geometry.Rect
	spare  []geometry.Rect // room for the free boxes of the next step
}

// A Placed item stands in one of its shapes with its upper left corner at a
// place, from the upper left corner of the clear part of the sheet, y down.
type Placed struct {
	Item, Shape int
	At          geometry.Point
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

// slack is what rounding may add to a size, in mm.
const slack = 1e-9

// put places item i in the shape and the corner that suit it best, and reports
// whether there is room for any.
func (s *Sheet) put(j *Job, i int, fits fit) bool {
	best := [3]float64{math.Inf(1)}
	shape, at := -1, geometry.Point{}
	for k, way := range j.Items[i].Shapes {
		if s.Turned && way.Upright {
			continue
		}
		size := j.spaced(way)
		for _, f := range s.free {
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
	s.Placed = append(s.Placed, Placed{i, shape, at})
	s.take(geometry.Rect{Min: at, Max: at.Add(j.spaced(j.Items[i].Shapes[shape]))}, j.Gap)
	return true
}

// take removes used from the free boxes: each box it overlaps is replaced by
// the largest boxes left on its four sides, but for those within a gap.
func (s *Sheet) take(used geometry.Rect, gap float64) {
	free := s.spare[:0]
	for _, f := range s.free {
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
	s.spare, s.free = s.free, largest(free)
}

// largest drops every box that lies inside another.
func largest(boxes []geometry.Rect) []geometry.Rect {
	slices.SortStableFunc(boxes, func(a, b geometry.Rect) int {
		return cmp.Compare(b.Width()*b.Height(), a.Width()*a.Height())
	})
	out := boxes[:0]
	for _, b := range boxes {
		if !slices.ContainsFunc(out, func(o geometry.Rect) bool { return o.Holds(b) }) {
			out = append(out, b)
		}
	}
	return out
}
