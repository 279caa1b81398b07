package aprons

import (
	"rodsheet/geometry/measure"
	"rodsheet/templates"
	"rodsheet/templates/piece/assembly"
	"rodsheet/templates/piece/design"
	"rodsheet/templates/wording"
)

// texts are those of the checks.
var texts = assembly.Texts{
	"aprons.clash":            {Name: "rails share no wood", Holds: "No two rails share wood in a leg.", Lacks: "Two rails that meet in a leg share wood: their corner is too narrow for them."},
	"aprons.end-on-leg":       {Name: "end of the apron on the leg", Figure: "shoulder within its side of the leg", Holds: "The shoulders lie within the sides of the legs.", Lacks: "A shoulder reaches past its side of the leg: its worst corner lies %[1]s within it."},
	"aprons.mitre":            {Name: "mitre clear of the shoulder", Figure: "end beyond the shoulder", Holds: "The ends stand clear of the shoulders all round.", Lacks: "The mitre is sawn through the whole apron and would run into its shoulder on the frame side: the end stands %[1]s beyond it."},
	"aprons.stretcher-mitre":  {Name: "mitre clear of the stretcher's shoulder", Figure: "stretcher's end beyond the shoulder", Holds: "The ends of the stretchers stand clear of the shoulders all round.", Lacks: "The mitre is sawn through the whole stretcher and would run into its shoulder on the frame side: the end stands %[1]s beyond it."},
	"aprons.tenons-meet":      {Name: "tenons in the leg", Figure: "gap between two tenons", Holds: "Two tenons in a leg stay apart.", Lacks: "Two tenons run into each other in the leg: their gap is %[1]s."},
	"aprons.outside-mortise":  {Name: "wood beside the mortise", Figure: "least wood beside a mortise", Holds: "The mortises leave enough of the legs.", Lacks: "Beside a mortise only %[1]s of the leg is left; %[2]s should be."},
	"aprons.above-tenon":      {Name: "wood above the tenon", Figure: "cut off the tenon at its top", Holds: "Above the tenon the leg stays closed but for the haunch.", Lacks: "Above the tenon only %[1]s of the leg is left; %[2]s should be."},
	"aprons.taper-below":      {Name: "taper below the aprons", Figure: "apron to the start of the taper", Holds: "The taper begins below the aprons.", Lacks: "The taper begins beside the apron, whose shoulder would lie on a bent side."},
	"aprons.stretcher-end":    {Name: "end of the stretcher on the leg", Figure: "stretcher's shoulder within its side of the leg", Holds: "The shoulders of the stretchers lie within the sides of the legs.", Lacks: "The shoulder of a stretcher reaches past its side of the leg: its worst corner lies %[1]s within it."},
	"aprons.stretcher-tenons": {Name: "tenons of the stretchers in the leg", Figure: "gap between two tenons of stretchers", Holds: "Two tenons of stretchers in a leg stay apart.", Lacks: "Two tenons of stretchers run into each other in the leg: their gap is %[1]s."},
	"aprons.stretcher-mortise": {
		Name: "wood beside the mortise of a stretcher", Figure: "least wood beside a stretcher's mortise", Holds: "The mortises of the stretchers leave enough of the legs.",
		Lacks: "Beside the mortise of a stretcher only %[1]s of the leg is left; %[2]s should be.",
	},
	"aprons.tenon-hold":         {Name: "length of the tenons", Figure: "shortest tenon, mean of its cheeks", Holds: "The tenons are long enough to hold.", Lacks: "A tenon is only %[1]s long (where its cheeks differ, their mean); %[2]s should be."},
	"aprons.stretcher-hold":     {Name: "length of the stretchers' tenons", Figure: "shortest tenon of a stretcher, mean of its cheeks", Holds: "The tenons of the stretchers are long enough to hold.", Lacks: "A tenon of a stretcher is only %[1]s long (where its cheeks differ, their mean); %[2]s should be."},
	"aprons.taper-at-stretcher": {Name: "stretchers clear of the start of the taper", Figure: "stretcher to the start of the taper", Holds: "The stretchers meet one flat side of each leg.", Lacks: "A stretcher lies across the start of the taper: its shoulder would lie on a bent side."},
	"aprons.over-arch":          {Name: "wood over the arch", Figure: "depth left over the arch", Holds: "Half of the apron or more is left over the arch.", Lacks: "Over the arch %[1]s of the apron is left; half of it is %[2]s."},
	"aprons.tilt":               {Name: "tilt of the blade", Figure: "steepest tilt", Holds: "The blade of a saw tilts as far as every cut wants.", Lacks: "A cut wants the blade tilted by %[1]s, more than a saw does: cut it by hand, to the template."},
	"aprons.blade":              {Name: "height of the blade", Figure: "blade over the table", Holds: "The blade goes through every part.", Lacks: "The blade must rise %[1]s to go through a part; it rises %[2]s at most."},
	"aprons.overhang":           {Name: "overhang of the top", Figure: "overhang over the legs", Holds: "The top covers the heads of the legs.", Lacks: "The heads of the legs stand out from under the top."},
	"aprons.screw-through":      {Name: "screws in the top", Figure: "screw into the top", Holds: "The screws end well inside the top.", Lacks: "The screws go %[1]s into the top; two thirds of it are %[2]s."},
	"aprons.screw-hold":         {Name: "hold of the screws", Figure: "screw into the top", Holds: "The screws hold in the top.", Lacks: "The screws go only %[1]s into the top; %[2]s should be."},
	"aprons.beside-screw":       {Name: "wood beside the screws", Figure: "least wood beside a hole", Holds: "The holes for the screws leave enough of the aprons.", Lacks: "Beside a hole for a screw %[1]s of the apron is left; %[2]s should be: thicker aprons, or buttons instead."},
	"aprons.screw-bore":         {Name: "depth of the holes for the heads", Figure: "hole for the head, deep", Holds: "Common bits reach as deep as the heads go.", Lacks: "The heads go %[1]s up into the aprons; common bits reach %[2]s: buttons instead."},
	"aprons.screw-edge":         {Name: "screws clear of the rim", Figure: "least from a screw to the rim", Holds: "The screws stand clear of the rim of the top.", Lacks: "A screw enters the top %[1]s from its rim; %[2]s should be."},
	"aprons.button-edge":        {Name: "buttons clear of the rim", Figure: "least from the screw of a button to the rim", Holds: "The screws of the buttons stand clear of the rim of the top.", Lacks: "The screw of a button enters the top %[1]s from its rim; %[2]s should be."},
	"aprons.behind-groove":      {Name: "wood behind the groove", Holds: "The groove for the buttons leaves enough of the aprons.", Lacks: "Behind the groove for the buttons hardly anything of the apron is left: thicker aprons, or a top that moves less."},
	"aprons.groove-long":        {Name: "length of the groove", Figure: "groove with least to spare", Holds: "The grooves are long enough for their buttons.", Lacks: "The groove for the buttons is %[1]s long between the shoulders; %[2]s should be: longer or thinner aprons, or screws instead."},
	"aprons.tongue":             {Name: "tongue of the buttons", Holds: "The tongues of the buttons are thick enough.", Lacks: "In aprons that lean so far the groove leaves the tongues too thin: screws instead, or plumb aprons."},
	"aprons.tipping-load":       {Name: "load at the rim", Figure: "load that tips the table", Holds: "A hand leaned on the rim does not tip the table.", Lacks: "%[1]s at the rim tip the table; a hand leaned on it is about %[2]s."},
	"aprons.never-tips":         {Name: "load at the rim", Holds: "No load on the top tips the table: its feet stand out as far."},
	"aprons.top-held":           {Name: "movement of the top", Figure: "change of the width of the top", Holds: "The top hardly moves.", Lacks: "Across its grain the top moves by %[1]s: hold it so that it can, by buttons or by screws in slots."},
}

