package seat

import (
	"maps"
	"sync"

	"rodsheet/geometry/measure"
	"rodsheet/templates/piece/assembly"
	"rodsheet/templates/piece/design"
	"rodsheet/templates/wording"
)

type text = wording.Text

func (s Seat) mm(v float64) string    { return measure.Length(v).Text(s.unit()) }
func (s Seat) deg(rad float64) string { return measure.Angle(rad).Text(s.unit()) }

const (
	slabNamed text = "seat, %s thick"
	legNamed  text = "leg %d, %s long"
	rodNamed  text = "stretcher %d, %s long"
)

// sortNames are what legs that are alike are called.
var sortNames = map[measure.ID]text{
	"seat.front": "front legs", "seat.front-inner": "inner front legs",
	"seat.middle": "middle legs", "seat.middle-inner": "inner middle legs",
	"seat.back": "back legs", "seat.back-inner": "inner back legs", "seat.circle": "legs",
}

// oneName are those of one leg in the middle of its row.
var oneName = map[measure.ID]text{
	"seat.front": "front leg", "seat.front-inner": "inner front leg", "seat.middle": "middle leg", "seat.middle-inner": "inner middle leg",
	"seat.back": "back leg", "seat.back-inner": "inner back leg",
}

// legsCalled names so many legs of a sort.
func legsCalled(of sort, n int) text {
	if n == 1 {
		return oneName[of.id()]
	}
	return sortNames[of.id()]
}

// rodNames are what stretchers are called.
var rodNames = [...]text{frontRod: "front stretchers", backRod: "back stretchers", sideRod: "side stretchers", crossRod: "cross stretcher", roundRod: "stretchers"}

// What stands on the cover.
const (
	mainHeight  text = "height at the front and at the back"
	mainSeat    text = "seat: side to side, front to back, thick"
	mainFeet    text = "over the feet: side to side, front to back"
	mainMortise text = "mortise, at the underside"
	both        text = "%s, %s"
	mainLean    text = "%s: resultant, sightline"
	mainOutward text = "%s: resultant outward"
	sizes       text = "%s × %s × %s"
	times       text = "%s × %s"
	neverTips   text = "Nothing tips it there: %s."
	tipsAlone   text = "The load alone tips it, no pull is wanted: %s."
)

// names are those of figures and of their groups.
var names = sync.OnceValue(allNames)

func allNames() assembly.Names {
	out := assembly.Names{
		"seat.slab": "Seat", "seat.rods": "Stretchers", "seat.standing": "Standing",
		"seat.side-to-side": "side to side", "seat.front-to-back": "front to back", "seat.thick": "thickness",
		"seat.height-front": "height at the front edge", "seat.height-back": "height at the back edge", "seat.fall": "fall to the back",
		"seat.area": "area", "seat.mass": "weight of all parts",
		"seat.centre-high": "centre of gravity over the floor", "seat.centre-inside": "centre of gravity inside the line of the feet",
	}
	for id, where := range map[measure.ID]text{"front": "front", "side": "side", "back": "back"} {
		out["seat.tips."+id] = "force that tips it, 50 mm in from the " + where
		out["seat.pull."+id] = "level pull that tips it with 600 N, 60 mm in from the " + where
	}
	for id := range sortNames {
		out[id] = sortNames[id].Capital()
		for what, said := range legFigures {
			out[id+"."+what] = said
		}
	}
	maps.Copy(out, circleFigures)
	for kind, id := range rodIDs {
		for _, second := range []measure.ID{"", "-2"} {
			for what, said := range rodFigures {
				out["seat.rod-"+id+second+what] = rodNames[kind] + ": " + said
			}
		}
	}
	return out
}

var legFigures = map[measure.ID]text{
	"count": "count", "rake-of": "rake", "splay-of": "splay", "resultant-of": "resultant", "bevel": "bevel at the sightline",
	"sightline-of": "sightline, from the fore-and-aft line", "holes-apart": "holes apart, from middle to middle", "hole-aside": "hole from the centre line", "hole-from-middle": "hole from the middle, forward or backward",
	"mouth-along": "mouth of the hole along the sightline", "mouth-across": "mouth of the hole across", "mouth-off": "middle of the mouth outside the axis",
	"exit-aside": "exit of the bit from the centre line", "exit-from-middle": "exit of the bit from the middle, forward or backward",
	"bored": "bored along the bit", "blank": "blank", "tenon": "tenon, to its shoulder", "below-shoulder": "shoulder to floor, along the axis",
	"from-plumb": "lean from plumb, as it stands", "foot-across": "level cut of the foot, in the way in which it leans, off square",
	"foot-along": "level cut of the foot, across that, off square", "foot-aside": "foot from the centre line", "foot-from-middle": "foot from below the middle, forward or backward",
}

