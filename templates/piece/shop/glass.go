package shop

import (
	"rodsheet/geometry"
	"rodsheet/templates/piece"
	"rodsheet/templates/piece/design"
)

// A Glass is what a glass shop must know of a top. Lengths in mm, the area in mm²,
// the mass in kg.
type Glass struct {
	Thickness      float64
	Outline        design.TopOutline
	Sides          int     // of any outline with corners
	Diameter       float64 // of a round one
	Side, Apothem  float64 // of one with equal sides, between its sharp corners
	Across, Height float64 // of a free one, over all
	Corner         design.Corner
	CornerSize     float64 // 0 for sharp corners
	Area, Mass     float64
}

// Glass returns the glass to order, once for sizes that have it alike.
func (p Plan) Glass() []piece.Lot[Glass] {
	return piece.Lots(p.Pieces, func(i int) []Glass { return glass(p.Pieces[i]) }, func(a, b Glass) bool { return a == b })
}

// glass returns the glass of a piece, nothing where its top is none of glass.
func glass(p piece.Piece) []Glass {
	top := p.Design.Top
	if top.Kind != design.GlassTop {
		return nil
	}
	g := Glass{Thickness: top.Thickness, Outline: top.Outline, Corner: top.Corner, CornerSize: top.CornerSize, Area: p.Pane().Area, Mass: p.Pane().Mass()}
	switch top.Outline {
	case design.RoundTop:
		g.Diameter = 2 * p.TopRadius()
	case design.FreeOutline:
		size := geometry.Bounds(p.TopCorners()...)
		g.Sides, g.Across, g.Height = len(top.Points), size.Max.X-size.Min.X, size.Max.Y-size.Min.Y
	default:
		r := p.RegularTop()
		g.Sides, g.Side, g.Apothem = r.Sides, r.Side(), r.Apothem
	}
	return []Glass{g}
}
