package measure

import (
	"errors"
	"math"
	"strings"
	"testing"
)

// near allows what a rounding or two of a float64 cost.
func near(got, want float64) bool { return math.Abs(got-want) <= 1e-15*math.Abs(want) }

func TestParseLength(t *testing.T) {
	tests := []struct {
		text string
		bare Unit
		want float64 // mm
	}{
		{"640", Millimetre, 640},
		{"0", Millimetre, 0},
		{"-0", Millimetre, 0},
		{"640mm", Inch, 640},
		{"640 mm", Inch, 640},
		{"640 MM", Inch, 640},
		{" 640\t", Millimetre, 640},
		{"640\u00a0mm", Inch, 640},
		{"640\u202fmm", Inch, 640},
		{"64cm", Inch, 640},
		{"0.64m", Inch, 640},
		{"64.1cm", Inch, 641},
		{"-3.5", Millimetre, -3.5},
		{"+3.5", Millimetre, 3.5},
		{"− 3.5", Millimetre, -3.5},
		{"25", Inch, 635},
		{"25 1/4", Inch, 641.35},
		{"25-1/4", Inch, 641.35},
		{"25-1/4in", Millimetre, 641.35},
		{"25 1/4in", Millimetre, 641.35},
		{"25 1/4 in.", Millimetre, 641.35},
		{"25 1/4 inches", Millimetre, 641.35},
		{`25 1/4"`, Millimetre, 641.35},
		{"25 1/4''", Millimetre, 641.35},
		{"25 1⁄4″", Millimetre, 641.35},
		{"25¼”", Millimetre, 641.35},
		{"25 ¼″", Millimetre, 641.35},
		{"25-¼in", Millimetre, 641.35},
		{"25¼", Inch, 641.35},
		{"½", Inch, 12.7},
		{"¼", Inch, 6.35},
		{"¾", Inch, 19.05},
		{"⅛", Inch, 3.175},
		{"⅜", Inch, 9.525},
		{"⅝", Inch, 15.875},
		{"⅞", Inch, 22.225},
		{"0.75in", Millimetre, 19.05},
		{".5in", Millimetre, 12.7},
		{"3/4", Inch, 19.05},
		{"5/4in", Millimetre, 31.75},
		{"1/3in", Millimetre, 25.4 / 3},
		{"-1/2in", Millimetre, -12.7},
		{"25 1/4mm", Inch, 25.25}, // its own unit: one reading
		{"2ft", Millimetre, 609.6},
		{"2.5'", Millimetre, 762},
		{"2 1/2 feet", Millimetre, 762},
		{`2' 1 1/4"`, Millimetre, 641.35},
		{"2ft 1 1/4in", Millimetre, 641.35},
		{"2’ 1¼”", Millimetre, 641.35},
		{`2'-1 1/4"`, Millimetre, 641.35},
		{`2' - 1 1/4"`, Millimetre, 641.35},
		{"2′1¼″", Millimetre, 641.35},
		{"1' 6", Millimetre, 457.2},
		{`1'½"`, Millimetre, 317.5},
		{`-2' 6"`, Millimetre, -762},
		{"99.999m", Millimetre, 99_999},
		{"0.001", Millimetre, 0.001},
	}
	for _, tt := range tests {
		got, err := ParseLength(tt.text, tt.bare)
		if err != nil {
			t.Errorf("ParseLength(%q, %v): %v", tt.text, tt.bare, err)
			continue
		}
		if !near(got, tt.want) {
			t.Errorf("ParseLength(%q, %v) = %v, want %v", tt.text, tt.bare, got, tt.want)
		}
		if math.Signbit(got) && got == 0 {
			t.Errorf("ParseLength(%q, %v) = -0", tt.text, tt.bare)
		}
	}
}

// Exact in decimals, so exact to the last bit: 0.07 m is the float64 nearest
// to 70, where 0.07*1000 is not.
func TestParseLengthRoundsOnce(t *testing.T) {
	for text, want := range map[string]float64{
		"0.07m": 70, "1.1cm": 11, "4.35in": 110.49, "0.3in": 7.62, "8.12m": 8120, "1.15ft": 350.52,
	} {
		if got, err := ParseLength(text, Millimetre); err != nil || got != want {
			t.Errorf("ParseLength(%q) = %v, %v, want exactly %v", text, got, err, want)
		}
	}
}

