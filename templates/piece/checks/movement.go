package checks

import (
	"math"

	"rodsheet/geometry/measure"
	"rodsheet/templates/piece"
	"rodsheet/templates/piece/design"
)

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
		g.moves(p, wood, "movement.top-width", p.TopWidth())
	}
	g.mind(p, wood)
	return g
}

// moves adds the change of a size across the grain.
func (g *Group) moves(p piece.Piece, wood design.WoodSpecies, id measure.ID, width float64) {
	s := p.Swings(wood, width)
	g.add(id+".quarter-sawn", measure.Length(s.Radial))
	g.add(id+".flat-sawn", measure.Length(s.Tangential))
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
	lap := p.Swings(wood, p.Frame.Ring.Width).Most()
	note("laps", lap > felt, lap)
	across := math.Max(p.Frame.Ring.Depth, p.Frame.Leg.Breadth)
	note("bridle", across > widestGlue, across, p.Swings(wood, across).Most(), widestGlue)
	if p.Design.Top.Kind == design.WoodTop {
		top := p.Swings(wood, p.TopWidth()).Most()
		note("top", top > felt, top)
	}
}
