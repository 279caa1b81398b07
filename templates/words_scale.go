package templates

import (
	"math"

	"rodsheet/geometry/measure"
	"rodsheet/templates/wording"
)

// Titles, headings and notes of the proof of scale.
const (
	scaleTitle  wording.Text = "Proof of scale"
	noRectangle wording.Text = "no calibration rectangle: it needs a sheet of A4 or letter size, upright, or a larger one"
	tenthsOfMM  wording.Text = "%.1f mm"
)

// rectangleWords says how a printer is measured. The readings of the example
// are invented.
func rectangleWords(u measure.Unit) Panel {
	example, fine := say("rodsheet printer bench --across 149.2 --along 200.9 --diagonals 250.4,250.0"), say("tenths of a millimetre")
	if u == measure.Inch {
		example, fine = say("rodsheet printer bench --across 5.97in --along 8.04in --diagonals 10.02in,10.00in"), say("hundredths of an inch")
	}
	return Panel{Heading: say("To measure a printer"), Text: []string{
		say("On the large rectangle measure one side across the feed, one along it, and both diagonals, from line to line, "+
			"as finely as the rule allows: %s are worth the trouble.", fine),
		say("Tell rodsheet once, by a name of your own:"),
		example,
		say("Then print with --printer bench. Measure only a sheet whose foot says nothing of a correction."),
	}}
}

func scaleMeasures(u measure.Unit) Panel {
	return Panel{Heading: say("Measure"), Table: [][]string{
		{say("all four sides"), sideText(u)},
		{say("both diagonals"), diagonalText(u)},
		{say("rules on every sheet"), say("100 mm and 4 in")},
	}, Text: []string{
		say("Use a steel rule. Lay its %s line, not its end, on the first corner.", measure.Length(u.Round(10, 1)).Text(u)),
	}}
}

// scaleWords says what a wrong size means. A diagonal that is off by d while
// the sides are right skews the square: the diagonals differ by side·√2 times
// the skew in radians, so 1 mm is 0.41°. A difference between the axes by the
// share e turns a line at 45° by up to e/2 rad, which is e·28.65°.
func scaleWords(u measure.Unit) Panel {
	side, off := CalibrationSide(u), u.Round(1, 1.0/32)
	text := func(mm float64) string { return measure.Length(mm).Text(u) }
	return Panel{Heading: say("If it is not true"), Text: []string{
		say("Print at 100 %%, actual size, with no fitting to the page. Print again after any change and measure again."),
		say("Both sides off alike: angles are still true, lengths are not. A side that measures %s needs a print at %.1f %%.",
			text(side-off), 100*side/(side-off)),
		say("One side off: angles are wrong too. A difference of %s between the sides costs up to %.2f°.",
			text(off), measure.Degrees(off/side/2)),
		say("Diagonals unequal: the print is skewed. A difference of %s is %.2f°. Measure the printer, or use another.",
			text(off), measure.Degrees(off/side/math.Sqrt2)),
		say("Paper moves with damp: work from a print of the same day. The figures beside each outline hold, whatever the paper does."),
	}}
}
