package main

import (
	"rodsheet/geometry/joint"
	"rodsheet/templates"
)

func sightlineCommand() command {
	return command{
		name:    "sightline",
		summary: "boring a leg that leans two ways",
		about: `Turns rake and splay into the one true lean of the leg, the resultant, and the
line along which it leans, the sightline; or these two into rake and splay.
Draws the sightline as it lies on the slab, with the edge that the leg leans
out over, for both hands, and the triangle that sets the bevel gauge on it.`,
		caution: `Caution: clamp the slab, keep both hands behind the bit, and follow the manual
of the drill or the drill press.`,
		flags: []flag{
			{name: "rake", value: "ANGLE", usage: "lean fore and aft, from plumb, seen from the side", figure: "leg.rake"},
			{name: "splay", value: "ANGLE", usage: "lean sideways, from plumb, seen from the front", figure: "leg.splay"},
			{name: "resultant", value: "ANGLE", usage: "the true lean instead, from plumb", figure: "leg.resultant"},
			{name: "sightline", value: "ANGLE", usage: "and its direction, from the fore-and-aft line", figure: "leg.sightline"},
			{name: "height", value: "LENGTH", usage: "from level to level, for the length along the leg", figure: "staked.height"},
			{name: "in", value: "LENGTH", usage: "edge to hole; 60 mm or 2 1/2 in if not given", figure: "staked.in"},
			fullFlag(),
		},
		examples: []example{
			{"rodsheet sightline --rake 12 --splay 8 --height 430", "a front leg of a stool"},
			{"rodsheet sightline --resultant 16 --sightline 35", "rake and splay of a leg that is given the other way"},
			{"rodsheet sightline --rake 14 --splay 14 --in 2-3/4 --units in", "in inches, with its own place for the hole"},
		},
		read: func(v *values) maker {
			return drawn(templates.Sightline, joint.Staked{Compound: v.lean(), Height: v.positive("height"), In: v.positive("in")})
		},
	}
}

// lean reads the lean of a leg, given in one of two ways.
func (v *values) lean() joint.Compound {
	parted, whole := v.howMany("rake", "splay") > 0, v.howMany("resultant", "sightline") > 0
	switch {
	case parted == whole:
		v.add("sightline needs --rake and --splay, or --resultant and --sightline", "rodsheet sightline --rake 12 --splay 8")
	case v.howMany("resultant", "sightline") == 1:
		v.add("sightline needs --resultant and --sightline together", "rodsheet help sightline")
	}
	if !whole {
		return joint.Compound{Rake: v.angle("rake"), Splay: v.angle("splay")}
	}
	resultant, sightline := v.angle("resultant"), v.angle("sightline")
	if len(v.problems) > 0 {
		return joint.Compound{}
	}
	v.fail("--resultant", joint.Lean(resultant, sightline))
	return joint.CompoundOf(resultant, sightline)
}
