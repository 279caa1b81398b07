package wording

import (
	"strings"
	"sync"

	"rodsheet/geometry/lists"
	"rodsheet/geometry/measure"
	"rodsheet/templates/piece/checks"
	"rodsheet/templates/piece/shop"
	"rodsheet/templates/wording"
)

// checkName names a check: "leg head and lap".
func checkName(c checks.Check) string {
	switch {
	case c.Of.A.Kind != "":
		return say("%s and %s", PartName(c.Of.A), PartName(c.Of.B))
	case c.Of.Blank != "":
		return say("boards for the %s", partNames[kinds[c.Of.Blank]].many.With())
	case c.Of.Setting != "":
		return filled(checkTexts()[c.Question].name, speak(settingNames(), c.Of.Setting))
	}
	return filled(checkTexts()[c.Question].name)
}

// kinds are the parts that checks speak of, as the shop has them.
var kinds = map[measure.ID]shop.Part{
	checks.Stretcher: shop.Stretcher, checks.Leg: shop.Leg, checks.Pad: shop.Pad, checks.Top: shop.Top,
	"top-board": shop.TopBoard, "test-stretcher": shop.StretcherTest, "test-leg": shop.LegTest,
}

// PartName names a part: "leg 2".
func PartName(p checks.Part) string {
	if p.Number == 0 {
		return Part(kinds[p.Kind])
	}
	return say("%s %d", Part(kinds[p.Kind]), p.Number)
}

// words says what a check found, where and what.
func words(c checks.Check, u measure.Unit) string {
	var args []any
	switch {
	case c.Of.A.Kind != "":
		args = append(args, PartName(c.Of.A), PartName(c.Of.B))
	case c.Of.Setting != "":
		name := speak(settingNames(), c.Of.Setting)
		args = append(args, strings.ToUpper(name[:1])+name[1:])
		args = append(args, sizeNames(c)...)
	case c.Found.Steps != nil:
		args = append(args, stepNames(c.Found.Steps, u))
	case c.Found.Missing != nil:
		args = append(args, Missing(c.Found.Missing))
	}
	args = append(args, show(u, c.Found.Figures)...)
	text := checkTexts()[c.Question]
	switch {
	case c.Found.ID == checks.Holds && text.holds != "":
		return filled(text.holds, args...)
	case c.Found.ID == checks.Lacks && text.lacks != "":
		return filled(text.lacks, args...)
	}
	return speak(found(), c.Question+"."+c.Found.ID, args...)
}

// sizeNames are the two sizes that nearly agree, or all that do in one.
func sizeNames(c checks.Check) []any {
	names := lists.Map(c.Found.Names, sizeName)
	if c.Of.Sizes[0] > 0 {
		return []any{names[0], names[1]}
	}
	return []any{wording.And(names...)}
}

// sizeName names a size in a sentence.
func sizeName(name string) string {
	if name == "" {
		return say("the size without a name")
	}
	return name
}

// stepNames names steps of the settings.
func stepNames(steps []shop.Note, u measure.Unit) string {
	names := lists.Map(steps, func(n shop.Note) string { return Note(n, u) })
	return strings.Join(names, "; ")
}

// settingNames names what several sizes may share.
var settingNames = sync.OnceValue(func() map[measure.ID]wording.Text {
	return map[measure.ID]wording.Text{
		"stretcher-width":  "width of the stretchers",
		"stretcher-depth":  "depth of the stretchers",
		"leg-breadth":      "breadth of the legs",
		"lap-off-square":   "gauge at the laps, off square",
		"lap-blade-height": "blade height at the laps",
		"lap-spacer":       "spacer at the laps",
		"lap-stop":         "stop at the laps",
		"tenon":            "tenon",
		"splay":            "splay, gauge at heads, feet and bridles",
		"taper":            "taper of one face, to the edge",
	}
})

// A checkText is what a question is called, and what is said of it where its figure holds
// and where not.
type checkText struct{ name, holds, lacks wording.Text }

