package printer_test

import (
	"bytes"
	"math"
	"testing"

	"rodsheet/geometry"
	"rodsheet/geometry/measure"
	"rodsheet/render"
	"rodsheet/render/pdf"
	"rodsheet/render/printer"
	"rodsheet/render/readback"
	"rodsheet/templates"
)

// TestFileHoldsTheInverse reads a corrected file with PDFium, finds the
// calibration square and the rectangle in it, and wants the sides to be
// exactly those of the record's inverse: printed, they are true.
func TestFileHoldsTheInverse(t *testing.T) {
	record := printer.Record{Across: 149.2, Along: 200.9, Diagonals: [2]float64{250.4, 250}}
	layout := render.DefaultLayout(measure.Millimetre, render.Paper{Name: "A4", Width: 210, Height: 297})
	layout.Correct = render.Correction{Printer: "bench", Upright: record.Correction(), Text: record.Text("bench")}
	job, err := templates.Scale(templates.Setting{Clear: layout.Clear()})
	if err != nil {
		t.Fatal(err)
	}
	plan, err := render.Lay(job, layout)
	if err != nil {
		t.Fatal(err)
	}
	var b bytes.Buffer
	if err := pdf.Write(&b, plan.Document()); err != nil {
		t.Fatal(err)
	}
	file, err := readback.PDF(b.Bytes())
	if err != nil {
		t.Fatal(err)
	}

	prints := record.Matrix()
	found := 0
	for _, p := range plan.Placements() {
		size := geometry.Pt(100, 100)
		if p.Template == "calibration rectangle" {
			size = geometry.Pt(150, 200)
		}
		corner, right, up := corners(t, file.Pages[p.Sheet-1], p.ToPage, size)
		found++
		// The sides in the file, for each mm, are the columns of the matrix.
		x, y := right.Sub(corner).Mul(1/size.X), up.Sub(corner).Mul(1/size.Y)
		want := record.Correction()
		for _, c := range [][2]float64{{x.X, want.A}, {x.Y, want.B}, {y.X, want.C}, {y.Y, want.D}} {
			if math.Abs(c[0]-c[1]) > 5e-6 {
				t.Errorf("%s: matrix in the file has columns %v and %v, want %+v", p.Template, x, y, want)
			}
		}
		// On paper.
		c, r, u := prints.Apply(corner), prints.Apply(right), prints.Apply(up)
		for name, off := range map[string]float64{
			"across":   c.Distance(r) - size.X,
			"along":    c.Distance(u) - size.Y,
			"diagonal": r.Distance(u) - size.Norm(),
		} {
			if math.Abs(off) > 0.01 {
				t.Errorf("%s, %s: %.4f mm off on paper", p.Template, name, off)
			}
		}
	}
	if found != 2 {
		t.Errorf("%d templates, want the square and the rectangle", found)
	}
	rules(t, file, prints)
}

// corners finds the outline of that size among the strokes of a page, by
// where its placement puts it, and returns the corners at its lower left,
// lower right and upper left as they stand in the file.
func corners(t *testing.T, p readback.Page, toPage geometry.Affine, size geometry.Point) (corner, right, up geometry.Point) {
	t.Helper()
	want := toPage.ApplyAll([]geometry.Point{{}, {X: size.X}, size, {Y: size.Y}})
	for _, s := range p.Strokes {
		if len(s.Points) != 4 || !s.Closed {
			continue
		}
		near := true
		for i, at := range s.Points {
			near = near && at.Distance(want[i]) < 0.05
		}
		if near {
			return s.Points[0], s.Points[1], s.Points[3]
		}
	}
	t.Fatalf("no outline of %.0f × %.0f mm at %v", size.X, size.Y, want)
	return corner, right, up
}

// rules wants the two rules of 4 in on every page to be true on paper.
func rules(t *testing.T, file readback.File, prints geometry.Affine) {
	t.Helper()
	for i, p := range file.Pages {
		level, upright := 0, 0
		for _, s := range p.Strokes {
			if len(s.Points) != 2 {
				continue
			}
			d := prints.Apply(s.Points[1].Sub(s.Points[0]))
			switch length := d.Norm(); {
			case math.Abs(length-101.6) > 0.01:
			case math.Abs(d.Y) < 0.01:
				level++
			case math.Abs(d.X) < 0.01:
				upright++
			}
		}
		if level != 1 || upright != 1 {
			t.Errorf("page %d: %d level and %d upright rules of 4 in on paper, want one of each", i+1, level, upright)
		}
	}
}
