package pdf_test

import (
	"bytes"
	"errors"
	"io"
	"math"
	"slices"
	"strings"
	"testing"
	"unicode"

	"pgregory.net/rapid"

	"rodsheet/geometry"
	"rodsheet/render/lettering"
	"rodsheet/render/page"
	"rodsheet/render/pdf"
	"rodsheet/render/readback"
)

// aim is how near in mm every stroke is to lie in the file. What is promised
// is ten times as much.
const aim = 0.001

func write(t interface{ Fatal(...any) }, doc page.Document) []byte {
	var b bytes.Buffer
	if err := pdf.Write(&b, doc); err != nil {
		t.Fatal(err)
	}
	return b.Bytes()
}

func read(t interface{ Fatal(...any) }, doc page.Document) readback.File {
	f, err := readback.PDF(write(t, doc))
	if err != nil {
		t.Fatal(err)
	}
	return f
}

func TestStrokesAndSizes(t *testing.T) {
	doc := readback.Sample()
	f := read(t, doc)
	if len(f.Pages) != len(doc.Pages) {
		t.Fatalf("%d pages, want %d", len(f.Pages), len(doc.Pages))
	}
	for i, p := range doc.Pages {
		got := f.Pages[i]
		// gofpdf writes page sizes to 0.01 pt.
		if math.Abs(got.Width-p.Width) > 0.002 || math.Abs(got.Height-p.Height) > 0.002 {
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
		got := read(t, doc).Pages[0]
		for _, d := range append(readback.Differences(doc.Lines, doc.Pages[0], got.Strokes, aim), readback.AreaDifferences(doc.Pages[0], got.Areas, aim)...) {
			t.Fatal(d)
		}
	})
}

func TestClosedOutlinesAreClosed(t *testing.T) {
	doc := readback.Sample()
	got := read(t, doc).Pages[0].Strokes
	closed := 0
	for _, s := range got {
		if s.Closed {
			closed++
			if len(s.Points) != 3 {
				t.Errorf("closed outline of %d corners, want the triangle", len(s.Points))
			}
		}
	}
	if closed != 1 {
		t.Errorf("%d closed outlines, want 1", closed)
	}
}

func TestTexts(t *testing.T) {
	doc := readback.Sample()
	f := read(t, doc)
	for i, p := range doc.Pages {
		var want []page.Text
		for _, x := range p.Texts {
			if x.String != "" {
				want = append(want, x)
			}
		}
		got := f.Pages[i].Texts
		if len(got) != len(want) {
			t.Fatalf("page %d: %d texts, want %d", i+1, len(got), len(want))
		}
		for k, w := range want {
			g := got[k]
			if !g.Black {
				t.Errorf("%q is not black", g.String)
			}
			if g.String != w.String {
				t.Errorf("text %q, want %q", g.String, w.String)
			}
			if d := g.At.Distance(w.At); d > aim {
				t.Errorf("%q stands %.5f mm off", w.String, d)
			}
			if d := math.Abs(math.Remainder(g.Angle-w.Angle, 2*math.Pi)); d > 1e-5 {
				t.Errorf("%q leans %.6f, want %.6f", w.String, g.Angle, w.Angle)
			}
			if want := lettering.Em(w.Height); math.Abs(g.Size-want) > 1e-4 {
				t.Errorf("%q: size %.5f mm, want %.5f", w.String, g.Size, want)
			}
		}
	}
}

// The samples begin and end with H, whose sides are straight, so the ink
// reaches from the left stem of the first to the right stem of the last.
func TestWidthIsWhatTheReaderMeasures(t *testing.T) {
	texts := 0
	for _, p := range read(t, readback.Sample()).Pages {
		for _, x := range p.Texts {
			texts++
			height := x.Size / lettering.Em(1)
			h := lettering.Outline("H", height)
			var stems []geometry.Point
			for _, c := range h {
				stems = append(stems, c.Start)
				for _, piece := range c.Pieces {
					stems = append(stems, piece.To)
				}
			}
			box := geometry.Bounds(stems...)
			want := lettering.Width(strings.TrimSuffix(x.String, "H"), height) + box.Width()
			// PDFium rounds the boxes of glyphs to whole thousandths of an em.
			if got := x.InkWidth(); math.Abs(got-want) > 0.002*x.Size {
				t.Errorf("%q is %.4f mm wide, want %.4f", x.String, got, want)
			}
		}
	}
	if texts < 4 {
		t.Errorf("only %d texts measured", texts)
	}
}

