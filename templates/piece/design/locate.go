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
		bound := boundError(err)
		if bound == nil {
			notes = append(notes, note{words: err.Error()})
			continue
		}
		key := setBy(bound, func(key string) (float64, bool) { set, ok := s[key]; return set.value, ok })
		words, hint := wording.Fault(bound, r.unit)
		notes = append(notes, note{at: s[key].at, path: cmp.Or(key, "design"), words: words, hint: hint, doubts: setters(bound)})
	}
	return notes
}

// SetBy returns the keys that may set the figure of an error, none where it is
// no *measure.BoundError.
func SetBy(err error) []string {
	if bound := boundError(err); bound != nil {
		return setters(bound)
	}
	return nil
}

func boundError(err error) *measure.BoundError {
	var bound *measure.BoundError
	errors.As(err, &bound)
	return bound
}

// setBy returns which of the given keys sets the figure of an error: the one
// with its very value, else the first that is given, else the table in which
// it would stand.
func setBy(e *measure.BoundError, given func(string) (float64, bool)) string {
	keys := setters(e)
	first := ""
	for _, key := range keys {
		value, ok := given(key)
		if ok && math.Abs(value-e.Value.Value) <= 1e-9*math.Abs(value) {
			return key
		}
		if ok && first == "" {
			first = key
		}
	}
	if first != "" || len(keys) == 0 {
		return first
	}
	return tableOf(keys[0])
}

// setters returns the keys that a figure hangs on, by its identity, the likeliest first.
func setters(e *measure.BoundError) []string {
	for _, s := range slices.Concat(frameSetters(), topSetters(), otherSetters()) {
		if slices.Contains(s.figures, e.Figure) {
			return s.keys
		}
	}
	return nil
}

// A setter says which keys set some figures.
type setter struct {
	figures []measure.ID
	keys    []string
}

func frameSetters() []setter {
	high := []string{"legs.frame-height", "legs.height"}
	return []setter{
		{[]measure.ID{"ring.stretchers", "polygon.sides", "sides", "standing.feet", "triangle.angle", "lap.angle"}, []string{"ring.sides"}},
		{[]measure.ID{"ring.inside", "lap.at", "polygon.apothem"}, []string{"ring.inside"}},
		{[]measure.ID{"bridle.width", "movement.width", "lap.width", "ring.width", "leg.thickness", "lap.crossing-width", "milled.width"}, []string{"milled.width", "ring.width"}},
		{[]measure.ID{"bridle.depth", "lap.depth", "ring.depth", "milled.depth"}, []string{"milled.depth", "ring.depth"}},
		{[]measure.ID{"ring.plain-end"}, []string{"ring.plain-end"}},
		{[]measure.ID{"ring.horn", "ring.reach"}, []string{"ring.horn", "ring.inside"}},
		{[]measure.ID{"ring.slack"}, []string{"ring.slack"}},
		{[]measure.ID{"leg.breadth", "legs.breadth", "bridle.leg", "taper.top", "milled.breadth"}, []string{"milled.breadth", "legs.breadth"}},
		{[]measure.ID{"leg.height", "legs.height", "taper.length", "legs.height-to"}, high},
		{[]measure.ID{"bridle.splay", "leg.splay", "legs.foot-circle", "standing.foot-radius", "legs.foot-spread", "legs.lean"}, []string{"legs.splay", "legs.foot-circle", "legs.foot-spread"}},
		{[]measure.ID{"leg.at", "legs.clear"}, []string{"legs.mid-to-leg", "legs.clear"}},
		{[]measure.ID{"frame.head", "bridle.tenon", "legs.tenon"}, []string{"legs.tenon", "milled.width", "ring.width"}},
		{[]measure.ID{"legs.proud"}, []string{"legs.proud"}},
		{[]measure.ID{"bridle.mortise"}, []string{"legs.mortise"}},
		{[]measure.ID{"taper.start", "taper.run"}, []string{"legs.taper.start"}},
		{[]measure.ID{"taper.foot", "legs.taper.foot", "legs.taper.across"}, []string{"legs.taper.foot"}},
		{[]measure.ID{"taper.faces"}, []string{"legs.taper.faces"}},
	}
}

func topSetters() []setter {
	return []setter{
		{[]measure.ID{"glass.thickness", "top.thickness"}, []string{"top.thickness"}},
		{[]measure.ID{"glass.area", "standing.rim", "top.diameter", "outline.diameter", "top.radius", "top.apothem"}, []string{"top.diameter", "top.overhang", "top.points"}},
		{[]measure.ID{"top.overhang"}, []string{"top.overhang"}},
		{[]measure.ID{"top.corner-size", "polygon.clip", "outline.clip", "outline.round"}, []string{"top.corner-size"}},
		{[]measure.ID{"outline.corner", "outline.corners", "top.points", "outline.reach", "outline.side", "outline.turns"}, []string{"top.points", "top.corner-size", "top.overhang"}},
		{[]measure.ID{"top.kind"}, []string{"top.kind"}},
		{[]measure.ID{"top.outline"}, []string{"top.outline"}},
		{[]measure.ID{"top.corner"}, []string{"top.corner"}},
		{[]measure.ID{"top.pads.diameter"}, []string{"top.pads.diameter"}},
		{[]measure.ID{"top.pads.height"}, []string{"top.pads.height"}},
		{[]measure.ID{"top.pads.mid-to-pad"}, []string{"top.pads.mid-to-pad"}},
	}
}

func otherSetters() []setter {
	return []setter{
		{[]measure.ID{"wood.density", "standing.mass"}, []string{"wood.density", "wood.species"}},
		{[]measure.ID{"movement.coefficient"}, []string{"wood.species"}},
		{[]measure.ID{"movement.from", "movement.to"}, []string{"wood.moisture"}},
		{[]measure.ID{"wood.rough-length"}, []string{"wood.rough-length"}},
		{[]measure.ID{"wood.rough-width"}, []string{"wood.rough-width"}},
		{[]measure.ID{"wood.rough-thickness"}, []string{"wood.rough-thickness"}},
		{[]measure.ID{"wood.spares"}, []string{"wood.spares"}},
		{[]measure.ID{"wood.tests"}, []string{"wood.tests"}},
		{[]measure.ID{"wood.waste"}, []string{"wood.waste"}},
		{[]measure.ID{"wood.board.count", "wood.board.length", "wood.board.width", "wood.board.thickness"}, []string{"wood.board"}},
		{[]measure.ID{"lap.kerf", "saw.kerf", "milled.kerf"}, []string{"milled.kerf", "saw.kerf"}},
		{[]measure.ID{"saw.blade-height"}, []string{"saw.blade-height"}},
		{[]measure.ID{"saw.dado"}, []string{"saw.dado"}},
		{[]measure.ID{"saw.stop-reach"}, []string{"saw.stop-reach"}},
	}
}
