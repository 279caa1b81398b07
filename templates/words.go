package templates

import (
	"math"
	"strconv"
	"strings"

	"rodsheet/geometry/joint"
	"rodsheet/geometry/measure"
	"rodsheet/templates/wording"
)

// All sentences of the single templates, and what their parts, faces, lines and
// figures are called.

// say fills the verbs of a sentence.
func say(t wording.Text, args ...any) string { return t.With(args...) }

// tag returns a label under the words of its identity.
func tag(id measure.ID, args ...any) Tag { return Tag{id, say(labels[id], args...)} }

// figure returns a figure under the name of its identity.
func figure(id measure.ID, q measure.Quantity) Figure {
	return Figure{ID: id, Name: say(figureNames[id]), Value: q}
}

// aside is a figure that only programs are given.
func aside(f Figure) Figure {
	f.Aside = true
	return f
}

// figureIn is a figure that goes by a length round in one unit. Figures are shown
// in the unit u.
func figureIn(of, u measure.Unit, id measure.ID, q measure.Quantity) Figure {
	f := figure(id, q)
	f.Aside = of != u
	return f
}

// viewName names a view: "lap, right hand, cut face".
func viewName(v View) string {
	words := []string{say(viewNames[v.Part])}
	if v.Hand != EitherHand {
		words = append(words, handName(v.Hand))
	}
	if v.Face != "" {
		words = append(words, say(viewNames[v.Face]))
	}
	return strings.Join(words, ", ")
}

func handName(h Hand) string {
	if h == LeftHand {
		return say("left hand")
	}
	return say("right hand")
}

// viewNames names parts and faces.
var viewNames = map[measure.ID]wording.Text{
	"arc":                   "arc",
	"back":                  "back",
	"calibration-rectangle": "calibration rectangle",
	"calibration-square":    "calibration square",
	"cut-face":              "cut face",
	"end-strip":             "strip over the end",
	"face":                  "face",
	"lap":                   "lap",
	"leg":                   "leg",
	"mortise-strip":         "mortise strip",
	"outline":               "outline",
	"pin-board":             "pin board",
	"tail-board":            "tail board",
	"rail":                  "rail",
	"oval":                  "oval",
	"quarter":               "quarter",
	"reference-edge":        "reference edge",
	"right-half":            "right half",
	"ring-side":             "ring side",
	"outer-side":            "outer side",
	"segment":               "piece of the ring",
	"stave":                 "stave",
	"sightline":             "sightline",
	"slab":                  "slab from above",
	"stretcher":             "stretcher",
	"taper":                 "taper",
	"top":                   "top",
	"underside":             "underside",
	"wrap-round":            "wrap-round",
}

