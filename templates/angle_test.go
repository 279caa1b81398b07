package templates

import (
	"errors"
	"fmt"
	"math"
	"reflect"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"rodsheet/geometry"
	"rodsheet/geometry/measure"
	"rodsheet/templates/wording"
)

func TestAngleDrawing(t *testing.T) {
	job := sound(t)(Angles(radians(14.5), 0, Setting{Clear: a4, Full: true}))
	if job.Name != "angle-14.5" || len(job.Drawings()) != 2 || len(job.Warnings) != 0 {
		t.Errorf("job %q has %d drawings and warnings %q", job.Name, len(job.Drawings()), job.Warnings)
	}
	if got, want := job.Drawings()[0].Name, "angle 14.5°, right hand"; got != want {
		t.Errorf("drawing %q, want %q", got, want)
	}
	if got, want := job.Drawings()[1].Name, "angle 14.5°, left hand"; got != want {
		t.Errorf("drawing %q, want %q", got, want)
	}
	texts := labelTexts(job.Drawings()[0])
	for _, want := range []string{
		"bevel 14.5°: 75.5° off square", "bevel 75.5°: 14.5° off square", "gauge edge", "base 230 mm", "upright side 59.48 mm",
		"cut, or strike on a board from its working edge", "room for the gauge's stock",
	} {
		if !slices.Contains(texts, want) {
			t.Errorf("no label %q among %q", want, texts)
		}
	}
}

func TestAnglePanel(t *testing.T) {
	for _, c := range []struct {
		unit      measure.Unit
		row, want string
	}{
		{measure.Millimetre, "bevel", "14.5° = 14° 30′"},
		{measure.Millimetre, "off square", "75.5° = 75° 30′"},
		{measure.Millimetre, "rise over 100 mm", "25.86 mm"},
		{measure.Millimetre, "rise over 250 mm", "64.65 mm"},
		{measure.Millimetre, "rise over 500 mm", "129.31 mm"},
		{measure.Millimetre, "rise over 12 in", ""},
		{measure.Millimetre, "slope", "1 in 3.867"},
		{measure.Millimetre, "a slip of 0.25 mm at the far end costs", "0.06°"},
		{measure.Millimetre, "chord at 250 mm", "63.1 mm"},
		{measure.Millimetre, "chord at 10 in", ""},
		{measure.Inch, "rise over 100 mm", ""},
		{measure.Inch, "rise over 4 in", "1 1/32 in (1.034)"},
		{measure.Inch, "rise over 10 in", "2 19/32 in (2.586)"},
		{measure.Inch, "rise over 20 in", "5 11/64 in (5.172)"},
		{measure.Inch, "chord at 250 mm", ""},
		{measure.Inch, "chord at 10 in", "2 17/32 in (2.524)"},
		{measure.Inch, "a slip of 1/64 in at the far end costs", "0.1°"},
		{measure.Inch, "base", "9 in"},
	} {
		job := sound(t)(Angles(radians(14.5), 0, Setting{Unit: c.unit, Clear: a4, Full: true}))
		if got := cell(job.Sections[0].Panels[0], c.row); got != c.want {
			t.Errorf("%s, %q: %q, want %q", c.unit, c.row, got, c.want)
		}
	}
}

// A minute short of a whole degree is carried, not printed as 60′.
func TestMinutesCarry(t *testing.T) {
	job := sound(t)(Angles(radians(14.997), 0, Setting{Clear: a4, Full: true}))
	if got, want := cell(job.Sections[0].Panels[0], "bevel"), "15° = 15° 00′"; got != want {
		t.Errorf("%q, want %q", got, want)
	}
}

func TestAnglesTogether(t *testing.T) {
	job := sound(t)(Angles(radians(14.5, 60, 120, 14.5), 0, Setting{Clear: a4, Full: true}))
	if job.Name != "angles-14.5-60" || job.Title != "Angles 14.5°, 60°" || len(job.Drawings()) != 4 {
		t.Errorf("name %q, title %q, %d drawings", job.Name, job.Title, len(job.Drawings()))
	}
	want := []string{
		"120° is drawn as its supplement, bevel 60°: the same line, read from the other side",
		"60° is asked for more than once and drawn once",
		"14.5° is asked for more than once and drawn once",
	}
	if !slices.Equal(job.Warnings, want) {
		t.Errorf("warnings %q, want %q", job.Warnings, want)
	}
	if got := valueOf(t, job, "60° rise over 100 mm"); math.Abs(got-100*math.Sqrt(3)) > 1e-9 {
		t.Errorf("60° rise over 100 mm = %.9f", got)
	}
	many := sound(t)(Angles(radians(1, 2, 3, 4, 5, 6), 0, Setting{Clear: a4, Full: true}))
	if many.Name != "angles-1-2-3-4-and-2-more" || many.Title != "Angles 1°, 2°, 3°, 4° and 2 more" {
		t.Errorf("name %q, title %q", many.Name, many.Title)
	}
}

