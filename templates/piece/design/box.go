package design

import (
	_ "embed"

	"rodsheet/geometry/joint"
	"rodsheet/geometry/measure"
)

// A Box has sides that slope: a planter, a tray, a hopper. Lengths are outside, at the
// lower edges where nothing else is said.
type Box struct {
	Outline BoxOutline
	Sides   int     // of a regular one
	Side    float64 // length of a side of a regular one
	// Length is along the front and the back of a rectangle, Width along its ends.
	Length, Width float64
	Height        float64 // plumb, from the lower edges to the rim
	Thickness     float64 // of the sides, square to their faces
	// Slope is the lean from plumb, outward as it rises, of every side or of front and
	// back; EndSlope that of the ends of a rectangle. By the sizes at the rim, where those
	// are given instead: 0 stands for a slope.
	Slope, EndSlope              float64
	OwnEnds                      bool // the ends have a slope of their own
	RimSide, RimLength, RimWidth float64
	Corner                       BoxCorner
	Spline                       float64 // thickness; 0: a quarter of the sides'
	Tails                        int     // of a dovetailed corner; 0: as many as are usual
	Bottom                       BoxBottom
}

// BoxOutline is the shape in plan.
type BoxOutline uint8

const (
	RegularBox BoxOutline = iota
	RectangleBox
)

// BoxCorner says how two sides meet.
type BoxCorner uint8

const (
	MitredCorner BoxCorner = iota
	SplinedCorner
	ButtCorner       // front and back run past the ends
	DovetailedCorner // tails on front and back, and on every other side
)

// A BoxBottom lies between the sides, its edges sloping with them.
type BoxBottom struct {
	Thickness float64 // 0: there is none
	Up        float64 // of its underside above the lower edges of the sides
	Gap       float64 // all round, for its movement
}

// boxSteepest is the most that a side leans from plumb, degrees: flatter ones are a frame
// (common practice, no source).
const boxSteepest = 75

// The sides of a box.
const (
	boxFewest = 3
	boxMost   = 12
)

func boxSchema() schema {
	regular, rectangle := []string{"regular"}, []string{"rectangle"}
	return schema{
		name:   "box",
		tables: []Key{"box", "box.bottom"},
		fields: boxFields,
		groups: [][]Key{{"box.slope", "box.rim-side", "box.rim-width"}, {"box.end-slope", "box.rim-length"}},
		needs: []need{
			{"box.bottom", "box.bottom.kind", []string{"inside"}, "inside", true},
			{"box.sides", "box.outline", regular, "regular", false},
			{"box.side", "box.outline", regular, "regular", false},
			{"box.rim-side", "box.outline", regular, "regular", false},
			{"box.length", "box.outline", rectangle, "regular", false},
			{"box.width", "box.outline", rectangle, "regular", false},
			{"box.end-slope", "box.outline", rectangle, "regular", false},
			{"box.rim-length", "box.outline", rectangle, "regular", false},
			{"box.rim-width", "box.outline", rectangle, "regular", false},
			{"box.spline", "box.corner", []string{"splined"}, "mitred", false},
			{"box.tails", "box.corner", []string{"dovetailed"}, "mitred", false},
		},
		must: append([][]Key{{"box.height"}, {"box.thickness"}, {"box.slope", "box.rim-side", "box.rim-width"}},
			each("box.sides", "box.side", "box.length", "box.width", "box.bottom.thickness")...),
		setters: []setter{
			{[]Key{"box.thickness", "box.side", "box.length", "box.width"}, []measure.ID{"box.room-below"}},
			{[]Key{"box.slope", "box.height", "box.end-slope", "box.rim-side", "box.rim-width", "box.rim-length"}, []measure.ID{"box.room-above"}},
			{[]Key{"box.bottom.gap", "box.bottom.up"}, []measure.ID{"box.room-bottom"}},
			{[]Key{"box.corner", "box.sides"}, []measure.ID{"box.butt-sides", "box.dovetail-odd"}},
			{[]Key{"box.end-slope", "box.rim-length", "box.corner"}, []measure.ID{"box.dovetail-slopes"}},
			{[]Key{"box.slope", "box.rim-side", "box.rim-width"}, []measure.ID{"dovetail.board-slope"}},
			{[]Key{"box.sides"}, []measure.ID{"dovetail.corner"}},
			{[]Key{"box.tails", "box.height"}, []measure.ID{"dovetail.root", "dovetail.pins-together", "dovetail.tails", "dovetail.width"}},
			{[]Key{"box.thickness"}, []measure.ID{"dovetail.tail-board", "dovetail.pin-board", "dovetail.pin", "dovetail.half-pin"}},
		},
		stock: []Key{"box.thickness"},
		has:   boxHas,
		start: starting{text: boxText, fewest: boxFewest, most: boxMost, usual: 4, titles: boxTitles},
	}
}

//go:embed start/box.toml
var boxText string

func boxHas(d *Design, key Key) bool {
	switch key {
	case "box.slope":
		return d.Box.RimSide == 0 && d.Box.RimWidth == 0
	case "box.end-slope":
		return d.Box.OwnEnds && d.Box.RimLength == 0
	}
	return !Key("box.bottom").holds(key) || d.Box.Bottom.Thickness != 0
}

func boxFields() []field[Design] {
	lean := from(-boxSteepest, boxSteepest)
	return []field[Design]{
		pick("box.outline", []string{"regular", "rectangle"}, func(d *Design) *BoxOutline { return &d.Box.Outline }),
		count("box.sides", from(boxFewest, boxMost), func(d *Design) *int { return &d.Box.Sides }),
		length("box.side", upTo(Longest), func(d *Design) *float64 { return &d.Box.Side }),
		length("box.length", upTo(Longest), func(d *Design) *float64 { return &d.Box.Length }),
		length("box.width", upTo(Longest), func(d *Design) *float64 { return &d.Box.Width }),
		length("box.height", upTo(Longest), func(d *Design) *float64 { return &d.Box.Height }),
		length("box.thickness", from(Thinnest, ThickestTop), func(d *Design) *float64 { return &d.Box.Thickness }),
		angle("box.slope", lean, func(d *Design) *float64 { return &d.Box.Slope }),
		angle("box.end-slope", lean, func(d *Design) *float64 {
			d.Box.OwnEnds = true
			return &d.Box.EndSlope
		}),
		length("box.rim-side", upTo(Longest).orNone(), func(d *Design) *float64 { return &d.Box.RimSide }),
		length("box.rim-length", upTo(Longest).orNone(), func(d *Design) *float64 {
			d.Box.OwnEnds = true
			return &d.Box.RimLength
		}),
		length("box.rim-width", upTo(Longest).orNone(), func(d *Design) *float64 { return &d.Box.RimWidth }),
		pick("box.corner", []string{"mitred", "splined", "butt", "dovetailed"}, func(d *Design) *BoxCorner { return &d.Box.Corner }),
		length("box.spline", from(Thinnest, ThickestTop).orNone(), func(d *Design) *float64 { return &d.Box.Spline }),
		count("box.tails", from(1, joint.MostTails).orNone(), func(d *Design) *int { return &d.Box.Tails }),
		choice("box.bottom.kind", []string{"none", "inside"}, func(*Design, int) {}),
		length("box.bottom.thickness", from(Thinnest, ThickestTop), func(d *Design) *float64 { return &d.Box.Bottom.Thickness }),
		length("box.bottom.up", from(0, widest), func(d *Design) *float64 { return &d.Box.Bottom.Up }),
		length("box.bottom.gap", from(0, 50), func(d *Design) *float64 { return &d.Box.Bottom.Gap }),
	}
}