// checkTexts are those of the questions. What else a question finds is said by found.
var checkTexts = sync.OnceValue(func() map[measure.ID]checkText {
	return map[measure.ID]checkText{
		"clash":    {name: "parts and parts", holds: "No two of the %s parts clash."},
		"leg-head": {name: "leg head and lap"},
		"short-grain": {name: "wood between lap and leg", holds: "Enough is left along the grain between the lap's outer shoulder and the leg.",
			lacks: "So little between the lap's outer shoulder and the leg breaks off at a touch: saw it with care, or leave more."},
		"together": {name: "putting the ring together", holds: "The stretchers slide shut in plan, all at once: every plain end is open past its lap. So they do before their ends are trimmed, and with the legs on."},
		"leg-end-shoulder": {name: "outer shoulder at the leg end", holds: "The lap's outer shoulder at the leg end stands on the stretcher along its whole length.",
			lacks: "The lap's outer shoulder at the leg end runs off the trimmed end."},
		"horn": {name: "horn at the plain end", holds: "Enough wood is left past the outer shoulder of the plain end.",
			lacks: "What is left past the outer shoulder of the plain end is short grain and breaks off."},
		"ends-finished": {name: "ends, finished", holds: "No two ends that cross the same stretcher meet.", lacks: "Two ends that cross the same stretcher meet."},
		"ends-rough": {name: "ends before trimming", holds: "The ring goes together before any end is trimmed.",
			lacks: "Ends that cross the same stretcher would meet: trim them before the ring goes together."},
		"wood-at-laps": {name: "wood left at the laps", holds: "Enough wood is left.", lacks: "Little is left of the depth at the laps."},
		"cheeks":       {name: "cheeks of the bridle", holds: "Enough wood is left.", lacks: "The cheeks beside the slot are thin."},
		"tenon":        {name: "tenon of the bridle", holds: "Enough wood is left.", lacks: "The tenon is thin."},
		"taper-start": {name: "taper and joint", holds: "The taper begins below the joint.",
			lacks: "The taper begins inside the joint and eats its shoulder: there it has taken off %s."},
		"foot": {name: "foot", holds: "The foot keeps enough wood.", lacks: "The foot is thin and chips on a hard floor."},
		"feet": {name: "feet"},
		"steep-standing": {name: "steep legs, standing", holds: "The joints bear the arm at which the feet stand out.",
			lacks: "The feet stand so far out that a load on the top bends the joints: broader legs, or less splay."},
		"steep-end-grain": {name: "steep legs, end grain", holds: "The corner of the sole keeps its wood.",
			lacks: "The sharp corner of the sole is little but end grain and splits off when the piece is pushed: ease it well, or splay less."},
		"steep-blade": {name: "steep legs, gauge and blade", holds: "The gauge holds the part at this angle.",
			lacks: "At this angle the blade draws the part along the fence: clamp it to the gauge, or saw it by hand."},
		"standing": {name: "standing", holds: "A hand leaned on the rim does not tip the piece.", lacks: "A hand leaned on the rim may tip the piece."},
		"loose-top": {name: "loose top", holds: "A hand leaned on the rim does not tip the loose top.",
			lacks: "A hand leaned on the rim may tip the loose top. Stick it to its supports, or set them further out."},
		"blade-stock": {name: "blade and stock", holds: "The blade comes through everywhere.",
			lacks: "The blade does not come through at: %s. Saw these by hand or at the bandsaw, to knifed lines."},
		"blade-laps":   {name: "blade at the laps", holds: "The blade rises high enough.", lacks: "Cut the laps by hand, or on another machine."},
		"blade-bridle": {name: "blade at the bridle", holds: "The blade rises high enough.", lacks: "Saw the cheeks and the slot by hand or on a bandsaw."},
		"stop-reach": {name: "reach of the stop", holds: "Every stop that the cards ask for stands within reach.",
			lacks: "The stop does not reach so far for: %s. Clamp a longer board to the fence, or saw these to a knife line."},
		"dado":               {name: "dado set and lap", holds: "The dado set clears a lap in %n.", lacks: "The dado set is wider than the lap: take chippers out of it."},
		"pads-on-stretchers": {name: "pads on the stretchers", holds: "The pads stand on wood all round.", lacks: "The pads are wider than the stretchers."},
		"pads-shoulder": {name: "pads and shoulders", holds: "Each pad stands on its own stretcher.",
			lacks: "The pads reach over a shoulder: fix each to one part only, or it works loose."},
		"pads-edge": {name: "pads and edge of the top", holds: "The pads stand well inside the edge of the top.", lacks: "The pads stand too near to the edge of the top."},
		"glass-corners": {name: "corners of the glass", holds: "The corners are rounded enough for the glass shop.",
			lacks: "A corner radius is not to be less than the thickness of the glass."},
		"frame-under-top": {name: "frame under the top", holds: "Leg heads and horns stay within the outline of the top.",
			lacks: "Leg heads or horns stand out from under the top by %s."},
		"proud-head": {name: "proud head and top", holds: "The proud heads stay below the top.", lacks: "The proud heads stand higher than the underside of the top."},
		"screw-through": {name: "screws and upper face of the top", holds: "The screws end well inside the top.",
			lacks: "The screws come too near to the upper face of the top, or through it."},
		"screw-hold": {name: "hold of the screws", holds: "The screws go far enough into the top.", lacks: "The screws hardly go into the top."},
		"hole-edge": {name: "holes and edges of the stretchers", holds: "Enough wood is left beside the holes for the screws.",
			lacks: "Little is left beside the holes for the screws: wider stretchers, or buttons instead."},
		"hole-lap": {name: "holes and laps", holds: "The holes keep clear of the laps.", lacks: "The holes come so near to the laps that the wood between breaks out."},
		"boards": {name: "boards for all parts", holds: "The cutting plan finds room for every part, spare and test piece.",
			lacks: "The cutting plan finds no room on the boards listed for: %s. Have another board at hand."},
		"shared":        {name: "shared: %s", holds: "%[1]s: %[3]s for %[2]s; set it once and cut them together."},
		"nearly-shared": {name: "nearly shared: %s", lacks: "%[1]s: %[4]s for %[2]s but %[5]s for %[3]s. Make them equal and set once."},
	}
})

