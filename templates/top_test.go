package templates

import (
	"math"
	"testing"

	"rodsheet/geometry"
	"rodsheet/geometry/joint"
	"rodsheet/geometry/measure"
)

// The outline that is drawn encloses the area that is printed, and no line
// leaves its box, so that nothing but the top takes paper.
func TestTopDrawsItsFigures(t *testing.T) {
	rounded := joint.RectangleTop(800, 600)
	rounded.Round = 40
	clipped := joint.Top{Corners: joint.RegularBySide(5, 400).Corners(), Clip: 30}
	for name, top := range map[string]joint.Top{
		"round": {Diameter: 640}, "rounded": rounded, "clipped": clipped,
	} {
		job, err := Top(top, Setting{Unit: measure.Millimetre})
		if err != nil {
			t.Fatal(err)
		}
		d := job.Drawings()[0]
		outline := d.Strokes[0].Points
		if got, want := geometry.Area(outline)/top.Area(), 1.0; math.Abs(got-want) > 1e-5 {
			t.Errorf("%s: the outline has %.7f of the area", name, got)
		}
		if got, want := d.Bounds(), geometry.Bounds(outline...); !want.Offset(1e-9).Holds(got) {
			t.Errorf("%s: strokes reach to %v, the top to %v", name, got, want)
		}
		if !d.Free {
			t.Errorf("%s: the outline may not be turned", name)
		}
		for _, f := range job.Figures {
			if f.Name == "area" && f.Value != measure.Area(top.Area()) {
				t.Errorf("%s: area %v, want %.6f mm²", name, f.Value, top.Area())
			}
		}
	}
}

// Both centre lines cross in the centre when their ends are joined.
func TestTopCentreLines(t *testing.T) {
	job, err := Top(joint.Top{Corners: joint.RegularBySide(3, 900).Corners()}, Setting{})
	if err != nil {
		t.Fatal(err)
	}
	count := 0
	for _, s := range job.Drawings()[0].Strokes {
		if s.Role != Centre {
			continue
		}
		count++
		a, b := s.Points[0], s.Points[1]
		if off := math.Abs(a.Cross(b.Sub(a).Unit())); off > 1e-9 {
			t.Errorf("a centre line misses the centre by %.9f mm", off)
		}
	}
	if count != 4 {
		t.Errorf("%d ends of centre lines, want 4", count)
	}
}

func TestTopRefuses(t *testing.T) {
	if _, err := Top(joint.Top{Diameter: -1}, Setting{}); err == nil {
		t.Error("a diameter of -1 mm was drawn")
	}
}
