package main

import (
	"rodsheet/geometry/joint"
	"rodsheet/templates"
)

var haunches = []joint.Haunch{joint.NoHaunch, joint.SquareHaunch, joint.SlopingHaunch}

func mortiseCommand() command {
	return command{
		name:    "mortise",
		summary: "mortise and tenon of a rail in a leg that may lean",
		about: `Draws the end of a rail, a strip to wrap round it with shoulder and tenon on all
four sides, and the mortise strip of the leg. The leg stands plumb or leans: by
--splay along the rail, by --rake across it, the rail leaning with it; --turn is
for a leg whose side does not stand square to the rail in plan. The tenon runs
with the grain of the rail, so the mortise leans.`,
		caution: sawCaution,
		flags: []flag{
			{name: "width", value: "LENGTH", usage: "of the rail, seen from above", required: true},
			{name: "depth", value: "LENGTH", usage: "of the rail, up its outer side", required: true},
			{name: "leg", value: "LENGTH", usage: "of the leg, square to the side that is mortised", required: true},
			{name: "leg-width", value: "LENGTH", usage: "of the side mortised; as --leg if not given"},
			{name: "splay", value: "ANGLE", usage: "lean of the leg along the rail, foot away from it"},
			{name: "rake", value: "ANGLE", usage: "lean across it, foot to the outer side"},
			{name: "turn", value: "ANGLE", usage: "of the leg's side in plan, off square to the rail"},
			{name: "tenon", value: "LENGTH", usage: "thickness; a third of the width if not given"},
			{name: "length", value: "LENGTH", usage: "of the tenon; it goes through the leg if not given"},
			{name: "lower", value: "LENGTH", usage: "cut off the tenon at the underside"},
			{name: "upper", value: "LENGTH", usage: "cut off it at the top; a third if haunched"},
			{name: "haunch", value: "KIND", choices: spelled(haunches), usage: "none, square or sloping; none if not given"},
			{name: "stub", value: "LENGTH", usage: "of the haunch; as the tenon is thick if not given", figure: "mortise.haunch-length"},
			{name: "inset", value: "LENGTH", usage: "rail behind the outer side; centred if not given"},
			{name: "from-head", value: "LENGTH", usage: "head of the leg to the top of the rail"},
			fullFlag(),
		},
		examples: []example{
			{"rodsheet mortise --width 22 --depth 70 --leg 40 --length 28 --upper 15", "a rail level with the head of a plumb leg"},
			{"rodsheet mortise --width 22 --depth 70 --leg 40 --upper 10 --splay 8 --rake 5", "a leg that leans both ways"},
			{"rodsheet mortise --width 20 --depth 30 --leg 36 --splay 8 --from-head 320", "a low stretcher, its tenon through the leg"},
		},
		read: func(v *values) maker {
			m := joint.Mortise{
				Width: v.length("width", 0), Depth: v.length("depth", 0), Leg: v.length("leg", 0),
				Splay: v.angle("splay"), Rake: v.angle("rake"), Turn: v.angle("turn"),
				Tenon: v.positive("tenon"), Long: v.positive("length"),
				LowerCut: v.length("lower", 0), UpperCut: v.positive("upper"),
				Haunch: choose(v, "haunch", haunches...), HaunchLong: v.positive("stub"),
				FromHead: v.length("from-head", 0),
			}
			m.LegWidth = v.length("leg-width", m.Leg)
			_, across := m.Shoulder().OnLeg(0, m.Width)
			m.Inset = v.length("inset", max(0, (m.LegWidth-across)/2))
			return drawn(templates.Mortise, m)
		},
	}
}
