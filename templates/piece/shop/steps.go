package shop

import (
	"fmt"
	"math"
	"strings"

	"rodsheet/geometry/joint"
	"rodsheet/geometry/measure"
	"rodsheet/templates/piece"
	"rodsheet/templates/piece/design"
)

const (
	cautionPower  = "Isolate power before setting. Follow the machine's manual and keep its guards on. Local rules and licensed practice come before this sheet."
	cautionOffcut = "Never trap an offcut between fence and blade."
	cautionJig    = "The jig slides along the fence; a featherboard holds it there. Hands stay on the jig, never above or beside the cut."
	cautionSmall  = "Small angled parts are held in a jig or clamped, and moved with a push block; cut them free last."
	cautionTaper  = "Use a tapering jig with hold-downs, the guard and a push block. Short or thin legs are safer by hand saw and plane."
	cautionGlue   = "Glue, finish and finish-soaked rags are handled by their data sheets."
	cautionGlass  = "Glass tempered, its edges worked; never lift a piece by a top that is only bonded on."
)

// stockOps mills everything at once: only wood of one milling gives laps and
// tenons that fit alike, spares and test pieces among them.
func stockOps() []op {
	return []op{millStretchers, millLegs, millTop,
		measureStretcherWidth, measureDepth, measureBreadth, measureKerf,
		crosscutStretchers, crosscutLegs, crosscutTests}
}

func millStretchers(p batchedPiece) (step, bool) {
	s := p.SawnStretcher()
	return step{
		Op: doMill, Name: "plane to " + p.Bare(s.Width) + " × " + p.MM(s.Thickness), Parts: []batch{p.stretchers},
		Once:    []string{"Mill all stock of all sizes now, " + extras(p.tested) + " with it, each setting of the planer once. A piece milled later never matches."},
		Caution: cautionPower,
	}, true
}

func millLegs(p batchedPiece) (step, bool) {
	s := p.SawnLeg()
	return step{
		Op: doMill, Name: "plane to " + p.Bare(s.Width) + " × " + p.MM(s.Thickness), Parts: []batch{p.legs},
		Then: []string{"The thickness of the legs is the width of the stretchers: one setting for both."},
	}, true
}

func millTop(p batchedPiece) (step, bool) {
	if p.Design.Top.Kind != design.WoodTop {
		return step{}, false
	}
	return step{
		Op: doMill, Name: "joint, glue up the panel, plane to " + p.MM(p.Design.Top.Thickness), Parts: []batch{p.topBoards},
		Then: []string{"Finished panel at least " + p.MM(p.TopPanel().Length) + " along the grain × " + p.MM(p.TopPanel().Width) + "."},
	}, true
}

// measured is a figure to be measured, written down and put into the design.
func (p batchedPiece) measured(name string, mm float64) (step, bool) {
	return step{
		Op: doMeasure, Name: "measure " + name + ": " + p.MM(mm),
		Once: []string{"Write down what it came out at. Where it differs, put it under [milled] in the design file and print again: every setting below follows the wood as it is."},
	}, true
}

func measureStretcherWidth(p batchedPiece) (step, bool) {
	return p.measured("width of stretcher, thickness of leg", p.Frame.Ring.Width)
}

func measureDepth(p batchedPiece) (step, bool) {
	return p.measured("depth of stretcher", p.Frame.Ring.Depth)
}

func measureBreadth(p batchedPiece) (step, bool) {
	return p.measured("breadth of leg", p.Frame.Leg.Breadth)
}

func measureKerf(p batchedPiece) (step, bool) {
	return p.measured("the kerf of a cut into an offcut", p.Kerf)
}

// squareFirst makes the end that the stop is set against.
const squareFirst = "Square one end, then saw to the stop."

// squared is a crosscut to length, square.
func (p batchedPiece) squared(part batch, size piece.StockSize, fence string) (step, bool) {
	return step{
		Op: doCrosscut, Name: part.Part + ", square to length", Parts: []batch{part}, Fence: fence,
		Cut:     &sawCut{Height: size.Thickness, Through: true, Stop: size.Length, Against: "squared end"},
		Test:    "stood side by side they are of one length, and a square shows no light.",
		Caution: cautionOffcut,
		Hand:    handWork{Then: []string{squareByHand}},
	}, true
}

func crosscutStretchers(p batchedPiece) (step, bool) {
	part := p.stretchers
	part.Tests = 0
	s, ok := p.squared(part, p.SawnStretcher(), "inside edge")
	mark := "First mark each: inside edge, which is its face side, top, leg end, plain end. Seen on the inside edge, top up, the leg end is on the right."
	s.Then = []string{mark, squareFirst, "Both ends stay square: the stops of the laps are set against them."}
	s.Hand.Then = []string{mark, squareByHand, "Both ends stay square: the laps are measured from them."}
	return s, ok
}

