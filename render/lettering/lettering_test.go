package lettering

import (
	"math"
	"slices"
	"strings"
	"testing"
	"unicode"
	"unicode/utf8"

	"golang.org/x/image/font"
	"golang.org/x/image/font/sfnt"
	"pgregory.net/rapid"

	"rodsheet/geometry"
)

func TestCapitalHasTheHeightAskedFor(t *testing.T) {
	for _, height := range []float64{1.8, 2.5, 3.5, 5, 7, 10} { // letter heights of ISO 3098
		for _, letter := range []string{"H", "E", "T", "X", "Z"} {
			box := bounds(Outline(letter, height))
			if math.Abs(box.Max.Y-height) > 1e-9 || math.Abs(box.Min.Y) > 1e-9 {
				t.Errorf("%s at %.1f mm reaches from %.6f to %.6f", letter, height, box.Min.Y, box.Max.Y)
			}
		}
	}
}

// Hand's figures: advances of H, e, l, l, o are 1479, 1139, 548, 548, 1139 of
// 2048 units, capital height 1480 units, read from the font's tables.
func TestWidth(t *testing.T) {
	em := 3.5 * 2048 / 1480
	for _, c := range []struct {
		s    string
		want float64
	}{
		{"", 0},
		{"H", 0.722 * em},
		{"Hello", (0.722 + 0.556 + 0.268 + 0.268 + 0.556) * em},
		{"AV", 2 * 0.667 * em}, // no kerning
		{"½", 0.834 * em},
		{"木", Width("?", 3.5)},
	} {
		if got := Width(c.s, 3.5); math.Abs(got-c.want) > 1e-9 {
			t.Errorf("Width(%q) = %.6f, want %.6f", c.s, got, c.want)
		}
	}
}

func TestAdvancesAreTheFontsToHalfAThousandth(t *testing.T) {
	f := face()
	var b sfnt.Buffer
	seen := 0
	for r := rune(0); r <= maxRune; r++ {
		g, err := f.font.GlyphIndex(&b, r)
		if err != nil {
			t.Fatal(err)
		}
		if g == 0 || f.step(r) == 0 {
			continue
		}
		seen++
		advance, err := f.font.GlyphAdvance(&b, g, f.ppem, font.HintingNone)
		if err != nil {
			t.Fatal(err)
		}
		if got, want := float64(f.step(r)), 1000*float64(advance)/f.em; math.Abs(got-want) > 0.5 {
			t.Errorf("%U: advance %.1f, want %.3f", r, got, want)
		}
	}
	if seen < 650 {
		t.Errorf("only %d runes can be lettered", seen)
	}
}

func TestMissing(t *testing.T) {
	var ascii string
	for r := ' '; r <= '~'; r++ {
		ascii += string(r)
	}
	for _, c := range []struct{ name, s, want, clean string }{
		{"nothing", "", "", ""},
		{"ASCII that prints", ascii, "", ascii},
		{"plain", "Lap, face side: 60° × ½ in", "", "Lap, face side: 60° × ½ in"},
		{"signs of the trade", "° × ½ ¼ ¾ ⅛ ⅜ ⅝ ⅞ ″ ′ – ± → ⁄", "", "° × ½ ¼ ¾ ⅛ ⅜ ⅝ ⅞ ″ ′ – ± → ⁄"},
		{"not in the face", "⅓⌀∅∠ 木", "⅓⌀∅∠木", "???? ?"},
		{"each once, in order", "木a⌀木⌀", "木⌀", "?a???"},
		{"control", "a\x00b\nc\r\x7f\u0085", "\x00\n\r\x7f\u0085", "a?b?c???"},
		{"format", "a\u00adb\u200d", "\u00ad\u200d", "a?b?"},
		{"beyond the basic plane", "a😀\U0010FFFF", "😀\U0010FFFF", "a??"},
		{"not UTF-8", "a\xff\xe2\x82", "\uFFFD", "a???"},
		{"damaged before", "a\uFFFD", "\uFFFD", "a?"},
	} {
		if got := string(Missing(c.s)); got != c.want {
			t.Errorf("%s: Missing = %q, want %q", c.name, got, c.want)
		}
		if got := Clean(c.s); got != c.clean {
			t.Errorf("%s: Clean = %q, want %q", c.name, got, c.clean)
		}
	}
}

