package piece

import (
	"math"

	"rodsheet/geometry/joint"
	"rodsheet/templates/piece/design"
)

// A Swing is by how much a width changes over the stated change of moisture, for
// a board cut radially and for one cut tangentially.
type Swing struct{ Radial, Tangential float64 }

// Swings returns that of so many mm of width.
func (p Piece) Swings(wood design.WoodSpecies, width float64) Swing {
	change := func(coefficient float64) float64 {
		return joint.Movement{Width: width, Coefficient: coefficient, From: p.Design.Wood.MoistureFrom, To: p.Design.Wood.MoistureTo}.Change()
	}
	return Swing{change(wood.Radial), change(wood.Tangential)}
}

// Most returns the larger change, sign dropped.
func (s Swing) Most() float64 { return math.Max(math.Abs(s.Radial), math.Abs(s.Tangential)) }