func crosscutLegs(p batchedPiece) (step, bool) {
	part := p.legs
	part.Tests = 0
	s, ok := p.squared(part, p.SawnLeg(), "inner edge")
	mark := "First mark each: face side, which looks into the ring, head, foot, inner edge, which is towards its stretcher. Seen on the face side, head up, the inner edge is on the left."
	s.Then, s.Hand.Then = []string{mark, squareFirst}, []string{mark, squareByHand}
	return s, ok
}

func crosscutTests(p batchedPiece) (step, bool) {
	stretcher, leg := p.stretchers, p.legs
	part := batch{Part: "test piece", Count: stretcher.Tests + leg.Tests}
	s, _ := p.squared(part, p.TestPiece(p.SawnStretcher()), none)
	s.Fence, s.Then = "", []string{squareFirst}
	return s, part.Count > 0
}

// glueOps is the assembly. Ends that stand proud are trimmed when the glue of
// the bridles is hard and before the ring is closed, while each leg with its
// stretcher still lies flat on the bench.
func glueOps() []op { return []op{glueLegs, trimHeads, glueRing, fitPads, fitTop} }

func glueLegs(p batchedPiece) (step, bool) {
	return step{
		Op: doGlueLegs, Name: "glue each leg into its stretcher", Parts: []batch{p.stretchers.real(), p.legs.real()},
		Then:    []string{"Dry run first, with every caul and clamp. How stands under Glue-up."},
		Test:    "the bevel set to " + p.Say(measure.Angle(p.Frame.Leg.Splay)) + " from square fits between stretcher and leg before the glue takes.",
		Caution: cautionGlue,
	}, true
}

func trimHeads(p batchedPiece) (step, bool) {
	return step{
		Op: doTrimHeads, Name: "trim proud heads and ends", Parts: []batch{p.stretchers.real(), p.legs.real()},
		Then: []string{"When the glue is hard: " + trimWords(p.Piece)},
	}, true
}

func glueRing(p batchedPiece) (step, bool) {
	return step{
		Op: doGlueRing, Name: "glue the ring", Parts: []batch{p.stretchers.real()},
		Then: []string{"Dry run first. All stretchers at once and evenly; how stands under Glue-up."},
		Test: "inside " + p.MM(p.Frame.Ring.Inside) + " on every side, and " + p.MM(p.FootSpread()) + " from each foot to the next.",
	}, true
}

func fitPads(p batchedPiece) (step, bool) {
	name, word := "pad", "Glue one on every stretcher"
	if p.Design.Top.Pads.Bumpers {
		name, word = "bumper", "Stick one on every stretcher"
	}
	return step{
		Op: doFitPads, Name: name + "s", Parts: []batch{{Part: name, Size: p.Design.Size, Count: p.Frame.Ring.Sides}},
		Then: []string{fmt.Sprintf("%s, its centre %s from mid-length towards the leg, on the centre line.", word, p.MM(p.PadAt()))},
		Test: "a straight edge over any two lies level.",
	}, p.Design.Top.PadHeight() > 0
}

func fitTop(p batchedPiece) (step, bool) {
	s := step{Op: doFitTop, Name: "lay the top", Parts: []batch{{Part: "top", Size: p.Design.Size, Count: 1}}}
	switch p.Design.Top.Kind {
	case design.GlassTop:
		s.Then = placing(p.Piece)
		s.Caution = cautionGlass
	case design.WoodTop:
		s.Name = "saw the outline, fix the top"
		s.Then = append(placing(p.Piece), "Fix it so that it can move across the grain: round holes on the middle line, slots elsewhere.")
	}
	return s, p.Design.Top.Kind != design.NoTop
}

// placing says where the top lies over the ring. A free outline need not follow
// it: what places that is how far it stands past each stretcher.
func placing(p piece.Piece) []string {
	if p.Design.Top.Outline != design.FreeOutline {
		return []string{"The same overhang all round."}
	}
	sides, corners := p.Overhangs()
	out := []string{
		"Any stretcher is the first; the others follow counter-clockwise, seen from above.",
		"Past the outside edge, at mid-length and square to it, the top stands " + inOrder(p, sides) + ".",
		"Past the outside corner by the leg end, on the line from the ring's centre, it stands " + inOrder(p, corners) + ".",
	}
	if p.Design.Top.PadHeight() > 0 {
		out = append(out, "The template of the top has the pads in their places.")
	}
	return out
}

// inOrder names a length for each stretcher.
func inOrder(p piece.Piece, all []float64) string {
	words := make([]string, len(all))
	for i, mm := range all {
		words[i] = fmt.Sprintf("%s at stretcher %d", p.MM(mm), i+1)
	}
	return strings.Join(words, ", ")
}

// real leaves out what is not built in.
func (b batch) real() batch {
	b.Spares, b.Tests = 0, 0
	return b
}

// spared leaves out the test pieces.
func (b batch) spared() batch {
	b.Tests = 0
	return b
}

// taperOps is what comes after every joint and before the glue.
func taperOps() []op { return []op{sawFoot, cutTaper, trimPlainEnd} }

