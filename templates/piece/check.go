package piece

import (
	"rodsheet/geometry/measure"
	"rodsheet/templates"
	"rodsheet/templates/piece/design"
)

// A Grade says how a check came out.
type Grade uint8

const (
	Holds    Grade = iota
	Doubtful       // can be built; the maker is to know
	Fails          // cannot be built
)

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
	Mends    []Mend // the cheapest first
}

// A Mend is a change of the design that makes a check hold.
type Mend struct {
	Words  string // "reduce the breadth of the leg to 31.5 mm"
	Design design.Design
}

// A Group is the figures of one thing.
type Group struct {
	Heading string
	Figures []templates.Figure
}
