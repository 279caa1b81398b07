package box

import (
	"math"

	"rodsheet/geometry/joint"
	"rodsheet/geometry/lists"
	"rodsheet/geometry/measure"
	"rodsheet/geometry/solid"
	"rodsheet/templates/piece/design"
	"rodsheet/templates/piece/kind"
)

// mostTilt is that of the blade of a saw, degrees (common practice, no source).
const mostTilt = 45.0

// thinnestBehind is the wood that is to stay behind the slot of a spline (common practice,
// no source).
const thinnestBehind = 2.0 // mm

// Checks are the questions asked before wood is cut.
func (b Box) Checks() []kind.Check {
	u := b.design.Unit
	tilt, edges, blank := 0.0, 0.0, 0.0
	for _, s := range b.sorts() {
		tilt = math.Max(tilt, math.Abs(b.tilt(s.first)))
		edges = math.Max(edges, math.Abs(b.faces[s.first].slope))
		blank = math.Max(blank, b.blank(s.first))
	}
	bottom, floored := b.bottom()
	sawn := floored || !b.dovetailed() // else all level edges are planed
	if !sawn {
		edges = 0
	}
	most := measure.Angle(measure.Radians(mostTilt))
	out := []kind.Check{texts.Limited(u, "box.tilt", measure.Angle(tilt), measure.IsAtMost, most, kind.Fail)}
	if sawn {
		out = append(out, texts.Limited(u, "box.edge-tilt", measure.Angle(edges), measure.IsAtMost, most, kind.Warn))
	}
	if highest := b.design.Saw.Highest; highest > 0 {
		// The blade rises along itself: tilted it reaches cos as high over the table.
		reach := highest * math.Cos(math.Max(tilt, edges))
		out = append(out, texts.AtMost(u, "box.blade", b.thickness(), reach, kind.Warn))
	}
	if boards := b.design.Wood.Boards; len(boards) > 0 {
		widest := lists.Most(boards, func(b design.Board) float64 { return b.Width })
		out = append(out, texts.AtMost(u, "box.board", blank+b.design.Wood.ExtraWidth, widest, kind.Warn))
	}
	if b.splined() {
		out = append(out, texts.AtLeast(u, "box.spline-wood", b.behindSpline(), thinnestBehind, kind.Warn))
	}
	if floored {
		k := b.design.Box.Bottom
		out = append(out, texts.AtMost(u, "box.bottom-inside", k.Up+k.Thickness, b.design.Box.Height, kind.Fail))
		if grows, known := b.growth(bottom); known {
			out = append(out, texts.AtLeast(u, "box.bottom-gap", 2*k.Gap, grows, kind.Warn))
		}
	}
	return out
}

// behindSpline returns the least wood between the slot of a spline and a face of its side.
//
// Over the mitre, w wide, the slot's outer side is w − place·w − spline/2 from the outer
// corner; from there it goes deep into the board, square to the mitre. The mitre leans by
// the tilt off square to the face, so a point that far along it lies cos tilt of that under
// the face, and every mm of depth brings it sin tilt nearer. To the hollow side there is
// least wood at the mouth, place·w − spline/2 along the mitre.
func (b Box) behindSpline() float64 {
	s, c := math.Sincos(b.tilt(0))
	half := b.splineThick() / 2
	outer := c*((1-splinePlace)*b.mitre()-half) - s*b.slotDeep()
	return math.Min(outer, c*(splinePlace*b.mitre()-half))
}

// growth returns by how much the bottom grows across its grain, which runs along it, over
// the moisture that the design states; known is false for a wood without figures.
func (b Box) growth(bottom solid.Solid) (mm float64, known bool) {
	wood, known := b.design.Wood.Known()
	if !known || wood.Tangential == 0 {
		return 0, false
	}
	size := bottom.Bounds().Size()
	m := joint.Movement{Width: math.Min(size.X, size.Y), Coefficient: wood.Tangential, From: b.design.Wood.MoistureFrom, To: b.design.Wood.MoistureTo}
	return math.Abs(m.Change()), true
}

// mends are the keys that may mend a check.
func mends() map[measure.ID][]design.Key {
	return map[measure.ID][]design.Key{
		"box.tilt":          {"box.slope", "box.end-slope"},
		"box.edge-tilt":     {"box.slope", "box.end-slope"},
		"box.blade":         {"box.thickness", "box.slope", "box.end-slope"},
		"box.board":         {"box.height", "box.slope", "box.end-slope"},
		"box.spline-wood":   {"box.spline", "box.thickness"},
		"box.bottom-inside": {"box.bottom.up", "box.height"},
		"box.bottom-gap":    {"box.bottom.gap"},
	}
}