func TestAnglesRefuses(t *testing.T) {
	for _, c := range []struct {
		name   string
		angles []float64
		base   float64
		figure string
	}{
		{"none", nil, 0, "number of angles"},
		{"square", radians(45, 90), 0, "angle"},
		{"too flat", radians(0.2), 0, "angle"},
		{"NaN", radians(math.NaN()), 0, "angle"},
		{"base negative", radians(45), -1, "base"},
		{"base short", radians(45), 49, "base"},
		{"base absurd", radians(45), 3001, "base"},
		{"base NaN", radians(45), math.NaN(), "base"},
		{"base infinite", radians(45), math.Inf(1), "base"},
	} {
		job, err := Angles(c.angles, c.base, Setting{Clear: a4, Full: true})
		var bound *measure.BoundError
		if !errors.As(err, &bound) || wording.Name(bound.Figure) != c.figure {
			t.Errorf("%s: err = %v, want a bound on %q", c.name, err, c.figure)
		}
		if !reflect.DeepEqual(job, Job{}) {
			t.Errorf("%s: a job comes with the error", c.name)
		}
	}
}

// A base that is asked for is drawn, whatever the sheet.
func TestAnglesBase(t *testing.T) {
	job := sound(t)(Angles(radians(40), 600, Setting{Clear: a4, Full: true}))
	if got := valueOf(t, job, "base"); got != 600 {
		t.Errorf("base %.3f, want 600", got)
	}
	steep := sound(t)(Angles(radians(80), 600, Setting{Clear: a4, Full: true}))
	if got := valueOf(t, steep, "upright side"); math.Abs(got-600) > 1e-9 {
		t.Errorf("rise %.9f, want 600", got)
	}
}

// Without bounds, as on paper cut to the job, the edge stops at 250 mm or 10 in.
func TestAnglesWithoutPaperBounds(t *testing.T) {
	for _, c := range []struct {
		unit measure.Unit
		want float64
	}{{measure.Millimetre, 250}, {measure.Inch, 254}} {
		inf := math.Inf(1)
		job := sound(t)(Angles(radians(89.5), 0, Setting{Unit: c.unit, Clear: geometry.Pt(inf, inf), Full: true}))
		cut := geometry.Bounds(linesOf(job.Drawings()[0], Cut)[0]...)
		if math.Abs(cut.Width()-c.want) > 1e-9 || math.Abs(cut.Height()-c.want) > 1e-9 {
			t.Errorf("%s: cut %.3f × %.3f, want %.3f both ways", c.unit, cut.Width(), cut.Height(), c.want)
		}
	}
}

