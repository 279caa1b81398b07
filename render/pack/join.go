package pack

import (
	"cmp"
	"slices"
)

// Joined returns as many sheets, on which items stand with what they want to stand with
// where an exchange between two sheets makes room for that.
func (j *Job) Joined(sheets []*Sheet) []*Sheet {
	out := sheets
	for i := range j.Items {
		shown := j.shown(i)
		if shown < 0 {
			continue
		}
		a, b := sheetOf(out, shown), sheetOf(out, i)
		behind := min(a, b) >= j.lastOfFirst(out)
		for _, way := range [2][2]int{{a, b}, {b, a}} {
			if a == b {
				break
			}
			if x, y := j.exchanged(out[way[0]], out[way[1]], behind, shown, i); x != nil {
				tried := slices.Clone(out)
				tried[way[0]], tried[way[1]] = x, y
				if j.Apart(tried) < j.Apart(out) {
					out = tried
					break
				}
			}
		}
	}
	return out
}

func sheetOf(sheets []*Sheet, item int) int {
	return slices.IndexFunc(sheets, func(s *Sheet) bool {
		return slices.ContainsFunc(s.Placed, func(p Placed) bool { return p.Item == item })
	})
}

// Apart counts the items that stand on another sheet than what they want to stand with.
func (j *Job) Apart(sheets []*Sheet) (n int) {
	for i := range j.Items {
		if shown := j.shown(i); shown >= 0 && sheetOf(sheets, shown) != sheetOf(sheets, i) {
			n++
		}
	}
	return n
}

// shown returns what an item wants to stand with, −1 for nothing.
func (j *Job) shown(i int) int {
	with := j.Items[i].With
	return slices.IndexFunc(j.Items, func(o Item) bool { return with != nil && o.Shows == with })
}

// lastOfFirst returns the last sheet with an item that stands above all others.
func (j *Job) lastOfFirst(sheets []*Sheet) (last int) {
	for n, s := range sheets {
		if slices.ContainsFunc(s.Placed, func(p Placed) bool { return j.Items[p.Item].First }) {
			last = n
		}
	}
	return last
}

// free reports whether an item may stand on any sheet, or any with nothing First after it.
func (j *Job) free(i int, behind bool) bool {
	it := j.Items[i]
	return i > 0 && it.Chain == nil && it.Group == nil && !it.First && (behind || !it.Behind)
}

// exchanged lays one sheet again with a pair of items, another without them, and what
// else is free of both on either; nil where there is no room. Behind says that no item
// that is First stands after either.
func (j *Job) exchanged(to, from *Sheet, behind bool, pair ...int) (x, y *Sheet) {
	var fixed [2][]int
	var rest []int
	for k, s := range [2]*Sheet{to, from} {
		for _, p := range s.Placed {
			switch paired := slices.Contains(pair, p.Item); {
			case !j.free(p.Item, behind) && paired && k > 0:
				return nil, nil
			case !j.free(p.Item, behind):
				fixed[k] = append(fixed[k], p.Item)
			case !paired:
				rest = append(rest, p.Item)
			}
		}
	}
	for _, i := range pair {
		if j.free(i, behind) {
			fixed[0] = append(fixed[0], i)
		}
	}
	slices.SortStableFunc(rest, func(a, b int) int { return cmp.Compare(j.area(b), j.area(a)) })
	for _, f := range fits {
		for k := range 2 { // the rest goes on the one before the other
			laid := [2]*Sheet{j.open(to.Turned), j.open(from.Turned)}
			room := true
			for n, items := range fixed {
				for _, i := range items {
					room = room && laid[n].put(j, i, f)
				}
			}
			for _, i := range rest {
				room = room && (laid[k].put(j, i, f) || laid[1-k].put(j, i, f))
			}
			if room && len(laid[1].Placed) > 0 {
				return laid[0], laid[1]
			}
		}
	}
	return nil, nil
}
