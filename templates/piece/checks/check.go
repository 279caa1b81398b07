// Package checks asks everything of a piece before wood is cut: what will not
// fit, which changes of the design mend it, and all its figures. It holds no
// sentence: what it finds are identities and figures, which package wording says.
package checks

import (
	"fmt"
	"slices"
	"sync"

	"rodsheet/geometry/lists"
	"rodsheet/geometry/measure"
	"rodsheet/geometry/solid"
	"rodsheet/templates/piece"
	"rodsheet/templates/piece/design"
	"rodsheet/templates/piece/kind"
	"rodsheet/templates/piece/shop"
)

// A Check is one question asked of a piece before wood is cut, and its answer.
type Check struct {
	Question measure.ID
	Of       Subject // where the question is asked of several things
	Grade    kind.Grade
	// Value stands in Relation to Limit: clearance, −4.2 mm, at least, 0 mm.
	// Figure is empty for a check without figures.
	Figure   measure.ID
	Value    measure.Quantity
	Relation measure.Relation
	Limit    measure.Quantity
	Found    Remark
	Fixes    []Fix // the cheapest first; each has been worked out and found to hold
}

// ID is the identity of the check among those of one size, or of all together.
func (c Check) ID() measure.ID { return c.Question + c.Of.id() }

// A Subject is what one of several checks of one question is about; only what
// tells them apart is set.
type Subject struct {
	A, B    Part
	Blank   measure.ID // that of piece.Blank
	Setting measure.ID
	Sizes   [2]int // counted from 1
}

func (s Subject) id() measure.ID {
	var out measure.ID
	for _, p := range []Part{s.A, s.B} {
		if p.Kind != "" {
			out += "." + p.ID()
		}
	}
	for _, id := range []measure.ID{s.Blank, s.Setting} {
		if id != "" {
			out += "." + id
		}
	}
	if s.Sizes[0] > 0 {
		out += measure.ID(fmt.Sprintf(".%d-%d", s.Sizes[0], s.Sizes[1]))
	}
	return out
}

// A Part is one part of a piece; a top has no number.
type Part struct {
	Kind   measure.ID // Stretcher, Leg, Pad or Top
	Number int
}

const (
	Stretcher measure.ID = "stretcher"
	Leg       measure.ID = "leg"
	Pad       measure.ID = "pad"
	Top       measure.ID = "top"
)

// ID is that of one part: "leg-2".
func (p Part) ID() measure.ID {
	if p.Number == 0 {
		return p.Kind
	}
	return measure.ID(fmt.Sprintf("%s-%d", p.Kind, p.Number))
}

// A Remark is a sentence that is still to be said: which one, and the figures and
// names that it holds, in its order.
type Remark struct {
	ID      measure.ID
	Figures []measure.Quantity
	Names   []string       // those that a user gave
	Steps   []shop.Note    // what steps of the settings are called
	Missing []shop.Missing // pieces without room
}

// remark returns the remark of so many figures.
func remark(id measure.ID, figures ...measure.Quantity) Remark {
	return Remark{ID: id, Figures: figures}
}

// A model is a piece together with its solids, which take longer to make than
// all the rest and are made when a question asks for them.
type model struct {
	piece.Piece
	parts func() []solid.Part // those of Parts: the first is stretcher 1, the second leg 1
}

func withSolids(p piece.Piece) model { return model{p, sync.OnceValue(p.Parts)} }

// frameMass returns the mass in kg of the frame.
func (m model) frameMass() float64 {
	parts := m.parts()
	return m.FrameMass(parts[0], parts[1])
}

// A question is one thing asked of a piece, and the changes of its design that
// may mend it.
type question struct {
	id  measure.ID
	ask func(model) []Check // none where it does not arise
	// fixes proposes changes after which holds is true; nil where no single
	// figure mends it. holds asks the question again of a changed piece.
	fixes func(m model, c Check, holds func(piece.Piece) bool) []change
	// frame: it looks at ring and legs alone. solids: it is dear to ask.
	frame, solids bool
}

// plain is a question about figures alone.
func plain(id measure.ID, ask func(piece.Piece) (Check, bool), fixes func(piece.Piece, func(piece.Piece) bool) []change) question {
	q := question{id: id, ask: func(m model) []Check { return one(ask(m.Piece)) }}
	if fixes != nil {
		q.fixes = func(m model, _ Check, holds func(piece.Piece) bool) []change { return fixes(m.Piece, holds) }
	}
	return q
}

// one returns the check of a question that arises, by its answer.
func one(c Check, asked bool) []Check {
	if !asked {
		return nil
	}
	return []Check{c}
}

