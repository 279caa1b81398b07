package main

import (
	"math"

	"rodsheet/geometry/joint"
	"rodsheet/templates"
)

func dovetailCommand() command {
	return command{
		name:    "dovetail",
		summary: "dovetails, through or lapped, of boards at any corner",
		about: `Draws the strips that fold over the ends of the tail board and of the pin board,
with tails, pins and gauge lines, and lists where each tail stands. Tails are
given by their number, or by a width that is made to come out even, with half a
pin at either edge. --angle is for a corner that is not square, --slope for
boards that lean outward, as those of a hopper.`,
		caution: sawCaution,
		flags: []flag{
			{name: "width", value: "LENGTH", usage: "of both boards", required: true},
			{name: "tail-board", value: "LENGTH", usage: "thickness", required: true},
			{name: "pin-board", value: "LENGTH", usage: "thickness; as the tail board if not given"},
			{name: "tails", value: "N", usage: "how many"},
			{name: "tail", value: "LENGTH", usage: "or about how wide each is at its end"},
			{name: "sides", value: "ANGLE", usage: "of a tail, to the grain; 1:8 if not given", figure: "dovetail.slope"},
			{name: "pin", value: "LENGTH", usage: "at its narrowest; 6 mm or 1/4 in if not given"},
			{name: "half-pin", value: "LENGTH", usage: "at the edges; as wide as a pin if not given"},
			{name: "lap", value: "LENGTH", usage: "wood left before the tails; none if not given"},
			{name: "angle", value: "ANGLE", usage: "inside the corner in plan; 90 if not given", figure: "dovetail.corner"},
			{name: "slope", value: "ANGLE", usage: "of the boards from level; 90 if not given", figure: "dovetail.board-slope"},
		},
		examples: []example{
			{"rodsheet dovetail --width 120 --tail-board 16 --tails 4", "a square corner, joined through"},
			{"rodsheet dovetail --width 120 --tail-board 12 --pin-board 20 --tail 24 --lap 5", "lapped, as the front of a drawer"},
			{"rodsheet dovetail --width 140 --tail-board 14 --tails 4 --sides 1:6 --slope 70", "a tray with sloping sides"},
		},
		read: func(v *values) maker {
			d := joint.Dovetail{
				Width: v.length("width", 0), TailBoard: v.length("tail-board", 0),
				Slope: v.angleOr("sides", math.Atan(1.0/8)), Pin: v.length("pin", v.unit.Round(6, 1.0/4)), Lap: v.positive("lap"),
				Angle: v.angleOr("angle", math.Pi/2), BoardSlope: v.angleOr("slope", math.Pi/2),
			}
			d.PinBoard = v.length("pin-board", d.TailBoard)
			d.HalfPin = v.length("half-pin", d.UsualHalfPin())
			d.Tails = tailsOf(v, d)
			return drawn(templates.Dovetail, d)
		},
	}
}

// tailsOf returns the number of tails, as given or of about the width given.
func tailsOf(v *values, d joint.Dovetail) int {
	switch {
	case v.given("tails") == v.given("tail"):
		v.add("dovetail needs --tails or --tail", "--tails says how many, --tail about how wide")
		return 1
	case v.given("tail"):
		if width := v.positive("tail"); width > 0 {
			return d.TailsOf(width)
		}
		return 1
	}
	return v.count("tails", 1, 1, joint.MostTails)
}
