package wording

import (
	"errors"
	"strings"
	"testing"

	"rodsheet/geometry/measure"
)

// What is said of every text that is no length, word for word.
func TestSlipsOfLengths(t *testing.T) {
	for _, tt := range []struct {
		text string
		bare measure.Unit
		want string // the error behind the quoted text
	}{
		// Two readings.
		{"1,5", measure.Millimetre, "can be read in two ways: 1.5 or 1 and 5"},
		{"1,5 cm", measure.Millimetre, "can be read in two ways: 1.5 cm or 1 and 5 cm"},
		{"1,250", measure.Millimetre, "can be read in two ways: 1.250 or 1250"},
		{"1,250mm", measure.Inch, "can be read in two ways: 1.250mm or 1250mm"},
		{"-1,5", measure.Millimetre, "can be read in two ways: 1.5 or 1 and 5"},
		{"25 1/4", measure.Millimetre, "can be read in two ways: 25.25 mm or 25 1/4 in (641.35 mm)"},
		{"25¼", measure.Millimetre, "can be read in two ways: 25.25 mm or 25 1/4 in (641.35 mm)"},
		{"3/4", measure.Millimetre, "can be read in two ways: 0.75 mm or 3/4 in (19.05 mm)"},

		// Slips.
		{"", measure.Millimetre, "is empty"},
		{" \u00a0 ", measure.Millimetre, "is empty"},
		{"1,250.5", measure.Millimetre, "has a comma"},
		{"1,250,000", measure.Millimetre, "has a comma"},
		{"1,½", measure.Inch, "has a comma"},
		{"1.5 1/4", measure.Inch, "mixes a decimal with a fraction"},
		{"1.5¼in", measure.Millimetre, "mixes a decimal with a fraction"},
		{"1/0", measure.Inch, "divides by 0"},
		{"1 1/0in", measure.Millimetre, "divides by 0"},
		{"0/0", measure.Inch, "divides by 0"},
		{"25 5/4", measure.Inch, "has a fraction of 1 or more behind a whole number"},
		{"25 4/4", measure.Inch, "has a fraction of 1 or more behind a whole number"},
		{"1 (1.155)", measure.Inch, "has brackets"},
		{"1e300", measure.Millimetre, "has a power of ten"},
		{"1E3mm", measure.Millimetre, "has a power of ten"},
		{"1e-3", measure.Millimetre, "has a power of ten"},
		{"0x1F", measure.Millimetre, "is not a decimal figure"},
		{"0b11", measure.Millimetre, "is not a decimal figure"},
		{"1_000", measure.Millimetre, "is not a decimal figure"},
		{"12 34", measure.Millimetre, "has more than one figure, and nothing to tell them apart"},
		{"1 250 mm", measure.Millimetre, "has more than one figure, and nothing to tell them apart"},
		{"½5", measure.Inch, "is not a length"},
		{"½½", measure.Inch, "is not a length"},
		{"1 1/2 1/4", measure.Inch, "is not a length"},
		{"1/2/4", measure.Inch, "is not a length"},
		{"3/½", measure.Inch, "is not a length"},
		{"25 -1/4", measure.Inch, "is not a length"}, // may be a subtraction
		{"10-20", measure.Millimetre, "is not a length"},
		{"1m 20cm", measure.Millimetre, "has more than one length"},
		{"1m20", measure.Millimetre, "has more than one length"},
		{`1" 6`, measure.Millimetre, "has more than one length"},
		{"2' 30mm", measure.Millimetre, "has more than one length"},
		{`2.5' 3"`, measure.Millimetre, "has part of a foot as well as inches"},
		{`1/2' 3"`, measure.Millimetre, "has part of a foot as well as inches"},
		{`2' 12"`, measure.Millimetre, "has 12 inches or more after the feet"},
		{`2' 1/0"`, measure.Millimetre, "divides by 0"},
		{"5km", measure.Millimetre, `has an unknown unit, "km"`},
		{"5°", measure.Millimetre, `has an unknown unit, "°"`},
		{"5 %", measure.Millimetre, `has an unknown unit, "%"`},
		{"5 mm mm", measure.Millimetre, "is not a length"},
		{"NaN", measure.Millimetre, "is not a length"},
		{"Inf", measure.Millimetre, "is not a length"},
		{"-inf", measure.Millimetre, "is not a length"},
		{"mm", measure.Millimetre, "is not a length"},
		{"-", measure.Millimetre, "is not a length"},
		{"--5", measure.Millimetre, "is not a length"},
		{"+-5", measure.Millimetre, "is not a length"},
		{"5-", measure.Millimetre, "is not a length"},
		{"5.", measure.Millimetre, "is not a length"},
		{".", measure.Millimetre, "is not a length"},
		{"1.2.3", measure.Millimetre, "is not a length"},
		{"25\n1/4", measure.Inch, "is not a length"},
		{"٣", measure.Millimetre, "is not a length"},
		{"\xff", measure.Millimetre, "is not a length"},

		// Limits.
		{"100000", measure.Millimetre, "is 100 m or more"},
		{"-100m", measure.Millimetre, "is 100 m or more"},
		{"99999.99999999999999999", measure.Millimetre, "is 100 m or more"},
		{"3937.1", measure.Inch, "is 100 m or more"},
		{"0.0009", measure.Millimetre, "is under 0.001 mm"},
		{"-1/64000in", measure.Millimetre, "is under 0.001 mm"},
		{strings.Repeat("1", 65), measure.Millimetre, "is longer than 64 characters"},
	} {
		_, err := measure.ParseLength(tt.text, tt.bare)
		checkSlip(t, tt.text, err, tt.want)
	}
}

