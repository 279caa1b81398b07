package checks

import (
	"math"
	"slices"

	"rodsheet/geometry/measure"
	"rodsheet/templates/piece"
	"rodsheet/templates/piece/design"
	"rodsheet/templates/piece/kind"
)

// askHead asks whether the head of a leg reaches into the lap beside it: the
// mistake that is easily made, for the leg leans in as it goes up. Its remark
// says by how much it is clear, or not, and over which width.
func askHead(p piece.Piece) (Check, bool) {
	f := p.Frame
	c := atLeast("clearance", f.Clearance(), 0, kind.Fail).with(math.Abs(f.Clearance()), f.Head)
	switch {
	case c.Grade == kind.Fail && f.Over:
		c.Found.ID = "lacks-under-neighbour"
	case c.Grade == kind.Fail:
		c.Found.ID = "lacks-over-neighbour"
	case f.Over:
		c.Found.ID = "holds-under-neighbour"
	default:
		c.Found.ID = "holds-over-neighbour"
	}
	if c.Grade == kind.Pass {
		c.Found.Figures[0] = measure.Length(math.Max(0, f.Clearance()))
	}
	return c, true
}

func fixHead(p piece.Piece, _ func(piece.Piece) bool) []change { return clearHead(p, 0) }

// clearHead returns the changes that leave gap mm between leg and neighbour:
// longer stretchers, a narrower leg, another splay. Where the design says how
// far the legs keep clear, their place follows from breadth and splay, and only
// that distance, or the breadth that came out of the plane, is left to change.
func clearHead(p piece.Piece, gap float64) []change {
	clears := func(w piece.Piece) bool { return w.Frame.Clearance() >= gap-piece.Slip }
	switch milled := p.Design.Milled.Breadth > 0; {
	case p.Design.Legs.At != 0 && milled:
		return slices.Concat(search(p, "milled.breadth", less, clears), outward(p, clears), otherSplay(p, gap))
	case p.Design.Legs.At != 0:
		return slices.Concat(search(p, "legs.breadth", less, clears), outward(p, clears), otherSplay(p, gap))
	case milled:
		return append(search(p, "milled.breadth", less, clears), search(p, "legs.clear", more, clears)...)
	}
	return search(p, "legs.clear", more, clears)
}

// outward moves the legs out, and the ends of the stretchers with them.
func outward(p piece.Piece, holds func(piece.Piece) bool) []change {
	return search(p, "legs.mid-to-leg", more, holds)
}

// otherSplay returns the nearest splay, to the tenth of a degree on the safe
// side, that leaves gap mm between leg and neighbour.
func otherSplay(p piece.Piece, gap float64) []change {
	lowest, most, err := p.Frame.SplaysThatClear(gap)
	if err != nil {
		return nil
	}
	now := p.Frame.Leg.Splay
	splay := math.Ceil(lowest/fineAngle) * fineAngle
	if now > most {
		splay = math.Floor(most/fineAngle) * fineAngle
	}
	if splay < lowest || splay > most {
		return nil // they lie within one tenth
	}
	d := p.Design
	d.Legs.Lean, d.Legs.Given, d.Legs.At = design.BySplay, splay, p.Frame.Leg.At
	return []change{changed(p, "legs.splay", measure.Angle(now), measure.Angle(splay), d, math.Max(now, fineAngle))}
}

// leastShortGrain returns the least wood in mm to be left along the stretcher
// between its lap and the leg: less breaks off (common practice, no source).
func leastShortGrain(p piece.Piece) float64 { return p.Design.Unit.Round(2, 3.0/32) }

// askShortGrain asks what is left between the outer shoulder of the lap and the
// stretcher side of the leg. Where that is nothing askHead has said worse.
func askShortGrain(p piece.Piece) (Check, bool) {
	return atLeast("wood-left", p.Frame.Clearance(), leastShortGrain(p), kind.Warn), p.Frame.Clearance() >= -piece.Slip
}

func fixShortGrain(p piece.Piece, _ func(piece.Piece) bool) []change {
	return clearHead(p, leastShortGrain(p))
}

