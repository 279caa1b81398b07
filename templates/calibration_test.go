package templates_test

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"rodsheet/geometry/measure"
	"rodsheet/templates"
)

func TestCalibrationSquare(t *testing.T) {
	for _, c := range []struct {
		unit           measure.Unit
		side, diagonal string
	}{
		{measure.Millimetre, "100 mm", "141.4 mm"},
		{measure.Inch, "100 mm = 3 15/16 in (3.937)", "141.4 mm = 5 9/16 in (5.568)"},
	} {
		d := templates.Calibration(c.unit)
		square := strokesOf(d, templates.Cut)
		if len(square) != 1 || len(square[0]) != 5 || square[0][0] != square[0][4] {
			t.Fatalf("%s: square is %v", c.unit, square)
		}
		for i := range 4 {
			if got := square[0][i].Distance(square[0][i+1]); got != 100 {
				t.Errorf("%s: side %d is %.9f mm", c.unit, i, got)
			}
		}
		diagonals := strokesOf(d, templates.Construction)
		if len(diagonals) != 2 {
			t.Fatalf("%s: %d diagonals", c.unit, len(diagonals))
		}
		for _, line := range diagonals {
			if got := line[0].Distance(line[1]); math.Abs(got-100*math.Sqrt2) > 1e-9 {
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

func TestScaleHasNoDrawing(t *testing.T) {
	job, err := templates.Scale(templates.Setting{Unit: measure.Inch})
	if err != nil || len(job.Drawings) != 0 || len(job.Panels) == 0 {
		t.Errorf("err %v, %d drawings, %d panels", err, len(job.Drawings), len(job.Panels))
	}
	if got, want := cell(job.Panels[0], "both diagonals"), "141.4 mm = 5 9/16 in (5.568)"; got != want {
		t.Errorf("both diagonals %q, want %q", got, want)
	}
	if side, diagonal := figure(t, job, "side"), figure(t, job, "diagonal"); side != 100 || math.Abs(diagonal-side*math.Sqrt2) > 1e-9 {
		t.Errorf("side %.9f, diagonal %.9f", side, diagonal)
	}
}

// The words state two figures: what a side off by 1 mm in 100 does to a line
// at 45°, and the skew that makes the diagonals differ by 1 mm.
func TestScaleWords(t *testing.T) {
	job, err := templates.Scale(templates.Setting{})
	if err != nil {
		t.Fatal(err)
	}
	words := strings.Join(job.Panels[1].Text, "\n")
	off := math.Atan2(101, 100) - math.Pi/4
	// The diagonals of a rhombus of side s, skewed by γ, are 2·s·cos(45° ∓ γ/2):
	// they differ by 2·√2·s·sin(γ/2).
	skew := 2 * math.Asin(1/(2*math.Sqrt2*100))
	for _, want := range []string{
		fmt.Sprintf("costs up to %.2f°", measure.Degrees(off)),
		fmt.Sprintf("A difference of 1 mm is %.2f°", measure.Degrees(skew)),
	} {
		if !strings.Contains(words, want) {
			t.Errorf("%q is not said", want)
		}
	}
}
