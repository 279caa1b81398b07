package wording

import (
	"errors"
	"sync"

	"rodsheet/geometry/measure"
)

const (
	fault       Text = "%s %s %s %s" // figure, value, relation, limit
	article     Text = "the %s"
	boundByName Text = "%s, %s" // the figure that sets the limit, the limit
	refused     Text = "%s %s"  // what was written, what is wrong with it
	notFinite   Text = "%s must be a finite number"
)

// relations says what a figure has to be, before the limit.
var relations = sync.OnceValue(func() map[measure.Relation]Text {
	return map[measure.Relation]Text{
		measure.IsBelow:   "must be less than",
		measure.IsAtMost:  "must be at most",
		measure.IsAbove:   "must be more than",
		measure.IsAtLeast: "must be at least",
		measure.IsLeftOf:  "must turn to the left of the one before, corner",
	}
})

// Fault says in one line what is wrong, lengths in u, and in another what to do
// about it, which may be empty: "foot 50 mm must be less than the top, 45 mm".
func Fault(err error, u measure.Unit) (line, hint string) {
	var own Spoken
	var bound *measure.BoundError
	var parse *measure.ParseError
	switch {
	case errors.As(err, &own):
		return own.Words(u)
	case errors.As(err, &bound):
		return Bound(bound, Than(bound.Than), u), Hint(bound.Hint)
	case errors.As(err, &parse):
		return refused.With(parse.Quoted(), slipped(parse.Reason)), slipped(parse.Hint)
	}
	return err.Error(), ""
}

// A Spoken error knows itself what a maker reads of it.
type Spoken interface {
	error
	Words(u measure.Unit) (line, hint string)
}

// Bound says in one line that a figure is outside its limit, which is called
// than: nothing for a plain number.
func Bound(e *measure.BoundError, than string, u measure.Unit) string {
	if !e.Value.Finite() {
		return notFinite.With(Name(e.Figure))
	}
	value, limit := e.Figures(u)
	if than != "" {
		limit = boundByName.With(than, limit)
	}
	return fault.With(Name(e.Figure), value, relations()[e.Relation].With(), limit)
}

// Name returns what a maker calls a figure: "kerf".
func Name(id measure.ID) string { return Look(figures(), id) }

// Than returns what a maker calls the figure that sets a limit, with its article
// where it has one: "the width of the stretcher".
func Than(id measure.ID) string {
	if _, named := figures()[id]; named && thans()[id] == "" {
		return article.With(Name(id))
	}
	return Look(thans(), id)
}

// Hint returns what to do about a figure outside its limit; nothing for no ID.
func Hint(id measure.ID) string { return Look(hints(), id) }

// Look returns the words for an ID, the ID itself where there are none.
func Look[ID ~string](words map[ID]Text, id ID) string {
	if t, ok := words[id]; ok {
		return t.With()
	}
	return string(id)
}
