// Package measure reads and writes lengths, angles and the other figures of a
// drawing the way makers write them.
//
// Inside the program lengths are in millimetres and angles in radians; inches,
// feet, degrees and slopes exist only in what is read and what is printed.
package measure

import (
	"fmt"
	"math"
)

// MillimetresPerInch is exact: the yard agreed in 1959, published in the
// addendum to NBS Circular 572.
const MillimetresPerInch = 25.4

// A Unit is the unit of length in which figures are read and printed.
type Unit uint8

const (
	Millimetre Unit = iota
	Inch
)

// ParseUnit reads "mm" or "in".
func ParseUnit(s string) (Unit, error) {
	for _, u := range []Unit{Millimetre, Inch} {
		if s == u.String() {
			return u, nil
		}
	}
	return 0, wrong("no-unit", "mm-or-in").of(s)
}

func (u Unit) String() string {
	if u > Inch {
		return fmt.Sprintf("Unit(%d)", uint8(u))
	}
	return [...]string{Millimetre: "mm", Inch: "in"}[u]
}

// Radians turns degrees into radians.
func Radians(deg float64) float64 { return deg * (math.Pi / 180) }

// Degrees turns radians into degrees.
func Degrees(rad float64) float64 { return rad * (180 / math.Pi) }

// Round returns a length that a shop takes round, in mm: so many millimetres where
// figures are in millimetres, so many inches where they are in inches. The two are
// near each other and neither is the other one converted.
func (u Unit) Round(mm, in float64) float64 {
	if u == Inch {
		return in * MillimetresPerInch
	}
	return mm
}
