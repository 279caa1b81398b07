package main

import (
	"io"

	"rodsheet/geometry/lists"
	"rodsheet/geometry/measure"
	"rodsheet/templates"
	"rodsheet/templates/piece/design"
	"rodsheet/templates/piece/kind"
)

// The JSON that check prints, under the same promise as that of a template.
type (
	findingsJSON struct {
		Buildable bool        `json:"buildable"`
		Sizes     []sizeJSON  `json:"sizes"`
		Together  []checkJSON `json:"together"`
	}
	sizeJSON struct {
		Name    string       `json:"name"`
		Figures []memberJSON `json:"figures"`
		Notes   []noteJSON   `json:"notes"`
		Checks  []checkJSON  `json:"checks"`
	}
	noteJSON struct {
		GroupID measure.ID `json:"group_id"`
		Group   string     `json:"group"`
		Text    string     `json:"text"`
	}
	checkJSON struct {
		ID       measure.ID    `json:"id"`
		Name     string        `json:"name"`
		Grade    string        `json:"grade"`
		Figure   *figureJSON   `json:"figure"`
		Relation string        `json:"relation"`
		Limit    *quantityJSON `json:"limit"`
		Words    string        `json:"words"`
		Mends    []string      `json:"mends"`
		Fixes    []fixJSON     `json:"fixes"`
	}
	// A change of a key of the design file, with what to change beside it and the
	// sentence that says so. Size is that of the one to change, where it is one.
	fixJSON struct {
		changeJSON
		Size    string       `json:"size,omitempty"`
		Words   string       `json:"words"`
		Follows []changeJSON `json:"follows"`
	}
	// Value is null for a key that takes a word, or is to be left out.
	changeJSON struct {
		Key   design.Key `json:"key"`
		Value *decimal   `json:"value"`
		Unit  string     `json:"unit"`
		Word  string     `json:"word,omitempty"`
	}
	quantityJSON struct {
		Value decimal `json:"value"`
		Unit  string  `json:"unit"`
	}
)

func (f findings) writeJSON(stdout io.Writer) error {
	out := findingsJSON{Buildable: f.verdict() == nil, Sizes: []sizeJSON{}, Together: []checkJSON{}}
	for _, s := range f.Sizes {
		one := sizeJSON{Name: s.Design.Size, Figures: []memberJSON{}, Notes: []noteJSON{}, Checks: checksJSON(s.Checks)}
		for _, g := range s.Groups {
			one.Figures = append(one.Figures, members("", g)...)
			for _, text := range g.Text {
				one.Notes = append(one.Notes, noteJSON{g.ID, g.Heading, text})
			}
		}
		out.Sizes = append(out.Sizes, one)
		out.Together = checksJSON(f.Together)
	}
	return emitJSON(stdout, out)
}

func (f findings) members() []memberJSON {
	var out []memberJSON
	for _, s := range f.Sizes {
		for _, g := range s.Groups {
			out = append(out, members(s.Design.Size, g)...)
		}
	}
	return out
}

func members(size string, g kind.Group) []memberJSON {
	return lists.Map(g.Figures, func(f templates.Figure) memberJSON { return memberJSON{size, g.ID, g.Heading, figureOf(f.ID, f)} })
}

func checksJSON(all []kind.Check) []checkJSON {
	out := make([]checkJSON, 0, len(all))
	for _, c := range all {
		j := checkJSON{ID: c.ID, Name: c.Name, Grade: c.Grade.String(), Relation: c.RelationWords(),
			Words: c.Words, Mends: []string{}, Fixes: []fixJSON{}}
		if c.Figure != "" {
			figure := figureOf(c.Figure, templates.Figure{Name: c.FigureName, Value: c.Value})
			limit, unit := c.Limit.JSON()
			j.Figure, j.Limit = &figure, &quantityJSON{decimal(limit), unit}
		}
		for _, fix := range c.Fixes {
			j.Mends = append(j.Mends, fix.Words)
			j.Fixes = append(j.Fixes, fixOf(fix))
		}
		out = append(out, j)
	}
	return out
}

func fixOf(f kind.Fix) fixJSON {
	out := fixJSON{changeJSON: changeOf(f.Turn, f.Word != ""), Size: f.Size, Words: f.Words, Follows: []changeJSON{}}
	for _, t := range f.Follows {
		out.Follows = append(out.Follows, changeOf(t, t.To.Value == 0))
	}
	return out
}

func changeOf(t kind.Turn, none bool) changeJSON {
	if none {
		return changeJSON{Key: t.Key, Word: t.Word}
	}
	value, unit := t.To.JSON()
	v := decimal(value)
	return changeJSON{t.Key, &v, unit, t.Word}
}