// And of every text that is no angle.
func TestSlipsOfAngles(t *testing.T) {
	for _, tt := range []struct{ text, want string }{
		{"1/6", "can be read in two ways: the slope 1:6 (9.46°) or 1/6 of a degree"},
		{"3/1", "can be read in two ways: the slope 3:1 (71.57°) or 3/1 of a degree"},
		{"½", "can be read in two ways: the slope 1:2 (26.57°) or 1/2 of a degree"},
		{"14 30", "can be read in two ways: 14°30' or 14.30°"},
		{"14°30", "can be read in two ways: 14°30' or 14.30°"},
		{"14deg 30", "can be read in two ways: 14°30' or 14.30°"},
		{"14,5", "can be read in two ways: 14.5 or 14 and 5"},
		{"14,5°", "can be read in two ways: 14.5° or 14 and 5°"},
		{`14'30"`, `can be read in two ways: 14°30' or 0°14'30"`},
		{"14'30", `can be read in two ways: 14°30' or 0°14'30"`},
		{"14'", "can be read in two ways: 0°14' or 14°"},

		{"", "is empty"},
		{"14d", "is not an angle"},
		{"0.25rad", "is not an angle"},
		{"10%", "is not an angle"},
		{"1 in 6", "is not an angle"}, // along the base or along the slope
		{"1:2:3", "is not an angle"},
		{"1:-6", "is not an angle"},
		{`14°15"`, "is not an angle"},
		{"14.5°30'", "is not an angle"},
		{"NaN", "is not an angle"},
		{"-Inf", "is not an angle"},
		{"°", "is not an angle"},
		{"1e2", "has a power of ten"},
		{"0x10", "is not a decimal figure"},
		{"14 300", "has more than one figure, and nothing to tell them apart"},
		{"14 30 15", "has more than one figure, and nothing to tell them apart"},
		{"1.5 1/4", "mixes a decimal with a fraction"},
		{"1:0", "is a slope over no base"},
		{"0:0", "is a slope over no base"},
		{"1/0:6", "divides by 0"},
		{"1:1/0", "divides by 0"},
		{"1/0°", "divides by 0"},
		{"14°60'", "has 60 or more minutes or seconds"},
		{`14°30'60"`, "has 60 or more minutes or seconds"},
		{`14°30.5'15"`, "has part of a minute as well as seconds"},
		{"360", "is 360° or more"},
		{"-360°", "is 360° or more"},
		{"359.99999999999999999", "is 360° or more"},
		{strings.Repeat("1", 65), "is longer than 64 characters"},
	} {
		_, err := measure.ParseAngle(tt.text)
		checkSlip(t, tt.text, err, tt.want)
	}
	_, err := measure.ParseUnit("cm")
	checkSlip(t, "cm", err, "is not a unit")
}

func checkSlip(t *testing.T, text string, err error, want string) {
	t.Helper()
	var bad *measure.ParseError
	if !errors.As(err, &bad) {
		t.Errorf("%q: %v", text, err)
		return
	}
	line, hint := Fault(err, measure.Millimetre)
	if line != bad.Quoted()+" "+want {
		t.Errorf("%q: got %s, want %s", text, line, want)
	}
	if !strings.Contains(hint, " ") || strings.Contains(hint, "%!") {
		t.Errorf("%q: hint %q", text, hint)
	}
}

// What to write instead, where that goes by the text.
func TestSlipHints(t *testing.T) {
	for text, want := range map[string]string{
		"25 1/4": "write 25 1/4in or 25.25 mm", "1,250": "use a point for decimals, and nothing between thousands", "1,5": "use a point for decimals",
		"100000": "a length without a unit is read as mm", "2' 12\"": `write 3' 3" or 39in`, "12 34": `write 640, 64cm, 25 1/4in or 2' 1 1/4"`,
	} {
		_, err := measure.ParseLength(text, measure.Millimetre)
		if _, hint := Fault(err, measure.Millimetre); hint != want {
			t.Errorf("%q: got %q, want %q", text, hint, want)
		}
	}
	for text, want := range map[string]string{
		"1/6": "write 1:6 or 1/6°", "14 30": "write the minutes with their mark: 14°30'", "14'30": "write the degrees with their mark: 14°30'", "14'": "write the degrees with their mark: 0°14'",
	} {
		_, err := measure.ParseAngle(text)
		if _, hint := Fault(err, measure.Millimetre); hint != want {
			t.Errorf("%q: got %q, want %q", text, hint, want)
		}
	}
}
