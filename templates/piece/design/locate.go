package design

import (
	"cmp"
	"errors"
	"math"
	"slices"

	"rodsheet/geometry/measure"
	"rodsheet/templates/wording"
)

// placed turns errors about figures of one size into notes at the keys that set
// them: the size's own where it has one. An error that is no
// *measure.BoundError, or about a figure that no key sets, stands in the first
// line.
func (r *reader) placed(errs []error, s settings) []note {
	var notes []note
	for _, err := range errs {
		if err == nil {
			continue
		}
		n := note{}
		var bound *measure.BoundError
		if errors.As(err, &bound) {
			n.doubts = setters(bound.Figure)
			key := s.setBy(bound.Value.Value, n.doubts)
			n.at, n.path = s[key].at, cmp.Or(string(key), "design")
		}
		n.words, n.hint = wording.Fault(err, r.unit)
		notes = append(notes, n)
	}
	return notes
}

// SetBy returns the keys that may set the figure of an error, none where it is
// no *measure.BoundError.
func SetBy(err error) []Key {
	var bound *measure.BoundError
	if errors.As(err, &bound) {
		return setters(bound.Figure)
	}
	return nil
}

// setBy returns which of the keys sets a figure of that value: the one that gives
// just this, else the first that is given, else the table in which it would stand.
func (s settings) setBy(value float64, keys []Key) Key {
	given := slices.DeleteFunc(slices.Clone(keys), func(k Key) bool { _, ok := s[k]; return !ok })
	for _, k := range given {
		if v := s[k].value; math.Abs(v-value) <= 1e-9*math.Abs(v) {
			return k
		}
	}
	if len(given) > 0 {
		return given[0]
	}
	for _, k := range keys {
		return k.table()
	}
	return ""
}

// setters returns the keys that a figure hangs on, the likeliest first. A figure
// that the table does not name is set by the key of its own name, if there is one.
func setters(figure measure.ID) []Key {
	for _, s := range otherSetters() {
		if slices.Contains(s.figures, figure) {
			return s.keys
		}
	}
	if fieldOf(Key(figure)) != nil {
		return []Key{Key(figure)}
	}
	return nil
}

// A setter says which keys set some figures.
type setter struct {
	keys    []Key
	figures []measure.ID
}

func otherSetters() []setter {
	return every([]setter{
		{[]Key{"wood.density", "wood.species"}, []measure.ID{"wood.density", "standing.mass"}},
		{[]Key{"wood.species"}, []measure.ID{"movement.coefficient"}},
		{[]Key{"wood.moisture"}, []measure.ID{"movement.from", "movement.to"}},
		{[]Key{"wood.board"}, []measure.ID{"wood.board.count", "wood.board.length", "wood.board.width", "wood.board.thickness"}},
		{[]Key{"item"}, []measure.ID{"item.count", "item.price"}},
	}, func(s schema) []setter { return s.setters })
}
