package box

import (
	"sync"

	"rodsheet/geometry/measure"
	"rodsheet/templates"
	"rodsheet/templates/piece/assembly"
	"rodsheet/templates/piece/design"
	"rodsheet/templates/wording"
)

type text = wording.Text

// sortNames are what sides that are alike are called.
var sortNames = map[measure.ID]text{"side": "sides", "long": "front and back", "end": "ends"}

// edgeNames are what the edges of the bottom along them are called.
var edgeNames = map[measure.ID]text{"side": "edges", "long": "front and back edge", "end": "end edges"}

var sideNames = map[measure.ID]text{"side": "side %d", "long": "front or back, side %d", "end": "end, side %d"}

const (
	sized      text = "%s, %s × %s × %s"
	splineName text = "spline %d"
	bottomName text = "bottom, %s thick"
	times      text = "%s × %s"
)

// What stands on the cover.
const (
	mainHeight    text = "height"
	mainBelow     text = "outside at the lower edges"
	mainRim       text = "outside at the rim"
	mainThickness text = "thickness of the sides"
	mainCapacity  text = "room inside"
	mainSlope     text = "slope of %s from plumb"
)

// names are those of figures and of their groups.
var names = sync.OnceValue(allNames)

func allNames() assembly.Names {
	out := assembly.Names{
		"box": "Box", "side": "Sides", "long": "Front and back", "end": "Ends", "corner": "Corners", "bottom": "Bottom",
		"box.sides": "sides", "box.height": "height", "box.thickness": "thickness of the sides",
		"box.across-below": "left to right, at the lower edges", "box.across-rim": "left to right, at the rim",
		"box.deep-below": "front to back, at the lower edges", "box.deep-rim": "front to back, at the rim",
		"box.capacity": "room inside, above the bottom", "box.weight": "weight",
		"corner.plan": "between sides in plan", "corner.dihedral": "between the faces, square to the corner",
		"corner.mitre-wide": "width of the mitre", "corner.spline": "thickness of the spline", "corner.spline-deep": "spline, into either side",
		"corner.tails": "tails", "corner.tail": "tail, at its end", "corner.pin": "pin, where it is narrowest", "corner.half-pin": "half pin at either edge",
		"corner.tail-long":          "length of the tails",
		"corner.spline-from-inside": "middle of the spline from the inner corner, along the mitre",
		"bottom.length":             "left to right", "bottom.width": "front to back", "bottom.thickness": "thickness",
		"bottom.edge-tilt.side": "edges, tilt of the blade", "bottom.edge-tilt.long": "front and back edge, tilt of the blade", "bottom.edge-tilt.end": "end edges, tilt of the blade",
	}
	for id := range sortNames {
		for what, said := range sideFigures {
			out[id+"."+what] = said
		}
	}
	return out
}

// sideFigures are those of sides of one sort.
var sideFigures = map[measure.ID]text{
	"count":      "count",
	"slope":      "slope from plumb",
	"from-level": "slope from level",
	"lower-edge": "lower edge, outer side",
	"upper-edge": "upper edge, outer side",
	"longest":    "longest, from tip to tip",
	"wide":       "up the outer side",
	"blank":      "width of the board",
	"off-square": "ends, off square",
	"bevel":      "ends, bevel",
	"tilt":       "ends, tilt of the blade",
	"edge-tilt":  "level edges, tilt of the blade",
}

// texts are those of checks.
var texts = assembly.Texts{
	"box.tilt": {Name: "tilt for the ends", Figure: "tilt of the blade", Holds: "The blade tilts so far.",
		Lacks: "No saw tilts its blade by more than %[2]s: slope the sides less, or take more of them."},
	"box.edge-tilt": {Name: "tilt for the edges", Figure: "tilt of the blade", Holds: "The blade tilts so far.",
		Lacks: "No saw tilts its blade by more than %[2]s: the level edges of sides that slope so far are planed by hand, or slope them less."},
	"box.blade": {Name: "blade through the sides", Figure: "thickness of the sides", Holds: "The tilted blade comes through.",
		Lacks: "Tilted, the blade rises no more than %[2]s over the table."},
	"box.board": {Name: "sides and boards", Figure: "width of a rough side", Holds: "The widest board holds a side.",
		Lacks: "No listed board is wider than %[2]s: glue the sides up from two."},
	"box.spline-wood": {Name: "wood behind the spline", Figure: "wood behind the slot", Holds: "Enough wood stays behind the slot.",
		Lacks: "The slot leaves little wood to a face of the side: a thinner spline, or thicker sides."},
	"box.bottom-inside": {Name: "bottom and rim", Figure: "upper face of the bottom", Holds: "The bottom lies below the rim.",
		Lacks: "The bottom stands above the rim."},
	"box.bottom-gap": {Name: "bottom and moisture", Figure: "room for the bottom across its grain", Holds: "The bottom can move.",
		Lacks: "The bottom may grow by %[2]s across its grain and push the corners apart: leave a wider gap, or make it of plywood."},
}

