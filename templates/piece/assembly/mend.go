package assembly

import (
	"cmp"
	"math"
	"slices"

	"rodsheet/geometry/measure"
	"rodsheet/templates/piece/design"
	"rodsheet/templates/piece/kind"
	plain "rodsheet/templates/wording"
)

// A Turner is one figure of a design that a fix may turn.
type Turner struct {
	Key   design.Key
	At    func(*design.Design) *float64 // mm, or rad
	Angle bool
	Words plain.Text               // "make the sides %s thick"
	Has   func(design.Design) bool // whether a design goes by the key; nil: always
}

func (t Turner) quantity(v float64) measure.Quantity {
	if t.Angle {
		return measure.Angle(v)
	}
	return measure.Length(v)
}

// step is what a fix is rounded to.
func (t Turner) step(u measure.Unit) float64 {
	if t.Angle {
		return measure.Radians(0.5)
	}
	return u.Round(1, 1.0/16)
}

// mended returns the checks of a model with the fixes that really mend them, the one that
// changes its figure least first.
func (w work[M]) mended(m M) []kind.Check {
	all := m.Checks()
	before := grades(all)
	for i, c := range all {
		if c.Grade == kind.Pass {
			continue
		}
		type fix struct {
			kind.Fix
			share float64
		}
		var found []fix
		for _, t := range w.Mends[c.ID] {
			if t.Has != nil && !t.Has(m.Decided()) {
				continue
			}
			was := *t.At(ref(m.Decided()))
			if v, ok := w.turned(m, c.ID, t, before); ok {
				f := kind.Fix{Turn: kind.Turn{Key: t.Key, From: t.quantity(was), To: t.quantity(v)}}
				if w.differ(t) {
					f.Size = m.Decided().Size
				}
				f.Words = t.Words.With(f.To.Text(m.Decided().Unit))
				found = append(found, fix{f, math.Abs(v-was) / math.Max(math.Abs(was), t.step(m.Decided().Unit))})
			}
		}
		slices.SortStableFunc(found, func(a, b fix) int { return cmp.Compare(a.share, b.share) })
		for _, f := range found {
			all[i].Fixes = append(all[i].Fixes, f.Fix)
		}
	}
	return all
}

// differ reports whether the sizes have a figure each of their own.
func (w work[M]) differ(t Turner) bool {
	all := w.designs()
	return slices.ContainsFunc(all, func(d design.Design) bool { return *t.At(&d) != *t.At(&all[0]) })
}

// ref returns a place for a copy of a design.
func ref(d design.Design) *design.Design { return &d }

func grades(all []kind.Check) map[measure.ID]kind.Grade {
	out := map[measure.ID]kind.Grade{}
	for _, c := range all {
		out[c.ID] = c.Grade
	}
	return out
}

// turned returns the figure nearest to the decided one, of those on the grid of the unit,
// with which the check of an ID holds and no other comes out worse: steps that double,
// both ways, and between the last two of them by halving.
func (w work[M]) turned(m M, id measure.ID, t Turner, before map[measure.ID]kind.Grade) (float64, bool) {
	const doublings = 9
	d := m.Decided()
	was, step := *t.At(&d), t.step(d.Unit)
	grid := func(n float64) float64 { return (math.Round(was/step) + n) * step }
	holds := func(n float64) bool {
		try := m.Decided()
		*t.At(&try) = grid(n)
		other, err := w.Solve(try)
		if err != nil {
			return false
		}
		return !slices.ContainsFunc(other.Checks(), func(c kind.Check) bool {
			grade, asked := before[c.ID]
			return c.ID == id && c.Grade != kind.Pass || c.Grade > grade && (asked || c.Grade == kind.Fail)
		})
	}
	// Downward a figure above nothing stays so.
	most := func(way float64) float64 {
		if left := math.Round(was/step) - 1; way < 0 && left > 0 {
			return left
		}
		return math.Inf(1)
	}
	for n, last := 1.0, 0.0; n < 1<<doublings; n, last = 2*n, n {
		for _, way := range []float64{1, -1} {
			low, high := last, math.Min(n, most(way))
			if !holds(way * high) {
				continue
			}
			for high-low > 1 {
				if mid := math.Floor((low + high) / 2); holds(way * mid) {
					high = mid
				} else {
					low = mid
				}
			}
			return grid(way * high), true
		}
	}
	return 0, false
}