func TestAngleDrawingLaws(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		deg := rapid.Float64Range(0.5, 89.5).Draw(t, "degrees")
		if math.Abs(math.Mod(100*deg, 1)-0.5) < 1e-6 {
			t.Skip("midway between two printed figures: which of them is chance")
		}
		unit := measure.Unit(rapid.IntRange(0, 1).Draw(t, "unit"))
		clear := geometry.Pt(
			rapid.Float64Range(150, 400).Draw(t, "clear width"),
			rapid.Float64Range(210, 500).Draw(t, "clear height"),
		)
		job := sound(t)(Angles(radians(deg), 0, Setting{Unit: unit, Clear: clear, Full: true}))
		right, left := job.Drawings()[0], job.Drawings()[1]
		if !mirrored(right, left) {
			t.Fatal("left hand is not the mirror image of the right")
		}
		box := right.Bounds()
		long, short := math.Max(clear.X, clear.Y), math.Min(clear.X, clear.Y)
		if box.Width() > long+1e-9 || box.Height() > short+1e-9 {
			t.Fatalf("%.3f × %.3f does not go on %.3f × %.3f", box.Width(), box.Height(), long, short)
		}
		outline := linesOf(right, Cut)[0]
		if edge := outline[1].Sub(outline[0]); edge.Y != 0 || edge.X < 200 || edge.X > 254+1e-9 {
			t.Fatalf("gauge edge is %v", edge)
		}
		top := outline[len(outline)-2] // the last is the first again
		want := geometry.Pt(valueOf(t, job, "base"), valueOf(t, job, "upright side"))
		if outline[0] != (geometry.Point{}) || top.Distance(want) > 1e-9 {
			t.Fatalf("slope ends at %v, want %v", top, want)
		}
		wantCorners(t, right)
		for _, l := range right.Labels {
			foot := geometry.Pt(top.X, 0)
			if l.ID == "rise" && (l.On.A.Distance(foot) > 1e-9 || l.On.B.Distance(top) > 1e-9) {
				t.Fatalf("rise is named at %v", l.On)
			}
		}
		if got := math.Atan2(top.Y, top.X); math.Abs(got-measure.Radians(deg)) > 1e-9 {
			t.Fatalf("slope stands at %.12f, want %.12f", got, measure.Radians(deg))
		}
		if sum := valueOf(t, job, "bevel") + valueOf(t, job, "off square"); math.Abs(sum-math.Pi/2) > 1e-12 {
			t.Fatalf("bevel and off square make %.12f", sum)
		}
	})
}

// corners returns what the sides of both acute corners enclose, by the label that
// says what each sets, and how long the shorter of their sides is.
func corners(d Drawing) map[string][2]float64 {
	outline := linesOf(d, Cut)[0]
	low, slope, up := outline[0], outline[len(outline)-2], geometry.Pt(outline[len(outline)-2].X, 0)
	if cut := linesOf(d, Cut); len(cut) > 1 { // the upright side runs on below
		up = cut[1][1]
	}
	out := map[string][2]float64{}
	for at, sides := range map[geometry.Point][2]geometry.Point{low: {outline[1], slope}, slope: {low, up}} {
		a, b := sides[0].Sub(at), sides[1].Sub(at)
		angle := math.Abs(math.Atan2(a.Cross(b), a.Dot(b)))
		deg := measure.Angle(angle).Text(0)
		off := measure.Angle(math.Pi/2 - angle).Text(0)
		out["bevel "+deg+": "+off+" off square"] = [2]float64{angle, math.Min(a.Norm(), b.Norm())}
	}
	return out
}

// wantCorners wants each acute corner to be named by what it sets, and both its
// sides long enough for a gauge.
func wantCorners(t *rapid.T, d Drawing) {
	t.Helper()
	for label, corner := range corners(d) {
		if !slices.Contains(labelTexts(d), label) {
			t.Fatalf("no corner is named %q among %q", label, labelTexts(d))
		}
		if corner[1] < 100-1e-9 {
			t.Fatalf("a side of the corner %q is %.1f mm long", label, corner[1])
		}
	}
}

// One triangle serves both hands and leaves room for the calibration square: both
// its corners are named by what they set, and the bevel asked for stands large.
func TestOneTriangleServesBothHands(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		deg := float64(rapid.IntRange(25, 875).Draw(t, "tenths of a degree")) / 10
		unit := measure.Unit(rapid.IntRange(0, 1).Draw(t, "unit"))
		clear := geometry.Pt(rapid.Float64Range(165, 400).Draw(t, "clear width"), rapid.Float64Range(220, 500).Draw(t, "clear height"))
		job := sound(t)(Angles(radians(deg), 0, Setting{Unit: unit, Clear: clear}))
		d := job.Drawings()[0]
		if len(job.Drawings()) != 1 || d.View.Hand != EitherHand {
			t.Fatalf("%d drawings, the first for hand %d", len(job.Drawings()), d.View.Hand)
		}
		lies := d
		if d.Free { // with its slope level
			lies = d.Moved(geometry.Rotate(-math.Min(measure.Radians(deg), math.Pi/2-measure.Radians(deg))))
		}
		if above := math.Max(clear.X, clear.Y) - lies.Bounds().Height(); above < CalibrationSide(unit)+30-1e-9 {
			t.Fatalf("%.1f mm are left for the calibration square", above)
		}
		if lies.Bounds().Width() > math.Min(clear.X, clear.Y)+1e-9 {
			t.Fatalf("%.1f mm wide", lies.Bounds().Width())
		}
		asked := "bevel " + measure.Angle(measure.Radians(deg)).Text(0)
		for _, l := range d.Labels {
			if l.Big && !strings.HasPrefix(l.Text, asked+":") {
				t.Errorf("%q stands large, not %s", l.Text, asked)
			}
		}
		for label, corner := range corners(d) {
			if !slices.Contains(labelTexts(d), label) {
				t.Errorf("no corner is named %q among %q", label, labelTexts(d))
			}
			if strings.HasPrefix(label, asked+":") && deg != 45 && corner[1] < 85 { // 45° stands in both
				t.Errorf("a side of the corner %q is %.1f mm long", label, corner[1])
			}
		}
		rise, base := valueOf(t, job, "upright side"), valueOf(t, job, "base")
		if got := math.Atan2(rise, base); math.Abs(got-measure.Radians(deg)) > 1e-9 {
			t.Errorf("base and rise make %.9f°", measure.Degrees(got))
		}
	})
}

