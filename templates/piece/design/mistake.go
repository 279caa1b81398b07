package design

import (
	"slices"
	"strings"

	"rodsheet/geometry/lists"
	"rodsheet/templates/wording"
)

// A Mistake is one thing to put right in a design file.
type Mistake struct {
	Line, Column int      // from 1; columns count characters
	Text         string   // one line: "ring.width: a length is wanted, not true"
	Hint         string   // what to write instead; may be empty
	Key          Key      // that it is about, "" for none
	Sizes        []string // of which alone it is
}

// Error is the text and where it stands.
func (m Mistake) Error() string { return mistakeAt.With(m.Line, m.Column, m.Text) }

// Mistakes are all that is wrong with a file, in its order.
type Mistakes []Mistake

// Error lists the mistakes, one a line.
func (m Mistakes) Error() string { return strings.Join(lists.Map(m, Mistake.Error), "\n") }

// mostMistakes is how many a maker is shown at once.
const mostMistakes = 100

// A note is a mistake before it is placed and worded for good.
type note struct {
	at    int      // offset in the source
	path  string   // of the key: "ring.width"; empty where it is about none
	sizes []string // whose alone it is; none where it is everybody's
	words string
	hint  string
	// doubts are the keys and tables that are not to be relied on for it, beside
	// a key that could not be read; vacant says that only those of their keys are
	// meant that are not given.
	doubts []Key
	vacant bool
	unit   bool // it may be the unit that is wrong
}

func (n note) text() string {
	if n.path == "" {
		return n.words
	}
	return subject(n.path, n.sizes) + ": " + n.words
}

// subject names a key: "ring.width of size low".
func subject(path string, sizes []string) string {
	if len(sizes) == 0 {
		return path
	}
	of := ofSizes
	if len(sizes) == 1 {
		of = ofSize
	}
	return of.With(path, strings.Join(lists.Map(sizes, wording.Shown), ", "))
}

// mistakes places the notes and puts them in the order of the file.
func (s source) mistakes(notes []note) Mistakes {
	notes = slices.Clone(notes)
	slices.SortStableFunc(notes, func(a, b note) int { return a.at - b.at })
	more := len(notes) - mostMistakes
	if more > 0 {
		notes = notes[:mostMistakes+1]
		notes[mostMistakes] = note{at: notes[mostMistakes].at, words: moreMistakes.With(more)}
	}
	out := make(Mistakes, len(notes))
	for i, n := range notes {
		p := s.place(n.at)
		out[i] = Mistake{p.line, p.column, n.text(), n.hint, Key(n.path), n.sizes}
	}
	return out
}
