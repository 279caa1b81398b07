package readback_test

import (
	"bytes"
	"math"
	"strings"
	"testing"

	"github.com/jung-kurt/gofpdf"

	"rodsheet/geometry"
	"rodsheet/render/readback"
)

func seg(x0, y0, x1, y1 float64) geometry.Segment {
	return geometry.Segment{A: geometry.Pt(x0, y0), B: geometry.Pt(x1, y1)}
}

func TestStrays(t *testing.T) {
	a, b, back := seg(0, 0, 10, 0), seg(0, 5, 10, 5), seg(10, 0, 0, 0)
	near, far := seg(0.001, 0, 10, 0), seg(0.1, 0, 10, 0)
	type list = []geometry.Segment
	for _, c := range []struct {
		name       string
		want, have list
		strays     int
	}{
		{"nothing", nil, nil, 0},
		{"the same", list{a, b}, list{a, b}, 0},
		{"in another order", list{a, b}, list{b, a}, 0},
		{"the other way", list{a}, list{back}, 0},
		{"near enough", list{a}, list{near}, 0},
		{"too far", list{a}, list{far}, 1},
		{"one for two", list{a, a}, list{a}, 1},
		{"one end astray", list{a}, list{seg(0, 0, 10, 1)}, 1},
		{"missing", list{a, b}, nil, 2},
	} {
		if got := readback.Strays(c.want, c.have, 0.002); len(got) != c.strays {
			t.Errorf("%s: %d strays, want %d", c.name, len(got), c.strays)
		}
	}
}

// A line drawn by gofpdf itself, and the same one inside a form that is put
// down at half size: y down from the top, places to 0.01 pt.
func TestPDFReadsWhatAnotherWrote(t *testing.T) {
	f := gofpdf.New("P", "mm", "A4", "")
	form := f.CreateTemplate(func(tpl *gofpdf.Tpl) {
		tpl.SetLineWidth(1)
		tpl.Line(10, 20, 110, 70)
	})
	f.AddPage()
	f.SetLineWidth(1)
	f.SetDashPattern([]float64{4, 2}, 0)
	f.Line(10, 20, 110, 70)
	_, size := form.Size()
	f.UseTemplateScaled(form, gofpdf.PointType{X: 30, Y: 40}, gofpdf.SizeType{Wd: size.Wd / 2, Ht: size.Ht / 2})
	f.Rect(5, 5, 10, 10, "F") // filled, not stroked
	var b bytes.Buffer
	if err := f.Output(&b); err != nil {
		t.Fatal(err)
	}
	file, err := readback.PDF(b.Bytes())
	if err != nil {
		t.Fatal(err)
	}
	if !file.PrintScaling || len(file.Bookmarks) != 0 {
		t.Errorf("print scaling %t, %d bookmarks", file.PrintScaling, len(file.Bookmarks))
	}
	strokes := file.Pages[0].Strokes
	if len(strokes) != 2 {
		t.Fatalf("%d strokes, want 2: %v", len(strokes), strokes)
	}
	for i, want := range []struct {
		segment geometry.Segment
		width   float64
		dashes  int
	}{
		{seg(10, 297-20, 110, 297-70), 1, 2},
		{seg(30+5, 297-40-10, 30+55, 297-40-35), 0.5, 0},
	} {
		got := strokes[i]
		if s := readback.Strays([]geometry.Segment{want.segment}, got.Segments(), 0.005); s != nil {
			t.Errorf("stroke %d: %.3f, want %.3f", i+1, got.Segments(), want.segment)
		}
		if math.Abs(got.Width-want.width) > 0.002 || got.RoundEnds || i == 0 && len(got.Dash) != want.dashes {
			t.Errorf("stroke %d: width %.3f, dashes %.3f, round %t", i+1, got.Width, got.Dash, got.RoundEnds)
		}
	}
}

func TestPDFRefusesWhatIsNone(t *testing.T) {
	for _, s := range []string{"", "no file", "%PDF-1.3\n"} {
		if f, err := readback.PDF([]byte(s)); err == nil {
			t.Errorf("%q was read as %+v", s, f)
		}
	}
}

const sheet = `<svg width="100.0000mm" height="50.0000mm" viewBox="0.0000 0.0000 100.0000 50.0000">`

func TestSVG(t *testing.T) {
	got, err := readback.SVG([]byte(sheet + `<title>a &lt; b</title><desc>c</desc>
<g id="cut" stroke-width="0.5" stroke-dasharray="3 1"><path d="M10 10L20 10L20 40Z"/></g>
<g id="lettering"><g><title>I</title><path d="M0 50L1 50Q2 50 2 49Z"/></g></g></svg>`))
	if err != nil {
		t.Fatal(err)
	}
	if got.Title != "a < b" || got.Desc != "c" || got.Width != 100 || got.Height != 50 {
		t.Errorf("title %q, description %q, %.1f × %.1f mm", got.Title, got.Desc, got.Width, got.Height)
	}
	want := []geometry.Segment{seg(10, 40, 20, 40), seg(20, 40, 20, 10), seg(20, 10, 10, 40)}
	if s := got.Strokes[0]; len(s.Segments()) != 3 || readback.Strays(want, s.Segments(), 1e-9) != nil || !s.Closed || s.Curved {
		t.Errorf("stroke %+v", s)
	}
	if s := got.Strokes[0]; s.Group != "cut" || s.Width != 0.5 || len(s.Dash) != 2 {
		t.Errorf("pen %+v", s)
	}
	if x := got.Texts[0]; x.String != "I" || len(x.Outlines) != 1 || !x.Outlines[0].Curved || len(x.Outlines[0].Points) != 4 {
		t.Errorf("text %+v", x)
	}
}

func TestSVGRefusesWhatItDoesNotKnow(t *testing.T) {
	for name, body := range map[string]string{
		"script":          `<script/>`,
		"style sheet":     `<style/>`,
		"text":            `<g id="x"><text>a</text></g>`,
		"style":           `<g id="cut" style="stroke:red"/>`,
		"transform":       `<g id="cut" transform="scale(2)"/>`,
		"path alone":      `<path d="M0 0L1 1"/>`,
		"relative path":   `<g id="cut" stroke-width="1"><path d="m0 0l1 1"/></g>`,
		"no width":        `<g id="cut"><path d="M0 0L1 1"/></g>`,
		"not a number":    `<g id="cut" stroke-width="1"><path d="M0 NaNL1 1"/></g>`,
		"infinite":        `<g id="cut" stroke-width="1"><path d="M0 +InfL1 1"/></g>`,
		"half a point":    `<g id="cut" stroke-width="1"><path d="M0 0L1"/></g>`,
		"not well formed": `<g>`,
	} {
		if got, err := readback.SVG([]byte(sheet + body + `</svg>`)); err == nil {
			t.Errorf("%s was read as %+v", name, got)
		}
	}
	for _, head := range []string{
		strings.Replace(sheet, "100.0000mm", "100.0000", 1),
		strings.Replace(sheet, "100.0000mm", "200.0000mm", 1),
		strings.Replace(sheet, "mm", "cm", 2),
	} {
		if got, err := readback.SVG([]byte(head + `</svg>`)); err == nil {
			t.Errorf("%s was read as %+v", head, got)
		}
	}
}