// names are those of figures and groups.
var names = assembly.Names{
	"aprons.whole": "The table", "aprons.leg": "Legs",
	"aprons.apron": "Aprons", "aprons.front-apron": "Aprons, front and back", "aprons.side-apron": "Aprons, left and right",
	"aprons.stretcher": "Stretchers", "aprons.front-stretcher": "Stretchers, front and back", "aprons.side-stretcher": "Stretchers, left and right",

	"aprons.height": "height", "aprons.top": "top", "aprons.feet": "over the feet",
	"aprons.top-length": "top, length along the grain", "aprons.top-width": "top, width",
	"aprons.top-moves":   "top, change of its width with the moisture",
	"aprons.feet-length": "over the feet, front", "aprons.feet-width": "over the feet, side",
	"aprons.mass": "mass", "aprons.tipping-line": "centre to the line that it tips over", "aprons.rim-load": "load at the rim that tips it",

	"aprons.leg-resultant": "true lean from plumb", "aprons.leg-sightline": "sightline, from the line square to the front",
	"aprons.leg-length": "corner arris, head to foot", "aprons.leg-blank": "blank, squared to length",
	"aprons.leg-outer-arris": "section, angle at the corner arris", "aprons.leg-beside-arris": "section, angle at the two arrises beside it",
	"aprons.leg-inner-arris":   "section, angle at the arris between the rail sides",
	"aprons.leg-out-of-square": "section, planed out of square by", "aprons.leg-level-arris": "section on the level, angle at the corner arris",
	"aprons.leg-face": "width of an outer side", "aprons.leg-thickness": "thickness, outer side on the table",
	"aprons.leg-foot-off-square": "head and foot, off square on the outer side", "aprons.leg-foot-tilt": "head and foot, tilt of the blade",
	"aprons.leg-taper-start": "start of the taper, from the head along the corner arris", "aprons.leg-taper": "taper to the edge, on an outer side",
	"aprons.leg-foot-face": "width of an outer side at the foot",

	"aprons.rail-under": "outer side, shoulder to shoulder at the underside", "aprons.rail-top": "outer side, shoulder to shoulder at the top",
	"aprons.rail-frame-under": "frame side, shoulder to shoulder at the underside", "aprons.rail-frame-top": "frame side, shoulder to shoulder at the top",
	"aprons.rail-overall": "overall, with the tenons", "aprons.rail-deep": "depth on the outer side",
	"aprons.rail-bevel":          "top and underside, tilt of the blade",
	"aprons.rail-end-off-square": "ends of the tenons, off square on the outer side", "aprons.rail-end-tilt": "ends of the tenons, tilt of the blade",
	"aprons.rail-shoulder-off-square": "shoulders, off square on the outer side", "aprons.rail-shoulder-tilt": "shoulders, tilt of the blade",
	"aprons.rail-gauge": "shoulders, bevel on the outer side", "aprons.tenon": "tenon, thickness", "aprons.tenon-cheek": "outer side to the cheek of the tenon",
	"aprons.tenon-width": "tenon, plumb", "aprons.tenon-long": "tenon, longest along the rail",
}