// questions returns all that is asked of one size, in the order of the bench.
func questions() []question {
	return []question{
		{id: "clash", ask: askClash, fixes: fixClash, solids: true},
		plain("leg-head", askHead, fixHead),
		plain("short-grain", askShortGrain, fixShortGrain),
		{id: "together", ask: askTogether, fixes: fixTogether, frame: true, solids: true},
		plain("leg-end-shoulder", askLegEnd, outward),
		plain("horn", askHorn, fixHorn),
		{id: "ends-finished", ask: askEnds, fixes: fixEnds, frame: true, solids: true},
		plain("ends-rough", askRoughEnds, fixRoughEnds),
		plain("wood-at-laps", askLapWood, fixWood),
		plain("cheeks", askCheeks, fixWood),
		plain("tenon", askTenon, fixWood),
		plain("taper-start", askTaperStart, turning("legs.taper.start", more)),
		plain("foot", askFoot, turning("legs.taper.foot", more)),
		plain("feet", askFeet, nil),
		plain("steep-standing", askArm, turning("legs.splay", less)),
		plain("steep-end-grain", askSole, turning("legs.splay", less)),
		plain("steep-blade", askSwing, turning("legs.splay", less)),
		{id: "standing", ask: askStanding, fixes: fixStanding, solids: true},
		plain("loose-top", askLooseTop, fixLooseTop),
		plain("blade-stock", askThrough, nil),
		plain("blade-laps", askLapBlade, nil),
		plain("blade-bridle", askBridleBlade, nil),
		plain("stop-reach", askStops, nil),
		plain("dado", askDado, nil),
		plain("pads-on-stretchers", askPadWidth, turning("top.pads.diameter", less)),
		plain("pads-shoulder", askPadShoulder, either(turning("top.pads.diameter", less), movePads(less))),
		plain("pads-edge", askPadEdge, either(movePads(less), resizeTop(more))),
		plain("glass-corners", askCorner, turning("top.corner-size", more)),
		plain("frame-under-top", askUnder, resizeTop(more)),
		plain("proud-head", askProud, either(lowerHead, turning("top.pads.height", more))),
		plain("screw-through", askScrewThrough, turning("top.fixing.screw", less)),
		plain("screw-hold", askScrewHold, turning("top.fixing.screw", more)),
		plain("hole-edge", askHoleEdge, nil),
		plain("hole-lap", askHoleLap, nil),
		{id: "board", ask: askBoards},
	}
}

// either proposes the changes of each.
func either(all ...func(piece.Piece, func(piece.Piece) bool) []change) func(piece.Piece, func(piece.Piece) bool) []change {
	return func(p piece.Piece, holds func(piece.Piece) bool) []change {
		return lists.Flat(all, func(fixes func(piece.Piece, func(piece.Piece) bool) []change) []change { return fixes(p, holds) })
	}
}

// Findings are the checks of a design: of each of its sizes, and of all
// together.
type Findings struct {
	Sizes    []Size
	Together []Check
}

// Pieces returns the sizes themselves.
func (f Findings) Pieces() []piece.Piece {
	return lists.Map(f.Sizes, func(s Size) piece.Piece { return s.Piece })
}

// All returns every check.
func (f Findings) All() []Check {
	out := lists.Flat(f.Sizes, func(s Size) []Check { return s.Checks })
	return append(out, f.Together...)
}

// A Size is what is found of one size: its checks and its figures.
type Size struct {
	Piece  piece.Piece
	Checks []Check
	Groups []Group
}

// Examine asks everything of the sizes of one design.
func Examine(pieces []piece.Piece) Findings {
	models := lists.Map(pieces, withSolids)
	f := Findings{Together: append(AllBoards(shop.Boards(pieces)), sharing(models)...)}
	for _, m := range models {
		f.Sizes = append(f.Sizes, Size{m.Piece, m.checks(), m.groups()})
	}
	return f
}

// ExamineAs asks everything of sizes as their file is written, and gives the figures of the
// same sizes as they are printed: round sizes of screws and the like go by the unit, and a
// verdict must not.
func ExamineAs(written, printed []piece.Piece) Findings {
	f := Examine(written)
	for i, p := range printed {
		f.Sizes[i].Piece, f.Sizes[i].Groups = p, withSolids(p).groups()
	}
	return f
}

// checks returns everything asked of the piece, in a fixed order.
func (m model) checks() []Check {
	asked := m.ask()
	grades := gradesOf(slices.Concat(asked...))
	for i, q := range questions() {
		for k, c := range asked[i] {
			if c.Grade != kind.Pass && q.fixes != nil {
				asked[i][k].Fixes = m.proved(q, c, grades)
			}
		}
	}
	return slices.Concat(asked...)
}

// ask returns the checks of each question, without their fixes.
func (m model) ask() [][]Check {
	all := questions()
	return lists.Map(all, func(q question) []Check { return q.asked(m) })
}

// asked returns the checks of the question, which bear its name.
func (q question) asked(m model) []Check {
	out := q.ask(m)
	for i := range out {
		out[i].Question = q.id
	}
	return out
}

// limited returns the check of a figure against its limit: it holds, or comes
// out as otherwise. What is said of it goes by that alone.
func limited(figure measure.ID, value measure.Quantity, relation measure.Relation, limit measure.Quantity, otherwise kind.Grade) Check {
	c := Check{Figure: figure, Value: value, Relation: relation, Limit: limit, Found: remark(Holds), Grade: kind.Graded(value, relation, limit, otherwise)}
	if c.Grade != kind.Pass {
		c.Found.ID = Lacks
	}
	return c
}

// Most remarks go with the question: it holds, or it does not.
const (
	Holds measure.ID = "holds"
	Lacks measure.ID = "lacks"
)

// lengths returns figures in mm as a remark holds them.
func lengths(mm ...float64) []measure.Quantity { return lists.Map(mm, measure.Length) }

// atLeast and atMost are limited for lengths.
func atLeast(figure measure.ID, value, limit float64, otherwise kind.Grade) Check {
	return limited(figure, measure.Length(value), measure.IsAtLeast, measure.Length(limit), otherwise)
}

func atMost(figure measure.ID, value, limit float64, otherwise kind.Grade) Check {
	return limited(figure, measure.Length(value), measure.IsAtMost, measure.Length(limit), otherwise)
}

// with returns the check with figures in mm for its remark.
func (c Check) with(mm ...float64) Check {
	c.Found.Figures = lengths(mm...)
	return c
}

// finding returns a check without figures.
func finding(grade kind.Grade, id measure.ID, mm ...float64) Check {
	return Check{Grade: grade, Found: remark(id, lengths(mm...)...)}
}

// open reports whether the plain ends are open past their laps.
func open(p piece.Piece) bool { return p.Design.Ring.Plain != design.ClosedEnd }
