package readback

import (
	"encoding/xml"
	"errors"
	"fmt"
	"io"
	"math"
	"strconv"
	"strings"

	"rodsheet/geometry"
)

// A Drawing is what an SVG file holds.
type Drawing struct {
	Title, Desc   string
	Width, Height float64
	Areas         []Area
	Strokes       []Stroke
	Texts         []Lettering
}

// Lettering is one string and its outlines. The control points of curves
// stand among the points.
type Lettering struct {
	String   string
	Outlines []Stroke
}

// SVG reads a file as this program writes it: mm as user units, strokes as
// paths in groups, lettering as outlines in the group "lettering". It returns
// an error for anything else, so that no style, script, transform or unknown
// element passes unseen.
func SVG(data []byte) (Drawing, error) {
	r := svgReader{tokens: xml.NewDecoder(strings.NewReader(string(data)))}
	for {
		token, err := r.tokens.Token()
		if errors.Is(err, io.EOF) {
			return r.drawing, nil
		}
		if err == nil {
			err = r.take(token)
		}
		if err != nil {
			return Drawing{}, fmt.Errorf("svg: %w", err)
		}
	}
}

type svgReader struct {
	tokens  *xml.Decoder
	drawing Drawing
	groups  []attributes // those that are open, outermost first
}

type attributes map[string]string

const letteringID = "lettering"

func (r *svgReader) lettering() bool { return len(r.groups) > 0 && r.groups[0]["id"] == letteringID }

func (r *svgReader) take(token xml.Token) error {
	switch t := token.(type) {
	case xml.StartElement:
		a := attributes{}
		for _, x := range t.Attr {
			a[x.Name.Local] = x.Value
		}
		return r.element(t.Name.Local, a)
	case xml.EndElement:
		if t.Name.Local == "g" {
			r.groups = r.groups[:len(r.groups)-1]
		}
	}
	return nil
}

func (r *svgReader) element(name string, a attributes) error {
	switch name {
	case "svg":
		return r.sheet(a)
	case "g":
		if r.lettering() {
			r.drawing.Texts = append(r.drawing.Texts, Lettering{})
		}
		r.groups = append(r.groups, a)
		return a.only("id", "fill", "stroke", "stroke-width", "stroke-dasharray", "stroke-linecap", "stroke-linejoin")
	case "title", "desc":
		return r.words(name)
	case "path":
		return r.path(a)
	}
	return fmt.Errorf("element <%s> not expected", name)
}

func (a attributes) only(names ...string) error {
	known := " " + strings.Join(names, " ") + " "
	for k := range a {
		if !strings.Contains(known, " "+k+" ") {
			return fmt.Errorf("attribute %q not expected", k)
		}
	}
	return nil
}

// sheet reads the size and proves that a user unit is a millimetre.
func (r *svgReader) sheet(a attributes) error {
	width, okW := strings.CutSuffix(a["width"], "mm")
	height, okH := strings.CutSuffix(a["height"], "mm")
	if want := "0.0000 0.0000 " + width + " " + height; !okW || !okH || a["viewBox"] != want {
		return fmt.Errorf("viewBox %q over %q by %q", a["viewBox"], a["width"], a["height"])
	}
	size, err := numbers(width + " " + height)
	if err != nil {
		return err
	}
	r.drawing.Width, r.drawing.Height = size[0], size[1]
	return nil
}

func (r *svgReader) words(name string) error {
	token, err := r.tokens.Token()
	if err != nil {
		return err
	}
	said := ""
	if text, ok := token.(xml.CharData); ok {
		said = string(text)
	}
	switch {
	case name == "desc":
		r.drawing.Desc = said
	case len(r.groups) == 0:
		r.drawing.Title = said
	case r.lettering() && len(r.groups) == 2:
		r.drawing.Texts[len(r.drawing.Texts)-1].String = said
	default:
		return fmt.Errorf("title %q not expected", said)
	}
	return nil
}

func (r *svgReader) path(a attributes) error {
	if err := a.only("d"); err != nil {
		return err
	}
	if r.lettering() && len(r.groups) == 2 {
		last := &r.drawing.Texts[len(r.drawing.Texts)-1]
		outlines, err := r.polylines(a["d"], Stroke{Group: letteringID})
		last.Outlines = append(last.Outlines, outlines...)
		return err
	}
	if len(r.groups) != 1 {
		return errors.New("path outside a group")
	}
	group := r.groups[0]
	if group["stroke"] == "none" {
		return r.area(group, a["d"])
	}
	width, err := numbers(group["stroke-width"])
	if err != nil || len(width) != 1 {
		return fmt.Errorf("stroke-width %q", group["stroke-width"])
	}
	dash, err := numbers(group["stroke-dasharray"])
	if err != nil {
		return err
	}
	strokes, err := r.polylines(a["d"], Stroke{
		Group: group["id"], Width: width[0], Dash: dash,
		RoundEnds: group["stroke-linecap"] == "round", RoundCorners: group["stroke-linejoin"] == "round",
	})
	r.drawing.Strokes = append(r.drawing.Strokes, strokes...)
	return err
}

// area reads a run of areas.
func (r *svgReader) area(group attributes, d string) error {
	var red, green, blue uint8
	if n, err := fmt.Sscanf(group["fill"], "#%02x%02x%02x", &red, &green, &blue); n != 3 || err != nil || red != green || red != blue {
		return fmt.Errorf("fill %q of an area", group["fill"])
	}
	outlines, err := r.polylines(d, Stroke{})
	for _, s := range outlines {
		r.drawing.Areas = append(r.drawing.Areas, Area{float64(red) / 255, s.Points})
	}
	return err
}

// polylines reads the data of a path with absolute M, L, Q and Z.
func (r *svgReader) polylines(d string, pen Stroke) ([]Stroke, error) {
	var out []Stroke
	for d != "" {
		command := d[0]
		end := len(d)
		if next := strings.IndexAny(d[1:], "MLQZ"); next >= 0 {
			end = 1 + next
		}
		v, err := numbers(d[1:end])
		d = d[end:]
		if err != nil {
			return nil, err
		}
		if command == 'M' {
			out = append(out, pen)
		}
		want, known := map[byte]int{'M': 2, 'L': 2, 'Q': 4, 'Z': 0}[command]
		if !known || len(v) != want || len(out) == 0 {
			return nil, fmt.Errorf("path command %q with %d numbers", command, len(v))
		}
		last := &out[len(out)-1]
		for i := 0; i < len(v); i += 2 {
			last.Points = append(last.Points, geometry.Pt(v[i], r.drawing.Height-v[i+1]))
		}
		last.Curved = last.Curved || command == 'Q'
		if command == 'Z' {
			last.close()
		}
	}
	return out, nil
}

// numbers reads finite numbers with spaces between.
func numbers(s string) ([]float64, error) {
	var out []float64
	for _, word := range strings.Fields(s) {
		v, err := strconv.ParseFloat(word, 64)
		if err != nil || math.IsNaN(v) || math.IsInf(v, 0) {
			return nil, fmt.Errorf("number %q", word)
		}
		out = append(out, v)
	}
	return out, nil
}