var figureNames = map[measure.ID]wording.Text{
	"angle.base":               "base",
	"angle.bevel":              "bevel",
	"angle.chord":              "chord at 250 mm",
	"angle.chord-10-in":        "chord at 10 in",
	"angle.reading-error-64th": "reading error, 1/64 in",
	"angle.rise-over-4-in":     "rise over 4 in",
	"angle.rise-over-10-in":    "rise over 10 in",
	"angle.rise-over-20-in":    "rise over 20 in",
	"angle.off-square":         "off square",
	"angle.reading-error":      "reading error",
	"angle.rise":               "rise",
	"angle.rise-over-100-mm":   "rise over 100 mm",
	"angle.rise-over-12-in":    "rise over 12 in",
	"angle.rise-over-24-in":    "rise over 24 in",
	"angle.rise-over-250-mm":   "rise over 250 mm",
	"angle.rise-over-500-mm":   "rise over 500 mm",
	"angle.slope":              "slope, 1 in",

	"arc.angle":        "angle at the centre",
	"arc.area":         "area over the chord",
	"arc.centre-below": "centre below the chord",
	"arc.chord":        "chord",
	"arc.length":       "length along the arc",
	"arc.radius":       "radius",
	"arc.rise":         "rise",
	"arc.sticks":       "angle between two sticks",

	"bridle.bevel":                  "bevel",
	"bridle.cheek":                  "cheek depth, each side",
	"bridle.depth":                  "depth of stretcher",
	"bridle.far-cheek":              "far cheek from the ring side",
	"bridle.glue-area":              "glue area, two cheeks",
	"bridle.leg":                    "breadth of leg",
	"bridle.leg-cut-height":         "leg cut height on its rough end",
	"bridle.leg-end":                "leg trimmed head, stretcher side, past the datum",
	"bridle.leg-length":             "leg %s length, trimmed",
	"bridle.leg-shoulder":           "leg shoulder, back",
	"bridle.leg-shoulder-far":       "leg shoulder, stretcher side",
	"bridle.off-square":             "off square",
	"bridle.over-length":            "over length at both ends",
	"bridle.splay":                  "splay",
	"bridle.stretcher-cut-height":   "stretcher cut height on its rough end",
	"bridle.stretcher-end":          "stretcher trimmed end, top",
	"bridle.stretcher-length":       "stretcher %s length, trimmed",
	"bridle.stretcher-shoulder":     "stretcher shoulder, underside",
	"bridle.stretcher-shoulder-far": "stretcher shoulder, top",
	"bridle.tenon":                  "tenon and slot width",
	"bridle.width":                  "width of stretcher, thickness of leg",

	"hopper.blade-rise-over-100-mm": "blade, off plumb over 100 mm",
	"hopper.blade-rise-over-4-in":   "blade, off plumb over 4 in",
	"hopper.bevel":                  "bevel on the outer side",
	"hopper.blade":                  "bevel of the blade to the table",
	"hopper.corner":                 "corner, in plan",
	"hopper.dihedral":               "corner, hollow side to hollow side",
	"hopper.from-plumb":             "lean, from plumb",
	"hopper.level-edges":            "level edges, tilt",
	"hopper.longer-per-100-mm":      "longer, each end, per 100 mm of width",
	"hopper.longer-per-4-in":        "longer, each end, per 4 in of width",
	"hopper.next-bevel":             "second slope, bevel on the outer side",
	"hopper.next-from-plumb":        "second slope, lean from plumb",
	"hopper.next-level-edges":       "second slope, level edges, tilt",
	"hopper.next-longer-per-100-mm": "second slope, longer, per 100 mm",
	"hopper.next-longer-per-4-in":   "second slope, longer, per 4 in",
	"hopper.next-off-square":        "second slope, gauge off square",
	"hopper.next-slope":             "second slope, from level",
	"hopper.off-square":             "gauge, off square",
	"hopper.sides":                  "sides",
	"hopper.slope":                  "slope, from level",
	"hopper.tilt":                   "blade, tilt",

	"lap.angle":             "angle between the parts",
	"lap.area":              "lap area",
	"lap.bevel":             "bevel",
	"lap.blade-height":      "blade height",
	"lap.corner-shift":      "corner shift",
	"lap.crossing-width":    "crossing width",
	"lap.depth":             "depth of stock",
	"lap.edge-length":       "edge length",
	"lap.far-far-edge":      "far shoulder, far edge",
	"lap.far-reference":     "far shoulder, reference edge",
	"lap.kerf":              "kerf",
	"lap.near-far-edge":     "near shoulder, far edge",
	"lap.near-reference":    "near shoulder, reference edge",
	"lap.off-square":        "off square",
	"lap.spacer":            "spacer",
	"lap.stop":              "stop, first cut",
	"lap.usual-rule-wide":   "usual rule too wide by",
	"lap.usual-spacer-long": "usual spacer too long by",
	"lap.width":             "width",

	"dovetail.bevel":           "bevel of the slope",
	"dovetail.board-slope":     "slope of the boards from level",
	"dovetail.corner":          "corner, inside",
	"dovetail.end-off-square":  "ends off square through the thickness",
	"dovetail.face-off-square": "ends off square across the board",
	"dovetail.half-pin":        "half pin at the edges, narrowest",
	"dovetail.lap":             "lap before the tails",
	"dovetail.pin":             "pin, narrowest",
	"dovetail.pin-board":       "thickness of the pin board",
	"dovetail.pin-length":      "pins, along their board",
	"dovetail.pin-root":        "pin, widest",
	"dovetail.root":            "tail, narrowest",
	"dovetail.slope":           "slope to the grain",
	"dovetail.slope-one-in":    "slope, 1 in",
	"dovetail.tail":            "tail, widest",
	"dovetail.tail-board":      "thickness of the tail board",
	"dovetail.tail-length":     "tails, along their board",
	"dovetail.tails":           "tails",
	"dovetail.width":           "width of the boards",

	"mortise.above":               "wood above the mortise",
	"mortise.across":              "mortise across the leg",
	"mortise.behind":              "wood behind the mortise",
	"mortise.bevel":               "bevel, outer side",
	"mortise.cheek":               "cheek depth, each side",
	"mortise.depth":               "depth of rail",
	"mortise.edge-off-square":     "shoulder off square across underside and top",
	"mortise.end-off-square":      "ends of the mortise off square",
	"mortise.frame-wood":          "wood beside the mortise, frame side",
	"mortise.from-head":           "head of leg to top of rail",
	"mortise.from-outer":          "outer side of leg to mortise",
	"mortise.glue-area":           "glue area, two cheeks",
	"mortise.haunch-length":       "haunch, along the rail",
	"mortise.inset":               "outer side of leg to that of the rail",
	"mortise.into-leg":            "depth of the mortise, square to the leg",
	"mortise.lean-foot":           "mortise off square, towards the foot",
	"mortise.lean-outer":          "mortise off square, towards the outer side",
	"mortise.leg":                 "leg, square to its rail side",
	"mortise.leg-width":           "width of its rail side",
	"mortise.length":              "tenon length, along the rail",
	"mortise.long-side":           "mortise along the leg",
	"mortise.lower-edge":          "lower edge of the tenon, from the underside",
	"mortise.off-square":          "shoulder off square across outer and frame side",
	"mortise.outer-wood":          "wood beside the mortise, outer side",
	"mortise.over-length":         "over length at the end",
	"mortise.rake":                "rake",
	"mortise.shoulder-far":        "shoulder at top and frame side, from the datum",
	"mortise.shoulder-frame-side": "shoulder at underside and frame side, from the datum",
	"mortise.shoulder-top":        "shoulder at top and outer side, from the datum",
	"mortise.splay":               "splay",
	"mortise.tenon":               "tenon thickness",
	"mortise.turn":                "turn of the rail side in plan",
	"mortise.upper-edge":          "upper edge of the tenon, from the underside",
	"mortise.upper-end":           "head of leg to mortise, at its outer side",
	"mortise.width":               "width of rail",
	"oval.area":                   "area",
	"oval.end-centre":             "end centres from the middle",
	"oval.end-radius":             "radius at the ends",
	"oval.focus":                  "foci from the middle",
	"oval.inset":                  "inset line inside the rim",
	"oval.inset-area":             "inset line, area",
	"oval.inset-length":           "inset line, length",
	"oval.inset-rim":              "inset line, all round",
	"oval.inset-width":            "inset line, width",
	"oval.join-across":            "joins from the long centre line",
	"oval.join-along":             "joins from the short centre line",
	"oval.join-angle":             "line of a join, to the long centre line",
	"oval.length":                 "length",
	"oval.rim":                    "rim, all round",
	"oval.side-centre":            "side centres from the middle",
	"oval.side-radius":            "radius at the sides",
	"oval.string":                 "string, all round",
	"oval.width":                  "width",

	"scale.across":             "rectangle, across the feed",
	"scale.along":              "rectangle, along the feed",
	"scale.diagonal":           "diagonal",
	"scale.rectangle-diagonal": "rectangle, diagonal",
	"scale.side":               "side",

	"segments.bevel":      "bevel",
	"segments.board":      "width of board",
	"segments.inner":      "inner size",
	"segments.kerf":       "kerf",
	"segments.off-square": "gauge, off square",
	"segments.opens":      "last joint opens, ends off by 0.1°",
	"segments.outer":      "outer size",
	"segments.outer-side": "outer side",
	"segments.pieces":     "pieces",
	"segments.ring-side":  "ring side",
	"segments.stock":      "length of board, all pieces",

	"staves.blade":     "bevel of the blade to the table",
	"staves.bottom":    "outside at the bottom",
	"staves.ends":      "level ends, tilt",
	"staves.height":    "height",
	"staves.hollow":    "hollow side narrower by",
	"staves.inside":    "least size inside",
	"staves.long":      "length of a stave",
	"staves.narrow":    "narrow end, outer side",
	"staves.pieces":    "staves",
	"staves.thickness": "thickness",
	"staves.tilt":      "edges, tilt",
	"staves.to-edge":   "to the edge, each side",
	"staves.top":       "outside at the top",
	"staves.wide":      "wide end, outer side",

	"sightline.ahead":       "foot out, rake",
	"sightline.arris":       "square leg, angle at the leading arris",
	"sightline.aside":       "foot out, splay",
	"sightline.bevel":       "bevel on the slab",
	"sightline.to-edge":     "sightline to the edge",
	"sightline.height":      "height",
	"sightline.length":      "length along the leg",
	"sightline.level-front": "level cut, front and back, off square",
	"sightline.level-side":  "level cut, the two sides, off square",
	"sightline.out":         "foot out, along the sightline",
	"sightline.rake":        "rake",
	"sightline.resultant":   "resultant",
	"sightline.sightline":   "sightline from the fore-and-aft line",
	"sightline.splay":       "splay",

	"taper.both-per-100-mm": "both faces together, per 100 mm",
	"taper.both-per-foot":   "both faces together, per foot",
	"taper.cut":             "length of cut",
	"taper.foot":            "foot",
	"taper.included":        "included angle of both faces",
	"taper.length":          "length",
	"taper.loss":            "loss at the foot, one face",
	"taper.per-100-mm":      "one face, per 100 mm",
	"taper.per-foot":        "one face, per foot",
	"taper.run":             "length of taper",
	"taper.start":           "start",
	"taper.to-edge":         "to the edge, one face",
	"taper.top":             "top",

	"top.area":          "area",
	"top.clip":          "clipped off each side of a corner",
	"top.corner-radius": "corner radius",
	"top.diameter":      "diameter",
	"top.length":        "length",
	"top.rim":           "rim, all round",
	"top.width":         "width",
}

