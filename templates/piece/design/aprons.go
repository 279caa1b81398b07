package design

import (
	"cmp"
	_ "embed"
	"slices"

	"rodsheet/geometry/measure"
)

// A Frame is that of a table with aprons between legs that lean out, with a wooden
// top and, where it has them, low stretchers.
type Frame struct {
	Shape FrameShape
	Sides int // of a regular frame
	// Length is that of front and back at the top, from the corner arris of one leg
	// to the next, or of every side of a regular frame; Width that of the two others.
	Length, Width float64
	Height        float64 // of the whole table
	Legs          FrameLegs
	Aprons        Rail
	Stretchers    Rail // none where their depth is 0
	Top           FrameTop
	Milled        FrameMilled
}

// FrameMilled is what the stock of a frame measures once it is planed. 0 stands for as
// designed.
type FrameMilled struct {
	Legs, Aprons, Stretchers float64
}

// Planed returns the frame that the planed stock makes: outer sides, shape and leans are
// as designed, sides inside move.
func (f Frame) Planed() Frame {
	f.Legs.Size = cmp.Or(f.Milled.Legs, f.Legs.Size)
	f.Aprons.Thickness = cmp.Or(f.Milled.Aprons, f.Aprons.Thickness)
	f.Stretchers.Thickness = cmp.Or(f.Milled.Stretchers, f.Stretchers.Thickness)
	return f
}

// FrameShape is what a frame is in plan.
type FrameShape uint8

const (
	Rectangle FrameShape = iota
	RegularFrame
)

// Corners returns how many legs the frame stands on.
func (f Frame) Corners() int {
	if f.Shape == Rectangle {
		return 4
	}
	return f.Sides
}

// FrameLegs are those of a frame, one at each corner.
type FrameLegs struct {
	Size float64 // square to the leg, from its corner arris to either side that takes a rail
	// Rake is the lean of front and back, or of every side of a regular frame, from
	// plumb; Splay that of left and right.
	Rake, Splay float64
	Faces       LegFaces
	// The two sides that take rails taper from Start, below the head along the leg,
	// to Foot; 0: they do not.
	Start, Foot float64
}

// LegFaces says which way the faces of a leg look.
type LegFaces uint8

const (
	ToRoom      LegFaces = iota // level lines on them run along the sides and square to them
	ToSightline                 // square stock, one arris in the way in which the leg leans
)

// RailJoint is how the ends of aprons are let into their legs. Stretchers have plain tenons.
type RailJoint uint8

const (
	SquareHaunch  RailJoint = iota // over the tenon a short stub stays
	SlopingHaunch                  // which runs out to nothing at the top: it does not show
	PlainTenon
	Bridled // the tenon is as high as the apron, the mortise open at the head of the leg
)

// A Rail is an apron or a stretcher on each side of a frame.
type Rail struct {
	Depth     float64 // plumb, from top to underside
	Thickness float64
	Inset     float64 // of its outer side, behind those of the legs, at its top
	Plumb     bool    // its sides stand plumb and do not lean with the legs
	Height    float64 // from the floor to the underside, of a stretcher
	Joint     RailJoint
	Tenon     float64 // thickness; 0: a third of Thickness
	// UpperCut and LowerCut are what the tenon is narrower at the top and at the
	// underside. 0 is a quarter of the depth at the top; a bridle has no upper one.
	UpperCut, LowerCut float64
	Long               float64 // of a tenon that ends square; 0: mitred where two meet
	Arch               float64 // rise of the underside in the middle
}

// FrameTop is a wooden top that lies on the frame.
type FrameTop struct {
	None          bool
	Outline       FrameOutline
	Diameter      float64 // of a round top; 0: over the corner arrises by Overhang
	Length, Width float64 // of an oval one: along the front, and across
	Thickness     float64
	Overhang      float64    // over the legs at their heads
	Fixing        FixingKind // holds it to the aprons
	Corner        Corner
	CornerSize    float64 // radius, or length of the clip along a side
}

// FrameOutline is what the top of a frame is in plan.
type FrameOutline uint8

const (
	AsFrame FrameOutline = iota // the frame's own shape, moved outward
	RoundOnFrame
	OvalOnFrame
)

// The steepest lean of the sides of a frame, rad: what leans more is a trestle and
// has other joints. Inward the feet come together, and it tips (common practice, no
// source).
const (
	steepestFrame = 45
	inmostFrame   = -15
)

// Fewest and most legs of a frame of aprons.
const (
	FrameFewest = 3
	FrameMost   = 8
)