func TestParseLengthRefuses(t *testing.T) {
	tests := []struct {
		text string
		bare Unit
		want string // the error behind the quoted text
	}{
		// Two readings.
		{"1,5", Millimetre, "can be read in two ways: 1.5 or 1 and 5"},
		{"1,5 cm", Millimetre, "can be read in two ways: 1.5 cm or 1 and 5 cm"},
		{"1,250", Millimetre, "can be read in two ways: 1.250 or 1250"},
		{"1,250mm", Inch, "can be read in two ways: 1.250mm or 1250mm"},
		{"-1,5", Millimetre, "can be read in two ways: 1.5 or 1 and 5"},
		{"25 1/4", Millimetre, "can be read in two ways: 25.25 mm or 25 1/4 in (641.35 mm)"},
		{"25¼", Millimetre, "can be read in two ways: 25.25 mm or 25 1/4 in (641.35 mm)"},
		{"3/4", Millimetre, "can be read in two ways: 0.75 mm or 3/4 in (19.05 mm)"},

		// Slips.
		{"", Millimetre, "is empty"},
		{" \u00a0 ", Millimetre, "is empty"},
		{"1,250.5", Millimetre, "has a comma"},
		{"1,250,000", Millimetre, "has a comma"},
		{"1,½", Inch, "has a comma"},
		{"1.5 1/4", Inch, "mixes a decimal with a fraction"},
		{"1.5¼in", Millimetre, "mixes a decimal with a fraction"},
		{"1/0", Inch, "divides by 0"},
		{"1 1/0in", Millimetre, "divides by 0"},
		{"0/0", Inch, "divides by 0"},
		{"25 5/4", Inch, "has a fraction of 1 or more behind a whole number"},
		{"25 4/4", Inch, "has a fraction of 1 or more behind a whole number"},
		{"1 (1.155)", Inch, "has brackets"},
		{"1e300", Millimetre, "has a power of ten"},
		{"1E3mm", Millimetre, "has a power of ten"},
		{"1e-3", Millimetre, "has a power of ten"},
		{"0x1F", Millimetre, "is not a decimal figure"},
		{"0b11", Millimetre, "is not a decimal figure"},
		{"1_000", Millimetre, "is not a decimal figure"},
		{"12 34", Millimetre, "has more than one figure, and nothing to tell them apart"},
		{"1 250 mm", Millimetre, "has more than one figure, and nothing to tell them apart"},
		{"½5", Inch, "is not a length"},
		{"½½", Inch, "is not a length"},
		{"1 1/2 1/4", Inch, "is not a length"},
		{"1/2/4", Inch, "is not a length"},
		{"3/½", Inch, "is not a length"},
		{"25 -1/4", Inch, "is not a length"}, // may be a subtraction
		{"10-20", Millimetre, "is not a length"},
		{"1m 20cm", Millimetre, "has more than one length"},
		{"1m20", Millimetre, "has more than one length"},
		{`1" 6`, Millimetre, "has more than one length"},
		{"2' 30mm", Millimetre, "has more than one length"},
		{`2.5' 3"`, Millimetre, "has part of a foot as well as inches"},
		{`1/2' 3"`, Millimetre, "has part of a foot as well as inches"},
		{`2' 12"`, Millimetre, "has 12 inches or more after the feet"},
		{`2' 1/0"`, Millimetre, "divides by 0"},
		{"5km", Millimetre, `has an unknown unit, "km"`},
		{"5°", Millimetre, `has an unknown unit, "°"`},
		{"5 %", Millimetre, `has an unknown unit, "%"`},
		{"5 mm mm", Millimetre, "is not a length"},
		{"NaN", Millimetre, "is not a length"},
		{"Inf", Millimetre, "is not a length"},
		{"-inf", Millimetre, "is not a length"},
		{"mm", Millimetre, "is not a length"},
		{"-", Millimetre, "is not a length"},
		{"--5", Millimetre, "is not a length"},
		{"+-5", Millimetre, "is not a length"},
		{"5-", Millimetre, "is not a length"},
		{"5.", Millimetre, "is not a length"},
		{".", Millimetre, "is not a length"},
		{"1.2.3", Millimetre, "is not a length"},
		{"25\n1/4", Inch, "is not a length"},
		{"٣", Millimetre, "is not a length"},
		{"\xff", Millimetre, "is not a length"},

		// Limits.
		{"100000", Millimetre, "is 100 m or more"},
		{"-100m", Millimetre, "is 100 m or more"},
		{"99999.99999999999999999", Millimetre, "is 100 m or more"},
		{"3937.1", Inch, "is 100 m or more"},
		{"0.0009", Millimetre, "is under 0.001 mm"},
		{"-1/64000in", Millimetre, "is under 0.001 mm"},
		{strings.Repeat("1", 65), Millimetre, "is longer than 64 characters"},
	}
	for _, tt := range tests {
		got, err := ParseLength(tt.text, tt.bare)
		checkRefusal(t, tt.text, got, err, tt.want)
	}
}

// checkRefusal looks at a refusal: the reason, the text in quotes before it,
// one line in all, and a hint.
func checkRefusal(t *testing.T, text string, got float64, err error, want string) {
	t.Helper()
	var e *ParseError
	if !errors.As(err, &e) {
		t.Errorf("%q = %v, %v, want a ParseError", text, got, err)
		return
	}
	if e.Reason != want {
		t.Errorf("%q: reason %q, want %q", text, e.Reason, want)
	}
	if e.Text != text || err.Error() != quote(text)+" "+e.Reason {
		t.Errorf("%q: error %q does not begin with the text", text, err)
	}
	if e.Hint == "" {
		t.Errorf("%q: no hint", text)
	}
	if strings.ContainsAny(err.Error()+e.Hint, "\n\r") {
		t.Errorf("%q: error %q is not one line", text, err)
	}
}

func TestParseErrorQuotes(t *testing.T) {
	tests := []struct{ text, want string }{
		{"1,5", `"1,5" no`},
		{"a\nb\x1b[2J", `"a\nb\x1b[2J" no`},
		{"\u202e5", `"\u202e5" no`}, // would turn the line round
		{"\xff", `"\xff" no`},
		{strings.Repeat("é", 41), `"` + strings.Repeat("é", 39) + `…" no`},
		{strings.Repeat("é", 40), `"` + strings.Repeat("é", 40) + `" no`},
	}
	for _, tt := range tests {
		if got := (&ParseError{tt.text, "no", ""}).Error(); got != tt.want {
			t.Errorf("got %s, want %s", got, tt.want)
		}
	}
}

func TestParseUnit(t *testing.T) {
	for _, u := range []Unit{Millimetre, Inch} {
		if got, err := ParseUnit(u.String()); got != u || err != nil {
			t.Errorf("ParseUnit(%q) = %v, %v", u, got, err)
		}
	}
	for _, s := range []string{"", "cm", "inch", "MM", " mm"} {
		_, err := ParseUnit(s)
		checkRefusal(t, s, 0, err, "is not a unit")
	}
}
