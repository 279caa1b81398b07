package templates

import (
	"math"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"rodsheet/geometry"
	"rodsheet/geometry/joint"
	"rodsheet/geometry/measure"
)

var lapAtSixty = joint.Lap{
	Width: 40, Other: 50, Depth: 20, Angle: measure.Radians(60), Kerf: 3.2, At: 120,
}

func drawnLap(t *rapid.T) (joint.Lap, Job) {
	l := joint.Lap{
		Width: rapid.Float64Range(5, 120).Draw(t, "width"),
		Other: rapid.Float64Range(5, 120).Draw(t, "other"),
		Depth: rapid.Float64Range(5, 60).Draw(t, "depth"),
		Angle: measure.Radians(rapid.Float64Range(20, 160).Draw(t, "angle")),
		Kerf:  rapid.Float64Range(0.5, 4).Draw(t, "kerf"),
		At:    rapid.SampledFrom([]float64{0, 10, 300, 5000}).Draw(t, "at"),
	}
	job := sound(t)(Lap(l, Setting{Clear: geometry.Pt(190, 270), Full: true}))
	return l, job
}

// The two shoulders on the face are Other apart and stand at the angle.
func TestLapFaceShoulders(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		l, job := drawnLap(t)
		cuts := strokesOf(drawingNamed(t, job, "lap, right hand, cut face"), Cut)
		if len(cuts) != 2 {
			t.Fatalf("%d cut lines on the face, want 2", len(cuts))
		}
		near := geometry.Segment{A: cuts[0].Points[0], B: cuts[0].Points[1]}
		apart := near.B.Sub(near.A).Unit().Cross(near.A.Sub(cuts[1].Points[0]))
		if math.Abs(apart-l.Other) > 1e-9 {
			t.Errorf("shoulders %v mm apart, want %v", apart, l.Other)
		}
		if math.Abs(near.Angle()-l.Angle) > 1e-9 {
			t.Errorf("shoulder at %v rad, want %v", near.Angle(), l.Angle)
		}
		if math.Abs(near.A.X-l.At) > 1e-9 || near.A.Y != 0 {
			t.Errorf("near shoulder starts at %v, want %v on the reference edge", near.A, l.At)
		}
	})
}

// Folded round the stock all cut lines lie in three planes: the two shoulders
// and the floor at half depth. Each shoulder is a plane through the z
// direction, so where it crosses x − y·cot θ is constant.
func TestLapWrapRoundFoldsToShouldersAndFloor(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		l, job := drawnLap(t)
		w := wrap{width: l.Width, thickness: l.Depth}
		cuts := strokesOf(drawingNamed(t, job, "lap, right hand, wrap-round"), Cut)
		if len(cuts) != 4 {
			t.Fatalf("%d cut lines, want 4: two shoulders and two notches", len(cuts))
		}
		near, far := l.At, l.At+l.Other/math.Sin(l.Angle)
		for _, s := range cuts {
			for i, p := range s.Points {
				v := fold(w, p)
				trace := v.X - v.Y*math.Cos(l.Angle)/math.Sin(l.Angle)
				if math.Abs(trace-near) > 1e-8 && math.Abs(trace-far) > 1e-8 {
					t.Errorf("point %d at %v is on neither shoulder: %v", i, v, trace)
				}
				if v.Z != 0 && math.Abs(v.Z+l.Depth/2) > 1e-9 {
					t.Errorf("point %d lies %v below the face, want 0 or %v", i, -v.Z, l.Depth/2)
				}
			}
		}
		// The lines of neighbouring sides meet on the arris they share.
		for _, corner := range l.Corners() {
			met := 0
			for _, s := range cuts {
				for _, p := range s.Points {
					if p.Distance(corner) < 1e-9 {
						met++
					}
				}
			}
			if met != 2 {
				t.Errorf("%d lines meet at the arris at %v, want 2", met, corner)
			}
		}
	})
}

func TestLapHandsMirror(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		_, job := drawnLap(t)
		for _, view := range []string{"cut face", "reference edge", "wrap-round"} {
			wantMirror(t, drawingNamed(t, job, "lap, right hand, "+view), drawingNamed(t, job, "lap, left hand, "+view))
		}
	})
}

// Hatching stays inside what is cut away and covers it: on the face the
// parallelogram, on the edges the notch.
func TestLapWasteIsWhatIsCutAway(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		l, job := drawnLap(t)
		length := 0.0
		for _, s := range strokesOf(drawingNamed(t, job, "lap, right hand, wrap-round"), Waste) {
			for _, p := range s.Points {
				y := math.Max(0, math.Min(p.Y, l.Width))
				near, far := l.Shoulders(y)
				if p.X < near-1e-9 || p.X > far+1e-9 || p.Y < -l.Depth/2-1e-9 || p.Y > l.Width+l.Depth/2+1e-9 {
					t.Errorf("hatching at %v outside the lap", p)
				}
			}
			length += s.Points[0].Distance(s.Points[1])
		}
		// Lines 3 mm apart cover about a third of a mm of length per mm².
		area := l.Area() + l.Depth*l.EdgeLength()
		if want, slack := area/hatchStep, 3*(l.Width+l.Depth)+3*l.EdgeLength(); math.Abs(length-want) > slack {
			t.Errorf("%.0f mm of hatching over %.0f mm², want about %.0f", length, area, want)
		}
	})
}

