package design

import (
	"slices"
	"sync"

	"rodsheet/geometry/joint"
	"rodsheet/geometry/measure"
)

// Limits that the geometry does not set; what lies outside is a slip of the
// keyboard. Lengths in mm. Common practice, no source.
const (
	widest       = 1_000  // a side of stock
	widestCircle = 20_000 // through the feet
	mostPlay     = 10
	mostSizes    = 12
	mostBoards   = 200
	mostItems    = 60
	longestScrew = 300
	titleLetters = 120
	makerLetters = 80
	noteLetters  = 400
	nameLetters  = 40
	coinLetters  = 8 // of a currency
)

// Limits that hold for a design however it was made, beyond any furniture
// (common practice, no source).
const (
	Longest     = 10_000.0 // mm, of a part, a height
	Thinnest    = 1.0      // mm, of stock, and of what is left of it
	ThickestTop = 200.0    // mm
	WidestKerf  = 12.0     // mm, of one blade; wider is a dado set
	MostPoints  = 100      // of a free outline
	MostPrice   = 1e6      // of one
	MostDense   = 1500.0   // kg/m³: the densest woods come near 1300
)

// fields are all keys of a design, in the order in which they are applied.
var fields = sync.OnceValue(func() []field[Design] {
	return slices.Concat(headFields(), planFields(), ringFields(), legFields(), topFields(), woodFields(), sawFields(), buyingFields())
})

// An asked key is one that a maker may be asked for: of boards and items those of
// their tables.
type asked struct {
	key     Key
	kind    FormKind
	choices []string
	within  limits
	// read reports whether a value says no more than leaving the key out.
	read func(*node, measure.Unit) (idle bool, bad *fault)
}

func askedOf[T any](fields []field[T], table Key) []asked {
	var out []asked
	for _, f := range fields {
		read := func(n *node, u measure.Unit) (bool, *fault) {
			got, bad := f.read(n, u)
			return got.idle, bad
		}
		out = append(out, asked{table.with(string(f.key)), f.kind, f.choices, f.within, read})
	}
	return out
}

// allAsked are all keys that take a value, and the name of a size.
var allAsked = sync.OnceValue(func() map[Key]asked {
	name := line("name", nameLetters, func(d *Design) *string { return &d.Size })
	out := map[Key]asked{}
	for _, a := range slices.Concat(askedOf(fields(), ""), askedOf([]field[Design]{name}, ""),
		askedOf(boards().fields, "wood.board"), askedOf(items().fields, "item")) {
		if a.kind != rowsField {
			out[a.key] = a
		}
	}
	return out
})

// Outside returns the errors about figures of a design that are outside their
// limits, however it was made. What hangs on a key in doubt is not asked.
func (d Design) Outside(doubts Doubts) []error {
	var errs []error
	for _, f := range fields() {
		if f.outside == nil || !d.has(f.key) || len(doubts) > 0 && doubts.Any(hangsOn(f.key)...) {
			continue
		}
		if err := f.outside(&d); err != nil {
			errs = append(errs, err)
		}
	}
	return errs
}

// has reports whether a design goes by a key.
func (d Design) has(key Key) bool {
	switch key {
	case "legs.splay", "legs.foot-circle", "legs.foot-spread":
		return slices.Index(groups()[0], key) == int(d.Legs.Lean)
	case "legs.height":
		return d.Legs.To == Overall
	case "legs.frame-height":
		return d.Legs.To == ToFrame
	case "prices.wood-per-m3":
		return d.Prices.Wood.Unit == measure.Millimetre
	case "prices.wood-per-board-foot":
		return d.Prices.Wood.Unit != measure.Millimetre
	case "prices.glass-per-m2":
		return d.Prices.Glass.Unit == measure.Millimetre
	case "prices.glass-per-square-foot":
		return d.Prices.Glass.Unit != measure.Millimetre
	}
	return !(Key("top").holds(key) && d.Top.Kind == NoTop || Key("top.pads").holds(key) && d.Top.Pads.Diameter == 0 ||
		Key("legs.taper").holds(key) && d.Legs.Taper == nil)
}

