package measure

import (
	"encoding/csv"
	"fmt"
	"math"
	"os"
	"strconv"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

func TestText(t *testing.T) {
	inch := func(in float64) Quantity { return Length(in * MillimetresPerInch) }
	tests := []struct {
		q        Quantity
		mm, inch string
	}{
		{Length(0), "0 mm", "0 in"},
		{Length(math.Copysign(0, -1)), "0 mm", "0 in"},
		{Length(-0.004), "0 mm", "0 in"},
		{Length(640), "640 mm", "25 13/64 in (25.197)"},
		{Length(32.3316), "32.33 mm", "1 17/64 in (1.273)"},
		{Length(-3.5), "-3.5 mm", "-9/64 in (-0.138)"},
		{inch(25.25), "641.35 mm", "25 1/4 in"},
		{inch(-25.25), "-641.35 mm", "-25 1/4 in"},
		{inch(-0.5), "-12.7 mm", "-1/2 in"},
		{inch(1.155), "29.34 mm", "1 5/32 in (1.155)"},
		{inch(12), "304.8 mm", "12 in"},
		{inch(12.003), "304.88 mm", "12 in (12.003)"},
		{inch(11.999), "304.77 mm", "12 in (11.999)"},
		{inch(0.62501), "15.88 mm", "5/8 in"}, // the decimal would say no more
		{inch(0.46901), "11.91 mm", "15/32 in (0.469)"},
		{inch(1. / 64), "0.4 mm", "1/64 in"},
		{inch(0.005), "0.13 mm", "0.005 in"},
		{inch(-0.005), "-0.13 mm", "-0.005 in"},
		{inch(0.008), "0.2 mm", "1/64 in (0.008)"},
		{Angle(Radians(14.5)), "14.5°", "14.5°"},
		{Angle(math.Atan(1. / 6)), "9.46°", "9.46°"},
		{Angle(-1e-9), "0°", "0°"},
		{Area(2500.04), "2500 mm²", "3.88 sq in"},
		{Area(9999), "9999 mm²", "15.5 sq in"},
		{Area(12_340), "123.4 cm²", "19.13 sq in"},
		{Area(1.234e6), "1.234 m²", "1912.7 sq in"},
		{Area(645.16), "645.2 mm²", "1 sq in"},
		{Volume(16387.064), "16.39 cm³", "1 cu in"},
		{Volume(1.234e7), "12.34 litres", "753.03 cu in"},
		{Volume(2.5e9), "2.5 m³", "152559.36 cu in"},
		{Mass(15), "15 kg", "33.1 lb (15 kg)"},
		{Mass(0.45359237), "0.5 kg", "1 lb (0.5 kg)"},
		{Force(588.6), "588.6 N", "132.3 lbf (588.6 N)"},
		{Number(3), "3", "3"},
		{Number(2. / 3), "0.667", "0.667"},
		{Length(math.NaN()), "NaN mm", "NaN in"},
		{Length(math.Inf(1)), "+Inf mm", "+Inf in"},
	}
	for _, tt := range tests {
		if got := tt.q.Text(Millimetre); got != tt.mm {
			t.Errorf("%v.Text(mm) = %q, want %q", tt.q, got, tt.mm)
		}
		if got := tt.q.Text(Inch); got != tt.inch {
			t.Errorf("%v.Text(in) = %q, want %q", tt.q, got, tt.inch)
		}
	}
}

func TestBare(t *testing.T) {
	tests := []struct {
		q    Quantity
		u    Unit
		want string
	}{
		{Length(32.3316), Millimetre, "32.33"},
		{Length(1.155 * 25.4), Inch, "1 5/32 (1.155)"},
		{Length(0.127), Inch, "0.005"},
		{Angle(Radians(14.5)), Inch, "14.5°"},
		{Mass(15), Millimetre, "15 kg"},
		{Number(4), Millimetre, "4"},
	}
	for _, tt := range tests {
		if got := tt.q.Bare(tt.u); got != tt.want {
			t.Errorf("%v.Bare(%v) = %q, want %q", tt.q, tt.u, got, tt.want)
		}
	}
}

func TestJSON(t *testing.T) {
	tests := []struct {
		q     Quantity
		value float64
		unit  string
	}{
		{Length(640.1), 640.1, "mm"},
		{Length(0.1 + 0.2), 0.3, "mm"},
		{Length(-1e-12), 0, "mm"},
		{Angle(Radians(14.5)), 14.5, "deg"},
		{Area(1.2345e12), 1.2345e12, "mm2"},
		{Number(4), 4, ""},
		{Mass(15), 15, "kg"},
		{Force(588.6), 588.6, "N"},
		{Volume(7), 7, "mm3"},
	}
	for _, tt := range tests {
		value, unit := tt.q.JSON()
		if value != tt.value || unit != tt.unit || value == 0 && math.Signbit(value) {
			t.Errorf("%v.JSON() = %v %q, want %v %q", tt.q, value, unit, tt.value, tt.unit)
		}
	}
}

func TestFraction(t *testing.T) {
	for _, tt := range []struct {
		in   float64
		want string
	}{
		{0, "0"}, {0.007, "0"}, {-0.007, "0"}, {0.75, "3/4"}, {-0.75, "-3/4"}, {25.25, "25 1/4"},
		{-25.25, "-25 1/4"}, {3, "3"}, {2.999, "3"}, {63. / 64, "63/64"}, {0.999, "1"},
	} {
		if got := Fraction(tt.in); got != tt.want {
			t.Errorf("Fraction(%v) = %q, want %q", tt.in, got, tt.want)
		}
	}
}

// The source prints to the nearest 1/32 in, so Fraction of the exact rise may
// be 1/64 in away from it, and half a 64th more for its own rounding.
func TestFractionAgainstBevelTable(t *testing.T) {
	f, err := os.Open("testdata/bevel-triangles.csv")
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	r := csv.NewReader(f)
	r.Comment = '#'
	rows, err := r.ReadAll()
	if err != nil || len(rows) < 2 {
		t.Fatalf("%d rows, %v", len(rows), err)
	}
	for _, row := range rows[1:] {
		deg, base := parseFloat(t, row[0]), parseFloat(t, row[1])
		printed, err := ParseLength(row[2], Inch)
		if err != nil {
			t.Fatal(err)
		}
		rise := base * math.Tan(Radians(deg))
		if off := math.Abs(printed/MillimetresPerInch - rise); off > 1./64 {
			t.Errorf("%v° over %v in: %q is read as %v mm, %v in off the exact rise", deg, base, row[2], printed, off)
		}
		written, err := ParseLength(Fraction(rise)+"in", Millimetre)
		if err != nil {
			t.Fatal(err)
		}
		if off := math.Abs(written-printed) / MillimetresPerInch; off > 1./64+1./128 {
			t.Errorf("%v° over %v in: Fraction gives %s, printed is %s", deg, base, Fraction(rise), row[2])
		}
	}
}

func parseFloat(t *testing.T, s string) float64 {
	t.Helper()
	v, err := strconv.ParseFloat(s, 64)
	if err != nil {
		t.Fatal(err)
	}
	return v
}

// withoutDecimal takes the decimal in brackets off a length in inches.
func withoutDecimal(text string) string {
	text, _, _ = strings.Cut(text, " (")
	return text
}

// What is printed is read back as the same length to within half of the
// last division printed; the decimal in brackets to within half a thousandth.
func TestLengthTextRoundTrip(t *testing.T) {
	const dust = 1e-9
	rapid.Check(t, func(t *rapid.T) {
		mm := rapid.Float64Range(-99_990, 99_990).Draw(t, "mm")
		for u, half := range map[Unit]float64{Millimetre: 0.005, Inch: MillimetresPerInch / 128} {
			text := Length(mm).Text(u)
			for _, s := range []string{withoutDecimal(text), withoutDecimal(Length(mm).Bare(u))} {
				got, err := ParseLength(s, u)
				if err != nil || math.Abs(got-mm) > half+dust {
					t.Fatalf("%v mm is printed %q, and %q read as %v, %v", mm, text, s, got, err)
				}
			}
			if _, in, ok := strings.Cut(strings.TrimSuffix(text, ")"), " ("); ok {
				got, err := ParseLength(in, Inch)
				if err != nil || math.Abs(got-mm) > MillimetresPerInch*0.0005+dust {
					t.Fatalf("%v mm is printed %q, and the decimal read as %v, %v", mm, text, got, err)
				}
			}
		}
	})
}

// A length of whole 64ths is printed without a decimal and read back exactly.
func TestSixtyFourthsRoundTrip(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.IntRange(-250_000, 250_000).Draw(t, "64ths")
		mm := float64(n) / 64 * MillimetresPerInch
		text := Length(mm).Text(Inch)
		got, err := ParseLength(text, Millimetre)
		if err != nil || math.Abs(got-mm) > 1e-9 {
			t.Fatalf("%d/64 in is printed %q and read as %v, %v", n, text, got, err)
		}
	})
}

