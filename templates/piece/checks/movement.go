package checks

import (
	"fmt"
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
	m := joint.Movement{Width: width, From: p.Design.Wood.MoistureFrom, To: p.Design.Wood.MoistureTo}
	s := swing{}
	m.Coefficient = wood.Radial
	s.radial = m.Change()
	m.Coefficient = wood.Tangential
	s.tangential = m.Change()
	return s
}

// most returns the larger change, sign dropped.
func (s swing) most() float64 { return math.Max(math.Abs(s.radial), math.Abs(s.tangential)) }

// movementGroup says what the width of each wooden part does over the stated
// change of moisture. Along the grain wood keeps its length.
func movementGroup(p piece.Piece) Group {
	g := Group{Heading: "Movement of the wood"}
	wood, known := p.Design.Wood.Known()
	if !known {
		g.Text = []string{"Nothing is known of how this wood moves: it is not in the table of woods."}
		return g
	}
	if p.Design.Wood.MoistureFrom == p.Design.Wood.MoistureTo {
		g.Text = []string{"The design states no change of moisture."}
		return g
	}
	g.Heading = fmt.Sprintf("Movement of the wood, %s from %s %% to %s %% of moisture", wood.Name,
		p.Say(measure.Number(p.Design.Wood.MoistureFrom)), p.Say(measure.Number(p.Design.Wood.MoistureTo)))
	for _, w := range movers(p) {
		s := swings(p, wood, w.width)
		g.add(w.name+", quarter sawn", measure.Length(s.radial))
		g.add(w.name+", flat sawn", measure.Length(s.tangential))
	}
	g.Text = movementWords(p, wood)
	return g
}

// A mover is a size across the grain.
type mover struct {
	name  string
	width float64
}

func movers(p piece.Piece) []mover {
	r, l := p.Frame.Ring, p.Frame.Leg
	out := []mover{
		{"width of the stretcher", r.Width}, {"depth of the stretcher", r.Depth},
		{"breadth of the leg", l.Breadth},
	}
	if l.Thickness != r.Width {
		out = append(out, mover{"thickness of the leg", l.Thickness})
	}
	if p.Design.Top.Kind == design.WoodTop {
		out = append(out, mover{"width of the top", p.TopPanel().Width})
	}
	return out
}

// felt is the change in mm from which a fit is felt, and widestGlue the width in
// mm up to which a joint glued across the grain holds (both common practice, no
// source).
const (
	felt       = 0.2
	widestGlue = 75.0
)

// movementWords says of each joint whether it minds.
func movementWords(p piece.Piece, wood design.WoodSpecies) []string {
	r, l := p.Frame.Ring, p.Frame.Leg
	lap := swings(p, wood, r.Width).most()
	out := []string{fmt.Sprintf("Laps: each stands between shoulders that keep their distance while its width changes by up to %s; %s.",
		p.MM(lap), minds(lap, "fit them at the moisture of the room they go to", "the joint does not mind"))}
	across := math.Max(r.Depth, l.Breadth)
	words := "the cheeks are narrow enough to be glued across the grain"
	if across > widestGlue {
		words = fmt.Sprintf("cheeks wider than %s may break their glue", p.MM(widestGlue))
	}
	out = append(out, fmt.Sprintf("Bridle: stretcher and leg cross, and what is %s across changes by up to %s; %s.",
		p.MM(across), p.MM(swings(p, wood, across).most()), words))
	if p.Design.Top.Kind == design.WoodTop {
		top := swings(p, wood, p.TopPanel().Width).most()
		out = append(out, fmt.Sprintf("Top: it changes by up to %s across the grain; %s.", p.MM(top),
			minds(top, "screw it from below through slots, and do not glue it to the frame", "it may be fixed as you like")))
	}
	return out
}

// minds picks the words for a change that is felt or not.
func minds(change float64, yes, no string) string {
	if change > felt {
		return yes
	}
	return no
}
