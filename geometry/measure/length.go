package measure

import (
	"math"
	"math/big"
	"strings"
)

// Limits of a length in mm. What lies outside is a slip, not furniture.
const (
	longestLength  = 100_000 // 100 m; not itself allowed
	shortestLength = 0.001   // the least length but 0
)

const (
	inchMark = `(?:"|in\.?|inch|inches)`
	footMark = `(?:'|ft\.?|foot|feet)`
)

var (
	lengthForm     = form(figure + ` ?([^\d\s.,:;/()_+-]+\.?)?`)
	feetInchesForm = form(figure + ` ?` + footMark + `(?: ?- ?| )?` + figure + ` ?` + inchMark + `?`)
	wholeForm      = form(`\d+`)
	twoLengthsForm = form(figure + ` ?([a-z]+|'|") ?` + figure + `(?: ?(?:[a-z]+|'|"))?`)
)

// ParseLength reads a length as makers write it and returns it in mm.
//
//	640   640mm   64 cm   0.64m              the bare unit where none stands
//	25 1/4in   25-1/4"   25¼″   .5in   3/4in
//	2' 1 1/4"   2ft 1 1/4in   2'-1"   2' 6   inches after feet
//
// What can be read in two ways is refused with both readings: a decimal
// comma, and a fraction without a unit where the bare unit is the millimetre.
// The length may be negative; it is under 100 m, and 0 or at least 0.001 mm.
// Every error is a *ParseError.
func ParseLength(s string, bare Unit) (float64, error) {
	mm, err := parse(s, func(text string) (*big.Rat, *fault) { return length(text, bare) })
	if err != nil {
		return 0, err
	}
	switch size := math.Abs(mm); {
	case size >= longestLength:
		return 0, &ParseError{s, slipOf("long"), slipOf("bare-unit", bare.String())}
	case size > 0 && size < shortestLength:
		return 0, &ParseError{s, slipOf("short"), slipOf("bare-unit", bare.String())}
	}
	return mm, nil
}

// length reads a cleaned text without its sign, in mm.
func length(text string, bare Unit) (*big.Rat, *fault) {
	if value, ok := plainNumber(text); ok && bare == Millimetre {
		return value, nil
	} else if ok {
		return value.Mul(value, millimetres(bare.String())), nil
	}
	m := lengthForm().FindStringSubmatch(text)
	if m == nil {
		if m = feetInchesForm().FindStringSubmatch(text); m != nil {
			return feetInches(m[1], m[2])
		}
		return nil, lengthSlip(text)
	}
	value, f := exact(m[1])
	if f != nil {
		return nil, f
	}
	unit := m[2]
	if unit == "" && bare == Millimetre && strings.Contains(m[1], "/") {
		return nil, bareFraction(m[1], value)
	}
	if unit == "" {
		unit = bare.String()
	}
	mm := millimetres(strings.TrimSuffix(unit, "."))
	if mm == nil {
		return nil, &fault{slipOf("unknown-unit", quote(unit)), slipOf("units")}
	}
	return value.Mul(value, mm), nil
}

// millimetres returns the size of a unit, or nil if it is not known.
func millimetres(unit string) *big.Rat {
	switch unit {
	case "mm":
		return big.NewRat(1, 1)
	case "cm":
		return big.NewRat(10, 1)
	case "m":
		return big.NewRat(1000, 1)
	case "in", "inch", "inches", `"`:
		return big.NewRat(254, 10)
	case "ft", "foot", "feet", "'":
		return big.NewRat(12*254, 10)
	}
	return nil
}

// feetInches adds whole feet and less than a foot of inches, in mm.
func feetInches(feet, inches string) (*big.Rat, *fault) {
	if !wholeForm().MatchString(feet) {
		return nil, wrong("part-of-foot", "feet-or-part")
	}
	in, f := exact(inches)
	if f != nil {
		return nil, f
	}
	if in.Cmp(big.NewRat(12, 1)) >= 0 {
		return nil, wrong("inches-over", "feet-or-inches")
	}
	ft, _ := exact(feet)
	ft.Mul(ft, millimetres("ft"))
	return ft.Add(ft, in.Mul(in, millimetres("in"))), nil
}

// bareFraction refuses a fraction that may be of a millimetre or of an inch.
func bareFraction(text string, value *big.Rat) *fault {
	v, _ := value.Float64()
	asMM, asInches := decimal(v, 2)+" mm", text+" in"
	return twoWays(asMM, asInches+" ("+decimal(v*MillimetresPerInch, 2)+" mm)", "either", text+"in", asMM)
}

// lengthSlip explains a text that is no length.
func lengthSlip(text string) *fault {
	f := slip(text)
	switch {
	case f == nil && twoLengthsForm().MatchString(text):
		return wrong("several-lengths", "feet-and-inches")
	case f == nil:
		return wrong("no-length", "lengths")
	case f.hint.ID == "":
		f.hint = slipOf("lengths")
	}
	return f
}
