package drawings

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"rodsheet/geometry"
	"rodsheet/templates"
	"rodsheet/templates/piece/design"
	"rodsheet/templates/piece/internal/piecetest"
	"rodsheet/templates/piece/shop"
)

// Every hole of the picture lies on the mirror image of a stretcher, which is what a frame
// shows from below, and what is longer than wide runs across the arrow of the grain.
func TestSlotsInThePictureRunAcrossTheGrain(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d := piecetest.Sound(t)
		d.Top = design.Top{
			Kind: design.WoodTop, Outline: design.RingTop, Overhang: 60, Thickness: 20,
			Fixing: design.Fixing{Kind: design.Screws},
		}
		p := piecetest.Worked(t, d)
		job, err := fixingsJob(p, templates.Setting{})
		if err != nil || len(job.Pictures) != 1 {
			t.Fatalf("%d pictures, %v", len(job.Pictures), err)
		}
		pic := job.Pictures[0]
		grain := pic.Arrows[0].Points[1].Sub(pic.Arrows[0].Points[0]).Unit()
		holes := 0
		f, _ := shop.FixingOf(p)
		for _, s := range pic.Strokes {
			if s.Role != templates.Cut {
				continue
			}
			middle := geometry.Bounds(s.Points...).Centre()
			at := p.Frame.Ring.Place(f.Holes[holes].Part, 0).Inverse().Apply(geometry.Pt(-middle.X, middle.Y))
			if off := math.Abs(at.Y - p.Frame.Ring.Width/2); off > 1e-6 {
				t.Errorf("hole %d stands %g mm off the centre line of stretcher %d", holes, off, f.Holes[holes].Part+1)
			}
			along, across := 0.0, 0.0
			for _, q := range s.Points {
				along = math.Max(along, math.Abs(q.Sub(middle).Dot(grain)))
				across = math.Max(across, math.Abs(q.Sub(middle).Cross(grain)))
			}
			if f.Holes[holes].Slotted != (across > 1.5*along) {
				t.Errorf("hole %d, %+v: %g along the grain, %g across", holes, f.Holes[holes], along, across)
			}
			holes++
		}
		if holes != len(f.Holes) {
			t.Errorf("%d holes drawn of %d", holes, len(f.Holes))
		}
	})
}

// Nothing is drawn of what is not screwed.
func TestNoHolesWithoutScrews(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := piecetest.Worked(t, piecetest.Sound(t))
		if p.Design.Top.Fixing.Kind == design.Screws && p.Design.Top.Kind == design.WoodTop {
			t.Skip("screwed")
		}
		if job, _ := fixingsJob(p, templates.Setting{}); !job.Empty() {
			t.Error("holes for screws that nothing wants")
		}
	})
}
