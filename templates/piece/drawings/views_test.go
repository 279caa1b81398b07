package drawings

import (
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"rodsheet/geometry"
	"rodsheet/geometry/joint"
	"rodsheet/geometry/solid"
	"rodsheet/templates"
	"rodsheet/templates/piece/design"
	"rodsheet/templates/piece/internal/piecetest"
)

func inked(segments []geometry.Segment) float64 {
	sum := 0.0
	for _, s := range segments {
		sum += s.Length()
	}
	return sum
}

// A lid with straight sides shows what hidden-line removal of its solid shows.
func TestLidShowsWhatItsSolidShows(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.IntRange(3, 8).Draw(t, "corners")
		a := float64(rapid.IntRange(0, 60).Draw(t, "turn")) / 10
		turn := geometry.Rotate(a)
		l := lid{turn.ApplyAll(joint.RegularBySide(n, 300).Corners()), 400, 420}
		part := solid.Stock("lid", solid.Prism(solid.Lift(l.outline, l.low), solid.V(0, 0, l.high-l.low)))
		for _, v := range []solid.View{solid.Plan(), solid.Front(), viewAtCorner()} {
			visible, _ := solid.Project([]solid.Part{part}, v)
			want := inked(visible)
			if got := inked(l.edges(v)); math.Abs(got-want) > 1e-3 {
				t.Errorf("%v: %.3f mm of lines, want %.3f", v.Out, got, want)
			}
		}
	})
}

// A round lid shows its two outlines and no facet.
func TestRoundLidShowsNoFacets(t *testing.T) {
	round := geometry.Arc(geometry.Point{}, 300, 0, 2*math.Pi)
	l := lid{geometry.Decimate(round[:len(round)-1], 120), 400, 420}
	v := viewAtCorner()
	upright := 0
	for _, s := range l.edges(v) {
		if math.Abs(s.A.X-s.B.X) < 1e-9 && s.Length() > 10 {
			upright++
		}
	}
	if upright > 2 {
		t.Errorf("%d upright lines, want the two at the sides at most", upright)
	}
}

// In plan a wooden top hides the whole frame under it, a glass one none of it.
func TestTopHidesWhatIsUnderIt(t *testing.T) {
	for _, kind := range []design.TopKind{design.GlassTop, design.WoodTop} {
		d := piecetest.Low()
		d.Top.Kind, d.Top.Diameter = kind, 1500
		for _, s := range views(piecetest.Worked(t, d))[0].Strokes {
			for _, q := range s.Points {
				under := q.Norm() < 700
				if s.Role == templates.Outline && under && kind == design.WoodTop {
					t.Fatalf("the frame is seen through wood at %v", q)
				}
				if s.Role == templates.Hidden && kind == design.GlassTop {
					t.Fatalf("glass hides the frame at %v", q)
				}
			}
		}
	}
}

// The pictures show the feet where they stand, and the piece as high as it is.
func TestPicturesHoldTheSizes(t *testing.T) {
	for k, d := range piecetest.Bases() {
		p := piecetest.Worked(t, d)
		views := views(p)
		if len(views) != 3 || views[0].NoScale || views[1].NoScale || !views[2].NoScale {
			t.Fatalf("base %d: want plan and elevation to scale and a view without", k)
		}
		plan := boundsOf(views[0], templates.Outline, templates.Hidden)
		if got := math.Max(plan.Width(), plan.Height()) / 2; got < 0.8*p.FootRadius() {
			t.Errorf("base %d: the plan reaches %.1f mm, the feet stand at %.1f", k, got, p.FootRadius())
		}
		front := boundsOf(views[1], templates.Outline)
		if math.Abs(front.Min.Y) > 1e-6 || math.Abs(front.Max.Y-p.Overall()) > 1e-6 {
			t.Errorf("base %d: the elevation stands from %.3f to %.3f, want 0 to %.3f", k, front.Min.Y, front.Max.Y, p.Overall())
		}
		for _, l := range append(views[0].Labels, views[1].Labels...) {
			figure := l.Text[strings.Index(l.Text, " ")+1:]
			if got := p.MM(l.On.Length()); got != figure {
				t.Errorf("base %d: the line of %q is %s long", k, l.Text, got)
			}
		}
	}
}

func boundsOf(p templates.Picture, roles ...templates.Role) geometry.Rect {
	var all []geometry.Point
	for _, s := range p.Strokes {
		for _, r := range roles {
			if s.Role == r {
				all = append(all, s.Points...)
			}
		}
	}
	return geometry.Bounds(all...)
}
