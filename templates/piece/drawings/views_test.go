package drawings

import (
	"math"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"rodsheet/geometry"
	"rodsheet/geometry/joint"
	"rodsheet/geometry/solid"
	"rodsheet/templates"
	"rodsheet/templates/piece/design"
	"rodsheet/templates/piece/internal/piecetest"
	"rodsheet/templates/piece/kind"
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
		for _, v := range []solid.View{solid.Plan(), solid.Front(), kind.AtCorner()} {
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
	v := kind.AtCorner()
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
	for _, top := range []design.TopKind{design.GlassTop, design.WoodTop} {
		d := piecetest.Low()
		d.Top.Kind, d.Top.Diameter = top, 1500
		for _, s := range views(piecetest.Worked(t, d))[0].Strokes {
			for _, q := range s.Points {
				under := q.Norm() < 700
				if s.Role == templates.Outline && under && top == design.WoodTop {
					t.Fatalf("the frame is seen through wood at %v", q)
				}
				if s.Role == templates.Hidden && top == design.GlassTop {
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
		for _, l := range append(views[0].Lettering(), views[1].Lettering()...) {
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

// toneAt returns the tone of the last area that covers a point, and whether one
// does. sure is false close to the side of an area.
func toneAt(areas []templates.Area, q geometry.Point) (tone templates.Tone, covered, sure bool) {
	sure = true
	for _, a := range areas {
		inside := false
		for i, c := range a.Points { // even-odd rule
			d := a.Points[(i+1)%len(a.Points)]
			if (c.Y > q.Y) != (d.Y > q.Y) && q.X < c.X+(q.Y-c.Y)/(d.Y-c.Y)*(d.X-c.X) {
				inside = !inside
			}
			sure = sure && (geometry.Segment{A: c, B: d}).Distance(q) > 0.05
		}
		if inside {
			tone, covered = a.Tone, true
		}
	}
	return tone, covered, sure
}

// whole returns all that stands in a scene as solids.
func (s scene) whole(v solid.View, frame []solid.Part) (patches []solid.Patch) {
	for _, l := range append(slices.Clone(s.pads), s.top...) {
		frame = append(frame, solid.Stock("lid", solid.Prism(solid.Lift(l.outline, l.low), solid.V(0, 0, l.high-l.low))))
	}
	return solid.NewScene(frame).Patches(v)
}

// What is painted last at a place of the corner view is the face that is seen
// there, worked out from the solids of frame, pads and top all together: each
// place is painted just where a face is seen, and in the tone of that face.
func TestTonesShowTheForemostFace(t *testing.T) {
	for k, d := range piecetest.Bases() {
		if d.Top.Kind == design.GlassTop {
			d.Top.Kind = design.WoodTop
		}
		p := piecetest.Worked(t, d)
		s, v := sceneOf(p), kind.AtCorner()
		areas := faces(p, s, v)
		var want []templates.Area
		for _, q := range s.whole(v, p.Around(func(i int) solid.Affine3 { return p.Place(i).Then(solid.RotateZ(math.Pi)) }, p.Stretcher(), p.Leg())) {
			want = append(want, templates.Area{Tone: kind.ToneOf(q.N, v), Points: q.Corners})
		}
		rapid.Check(t, func(t *rapid.T) {
			box := cornerView(p, s).Bounds()
			q := geometry.Pt(rapid.Float64Range(box.Min.X, box.Max.X).Draw(t, "x"), rapid.Float64Range(box.Min.Y, box.Max.Y).Draw(t, "y"))
			got, painted, sure := toneAt(areas, q)
			tone, seen, sureToo := toneAt(want, q)
			if sure && sureToo && (painted != seen || got != tone) {
				t.Errorf("base %d at %v: painted %v in tone %d, seen %v in tone %d", k, q, painted, got, seen, tone)
			}
		})
	}
}

// Glass is not painted, and has two strokes on it.
func TestGlassIsClear(t *testing.T) {
	d := piecetest.Low()
	p := piecetest.Worked(t, d)
	s, v := sceneOf(p), kind.AtCorner()
	without := s
	without.top = nil
	if got, want := len(faces(p, s, v)), len(faces(p, without, v)); got != want {
		t.Errorf("%d areas, want the %d of frame and pads", got, want)
	}
	rim := geometry.Bounds(s.top[0].silhouette(v)...)
	inside := 0
	for _, st := range cornerView(p, s).Strokes {
		if box := geometry.Bounds(st.Points...); st.Role == templates.Construction && rim.Offset(-20).Holds(box) {
			inside++
		}
	}
	if inside < 2 {
		t.Errorf("%d strokes on the glass, want two", inside)
	}
}
