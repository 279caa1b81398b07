package templates

import (
	"cmp"
	"fmt"
	"math"
	"strings"

	"rodsheet/geometry"
	"rodsheet/geometry/joint"
	"rodsheet/geometry/measure"
)

const (
	gaugeSlip   = 0.25 // how far off a careful setting may be at the far end, mm
	chordRadius = 250.0
)

// Angles returns the triangles that a bevel gauge is set from, both hands of
// each angle, in the order given. An obtuse angle is drawn as its supplement,
// an angle that prints like an earlier one is drawn once; either is a warning.
//
// Angles are in radians. base is the length of the registration edge in mm; 0
// takes the largest that one sheet offers, up to 250 mm or 10 in. The error is
// a *measure.BoundError.
//
// The names of the figures are those of angleFigures; with more than one angle
// drawn, each begins with its angle: "14.5° rise".
func Angles(angles []float64, base float64, s Setting) (Job, error) {
	acute, warnings, err := acuteOnce(angles)
	if err != nil {
		return Job{}, err
	}
	if err := checkBase(base); err != nil {
		return Job{}, err
	}
	job := Job{Warnings: warnings}
	var section Section
	var names []string
	for _, a := range acute {
		g := gaugeFor(a, base, s)
		name := angleText(a)
		names = append(names, name)
		right := g.drawing("angle " + name + ", right hand")
		section.Drawings = append(section.Drawings, right, right.Mirrored("angle "+name+", left hand"))
		section.Panels = append(section.Panels, g.panel("angle "+name))
		for _, f := range g.figures() {
			if len(acute) > 1 {
				f.Name = name + " " + f.Name
			}
			job.Figures = append(job.Figures, f)
		}
	}
	section.Panels = append(section.Panels, gaugeWords())
	job.Sections = []Section{section}
	job.Name, job.Title = angleTitles(names)
	return job, nil
}

func checkBase(base float64) error {
	if base == 0 {
		return nil
	}
	b := measure.Length(base)
	return cmp.Or(
		measure.AtLeast("base", b, "", measure.Length(50), "angle.short-edge"),
		measure.AtMost("base", b, "", measure.Length(3000), ""),
	)
}

// acuteOnce returns the acute angles to draw and what there is to say about
// the others.
func acuteOnce(angles []float64) (acute []float64, warnings []string, err error) {
	if err := measure.Positive("angles", measure.Number(float64(len(angles)))); err != nil {
		return nil, nil, err
	}
	seen := map[string]bool{}
	for _, given := range angles {
		a, obtuse, err := joint.Acute(given)
		if err != nil {
			return nil, nil, err
		}
		name := angleText(a)
		if obtuse {
			warnings = append(warnings, fmt.Sprintf("%s is drawn as its supplement, %s: the same line, read from the other side",
				angleText(given), name))
		}
		if seen[name] {
			warnings = append(warnings, name+" is asked for more than once and drawn once")
			continue
		}
		seen[name] = true
		acute = append(acute, a)
	}
	return acute, warnings, nil
}

// angleText is an angle as it is printed, the same in every unit.
func angleText(rad float64) string { return measure.Angle(rad).Text(measure.Millimetre) }

// degreesAndMinutes is an angle to the nearest minute: "14° 30′".
func degreesAndMinutes(rad float64) string {
	minutes := int(math.Round(measure.Degrees(rad) * 60))
	return fmt.Sprintf("%d° %02d′", minutes/60, minutes%60)
}

// angleTitles returns the name and the title of a job from the printed angles.
// Past four of them the rest is counted.
func angleTitles(names []string) (name, title string) {
	const most = 4
	shown, rest := names, ""
	if len(names) > most {
		shown, rest = names[:most], fmt.Sprintf("%d more", len(names)-most)
	}
	plain := strings.ReplaceAll(strings.Join(shown, "-"), "°", "")
	list := strings.Join(shown, ", ")
	switch {
	case len(names) == 1:
		return "angle-" + plain, "Angle " + list
	case rest == "":
		return "angles-" + plain, "Angles " + list
	}
	return "angles-" + plain + "-and-" + strings.ReplaceAll(rest, " ", "-"), "Angles " + list + " and " + rest
}

// A gauge is one angle about to be drawn.
type gauge struct {
	joint.Triangle
	outline joint.AngleGauge
	stock   float64 // depth of the strip for the gauge's stock, mm
	unit    measure.Unit
}

// gaugeFor chooses the size. Where no base is asked for, the registration edge
// runs along the longer side of the sheet and the triangle, with the strip
// below it, takes no more than the shorter one. A base that is asked for
// stands, even if it takes several sheets.
func gaugeFor(angle, base float64, s Setting) gauge {
	stock, step, shortest, longest := 25.0, 10.0, 100.0, 250.0
	if s.Unit == measure.Inch {
		const in = measure.MillimetresPerInch
		stock, step, shortest, longest = 1*in, in/2, 4*in, 10*in
	}
	outline := joint.AngleGauge{Angle: angle, Length: base, Height: base}
	if base == 0 {
		fits := math.Min(math.Max(s.Clear.X, s.Clear.Y), longest)
		outline.Length = math.Max(step*math.Floor(fits/step+1e-9), shortest)
		rise := math.Min(math.Min(s.Clear.X, s.Clear.Y)-stock, outline.Length)
		outline.Height = math.Max(rise, shortest/2)
	}
	return gauge{outline.Triangle(), outline, stock, s.Unit}
}