// Titles, headings and notes.
const (
	angleTitle     wording.Text = "angle %s"
	anglesTitle    wording.Text = "Angles %s"
	andRest        wording.Text = "%s and %s"
	nMore          wording.Text = "%d more"
	lapTitle       wording.Text = "Half-lap: %s crossed by %s at %s"
	bridleTitle    wording.Text = "Corner bridle, leg splayed %s"
	taperTitle     wording.Text = "Taper, %s: %s to %s over %s"
	topTitle       wording.Text = "Top, %s"
	sightlineTitle wording.Text = "Leg with a rake of %s and a splay of %s"
	hopperTitle    wording.Text = "Hopper of %s sides at %s from level, %s"
	segmentsTitle  wording.Text = "Ring of %s pieces, %s, %s over %s"
	stavesTitle    wording.Text = "Vessel of %s staves, %s to %s, %s high"

	hopperTwoTitle wording.Text = "Hopper, sides at %s and %s from level, %s"
	cornerTitle    wording.Text = "Corner of %s, sides at %s from level, %s"

	scaleTitle wording.Text = "Proof of scale"
	arcTitle   wording.Text = "Arc over %s, rise %s"

	angleHeading       wording.Text = "angle %s"
	anglesHeading      wording.Text = "angles %s and %s"
	bevelHeading       wording.Text = "%s: bevel %s"
	inHand             wording.Text = "%s, %s"
	figuresHeading     wording.Text = "Figures"
	sawHeading         wording.Text = "Setting the saw"
	handsHeading       wording.Text = "Hands"
	workHeading        wording.Text = "Order of work"
	holdingHeading     wording.Text = "Holding the part"
	anglePoints        wording.Text = "%s, set out by two points"
	taperPointsHeading wording.Text = "Set out by two points"
	taperHeading       wording.Text = "Taper"
	cutsHeading        wording.Text = "Order of cuts"
	bevelsHeading      wording.Text = "Bevels"
	cautionHeading     wording.Text = "Caution"
	offsetsHeading     wording.Text = "Offsets, %s"
	topHeading         wording.Text = "Top"
	elevationsHeading  wording.Text = "How the leg looks"
	boringHeading      wording.Text = "Boring"
	sideHeading        wording.Text = "A side at %s, its outer side up"
	cornerHeading      wording.Text = "The corner, end on"
	gaugeName          wording.Text = "gauge"
	gaugeOfSlope       wording.Text = "gauge for the sides at %s"
	bladeName          wording.Text = "blade to table"

	resultantName     wording.Text = "gauge on the sightline"
	topPlanHeading    wording.Text = "Plan"
	topCornersHeading wording.Text = "Corners"
	topWorkHeading    wording.Text = "Order of work"
	arcHeading        wording.Text = "Arc"
	arcWorkHeading    wording.Text = "To strike it"
	ovalHeading       wording.Text = "Oval"
	strikeHeading     wording.Text = "To strike it"

	drawnAsSupplement wording.Text = "%s is drawn as its supplement, bevel %s: the same line, read from the other side"
	drawnOnce         wording.Text = "%s is asked for more than once and drawn once"
	beyondDatum       wording.Text = "on the far edge the near shoulder falls %s beyond the datum; if the part ends there, the lap is open"
	noRectangle       wording.Text = "no calibration rectangle: it needs a sheet of A4 or letter size, upright, or a larger one"

	degreesAndMinutes wording.Text = "%s = %s"
	equals            wording.Text = "%s = %s"
	toTheEdge         wording.Text = "to the edge"
	slopeName         wording.Text = "slope"
	byOffSquare       wording.Text = "its %s"
	slipCosts         wording.Text = "a slip of %s at the far end costs"
	oneIn             wording.Text = "1 in %s"
	tenthsOfMM        wording.Text = "%.1f mm"
	roundSize         wording.Text = "%s round"
)

// Of mortise and tenon.
const (
	mortiseTitle     wording.Text = "Mortise and tenon%s%s"
	mortiseLean      wording.Text = ", leg splayed %s"
	mortiseRake      wording.Text = ", raked %s"
	mortiseHeading   wording.Text = "Mortise"
	mortisingHeading wording.Text = "Mortising"
	thinWood         wording.Text = "%s: %s; under %s is little"
)

// Of dovetails.
const (
	dovetailThrough wording.Text = "Dovetails, through: %s on %s"
	dovetailLapped  wording.Text = "Dovetails, lapped: %s on %s"
	setOutHeading   wording.Text = "Tails across the board, %s"
	shortGrain      wording.Text = "slope %s: the corners of the tails are short grain and break easily; 1:6 to 1:8 is usual"
	thinLap         wording.Text = "lap before the tails: %s; under %s the chisel easily shows"
	narrowPin       wording.Text = "pins of %s need a thin saw; %s is the usual least"
)

// labels is what lines and places are called.
var labels = map[measure.ID]wording.Text{
	"across-feed":                "across the feed, %s",
	"along-edge":                 "%s along the edge",
	"along-line":                 "%s along the line",
	"along-feed":                 "along the feed, %s",
	"back":                       "back: reference edge",
	"base":                       "base %s",
	"beyond-slope":               "%s on the other side of the slope",
	"bevel":                      "bevel %s",
	"between-hollow-sides":       "%s",
	"centre-line":                "centre line",
	"centre-of-hole":             "centre of the hole",
	"chord":                      "chord %s",
	"chord-end":                  "end of the chord of %s, towards the centre",
	"cheek-at":                   "cheek at %s",
	"corner-sets":                "bevel %s: %s off square across an edge",
	"corner-to-edge":             "%s to the edge",
	"corner-n":                   "%s",
	"edge-of-slab":               "edge of the slab, where the foot leans out",
	"edge-to-corner":             "edge to corner %s",
	"grain-at-corner":            "grain, at corner %s",
	"sharp-corner":               "corner %s: %s%s",
	"corner-shift":               "corner shift %s",
	"crossing-centre":            "crossing centre",
	"crossing-centre-at":         "crossing centre, at %s",
	"cut":                        "bevel %s, %s off square",
	"cut-face":                   "cut face",
	"cut-line-to-edge":           "cut line, %s to the edge",
	"cut-or-strike":              "cut, or strike on a board from its working edge",
	"datum":                      "datum",
	"deep":                       "%s deep",
	"diagonal":                   "%s",
	"edge-length":                "edge length %s",
	"end-of-tenon":               "end of the tenon, %s from the shoulder",
	"far-edge":                   "far edge",
	"far-shoulder":               "far shoulder",
	"frame-side":                 "frame side",
	"from-edge":                  "%s",
	"end-centre":                 "E",
	"either-edge":                "edge of the blank, either",
	"foot-end":                   "foot",
	"foot-leans":                 "the foot leans this way",
	"foot-leans-along":           "the foot leans along this line",
	"front-edge":                 "front edge of the slab",
	"fore-and-aft":               "fore-and-aft line",
	"from-the-front":             "from the front",
	"from-the-side":              "from the side",
	"fed-along":                  "the sheet is fed along this arrow",
	"first-diagonal":             "first diagonal, %s",
	"focus":                      "focus",
	"fold":                       "fold",
	"from-head":                  "%s from the head",
	"from-outer-side":            "%s from the outer side",
	"grain":                      "grain",
	"hole-in":                    "%s",
	"gauge-line":                 "gauge line, %s from the end",
	"hollow-side":                "hollow side",
	"haunch":                     "haunch",
	"head":                       "head of the leg",
	"inset":                      "%s inside the rim",
	"join-line":                  "line of the join, %s to the long centre line",
	"joint-length":               "%s",
	"leg-back":                   "back",
	"line-off-square":            "%s off square",
	"lower-edge":                 "lower edge",
	"long-and-wide":              "%s long, %s wide",
	"long-centre-line":           "long centre line, %s from the middle",
	"measure-all":                "measure all sides and both diagonals",
	"mid-chord":                  "mid-chord, rise %s",
	"near-shoulder":              "near shoulder",
	"outer-side":                 "outer side",
	"position-on-far-edge":       "%s, %s",
	"position-on-reference-edge": "%s, %s",
	"radius":                     "radius %s",
	"rake":                       "rake %s",
	"rail-here":                  "rail",
	"rail-side":                  "rail side",
	"reference-arris":            "reference edge: on the arris of the straight faces",
	"reference-edge":             "reference edge",
	"registration-edge":          "gauge edge",
	"ring-side":                  "ring side",
	"rise":                       "rise %s",
	"room-for-stock":             "room for the gauge's stock",
	"runs-on":                    "runs on: %s proud",
	"saw-here":                   "saw here, %s over length",
	"second-diagonal":            "second diagonal, %s",
	"short-centre-line":          "short centre line, %s from the middle",
	"shoulder":                   "shoulder",
	"side":                       "%s",
	"sightline":                  "sightline",
	"sightline-at":               "%s",
	"splay":                      "splay %s",
	"side-centre":                "S",
	"side-of-top":                "side %s%s",
	"slot-bottom":                "slot bottom",
	"socket-n":                   "socket %s",
	"square-line-at":             "square line, at %s",
	"start-at-top":               "start, at the top end",
	"start-from-top":             "start, %s from the top end",
	"stretcher-side":             "stretcher side",
	"tilt-of-blade":              "tilt %s",
	"tail-n":                     "tail %s",
	"upper-edge":                 "upper edge",
	"tenon-edge-at":              "edge of the tenon at %s",
	"top":                        "top",
	"top-of-stretcher":           "top of the stretcher",
	"trim-line":                  "trim line",
	"underside":                  "underside",
	"offset":                     "%s: %s",
	"on-a-board":                 "on a board",
	"edge":                       "edge",
	"square-line":                "square",
	"waste":                      "waste",
	"width-at-foot":              "foot %s",
	"width-at-top":               "top %s",
	"board-wide":                 "board %s",
	"edge-tilted":                "edge: tilt %s",
	"narrow-end":                 "narrow end",
	"narrow-end-wide":            "narrow end %s",
	"outer-side-long":            "outer side %s",
	"ring-side-long":             "ring side %s",
	"rounded-to":                 "radius %s",
	"wide-end":                   "wide end %s",
	"half-outer-side":            "half of the outer side, %s",
	"half-ring-side":             "half of the ring side, %s",
	"other-half":                 "centre line: turned over about it the sheet draws the other half",
}

