package piece

import (
	"slices"

	"rodsheet/templates/piece/design"
)

// Judge works out one size, and returns all errors for which no piece can have it, one
// for each figure. A figure that depends on a key in doubt, or on a figure with an
// error, is not checked. With an error the piece is none.
func Judge(d design.Design, doubts design.Doubts) (Piece, []error) {
	j := validator{design: d, doubts: doubts.Clone()}
	p := j.work()
	return p, j.errs
}

// A validator finds what is wrong with a design. A figure with an
// error is in doubt from then on, and what depends on it is not checked.
type validator struct {
	design design.Design
	doubts design.Doubts
	errs   []error
}

// A group returns the keys on which a check depends.
type group func() []design.Key

func keys(of ...design.Key) group { return func() []design.Key { return of } }

// sure reports whether no key of the groups is in doubt.
func (j *validator) sure(of ...group) bool {
	return !slices.ContainsFunc(of, func(keys group) bool { return len(j.doubts) > 0 && j.doubts.Any(keys()...) })
}

// ask makes a check that depends on keys of the groups, unless one is in doubt,
// and notes its error. It reports whether the check was made and passed.
func (j *validator) ask(check func() error, of ...group) bool {
	if !j.sure(of...) {
		return false
	}
	err := check()
	j.note(err)
	return err == nil
}

// note keeps each error about a figure that is not in doubt yet.
func (j *validator) note(errs ...error) {
	for _, err := range errs {
		if err == nil {
			continue
		}
		keys := design.SetBy(err)
		if j.doubts.Any(keys...) {
			continue
		}
		j.errs = append(j.errs, err)
		j.doubts = j.doubts.With(keys...)
	}
}

// The groups of keys on which several checks depend.

func ringKeys() []design.Key {
	return []design.Key{"ring.sides", "ring.inside", "ring.width", "ring.depth"}
}

func milledKeys() []design.Key { return []design.Key{"milled.width", "milled.depth", "milled.breadth"} }

func endKeys() []design.Key { return []design.Key{"ring.plain-end", "ring.horn"} }

// inPlanKeys are those of ring and legs without their height, their lean and the
// place that follows from it.
func inPlanKeys() []design.Key {
	return append(ringKeys(), "legs.breadth", "legs.tenon", "legs.mortise", "legs.mid-to-leg")
}

// aboveFrameKeys are those of what stands above the frame.
func aboveFrameKeys() []design.Key {
	return []design.Key{"legs.proud", "top.kind", "top.thickness", "top.pads.kind", "top.pads.diameter", "top.pads.height"}
}

// height are those of the height of the frame.
func (j *validator) height() []design.Key {
	out := []design.Key{"legs.height", "legs.frame-height"}
	if j.design.Legs.To == design.Overall {
		out = append(out, aboveFrameKeys()...)
	}
	return out
}

// leanKeys are those that may fix the splay.
func leanKeys() []design.Key {
	return []design.Key{"legs.splay", "legs.foot-circle", "legs.foot-spread"}
}

// leaned are those of the splay, which may follow from all the rest.
func (j *validator) leaned() []design.Key {
	if j.design.Legs.Lean == design.BySplay {
		return leanKeys()
	}
	lean := append(append(leanKeys(), inPlanKeys()...), j.height()...)
	return append(lean, "ring.leg-end", "legs.clear", "legs.taper.start", "legs.taper.foot", "legs.taper.faces")
}

// placed are those of the splay and of where the legs stand.
func (j *validator) placed() []design.Key { return append(j.leaned(), "ring.leg-end", "legs.clear") }