// circleFigures are those that are counted outward, not forward or backward.
var circleFigures = assembly.Names{
	"seat.circle.hole-from-middle": "hole from the middle", "seat.circle.exit-from-middle": "exit of the bit from the middle",
	"seat.circle.foot-from-middle": "foot from below the middle",
}

var rodFigures = map[measure.ID]text{
	".whole": "tip to tip", ".between": "between shoulders",
	".first.lean": "first end, off the axis of what it enters", ".first.depth": "first end, depth of hole", ".first.along": "first end, shoulder of the leg to hole", ".first.turn": "first end, round the leg from its outer side",
	".second.lean": "second end, off the axis of what it enters", ".second.depth": "second end, depth of hole", ".second.along": "second end, shoulder of the leg to hole", ".second.turn": "second end, round the leg from its outer side",
}

// texts are those of checks.
var texts = sync.OnceValue(allTexts)

func allTexts() assembly.Texts {
	out := assembly.Texts{
		"seat.clash": {Name: "legs and stretchers", Holds: "No part reaches into another.",
			Lacks: "Legs or stretchers reach into each other: set holes or heights farther apart, or tenons of stretchers thinner and their holes less deep."},
		"seat.holes": {Name: "wood between holes", Figure: "least wood between two holes", Holds: "Enough wood stays between the holes.",
			Lacks: "Little wood stays between two holes; half of their diameter is usual."},
		"seat.under-hole": {Name: "wood above a blind hole", Figure: "wood above the hole", Holds: "Enough wood stays above the hole.",
			Lacks: "The bit may come through: leave more wood above the hole."},
		"seat.stretcher-hole": {Name: "holes for stretchers", Figure: "tenon of a stretcher", Holds: "The holes leave enough of what they are in.",
			Lacks: "The hole takes more than half of what it is in, %[2]s: take a more slender tenon."},
		"seat.stretcher-depth": {Name: "depth of the holes for stretchers", Figure: "least depth", Holds: "The tenons of the stretchers are long enough.",
			Lacks: "A tenon so short works loose: bore half as deep as it is thick, at least."},
		"seat.stands": {Name: "standing empty", Figure: "centre of gravity inside the line of the feet", Holds: "It stands by itself.",
			Lacks: "It falls over by itself: its centre of gravity lies outside the feet."},
	}
	for id, where := range map[measure.ID]text{"front": "front", "side": "side", "back": "back"} {
		out["seat.feet-"+id] = assembly.CheckText{Name: "feet under the " + where, Figure: "load 50 mm in from the edge, inside the line of the feet",
			Holds: "A load 50 mm in from that edge presses between the feet.",
			Lacks: "A load near that edge presses outside of the feet: see what force tips it under Standing. What a piece must bear is a matter of the standards where you sell."}
	}
	for row, name := range rowNames {
		id := measure.ID(design.SeatRow(row).Table())
		out[id+".inside"] = assembly.CheckText{Name: "holes inside the seat, " + name, Figure: "hole inside the edge", Holds: "The holes lie in the seat.",
			Lacks: "A hole comes out at the edge of the seat: move it inward."}
		out[id+".edge"] = assembly.CheckText{Name: "wood to the edge, " + name, Figure: "least wood to the edge", Holds: "Enough wood stays to the edge.",
			Lacks: "Little wood stays to the edge, on one face or the other; half of the diameter is usual."}
		out[id+".steep"] = assembly.CheckText{Name: "lean of the bit, " + name, Figure: "resultant", Holds: "The bit bites at that lean.",
			Lacks: "At so much lean a bit walks off before it bites: start it in a guide block sawn to the bevel."}
		out[id+".short-grain"] = assembly.CheckText{Name: "short grain at the wedge, " + name, Figure: "wood along the grain to the edge", Holds: "The grain beyond the wedge is long enough.",
			Lacks: "The wedge presses on short grain and may split it off at the edge; one diameter is usual."}
	}
	return out
}

var rowNames = [...]text{"front row", "middle row", "back row", "circle"}