const (
	sized     wording.Text = "%s × %s"
	across    wording.Text = "%s across"
	numbered  wording.Text = "%s %d"
	namedSize wording.Text = "%s, %s × %s × %s"
	longPart  wording.Text = "%s, %s long"
)

// by says two sizes of one thing.
func by(a, b string) string { return sized.With(a, b) }

var rectangleLegs = [...]wording.Text{"leg, front left", "leg, front right", "leg, back right", "leg, back left"}

// sideNames are those of the sides of a rectangle.
var sideNames = map[RowKind][4]wording.Text{
	Aprons:     {"front apron", "right apron", "back apron", "left apron"},
	Stretchers: {"front stretcher", "right stretcher", "back stretcher", "left stretcher"},
}

var railNames = map[RowKind]wording.Text{Aprons: "apron", Stretchers: "stretcher"}

func (m Model) length(mm float64) string { return measure.Length(mm).Text(m.Design.Unit) }

func (m Model) bare(mm float64) string { return measure.Length(mm).Bare(m.Design.Unit) }

func (m Model) angle(rad float64) string { return measure.Angle(rad).Text(m.Design.Unit) }

// legName names the leg at corner i with its size.
func (m Model) legName(i int) string {
	name := numbered.With(legWord.With(), i+1)
	if m.Design.Frame.Shape == design.Rectangle {
		name = rectangleLegs[i].With()
	}
	return longPart.With(name, m.length(m.legs[i].Blank().Length))
}

const (
	legWord wording.Text = "leg"
	topWord wording.Text = "top"
)

// railName names a rail with its size.
func (m Model) railName(row *Row, i int) string {
	return longPart.With(m.railCalled(row, i), m.length(row.Rails[i].Blank("").Length))
}

// railCalled names a rail.
func (m Model) railCalled(row *Row, i int) string {
	if m.Design.Frame.Shape == design.Rectangle {
		return sideNames[row.Kind][i].With()
	}
	return numbered.With(railNames[row.Kind].With(), i+1)
}

func (m Model) topName() string {
	size, _ := m.TopSize()
	return namedSize.With(topWord.With(), m.bare(size.Length), m.bare(size.Width), m.length(size.Thickness))
}