// hangsOn returns the keys that say whether a design goes by another.
func hangsOn(key Key) []Key {
	switch {
	case Key("top.pads").holds(key):
		return []Key{"top.kind", "top.pads.diameter"}
	case Key("top").holds(key):
		return []Key{"top.kind"}
	}
	return alternatives(key)
}

func headFields() []field[Design] {
	return []field[Design]{
		line("title", titleLetters, func(d *Design) *string { return &d.Title }),
		choice("units", []string{"mm", "in"}, func(*Design, int) {}), // read before all others
	}
}

func planFields() []field[Design] {
	return []field[Design]{
		line("plan.maker", makerLetters, func(d *Design) *string { return &d.Plan.Maker }),
		date("plan.date", nameLetters, func(d *Design) *string { return &d.Plan.Date }),
		line("plan.revision", nameLetters, func(d *Design) *string { return &d.Plan.Revision }),
		line("plan.note", noteLetters, func(d *Design) *string { return &d.Plan.Note }),
	}
}

func ringFields() []field[Design] {
	return []field[Design]{
		count("ring.sides", from(joint.RingFewest, joint.RingMost), func(d *Design) *int { return &d.Ring.Sides }),
		length("ring.inside", upTo(Longest), func(d *Design) *float64 { return &d.Ring.Inside }),
		length("ring.width", from(Thinnest, widest), func(d *Design) *float64 { return &d.Ring.Width }),
		length("ring.depth", from(Thinnest, widest), func(d *Design) *float64 { return &d.Ring.Depth }),
		choice("ring.leg-end", []string{"under", "over"}, func(d *Design, i int) { d.Ring.LegEndOver = i == 1 }),
		pick("ring.plain-end", plainEnds(), func(d *Design) *PlainEnd { return &d.Ring.Plain }),
		length("ring.horn", from(0, widest), func(d *Design) *float64 { return &d.Ring.Horn }),
		length("ring.slack", from(0, mostPlay), func(d *Design) *float64 { return &d.Ring.Slack }),
	}
}

// In the order of their constants.
func plainEnds() []string { return []string{"flush", "open", "closed"} }

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
		pick("top.corner", []string{"sharp", "clipped", "rounded"}, func(d *Design) *Corner { return &d.Top.Corner }),
		length("top.corner-size", upTo(Longest).orNone(), func(d *Design) *float64 { return &d.Top.CornerSize }),
		{key: "top.points", kind: PointsField, within: corners(), read: readPoints},
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
		pick("top.fixing.kind", []string{"none", "screws", "buttons"}, func(d *Design) *FixingKind { return &d.Top.Fixing.Kind }),
		length("top.fixing.screw", from(0, longestScrew), func(d *Design) *float64 { return &d.Top.Fixing.Screw }),
		pick("top.fixing.bond", []string{"none", "silicone"}, func(d *Design) *Bond { return &d.Top.Fixing.Bond }),
	}
}

func woodFields() []field[Design] {
	return []field[Design]{
		line("wood.species", titleLetters, func(d *Design) *string { return &d.Wood.Species }),
		// From balsa to the heaviest woods that sink: common practice, no source.
		number("wood.density", from(50, MostDense).orNone(), func(d *Design) *float64 { return &d.Wood.Density }),
		{key: "wood.moisture", kind: RangeField, within: moistures(), read: readMoisture},
		length("wood.rough-length", from(0, widest), func(d *Design) *float64 { return &d.Wood.ExtraLength }),
		length("wood.rough-width", from(0, 100), func(d *Design) *float64 { return &d.Wood.ExtraWidth }),
		length("wood.rough-thickness", from(0, 100), func(d *Design) *float64 { return &d.Wood.ExtraThickness }),
		count("wood.spares", from(0, 100), func(d *Design) *int { return &d.Wood.Spares }),
		count("wood.tests", from(0, 100), func(d *Design) *int { return &d.Wood.Tests }),
		percent("wood.waste", from(0, 300), func(d *Design) *float64 { return &d.Wood.Waste }),
		listOf("wood.board", boards(), func(d *Design) *[]Board { return &d.Wood.Boards }),
	}
}

