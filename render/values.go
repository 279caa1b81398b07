package render

import (
	"cmp"
	"math"
	"math/rand/v2"
	"slices"
)

// fewer looks for a packing on fewer sheets than that given, and returns the
// better one. It fills sheet by sheet, each with what is worth most among
// several fillings, and then raises the value of what ended on sheets badly
// filled, or on none (sequential value correction, a heuristic for cutting
// stock; from memory). Chance is the same every time.
func (p packer) fewer(items []item, best []*bin) []*bin {
	const (
		rounds   = 5   // at most
		work     = 300 // rounds times items, at most
		power    = 1.1 // above 1: large items gain more than small ones
		unplaced = 1.3
	)
	bound := p.least(items)
	chance := rand.New(rand.NewPCG(1, 1))
	values := make([]float64, len(items))
	for i, it := range items {
		values[i] = it.area()
	}
	sheet := (p.size[0].X + gap) * (p.size[0].Y + gap)
	for range min(rounds, work/len(items)) {
		if len(best) <= bound {
			break
		}
		fillings, left := p.byValue(items, values, len(best)-1, chance)
		if len(left) == 0 {
			best = nil
			for _, f := range fillings {
				best = append(best, f.bin)
			}
		}
		for _, f := range fillings {
			used := 0.0
			for _, i := range f.on {
				used += items[i].area()
			}
			for _, i := range f.on {
				values[i] = (values[i] + math.Pow(items[i].area(), power)*sheet/used) / 2
			}
		}
		for _, i := range left {
			values[i] *= unplaced
		}
	}
	return best
}

// A filling is one sheet with the items on it and what they are worth.
type filling struct {
	bin   *bin
	on    []int
	worth float64
}

// byValue fills so many sheets at most and returns what is left.
func (p packer) byValue(items []item, values []float64, most int, chance *rand.Rand) (out []filling, left []int) {
	const tries = 24
	for i := range items {
		left = append(left, i)
	}
	for len(left) > 0 && len(out) < most {
		var best filling
		var still []int
		for try := range tries {
			order := byChance(items, values, left, chance)
			b, rest := p.fill(items, order, fits[try%len(fits)])
			f := filling{bin: b}
			for _, i := range order {
				if !slices.Contains(rest, i) {
					f.on = append(f.on, i)
					f.worth += values[i]
				}
			}
			if best.bin == nil || f.worth > best.worth {
				best, still = f, rest
			}
		}
		slices.Sort(still)
		out, left = append(out, best), still
	}
	return out, left
}

// byChance returns the items left by falling value, of which chance takes or
// adds up to a half. What is to be read in order goes by its first part, and the
// first item of all goes first.
func byChance(items []item, values []float64, left []int, chance *rand.Rand) []int {
	keys := slices.Clone(values)
	for k, i := range left {
		keys[i] *= 0.5 + chance.Float64()
		if c := items[i][0].chain; k > 0 && c != nil && c == items[left[k-1]][0].chain {
			keys[i] = keys[left[k-1]]
		}
	}
	keys[0] = math.Inf(1)
	order := slices.Clone(left)
	slices.SortStableFunc(order, func(i, j int) int { return cmp.Compare(keys[j], keys[i]) })
	return order
}
