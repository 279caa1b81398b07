package shop

import (
	"rodsheet/geometry"
	"rodsheet/geometry/measure"
	"rodsheet/templates/piece"
	"rodsheet/templates/piece/design"
)

// A GlassOrder is what a glass shop asks for, a line each.
type GlassOrder [8]Note

// GlassOrders returns the glass to order, once for sizes that have it alike: one pane for
// each of them.
func (p Plan) GlassOrders() []piece.Lot[GlassOrder] {
	out := piece.Lots(piece.Sizes(p.Pieces), func(i int) []GlassOrder { return glassOrder(p.Pieces[i]) }, func(a, b GlassOrder) bool { return a == b })
	for i, l := range out {
		if n := len(l.Sizes); n > 1 {
			out[i].What[0] = note("glass.tops", number(n), l.What[0].Args[0])
		}
	}
	return out
}

// glassOrder returns the order for a piece, nothing where its top is none of glass.
func glassOrder(p piece.Piece) []GlassOrder {
	if p.Design.Top.Kind != design.GlassTop {
		return nil
	}
	pane := p.Pane()
	return []GlassOrder{{
		note("glass.top", length(p.Design.Top.Thickness)), glassOutline(p), note("glass.finished"), glassCorners(p),
		note("glass.edges"), note("glass.before-tempering"),
		note("glass.weight", figure(measure.Area(pane.Area)), figure(measure.Mass(pane.Mass()))), note("glass.safety"),
	}}
}

func glassOutline(p piece.Piece) Note {
	switch p.Design.Top.Outline {
	case design.RoundTop:
		return note("glass.round", length(2*p.TopRadius()))
	case design.FreeOutline:
		box := geometry.Bounds(p.TopCorners()...)
		size := box.Max.Sub(box.Min)
		return note("glass.free", number(len(p.Design.Top.Points)), length(size.X), length(size.Y))
	}
	r := p.RegularTop()
	return note("glass.regular", number(r.Sides), length(r.Side()), length(r.Apothem))
}

// glassCorners says how the corners are worked.
func glassCorners(p piece.Piece) Note {
	switch top := p.Design.Top; {
	case top.Outline == design.RoundTop:
		return note("glass.no-corners")
	case top.CornerSize == 0 || top.Corner == design.SharpCorner:
		return note("glass.sharp")
	case top.Corner == design.ClippedCorner:
		return note("glass.clipped", length(top.CornerSize))
	}
	return note("glass.rounded", length(p.Design.Top.CornerSize))
}
