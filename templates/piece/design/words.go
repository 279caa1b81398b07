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

// What is said of a file that is no text.
const (
	tooLong      wording.Text = "a design file is a page or two of text; this has more than %d bytes"
	otherFile    wording.Text = "is it another file?"
	utf16        wording.Text = "the file is in UTF-16"
	utf16Hint    wording.Text = "save it as UTF-8, the usual text of today"
	notUTF8      wording.Text = "this is not UTF-8"
	notUTF8Hint  wording.Text = "save the file as UTF-8, the usual text of today"
	control      wording.Text = "a control character, U+%04X, stands here"
	controlHint  wording.Text = "take it out; is this a text file?"
	noDesign     wording.Text = "the file holds no design"
	newHint      wording.Text = "rodsheet new writes one to begin with"
	mistakeAt    wording.Text = "line %d, column %d: %s"
	moreMistakes wording.Text = "and %d more mistakes from here on"
)

// What is said of values.
const (
	wantedFor       wording.Text = "%s is wanted, not %s"
	lowBridle       wording.Text = "a bridle is open at the head of the leg: only aprons reach it; a stretcher takes a tenon"
	noneOf          wording.Text = "%s is not %s"
	orQuoted        wording.Text = `" or "`
	wordQuoted      wording.Text = "a word stands in quotes"
	trueFalse       wording.Text = "true or false"
	writeIt         wording.Text = "write %s, without quotes"
	bareLengths     wording.Text = "a length without a unit is read as %s"
	wholeNumber     wording.Text = "a whole number"
	aNumber         wording.Text = "a number"
	numberHint      wording.Text = "write it without quotes and without a unit"
	aLength         wording.Text = "a length"
	lengthHint      wording.Text = `write 28, or with a unit and in quotes "1 1/8in"`
	anAngle         wording.Text = "an angle"
	angleHint       wording.Text = `write 14.5, or in quotes "14°30'" or "1:6"`
	aText           wording.Text = "a text"
	textQuoted      wording.Text = "a text stands in quotes"
	textEmpty       wording.Text = "the text is empty"
	textLong        wording.Text = "the text has %d characters, the most is %d"
	textUnprintable wording.Text = "the text holds a character that cannot be printed"
	textLacks       wording.Text = "the text holds %c (%U), which the lettering lacks"
	otherLetters    wording.Text = "write it in other letters"
	plainLine       wording.Text = "one line of plain text is wanted"
	aDate           wording.Text = "a date or time"
	aList           wording.Text = "a list"
	aTable          wording.Text = "a table"
	pairOfPercents  wording.Text = "a pair of per cents"
	moistureHint    wording.Text = "write moisture = [8, 12]"
	pairOfLengths   wording.Text = "a pair of lengths"
	listOfCorners   wording.Text = "a list of corners"
	cornersOutside  wording.Text = "an outline has 3 to %d corners, not %d"
	pointsHint      wording.Text = "write points = [[-200, -150], [200, -150], [0, 250]], counter-clockwise about the centre"
	listOfBoards    wording.Text = "a list of boards"
	aBoard          wording.Text = "a board"
	boardsInline    wording.Text = "boards stand each under a header of its own"
	boardsHint      wording.Text = "write [[wood.board]] and below it length, width and thickness"
	tooManyBoards   wording.Text = "there are %d boards, the most is %d"
	sharedEntry     wording.Text = "boards of one size share an entry: count = 4"
	listOfItems     wording.Text = "a list of items"
	anItem          wording.Text = "an item"
	itemsInline     wording.Text = "items stand each under a header of its own"
	itemsHint       wording.Text = "write [[item]] and below it name, and count and price if you like"
	tooManyItems    wording.Text = "there are %d items, the most is %d"
	sharedItem      wording.Text = "what is alike shares an item: count = 4"
	woodUnknown     wording.Text = "%s is not in the table of woods"
	giveDensity     wording.Text = "give its density in kg/m³: density = 700"
	orGiveDensity   wording.Text = "%s; or give its density in kg/m³: density = 700"
	tableHas        wording.Text = "the table has %s"
	didMean         wording.Text = "did you mean %s?"
	standsAbove     wording.Text = "%s stands in no table: write it above the first line in brackets"
)

