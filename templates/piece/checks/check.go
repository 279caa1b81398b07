// Package checks asks everything of a piece before wood is cut: what will not
// fit, which changes of the design mend it, and all its figures.
package checks

import (
	"strings"

	"rodsheet/geometry/measure"
	"rodsheet/geometry/solid"
	"rodsheet/templates"
	"rodsheet/templates/piece"
	"rodsheet/templates/piece/design"
)

// A Grade says how a check came out.
type Grade uint8

const (
	Pass Grade = iota
	Warn       // can be built; the maker is to know
	Fail       // cannot be built
)

func (g Grade) String() string {
	switch g {
	case Pass:
		return "holds"
	case Warn:
		return "doubtful"
	case Fail:
		return "fails"
	}
	return "unknown"
}

// A Check is one question asked of a piece before wood is cut.
type Check struct {
	Name  string // "leg head and lap"
	Grade Grade
	// Value stands in Relation to Limit: "clearance", −4.2 mm, "at least",
	// 0 mm. Relation is empty for a check without figures.
	Figure   string
	Value    measure.Quantity
	Relation string
	Limit    measure.Quantity
	Words    string // where and what, one sentence
	Fixes    []Fix  // the cheapest first; each has been worked out and found to hold
}

// The two relations of a figure to its limit.
const (
	atLeast = "at least"
	atMost  = "at most"
)

// Measured returns the figure and its limit in one line, in unit u:
// "clearance -4.2 mm, at least 0 mm". It is empty for a check without figures.
func (c Check) Measured(u measure.Unit) string {
	if c.Relation == "" {
		return ""
	}
	return c.Figure + " " + c.Value.Text(u) + ", " + c.Relation + " " + c.Limit.Text(u)
}

// Said returns the words of the check, or nothing where it holds and its
// figures say so.
func (c Check) Said() string {
	if c.Grade == Pass && c.Relation != "" {
		return ""
	}
	return c.Words
}

// advice returns the mends in one line, the cheapest first: "reduce …, or
// lengthen …". It is empty where there is none.
func (c Check) advice() string {
	words := make([]string, len(c.Fixes))
	for i, m := range c.Fixes {
		words[i] = m.Words
	}
	return strings.Join(words, ", or ")
}

// A Fix is a change of the design that makes a check hold.
type Fix struct {
	Words  string // "reduce the leg's breadth at the joint to 31.5 mm"
	Design design.Design
}

// A Group is the figures of one thing.
type Group struct {
	Heading string
	Figures []templates.Figure
	Text    []string // what no figure says, a sentence each
}

// A model is a piece together with its solids, which take longer to make than
// all the rest.
type model struct {
	piece.Piece
	parts []solid.Part // those of Parts: the first is stretcher 1, the second leg 1
}

func withSolids(p piece.Piece) model { return model{p, p.Parts()} }

// A question is one thing asked of a piece, and the changes of its design that
// may mend it.
type question struct {
	ask   func(model) []Check
	fixes func(model, Check) []change // nil where no single figure mends it
	frame bool                        // it looks at ring and legs alone
}

// plain is a question about figures alone.
func plain(ask func(piece.Piece) []Check, fixes func(piece.Piece, Check) []change) question {
	q := question{ask: func(m model) []Check { return ask(m.Piece) }}
	if fixes != nil {
		q.fixes = func(m model, c Check) []change { return fixes(m.Piece, c) }
	}
	return q
}

// questions returns all that is asked of one size, in the order of the bench.
func questions() []question {
	return []question{
		{askClash, fixClash, false},
		plain(askHead, fixHead),
		plain(askShortGrain, fixShortGrain),
		{askTogether, fixTogether, true},
		plain(askShoulders, fixShoulders),
		{askEnds, fixEnds, true},
		plain(askWoodLeft, fixWoodLeft),
		plain(askTaper, fixTaper),
		{askStanding, fixStanding, false},
		plain(askSaw, nil),
		plain(askTop, fixTop),
		plain(askBoards, nil),
	}
}

// checksOf returns everything asked of the piece, in a fixed order.
func checksOf(p piece.Piece) []Check {
	m := withSolids(p)
	asked := m.ask()
	grades := gradesOf(asked...)
	var out []Check
	for i, q := range questions() {
		for _, c := range asked[i] {
			if c.Grade != Pass && q.fixes != nil {
				c.Fixes = m.proved(q, c, grades)
			}
			out = append(out, c)
		}
	}
	return out
}

// Findings are the checks of a design: of each of its sizes, and of all
// together.
type Findings struct {
	Pieces   []piece.Piece
	Sizes    [][]Check // of each piece, in their order
	Together []Check
}

// Examine asks everything of the sizes of one design.
func Examine(pieces []piece.Piece) Findings {
	f := Findings{Pieces: pieces, Together: checkAll(pieces)}
	for _, p := range pieces {
		f.Sizes = append(f.Sizes, checksOf(p))
	}
	return f
}

// ask returns the checks of each question, without their mends.
func (m model) ask() [][]Check {
	all := questions()
	asked := make([][]Check, len(all))
	for i, q := range all {
		asked[i] = q.ask(m)
	}
	return asked
}

// askAgain returns the checks of a piece whose design differs from that of
// before, but for those that cannot have changed.
func (m model) askAgain(before model) []Check {
	same := m.Frame == before.Frame && m.Design.Ring == before.Design.Ring && m.Piece.Design.Legs == before.Design.Legs && m.Kerf == before.Kerf
	var out []Check
	for _, q := range questions() {
		if !(q.frame && same) {
			out = append(out, q.ask(m)...)
		}
	}
	return out
}

// called returns the check of that name. One that is not asked any more holds.
func called(checks []Check, name string) Check {
	for _, c := range checks {
		if c.Name == name {
			return c
		}
	}
	return Check{Name: name}
}

// limited returns the check of a figure against its limit: it holds, or comes
// out as otherwise. Rounding is forgiven.
func limited(name, figure string, value measure.Quantity, relation string, limit measure.Quantity, otherwise Grade) Check {
	c := Check{Name: name, Figure: figure, Value: value, Relation: relation, Limit: limit}
	short := limit.Value - value.Value
	if relation == atMost {
		short = -short
	}
	if !(short <= piece.Slip) { // NaN holds nothing
		c.Grade = otherwise
	}
	return c
}

// with returns the check with the words that fit its grade.
func (c Check) with(holds, otherwise string) Check {
	c.Words = otherwise
	if c.Grade == Pass {
		c.Words = holds
	}
	return c
}
