package measure

import (
	"math"
	"strings"
	"testing"
)

func TestParseAngle(t *testing.T) {
	atan := func(slope float64) float64 { return math.Atan(slope) * 180 / math.Pi }
	tests := []struct {
		text string
		want float64 // degrees
	}{
		{"14.5", 14.5},
		{"0", 0},
		{"-0", 0},
		{"-14.5", -14.5},
		{"14.5deg", 14.5},
		{"14.5 deg.", 14.5},
		{"14.5 degrees", 14.5},
		{"14.5°", 14.5},
		{"14.5º", 14.5},
		{".5°", 0.5},
		{"22½°", 22.5},
		{"22 1/2", 22.5},
		{"1/2°", 0.5},
		{"14°30'", 14.5},
		{"14° 30′", 14.5},
		{"14°30′15″", 14 + 30./60 + 15./3600},
		{`14deg 30' 15"`, 14 + 30./60 + 15./3600},
		{"14°30'15''", 14 + 30./60 + 15./3600},
		{`14°30'7.5"`, 14 + 30./60 + 7.5/3600},
		{"14°30.5'", 14 + 30.5/60},
		{"-14°30'", -14.5},
		{"0°14'30\"", 14./60 + 30./3600},
		{"1:6", atan(1. / 6)},
		{"1 : 6", atan(1. / 6)},
		{"-1:6", -atan(1. / 6)},
		{"3:12", atan(0.25)},
		{"1.5:12", atan(0.125)},
		{"3½:12", atan(3.5 / 12)},
		{"12:1", atan(12)},
		{"0:6", 0},
		{"359.99", 359.99},
	}
	for _, tt := range tests {
		got, err := ParseAngle(tt.text)
		if err != nil {
			t.Errorf("ParseAngle(%q): %v", tt.text, err)
			continue
		}
		if want := tt.want * math.Pi / 180; math.Abs(got-want) > 1e-15*360 || math.Signbit(got) && got == 0 {
			t.Errorf("ParseAngle(%q) = %v, want %v", tt.text, got, want)
		}
	}
}

// Slopes of roofs, from The Building Trades Pocketbook (International
// Correspondence Schools), "Laying-Out Angles", which prints whole minutes;
// and of dovetails, common practice, no source.
func TestParseAngleSlopes(t *testing.T) {
	tests := []struct {
		slope, angle string
		tolerance    float64 // degrees
	}{
		{"4:12", "18°25'", 2. / 60},
		{"6:12", "26°33'", 2. / 60},
		{"8:12", "33°42'", 2. / 60},
		{"16:12", "53°7'", 2. / 60},
		{"1:6", "9.4623°", 0.00005},
		{"1:8", "7.1250°", 0.00005},
	}
	for _, tt := range tests {
		got, err1 := ParseAngle(tt.slope)
		want, err2 := ParseAngle(tt.angle)
		if err1 != nil || err2 != nil || Degrees(math.Abs(got-want)) > tt.tolerance {
			t.Errorf("%s = %v (%v), want %s = %v (%v)", tt.slope, got, err1, tt.angle, want, err2)
		}
	}
}

func TestParseAngleRefuses(t *testing.T) {
	tests := []struct{ text, want string }{
		{"1/6", "slope-or-degrees 1:6 9.46° 1/6"},
		{"3/1", "slope-or-degrees 3:1 71.57° 3/1"},
		{"½", "slope-or-degrees 1:2 26.57° 1/2"},
		{"14 30", "two-ways 14°30' 14.30°"},
		{"14°30", "two-ways 14°30' 14.30°"},
		{"14deg 30", "two-ways 14°30' 14.30°"},
		{"14,5", "one-or-two 14.5 14 5"},
		{"14,5°", "one-or-two 14.5° 14 5°"},
		{`14'30"`, `two-ways 14°30' 0°14'30"`},
		{"14'30", `two-ways 14°30' 0°14'30"`},
		{"14'", "two-ways 0°14' 14°"},

		{"", "empty"},
		{"14d", "no-angle"},
		{"0.25rad", "no-angle"},
		{"10%", "no-angle"},
		{"1 in 6", "no-angle"}, // along the base or along the slope
		{"1:2:3", "no-angle"},
		{"1:-6", "no-angle"},
		{`14°15"`, "no-angle"},
		{"14.5°30'", "no-angle"},
		{"NaN", "no-angle"},
		{"-Inf", "no-angle"},
		{"°", "no-angle"},
		{"1e2", "power-of-ten"},
		{"0x10", "no-decimal"},
		{"14 300", "several-figures"},
		{"14 30 15", "several-figures"},
		{"1.5 1/4", "decimal-and-fraction"},
		{"1:0", "no-base"},
		{"0:0", "no-base"},
		{"1/0:6", "divides-by-zero"},
		{"1:1/0", "divides-by-zero"},
		{"1/0°", "divides-by-zero"},
		{"14°60'", "minutes-over"},
		{`14°30'60"`, "minutes-over"},
		{`14°30.5'15"`, "part-of-minute"},
		{"360", "full-turn"},
		{"-360°", "full-turn"},
		{"359.99999999999999999", "full-turn"},
		{strings.Repeat("1", 65), "long-text 64"},
	}
	for _, tt := range tests {
		got, err := ParseAngle(tt.text)
		checkRefusal(t, tt.text, got, err, tt.want)
	}
}

func TestRadians(t *testing.T) {
	for _, tt := range []struct{ deg, rad float64 }{
		{0, 0}, {30, math.Pi / 6}, {45, math.Pi / 4}, {90, math.Pi / 2}, {-180, -math.Pi}, {360, 2 * math.Pi},
	} {
		if got := Radians(tt.deg); !near(got, tt.rad) {
			t.Errorf("Radians(%v) = %v, want %v", tt.deg, got, tt.rad)
		}
		if got := Degrees(tt.rad); !near(got, tt.deg) {
			t.Errorf("Degrees(%v) = %v, want %v", tt.rad, got, tt.deg)
		}
	}
}
