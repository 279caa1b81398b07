// Package pack lays boxes of any kind on few sheets.
package pack

import (
	"cmp"
	"math"
	"slices"

	"rodsheet/geometry"
)

// A Shape is one way in which an item may stand.
type Shape struct {
	Size    geometry.Point // width and height
	Turned  bool           // made for a sheet turned on its side
	Upright bool           // stands on no such sheet
}

// An Item is something to be packed, in each of the shapes it may take, the
// preferred one first.
type Item struct {
	Shapes []Shape
	Chain  any  // of items to be read in order, which follow one another in the job; nil: none
	Group  any  // of items to stand on sheets that follow one another; nil: none
	First  bool // stands above all others of its sheet
	Behind bool // stands on no sheet before the last with one that is First
	Shows  any  // what others may want to stand with; nil: nothing
	With   any  // what it wants to stand with; nil: nothing
}

// A Job is items to be laid on sheets whose clear part has the first size, or
// on its side the second, with a gap between any two.
type Job struct {
	Size  [2]geometry.Point
	Gap   float64
	Items []Item

	unused []*Sheet // of tries that were no better: their memory is used again
}

// Alike reports whether another job is packed the same way: by all that tells its items
// apart for the packer.
func (j *Job) Alike(other *Job) bool {
	return j.Size == other.Size && j.Gap == other.Gap && slices.EqualFunc(j.Items, other.Items, func(a, b Item) bool {
		return slices.Equal(a.Shapes, b.Shapes) && a.Chain == b.Chain && a.Group == b.Group && a.First == b.First && a.Behind == b.Behind
	})
}

// spaced returns the size of a shape with the gap to the next.
func (j *Job) spaced(s Shape) geometry.Point { return s.Size.Add(geometry.Pt(j.Gap, j.Gap)) }

// area returns what an item takes of a sheet with the gap beside it, in the
// smallest of its shapes.
func (j *Job) area(i int) float64 {
	least := math.Inf(1)
	for _, s := range j.Items[i].Shapes {
		size := j.spaced(s)
		least = math.Min(least, size.X*size.Y)
	}
	return least
}

func (j *Job) open(turned bool) *Sheet {
	size := j.Size[0]
	if turned {
		size = j.Size[1]
	}
	s := &Sheet{}
	if last := len(j.unused) - 1; last >= 0 {
		s, j.unused = j.unused[last], j.unused[:last]
	}
	s.Turned, s.Placed = turned, s.Placed[:0]
	s.free = append(s.free[:0], geometry.Box(0, 0, size.X+j.Gap, size.Y+j.Gap))
	return s
}

// repairs is how often the packer tries again with what ended on the last
// sheet put first.
const repairs = 3

// Pack lays the items on as few sheets as several simple orders find, each
// order mended by putting first what came out last; the first item always
// opens the first sheet. Between equals the order of the job wins.
func (j *Job) Pack() []*Sheet {
	bound := j.Least()
	var best []*Sheet
	for _, o := range j.orders() {
		for range repairs {
			sheets := j.inOrder(o)
			last, worse := sheets[len(sheets)-1], sheets
			if best == nil || len(sheets) < len(best) {
				best, worse = sheets, best
			}
			if len(best) <= bound {
				return best
			}
			o.items = j.lastFirst(o.items, last)
			j.unused = append(j.unused, worse...)
			if o.items == nil {
				break
			}
		}
	}
	return best
}

// Least is a bound: no packing takes fewer sheets, since these have no more
// area, and since so many items share no sheet with one another (the largest
// are asked first, which need not find the most).
func (j *Job) Least() int {
	sum, most := 0.0, 0.0
	for i := range j.Items {
		sum += j.area(i)
	}
	for _, s := range j.Size {
		most = math.Max(most, (s.X+j.Gap)*(s.Y+j.Gap))
	}
	var alone []int
	for _, i := range j.sorted(func(s geometry.Point) float64 { return s.X * s.Y }) {
		if !slices.ContainsFunc(alone, func(k int) bool { return j.share(i, k) }) {
			alone = append(alone, i)
		}
	}
	return max(int(math.Ceil(sum/most-slack)), len(alone))
}