// Parts of labels, and what tables call the same.
const (
	datum          wording.Text = "datum"
	sharpClipped   wording.Text = " to the sharp corners, clipped %s"
	sharpRounded   wording.Text = " to the sharp corners, rounded %s"
	cornerClipped  wording.Text = ", clipped %s"
	cornerRounded  wording.Text = ", rounded %s"
	acrossFeed     wording.Text = "across the feed"
	alongFeed      wording.Text = "along the feed"
	firstDiagonal  wording.Text = "first diagonal"
	secondDiagonal wording.Text = "second diagonal"
)

// SingleLap is what the lines of a lap are called where nothing is known of the
// part that it stands on.
func SingleLap() LapNames {
	return LapNames{
		Reference: tag("reference-edge"), Far: tag("far-edge"),
		Near: tag("near-shoulder"), Other: tag("far-shoulder"), Datum: tag("datum"),
	}
}

func stretcherSides() partSides {
	return partSides{"stretcher", "underside", tag("underside"), tag("top"), tag("ring-side"), tag("outer-side")}
}

func legSides() partSides {
	return partSides{"leg", "back", tag("back"), tag("stretcher-side"), tag("ring-side"), tag("outer-side")}
}

// gaugeWords says how a triangle is used. It is printed once.
func gaugeWords(bothHands bool) Panel {
	hands := say("Turn the gauge over for the other hand.")
	if bothHands {
		hands = say("Right hand: with the gauge edge towards you the slope rises to the right. Left hand: to the left.")
	}
	return Panel{Heading: say("Setting a bevel gauge"), Text: []string{
		say("Stock of the gauge on the triangle's gauge edge, blade along the slope: the bevel of the lower corner. Stock on the upright side: that of the upper one. %s", hands),
		say("On an edge it strikes off square by the other corner's figure; so is a mitre gauge turned."),
		say("Proof: strike from both sides of a straight board; the lines are equal and opposite."),
	}}
}

// gaugeInShort says the same where there is more to say.
func gaugeInShort() Panel {
	return Panel{Heading: say("Setting a bevel gauge"), Text: []string{
		say("Stock of the gauge on the triangle's gauge edge or upright side, blade along the slope; turn it over for the other hand. Proof: struck from both sides of a straight board the lines are equal and opposite."),
	}}
}

// pointWords says how an angle is set out that has no triangle, and why.
func (g gauge) pointWords() []string {
	l := g.line()
	from := say("its working edge")
	if g.Rise() > g.Base {
		from = say("a line square to the working edge")
	}
	onPaper := l.Run * math.Tan(AngleOnPaper)
	return []string{
		say("On a wide straight board mark one point on %s and, %s along it, another one %s from it, with a knife. Lay a straight edge through both, strike the line, and set the gauge to that.",
			from, g.length(l.Run), g.length(l.AtEnd)),
		say("No triangle: %s of paper would be off by %s at the far point.",
			say("±%s", angleText(AngleOnPaper)), g.length(g.unit.Round(math.Round(10*onPaper)/10, math.Round(32*onPaper/measure.MillimetresPerInch)/32))),
	}
}

// steps is the order of work at the saw.
func (t lapTemplate) steps() []string {
	first := say("4. First cut, the far shoulder: saw to the template line and set the stop against the end.")
	if t.At > 0 {
		first = say("4. First cut, the far shoulder: datum end against the stop, the stop %s from the blade, measured along the fence.", t.length(t.Stop()))
	}
	return []string{
		say(isolate),
		say("2. Blade height %s, half the stock. Prove it on two offcuts of the same milling: lapped, they come flush.", t.length(t.BladeHeight())),
		say("3. Mitre gauge %s off square; a bevel gauge laid to the edge shows bevel %s. Reference edge on the fence, the face to be cut down. Swing the gauge so that the blade runs along the line of the template.",
			measure.Angle(t.OffSquare()).Text(t.Unit), measure.Angle(t.Bevel()).Text(t.Unit)),
		first,
		say("5. Second cut, the near shoulder: spacer %s between part and stop. %s", t.length(t.Spacer()), t.usualRule()),
		say("6. Take out the rest in passes between the two cuts. Never trap an offcut between fence and blade."),
		say("7. Cut a test lap first, in an offcut of the same milling. The crossing part must go in by hand without shake, and the faces come flush. Too tight: lengthen the spacer. Too loose: shorten it."),
	}
}

const isolate wording.Text = "1. Isolate power before setting. Follow the machine's manual and keep its guards on."

// usualRule says what the shop rule would do at this angle.
func (t lapTemplate) usualRule() string {
	square, along := t.UsualRuleExcess()
	if square == 0 {
		return say("The usual rule, edge length less the kerf, gives the same at 90°.")
	}
	return say("The usual rule, edge length less the kerf, makes it %s too long and the lap %s too wide at this angle: the blade crosses the edge slanting and takes more than its kerf.",
		t.length(along), t.length(square))
}

