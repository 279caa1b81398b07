// Package svg writes one page of a page.Document as an SVG file at true size.
//
// One user unit is a millimetre, y runs down. Strokes stand in one group a
// line, lettering in a group of its own as outlines, so that neither a face
// nor a style sheet is needed to show it. The same page gives the same bytes.
package svg

import (
	"bytes"
	"fmt"
	"io"
	"math"
	"strconv"
	"strings"
	"unicode"

	svg "github.com/ajstarks/svgo/float"

	"rodsheet/geometry"
	"rodsheet/geometry/lists"
	"rodsheet/render/lettering"
	"rodsheet/render/page"
)

// decimals of a millimetre in the file: a tenth of a micrometre.
const decimals = 4

// Mark stands at the beginning of every file that Write writes and tells it from
// those of other programs.
const Mark = "<!-- a sheet of rodsheet -->"

// ink is the one colour, written out because some readers know no names.
const ink = `"#000000"`

// Write writes page pageIndex of doc, counted from 0. When it cannot be
// written nothing has reached w.
func Write(w io.Writer, doc page.Document, pageIndex int) error {
	if pageIndex < 0 || pageIndex >= len(doc.Pages) {
		return fmt.Errorf("svg: page %d of %d", pageIndex+1, len(doc.Pages))
	}
	if err := doc.Check(); err != nil {
		return fmt.Errorf("svg: %w", err)
	}
	// svgo loses write errors. A buffer has none, and is written in one go.
	var b bytes.Buffer
	compose(&b, doc, doc.Pages[pageIndex])
	_, err := w.Write(b.Bytes())
	return err
}

func compose(b *bytes.Buffer, doc page.Document, p page.Page) {
	s := svg.New(b)
	s.Decimals = decimals
	s.StartviewUnit(p.Width, p.Height, "mm", 0, 0, p.Width, p.Height)
	fmt.Fprintln(b, Mark)
	s.Title(lettering.Clean(doc.Title))
	s.Desc(lettering.Clean(describe(doc.Subject, p.Name)))
	// y runs up on a page.Page, from its lower edge.
	down := geometry.Affine{A: 1, D: -1, F: p.Height}
	drawAreas(s, p.Areas, down)
	strokes := byLine(p.Strokes, len(doc.Lines))
	for i, line := range doc.Lines {
		if len(strokes[i]) > 0 {
			drawLine(s, line, strokes[i], down)
		}
	}
	drawTexts(s, p.Texts, down)
	s.End()
}

// drawAreas writes the areas, each run of one gray as one path.
func drawAreas(s *svg.SVG, areas []page.Area, down geometry.Affine) {
	for run := range page.Runs(areas) {
		level := int(math.Round(255 * run[0].Gray))
		s.Group(fmt.Sprintf(`fill="#%02x%02x%02x"`, level, level, level), `stroke="none"`)
		d := lists.Map(run, func(a page.Area) string { return polyline(a.Points, true, down) })
		s.Path(strings.Join(d, " "))
		s.Gend()
	}
}

func describe(parts ...string) string {
	said := lists.Where(parts, func(p string) bool { return p != "" })
	return strings.Join(said, ": ")
}

func byLine(strokes []page.Stroke, lines int) [][]page.Stroke {
	out := make([][]page.Stroke, lines)
	for _, s := range strokes {
		out[s.Line] = append(out[s.Line], s)
	}
	return out
}

// drawLine writes the group of one line. Ends are round, so that a line stops
// where a pen would leave it; flat for dashes, so that they keep their length.
func drawLine(s *svg.SVG, line page.Line, strokes []page.Stroke, down geometry.Affine) {
	attributes := []string{
		`id="` + ID(line.Name) + `"`, `fill="none"`, `stroke=` + ink,
		`stroke-width="` + fixed(line.Width) + `"`, `stroke-linejoin="round"`,
	}
	if len(line.Dash) > 0 {
		dashes := lists.Map(line.Dash, fixed)
		attributes = append(attributes, `stroke-linecap="butt"`, `stroke-dasharray="`+strings.Join(dashes, " ")+`"`)
	} else {
		attributes = append(attributes, `stroke-linecap="round"`)
	}
	s.Group(attributes...)
	for _, stroke := range strokes {
		if points, closed := stroke.Outline(); len(points) > 1 {
			s.Path(polyline(points, closed, down))
		}
	}
	s.Gend()
}

// drawTexts writes each string as a group with the string for its title.
func drawTexts(s *svg.SVG, texts []page.Text, down geometry.Affine) {
	if len(texts) == 0 {
		return
	}
	s.Group(`id="lettering"`, `fill=`+ink, `stroke="none"`)
	for _, t := range texts {
		s.Group()
		s.Title(lettering.Clean(t.String))
		place := geometry.Rotate(t.Angle).Then(geometry.Translate(t.At)).Then(down)
		if d := contours(lettering.Outline(t.String, t.Height), place); d != "" {
			s.Path(d)
		}
		s.Gend()
	}
	s.Gend()
}

// ID returns the id of the group that holds the strokes of a line: the name
// in lower case with a hyphen for everything but letters and digits.
func ID(name string) string {
	return strings.Map(func(r rune) rune {
		if r < unicode.MaxASCII && (unicode.IsLetter(r) || unicode.IsDigit(r)) {
			return unicode.ToLower(r)
		}
		return '-'
	}, name)
}

func polyline(points []geometry.Point, closed bool, down geometry.Affine) string {
	var d []byte
	for i, p := range points {
		command := byte('L')
		if i == 0 {
			command = 'M'
		}
		d = appendPoint(append(d, command), down.Apply(p))
	}
	if closed {
		d = append(d, 'Z')
	}
	return string(d)
}

func contours(outline []lettering.Contour, place geometry.Affine) string {
	var d []byte
	for _, c := range outline {
		d = appendPoint(append(d, 'M'), place.Apply(c.Start))
		for _, p := range c.Pieces {
			if p.Curved {
				d = append(appendPoint(append(d, 'Q'), place.Apply(p.Control)), ' ')
			} else {
				d = append(d, 'L')
			}
			d = appendPoint(d, place.Apply(p.To))
		}
		d = append(d, 'Z')
	}
	return string(d)
}

func appendPoint(b []byte, p geometry.Point) []byte {
	return appendFixed(append(appendFixed(b, p.X), ' '), p.Y)
}

func appendFixed(b []byte, v float64) []byte {
	start := len(b)
	b = strconv.AppendFloat(b, v, 'f', decimals, 64)
	if string(b[start:]) == "-0.0000" {
		b = append(b[:start], b[start+1:]...)
	}
	return b
}

func fixed(v float64) string { return string(appendFixed(nil, v)) }
