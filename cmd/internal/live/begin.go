package live

import (
	"errors"

	"rodsheet/geometry"
	"rodsheet/geometry/lists"
	"rodsheet/geometry/measure"
	"rodsheet/templates/piece"
	"rodsheet/templates/piece/design"
	"rodsheet/templates/piece/kind"
)

// Begin are the answers to the few questions that a page without a design asks. Texts
// are as a maker writes them, "" for the usual.
type Begin struct {
	Units  string `json:"units"`
	Kind   string `json:"kind"` // of another piece than a ring, which the other answers are about
	Legs   int    `json:"legs"`
	Height string `json:"height"`
	Top    string `json:"top"` // "glass", "wood" or "none"
	Width  string `json:"width"`
	Thick  string `json:"thick"` // of the stock as planed
	Kerf   string `json:"kerf"`
	Dado   string `json:"dado"`
}

// errBegin says that no piece was found; faults of the answers come from the design.
var errBegin = errors.New(noBeginning.With())

// begin returns a design that passes its checks: the starting one with the answers in
// it, its ring as wide in proportion as the top, and whatever then fails mended.
func begin(b Begin) (string, error) {
	u, err := measure.ParseUnit(b.Units)
	if err != nil {
		return "", err
	}
	if kind := design.KindOf(b.Kind); kind != design.RingKind {
		_, _, usual := kind.Sides()
		text, err := design.Start(kind, usual, u)
		return string(text), err
	}
	start, err := design.Start(design.RingKind, b.Legs, u)
	if err != nil {
		return "", err
	}
	text := string(start)
	set := func(key design.Key, value string) {
		if err == nil && value != "" {
			text, err = edited(text, []Change{{Key: key, Value: value}})
		}
	}
	set("legs.height", b.Height)
	set("ring.width", b.Thick)
	set("saw.kerf", b.Kerf)
	set("saw.dado", b.Dado)
	for _, c := range topped(text, b) {
		set(c.Key, c.Value)
	}
	if err != nil {
		return "", err
	}
	fitting, err := design.Edit([]byte(text), design.Misfits([]byte(text))...)
	if err != nil {
		return "", err
	}
	return passing(string(fitting))
}

// topped returns what kind and width of a top change in the starting design. The sides
// of the ring grow with the top.
func topped(text string, b Begin) (out []Change) {
	w, err := solve(text)
	if err != nil {
		return nil
	}
	p, err := piece.Solve(w.design.Sizes[0])
	if err != nil {
		return nil
	}
	u := w.design.Unit
	set := func(key design.Key, value string) { out = append(out, Change{Key: key, Value: value}) }
	size := func(key design.Key, mm, in float64) { set(key, written(measure.Length(u.Round(mm, in)), u)) }
	if mm, err := measure.ParseLength(b.Width, u); err == nil && mm > 0 {
		wide := geometry.Bounds(p.TopCorners()...).Width()
		round := u.Round(5, 0.25)
		inside := p.Design.Ring.Inside * mm / wide
		set("ring.inside", written(measure.Length(float64(int(inside/round))*round), u))
		if p.Design.Top.Outline == design.RoundTop {
			set("top.diameter", b.Width)
		}
	}
	switch {
	case b.Top == "none":
		set("top.kind", "none")
	case b.Top == "wood" && p.Design.Top.Kind == design.GlassTop:
		set("top.kind", "wood")
		size("top.thickness", 18, 0.75)
		set("top.pads.kind", "none")
		set("top.fixing.kind", "screws")
	case b.Top == "wood":
		set("top.fixing.kind", "screws")
	case b.Top == "glass" && p.Design.Top.Kind == design.WoodTop:
		set("top.kind", "glass")
		size("top.thickness", 8, 0.375)
		set("top.pads.kind", "pad")
		size("top.pads.diameter", 20, 0.75)
		size("top.pads.height", 6, 0.25)
	}
	return out
}

// passing mends what fails, a check at a time, by the first fix that helps.
func passing(text string) (string, error) {
	const most = 12
	for range most {
		w, err := solve(text)
		if err != nil {
			return "", err
		}
		c, failed := lists.First(w.found.All(), func(c kind.Check) bool { return c.Grade == kind.Fail })
		if !failed {
			return text, nil
		}
		next := text
		for _, f := range c.Fixes {
			if next, err = edited(text, changesOf(f, "", w.design.Unit)); err == nil {
				break
			}
		}
		if next == text {
			break
		}
		text = next
	}
	return "", errBegin
}