func apronsSchema() schema {
	rectangle, regular := []string{frameShapes()[Rectangle]}, []string{frameShapes()[RegularFrame]}
	standard := rectangle[0]
	stretchers := []Key{"frame.stretchers.depth"}
	frame, round, oval := frameOutlines()[AsFrame], frameOutlines()[RoundOnFrame], frameOutlines()[OvalOnFrame]
	return schema{
		name:   "aprons",
		tables: []Key{"frame", "frame.legs", "frame.aprons", "frame.stretchers", "frame.top", "frame.milled"},
		fields: frameFields,
		groups: [][]Key{{"frame.top.diameter", "frame.top.overhang"}},
		milled: map[Key]Key{
			"frame.milled.legs": "frame.legs.size", "frame.milled.aprons": "frame.aprons.thickness", "frame.milled.stretchers": "frame.stretchers.thickness",
		},
		needs: []need{
			{"frame.sides", "frame.shape", regular, standard, false},
			{"frame.width", "frame.shape", rectangle, standard, false},
			{"frame.legs.splay", "frame.shape", rectangle, standard, false},
			{"frame.aprons.upper-cut", "frame.aprons.joint", railJoints()[:Bridled], railJoints()[SquareHaunch], false},
			{"frame.top", "frame.top.kind", []string{"wood"}, "wood", true},
			{"frame.top.diameter", "frame.top.outline", []string{round}, frame, false},
			{"frame.top.length", "frame.top.outline", []string{oval}, frame, false},
			{"frame.top.width", "frame.top.outline", []string{oval}, frame, false},
			{"frame.top.overhang", "frame.top.outline", []string{frame, round}, frame, false},
			{"frame.top.corner", "frame.top.outline", []string{frame}, frame, false},
			{"frame.top.corner-size", "frame.top.outline", []string{frame}, frame, false},
			{"frame.top.corner-size", "frame.top.corner", topCorners()[ClippedCorner:], topCorners()[SharpCorner], false},
		},
		must: each("frame.length", "frame.width", "frame.sides", "frame.height", "frame.legs.size", "frame.legs.rake", "frame.legs.splay",
			"frame.aprons.depth", "frame.aprons.thickness",
			"frame.stretchers.depth", "frame.stretchers.thickness", "frame.stretchers.height", "frame.top.thickness", "frame.top.length", "frame.top.width", "frame.top.corner-size"),
		optional: []Key{"frame.stretchers"},
		setters:  frameSetters(),
		stock:    []Key{"frame.legs.size", "frame.aprons.depth", "frame.aprons.thickness"},
		has:      frameHas,
		hangsOn:  map[Key][]Key{"frame.stretchers": stretchers, "frame.milled.stretchers": stretchers},
		aside:    []Key{"frame.stretchers", "frame.top", "frame.milled"},
		start:    starting{text: apronsText, fewest: FrameFewest, most: FrameMost, usual: 4, titles: tableTitles},
	}
}

//go:embed start/aprons.toml
var apronsText string

// In the order of their constants.
func frameShapes() []string { return []string{"rectangle", "regular"} }

// In the order of their constants.
func frameOutlines() []string { return []string{"frame", "round", "oval"} }

// In the order of their constants.
func railJoints() []string { return []string{"square-haunch", "sloping-haunch", "tenon", "bridle"} }

func frameHas(d *Design, key Key) bool {
	switch f := &d.Frame; {
	case Key("frame.stretchers").holds(key), key == "frame.milled.stretchers":
		return f.Stretchers.Depth > 0
	case key == "frame.top.diameter":
		return !f.Top.None && f.Top.Diameter != 0
	case key == "frame.top.overhang":
		return !f.Top.None && f.Top.Diameter <= 0
	case Key("frame.top").holds(key):
		return !f.Top.None
	}
	return true
}

