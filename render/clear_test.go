package render

import (
	"slices"
	"strings"
	"testing"

	"rodsheet/geometry"
	"rodsheet/geometry/joint"
	"rodsheet/geometry/measure"
	"rodsheet/render/label"
	"rodsheet/render/page"
	"rodsheet/templates"
	"rodsheet/templates/piece/checks"
	"rodsheet/templates/piece/design"
	"rodsheet/templates/piece/drawings"
	"rodsheet/templates/piece/kind"
)

// struck returns the texts of a page that a line other than hatching runs
// through, or another text.
func struck(p page.Page) []string {
	var out []string
	var boxes [][]geometry.Point
	for _, x := range p.Texts {
		boxes = append(boxes, letters(x))
	}
	for i, x := range p.Texts {
		hit := false
		around := geometry.Bounds(boxes[i]...)
		for _, s := range p.Strokes {
			if light(templates.Role(s.Line)) || !around.Overlaps(geometry.Bounds(s.Points...)) {
				continue
			}
			for _, l := range chain(s.Points) {
				hit = hit || geometry.Meets(l, boxes[i])
			}
		}
		for k, o := range boxes {
			hit = hit || k != i && label.Overlap(boxes[i], o)
		}
		if hit {
			out = append(out, x.String)
		}
	}
	return out
}

// Lettering stands clear of every line and of other lettering on every sheet
// of what makers print most, on both papers and in both units.
func TestLetteringKeepsClear(t *testing.T) {
	for _, u := range []measure.Unit{measure.Millimetre, measure.Inch} {
		for k, paper := range []Paper{papers()[3], papers()[0], papers()[3], papers()[0]} {
			l := DefaultLayout(u, paper)
			set := templates.Setting{Unit: u, Clear: l.Clear(), Full: k < 2}
			for _, make := range []func() (templates.Job, error){
				func() (templates.Job, error) {
					return templates.Taper(joint.Taper{Length: 640, Top: 45, Foot: 28, Start: 110}, set)
				},
				func() (templates.Job, error) {
					return templates.Taper(joint.Taper{Length: 2400, Top: 400, Foot: 100, Start: 110}, set)
				},
				func() (templates.Job, error) {
					return templates.Angles([]float64{measure.Radians(14.5), measure.Radians(30), measure.Radians(1.7)}, 0, set)
				},
				func() (templates.Job, error) {
					return templates.Angles([]float64{measure.Radians(45.35)}, 0, set)
				},
				func() (templates.Job, error) {
					return templates.Lap(joint.Lap{Width: 22, Other: 22, Depth: 32, Angle: measure.Radians(60), Kerf: 3.2}, set)
				},
				ring(6, 80, 40, set), ring(8, 120, 90, set), ring(12, 300, 240, set), ring(20, 80, 40, set),
				func() (templates.Job, error) {
					return templates.Bridle(joint.Bridle{Width: 28, Depth: 36, Angle: measure.Radians(12), Leg: 38}, set)
				},
				func() (templates.Job, error) {
					return templates.Job{Name: "tops", Title: "tops", Sections: []templates.Section{{Drawings: []templates.Drawing{
						boxOutline(800, 600), roundOutline(600), polygonOutline(6, 500)}}}}, nil
				},
			} {
				job := must(make())(t)
				plan := must(Lay(job, l))(t)
				for i, p := range plan.Document().Pages {
					for _, text := range struck(p) {
						t.Errorf("%s on %s in %v, sheet %d: %q is struck", job.Title, paper.Name, u, i+1, text)
					}
				}
			}
		}
	}
}

// ring is a job of a round ring.
func ring(pieces int, outer, inner float64, s templates.Setting) func() (templates.Job, error) {
	return func() (templates.Job, error) {
		return templates.Segments(joint.SegmentRing{Pieces: pieces, Outer: outer, Inner: inner, Kerf: 3.2, Round: true}, s)
	}
}

// The same goes for whole packs, both papers and both units.
func TestLetteringOfPacksKeepsClear(t *testing.T) {
	for _, name := range []string{"hall-table", "plant-stand", "window-seat"} {
		sizes := exampleSizes(t, name)
		for _, u := range []measure.Unit{measure.Millimetre, measure.Inch} {
			for _, paper := range []Paper{papers()[3], papers()[0]} {
				for i, p := range packPages(t, sizes, u, paper) {
					for _, text := range struck(p) {
						t.Errorf("%s on %s in %v, sheet %d: %q is struck", name, paper.Name, u, i+1, text)
					}
				}
			}
		}
	}
}

// packPages returns the pack of all sizes of a design, with the plan.
func packPages(t *testing.T, sizes []design.Design, u measure.Unit, paper Paper) []page.Page {
	t.Helper()
	l := DefaultLayout(u, paper)
	job, err := drawings.Pack(checks.Examine(solved(t, sizes, u)), kind.Options{For: kind.Buying | kind.Bench | kind.Record, Plan: true},
		templates.Setting{Unit: u, Clear: l.Clear(), Full: u == measure.Inch})
	if err != nil {
		t.Fatal(err)
	}
	plan := must(Lay(job, l))(t)
	return plan.Document().Pages
}

// Each end of a check length is lettered once in all.
func TestCrossesAreLettered(t *testing.T) {
	for _, d := range []templates.Drawing{boxOutline(800, 600), roundOutline(1200), polygonOutline(5, 700)} {
		count := map[string]int{}
		for _, p := range layOne(t, a4(), d).Document().Pages {
			for _, x := range p.Texts {
				count[x.String]++
			}
		}
		for _, name := range []string{"A", "B", "C"} {
			if count[name] != 1 {
				t.Errorf("%s: %s is lettered %d times, want once", d.Name, name, count[name])
			}
		}
	}
}

