package piece

import (
	"cmp"
	"math"

	"rodsheet/geometry/joint"
	"rodsheet/geometry/solid"
	"rodsheet/templates/piece/design"
)

// usualDensity in kg/m³ stands in for a wood of which nothing is known: a
// middling hardwood (common practice, no source). A design that was read from
// a file always has its density.
const usualDensity = 700.0

// DensityOf returns that of the wood of a design in kg/m³: as given, or that of the
// species.
func DensityOf(d design.Design) float64 {
	if d.Wood.Density > 0 {
		return d.Wood.Density
	}
	wood, _ := d.Wood.Known()
	return cmp.Or(wood.Density, usualDensity)
}

// Density is that of the design of the piece.
func (p Piece) Density() float64 { return DensityOf(p.Design) }

// FrameMass returns the mass in kg of stretchers and legs, given one of each,
// and of pads turned from wood. Bought bumpers are not counted.
func (p Piece) FrameMass(stretcher, leg solid.Part) float64 {
	each := stretcher.Volume() + leg.Volume()
	if p.Design.Top.PadHeight() > 0 && !p.Design.Top.Pads.Bumpers {
		each += math.Pi / 4 * p.Design.Top.Pads.Diameter * p.Design.Top.Pads.Diameter * p.Design.Top.Pads.Height
	}
	return joint.Mass(float64(p.Frame.Ring.Sides)*each, p.Density())
}

// TopMass returns the mass of the top in kg, 0 where there is none.
func (p Piece) TopMass() float64 {
	switch p.Design.Top.Kind {
	case design.GlassTop:
		return p.Pane().Mass()
	case design.WoodTop:
		return joint.Mass(p.TopArea()*p.Design.Top.Thickness, p.Density())
	}
	return 0
}

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
