package design

import (
	"slices"
	"strconv"
	"strings"
	"sync"

	"rodsheet/geometry/lists"
	"rodsheet/geometry/measure"
)

// A Form is what a page asks of a maker: every key with its words, in the order of the
// starting file.
type Form struct {
	Unit   measure.Unit
	Sizes  []string // their names; one "" where the file has none
	Groups []FormGroup
}

// A FormGroup is a table of the design.
type FormGroup struct {
	Table   Key
	Words   string // what the starting file says of it; may be empty
	Fields  []FormField
	Rows    int  // how many there are of a table that may stand several times
	Repeats bool // it is one
}

// A FormField is a key that takes a value.
type FormField struct {
	Key     Key
	Words   string // what the starting file says of it
	Kind    FormKind
	Choices []string // the words of a choice; woods to suggest
	Limits  string   // as an error would say them, in the unit of the file; "" for none
	// Least and Most are the same as figures: lengths in the unit of the file,
	// angles in degrees. Both are 0 where there are none.
	Least, Most float64
	Given       string // as written for all sizes, without quotes; "" if not there
	// Own is the same for each of the sizes, as the size itself names it; for each
	// row of a table that may stand several times. None for what sizes cannot have.
	Own      []string
	Standard string // what holds where it is left out; "" if that is nothing, or follows from other figures
	Idle     bool   // it means nothing as the design stands, in none of the sizes
}

// FormOf returns the form of a design. It goes as far as the text can be read: the
// error is about one that is no plain text.
func FormOf(text []byte) (Form, error) {
	src, bad := open(text)
	if bad != nil {
		return Form{}, Mistakes{*bad}
	}
	l := survey(src.text)
	f := Form{Unit: l.unit(), Sizes: l.sizeNames()}
	asked, standards, idle := allAsked(), standards(l.kind(), f.Unit), l.idle()
	for _, g := range explained(l.kind(), f.Unit) {
		g.Fields = slices.Clone(g.Fields)
		g.Repeats = slices.Contains(rowTables(), g.Table)
		g.Rows = l.rows[g.Table]
		for i := range g.Fields {
			one := &g.Fields[i]
			a := asked[one.Key]
			one.Kind, one.Choices = a.kind, a.choices
			if one.Key == "wood.species" {
				one.Choices = woods()
			}
			one.Limits, one.Least, one.Most = a.limits(f.Unit)
			if one.Standard = standards[one.Key]; l.leftOut(g.Table) && slices.Contains(a.choices, noneWord) {
				one.Standard = noneWord
			}
			one.Idle = idle(one.Key)
			one.Given, one.Own = l.given(one.Key)
		}
		f.Groups = append(f.Groups, g)
	}
	return f, nil
}

// noneWord is the choice of what a table holds that is left out as a whole.
const noneWord = "none"

func (l layout) leftOut(table Key) bool {
	for size := range l.sizes + 1 {
		if l.written(table, scope{size: size}) {
			return false
		}
	}
	return true
}

// explained are the groups of a form with their words: the starting file of a kind
// explains every key, and the form says the same.
func explained(k Kind, u measure.Unit) []FormGroup { return everyForm()[formKey{k, u}] }

type formKey struct {
	kind Kind
	unit measure.Unit
}

var everyForm = sync.OnceValue(func() map[formKey][]FormGroup {
	out := map[formKey][]FormGroup{}
	for i, s := range schemas() {
		for _, u := range []measure.Unit{measure.Millimetre, measure.Inch} {
			if text, err := Start(Kind(i), s.start.usual, u); err == nil {
				out[formKey{Kind(i), u}] = survey(text).explained()
			}
		}
	}
	return out
})

// explained are the groups of a text with the comments that stand by their keys.
func (l layout) explained() []FormGroup {
	var out []FormGroup
	for part, s := range l.sections {
		if s.size == noSize {
			continue
		}
		g := FormGroup{Table: s.table, Words: l.comment(s.line.from+strings.IndexByte(l.of(s.line), ']')+1, s.line)}
		for _, e := range l.entries {
			if e.part == part {
				g.Fields = append(g.Fields, FormField{Key: e.key, Words: l.comment(e.whole.to, e.lines)})
			}
		}
		out = append(out, g)
	}
	return out
}

// comment returns what is said behind an offset of a line and in the comments that go
// on with it.
func (l layout) comment(behind int, line span) string {
	_, first, _ := strings.Cut(l.of(span{behind, line.to}), "#")
	words := strings.Fields(first)
	for more := range strings.Lines(l.of(span{line.to, l.behindComments(line.to)})) {
		words = append(words, strings.Fields(strings.TrimLeft(more, "# \t"))...)
	}
	return strings.Join(words, " ")
}

// unit returns that of a file, mm where it names none.
func (l layout) unit() measure.Unit {
	e, _ := l.find("units", scope{})
	u, _ := measure.ParseUnit(e.text)
	return u
}

// kind returns that of a file, a ring where it names none.
func (l layout) kind() Kind {
	e, _ := l.find("kind", scope{})
	return KindOf(e.text)
}

// KindOf returns the kind of a word, a ring for one that is none.
func KindOf(word string) Kind { return Kind(max(0, slices.Index(Kinds(), word))) }

func (l layout) sizeNames() []string {
	if l.sizes == 0 {
		return []string{""}
	}
	var out []string
	for size := 1; size <= l.sizes; size++ {
		out = append(out, l.sizeName(size))
	}
	return out
}

