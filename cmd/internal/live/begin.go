package live

import (
	"errors"

	"rodsheet/geometry"
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
func topped(text string, b Begin) []Change {
	var out []Change
	w, err := solve(text)
	if err != nil {
		return nil
	}
	p, err := piece.Solve(w.design.Sizes[0])
	if err != nil {
		return nil
	}
	if mm, err := measure.ParseLength(b.Width, w.design.Unit); err == nil && mm > 0 {
		wide := geometry.Bounds(p.TopCorners()...).Width()
		round := w.design.Unit.Round(5, 0.25)
		inside := p.Design.Ring.Inside * mm / wide
		out = append(out, Change{Key: "ring.inside", Value: written(measure.Length(float64(int(inside/round))*round), w.design.Unit)})
		if p.Design.Top.Outline == design.RoundTop {
			out = append(out, Change{Key: "top.diameter", Value: b.Width})
		}
	}
	switch {
	case b.Top == "none":
		out = append(out, Change{Key: "top.kind", Value: "none"})
	case b.Top == "wood" && p.Design.Top.Kind == design.GlassTop:
		thick := written(measure.Length(w.design.Unit.Round(18, 0.75)), w.design.Unit)
		out = append(out, Change{Key: "top.kind", Value: "wood"}, Change{Key: "top.thickness", Value: thick},
			Change{Key: "top.pads.kind", Value: "none"}, Change{Key: "top.fixing.kind", Value: "screws"})
	case b.Top == "wood":
		out = append(out, Change{Key: "top.fixing.kind", Value: "screws"})
	case b.Top == "glass" && p.Design.Top.Kind == design.WoodTop:
		thick := written(measure.Length(w.design.Unit.Round(8, 0.375)), w.design.Unit)
		pad, high := w.design.Unit.Round(20, 0.75), w.design.Unit.Round(6, 0.25)
		out = append(out, Change{Key: "top.kind", Value: "glass"}, Change{Key: "top.thickness", Value: thick},
			Change{Key: "top.pads.kind", Value: "pad"}, Change{Key: "top.pads.diameter", Value: written(measure.Length(pad), w.design.Unit)},
			Change{Key: "top.pads.height", Value: written(measure.Length(high), w.design.Unit)})
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
		c, failed := firstFail(w.found)
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

func firstFail(f kind.Report) (kind.Check, bool) {
	for _, c := range f.All() {
		if c.Grade == kind.Fail {
			return c, true
		}
	}
	return kind.Check{}, false
}
