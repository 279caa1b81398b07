package render

import (
	"rodsheet/geometry/measure"
	"rodsheet/render/accuracy"
	"rodsheet/templates/wording"
)

// All that the sheets say of themselves.

// say fills the verbs of a sentence.
func say(t wording.Text, args ...any) string { return t.With(args...) }

// The foot and the rails of a sheet, and its tiles.
const (
	sheetOf      wording.Text = "sheet %d of %d, %s, lengths in %s"
	actualSize   wording.Text = "print at 100 %%, actual size; measure the rules"
	bookmarkOf   wording.Text = "%d: %s"
	millimetres  wording.Text = "millimetres"
	inches       wording.Text = "inches"
	notToScale   wording.Text = "not to scale"
	scaleOf      wording.Text = "scale 1:%.0f"
	lookOnly     wording.Text = "to look at, not to work from"
	continued    wording.Text = "%s, continued"
	noteHeading  wording.Text = "Note"
	contentsHead wording.Text = "Sheets"

	cardTitle       wording.Text = "%s %s"
	cardScale       wording.Text = "scale\u00a01:%g"
	headingAndScale wording.Text = "%s, %s"
	cardTest        wording.Text = "Test: %s"
	cardTemplate    wording.Text = "Template: %s"

	againOnceMilled wording.Text = "again once milled"

	layToLine   wording.Text = "lay %s to this line"
	trimHere    wording.Text = "trim here, lay on %s"
	tileOnSheet wording.Text = "%s, sheet %d"
	rowN        wording.Text = "row %d"
	columnN     wording.Text = "column %d"
	rowColumn   wording.Text = "row %d column %d"
	rowOf       wording.Text = "%s: row %d of %d"
	columnOf    wording.Text = "%s: column %d of %d"
	rowColumns  wording.Text = "%s: row %d of %d, column %d of %d"
)

// What is said of a paper that is not known.
const ()

// Numbers of sheets, rows and columns.
const (
	sheetWord  wording.Text = "sheet %s"
	sheetWords wording.Text = "sheets %s"
	fromTo     wording.Text = "%s to %s"
)

// A run names several rows or columns before their sheets.
type runWords struct{ two, more wording.Text }

var (
	columnRun = runWords{"columns %d and %d, ", "columns %d to %d, "}
	rowRun    = runWords{"rows %d and %d, ", "rows %d to %d, "}
)

// Check lengths, and what a wrong one means.
const (
	checkHeading wording.Text = "Check lengths, after taping up"
	wrongSingle  wording.Text = "a wrong length: print that sheet again"
	retapeSeam   wording.Text = "%s off: retape at the seam of %s"
	retapeSeams  wording.Text = "%s off: retape at the seams of %s"
	seamsBetween wording.Text = "%s (%s to %s)"
	inBoth       wording.Text = "%s = %s"
)

func checkText(u measure.Unit) []string {
	return []string{
		say("Trim each sheet along the trim lines that say so, lay it on its neighbour so that the halves of the " +
			"registration marks meet, tape, then measure between the lettered crosses."),
		say("Fine ticks, where a seam has them, tell a misfit: count from the long tick to the pair in line, %s each. "+
			"Upright ticks tell it along the seam. Slanting ones must read the same, or there is a gap or too much overlap.", accuracy.FineText(vernierStep(u), u)),
		say("A length that is off by the same share as the rules is the printer's doing; the rest is the taping's. " +
			"Of several seams, retape the one where the ticks read most."),
	}
}

// What the number of sheets is bounded by.
const (
	fewestBy  wording.Text = "%s, the fewest by %s"
	noFewerBy wording.Text = "%s, no fewer than %d by %s"
	boundOf   wording.Text = "%s: %s"
	oneSheet  wording.Text = "%d sheet"
	manySheet wording.Text = "%d sheets"
	oneTile   wording.Text = "%d tile"
	manyTiles wording.Text = "%d tiles"
	bySheet   wording.Text = "what a sheet holds"
	byTheseTo wording.Text = "what a sheet holds of these tiles"
	byExtent  wording.Text = "extent"
)
