package live

import (
	"rodsheet/templates/piece/design"
	"rodsheet/templates/wording"
)

// What the page says of itself. What it says of a piece are the sentences of the commands.
const (
	inherited   wording.Text = "%s, as for all sizes"
	workedOut   wording.Text = "%s follows"
	standard    wording.Text = "%s if left out"
	noSheets    wording.Text = "The sheets cannot be laid: %s"
	sheetOf     wording.Text = "sheet %d of %d: %s"
	dragged     wording.Text = "%s: drag, or use the arrow keys"
	draggedFoot wording.Text = "foot: drag, or use the arrow keys"
	draggedTop  wording.Text = "height: drag, or use the arrow keys"
	draggedRim  wording.Text = "rim: drag, or use the arrow keys"
	aPicture    wording.Text = "the part as it is then"
	clashHere   wording.Text = "here parts clash"
	planName    wording.Text = "Plan of %s"
	frontName   wording.Text = "Elevation of %s"
	cornerName  wording.Text = "%s, seen from above at a corner"
	aRow        wording.Text = "%s %d"
	newRow      wording.Text = "one more: %s"
)

var tableNames = map[design.Key]wording.Text{
	"":           "Title and units",
	"plan":       "Whose plan",
	"ring":       "Ring",
	"box":        "Box",
	"box.bottom": "Bottom",
	"frame":      "Frame", "frame.legs": "Legs", "frame.aprons": "Aprons", "frame.stretchers": "Low stretchers", "frame.top": "Top", "frame.milled": "Sizes as milled",
	"seat": "Seat", "seat.front": "Front legs", "seat.middle": "Middle legs", "seat.back": "Back legs", "seat.circle": "Legs on a circle", "seat.legs": "Section of the legs",
	"seat.mortise": "Mortises", "seat.stretchers": "Low stretchers",
	"legs":       "Legs",
	"legs.taper": "Taper of the legs",
	"top":        "Top",
	"top.pads":   "Pads",
	"top.fixing": "What holds the top",
	"wood":       "Wood",
	"wood.board": "Boards at hand",
	"saw":        "Saw",
	"milled":     "Sizes as milled",
	"prices":     "Prices",
	"item":       "Bought ready made",
	"size":       "Size",
}

const (
	noBeginning wording.Text = "no piece was found that passes its checks with these figures: try another height or width"
	tooLong     wording.Text = "this took too long and was given up"
	tooLarge    wording.Text = "more than %d MB was sent: no design is so long"
	notAsked    wording.Text = "this is no request of the page"
	broken      wording.Text = "something in the program broke; the page and its design are as they were"
	otherHost   wording.Text = "this page is for browsers of this machine: use the address that rodsheet open printed"
	noToken     wording.Text = "the address lacks its token: use the one that rodsheet open printed"
	noFile      wording.Text = "the page was opened without a file: take the design with its own button"
)

const (
	glassTop   wording.Text = "glass"
	woodTop    wording.Text = "wood"
	noTop      wording.Text = "nothing"
	cardsTab   wording.Text = "cards"
	buyingTab  wording.Text = "cut list and buying"
	sheetsTab  wording.Text = "templates and sheets"
	glueTab    wording.Text = "names and glue-up"
	figuresTab wording.Text = "all figures"
	printerTab wording.Text = "measure a printer"
)

// Whose plan it is, on a published page.
const (
	planBy       wording.Text = "by %s"
	planOf       wording.Text = "%s"
	planRevision wording.Text = "revision %s"
	planNote     wording.Text = "%s"
)
