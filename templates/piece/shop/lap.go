package shop

import (
	"fmt"
	"math"

	"rodsheet/geometry/joint"
	"rodsheet/geometry/measure"
	"rodsheet/templates/piece"
	"rodsheet/templates/piece/design"
)

// lapOps is all that is sawn at one blade height, half the depth: the test
// lap, the laps at both ends, the plain ends opened out.
func lapOps() []op { return []op{testLap, cutLaps, slackLaps, openEnds} }

// ringOps tries the ring before any joint that depends on it is cut.
func ringOps() []op { return []op{dryRing(false)} }

// trimmedRingOps does so where the ring goes together only once its ends are
// trimmed.
func trimmedRingOps() []op { return []op{dryRing(true)} }

// cutFaces returns the faces that are cut at the leg end and at the plain end:
// the underside where the stretcher passes over its neighbour.
func cutFaces(p piece.Piece) (legEnd, plainEnd string) {
	if p.Frame.Over {
		return "top", "underside"
	}
	return "underside", "top"
}

// swingWords says to which side of square the gauge swings. Seen from the end, an
// obtuse lap leans back over it.
func swingWords(l joint.Lap) string {
	switch shift := l.Shift(); {
	case math.Abs(shift) < 1e-9:
		return ""
	case shift < 0:
		return "the cut nearer the end on the outside edge"
	}
	return "the cut nearer the end on the inside edge"
}

// lapCut returns how the saw stands for a lap of p.
func lapCut(p piece.Piece) *sawCut {
	l := p.EndLap()
	_, square := l.Gauge()
	return &sawCut{
		Square: square, Toward: swingWords(l), Height: l.BladeHeight(),
		Stop: l.Stop(), Against: "end of the stretcher, for the inner shoulder",
		Spacer: l.Spacer(),
	}
}

func testLap(p batchedPiece) (step, bool) {
	part := batch{Part: "test piece", Count: p.stretchers.Tests}
	legEnd, _ := cutFaces(p.Piece)
	cut := lapCut(p.Piece)
	cut.Stop, cut.Against = 0, "" // any place on the piece will do
	if !p.tested {
		part.Part = "offcut of stretcher stock"
	}
	return step{
		Op: doTestLap, Name: "test lap", Parts: []batch{part}, Down: legEnd, Fence: "inside edge", Cut: cut,
		Then: []string{"Blade height first: lapped square, two offcuts of the same milling come flush. Then one shoulder with the end against a stop, anywhere, the other with the spacer between part and stop, the rest in passes between them."},
		Once: append([]string{usualRule(p.Piece)}, bottom(p.Piece)...),
		Test: "the crossing part goes in by hand without shake, and the faces come flush. Too tight: lengthen the spacer. Too loose: shorten it.",
		Hand: handWork{
			Then: []string{"A marking gauge set to half the depth first: from top and underside it strikes one line. Knife both shoulders from the template. " + lapByHand},
			Test: "the crossing part goes in by hand without shake, and the faces come flush. Too tight: pare the shoulders. Too loose: keep farther inside the lines.",
		},
	}, true
}

// usualRule says by how much the shop rule for the spacer misses.
func usualRule(p piece.Piece) string {
	square, along := p.EndLap().UsualRuleExcess()
	if square == 0 {
		return "The usual rule, edge length less the kerf, gives the same spacer at 90°."
	}
	return fmt.Sprintf("The usual rule, edge length less the kerf, makes the spacer %s too long and the lap %s too wide: the blade crosses the edge slanting.",
		p.MM(along), p.MM(square))
}

// bottom says how the bottom of a lap is cleared and finished.
func bottom(p piece.Piece) []string {
	var out []string
	if width := p.Frame.Ring.Width; p.Design.Saw.Dado > 0 && p.Design.Saw.Dado <= width {
		out = append(out, fmt.Sprintf("With a dado set of %s, at the same height, the rest comes out in %s; the shoulders are sawn first, with the plain blade, for whose kerf of %s the spacer stands.",
			p.MM(p.Design.Saw.Dado), p.DadoPasses(width), p.MM(p.Kerf)))
	}
	if !p.Design.Saw.FlatTooth {
		out = append(out, "Leave the bottom to a router plane or a chisel: the teeth leave a V.")
	}
	return out
}

// innerLine returns how far the inner shoulder of a lap stands from the end, along
// the inside edge.
func innerLine(p piece.Piece) float64 { return p.EndLap().At + p.EndLap().EdgeLength() }

