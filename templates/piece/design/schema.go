package design

import (
	"fmt"
	"maps"
	"slices"
	"strings"
	"sync"

	"rodsheet/geometry/lists"
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
	return every(slices.Concat(headFields(), planFields()), func(s schema) []field[Design] { return s.fields() }, woodFields(), sawFields(), buyingFields())
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
// limits, however it was made. What hangs on a key in doubt is not asked; a figure that has
// no meaning beside the words of a design is, where it is not 0: no file gives one.
func (d Design) Outside(doubts Doubts) []error {
	var errs []error
	for _, f := range fields() {
		if f.outside == nil || !d.has(f.key) || f.unset != nil && f.unset(&d) && !d.means(f.key) ||
			len(doubts) > 0 && (doubts[f.key] || doubts.Any(hangsOn(f.key)...)) {
			continue
		}
		if err := f.outside(&d); err != nil {
			errs = append(errs, err)
		}
	}
	return errs
}

// Figure returns what finds the figure of a key in a design, and whether that is an angle.
// Finding it makes the design go by that key: find it in a copy.
func (k Key) Figure() (at func(*Design) *float64, angle bool) {
	if f := fieldOf(k); f != nil {
		return f.at, f.kind == AngleField
	}
	return nil, false
}

// fieldOf returns that of a key, nil where there is none.
func fieldOf(k Key) *field[Design] {
	all := fields()
	for i := range all {
		if all[i].key == k {
			return &all[i]
		}
	}
	return nil
}

// GoesBy reports whether a design goes by the figure of a key: how a size was planed only
// where that is given.
func (d Design) GoesBy(k Key) bool {
	if _, milled := measures()[k]; milled {
		at, _ := k.Figure()
		return d.has(k) && *at(&d) > 0
	}
	return d.has(k) && d.means(k)
}

func (d *Design) has(key Key) bool {
	switch key {
	case "prices.wood-per-m3":
		return d.Prices.Wood.Unit == measure.Millimetre
	case "prices.wood-per-board-foot":
		return d.Prices.Wood.Unit != measure.Millimetre
	case "prices.glass-per-m2":
		return d.Prices.Glass.Unit == measure.Millimetre
	case "prices.glass-per-square-foot":
		return d.Prices.Glass.Unit != measure.Millimetre
	}
	k, s, own := schemaOf(key)
	return !own || k == d.Kind && s.has(d, key)
}

// means reports whether the words of a design give a key a meaning.
func (d *Design) means(key Key) bool {
	return !slices.ContainsFunc(hangings()[key], func(n hanging) bool { return n.held != nil && !slices.Contains(n.words, n.held(d)) })
}

// A hanging is a need of a key with the word of the other key that a design holds; held is
// nil where it follows from other figures.
type hanging struct {
	need
	held func(*Design) string
}

// hangings are the needs of every key within its kind.
var hangings = sync.OnceValue(func() map[Key][]hanging {
	held := map[Key]func(*Design) string{}
	for _, f := range fields() {
		held[f.key] = f.word
	}
	out := map[Key][]hanging{}
	for _, f := range fields() {
		for _, n := range needs() {
			if n.of != "kind" && n.touches(f.key) {
				out[f.key] = append(out[f.key], hanging{n, held[n.of]})
			}
		}
	}
	return out
})

// hangsOn returns the keys that say whether a design goes by another.
func hangsOn(key Key) []Key {
	out := alternatives(key)
	for _, n := range hangings()[key] {
		out = append(out[:len(out):len(out)], n.of)
	}
	_, s, _ := schemaOf(key)
	for k := key; k != everything; k = k.table() {
		out = slices.Concat(out, s.hangsOn[k])
	}
	return out
}

// Draws reports whether a table is one by which a kind of piece is drawn: not what hangs
// on another that may be left out, nor how sizes came out.
func (k Key) Draws() bool {
	_, s, own := schemaOf(k)
	return own && !slices.Contains(s.aside, k)
}

func (k Key) root() Key {
	head, _, _ := strings.Cut(string(k), ".")
	return Key(head)
}

// schemaOf returns the kind of piece whose table a key stands in; own is false and the
// schema empty for a key of all kinds.
func schemaOf(key Key) (k Kind, s *schema, own bool) {
	if k, own = kindOfTable()[key.root()]; own {
		return k, &schemas()[k], true
	}
	return 0, noSchema, false
}

var noSchema = &schema{}

// kindOfTable holds the kinds by the tables that are theirs alone.
var kindOfTable = sync.OnceValue(func() map[Key]Kind {
	out := map[Key]Kind{}
	for k, s := range schemas() {
		for _, t := range s.tables {
			out[t] = Kind(k)
		}
	}
	return out
})

func headFields() []field[Design] {
	return []field[Design]{
		line("title", titleLetters, func(d *Design) *string { return &d.Title }),
		pick("kind", Kinds(), func(d *Design) *Kind { return &d.Kind }),
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
	}
}

// A schema is what the designs of one kind of piece say that others do not.
type schema struct {
	name   string // the word of the key "kind"
	tables []Key
	fields func() []field[Design]
	groups [][]Key     // keys of which one at most is given
	milled map[Key]Key // keys that say how another figure came out, with the key of that figure
	needs  []need
	// must are keys of which one has to be given, where their table is there that needs
	// not be, and where the words of other keys give it a meaning.
	must     [][]Key
	optional []Key // tables that need not be there
	setters  []setter
	stock    []Key // thicknesses of stock, by which inches are told from millimetres
	// has reports whether a design goes by a key of its tables, as far as figures say so
	// and not the words of needs. hangsOn holds those figures, by key or table.
	has     func(*Design, Key) bool
	hangsOn map[Key][]Key
	aside   []Key // optional tables and those of measured stock: closed on the page at first
	start   starting
}

// schemas are the kinds of piece in the order of their constants.
var schemas = sync.OnceValue(func() []schema { return []schema{ringSchema(), apronsSchema(), boxSchema(), seatSchema()} })

// Kinds are the words for the kinds of piece, in the order of their constants.
func Kinds() []string { return lists.Map(schemas(), func(s schema) string { return s.name }) }

// String returns the word of the design file for a kind.
func (k Kind) String() string {
	if words := Kinds(); int(k) < len(words) {
		return words[k]
	}
	return fmt.Sprintf("Kind(%d)", uint8(k))
}

// every returns what all kinds have of something, between what is shared.
func every[T any](shared []T, of func(schema) []T, behind ...[]T) []T {
	all := [][]T{shared}
	for _, s := range schemas() {
		all = append(all, of(s))
	}
	return slices.Concat(append(all, behind...)...)
}

// tables are the tables of a design; all but the boards and items stand once.
var tables = sync.OnceValue(func() []Key {
	return every([]Key{"plan"}, func(s schema) []Key { return s.tables }, []Key{"wood", "saw", "prices"})
})

// forAll reports whether a key holds for all sizes and is none of a size's own.
func (k Key) forAll() bool {
	return slices.ContainsFunc([]Key{"title", "kind", "units", "plan", "item", "prices"}, func(head Key) bool { return k == head || head.holds(k) })
}

// groups are the keys of which one at most is given.
var groups = sync.OnceValue(func() [][]Key {
	return append(every(nil, func(s schema) [][]Key { return s.groups }),
		[]Key{"prices.wood-per-m3", "prices.wood-per-board-foot"},
		[]Key{"prices.glass-per-m2", "prices.glass-per-square-foot"})
})

// measures are the keys that say how another figure came out, with the key of
// that figure.
var measures = sync.OnceValue(func() map[Key]Key {
	out := map[Key]Key{}
	for _, s := range schemas() {
		maps.Copy(out, s.milled)
	}
	return out
})

// A need says for which words of another key a key has a meaning. A table
// stands for all that it holds but the other key itself.
type need struct {
	key, of  Key
	words    []string
	standard string // the word of the other key where it is left out
	quiet    bool   // passed over without a mistake
}

// needs are those of all kinds. A table of one kind means nothing in another.
var needs = sync.OnceValue(func() []need {
	standard := schemas()[RingKind].name
	own := every(nil, func(s schema) []need {
		var out []need
		for _, t := range s.tables {
			if t.table() == everything {
				out = append(out, need{key: t, of: "kind", words: []string{s.name}, standard: standard})
			}
		}
		return out
	})
	return every(own, func(s schema) []need { return s.needs })
})

// touches reports whether the need is one of the key. The table of another kind is
// itself a mistake, not only what stands in it.
func (n need) touches(key Key) bool {
	return key != n.of && (key == n.key && (n.of == "kind" || !slices.Contains(tables(), key)) || n.key.holds(key))
}

// musts are keys of which one has to be given, by all kinds.
var musts = sync.OnceValue(func() [][]Key {
	own := every(nil, func(s schema) [][]Key { return s.must })
	return append(own, []Key{"wood.species", "wood.density"}, []Key{"saw.kerf"})
})

func each(keys ...Key) (out [][]Key) {
	return lists.Map(keys, func(key Key) []Key { return []Key{key} })
}
