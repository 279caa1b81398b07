package pdf

import (
	"bytes"
	"math"
	"strconv"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"rodsheet/geometry"
	"rodsheet/render/page"
)

func TestAppendFixed(t *testing.T) {
	for _, c := range []struct {
		v    float64
		want string
	}{
		{0, "0"}, {math.Copysign(0, -1), "0"}, {-0.00001, "0"}, {0.00005, "0.0001"}, {-0.0001, "-0.0001"},
		{1, "1"}, {-1.5, "-1.5"}, {28.34645669, "28.3465"}, {0.99996, "1"}, {100.0301, "100.0301"}, {-283464.5669, "-283464.5669"},
	} {
		if got := string(appendFixed(nil, c.v)); got != c.want {
			t.Errorf("appendFixed(%.6f) = %s, want %s", c.v, got, c.want)
		}
	}
}

func TestAppendFixedReadsAsItself(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		v := rapid.Float64Range(-300_000, 300_000).Draw(t, "v")
		s := string(appendFixed(nil, v))
		got, err := strconv.ParseFloat(s, 64)
		if err != nil || math.Abs(got-v) > 0.5001e-4 {
			t.Fatalf("%.6f is written %s", v, s)
		}
	})
}

func TestAddToCatalog(t *testing.T) {
	const file = "%PDF\n9 0 obj\n<<\n/Type /Catalog\n>>\nendobj\nxref\n0 1\ntrailer\n<<\n>>\nstartxref\n41\n%%EOF\n"
	if strings.Index(file, "xref\n0 1") != 41 {
		t.Fatal("the sample's table does not stand where it says")
	}
	got, err := addToCatalog([]byte(file), "/Entry 1\n")
	want := strings.NewReplacer("\n>>\nendobj", "\n/Entry 1\n>>\nendobj", "\n41\n", "\n50\n").Replace(file)
	if err != nil || string(got) != want {
		t.Errorf("got %q, %v, want %q", got, err, want)
	}
	for _, broken := range []string{
		"", "startxref\n", "startxref\n%%EOF\n", strings.Replace(file, "startxref", "begin", 1),
		strings.Replace(file, "\n41\n", "\n40\n", 1), strings.Replace(file, "\n41\n", "\n4100\n", 1),
		strings.Replace(file, "\n41\n", "\n-1\n", 1), strings.Replace(file, "\n41\n", "\n\n", 1),
		strings.Replace(file, ">>\nendobj", ">> endobj", 1), strings.TrimSuffix(file, "\n"),
	} {
		if got, err := addToCatalog([]byte(broken), "/Entry 1\n"); err == nil {
			t.Errorf("%q became %q", broken, got)
		}
	}
}

// What compressPages makes of a plain file is what gofpdf writes by itself.
func TestCompressPages(t *testing.T) {
	for _, pages := range []int{1, 2, 40} {
		doc := page.Document{Title: "t", Lines: []page.Line{{Width: 0.5}}}
		for i := range pages {
			x := float64(i)
			doc.Pages = append(doc.Pages, page.Page{
				Width: 210, Height: 297, Name: "endstream",
				Strokes: []page.Stroke{{Points: []geometry.Point{geometry.Pt(x, 1), geometry.Pt(20+x, 30)}}},
				Texts:   []page.Text{{At: geometry.Pt(10, 10), Height: 2.5, String: "1 0 obj\nendstream\nxref"}},
			})
		}
		write := func(compressed bool) []byte {
			f := compose(doc)
			f.SetCompression(compressed)
			var b bytes.Buffer
			if err := f.Output(&b); err != nil {
				t.Fatal(err)
			}
			return b.Bytes()
		}
		plain := write(false)
		got, err := compressPages(plain, pages)
		if err != nil || !bytes.Equal(got, write(true)) {
			t.Errorf("%d pages: %v, not as gofpdf compresses", pages, err)
		}
		for _, broken := range [][]byte{
			nil, plain[:len(plain)-1], plain[1:], bytes.Replace(plain, []byte("xref\n0 "), []byte("xref\n1 "), 1),
			bytes.Replace(plain, []byte("4 0 obj\n<</Length "), []byte("4 0 obj\n<</Length 9"), 1),
			bytes.Replace(plain, []byte("\nendstream\n"), []byte("\nendstraem\n"), 1),
			bytes.ReplaceAll(plain, []byte(" 00000 n"), []byte("x00000 n")),
			bytes.Replace(plain, []byte("startxref\n"), []byte("startxref\n9"), 1),
		} {
			if _, err := compressPages(broken, pages); err == nil {
				t.Errorf("%d pages: a broken file of %d bytes is taken", pages, len(broken))
			}
		}
		if _, err := compressPages(plain, pages+1); err == nil {
			t.Errorf("%d pages: one more is found", pages)
		}
	}
}