// mending says what mends a check.
var mending = map[design.Key]text{
	"seat.stretchers.side-height": "set the side stretchers %s high",
	"seat.mortise.depth":          "bore %s deep",
	"seat.thickness":              "make the seat %s thick",
	"seat.stretchers.hole":        "bore %s deep for the stretchers",
	"seat.stretchers.tenon":       "make the tenons of the stretchers %s thick",

	"seat.front.rake": "rake the front legs by %s", "seat.middle.rake": "rake the middle legs by %s", "seat.back.rake": "rake the back legs by %s",
	"seat.front.splay": "splay the front legs by %s", "seat.middle.splay": "splay the middle legs by %s", "seat.back.splay": "splay the back legs by %s",
	"seat.front.from-middle": "set the front row %s from the middle", "seat.middle.from-middle": "set the middle row %s from the middle", "seat.back.from-middle": "set the back row %s from the middle",
	"seat.front.apart": "set the front holes %s apart", "seat.middle.apart": "set the middle holes %s apart", "seat.back.apart": "set the back holes %s apart",
	"seat.circle.resultant": "lean the legs outward by %s", "seat.circle.from-middle": "set the holes %s from the middle",
}

// What stands on drawings and pictures.
const (
	frontLabel       text = "front"
	towardsFront     text = "towards the front"
	centreLabel      text = "centre line"
	middleLabel      text = "middle of the seat"
	grainLabel       text = "grain"
	frontToBack      text = "front to back"
	sideToSide       text = "side to side"
	holeLabel        text = "leg %d, bit %s"
	legNumber        text = "%d"
	footLabel        text = "the foot leans this way"
	footOut          text = "foot leans out"
	sightlineLabel   text = "sightline, %s"
	onCentre         text = "on the centre line"
	fromCentre       text = "%s from the centre line"
	fromFront        text = "%s from the front edge"
	fromBack         text = "%s from the back edge"
	holeDrawn        text = "hole of leg %d, %s"
	upperFace        text = "upper face"
	underside        text = "underside"
	alongSightline   text = "Section along the sightline, the foot out to the right"
	bitLabel         text = "bit %s"
	bevelLabel       text = "gauge at %s"
	backingLabel     text = "waste board"
	legViewHeading   text = "Leg, its tip on the left"
	tenonLabel       text = "tenon"
	footEnd          text = "%s across at the end"
	octagonName      text = "end of a leg blank, octagon"
	blankLabel       text = "blank %s square"
	footSize         text = "at the floor, %s across"
	rodViewHeading   text = "Seen square to both"
	footLabelEnd     text = "foot"
	backEndLabel     text = "back end"
	levelViewHeading text = "From its right, front on the left"
	benchLabel       text = "flat bench"
	scribeLabel      text = "pencil"
)

func faceDrawn(upper bool) text { return assembly.Either(upper, upperFace, underside) }

