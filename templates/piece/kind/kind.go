// Package kind holds what every kind of piece gives, whatever it is built of: its checks
// and figures in words, the pack that is printed, its views. The command line and the page
// know no more of a piece than this.
package kind

import (
	"fmt"

	"rodsheet/geometry/lists"
	"rodsheet/geometry/measure"
	"rodsheet/templates"
	"rodsheet/templates/piece"
	"rodsheet/templates/piece/design"
)

// A Kind is a family of pieces.
type Kind struct {
	// Sizes returns those of a new file, none yet.
	Sizes func() Sizes
	// Plan says that its pack can have a full-size plan, to lay the parts on.
	Plan bool
}

// Sizes are those of one file, worked out one after the other and then together.
type Sizes interface {
	// Add works out one more. It returns an error for each figure that no piece of the
	// kind can have; what hangs on a key in doubt is not asked.
	Add(design.Design, design.Doubts) []error
	// Work is that of all sizes, of which there is at least one and none had an error.
	Work() Work
}

// Solve works out all sizes of one file, of which there is at least one. The error is the
// first of the first that has one.
func (k Kind) Solve(all []design.Design) (Work, error) {
	sizes := k.Sizes()
	for _, d := range all {
		if errs := sizes.Add(d, nil); len(errs) > 0 {
			return nil, errs[0]
		}
	}
	return sizes.Work(), nil
}

// A Work is a design worked out. Sizes count from 0, in the order of the file.
type Work interface {
	// Only returns the work of one size. Its figures are those it has among the others.
	Only(size int) Work
	Report() Report
	Pack(Options, templates.Setting) (templates.Job, error)
	// Pictures are plan, elevation and a view at a corner, of every size.
	Pictures() []templates.Picture
	// Buying is the buying list as records, the first naming the columns.
	Buying() [][]string
	Stand(size int) Stand
	// Follows are the figures that follow where their keys are not given.
	Follows(size int) map[design.Key]measure.Quantity
	// Grips say which figure follows a handle that a Stand shows.
	Grips(size int) map[measure.ID]Grip
}

// A Grip says which figure of a design a handle moves, and where the handle of a design
// stands on its axis; ok is false where that cannot be worked out.
type Grip struct {
	Key design.Key
	Up  bool // along y of the view, else along x
	At  func(design.Design) (mm float64, ok bool)
}

// Options is what is wanted of a pack.
type Options struct {
	For  Purposes // none: Buying and Bench
	Plan bool     // with a full-size plan, where the kind has one
}

// Purposes is what a pack is printed for.
type Purposes uint8

const (
	Buying Purposes = 1 << iota // at the yard
	Bench
	Record // to keep: every figure and check
)

// A Grade says how a check came out.
type Grade uint8

const (
	Pass Grade = iota
	Warn       // can be built; the maker is to know
	Fail       // cannot be built
)

// Graded grades a figure against its limit: it holds, or comes out as otherwise. Rounding is
// forgiven; what is no number holds nothing.
func Graded(value measure.Quantity, relation measure.Relation, limit measure.Quantity, otherwise Grade) Grade {
	short := limit.Value - value.Value
	if relation == measure.IsAtMost {
		short = -short
	}
	if short <= piece.Slip {
		return Pass
	}
	return otherwise
}

// Grades are those of checks by their IDs.
type Grades map[measure.ID]Grade

// Worse reports whether a check comes out worse than its grade before. One that was not
// asked before, as where something worse was said in its place, may be in doubt now.
func (before Grades) Worse(id measure.ID, now Grade) bool {
	was, asked := before[id]
	return now > was && (asked || now == Fail)
}

// String returns the grade for programs; what a maker reads is Grade.Word.
func (g Grade) String() string {
	words := [...]string{Pass: "holds", Warn: "doubtful", Fail: "fails"}
	if int(g) < len(words) {
		return words[g]
	}
	return fmt.Sprintf("Grade(%d)", uint8(g))
}

// A Report is what is found of a design: of each of its sizes, and of all together.
type Report struct {
	Sizes    []Size
	Together []Check
}

// A Size is what is found of one size, its texts in the unit of its design.
type Size struct {
	Design design.Design
	Checks []Check
	Groups []Group
}

// All returns every check.
func (r Report) All() []Check {
	out := lists.Flat(r.Sizes, func(s Size) []Check { return s.Checks })
	return append(out, r.Together...)
}

// A Check is one question asked of a piece before wood is cut, and its answer.
type Check struct {
	ID    measure.ID // among those of one size, or of all together
	Name  string
	Grade Grade
	// Value stands in Relation to Limit: clearance, −4.2 mm, at least, 0 mm.
	// Figure is empty for a check without figures.
	Figure       measure.ID
	FigureName   string
	Value, Limit measure.Quantity
	Relation     measure.Relation
	Words        string // what was found
	Fixes        []Fix  // the cheapest first; each has been worked out and found to hold
}

// A Fix is a change of the design that makes a check hold.
type Fix struct {
	Turn
	Follows []Turn // what changes with it
	Size    string // of several sizes this one is changed; "" for what holds for all
	Words   string
}

// A Turn is one key of the design file and its figure before and after. Of what
// follows, a figure of 0 stands for a key to leave out.
type Turn struct {
	Key      design.Key
	From, To measure.Quantity
	Word     string // in place of a figure
}

// A Group is the figures of one thing.
type Group struct {
	ID      measure.ID
	Heading string
	Figures []templates.Figure
	Text    []string // what no figure says, a sentence each
}
