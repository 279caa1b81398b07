package main

import "rodsheet/templates"

func angleCommand() command {
	return command{
		name:    "angle",
		words:   "ANGLE...",
		summary: "triangles to set a bevel gauge from",
		about: `Draws a triangle for each angle, with a long edge to register the stock of the
gauge on; the gauge turns over for the other hand. One corner sets the bevel
asked for, the other what is left to 90°: a gauge set to a bevel of 78° scribes
12° off square, and the other way round. Cut along the sloping edge, or strike
it on to a board from its working edge: a line alone is a poor guide. Below 2.5°
paper does not hold an angle: it is set out by two points on a board, unless
--base or --full asks for the triangle. Angles are in degrees (14.5, 14°30') or
rise over base (1:6).`,
		flags: []flag{
			{name: "base", value: "LENGTH", usage: "of the long edge; the most the sheet offers if not given"},
			fullFlag(),
		},
		examples: []example{
			{"rodsheet angle 12", "the splay of the three legs"},
			{"rodsheet angle 12 60 1:6", "the splay, the crossing of the stretchers and a slope"},
			{"rodsheet angle 12.5 --units in", "in inches, on letter paper"},
		},
		read: func(v *values) maker {
			angles, base := v.angles(), v.positive("base")
			return single(func(s templates.Setting) (templates.Job, error) { return templates.Angles(angles, base, s) })
		},
	}
}