func (g gauge) length(mm float64) string { return measure.Length(mm).Text(g.unit) }

// drawing is the right hand: the registration edge below, the angle at its
// left end, the slope rising to the right.
func (g gauge) drawing(name string) Drawing {
	d := Drawing{Name: name}
	d.Polygon(Cut, g.outline.Outline()...)
	corner, far := geometry.Point{}, geometry.Pt(g.outline.Length, 0)
	plumb, top := geometry.Pt(g.Base, 0), geometry.Pt(g.Base, g.Rise())
	if g.Base < g.outline.Length {
		d.Line(Construction, plumb, top)
	}
	g.angleMark(&d, corner, 30, 0, g.Angle, Label{Text: angleText(g.Angle), Big: true})
	g.angleMark(&d, top, 20, math.Pi+g.Angle, g.OffSquare(), Label{Text: "complement " + angleText(g.OffSquare()) + ": from square"})
	d.LabelLine(corner, top, "cut, or strike on a board from its working edge")
	d.LabelLine(corner, far, "registration edge")
	d.LabelLine(plumb, top, "rise "+g.length(g.Rise()))
	// A shorter base is left to the table: its name would not stand beside it.
	if g.Base >= g.stock {
		d.LabelLine(corner, plumb, "base "+g.length(g.Base))
	}
	g.stockStrip(&d)
	return d
}

// angleMark draws the arc of an angle at a corner of the triangle, from
// direction from on, and labels it. The arc is left out where the triangle is
// too thin to show it.
func (g gauge) angleMark(d *Drawing, corner geometry.Point, radius, from, angle float64, l Label) {
	radius = math.Min(radius, 0.6*math.Min(g.Base, g.Rise()))
	at := corner
	if radius > 3 {
		d.Line(Construction, geometry.Arc(corner, radius, from, from+angle)...)
		at = corner.Add(geometry.Polar(radius, from+angle/2))
	}
	l.On = geometry.Segment{A: at, B: at}
	d.Labels = append(d.Labels, l)
}

// stockStrip keeps the paper below the registration edge free.
func (g gauge) stockStrip(d *Drawing) {
	d.Line(Construction, geometry.Pt(0, 0), geometry.Pt(0, -g.stock), geometry.Pt(g.outline.Length, -g.stock), geometry.Pt(g.outline.Length, 0))
	d.LabelPoint(geometry.Pt(g.outline.Length/2, -g.stock/2), "room for the gauge's stock")
}

// figures are the same for every angle, in this order.
func (g gauge) figures() []Figure {
	const in = measure.MillimetresPerInch
	rise := func(run float64) measure.Quantity { return measure.Length(joint.RiseOver(run, g.Angle)) }
	return []Figure{
		{"angle", measure.Angle(g.Angle)},
		{"complement", measure.Angle(g.OffSquare())},
		{"rise over 100 mm", rise(100)},
		{"rise over 250 mm", rise(250)},
		{"rise over 500 mm", rise(500)},
		{"rise over 12 in", rise(12 * in)},
		{"rise over 24 in", rise(24 * in)},
		{"slope, 1 in", measure.Number(1 / math.Tan(g.Angle))},
		{"chord at radius 250 mm", measure.Length(joint.Chord(chordRadius, g.Angle))},
		{"base", measure.Length(g.Base)},
		{"rise", measure.Length(g.Rise())},
		{"reading error", measure.Angle(g.SlipError(gaugeSlip))},
	}
}

// panel is the table of one angle. Rises over a round run are in the unit of
// that run; runs in inches are for those who work in inches.
func (g gauge) panel(heading string) Panel {
	p := Panel{Heading: heading, Table: [][]string{
		{"gauge reads from the edge", angleText(g.Angle) + " = " + degreesAndMinutes(g.Angle)},
		{"gauge reads from square", angleText(g.OffSquare()) + " = " + degreesAndMinutes(g.OffSquare())},
	}}
	for _, f := range g.figures()[2:] {
		text := f.Value.Text(g.unit)
		switch {
		case f.Name == "slope, 1 in":
			f.Name, text = "slope", "1 in "+text
		case f.Name == "reading error":
			f.Name = "a slip of 0.25 mm at the far end costs"
		case strings.HasSuffix(f.Name, " mm"):
			text = f.Value.Text(measure.Millimetre)
		case strings.HasSuffix(f.Name, " in") && g.unit != measure.Inch:
			continue
		}
		p.Table = append(p.Table, []string{f.Name, text})
	}
	return p
}

// gaugeWords says how a triangle is used. It is printed once.
func gaugeWords() Panel {
	return Panel{Heading: "setting a bevel gauge", Text: []string{
		"Stock of the gauge on the registration edge, blade along the slope. Setting by a line alone is uncertain: cut along it, or strike the slope on a board from its working edge and set to that.",
		"Right hand: with the registration edge towards you the slope rises to the right. Left hand: to the left.",
		"A mitre gauge reads from square: set it to the complement.",
		"Prove the setting: strike the line from both sides of a straight board; reversed, the gauge must make equal and opposite lines.",
	}}
}