// checkFigures names what checks measure.
var checkFigures = sync.OnceValue(func() map[measure.ID]wording.Text {
	return map[measure.ID]wording.Text{
		"overlap":          "overlap",
		"clearance":        "clearance",
		"wood-left":        "wood left",
		"wood-past":        "wood past it",
		"horn-past":        "horn past the shoulder",
		"mid-to-end":       "mid-length to end",
		"taper-start":      "start of the taper",
		"foot-side":        "smaller side of the foot",
		"foot-arm":         "foot out of its joint",
		"sole-corner":      "corner of sole and back",
		"gauge-swing":      "gauge off square",
		"tipping-load":     "load at the rim that tips the piece",
		"loose-top-load":   "load at the rim that tips the loose top",
		"stock-sawn":       "stock sawn through",
		"blade-height":     "blade height",
		"farthest-stop":    "farthest stop from the blade",
		"dado-width":       "width of the dado",
		"wood-beside-pad":  "wood beside a pad",
		"pad-clear":        "pad clear of the shoulder by",
		"pad-to-edge":      "edge of pad to edge of top",
		"corner-radius":    "corner radius",
		"top-past-frame":   "top past the frame",
		"head-above-frame": "head above the frame",
		"screw-bite":       "screw in the top",
		"wood-beside-hole": "wood beside a hole",
		"hole-to-lap":      "middle of a hole to the lap",
		"blank-length":     "length of the blank",
		"blank-width":      "width of the blank",
		"blank-thickness":  "thickness of the blank",
		"without-room":     "parts without room",
		"difference":       "difference",
	}
})