func boards() entries[Board] {
	return entries[Board]{
		most: mostBoards, fresh: Board{Count: 1}, must: []Key{"length", "width", "thickness"},
		list: listOfBoards, one: aBoard, inline: boardsInline, hint: boardsHint, many: tooManyBoards, sharing: sharedEntry,
		fields: []field[Board]{
			length("length", upTo(Longest), func(b *Board) *float64 { return &b.Length }),
			length("width", upTo(2*widest), func(b *Board) *float64 { return &b.Width }),
			length("thickness", upTo(widest), func(b *Board) *float64 { return &b.Thickness }),
			count("count", from(1, 1000).orNone(), func(b *Board) *int { return &b.Count }),
		},
	}
}

func buyingFields() []field[Design] {
	rate := func(key Key, unit measure.Unit, of func(*Design) *Rate) field[Design] {
		return number(key, from(0, MostPrice), func(d *Design) *float64 {
			of(d).Given, of(d).Unit = true, unit
			return &of(d).Value
		})
	}
	wood := func(d *Design) *Rate { return &d.Prices.Wood }
	glass := func(d *Design) *Rate { return &d.Prices.Glass }
	return []field[Design]{
		listOf("item", items(), func(d *Design) *[]Item { return &d.Items }),
		line("prices.currency", coinLetters, func(d *Design) *string { return &d.Prices.Currency }),
		rate("prices.wood-per-m3", measure.Millimetre, wood),
		rate("prices.wood-per-board-foot", measure.Inch, wood),
		rate("prices.glass-per-m2", measure.Millimetre, glass),
		rate("prices.glass-per-square-foot", measure.Inch, glass),
	}
}

func items() entries[Item] {
	return entries[Item]{
		most: mostItems, fresh: Item{Count: 1}, must: []Key{"name"},
		list: listOfItems, one: anItem, inline: itemsInline, hint: itemsHint, many: tooManyItems, sharing: sharedItem,
		fields: []field[Item]{
			line("name", makerLetters, func(i *Item) *string { return &i.Name }),
			count("count", from(1, 10_000), func(i *Item) *int { return &i.Count }),
			line("note", titleLetters, func(i *Item) *string { return &i.Note }),
			number("price", from(0, MostPrice), func(i *Item) *float64 {
				i.Price.Given = true
				return &i.Price.Value
			}),
		},
	}
}

func sawFields() []field[Design] {
	return []field[Design]{
		length("saw.kerf", upTo(WidestKerf), func(d *Design) *float64 { return &d.Saw.Kerf }),
		boolean("saw.flat-tooth", func(d *Design) *bool { return &d.Saw.FlatTooth }),
		length("saw.blade-height", upTo(widest).orNone(), func(d *Design) *float64 { return &d.Saw.Highest }),
		length("saw.dado", upTo(100).orNone(), func(d *Design) *float64 { return &d.Saw.Dado }),
		length("saw.stop-reach", upTo(Longest).orNone(), func(d *Design) *float64 { return &d.Saw.StopReach }),
		choice("saw.gauge", []string{"square", "fence"}, func(d *Design, i int) { d.Saw.FromFence = i == 1 }),
		length("milled.width", upTo(widest).orNone(), func(d *Design) *float64 { return &d.Milled.Width }),
		length("milled.depth", upTo(widest).orNone(), func(d *Design) *float64 { return &d.Milled.Depth }),
		length("milled.breadth", upTo(widest).orNone(), func(d *Design) *float64 { return &d.Milled.Breadth }),
		length("milled.kerf", upTo(WidestKerf).orNone(), func(d *Design) *float64 { return &d.Milled.Kerf }),
	}
}

// tables are the tables of a design; all but the boards and items stand once.
func tables() []Key {
	return []Key{"plan", "ring", "legs", "legs.taper", "top", "top.pads", "top.fixing", "wood", "saw", "milled", "prices"}
}

// forAll reports whether a key holds for all sizes and is none of a size's own.
func (k Key) forAll() bool {
	return slices.ContainsFunc([]Key{"title", "units", "plan", "item", "prices"}, func(head Key) bool { return k == head || head.holds(k) })
}