// mending says what mends a check.
var mending = map[design.Key]text{
	"box.slope":      "slope the sides by %s",
	"box.end-slope":  "slope the ends by %s",
	"box.thickness":  "make the sides %s thick",
	"box.height":     "make the box %s high",
	"box.spline":     "make the spline %s thick",
	"box.bottom.up":  "set the bottom %s up",
	"box.bottom.gap": "leave a gap of %s round the bottom",
}

// Headings of the envelopes and of the cards, what stands on these.
const (
	sidesHeading text = "Sides"
	glueHeading  text = "Bottom and glue-up"

	fromMaker       text = "From the maker's end of the table"
	fromMakerSecond text = "From the maker's end of the table: the second edge"
	fromAbove       text = "From above: %s against the gauge"

	thicknessReading text = "thickness"
	squaredReading   text = "%s, long"

	ripText       text = "%s, the straight upper edge against the fence: rip the lower edge with the blade tilted. Roll the board over, %s, the sawn edge against the fence, which stays, and rip to width: the edges come out parallel, level when the side stands at its slope. A saw that tilts the other way has its fence on the other side."
	ripSquareText text = "Rip both edges square to width."
	squareCaution text = "Guard and splitter in place, a push stick between blade and fence. Isolate the saw before setting it."

	cornerTest text = "Two sides held together meet without light and enclose %s between their hollow sides."

	innerDown text = "hollow side down"
	outerDown text = "outer side down"
	lowerEdge text = "lower edge"
	upperEdge text = "upper edge"

	// otherSaw holds since a side is its own mirror image.
	otherSaw        text = "On a saw that leans the other way all is the mirror image, left for right."
	turnedAway      text = "Turn the gauge, its end beside the waste away from you"
	turnedTowards   text = "Turn the gauge, its end beside the waste towards you"
	squareGauge     text = "Leave the gauge square"
	firstEndText    text = "%s, and saw one end of every side just clean, without a stop."
	secondSquare    text = "Turn each side round on the table, the same face down, its other edge against the gauge, the sawn end at the stop."
	triangleOf      text = "triangle %s"
	squareTool      text = "a square"
	squareTest      text = "A square shows no light on the sawn end, to the edge and to the face."
	tiltReading     text = "tilt of the blade"
	tiltOverReading text = "tilt, over the part"
	tiltAwayReading text = "tilt, away from the fence"
	fenceReading    text = "fence to blade, at the table"
	stopReading     text = "stop to blade, along the gauge"

	shapeHeading text = "Outer side of the %s"
	lowerEdgeOf  text = "lower edge %s"
	upperEdgeOf  text = "upper edge %s"
	offSquareOf  text = "%s off square"

	bottomTick text = "bottom"
	bottomView text = "Upper face; its underside in dashes"
	bottomTilt text = "tilt of the blade, along the %s"
	bottomEach text = "each edge %s"
	// What comes before the cuts that close it, and those: of corners off square and of square ones.
	bottomText   text = "Tape the sides together dry: where they differ, their sizes count. %s, a square end of the board against the square gauge, saw the first edge just clean, along the grain. %s"
	bottomOblong text = "Turn the board round, its other end against the gauge, the sawn edge at the stop, and saw the one across; then the other two so, a sawn edge against the gauge."
	bottomTurned text = "Mark its middle on the face in view, and its corner %s beyond, towards the blade. %s, the edge just sawn against it, saw from that corner, and on each new edge mark the next corner to saw from."
	oblongTest   text = "Its diagonals agree."
	bottomStop   text = "stop to blade, %s"
	bottomMark   text = "face in view, corner to corner"

	splineTick         text = "ends"
	splineReading      text = "slot"
	splineDeepReading  text = "depth into either end"
	splinePlaceReading text = "inner corner to the near side of the slot, along the mitre"
	splineText         text = "Slot every end square to its mitre, measured from the inner corner: with a router on a block clamped to the side, its end sawn at the same %s and in one plane with the mitre, or on a tenoning jig."

	dovetailTick text = "ends"
	tailsReading text = "tails in each corner"
	tailReading  text = "tail, at its end"
	pinReading   text = "pin, where it is narrowest"
	dovetailGlue text = "Glue the corners with cauls that press on the tails alone. When the glue has set, plane the lower edges and the rim level with the bench."
	edgesTest    text = "Planed level, the edges stand %s off square to the sides; on a flat bench nothing rocks."

	bottomThick        text = "bottom, thick"
	cornerReading      text = "corner of the bottom"
	bottomOther        text = "For the %s, where the sides lean the other way, the underside lies down."
	upperDown          text = "Upper face down"
	underDown          text = "Underside down"
	tiltedOver         text = "%s, the blade tilted over the part"
	ledgeText          text = "Inside, along the middle of each lower edge, glue an offcut %s long, planed off level %s over it: the bottom lies loose on these ledges, %s to spare all round."
	splineThickReading text = "splines, thick"
	splineStock        text = "Plane the one for the splines, as wide as a corner is long, by hand or on a thicker one, and crosscut it by hand, on a bench hook, into %d strips of %s: the grain of a spline runs across the joint."
	splineCaution      text = "Push blocks; nothing shorter or thinner than the machine's manual allows, and no strip of a spline at the saw table."
	dryFit             text = "Dry fit first."
	dryFitBottom       text = "Dry fit first, the bottom in its place."
	bottomBefore       text = "Sides that lean in hold the bottom: it goes in before the last one."
	blocksOn           text = "Glue the blocks beside every corner, thick end towards it, with paper between."
	splinedGlue        text = "Glue a spline into one side of each corner, put all sides together loosely and draw the ring shut all round: the last corner cannot be closed alone."
	clampText          text = "Clamp across each pair at its line, %s from the thin tip."
	strapText          text = "A strap round the outside draws corners so flat together, clamps across the pairs help."
	blocksOff          text = "When the glue has set, split the blocks off with a chisel, both hands behind its edge, and scrape off the paper."
	splinesFlush       text = "Saw the splines flush."

	dihedralReading text = "between the hollow sides"
	glueText        text = "Glue the corners. Or lay the sides in a row, outer sides up, tape the corners, turn the row over, spread glue and roll it up."
	buttText        text = "Clamp front and back over the ends, cauls below the jaws. Nails or screws go in square to the faces that they hold."
	cornerView      text = "A corner, square to the line in which the faces meet"

	splineBoard  text = "board for splines"
	wedgeBoard   text = "board for wedge blocks"
	wedgeTick    text = "wedge blocks"
	wedgeText    text = "Saw the blocks from their board to the template, two by two head to tail: two for each corner, an end of the board left to hold by."
	wedgeCaution text = "Saw the blocks by hand, or on the band saw from a board long enough to hold; glue by its data sheet."

	wedgeName     text = "wedge block, beside a corner"
	wedgeOnSide   text = "on the side"
	wedgeJaw      text = "jaw of the clamp; runs along the mitre"
	wedgeAtCorner text = "towards the corner"
	wedgeClamp    text = "clamp"
)