// mending says what is changed to mend a check.
var mending = map[design.Key]wording.Text{
	"frame.legs.size":               "make the legs %s thick",
	"frame.milled.legs":             "make the legs %s thick",
	"frame.legs.taper-start":        "start the taper %s from the head",
	"frame.legs.foot":               "leave %s at the foot",
	"frame.aprons.inset":            "set the aprons back by %s",
	"frame.aprons.thickness":        "make the aprons %s thick",
	"frame.milled.aprons":           "make the aprons %s thick",
	"frame.aprons.tenon-length":     "make the tenons %s long",
	"frame.aprons.upper-cut":        "cut %s off the tenons at the top",
	"frame.aprons.arch":             "let the arch rise %s",
	"frame.stretchers.inset":        "set the stretchers back by %s",
	"frame.stretchers.thickness":    "make the stretchers %s thick",
	"frame.milled.stretchers":       "make the stretchers %s thick",
	"frame.stretchers.tenon-length": "make the stretchers' tenons %s long",
	"frame.stretchers.height":       "raise or lower the stretchers to %s from the floor",
	"frame.top.thickness":           "make the top %s thick",
	"frame.aprons.depth":            "make the aprons %s deep",
	"frame.top.diameter":            "make the top %s across",
	"frame.top.length":              "make the top %s long",
	"frame.top.width":               "make the top %s wide",
	"frame.top.overhang":            "let the top stand %s over the legs",
	"frame.top.corner-size":         "clip or round the corners by only %s",
	"frame.length":                  "make the frame %s long",
	"frame.width":                   "make the frame %s wide",
}

type text = wording.Text

// cornerReadings say what is done to the corners of the top.
var cornerReadings = [...]text{
	design.ClippedCorner: "clip, along each side of a corner",
	design.RoundedCorner: "corners, radius",
}

// Headings of the envelopes.
const (
	anglesHeading     text = "Triangles for gauge and blade"
	stockHeading      text = "Stock"
	legsHeading       text = "Legs"
	apronsHeading     text = "Aprons"
	stretchersHeading text = "Stretchers"
	togetherHeading   text = "Putting it together"
)

// labelTexts name lines and places of drawings.
var labelTexts = map[measure.ID]text{
	"plain": "%s", "fold": "fold", "shoulder": "shoulder, %s off square",
	"outer-side": "outer side", "frame-side": "frame side", "top": "top", "underside": "underside", "rail-side": "rail side",
	"outer-arris": "corner arris", "beside-outer": "arris with the outer side", "head": "head", "foot": "foot", "head-cut": "head, level cut",
	"head-at-arris": "datum: head at the corner arris", "from-foot": "square to the arris, %s up from the foot",
	"long-and-wide": "mortise %s × %s", "deep": "%s deep at most", "from-outer": "%s to the outer side", "haunch": "haunch %s deep", "sloping-haunch": "haunch 0 to %s",
	"haunch-end": "haunch %s", "tenon-edge": "edge %s up", "tenon-end": "end of the tenon, %s off square", "cheek": "cheek at %s",
	"corner": "%s", "under-long": "underside %s", "top-long": "top %s", "foot-wide": "%s", "arch": "rise %s, radius %s",
	"hole": "%s, round", "slot": "%s, slot", "rail-here": "%s",
}

// label returns what a label says.
func label(id measure.ID, args ...any) templates.Tag {
	return templates.Tag{ID: id, Text: labelTexts[id].With(args...)}
}

// Names of drawings.
const (
	wrapLegName  text = "wrap-round of the head, %s"
	lowStripName text = "mortise strip, %s of a stretcher, %s"
	sectionName  text = "section of a leg, square to its length"
	levelName    text = "section of a leg on the level, at its head"
	leftEndName  text = "wrap-round of the left end, %s"
	rightEndName text = "wrap-round of the right end, %s"
	shapeName    text = "outer side, %s"
)

// endWords name the ends of a rail as seen from outside.
var endWords = [...]text{left: "left end", right: "right end"}

// sortNames are what rails that are alike are called: all, front and back, left and
// right.
var sortNames = map[RowKind][3]text{
	Aprons:     {"aprons", "aprons, front and back", "aprons, left and right"},
	Stretchers: {"stretchers", "stretchers, front and back", "stretchers, left and right"},
}

func (m Model) sortName(row *Row, k int) string { return sortNames[row.Kind][m.RailSorts()-1+k].With() }

