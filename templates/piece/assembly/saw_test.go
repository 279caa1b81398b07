package assembly

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"rodsheet/geometry"
	"rodsheet/geometry/measure"
	"rodsheet/templates"
	"rodsheet/templates/piece/design"
)

// tonesOf returns the areas of a tone.
func tonesOf(p templates.Picture, tone templates.Tone) [][]geometry.Point {
	var out [][]geometry.Point
	for _, a := range p.Areas {
		if a.Tone == tone {
			out = append(out, a.Points)
		}
	}
	return out
}

// On the picture of a crosscut the blade runs up the paper at x = 0, what is hatched lies
// to its right, and the stop stands so far from it along the fence as its figure says.
func TestCrosscutShowsItsFigures(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c := Crosscut{
			OffSquare: measure.Radians(rapid.Float64Range(-50, 50).Draw(t, "off square")), Kerf: 3,
			Stop: rapid.Float64Range(50, 800).Draw(t, "stop"), Down: "face", Unit: measure.Millimetre,
		}
		wide := rapid.Float64Range(20, 200).Draw(t, "wide")
		c.Board = []geometry.Point{geometry.Pt(-c.Stop, 0), geometry.Pt(300, 0), geometry.Pt(300, wide), geometry.Pt(-c.Stop, wide)}
		p := c.Picture("heading")
		dark := tonesOf(p, templates.Dark)
		blade := geometry.Bounds(dark[0]...)
		if math.Abs(blade.Min.X) > 1e-9 || math.Abs(blade.Max.X-c.Kerf) > 1e-9 {
			t.Errorf("the blade stands from %g to %g", blade.Min.X, blade.Max.X)
		}
		along := geometry.Polar(1, c.OffSquare) // of the fence on the paper
		nearest := math.Inf(-1)
		for _, q := range dark[1] {
			nearest = math.Max(nearest, q.Dot(along))
		}
		if math.Abs(nearest+c.Stop) > 1e-6 {
			t.Errorf("the stop stands at %g, want %g", nearest, -c.Stop)
		}
		hatched := 0
		for _, s := range p.Strokes {
			if s.Role == templates.Waste {
				hatched++
				if geometry.Bounds(s.Points...).Min.X < -1e-6 {
					t.Errorf("waste left of the blade: %v", s.Points)
				}
			}
		}
		if hatched == 0 {
			t.Error("no waste is hatched")
		}
	})
}

// A part that runs on is open where the picture breaks it off, but for a thin line that
// reaches beyond both of its edges.
func TestCrosscutBreaksOff(t *testing.T) {
	c := Crosscut{Board: geometry.Box(-200, 0, 30, 80).Corners(), Kerf: 3, Unit: measure.Millimetre, Broken: true}
	thin := 0
	for _, s := range c.Picture("heading").Strokes {
		switch b := geometry.Bounds(s.Points...); {
		case s.Role == templates.Outline && s.Points[0] == geometry.Pt(-200, 0) && s.Points[len(s.Points)-1] == s.Points[0]:
			t.Error("the outline is closed")
		case s.Role == templates.Construction && b.Min.Y < 0 && b.Max.Y > 80:
			thin++
		}
	}
	if thin != 1 {
		t.Errorf("%d thin lines across the part", thin)
	}
}

// Every picture is of the same saw: on the gauge the arrow of a blade that leans points to the
// left, on whichever side of it the part lies, as the blade leans along the rip fence.
func TestOneSawOnAllPictures(t *testing.T) {
	for _, right := range []bool{false, true} {
		c := Crosscut{Board: geometry.Box(-200, 0, 30, 80).Corners(), OffSquare: 0.2, Right: right, Unit: measure.Millimetre}
		if upright := len(c.Picture("heading").Arrows); upright != 1 {
			t.Errorf("%d arrows where nothing leans", upright)
		}
		c.Tilted = true
		arrows := c.Picture("heading").Arrows
		lean := arrows[len(arrows)-1].Points
		if way := lean[1].Sub(lean[0]); len(arrows) != 2 || way.X >= 0 || way.Y != 0 || math.Abs(lean[0].X) > 1e-9 {
			t.Errorf("part on the right %v: %v", right, arrows)
		}
	}
}

// On the picture of a rip the blade leans to the left by its tilt and stands so far from the fence as
// the figure below it says.
func TestRipShowsItsFigures(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		tilt := measure.Radians(rapid.Float64Range(1, 45).Draw(t, "tilt"))
		width, thick := rapid.Float64Range(30, 300).Draw(t, "width"), rapid.Float64Range(8, 40).Draw(t, "thick")
		r := Rip{
			Section: geometry.Box(0, 0, width+60, thick).Corners(), Kerf: 3, Tilt: tilt, Unit: measure.Millimetre,
			Cut: geometry.Segment{A: geometry.Pt(width, 0), B: geometry.Pt(width+thick*math.Tan(tilt), thick)},
		}
		p := r.Picture("heading")
		blade := tonesOf(p, templates.Dark)[0]
		up := blade[3].Sub(blade[0])
		if got := math.Atan2(-up.X, up.Y); math.Abs(got-tilt) > 1e-9 {
			t.Errorf("the blade leans %g, want %g", got, tilt)
		}
		fence := geometry.Bounds(tonesOf(p, templates.Middle)[0]...)
		said := ""
		for _, l := range p.Lettering() {
			if l.ID == "plain-figure" {
				said = l.Text
				if got := l.On.Length(); math.Abs(got-width) > 1e-6 {
					t.Errorf("the figure stands on %g mm, want %g", got, width)
				}
			}
		}
		if want := measure.Length(width).Text(r.Unit); said != want || math.Abs(fence.Min.X) > 1e-9 {
			t.Errorf("%q, want %q; the fence stands at %g", said, want, fence.Min.X)
		}
	})
}

// The figure that stands on the gauge at hand comes first and is to be written down.
func TestGaugeThatReadsFromTheFence(t *testing.T) {
	for fence, want := range map[bool]string{false: "12°", true: "78°"} {
		first := OnGauge(design.Design{Saw: design.Saw{FromFence: fence}}, measure.Radians(-12))[0]
		if first.Value != want || !first.Write {
			t.Errorf("from the fence %v: %+v", fence, first)
		}
	}
}
