package checks

import (
	"math"

	"rodsheet/geometry"
	"rodsheet/templates/piece"
	"rodsheet/templates/piece/design"
	"rodsheet/templates/piece/kind"
)

// padRoom returns how far from mid-length the centre of a pad may stand: its
// edge then touches the inner shoulder of a lap.
func padRoom(p piece.Piece) float64 {
	p.Design.Top.Pads.Outermost = true
	return p.PadAt()
}

// padToRim returns how far the centres of the pads lie inside the edge of the
// top, the one that lies least.
func padToRim(p piece.Piece) float64 {
	pads := make([]geometry.Point, p.Frame.Ring.Sides)
	for i := range pads {
		pads[i] = p.PadPoint(i)
	}
	return p.TopShape().Inside(pads...)
}

// leastToEdge returns the least between the edge of a pad and the rim of glass in
// mm: nearer, a knock at the rim is a knock at the pad (common practice, no source).
func leastToEdge(p piece.Piece) float64 { return p.Design.Unit.Round(10, 3.0/8) }

// askPadWidth asks whether the pads stand on wood all round.
func askPadWidth(p piece.Piece) (Check, bool) {
	beside := (p.Frame.Ring.Width - p.Design.Top.Pads.Diameter) / 2
	return atLeast("wood-beside-pad", beside, 0, kind.Warn), p.Design.Top.PadHeight() > 0
}

// askPadShoulder asks whether each pad stands on its own stretcher.
func askPadShoulder(p piece.Piece) (Check, bool) {
	return atLeast("pad-clear", padRoom(p)-math.Abs(p.PadAt()), 0, kind.Warn), p.Design.Top.PadHeight() > 0
}

// askPadEdge asks whether the pads stand under the top.
func askPadEdge(p piece.Piece) (Check, bool) {
	if p.Design.Top.PadHeight() == 0 {
		return Check{}, false
	}
	limit, grade := 0.0, kind.Warn
	if p.Design.Top.Kind == design.GlassTop {
		limit = leastToEdge(p)
	}
	centre := padToRim(p)
	if centre < 0 {
		grade = kind.Fail
	}
	return atLeast("pad-to-edge", centre-p.Design.Top.Pads.Diameter/2, limit, grade), true
}

// roundedCorner returns the radius of the corners of a top, 0 where they are not
// rounded.
func roundedCorner(p piece.Piece) float64 {
	if p.Design.Top.Corner != design.RoundedCorner {
		return 0
	}
	return p.Design.Top.CornerSize
}

// askCorner asks whether a pane's corners are worked.
func askCorner(p piece.Piece) (Check, bool) {
	if p.Design.Top.Kind != design.GlassTop || p.Design.Top.Outline == design.RoundTop {
		return Check{}, false
	}
	if p.Design.Top.Corner == design.ClippedCorner {
		return finding(kind.Pass, "clipped"), true
	}
	c := atLeast("corner-radius", roundedCorner(p), p.Pane().LeastCornerRadius(), kind.Warn)
	if p.Design.Top.Corner == design.SharpCorner {
		c.Found.ID = "sharp"
	}
	return c, true
}

// askUnder asks whether the frame stays within the outline of the top.
func askUnder(p piece.Piece) (Check, bool) {
	if p.Design.Top.Kind == design.NoTop {
		return Check{}, false
	}
	top, least := p.TopShape(), math.Inf(1)
	for i := range p.Frame.Ring.Sides {
		for _, q := range p.StretcherPlan() { // to the back of the leg at its lowest
			least = math.Min(least, top.Inside(p.Frame.Ring.Place(i, 0).Apply(q)))
		}
	}
	return atLeast("top-past-frame", least, 0, kind.Warn).with(-least), true
}

// askProud asks whether proud heads stay below the top.
func askProud(p piece.Piece) (Check, bool) {
	asked := p.Design.Top.Kind != design.NoTop && p.Design.Legs.Proud > 0
	return atMost("head-above-frame", p.Design.Legs.Proud, p.Design.Top.PadHeight(), kind.Fail), asked
}

// movePads moves the pads along their stretchers: to less from mid-length, or to
// more.
func movePads(down bool) func(piece.Piece, func(piece.Piece) bool) []change {
	return func(p piece.Piece, holds func(piece.Piece) bool) []change {
		if p.Design.Top.PadHeight() == 0 {
			return nil
		}
		return search(p, "top.pads.mid-to-pad", down, holds)
	}
}

// lowerHead leaves the heads no prouder than the pads are high.
func lowerHead(p piece.Piece, _ func(piece.Piece) bool) []change {
	if p.Design.Legs.Proud <= p.Design.Top.PadHeight() || p.Design.Top.Kind == design.NoTop {
		return nil
	}
	return search(p, "legs.proud", less, func(w piece.Piece) bool {
		return w.Design.Legs.Proud <= w.Design.Top.PadHeight()+piece.Slip
	})
}

// resizeTop turns the diameter of a round top, or the overhang of one that has
// an overhang. A free outline is the maker's own.
func resizeTop(down bool) func(piece.Piece, func(piece.Piece) bool) []change {
	return func(p piece.Piece, holds func(piece.Piece) bool) []change {
		key, ok := map[design.TopOutline]design.Key{design.RoundTop: "top.diameter", design.RingTop: "top.overhang"}[p.Design.Top.Outline]
		if !ok {
			return nil
		}
		return search(p, key, down, holds)
	}
}
