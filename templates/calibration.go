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
	d := Drawing{Name: "calibration square"}
	c := geometry.Box(0, 0, calibrationSide, calibrationSide).Corners()
	d.polygon(Cut, c...)
	for i, p := range c {
		d.labelLine(p, c[(i+1)%len(c)], withInches("100 mm", calibrationSide, u))
	}
	for i := range 2 {
		d.line(Construction, c[i], c[i+2])
		d.labelLine(c[i], c[i+2], withInches(diagonalText(), calibrationDiagonal(), u))
	}
	d.label(geometry.Pt(calibrationSide/2, calibrationSide/8), "measure all sides and both diagonals")
	return d
}

// Scale returns the job that only proves a print: the calibration square and
// the rules are on the first sheet of every job, so it has no drawings.
func Scale(s Setting) (Job, error) {
	return Job{
		Name:   "scale",
		Title:  "Proof of scale",
		Panels: []Panel{scaleMeasures(s.Unit), scaleWords()},
		Figures: []Figure{
			{"side", measure.Length(calibrationSide)},
			{"diagonal", measure.Length(calibrationDiagonal())},
		},
	}, nil
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
		"Diagonals unequal: the print is skewed. A difference of 1 mm is 0.41°. Use another printer.",
		"Paper moves with damp: work from a print of the same day. The figures beside each outline hold, whatever the paper does.",
	}}
}