// lapHands says which setting gives which lean.
func lapHands(otherHand float64) []string {
	return []string{
		say("Positions are from the datum, along the edge they name."),
		say("The template shows the face that is cut. Both parts of one crossing take the same hand, each on its own cut face. Where their widths differ, the part that crosses has width and crossing width exchanged."),
		say("One gauge setting gives two laps on a part. Turned end for end, the same face down, it repeats the same lean on the same face; the other edge comes to the fence, so measure from the other end along that edge."),
		say("Tumbled end over end, the other face down and the same edge on the fence, it gives the lap on the other face; seen from the first face it leans the other way."),
		say("Rolled about its length, the other edge is on the fence and the stop no longer serves."),
		say("For the other hand swing the gauge to the other side of square; its template is that of %s.", angleText(otherHand)),
	}
}

// tongue names what the end of a part is made into.
func tongue(e joint.BridleEnd) string {
	if e.Slot {
		return say("slot")
	}
	return say("tenon")
}

// bridleSteps is the order of work.
func bridleSteps(b joint.Bridle, s Setting) []string {
	u := s.Unit
	length := func(mm float64) string { return measure.Length(mm).Text(u) }
	slotted, tenoned := say("stretcher"), say("leg")
	slot, tenon := b.Stretcher(), b.Head()
	if b.Mortise == joint.MortiseInLeg {
		slotted, tenoned = tenoned, slotted
		slot, tenon = tenon, slot
	}
	cheek, _ := tenon.Cheeks()
	steps := []string{
		say(isolate),
		say("2. Mill stretchers, legs and some spare length together. Cut the whole joint in offcuts of that milling first: the fit depends on their thickness, not on the drawing."),
		say("3. Saw the ends %s off square, bevel %s, %s beyond the trim line. Stretcher and leg have the same angle.",
			measure.Angle(b.Angle).Text(u), measure.Angle(math.Pi/2-b.Angle).Text(u), length(b.Long)),
		say("4. Knife the shoulders round all four sides from the wrap-round. Where they do not meet at an arris the paper has slipped."),
		say("5. Slot in the %s: %s wide, in the middle of the thickness. Standing on its rough end it is cut %s high, square to the bottom of the slot.",
			slotted, length(slot.Tenon), length(slot.CutHeight())),
		say("6. Tenon on the %s: take %s off ring side and outer side, from the shoulder to the end. For the outer side swing the gauge to the same angle on the other side of square.",
			tenoned, length(cheek)),
		say("7. Fit: the tenon slides in by hand and stays when the joint is lifted. Pare the cheeks, not the shoulder."),
		say("8. Both ends stand about %s proud. Glue up, and trim them flush once the glue is hard: the stretcher to the leg's back, the head to the stretcher's top.",
			length(b.Long)),
		say("Datum: the corner of the trimmed end, on the stretcher the lower one, on the leg the one at its back. The trim line is for after glue-up."),
		say("Right hand: the corner on the right as you look at the ring side, foot down. Stretcher and leg have their ring sides to the same way, and a stretcher with a leg at both ends takes one of each hand."),
	}
	if !s.Full {
		steps = append(steps, say("The joint is alike from both sides: for the left hand wrap the same template with ring side and outer side exchanged."))
	}
	return steps
}

// bridleHolding is how an angled part is held upright.
func bridleHolding(b joint.Bridle, u measure.Unit) []string {
	lean := say("The part stands square on its end.")
	if b.Angle > 0 {
		lean = say("Standing on its rough end the part leans %s. Clamp it in a tenoning jig against a filler strip sawn at that angle; for the other side the strip goes to the other side.",
			measure.Angle(b.Angle).Text(u))
	}
	return []string{
		lean,
		say("The jig slides along the fence; a featherboard holds it there. Hands stay on the jig, never above or beside the cut."),
		say("Back the far side with waste wood so that it does not break out."),
	}
}

// title names the joint and its boards.
func (t dovetailTemplate) title() string {
	kind := dovetailThrough
	if t.Lap > 0 {
		kind = dovetailLapped
	}
	tails := say("%d tails", t.Tails)
	if t.Tails == 1 {
		tails = say("one tail")
	}
	return say(kind, tails, t.length(t.Width))
}

func setOutHead() []string {
	return []string{say("tail"), say("end, lower"), say("end, upper"), say("root, lower"), say("root, upper")}
}

// warnings says what is at the edge of what wood bears (common practice, no source).
func (t dovetailTemplate) warnings() (out []string) {
	lap, pin := t.Unit.Round(4, 5.0/32), t.Unit.Round(3, 1.0/8)
	if t.Slope > math.Atan(1.0/5) {
		out = append(out, say(shortGrain, angleText(t.Slope)))
	}
	if t.Lap > 0 && t.Lap < lap {
		out = append(out, say(thinLap, t.length(t.Lap), t.length(lap)))
	}
	if narrow := math.Min(t.Pin, t.HalfPin); narrow < pin {
		out = append(out, say(narrowPin, t.length(narrow), t.length(pin)))
	}
	return out
}

// steps is the order of work.
func (t dovetailTemplate) steps() []string {
	face, thick := t.TailEnd().OffSquare()
	ends := say("square all round")
	if math.Abs(thick) > 1e-9 {
		ends = say("%s off square through the thickness, the %s the longer", angleText(math.Abs(thick)), t.longer(thick))
	}
	if math.Abs(face) > 1e-9 {
		ends = say("%s off square across the board, the upper edge the longer, and %s through the thickness, the %s the longer",
			angleText(math.Abs(face)), angleText(math.Abs(thick)), t.longer(thick))
	}
	saw := say("4. Saw the tails square through the board, in the waste beside the lines.")
	if math.Abs(thick) > 1e-9 {
		saw = say("4. Saw the tails along the grain of the pin board: from the line on the outer side to that on the hollow side, which is not square to the face.")
	}
	chop := say("5. Chop the waste from both sides to the middle, by the gauge lines.")
	if t.Lap > 0 {
		chop = say("5. The sockets of the pin board stop %s behind its outer side: saw slanting to both lines, then chop and pare. Nothing is cut on the outer side.", t.length(t.Lap))
	}
	out := []string{
		say(isolate),
		say("2. Mill both boards flat and to one width, and saw the ends %s. Mark the outer sides and the lower edges. Try the joint in offcuts of the same milling.", ends),
		say("3. Fold the strips over the ends, the folds on the arrises, and knife the lines; prick the corners through. Gauge the lines of the roots round the boards."),
		saw, chop,
		say("6. The pins may as well be scribed from the tails once these are cut: that is truer than any paper. Saw beside the line, in the waste."),
		say("7. Pare to fit: the tail board slides on along the grain of the pin board, by taps on a block and all its width at once."),
		say("Clamp the board; both hands stay behind the edge of the chisel. With a router follow its manual and that of the jig; a bit fixes the slope."),
	}
	if !t.upright() {
		out = append(out, say("Right hand: the right end of a board as you look at its outer side, lower edge down. A right end of a tail board meets a left end of a pin board."))
	}
	return out
}

// longer names the face that reaches farther where an end is off square through the
// thickness.
func (t dovetailTemplate) longer(thickness float64) string {
	if thickness > 0 {
		return say("outer side")
	}
	return say("hollow side")
}

// title names the joint and its leans.
func (t mortiseTemplate) title() string {
	splay, rake := "", ""
	if t.Splay != 0 {
		splay = say(mortiseLean, angleText(t.Splay))
	}
	if t.Rake != 0 {
		rake = say(mortiseRake, angleText(t.Rake))
	}
	return say(mortiseTitle, splay, rake)
}

