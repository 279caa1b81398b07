package wording

import (
	"strings"
	"sync"

	"rodsheet/geometry/lists"
	"rodsheet/geometry/measure"
	"rodsheet/templates"
	"rodsheet/templates/piece/checks"
	"rodsheet/templates/piece/kind"
	"rodsheet/templates/wording"
)

// show returns figures as the arguments of a sentence.
func show(u measure.Unit, figures []measure.Quantity) []any {
	return lists.Map(figures, func(q measure.Quantity) any { return figure{q, u} })
}

// speak fills the text of an ID; the ID itself stands in for one that is missing. A
// text need not speak of every figure: then it has no verb, or numbers them.
func speak[ID ~string](texts map[ID]wording.Text, id ID, args ...any) string {
	t, ok := texts[id]
	if !ok {
		return string(id)
	}
	return filled(t, args...)
}

// filled fills the verbs of a sentence, which may have none.
func filled(t wording.Text, args ...any) string {
	if !strings.Contains(string(t), "%") {
		args = nil
	}
	return t.With(args...)
}

// groupsOf returns the figures of a size as they are read, in unit u.
func groupsOf(s checks.Size, u measure.Unit) []kind.Group {
	names, headings, notes := figureNames(), groupHeadings(), groupNotes()
	return lists.Map(s.Groups, func(g checks.Group) kind.Group {
		w := kind.Group{ID: g.ID, Heading: speak(headings, g.ID)}
		if g.Heading.ID != "" {
			args := show(u, g.Heading.Figures)
			for _, name := range g.Heading.Names {
				args = append(args, name)
			}
			w.Heading = speak(headings, g.Heading.ID, args...)
		}
		w.Figures = lists.Map(g.Figures, func(f checks.Figure) templates.Figure {
			return templates.Figure{ID: f.ID, Name: speak(names, f.ID, show(u, f.Of)...), Value: f.Value}
		})
		w.Text = lists.Map(g.Notes, func(n checks.Remark) string { return speak(notes, n.ID, show(u, n.Figures)...) })
		return w
	})
}

var groupHeadings = sync.OnceValue(func() map[measure.ID]wording.Text {
	return map[measure.ID]wording.Text{
		"ring": "Ring", "stretcher": "Stretcher", "lap": "Laps", "leg": "Leg", "feet": "Feet",
		"top": "Top", "standing": "Standing", "weight": "Weight",
		"bridle.in-stretcher": "Bridle, mortise in the stretcher",
		"bridle.in-leg":       "Bridle, mortise in the leg",
		"movement":            "Movement of the wood",
		"movement.of":         "Movement of the wood, %[3]s from %[1]s %% to %[2]s %% of moisture",
	}
})

