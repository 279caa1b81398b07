package templates

import (
	"strings"

	"rodsheet/geometry/measure"
	"rodsheet/templates/wording"
)

// What the sentences of several single templates share. Those of one kind stand in a
// file of their own, words_KIND.go; what figures and lines are called in words_names.go.

// Headings and parts of labels.
const (
	figuresHeading     wording.Text = "Figures"
	sawHeading         wording.Text = "Setting the saw"
	workHeading        wording.Text = "Order of work"
	taperPointsHeading wording.Text = "Set out by two points"
	cautionHeading     wording.Text = "Caution"
	offsetsHeading     wording.Text = "Offsets, %s"
	gaugeName          wording.Text = "gauge"
	bladeName          wording.Text = "blade to table"
	topPlanHeading     wording.Text = "Plan"
	datum              wording.Text = "datum"
	TiltedRip          wording.Text = "Keep the fence on the side from which the blade leans away, guard and splitter in place: nothing is trapped under the blade. Push blocks end the cut. Isolate the saw before tilting it."
	isolate            wording.Text = "1. Isolate power before setting. Follow the machine's manual and keep its guards on."
)

// say fills the verbs of a sentence.
func say(t wording.Text, args ...any) string { return t.With(args...) }

// panel is one of paragraphs.
func panel(heading wording.Text, text ...string) Panel {
	return Panel{Heading: say(heading), Text: text}
}

// tag returns a label under the words of its identity.
func tag(id measure.ID, args ...any) Tag { return Tag{id, say(labels[id], args...)} }

// figure returns a figure under the name of its identity.
func figure(id measure.ID, q measure.Quantity) Figure {
	name := wording.Name(id)
	if own, ok := figureNames[id]; ok {
		name = say(own)
	}
	return Figure{ID: id, Name: name, Value: q}
}

// aside is a figure that only programs are given.
func aside(f Figure) Figure {
	f.Aside = true
	return f
}

// figureIn is a figure that goes by a length round in one unit. Figures are shown
// in the unit u.
func figureIn(of, u measure.Unit, id measure.ID, q measure.Quantity) Figure {
	f := figure(id, q)
	f.Aside = of != u
	return f
}

// viewName names a view: "lap, right hand, cut face".
func viewName(v View) string {
	words := []string{say(viewNames[v.Part])}
	if v.Hand != EitherHand {
		words = append(words, handName(v.Hand))
	}
	if v.Face != "" {
		words = append(words, say(viewNames[v.Face]))
	}
	return strings.Join(words, ", ")
}

func handName(h Hand) string {
	if h == LeftHand {
		return say("left hand")
	}
	return say("right hand")
}

// viewNames names parts and faces.
var viewNames = map[measure.ID]wording.Text{
	"arc":                   "arc",
	"back":                  "back",
	"calibration-rectangle": "calibration rectangle",
	"calibration-square":    "calibration square",
	"cut-face":              "cut face",
	"end-strip":             "strip over the end",
	"face":                  "face",
	"lap":                   "lap",
	"leg":                   "leg",
	"mortise-strip":         "mortise strip",
	"outline":               "outline",
	"pin-board":             "pin board",
	"tail-board":            "tail board",
	"rail":                  "rail",
	"oval":                  "oval",
	"quarter":               "quarter",
	"reference-edge":        "reference edge",
	"right-half":            "right half",
	"ring-side":             "ring side",
	"outer-side":            "outer side",
	"segment":               "piece of the ring",
	"stave":                 "stave",
	"sightline":             "sightline",
	"slab":                  "slab from above",
	"stretcher":             "stretcher",
	"taper":                 "taper",
	"top":                   "top",
	"underside":             "underside",
	"wrap-round":            "wrap-round",
}
