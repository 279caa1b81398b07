package svg_test

import (
	"bytes"
	"encoding/xml"
	"errors"
	"fmt"
	"math"
	"strings"
	"testing"
	"unicode"

	"pgregory.net/rapid"

	"rodsheet/geometry"
	"rodsheet/render/lettering"
	"rodsheet/render/page"
	"rodsheet/render/readback"
	"rodsheet/render/svg"
)

// aim is how near in mm every stroke is to lie in the file.
const aim = 0.0002

func write(t interface{ Fatal(...any) }, doc page.Document, i int) []byte {
	var b bytes.Buffer
	if err := svg.Write(&b, doc, i); err != nil {
		t.Fatal(err)
	}
	return b.Bytes()
}

func read(t interface{ Fatal(...any) }, doc page.Document, i int) readback.Drawing {
	d, err := readback.SVG(write(t, doc, i))
	if err != nil {
		t.Fatal(err)
	}
	return d
}

func TestStrokesAndSize(t *testing.T) {
	doc := readback.Sample()
	for i, p := range doc.Pages {
		got := read(t, doc, i)
		if math.Abs(got.Width-p.Width) > 1e-4 || math.Abs(got.Height-p.Height) > 1e-4 {
			t.Errorf("page %d: %.4f × %.4f mm, want %.4f × %.4f", i+1, got.Width, got.Height, p.Width, p.Height)
		}
		for _, d := range append(readback.Differences(doc.Lines, p, got.Strokes, aim), readback.AreaDifferences(p, got.Areas, aim)...) {
			t.Errorf("page %d: %s", i+1, d)
		}
	}
}

func TestStrokesOfAnyPage(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		doc := readback.Pages().Draw(t, "document")
		got := read(t, doc, 0)
		for _, d := range append(readback.Differences(doc.Lines, doc.Pages[0], got.Strokes, aim), readback.AreaDifferences(doc.Pages[0], got.Areas, aim)...) {
			t.Fatal(d)
		}
	})
}

// Groups come in the order of the document's lines, each once, and a line
// that is not drawn has none.
func TestGroups(t *testing.T) {
	doc := readback.Sample()
	var ids []string
	for _, s := range read(t, doc, 0).Strokes {
		if len(ids) == 0 || ids[len(ids)-1] != s.Group {
			ids = append(ids, s.Group)
		}
	}
	if got := strings.Join(ids, " "); got != "cut hidden centre-line" {
		t.Errorf("groups %s", got)
	}
	if out := string(write(t, doc, 1)); strings.Contains(out, `"cut"`) || strings.Count(out, `id="hidden"`) != 1 {
		t.Errorf("second page:\n%s", out)
	}
}

func TestID(t *testing.T) {
	for name, want := range map[string]string{
		"cut": "cut", "centre line": "centre-line", "Waste 45°": "waste-45-", `a"<b`: "a--b", "": "",
	} {
		if got := svg.ID(name); got != want {
			t.Errorf("ID(%q) = %q, want %q", name, got, want)
		}
	}
}

func TestWords(t *testing.T) {
	doc := readback.Sample()
	got := read(t, doc, 0)
	if got.Title != doc.Title || got.Desc != doc.Subject+": "+doc.Pages[0].Name {
		t.Errorf("title %q, description %q", got.Title, got.Desc)
	}
	for k, w := range doc.Pages[0].Texts {
		if got.Texts[k].String != w.String {
			t.Errorf("text %q, want %q", got.Texts[k].String, w.String)
		}
	}
}

// Every text begins with H and ends with it, a letter whose corners are its
// extremes. Turned back to its base line, the lettering has the height of a
// capital above it and ends where Width says.
func TestLetteringStandsInItsPlace(t *testing.T) {
	doc := readback.Sample()
	for i, p := range doc.Pages {
		for k, text := range read(t, doc, i).Texts {
			w := p.Texts[k]
			if w.String == "" {
				if len(text.Outlines) > 0 {
					t.Error("an empty string has outlines")
				}
				continue
			}
			back := geometry.Translate(w.At).Inverse().Then(geometry.Rotate(-w.Angle))
			var first, last geometry.Rect
			for n, o := range text.Outlines {
				box := geometry.Bounds(back.ApplyAll(o.Points)...)
				if n == 0 {
					first = box
				}
				last = box
			}
			bearing := first.Min.X
			end := lettering.Width(strings.TrimSuffix(w.String, "H"), w.Height)
			for _, c := range []struct {
				name      string
				got, want float64
			}{
				{"foot", first.Min.Y, 0}, {"height", first.Max.Y, w.Height},
				{"foot of the last letter", last.Min.Y, 0}, {"height of the last letter", last.Max.Y, w.Height},
				{"last letter", last.Min.X, end + bearing},
			} {
				if math.Abs(c.got-c.want) > aim {
					t.Errorf("%q: %s at %.4f, want %.4f", w.String, c.name, c.got, c.want)
				}
			}
		}
	}
}

func TestSameBytesTwice(t *testing.T) {
	if !bytes.Equal(write(t, readback.Sample(), 0), write(t, readback.Sample(), 0)) {
		t.Error("two files of one page differ")
	}
}