// What the cards say.
var (
	planeCard = assembly.CardText{Heading: "Plane the sides", Test: "All of one thickness: two held together show no step.",
		Text:    "Plane boards of one thickness at once, with spares. Saw ends square. Mark lower edges and outer sides; hollow sides look in.",
		Caution: "Push blocks; no board shorter than the machine's manual allows."}
	ripCard = assembly.CardText{Heading: "Rip the edges of the %s", Test: "Up the outer side the side measures %s.",
		Caution: templates.TiltedRip}
	firstEnd = assembly.CardText{Heading: "Saw the first end of the %s", Test: "On an offcut: %s lies along the cut, %s in the sawn end.",
		Caution: "Clamp the side to the gauge: a tilted blade draws it. Let the blade stop before you reach for the waste. Isolate the saw before setting it."}
	secondEnd = assembly.CardText{Heading: "Saw the second end of the %s", Test: firstEnd.Test,
		Text:    "Turn the gauge by as much to the other side, and each side round on the table, the same face down, its other edge against the gauge, the sawn tip at the stop.",
		Caution: firstEnd.Caution}
	bottomCard = assembly.CardText{Heading: "Saw the bottom", Test: "The edge that closes it is as long as the others.",
		Caution: "Hold the bottom on a sled or the gauge with a clamp, no fence beside it. Isolate the saw before tilting it."}
	splineCard = assembly.CardText{Heading: "Slot the ends for the splines", Test: "A spline slides in by hand, and the mitre closes over it.",
		Caution: "Clamp part and block; never climb-cut by hand. Isolate the machine before setting it, by its manual."}
	dovetailCard = assembly.CardText{Heading: "Cut tails and pins", Test: "Each corner goes together by light blows and closes; number it.",
		Text:    "Front and back have the tails, the ends the pins; of more sides every other one. Lay the strips over the ends, saw the tails beside their lines, clear between them, and knife the pins from the tails that were cut.",
		Caution: "Clamp the board low in the vice, chop with both hands behind the edge."}
	glueCard = assembly.CardText{Heading: "Glue the corners", Test: "The rim lies on a flat bench without rocking; diagonals agree.",
		Caution: "Glue by its data sheet."}
)
