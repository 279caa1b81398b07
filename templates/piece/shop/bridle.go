package shop

import (
	"fmt"
	"math"

	"rodsheet/geometry/joint"
	"rodsheet/geometry/measure"
	"rodsheet/templates/piece"
)

// A member is one of the two parts of the bridle joint as it comes to the saw.
type member struct {
	joint.BridleEnd
	batch batch
	name  string
	end   string // what of it is joined
	// base is from the square far end to the datum corner, along the reference
	// edge; long is what is sawn beyond it, along the part: for a proud head more
	// than what stands beyond the trim line.
	base, long       float64
	height           float64 // of slot or cheeks above the table
	reference, other string  // edges
	rest             string  // what touches the stop
	sawn             float64
}

func (p batchedPiece) stretcherEnd() member {
	height, _ := p.CutHeights()
	return member{
		BridleEnd: p.Bridle.Stretcher(), batch: p.stretchers, name: "stretcher", end: "leg end of the stretcher",
		base: p.RoughReach() + p.LegReach, long: joint.BridleLong, height: height, sawn: p.RoughStretcher(),
		reference: "underside", other: "top", rest: "plain end",
	}
}

func (p batchedPiece) legHead() member {
	_, height := p.CutHeights()
	return member{
		BridleEnd: p.Bridle.Head(), batch: p.legs, name: "leg", end: "leg head",
		base: p.Frame.Leg.Blank(), long: p.HeadLong(), height: height, sawn: p.SawnLeg().Length,
		reference: "inner edge", other: "outer edge", rest: "foot end",
	}
}

// slotted and tenoned are the two members by what they get.
func (p batchedPiece) slotted() member {
	if s := p.stretcherEnd(); s.Slot {
		return s
	}
	return p.legHead()
}

func (p batchedPiece) tenoned() member {
	if s := p.stretcherEnd(); !s.Slot {
		return s
	}
	return p.legHead()
}

// shoulderStop returns the stop for the shoulder with the reference edge on
// the fence, or the other one: the shoulder runs away from the end by
// Width·tan Angle.
func (m member) shoulderStop(other bool) float64 {
	stop := m.base - m.Length()
	if other {
		stop -= m.Width * math.Tan(m.Angle)
	}
	return stop
}

// endOps is what is sawn at one setting of the gauge to the splay.
func endOps() []op {
	return []op{
		func(p batchedPiece) (step, bool) { return p.sawEnd(p.stretcherEnd()) },
		func(p batchedPiece) (step, bool) { return p.sawEnd(p.legHead()) },
		sawCauls,
	}
}

// uprightOps is what the parts get standing on those ends, and what that needs.
func uprightOps() []op { return []op{sawEndCauls, sawStrips, knifeShoulders, cutSlot, cutCheeks} }

// shoulderOps cuts the shoulders of the tenons.
func shoulderOps() []op {
	return []op{
		func(p batchedPiece) (step, bool) { return p.shoulder(false) },
		func(p batchedPiece) (step, bool) { return p.shoulder(true) },
	}
}

// fitOps tries the joint while its parts are square and easily pared.
func fitOps() []op { return []op{fitBridle} }

// sawEnd saws an end at the splay, past its trim line.
func (p batchedPiece) sawEnd(m member) (step, bool) {
	stop := m.base + m.long
	s := step{
		Op: doSawEnd, Name: m.end + ", at the splay", Parts: []batch{m.batch}, Down: "face side", Fence: m.reference,
		Cut: &sawCut{
			Square: m.Angle, Toward: "the " + m.reference + " longer", Height: m.Thickness, Through: true,
			Stop: stop, Against: m.rest,
		},
		Then: []string{p.beyondTrim(m)},
		Once: []string{"Trimmed after the glue-up. Stretcher and leg have the same angle: one setting of the gauge. " + p.firstThrough(", to lines where they are shorter than the stop")},
	}
	if m.name == "stretcher" {
		s.Then = append(s.Then, "The lap has taken half of the plain end: the stop must reach what is left of it.")
	}
	s.Hand = handWork{Then: []string{p.beyondTrim(m)}, Once: []string{"Trimmed after the glue-up. " + p.firstThrough("")}}
	if m.Angle == 0 {
		s.Name, s.Cut.Toward = m.end+", square", ""
		s.Once = s.Hand.Once
	}
	// A square end that the crosscut has already put there needs no cut.
	return s, m.Angle > 0 || quantize(stop) < quantize(m.sawn)
}

