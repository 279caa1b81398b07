package templates

import (
	"math"

	"rodsheet/geometry"
	"rodsheet/geometry/measure"
)

// CalibrationSide returns the side in mm of the square by which a print is proved:
// 100 mm or 4 in.
func CalibrationSide(u measure.Unit) float64 { return u.Round(100, 4) }

func sideText(u measure.Unit) string { return measure.Length(CalibrationSide(u)).Text(u) }

// diagonalText gives the tenths of a millimetre, or the 64ths and thousandths of
// an inch, that a rule can show.
func diagonalText(u measure.Unit) string {
	diagonal := CalibrationSide(u) * math.Sqrt2
	if u == measure.Inch {
		return measure.Length(diagonal).Text(u)
	}
	return say(tenthsOfMM, diagonal)
}

// Calibration returns the square by which a print is proved, with both diagonals.
func Calibration(u measure.Unit) Drawing {
	d := Drawing{Proof: true}.of(View{Part: "calibration-square"})
	side := CalibrationSide(u)
	c := geometry.Box(0, 0, side, side).Corners()
	d.Polygon(Cut, c...)
	for i, p := range c {
		d.LabelLine(p, c[(i+1)%len(c)], tag("side", sideText(u)))
	}
	for i := range 2 {
		d.Named(Construction, c[i], c[i+2], tag("diagonal", diagonalText(u)))
	}
	d.LabelPoint(geometry.Pt(side/2, side/8), tag("measure-all"))
	return d
}

// RectangleSides returns the sides in mm of the calibration rectangle, across
// the feed of the printer and along it: 150 × 200 mm, or 6 × 8 in, so that
// with its diagonals (250 mm, 10 in) it is two triangles of 3, 4 and 5.
func RectangleSides(u measure.Unit) (across, along float64) { return u.Round(150, 6), u.Round(200, 8) }

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
	section := Section{Panels: []Panel{scaleMeasures(s.Unit), scaleWords(s.Unit)}}
	job := Job{
		Name:  "scale",
		Title: say(scaleTitle),
		Figures: []Figure{
			figure("scale.side", measure.Length(CalibrationSide(s.Unit))),
			figure("scale.diagonal", measure.Length(math.Sqrt2*CalibrationSide(s.Unit))),
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
