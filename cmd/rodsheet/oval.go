package main

import (
	"rodsheet/geometry/joint"
	"rodsheet/templates"
)

func ovalCommand() command {
	return command{
		name:    "oval",
		summary: "an ellipse, or an oval of four arcs for the compass",
		about: `Draws one quarter of an oval at full size, which serves all four, with the
points of a batten and what strikes it without paper. It is an ellipse, or with
--compass or --end-radius of four arcs, with their centres and joins. --full
draws the whole outline.`,
		caution: sawCaution,
		flags: []flag{
			{name: "length", value: "LENGTH", usage: "of the longer axis", required: true},
			{name: "width", value: "LENGTH", usage: "of the shorter axis", required: true},
			{name: "compass", usage: "of four arcs, near to an ellipse"},
			{name: "end-radius", value: "LENGTH", usage: "of four arcs, those at the ends with this radius"},
			{name: "inset", value: "LENGTH", usage: "a line this far inside the rim as well"},
			fullFlag(),
		},
		examples: []example{
			{"rodsheet oval --length 900 --width 600", "an elliptical top"},
			{"rodsheet oval --length 900 --width 600 --compass --inset 12", "of four arcs, with a line for a banding"},
			{"rodsheet oval --length 36 --width 24 --end-radius 9 --units in --full", "the whole outline, in inches"},
		},
		read: func(v *values) maker {
			o := joint.Oval{
				Length: v.positive("length"), Width: v.positive("width"),
				EndRadius: v.positive("end-radius"), Inset: v.positive("inset"),
			}
			if v.on("compass") && !v.given("end-radius") && o.Length > 0 {
				o.EndRadius = joint.CompassEndRadius(o.Length, o.Width)
			}
			return drawn(templates.Oval, o)
		},
	}
}
