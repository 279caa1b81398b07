package aprons

import (
	"rodsheet/geometry/measure"
	"rodsheet/templates/piece/assembly"
	"rodsheet/templates/piece/design"
	"rodsheet/templates/wording"
)

// texts are those of the checks.
var texts = assembly.Texts{
	"aprons.clash":            {Name: "rails share no wood", Holds: "No two rails share wood in a leg.", Lacks: "Two rails that meet in a leg share wood: their corner is too narrow for them."},
	"aprons.end-on-leg":       {Name: "end of the apron on the leg", Figure: "shoulder within its side of the leg", Holds: "The shoulders lie within the sides of the legs.", Lacks: "A shoulder reaches past its side of the leg: its worst corner lies %[1]s within it."},
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
	"aprons.taper-at-stretcher": {Name: "stretchers clear of the start of the taper", Figure: "stretcher to the start of the taper", Holds: "The stretchers meet one flat side of each leg.", Lacks: "A stretcher lies across the start of the taper: its shoulder would lie on a bent side."},
	"aprons.over-arch":          {Name: "wood over the arch", Figure: "depth left over the arch", Holds: "Half of the apron or more is left over the arch.", Lacks: "Over the arch %[1]s of the apron is left; half of it is %[2]s."},
	"aprons.tilt":               {Name: "tilt of the blade", Figure: "steepest tilt", Holds: "The blade of a saw tilts as far as every cut wants.", Lacks: "A cut wants the blade tilted by %[1]s, more than a saw does: cut it by hand, to the template."},
	"aprons.blade":              {Name: "height of the blade", Figure: "blade over the table", Holds: "The blade goes through every part.", Lacks: "The blade must rise %[1]s to go through a part; it rises %[2]s at most."},
	"aprons.overhang":           {Name: "overhang of the top", Figure: "overhang over the legs", Holds: "The top covers the heads of the legs.", Lacks: "The heads of the legs stand out from under the top."},
	"aprons.tipping-load":       {Name: "load at the rim", Figure: "load that tips the table", Holds: "A hand leaned on the rim does not tip the table.", Lacks: "%[1]s at the rim tip the table; a hand leaned on it is about %[2]s."},
	"aprons.top-held":           {Name: "movement of the top", Figure: "change of the width of the top", Holds: "The top hardly moves.", Lacks: "Across its grain the top moves by %[1]s: hold it so that it can, by buttons for one."},
}

// A namer names figures and groups.
type namer struct{ assembly.Names }

func (n namer) say(id measure.ID) string { return n.Names[id].With() }

var names = namer{assembly.Names{
	"aprons.whole": "The table", "aprons.leg": "Legs",
	"aprons.apron": "Aprons", "aprons.front-apron": "Aprons, front and back", "aprons.side-apron": "Aprons, left and right",
	"aprons.stretcher": "Stretchers", "aprons.front-stretcher": "Stretchers, front and back", "aprons.side-stretcher": "Stretchers, left and right",

	"aprons.height": "height", "aprons.top": "top", "aprons.feet": "over the feet",
	"aprons.top-length": "top, length along the grain", "aprons.top-width": "top, width",
	"aprons.top-moves":   "top, change of its width with the moisture",
	"aprons.feet-length": "over the feet, front", "aprons.feet-width": "over the feet, side",
	"aprons.mass": "mass", "aprons.tipping-line": "centre to the line that it tips over", "aprons.rim-load": "load at the rim that tips it",

	"aprons.leg-resultant": "true lean from plumb", "aprons.leg-sightline": "sightline, from the line square to the front",
	"aprons.leg-length": "outer arris, head to foot", "aprons.leg-blank": "blank, squared to length",
	"aprons.leg-outer-arris": "section, corner at the outer arris", "aprons.leg-beside-arris": "section, the two corners beside it",
	"aprons.leg-inner-arris":   "section, corner at the inner arris",
	"aprons.leg-out-of-square": "section, planed out of square by", "aprons.leg-level-arris": "section on the level, corner at the outer arris",
	"aprons.leg-face": "width of an outer side", "aprons.leg-thickness": "thickness, outer side on the table",
	"aprons.leg-foot-off-square": "head and foot, off square on the outer side", "aprons.leg-foot-tilt": "head and foot, tilt of the blade",
	"aprons.leg-taper-start": "start of the taper, from the head along the outer arris", "aprons.leg-taper": "taper to the edge, on an outer side",
	"aprons.leg-foot-face": "width of an outer side at the foot",

	"aprons.rail-under": "outer side, shoulder to shoulder at the underside", "aprons.rail-top": "outer side, shoulder to shoulder at the top",
	"aprons.rail-frame-under": "frame side, shoulder to shoulder at the underside", "aprons.rail-frame-top": "frame side, shoulder to shoulder at the top",
	"aprons.rail-overall": "overall, with the tenons", "aprons.rail-deep": "depth on the outer side",
	"aprons.rail-bevel":          "top and underside, tilt of the blade",
	"aprons.rail-end-off-square": "ends of the tenons, off square on the outer side", "aprons.rail-end-tilt": "ends of the tenons, tilt of the blade",
	"aprons.rail-shoulder-off-square": "shoulders, off square on the outer side", "aprons.rail-shoulder-tilt": "shoulders, tilt of the blade",
	"aprons.rail-gauge": "shoulders, bevel on the outer side", "aprons.tenon": "tenon, thickness", "aprons.tenon-cheek": "outer side to the cheek of the tenon",
	"aprons.tenon-width": "tenon, plumb", "aprons.tenon-long": "tenon, longest along the rail",
}}

const (
	sized     wording.Text = "%s × %s"
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
	name := numbered.With(railNames[row.Kind].With(), i+1)
	if m.Design.Frame.Shape == design.Rectangle {
		name = sideNames[row.Kind][i].With()
	}
	return longPart.With(name, m.length(row.Rails[i].Blank("").Length))
}

func (m Model) topName() string {
	size, _ := m.TopSize()
	return namedSize.With(topWord.With(), m.bare(size.Length), m.bare(size.Width), m.length(size.Thickness))
}

// mendTexts say what is changed to mend a check.
var mendTexts = map[design.Key]wording.Text{
	"frame.legs.size":               "make the legs %s thick",
	"frame.legs.taper-start":        "start the taper %s from the head",
	"frame.legs.foot":               "leave %s at the foot",
	"frame.aprons.inset":            "set the aprons back by %s",
	"frame.aprons.thickness":        "make the aprons %s thick",
	"frame.aprons.tenon-length":     "make the tenons %s long",
	"frame.aprons.upper-cut":        "cut %s off the tenons at the top",
	"frame.aprons.arch":             "let the arch rise %s",
	"frame.stretchers.inset":        "set the stretchers back by %s",
	"frame.stretchers.thickness":    "make the stretchers %s thick",
	"frame.stretchers.tenon-length": "make the stretchers' tenons %s long",
	"frame.stretchers.height":       "raise or lower the stretchers to %s from the floor",
	"frame.top.overhang":            "let the top stand %s over the legs",
	"frame.length":                  "make the frame %s long",
	"frame.width":                   "make the frame %s wide",
}
