package shop

import (
	"math"

	"rodsheet/geometry/joint"
	"rodsheet/templates/piece"
	"rodsheet/templates/piece/design"
)

// A GlueUp is the order of assembly step by step, and what is said of the blocks
// last: each leg into its own stretcher first, flat on the bench, and the ring
// when those are hard. A leg leans in the plane of its stretcher, so such a pair
// is flat; and it stands outside the laps, so the ring closes with the legs on.
type GlueUp struct {
	Steps  [5]Notes
	Blocks Notes
}

// GlueUps returns the order of assembly, once for sizes that have it alike.
func (p Plan) GlueUps() []piece.Lot[GlueUp] {
	return piece.Lots(piece.Sizes(p.Pieces), func(i int) []GlueUp { return []GlueUp{glueUp(p.Pieces[i])} },
		func(a, b GlueUp) bool { return a.onGrid() == b.onGrid() })
}

func (g GlueUp) onGrid() GlueUp {
	for i := range g.Steps {
		g.Steps[i] = g.Steps[i].onGrid()
	}
	g.Blocks = g.Blocks.onGrid()
	return g
}

func glueUp(p piece.Piece) GlueUp {
	return GlueUp{[5]Notes{
		notes(note("dry-run-all")),
		notes(note("legs-flat"), legClamp(p), besideProud(p), note("clamp-cheeks")),
		notes(note("check-splay")),
		closing(p),
		notes(note("clamp-laps")),
	}, blockNotes(p)}
}

// legClamp says how a leg is pulled into its stretcher. A caul on a slanted end slides
// towards the side on which the stretcher is shorter: so steep a slant is more than wood
// grips (tan 30° = 0.58; wood on wood holds to about 0.4, from memory).
func legClamp(p piece.Piece) Note {
	id := map[bool]NoteID{false: "clamp-leg", true: "clamp-leg-caul"}[p.Frame.Leg.Splay > 0]
	if !slantedEnd(p) {
		return note(id)
	}
	short := RingSide
	if p.Frame.Ring.Angle() > math.Pi/2 {
		short = OuterSide
	}
	return note(map[NoteID]NoteID{"clamp-leg": "clamp-end-caul", "clamp-leg-caul": "clamp-both-cauls"}[id], face(short))
}

// besideProud says how the clamp bears on the leg alone: until it is trimmed the end of the
// stretcher stands proud of the leg's back, in the middle where it is the tenon, else on
// both sides of the leg's tenon.
func besideProud(p piece.Piece) Note {
	proud := length(p.Bridle.Long)
	if p.Bridle.Stretcher().Slot {
		return note("clamp-on-tenon", proud, length(p.Bridle.Tenon))
	}
	return note("clamp-beside-tenon", proud)
}

// trimmedTo says what is trimmed to what.
func trimmedTo(p piece.Piece) Note {
	if p.Design.Legs.Proud > 0 {
		return note("trim-proud", length(p.Design.Legs.Proud))
	}
	return note("trim-level")
}

// trimmedFlush says how it shows.
func trimmedFlush(p piece.Piece) Note {
	if p.Design.Legs.Proud > 0 {
		return note("trimmed-proud", length(p.Design.Legs.Proud))
	}
	return note("trimmed-flush")
}

// closing says how the ring goes together.
func closing(p piece.Piece) Notes {
	lies := notes(note("ring-flat"))
	if p.Design.Legs.Proud > 0 {
		lies = notes(note("ring-on-strips"))
	}
	if p.Design.Ring.Plain == design.ClosedEnd {
		return lies.with(closedRing(p))
	}
	return lies.with(note("slide-evenly"), note("drive-wedges"))
}

// blockNotes says how the blocks are sawn.
func blockNotes(p piece.Piece) Notes {
	out := notes(note("blocks-from-length", length(p.SafeLength())))
	splayed := p.Frame.Leg.Splay > 0
	if splayed {
		out = out.with(note("cauls-with-ends"))
	}
	if !taperWedges(p) {
		return out.with(note("wedge-rise", number(wedgeSlope)))
	}
	id := map[[2]bool]NoteID{
		{false, false}: "offcut-wedges", {true, false}: "offcut-wedges-squared",
		{false, true}: "offcut-wedges-halved", {true, true}: "offcut-wedges-both",
	}[[2]bool{splayed, p.Taper.Faces == joint.OneFace}]
	return out.with(note(id))
}
