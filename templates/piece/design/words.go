package design

import "rodsheet/templates/wording"

// What is said of a file that is no TOML.
const (
	nestedWords     wording.Text = "lists stand within lists without end"
	oldLineEnds     wording.Text = "a line ends in the manner of very old files"
	oldLineEndsHint wording.Text = "save it with the usual line ends"
	headerOpen      wording.Text = "the name of a table is not closed"
	headerHint      wording.Text = "write [ring], or [[size]] for one of several"
	keyWanted       wording.Text = "a key is wanted here"
	keyHint         wording.Text = "keys are plain words: width = 28"
	equalsMissing   wording.Text = "an = is missing after the key"
	valueMissing    wording.Text = "the value is missing"
	widthHint       wording.Text = "write width = 28"
	valueUnknown    wording.Text = "the value is not understood"
	leadingZero     wording.Text = "a number begins with 0"
	leadingZeroHint wording.Text = "write 8, not 08"
	backslash       wording.Text = "a backslash means something else in double quotes"
	backslashHint   wording.Text = "take it out, or use single quotes"
	textOpen        wording.Text = "a text is not closed"
	inchesHint      wording.Text = `put the same quote at its end; for inch marks write 25in or '25"'`
	feetHint        wording.Text = `put the same quote at its end; for foot marks write 2ft or "2'"`
	textsOpen       wording.Text = "a text of several lines is not closed"
	textsHint       wording.Text = "put the same three quotes at its end"
	listOpen        wording.Text = "a comma or the closing ] of a list is missing"
	listHint        wording.Text = "write [8, 12]"
	braceOpen       wording.Text = "a comma or the closing } of a table is missing"
	digitMissing    wording.Text = "a digit is missing after the point"
	digitHint       wording.Text = "write 3.0 or 3"
	unitUnquoted    wording.Text = "a figure is followed by letters"
	lineGoesOn      wording.Text = "the line does not end here"
	quotesHint      wording.Text = `a word, and a figure with a unit or a fraction, stands in quotes: width = "1 1/4in"`
	commaHint       wording.Text = "use a point for decimals, and nothing between thousands"
	pointHint       wording.Text = "write a 0 before the point: 0.5"
	slopeHint       wording.Text = `a slope stands in quotes: splay = "1:6"`
	inchMarkHint    wording.Text = `for inch marks write 25in, or use single quotes: '25"'`
	curlyQuote      wording.Text = "a curly quote, %c, stands here"
	curlyHint       wording.Text = `write straight quotes, " at both ends, and save as plain text`
)

// What is said of values.
const (
	wantedFor wording.Text = "%s is wanted, not %s"
	trueFalse wording.Text = "true or false"
	writeIt   wording.Text = "write %s, without quotes"
)

// What is said of keys.
const (
	likeMillimetres wording.Text = "these look like millimetres, but the unit is in"
	wholeUnitHint   wording.Text = `write units = "mm", or give the figures in inches`
	boardsInline    wording.Text = "boards stand each under a header of its own"
	asThickAsWide   wording.Text = "a leg is as thick as its stretcher is wide: did you mean %s?"
)