func TestTitlesAndPreferences(t *testing.T) {
	doc := readback.Sample()
	f := read(t, doc)
	if f.Title != doc.Title || f.Subject != doc.Subject || f.Creator != "rodsheet" {
		t.Errorf("title %q, subject %q, creator %q", f.Title, f.Subject, f.Creator)
	}
	if asked := "/Version /1.7\n/ViewerPreferences <</PrintScaling /None /PickTrayByPDFSize true /Duplex /Simplex>>\n"; bytes.Count(write(t, doc), []byte(asked)) != 1 {
		t.Errorf("the print dialogue is not asked once for what it is to do: %s", asked)
	}
	if f.PrintScaling {
		t.Error("the viewer is not asked to leave the scale alone")
	}
	if len(f.Bookmarks) != len(doc.Pages) {
		t.Fatalf("%d bookmarks, want %d", len(f.Bookmarks), len(doc.Pages))
	}
	for i, b := range f.Bookmarks {
		if p := doc.Pages[i]; b.Title != p.Name || b.Page != i || math.Abs(b.Top-p.Height) > 0.01 {
			t.Errorf("bookmark %+v, want the top of page %d %q", b, i, p.Name)
		}
	}
}

// A part has a bookmark over those of its sheets; sheets before the first part
// stand beside it.
func TestBookmarksOfParts(t *testing.T) {
	doc := page.Document{Title: "pack"}
	for i, part := range []string{"", "cover", "", "cut list", "laps", ""} {
		doc.Pages = append(doc.Pages, page.Page{Width: 210, Height: 200 + 10*float64(i), Name: string(rune('1' + i)), Part: part})
	}
	want := []readback.Bookmark{
		{Title: "1", Level: 0, Page: 0, Top: 200},
		{Title: "cover", Level: 0, Page: 1, Top: 210},
		{Title: "2", Level: 1, Page: 1, Top: 210},
		{Title: "3", Level: 1, Page: 2, Top: 220},
		{Title: "cut list", Level: 0, Page: 3, Top: 230},
		{Title: "4", Level: 1, Page: 3, Top: 230},
		{Title: "laps", Level: 0, Page: 4, Top: 240},
		{Title: "5", Level: 1, Page: 4, Top: 240},
		{Title: "6", Level: 1, Page: 5, Top: 250},
	}
	got := read(t, doc).Bookmarks
	if len(got) != len(want) {
		t.Fatalf("%d bookmarks, want %d: %v", len(got), len(want), got)
	}
	for i, b := range got {
		if math.Abs(b.Top-want[i].Top) > 0.01 {
			t.Errorf("bookmark %d leads to %.3f mm, want %.0f", i+1, b.Top, want[i].Top)
		}
		if b.Top = want[i].Top; b != want[i] {
			t.Errorf("bookmark %d is %+v, want %+v", i+1, b, want[i])
		}
	}
}

func TestSameBytesTwice(t *testing.T) {
	first := write(t, readback.Sample())
	if n := bytes.Count(first, []byte("Date (D:20000101000000)")); n != 2 {
		t.Errorf("%d fixed dates, want 2", n)
	}
	for range 10 {
		if !bytes.Equal(first, write(t, readback.Sample())) {
			t.Fatal("two files of one document differ")
		}
	}
}

func TestWhatCannotBeWritten(t *testing.T) {
	for _, c := range []struct {
		name  string
		spoil func(*page.Document)
		want  string
	}{
		{"not a number", func(d *page.Document) { d.Pages[1].Strokes[0].Points[0].X = math.NaN() }, `page 2 "second"`},
		{"infinite", func(d *page.Document) { d.Pages[1].Texts[0].At.Y = math.Inf(-1) }, `page 2 "second"`},
		{"no pages", func(d *page.Document) { d.Pages = nil }, "no pages"},
		{"too long", func(d *page.Document) { d.Pages[1].Width = 5081 }, `page 2 "second": size 5081.0 × 279.4 mm`},
		{"too short", func(d *page.Document) { d.Pages[1].Height = 1 }, `page 2 "second"`},
	} {
		doc := readback.Sample()
		c.spoil(&doc)
		var b bytes.Buffer
		err := pdf.Write(&b, doc)
		if err == nil || !strings.Contains(err.Error(), c.want) {
			t.Errorf("%s: error %v, want %q in it", c.name, err, c.want)
		}
		if b.Len() > 0 {
			t.Errorf("%s: %d bytes written", c.name, b.Len())
		}
	}
}

