package assembly

import (
	"cmp"
	"math"
	"slices"

	"rodsheet/geometry/measure"
	"rodsheet/templates/piece/design"
	"rodsheet/templates/piece/kind"
)

// A turner is one figure of a design that a fix may turn.
type turner struct {
	at    func(*design.Design) *float64 // mm, or rad
	usual func(design.Design) float64   // where the design leaves it open; or nil
	step  float64                       // what a fix is rounded to
	of    func(float64) measure.Quantity
}

func (w work[M]) turner(key design.Key, u measure.Unit) turner {
	at, angle := key.Figure()
	if angle {
		return turner{at, w.Usual[key], measure.Radians(0.5), measure.Angle}
	}
	return turner{at, w.Usual[key], u.Round(1, 1.0/16), measure.Length}
}

// decided is the figure of a design.
func (t turner) decided(d design.Design) float64 {
	if v := *t.at(&d); v != 0 || t.usual == nil {
		return v
	}
	return t.usual(d)
}

// mended returns the checks of a model with the fixes that really mend them, the one that
// changes its figure least first.
func (w work[M]) mended(m M) []kind.Check {
	all, d := m.Checks(), m.Decided()
	before, tries := grades(all), map[design.Key]func(float64) []kind.Check{}
	for i, c := range all {
		if c.Grade == kind.Pass {
			continue
		}
		type fix struct {
			kind.Fix
			share float64
		}
		var found []fix
		for _, key := range w.Mends[c.ID] {
			if !d.GoesBy(key) {
				continue
			}
			t := w.turner(key, d.Unit)
			was := t.decided(d)
			if tries[key] == nil {
				tries[key] = w.tries(d, t)
			}
			if v, ok := t.turned(was, c.ID, tries[key], before); ok {
				f := kind.Fix{Turn: kind.Turn{Key: key, From: t.of(was), To: t.of(v)}}
				if w.differ(t) {
					f.Size = d.Size
				}
				f.Words = w.Mending[key].With(f.To.Text(d.Unit))
				found = append(found, fix{f, math.Abs(v-was) / math.Max(math.Abs(was), t.step)})
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
func (w work[M]) differ(t turner) bool {
	all := w.designs()
	return slices.ContainsFunc(all, func(d design.Design) bool { return t.decided(d) != t.decided(all[0]) })
}

func grades(all []kind.Check) kind.Grades {
	out := kind.Grades{}
	for _, c := range all {
		out[c.ID] = c.Grade
	}
	return out
}

// tries returns what asks the checks of a design with another figure, none where no piece
// has it, and keeps the answers: a figure that mends one check is tried for others too.
func (w work[M]) tries(d design.Design, t turner) func(figure float64) []kind.Check {
	known := map[float64][]kind.Check{}
	return func(figure float64) []kind.Check {
		found, asked := known[figure]
		if !asked {
			try := d
			*t.at(&try) = figure
			if other, errs := w.Judge(try, nil); len(errs) == 0 {
				found = other.Checks()
			}
			known[figure] = found
		}
		return found
	}
}

// turned returns the figure nearest to the decided one, of those on the grid of the unit,
// with which the check of an ID holds and no other comes out worse: steps that double,
// both ways, and between the last two of them by halving.
func (t turner) turned(was float64, id measure.ID, checks func(float64) []kind.Check, before kind.Grades) (float64, bool) {
	const doublings = 9
	grid := func(n float64) float64 { return (math.Round(was/t.step) + n) * t.step }
	holds := func(n float64) bool {
		found := checks(grid(n))
		return len(found) > 0 && !slices.ContainsFunc(found, func(c kind.Check) bool {
			return c.ID == id && c.Grade != kind.Pass || before.Worse(c.ID, c.Grade)
		})
	}
	// Downward a figure above nothing stays so: 0 may stand for one that follows.
	most := func(way float64) float64 {
		if way < 0 && was > 0 {
			return math.Round(was/t.step) - 1
		}
		return math.Inf(1)
	}
	if near := grid(0); near != was && near > 0 && holds(0) {
		return near, true
	}
	for n, last := 1.0, 0.0; n < 1<<doublings; n, last = 2*n, n {
		for _, way := range []float64{1, -1} {
			low, high := last, math.Min(n, most(way))
			if high <= low || !holds(way*high) {
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
