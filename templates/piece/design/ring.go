package design

import (
	_ "embed"
	"slices"

	"rodsheet/geometry"
	"rodsheet/geometry/joint"
	"rodsheet/geometry/measure"
)

func ringSchema() schema {
	lean := leanKeys[:]
	height := []Key{"legs.height", "legs.frame-height"}
	return schema{
		name:   "ring",
		tables: []Key{"ring", "legs", "legs.taper", "top", "top.pads", "top.fixing", "milled"},
		fields: func() []field[Design] { return slices.Concat(ringFields(), legFields(), topFields(), milledFields()) },
		groups: [][]Key{lean, height, {"legs.mid-to-leg", "legs.clear"}, {"top.diameter", "top.overhang"}},
		milled: map[Key]Key{
			"milled.width": "ring.width", "milled.depth": "ring.depth", "milled.breadth": "legs.breadth", "milled.kerf": "saw.kerf",
		},
		needs: []need{
			{"top", "top.kind", []string{"glass", "wood"}, "none", true},
			{"top.pads", "top.pads.kind", []string{"pad", "bumper"}, "pad", true},
			{"legs.taper", "legs.taper.faces", taperedFaces()[1:], "one", true},
			{"ring.horn", "ring.plain-end", []string{"open", "closed"}, "open", false},
			{"ring.slack", "ring.plain-end", []string{"closed"}, "open", false},
			{"top.diameter", "top.outline", []string{"round"}, "round", false},
			{"top.overhang", "top.outline", []string{"round", "ring"}, "round", false},
			{"top.corner", "top.outline", []string{"ring", "free"}, "round", false},
			{"top.corner-size", "top.outline", []string{"ring", "free"}, "round", false},
			{"top.corner-size", "top.corner", topCorners()[ClippedCorner:], topCorners()[SharpCorner], false},
			{"top.points", "top.outline", []string{"free"}, "round", false},
			{"top.fixing.kind", "top.kind", []string{"wood"}, "none", false},
			{"top.fixing.bond", "top.kind", []string{"glass"}, "none", false},
			{"top.fixing.bond", "top.pads.kind", []string{"none", "pad"}, "pad", false},
			{"top.fixing.screw", "top.fixing.kind", []string{"screws", "buttons"}, "none", false},
		},
		must: slices.Concat(
			each("ring.sides", "ring.inside", "ring.width", "ring.depth", "legs.breadth"),
			[][]Key{lean, height},
			each("legs.taper.start", "legs.taper.foot", "top.kind", "top.thickness", "top.points", "top.corner-size",
				"top.pads.diameter", "top.pads.height")),
		optional: []Key{"top"},
		setters:  ringSetters(lean),
		stock:    []Key{"ring.width", "ring.depth", "legs.breadth"},
		has:      ringHas,
		aside:    []Key{"top.pads", "top.fixing", "milled"},
		start:    starting{text: ringText, fewest: joint.RingFewest, most: joint.RingMost, usual: 3, titles: tableTitles},
	}
}

//go:embed start/ring.toml
var ringText string

var leanKeys = [...]Key{BySplay: "legs.splay", ByFootCircle: "legs.foot-circle", ByFootSpread: "legs.foot-spread"}

func ringHas(d *Design, key Key) bool {
	switch key {
	case "legs.splay", "legs.foot-circle", "legs.foot-spread":
		return slices.Index(leanKeys[:], key) == int(d.Legs.Lean)
	case "legs.height":
		return d.Legs.To == Overall
	case "legs.frame-height":
		return d.Legs.To == ToFrame
	}
	return !(Key("top").holds(key) && d.Top.Kind == NoTop || Key("top.pads").holds(key) && d.Top.Pads.Diameter == 0 || Key("legs.taper").holds(key) && d.Legs.Taper == nil)
}

func milledFields() []field[Design] {
	return []field[Design]{
		length("milled.width", upTo(widest).orNone(), func(d *Design) *float64 { return &d.Milled.Width }),
		length("milled.depth", upTo(widest).orNone(), func(d *Design) *float64 { return &d.Milled.Depth }),
		length("milled.breadth", upTo(widest).orNone(), func(d *Design) *float64 { return &d.Milled.Breadth }),
		length("milled.kerf", upTo(WidestKerf).orNone(), func(d *Design) *float64 { return &d.Milled.Kerf }),
	}
}