// legSortNames are those of legs: all, and the two hands of a rectangle.
var legSortNames = [...]text{"legs", "legs, front left and back right", "legs, front right and back left"}

// legsOf names the legs that leg i is one of.
func (m Model) legsOf(i int) string {
	if m.LegSorts() == 1 {
		return legSortNames[0].With()
	}
	return legSortNames[1+i%2].With()
}

// passNames say what is sawn.
var passNames = map[measure.ID]text{
	"foot": "foot", "head": "head", "shoulder-outer": "left shoulder on the outer side", "shoulder-frame": "left shoulder on the frame side",
}

// leanWords say behind the name of a cut to which side the blade leans.
var leanWords = map[text]text{tiltReading: "", tiltOverReading: ", leaning over the part", tiltAwayReading: ", leaning away from it"}

// Readings of cards.
const (
	thicknessReading  text = "thickness"
	legSizeReading    text = "corner arris to either rail side"
	outerArrisReading text = "angle at the corner arris"
	innerArrisReading text = "angle at the arris between the rail sides"
	besideReading     text = "at the two arrises beside it"
	tiltReading       text = "tilt of the blade"
	tiltOverReading   text = "tilt, over the part"
	tiltAwayReading   text = "tilt, away from the part"
	standInReading    text = "for %s serves the triangle of"
	legLongReading    text = "corner arris, foot to head"
	tenonReading      text = "tenon and mortise"
	deepReading       text = "deepest, square to the side"
	wallsReading      text = "left of the head: outer walls, thick"
	postReading       text = "left of the head: post inside, thick"
	taperReading      text = "taper, to the edge"
	startReading      text = "start, from the head along the corner arris"
	footReading       text = "outer side at the foot"
	fenceReading      text = "fence to blade"
	stopReading       text = "stop to blade, along the gauge"
	endsReading       text = "overall, on the outer side at the underside"
	shouldersReading  text = "shoulder to shoulder, on the outer side at the underside"
	cheekReading      text = "depth of the shoulder"
	lowerReading      text = "off the underside, plumb"
	tenonLongReading  text = "beyond the shoulder, along the rail at most"
	upperReading      text = "off the top, plumb"
	riseReading       text = "rise of the arch"
	buttonsReading    text = "buttons on each apron"
	buttonsOf         text = "%s: %s"
	boreReading       text = "hole through the button"
	buttonReading     text = "button"
	tongueReading     text = "tongue, long × thick"
	stepReading       text = "top of the button to its tongue"
	screwReading      text = "screw"
	grooveBelow       text = "top to groove, on the frame side"
	grooveHigh        text = "groove, wide"
	grooveDeep        text = "groove, deep"
	screwsReading     text = "screws"
	headHole          text = "hole for the head, wide"
	headDeep          text = "hole for the head, deep, %s"
	shankHole         text = "hole for the shank, wide"
	headSlot          text = "slot for the head, long"
	shankSlot         text = "slot for the shank, long"
	pilotReading      text = "hole for the thread"
	pilotSizes        text = "%s or %s"
	pilotDeep         text = "into the top"
	boardsReading     text = "boards, each jointed to"
	rimReading        text = "radius, struck from the middle"
	topSizeReading    text = "long × wide"
	movesReading      text = "the top moves by"
	headsReading      text = "corner arris to that across, at the heads"
	feetReading       text = "the same at the feet"
	count             text = "%d"
)

// haunchReadings name how far a haunch runs.
var haunchReadings = [...]text{design.SquareHaunch: "haunch, along the rail", design.SlopingHaunch: "haunch, along the rail at its foot"}

// Chopping mortises.
var (
	mortiseCards = [...]text{Aprons: "Chop the mortises", Stretchers: "Chop the mortises of the stretchers"}
	mortiseTexts = [...]text{Aprons: mortiseText, Stretchers: lowMortiseText}
)

