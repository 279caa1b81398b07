package templates

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"rodsheet/geometry"
	"rodsheet/geometry/measure"
)

func TestCalibrationSquare(t *testing.T) {
	for _, c := range []struct {
		unit           measure.Unit
		mm             float64
		side, diagonal string
	}{
		{measure.Millimetre, 100, "100 mm", "141.4 mm"},
		{measure.Inch, 101.6, "4 in", "5 21/32 in (5.657)"},
	} {
		d := Calibration(c.unit)
		square := linesOf(d, Cut)
		if len(square) != 1 || len(square[0]) != 5 || square[0][0] != square[0][4] {
			t.Fatalf("%s: square is %v", c.unit, square)
		}
		for i := range 4 {
			if got := square[0][i].Distance(square[0][i+1]); math.Abs(got-c.mm) > 1e-9 {
				t.Errorf("%s: side %d is %.9f mm", c.unit, i, got)
			}
		}
		diagonals := linesOf(d, Construction)
		if len(diagonals) != 2 {
			t.Fatalf("%s: %d diagonals", c.unit, len(diagonals))
		}
		for _, line := range diagonals {
			if got := line[0].Distance(line[1]); math.Abs(got-c.mm*math.Sqrt2) > 1e-9 {
				t.Errorf("%s: diagonal is %.9f mm", c.unit, got)
			}
		}
		texts := labelTexts(d)
		if got := count(texts, c.side); got != 4 {
			t.Errorf("%s: %d labels %q, want 4", c.unit, got, c.side)
		}
		if got := count(texts, c.diagonal); got != 2 {
			t.Errorf("%s: %d labels %q, want 2", c.unit, got, c.diagonal)
		}
	}
}

func count(texts []string, want string) int {
	return len(slices.DeleteFunc(slices.Clone(texts), func(s string) bool { return s != want }))
}

// The rectangle is two triangles of 3, 4 and 5, and says what each line is.
func TestCalibrationRectangle(t *testing.T) {
	for _, c := range []struct {
		unit                    measure.Unit
		across, along, diagonal float64 // mm
		texts                   [3]string
	}{
		{measure.Millimetre, 150, 200, 250, [3]string{"150 mm", "200 mm", "250 mm"}},
		{measure.Inch, 152.4, 203.2, 254, [3]string{"6 in", "8 in", "10 in"}},
	} {
		d := CalibrationRectangle(c.unit)
		if !d.Upright {
			t.Errorf("%s: may be turned", c.unit)
		}
		r := linesOf(d, Outline)[0]
		want := []float64{c.across, c.along, c.across, c.along}
		for i, side := range want {
			if got := r[i].Distance(r[i+1]); math.Abs(got-side) > 1e-9 {
				t.Errorf("%s: side %d is %.9f mm, want %.1f", c.unit, i, got, side)
			}
		}
		for i, line := range linesOf(d, Construction)[:2] {
			if got := line[0].Distance(line[1]); math.Abs(got-c.diagonal) > 1e-9 {
				t.Errorf("%s: diagonal %d is %.9f mm", c.unit, i, got)
			}
		}
		texts := labelTexts(d)
		for _, want := range []string{"first diagonal, " + c.texts[2], "second diagonal, " + c.texts[2], "the sheet is fed along this arrow"} {
			if count(texts, want) != 1 {
				t.Errorf("%s: no label %q in %q", c.unit, want, texts)
			}
		}
		if count(texts, "across the feed, "+c.texts[0]) != 2 || count(texts, "along the feed, "+c.texts[1]) != 2 {
			t.Errorf("%s: sides are labelled %q", c.unit, texts)
		}
		for _, l := range d.Labels {
			rises := l.On.B.Sub(l.On.A).Y > 0
			if strings.HasPrefix(l.Text, "first diagonal") && !rises || strings.HasPrefix(l.Text, "second diagonal") && rises {
				t.Errorf("%s: %q runs from %v to %v", c.unit, l.Text, l.On.A, l.On.B)
			}
		}
	}
}

// The rectangle is on every sheet that holds it, and where it is not the maker
// is told.
func TestScaleHasTheRectangle(t *testing.T) {
	for _, c := range []struct {
		name  string
		unit  measure.Unit
		clear geometry.Point
		want  int
	}{
		{"A4", measure.Millimetre, geometry.Pt(167, 239), 1},
		{"letter", measure.Inch, geometry.Pt(173, 222), 1},
		{"just", measure.Millimetre, geometry.Pt(150, 200), 1},
		{"narrow", measure.Millimetre, geometry.Pt(149.9, 300), 0},
		{"short", measure.Inch, geometry.Pt(160, 203.1), 0},
		{"wider than high", measure.Millimetre, geometry.Pt(400, 280), 1},
		{"just, on its side", measure.Millimetre, geometry.Pt(200, 150), 1},
		{"narrow on its side", measure.Millimetre, geometry.Pt(300, 149.9), 0},
		{"short on its side", measure.Inch, geometry.Pt(203.1, 160), 0},
		{"no end", measure.Millimetre, geometry.Pt(math.Inf(1), math.Inf(1)), 1},
	} {
		job, err := Scale(Setting{Unit: c.unit, Clear: c.clear})
		if err != nil || len(job.Drawings()) != c.want || len(job.Warnings) != 1-c.want {
			t.Errorf("%s: %v, %d drawings, warnings %q; want %d drawings", c.name, err, len(job.Drawings()), job.Warnings, c.want)
		}
	}
}