// thin says where little wood is left of the leg.
func (t mortiseTemplate) thin() (out []string) {
	least := t.Unit.Round(joint.ThinWood, 1.0/4)
	for _, f := range t.figures() {
		wood := f.ID == "mortise.above" || f.ID == "mortise.behind" || f.ID == "mortise.outer-wood" || f.ID == "mortise.frame-wood"
		if wood && !f.Aside && f.Value.Value < least {
			out = append(out, say(thinWood, f.Name, f.Value.Text(t.Unit), t.length(least)))
		}
	}
	return out
}

// slants says how far the shoulder runs off square, for those ways that it does.
func (t mortiseTemplate) slants() string {
	s := t.Shoulder()
	face, edge := angleText(math.Abs(s.Face)), angleText(math.Abs(s.Edge))
	switch {
	case s.Face != 0 && s.Edge != 0:
		return say("%s off square across the outer side and %s across the underside", face, edge)
	case s.Face != 0:
		return say("%s off square across the outer side, square across underside and top", face)
	case s.Edge != 0:
		return say("%s off square across the underside, square across outer and frame side", edge)
	}
	return say("square all round")
}

// steps is the order of work at the rail.
func (t mortiseTemplate) steps() []string {
	outer, _ := t.Cheeks()
	end := say("to length")
	if t.Through() {
		end = say("%s over length", t.length(t.RoughLength()-t.Length()))
	}
	steps := []string{
		say(isolate),
		say("2. Chop the mortise first, and fit the tenon to it. Cut the whole joint in offcuts of the same milling before the parts."),
		say("3. Saw the end of the rail parallel to the shoulder, %s: %s.", end, t.slants()),
		say("4. Knife the shoulder round all four sides from the wrap-round. Where the lines do not meet at an arris the paper has slipped."),
		say("5. Gauge the cheeks from the outer side, %s deep, and saw them to the shoulder. Then saw the edges of the tenon.", t.length(outer)),
	}
	switch t.Haunch {
	case joint.SquareHaunch:
		steps = append(steps, say("6. Leave the haunch %s long, parallel to the shoulder. Chop its groove in the leg as deep, up to the top of the rail.", t.length(t.Stub())))
	case joint.SlopingHaunch:
		steps = append(steps, say("6. Saw the haunch from %s at the tenon to nothing at the top. Its groove in the leg slopes alike.", t.length(t.Stub())))
	}
	steps = append(steps, say("Fit: the tenon goes in by hand and stays. Pare the cheeks, not the shoulder. The end of a blind tenon stays clear of the bottom by %s: chop the mortise so much deeper, if the wood behind it allows.", t.length(t.Unit.Round(1.5, 1.0/16))))
	if t.Through() {
		steps = append(steps, say("The tenon comes out at the back: trim it flush once the glue is hard."))
	}
	if !t.Full && t.Symmetric() {
		steps = append(steps, say("The rail is alike from outer side and frame side: for its other end wrap the same template with the two exchanged."))
	}
	return append(steps, say("Right hand: the end on the right as you look at the outer side, foot down. A rail takes one of each hand, and so do the two legs it joins."))
}

// mortising is the order of work at the leg.
func (t mortiseTemplate) mortising() []string {
	foot, out := t.Lean()
	side := say("outer side")
	if out < 0 {
		side = say("frame side")
	}
	var leans []string
	if foot != 0 {
		leans = append(leans, say("%s off square towards the foot", angleText(foot)))
	}
	if out != 0 {
		leans = append(leans, say("%s off square towards the %s", angleText(math.Abs(out)), side))
	}
	wedge := say("The mortise is square to the rail side.")
	if len(leans) > 0 {
		wedge = say("The mortise follows the rail: it runs %s. Wedge the leg up so far under an upright bit or chisel, or work to a bevel gauge stood on the leg.",
			wording.And(leans...))
	}
	work := say("Bore out the waste %s deep, then pare to the knife lines; mark the depth on the bit.", t.length(t.IntoLeg()))
	if t.Through() {
		work = say("Work from both sides to the middle, by the lines on rail side and back, so that nothing breaks out.")
	}
	return []string{
		say("Lay the strip on the rail side of the leg, its head at the head, the fold on the arris with the outer side, and knife the outline."),
		wedge,
		work,
		say("Leave the leg long above the mortise until after glue-up: the end grain there splits easily. Clamp the leg down; both hands behind the edge of the chisel."),
	}
}

// faces names the tapered faces.
func (t taperTemplate) faces() string {
	switch t.Faces {
	case joint.AdjacentFaces:
		return say("two adjacent faces")
	case joint.OppositeFaces:
		return say("two opposite faces")
	case joint.FourFaces:
		return say("four faces")
	}
	return say("one face")
}

// reference names what the taper is counted from.
func (t taperTemplate) reference() string {
	if t.Faces.Symmetric() {
		return say("centre line")
	}
	return say("straight edge")
}

// referenceEdge names the edge y = 0 of the blank.
func (t taperTemplate) referenceEdge() Tag {
	if t.Faces == joint.AdjacentFaces {
		return tag("reference-arris")
	}
	return tag("reference-edge")
}

func offsetsHead(symmetric bool) []string {
	if symmetric {
		return []string{say("from the top end"), say("width"), say("each side of the centre line"), say("from each edge")}
	}
	return []string{say("from the top end"), say("from the reference edge"), say("to cut away")}
}

// mark is how the line comes on the wood: by the template, or by points.
func (t taperTemplate) mark(byTemplate, byPoints string) string {
	if t.full {
		return byTemplate
	}
	return byPoints
}

// cuts is the order of work, and what becomes of the offcut.
func (t taperTemplate) cuts() []string {
	flat := say("Tape the offcut back, with a shim as thick as the kerf, so that the work lies flat and bears on its whole length.")
	keep := say("Saw beside the line, in the waste, and plane to it.")
	by := angleText(t.ToEdge())
	switch t.Faces {
	case joint.AdjacentFaces:
		return []string{
			say("1. Mark the arris between the two faces that stay straight. The two tapers are cut from the faces opposite."),
			t.mark(say("2. Trace the right-hand template on one straight face and the left-hand template on its neighbour, both with the reference edge on that arris and the foot at the foot."), say("2. Set out the line by its two points on both straight faces, from that arris, the foot at the foot.")),
			say("3. First cut: to the line on one of them. %s", keep),
			say("4. %s", flat),
			say("5. Second cut: roll the leg a quarter turn, and cut to the line on the other."),
			say("In a tapering jig one setting serves both, foot the same way and a straight face against the jig: the traced face down for the first cut, up for the second."),
			say("All four legs of a set are cut alike; which way each is turned makes left and right."),
		}
	case joint.OppositeFaces:
		return []string{
			t.mark(say("1. Trace the template on the two faces that stay parallel, and mark the centre line on both ends. The drawing is its own mirror image and serves either hand."), say("1. Set out both lines by their points on the two faces that stay parallel, and mark the centre line on both ends.")),
			say("2. First cut: %s to the edge. %s", by, keep),
			say("3. %s", flat),
			say("4. Second cut: roll the leg half a turn about its length, foot the same way, the taped edge where the reference edge was, and cut at the same setting."),
			say("Without the offcut the leg would bear on its taper, and the second cut would need the included angle, %s.", angleText(t.Included())),
		}
	case joint.FourFaces:
		return []string{
			t.mark(say("1. Trace the template on all four faces before any cut, and mark the centre lines on both ends. The drawing is its own mirror image and serves either hand."), say("1. Set out both lines by their points on all four faces before any cut, and mark the centre lines on both ends.")),
			say("2. First pair: cut one side, %s to the edge. %s", by, keep),
			say("3. %s", flat),
			say("4. Roll the leg half a turn, foot the same way, and cut the other side at the same setting. Tape this offcut back too."),
			say("5. Second pair: roll the leg a quarter turn and cut both sides as before. Take the tape off last."),
		}
	}
	return []string{
		t.mark(say("1. Trace the template on the face, its reference edge on the edge that stays straight. Use the hand that lays the foot at the foot."), say("1. Set out the line on the face by its two points, from the edge that stays straight, and join them by a straight edge.")),
		say("2. Cut to the line, %s to the edge. %s", by, keep),
		say("3. Keep the offcut: taped back, it holds the leg parallel for joints cut later."),
	}
}