// found says what questions find beside that.
var found = sync.OnceValue(func() map[measure.ID]wording.Text {
	return map[measure.ID]wording.Text{
		"clash.here":                     clashHere,
		"clash.everywhere":               clashHere + " So it is at every corner.",
		"leg-head.holds-under-neighbour": "The leg's stretcher side stays %s clear of the neighbour's outer side, over the middle %s of its width, at the top of the stretcher, where the neighbour passes over.",
		"leg-head.holds-over-neighbour":  "The leg's stretcher side stays %s clear of the neighbour's outer side, over the middle %s of its width, at half the depth of the stretcher, where the neighbour passes under.",
		"leg-head.lacks-under-neighbour": "The leg's stretcher side reaches %s into the neighbour, over the middle %s of its width, at the top of the stretcher, where the neighbour passes over.",
		"leg-head.lacks-over-neighbour":  "The leg's stretcher side reaches %s into the neighbour, over the middle %s of its width, at half the depth of the stretcher, where the neighbour passes under.",
		"together.catches":               "The stretchers catch on each other as the ring slides shut.",
		"together.trimmed-first":         "The stretchers slide shut only once their ends are trimmed.",
		"together.before-the-legs":       "The ring slides shut before the legs are on, not after: join the legs when the ring is together.",
		"together.no-slack":              "With both shoulders of every lap closed and no slack the ring cannot be put together: the last part has no way in.",
		"together.closed": "With both shoulders of every lap closed the ring can go together only by tilting all parts at once and letting them down together," +
			" and the outer shoulder of every plain end stays open by %s. The slack eases the plain ends alone; in the laps at the leg ends a tilted part binds." +
			" How much slack it takes has not been worked out: try the whole ring dry before anything else is cut.",
		"ends-finished.pass":          "Two ends that cross the same stretcher pass each other only because one of them is shorter.",
		"feet.rock":                   floorRocks,
		"feet.rock-never":             neverRocks,
		"feet.inside-and-rock":        feetInside + floorRocks,
		"feet.inside-and-rock-never":  feetInside + neverRocks,
		"feet.outside-and-rock":       feetOutside + floorRocks,
		"feet.outside-and-rock-never": feetOutside + neverRocks,
		"standing.falls":              "The weight of the piece lies outside what it stands on: it falls by itself.",
		"standing.never-tips":         "No load on the top tips the piece: its rim stands nowhere outside what it stands on.",
		"loose-top.falls":             "The weight of the loose top lies outside what it stands on: it falls by itself.",
		"loose-top.never-tips":        "No load on the top tips the loose top: its rim stands nowhere outside what it stands on.",
		"glass-corners.clipped":       "The corners are clipped; ask for them to be dubbed.",
		"glass-corners.sharp":         "Sharp corners of glass chip and hurt: round them.",
		"loose-top.bonded":            "The top is bonded to its supports. Loose, a load of %s at the rim would tip it: what the bond bears stands in its data sheet.",
		"loose-top.falls-but-bonded":  "The top lies on nothing but its bond: its weight is outside its supports.",
		"board.holds":                 "Every blank comes out of the boards listed.",
		"board.lacks":                 "No board listed is as long as the blank.",
		"board.section":               "No board listed is at once long, wide and thick enough for a blank with a section of %b × %s: glue it up.",
	}
})

const (
	// Two parts, the volume they share, the number of a stretcher, and the size and
	// place of it there.
	clashHere wording.Text = "%[1]s and %[2]s clash: they share %[3]s, in a space of %[5]s × %[6]s × %[7]s: along stretcher %[4]s from %[8]b to %[9]s" +
		" from mid-length towards its leg, from %[10]b to %[11]s outward of its ring side, and from %[12]b to %[13]s above its underside."
	feetInside  wording.Text = "The feet stand %[1]s inside the rim. "
	feetOutside wording.Text = "The feet stand %[1]s outside the rim, where a shoe may catch on them. "
	neverRocks  wording.Text = "Three legs never rock."
	floorRocks  wording.Text = "On a floor that is not flat %[2]s legs rock: level the feet on a flat bench."
)
