package measure

import (
	"math"
	"math/big"
	"strings"
)

const degreeMark = `(?:°|deg\.?|degree|degrees)`

var (
	degreesForm   = form(figure + ` ?(` + degreeMark + `)?`)
	sexagesimal   = form(`(\d+) ?` + degreeMark + ` ?(` + number + `) ?'(?: ?(` + number + `) ?")?`)
	slopeForm     = form(figure + ` ?: ?` + figure)
	minutesForm   = form(`(\d+) ?'(?: ?(\d+) ?"?)?`)
	unmarkedAngle = form(`(\d+)(?: ?` + degreeMark + ` ?| )(\d{1,2})`)
	fractionForm  = form(`\d+/\d+`)
)

// ParseAngle reads an angle as makers write it and returns it in radians.
//
//	14.5   14.5deg   14.5°   22½°      degrees
//	14°30'   14° 30′ 15″   14°30.5'   degrees, minutes, seconds
//	1:6   3:12   1.5:12               rise over base: atan(rise/base)
//
// What can be read in two ways is refused with both readings: 1/6, 14 30,
// 14,5 and 14'30". The angle may be negative; it is under 360°.
// Every error is a *ParseError.
func ParseAngle(s string) (float64, error) {
	slope := false
	v, err := parse(s, func(text string) (deg *big.Rat, f *fault) {
		if deg, ok := plainNumber(text); ok {
			return deg, nil
		}
		if m := slopeForm().FindStringSubmatch(text); m != nil {
			slope = true
			return ratio(m[1], m[2])
		}
		return degrees(text)
	})
	switch {
	case err != nil:
		return 0, err
	case slope:
		return math.Atan(v), nil
	case math.Abs(v) >= 360:
		return 0, wrong("full-turn", "less-than-turn").of(s)
	}
	return Radians(v), nil
}

// ratio divides the rise of a slope by its base.
func ratio(rise, base string) (*big.Rat, *fault) {
	r, f := exact(rise)
	if f != nil {
		return nil, f
	}
	b, f := exact(base)
	if f != nil {
		return nil, f
	}
	if b.Sign() == 0 {
		return nil, wrong("no-base", "upright")
	}
	return r.Quo(r, b), nil
}

// degrees reads a cleaned text without its sign.
func degrees(text string) (*big.Rat, *fault) {
	m := degreesForm().FindStringSubmatch(text)
	if m == nil {
		if m = sexagesimal().FindStringSubmatch(text); m != nil {
			return degreesMinutes(m[1], m[2], m[3])
		}
		return nil, angleSlip(text)
	}
	deg, f := exact(m[1])
	if f == nil && m[2] == "" && fractionForm().MatchString(m[1]) {
		return nil, bareRatio(m[1], deg)
	}
	return deg, f
}

// degreesMinutes adds whole degrees, minutes and, unless empty, seconds. A
// decimal stands in the last of them only.
func degreesMinutes(deg, minutes, seconds string) (*big.Rat, *fault) {
	if seconds == "" {
		seconds = "0"
	} else if strings.Contains(minutes, ".") {
		return nil, wrong("part-of-minute", "minutes-or-seconds")
	}
	d, _ := exact(deg)
	m, _ := exact(minutes)
	s, _ := exact(seconds)
	sixty := big.NewRat(60, 1)
	if m.Cmp(sixty) >= 0 || s.Cmp(sixty) >= 0 {
		return nil, wrong("minutes-over", "sixty")
	}
	m.Add(m, s.Quo(s, sixty))
	return d.Add(d, m.Quo(m, sixty)), nil
}

// bareRatio refuses a fraction that may be a slope or part of a degree.
func bareRatio(text string, value *big.Rat) *fault {
	v, _ := value.Float64()
	slope := strings.Replace(text, "/", ":", 1)
	return &fault{slipOf("slope-or-degrees", slope, Angle(math.Atan(v)).Text(Millimetre), text), slipOf("either", slope, text+"°")}
}

// angleSlip explains a text that is no angle.
func angleSlip(text string) *fault {
	if m := unmarkedAngle().FindStringSubmatch(text); m != nil {
		return twoWays(m[1]+"°"+m[2]+"'", m[1]+"."+m[2]+"°", "mark-minutes", m[1]+"°"+m[2]+"'")
	}
	if m := minutesForm().FindStringSubmatch(text); m != nil {
		if m[2] == "" {
			return twoWays("0°"+m[1]+"'", m[1]+"°", "mark-degrees", "0°"+m[1]+"'")
		}
		return twoWays(m[1]+"°"+m[2]+"'", "0°"+m[1]+"'"+m[2]+`"`, "mark-degrees", m[1]+"°"+m[2]+"'")
	}
	f := slip(text)
	switch {
	case f == nil:
		return wrong("no-angle", "angles")
	case f.hint.ID == "":
		f.hint = slipOf("angles")
	}
	return f
}