// Cards.
const (
	gaugeFromAbove text = "From above: %s%s"
	fromMaker      text = "From the maker's end of the table: the second edge"
	outerDown      text = "outer side down"
	outerUp        text = "outer side up"
	leftEndWord    text = "left end"
	rightEndWord   text = "right end"
	underEdge      text = "underside"
	topEdge        text = "top"
	frontDown      text = "front or back down"
	frontUp        text = "front or back up"
	railSideWord   text = "a rail side"
	outerSideWord  text = "an outer side"

	sectionText  text = "Plane two opposite sides parallel, to the thickness, and one edge straight. Rip the two others with the blade tilted away from the fence: first that straight edge against the fence, which stands farther off than the figure by half the spare width; then roll the leg over about its length, the sawn edge against the fence as the figure says. Mark the corner arris at once, on the end grain too."
	kiteText     text = "Plane one outer side flat; mark the section from its template on both ends, the corner arris alike, and plane or saw the three others to the lines."
	sectionTest  text = "The end of each leg lies within its template; a bevel gauge set to either corner shows no light."
	planeCaution text = "Push blocks; no part shorter than the manual of the machine allows."
	shortCaution text = "%s No part shorter than the manual of the machine allows."

	legEndsText text = "The leg lies %[1]s, %[3]s against the gauge. Saw the foot just clean: the blanks are little longer. For the head turn the leg end over end, so that it lies %[2]s, the same side against the gauge, which is turned by as much to the other side: the cuts are parallel."
	strikeText  text = "Strike the head at its length along the corner arris: a stop would meet another corner of the foot.%s"
	otherHand   text = " A saw that tilts the other way: legs of the other hand lie so, on the other side of the blade."
	otherSide   text = " A saw that tilts the other way: the other outer side down, on the other side of the blade."
	otherEnd    text = "A saw that tilts the other way: the %[1]s first, its %[2]s against the gauge, on the other side of the blade."
	otherJig    text = "A saw that tilts the other way: the jig on the other side of the blade, the leg end for end in it."
	otherFence  text = "A saw that tilts the other way has its fence on the other side."
	handsText   text = "The pictures show the legs front left and back right, the outer side to the front or back down. Legs of the other hand are mirror images: the same side down, %s against the gauge, the gauge turned to the other side."
	sawCaution  text = "Isolate the saw before setting it. Clamp the part to the gauge: a tilted blade draws it. The offcut falls free: nothing stops it between blade and fence."

	mortiseText     text = "Fold the strip round the head, its head line at the sawn head, and prick the mortises through. Chop both of a corner before the tapers are sawn, as long as the sides are flat."
	slotText        text = "Fold the strip round the head, its head line at the sawn head, and prick the slots through. They are open at the head: saw their cheeks down to the bottom, a hair inside the lines, and chop the waste out against the bottom line, before the tapers are sawn. An L of the two outer walls stays of the head, and a post inside."
	lowMortiseText  text = "Lay each strip on its rail side, its arris on that with the outer side and its end at the foot or so far up from it as it says, and prick the mortises through: those of the left end of a stretcher and of its right end have their own."
	mitredText      text = "Tenons that meet are mitred: chop each mortise to the outer wall of the other and no farther."
	mortiseLeanText text = "The walls follow the rail, not the side of the leg: sight along a bevel gauge that is set to the shoulder on its strip. On a side that is out of square the mortise measures a hair more than its chisel."
	jointHeading    text = "Two rails and their leg, drawn apart"

	taperView text = "On an outer side"

	ripText text = "Tilt the blade away from the fence. Lay each board %[1]s, its straight edge against the fence, which stands farther off than the figure by half the spare width, and rip the underside. Roll it over about its length, so that it lies %[2]s, the sawn edge against the fence as the figure says, and rip the top: both edges come out level when the rail leans."

	endText text = "Lay each rail %[1]s, its %[2]s against the gauge, and saw the %[4]s of all, just clean: the blanks are little longer. For the %[5]s turn the rail round on the table, the same side down, its %[3]s against the gauge, and turn the gauge by as much to the other side."
	atStop  text = "The tip of the sawn end meets the stop, which reaches down to the table."
	atLine  text = "The stop does not reach so far: saw to a knife line at that length."

	shoulderText text = "Knife the shoulder all round by the strip. The blade keeps its tilt. Saw the left shoulder with the outer side down, the %[1]s against the gauge; then, on the other side of the blade, with the outer side up, the same edge against the gauge, which is turned by as much to the other side. For the right shoulder turn the rail round on the table each time, the same side down, its %[2]s against the gauge, and turn the gauge again. A saw that tilts the other way: right for left. Where the table has no slot on that side saw by hand along a guide."
	uprightText  text = "Knife the shoulder all round by the strip. Saw it with the outer side down, the underside against the gauge, then with that side up and the top against the gauge, which is turned to the other side. Right shoulders are mirror images."

	tenonText  text = "Cheeks run parallel to the outer side; the edges of the tenon run level, as top and underside do. Take off the upper cut, but for a haunch where there is one."
	bridleText text = "Cheeks run parallel to the outer side; the lower edge of the tenon runs level, as the underside does. Up to the top nothing is taken off: the head of the leg is open."

	grooveView text = "An apron cut through, its top level"
	grooveText text = "Now, not when the frame is glued: on the frame side of every apron, square to that side and along the top, stopped %s short of both shoulders. A router with a straight bit and its fence against the top, in two passes."

	makeButtons text = "Buttons are bought, or sawn of an offcut with the grain along the tongue."

	stockText     text = "Plane all boards of one thickness at once, spares with them, one edge straight and square. Mark on each its outer side and its underside."
	legStockText  text = "Plane all legs square and alike, spares with them. Mark the corner arris at once, on the end grain too."
	handText      text = "They are of two hands: mark on each which outer side is for the front or back."
	writeDownText text = "Write down what comes out: %[2]s. Where it differs, put it behind %[1]s = under [frame.milled] in the design file and print again what follows, by --only milled."

	topOutlineText text = "From that rectangle saw the outline of %s sides alike, its corners struck from the middle."
	topCornersText text = "When the diagonals are alike, lay the sheet of the corner on both edges at each corner, strike its line and work the wood to it."
	roundTopText   text = "On that square strike the rim by a beam compass from the middle, where both diagonals cross. Saw it outside the line with a bandsaw by its manual or a jigsaw, guard down, and fair it."
	ovalTopText    text = "On that rectangle draw both centre lines and trace the oval by its sheet. Saw it outside the line with a bandsaw by its manual or a jigsaw, guard down, and fair it."

	rimTest text = "Both diagonals are alike before the rim is sawn, and the rim runs fair all round; a straightedge over the grain shows no light."

	underName      text = "underside, seen from below, from mid-length: %s"
	drillText      text = "Now, not when the frame is glued%s: underside up, outer side flat against the fence, so that each hole runs up in the middle of the apron. %s"
	beforeArchText text = ", and before the arches are sawn"
	boreText       text = "Bore for the head to its depth, then for the shank through to the top."
	someBoreText   text = "On aprons with a depth for the head bore for that first; then drill all for the shank through to the top. On the others the heads stand on the underside, on washers that reach over the slots."
	noBoreText     text = "Drill for the shank through to the top; the heads stand on the underside, on washers that reach over the slots."
	sidesText      text = "Mark the aprons as they will stand, front, right, back and left: their holes differ."
	slotsText      text = "Slots run across the grain of the top, as drawn: bore one hole at each end and take out the wood between them."
	atMiddle       text = "at mid-length"
	grainAlong     text = "Number the aprons as they will stand, counter-clockwise as seen from above, from any one; the grain of the top runs along apron 1."
	grainAcross    text = "Number the aprons as they will stand, counter-clockwise as seen from above, from any one; the grain of the top runs square to apron 1."
	screwText      text = "Drill for the threads through the holes of the aprons, in their line, the smaller hole in soft wood, a screw in the middle of each slot: those in round holes tight, those in slots snug, flat under the head or on a washer that fits the hole, so that the top still slides."
	screwTest      text = "No screw shows on the upper face; no shoulder moves when the screws are tight."

	frameTick     text = "frame"
	spareTick     text = "legs, spare"
	handsTick     text = "legs, spare of either hand"
	topBoardsTick text = "top boards"
	glueRectangle text = "Glue front and back, each two legs and their rails, on a flat bench%s. Then the rails between them."
	packText      text = ", strips below: %s"
	glueRegular   text = "Start every tenon in its mortise and draw all together by a band round the heads, another round the feet: no rail can be brought in later."
	glueBridled   text = "Lay out the aprons as they stand, then push each leg up on to two of them at once, along its own length: its slots are open at the head. Start all legs, then draw them up in turn."
	caulText      text = "Legs lean: the jaws of a clamp want a wedge each, of an offcut of the legs: %s."
	caulOf        text = "%s for %s"

	layRimText    text = "Lay the top upside down, the frame on it, its grain %s, every corner arris %s from the rim."
	layFirstText  text = "Lay the top upside down, the frame on it, its grain %s, middle on middle: the corner arrises of apron 1 lie %s from the rim."
	alongFront    text = "along front and back"
	alongSides    text = "along left and right"
	alongFirst    text = "along apron 1"
	squareToFirst text = "square to apron 1"
	layText       text = "Lay the top upside down, the frame on it, %s of overhang all round."
	buttonText    text = "Spread the buttons evenly; their tongues go into the grooves. On aprons that run with the grain of the top a button stands off its apron by half of what the top moves, so that it can go either way; on the others it slides along the groove. Drill for the threads in the middle of that play, the smaller hole in soft wood."
	freeText      text = "Hold it so that it can move across its grain: fast on its middle line, free to slide elsewhere."
	freeTest      text = "It neither rocks nor rattles."
	topTest       text = "No shoulder moves when the screws are tight."
)

