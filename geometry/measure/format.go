package measure

import (
	"fmt"
	"math"
	"strconv"
	"strings"
)

// decimal writes v rounded to so many places, without trailing zeros and
// never as "-0". Halves go away from 0, a half that arithmetic has made a hair smaller too:
// an eighth of an inch is 3.18 mm however it was reckoned.
func decimal(v float64, places int) string {
	v += math.Copysign(1e-6*math.Pow10(-places), v)
	s := strconv.FormatFloat(v, 'f', places, 64)
	if strings.Contains(s, ".") {
		s = strings.TrimRight(strings.TrimRight(s, "0"), ".")
	}
	if s == "-0" {
		return "0"
	}
	return s
}

// sixtyFourths is the finest division of a maker's rule.
const sixtyFourths = 64

// Fraction writes inches to the nearest 1/64, in lowest terms: "25 1/4".
func Fraction(in float64) string {
	parts := math.Round(math.Abs(in) * sixtyFourths)
	if parts == 0 {
		return "0"
	}
	whole := math.Floor(parts / sixtyFourths)
	num, den := int(parts-whole*sixtyFourths), sixtyFourths
	for num > 0 && num%2 == 0 {
		num, den = num/2, den/2
	}
	sign := ""
	if in < 0 {
		sign = "-"
	}
	switch {
	case num == 0:
		return sign + decimal(whole, 0)
	case whole == 0:
		return fmt.Sprintf("%s%d/%d", sign, num, den)
	}
	return fmt.Sprintf("%s%s %d/%d", sign, decimal(whole, 0), num, den)
}

// lengthText writes mm in unit u, followed by the unit's name as given.
func lengthText(mm float64, u Unit, name string) string {
	if u != Inch || !Length(mm).Finite() {
		return decimal(mm, 2) + name
	}
	in := mm / MillimetresPerInch
	nearest := math.Round(in*sixtyFourths) / sixtyFourths
	switch three := math.Round(in*1000) / 1000; {
	case nearest == 0:
		return decimal(in, 3) + name
	case same(in, nearest) || same(three, nearest):
		return Fraction(in) + name
	}
	return Fraction(in) + name + " (" + decimal(in, 3) + ")"
}

// same reports whether two lengths in inches differ by no more than arithmetic
// does: a millionth.
func same(a, b float64) bool { return math.Abs(a-b) <= 1e-6 }

// areaText takes the unit in which the figure has one to five digits before
// the point.
func areaText(mm2 float64, u Unit) string {
	switch size := math.Abs(mm2); {
	case u == Inch:
		return decimal(mm2/(MillimetresPerInch*MillimetresPerInch), 2) + " sq in"
	case size < 1e4:
		return decimal(mm2, 1) + " mm²"
	case size < 1e6:
		return decimal(mm2/1e2, 1) + " cm²"
	}
	return decimal(mm2/1e6, 3) + " m²"
}

// volumeText is areaText for volumes.
func volumeText(mm3 float64, u Unit) string {
	const cubicInch = MillimetresPerInch * MillimetresPerInch * MillimetresPerInch
	switch size := math.Abs(mm3); {
	case u == Inch && size < cubicInch:
		return decimal(mm3/cubicInch, 3) + " cu in"
	case u == Inch:
		return decimal(mm3/cubicInch, 2) + " cu in"
	case size < 1e6:
		return decimal(mm3/1e3, 2) + " cm³"
	case size < 1e9:
		return decimal(mm3/1e6, 2) + " litres"
	}
	return decimal(mm3/1e9, 3) + " m³"
}

// poundsText writes a metric figure, in inch drawings behind its pounds.
func poundsText(v, perPound float64, u Unit, pounds, metric string) string {
	text := decimal(v, 1) + metric
	if u == Inch {
		return decimal(v/perPound, 1) + pounds + " (" + text + ")"
	}
	return text
}