// The edge view is the reference edge of the wrap-round, face up.
func TestLapEdgeShowsHalfDepth(t *testing.T) {
	job := sound(t)(Lap(lapAtSixty, Setting{Full: true}))
	cuts := strokesOf(drawingNamed(t, job, "lap, right hand, reference edge"), Cut)
	got := geometry.Bounds(cuts[0].Points...)
	want := geometry.Box(120, 10, 120+50/math.Sin(math.Pi/3), 20)
	if got.Min.Distance(want.Min) > 1e-9 || got.Max.Distance(want.Max) > 1e-9 {
		t.Errorf("notch %v, want %v", got, want)
	}
}

// A datum too far off for one sheet is left off, and a square line says how
// far away it is; one that fits ends the drawing.
func TestLapDatum(t *testing.T) {
	clear := geometry.Pt(190, 270)
	for _, tt := range []struct {
		at, from float64
		label    string
	}{
		{0, -reach, "datum"},
		{120, 0, "datum"},
		{5000, 5000 - reach - reach/3, "square line, 5000 mm from the datum"},
	} {
		l := lapAtSixty
		l.At = tt.at
		job := sound(t)(Lap(l, Setting{Clear: clear, Full: true}))
		d := drawingNamed(t, job, "lap, right hand, cut face")
		edge := strokesOf(d, Outline)[0].Points
		if got := edge[0].X; math.Abs(got-tt.from) > 1e-9 {
			t.Errorf("at %v the stock starts at %v, want %v", tt.at, got, tt.from)
		}
		if !slices.ContainsFunc(d.Labels, func(l Label) bool { return l.Text == tt.label }) {
			t.Errorf("at %v no label %q", tt.at, tt.label)
		}
	}
}

func TestLapFigures(t *testing.T) {
	job := sound(t)(Lap(lapAtSixty, Setting{Full: true}))
	// By hand, sin 60° = 0.8660254, cot 60° = 0.5773503.
	for name, want := range map[string]string{
		"near shoulder, reference edge": "120 mm",
		"far shoulder, reference edge":  "177.74 mm",
		"near shoulder, far edge":       "143.09 mm",
		"far shoulder, far edge":        "200.83 mm",
		"edge length":                   "57.74 mm",
		"corner shift":                  "23.09 mm",
		"spacer":                        "54.04 mm",
		"stop, first cut":               "174.04 mm",
		"usual rule too wide by":        "0.43 mm",
		"usual spacer too long by":      "0.5 mm",
		"blade height":                  "10 mm",
		"lap area":                      "2309.4 mm²",
		"bevel":                         "60°",
		"off square":                    "30°",
	} {
		wantFigure(t, job, name, want)
	}
}

func TestLapSaysHowTheUsualRuleMisses(t *testing.T) {
	for _, tt := range []struct {
		deg  float64
		want string
	}{
		{60, "the lap 0.43 mm too wide"},
		{45, "the lap 0.94 mm too wide"},
		{135, "the lap 0.94 mm too wide"},
		{90, "the same at 90°"},
	} {
		l := lapAtSixty
		l.Angle = measure.Radians(tt.deg)
		job := sound(t)(Lap(l, Setting{Full: true}))
		wantSaid(t, job, tt.want)
	}
}

// An obtuse lap near the datum runs past it on the far edge.
func TestLapWarnsBeyondTheDatum(t *testing.T) {
	for _, tt := range []struct {
		deg, at float64
		want    int
	}{{120, 10, 1}, {120, 0, 0}, {120, 30, 0}, {60, 10, 0}} {
		l := lapAtSixty
		l.Angle, l.At = measure.Radians(tt.deg), tt.at
		job := sound(t)(Lap(l, Setting{Full: true}))
		if got := len(job.Warnings); got != tt.want {
			t.Errorf("%v° at %v: warnings %q, want %d", tt.deg, tt.at, job.Warnings, tt.want)
		}
	}
}

// A square lap has no other hand; one at 60° has it at 120°.
func TestSquareLapHasNoOtherHand(t *testing.T) {
	for degrees, want := range map[float64]bool{90: false, 60: true} {
		job := sound(t)(Lap(joint.Lap{Width: 28, Other: 28, Depth: 36, Angle: measure.Radians(degrees), Kerf: 3.2}, Setting{Clear: a4}))
		if got := strings.Contains(said(job), "For the other hand"); got != want {
			t.Errorf("at %g° the other hand is spoken of: %t", degrees, got)
		}
	}
}
