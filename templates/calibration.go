package templates

import (
	"fmt"
	"math"

	"rodsheet/geometry"
	"rodsheet/geometry/measure"
)

// calibrationSide is the side of the calibration square in mm, whatever the
// unit: the rules of a sheet carry the inches.
const calibrationSide = 100.0

func calibrationDiagonal() float64 { return calibrationSide * math.Sqrt2 }

// diagonalText gives the tenths of a millimetre that a rule can show.
func diagonalText() string { return fmt.Sprintf("%.1f mm", calibrationDiagonal()) }

// withInches adds inches to a text in millimetres where u asks for them.
func withInches(text string, mm float64, u measure.Unit) string {
	if u != measure.Inch {
		return text
	}
	return text + " = " + measure.Length(mm).Text(u)
}

// Calibration returns the 100 mm square by which a print is proved, with both
// diagonals. In inch drawings its sizes are given in inches as well.
func Calibration(u measure.Unit) Drawing {
	d := Drawing{Name: "calibration square", Proof: true}
	c := geometry.Box(0, 0, calibrationSide, calibrationSide).Corners()
	d.Polygon(Cut, c...)
	for i, p := range c {
		d.LabelLine(p, c[(i+1)%len(c)], withInches("100 mm", calibrationSide, u))
	}
	for i := range 2 {
		d.Line(Construction, c[i], c[i+2])
		d.LabelLine(c[i], c[i+2], withInches(diagonalText(), calibrationDiagonal(), u))
	}
	d.LabelPoint(geometry.Pt(calibrationSide/2, calibrationSide/8), "measure all sides and both diagonals")
	return d
}

// RectangleSides returns the sides in mm of the calibration rectangle, across
// the feed of the printer and along it: 150 × 200 mm, or 6 × 8 in, so that
// with its diagonals (250 mm, 10 in) it is two triangles of 3, 4 and 5.
func RectangleSides(u measure.Unit) (across, along float64) {
	if u == measure.Inch {
		return 6 * measure.MillimetresPerInch, 8 * measure.MillimetresPerInch
	}
	return 150, 200
}

// CalibrationRectangle returns the rectangle by which a printer is measured,
// as it stands on a sheet that is fed upright.
func CalibrationRectangle(u measure.Unit) Drawing {
	across, along := RectangleSides(u)
	c := geometry.Box(0, 0, across, along).Corners()
	d := Drawing{Name: "calibration rectangle", Upright: true, Proof: true}
	d.Polygon(Outline, c...)
	for _, way := range []struct {
		name     string
		from, to geometry.Point
	}{
		{"across the feed", c[0], c[1]},
		{"along the feed", c[0], c[3]},
		{"along the feed", c[1], c[2]},
		{"across the feed", c[3], c[2]},
		{"first diagonal", c[0], c[2]},
		{"second diagonal", c[3], c[1]},
	} {
		d.LabelLine(way.from, way.to, way.name+", "+measure.Length(way.from.Distance(way.to)).Text(u))
	}
	d.Line(Construction, c[0], c[2])
	d.Line(Construction, c[1], c[3])
	d.feedArrow(geometry.Pt(0.8*across, 0.34*along), geometry.Pt(0.8*across, 0.66*along))
	return d
}

// rectangleFor returns the calibration rectangle as it stands on a sheet that
// offers so much, and reports whether it fits. A sheet wider than high is
// turned by a quarter to be fed, and so is the rectangle on it: which way does
// not matter.
func rectangleFor(clear geometry.Point, u measure.Unit) (Drawing, bool) {
	d := CalibrationRectangle(u)
	across, along := RectangleSides(u)
	if clear.X <= clear.Y {
		return d, across <= clear.X && along <= clear.Y
	}
	turned := d.Moved(geometry.Rotate(math.Pi / 2))
	turned.Upright, turned.Proof = d.Upright, d.Proof
	return turned, along <= clear.X && across <= clear.Y
}

