package design

import (
	"errors"
	"slices"
	"strconv"
	"strings"

	"github.com/pelletier/go-toml/v2"

	"rodsheet/geometry/measure"
	"rodsheet/templates/wording"
)

// A File is a design file that has been read.
type File struct {
	Title string
	Unit  measure.Unit
	Sizes []Design // at least one; a file without sizes holds one with Size ""
}

// Read reads a design file and has every size judged by what judge knows of it:
// what that returns are mistakes too. It is asked even where reading has found
// some, and told which keys of the size are in doubt; nil asks nobody. The error
// is of type Mistakes and holds all of them.
func Read(data []byte, judge func(Design, Doubts) []error) (File, error) {
	return ReadLettered(data, judge, func(string) []rune { return nil })
}

// ReadLettered is Read for files whose texts are to be printed: lacks returns what
// of a text cannot be, which is a mistake too.
func ReadLettered(data []byte, judge func(Design, Doubts) []error, lacks func(string) []rune) (File, error) {
	if judge == nil {
		judge = func(Design, Doubts) []error { return nil }
	}
	src, bad := open(data)
	if bad != nil {
		return File{}, Mistakes{*bad}
	}
	tree := build(src, lacks)
	root := tree.root
	if len(root.kids)+len(tree.notes) == 0 {
		return File{}, Mistakes{{Line: 1, Column: 1, Text: noDesign.With(), Hint: newHint.With()}}
	}
	r := newReader(src, root)
	r.notes, r.lost = tree.notes, tree.lost
	f := r.file(root, judge)
	if len(r.notes) == 0 {
		r.notes = strictly(src)
	}
	if len(r.notes) > 0 {
		return File{}, src.mistakes(r.notes)
	}
	return f, nil
}

// strictly asks a second reader, so that no file is taken here that other
// programs refuse as TOML.
func strictly(s source) []note {
	var values map[string]any
	err := toml.Unmarshal(s.text, &values)
	if err == nil {
		return nil
	}
	n := note{words: openedTwice.With(), hint: openedTwiceHint.With()}
	var bad *toml.DecodeError
	if errors.As(err, &bad) {
		n.at = s.offset(bad.Position())
	}
	return []note{n}
}

// A setting is a key with its value, read; ok says that it could be.
type setting struct {
	reading[Design]
	at  int
	ok  bool
	own bool // given by the size and not for all of them
}

// settings are what a table and those below it say, by the whole key. The
// headers of tables are among them.
type settings map[Key]setting

type reader struct {
	source source
	unit   measure.Unit
	kind   Kind
	fields []field[Design]
	notes  []note
	lost   bool // keys may have been passed over
}

func newReader(s source, root *node) *reader {
	r := &reader{source: s, fields: fields()}
	// A unit that cannot be read is noted with the other keys.
	if n := root.child("units"); n != nil && n.kind == isText {
		r.unit, _ = measure.ParseUnit(n.text)
	}
	if n := root.child("kind"); n != nil && n.kind == isText {
		r.kind = KindOf(n.text)
	}
	return r
}

func (r *reader) note(at int, path string, sizes []string, words, hint string, doubts ...Key) {
	r.notes = append(r.notes, note{at: at, path: path, sizes: sizes, words: words, hint: hint, doubts: doubts})
}

// file reads what holds for all sizes, then each size upon it, and has it judged.
func (r *reader) file(root *node, judge func(Design, Doubts) []error) File {
	base := settings{}
	r.table(root, "", nil, base)
	r.contradictions(base, nil)
	own, names := r.sizes(root)
	r.rightUnit(base)
	f := File{Title: r.start().Title, Unit: r.unit}
	var found [][]note
	for i := range own {
		all := overlay(base, own[i])
		d, notes := r.design(all, names[i])
		d.Size = names[i]
		f.Title = d.Title
		f.Sizes = append(f.Sizes, d)
		found = append(found, append(notes, r.placed(judge(d, r.doubts(all, names[i], notes)), all)...))
	}
	r.notes = append(r.notes, shared(found, names)...)
	return f
}

// thickestInches is more than any stock of a table frame, whose figures in
// millimetres are all above it (common practice, no source).
const thickestInches = 10

// rightUnit says once that figures in inches were meant in millimetres: where all
// the stock is so thick. What is too long for the same reason is not said.
func (r *reader) rightUnit(base settings) {
	if r.unit != measure.Inch {
		return
	}
	for _, key := range schemas()[r.kind].stock {
		if s := base[key]; !s.bare || s.value < thickestInches*measure.MillimetresPerInch {
			return
		}
	}
	r.notes = slices.DeleteFunc(r.notes, func(n note) bool { return n.unit })
	r.note(base["units"].at, "units", nil, likeMillimetres.With(), wholeUnitHint.With(), everything)
}

// sizes reads what each size changes. Without sizes there is one that changes
// nothing.
func (r *reader) sizes(root *node) (own []settings, names []string) {
	n := root.child("size")
	if n == nil || n.kind == isBroken {
		return []settings{{}}, []string{""}
	}
	if n.kind != isList || len(n.kids) == 0 {
		r.note(n.at, "size", nil, wantedFor.With(listOfSizes.With(), n.described()), sizesHint.With(), everything)
		return []settings{{}}, []string{""}
	}
	if len(n.kids) > mostSizes {
		r.note(n.kids[mostSizes].at, "size", nil, tooManySizes.With(len(n.kids), mostSizes), "")
	}
	for i, item := range n.kids[:min(len(n.kids), mostSizes)] {
		if item.kind != isTable {
			r.note(item.value, "size", nil, wantedFor.With(aSize.With(), item.described()), sizesHint.With())
			continue
		}
		name := r.sizeName(item, i, names)
		into := settings{}
		r.table(item, "", []string{name}, into)
		r.contradictions(into, []string{name})
		own, names = append(own, into), append(names, name)
	}
	return own, names
}

