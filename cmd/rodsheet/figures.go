package main

import (
	"bytes"
	"encoding/json"
	"fmt"
	"io"
	"math"
	"strconv"
	"strings"
	"text/tabwriter"

	"rodsheet/geometry/measure"
	"rodsheet/render"
	"rodsheet/templates"
)

// figureTable sets figures in two columns.
func figureTable(figures []templates.Figure, u measure.Unit) string {
	var b strings.Builder
	w := tabwriter.NewWriter(&b, 0, 0, 2, ' ', 0)
	for _, f := range figures {
		fmt.Fprintf(w, "%s\t%s\n", f.Name, f.Value.Text(u))
	}
	w.Flush()
	return b.String()
}

// The JSON that --json prints. It is a promise to other programs: fields are
// added, never renamed, and no array is null.
type (
	resultJSON struct {
		Figures  []figureJSON `json:"figures"`
		Pages    []placedJSON `json:"pages"`
		Warnings []string     `json:"warnings"`
	}
	figureJSON struct {
		Name  string  `json:"name"`
		Value decimal `json:"value"`
		Unit  string  `json:"unit"`
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

// writeJSON prints the job as one object on one line.
func writeJSON(stdout io.Writer, job templates.Job, placements []render.Placement) error {
	r := resultJSON{
		Figures:  make([]figureJSON, 0, len(job.Figures)),
		Pages:    make([]placedJSON, 0, len(placements)),
		Warnings: append([]string{}, job.Warnings...),
	}
	for _, f := range job.Figures {
		value, unit := f.Value.JSON()
		r.Figures = append(r.Figures, figureJSON{f.Name, decimal(value), unit})
	}
	for _, p := range placements {
		m := p.ToPage
		r.Pages = append(r.Pages, placedJSON{p.Sheet, p.Template, p.Row, p.Column,
			[6]decimal{decimal(m.A), decimal(m.B), decimal(m.C), decimal(m.D), decimal(m.E), decimal(m.F)}})
	}
	var b bytes.Buffer
	enc := json.NewEncoder(&b)
	enc.SetEscapeHTML(false)
	if err := enc.Encode(r); err != nil {
		return fmt.Errorf("internal error: %w", err)
	}
	return emit(stdout, b.String())
}
