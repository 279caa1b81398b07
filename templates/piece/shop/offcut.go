package shop

import (
	"math"

	"rodsheet/geometry/joint"
	"rodsheet/templates/piece"
)

const (
	planed      = 1.0 // mm left beside a sawn line, to be planed away (common practice, no source)
	leastSliver = 1.0 // mm at its thick end: a thinner offcut of a taper breaks up (common practice, no source)
)

// taperOffcut returns what falls off one tapered face, its foot end squared: a
// wedge so long, from nothing to so thick. Neither is more than 0 where saw and
// plane leave none.
//
// The taper rises by Loss/Run. Saw and plane take kerf and planed square to it,
// which shortens the wedge by their sum over sin Angle. The foot is sawn before:
// on the stretcher side it ends Breadth·tan Splay short of the back, on the
// others less.
func taperOffcut(p piece.Piece) (long, thick float64) {
	t, l := p.Taper, p.Frame.Leg
	long = t.Run() - l.Breadth*math.Tan(l.Splay) - (p.Kerf+planed)/math.Sin(t.ToEdge())
	return long, long * math.Tan(t.ToEdge())
}

// leavesOffcut reports whether something falls off a tapered face that can be
// taped back.
func leavesOffcut(p piece.Piece) bool {
	_, thick := taperOffcut(p)
	return thick >= leastSliver
}

// taperWedges reports whether the offcuts of the tapers, sawn in two, make
// folding wedges. Steeper than 1 in 7 they slip, flatter than 1 in 40 they
// hardly lift (common practice, no source).
func taperWedges(p piece.Piece) bool {
	if p.Taper == nil {
		return false
	}
	slope := p.Taper.Loss() / p.Taper.Run()
	_, thick := taperOffcut(p)
	return slope <= wedgeSteep && slope >= wedgeGentle && thick >= sizesOfBlocks(p.Design.Unit).wedgeThin
}

// taperNotes says how a taper is sawn and the leg turned between its tapers.
func taperNotes(p piece.Piece) Notes {
	loss, turn := length(p.Taper.Loss()), taperTurns[p.Taper.Faces]
	switch {
	case !leavesOffcut(p):
		return notes(note("no-offcut", loss), note(turn.shim, loss))
	case taperWedges(p):
		return notes(note("taper-to-line"), note(turn.tape), note("later-wedges"))
	}
	return notes(note("taper-to-line"), note(turn.tape))
}

// taperTurns are how the leg is turned between its tapers: the offcut taped back,
// or where there is none a shim in its place. That of a single one is only kept.
var taperTurns = map[joint.TaperFaces]struct{ tape, shim NoteID }{
	joint.OneFace:       {"keep-offcut", ""},
	joint.AdjacentFaces: {"roll-quarter", "shim-quarter"},
	joint.OppositeFaces: {"roll-half", "shim-half"},
	joint.FourFaces:     {"roll-all-round", "shim-all-round"},
}

// taperByHand says how a taper is sawn by hand.
func taperByHand(p piece.Piece) Notes {
	out := notes(note("taper-to-line"))
	if !leavesOffcut(p) {
		out = notes(note("plane-to-line", length(p.Taper.Loss())))
	}
	if p.Taper.Faces != joint.OneFace {
		out = out.with(note("strike-again"))
	}
	if taperWedges(p) {
		out = out.with(note("keep-for-wedges"))
	}
	return out
}
