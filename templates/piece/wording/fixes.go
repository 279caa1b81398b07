package wording

import (
	"rodsheet/geometry/measure"
	"rodsheet/templates/piece/checks"
	"rodsheet/templates/piece/design"
	"rodsheet/templates/wording"
	"sync"
)

// fixWords says a change of the design: "reduce the leg's breadth at the joint to
// 31.5 mm".
func fixWords(f checks.Fix, u measure.Unit) string {
	moved := f.To
	moved.Value -= f.From.Value
	args := show(u, []measure.Quantity{f.To, moved})
	id := f.Key
	switch {
	case f.Sized:
		id, args = id+".sized", append(args, sizeName(f.Design.Size))
	case f.To.Value < f.From.Value:
		if _, ok := fixTexts()[id+".less"]; ok {
			id += ".less"
		}
	}
	said := speak(fixTexts(), id, args...)
	for _, t := range f.Follows {
		said += speak(followTexts(), t.Key, figure{t.To, u})
	}
	return said
}

// fixTexts says a change by its key in the design file: of a figure to %[1]s, by
// %[2]s; of one size, %[3]s.
var fixTexts = sync.OnceValue(func() map[design.Key]wording.Text {
	return map[design.Key]wording.Text{
		"ring.inside":         "make the inside of the ring %[1]s",
		"ring.width":          "make the stretchers %[1]s wide and the legs as thick",
		"ring.depth":          "make the stretchers %[1]s deep",
		"ring.horn":           "leave a horn of %[1]s",
		"ring.horn.less":      "shorten the horns to %[1]s",
		"ring.plain-end":      "leave the outer shoulder at every plain end open",
		"legs.breadth":        "reduce the leg's breadth at the joint to %[1]s",
		"milled.breadth":      "reduce the leg's breadth at the joint to %[1]s",
		"legs.mid-to-leg":     "lengthen the stretchers by %[2]s (the legs then stand %[1]s from mid-length)",
		"legs.clear":          "leave %[1]s clear between leg and neighbour",
		"legs.splay":          "splay the legs by %[1]s",
		"legs.splay.sized":    "splay the legs of %[3]s by %[1]s",
		"legs.foot-circle":    "set the feet on a circle of %[1]s",
		"legs.foot-spread":    "set the feet %[1]s apart",
		"legs.tenon":          "make the tenon %[1]s thick",
		"legs.proud":          "leave the heads %[1]s proud",
		"legs.taper.start":    "start the taper at %[1]s",
		"legs.taper.foot":     "leave the foot %[1]s",
		"top.diameter":        "make the diameter of the top %[1]s",
		"top.overhang":        "give the top an overhang of %[1]s",
		"top.corner-size":     "round the corners to a radius of %[1]s",
		"top.fixing.screw":    "take screws of %[1]s",
		"top.pads.diameter":   "make the diameter of the pads %[1]s",
		"top.pads.height":     "make the pads %[1]s high",
		"top.pads.mid-to-pad": "set the pads %[1]s from mid-length",
	}
})

// followTexts says what changes with it.
var followTexts = sync.OnceValue(func() map[design.Key]wording.Text {
	return map[design.Key]wording.Text{
		"milled.depth":     ", of new stock, and leave out its depth as milled",
		"milled.width":     ", of new stock, and leave out its width as milled",
		"legs.mid-to-leg":  " (the legs then stand %s from mid-length)",
		"legs.foot-circle": ", in place of what the feet are given by",
		"legs.foot-spread": ", in place of what the feet are given by",
	}
})