func ringFields() []field[Design] {
	return []field[Design]{
		count("ring.sides", from(joint.RingFewest, joint.RingMost), func(d *Design) *int { return &d.Ring.Sides }),
		length("ring.inside", upTo(Longest), func(d *Design) *float64 { return &d.Ring.Inside }),
		length("ring.width", from(Thinnest, widest), func(d *Design) *float64 { return &d.Ring.Width }),
		length("ring.depth", from(Thinnest, widest), func(d *Design) *float64 { return &d.Ring.Depth }),
		choice("ring.leg-end", []string{"under", "over"}, func(d *Design, i int) { d.Ring.LegEndOver = i == 1 }),
		pick("ring.plain-end", []string{"flush", "open", "closed"}, func(d *Design) *PlainEnd { return &d.Ring.Plain }),
		length("ring.horn", from(0, widest), func(d *Design) *float64 { return &d.Ring.Horn }),
		length("ring.slack", from(0, mostPlay), func(d *Design) *float64 { return &d.Ring.Slack }),
	}
}

func legFields() []field[Design] {
	steepest := from(0, measure.Degrees(joint.LeanSteepest))
	return []field[Design]{
		length("legs.breadth", from(Thinnest, widest), func(d *Design) *float64 { return &d.Legs.Breadth }),
		angle("legs.splay", steepest, lean(BySplay)),
		length("legs.foot-circle", upTo(widestCircle), lean(ByFootCircle)),
		length("legs.foot-spread", upTo(widestCircle), lean(ByFootSpread)),
		length("legs.height", upTo(Longest), height(Overall)),
		length("legs.frame-height", upTo(Longest), height(ToFrame)),
		length("legs.mid-to-leg", upTo(Longest).orNone(), func(d *Design) *float64 { return &d.Legs.At }),
		length("legs.clear", from(0, widest), func(d *Design) *float64 { return &d.Legs.Clear }),
		pick("legs.mortise", mortises(), func(d *Design) *joint.BridleMember { return &d.Legs.Mortise }),
		length("legs.tenon", from(Thinnest, widest).orNone(), func(d *Design) *float64 { return &d.Legs.Tenon }),
		length("legs.proud", from(0, widest), func(d *Design) *float64 { return &d.Legs.Proud }),
		length("legs.taper.start", from(0, 3000), func(d *Design) *float64 { return &taper(d).Start }),
		length("legs.taper.foot", from(Thinnest, 600), func(d *Design) *float64 { return &taper(d).Foot }),
		choice("legs.taper.faces", taperedFaces(), func(d *Design, i int) {
			if i > 0 {
				taper(d).Faces = joint.TaperFaces(i - 1)
			}
		}),
	}
}

func mortises() []string {
	return []string{joint.MortiseInStretcher.String(), joint.MortiseInLeg.String()}
}

// taperedFaces begin with a word for a size that drops the taper.
func taperedFaces() []string {
	words := []string{"none"}
	for f := joint.OneFace; f <= joint.FourFaces; f++ {
		words = append(words, f.String())
	}
	return words
}

func taper(d *Design) *Taper {
	if d.Legs.Taper == nil {
		d.Legs.Taper = &Taper{Faces: joint.OneFace}
	}
	return d.Legs.Taper
}

func lean(by Lean) func(*Design) *float64 {
	return func(d *Design) *float64 {
		d.Legs.Lean = by
		return &d.Legs.Given
	}
}

func height(to HeightTo) func(*Design) *float64 {
	return func(d *Design) *float64 {
		d.Legs.To = to
		return &d.Legs.Height
	}
}