// sizeName returns the name of size i, or its number where it has none.
func (r *reader) sizeName(n *node, i int, others []string) string {
	name, number := n.child("name"), strconv.Itoa(i+1)
	switch {
	case name == nil:
		r.note(n.at, "size", nil, sizeUnnamed.With(), sizeNameHint.With())
		return number
	case name.kind == isBroken:
		return number
	}
	if bad := checkLine(name, nameLetters); bad != nil {
		r.note(bad.at, "size.name", nil, bad.words, bad.hint)
		return number
	}
	if slices.ContainsFunc(others, func(o string) bool { return strings.EqualFold(o, name.text) }) {
		r.note(name.value, "size.name", nil, sizeNameTwice.With(), sizeNameTwiceHint.With())
	}
	return name.text
}

// table reads the keys of a table of all sizes or, given its name, of one.
func (r *reader) table(n *node, within Key, size []string, into settings) {
	for _, kid := range n.kids {
		key := within.with(kid.key)
		path := string(key)
		own := fieldOf(key)
		known := own != nil
		switch {
		case size == nil && key == "size", size != nil && key == "name":
		case kid.kind == isBroken:
			into[key] = setting{at: kid.at, own: size != nil}
		case size != nil && key.forAll() && (known || slices.Contains(tables(), key)):
			r.note(kid.at, path, size, forAllSizes.With(), forAllSizesHint.With(), key)
		case known:
			into[key] = r.value(kid, *own, size)
		case slices.Contains(tables(), key) && kid.kind == isTable:
			into[key] = setting{at: kid.at, ok: !kid.twice, own: size != nil}
			r.table(kid, key, size, into)
		case slices.Contains(tables(), key):
			header := "[" + path + "]"
			if size != nil {
				header = "[size." + path + "]"
			}
			r.note(kid.value, path, size, wantedFor.With(oneTable.With(), kid.described()), ownLine.With(header), key)
		default:
			hint, meant := r.suggest(within, kid, size != nil)
			n := note{at: kid.at, path: string(within.with(wording.Shown(kid.key))), sizes: size, words: keyUnknown.With(), hint: hint, doubts: meant}
			if n.vacant = meant == nil; n.vacant {
				n.doubts = []Key{within}
			}
			r.notes = append(r.notes, n)
		}
	}
}

func (r *reader) value(n *node, f field[Design], size []string) setting {
	got, bad := f.read(n, r.unit)
	if bad != nil {
		r.fault(bad, f.key, size)
	}
	return setting{reading: got, at: n.at, ok: bad == nil && !n.twice, own: size != nil}
}

// fault notes what is wrong with the value of the key and its items.
func (r *reader) fault(f *fault, key Key, size []string) {
	path := string(key)
	if f.key != "" {
		path = string(key.with(string(f.key)))
	}
	r.notes = append(r.notes, note{at: f.at, path: path, sizes: size, words: f.words, hint: f.hint, unit: f.unit})
	for _, one := range f.also {
		r.fault(one, key, size)
	}
}

// suggest says where a key that is not known may have been meant to stand, and
// what that leaves in doubt; none where it may mean anything.
func (r *reader) suggest(within Key, n *node, inSize bool) (hint string, doubts []Key) {
	if meant, ok := asThick()[within.with(n.key)]; ok {
		return asThickAsWide.With(meant), []Key{meant}
	}
	var here, also, whole []string
	var elsewhere, begun []Key
	for _, key := range r.paths() {
		head := inSize && key.forAll()
		switch {
		case key.table() == within && !head:
			here = append(here, key.word())
			if strings.HasPrefix(key.word(), n.key+"-") {
				begun, whole = append(begun, key), append(whole, key.word())
			}
		case key.word() == n.key && !head:
			elsewhere, also = append(elsewhere, key), append(also, string(key))
		}
	}
	if within == "" && inSize {
		here = append(here, "name")
	}
	switch best := Nearest(n.key, here); {
	case best == "size":
		return didYouMean(n.key, here), []Key{everything}
	case best != "":
		return didYouMean(n.key, here), []Key{within.with(best)}
	case len(begun) > 0:
		return didMean.With(wording.Or(whole...)), begun
	case len(elsewhere) > 0 && elsewhere[0].table() == "":
		return standsAbove.With(elsewhere[0]), elsewhere
	case len(elsewhere) > 0:
		return didMean.With(wording.Or(also...)), elsewhere
	}
	return "", nil
}

func (r *reader) paths() []Key {
	out := slices.Clone(tables())
	for _, f := range r.fields {
		out = append(out, f.key)
	}
	out = slices.DeleteFunc(out, func(key Key) bool {
		kind, _, own := schemaOf(key)
		return own && kind != r.kind
	})
	return append(out, "size")
}

// contradictions notes the second key of a group of which one is wanted.
func (r *reader) contradictions(s settings, size []string) {
	for _, group := range groups() {
		given := slices.DeleteFunc(slices.Clone(group), func(key Key) bool { _, ok := s[key]; return !ok })
		slices.SortFunc(given, func(a, b Key) int { return s[a].at - s[b].at })
		for _, key := range given[min(1, len(given)):] {
			r.note(s[key].at, string(key), size, saidOtherwise.With(given[0].word(), r.source.place(s[given[0]].at).line),
				keepOneOf.With(oneOf(group)), group...)
		}
	}
}
