package measure

import (
	"errors"
	"fmt"
	"math"
	"strings"
	"testing"
)

// checkError is what every refusal owes its reader: one short line.
func checkError(t *testing.T, text string, err error) {
	var e *ParseError
	if !errors.As(err, &e) || e.Text != text || e.Reason.ID == "" || e.Hint.ID == "" {
		t.Fatalf("%q: %#v", text, err)
	}
	if line := err.Error() + fmt.Sprint(e.Hint.Args); strings.ContainsAny(line, "\n\r\x1b") || len(line) > 1000 {
		t.Fatalf("%q: %q", text, line)
	}
}

func FuzzParseLength(f *testing.F) {
	for _, s := range []string{
		"640", "640mm", "64 cm", "0.64m", "25-1/4in", "25 1/4", "2' 1 1/4\"", "2ft 1 1/4in", "1' 6", "¼″", "-½",
		"1,5", "1,250", "1.5 1/4", "1/0", "1e300", "NaN", "0x1p3", "1_0", "2'-0\"", "\xff", "99999.999",
	} {
		f.Add(s, true)
		f.Add(s, false)
	}
	f.Fuzz(func(t *testing.T, s string, inch bool) {
		bare := Millimetre
		if inch {
			bare = Inch
		}
		mm, err := ParseLength(s, bare)
		if err != nil {
			checkError(t, s, err)
			return
		}
		size := math.Abs(mm)
		if !(size < longestLength) || size > 0 && size < shortestLength || size == 0 && math.Signbit(mm) {
			t.Fatalf("%q = %v", s, mm)
		}
		if size > 99_990 {
			return // printed, it may be rounded up to the limit
		}
		for u, half := range map[Unit]float64{Millimetre: 0.005, Inch: MillimetresPerInch / 128} {
			text := withoutDecimal(Length(mm).Text(u))
			again, err := ParseLength(text, bare)
			if err != nil || math.Abs(again-mm) > half+1e-9 {
				t.Fatalf("%q = %v, printed %q, read as %v, %v", s, mm, text, again, err)
			}
		}
	})
}

func FuzzParseAngle(f *testing.F) {
	for _, s := range []string{
		"14.5", "14.5deg", "14.5°", "14°30'", "14°30′15″", "1:6", "3½:12", "22½", "-1:6", "1/6", "14 30", "14'30\"",
		"14,5", "1:0", "1/0:1", "359.999", "NaN", "1e9", "14d", "\xff",
	} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, s string) {
		rad, err := ParseAngle(s)
		if err != nil {
			checkError(t, s, err)
			return
		}
		if !(math.Abs(rad) <= 2*math.Pi) || rad == 0 && math.Signbit(rad) {
			t.Fatalf("%q = %v", s, rad)
		}
		if math.Abs(Degrees(rad)) > 359.99 {
			return // printed, it may be rounded up to the limit
		}
		text := Angle(rad).Text(Millimetre)
		again, err := ParseAngle(text)
		if err != nil || math.Abs(Degrees(again)-Degrees(rad)) > 0.005+1e-9 {
			t.Fatalf("%q = %v, printed %q, read as %v, %v", s, rad, text, again, err)
		}
	})
}