// bevels says which face a bevel on the leg is counted from.
func (t taperTemplate) bevels() []string {
	by := angleText(t.ToEdge())
	return []string{
		say("A bevel taken off the tapered face differs by %s from one taken off the %s. Write the face beside every angle.", by, t.reference()),
		say("Cut joints while the blank is square. A shoulder square to the %s is %s off square on the tapered face.", t.reference(), by),
	}
}

func taperCaution() []string {
	return []string{
		say("Isolate power before setting. At a saw use a tapering jig with hold-downs, the guard and a push block, and follow the machine's manual."),
		say("Never trap the offcut between fence and blade. Short or thin legs are safer by hand saw and plane."),
	}
}

// ends says how the corners are made.
func (t hopperTemplate) ends() string {
	if t.Butt {
		return say("butted")
	}
	return say("mitred")
}

func (t hopperTemplate) title() string {
	slope := angleText(t.Slope)
	switch {
	case t.Slope != t.Next:
		return say(hopperTwoTitle, slope, angleText(t.Next), t.ends())
	case t.Sides == 0:
		return say(cornerTitle, angleText(t.Angle), slope, t.ends())
	}
	return say(hopperTitle, strconv.Itoa(t.Sides), slope, t.ends())
}

// steps is the order of work at the saw.
func (t hopperTemplate) steps() []string {
	gauge := say("gauge %s off square", angleText(math.Abs(t.OffSquare())))
	if t.Slope != t.Next {
		gauge = say("gauge %s off square for the sides at %s, %s for those at %s", angleText(math.Abs(t.OffSquare())), angleText(t.Slope),
			angleText(math.Abs(t.Turned().OffSquare())), angleText(t.Next))
	}
	longer := say("outer side")
	if !t.OuterLonger() {
		longer = say("hollow side")
	}
	out := []string{
		say(isolate),
		say("2. Rip the sides to width first. Edges that are to lie level take the tilt of the level edges."),
		say("3. Set the %s and the blade to a tilt of %s, both by the bevel gauge: it lies on the board for the one and stands on the table for the other.", gauge, angleText(math.Abs(t.EndTilt()))),
		say("4. The end leaves the %s longer: it lies down where the blade leans over the part that is kept, up where the blade leans away from it.", longer),
		say("5. The other end: turn the board end for end, the same side down, and swing the gauge to the same angle on the other side of square."),
	}
	if t.Butt {
		return append(out, say("6. Cut two offcuts first and hold them together: hollow side to hollow side they show %s, and the end lies close on its whole thickness. The board that runs past is cut at the same setting, or trimmed after glue-up.", angleText(t.Dihedral())))
	}
	return append(out, say("6. Cut a short set in offcuts first and hold it together with tape. Joints open on the outer side ask for more tilt, on the hollow side for less; open at the upper or the lower edge, for another gauge."))
}

func hopperCaution() []string {
	return []string{
		say("A tilted blade traps an offcut more easily: let it fall free, with no stop beside it. Clamp short or wide boards to a sled; guard on, hands clear of the side to which the blade leans. Follow the machine's manual; local rules come first."),
	}
}

func (t segmentTemplate) title() string {
	shape := say("flats left")
	if t.Round {
		shape = say("round")
	}
	return say(segmentsTitle, strconv.Itoa(t.Pieces), shape, t.length(t.Outer), t.length(t.Inner))
}

// steps is the order of work at the saw.
func (t segmentTemplate) steps() []string {
	out := []string{
		say(isolate),
		say("2. Rip the board to %s. All pieces one after the other take %s of it.", t.length(t.Board()), t.length(t.Stock())),
		say("3. Set the gauge %s off square, by the triangle, the blade upright. Cut the first end, then roll the board over about its length after every cut: the mitres lean to and fro and no wood is lost between them.", angleText(t.OffSquare())),
		say("4. Set a stop by the first piece that measures %s on its outer side. All are cut at that setting.", t.length(t.OuterSide())),
		say("5. Hold the ring together with a band before any glue. %s off at every end leaves the last joint open by %s. Glued as two halves, their ends can be planed true before the ring is closed.",
			angleText(slipOfEnds), t.length(t.Opens(slipOfEnds))),
	}
	if t.Round {
		out = append(out, say("6. The circles are struck from the centre on the glued ring, or traced from the piece before; saw and turn to them last."))
	}
	return out
}

func segmentsCaution() []string {
	return []string{
		say("Small pieces: hold them down in a sled, with a stop that ends before the blade; let a cut piece lie until the blade stands still. Guard on, follow the machine's manual; local rules come first. A ring is turned only when its glue is cured, at low speed at first and with a face shield."),
	}
}

func (t staveTemplate) title() string {
	return say(stavesTitle, strconv.Itoa(t.Pieces), t.length(t.Bottom), t.length(t.Top), t.length(t.Height))
}

// steps is the order of work at the saw.
func (t staveTemplate) steps() []string {
	tilt := angleText(t.EdgeTilt())
	out := []string{
		say(isolate),
		say("2. Plane the staves to %s and leave them over length; %s is their length between level ends.", t.length(t.Thickness), t.length(t.Long())),
	}
	if t.Wide() > t.Narrow() {
		out = append(out,
			say("3. Set out both edges of one stave by their points, on the outer side. Saw to the lines in a tapering jig with the blade tilted %s, by the bevel gauge stood on the table: the outer side stays the wider one on both edges.", tilt),
			say("4. Ends that are to lie level are cut square across with a tilt of %s.", angleText(math.Pi/2-t.Corner().Slope)))
	} else {
		out = append(out, say("3. Rip both edges with the blade tilted %s, by the bevel gauge stood on the table: the outer side stays the wider one on both edges, %s.", tilt, t.length(t.Wide())))
	}
	return append(out, say("Tape the staves side by side, outer sides up, and roll them up dry. Joints open on the outer side ask for more tilt, on the hollow side for less; a slip of 0.1° counts twice at every joint."))
}

