package drawings

import (
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"rodsheet/geometry"
	"rodsheet/geometry/joint"
	"rodsheet/geometry/measure"
	"rodsheet/templates"
	"rodsheet/templates/piece"
	"rodsheet/templates/piece/internal/piecetest"
	"rodsheet/templates/piece/shop"
)

// A gauge is set from the corner that the sheet of angles names for a step of the
// cards, laid to the edge of the part, and strikes the cut of that step.
func TestGaugeStrikesTheCut(t *testing.T) {
	found := 0
	rapid.Check(t, func(t *rapid.T) {
		d := piecetest.Sound(t)
		if rapid.Bool().Draw(t, "tapered") {
			d.Legs.Taper = piecetest.Taper(t, d)
		}
		pieces := []piece.Piece{piecetest.Worked(t, d)}
		var sheet templates.Section
		for stage := range shop.FinishStage {
			angles, err := anglesJob(pieces, stage, aSheet)
			if err != nil {
				t.Fatal(err)
			}
			sheet.Append(angles)
		}
		var steps []shop.Step
		for _, c := range shop.NewPlan(pieces).Cards {
			steps = append(steps, c.Steps...)
		}
		for _, step := range steps {
			corner, want := step.Cut.Bevel(), step.Cut.OffSquare
			if step.Cut.How == shop.OnTaper {
				corner, want = step.Cut.OffSquare, math.Pi/2-step.Cut.OffSquare
			}
			if _, _, err := joint.Acute(corner); err != nil || want == 0 {
				continue
			}
			found++
			gauge := cornerNamed(t, sheet, measure.Angle(corner).Text(d.Unit))
			// The stock lies along the edge, so the blade strikes a line that
			// encloses the gauge's corner with it.
			edge := geometry.Pt(1, 0)
			struck := geometry.Polar(1, gauge)
			off := math.Abs(math.Pi/2 - math.Atan2(edge.Cross(struck), edge.Dot(struck)))
			if math.Abs(measure.Degrees(off-want)) > 0.01 {
				t.Errorf("%v: the gauge strikes %.4f° off square, want %.4f°", step.What.ID, measure.Degrees(off), measure.Degrees(want))
			}
		}
	})
	if found == 0 {
		t.Error("no step was asked for its gauge")
	}
}

// cornerNamed returns what the drawn sides of the corner of that angle enclose: its
// name says that it is a bevel, or on the triangle of a taper what is to the edge.
func cornerNamed(t *rapid.T, sheet templates.Section, angle string) float64 {
	t.Helper()
	for _, d := range sheet.Drawings {
		outline := d.Strokes[0].Points
		low, slope := outline[0], outline[len(outline)-2]
		for _, l := range d.Labels {
			if !strings.HasPrefix(l.Text, "bevel "+angle+":") && l.Text != angle+" to the edge" {
				continue
			}
			// The words stand in the middle between the sides of their corner.
			for _, c := range [][3]geometry.Point{{low, outline[1], slope}, {slope, low, geometry.Pt(slope.X, slope.Y-1)}} {
				a, b, words := c[1].Sub(c[0]).Unit(), c[2].Sub(c[0]).Unit(), l.On.A.Sub(c[0])
				if math.Abs(a.Add(b).Cross(words)) < 1e-9 {
					return math.Abs(math.Atan2(a.Cross(b), a.Dot(b)))
				}
			}
			t.Fatalf("%q stands in no corner", l.Text)
		}
	}
	t.Fatalf("no corner is named by %s", angle)
	return 0
}
