// Package accuracy says how far a printed and taped template is to be trusted.
package accuracy

import (
	"math"

	"rodsheet/geometry/measure"
	"rodsheet/templates"
)

// How far off a template is. Every figure is a limit that 95 of 100 cases
// keep: two standard deviations of a normal error. Errors of different causes
// are independent, so their limits add as squares.
const (
	// Share of a length by which a printer that was not measured is off, on
	// each axis for itself. Reports of a 50 mm square printed 0.5 mm too long
	// one way and short the other, and of copiers at 99 to 102 %, are worse;
	// half a per cent is typical. Common practice, no source.
	printedShare = 0.005
	// The same after measuring 200 mm to ±0.25 mm with a steel rule.
	measuredShare = 0.25 / 200
	// Bond paper moves by 0.1 to 0.2 % along its grain and 0.2 to 0.4 %
	// across it with humidity, both the same way: the greater figures.
	paperAlong, paperAcross = 0.002, 0.004
	// A pencil line is off by so much at each end, in mm, and in inches where those
	// are set. Common practice, no source.
	pencilLine, pencilInches = 0.3, 1.0 / 64
	// SeamMisfit is what two sheets are off by in mm at either end of a seam, each
	// way: a step of the vernier. What they are off by across it at one end and at the
	// other is independent: they lie crooked by √2 times that over its length.
	// Assumed, no source: it is what can be read when they are taped.
	SeamMisfit = 0.2
	// No angle is taken from a shorter line, in mm.
	leastBase = 20.0
)

// A tolerance is how far off one kind of figure may be, by cause.
type tolerance struct{ printing, paper, pencil, seams float64 }

// total adds independent limits as squares.
func (t tolerance) total() float64 {
	return math.Hypot(math.Hypot(t.printing, t.paper), math.Hypot(t.pencil, t.seams))
}

// cause names the greatest of them.
func (t tolerance) cause() string {
	most := max(t.printing, t.paper, t.pencil, t.seams)
	switch most {
	case t.printing:
		return say(byPrinting)
	case t.paper:
		return say(byPaper)
	case t.pencil:
		return say(byPencil)
	}
	return say(bySeams)
}

// An Accuracy is how far a template is to be trusted: an angle along its
// longest line in radians, and its length in mm. The zero value says nothing.
type Accuracy struct {
	angle, length tolerance
	unit          measure.Unit
}

// A Taping is how a template is put together: over a number of seams, the
// shortest of them so long in mm.
type Taping struct {
	Seams    int
	Shortest float64
}

// shift returns in mm how far the last sheet is moved along or across by the
// seams. At each it is the misfit at one end: that of the middle is less, but
// a line need not cross there.
func (t Taping) shift() float64 { return SeamMisfit * math.Sqrt(float64(t.Seams)) }

// turn returns how far in radians the end of a line is moved sideways, as seen
// from its other end, by sheets that lie crooked. Each of n seams turns what is
// beyond it. Were they evenly spaced, the k-th from the far end would move that
// by k/(n + 1) of the length, and the squares of these add up to
// n·(2n + 1)/(6·(n + 1)).
func (t Taping) turn() float64 {
	if t.Seams == 0 {
		return 0
	}
	n := float64(t.Seams)
	return SeamMisfit * math.Sqrt2 / t.Shortest * math.Sqrt(n*(2*n+1)/(6*(n+1)))
}

// Assess returns the accuracy of a template whose longest straight line is
// base and whose greatest extent is length, in mm.
//
// Where there is no line to take an angle from, none is stated.
//
// A line at 45° turns by half the difference between the shares of the two
// axes (e·28.65°), a line along an axis not at all: the worst is stated.
func Assess(base, length float64, taped Taping, measured bool, u measure.Unit) Accuracy {
	share := printedShare
	if measured {
		share = measuredShare
	}
	pencil := u.Round(pencilLine, pencilInches)
	a := Accuracy{unit: u, length: tolerance{
		printing: share * length,
		paper:    paperAcross * length,
		pencil:   pencil * math.Sqrt2,
		seams:    taped.shift(),
	}}
	if base >= leastBase {
		a.angle = tolerance{
			printing: share * math.Sqrt2 / 2,
			paper:    (paperAcross - paperAlong) / 2,
			pencil:   math.Atan(pencil / base),
			seams:    math.Hypot(math.Atan(taped.shift()/base), math.Atan(taped.turn())),
		}
	}
	return a
}

// String is one line for the caption of the template.
func (a Accuracy) String() string {
	if a.length.total() == 0 {
		return ""
	}
	length := say(roundMillimetres, a.length.total())
	if a.unit == measure.Inch {
		length = say(roundInches, a.length.total()/measure.MillimetresPerInch)
	}
	switch {
	case a.angle.total() > 0 && a.angle.cause() == a.length.cause():
		return say(goodToAlike, measure.Degrees(a.angle.total()), length, a.length.cause())
	case a.angle.total() > 0:
		return say(goodToBoth, measure.Degrees(a.angle.total()), a.angle.cause(), length, a.length.cause())
	}
	return say(goodTo, length, a.length.cause())
}

// Panel explains the line under each template, of a printer that was measured or
// not and of sheets that are taped or not.
func Panel(measured, taped bool, u measure.Unit) templates.Panel {
	printing, seams := say(unmeasured), ""
	if measured {
		length := u.Round(200, 8)
		printing = say(asMeasured, measure.Length(measuredShare*length).Text(u), measure.Length(length).Text(u))
	}
	if taped {
		seams = say(seamEnds, FineText(SeamMisfit, u))
	}
	text := say(explained, printing, FineText(u.Round(pencilLine, pencilInches), u), seams)
	return templates.Panel{Heading: say(heading), Text: []string{text}}
}

// FineText is a length finer than a rule shows: tenths of a millimetre or
// 128ths of an inch.
func FineText(mm float64, u measure.Unit) string {
	if u != measure.Inch {
		return say(roundMillimetres, mm)
	}
	parts, of := int(math.Round(mm/measure.MillimetresPerInch*128)), 128
	for parts%2 == 0 && of > 1 {
		parts, of = parts/2, of/2
	}
	return say(fractionOfInch, parts, of)
}