// boring is the order of work at a slab.
func (t sightlineTemplate) boring() []string {
	bevel := angleText(math.Pi/2 - t.Resultant())
	edge, hands := say("the edge that the foot leans out over"), say("2. Right hand: the leg on your right as you stand before that edge; left hand: the one on your left. On the underside the hands change places.")
	if t.hand() == EitherHand {
		hands = say("2. The drawing serves both legs of a pair.")
	}
	if t.Rake < 1e-9 {
		edge = say("the front edge")
	}
	return []string{
		say("1. Mark the centre of the hole on the upper face of the slab. Lay the sheet on it, its edge line along %s, or parallel to it, and strike the sightline across the slab.", edge),
		hands,
		say("3. Set the bevel gauge to %s and stand it on the sightline. Seen along the line the bit is plumb, seen across it the bit lies in the blade of the gauge: %s from plumb.", bevel, angleText(t.Resultant())),
		say("4. Bored from above the upper end of the bit leans away from where the foot goes; bored from below the bit leans towards it. Back the far side with waste wood, or bore from the other side once the point comes through."),
		say("5. Bore a test hole in an offcut of the same thickness, put a stick in it, and measure rake and splay with a second gauge from the front and from the side."),
	}
}

func boringCaution() []string {
	return []string{
		say("Clamp the slab; keep both hands on the drill or the brace and behind the bit. At a drill press clamp slab and wedge to the table. Follow the machine's manual; local rules come first."),
	}
}

// topCornerName names the corners that one drawing serves.
func topCornerName(numbers []string, angle string) string {
	if len(numbers) == 1 {
		return say("top, corner %s: %s", numbers[0], angle)
	}
	return say("top, corners %s: %s", wording.And(numbers...), angle)
}

func topCornersHead() []string {
	return []string{say("corner"), say("right of the centre"), say("up from it"), say("to the next corner"), say("to corner 1")}
}

func topCornersWords() []string {
	return []string{say("Strike two lines square to each other through the centre and measure every corner from them: to the left and down where there is a minus. The two columns on the right prove it. Corners are counted as in the plan, before they are clipped or rounded.")}
}

// topWords says how a top is set out or, in a full setting, how its pattern is used.
func topWords(t joint.Top, s Setting) []string {
	u := s.Unit
	rest := []string{
		say("3. Rough the edge %s outside the line, then work to it.", measure.Length(u.Round(2, 1.0/16)).Text(u)),
		say("4. Glass is ordered by its figures, never cut from paper. All cutting and edge work comes before tempering."),
	}
	switch {
	case s.Full:
	case t.Diameter > 0:
		return append([]string{
			say("1. Strike both centre lines on the underside, square to each other."),
			say("2. Strike the circle from their crossing with a beam compass: radius %s. Proof: the diameter, measured along both lines.", measure.Length(t.Diameter/2).Text(u)),
		}, rest...)
	default:
		return append([]string{
			say("1. Strike both centre lines on the underside and set out the corners by the table."),
			say("2. Lay the sheet of a corner on both its edges and strike what is clipped or rounded; a sharp corner of 90° is proved by a square."),
		}, rest...)
	}
	return append([]string{
		say("1. Strike both centre lines on the underside first and lay the taped pattern on them."),
		say("2. A circle is better struck with a beam compass from the centre; the pattern proves it."),
	}, rest...)
}

const roughCurve wording.Text = "Rough the edge outside the line and work to it."

func curveCaution() []string {
	return []string{say("Isolate power before setting; follow the machine's manual and keep its guards on. Curved and narrow parts are held in a jig, never by hand near a blade or cutter. Local rules come first.")}
}

func arcOffsetsHead() []string { return []string{say("from mid-chord"), say("over the chord")} }

func arcOffsetsWords() []string {
	return []string{say("Both ways from mid-chord: strike the chord and its square lines, measure each height, and bend a batten round pins at the points. The marks of the template have the same two figures.")}
}

// work says how the template is used, and what strikes the arc without one.
func (t arcTemplate) work() []string {
	return []string{
		say("Template: tape the sheets, measure its check lengths, and cut along the arc, or glue it to thin board and work that to the line. It is its own mirror image. Lay its mid-chord and both ends of the chord on those of the work."),
		say("From the centre, where there is floor for it: %s below the chord, square from its middle, by a stick of %s.", t.length(t.CentreBelow()), t.length(t.Radius())),
		say("Without the centre: drive a pin at each end of the chord, and fix two sticks, each longer than the chord, to each other at %s. Slid along both pins their corner, with a pencil in it, strikes the whole arc; over mid-chord it must stand at the rise.",
			measure.Angle(t.SticksAngle()).Text(t.unit)),
		say(roughCurve),
	}
}

// title says which oval it is.
func (t ovalTemplate) title() string {
	size := []any{t.length(t.Length), t.length(t.Width)}
	if t.Ellipse() {
		return say("Ellipse, %s × %s", size...)
	}
	return say("Oval of four centres, %s × %s", size...)
}

func ovalOffsetsHead() []string {
	return []string{say("from the short centre line"), say("from the long centre line")}
}

func ovalOffsetsWords() []string {
	return []string{say("One quarter; the others are its mirror images. Bend a batten round pins at the points. The marks of the template have the same two figures.")}
}

// work says how the template is used, and what strikes the oval without one.
func (t ovalTemplate) work(full bool) []string {
	lay := say("Template: strike both centre lines on the work, square to each other. Mark the ends of both axes on them, lay the ends of the quarter there and trace it; turned over about each of its centre lines it serves the other three. --full prints the whole outline.")
	if full {
		lay = say("Template: strike both centre lines on the work, square to each other, and lay those of the taped outline on them.")
	}
	out := []string{lay}
	if t.Ellipse() {
		out = append(out,
			say("With a stick: pencil at its end, a pin %s from it and another %s from it. With the first pin on the long centre line and the second on the short one, all the way round, the pencil strikes the ellipse.",
				t.length(t.Width/2), t.length(t.Length/2)),
			say("With a string: pins at both foci, and round them a loop of %s, which does not stretch. Prove it at all four ends of the centre lines.", t.length(2*t.Focus()+t.Length)),
		)
	} else {
		end, side := t.Centres()
		out = append(out,
			say("With the compass: end centres, E in the plan, on the long centre line, %s to both sides of the middle; side centres, S, on the short one, %s to both sides. Strike each line from a side centre through an end centre: the joins lie on it.", t.length(end.X), t.length(-side.Y)),
			say("Strike the ends with %s and the sides with %s, each up to the joins, where they have one tangent. A line inside it is struck from the same centres.", t.length(t.EndRadius), t.length(t.AtSide())),
		)
	}
	if t.Inset > 0 && t.Ellipse() {
		out = append(out, say("The line inside the rim runs parallel to it and is no ellipse: stick and string do not strike it. Gauge it from the rim, or trace the template."))
	}
	return append(out, say(roughCurve))
}

// rectangleWords says how a printer is measured. The readings of the example
// are invented.
func rectangleWords(u measure.Unit) Panel {
	example, fine := say("rodsheet printer bench --across 149.2 --along 200.9 --diagonals 250.4,250.0"), say("tenths of a millimetre")
	if u == measure.Inch {
		example, fine = say("rodsheet printer bench --across 5.97in --along 8.04in --diagonals 10.02in,10.00in"), say("hundredths of an inch")
	}
	return Panel{Heading: say("to measure a printer"), Text: []string{
		say("On the large rectangle measure one side across the feed, one along it, and both diagonals, from line to line, "+
			"as finely as the rule allows: %s are worth the trouble.", fine),
		say("Tell rodsheet once, by a name of your own:"),
		example,
		say("Then print with --printer bench. Measure only a sheet whose foot says nothing of a correction."),
	}}
}

func scaleMeasures(u measure.Unit) Panel {
	return Panel{Heading: say("measure"), Table: [][]string{
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
	return Panel{Heading: say("if it is not true"), Text: []string{
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