func TestAngleTextRoundTrip(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		deg := rapid.Float64Range(-359.99, 359.99).Draw(t, "deg")
		text := Angle(Radians(deg)).Text(Millimetre)
		got, err := ParseAngle(text)
		if err != nil || math.Abs(Degrees(got)-deg) > 0.005+1e-9 {
			t.Fatalf("%v° is printed %q and read as %v, %v", deg, text, got, err)
		}
	})
}

// Degrees, minutes and seconds, feet and inches: the parts add up.
func TestPartsAddUp(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d, m, s := rapid.IntRange(0, 359).Draw(t, "d"), rapid.IntRange(0, 59).Draw(t, "m"), rapid.IntRange(0, 59).Draw(t, "s")
		text := fmt.Sprintf(`%d°%d'%d"`, d, m, s)
		got, err := ParseAngle(text)
		if want := float64(d*3600+m*60+s) / 3600; err != nil || math.Abs(Degrees(got)-want) > 1e-12*360 {
			t.Fatalf("%s = %v°, %v, want %v°", text, Degrees(got), err, want)
		}
		feet, num := rapid.IntRange(0, 300).Draw(t, "feet"), rapid.IntRange(0, 12*64-1).Draw(t, "64ths")
		text = fmt.Sprintf(`%d' %s"`, feet, Fraction(float64(num)/64))
		got, err = ParseLength(text, Millimetre)
		if want := (float64(feet)*12 + float64(num)/64) * MillimetresPerInch; err != nil || math.Abs(got-want) > 1e-9 {
			t.Fatalf("%s = %v, %v, want %v", text, got, err, want)
		}
	})
}
