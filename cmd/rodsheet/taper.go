package main

import (
	"rodsheet/geometry/joint"
	"rodsheet/templates"
)

var taperFaces = []joint.TaperFaces{joint.OneFace, joint.AdjacentFaces, joint.OppositeFaces, joint.FourFaces}

func taperCommand() command {
	return command{
		name:    "taper",
		summary: "lines for a leg that narrows to the foot",
		about: `Sets out the taper of a leg by two points, with a table of offsets: truer than a
line traced from paper. --full draws the face of the leg with its lines. Which
faces taper decides the angle to the edge: two opposite faces share the
loss.`,
		caution: sawCaution,
		flags: []flag{
			{name: "length", value: "LENGTH", usage: "of the leg, from top end to foot", required: true},
			{name: "top", value: "LENGTH", usage: "width of the leg at the top", required: true},
			{name: "foot", value: "LENGTH", usage: "width of the leg at the foot", required: true},
			{name: "start", value: "LENGTH", usage: "where the taper begins, from the top end", required: true},
			{name: "faces", value: "FACES", choices: spelled(taperFaces), usage: "one, adjacent, opposite or four; one if not given"},
			fullFlag(),
		},
		examples: []example{
			{"rodsheet taper --length 640 --top 45 --foot 28 --start 110", "one face of a leg"},
			{"rodsheet taper --length 640 --top 45 --foot 28 --start 110 --faces four", "all four, with the angle that takes"},
			{"rodsheet taper --length 640 --top 45 --foot 28 --start 110 --full --paper a3", "the full-size lines, on larger sheets"},
		},
		read: func(v *values) maker {
			return drawn(templates.Taper, joint.Taper{
				Length: v.length("length", 0),
				Top:    v.length("top", 0),
				Foot:   v.length("foot", 0),
				Start:  v.length("start", 0),
				Faces:  choose(v, "faces", taperFaces...),
			})
		},
	}
}