func frameFields() []field[Design] {
	lean := from(inmostFrame, steepestFrame)
	return slices.Concat([]field[Design]{
		pick("frame.shape", frameShapes(), func(d *Design) *FrameShape { return &d.Frame.Shape }),
		count("frame.sides", from(FrameFewest, FrameMost), func(d *Design) *int { return &d.Frame.Sides }),
		length("frame.length", upTo(Longest), func(d *Design) *float64 { return &d.Frame.Length }),
		length("frame.width", upTo(Longest), func(d *Design) *float64 { return &d.Frame.Width }),
		length("frame.height", upTo(Longest), func(d *Design) *float64 { return &d.Frame.Height }),
		length("frame.legs.size", from(Thinnest, widest), func(d *Design) *float64 { return &d.Frame.Legs.Size }),
		angle("frame.legs.rake", lean, func(d *Design) *float64 { return &d.Frame.Legs.Rake }),
		angle("frame.legs.splay", lean, func(d *Design) *float64 { return &d.Frame.Legs.Splay }),
		pick("frame.legs.faces", []string{"room", "sightline"}, func(d *Design) *LegFaces { return &d.Frame.Legs.Faces }),
		length("frame.legs.taper-start", upTo(Longest).orNone(), func(d *Design) *float64 { return &d.Frame.Legs.Start }),
		length("frame.legs.foot", from(Thinnest, widest).orNone(), func(d *Design) *float64 { return &d.Frame.Legs.Foot }),
	},
		railFields("frame.aprons", func(d *Design) *Rail { return &d.Frame.Aprons }),
		railFields("frame.stretchers", func(d *Design) *Rail { return &d.Frame.Stretchers }),
		[]field[Design]{
			pick("frame.aprons.joint", railJoints(), func(d *Design) *RailJoint { return &d.Frame.Aprons.Joint }),
			refusing(choice("frame.stretchers.joint", []string{"tenon"}, func(*Design, int) {}), "bridle", lowBridle),
			length("frame.aprons.arch", from(0, widest), func(d *Design) *float64 { return &d.Frame.Aprons.Arch }),
			length("frame.stretchers.height", upTo(Longest), func(d *Design) *float64 { return &d.Frame.Stretchers.Height }),
			choice("frame.top.kind", []string{"wood", "none"}, func(d *Design, i int) { d.Frame.Top.None = i == 1 }),
			pick("frame.top.outline", frameOutlines(), func(d *Design) *FrameOutline { return &d.Frame.Top.Outline }),
			length("frame.top.diameter", upTo(Longest).orNone(), func(d *Design) *float64 { return &d.Frame.Top.Diameter }),
			length("frame.top.length", upTo(Longest).orNone(), func(d *Design) *float64 { return &d.Frame.Top.Length }),
			length("frame.top.width", upTo(Longest).orNone(), func(d *Design) *float64 { return &d.Frame.Top.Width }),
			length("frame.top.thickness", from(Thinnest, ThickestTop), func(d *Design) *float64 { return &d.Frame.Top.Thickness }),
			length("frame.top.overhang", from(-widest, widest), func(d *Design) *float64 { return &d.Frame.Top.Overhang }),
			pick("frame.top.fixing", fixingKinds(), func(d *Design) *FixingKind { return &d.Frame.Top.Fixing }),
			pick("frame.top.corner", topCorners(), func(d *Design) *Corner { return &d.Frame.Top.Corner }),
			length("frame.top.corner-size", upTo(Longest).orNone(), func(d *Design) *float64 { return &d.Frame.Top.CornerSize }),
			length("frame.milled.legs", upTo(widest).orNone(), func(d *Design) *float64 { return &d.Frame.Milled.Legs }),
			length("frame.milled.aprons", upTo(widest).orNone(), func(d *Design) *float64 { return &d.Frame.Milled.Aprons }),
			length("frame.milled.stretchers", upTo(widest).orNone(), func(d *Design) *float64 { return &d.Frame.Milled.Stretchers }),
		})
}

func railFields(table Key, of func(*Design) *Rail) []field[Design] {
	return []field[Design]{
		length(table.with("depth"), from(Thinnest, widest), func(d *Design) *float64 { return &of(d).Depth }),
		length(table.with("thickness"), from(Thinnest, widest), func(d *Design) *float64 { return &of(d).Thickness }),
		choice(table.with("faces"), []string{"lean", "plumb"}, func(d *Design, i int) { of(d).Plumb = i == 1 }),
		length(table.with("inset"), from(0, widest), func(d *Design) *float64 { return &of(d).Inset }),
		length(table.with("tenon"), from(Thinnest, widest).orNone(), func(d *Design) *float64 { return &of(d).Tenon }),
		length(table.with("upper-cut"), upTo(widest).orNone(), func(d *Design) *float64 { return &of(d).UpperCut }),
		length(table.with("lower-cut"), from(0, widest), func(d *Design) *float64 { return &of(d).LowerCut }),
		length(table.with("tenon-length"), upTo(widest).orNone(), func(d *Design) *float64 { return &of(d).Long }),
	}
}

func frameSetters() []setter {
	return []setter{
		{[]Key{"frame.length", "frame.width"}, []measure.ID{"aprons.between"}},
		{[]Key{"frame.legs.rake", "frame.legs.splay"}, []measure.ID{"aprons.foot-side"}},
		{[]Key{"frame.legs.faces"}, []measure.ID{"aprons.turn"}},
		{[]Key{"frame.top.corner-size"}, []measure.ID{"frame.outline.clip", "frame.outline.round"}},
		{[]Key{"frame.top.overhang", "frame.length", "frame.width"}, []measure.ID{"frame.outline.side", "frame.outline.reach"}},
		{[]Key{"frame.top.diameter", "frame.top.overhang", "frame.length", "frame.width"}, []measure.ID{"frame.outline.diameter"}},
		{[]Key{"frame.milled.legs", "frame.milled.aprons", "frame.legs.size", "frame.aprons.thickness", "frame.aprons.inset"}, []measure.ID{"aprons.tenon-long"}},
	}
}