// firstThrough says what is taken through the joint first: where there are no
// test pieces, the spare that every part has, which needs no words of how.
func (p batchedPiece) firstThrough(how string) string {
	first := "spares"
	if p.tested {
		first = "test pieces"
	} else {
		how = ""
	}
	return "Take the " + first + " through every row of the joint first" + how + ": the fit depends on their thickness, not on the drawing."
}

// beyondTrim says how far past its trim line an end is sawn. The trim line of a
// proud head is not the stretcher's top, from which its templates count.
func (p batchedPiece) beyondTrim(m member) string {
	words := p.MM(joint.BridleLong) + " beyond the trim line"
	if m.long > joint.BridleLong {
		words += ", " + p.MM(m.long) + " beyond the line of the stretcher's top"
	}
	return words + "."
}

func sawStrips(p batchedPiece) (step, bool) {
	b, ok := p.block(stripName)
	return step{
		Op: doSawBlocks, Name: "filler strip for the upright jig", Parts: []batch{b.batch}, Fence: "from " + b.From,
		Cut:     &sawCut{How: onTaper, Square: b.Angle, Height: b.Width, Through: true},
		Then:    []string{fmt.Sprintf("A wedge %s long, %s thin and %s thick.", p.MM(b.Across), p.MM(b.Thin), p.MM(b.Thick))},
		Test:    "with the strip beside it the part stands on the whole of its sawn end.",
		Caution: cautionSmall,
	}, ok
}

// sawCaul saws cauls from the ends of stretcher offcuts. There is no stop: the
// caul is what falls off, and it must not be trapped.
func (p batchedPiece) sawCaul(name, toward string) (step, bool) {
	b, ok := p.block(name)
	return step{
		Op: doSawBlocks, Name: b.Name, Parts: []batch{b.batch},
		Cut: &sawCut{
			Square: b.Angle, Toward: toward, Height: b.Width, Through: true,
			Line: b.Thick, From: "the square end, on the long side",
		},
		Then:    []string{"From the ends of " + b.From + " at least " + p.MM(p.SafeLength()) + " long. Sawn now, used at the glue-up."},
		Caution: cautionSmall,
	}, ok
}

func sawCauls(p batchedPiece) (step, bool) {
	return p.sawCaul(legCaulName, "as for the ends")
}

func sawEndCauls(p batchedPiece) (step, bool) {
	return p.sawCaul(endCaulName, "either way")
}

func knifeShoulders(p batchedPiece) (step, bool) {
	return step{
		Op: doKnifeShoulders, Name: "knife the shoulders round all four sides", Parts: []batch{p.stretchers, p.legs},
		Then: []string{"From the wrap-round. Where the lines do not meet at an arris the paper has slipped."},
	}, true
}

