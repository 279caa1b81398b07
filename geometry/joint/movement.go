package joint

import (
	"cmp"
)

// A Movement is how the width of a board across the grain follows the moisture
// in it.
type Movement struct {
	Width       float64 // mm
	Coefficient float64 // change of width as a share of it, for each per cent of moisture
	From, To    float64 // moisture content, per cent of the dry mass
}

// Limits of moisture in per cent between which a movement is proportional to
// it (USDA, Wood Handbook, FPL-GTR-190, chapter 13).
const (
	MoistureLeast = 6.0
	MoistureMost  = 14.0
)

// mostCoefficient lies well above the most lively wood of the Wood Handbook,
// 0.0046.
const mostCoefficient = 0.01

// Check returns a *measure.BoundError for a figure that the rule does not
// cover.
func (m Movement) Check() error {
	return cmp.Or(
		within("movement.width", m.Width),
		within("movement.coefficient", m.Coefficient),
		within("movement.from", m.From),
		within("movement.to", m.To),
	)
}

// Change returns by how many mm the board becomes wider, negative where it
// shrinks: Width·Coefficient·(To − From).
func (m Movement) Change() float64 { return m.Width * m.Coefficient * (m.To - m.From) }
