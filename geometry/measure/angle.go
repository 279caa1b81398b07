package measure

import (
	"math"
	"math/big"
	"strings"
)

const angleHint = `write 14.5, 14°30' or, rise over base, 1:6`

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
		return 0, &ParseError{s, "is 360° or more", "write less than one turn"}
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
		return nil, &fault{"is a slope over no base", "write 90 for upright"}
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
		return nil, &fault{"has part of a minute as well as seconds", `write 14°30.5' or 14°30'30"`}
	}
	d, _ := exact(deg)
	m, _ := exact(minutes)
	s, _ := exact(seconds)
	sixty := big.NewRat(60, 1)
	if m.Cmp(sixty) >= 0 || s.Cmp(sixty) >= 0 {
		return nil, &fault{"has 60 or more minutes or seconds", `write 15°10', not 14°70'`}
	}
	m.Add(m, s.Quo(s, sixty))
	return d.Add(d, m.Quo(m, sixty)), nil
}

// bareRatio refuses a fraction that may be a slope or part of a degree.
func bareRatio(text string, value *big.Rat) *fault {
	v, _ := value.Float64()
	slope := strings.Replace(text, "/", ":", 1)
	return twoWays("the slope "+slope+" ("+Angle(math.Atan(v)).Text(Millimetre)+")",
		text+" of a degree", "write "+slope+" or "+text+"°")
}

// angleSlip explains a text that is no angle.
func angleSlip(text string) *fault {
	if m := unmarkedAngle().FindStringSubmatch(text); m != nil {
		return twoWays(m[1]+"°"+m[2]+"'", m[1]+"."+m[2]+"°", "write the minutes with their mark: "+m[1]+"°"+m[2]+"'")
	}
	if m := minutesForm().FindStringSubmatch(text); m != nil {
		if m[2] == "" {
			return twoWays("0°"+m[1]+"'", m[1]+"°", "write the degrees with their mark: 0°"+m[1]+"'")
		}
		return twoWays(m[1]+"°"+m[2]+"'", "0°"+m[1]+"'"+m[2]+`"`, "write the degrees with their mark: "+m[1]+"°"+m[2]+"'")
	}
	f := slip(text)
	switch {
	case f == nil:
		return &fault{"is not an angle", angleHint}
	case f.hint == "":
		f.hint = angleHint
	}
	return f
}
