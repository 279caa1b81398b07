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
// on the inner edge it ends Breadth·tan Splay short of the outer one, on the
// others less.
func taperOffcut(p piece.Piece) (long, thick float64) {
	t, l := p.Taper, p.Frame.Leg
	long = t.Run() - l.Breadth*math.Tan(l.Splay) - (p.Kerf+planed)/math.Sin(t.Angle())
	return long, long * math.Tan(t.Angle())
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
	return slope <= wedgeSteep && slope >= wedgeGentle && thick >= wedgeThin
}

// taperWords says how a taper is sawn and the leg turned between its tapers.
func taperWords(p piece.Piece) []string {
	out := []string{taperToLine}
	if !leavesOffcut(p) {
		out = []string{"It takes off " + p.MM(p.Taper.Loss()) + " at the foot, which saw and plane turn to dust: there is no offcut. Shave it off in the jig, or plane it by hand, to the line."}
	}
	if turns := taperTurns(p); turns != "" {
		out = append(out, turns)
	}
	return out
}

// taperByHand says how a taper is sawn by hand.
func taperByHand(p piece.Piece) []string {
	out := []string{taperToLine}
	if !leavesOffcut(p) {
		out = []string{"It takes off " + p.MM(p.Taper.Loss()) + " at the foot: plane it to the line."}
	}
	if p.Taper.Faces != joint.OneFace {
		out = append(out, "Each taper takes the lines of the next away: strike them again on the cut face.")
	}
	if taperWedges(p) {
		out = append(out, "Keep the offcuts: later they are wedges.")
	}
	return out
}

// taperTurns says how the leg lies for its next taper, and what is kept.
func taperTurns(p piece.Piece) string {
	hold, each := "Tape the offcut back, with a shim as thick as the kerf; ", "Tape each offcut back, with a shim as thick as the kerf; "
	if !leavesOffcut(p) {
		hold = "Tape a shim on in its place, " + p.MM(p.Taper.Loss()) + " thick at the foot; "
		each = hold
	}
	var words string
	switch p.Taper.Faces {
	case joint.AdjacentFaces:
		words = hold + "roll the leg a quarter turn, a straight face against the jig, and cut the other."
	case joint.OppositeFaces:
		words = hold + "roll the leg half a turn, foot the same way, and cut at the same setting."
	case joint.FourFaces:
		words = each + "half a turn for the opposite face, then a quarter turn and the second pair, all at the same setting."
	default:
		return keepOffcut(p)
	}
	if taperWedges(p) {
		words += " Later the offcuts are wedges."
	}
	return words
}

// keepOffcut says what the offcut of a single taper is good for.
func keepOffcut(p piece.Piece) string {
	switch {
	case taperWedges(p):
		return "Keep the offcut: taped back, it holds the leg parallel, and later it is a wedge."
	case leavesOffcut(p):
		return "Keep the offcut: taped back, it holds the leg parallel."
	}
	return ""
}

// taperWedgeWords says how the offcuts of the tapers become wedges.
func taperWedgeWords(p piece.Piece) string {
	words := "The folding wedges are the offcuts of the tapers"
	if p.Frame.Leg.Splay > 0 {
		words += ", their bevelled ends squared"
	}
	if p.Taper.Faces == joint.OneFace {
		words += ", each sawn across in the middle"
	}
	return words + ": two of one slope, laid head to tail, have parallel faces."
}
