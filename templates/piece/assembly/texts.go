package assembly

import (
	"strings"

	"rodsheet/geometry/lists"
	"rodsheet/geometry/measure"
	"rodsheet/templates"
	"rodsheet/templates/piece/kind"
	plain "rodsheet/templates/wording"
)

// A CheckText is what a kind calls a check and its figure, and what it says where that
// holds and where not. Both may speak of the figure, its limit and more: %[1]s, %[2]s, …
type CheckText struct{ Name, Figure, Holds, Lacks plain.Text }

// Texts are those of a kind by the IDs of its checks.
type Texts map[measure.ID]CheckText

// Limited returns the check of a figure against its limit: it holds, or comes out as
// otherwise. The figure has the ID of the check.
func (t Texts) Limited(u measure.Unit, id measure.ID, value measure.Quantity, relation measure.Relation, limit measure.Quantity, otherwise kind.Grade, more ...measure.Quantity) kind.Check {
	text := t[id]
	c := kind.Check{
		ID: id, Name: text.Name.With(), Figure: id, FigureName: text.Figure.With(),
		Value: value, Relation: relation, Limit: limit, Grade: kind.Graded(value, relation, limit, otherwise),
	}
	said := Either(c.Grade == kind.Pass, text.Holds, text.Lacks)
	c.Words = fill(said, u, append([]measure.Quantity{value, limit}, more...))
	return c
}

// fill fills a text that numbers its verbs, a figure and its limit first; it may leave
// figures out, which are set in words only where it has any.
func fill(t plain.Text, u measure.Unit, figures []measure.Quantity) string {
	if !strings.Contains(string(t), "%") {
		return t.With()
	}
	texts := lists.Map(figures, func(q measure.Quantity) any { return q.Text(u) })
	texts[0], texts[1] = measure.Apart(figures[0], figures[1], u)
	return t.With(texts...)
}

// Either returns the first text where something holds, else the second.
func Either(holds bool, first, second plain.Text) plain.Text {
	if holds {
		return first
	}
	return second
}

// whole says a text without verbs, and nothing of one with some.
func whole(t plain.Text) string {
	if strings.Contains(string(t), "%") {
		return ""
	}
	return t.With()
}

// AtLeast and AtMost are Limited for lengths in mm.
func (t Texts) AtLeast(u measure.Unit, id measure.ID, value, limit float64, otherwise kind.Grade) kind.Check {
	return t.Limited(u, id, measure.Length(value), measure.IsAtLeast, measure.Length(limit), otherwise)
}

func (t Texts) AtMost(u measure.Unit, id measure.ID, value, limit float64, otherwise kind.Grade) kind.Check {
	return t.Limited(u, id, measure.Length(value), measure.IsAtMost, measure.Length(limit), otherwise)
}

// Found returns a check without figures.
func (t Texts) Found(id measure.ID, grade kind.Grade) kind.Check {
	text := t[id]
	return kind.Check{ID: id, Name: text.Name.With(), Grade: grade, Words: Either(grade == kind.Pass, text.Holds, text.Lacks).With()}
}

// Names are what a kind calls its figures and groups of them, by their IDs.
type Names map[measure.ID]plain.Text

// Group begins a group of figures.
func (n Names) Group(id measure.ID) Grouping {
	return Grouping{n, kind.Group{ID: id, Heading: n.Of(id)}}
}

// Of returns the name of an ID, or itself where there is none.
func (n Names) Of(id measure.ID) string { return plain.Look(n, id) }

// A Grouping is a group that is being put together.
type Grouping struct {
	names Names
	kind.Group
}

// Add appends a figure.
func (g *Grouping) Add(id measure.ID, value measure.Quantity) {
	g.Figures = append(g.Figures, templates.Figure{ID: id, Name: g.names.Of(id), Value: value})
}
