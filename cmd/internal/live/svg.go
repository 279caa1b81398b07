package live

import (
	"cmp"
	"fmt"
	"html/template"
	"math"
	"strconv"
	"strings"

	"rodsheet/geometry"
	"rodsheet/geometry/lists"
	"rodsheet/geometry/measure"
	"rodsheet/render"
	"rodsheet/render/lettering"
	"rodsheet/render/page"
	"rodsheet/templates"
	"rodsheet/templates/piece/kind"
	"rodsheet/templates/wording"
)

// A canvas writes an SVG for the screen: y runs down, lengths are those of the drawing,
// lines and tones have classes that the style sheet gives a look to.
type canvas struct{ strings.Builder }

// open begins the drawing of a box, y up, that has a name.
func (c *canvas) open(box geometry.Rect, name, class string) {
	fmt.Fprintf(c, `<svg class="%s" role="group" aria-label="%s" viewBox="%s %s %s %s">`, class, template.HTMLEscapeString(name),
		short(box.Min.X), short(-box.Max.Y), short(box.Width()), short(box.Height()))
}

func (c *canvas) path(class string, closed bool, points []geometry.Point) {
	if len(points) < 2 {
		return
	}
	fmt.Fprintf(c, `<path class="%s" d="%s"/>`, class, route(points, closed))
}

// route returns the data of a path, to a tenth of a mm.
func route(points []geometry.Point, closed bool) string {
	var b []byte
	for i, p := range points {
		if i == 0 {
			b = append(b, 'M')
		} else {
			b = append(b, 'L')
		}
		b = strconv.AppendFloat(b, tenth(p.X), 'f', -1, 64)
		b = append(b, ' ')
		b = strconv.AppendFloat(b, tenth(-p.Y), 'f', -1, 64)
	}
	if closed {
		b = append(b, 'Z')
	}
	return string(b)
}

func tenth(v float64) float64 { return math.Round(v*10)/10 + 0 }

// short writes a length to a hundredth.
func short(v float64) string { return strconv.FormatFloat(math.Round(v*100)/100+0, 'f', -1, 64) }

// tones are the classes of areas, roles those of lines.
var (
	tones   = [...]string{templates.White: "t0", templates.Light: "t1", templates.Middle: "t2", templates.Dark: "t3"}
	handles = map[measure.ID]wording.Text{"foot": draggedFoot, "height": draggedTop, "rim": draggedRim}
)

// showSVG draws a piece: its parts, each with its name, the figures that are fields of
// the form, and what may be dragged.
func showSVG(s kind.Shown, name string) template.HTML {
	box := roomOf(s)
	size := math.Max(box.Width(), box.Height())
	letter := size / 26
	box = box.Offset(0.06*size + letter*0.5)
	c := &canvas{}
	c.open(box, name, "show")
	var over []kind.Seen
	for _, p := range s.Parts {
		if p.Glass {
			over = append(over, p)
			continue
		}
		c.part(p)
	}
	c.strokes(s.Strokes)
	for _, p := range over {
		c.part(p)
	}
	for _, outline := range s.Clashes {
		c.path("clash", true, outline)
	}
	if len(s.Clashes) > 0 {
		at := geometry.Bounds(s.Clashes[0]...).Centre()
		fmt.Fprintf(c, `<circle class="ring" cx="%s" cy="%s" r="%s"><title>%s</title></circle>`, short(at.X), short(-at.Y), short(size/18), clashHere.With())
	}
	for _, f := range s.Figures {
		c.figure(f, letter)
	}
	for _, h := range s.Handles {
		said, ok := handles[h.ID]
		words := said.With()
		if !ok { // it is that of the figure that it moves
			words = dragged.With(wording.Name(h.ID))
		}
		fmt.Fprintf(c, `<circle class="grip" tabindex="0" role="slider" aria-label="%s" aria-valuenow="%s" data-grip="%s" data-up="%t" cx="%s" cy="%s" r="%s"/>`,
			words, short(along(h)), h.ID, h.Up, short(h.At.X), short(-h.At.Y), short(size/60))
	}
	c.WriteString("</svg>")
	return template.HTML(c.String())
}

func along(h kind.Handle) float64 {
	if h.Up {
		return h.At.Y
	}
	return h.At.X
}

func roomOf(s kind.Shown) geometry.Rect {
	var all []geometry.Point
	for _, p := range s.Parts {
		for _, a := range p.Areas {
			all = append(all, a.Points...)
		}
	}
	for _, l := range s.Strokes {
		all = append(all, l.Points...)
	}
	for _, f := range s.Figures {
		all = append(all, f.A, f.B)
	}
	return geometry.Bounds(all...)
}