func topFields() []field[Design] {
	return []field[Design]{
		pick("top.kind", []string{"none", "glass", "wood"}, func(d *Design) *TopKind { return &d.Top.Kind }),
		pick("top.outline", []string{"round", "ring", "free"}, func(d *Design) *TopOutline { return &d.Top.Outline }),
		length("top.thickness", from(Thinnest, ThickestTop), func(d *Design) *float64 { return &d.Top.Thickness }),
		length("top.diameter", upTo(Longest).orNone(), func(d *Design) *float64 { return &d.Top.Diameter }),
		length("top.overhang", from(-widest, Longest), func(d *Design) *float64 { return &d.Top.Overhang }),
		pick("top.corner", topCorners(), func(d *Design) *Corner { return &d.Top.Corner }),
		length("top.corner-size", upTo(Longest).orNone(), func(d *Design) *float64 { return &d.Top.CornerSize }),
		points("top.points", func(d *Design) *[]geometry.Point { return &d.Top.Points }),
		choice("top.pads.kind", []string{"none", "pad", "bumper"}, func(d *Design, i int) { d.Top.Pads.Bumpers = i == 2 }),
		length("top.pads.diameter", from(Thinnest, widest), func(d *Design) *float64 {
			d.Top.Pads.Outermost = true
			return &d.Top.Pads.Diameter
		}),
		length("top.pads.height", from(Thinnest, widest), func(d *Design) *float64 { return &d.Top.Pads.Height }),
		length("top.pads.mid-to-pad", from(-Longest, Longest), func(d *Design) *float64 {
			d.Top.Pads.Outermost = false
			return &d.Top.Pads.At
		}),
		pick("top.fixing.kind", fixingKinds(), func(d *Design) *FixingKind { return &d.Top.Fixing.Kind }),
		length("top.fixing.screw", from(0, longestScrew), func(d *Design) *float64 { return &d.Top.Fixing.Screw }),
		pick("top.fixing.bond", []string{"none", "silicone"}, func(d *Design) *Bond { return &d.Top.Fixing.Bond }),
	}
}

// In the order of their constants.
func topCorners() []string { return []string{"sharp", "clipped", "rounded"} }

// In the order of their constants.
func fixingKinds() []string { return []string{"none", "screws", "buttons"} }

func ringSetters(lean []Key) []setter {
	return []setter{
		{[]Key{"ring.sides"}, []measure.ID{"ring.stretchers", "polygon.sides", "sides", "standing.feet", "triangle.angle", "lap.angle"}},
		{[]Key{"ring.inside"}, []measure.ID{"lap.at", "polygon.apothem"}},
		{[]Key{"milled.width", "ring.width"}, []measure.ID{"bridle.width", "movement.width", "lap.width", "ring.width", "leg.thickness", "lap.crossing-width", "milled.width"}},
		{[]Key{"milled.depth", "ring.depth"}, []measure.ID{"bridle.depth", "lap.depth", "ring.depth", "milled.depth"}},
		{[]Key{"ring.horn", "ring.inside"}, []measure.ID{"ring.horn", "ring.reach"}},
		{[]Key{"milled.breadth", "legs.breadth"}, []measure.ID{"leg.breadth", "legs.breadth", "bridle.leg", "taper.top", "milled.breadth"}},
		{[]Key{"legs.frame-height", "legs.height"}, []measure.ID{"leg.height", "legs.height", "taper.length", "legs.height-to"}},
		{lean, []measure.ID{"bridle.splay", "leg.splay", "legs.foot-circle", "standing.foot-radius", "legs.foot-spread", "legs.lean"}},
		{[]Key{"legs.mid-to-leg", "legs.clear"}, []measure.ID{"leg.at", "legs.clear"}},
		{[]Key{"legs.tenon", "milled.width", "ring.width"}, []measure.ID{"frame.head", "bridle.tenon", "legs.tenon"}},
		{[]Key{"legs.mortise"}, []measure.ID{"bridle.mortise"}},
		{[]Key{"legs.taper.start"}, []measure.ID{"taper.start", "taper.run"}},
		{[]Key{"legs.taper.foot"}, []measure.ID{"taper.foot", "legs.taper.across"}},
		{[]Key{"legs.taper.faces"}, []measure.ID{"taper.faces"}},
		{[]Key{"top.thickness"}, []measure.ID{"glass.thickness"}},
		{[]Key{"top.diameter", "top.overhang", "top.points"}, []measure.ID{"glass.area", "standing.rim", "top.diameter", "outline.diameter", "top.radius", "top.apothem"}},
		{[]Key{"top.corner-size"}, []measure.ID{"polygon.clip", "outline.clip", "outline.round"}},
		{[]Key{"top.points", "top.corner-size", "top.overhang"}, []measure.ID{"outline.corner", "outline.corners", "top.points", "outline.reach", "outline.side", "outline.turns"}},
		{[]Key{"milled.kerf", "saw.kerf"}, []measure.ID{"lap.kerf", "saw.kerf", "milled.kerf"}},
	}
}
