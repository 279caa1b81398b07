package measure

import (
	"errors"
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"
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
		want string // the ID of the reason, and what it holds
	}{
		// Two readings.
		{"1,5", Millimetre, "one-or-two 1.5 1 5"},
		{"1,5 cm", Millimetre, "one-or-two 1.5 cm 1 5 cm"},
		{"1,250", Millimetre, "two-ways 1.250 1250"},
		{"1,250mm", Inch, "two-ways 1.250mm 1250mm"},
		{"-1,5", Millimetre, "one-or-two 1.5 1 5"},
		{"25 1/4", Millimetre, "two-ways 25.25 mm 25 1/4 in (641.35 mm)"},
		{"25¼", Millimetre, "two-ways 25.25 mm 25 1/4 in (641.35 mm)"},
		{"3/4", Millimetre, "two-ways 0.75 mm 3/4 in (19.05 mm)"},

		// Slips.
		{"", Millimetre, "empty"},
		{" \u00a0 ", Millimetre, "empty"},
		{"1,250.5", Millimetre, "comma"},
		{"1,250,000", Millimetre, "comma"},
		{"1,½", Inch, "comma"},
		{"1.5 1/4", Inch, "decimal-and-fraction"},
		{"1.5¼in", Millimetre, "decimal-and-fraction"},
		{"1/0", Inch, "divides-by-zero"},
		{"1 1/0in", Millimetre, "divides-by-zero"},
		{"0/0", Inch, "divides-by-zero"},
		{"25 5/4", Inch, "whole-fraction"},
		{"25 4/4", Inch, "whole-fraction"},
		{"1 (1.155)", Inch, "brackets"},
		{"1e300", Millimetre, "power-of-ten"},
		{"1E3mm", Millimetre, "power-of-ten"},
		{"1e-3", Millimetre, "power-of-ten"},
		{"0x1F", Millimetre, "no-decimal"},
		{"0b11", Millimetre, "no-decimal"},
		{"1_000", Millimetre, "no-decimal"},
		{"12 34", Millimetre, "several-figures"},
		{"1 250 mm", Millimetre, "several-figures"},
		{"½5", Inch, "no-length"},
		{"½½", Inch, "no-length"},
		{"1 1/2 1/4", Inch, "no-length"},
		{"1/2/4", Inch, "no-length"},
		{"3/½", Inch, "no-length"},
		{"25 -1/4", Inch, "no-length"}, // may be a subtraction
		{"10-20", Millimetre, "no-length"},
		{"1m 20cm", Millimetre, "several-lengths"},
		{"1m20", Millimetre, "several-lengths"},
		{`1" 6`, Millimetre, "several-lengths"},
		{"2' 30mm", Millimetre, "several-lengths"},
		{`2.5' 3"`, Millimetre, "part-of-foot"},
		{`1/2' 3"`, Millimetre, "part-of-foot"},
		{`2' 12"`, Millimetre, "inches-over"},
		{`2' 1/0"`, Millimetre, "divides-by-zero"},
		{"5km", Millimetre, `unknown-unit "km"`},
		{"5°", Millimetre, `unknown-unit "°"`},
		{"5 %", Millimetre, `unknown-unit "%"`},
		{"5 mm mm", Millimetre, "no-length"},
		{"NaN", Millimetre, "no-length"},
		{"Inf", Millimetre, "no-length"},
		{"-inf", Millimetre, "no-length"},
		{"mm", Millimetre, "no-length"},
		{"-", Millimetre, "no-length"},
		{"--5", Millimetre, "no-length"},
		{"+-5", Millimetre, "no-length"},
		{"5-", Millimetre, "no-length"},
		{"5.", Millimetre, "no-length"},
		{".", Millimetre, "no-length"},
		{"1.2.3", Millimetre, "no-length"},
		{"25\n1/4", Inch, "no-length"},
		{"٣", Millimetre, "no-length"},
		{"\xff", Millimetre, "no-length"},

		// Limits.
		{"100000", Millimetre, "long"},
		{"-100m", Millimetre, "long"},
		{"99999.99999999999999999", Millimetre, "long"},
		{"3937.1", Inch, "long"},
		{"0.0009", Millimetre, "short"},
		{"-1/64000in", Millimetre, "short"},
		{strings.Repeat("1", 65), Millimetre, "long-text 64"},
	}
	for _, tt := range tests {
		got, err := ParseLength(tt.text, tt.bare)
		checkRefusal(t, tt.text, got, err, tt.want)
	}
}

// checkRefusal looks at a refusal: the reason by its ID, the text in quotes before it,
// one line in all, and a hint.
func checkRefusal(t *testing.T, text string, got float64, err error, want string) {
	t.Helper()
	var e *ParseError
	if !errors.As(err, &e) {
		t.Errorf("%q = %v, %v, want a ParseError", text, got, err)
		return
	}
	if got := err.Error(); e.Text != text || got != quote(text)+": "+want {
		t.Errorf("%q: error %q, want %q", text, got, want)
	}
	if e.Hint.ID == "" {
		t.Errorf("%q: no hint", text)
	}
	if strings.ContainsAny(err.Error(), "\n\r") {
		t.Errorf("%q: error %q is not one line", text, err)
	}
}

func TestParseErrorQuotes(t *testing.T) {
	tests := []struct{ text, want string }{
		{"1,5", `"1,5": no`},
		{"a\nb\x1b[2J", `"a\nb\x1b[2J": no`},
		{"\u202e5", `"\u202e5": no`}, // would turn the line round
		{"\xff", `"\xff": no`},
		{strings.Repeat("é", 41), `"` + strings.Repeat("é", 39) + `…": no`},
		{strings.Repeat("é", 40), `"` + strings.Repeat("é", 40) + `": no`},
	}
	for _, tt := range tests {
		if got := (&ParseError{tt.text, slipOf("no"), slipOf("")}).Error(); got != tt.want {
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
		checkRefusal(t, s, 0, err, "no-unit")
	}
}

// TestPlainNumber holds the way past the patterns against the pattern of a number.
func TestPlainNumber(t *testing.T) {
	pattern := form(number)
	rapid.Check(t, func(t *rapid.T) {
		text := rapid.StringMatching(`[0-9. e/_-]{0,5}|[0-9]{0,4}\.?[0-9]{0,4}`).Draw(t, "text")
		got, ok := plainNumber(text)
		if want := pattern().MatchString(text); ok != want {
			t.Fatalf("plainNumber(%q) = %v, want %v", text, ok, want)
		}
		if ok {
			if want, _ := exact(text); got.Cmp(want) != 0 {
				t.Fatalf("plainNumber(%q) = %v, want %v", text, got, want)
			}
		}
	})
}