// strokes draws lines, those of one role as one path.
func (c *canvas) strokes(all []templates.Stroke) {
	var roles []templates.Role
	byRole := map[templates.Role]*strings.Builder{}
	for _, l := range all {
		if byRole[l.Role] == nil {
			roles, byRole[l.Role] = append(roles, l.Role), new(strings.Builder)
		}
		byRole[l.Role].WriteString(route(l.Points, false))
	}
	for _, r := range roles {
		fmt.Fprintf(c, `<path class="l%d" d="%s"/>`, r, byRole[r])
	}
}

// part draws what is seen of a part as one thing to hover over or to focus.
func (c *canvas) part(p kind.Seen) {
	if len(p.Areas) == 0 {
		return
	}
	class := "part"
	if p.Glass {
		class = "part glass"
	}
	fmt.Fprintf(c, `<g class="%s" tabindex="0" role="img" aria-label="%s" data-kind="%s"><title>%[2]s</title>`,
		class, template.HTMLEscapeString(p.Name), p.Kind)
	for i := 0; i < len(p.Areas); {
		tone := p.Areas[i].Tone
		var d strings.Builder
		for ; i < len(p.Areas) && p.Areas[i].Tone == tone; i++ {
			d.WriteString(route(p.Areas[i].Points, true))
		}
		fmt.Fprintf(c, `<path class="%s" d="%s"/>`, tones[tone], d.String())
	}
	c.WriteString("</g>")
}

// figure draws a dimension and its text, which leads to its field.
func (c *canvas) figure(f kind.Dimension, letter float64) {
	across := f.B.Sub(f.A).Unit().Perp().Mul(letter / 3)
	c.path("dim", false, []geometry.Point{f.A, f.B})
	for _, end := range []geometry.Point{f.A, f.B} {
		c.path("dim", false, []geometry.Point{end.Sub(across), end.Add(across)})
	}
	at, turn := f.Mid(), ""
	if math.Abs(f.A.X-f.B.X) < 1e-9 {
		turn = fmt.Sprintf(` transform="rotate(-90 %s %s)"`, short(at.X), short(-at.Y))
	}
	fmt.Fprintf(c, `<g class="figure" tabindex="0" role="button" data-key="%s" aria-label="%s: %s"><text x="%s" y="%s" font-size="%s"%s>%[3]s</text></g>`,
		f.Key, label(f.Key), template.HTMLEscapeString(f.Text), short(at.X), short(-at.Y+letter/3), short(letter), turn)
}

// pictureSVG draws a picture of the pack. Its lettering stays text, of just the width
// that it has on paper.
func pictureSVG(p templates.Picture) template.HTML {
	most := geometry.Pt(95, 75)
	if p.Wide {
		most.X = 180
	}
	doc := render.SinglePicture(p, most)
	one := doc.Pages[0]
	c := &canvas{}
	fmt.Fprintf(c, `<svg class="picture" role="img" aria-label="%s" width="%smm" viewBox="0 %s %s %s">`,
		template.HTMLEscapeString(describe(one)), short(one.Width), short(-one.Height), short(one.Width), short(one.Height))
	for run := range page.Runs(one.Areas) {
		var d strings.Builder
		for _, a := range run {
			d.WriteString(route(a.Points, true))
		}
		fmt.Fprintf(c, `<path class="g%d" d="%s"/>`, int(math.Round(100*run[0].Gray)), d.String())
	}
	for i, line := range doc.Lines {
		var d strings.Builder
		for _, s := range one.Strokes {
			if s.Line == i {
				d.WriteString(route(s.Points, false))
			}
		}
		if d.Len() > 0 {
			fmt.Fprintf(c, `<path class="ink" stroke-width="%s"%s d="%s"/>`, short(line.Width), dashes(line.Dash), d.String())
		}
	}
	for _, t := range one.Texts {
		c.text(t)
	}
	c.WriteString("</svg>")
	return template.HTML(c.String())
}

// describe says what a picture is of: its heading, or else its lettering.
func describe(p page.Page) string {
	if p.Name != "" {
		return p.Name
	}
	words := lists.Map(p.Texts, func(t page.Text) string { return t.String })
	return cmp.Or(strings.Join(words, ", "), aPicture.With())
}

func dashes(all []float64) string {
	if len(all) == 0 {
		return ""
	}
	return ` stroke-dasharray="` + strings.Join(lists.Map(all, short), " ") + `"`
}

// capital is the height of a capital letter as a share of the size of its face, of the
// faces that browsers take for sans-serif (common practice, no source).
const capital = 0.72

func (c *canvas) text(t page.Text) {
	turn := ""
	if t.Angle != 0 {
		turn = fmt.Sprintf(` transform="rotate(%s %s %s)"`, short(-measure.Degrees(t.Angle)), short(t.At.X), short(-t.At.Y))
	}
	fmt.Fprintf(c, `<text x="%s" y="%s" font-size="%s" textLength="%s" lengthAdjust="spacingAndGlyphs"%s>%s</text>`,
		short(t.At.X), short(-t.At.Y), short(t.Height/capital), short(lettering.Width(t.String, t.Height)), turn, template.HTMLEscapeString(t.String))
}