// Headings of the envelopes and of the cards, what stands on these.
const (
	seatHeading     text = "Seat"
	legsHeading     text = "Legs"
	rodsHeading     text = "Stretchers"
	togetherHeading text = "Putting it together"

	seatTick       text = "seat"
	seatBoardsTick text = "seat boards"
	legsTick       text = "legs"

	slabText      text = "Glue up %d boards, each %s long and %s wide when jointed, grain %s. Plane the slab flat and to its thickness."
	setOutText    text = "On the face that is bored set out the outline, the centre line, the holes and their sightlines. Leave the slab with its straight edges until it is bored: it is held more easily."
	carryText     text = "Square the centre line and the middle over the edges to the other face: there the point of the bit is measured from them."
	acrossReading text = "side to side"
	depthReading  text = "front to back"

	// Of an outline that no sheet shows whole.
	pinsReading         text = "pins for the string, on the longer axis, from the middle"
	stringReading       text = "string from pin to pin"
	ovalText            text = "Draw the oval with the pencil in the bight of a string that does not stretch, tied to two pins."
	backCurve           text = "curve at the back, diameter"
	shieldText          text = "Straight lines touch the curve at the back and those of the front corners."
	frontCorners        text = "front corners, radius"
	roundCornersReading text = "corners, radius"
	cornerAt            text = "corner %d, from the middle"
	toTheLeft           text = "%s left"
	toTheRight          text = "%s right"
	toTheFront          text = "%s forward"
	toTheBack           text = "%s back"

	thicknessReading text = "thickness"

	bevelReading     text = "gauge, bevel"
	sightlineReading text = "sightline, from the fore-and-aft line"
	circleReading    text = "radius of the circle"
	chordReading     text = "from hole to hole"
	circleText       text = "The sightline of a hole runs straight out from the middle of the seat."
	bitReading       text = "bit"
	depthOnBit       text = "depth, along the bit on its axis"
	reamerReading    text = "reamer, included angle"
	largeReading     text = "reamed hole at the underside, on the axis"
	throughText      text = "Clamp a waste board to the far face; ease off when the point comes through, so that the rim does not blow out."
	blindText        text = "A stop or tape on the bit is set from its rim to the axis; the flat of the bit is deepest on one side."
	reamText         text = "Then ream from the underside to the width given, turning the reamer little by little: sight it against the gauge at every few turns, it can still be corrected."
	blindTest        text = "%s of wood stays above the deepest point."
	boreCaution      text = "Clamp the work; a bit that binds turns the drill or the work: two hands, side handle, low speed. Eye protection. Keep to the machine's manual and local rules."

	planeCaution  text = "Push blocks and sticks; hold short work in a cradle, never in the hand."
	squareReading text = "square"
	longReading   text = "length"

	cornerReading text = "gauge from each corner, at the shoulder"
	endReading    text = "across at the foot end of the blank"
	endCorner     text = "gauge from each corner, at the end"

	shoulderReading text = "tip to shoulder"
	rootReading     text = "diameter at the shoulder"
	tipReading      text = "diameter at the tip"
	longTip         text = "The tip is left long, to be sawn flush after glueing."
	latheCaution    text = "Lathe: guard and face shield, rest close, nothing loose about you, low speed until it is round. Its manual comes first."

	wedgeStrip  text = "strip for the wedges"
	tenonWedges text = "wedges for the tenons"
	levelWedges text = "wedges under the feet"

	rodReading      text = "diameter"
	rodTenonReading text = "tenon"
	wholeReading    text = "tip to tip, %s"
	tenonLong       text = "tenon to its shoulder, %s"
	tenonLongIn     text = "tenon to its shoulder, %s, in the %s"
	betweenReading  text = "between shoulders, %s"

	leanReading      text = "between bit and axis, towards the foot"
	crossReading     text = "between bit and axis, towards the back"
	holeDepth        text = "depth from the surface"
	alongReading     text = "shoulder of the leg to middle of hole"
	turnReading      text = "round the leg from its outer side"
	rodHoleText      text = "The outer side looks the way in which the leg leans. Legs on the left and on the right are mirror images; with the legs dry in the seat the bit sights straight at the other hole."
	counterClockwise text = "Counter-clockwise, as seen from the foot: leg %s."
	clockwise        text = "Clockwise, as seen from the foot: leg %s."
	crossHoleText    text = "Bore both side stretchers half-way between their shoulders, level; left and right are mirror images. Sight from one to the other."

	slotHeading text = "Fit the legs dry and slot them"
	apartTest   text = "The ends of the legs stand apart, middle to middle: %s."
	apartOf     text = "%s %s"
	slotReading text = "slot, from the tip"
	rodsDry     text = "Put the stretchers in with the legs."
	proudText   text = "The tips stand out of the upper face."
	slotText    text = "Mark the slot across each tip, square to the grain of the seat: a wedge that presses across the grain splits it. Take the legs out and saw the slots. They reach down two thirds of the seat from its upper face."
	slotCaution text = "Clamp the leg, its tip up, before sawing the slot; the free hand stays off the line of the saw."

	wedgeText text = "Turn all over on to the legs at once, glue each wedge and drive it until it holds. It is shorter than the slot, so that it does not reach the bottom and split the leg."
	flushText text = "When the glue is hard, saw the tips flush with the upper face."
	blindGlue text = "Leave room below the tenon for glue, or it will not go home."
	rodsFirst text = "Stretchers go in with the legs: start all tenons before driving any."

	frontHigh  text = "upper face over the bench, front edge"
	backHigh   text = "upper face over the bench, back edge"
	pencilHigh text = "pencil over the bench"
	lowText    text = "If it stands higher than that without a wedge, saw a little off the foot that holds it up."
	sawFeet    text = "Saw to the lines from all sides, then ease the arrises."
	levelTest  text = "It stands on the bench without rocking, the front edge %s high and the back edge %s."
)