// figureNames names the figures of a piece.
var figureNames = sync.OnceValue(func() map[measure.ID]wording.Text {
	return map[measure.ID]wording.Text{
		"ring.stretchers":    "stretchers",
		"ring.inside":        "inside, between two corners",
		"ring.to-ring-side":  "centre to ring side",
		"ring.to-axis":       "centre to centre line of the stretcher",
		"ring.to-outer-side": "centre to outer side",
		"ring.crossing":      "crossing angle",
		"ring.opens-along":   "each slides along itself to open the ring",
		"ring.opens-outward": "and outward at the same time",

		"stretcher.width":                     "width, in plan",
		"stretcher.depth":                     "depth",
		"stretcher.finished":                  "finished length, tip to tip",
		"stretcher.mid-to-leg-end":            "mid-length to the tip of the leg end",
		"stretcher.mid-to-plain-end":          "mid-length to the tip of the plain end",
		"stretcher.least-finished":            "least finished length, plain end flush",
		"stretcher.sawn":                      "length at the saw, square ends",
		"stretcher.rough":                     "rough length",
		"stretcher.ring-side.inner-shoulder":  "ring side, inner shoulder",
		"stretcher.ring-side.outer-shoulder":  "ring side, outer shoulder",
		"stretcher.outer-side.inner-shoulder": "outer side, inner shoulder",
		"stretcher.outer-side.outer-shoulder": "outer side, outer shoulder",

		"lap.off-square":        "gauge, off square",
		"lap.bevel":             "gauge, bevel",
		"lap.blade-height":      "blade height",
		"lap.kerf":              "kerf",
		"lap.edge-length":       "length along either edge",
		"lap.spacer":            "spacer",
		"lap.stop":              "stop, from the blade to the square end",
		"lap.usual-rule.square": "too wide by the usual rule, square to the lap",
		"lap.usual-rule.along":  "too wide by the usual rule, along the edge",

		"leg.breadth":               "breadth, along the stretcher",
		"leg.thickness":             "thickness",
		"leg.height":                "height to the top of the stretcher",
		"leg.splay":                 "splay from plumb",
		"leg.splay-rise":            "splay over a base of %s",
		"leg.between-level-cuts":    "true length between the level cuts",
		"leg.finished":              "finished length, tip to tip",
		"leg.sawn":                  "length at the saw, square ends",
		"leg.rough":                 "rough length",
		"leg.ends.off-square":       "head and foot, off square",
		"leg.ends.bevel":            "head and foot, bevel",
		"leg.section.along":         "true section on the level, along the stretcher",
		"leg.section.across":        "true section on the level, across it",
		"leg.back-at-top":           "back at the stretcher's top",
		"leg.stretcher-side-at-top": "stretcher side at the stretcher's top",
		"leg.taper.start":           "taper starts, down the back from the frame's top",
		"leg.taper.joint-ends":      "joint ends there at",
		"leg.taper.foot":            "foot, square to the leg",
		"leg.taper.to-edge":         "taper of one face, to the edge",
		"leg.taper.loss":            "one face loses at the foot",
		"leg.taper.included":        "included angle of the two faces",

		"bridle.tenon":                        "tenon and slot",
		"bridle.cheek":                        "cheek, each side",
		"bridle.far-cheek":                    "far cheek from the face",
		"bridle.off-square":                   "shoulders, off square",
		"bridle.stretcher-shoulder.underside": "stretcher shoulder, underside, from the trimmed tip",
		"bridle.stretcher-shoulder.top":       "stretcher shoulder, top",
		"bridle.leg-shoulder.stretcher-side":  "leg shoulder, stretcher side, from the trimmed tip",
		"bridle.leg-shoulder.back":            "leg shoulder, back",
		"bridle.cut-height.stretcher":         "cut height, stretcher on its rough end",
		"bridle.cut-height.leg":               "cut height, leg on its rough head",
		"bridle.clearance":                    "clearance of leg and neighbour",
		"bridle.filler-strip":                 "filler strip for the tenoning jig",

		"top.thickness":          "thickness",
		"top.diameter":           "diameter",
		"top.side":               "side between sharp corners",
		"top.apothem":            "centre to side",
		"top.flat":               "flat at a clipped corner",
		"top.along":              "over all, along a stretcher",
		"top.across":             "over all, square to it",
		"top.area":               "area",
		"top.past-sides":         "past the outer side of the ring, mid-length",
		"top.past-corners":       "past the outer corner of the ring",
		"top.pad.mid-to-centre":  "pad, mid-length to centre",
		"top.pad.from-ring-side": "pad, from the ring side",
		"top.pad.circle":         "pads' centres, on a circle of",
		"top.pad.spread":         "pads' centres, one to the next",
		"top.pad.to-rim":         "pad centre to the edge of the top",

		"feet.mid-to-back":      "mid-length to the back of the foot",
		"feet.circle.radius":    "circle through the middles of the backs, radius",
		"feet.circle":           "circle through the middles of the backs, diameter",
		"feet.spread":           "middles of the backs, one to the next",
		"feet.outermost-circle": "circle through the outermost corners, diameter",
		"feet.along":            "foot on the floor, along the stretcher",
		"feet.across":           "foot on the floor, across it",
		"feet.overall":          "height of the whole",

		"standing.line":         "tipping line from the centre of gravity",
		"standing.rim":          "rim from the centre of gravity, square to it",
		"standing.load":         "load at the rim that tips the piece",
		"standing.inset-load":   "load %s inside the rim that tips the piece",
		"standing.inset-force":  "the same as a force",
		"standing.inset-line":   "that load's tipping line from the centre of gravity",
		"standing.inset-rim":    "rim from the centre of gravity, square to that line",
		"loose-top.line":        "loose top: line through its supports, from its centre",
		"loose-top.load":        "load at the rim that tips the loose top",
		"loose-top.inset-load":  "load %s inside the rim that tips the loose top",
		"loose-top.inset-force": "the same as a force",
		"loose-top.inset-line":  "that load's line through its supports, from its centre",
		"loose-top.inset-rim":   "rim from its centre, square to that line",

		"weight.frame": "frame",
		"weight.top":   "top",
		"weight.whole": "whole",

		"movement.stretcher-width.quarter-sawn": "width of the stretcher, quarter sawn",
		"movement.stretcher-width.flat-sawn":    "width of the stretcher, flat sawn",
		"movement.stretcher-depth.quarter-sawn": "depth of the stretcher, quarter sawn",
		"movement.stretcher-depth.flat-sawn":    "depth of the stretcher, flat sawn",
		"movement.leg-breadth.quarter-sawn":     "breadth of the leg, quarter sawn",
		"movement.leg-breadth.flat-sawn":        "breadth of the leg, flat sawn",
		"movement.leg-thickness.quarter-sawn":   "thickness of the leg, quarter sawn",
		"movement.leg-thickness.flat-sawn":      "thickness of the leg, flat sawn",
		"movement.top-width.quarter-sawn":       "width of the top, quarter sawn",
		"movement.top-width.flat-sawn":          "width of the top, flat sawn",
	}
})