// cutLaps is both laps of every stretcher at one setting.
func cutLaps(p batchedPiece) (step, bool) {
	legEnd, plainEnd := cutFaces(p.Piece)
	return step{
		Op: doCutLap, Name: "laps, both ends", Parts: []batch{p.stretchers.spared()},
		Down: "leg end: " + legEnd + ", then plain end: " + plainEnd, Fence: "inside edge", Cut: lapCut(p.Piece),
		Then: []string{"Leg ends first, " + legEnd + " down. Then tumble the stretcher end over end: " + plainEnd +
			" down, the same edge on the fence, the plain end against the stop. All inner shoulders, then all outer ones with the spacer, then the rest between them in passes."},
		Once: []string{"Never roll it about its length: the other edge comes to the fence and the stop no longer serves. Never turn it flat, end for end: the lap leans the wrong way and on the wrong face."},
		Test: "two stretchers cross at " + p.Say(measure.Angle(p.Frame.Ring.Angle())) + " and come flush.",
		Hand: handWork{
			Then: []string{"Leg ends first, on the " + legEnd + ". Then tumble the stretcher end over end, the same edge towards you: the plain end has its lap on the " + plainEnd + ". " + lapByHand},
			Once: []string{"Never roll it about its length, nor turn it flat, end for end: the lap comes on the wrong face or leans the wrong way."},
			Line: innerLine(p.Piece), From: "the end of the stretcher, along the inside edge, for the inner shoulder",
		},
	}, true
}

// slackLaps widens closed plain ends by their play, which leaves the inner
// shoulder and moves the outer one towards the end.
func slackLaps(p batchedPiece) (step, bool) {
	_, plainEnd := cutFaces(p.Piece)
	cut := lapCut(p.Piece)
	cut.Spacer += p.Design.Ring.Slack / math.Sin(p.Frame.Ring.Angle())
	cut.Against = "plain end"
	return step{
		Op: doCutLap, Name: "laps, plain end: slack at the outer shoulder", Parts: []batch{p.stretchers.spared()},
		Down: plainEnd, Fence: "inside edge", Cut: cut,
		Then: []string{"Only the outer shoulder, with the longer spacer, and in passes what stands beside it: the lap comes " + p.MM(p.Design.Ring.Slack) + " wider, square to it."},
		Hand: handWork{
			Then: []string{"Only the outer shoulder, to a line farther out: the lap comes " + p.MM(p.Design.Ring.Slack) + " wider, square to it."},
			Line: innerLine(p.Piece), From: "the plain end, along the inside edge, for the inner shoulder",
		},
	}, p.Design.Ring.Plain == design.ClosedEnd && p.Design.Ring.Slack > 0
}

const slidesShut = "Only with the outer shoulder of every plain end gone does the ring slide shut."

// openEnds clears the plain end from the lap out to the end.
func openEnds(p batchedPiece) (step, bool) {
	_, plainEnd := cutFaces(p.Piece)
	cut := lapCut(p.Piece)
	l := p.EndLap()
	cut.Stop, cut.Against, cut.Spacer = 0, "", 0
	cut.Line, cut.From = l.At, "the plain end, along the inside edge"
	widest := (l.At + math.Max(0, l.Shift())) * math.Sin(l.Angle)
	clear := "Passes from the outer shoulder, the line, out to the end."
	if p.Design.Saw.Dado > 0 {
		clear += fmt.Sprintf(" With the dado set %s.", p.DadoPasses(widest))
	}
	return step{
		Op: doOpenEnd, Name: "open the plain ends", Parts: []batch{p.stretchers.spared()},
		Down: plainEnd, Fence: "inside edge", Cut: cut,
		Then: []string{"The blade stays at the height of the laps. " + clear},
		Once: []string{slidesShut},
		Test: "the bottom runs level from the lap to the end.",
		Hand: handWork{
			Then: []string{"As deep as the laps, from the outer shoulder, the line, out to the end: saw across in several places, chop the wood out and pare the bottom."},
			Once: []string{slidesShut},
		},
	}, p.Design.Ring.Plain != design.ClosedEnd
}

// dryRing lays the ring together before anything else is cut, or where it does
// not go together so, once its ends are trimmed.
func dryRing(trimmed bool) op {
	return func(p batchedPiece) (step, bool) {
		how := "Lay each plain end at the mouth of its neighbour's lap and slide the ring shut flat, all stretchers at once."
		if p.Design.Ring.Plain == design.ClosedEnd {
			how = closedWords(p.Piece)
		}
		o := doDryRing
		if trimmed {
			o = doDryTrimmedRing
		}
		return step{
			Op: o, Name: "lay the ring together dry", Parts: []batch{p.stretchers.real()},
			Then: []string{how, "Number the laps."},
			Test: "every lap flush and closed, the inside " + p.MM(p.Frame.Ring.Inside) + " on every side.",
		}, trimmed == p.TrimFirst()
	}
}

// closedWords says how a ring goes together whose laps all have both shoulders.
func closedWords(p piece.Piece) string {
	return "With closed laps the ring cannot slide shut. Tilt all stretchers alike, enter every lap a little, and let them down together, a little at a time; the slack of " +
		p.MM(p.Design.Ring.Slack) + " eases the plain ends only."
}