// What is said of keys and tables.
const (
	keyUnknown      wording.Text = "this key is not known"
	isMissing       wording.Text = "is missing"
	oneMissing      wording.Text = "one of %s is missing"
	tableMissing    wording.Text = "the table [%s] is missing"
	allTablesHint   wording.Text = "rodsheet new writes a design with all of them"
	theTable        wording.Text = "the table [%s]"
	standsTwice     wording.Text = "%s stands twice; first in line %d"
	keepOne         wording.Text = "keep one of them"
	keepOneOf       wording.Text = "keep one of %s"
	saidOtherwise   wording.Text = "%s in line %d says the same in another way"
	openedTwice     wording.Text = "a table is opened in two ways"
	openedTwiceHint wording.Text = "give each table one header, and keep its keys below it"
	oneTable        wording.Text = "one table"
	ownLine         wording.Text = "write %s on a line of its own"
	goesWith        wording.Text = "goes with %s %s, not with %s"
	standsInLine    wording.Text = "%s stands in line %d"
	standardIs      wording.Text = "without %s it is %s"
	likeMillimetres wording.Text = "these look like millimetres, but the unit is in"
	wholeUnitHint   wording.Text = `write units = "mm", or give the figures in inches`
	asThickAsWide   wording.Text = "a leg is as thick as its stretcher is wide: did you mean %s?"
)

// What is said of limits.
const (
	fromTo     wording.Text = "%s to %s"
	overUpTo   wording.Text = "more than %s, at most %s"
	lettersMax wording.Text = "at most %d characters"
)

// What is said of sizes.
const (
	ofSize            wording.Text = "%s of size %s"
	ofSizes           wording.Text = "%s of sizes %s"
	listOfSizes       wording.Text = "a list of sizes"
	aSize             wording.Text = "a size"
	sizesHint         wording.Text = `write [[size]], below it name = "low", and what differs in [size.ring] and so on`
	tooManySizes      wording.Text = "there are %d sizes, the most is %d"
	sizeUnnamed       wording.Text = "this size has no name"
	sizeNameHint      wording.Text = `write name = "low" below [[size]]`
	sizeNameTwice     wording.Text = "a size above has this name"
	sizeNameTwiceHint wording.Text = "give each size its own"
	noSuchSize        wording.Text = "there is no size %s"
	noSuchRow         wording.Text = "there is no [[%s]] number %d"
	firstSize         wording.Text = "standard"
	otherFirstSize    wording.Text = "first"
	forAllSizes       wording.Text = "this holds for all sizes"
	forAllSizesHint   wording.Text = "write it at the head of the file"
)

// untitled is the title of a design that gives none.
const untitled wording.Text = "table frame"

// usualWood is that of a design to begin with. It is the value of a key, looked
// up in the table of woods, and no Text.
const usualWood = "white ash"

// Titles of designs to begin with, by their sides or legs.
var (
	tableTitles = map[int]wording.Text{3: "three-sided table", 4: "four-sided table", 5: "five-sided table",
		6: "six-sided table", 7: "seven-sided table", 8: "eight-sided table"}
	boxTitles = map[int]wording.Text{3: "Three-sided planter", 4: "Sloping tray", 5: "Five-sided planter", 6: "Six-sided planter",
		7: "Seven-sided planter", 8: "Eight-sided planter", 9: "Nine-sided planter", 10: "Ten-sided planter",
		11: "Eleven-sided planter", 12: "Twelve-sided planter"}
	seatTitles = map[int]wording.Text{3: "three-legged stool", 4: "four-legged stool", 5: "five-legged bench",
		6: "six-legged bench", 7: "seven-legged bench", 8: "eight-legged bench"}
)