// Below 2.5°, from the edge or from a line square to it, there is no triangle: two
// points 500 mm or 20 in apart have the angle, and the figures are theirs. A base that
// is asked for, and a full setting, draw it all the same.
func TestAShallowAngleIsTwoPoints(t *testing.T) {
	for _, c := range []struct {
		deg   float64
		unit  measure.Unit
		rises string // over the run, from a table of tangents
		line  string
	}{
		{1.6, measure.Millimetre, "13.97 mm", "edge"},
		{88.4, measure.Millimetre, "13.97 mm", "500 mm along the line"},
		{2.4, measure.Inch, "27/32 in (0.838)", "edge"},
	} {
		s := Setting{Unit: c.unit, Clear: a4}
		job := sound(t)(Angles(radians(c.deg), 0, s))
		pictures := job.Sections[0].Pictures
		if len(job.Drawings()) != 0 || len(pictures) != 1 {
			t.Fatalf("%g°: %d drawings and %d pictures", c.deg, len(job.Drawings()), len(pictures))
		}
		texts := labelTexts(Drawing{Labels: pictures[0].Lettering()})
		for _, want := range []string{c.rises, c.line} {
			if !slices.Contains(texts, want) {
				t.Errorf("%g°: %q is not among %q", c.deg, want, texts)
			}
		}
		if words := strings.Join(job.Sections[0].Panels[0].Text, " "); !strings.Contains(words, "No triangle") || !strings.Contains(words, c.rises) || len(job.Sections[0].Panels) != 1 {
			t.Errorf("%g°: %d panels, the first says %q", c.deg, len(job.Sections[0].Panels), words)
		}
		if got := math.Atan2(valueOf(t, job, "upright side"), valueOf(t, job, "base")); math.Abs(got-measure.Radians(c.deg)) > 1e-9 {
			t.Errorf("base and rise make %.9f°", measure.Degrees(got))
		}
		full := s
		full.Full = true
		for _, d := range []func() (Job, error){
			func() (Job, error) { return Angles(radians(c.deg), 0, full) },
			func() (Job, error) { return Angles(radians(c.deg), 300, s) },
			func() (Job, error) { return Angles(radians(2.5), 0, s) },
		} {
			if job, err := d(); err != nil || len(job.Drawings()) == 0 {
				t.Errorf("%g°: %d drawings, %v", c.deg, len(job.Drawings()), err)
			}
		}
	}
}

