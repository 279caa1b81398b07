package wording

import (
	"io"
	"math"
	"regexp"
	"slices"
	"strings"
	"testing"

	"rodsheet/geometry/measure"
)

func TestFault(t *testing.T) {
	length, angle, number := measure.Length, measure.Angle, measure.Number
	deg := measure.Radians
	for _, tt := range []struct {
		err            error
		mm, inch, hint string
	}{
		{measure.Below("taper.foot", length(50.8), "taper.top", length(44.45), "taper.narrows"),
			"foot 50.8 mm must be less than the top, 44.45 mm", "foot 2 in must be less than the top, 1 3/4 in", "a taper narrows towards the foot"},
		{measure.Below("taper.foot", length(50.8001), "taper.top", length(50.8), ""),
			"foot 50.8001 mm must be less than the top, 50.8 mm", "foot 2.000004 in must be less than the top, 2 in", ""},
		{measure.AtMost("leg.splay", angle(deg(45.001)), "", angle(deg(45)), ""),
			"splay 45.001° must be at most 45°", "splay 45.001° must be at most 45°", ""},
		{measure.AtLeast("standing.feet", number(2), "", number(3), ""), "feet 2 must be at least 3", "feet 2 must be at least 3", ""},
		{measure.Above("ratio", number(2.9999), "", number(3), ""), "ratio 2.9999 must be more than 3", "ratio 2.9999 must be more than 3", ""},
		{&measure.BoundError{Figure: "outline.corner", Value: number(2), Relation: measure.IsLeftOf, Limit: number(1)},
			"corner of the top 2 must turn to the left of the one before, corner 1", "corner of the top 2 must turn to the left of the one before, corner 1", ""},
		{measure.Positive("lap.kerf", length(math.Inf(1))), "kerf must be a finite number", "kerf must be a finite number", ""},
		{&measure.ParseError{Text: "x", Reason: measure.Slip{ID: "empty"}, Hint: measure.Slip{ID: "a-figure"}}, `"x" is empty`, `"x" is empty`, "write a figure"},
		{io.ErrUnexpectedEOF, "unexpected EOF", "unexpected EOF", ""},
	} {
		mm, hint := Fault(tt.err, measure.Millimetre)
		if inch, _ := Fault(tt.err, measure.Inch); mm != tt.mm || inch != tt.inch || hint != tt.hint {
			t.Errorf("got %q, %q, hint %q; want %q, %q, %q", mm, inch, hint, tt.mm, tt.inch, tt.hint)
		}
	}
}

// IDs are lower-case words joined by "-", in parts joined by "."; what they stand
// for is one line without verbs.
func TestTables(t *testing.T) {
	id := regexp.MustCompile(`^[a-z0-9]+(-[a-z0-9]+)*(\.[a-z0-9]+(-[a-z0-9]+)*)*$`)
	for _, table := range []map[measure.ID]Text{figures(), thans(), hints()} {
		for k, text := range table {
			if !id.MatchString(string(k)) {
				t.Errorf("%q is no ID", k)
			}
			if s := text.With(); s == "" || strings.Contains(s, "%!") || strings.Contains(s, "\n") {
				t.Errorf("%s: %q", k, s)
			}
		}
	}
}

// A slip has a verb for each piece of text that it holds.
func TestSlipTable(t *testing.T) {
	for id, text := range slips() {
		s := slipped(measure.Slip{ID: id, Args: slices.Repeat([]string{"x"}, strings.Count(string(text), "%s"))})
		if s == "" || strings.ContainsAny(s, "%\n") {
			t.Errorf("%s: %q", id, s)
		}
	}
}

func TestLists(t *testing.T) {
	for _, tt := range []struct {
		words   []string
		and, or string
	}{
		{nil, "", ""},
		{[]string{"a"}, "a", "a"},
		{[]string{"a", "b"}, "a and b", "a or b"},
		{[]string{"a", "b", "c"}, "a, b and c", "a, b or c"},
	} {
		if and, or := And(tt.words...), Or(tt.words...); and != tt.and || or != tt.or {
			t.Errorf("%q: got %q and %q", tt.words, and, or)
		}
	}
}

func TestShown(t *testing.T) {
	for in, want := range map[string]string{
		"":                       `""`,
		"lap":                    "lap",
		"two words":              `"two words"`,
		"it's":                   `"it's"`,
		"a\x1b[2J":               `"a\x1b[2J"`,
		strings.Repeat("x", 40):  strings.Repeat("x", 40),
		strings.Repeat("ü", 999): strings.Repeat("ü", 39) + "…",
	} {
		if got := Shown(in); got != want {
			t.Errorf("Shown(%q) = %q, want %q", in, got, want)
		}
	}
}

func TestGarble(t *testing.T) {
	restore := Garble(func(t Text) string { return strings.Map(garbled, string(t)) })
	bad := measure.Below("lap.kerf", measure.Length(50), "lap.crossing-width", measure.Length(45), "lap.thinner-blade")
	line, hint := Fault(bad, measure.Millimetre)
	restore()
	if strings.Contains(line+hint, "kerf") || !strings.Contains(line, "50 mm") || !strings.Contains(line, "45 mm") {
		t.Errorf("garbled: %q, %q", line, hint)
	}
	if line, _ := Fault(bad, measure.Millimetre); line != "kerf 50 mm must be less than the crossing width, 45 mm" {
		t.Errorf("restored: %q", line)
	}
}

// garbled turns every letter but those of verbs into another.
func garbled(r rune) rune {
	if strings.ContainsRune("abcefghijklmnopqrtuwxyz", r) {
		return 'z'
	}
	return r
}