func TestNoMinusBeforeZero(t *testing.T) {
	doc := readback.Sample()
	doc.Pages[0].Strokes[0].Points = []geometry.Point{{X: math.Copysign(0, -1), Y: 297.00001}, {X: -0.00001, Y: 5}}
	if out := string(write(t, doc, 0)); strings.Contains(out, "-0.0000") || !strings.Contains(out, `d="M0.0000 0.0000L0.0000 292.0000"`) {
		t.Errorf("-0.0000, or not 0.0000 in\n%s", out)
	}
}

func TestWhatCannotBeWritten(t *testing.T) {
	for _, c := range []struct {
		name  string
		page  int
		spoil func(*page.Document)
		want  string
	}{
		{"not a number", 0, func(d *page.Document) { d.Pages[1].Strokes[0].Points[0].X = math.NaN() }, `page 2 "second"`},
		{"no such page", 2, func(*page.Document) {}, "page 3 of 2"},
		{"page below 0", -1, func(*page.Document) {}, "page 0 of 2"},
	} {
		doc := readback.Sample()
		c.spoil(&doc)
		var b bytes.Buffer
		err := svg.Write(&b, doc, c.page)
		if err == nil || !strings.Contains(err.Error(), c.want) || b.Len() > 0 {
			t.Errorf("%s: error %v, want %q in it; %d bytes written", c.name, err, c.want, b.Len())
		}
	}
}

type full struct{}

func (full) Write([]byte) (int, error) { return 0, errors.New("disk full") }

func TestWriteErrorComesBack(t *testing.T) {
	if err := svg.Write(full{}, readback.Sample(), 0); err == nil || err.Error() != "disk full" {
		t.Errorf("error %v, want disk full", err)
	}
}

func TestAnyStringIsSurvived(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := rapid.OneOf(
			rapid.String(),
			rapid.Map(rapid.SliceOf(rapid.Byte()), func(b []byte) string { return string(b) }),
			rapid.StringOf(rapid.RuneFrom(nil, unicode.Cc, unicode.Cf, unicode.Han, unicode.So)),
			rapid.StringOf(rapid.RuneFrom([]rune(`<>&"']]>`))),
		).Draw(t, "s")
		doc := page.Document{
			Title: s, Subject: s, Lines: []page.Line{{Name: s, Width: 1}},
			Pages: []page.Page{{
				Width: 210, Height: 297, Name: s,
				Strokes: []page.Stroke{{Points: []geometry.Point{{X: 1}, {X: 2}}}},
				Texts:   []page.Text{{Height: 2.5, String: s}},
			}},
		}
		got := read(t, doc, 0)
		if want := lettering.Clean(s); got.Title != want || got.Texts[0].String != want {
			t.Fatalf("title %q, text %q, want %q", got.Title, got.Texts[0].String, want)
		}
	})
}

// A second reader, not made for these files, which gives points of 1/72 in
// and a transform from user units.
func TestTrace(t *testing.T) {
	doc := readback.Sample()
	for i, p := range doc.Pages {
		out := readback.Run(t, write(t, doc, i), "sample.svg", "mutool", "trace", "FILE")
		var want []geometry.Segment
		for line := range doc.Lines {
			want = append(want, readback.OnPage(p, line)...)
		}
		got := traced(t, out, p.Height)
		if len(got) != len(want) {
			t.Errorf("page %d: %d segments, want %d", i+1, len(got), len(want))
		}
		// The trace gives six figures of the transform.
		for _, s := range readback.Strays(want, got, 0.005) {
			t.Errorf("page %d: no segment at %.5f", i+1, s)
		}
	}
}

func traced(t *testing.T, out string, height float64) []geometry.Segment {
	var doc struct {
		Strokes []struct {
			Transform string `xml:"transform,attr"`
			Ops       []struct {
				XMLName xml.Name
				X       float64 `xml:"x,attr"`
				Y       float64 `xml:"y,attr"`
			} `xml:",any"`
		} `xml:"page>stroke_path"`
	}
	if err := xml.Unmarshal([]byte(out), &doc); err != nil {
		t.Fatalf("%v:\n%s", err, out)
	}
	toMM := geometry.Affine{A: 25.4 / 72, D: -25.4 / 72, F: height}
	var segments []geometry.Segment
	for _, s := range doc.Strokes {
		m := transform(t, s.Transform).Then(toMM)
		var first, last geometry.Point
		for _, op := range s.Ops {
			to := m.Apply(geometry.Pt(op.X, op.Y))
			switch op.XMLName.Local {
			case "moveto":
				first = to
			case "closepath":
				segments = append(segments, geometry.Segment{A: last, B: first})
			default:
				segments = append(segments, geometry.Segment{A: last, B: to})
			}
			last = to
		}
	}
	return segments
}

func transform(t *testing.T, s string) geometry.Affine {
	var m geometry.Affine
	if _, err := fmt.Sscan(s, &m.A, &m.B, &m.C, &m.D, &m.E, &m.F); err != nil {
		t.Fatal(err)
	}
	return m
}
