package pdf

import (
	"bytes"
	"compress/zlib"
	"io"
	"math"
	"strconv"
	"strings"
	"testing"

	"pgregory.net/rapid"

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

// sampleFile has two objects in the other order than their numbers, of which
// the second in the file is the catalogue.
const sampleFile = "%PDF\n2 0 obj\n<<>>\nendobj\n1 0 obj\n<<\n/Type /Catalog\n>>\nendobj\n" +
	"xref\n0 3\n0000000000 65535 f \n0000000025 00000 n \n0000000005 00000 n \ntrailer\n<<\n>>\nstartxref\n61\n%%EOF\n"

func unchanged(_ int, object []byte) ([]byte, error) { return object, nil }

func TestRewrite(t *testing.T) {
	if got, err := rewrite([]byte(sampleFile), unchanged); err != nil || string(got) != sampleFile {
		t.Errorf("got %q, %v, want the same", got, err)
	}
	got, err := rewrite([]byte(sampleFile), func(n int, object []byte) ([]byte, error) {
		if n == 2 {
			return []byte("2 0 obj\n<</Entry 123>>\nendobj\n"), nil
		}
		return withPreferences(n, object), nil
	})
	want := strings.NewReplacer("<<>>", "<</Entry 123>>", "/Catalog\n", "/Catalog\n"+preferences,
		"0000000025", "0000000035", "\n61\n", "\n"+strconv.Itoa(71+len(preferences))+"\n").Replace(sampleFile)
	if err != nil || string(got) != want {
		t.Errorf("got %q, %v, want %q", got, err, want)
	}
	if _, err := rewrite([]byte(sampleFile), func(int, []byte) ([]byte, error) { return nil, errStrange }); err != errStrange {
		t.Errorf("error %v, want that of the change", err)
	}
}

// A file that does not have the form that gofpdf gives it is refused.
func TestRewriteOfAnotherForm(t *testing.T) {
	for _, c := range [][2]string{
		{sampleFile, ""}, {"\nxref\n0 3", "\nxref 0 3"}, {"\ntrailer\n", "\ntrailing\n"}, {"startxref\n", "begin\n"},
		{"0000000005", "0000000004"}, {"0000000025", "0000002500"}, {"0000000025", "-000000025"}, {"0000000025", "x"},
		{"0000000025 00000 n \n0000000005 00000 n \n", ""}, {"2 0 obj", "3 0 obj"},
	} {
		broken := strings.Replace(sampleFile, c[0], c[1], 1)
		if got, err := rewrite([]byte(broken), unchanged); err == nil {
			t.Errorf("%q became %q", broken, got)
		}
	}
}

// The content of a page keeps the font that gofpdf has set, and nothing that
// it has drawn.
func TestContentObject(t *testing.T) {
	const old = "4 0 obj\n<</Length 9>>\nstream\n0.57 w\nBT /Fabc 1.00 Tf ET\nBT (drawn) Tj ET\n\nendstream\nendobj\n"
	p := page.Page{Texts: []page.Text{{Height: 2.5, String: "lap"}, {Height: 2.5, String: ""}}}
	got, err := newPacker().object(4, []byte(old), content(nil, p))
	if err != nil {
		t.Fatal(err)
	}
	_, stream, _ := bytes.Cut(got, []byte("stream\n"))
	r, err := zlib.NewReader(bytes.NewReader(stream))
	if err != nil {
		t.Fatal(err)
	}
	text, err := io.ReadAll(r)
	const begins = "0.57 w\nBT /Fabc 1.00 Tf ET\nBT "
	if s := string(text); err != nil || !strings.HasPrefix(s, begins) || strings.Count(s, "Tj") != 1 {
		t.Errorf("%q, %v: want the font of the frame and one text", text, err)
	}
	for _, broken := range []string{strings.Replace(old, ">>\nstream", ">> stream", 1), strings.Replace(old, " Tf ET", "", 1)} {
		if _, err := newPacker().object(4, []byte(broken), nil); err == nil {
			t.Errorf("%q is taken", broken)
		}
	}
}

// A dashed line begins with a whole dash (phase 0) and has flat ends, so that
// its dashes keep their length; any other has round ends; all have round
// corners (operators w, d, j and J of ISO 32000-1, 8.4.3; from memory).
func TestStyle(t *testing.T) {
	const mm = 25.4 / 72 // a point
	for _, c := range []struct {
		line page.Line
		want string
	}{
		{page.Line{Width: mm / 2}, "0.5 w [ ] 0 d 1 j 1 J\n"},
		{page.Line{Width: 2 * mm, Dash: []float64{8 * mm, 3 * mm}}, "2 w [ 8 3 ] 0 d 1 j 0 J\n"},
	} {
		var w contentWriter
		w.style(c.line)
		if got := string(w.text); got != c.want {
			t.Errorf("%q, want %q", got, c.want)
		}
	}
}

func TestAppendEscaped(t *testing.T) {
	var got []byte
	for _, c := range []byte("a\\()\r\n") {
		got = appendEscaped(got, c)
	}
	if want := `a\\\(\)\r` + "\n"; string(got) != want {
		t.Errorf("%q, want %q", got, want)
	}
}
