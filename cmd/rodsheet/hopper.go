package main

import (
	"math"

	"rodsheet/geometry/joint"
	"rodsheet/templates"
)

func hopperCommand() command {
	return command{
		name:    "hopper",
		summary: "gauge and tilt for sloping sides",
		about: `Works out how far off square and at which tilt of the blade the ends of sloping
sides are cut, mitred or butted, and draws the triangles to set gauge and blade.
Four sides if no number is given; --corner is one corner by its angle in plan.
Backwards, --off-square or --tilt, or both without a number of sides, give the
slope that a saw as it is set cuts. A slope may be rise over run (200:60).`,
		caution: sawCaution,
		flags: []flag{
			{name: "sides", value: "3..12", usage: "of the hopper; 4 if not given"},
			{name: "corner", value: "ANGLE", usage: "of two sides in plan, instead", figure: "corner.angle"},
			{name: "slope", value: "ANGLE", usage: "of the sides", figure: "corner.slope"},
			{name: "second", value: "ANGLE", usage: "slope of those between them, of a rectangle"},
			{name: "from", value: "level|plumb", usage: "what slopes are counted from; level if not given"},
			{name: "off-square", value: "ANGLE", usage: "of the gauge, to find the slope", figure: "corner.off-square"},
			{name: "tilt", value: "ANGLE", usage: "of the blade for a mitre, to find the slope", figure: "corner.tilt"},
			{name: "ends", value: "ENDS", choices: spelled(endings), usage: "mitred or butted; mitred if not given"},
			fullFlag(),
		},
		examples: []example{
			{"rodsheet hopper --sides 5 --slope 75", "a planter of five sides"},
			{"rodsheet hopper --slope 12 --second 20 --from plumb --ends butted", "a tray with two slopes, butted"},
			{"rodsheet hopper --sides 6 --off-square 12", "the slope that a gauge at 12 degrees makes"},
		},
		read: func(v *values) maker { return drawn(templates.Hopper, v.hopper()) },
	}
}

var endings = []word{"mitred", "butted"}

func (v *values) hopper() joint.Hopper {
	h := joint.Hopper{Butt: choose(v, "ends", endings...) == "butted"}
	h.Angle = v.angle("corner")
	if !v.given("corner") && v.howMany("off-square", "tilt") < 2 {
		h.Sides = v.count("sides", 4, 3, 12)
		h.Angle = joint.HopperCorner(max(h.Sides, 3), 0).Angle
	}
	v.hopperClashes(h)
	if v.howMany("off-square", "tilt") > 0 {
		h.SlopingCorner = v.backwards(h.Angle)
		return h
	}
	plumb := choose[word](v, "from", "level", "plumb") == "plumb"
	h.Slope = v.slope("slope", plumb)
	h.Next = h.Slope
	if v.given("second") {
		h.Next = v.slope("second", plumb)
	}
	return h
}

// hopperClashes refuses flags that say a thing twice, or not at all.
func (v *values) hopperClashes(h joint.Hopper) {
	backwards, free := v.howMany("off-square", "tilt") > 0, v.howMany("off-square", "tilt") == 2
	for _, clash := range []struct {
		is         bool
		text, hint string
	}{
		{v.given("slope") == backwards, "hopper needs --slope, or --off-square or --tilt", "rodsheet hopper --sides 5 --slope 75"},
		{v.howMany("corner", "sides") == 2, "--sides and --corner say the same twice", "give one of them"},
		{free && v.howMany("sides", "corner") > 0, "--off-square and --tilt together give the corner as well", "give one of them with --sides or --corner"},
		{h.Butt && v.given("tilt"), "--tilt is that of a mitre", "give --off-square for butted ends"},
		{v.given("second") && (backwards || h.Sides != 4 && h.Sides != 0), "--second is for a rectangle of two slopes, or one corner", "rodsheet help hopper"},
	} {
		if clash.is {
			v.add(clash.text, clash.hint)
		}
	}
}

// slope reads an angle to the level, counted from there or from plumb.
func (v *values) slope(name string, plumb bool) float64 {
	if plumb {
		return math.Pi/2 - v.angle(name)
	}
	return v.angle(name)
}

// backwards finds the slope that a setting of the saw makes or, where both of its angles
// are given, the corner too.
func (v *values) backwards(corner float64) joint.SlopingCorner {
	offSquare, tilt := v.angle("off-square"), v.angle("tilt")
	find, setting, name := joint.SlopeOfMitre, offSquare, "--off-square"
	switch {
	case len(v.problems) > 0:
		return joint.SlopingCorner{}
	case v.howMany("off-square", "tilt") == 2:
		return joint.CornerOfMitre(offSquare, tilt)
	case v.given("tilt"):
		find, setting, name = joint.SlopeOfTilt, tilt, "--tilt"
	}
	slope, err := find(corner, setting)
	v.fail(name, err)
	return joint.SlopingCorner{Slope: slope, Next: slope, Angle: corner}
}