// feedArrow draws an arrow with a head at each end: a sheet fed the other end
// first is stretched the same.
func (d *Drawing) feedArrow(from, to geometry.Point) {
	const head = 3.0 // mm, and a third of it wide to each side
	back := to.Sub(from).Unit().Mul(head)
	side := back.Perp().Mul(1.0 / 3)
	d.Line(Construction, from, to)
	d.Line(Construction, from.Add(back).Add(side), from, from.Add(back).Sub(side))
	d.Line(Construction, to.Sub(back).Add(side), to, to.Sub(back).Sub(side))
	d.LabelLine(from, to, "the sheet is fed along this arrow")
}

// Scale returns the job that proves a print and measures a printer. The
// calibration square and the rules are on the first sheet of every job; what
// it adds is the large rectangle, which is left out where a sheet is too small.
func Scale(s Setting) (Job, error) {
	section := Section{Panels: []Panel{scaleMeasures(s.Unit), scaleWords()}}
	job := Job{
		Name:  "scale",
		Title: "Proof of scale",
		Figures: []Figure{
			{"side", measure.Length(calibrationSide)},
			{"diagonal", measure.Length(calibrationDiagonal())},
		},
	}
	rectangle, ok := rectangleFor(s.Clear, s.Unit)
	if !ok {
		job.Warnings = []string{"no calibration rectangle: it needs a sheet of A4 or letter size, upright, or a larger one"}
		job.Sections = []Section{section}
		return job, nil
	}
	across, along := RectangleSides(s.Unit)
	section.Drawings = []Drawing{rectangle}
	section.Panels = append(section.Panels, rectangleWords(s.Unit))
	job.Sections = []Section{section}
	job.Figures = append(job.Figures,
		Figure{"rectangle, across the feed", measure.Length(across)},
		Figure{"rectangle, along the feed", measure.Length(along)},
		Figure{"rectangle, diagonal", measure.Length(math.Hypot(across, along))})
	return job, nil
}

// rectangleWords says how a printer is measured. The readings of the example
// are invented.
func rectangleWords(u measure.Unit) Panel {
	example := "--across 149.2 --along 200.9 --diagonals 250.4,250.0"
	if u == measure.Inch {
		example = "--across 5.97in --along 8.04in --diagonals 10.02in,10.00in"
	}
	return Panel{Heading: "to measure a printer", Text: []string{
		"On the large rectangle measure one side across the feed, one along it, and both diagonals, from line to line, " +
			"as finely as the rule allows: tenths of a millimetre or hundredths of an inch are worth the trouble.",
		"Tell rodsheet once, by a name of your own:",
		"rodsheet printer bench " + example,
		"Then print with --printer bench. Measure only a sheet whose foot says nothing of a correction.",
	}}
}

func scaleMeasures(u measure.Unit) Panel {
	return Panel{Heading: "measure", Table: [][]string{
		{"all four sides", withInches("100 mm", calibrationSide, u)},
		{"both diagonals", withInches(diagonalText(), calibrationDiagonal(), u)},
		{"rules on every sheet", "100 mm and 4 in"},
	}, Text: []string{
		"Use a steel rule. Lay the 10 mm line, not the end of the rule, on the first corner.",
	}}
}

// scaleWords says what a wrong size means. A diagonal that is off by d while
// the sides are right skews the square: the diagonals differ by side·√2 times
// the skew in radians, so 1 mm is 0.41°. A difference between the axes by the
// share e turns a line at 45° by up to e/2 rad, which is e·28.65°.
func scaleWords() Panel {
	return Panel{Heading: "if it is not true", Text: []string{
		"Print at 100 %, actual size, with no fitting to the page. Print again after any change and measure again.",
		"Both sides off alike: angles are still true, lengths are not. A side that measures 99 mm needs a print at 100/99, which is 101 %.",
		"One side off: angles are wrong too. A difference of 1 mm between the sides costs up to 0.29°.",
		"Diagonals unequal: the print is skewed. A difference of 1 mm is 0.41°. Measure the printer, or use another.",
		"Paper moves with damp: work from a print of the same day. The figures beside each outline hold, whatever the paper does.",
	}}
}
