package pack

import (
	"cmp"
	"slices"
)

// Joined returns as many sheets, on which items stand with what they want to stand with
// where an exchange between two sheets makes room for that.
func (j *Job) Joined(sheets []*Sheet) []*Sheet {
	out := sheets
	for i, it := range j.Items {
		shown := slices.IndexFunc(j.Items, func(o Item) bool { return it.With != nil && o.Shows == it.With })
		if shown < 0 {
			continue
		}
		a, b := sheetOf(out, shown), sheetOf(out, i)
		for _, way := range [2][2]int{{a, b}, {b, a}} {
			if a == b {
				break
			}
			if x, y := j.exchanged(out[way[0]], out[way[1]], shown, i); x != nil {
				tried := slices.Clone(out)
				tried[way[0]], tried[way[1]] = x, y
				if j.joined(tried) > j.joined(out) {
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

// joined counts the items that stand with what they want to stand with.
func (j *Job) joined(sheets []*Sheet) (n int) {
	for _, s := range sheets {
		for _, p := range s.Placed {
			if with := j.Items[p.Item].With; with != nil && slices.ContainsFunc(s.Placed, func(o Placed) bool { return j.Items[o.Item].Shows == with }) {
				n++
			}
		}
	}
	return n
}

// free reports whether an item may stand on any sheet.
func (j *Job) free(i int) bool {
	it := j.Items[i]
	return i > 0 && it.Chain == nil && it.Group == nil && !it.First && !it.Behind
}

// exchanged lays one sheet again with a pair of items, another without them, and what
// else is free of both on either; nil where there is no room.
func (j *Job) exchanged(to, from *Sheet, pair ...int) (x, y *Sheet) {
	var fixed [2][]int
	var rest []int
	for k, s := range [2]*Sheet{to, from} {
		for _, p := range s.Placed {
			switch paired := slices.Contains(pair, p.Item); {
			case !j.free(p.Item) && paired && k > 0:
				return nil, nil
			case !j.free(p.Item):
				fixed[k] = append(fixed[k], p.Item)
			case !paired:
				rest = append(rest, p.Item)
			}
		}
	}
	for _, i := range pair {
		if j.free(i) {
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