// groups are the keys of which one at most is given.
func groups() [][]Key {
	return [][]Key{
		{"legs.splay", "legs.foot-circle", "legs.foot-spread"},
		{"legs.height", "legs.frame-height"},
		{"legs.mid-to-leg", "legs.clear"},
		{"top.diameter", "top.overhang"},
		{"prices.wood-per-m3", "prices.wood-per-board-foot"},
		{"prices.glass-per-m2", "prices.glass-per-square-foot"},
	}
}

// measures are the keys that say how another figure came out, with the key of
// that figure.
func measures() map[Key]Key {
	return map[Key]Key{
		"milled.width": "ring.width", "milled.depth": "ring.depth", "milled.breadth": "legs.breadth", "milled.kerf": "saw.kerf",
	}
}

// A need says for which words of another key a key has a meaning. A table
// stands for all that it holds but the other key itself.
type need struct {
	key, of  Key
	words    []string
	standard string // the word of the other key where it is left out
	quiet    bool   // passed over without a mistake
}

var needs = sync.OnceValue(func() []need {
	return []need{
		{"top", "top.kind", []string{"glass", "wood"}, "none", true},
		{"top.pads", "top.pads.kind", []string{"pad", "bumper"}, "pad", true},
		{"legs.taper", "legs.taper.faces", taperedFaces()[1:], "one", true},
		{"ring.horn", "ring.plain-end", []string{"open", "closed"}, "open", false},
		{"ring.slack", "ring.plain-end", []string{"closed"}, "open", false},
		{"top.diameter", "top.outline", []string{"round"}, "round", false},
		{"top.overhang", "top.outline", []string{"round", "ring"}, "round", false},
		{"top.corner", "top.outline", []string{"ring", "free"}, "round", false},
		{"top.corner-size", "top.outline", []string{"ring", "free"}, "round", false},
		{"top.corner-size", "top.corner", []string{"clipped", "rounded"}, "sharp", false},
		{"top.points", "top.outline", []string{"free"}, "round", false},
		{"top.fixing.kind", "top.kind", []string{"wood"}, "none", false},
		{"top.fixing.bond", "top.kind", []string{"glass"}, "none", false},
		{"top.fixing.bond", "top.pads.kind", []string{"none", "pad"}, "pad", false},
		{"top.fixing.screw", "top.fixing.kind", []string{"screws", "buttons"}, "none", false},
	}
})

// touches reports whether the need is one of the key.
func (n need) touches(key Key) bool {
	return key != n.of && (key == n.key && !slices.Contains(tables(), key) || n.key.holds(key))
}

// A demand is a key that must be given, or one of several: where the table is
// there at all, and where the word of another key is one of some.
type demand struct {
	keys     []Key
	optional bool // asked only where the table is there
	of       Key
	words    []string
	standard string
}

func demands() []demand {
	some, taper := []string{"glass", "wood"}, taperedFaces()[1:]
	return []demand{
		{keys: []Key{"ring.sides"}},
		{keys: []Key{"ring.inside"}},
		{keys: []Key{"ring.width"}},
		{keys: []Key{"ring.depth"}},
		{keys: []Key{"legs.breadth"}},
		{keys: groups()[0]},
		{keys: groups()[1]},
		{keys: []Key{"legs.taper.start"}, optional: true, of: "legs.taper.faces", words: taper, standard: "one"},
		{keys: []Key{"legs.taper.foot"}, optional: true, of: "legs.taper.faces", words: taper, standard: "one"},
		{keys: []Key{"top.kind"}, optional: true},
		{keys: []Key{"top.thickness"}, optional: true, of: "top.kind", words: some},
		{keys: []Key{"top.points"}, optional: true, of: "top.outline", words: []string{"free"}},
		{keys: []Key{"top.corner-size"}, optional: true, of: "top.corner", words: []string{"clipped", "rounded"}},
		{keys: []Key{"top.pads.diameter"}, optional: true, of: "top.pads.kind", words: []string{"pad", "bumper"}, standard: "pad"},
		{keys: []Key{"top.pads.height"}, optional: true, of: "top.pads.kind", words: []string{"pad", "bumper"}, standard: "pad"},
		{keys: []Key{"wood.species", "wood.density"}},
		{keys: []Key{"saw.kerf"}},
	}
}
