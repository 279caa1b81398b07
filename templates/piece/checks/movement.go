package checks

import (
	"math"

	"rodsheet/geometry/joint"
	"rodsheet/geometry/measure"
	"rodsheet/templates/piece"
	"rodsheet/templates/piece/design"
)

// swing is by how much a width changes over the stated change of moisture, for
// a board cut radially and for one cut tangentially.
type swing struct{ radial, tangential float64 }

// swings returns that of so many mm of width.
func swings(p piece.Piece, wood design.WoodSpecies, width float64) swing {
	change := func(coefficient float64) float64 {
		return joint.Movement{Width: width, Coefficient: coefficient, From: p.Design.Wood.MoistureFrom, To: p.Design.Wood.MoistureTo}.Change()
	}
	return swing{change(wood.Radial), change(wood.Tangential)}
}

// most returns the larger change, sign dropped.
func (s swing) most() float64 { return math.Max(math.Abs(s.radial), math.Abs(s.tangential)) }

// movementGroup says what the width of each wooden part does over the stated
// change of moisture. Along the grain wood keeps its length.
func movementGroup(p piece.Piece) Group {
	g := Group{ID: "movement"}
	wood, known := p.Design.Wood.Known()
	if !known {
		g.note("wood-unknown")
		return g
	}
	from, to := p.Design.Wood.MoistureFrom, p.Design.Wood.MoistureTo
	if from == to {
		g.note("no-change")
		return g
	}
	g.Heading = Remark{ID: "movement.of", Figures: []measure.Quantity{measure.Number(from), measure.Number(to)}, Names: []string{wood.Name}}
	r, l := p.Frame.Ring, p.Frame.Leg
	g.moves(p, wood, "movement.stretcher-width", r.Width)
	g.moves(p, wood, "movement.stretcher-depth", r.Depth)
	g.moves(p, wood, "movement.leg-breadth", l.Breadth)
	if l.Thickness != r.Width {
		g.moves(p, wood, "movement.leg-thickness", l.Thickness)
	}
	if p.Design.Top.Kind == design.WoodTop {
		g.moves(p, wood, "movement.top-width", p.TopPanel().Width)
	}
	g.mind(p, wood)
	return g
}

// moves adds the change of a size across the grain.
func (g *Group) moves(p piece.Piece, wood design.WoodSpecies, id measure.ID, width float64) {
	s := swings(p, wood, width)
	g.add(id+".quarter-sawn", measure.Length(s.radial))
	g.add(id+".flat-sawn", measure.Length(s.tangential))
}

// felt is the change in mm from which a fit is felt, and widestGlue the width in
// mm up to which a joint glued across the grain holds (both common practice, no
// source).
const (
	felt       = 0.2
	widestGlue = 75.0
)

// mind notes of each joint whether it minds.
func (g *Group) mind(p piece.Piece, wood design.WoodSpecies) {
	note := func(id measure.ID, minds bool, mm ...float64) {
		if minds {
			id += "-minds"
		}
		g.note(id, lengths(mm...)...)
	}
	lap := swings(p, wood, p.Frame.Ring.Width).most()
	note("laps", lap > felt, lap)
	across := math.Max(p.Frame.Ring.Depth, p.Frame.Leg.Breadth)
	note("bridle", across > widestGlue, across, swings(p, wood, across).most(), widestGlue)
	if p.Design.Top.Kind == design.WoodTop {
		top := swings(p, wood, p.TopPanel().Width).most()
		note("top", top > felt, top)
	}
}