// A label whose tile is dropped is set on the nearest one that is kept.
func TestLabelOfADroppedTile(t *testing.T) {
	d := roundOutline(1200)
	d.Labels = []templates.Label{{Text: "upper side"}}
	n := 0
	for _, p := range layOne(t, a4(), d).Document().Pages {
		for _, x := range p.Texts {
			if x.String == "upper side" {
				n++
			}
		}
	}
	if n != 1 {
		t.Errorf("the label in the middle of a round top is set %d times, want once", n)
	}
}

// On a template, too, a name stands nearer to its own line than to one that has another.
func TestNamesOfATemplateStandByTheirLines(t *testing.T) {
	var d templates.Drawing
	const rise = 5.2 // lettering has just room between the lines
	d.Polygon(templates.Outline, geometry.Box(-30, -30, 90, 35).Corners()...)
	for i, name := range []string{"near cheek", "far cheek"} {
		a, b := geometry.Pt(0, rise*float64(i)), geometry.Pt(60, rise*float64(i))
		d.Line(templates.Cut, a, b)
		d.LabelLine(a, b, templates.Tag{Text: name})
	}
	at := map[string]float64{}
	for _, x := range layOne(t, a4(), d).Document().Pages[0].Texts {
		at[x.String] = x.At.Y
	}
	if apart := at["far cheek"] - at["near cheek"]; apart < rise+2.5 {
		t.Errorf("the names stand %.1f mm apart, the lower one between the lines", apart)
	}
}

// No leader of a triangle near 45° runs across an edge: that would be one line more
// there to lay a gauge on.
func TestLeadersKeepOffTheEdgesOfATriangle(t *testing.T) {
	for _, u := range []measure.Unit{measure.Millimetre, measure.Inch} {
		l := DefaultLayout(u, papers()[0])
		job := must(templates.Angles([]float64{measure.Radians(45.35), measure.Radians(85)}, 0, templates.Setting{Unit: u, Clear: l.Clear()}))(t)
		for _, p := range must(Lay(job, l))(t).Document().Pages {
			var edges, leaders []geometry.Segment
			for _, s := range p.Strokes {
				switch s.Line {
				case int(templates.Cut):
					edges = append(edges, chain(s.Points)...)
				case leader:
					leaders = append(leaders, chain(s.Points)...)
				}
			}
			for _, a := range leaders {
				for _, e := range edges {
					if crossing(geometry.Segment{A: a.A, B: a.A.Lerp(a.B, 0.95)}, e) {
						t.Errorf("in %v: the leader %v crosses the edge %v", u, a, e)
					}
				}
			}
		}
	}
}

// crossing reports whether each of two lines runs from one side of the other to the other.
func crossing(a, b geometry.Segment) bool {
	apart := func(p, q geometry.Point, l geometry.Segment) bool {
		along := l.B.Sub(l.A)
		return along.Cross(p.Sub(l.A))*along.Cross(q.Sub(l.A)) < 0
	}
	return apart(a.A, a.B, b) && apart(b.A, b.B, a)
}

// What the corners of a triangle set stands inside it, wherever it lies; in a low one what was
// asked for.
func TestBevelsStandInTheirTriangle(t *testing.T) {
	for _, l := range []Layout{DefaultLayout(measure.Millimetre, papers()[3]), DefaultLayout(measure.Inch, papers()[0])} {
		for _, deg := range []float64{6.5, 9.46, 20, 40, 45, 48, 54.7, 57, 60, 80, 82} {
			job := must(templates.Angles([]float64{measure.Radians(deg)}, 0, templates.Setting{Unit: l.Unit, Clear: l.Clear()}))(t)
			p := layOne(t, l, job.Drawings()[0]).Document().Pages[0]
			var triangle []geometry.Point // the last closed one: the calibration square stands before
			for _, s := range p.Strokes {
				if last := len(s.Points) - 1; s.Line == int(templates.Cut) && last > 2 {
					triangle = s.Points[:last]
				}
			}
			inside, asked := 0, false
			for _, x := range p.Texts {
				out := func(at geometry.Point) bool { return !geometry.Meets(geometry.Segment{A: at, B: at}, triangle) }
				if strings.HasPrefix(x.String, "bevel ") && !slices.ContainsFunc(letters(x), out) {
					inside++
					asked = asked || strings.HasPrefix(x.String, "bevel "+measure.Angle(measure.Radians(deg)).Text(l.Unit)+":")
				}
			}
			if !asked || inside < 2 && deg < 81 {
				t.Errorf("%g° in %v: %d corners are named inside the triangle, that asked for among them: %v", deg, l.Unit, inside, asked)
			}
		}
	}
}

// Where names leave each other no room in their order, the longest comes first: between
// two lines a short one gives way to one that has room in the middle only.
func TestLongNamesHaveTheirRoom(t *testing.T) {
	d := boxOutline(100, 6)
	for y := 2.0; y < 24; y += 2 {
		d.Line(templates.Cut, geometry.Pt(0, -y), geometry.Pt(100, -y))
		d.Line(templates.Cut, geometry.Pt(0, 6+y), geometry.Pt(100, 6+y))
	}
	low := [2]geometry.Point{{}, {X: 100}}
	d.LabelLine(low[0], low[1], templates.Tag{ID: "short", Text: "edge"})
	d.LabelLine(low[0], low[1], templates.Tag{ID: "long", Text: "mortise 2 19/64 in (2.305) × 5/16 (0.318)"})
	for _, p := range layOne(t, a4(), d).Document().Pages {
		for _, s := range p.Strokes {
			if s.Line == leader {
				t.Errorf("a name stands away from its line, led by %v", s.Points)
			}
		}
		for _, text := range struck(p) {
			t.Errorf("%q is struck", text)
		}
	}
}
