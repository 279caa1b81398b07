package main

import (
	"io"

	"rodsheet/templates/piece/checks"
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
		Group string `json:"group"`
		Text  string `json:"text"`
	}
	checkJSON struct {
		Name     string        `json:"name"`
		Grade    string        `json:"grade"`
		Figure   *figureJSON   `json:"figure"`
		Relation string        `json:"relation"`
		Limit    *quantityJSON `json:"limit"`
		Words    string        `json:"words"`
		Mends    []string      `json:"mends"`
	}
	quantityJSON struct {
		Value decimal `json:"value"`
		Unit  string  `json:"unit"`
	}
)

// writeJSON prints the findings as one object on one line.
func (f findings) writeJSON(stdout io.Writer) error {
	out := findingsJSON{Buildable: f.verdict() == nil, Sizes: []sizeJSON{}, Together: checksJSON(f.Together)}
	for i, p := range f.Pieces {
		s := sizeJSON{Name: p.Design.Size, Figures: []memberJSON{}, Notes: []noteJSON{}, Checks: checksJSON(f.Sizes[i])}
		for _, g := range checks.Groups(p) {
			s.Figures = append(s.Figures, members("", g)...)
			for _, text := range g.Text {
				s.Notes = append(s.Notes, noteJSON{g.Heading, text})
			}
		}
		out.Sizes = append(out.Sizes, s)
	}
	return emitJSON(stdout, out)
}

// members lists the figures of every size, one size after another.
func (f findings) members() []memberJSON {
	var out []memberJSON
	for _, p := range f.Pieces {
		for _, g := range checks.Groups(p) {
			out = append(out, members(p.Design.Size, g)...)
		}
	}
	return out
}

func members(size string, g checks.Group) []memberJSON {
	var out []memberJSON
	for _, figure := range g.Figures {
		out = append(out, memberJSON{size, g.Heading, figureOf(figure.Name, figure.Value)})
	}
	return out
}

func checksJSON(all []checks.Check) []checkJSON {
	out := make([]checkJSON, 0, len(all))
	for _, c := range all {
		j := checkJSON{Name: c.Name, Grade: c.Grade.String(), Relation: c.Relation, Words: c.Words, Mends: []string{}}
		if c.Relation != "" {
			figure := figureOf(c.Figure, c.Value)
			limit := figureOf("", c.Limit)
			j.Figure, j.Limit = &figure, &quantityJSON{limit.Value, limit.Unit}
		}
		for _, m := range c.Fixes {
			j.Mends = append(j.Mends, m.Words)
		}
		out = append(out, j)
	}
	return out
}
