package templates

import (
	"math"

	"rodsheet/geometry"
	"rodsheet/geometry/measure"
)

// calibrationSide is the side of the calibration square in mm, whatever the
// unit: the rules of a sheet carry the inches.
const calibrationSide = 100.0

func calibrationDiagonal() float64 { return calibrationSide * math.Sqrt2 }

// diagonalText gives the tenths of a millimetre that a rule can show.
func diagonalText() string { return say(tenthsOfMM, calibrationDiagonal()) }

// withInches adds inches to a text in millimetres where u asks for them.
func withInches(text string, mm float64, u measure.Unit) string {
	if u != measure.Inch {
		return text
	}
	return say(equals, text, measure.Length(mm).Text(u))
}

// Calibration returns the 100 mm square by which a print is proved, with both
// diagonals. In inch drawings its sizes are given in inches as well.
func Calibration(u measure.Unit) Drawing {
	d := Drawing{Proof: true}.of(View{Part: "calibration-square"})
	c := geometry.Box(0, 0, calibrationSide, calibrationSide).Corners()
	d.Polygon(Cut, c...)
	for i, p := range c {
		d.LabelLine(p, c[(i+1)%len(c)], tag("side", withInches("100 mm", calibrationSide, u)))
	}
	for i := range 2 {
		d.Line(Construction, c[i], c[i+2])
		d.LabelLine(c[i], c[i+2], tag("diagonal", withInches(diagonalText(), calibrationDiagonal(), u)))
	}
	d.LabelPoint(geometry.Pt(calibrationSide/2, calibrationSide/8), tag("measure-all"))
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
	d := Drawing{Upright: true, Proof: true}.of(View{Part: "calibration-rectangle"})
	d.Polygon(Outline, c...)
	for _, way := range []struct {
		id       measure.ID
		from, to geometry.Point
	}{
		{"across-feed", c[0], c[1]},
		{"along-feed", c[0], c[3]},
		{"along-feed", c[1], c[2]},
		{"across-feed", c[3], c[2]},
		{"first-diagonal", c[0], c[2]},
		{"second-diagonal", c[3], c[1]},
	} {
		d.LabelLine(way.from, way.to, tag(way.id, measure.Length(way.from.Distance(way.to)).Text(u)))
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
	d.LabelLine(from, to, tag("fed-along"))
}

// Scale returns the job that proves a print and measures a printer. The
// calibration square and the rules are on the first sheet of every job; what
// it adds is the large rectangle, which is left out where a sheet is too small.
func Scale(s Setting) (Job, error) {
	section := Section{Panels: []Panel{scaleMeasures(s.Unit), scaleWords()}}
	job := Job{
		Name:  "scale",
		Title: say(scaleTitle),
		Figures: []Figure{
			figure("scale.side", measure.Length(calibrationSide)),
			figure("scale.diagonal", measure.Length(calibrationDiagonal())),
		},
	}
	rectangle, ok := rectangleFor(s.Clear, s.Unit)
	if !ok {
		job.Warnings = []string{say(noRectangle)}
		job.Sections = []Section{section}
		return job, nil
	}
	across, along := RectangleSides(s.Unit)
	section.Drawings = []Drawing{rectangle}
	section.Panels = append(section.Panels, rectangleWords(s.Unit))
	job.Sections = []Section{section}
	job.Figures = append(job.Figures,
		figure("scale.across", measure.Length(across)),
		figure("scale.along", measure.Length(along)),
		figure("scale.rectangle-diagonal", measure.Length(math.Hypot(across, along))))
	return job, nil
}