// sawFoot saws the foot parallel to the head. The blank with square ends is
// just so long that both cuts leave it at its long corners, so head and foot
// have one stop.
func sawFoot(p batchedPiece) (step, bool) {
	splay, edge := p.Frame.Leg.Splay, p.Frame.Leg.Length()+p.HeadLong()
	return step{
		Op: doSawFoot, Name: "foot, parallel to the head", Parts: []batch{p.legs.spared()}, Down: "face side", Fence: "outer edge",
		Cut: &sawCut{
			Square: splay, Toward: "as for the head", Height: p.Frame.Leg.Thickness, Through: true,
			Stop: p.SawnLeg().Length, Against: "long corner of the head",
		},
		Then: []string{
			"The leg turned end for end, the same face down: one gauge setting gives parallel ends.",
			"The long corner is on the inner edge, away from the fence: the stop must reach out to it.",
		},
		Test: "head and foot parallel: a bevel set at one end fits the other, from the same edge. Either edge measures " + p.MM(edge) + " from end to end.",
		Hand: handWork{
			Then: []string{"Struck with the bevel of the head, from the same edge: so the ends come parallel."},
			Line: edge, From: "the sawn head, along either edge",
		},
	}, splay > 0
}

func cutTaper(p batchedPiece) (step, bool) {
	if p.Taper == nil {
		return step{}, false
	}
	t := p.Taper
	return step{
		Op: doCutTaper, Name: "taper, " + taperedFaces(t.Faces), Parts: []batch{p.legs.spared()}, Fence: straightFace(t.Faces) + " on the jig",
		Cut: &sawCut{
			How: onTaper, Square: t.Angle(), Height: taperCut(p.Piece), Through: true,
			Line: t.Run(), From: "the foot, up the outer edge, squared across",
		},
		Then:    taperWords(p.Piece),
		Once:    []string{"Joints are cut by now: they want a square blank."},
		Test:    "the sole measures " + p.MM(sole(p.Piece)) + " from the inner to the outer edge, and a straight edge lies on the whole taper.",
		Caution: cautionTaper,
		Hand:    handWork{Then: taperByHand(p.Piece), Once: []string{"Joints are cut by now: they want a square blank."}},
	}, true
}

// sole returns what the tapered foot measures on the floor, in the plane of its
// stretcher. Across the leg from its outer edge the floor climbs the leg by
// tan Splay, and every mm up the leg gives Loss/Run back: with k the product of
// the two, the inner face stands (Breadth − Loss)/(1 − k) from that edge, a
// tapered outer face Loss/(1 + k).
func sole(p piece.Piece) float64 {
	l, t := p.Frame.Leg, p.Taper
	k := math.Tan(l.Splay) * t.Loss() / t.Run()
	across := (l.Breadth - t.Loss()) / (1 - k)
	if t.Faces.Symmetric() {
		across -= t.Loss() / (1 + k)
	}
	return across / math.Cos(l.Splay)
}

// taperCut returns how high the blade must come through: the thickness where
// the leg lies on its face, the larger way where it is rolled too.
func taperCut(p piece.Piece) float64 {
	l := p.Frame.Leg
	if p.Taper.Faces == joint.OneFace || p.Taper.Faces == joint.OppositeFaces {
		return l.Thickness
	}
	return max(l.Thickness, l.Breadth)
}

func taperedFaces(f joint.TaperFaces) string {
	switch f {
	case joint.AdjacentFaces:
		return "inner face and the face into the ring"
	case joint.OppositeFaces:
		return "inner and outer face"
	case joint.FourFaces:
		return "four faces"
	}
	return "inner face"
}

func straightFace(f joint.TaperFaces) string {
	if f == joint.OneFace || f == joint.AdjacentFaces {
		return "outer edge"
	}
	return "edge opposite the cut"
}

// trimPlainEnd cuts the plain end to its finished length. There is no stop: the
// offcut would be trapped between it and the blade.
func trimPlainEnd(p batchedPiece) (step, bool) {
	lap := p.EndLap()
	lapUp, _ := cutFaces(p.Piece)
	s := step{
		Op: doTrimPlainEnd, Name: "plain end, square to its horn", Parts: []batch{p.stretchers.spared()}, Down: lapUp, Fence: "inside edge",
		Cut:  &sawCut{Height: p.Frame.Ring.Depth, Through: true, Line: p.RoughReach() - p.PlainReach, From: "the plain end"},
		Test: "with the ring laid together dry the horns are all alike.",
	}
	if p.Design.Ring.Plain == design.FlushEnd {
		_, square := lap.Gauge()
		s.Name = "plain end, flush"
		s.Cut.Square, s.Cut.Toward = square, swingWords(lap)
		s.Cut.Line, s.Cut.From = lap.At, "the plain end, along the inside edge"
		s.Test = "with the ring laid together dry the end is flush with the neighbour's outside edge."
	}
	return s, true
}
