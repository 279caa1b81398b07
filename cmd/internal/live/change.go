package live

import (
	"cmp"
	"math"
	"slices"
	"strconv"
	"strings"

	"rodsheet/geometry/lists"
	"rodsheet/geometry/measure"
	"rodsheet/templates/piece/design"
	"rodsheet/templates/piece/kind"
)

// A Fix chooses one of the changes that mend a check of a size, or of all together.
type Fix struct {
	Size     string     `json:"size"`
	Together bool       `json:"together"`
	Check    measure.ID `json:"check"`
	Index    int        `json:"index"`
}

// changed returns the text with the changes of the request, what follows from it, and
// the changes that wait. Where they are not sound together the newest is tried by
// itself; where that is not either the text stays as it was.
func (d *Desk) changed(r Request) (text string, w works, pending []Change, clash []string, err error) {
	base, baseErr := d.solve(r.Text)
	kept := func(err error) (string, works, []Change, []string, error) { return r.Text, base, nil, nil, err }
	switch {
	case r.Example != "":
		text = exampleText(r.Example)
	case r.Begin != nil:
		text, err = begin(*r.Begin)
	case r.Merge != nil:
		var merged []byte
		merged, clash, err = design.Merge([]byte(r.Merge.Base), []byte(r.Text), []byte(r.Merge.Theirs))
		if len(clash) > 0 {
			return r.Text, base, nil, clash, err
		}
		text = string(merged)
	case r.Resize != nil:
		text, err = r.Resize.apply(r.Text)
	case r.Fix != nil && baseErr == nil:
		return d.mended(r, base)
	case r.Drag != nil && baseErr == nil:
		text, err = edited(r.Text, r.Drag.changes(base, r.Size))
	case len(r.Changes) > 0:
		return d.typed(r, base)
	default:
		return kept(baseErr)
	}
	if err != nil {
		return kept(err)
	}
	if w, err = d.solve(text); err != nil {
		return kept(err)
	}
	return text, w, nil, nil, nil
}

func (d *Desk) typed(r Request, base works) (string, works, []Change, []string, error) {
	try := func(all []Change) (string, works, error) {
		text, w, err := d.tried(r.Text, all)
		if err == nil || text == "" {
			return text, w, err
		}
		// A word may leave figures behind that mean nothing beside it.
		if fitting, bad := design.Edit([]byte(text), design.Misfits([]byte(text))...); bad == nil {
			if w, bad := d.solve(string(fitting)); bad == nil {
				return string(fitting), w, nil
			}
		}
		return "", works{}, err
	}
	text, w, err := try(r.Changes)
	if err == nil {
		return text, w, nil, nil, nil
	}
	if last := len(r.Changes) - 1; last > 0 {
		if text, w, alone := try(r.Changes[last:]); alone == nil {
			return text, w, r.Changes[:last], nil, err
		}
	}
	return r.Text, base, r.Changes, nil, err
}

// tried returns the text with changes, worked out; no text where it takes none of them.
func (d *Desk) tried(text string, all []Change) (string, works, error) {
	text, err := edited(text, all)
	if err != nil {
		return "", works{}, err
	}
	w, err := d.solve(text)
	return text, w, err
}

func edited(text string, all []Change) (string, error) {
	out := lists.Map(all, func(c Change) design.Change { return design.Change(c) })
	data, err := design.Edit([]byte(text), out...)
	return string(data), err
}

func (z Resize) apply(text string) (string, error) {
	var out []byte
	var err error
	switch {
	case z.Add != "":
		out, err = design.AddSize([]byte(text), z.Add)
	case z.Remove != "":
		out, err = design.RemoveSize([]byte(text), z.Remove)
	default:
		out, err = design.RemoveRow([]byte(text), z.Table, z.Row)
	}
	return string(out), err
}

// mended applies a fix: to what holds for all sizes or, where the check comes out as it
// was because its size names the figure itself, to that size.
func (d *Desk) mended(r Request, base works) (string, works, []Change, []string, error) {
	c, ok := base.check(*r.Fix)
	if !ok || r.Fix.Index < 0 || r.Fix.Index >= len(c.Fixes) {
		return r.Text, base, nil, nil, nil
	}
	var problem error
	sizes := []string{"", r.Fix.Size}
	if size := c.Fixes[r.Fix.Index].Size; size != "" {
		sizes[0] = size
	}
	for _, size := range sizes {
		text, w, err := d.tried(r.Text, changesOf(c.Fixes[r.Fix.Index], size, base.design.Unit))
		if err != nil {
			problem = err
			continue
		}
		if now, asked := w.check(*r.Fix); !asked || now.Grade < c.Grade {
			return text, w, nil, nil, nil
		}
	}
	return r.Text, base, nil, nil, problem
}

func (w works) check(f Fix) (kind.Check, bool) {
	all := w.found.Together
	for _, s := range w.found.Sizes {
		if !f.Together && s.Design.Size == f.Size {
			all = s.Checks
		}
	}
	return lists.First(all, func(c kind.Check) bool { return c.ID == f.Check })
}

func changesOf(f kind.Fix, size string, u measure.Unit) []Change {
	out := []Change{{Size: size, Key: f.Key, Value: cmp.Or(f.Word, written(f.To, u))}}
	for _, t := range f.Follows {
		c := Change{Size: size, Key: t.Key, Value: t.Word}
		if t.Word == "" && t.To.Value != 0 {
			c.Value = written(t.To, u)
		}
		out = append(out, c)
	}
	return out
}

// written writes a figure as a maker would write it into the design, without losing of
// it what a check could see.
func written(q measure.Quantity, u measure.Unit) string {
	v := q.Value
	switch {
	case q.Kind == measure.KindAngle:
		v = measure.Degrees(v)
	case q.Kind == measure.KindLength && u == measure.Inch:
		v /= measure.MillimetresPerInch
		if sixty := v * 64; math.Abs(sixty-math.Round(sixty)) < 1e-6 {
			return measure.Fraction(v)
		}
	}
	return strings.TrimPrefix(strconv.FormatFloat(math.Round(v*1e6)/1e6, 'f', -1, 64), "-0")
}

// own reports whether a size goes by a figure of its own: where another one differs.
func own(w works, size string, key design.Key) bool {
	form, _ := design.FormOf([]byte(w.text))
	at := slices.Index(form.Sizes, size)
	if size == "" || at < 0 {
		return false
	}
	for _, group := range form.Groups {
		for _, f := range group.Fields {
			if f.Key == key && at < len(f.Own) {
				return f.Own[at] != ""
			}
		}
	}
	return false
}
