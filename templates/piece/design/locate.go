package design

import (
	"cmp"
	"errors"
	"math"
	"slices"

	"rodsheet/geometry/measure"
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
		notes = append(notes, note{
			at: s[key].at, path: cmp.Or(key, "design"), words: bound.Text(r.unit), hint: bound.Hint, doubts: setters(bound),
		})
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

// setters returns the keys that a figure hangs on, by the name that its limits
// give it, the likeliest first.
func setters(e *measure.BoundError) []string {
	if e.Figure == "corner of the top" && e.Value.Kind == measure.KindLength {
		return []string{"top.corner-size", "top.points", "top.overhang"}
	}
	for _, s := range slices.Concat(frameSetters(), topSetters(), otherSetters()) {
		if slices.Contains(s.figures, e.Figure) {
			return s.keys
		}
	}
	return nil
}

// A setter says which keys set some figures.
type setter struct{ figures, keys []string }

func frameSetters() []setter {
	high := []string{"legs.frame-height", "legs.height"}
	return []setter{
		{[]string{"stretchers", "sides", "feet", "angle"}, []string{"ring.sides"}},
		{[]string{"inside", "datum to near shoulder", "centre to mid-side"}, []string{"ring.inside"}},
		{[]string{"width", "thickness", "crossing width", "width as milled"}, []string{"milled.width", "ring.width"}},
		{[]string{"depth", "depth as milled"}, []string{"milled.depth", "ring.depth"}},
		{[]string{"number of the plain end"}, []string{"ring.plain-end"}},
		{[]string{"horn", "mid-length to end"}, []string{"ring.horn", "ring.inside"}},
		{[]string{"slack"}, []string{"ring.slack"}},
		{[]string{"breadth", "leg", "top", "breadth as milled"}, []string{"milled.breadth", "legs.breadth"}},
		{[]string{"height", "overall height", "length", "number of the height"}, high},
		{[]string{"splay", "foot circle", "foot circle radius", "foot spread", "number of the lean"},
			[]string{"legs.splay", "legs.foot-circle", "legs.foot-spread"}},
		{[]string{"mid-length to leg", "clearance of leg and neighbour"}, []string{"legs.mid-to-leg", "legs.clear"}},
		{[]string{"head of leg", "tenon"}, []string{"legs.tenon", "milled.width", "ring.width"}},
		{[]string{"proud head"}, []string{"legs.proud"}},
		{[]string{"number of the mortised part"}, []string{"legs.mortise"}},
		{[]string{"start", "length of taper"}, []string{"legs.taper.start"}},
		{[]string{"foot", "taper across the stretcher"}, []string{"legs.taper.foot"}},
		{[]string{"number of tapered faces"}, []string{"legs.taper.faces"}},
	}
}

func topSetters() []setter {
	return []setter{
		{[]string{"glass thickness", "thickness of the top"}, []string{"top.thickness"}},
		{[]string{"glass area", "rim radius", "diameter of the top", "radius of the top", "centre to side of the top"},
			[]string{"top.diameter", "top.overhang", "top.points"}},
		{[]string{"overhang"}, []string{"top.overhang"}},
		{[]string{"corner size of the top", "clip", "corner radius"}, []string{"top.corner-size"}},
		{[]string{"corner of the top", "corners of the top", "centre to corner of the top", "side of the top", "turns of the outline of the top"},
			[]string{"top.points", "top.corner-size", "top.overhang"}},
		{[]string{"number of the top"}, []string{"top.kind"}},
		{[]string{"number of the outline of the top"}, []string{"top.outline"}},
		{[]string{"number of the corner of the top"}, []string{"top.corner"}},
		{[]string{"diameter of the pads"}, []string{"top.pads.diameter"}},
		{[]string{"height of the pads"}, []string{"top.pads.height"}},
		{[]string{"mid-length to pad"}, []string{"top.pads.mid-to-pad"}},
	}
}

func otherSetters() []setter {
	return []setter{
		{[]string{"density", "mass"}, []string{"wood.density", "wood.species"}},
		{[]string{"coefficient of movement"}, []string{"wood.species"}},
		{[]string{"moisture before", "moisture after"}, []string{"wood.moisture"}},
		{[]string{"extra length"}, []string{"wood.rough-length"}},
		{[]string{"extra width"}, []string{"wood.rough-width"}},
		{[]string{"extra thickness"}, []string{"wood.rough-thickness"}},
		{[]string{"spare parts"}, []string{"wood.spares"}},
		{[]string{"test pieces"}, []string{"wood.tests"}},
		{[]string{"waste"}, []string{"wood.waste"}},
		{[]string{"boards", "length of a board", "width of a board", "thickness of a board"}, []string{"wood.board"}},
		{[]string{"kerf", "kerf as measured"}, []string{"milled.kerf", "saw.kerf"}},
		{[]string{"highest blade"}, []string{"saw.blade-height"}},
		{[]string{"dado width"}, []string{"saw.dado"}},
		{[]string{"reach of the stop"}, []string{"saw.stop-reach"}},
	}
}
