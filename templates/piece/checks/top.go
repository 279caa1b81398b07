package checks

import (
	"fmt"
	"math"

	"rodsheet/geometry"
	"rodsheet/geometry/measure"
	"rodsheet/templates/piece"
	"rodsheet/templates/piece/design"
)

// insideTop returns how far a point in plan lies inside the edge of the top,
// negative where it lies outside: then it is the distance to the line of the
// side that it is farthest beyond.
func insideTop(p piece.Piece, q geometry.Point) float64 {
	if p.Design.Top.Outline == design.RoundTop {
		return p.TopRadius() - q.Norm()
	}
	corners := p.TopCorners()
	least := math.Inf(1)
	for i, a := range corners {
		along := corners[(i+1)%len(corners)].Sub(a).Unit()
		least = math.Min(least, along.Cross(q.Sub(a)))
	}
	return least
}

// padRoom returns how far from mid-length the centre of a pad may stand: its
// edge then touches the inner shoulder of a lap.
func padRoom(p piece.Piece) float64 {
	p.Design.Top.Pads.Outermost = true
	return p.PadAt()
}

// padToRim returns how far the centres of the pads lie inside the edge of the
// top, the one that lies least.
func padToRim(p piece.Piece) float64 {
	least := math.Inf(1)
	for i := range p.Frame.Ring.Sides {
		least = math.Min(least, insideTop(p, padPoint(p, i)))
	}
	return least
}

// askTop asks whether top, pads and frame go together.
func askTop(p piece.Piece) []Check {
	if p.Design.Top.Kind == design.NoTop {
		return nil
	}
	var out []Check
	if p.Design.Top.PadHeight() > 0 {
		out = append(out, askPads(p)...)
	}
	if p.Design.Top.Kind == design.GlassTop && p.Design.Top.Outline != design.RoundTop {
		out = append(out, askCorner(p))
	}
	out = append(out, askUnder(p))
	if p.Design.Legs.Proud > 0 {
		out = append(out, limited("proud head and top", "head above the frame", measure.Length(p.Design.Legs.Proud),
			atMost, measure.Length(p.Design.Top.PadHeight()), Fail).with(
			"The proud heads stay below the top.", "The proud heads stand higher than the underside of the top."))
	}
	return out
}

// leastToEdge is the least from the edge of a pad to the edge of glass in mm:
// nearer, a knock at the rim is a knock at the pad (common practice, no source).
const leastToEdge = 10.0

// askPads asks whether the pads stand on wood, each on its own stretcher, and
// under the top.
func askPads(p piece.Piece) []Check {
	r, pads := p.Frame.Ring, p.Design.Top.Pads
	beside := (r.Width - pads.Diameter) / 2
	shoulder := padRoom(p) - math.Abs(p.PadAt())
	out := []Check{
		limited("pads on the stretchers", "wood beside a pad", measure.Length(beside), atLeast, measure.Length(0), Warn).with(
			"The pads stand on wood all round.", "The pads are wider than the stretchers."),
		limited("pads and shoulders", "pad clear of the shoulder by", measure.Length(shoulder), atLeast, measure.Length(0), Warn).with(
			"Each pad stands on its own stretcher.", "The pads reach over a shoulder: fix each to one part only, or it works loose."),
	}
	limit, grade := 0.0, Warn
	if p.Design.Top.Kind == design.GlassTop {
		limit = leastToEdge
	}
	if padToRim(p) < 0 {
		grade = Fail
	}
	toEdge := padToRim(p) - pads.Diameter/2
	return append(out, limited("pads and edge of the top", "edge of pad to edge of top", measure.Length(toEdge),
		atLeast, measure.Length(limit), grade).with(
		"The pads stand well inside the edge of the top.", "The pads stand too near to the edge of the top."))
}

// askCorner asks whether a pane's corners are worked.
func askCorner(p piece.Piece) Check {
	least := p.Pane().LeastCornerRadius()
	const name = "corners of the glass"
	switch p.Design.Top.Corner {
	case design.ClippedCorner:
		return Check{Name: name, Words: "The corners are clipped; ask for them to be dubbed."}
	case design.RoundedCorner:
		return limited(name, "corner radius", measure.Length(p.Design.Top.CornerSize), atLeast, measure.Length(least), Warn).with(
			"The corners are rounded enough for the glass shop.", "A corner radius is not to be less than the thickness of the glass.")
	}
	return limited(name, "corner radius", measure.Length(0), atLeast, measure.Length(least), Warn).with(
		"", "Sharp corners of glass chip and hurt: round them.")
}

// askUnder asks whether the frame stays within the outline of the top.
func askUnder(p piece.Piece) Check {
	least := math.Inf(1)
	place := p.Frame.Ring
	for i := range place.Sides {
		for _, q := range p.StretcherPlan() { // to the outer face of the leg at its lowest
			least = math.Min(least, insideTop(p, place.Place(i, 0).Apply(q)))
		}
	}
	return limited("frame under the top", "top past the frame", measure.Length(least), atLeast, measure.Length(0), Warn).with(
		"Leg heads and horns stay within the outline of the top.",
		fmt.Sprintf("Leg heads or horns stand out from under the top by %s.", p.MM(-least)))
}

