package templates

import (
	"errors"
	"reflect"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"rodsheet/geometry"
	"rodsheet/geometry/joint"
	"rodsheet/geometry/lists"
	"rodsheet/geometry/measure"
)

// a4 is about what an A4 sheet offers.
var a4 = geometry.Pt(167, 237)

// sound returns what makes sure of a job.
func sound(t rapid.TB) func(Job, error) Job {
	return func(j Job, err error) Job {
		t.Helper()
		if err != nil {
			t.Fatal(err)
		}
		return j
	}
}

// What has no geometry is refused by the figure that is to change, and nothing comes with it.
func TestRefusals(t *testing.T) {
	lap, board, rail, tapered, vessel, tall := lapAtSixty, drawerFront(), apronMortise(), leg(joint.OneFace), staves(), staked(10, 10)
	lap.Kerf, board.Tails, rail.Long, tapered.Foot, vessel.Pieces, tall.Height = lap.Other, 12, 60, 45, 3, 10001
	for _, c := range []struct {
		figure measure.ID
		job    func(Setting) (Job, error)
	}{
		{"lap.kerf", func(s Setting) (Job, error) { return Lap(lap, s) }},
		{"bridle.tenon", func(s Setting) (Job, error) {
			return Bridle(joint.Bridle{Width: 24, Depth: 30, Angle: 0.1, Leg: 45, Tenon: 24}, s)
		}},
		{"dovetail.root", func(s Setting) (Job, error) { return Dovetail(board, s) }},
		{"mortise.into-leg", func(s Setting) (Job, error) { return Mortise(rail, s) }},
		{"taper.foot", func(s Setting) (Job, error) { return Taper(tapered, s) }},
		{"hopper.tilt", func(s Setting) (Job, error) { return Hopper(hopper(3, 80, false), s) }},
		{"segments.inner", func(s Setting) (Job, error) {
			return Segments(joint.SegmentRing{Pieces: 12, Outer: 300, Inner: 300}, s)
		}},
		{"hopper.tilt", func(s Setting) (Job, error) { return Staves(vessel, s) }},
		{"leg.rake", func(s Setting) (Job, error) { return Sightline(staked(-1, 5), s) }},
		{"leg.splay", func(s Setting) (Job, error) { return Sightline(staked(5, 61), s) }},
		{"leg.resultant", func(s Setting) (Job, error) { return Sightline(staked(0, 0), s) }},
		{"staked.height", func(s Setting) (Job, error) { return Sightline(tall, s) }},
		{"outline.diameter", func(s Setting) (Job, error) { return Top(joint.Top{Diameter: -1}, s) }},
		{"segment.rise", func(s Setting) (Job, error) { return Arc(joint.CircularSegment{Chord: 100, Rise: 51}, s) }},
		{"oval.width", func(s Setting) (Job, error) { return Oval(joint.Oval{Length: 600, Width: 900}, s) }},
	} {
		job, err := c.job(Setting{Full: true})
		var bound *measure.BoundError
		if !errors.As(err, &bound) || bound.Figure != c.figure || !reflect.DeepEqual(job, Job{}) {
			t.Errorf("%v with %d sections, want a bound on %s", err, len(job.Sections), c.figure)
		}
	}
}

// wantSaid wants the panels of a job to say each of some texts.
func wantSaid(t rapid.TB, job Job, wants ...string) {
	t.Helper()
	text := said(job)
	for _, want := range wants {
		if !strings.Contains(text, want) {
			t.Errorf("%s: no %q in %q", job.Title, want, text)
		}
	}
}

// said is all that stands in the panels of the first section, but for their tables.
func said(job Job) string {
	var words []string
	for _, p := range job.Sections[0].Panels {
		words = append(words, p.Text...)
	}
	return strings.Join(words, "\n")
}

func radians(degrees ...float64) []float64 {
	out := make([]float64, len(degrees))
	for i, d := range degrees {
		out[i] = measure.Radians(d)
	}
	return out
}

// valueOf returns the value of the only figure of that name.
func valueOf(t rapid.TB, job Job, name string) float64 {
	t.Helper()
	found := slices.DeleteFunc(slices.Clone(job.Figures), func(f Figure) bool { return f.Name != name })
	if len(found) != 1 {
		t.Fatalf("%d figures named %q", len(found), name)
	}
	return found[0].Value.Value
}

// wantFigure fails unless the job has that figure, in its list and in a panel.
func wantFigure(t *testing.T, job Job, name, want string) {
	t.Helper()
	i := slices.IndexFunc(job.Figures, func(f Figure) bool { return f.Name == name })
	if i < 0 {
		t.Errorf("no figure %q", name)
		return
	}
	if got := job.Figures[i].Value.Text(measure.Millimetre); got != want {
		t.Errorf("%s %s, want %s", name, got, want)
	}
	rows := lists.Flat(job.Sections[0].Panels, func(p Panel) [][]string { return p.Table })
	if !slices.ContainsFunc(rows, func(row []string) bool { return row[0] == name && row[1] == want }) {
		t.Errorf("no panel says %s %s", name, want)
	}
}

// strokesOf returns the strokes of one role, and linesOf their points.
func strokesOf(d Drawing, r Role) []Stroke {
	return slices.DeleteFunc(slices.Clone(d.Strokes), func(s Stroke) bool { return s.Role != r })
}

func linesOf(d Drawing, r Role) (out [][]geometry.Point) {
	for _, s := range strokesOf(d, r) {
		out = append(out, s.Points)
	}
	return out
}

func labelTexts(d Drawing) (out []string) {
	for _, l := range d.Labels {
		out = append(out, l.Text)
	}
	return out
}

func cell(p Panel, row string) string {
	for _, r := range p.Table {
		if r[0] == row {
			return r[1]
		}
	}
	return ""
}

// drawingNamed returns the drawing of that name.
func drawingNamed(t rapid.TB, j Job, name string) Drawing {
	t.Helper()
	i := slices.IndexFunc(j.Drawings(), func(d Drawing) bool { return d.Name == name })
	if i < 0 {
		t.Fatalf("no drawing %q", name)
	}
	return j.Drawings()[i]
}

// wantMirror wants b to be a with left and right exchanged.
func wantMirror(t rapid.TB, a, b Drawing) {
	t.Helper()
	if !mirrored(a, b) {
		t.Errorf("%s is not the mirror image of %s", b.Name, a.Name)
	}
}

// mirrored reports whether b is a with every x turned round, in the same order
// and with the same words.
func mirrored(a, b Drawing) bool {
	flip := func(p geometry.Point) geometry.Point { return geometry.Pt(-p.X, p.Y) }
	if len(a.Strokes) != len(b.Strokes) || len(a.Labels) != len(b.Labels) {
		return false
	}
	for i, s := range a.Strokes {
		o := b.Strokes[i]
		if s.Role != o.Role || len(s.Points) != len(o.Points) {
			return false
		}
		for j, p := range s.Points {
			if flip(p) != o.Points[j] {
				return false
			}
		}
	}
	for i, l := range a.Labels {
		o := b.Labels[i]
		if l.Text != o.Text || l.Big != o.Big || flip(l.On.A) != o.On.A || flip(l.On.B) != o.On.B {
			return false
		}
	}
	return strings.NewReplacer("right hand", "left hand", "left hand", "right hand").Replace(a.Name) == b.Name
}
