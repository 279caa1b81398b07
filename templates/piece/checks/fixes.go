package checks

import (
	"cmp"
	"math"
	"slices"
	"sort"

	"rodsheet/geometry/measure"
	"rodsheet/templates/piece"
	"rodsheet/templates/piece/design"
	"rodsheet/templates/piece/kind"
	"rodsheet/templates/piece/shop"
)

// A Fix is a change of the design that makes a check hold.
type Fix struct {
	kind.Turn
	Follows []kind.Turn // what changes with it
	Sized   bool        // of several sizes this one is changed
	Design  design.Design
}

// A change is a fix that has not been proved yet, and by what share of itself
// it changes the figure that was decided: the measure of how cheap it is.
type change struct {
	Fix
	share float64
}

// changed returns the change of one figure of a piece to another design.
func changed(p piece.Piece, key design.Key, from, to measure.Quantity, d design.Design, of float64) change {
	f := Fix{Turn: kind.Turn{Key: key, From: from, To: to}, Follows: follows(p.Design, d, key), Design: d}
	return change{f, math.Abs(to.Value-from.Value) / cmp.Or(of, 1)}
}

// follows returns what a design changes beside one key: sizes as milled that have
// no meaning any more, the place of the legs, and what gave their splay.
func follows(was, is design.Design, key design.Key) []kind.Turn {
	var out []kind.Turn
	for _, f := range []struct {
		key      design.Key
		from, to float64
	}{
		{"milled.depth", was.Milled.Depth, is.Milled.Depth},
		{"milled.width", was.Milled.Width, is.Milled.Width},
		{"legs.mid-to-leg", was.Legs.At, is.Legs.At},
	} {
		if f.key != key && f.from != f.to {
			out = append(out, kind.Turn{Key: f.key, From: measure.Length(f.from), To: measure.Length(f.to)})
		}
	}
	if was.Legs.Lean != is.Legs.Lean {
		out = append(out, kind.Turn{Key: leanKeys[was.Legs.Lean], From: measure.Length(was.Legs.Given)})
	}
	return out
}

// leanKeys are the keys that give the splay.
var leanKeys = [...]design.Key{
	design.BySplay: "legs.splay", design.ByFootCircle: "legs.foot-circle", design.ByFootSpread: "legs.foot-spread",
}

// proved returns the changes that really mend check c of question q, the
// cheapest first. Grades are those of all checks before.
func (m model) proved(q question, c Check, grades kind.Grades) []Fix {
	holds := func(w piece.Piece) bool { return !q.fails(withSolids(w), c.ID()) }
	candidates := q.fixes(m, c, holds)
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
		if withSolids(w).fixed(m, c, grades) {
			out = append(out, try.Fix)
		}
	}
	return out
}

// fails reports whether the check of that ID does not hold. One that is not asked
// any more holds.
func (q question) fails(m model, id measure.ID) bool {
	return slices.ContainsFunc(q.asked(m), func(c Check) bool { return c.ID() == id && c.Grade != kind.Pass })
}

// fixed reports whether check c of the piece before holds for the changed one,
// worked out again from its design, and no other check comes out worse: a fault
// is not paid for with another, nor with a doubt. A clash that is gone has no
// check any more. What is cheap to ask is asked first, and what cannot have
// changed not at all.
func (m model) fixed(before model, c Check, grades kind.Grades) bool {
	same := m.Frame == before.Frame && m.Design.Ring == before.Design.Ring && m.Design.Legs == before.Design.Legs && m.Kerf == before.Kerf
	for _, dear := range []bool{false, true} {
		for _, q := range questions() {
			if q.solids != dear || q.frame && same {
				continue
			}
			for _, now := range q.asked(m) {
				if now.ID() == c.ID() && now.Grade != kind.Pass || grades.Worse(now.ID(), now.Grade) {
					return false
				}
			}
		}
	}
	return true
}

// gradesOf returns the grades of checks by their IDs.
func gradesOf(checks []Check) kind.Grades {
	out := kind.Grades{}
	for _, c := range checks {
		out[c.ID()] = c.Grade
	}
	return out
}

// A parameter is one decision that a fix may turn.
type parameter struct {
	at   func(*design.Design) *float64     // where the design has it, mm or rad; nil: as its key says
	now  func(piece.Piece) float64         // as worked out; nil: as the design has it
	also func(piece.Piece, *design.Design) // what is turned with it; nil: nothing
	of   func(piece.Piece) float64         // what the turn is a share of; nil: of now
	step func(measure.Unit) float64        // nil: grid
	from func(piece.Piece) float64         // the least it can be; nil: 0
}

// value is the parameter as decided.
func (k parameter) value(p piece.Piece) float64 {
	if k.now != nil {
		return k.now(p)
	}
	return *k.at(&p.Design)
}

// set turns the parameter in a design d of piece p.
func (k parameter) set(p piece.Piece, d *design.Design, v float64) {
	*k.at(d) = v
	if k.also != nil {
		k.also(p, d)
	}
}

// tapered is the taper of a design, which others share, as a copy to be changed.
func tapered(d *design.Design) *design.Taper {
	t := *d.Legs.Taper
	d.Legs.Taper = &t
	return &t
}