func TestCleanLaws(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := anyString(t)
		clean := Clean(s)
		if !utf8.ValidString(clean) {
			t.Fatalf("Clean(%q) is not UTF-8", s)
		}
		if m := Missing(clean); m != nil {
			t.Fatalf("Clean(%q) still holds %q", s, m)
		}
		if Clean(clean) != clean {
			t.Fatalf("Clean is not settled on %q", clean)
		}
		if Missing(s) == nil && clean != s {
			t.Fatalf("Clean changed %q", s)
		}
		if got, want := len([]rune(clean)), len([]rune(s)); got != want {
			t.Fatalf("Clean(%q) has %d runes, want %d", s, got, want)
		}
		if got, want := Width(s, 2.5), Width(clean, 2.5); got != want {
			t.Fatalf("Width(%q) = %.6f, of its clean form %.6f", s, got, want)
		}
	})
}

func TestWidthLaws(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a := rapid.String().Draw(t, "a")
		b := rapid.String().Draw(t, "b")
		height := rapid.Float64Range(1, 20).Draw(t, "height")
		sum := Width(a, height) + Width(b, height)
		if got := Width(a+b, height); math.Abs(got-sum) > 1e-9*(1+sum) {
			t.Fatalf("Width(a+b) = %.9f, Width(a) + Width(b) = %.9f", got, sum)
		}
		if got, want := Width(a, 2*height), 2*Width(a, height); math.Abs(got-want) > 1e-9*(1+want) {
			t.Fatalf("at twice the height %.9f, want %.9f", got, want)
		}
	})
}

func TestWrap(t *testing.T) {
	m := Width("m", 2.5) + 1e-9
	for _, c := range []struct {
		s     string
		width float64
		want  []string
	}{
		{"", 10, nil},
		{"   \n ", 10, nil},
		{"mm mm mm", 100, []string{"mm mm mm"}},
		{"mm mm mm", 5 * m, []string{"mm mm", "mm"}},
		{"mm mm mm", 2 * m, []string{"mm", "mm", "mm"}},
		{"m m m m", 4.5 * m, []string{"m m m", "m"}}, // a space is a third of an m
		{"mm  mm\nmm", 100, []string{"mm mm mm"}},
		{"mmmmm m", 2 * m, []string{"mm", "mm", "m", "m"}},
		{"mmmmmm m", 4 * m, []string{"mmmm", "mm m"}},
		{"m mmmm", 3 * m, []string{"m", "mmm", "m"}},
		{"mmm", 0, []string{"m", "m", "m"}},
		{"mm", math.NaN(), []string{"m", "m"}},
		{"mm 5\u00a0mm", 5 * m, []string{"mm", "5\u00a0mm"}},
		{"mm 5 mm mm", 5 * m, []string{"mm", "5 mm", "mm"}},
		{"mm 5 mm, mm", 5 * m, []string{"mm", "5 mm,", "mm"}},
		{"mmmmmm 8 1/4 in (8.25)", 12 * m, []string{"mmmmmm", "8 1/4 in (8.25)"}},
		{"5 mm", 3 * m, []string{"5", "mm"}}, // no room for both
	} {
		if got := Wrap(c.s, 2.5, c.width); !slices.Equal(got, c.want) {
			t.Errorf("Wrap(%q, %.2f) = %q, want %q", c.s, c.width, got, c.want)
		}
	}
}

func TestWrapLaws(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := rapid.StringOf(rapid.RuneFrom([]rune("abW .木é "))).Draw(t, "s")
		width := rapid.Float64Range(0, 60).Draw(t, "width")
		lines := Wrap(s, 2.5, width)
		squeeze := func(s string) string { return strings.ReplaceAll(s, " ", "") }
		if got, want := squeeze(strings.Join(lines, "")), squeeze(s); got != want {
			t.Fatalf("letters %q, want %q", got, want)
		}
		for _, line := range lines {
			if Width(line, 2.5) > width+1e-9 && utf8.RuneCountInString(line) > 1 {
				t.Fatalf("line %q is longer than %.3f", line, width)
			}
			if line != strings.TrimSpace(line) || line == "" {
				t.Fatalf("line %q begins or ends with a space or is empty", line)
			}
		}
	})
}

