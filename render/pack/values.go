package pack

import (
	"cmp"
	"math"
	"math/rand/v2"
	"slices"

	"rodsheet/geometry/lists"
)

// Fewer looks for a packing on fewer sheets than that given, and returns the
// better one. It fills sheet by sheet, each with what is worth most among
// several fillings, and then raises the value of what ended on sheets badly
// filled, or on none (sequential value correction, a heuristic for cutting
// stock; from memory). Chance is the same every time.
func (j *Job) Fewer(best []*Sheet) []*Sheet {
	const (
		rounds   = 5   // at most
		work     = 300 // rounds times items, at most
		power    = 1.1 // above 1: large items gain more than small ones
		unplaced = 1.3
	)
	bound := j.Least()
	chance := rand.New(rand.NewPCG(1, 1))
	values := make([]float64, len(j.Items))
	for i := range values {
		values[i] = j.area(i)
	}
	sheet := (j.Size[0].X + j.Gap) * (j.Size[0].Y + j.Gap)
	for range min(rounds, work/len(j.Items)) {
		if len(best) <= bound {
			break
		}
		sheets, left := j.byValue(values, len(best)-1, chance)
		if len(left) == 0 {
			best = sheets
		}
		for _, s := range sheets {
			used := lists.Sum(s.Placed, func(p Placed) float64 { return j.area(p.Item) })
			for _, p := range s.Placed {
				values[p.Item] = (values[p.Item] + math.Pow(j.area(p.Item), power)*sheet/used) / 2
			}
		}
		for _, i := range left {
			values[i] *= unplaced
		}
	}
	return best
}

// byValue fills so many sheets at most and returns what is left.
func (j *Job) byValue(values []float64, most int, chance *rand.Rand) (out []*Sheet, left []int) {
	const tries = 24
	for i := range values {
		left = append(left, i)
	}
	for len(left) > 0 && len(out) < most {
		var best *Sheet
		var still []int
		worth := 0.0
		for try := range tries {
			s, rest := j.fill(j.byChance(values, left, chance), fits[try%len(fits)])
			sum := lists.Sum(s.Placed, func(p Placed) float64 { return values[p.Item] })
			if best == nil || sum > worth {
				best, still, worth = s, rest, sum
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
func (j *Job) byChance(values []float64, left []int, chance *rand.Rand) []int {
	keys := slices.Clone(values)
	for k, i := range left {
		keys[i] *= 0.5 + chance.Float64()
		if c := j.Items[i].Chain; k > 0 && c != nil && c == j.Items[left[k-1]].Chain {
			keys[i] = keys[left[k-1]]
		}
	}
	keys[0] = math.Inf(1)
	order := slices.Clone(left)
	slices.SortStableFunc(order, func(i, k int) int { return cmp.Compare(keys[k], keys[i]) })
	return order
}