// Ways to turn a parameter.
const (
	more = false
	less = true
)

// parameters returns what a fix may turn, by its key in the design file; where the design
// has it the schema says. Those that are not named have nothing of their own.
func parameters() map[design.Key]parameter {
	apothem := func(p piece.Piece) float64 { return p.RegularTop().Apothem }
	return map[design.Key]parameter{
		"ring.inside": {also: carryLegs},
		"ring.width": {
			now: func(p piece.Piece) float64 { return p.Frame.Ring.Width },
			also: func(p piece.Piece, d *design.Design) {
				d.Milled.Width = 0
				carryLegs(p, d)
			},
		},
		"ring.depth": {
			now:  func(p piece.Piece) float64 { return p.Frame.Ring.Depth },
			also: func(_ piece.Piece, d *design.Design) { d.Milled.Depth = 0 },
		},
		"legs.breadth": {now: func(p piece.Piece) float64 { return p.Frame.Leg.Breadth }},
		// The place is turned and not the step: it is what the design gives.
		"legs.mid-to-leg":  {now: func(p piece.Piece) float64 { return p.Frame.Leg.At }},
		"legs.clear":       {of: func(p piece.Piece) float64 { return p.Frame.Leg.At }},
		"legs.tenon":       {now: func(p piece.Piece) float64 { return p.Bridle.Tenon }},
		"legs.splay":       {step: func(measure.Unit) float64 { return fineAngle }},
		"legs.foot-circle": {step: coarseGrid},
		"legs.foot-spread": {step: coarseGrid},
		"legs.taper.start": {at: func(d *design.Design) *float64 { return &tapered(d).Start }},
		"legs.taper.foot":  {at: func(d *design.Design) *float64 { return &tapered(d).Foot }},
		"top.diameter":     {now: func(p piece.Piece) float64 { return 2 * p.TopRadius() }, step: coarseGrid},
		"top.overhang":     {of: apothem, from: func(p piece.Piece) float64 { return -apothem(p) }, step: coarseGrid},
		"top.corner-size": {
			now:  roundedCorner,
			of:   func(p piece.Piece) float64 { return p.Design.Top.Thickness },
			also: func(_ piece.Piece, d *design.Design) { d.Top.Corner = design.RoundedCorner },
		},
		"top.fixing.screw": {now: func(p piece.Piece) float64 { f, _ := shop.FixingOf(p); return f.Screw }, step: coarseGrid},
		// The schema has pads without a place of their own outermost.
		"top.pads.diameter": {at: func(d *design.Design) *float64 { return &d.Top.Pads.Diameter }},
		"top.pads.mid-to-pad": {
			now:  func(p piece.Piece) float64 { return math.Abs(p.PadAt()) },
			also: func(p piece.Piece, d *design.Design) { d.Top.Pads.At = math.Copysign(d.Top.Pads.At, p.PadAt()) },
		},
	}
}

// turning proposes to turn one parameter.
func turning(key design.Key, down bool) func(piece.Piece, func(piece.Piece) bool) []change {
	return func(p piece.Piece, holds func(piece.Piece) bool) []change { return search(p, key, down, holds) }
}

// grid returns the finest step in mm that a maker is asked to work to: 0.1 mm
// or 1/64 in.
func grid(u measure.Unit) float64 { return u.Round(0.1, 1.0/64) }

// coarseGrid returns the step in mm for sizes that no joint hangs on, as of a
// top: 1 mm or 1/16 in.
func coarseGrid(u measure.Unit) float64 { return u.Round(1, 1.0/16) }

// fineAngle is the finest step of an angle that a maker is asked to set: 0.1°.
const fineAngle = math.Pi / 1800

// mostSteps bounds how far a parameter is turned: 400 mm, or 63 in.
const mostSteps = 4000

// search returns the least turn of a parameter, to a round figure, after which
// holds is true, and none where no turn does it. One that helps at one step is
// taken to help at all the steps beyond, until there is no such piece.
func search(p piece.Piece, key design.Key, down bool, holds func(piece.Piece) bool) []change {
	k, quantity := parameters()[key], measure.Length
	at, angle := key.Figure()
	if angle {
		quantity = measure.Angle
	}
	if k.at == nil {
		k.at = at
	}
	step, now, least := grid(p.Design.Unit), k.value(p), 0.0
	if k.step != nil {
		step = k.step(p.Design.Unit)
	}
	if k.from != nil {
		least = k.from(p)
	}
	// value returns the round figure i steps away.
	value := func(i int) float64 {
		if down {
			return (math.Floor(now/step+piece.Slip) - float64(i)) * step
		}
		return (math.Ceil(now/step-piece.Slip) + float64(i)) * step
	}
	with := func(i int) design.Design {
		d := p.Design
		k.set(p, &d, value(i))
		return d
	}
	work := func(i int) (piece.Piece, bool) {
		if value(i) < least {
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
	of := now
	if k.of != nil {
		of = k.of(p)
	}
	return []change{changed(p, key, quantity(now), quantity(value(i)), with(i), cmp.Or(of, now))}
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
		return // there is no such ring, so no fix
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