func TestWrapFillsEveryLine(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		words := rapid.SliceOf(rapid.StringMatching(`[a-zW.]{1,5}`)).Draw(t, "words")
		width := Width("WWWWW", 2.5) * rapid.Float64Range(1, 5).Draw(t, "room")
		lines := Wrap(strings.Join(words, " "), 2.5, width)
		if got := strings.Fields(strings.Join(lines, " ")); !slices.Equal(got, words) {
			t.Fatalf("words %q, want %q", got, words)
		}
		for i := 1; i < len(lines); i++ {
			next, _, _ := strings.Cut(lines[i], " ")
			if Width(lines[i-1]+" "+next, 2.5) < width-1e-9 {
				t.Fatalf("%q had room after %q", next, lines[i-1])
			}
		}
	})
}

func TestOutlineFollowsWidth(t *testing.T) {
	const height = 3.5
	alone := bounds(Outline("H", height))
	for _, before := range []string{"", "AV", "Lap, 60° ", "½木"} {
		got := bounds(Outline(before+"H", height)).Max.X
		if want := Width(before, height) + alone.Max.X; math.Abs(got-want) > 1e-9 {
			t.Errorf("%q: H ends at %.6f, want %.6f", before+"H", got, want)
		}
	}
	if got := Outline(" ", height); got != nil {
		t.Errorf("a space has contours: %v", got)
	}
}

// The outer contour of a TrueType letter runs clockwise, inner ones the other
// way, and the areas make up the ink. O is a ring: ink = outside − inside.
func TestOutlineIsClosedAndTurnsTheRightWay(t *testing.T) {
	o := Outline("O", 10)
	if len(o) != 2 {
		t.Fatalf("O has %d contours, want 2", len(o))
	}
	a, b := area(o[0]), area(o[1])
	if a*b >= 0 || a+b >= 0 {
		t.Errorf("areas %.3f and %.3f: want the outer negative, the inner positive and smaller", a, b)
	}
	for _, c := range o {
		if end := c.Pieces[len(c.Pieces)-1].To; end.Distance(c.Start) > 1e-9 {
			t.Errorf("contour ends at %v, began at %v", end, c.Start)
		}
	}
}

func TestLettersStayInTheirBox(t *testing.T) {
	const height = 2.5
	for r := rune(' '); r < unicode.MaxLatin1; r++ {
		box := bounds(Outline(string(r), height))
		if box.Min.Y < -Descent(height)-1e-9 || box.Max.Y > Ascent(height)+1e-9 {
			t.Errorf("%c reaches from %.3f to %.3f, box from %.3f to %.3f", r, box.Min.Y, box.Max.Y, -Descent(height), Ascent(height))
		}
	}
	if d := Descent(height); d < height/5 || d > height/2 {
		t.Errorf("Descent(%.1f) = %.3f", height, d)
	}
}

func BenchmarkWidth(b *testing.B) {
	for b.Loop() {
		Width("shoulder to shoulder 123.4 mm along the inside edge", 2.5)
	}
}

// anyString draws text of any script, control characters, emoji, broken
// UTF-8, and now and then a very long string of it.
func anyString(t *rapid.T) string {
	s := rapid.OneOf(
		rapid.String(),
		rapid.Map(rapid.SliceOf(rapid.Byte()), func(b []byte) string { return string(b) }),
		rapid.StringOf(rapid.RuneFrom(nil, unicode.Cc, unicode.Cf, unicode.Han, unicode.So, unicode.Latin)),
	).Draw(t, "s")
	return strings.Repeat(s, rapid.SampledFrom([]int{1, 1, 1, 100}).Draw(t, "times"))
}

// bounds returns the box round the ends of all pieces: a TrueType letter has
// ends at its extremes.
func bounds(outline []Contour) geometry.Rect {
	var all []geometry.Point
	for _, c := range outline {
		all = append(all, c.Start)
		for _, p := range c.Pieces {
			all = append(all, p.To)
		}
	}
	return geometry.Bounds(all...)
}

func area(c Contour) float64 {
	points := []geometry.Point{c.Start}
	for _, p := range c.Pieces {
		points = append(points, p.To)
	}
	return geometry.Area(points)
}
