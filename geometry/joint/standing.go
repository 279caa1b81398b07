package joint

import (
	"math"
)

// StandardGravity in m/s² is exact (3rd General Conference on Weights and
// Measures, 1901).
const StandardGravity = 9.80665

// EdgeInset is how far in from the rim a stability test presses, in
// mm (ISO 7172).
const EdgeInset = 50.0

// A Standing is a piece on equal feet, evenly spaced on a circle about the
// plumb line through its centre of mass. It tips about the line through two
// neighbouring feet. It has a mass and three feet at least.
type Standing struct {
	Feet       int
	FootRadius float64 // of the circle through the feet, mm
	Rim        float64 // from the centre to the edge of the top, square to the line of two feet, mm
	Mass       float64 // of the whole piece, kg
}

// TippingLine returns the distance from the centre to the line through two
// neighbouring feet: FootRadius·cos(π/n), half of the radius for three feet
// and 0.71 of it for four.
func (s Standing) TippingLine() float64 { return s.FootRadius * math.Cos(math.Pi/float64(s.Feet)) }

// Overhang returns how far the rim stands outside the tipping line. It is
// negative where it stands inside.
func (s Standing) Overhang() float64 { return s.Rim - s.TippingLine() }

// TippingLoad returns the mass in kg that, set down inset mm in from the rim,
// is about to tip the piece: Mass·a/(o − inset), where a is TippingLine and o
// is Overhang. Where the load does not stand outside the tipping line nothing
// tips the piece, and TippingLoad is infinite.
func (s Standing) TippingLoad(inset float64) float64 {
	arm := s.Overhang() - inset
	if arm <= 0 {
		return math.Inf(1)
	}
	return s.Mass * s.TippingLine() / arm
}

// TippingForce returns the same as a vertical force in N. With EdgeInset it is
// the force that the test of ISO 7172 raises until a far foot lifts; what a
// piece must bear is not said here.
func (s Standing) TippingForce(inset float64) float64 { return StandardGravity * s.TippingLoad(inset) }

// NeverTips reports whether no load on the top can tip the piece: the rim
// stands nowhere outside the tipping line.
func (s Standing) NeverTips() bool { return s.Overhang() <= 0 }
