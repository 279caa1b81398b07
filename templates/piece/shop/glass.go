package shop

import (
	"fmt"

	"rodsheet/geometry"
	"rodsheet/geometry/measure"
	"rodsheet/templates/piece"
	"rodsheet/templates/piece/design"
)

// glassOrder returns what a glass shop asks for, a line each, and nothing where
// the top is none of glass.
func glassOrder(p piece.Piece) []string {
	if p.Design.Top.Kind != design.GlassTop {
		return nil
	}
	return []string{
		fmt.Sprintf("1 table top of clear float glass, %s thick, fully tempered.", p.MM(p.Design.Top.Thickness)),
		"Outline: " + outlineWords(p) + ".",
		"All sizes are glass sizes, finished: add nothing and take nothing off.",
		"Corners: " + cornerWords(p) + ".",
		"Edges: ground flat and polished all round, both arrises taken off.",
		"All cutting, corner and edge work comes before tempering: tempered glass cannot be worked.",
		fmt.Sprintf("Area %s, weight %s.", p.Say(measure.Area(p.Pane().Area)), p.Say(measure.Mass(p.Pane().Mass()))),
		"Tempered or laminated safety glass is what ASTM F2813 asks of table tops; the rules of the place come first.",
	}
}

// outlineWords says the outline and its sizes.
func outlineWords(p piece.Piece) string {
	if p.Design.Top.Outline == design.RoundTop {
		return "round, diameter " + p.MM(2*p.TopRadius())
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
func cornerWords(p piece.Piece) string {
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