// Two triangles on one strip have their corners as by themselves, named, with sides long
// enough for a gauge; each upright side runs through the strip to the other's edge; and
// the table has the figures of both.
func TestTwoTrianglesOnOneStrip(t *testing.T) {
	paired := 0
	rapid.Check(t, func(t *rapid.T) {
		hundredths := rapid.IntRange(7200, 8600)
		angles := [2]float64{measure.Radians(float64(hundredths.Draw(t, "one")) / 100), measure.Radians(float64(hundredths.Draw(t, "other")) / 100)}
		s := Setting{Unit: measure.Unit(rapid.IntRange(0, 1).Draw(t, "unit")), Clear: a4}
		d, p, ok := AnglePair(angles, s)
		if !ok {
			return
		}
		paired++
		cut := linesOf(d, Cut)
		if b := d.Bounds(); b.Height() > a4.X || b.Width() > a4.X {
			t.Fatalf("%.1f × %.1f does not go on a sheet with its figures", b.Width(), b.Height())
		}
		back := geometry.Translate(cut[2][0].Mul(-1)).Then(geometry.Rotate(math.Pi))
		second := Drawing{Labels: d.Labels}
		for _, points := range cut[2:] {
			second.Line(Cut, back.ApplyAll(points)...)
		}
		wantCorners(t, d)
		wantCorners(t, second)
		strip := -cut[2][0].Y
		if strip < 25 || cut[2][1].Y != -strip || math.Abs(cut[1][1].Y+strip) > 1e-9 || math.Abs(cut[3][1].Y) > 1e-9 {
			t.Fatalf("a strip of %.3f, its ends to %.3f and %.3f", strip, cut[1][1], cut[3][1])
		}
		for i, angle := range angles {
			one, own, err := AngleTriangle(angle, false, s)
			if err != nil || one.View != [2]View{d.View, d.Also}[i] {
				t.Fatalf("%v, of %v", err, one.View)
			}
			for k, row := range own.Table {
				if p.Table[k][0] != row[0] || p.Table[k][1+i] != row[1] {
					t.Fatalf("%q, want %q", p.Table[k], row)
				}
			}
		}
	})
	if paired == 0 {
		t.Error("no two triangles are on one strip")
	}
}

// Where the calibration square stands on another sheet, both sides of the bevel asked
// for are long enough for a gauge, and triangles that go on one strip share it.
func TestTrianglesOfAPackAreLongEnough(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		deg := float64(rapid.IntRange(25, 875).Draw(t, "tenths of a degree")) / 10
		s := Setting{Unit: measure.Unit(rapid.IntRange(0, 1).Draw(t, "unit")), Clear: geometry.Pt(170, 217), Proved: true}
		job := sound(t)(Angles(radians(deg), 0, s))
		asked := "bevel " + measure.Angle(measure.Radians(deg)).Text(0) + ":"
		for _, d := range job.Drawings() {
			for label, corner := range corners(d) {
				if strings.HasPrefix(label, asked) && corner[1] < 100-1e-9 {
					t.Errorf("a side of the corner %q is %.1f mm long", label, corner[1])
				}
			}
			if b := d.Bounds(); b.Width() > s.Clear.X || b.Height() > s.Clear.Y {
				t.Fatalf("%.1f × %.1f does not go on a sheet", b.Width(), b.Height())
			}
		}
	})
	job := sound(t)(Angles(radians(82.03, 45.35, 85), 0, Setting{Clear: a4}))
	if d := job.Drawings(); len(d) != 2 || d[0].View.Part != "angle-82.03" || d[0].Also.Part != "angle-85" || len(job.Sections[0].Panels[0].Table[0]) != 3 {
		t.Errorf("%d drawings, the first of %v and %v, with %q", len(d), d[0].View, d[0].Also, job.Sections[0].Panels[0].Table)
	}
}

// Near square the table says how far the line falls off square, which a square and a rule
// set out; the bevel's own rise would be metres.
func TestTableOfASteepBevel(t *testing.T) {
	job := sound(t)(Angles(radians(85.44), 0, Setting{Clear: a4}))
	said := fmt.Sprint(job.Sections[0].Panels[0].Table)
	rise := measure.Length(100 * math.Tan(measure.Radians(90-85.44))).Text(measure.Millimetre)
	for _, want := range []string{"[its rise over 100 mm " + rise + "]", "[its slope 1 in 12.5"} {
		if !strings.Contains(said, want) {
			t.Errorf("no %q in %s", want, said)
		}
	}
	long := map[measure.ID]float64{}
	for _, l := range job.Sections[0].Drawings[0].Labels {
		long[l.ID] = l.On.Length()
	}
	if got, want := long["rise"]/long["base"], math.Tan(measure.Radians(90-85.44)); math.Abs(got-want) > 1e-9 {
		t.Errorf("the drawing calls rise and base what stand as %v, its table %v", got, want)
	}
	if got := valueOf(t, job, "rise over 100 mm"); math.Abs(got-100*math.Tan(measure.Radians(85.44))) > 1e-9 {
		t.Errorf("the figure for scripts became %v", got)
	}
}