// share reports whether two items stand on one sheet, beside or above one
// another in any of their shapes.
func (j *Job) share(a, b int) bool {
	for _, s := range j.Size {
		for _, x := range j.Items[a].Shapes {
			for _, y := range j.Items[b].Shapes {
				if x.Size.X+j.Gap+y.Size.X <= s.X+slack || x.Size.Y+j.Gap+y.Size.Y <= s.Y+slack {
					return true
				}
			}
		}
	}
	return false
}

// An order is one in which the items are laid, and how they are fitted.
type order struct {
	items []int
	fit
}

// orders returns those that Pack tries: as given, by height and by area, each
// with the shapes as preferred and, where there is a choice, the other way about.
func (j *Job) orders() []order {
	given := make([]int, len(j.Items))
	for i := range given {
		given[i] = i
	}
	out := []order{
		{given, topmost},
		{j.sorted(func(s geometry.Point) float64 { return math.Max(s.X, s.Y) }), topmost},
		{j.sorted(func(s geometry.Point) float64 { return s.X * s.Y }), topmost},
	}
	if slices.ContainsFunc(j.Items, func(it Item) bool { return len(it.Shapes) > 1 }) {
		for _, o := range out[:3] {
			out = append(out, order{o.items, func(f geometry.Rect, size geometry.Point, k float64) [3]float64 {
				return topmost(f, size, -k)
			}})
		}
	}
	return out
}

// sorted returns the items behind the first by falling key of the preferred
// size. What is to be read in order goes by the key of its first item.
func (j *Job) sorted(key func(size geometry.Point) float64) []int {
	keys, out := make([]float64, len(j.Items)), make([]int, len(j.Items))
	for i, it := range j.Items {
		keys[i], out[i] = key(it.Shapes[0].Size), i
		if i > 0 && it.Chain != nil && it.Chain == j.Items[i-1].Chain {
			keys[i] = keys[i-1]
		}
	}
	slices.SortStableFunc(out[1:], func(a, b int) int { return cmp.Compare(keys[b], keys[a]) })
	return out
}

// lastFirst moves what stands on a sheet to the front, behind the first item;
// what is to be read in order moves together. It returns nil where that
// changes nothing.
func (j *Job) lastFirst(items []int, last *Sheet) []int {
	on, read := map[int]bool{}, map[any]bool{}
	for _, p := range last.Placed {
		on[p.Item] = true
		read[j.Items[p.Item].Chain] = true
	}
	delete(read, nil)
	var front, back []int
	for _, i := range items[1:] {
		if on[i] || read[j.Items[i].Chain] {
			front = append(front, i)
		} else {
			back = append(back, i)
		}
	}
	if len(front) == 0 || len(back) == 0 {
		return nil
	}
	return slices.Concat(items[:1], front, back)
}

// inOrder puts each item on the first sheet that has room.
func (j *Job) inOrder(o order) []*Sheet {
	var out []*Sheet
	for left := o.items; len(left) > 0; {
		var s *Sheet
		s, left = j.fill(left, o.fit)
		out = append(out, s)
	}
	return out
}

// fill lays one sheet with what there is room for of the items left, in their
// order, and returns those that are left still. The first of them is laid even
// where it is too large. What is to be read in order is laid up to the first
// part without room, what stands above all others goes before them, and what is to
// stand behind these waits for the last.
func (j *Job) fill(left []int, f fit) (s *Sheet, still []int) {
	left = j.firstOnes(left)
	s = j.open(j.Items[left[0]].Shapes[0].Turned)
	ended := map[any]bool{}
	more := false // of what stands above all others
	for k, i := range left {
		it := j.Items[i]
		switch {
		case len(s.free) > 0 && (it.Chain == nil || !ended[it.Chain]) && !(it.Behind && more) && s.put(j, i, f):
		case k == 0:
			s.Placed, s.free = append(s.Placed, Placed{Item: i}), nil
		default:
			if it.Chain != nil {
				ended[it.Chain] = true
			}
			more = more || it.First
			still = append(still, i)
		}
	}
	return s, still
}

// firstOnes returns items with those before the others that stand above them.
func (j *Job) firstOnes(items []int) []int {
	out := slices.Clone(items)
	slices.SortStableFunc(out, func(a, b int) int {
		switch first := j.Items[a].First; {
		case first == j.Items[b].First:
			return 0
		case first:
			return -1
		}
		return 1
	})
	return out
}