// groupNotes says what no figure says.
var groupNotes = sync.OnceValue(func() map[measure.ID]wording.Text {
	return map[measure.ID]wording.Text{
		"ring.opens":                          "The ring opens when every stretcher slides at once towards its own leg end and outward, level all the while; it closes the same way back.",
		"stretcher.flush":                     "Both ends have the same shoulders, on opposite faces; at the plain end the outer one is left open and the end is cut in line with it.",
		"stretcher.open":                      "Both ends have the same shoulders, on opposite faces; at the plain end the outer one is left open: the lap runs out to the end.",
		"stretcher.closed":                    "Both ends have the same shoulders, on opposite faces; at the plain end the outer one stands %s further out, square to the lap, for slack.",
		"leg.parallel":                        "Head and foot are parallel: both lean the same way along the leg.",
		"standing.falls":                      "Its weight lies outside its feet: it falls by itself.",
		"standing.standing.never-tips":        "No load on the top tips the piece.",
		"standing.standing.inset-never-tips":  "No load %s inside the rim tips the piece.",
		"standing.loose-top.never-tips":       "No load on the top tips the loose top.",
		"standing.loose-top.inset-never-tips": "No load %s inside the rim tips the loose top.",
		"weight.of-wood":                      "Wood of %s kg/m³.",
		"movement.wood-unknown":               "Nothing is known of how this wood moves: it is not in the table of woods.",
		"movement.no-change":                  "The design states no change of moisture.",
		"movement.laps":                       "Laps: each stands between shoulders that keep their distance while its width changes by up to %s; the joint does not mind.",
		"movement.laps-minds":                 "Laps: each stands between shoulders that keep their distance while its width changes by up to %s; fit them at the moisture of the room they go to.",
		"movement.bridle":                     "Bridle: stretcher and leg cross, and what is %[1]s across changes by up to %[2]s; the cheeks are narrow enough to be glued across the grain.",
		"movement.bridle-minds":               "Bridle: stretcher and leg cross, and what is %s across changes by up to %s; cheeks wider than %s may break their glue.",
		"movement.top":                        "Top: it changes by up to %s across the grain; it may be fixed as you like.",
		"movement.top-minds":                  "Top: it changes by up to %s across the grain; screw it from below through slots, and do not glue it to the frame.",
	}
})
