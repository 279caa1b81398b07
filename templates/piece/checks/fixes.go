package checks

import (
	"cmp"
	"math"
	"slices"
	"sort"

	"rodsheet/geometry/measure"
	"rodsheet/templates/piece"
	"rodsheet/templates/piece/design"
)

// A change is a mend that has not been proved yet, and by what share of itself
// it changes the figure that was decided: the measure of how cheap it is.
type change struct {
	Fix
	share float64
}

// proved returns the changes that really mend check c of question q, the
// cheapest first. Grades are those of all checks before.
func (m model) proved(q question, c Check, grades map[string]Grade) []Fix {
	candidates := q.fixes(m, c)
	slices.SortStableFunc(candidates, func(a, b change) int { return cmp.Compare(a.share, b.share) })
	var out []Fix
	for _, try := range candidates {
		w, err := piece.Solve(try.Design)
		if err != nil {
			continue
		}
		if w.SameLaps(m.Piece) {
			w.Extra = m.Extra
		}
		if withSolids(w).mended(m, c, grades) {
			out = append(out, try.Fix)
		}
	}
	return out
}

// mended reports whether check c of the piece before holds for the changed one,
// worked out again from its design, and no other check comes out worse: a fault
// is not paid for with another, nor with a doubt. A clash that is gone has no
// check any more.
func (m model) mended(before model, c Check, grades map[string]Grade) bool {
	for _, now := range m.askAgain(before) {
		if now.Name == c.Name && now.Grade != Pass || worse(grades, now) {
			return false
		}
	}
	return true
}

// worse reports whether a check comes out worse than its grade before. One that
// was not asked before, as where something worse was said in its place, may be
// in doubt now.
func worse(before map[string]Grade, now Check) bool {
	was, asked := before[now.Name]
	return now.Grade > was && (asked || now.Grade == Fail)
}

// gradesOf returns the grades of checks by their names.
func gradesOf(checks ...[]Check) map[string]Grade {
	out := map[string]Grade{}
	for _, c := range slices.Concat(checks...) {
		out[c.Name] = c.Grade
	}
	return out
}

// A parameter is one decision that a mend may turn.
type parameter struct {
	now  float64 // as decided, mm or rad
	of   float64 // what the turn is a share of, where that is not now
	step float64 // 0: as fine as a rule is read
	down bool    // it is to become less
	from float64 // the least it can be, mm
	set  func(*design.Design, float64)
	// words says the change once the new figure is known.
	words func(value float64) string
}

// grid returns the finest step in mm that a maker is asked to work to: 0.1 mm
// or 1/64 in.
func grid(u measure.Unit) float64 {
	if u == measure.Inch {
		return measure.MillimetresPerInch / 64
	}
	return 0.1
}

// coarseGrid returns the step in mm for sizes that no joint hangs on, as of a
// top: 1 mm or 1/16 in.
func coarseGrid(u measure.Unit) float64 {
	if u == measure.Inch {
		return measure.MillimetresPerInch / 16
	}
	return 1
}

// fineAngle is the finest step of an angle that a maker is asked to set: 0.1°.
const fineAngle = math.Pi / 1800

// mostSteps bounds how far a dial is turned: 400 mm, or 63 in.
const mostSteps = 4000

// value returns the round figure i steps away.
func (k parameter) value(i int) float64 {
	if k.down {
		return (math.Floor(k.now/k.step+piece.Slip) - float64(i)) * k.step
	}
	return (math.Ceil(k.now/k.step-piece.Slip) + float64(i)) * k.step
}

// search returns the least turn of k, to a round figure, after which holds is
// true, and none where no turn does it. A dial that helps at one step is taken
// to help at all the steps beyond, until there is no such piece.
func search(p piece.Piece, k parameter, holds func(piece.Piece) bool) []change {
	k.step = cmp.Or(k.step, grid(p.Design.Unit))
	with := func(i int) design.Design {
		d := p.Design
		k.set(&d, k.value(i))
		return d
	}
	work := func(i int) (piece.Piece, bool) {
		if k.value(i) < k.from {
			return piece.Piece{}, false
		}
		w, err := piece.Solve(with(i))
		return w, err == nil
	}
	i := sort.Search(mostSteps, func(i int) bool {
		w, ok := work(i)
		return !ok || holds(w)
	})
	if w, ok := work(i); !ok || !holds(w) {
		return nil
	}
	v := k.value(i)
	share := math.Abs(v-k.now) / cmp.Or(k.of, k.now, 1)
	d := with(i)
	return []change{{Fix{k.words(v) + newPlace(p, d), d}, share}}
}

// newPlace says where the outer faces of the legs stand if a design moves them.
func newPlace(p piece.Piece, d design.Design) string {
	if d.Legs.At == p.Design.Legs.At {
		return ""
	}
	return " (the legs then stand " + p.MM(d.Legs.At) + " from mid-length)"
}

// carryLegs moves legs that have a place of their own as far as the lap beside
// them has moved in a design d of piece p, up to a round figure: they keep clear
// of it.
func carryLegs(p piece.Piece, d *design.Design) {
	if d.Legs.At == 0 {
		return
	}
	before, ok := placeBesideLap(p.Design)
	after, also := placeBesideLap(*d)
	if !ok || !also {
		return // there is no such ring, so no mend
	}
	step := grid(p.Design.Unit)
	d.Legs.At = math.Ceil((p.Design.Legs.At+after-before)/step-piece.Slip) * step
}

// placeBesideLap returns where the legs of a design would stand if they touched
// the lap, and whether there is such a piece.
func placeBesideLap(d design.Design) (at float64, ok bool) {
	d.Legs.At, d.Legs.Clear = 0, 0
	p, err := piece.Solve(d)
	return p.Frame.Leg.At, err == nil
}