// A sheet wider than high is fed by its short edge: on it the rectangle lies on
// its side, and each line still is what its name says.
func TestRectangleOnItsSide(t *testing.T) {
	for _, u := range []measure.Unit{measure.Millimetre, measure.Inch} {
		job, err := Scale(Setting{Unit: u, Clear: geometry.Pt(258, 155)})
		if err != nil || len(job.Drawings()) != 1 {
			t.Fatalf("%v, %d drawings", err, len(job.Drawings()))
		}
		d := job.Drawings()[0]
		if !d.Upright || !d.Proof {
			t.Errorf("%s: upright %t, proof %t, want both", u, d.Upright, d.Proof)
		}
		across, along := RectangleSides(u)
		if b := d.Bounds(); math.Abs(b.Width()-along) > 1e-9 || math.Abs(b.Height()-across) > 1e-9 {
			t.Errorf("%s: %.3f × %.3f mm, want %.1f × %.1f", u, b.Width(), b.Height(), along, across)
		}
		// As the sheet is fed: its x axis along the feed, turned upright.
		fed := d.Moved(geometry.Rotate(-math.Pi / 2))
		named := 0
		for _, l := range fed.Labels {
			run := l.On.B.Sub(l.On.A)
			name, _, _ := strings.Cut(l.Text, ",")
			ok, known := map[string]bool{
				"across the feed":                   math.Abs(run.Y) < 1e-9,
				"along the feed":                    math.Abs(run.X) < 1e-9,
				"the sheet is fed along this arrow": math.Abs(run.X) < 1e-9,
				"first diagonal":                    run.X*run.Y > 0,
				"second diagonal":                   run.X*run.Y < 0,
			}[name]
			if !ok || !known {
				t.Errorf("%s: %q runs along %.3f", u, l.Text, run)
			}
			named++
		}
		if named != 7 {
			t.Errorf("%s: %d labels, want 7", u, named)
		}
	}
}

// What proves a printer says so, and nothing else does.
func TestProof(t *testing.T) {
	for _, d := range []Drawing{Calibration(0), CalibrationRectangle(0)} {
		if !d.Proof {
			t.Errorf("%s is judged by the model", d.Name)
		}
	}
}

func TestScaleHasNoDrawing(t *testing.T) {
	job, err := Scale(Setting{Unit: measure.Inch})
	if err != nil || len(job.Drawings()) != 0 || len(job.Sections[0].Panels) == 0 {
		t.Errorf("err %v, %d drawings, %d panels", err, len(job.Drawings()), len(job.Sections[0].Panels))
	}
	if got, want := cell(job.Sections[0].Panels[0], "both diagonals"), "5 21/32 in (5.657)"; got != want {
		t.Errorf("both diagonals %q, want %q", got, want)
	}
	if side, diagonal := valueOf(t, job, "side"), valueOf(t, job, "diagonal"); side != 4*25.4 || math.Abs(diagonal-side*math.Sqrt2) > 1e-9 {
		t.Errorf("side %.9f, diagonal %.9f", side, diagonal)
	}
}

// The words state two figures: what a side off by 1 mm in 100, or by 1/32 in in 4,
// does to a line at 45°, and the skew that makes the diagonals differ by as much.
func TestScaleWords(t *testing.T) {
	for _, c := range []struct {
		unit      measure.Unit
		side, off float64
		text      string
	}{
		{measure.Millimetre, 100, 1, "1 mm"},
		{measure.Inch, 4, 1.0 / 32, "1/32 in"},
	} {
		job := sound(t)(Scale(Setting{Unit: c.unit}))
		words := strings.Join(job.Sections[0].Panels[1].Text, "\n")
		off := math.Atan2(c.side+c.off, c.side) - math.Pi/4
		// The diagonals of a rhombus of side s, skewed by γ, are 2·s·cos(45° ∓ γ/2):
		// they differ by 2·√2·s·sin(γ/2).
		skew := 2 * math.Asin(c.off/(2*math.Sqrt2*c.side))
		for _, want := range []string{
			fmt.Sprintf("costs up to %.2f°", measure.Degrees(off)),
			fmt.Sprintf("A difference of %s is %.2f°", c.text, measure.Degrees(skew)),
		} {
			if !strings.Contains(words, want) {
				t.Errorf("%s: %q is not said", c.unit, want)
			}
		}
	}
}