const (
	exitForward  text = "On the other face the point comes out %s and %s forward of the middle."
	exitBackward text = "On the other face the point comes out %s and %s behind the middle."
	exitRound    text = "On the other face the point comes out %s from the middle of the seat."
)

// What the cards say.
var (
	slabCard = assembly.CardText{Heading: "Glue up the seat", Test: "Mirrored holes stand equally far from the centre line.",
		Caution: "Glue by its data sheet. Push blocks and sticks; no board shorter than the manual of the machine allows."}
	sawCard = assembly.CardText{Heading: "Saw the seat to its outline", Test: "The edge is square to the faces all round.",
		Text:    "Outline up, saw just outside it, clean the edge to it and ease the arrises.",
		Caution: "At the band saw guard down to the wood, fingers out of the line of the blade; relief cuts in tight curves."}
	boreCard = assembly.CardText{Heading: "Bore for the %s",
		Text:    "Set the gauge from its triangle and stand it on the sightline, its blade along the bit. Then look along the sightline: seen so, the bit stands upright.",
		Caution: boreCaution}
	blankCard = assembly.CardText{Heading: "Saw the leg blanks", Test: "No grain runs out within the tenon.",
		Text:    "Rive or saw the blanks with the grain straight from end to end, square and to length. Mark tip and foot end, the shoulder all round, and the outer side of each: it looks the way in which the leg leans.",
		Caution: planeCaution}
	tenonCard = assembly.CardText{Heading: "Turn or shave the tenons", Test: "In a test hole of the same bit or reamer, bored square, it seats without rocking before the shoulder touches.",
		Text:    "The shoulder is square to the leg and touches the seat on the outer side only; ease its arris.",
		Caution: latheCaution}
	wedgeCard = assembly.CardText{Heading: "Make the wedges", Test: "The tip of each enters a saw cut in an offcut by hand.",
		Text:    "Plane the strip, its grain along it. Shave its end to a wedge of the size given, to nothing at the tip; saw that off, then the next.",
		Caution: "Saw wedges off by hand in a bench hook, while the strip is long enough to hold."}
	rodCard = assembly.CardText{Heading: "Turn the stretchers", Test: "A tenon of dry wood drives in with light taps.",
		Text:    "Stand the legs dry in the seat and check these lengths between them before turning the last ones: what was bored is what counts.",
		Caution: latheCaution}
	rodHoleCard = assembly.CardText{Heading: "Bore for the %s", Test: "A rod in both holes lies at its height over the floor at either end.",
		Caution: boreCaution}
	fitCard = assembly.CardText{Heading: "Fit the legs dry", Test: "Seen along its sightline each leg stands upright.",
		Text:    "Press each leg home without glue and turn it so that its outer side looks along the sightline, away from the seat. Number leg and hole, and draw a line across leg and underside by which the leg comes back to its turn.",
		Caution: "Tap tight tenons out from the tip, the seat held; nobody's hand near the mallet."}
	glueCard = assembly.CardText{Heading: "Glue the legs", Test: "The lines on leg and seat meet; the shoulder touches the underside on the outer side.",
		Text:    "The underside up, clear of the bench, glue tenon and hole, bring each leg to its line and drive it home.",
		Caution: "Glue by its data sheet; hold the leg, not near the wedge, when the mallet falls."}
	levelCard = assembly.CardText{Heading: "Level the feet",
		Text:    "Stand the seat on a flat bench, feet still square and long, and drive wedges under them until the upper face stands so high at the front and at the back, and level from side to side. Scribe round every foot with a pencil on a block.",
		Caution: "Clamp the leg before sawing; the free hand stays behind the saw."}
)

// shapeCards are those of the sections that are made of a square blank; a square one is
// tapered.
var shapeCards = [...]assembly.CardText{
	design.OctagonLeg: {Heading: "Make the legs octagonal", Text: "Gauge the corners from both arrises on every side, of a tapered leg at both ends, the marks joined by straight lines, and plane them off in a cradle.", Test: shapeTest, Caution: planeCaution},
	design.SquareLeg:  {Heading: "Taper the legs", Text: taperText, Test: shapeTest, Caution: planeCaution},
	design.RoundLeg:   {Heading: "Make the legs round", Text: "Turn or shave them, straight from the shoulder to the end.", Test: shapeTest, Caution: planeCaution},
}

const (
	taperText text = "Taper all four sides alike, straight from the shoulder to the end."
	shapeTest text = "Callipers read the same across all flats, at the shoulder and at the end."
)
