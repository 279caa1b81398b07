package main

import (
	"bytes"
	"encoding/json"
	"fmt"
	"io"
	"math"
	"slices"
	"strconv"
	"strings"
	"unicode/utf8"

	"rodsheet/geometry/lists"
	"rodsheet/geometry/measure"
	"rodsheet/render"
	"rodsheet/templates"
)

func figureTable(figures []templates.Figure, u measure.Unit) string {
	shown := slices.DeleteFunc(slices.Clone(figures), func(f templates.Figure) bool { return f.Aside })
	wide := lists.Most(shown, func(f templates.Figure) int { return utf8.RuneCountInString(f.Name) })
	var b strings.Builder
	b.Grow(len(shown) * (wide + 16))
	for _, f := range shown {
		for _, text := range []string{f.Name, strings.Repeat(" ", wide-utf8.RuneCountInString(f.Name)+2), f.Value.Text(u), "\n"} {
			b.WriteString(text)
		}
	}
	return b.String()
}

// fold breaks text into lines of at most width characters.
func fold(text string, width int) []string {
	var lines []string
	line := ""
	for _, word := range strings.Fields(text) {
		if line != "" && utf8.RuneCountInString(line)+1+utf8.RuneCountInString(word) > width {
			lines = append(lines, line)
			line = ""
		}
		line = strings.TrimPrefix(line+" "+word, " ")
	}
	return append(lines, line)
}

// The JSON that --json prints. It is a promise to other programs: fields are
// added, never renamed, and no array is null.
type (
	resultJSON struct {
		Figures  []memberJSON `json:"figures"`
		Pages    []placedJSON `json:"pages"`
		Bounds   boundsJSON   `json:"bounds"`
		Warnings []string     `json:"warnings"`
	}
	figureJSON struct {
		ID    measure.ID `json:"id,omitempty"`
		Name  string     `json:"name"`
		Value decimal    `json:"value"`
		Unit  string     `json:"unit"`
	}
	// Of a piece a figure belongs to a size, where they have names, and to a
	// group.
	memberJSON struct {
		Size    string     `json:"size,omitempty"`
		GroupID measure.ID `json:"group_id,omitempty"`
		Group   string     `json:"group,omitempty"`
		figureJSON
	}
	boundsJSON struct {
		Sheets int         `json:"sheets"`
		Least  int         `json:"least"`
		Tiles  []tilesJSON `json:"tiles"`
	}
	tilesJSON struct {
		Template string `json:"template"`
		Tiles    int    `json:"tiles"`
		Least    int    `json:"least"`
	}
	placedJSON struct {
		Page     int        `json:"page"`
		Template string     `json:"template"`
		Row      int        `json:"row"`
		Column   int        `json:"column"`
		ToPage   [6]decimal `json:"to_page"`
	}
)

// A decimal is a number written out, never as a power of ten or as -0, to nine
// places.
type decimal float64

func (d decimal) MarshalJSON() ([]byte, error) {
	v := float64(d)
	if math.IsNaN(v) || math.IsInf(v, 0) {
		return nil, fmt.Errorf("a figure is not finite")
	}
	s := strings.TrimRight(strings.TrimRight(strconv.FormatFloat(v, 'f', 9, 64), "0"), ".")
	if s == "-0" {
		s = "0"
	}
	return []byte(s), nil
}

func writeJSON(stdout io.Writer, made pack, places []render.Placement, bound render.Bound) error {
	r := resultJSON{
		Figures:  append([]memberJSON{}, made.members...),
		Pages:    []placedJSON{},
		Bounds:   boundsJSON{bound.Sheets, bound.Least, []tilesJSON{}},
		Warnings: append([]string{}, made.warnings...),
	}
	for _, f := range made.job.Figures {
		r.Figures = append(r.Figures, memberJSON{figureJSON: figureOf(f.ID, f)})
	}
	for _, p := range places {
		m := p.ToPage
		r.Pages = append(r.Pages, placedJSON{p.Sheet, p.Template, p.Row, p.Column,
			[6]decimal{decimal(m.A), decimal(m.B), decimal(m.C), decimal(m.D), decimal(m.E), decimal(m.F)}})
	}
	for _, t := range bound.Tiles {
		r.Bounds.Tiles = append(r.Bounds.Tiles, tilesJSON(t))
	}
	return emitJSON(stdout, r)
}

func figureOf(id measure.ID, f templates.Figure) figureJSON {
	value, unit := f.Value.JSON()
	return figureJSON{id, f.Name, decimal(value), unit}
}

func emitJSON(stdout io.Writer, object any) error {
	var b bytes.Buffer
	enc := json.NewEncoder(&b)
	enc.SetEscapeHTML(false)
	if err := enc.Encode(object); err != nil {
		return fmt.Errorf("internal error: %w", err)
	}
	return emit(stdout, b.String())
}