// fixTop offers the changes of pads, heads and outline.
func fixTop(p piece.Piece, c Check) []change {
	holds := func(w piece.Piece) bool { return called(askTop(w), c.Name).Grade == Pass }
	switch c.Name {
	case "pads on the stretchers":
		return smallerPads(p, holds)
	case "pads and shoulders":
		return append(smallerPads(p, holds), movePads(p, holds)...)
	case "pads and edge of the top":
		return append(movePads(p, holds), largerTop(p, holds)...)
	case "corners of the glass":
		return roundCorners(p, holds)
	case "proud head and top":
		return append(lowerHead(p), higherPads(p, holds)...)
	}
	return largerTop(p, holds)
}

func smallerPads(p piece.Piece, holds func(piece.Piece) bool) []change {
	return search(p, parameter{
		now: p.Design.Top.Pads.Diameter, down: true,
		set:   func(d *design.Design, v float64) { d.Top.Pads.Diameter = v },
		words: func(v float64) string { return "make the diameter of the pads " + p.MM(v) },
	}, holds)
}

func higherPads(p piece.Piece, holds func(piece.Piece) bool) []change {
	return search(p, parameter{
		now:   p.Design.Top.Pads.Height,
		set:   func(d *design.Design, v float64) { d.Top.Pads.Height = v },
		words: func(v float64) string { return "make the pads " + p.MM(v) + " high" },
	}, holds)
}

// movePads moves the pads towards mid-length.
func movePads(p piece.Piece, holds func(piece.Piece) bool) []change { return shiftPads(p, true, holds) }

// outerPads moves the pads away from mid-length.
func outerPads(p piece.Piece, holds func(piece.Piece) bool) []change {
	return shiftPads(p, false, holds)
}

func shiftPads(p piece.Piece, inward bool, holds func(piece.Piece) bool) []change {
	if p.Design.Top.PadHeight() == 0 {
		return nil
	}
	sign := 1.0
	if p.PadAt() < 0 {
		sign = -1
	}
	return search(p, parameter{
		now: math.Abs(p.PadAt()), down: inward,
		set: func(d *design.Design, v float64) { d.Top.Pads.At, d.Top.Pads.Outermost = sign*v, false },
		words: func(v float64) string {
			return "set the pads " + p.MM(v) + " from mid-length"
		},
	}, holds)
}

// lowerHead leaves the heads no prouder than the pads are high.
func lowerHead(p piece.Piece) []change {
	if p.Design.Legs.Proud <= p.Design.Top.PadHeight() || p.Design.Top.Kind == design.NoTop {
		return nil
	}
	return search(p, parameter{
		now: p.Design.Legs.Proud, down: true,
		set:   func(d *design.Design, v float64) { d.Legs.Proud = v },
		words: func(v float64) string { return "leave the heads " + p.MM(v) + " proud" },
	}, func(w piece.Piece) bool { return w.Design.Legs.Proud <= w.Design.Top.PadHeight()+piece.Slip })
}

// roundCorners rounds the corners of a pane to its thickness at least.
func roundCorners(p piece.Piece, holds func(piece.Piece) bool) []change {
	now := 0.0
	if p.Design.Top.Corner == design.RoundedCorner {
		now = p.Design.Top.CornerSize
	}
	return search(p, parameter{
		now:   now,
		of:    p.Design.Top.Thickness,
		set:   func(d *design.Design, v float64) { d.Top.Corner, d.Top.CornerSize = design.RoundedCorner, v },
		words: func(v float64) string { return "round the corners to a radius of " + p.MM(v) },
	}, holds)
}

func largerTop(p piece.Piece, holds func(piece.Piece) bool) []change {
	return resizeTop(p, false, holds)
}
func smallerTop(p piece.Piece, holds func(piece.Piece) bool) []change {
	return resizeTop(p, true, holds)
}

// resizeTop turns the diameter of a round top, or the overhang of one that has
// an overhang. A free outline is the maker's own.
func resizeTop(p piece.Piece, down bool, holds func(piece.Piece) bool) []change {
	if p.Design.Top.Outline == design.FreeOutline {
		return nil
	}
	k := parameter{down: down, step: coarseGrid(p.Design.Unit)}
	if p.Design.Top.Outline == design.RoundTop {
		k.now = 2 * p.TopRadius()
		k.set = func(d *design.Design, v float64) { d.Top.Diameter = v }
		k.words = func(v float64) string { return "make the diameter of the top " + p.MM(v) }
		return search(p, k, holds)
	}
	across := 2 * p.RegularTop().Apothem
	k.now, k.of, k.from = p.Design.Top.Overhang, across/2, -across/2
	k.set = func(d *design.Design, v float64) { d.Top.Overhang = v }
	k.words = func(v float64) string { return "give the top an overhang of " + p.MM(v) }
	return search(p, k, holds)
}