// The sides of a page reach from 3 to 14400 points, these included.
func TestSidesOfAPage(t *testing.T) {
	const point = 25.4 / 72 // mm
	for points, ok := range map[float64]bool{2.99: false, 3: true, 14400: true, 14400.01: false} {
		for _, turned := range []bool{false, true} {
			doc := readback.Sample()
			p := &doc.Pages[1]
			if p.Width, p.Height = points*point, 100; turned {
				p.Width, p.Height = p.Height, p.Width
			}
			if err := pdf.Write(io.Discard, doc); (err == nil) != ok {
				t.Errorf("a side of %.2f points: %v, want it written: %t", points, err, ok)
			}
		}
	}
}

type full struct{}

func (full) Write([]byte) (int, error) { return 0, errors.New("disk full") }

func TestWriteErrorComesBack(t *testing.T) {
	if err := pdf.Write(full{}, readback.Sample()); err == nil || err.Error() != "disk full" {
		t.Errorf("error %v, want disk full", err)
	}
}

// lettered is a document with s wherever a document has words.
func lettered(s string) page.Document {
	return page.Document{Title: s, Subject: s, Pages: []page.Page{{
		Width: 210, Height: 297, Name: s,
		Texts: []page.Text{{At: geometry.Pt(10, 10), Height: 2.5, String: s}},
	}}}
}

func TestAnyStringIsSurvived(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := rapid.OneOf(
			rapid.String(),
			rapid.Map(rapid.SliceOf(rapid.Byte()), func(b []byte) string { return string(b) }),
			rapid.StringOf(rapid.RuneFrom(nil, unicode.Cc, unicode.Cf, unicode.Han, unicode.Arabic, unicode.So)),
			rapid.StringOf(rapid.RuneFrom([]rune(`()\<>[]{}/%#`))),
		).Draw(t, "s")
		doc := lettered(s)
		f := read(t, doc)
		if want := lettering.Clean(s); f.Title != want || f.Bookmarks[0].Title != want {
			t.Fatalf("title %q, bookmark %q, want %q", f.Title, f.Bookmarks[0].Title, want)
		}
		if got, want := letters(f.Pages[0].Texts), strip(lettering.Clean(s)); got != want {
			t.Fatalf("text %q, want %q", got, want)
		}
	})
}

func TestLongString(t *testing.T) {
	s := strings.Repeat("rail 木😀\x00\xff ", 1000) // 10 000 letters and more
	if got, want := letters(read(t, lettered(s)).Pages[0].Texts), strip(lettering.Clean(s)); got != want {
		t.Errorf("%d letters, want %d", len(got), len(want))
	}
}

// letters joins what was read, without spaces and ligatures: readers put in
// and leave out spaces as they see fit, and take ligatures apart.
func letters(texts []readback.Text) string {
	var all strings.Builder
	for _, t := range texts {
		all.WriteString(t.String)
	}
	return strip(all.String())
}

func strip(s string) string {
	return strings.NewReplacer("ﬁ", "fi", "ﬂ", "fl").Replace(strings.Join(strings.Fields(s), ""))
}

// Every rune that can be lettered comes out of the file as itself.
func TestEveryRuneOfTheFace(t *testing.T) {
	doc := lettered("")
	var want strings.Builder
	for r := rune(' '); r <= 0xFFFF; r++ {
		if s := string(r); lettering.Missing(s) == nil && !unicode.IsSpace(r) {
			want.WriteRune(r)
			doc.Pages[0].Texts = append(doc.Pages[0].Texts,
				page.Text{At: geometry.Pt(10, float64(len(doc.Pages[0].Texts))/3), Height: 2.5, String: s})
		}
	}
	got := []rune(letters(read(t, doc).Pages[0].Texts))
	for i, w := range []rune(strip(want.String())) {
		if i >= len(got) || got[i] != w {
			t.Fatalf("rune %d is not %c (%U)", i, w, w)
		}
	}
}

func BenchmarkWrite(b *testing.B) {
	p := readback.Sample().Pages[0]
	for i := range 200 {
		x, y := float64(i*37%210), float64(i*91%297)
		p.Strokes = append(p.Strokes, page.Stroke{Line: i % 3, Points: []geometry.Point{{X: x, Y: y}, {X: y / 2, Y: x}}})
	}
	doc := readback.Sample()
	doc.Pages = slices.Repeat([]page.Page{p}, 100)
	b.ReportAllocs()
	for b.Loop() {
		if err := pdf.Write(io.Discard, doc); err != nil {
			b.Fatal(err)
		}
	}
}
