package printer

import (
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"rodsheet/geometry"
	"rodsheet/geometry/measure"
	"rodsheet/templates"
	"rodsheet/templates/wording"
)

// drawMatrix returns what a usable printer does, its first axis level.
func drawMatrix(t *rapid.T) geometry.Affine {
	return stretched(rapid.Float64Range(0.98, 1.02).Draw(t, "across"), rapid.Float64Range(0.98, 1.02).Draw(t, "along"),
		measure.Radians(rapid.Float64Range(-0.9, 0.9).Draw(t, "skew")))
}

func apart(m, n geometry.Affine) float64 {
	return max(math.Abs(m.A-n.A), math.Abs(m.B-n.B), math.Abs(m.C-n.C), math.Abs(m.D-n.D), math.Abs(m.E-n.E), math.Abs(m.F-n.F))
}

// What is measured without error gives back the printer, even one that turns
// the whole print, and the correction undoes it.
func TestRecordGivesThePrinter(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		m := drawMatrix(t)
		u := measure.Unit(rapid.IntRange(0, 1).Draw(t, "unit"))
		turn := geometry.Rotate(rapid.Float64Range(-0.1, 0.1).Draw(t, "turn"))
		r := readings(m.Then(turn), u, func() float64 { return 0 })
		if err := r.Check(); err != nil {
			t.Fatal(err)
		}
		if d := apart(r.Matrix(), m); d > 1e-12 {
			t.Errorf("matrix %+v, want %+v", r.Matrix(), m)
		}
		if d := apart(r.Correction().Then(m), geometry.Identity()); d > 1e-12 {
			t.Errorf("corrected %+v is not true", r.Correction().Then(m))
		}
	})
}

func TestRecordFigures(t *testing.T) {
	r := Record{Across: 149.2, Along: 200.9, Diagonals: [2]float64{250.4, 250}}
	// By hand: (250.4² − 250.0²)/(4·149.2·200.9) = 200.16/119897.12 = 0.0016694,
	// and that sine is 0.0957°.
	if got := measure.Degrees(r.Skew()); math.Abs(got-0.0957) > 0.0001 {
		t.Errorf("skew %.5f°, want 0.0957°", got)
	}
	for _, c := range []struct {
		r    Record
		want string
	}{
		{r, "corrected for bench: across ×1.0054, along ×0.9955, skew 0.10°"},
		{Record{Across: 149.2, Along: 200.9, Diagonals: [2]float64{250, 250.4}},
			"corrected for bench: across ×1.0054, along ×0.9955, skew -0.10°"},
		{Record{Across: 150, Along: 200, Diagonals: [2]float64{250, 250.00001}},
			"corrected for bench: across ×1.0000, along ×1.0000, skew 0.00°"},
		{Record{Unit: measure.Inch, Across: 151.638, Along: 204.216},
			"corrected for bench: across ×1.0050, along ×0.9950, skew not measured"},
	} {
		if got := c.r.Text("bench"); got != c.want {
			t.Errorf("text %q, want %q", got, c.want)
		}
	}
	// A side along the feed that leans to the right makes the diagonal to the
	// upper right the longer one.
	if up := r.Matrix().Apply(geometry.Pt(0, 200)); up.X <= 0 {
		t.Errorf("the side along the feed ends at %+v, want it to lean right", up)
	}
}

