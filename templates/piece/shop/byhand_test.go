package shop

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"rodsheet/geometry/joint"
	"rodsheet/templates/piece"
	"rodsheet/templates/piece/design"
	"rodsheet/templates/piece/internal/piecetest"
)

// A row that the saw cannot do speaks of no setting of the saw, and one that it
// can does not speak of hands.
func TestRowsByHandSpeakOfNoMachine(t *testing.T) {
	machine := []string{"stop", "spacer", "passes", "blade height", "blade stays", "jig", "fence", "guard", "setting of the gauge", "filler strip"}
	for name, designs := range settingsCases() {
		for _, highest := range []float64{1, 10, 15, 20, 30} {
			for i := range designs {
				designs[i].Saw.Highest = highest
			}
			for i, s := range workingOrder(workAll(t, designs...)) {
				if s.Cut == nil || s.Op == doSawBlocks {
					continue
				}
				said := strings.Join(s.cells(), " ") + " " + s.words()
				if byHand := strings.Contains(said, "by hand, "); byHand != s.Cut.ByHand {
					t.Errorf("%s, blade %v, row %d: by hand %v in %s", name, highest, i+1, s.Cut.ByHand, said)
				}
				for _, w := range machine {
					if s.Cut.ByHand && strings.Contains(strings.ToLower(said), w) {
						t.Errorf("%s, blade %v, row %d is by hand and speaks of %q: %s", name, highest, i+1, w, said)
					}
				}
			}
		}
	}
}

// What is knifed in the place of a stop lies where the stop would put the cut.
func TestLinesByHand(t *testing.T) {
	d := piecetest.Low()
	d.Saw.Highest = 1
	d.Ring.Plain, d.Ring.Slack = design.ClosedEnd, 0.5
	d.Legs.Mortise = joint.MortiseInLeg
	d.Legs.Proud, d.Top.Kind = 4, design.NoTop
	p := workAll(t, d)[0]
	steps := workingOrder([]piece.Piece{p})
	inner, outer := p.Frame.Ring.Shoulders(0)
	leg := p.Leg().Bounds()
	edge := leg.Size().Z/math.Cos(p.Frame.Leg.Splay) + joint.BridleLong
	cheek := (p.Frame.Ring.Width - p.Bridle.Tenon) / 2
	for _, c := range []struct {
		op          operation
		row         int
		line, along float64
	}{
		{op: doCrosscut, row: 0, line: p.RoughStretcher()},
		{op: doCutLap, row: 0, line: p.RoughReach() - inner, along: outer - inner},
		{op: doCutLap, row: 1, line: p.RoughReach() - inner, along: outer - inner + 0.5/math.Sin(math.Pi/3)},
		{op: doSawEnd, row: 0, line: p.RoughReach() + p.LegReach + joint.BridleLong},
		{op: doCutSlot, row: 0, line: cheek},
		{op: doCutCheeks, row: 0, line: cheek},
		{op: doCutShoulders, row: 0, line: p.RoughReach() + p.Frame.Leg.Inner(p.Frame.Ring.Depth)},
		{op: doSawFoot, row: 0, line: edge},
	} {
		s := only(steps, c.op)[c.row]
		if math.Abs(s.Cut.Line-c.line) > 1e-9 || math.Abs(s.Cut.Along-c.along) > 1e-9 {
			t.Errorf("%s: line %.6f, lap %.6f, want %.6f and %.6f", s.Name, s.Cut.Line, s.Cut.Along, c.line, c.along)
		}
	}
}

// The filler strip is made for the upright jig: where nothing stands in that, no
// list has one.
func TestFillerStripOnlyForTheJig(t *testing.T) {
	for name, designs := range settingsCases() {
		for _, c := range []struct{ highest, kerf float64 }{{0, 3.2}, {60, 3.2}, {39, 3.2}, {20, 3.2}, {0, 11}, {38, 11}, {40, 11}} {
			for i := range designs {
				designs[i].Saw.Highest, designs[i].Saw.Kerf = c.highest, c.kerf
			}
			pieces := workAll(t, designs...)
			stands, strips := false, false
			for _, s := range workingOrder(pieces) {
				stands = stands || s.Cut != nil && s.Cut.How == upright && !s.Cut.ByHand
				strips = strips || s.Parts != nil && s.Parts[0].Part == stripName
			}
			listed := strings.Contains(fmt.Sprint(CutList(pieces)[0], GlueUp(pieces)[0]), stripName)
			if strips != stands || listed != stands {
				t.Errorf("%s, %v: a part stands in the jig %v, strip set %v, listed %v", name, c, stands, strips, listed)
			}
		}
	}
}