// given returns how a key is written for all sizes and, where they can have it, for
// each of them; or for each row.
func (l layout) given(key Key) (all string, own []string) {
	of := func(at scope) string {
		e, _ := l.find(key, at)
		return e.shown()
	}
	if slices.Contains(rowTables(), key.table()) {
		for row := 1; row <= l.rows[key.table()]; row++ {
			own = append(own, of(scope{row: row}))
		}
		return "", own
	}
	if !key.forAll() {
		own = make([]string, max(l.sizes, 1))
		for size := 1; size <= l.sizes; size++ {
			own[size-1] = of(scope{size: size})
		}
	}
	return of(scope{}), own
}

// limits says within which limits a key is, and gives them in the unit of a file.
func (a asked) limits(u measure.Unit) (words string, least, most float64) {
	l := a.within
	quantity, scale := measure.Number, 1.0
	switch a.kind {
	case LengthField, PointsField:
		quantity = measure.Length
		if u == measure.Inch {
			scale = 1 / measure.MillimetresPerInch
		}
	case AngleField:
		quantity = measure.Angle
	case LineField, DateField:
		return lettersMax.With(int(l.most)), 0, l.most
	case ChoiceField, YesNoField:
		return "", 0, 0
	}
	say := fromTo
	if l.open {
		say = overUpTo
	}
	least, _ = quantity(l.least).JSON()
	most, _ = quantity(l.most).JSON()
	return say.With(quantity(l.least).Text(u), quantity(l.most).Text(u)), least * scale, most * scale
}

func woods() []string { return lists.Map(species(), func(w WoodSpecies) string { return w.Name }) }

// standards are what holds where a key is left out, as a maker would write it.
func standards(k Kind, u measure.Unit) map[Key]string {
	d := (&reader{unit: u, kind: k}).start()
	w := d.Wood
	length := func(mm float64) string { return measure.Length(mm).Bare(u) }
	number := func(v float64) string { return strconv.FormatFloat(v, 'f', -1, 64) }
	out := map[Key]string{
		"title": d.Title, "units": measure.Millimetre.String(),
		"wood.rough-length": length(w.ExtraLength), "wood.rough-width": length(w.ExtraWidth), "wood.rough-thickness": length(w.ExtraThickness),
		"wood.spares": strconv.Itoa(w.Spares), "wood.tests": strconv.Itoa(w.Tests), "wood.waste": number(100 * w.Waste),
		"wood.moisture":    number(w.MoistureFrom) + ", " + number(w.MoistureTo),
		"wood.board.count": strconv.Itoa(boards().fresh.Count), "item.count": strconv.Itoa(items().fresh.Count),
	}
	demanded := slices.Concat(musts()...)
	for key, a := range allAsked() {
		switch {
		case out[key] != "":
		case a.kind == ChoiceField:
			out[key] = standardWord(key)
		case a.kind == YesNoField:
			out[key] = strconv.FormatBool(false)
		case a.kind == LengthField && a.within.least == 0 && !a.within.open && !slices.Contains(demanded, key):
			out[key] = length(0)
		}
	}
	return out
}

func standardWord(key Key) string {
	for _, n := range needs() {
		if n.of == key {
			return n.standard
		}
	}
	return allAsked()[key].choices[0]
}

// effective are the settings of every size, what holds for all of them among them.
func (l layout) effective() []settings {
	out := []settings{}
	for size := range max(l.sizes, 1) {
		own := settings{}
		if l.sizes > 0 {
			own = l.settings(scope{size: size + 1})
		}
		out = append(out, overlay(l.settings(scope{}), own))
	}
	return out
}

// idle returns which keys mean nothing in any of the sizes: the word of another key
// does not go with them, or a key of their group is given instead.
func (l layout) idle() func(Key) bool {
	sizes := l.effective()
	return func(key Key) bool {
		return !slices.ContainsFunc(sizes, func(s settings) bool { return s.means(key) })
	}
}

// settings are the keys of a scope, with their words as they are written.
func (l layout) settings(at scope) settings {
	out := settings{}
	for _, e := range l.entries {
		if a, known := allAsked()[e.key]; known && !e.off && e.scope == at {
			idle, bad := a.read(e.node(), l.unit())
			out[e.key] = setting{reading: reading[Design]{word: e.text, idle: idle, apply: func(*Design) {}}, ok: bad == nil, own: at.size > 0}
		}
	}
	return out
}

// Misfits returns the changes that take out what means nothing beside the words of
// other keys, and would be a mistake: a diameter beside an outline that is not round.
// They go with a change of such a word.
func Misfits(text []byte) []Change {
	src, bad := open(text)
	if bad != nil {
		return nil
	}
	l := survey(src.text)
	var out []Change
	for size, s := range l.effective() {
		for _, m := range s.misfits(nil) {
			c := Change{Key: m.name}
			if m.own {
				c.Size = l.sizeName(size + 1)
			}
			out = append(out, c)
		}
	}
	return lists.Unique(out)
}

// means reports whether a key means anything beside the others.
func (s settings) means(key Key) bool {
	if _, given := s[key]; !given && slices.ContainsFunc(alternatives(key), func(k Key) bool { _, other := s[k]; return other }) {
		return false
	}
	return !slices.ContainsFunc(needs(), func(n need) bool {
		return n.touches(key) && !slices.Contains(n.words, s.word(n.of, n.standard))
	})
}
