package main

import (
	"rodsheet/geometry/joint"
	"rodsheet/geometry/lists"
	"rodsheet/templates"
	"rodsheet/templates/wording"
)

func segmentsCommand() command {
	return command{
		name:    "segments",
		summary: "pieces of a mitred ring, or staves of a vessel",
		about: `A ring, by --outer and --inner: mitre, both sides of a piece, the board that it
takes, and one piece at full size. Its sizes are the diameters of a ring that is
made round, or, with --shape flats, what it measures across its flats.
A vessel of staves, by --top, --bottom and --height: tilt of the edges, width of
both ends, length. Its sizes are outside.`,
		caution: sawCaution,
		flags: []flag{
			{name: "pieces", value: "3..36", usage: "how many", required: true},
			{name: "outer", value: "LENGTH", usage: "outer size of a ring"},
			{name: "inner", value: "LENGTH", usage: "inner size of a ring"},
			{name: "shape", value: "round|flats", usage: "that the ring is to have; round if not given"},
			{name: "kerf", value: "LENGTH", usage: "of the blade; 3.2 mm or 1/8 in assumed if not given"},
			{name: "top", value: "LENGTH", usage: "size of a vessel at the top", figure: "staves.top"},
			{name: "bottom", value: "LENGTH", usage: "and at the bottom; as at the top if not given", figure: "staves.bottom"},
			{name: "height", value: "LENGTH", usage: "of the vessel", figure: "staves.height"},
			{name: "thickness", value: "LENGTH", usage: "of its staves", figure: "staves.thickness"},
			fullFlag(),
		},
		examples: []example{
			{"rodsheet segments --pieces 12 --outer 300 --inner 240 --kerf 2.6", "a round frame of twelve pieces"},
			{"rodsheet segments --pieces 8 --outer 24 --inner 18 --shape flats --units in", "an octagon, in inches"},
			{"rodsheet segments --pieces 9 --top 32cm --height 40cm --thickness 18mm", "a planter of upright staves"},
		},
		read: func(v *values) maker {
			pieces := v.count("pieces", 3, 3, 36)
			if v.staved() {
				s := joint.Staves{Pieces: pieces, Top: v.length("top", 0), Height: v.length("height", 0), Thickness: v.length("thickness", 0)}
				s.Bottom = v.length("bottom", s.Top)
				return drawn(templates.Staves, s)
			}
			r := joint.SegmentRing{
				Pieces: pieces, Outer: v.length("outer", 0), Inner: v.length("inner", 0), Kerf: v.length("kerf", usualKerf(v.unit)),
				Round: choose[word](v, "shape", "round", "flats") == "round",
			}
			return drawn(withKerf(v, r.Kerf, templates.Segments), r)
		},
	}
}

// staved reports whether the flags speak of a vessel, and wants all that it takes or
// all that a ring takes.
func (v *values) staved() bool {
	vessel, needed := v.howMany("top", "bottom", "height", "thickness") > 0, []string{"outer", "inner"}
	if vessel {
		needed = []string{"top", "height", "thickness"}
	}
	lack := lists.Where(needed, func(name string) bool { return !v.given(name) })
	switch {
	case vessel == (v.howMany("outer", "inner", "shape", "kerf") > 0):
		v.add("segments needs --outer and --inner, or --top, --height and --thickness", "rodsheet help segments")
	case len(lack) > 0:
		v.add("segments needs "+wording.And(lists.Map(lack, func(name string) string { return "--" + name })...)+" as well", "rodsheet help segments")
	}
	return vessel
}