func cutSlot(p batchedPiece) (step, bool) {
	m := p.slotted()
	upper, _ := m.Cheeks()
	s := step{
		Op: doCutSlot, Name: "slot in the " + m.name, Parts: []batch{m.batch}, Down: "the rough end", Fence: "face side on the jig, then the back",
		Cut: &sawCut{How: upright, Square: m.Angle, Height: m.height, Stop: upper, Against: "jig's face to the near side of the blade"},
		Then: []string{
			"One cheek from each face" + stripSide(m) + ": the slot comes into the middle, " + p.MM(m.Tenon) + " wide. Then the rest between them in passes.",
			"Back the far side with waste wood so that it does not break out.",
		},
		Once: slotBottom(p.Piece),
		Hand: handWork{
			Then: []string{"Saw one cheek from each face in the waste beside the lines, " + p.MM(m.Tenon) + " apart, and chop out the rest from both sides."},
			Line: upper, From: "either face",
		},
		Test:    "the slot is " + p.MM(m.Tenon) + " wide at both faces, its bottom on the knifed lines.",
		Caution: cautionJig,
	}
	if m.Tenon < p.Kerf {
		s.Hand.Then = []string{}
		s.byHand("The slot is narrower than the kerf: saw and chop it by hand, "+p.MM(m.Tenon)+" wide, in the middle.", p.Kerf)
	}
	return s, true
}

// slotBottom says what the teeth leave at the bottom of a slot.
func slotBottom(p piece.Piece) []string {
	if p.Design.Saw.FlatTooth {
		return nil
	}
	return []string{"Leave the bottom to a chisel: the teeth leave a V."}
}

// stripSide says what becomes of the filler strip when the part is turned.
func stripSide(m member) string {
	if m.Angle == 0 {
		return ""
	}
	return ", the filler strip to the other side for the second"
}

func cutCheeks(p batchedPiece) (step, bool) {
	m := p.tenoned()
	upper, lower := m.Cheeks()
	return step{
		Op: doCutCheeks, Name: "tenon cheeks on the " + m.name, Parts: []batch{m.batch}, Down: "the rough end", Fence: "face side on the jig, then the back",
		Cut: &sawCut{How: upright, Square: m.Angle, Height: m.height, Stop: lower, Against: "jig's face to the near side of the blade"},
		Then: []string{
			"The waste, " + p.MM(upper) + " thick, lies away from the jig. The other face next" + stripSide(m) + ".",
		},
		Hand: handWork{Then: []string{"Saw both cheeks in the waste beside the lines and pare to them."}, Line: upper, From: "either face"},
		Test: "the tenon is " + p.MM(m.Tenon) + " thick and slides into the slot by hand.",
	}, true
}

// shoulder cuts the shoulders of the tenon, the part flat on the table: first
// on the face, then, rolled half a turn, on the back, where the other edge is
// on the fence and the gauge swings to the other side of square.
func (p batchedPiece) shoulder(back bool) (step, bool) {
	m := p.tenoned()
	upper, _ := m.Cheeks()
	s := step{
		Op: doCutShoulders, Name: "shoulder, face", Parts: []batch{m.batch}, Down: "face side", Fence: m.reference,
		Cut: &sawCut{
			Square: m.Angle, Toward: "parallel to the sawn end", Height: upper,
			Stop: m.shoulderStop(back), Against: m.rest,
		},
		Once: []string{"The stop puts the blade on the knifed line: saw a hair outside it and pare to it."},
		Hand: handWork{Then: []string{besideLine}},
	}
	switch {
	case back:
		s.Name, s.Down, s.Fence = "shoulder, back", "back", m.other
		s.Cut.Toward = "to the other side of square"
		s.Then = []string{"Rolled half a turn: the other edge on the fence, and another stop."}
	case m.Angle == 0:
		s.Name, s.Down, s.Cut.Toward = "shoulders, face and back", "face side, then back", ""
		s.Fence = m.reference + ", then " + m.other
	}
	return s, !back || m.Angle > 0
}

func fitBridle(p batchedPiece) (step, bool) {
	return step{
		Op: doFitBridle, Name: "fit every leg to its stretcher", Parts: []batch{p.stretchers.real(), p.legs.real()},
		Then: []string{"Pare the cheeks, not the shoulder. Number the pairs."},
		Test: "the tenon slides in by hand and stays when the joint is lifted; a bevel at " + p.Say(measure.Angle(p.Frame.Leg.Splay)) + " from square fits between stretcher and leg.",
	}, true
}
