package piece

import (
	"fmt"
	"math"

	"rodsheet/geometry"
	"rodsheet/geometry/measure"
	"rodsheet/templates/piece/design"
)

// GlassOrder returns what a glass shop asks for, a line each, and nothing where
// the top is none of glass.
func GlassOrder(p Piece) []string {
	if p.Design.Top.Kind != design.GlassTop {
		return nil
	}
	return []string{
		fmt.Sprintf("1 table top of clear float glass, %s thick, fully tempered.", p.MM(p.Design.Top.Thickness)),
		"Outline: " + p.outlineWords() + ".",
		"All sizes are glass sizes, finished: add nothing and take nothing off.",
		"Corners: " + p.cornerWords() + ".",
		"Edges: ground flat and polished all round, both arrises taken off.",
		"All cutting, corner and edge work comes before tempering: tempered glass cannot be worked.",
		fmt.Sprintf("Area %s, weight %s.", p.Say(measure.Area(p.Pane().Area)), p.Say(measure.Mass(p.Pane().Mass()))),
		"Tempered or laminated safety glass is what ASTM F2813 asks of table tops; the rules of the place come first.",
	}
}

// outlineWords says the outline and its sizes.
func (p Piece) outlineWords() string {
	if p.Design.Top.Outline == design.RoundTop {
		return "round, " + p.MM(2*p.TopRadius()) + " in diameter"
	}
	if p.Design.Top.Outline == design.FreeOutline {
		box := geometry.Bounds(p.TopCorners()...)
		size := box.Max.Sub(box.Min)
		return fmt.Sprintf("%d sides, to the full-size template, %s × %s over all", len(p.Design.Top.Points), p.Bare(size.X), p.MM(size.Y))
	}
	r := p.RegularTop()
	return fmt.Sprintf("%s of equal sides and corners, sides %s between the sharp corners, %s from the centre to each side",
		sidesWord(r.Sides), p.MM(r.Side()), p.MM(r.Apothem))
}

// sidesWord names a polygon of 3 to 8 sides.
func sidesWord(n int) string {
	names := []string{"triangle", "square", "pentagon", "hexagon", "heptagon", "octagon"}
	if i := n - 3; i >= 0 && i < len(names) {
		return names[i]
	}
	return fmt.Sprintf("polygon of %d sides", n)
}

// cornerWords says how the corners are worked.
func (p Piece) cornerWords() string {
	switch {
	case p.Design.Top.Outline == design.RoundTop:
		return "none"
	case p.Design.Top.CornerSize == 0 || p.Design.Top.Corner == design.SharpCorner:
		return "sharp, only dubbed"
	case p.Design.Top.Corner == design.ClippedCorner:
		return "clipped " + p.MM(p.Design.Top.CornerSize) + " back along both sides, dubbed"
	}
	return "rounded to a radius of " + p.MM(p.Design.Top.CornerSize)
}

// topGroup is the figures of the top.
func (p Piece) topGroup() Group {
	g := Group{Heading: "Top"}
	if p.Design.Top.Kind == design.NoTop {
		return g
	}
	g.add("thickness", measure.Length(p.Design.Top.Thickness))
	p.addOutline(&g)
	g.add("area", measure.Area(p.TopArea()))
	side, corner := p.overhangs()
	g.add("past the outside edge of the ring, mid-length", measure.Length(side))
	g.add("past the outside corner of the ring", measure.Length(corner))
	if p.Design.Top.PadHeight() > 0 {
		centre := p.padPoint(0)
		g.add("pad, mid-length to centre", measure.Length(p.PadAt()))
		g.add("pad, from the inside edge", measure.Length(p.Frame.Ring.Width/2))
		g.add("pads' centres, on a circle of", measure.Length(2*centre.Norm()))
		g.add("pads' centres, one to the next", measure.Length(centre.Distance(p.padPoint(1))))
		g.add("pad centre to the edge of the top", measure.Length(p.padToRim()))
	}
	return g
}

// addOutline adds the sizes of the outline.
func (p Piece) addOutline(g *Group) {
	switch p.Design.Top.Outline {
	case design.RoundTop:
		g.add("diameter", measure.Length(2*p.TopRadius()))
	case design.RingTop:
		r := p.RegularTop()
		g.add("side between sharp corners", measure.Length(r.Side()))
		g.add("centre to side", measure.Length(r.Apothem))
		if p.Design.Top.Corner == design.ClippedCorner && p.Design.Top.CornerSize > 0 {
			g.add("flat at a clipped corner", measure.Length(r.ClipFlat(p.Design.Top.CornerSize)))
		}
		fallthrough
	default:
		box := geometry.Bounds(p.TopCorners()...)
		size := box.Max.Sub(box.Min)
		g.add("over all, along a stretcher", measure.Length(size.X))
		g.add("over all, square to it", measure.Length(size.Y))
	}
}

// overhangs returns how far the top stands past the ring, the least of all
// sides at mid-length of the outside edge and the least of all corners. They
// are counted on the line from the centre.
func (p Piece) overhangs() (side, corner float64) {
	r := p.Frame.Ring
	outside := r.Polygon().Grow(r.Width)
	corners := outside.Corners()
	side, corner = math.Inf(1), math.Inf(1)
	for i, c := range corners {
		side = math.Min(side, p.past(c.Lerp(corners[(i+1)%len(corners)], 0.5)))
		corner = math.Min(corner, p.past(c))
	}
	return side, corner
}