// askTogether asks whether the ring can be put together at all.
func askTogether(m model) []Check {
	if !open(m.Piece) {
		return []Check{closedRing(m.Piece)}
	}
	withLegs := m.Catches(m.bars())
	switch {
	case withLegs && m.Catches(m.stretcherBar()):
		return []Check{finding(kind.Fail, "catches")}
	case m.TrimFirst():
		return []Check{finding(kind.Warn, "trimmed-first")}
	case withLegs && m.Frame.Clearance() >= -piece.Slip:
		return []Check{finding(kind.Warn, "before-the-legs")}
	}
	return []Check{finding(kind.Pass, Holds)}
}

// closedRing is the check of a ring whose laps all have both shoulders.
func closedRing(p piece.Piece) Check {
	if p.Design.Ring.Slack == 0 {
		return finding(kind.Fail, "no-slack")
	}
	return finding(kind.Warn, "closed", p.Design.Ring.Slack)
}

func fixTogether(m model, _ Check, _ func(piece.Piece) bool) []change {
	if open(m.Piece) {
		return nil
	}
	return leaveOpen(m.Piece)
}

// leaveOpen leaves the plain ends open: a change of kind, so a dear one.
func leaveOpen(p piece.Piece) []change {
	d := p.Design
	d.Ring.Plain, d.Ring.Slack = design.OpenEnd, 0
	return []change{{Fix{Turn: kind.Turn{Key: "ring.plain-end", Word: "open"}, Design: d}, 1}}
}

// leastHorn returns the least wood in mm to be left past the outer shoulder of a
// closed plain end, where it is held by short grain of half the depth (common
// practice, no source).
func leastHorn(p piece.Piece) float64 { return p.Design.Unit.Round(10, 3.0/8) }

// askLegEnd asks whether the outer shoulder at the leg end stands on the stock.
func askLegEnd(p piece.Piece) (Check, bool) {
	past := p.Frame.Leg.Back(p.Frame.NeighbourTop()) - p.Frame.Ring.Reach(0)
	return atLeast("wood-past", past, 0, kind.Warn), true
}

// askHorn asks the same of a plain end that is closed.
func askHorn(p piece.Piece) (Check, bool) {
	horn := p.Horn()
	grade := kind.Warn
	if horn <= piece.Slip {
		grade = kind.Fail
	}
	return atLeast("horn-past", horn, leastHorn(p), grade), !open(p)
}

func fixHorn(p piece.Piece, holds func(piece.Piece) bool) []change {
	return append(leaveOpen(p), search(p, "ring.horn", more, holds)...)
}

// askEnds asks whether the ends of two stretchers that cross the same third
// from its two sides meet, as they may from five sides on.
func askEnds(m model) []Check {
	most := m.Frame.Ring.MostReach()
	if math.IsInf(most, 1) {
		return nil
	}
	c := atMost("mid-to-end", reach(m.Piece), most, kind.Fail)
	if c.Grade == kind.Fail && !m.Collides(m.bars(), 0) {
		c.Grade, c.Found.ID = kind.Warn, "pass"
	}
	return []Check{c}
}

// reach returns how far from mid-length the finished ends stand, in mm.
func reach(p piece.Piece) float64 { return math.Max(p.PlainReach, p.LegReach) }

// askRoughEnds asks the same of the ends before they are trimmed.
func askRoughEnds(p piece.Piece) (Check, bool) {
	most := p.Frame.Ring.MostReach()
	return atMost("mid-to-end", p.RoughReach(), most, kind.Warn), !math.IsInf(most, 1)
}

func fixEnds(m model, _ Check, _ func(piece.Piece) bool) []change {
	return drawEndsIn(m.Piece, func(w piece.Piece) bool { return reach(w) < w.Frame.Ring.MostReach() })
}

func fixRoughEnds(p piece.Piece, _ func(piece.Piece) bool) []change {
	return drawEndsIn(p, func(w piece.Piece) bool { return !w.EndsMeet() })
}

// drawEndsIn returns the changes that keep ends apart: a larger ring, or shorter
// horns.
func drawEndsIn(p piece.Piece, apart func(piece.Piece) bool) []change {
	if math.IsInf(p.Frame.Ring.MostReach(), 1) {
		return nil
	}
	out := search(p, "ring.inside", more, apart)
	if p.Design.Ring.Plain == design.FlushEnd {
		return out
	}
	return append(out, search(p, "ring.horn", less, apart)...)
}
