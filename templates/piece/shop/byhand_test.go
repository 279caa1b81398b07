package shop

import (
	"math"
	"slices"
	"testing"

	"rodsheet/geometry/joint"
	"rodsheet/templates/piece"
	"rodsheet/templates/piece/design"
	"rodsheet/templates/piece/internal/piecetest"
)

// What is knifed in the place of a stop lies where the stop would put the cut: on
// a leg along its back, on a stretcher along its underside or ring side.
func TestLinesByHand(t *testing.T) {
	d := piecetest.Low()
	d.Saw.Highest = 1
	d.Ring.Plain, d.Ring.Slack = design.ClosedEnd, 0.5
	d.Legs.Mortise = joint.MortiseInLeg
	d.Legs.Proud, d.Top.Kind = 4, design.NoTop
	p := piecetest.WorkedAll(t, d)[0]
	steps := stepsOf([]piece.Piece{p})
	inner, outer := p.Frame.Ring.Shoulders(0)
	leg := p.Leg().Bounds()
	edge := leg.Size().Z/math.Cos(p.Frame.Leg.Splay) + p.Bridle.Long
	cheek := (p.Frame.Ring.Width - p.Bridle.Tenon) / 2
	for _, c := range []struct {
		op          Do
		row         int
		line, along float64
	}{
		{op: Crosscut, row: 0, line: p.RoughStretcher()},
		{op: CutLap, row: 0, line: p.RoughReach() - inner, along: outer - inner},
		{op: CutLap, row: 1, line: p.RoughReach() - inner, along: outer - inner + 0.5/math.Sin(math.Pi/3)},
		{op: SawEnd, row: 0, line: p.RoughReach() + p.LegReach + p.Bridle.Long},
		{op: SawEnd, row: 1, line: edge},
		{op: CutSlot, row: 0, line: cheek},
		{op: CutCheeks, row: 0, line: cheek},
		{op: CutShoulders, row: 0, line: p.RoughReach() + p.Frame.Leg.StretcherSide(p.Frame.Ring.Depth)},
		{op: SawFoot, row: 0, line: edge},
	} {
		s := only(steps, c.op)[c.row]
		if from := s.Cut.From.Along; s.Parts[0].Part == Leg && from != Back && s.Cut.From.Point != EitherFace {
			t.Errorf("%v: the line is measured along %v", s.What, from)
		}
		if math.Abs(s.Cut.Line-c.line) > 1e-9 || math.Abs(s.Cut.Along-c.along) > 1e-9 {
			t.Errorf("%v: line %.6f, lap %.6f, want %.6f and %.6f", s.What, s.Cut.Line, s.Cut.Along, c.line, c.along)
		}
	}
}

// The filler strip is made for the tenoning jig: where nothing stands in that, no
// list has one.
func TestFillerStripOnlyForTheJig(t *testing.T) {
	for name, designs := range piecetest.Cases() {
		for _, c := range []struct{ highest, kerf float64 }{{0, 3.2}, {60, 3.2}, {39, 3.2}, {20, 3.2}, {0, 11}, {38, 11}, {40, 11}} {
			for i := range designs {
				designs[i].Saw.Highest, designs[i].Saw.Kerf = c.highest, c.kerf
			}
			pieces := piecetest.WorkedAll(t, designs...)
			stands, strips := false, false
			for _, s := range stepsOf(pieces) {
				stands = stands || s.Cut.How == OnEnd && !s.Cut.ByHand()
				strips = strips || s.Parts != nil && s.Parts[0].Part == FillerStrip
			}
			listed := slices.ContainsFunc(cutListOf(pieces).Rows, func(r CutRow) bool { return r.Part == FillerStrip })
			if strips != stands || listed != stands {
				t.Errorf("%s, %v: a part stands in the jig %v, strip set %v, listed %v", name, c, stands, strips, listed)
			}
		}
	}
}