func TestRefusedReadings(t *testing.T) {
	mm := func(across, along float64, diagonals ...float64) Record {
		r := Record{Across: across, Along: along}
		copy(r.Diagonals[:], diagonals)
		return r
	}
	inch := func(across, along float64) Record {
		return Record{Unit: measure.Inch, Across: across * 25.4, Along: along * 25.4}
	}
	for _, c := range []struct {
		name       string
		r          Record
		want, hint string // parts; an empty want is no error
	}{
		{"true", mm(150, 200, 250, 250), "", ""},
		{"three per cent", mm(145.51, 205.99), "", ""},
		{"short across", mm(145.4, 201), "across 145.4 mm must be at least 97 % of 150 mm, 145.5 mm", "from line to line"},
		{"long along", mm(150, 206.5), "along 206.5 mm must be at most 103 % of 200 mm, 206 mm", "from line to line"},
		{"inches short", inch(5.8, 8), "across 5 51/64 in (5.8) must be at least 97 % of 6 in", "from line to line"},
		{"inches for mm", mm(5.97, 8.04), "across 5.97 mm", "near 6 in: give the length its unit"},
		{"mm for inches", inch(149.2, 200.9), "across 149 13/64 in (149.2)", "near 150 mm: give the length its unit"},
		{"nothing", mm(0, 0), "across 0 mm", ""},
		{"below nothing", mm(-150, -200), "across -150 mm", ""},
		{"not a number", mm(math.NaN(), 200), "across must be a finite number", ""},
		{"endless", mm(150, math.Inf(1)), "along must be a finite number", ""},
		{"letter on A4", mm(145.9, 194.5), `97.3 % looks like the print dialog's "fit to page"`, "100 %"},
		{"A4 on letter", mm(141.2, 188.1), `94.1 % looks like the print dialog's "fit to page"`, "100 %"},
		{"inside margins", inch(5.76, 7.68), `96.0 % looks like the print dialog's "fit to page"`, "100 %"},
		{"one side at 97.3", mm(145.9, 199), "", ""},
		{"scaled otherwise", mm(160, 213), "both sides are off alike: 106.7 % across, 106.5 % along", "100 %"},
		{"skew", mm(149.2, 200.9, 253, 247.6), "skew 1.29° must be at most 1°", "lower left"},
		{"skew the other way", mm(149.2, 200.9, 247.6, 253), "skew 1.29° must be at most 1°", "lower left"},
		{"diagonals of another rectangle", mm(149.2, 200.9, 254, 254), "mean of the diagonals 254 mm must be at most", "the same rectangle"},
		{"one diagonal", mm(149.2, 200.9, 250.4), "second diagonal 0 mm must be more than 0 mm", ""},
		{"no triangle", mm(149.2, 200.9, 900, 1), "mean of the diagonals", ""},
		{"diagonal not a number", mm(149.2, 200.9, math.NaN(), 250), "first diagonal must be a finite number", ""},
	} {
		err := c.r.Check()
		if c.want == "" {
			if err != nil {
				t.Errorf("%s: %v", c.name, err)
			}
			continue
		}
		got, hint := "no error", ""
		if err != nil {
			got, hint = wording.Fault(err, c.r.Unit)
		}
		if !strings.Contains(got, c.want) || !strings.Contains(hint, c.hint) {
			t.Errorf("%s: %q, hint %q; want %q, %q", c.name, got, hint, c.want, c.hint)
		}
	}
}

// No printer within 2 % is taken for a print that was fitted to the page. The
// skew drawn leaves room under the limit of 1° for the slips: ends of both
// diagonals read 0.25 mm wrong, against each other, make 0.12°.
func TestTrueEnoughPrintersPass(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		scale, skew := rapid.Float64Range(0.98, 1.02), rapid.Float64Range(-0.8, 0.8)
		m := stretched(scale.Draw(t, "across"), scale.Draw(t, "along"), measure.Radians(skew.Draw(t, "skew")))
		r := readings(m, measure.Unit(rapid.IntRange(0, 1).Draw(t, "unit")),
			func() float64 { return rapid.Float64Range(-0.25, 0.25).Draw(t, "slip") })
		if err := r.Check(); err != nil {
			t.Error(err)
		}
	})
}

func TestRectangleIsThreeFourFive(t *testing.T) {
	for u, want := range map[measure.Unit]float64{measure.Millimetre: 250, measure.Inch: 254} {
		if across, along := templates.RectangleSides(u); math.Abs(math.Hypot(across, along)-want) > 1e-9 {
			t.Errorf("%v: diagonal of %.3f × %.3f mm, want %.0f mm", u, across, along, want)
		}
	}
}
