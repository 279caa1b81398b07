package measure

import "math"

// A Kind says what a Quantity measures, and so in which unit it is kept.
type Kind uint8

const (
	KindLength Kind = iota // mm
	KindAngle              // rad
	KindArea               // mm²
	KindNumber             // 1
	KindMass               // kg
	KindForce              // N
	KindVolume             // mm³
)

// A Quantity is a figure together with what it measures.
type Quantity struct {
	Kind  Kind
	Value float64
}

func Length(mm float64) Quantity  { return Quantity{KindLength, mm} }
func Angle(rad float64) Quantity  { return Quantity{KindAngle, rad} }
func Area(mm2 float64) Quantity   { return Quantity{KindArea, mm2} }
func Number(n float64) Quantity   { return Quantity{KindNumber, n} }
func Mass(kg float64) Quantity    { return Quantity{KindMass, kg} }
func Force(n float64) Quantity    { return Quantity{KindForce, n} }
func Volume(mm3 float64) Quantity { return Quantity{KindVolume, mm3} }

// Finite reports whether the value is neither infinite nor NaN.
func (q Quantity) Finite() bool { return !math.IsInf(q.Value, 0) && !math.IsNaN(q.Value) }

// The avoirdupois pound in kg and the pound-force in N are exact: the pound
// agreed in 1959 (addendum to NBS Circular 572), and the same under standard
// gravity, 9.80665 m/s².
const (
	kilogramsPerPound = 0.45359237
	newtonsPerPound   = kilogramsPerPound * 9.80665
)

// Text returns the figure for printing, with its unit: "640 mm", "9.46°".
//
// Lengths in inches are given to the nearest 1/64 in; where that is not the
// length itself the decimal follows: "1 5/32 in (1.155)". Mass and force in
// inch drawings are in pounds, with the metric figure beside.
func (q Quantity) Text(u Unit) string {
	switch q.Kind {
	case KindLength:
		return lengthText(q.Value, u, " "+u.String())
	case KindAngle:
		return decimal(Degrees(q.Value), 2) + "°"
	case KindArea:
		return areaText(q.Value, u)
	case KindMass:
		return poundsText(q.Value, kilogramsPerPound, u, " lb", " kg")
	case KindForce:
		return poundsText(q.Value, newtonsPerPound, u, " lbf", " N")
	case KindVolume:
		return volumeText(q.Value, u)
	}
	return decimal(q.Value, 3)
}

// Bare is Text without the unit of a length, for tables whose head names it.
// The other kinds keep their units, which change with size or stand as a mark.
func (q Quantity) Bare(u Unit) string {
	if q.Kind == KindLength {
		return lengthText(q.Value, u, "")
	}
	return q.Text(u)
}

// fine is Text for telling two nearly equal quantities apart: so many decimals
// and no fractions.
func (q Quantity) fine(u Unit, places int) string {
	switch inches := u == Inch; {
	case q.Kind == KindLength && inches:
		return decimal(q.Value/MillimetresPerInch, places) + " in"
	case q.Kind == KindLength:
		return decimal(q.Value, places) + " mm"
	case q.Kind == KindAngle:
		return decimal(Degrees(q.Value), places) + "°"
	case q.Kind == KindMass && inches:
		return decimal(q.Value/kilogramsPerPound, places) + " lb"
	case q.Kind == KindMass:
		return decimal(q.Value, places) + " kg"
	case q.Kind == KindForce && inches:
		return decimal(q.Value/newtonsPerPound, places) + " lbf"
	case q.Kind == KindForce:
		return decimal(q.Value, places) + " N"
	case q.Kind == KindNumber:
		return decimal(q.Value, places)
	}
	return q.Text(u)
}

// Apart returns the texts of two quantities. Where they would be printed alike and are
// not, both have as many decimals as tell them apart, up to six.
func Apart(a, b Quantity, u Unit) (string, string) {
	for places := 1; a.Text(u) == b.Text(u) && places <= 6; places++ {
		if x, y := a.fine(u, places), b.fine(u, places); x != y {
			return x, y
		}
	}
	return a.Text(u), b.Text(u)
}

// JSON returns the value and the name of its unit for other programs: mm, deg,
// mm2, kg, N, mm3, or no unit for a number. Nine decimals are kept, so that
// 14.5° does not become 14.499999999999998.
func (q Quantity) JSON() (value float64, unit string) {
	units := [...]string{KindLength: "mm", KindAngle: "deg", KindArea: "mm2", KindNumber: "", KindMass: "kg", KindForce: "N", KindVolume: "mm3"}
	if value = q.Value; q.Kind == KindAngle {
		value = Degrees(value)
	}
	return nine(value), units[q.Kind]
}

// nine rounds v to nine decimals. Above 1e6 a float64 holds no more than
// that, and v stays as it is. The + 0 turns -0 into 0.
func nine(v float64) float64 {
	if !(math.Abs(v) < 1e6) {
		return v
	}
	return math.Round(v*1e9)/1e9 + 0
}
