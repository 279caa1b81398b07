package main

import (
	"rodsheet/geometry/joint"
	"rodsheet/templates"
)

var mortised = []joint.BridleMember{joint.MortiseInStretcher, joint.MortiseInLeg}

func bridleCommand() command {
	return command{
		name:    "bridle",
		summary: "open mortise and tenon of a leg that leans",
		about: `Draws both parts of the bridle at the leg end of a stretcher: shoulders as far
off square as the leg is splayed, cheeks, and what each part is left over
length for trimming.`,
		caution: sawCaution,
		flags: []flag{
			{name: "width", value: "LENGTH", usage: "of the stretcher, seen from above", required: true},
			{name: "depth", value: "LENGTH", usage: "of the stretcher, upright", required: true},
			{name: "angle", value: "ANGLE", usage: "splay of the leg from plumb", required: true, figure: "bridle.splay"},
			{name: "leg", value: "LENGTH", usage: "breadth of the leg along the stretcher", required: true},
			{name: "tenon", value: "LENGTH", usage: "thickness of the tenon; a third of the width if not given"},
			{name: "mortise", value: "PART", choices: spelled(mortised), usage: "stretcher or leg; stretcher if not given"},
			fullFlag(),
		},
		examples: []example{
			{"rodsheet bridle --width 28 --depth 36 --angle 12 --leg 38", "a leg splayed 12 degrees"},
			{"rodsheet bridle --width 28 --depth 36 --angle 12 --leg 38 --tenon 9.5", "a tenon to suit a 9.5 mm chisel"},
			{"rodsheet bridle --width 28 --depth 36 --angle 12 --leg 38 --mortise leg", "the mortise in the leg instead"},
		},
		read: func(v *values) maker {
			return drawn(templates.Bridle, joint.Bridle{
				Width:   v.length("width", 0),
				Depth:   v.length("depth", 0),
				Angle:   v.angle("angle"),
				Leg:     v.length("leg", 0),
				Tenon:   v.positive("tenon"),
				Mortise: choose(v, "mortise", mortised...),
			})
		},
	}
}
