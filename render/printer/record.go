// Package printer knows what a printer does to a sheet, from what a maker
// measured on the calibration rectangle once, and how to undo it. It keeps the
// records of printers in a file.
package printer

import (
	"cmp"
	"errors"
	"fmt"
	"math"

	"rodsheet/geometry"
	"rodsheet/geometry/measure"
	"rodsheet/templates"
)

// A Record is what was measured on the calibration rectangle of a printer, in
// mm. Across and along are of the feed: x and y of a page fed upright.
type Record struct {
	Unit          measure.Unit // tells which of the two rectangles it was
	Across, Along float64
	// Diagonals are the one from the lower left to the upper right, and the
	// other. Both are 0 where they were not measured: the skew then counts as
	// none.
	Diagonals [2]float64
}

// A printer farther from true than this is taken for a slip of the rule, or
// for a print that was fitted to the page. Copiers at "100 %" were seen to
// print at 99 to 102 %.
const (
	mostStretch = 0.03
	mostSkew    = math.Pi / 180
	// The four readings fit each other: the diagonals follow from the sides
	// but for the skew. Readings to 0.5 mm make them differ by up to 1.2 mm.
	mostMisfit = 1.5 // mm
)

// Stretch returns by how much the printer enlarges lengths across the feed and
// along it: 1 where it is true.
func (r Record) Stretch() (across, along float64) {
	a, b := templates.RectangleSides(r.Unit)
	return r.Across / a, r.Along / b
}

// Skewed reports whether the skew was measured.
func (r Record) Skewed() bool { return r.Diagonals != [2]float64{} }

// Skew returns the angle in radians by which the printed side along the feed
// leans to the right of square to the side across it.
//
// With sides u across and v along as vectors, the diagonals are u + v and
// u − v, and |u + v|² − |u − v|² = 4·u·v = 4·|u|·|v|·sin(skew).
func (r Record) Skew() float64 {
	d, e := r.Diagonals[0], r.Diagonals[1]
	return math.Asin((d - e) * (d + e) / (4 * r.Across * r.Along))
}

// Matrix returns what the printer does to a page fed upright, about its
// centre. Lengths do not tell whether it also turns the whole print on the
// sheet, nor does that matter: the side across the feed is taken to stay level.
func (r Record) Matrix() geometry.Affine {
	across, along := r.Stretch()
	sin, cos := math.Sincos(r.Skew())
	return geometry.Affine{A: across, C: along * sin, D: along * cos}
}

// Correction returns the inverse of Matrix: printed through it, a page comes
// out true.
func (r Record) Correction() geometry.Affine { return r.Matrix().Inverse() }

// Text says what the correction does, for the foot of a sheet. The factors
// are those by which lengths are drawn larger; the skew is the printer's.
func (r Record) Text(name string) string {
	across, along := r.Stretch()
	return fmt.Sprintf("corrected for %s: across ×%.4f, along ×%.4f, %s", name, 1/across, 1/along, r.SkewText())
}

// SkewText is "skew 0.06°", or says that it was not measured.
func (r Record) SkewText() string {
	if !r.Skewed() {
		return "skew not measured"
	}
	// Adding 0 turns a -0 that rounding left into 0.
	return fmt.Sprintf("skew %.2f°", math.Round(measure.Degrees(r.Skew())*100)/100+0)
}

// Check refuses readings that no usable printer gives: a *FittedError for a
// print fitted to the page, a *SideError or a *measure.BoundError for a slip.
func (r Record) Check() error {
	if share, ok := r.fitted(); ok {
		return &FittedError{r, share}
	}
	across, along := templates.RectangleSides(r.Unit)
	return cmp.Or(
		r.checkSide("across", r.Across, across),
		r.checkSide("along", r.Along, along),
		r.checkDiagonals(),
	)
}

// checkSide keeps one side within the limit.
func (r Record) checkSide(figure string, got, want float64) error {
	var bound *measure.BoundError
	low, high := measure.Length((1-mostStretch)*want), measure.Length((1+mostStretch)*want)
	if !errors.As(cmp.Or(
		measure.AtLeast(measure.ID("print."+figure), measure.Length(got), "", low, "print.line-to-line"),
		measure.AtMost(measure.ID("print."+figure), measure.Length(got), "", high, "print.line-to-line"),
	), &bound) {
		return nil
	}
	e := &SideError{Bound: bound, Drawn: want}
	if other, mm := r.other(figure); math.Abs(got/mm-1) <= mostStretch {
		e.Near = other
	}
	return e
}

// other returns the side of the rectangle in the other unit, and the length that a
// reading of it becomes when it is taken for one of this: 149.2 in, or 5.97 mm.
func (r Record) other(figure string) (side measure.Quantity, mm float64) {
	unit, factor := measure.Inch, 1/measure.MillimetresPerInch
	if r.Unit == measure.Inch {
		unit, factor = measure.Millimetre, measure.MillimetresPerInch
	}
	across, along := templates.RectangleSides(unit)
	mm = across
	if figure == "along" {
		mm = along
	}
	return measure.Length(mm), mm * factor
}

// checkDiagonals keeps the diagonals with the sides, and the skew small.
func (r Record) checkDiagonals() error {
	if !r.Skewed() {
		return nil
	}
	// By the parallelogram law the squares of the diagonals have the mean of
	// this square, whatever the skew.
	want := math.Hypot(r.Across, r.Along)
	got := math.Hypot(r.Diagonals[0], r.Diagonals[1]) / math.Sqrt2
	const hint = "print.measure-all-again"
	low, high := measure.Length(want-mostMisfit), measure.Length(want+mostMisfit)
	if err := cmp.Or(
		measure.Positive("print.first-diagonal", measure.Length(r.Diagonals[0])),
		measure.Positive("print.second-diagonal", measure.Length(r.Diagonals[1])),
		measure.AtLeast("print.mean-diagonal", measure.Length(got), "print.sides-less", low, hint),
		measure.AtMost("print.mean-diagonal", measure.Length(got), "print.sides-more", high, hint),
	); err != nil {
		return err
	}
	return measure.AtMost("print.skew", measure.Angle(math.Abs(r.Skew())), "", measure.Angle(mostSkew),
		"print.measure-diagonals-again")
}