// What the cards say.
var (
	sectionCard = assembly.CardText{Heading: "Make the legs out of square", Test: "A bevel gauge set to the corner arris shows no light from end to end.",
		Caution: planeCaution}
	stockCard = assembly.CardText{Heading: "Plane the %s", Test: "Two held together show no step.",
		Caution: planeCaution}
	legEndsCard = assembly.CardText{Heading: "Saw feet and heads", Test: "Stood on its foot, the leg leans out to both sides; a level lies flat on its head.",
		Caution: sawCaution}
	mortiseCard = assembly.CardText{Test: "An offcut as thick as the tenon slides to the bottom by hand.",
		Caution: "Clamp the leg; both hands stay behind the edge. A machine by its manual, isolated before setting."}
	taperCard = assembly.CardText{Heading: "Taper the sides that take rails", Test: "Both outer sides are %s wide at the foot.",
		Text:    "Saw one rail side on the tapering jig, an outer side down, the blade tilted as the figure says. Turn the leg end for end on to the other outer side, set the jig to that hand, its waste at the foot as before, and saw the other. Corner arris and outer sides stay straight.",
		Caution: "A jig with hold-downs; the waste falls free of it. Hands stay on its grips. Isolate the saw before setting it."}
	ripCard = assembly.CardText{Heading: "Rip the edges of the %s", Test: "With the outer side at its lean a level lies flat on the top.",
		Caution: templates.TiltedRip}
	endCard = assembly.CardText{Heading: "Saw the ends of the %s", Test: "The outer side measures %s along the underside; the ends are mirror images.",
		Caution: sawCaution}
	shoulderCard = assembly.CardText{Heading: "Saw the shoulders of the %s", Test: "All four lines of a shoulder meet at the arrises.",
		Caution: "The blade does not come through: the guard for such cuts, and push blocks. Isolate the saw before setting it."}
	tenonCard = assembly.CardText{Heading: "Cut the tenons", Test: "The tenon goes in by hand and the shoulder closes all round.",
		Caution: "A tenoning jig with a clamp, or a backsaw: never a rail on end held by hand. Isolate the saw before setting it."}
	archCard = assembly.CardText{Heading: "Saw the arches", Test: "Two aprons that are alike show no step, underside to underside.",
		Text:    "Trace the arch on the outer side and saw it square to that side, outside the line; fair it with a spokeshave.",
		Caution: "The bandsaw by its manual, guard down to the part."}
	grooveCard = assembly.CardText{Heading: "Groove the aprons for the buttons", Test: "A button pushed in, its tongue %s thick, stands a hair below the top of the apron: so its screw draws the top down.",
		Caution: "Clamp the apron; unplug the router to change its bit. The machine's manual and the usual eye protection hold here too."}
	drillCard = assembly.CardText{Heading: "Drill the aprons for the screws of the top", Test: "A screw pushed home stands %s out of the top of the apron; the top is %s thick.",
		Caution: "Clamp the apron to the fence and draw the bit often. The machine's manual and the usual eye protection hold here too."}
	topStockCard = assembly.CardText{Heading: "Make the top", Test: "Both diagonals are alike; a straightedge over the grain shows no light.",
		Text:    "Joint the edges, lay the boards with their grain one way and glue them flat, clamps above and below. When the glue is hard plane both faces to the thickness and saw to size, the long sides first.",
		Caution: "Glue by its data sheet. Saw with the guard in place, hands clear of the line of the blade; isolate it before setting."}
	glueCard = assembly.CardText{Heading: "Glue the frame", Test: "All distances across agree, at the heads and at the feet; no foot rocks.",
		Text:    "Put all together dry first and measure. Stand it on a flat surface: feet and heads are level cuts.",
		Caution: "Glue by its data sheet. Clamps only as tight as closes the joints."}
	topCard = assembly.CardText{Heading: "Put the top on",
		Caution: "Clamp what you drill; a stop on the bit keeps it from the upper face."}
)
