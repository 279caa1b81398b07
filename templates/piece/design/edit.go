package design

import (
	"bytes"
	"slices"
	"strconv"
	"strings"

	"rodsheet/templates/wording"
)

// A Change gives a key of the file another value.
type Change struct {
	// Size is the name of the size that is changed; "" for what holds for all.
	Size string
	// Key is the whole key: "legs.height"; "size.name" renames the size.
	Key Key
	// Row says which of [[wood.board]] or [[item]], from 1; one past the last
	// adds one.
	Row int
	// Value is as a maker writes it, without the quotes of TOML: 25 1/4, 14°30',
	// 64cm, open, true. Items of a list stand behind commas, corners behind
	// semicolons. "" takes the key out.
	Value string
}

// Edit returns the text with values changed in place: comments, order, spacing,
// quotes and line ends stay. A new key stands where the starting file has it; one
// that says the same in another way is taken out. What is taken out for all sizes is
// commented out as the starting file does it. A text that is no TOML, and a value
// that the key does not take, is refused with Mistakes.
func Edit(text []byte, changes ...Change) ([]byte, error) {
	return rewrite(text, func(l layout) (layout, error) { return l.all(changes) })
}

// all returns the layout with changes made that their keys take.
func (l layout) all(changes []Change) (layout, error) {
	for _, c := range changes {
		next, err := l.changed(c)
		if err != nil {
			return l, err
		}
		l = next
	}
	return l, l.taken(changes)
}

// rewrite has a text changed that is sound TOML, and is to be so afterwards.
func rewrite(text []byte, change func(layout) (layout, error)) ([]byte, error) {
	if err := unsound(text); err != nil {
		return nil, err
	}
	body, marked := bytes.CutPrefix(text, []byte(byteOrderMark))
	l, err := change(survey(body))
	if err != nil {
		return nil, err
	}
	if err := unsound(l.text); err != nil {
		return nil, err
	}
	if marked {
		return slices.Concat([]byte(byteOrderMark), l.text), nil
	}
	return l.text, nil
}

// unsound returns what keeps a text from being TOML.
func unsound(text []byte) error {
	src, bad := open(text)
	if bad != nil {
		return Mistakes{*bad}
	}
	notes := build(src, func(string) []rune { return nil }).notes
	if len(notes) == 0 {
		notes = strictly(src)
	}
	if len(notes) > 0 {
		return src.mistakes(notes)
	}
	return nil
}

// refused is a mistake about a key of a change, or about none, and not of a place.
func refused(key Key, size, words, hint string) error {
	n := note{path: string(key), sizes: sizeNames(size), words: words, hint: hint}
	return source{lines: []int{0}}.mistakes([]note{n})
}

func (l layout) taken(changes []Change) error {
	src, bad := open(l.text)
	if bad != nil {
		return Mistakes{*bad}
	}
	var notes []note
	for _, c := range changes {
		key, at, err := l.target(c)
		if err != nil {
			continue // renamed by a later change
		}
		e, ok := l.find(key, at)
		if !ok {
			continue
		}
		for _, f := allAsked()[key].read(e.node(), l.unit()); f != nil; f = all(f.also) {
			notes = append(notes, note{at: f.at, path: string(c.Key), sizes: sizeNames(c.Size), words: f.words, hint: f.hint})
		}
	}
	if len(notes) > 0 {
		return src.mistakes(notes)
	}
	return nil
}

func sizeNames(name string) []string {
	if name == "" {
		return nil
	}
	return []string{name}
}

// sizeName returns the name of a size: its number where it has none.
func (l layout) sizeName(size int) string {
	if e, ok := l.find("name", scope{size: size}); ok && e.kind == isText {
		return e.text
	}
	return strconv.Itoa(size)
}

func (l layout) sizeOf(name string) (int, error) {
	for size := 1; size <= l.sizes; size++ {
		if l.sizeName(size) == name {
			return size, nil
		}
	}
	return 0, refused("", "", noSuchSize.With(wording.Shown(name)), "")
}

// target returns what a change is about. What it cannot be about is refused.
func (l layout) target(c Change) (Key, scope, error) {
	key, at := c.Key, scope{}
	if key == "size.name" {
		key = "name"
	}
	if _, known := allAsked()[key]; !known || c.Key == "name" {
		return "", at, refused(Key(wording.Shown(string(c.Key))), c.Size, keyUnknown.With(), "")
	}
	if table := key.table(); slices.Contains(rowTables(), table) {
		at.row = c.Row
		if c.Row < 1 || c.Row > l.rows[table]+1 {
			return "", at, refused("", "", noSuchRow.With(table, c.Row), "")
		}
	}
	if c.Size == "" && key != "name" {
		return key, at, nil
	}
	if key.forAll() || at.row > 0 {
		return "", at, refused(key, c.Size, forAllSizes.With(), forAllSizesHint.With())
	}
	size, err := l.sizeOf(c.Size)
	at.size = size
	return key, at, err
}

// rowTables may stand several times.
func rowTables() []Key { return []Key{"wood.board", "item"} }

func (l layout) changed(c Change) (layout, error) {
	key, at, err := l.target(c)
	if err != nil {
		return l, err
	}
	kind := allAsked()[key].kind
	value := c.Value
	if kind != LineField {
		value = strings.TrimSpace(value)
	}
	if key == "name" {
		if err := l.unnamed(value, at.size); err != nil {
			return l, err
		}
	}
	if value == "" {
		return l.without(key, at), nil
	}
	for _, rival := range alternatives(key) {
		if rival != key {
			l = l.without(rival, at)
		}
	}
	return l.with(key, at, kind, value), nil
}

// unnamed returns why a size cannot have a name.
func (l layout) unnamed(name string, but int) error {
	if bad := checkLine(&node{text: name}, nameLetters); bad != nil {
		return refused("size.name", "", bad.words, bad.hint)
	}
	for size := 1; size <= l.sizes; size++ {
		if size != but && strings.EqualFold(l.sizeName(size), name) {
			return refused("size.name", "", sizeNameTwice.With(), sizeNameTwiceHint.With())
		}
	}
	return nil
}

func (l layout) splice(s span, with string) layout {
	return survey(slices.Concat(l.text[:s.from], []byte(with), l.text[s.to:]))
}

func (l layout) of(s span) string { return string(l.text[s.from:s.to]) }

// with gives a key a value: in its place; where it is commented out; or where the
// starting file has it.
func (l layout) with(key Key, at scope, kind FormKind, value string) layout {
	if e, ok := l.find(key, at); ok {
		if _, bad := allAsked()[key].read(e.node(), l.unit()); bad == nil && e.shown() == value {
			return l
		}
		return l.revalued(e, kind, value)
	}
	i := slices.IndexFunc(l.entries, func(e entry) bool { return e.off && e.key == key && e.scope == at && l.usable(e) })
	if i >= 0 {
		// A value that is no text makes a comment of the line: that is refused later.
		next := l.revalued(l.entries[i], kind, value)
		if i < len(next.entries) && next.entries[i].key == key {
			return next.uncommented(i)
		}
	}
	return l.inserted(key, at, kind.fresh(value))
}

// revalued returns the layout with another value of an entry. Of a list with as many
// items as before each is changed in its place.
func (l layout) revalued(e entry, kind FormKind, value string) layout {
	if kind != RangeField && kind != PointsField {
		return l.splice(e.value, kind.written(value, l.of(e.value)))
	}
	old, items := e.flat(), slices.Concat(listed(value)...)
	alike := slices.EqualFunc(listed(value), listed(e.shown()), func(a, b []string) bool { return len(a) == len(b) })
	if !alike || len(items) != len(old) || slices.ContainsFunc(old, func(n *node) bool { return n.kind >= isList }) {
		return l.splice(e.value, kind.list(value))
	}
	out := slices.Clone(l.text)
	for i := len(old) - 1; i >= 0; i-- {
		if old[i].text != items[i] {
			place := span{old[i].value, old[i].end}
			out = slices.Replace(out, place.from, place.to, []byte(kind.item().written(items[i], l.of(place)))...)
		}
	}
	return survey(out)
}

func (e entry) flat() []*node {
	var out []*node
	for _, item := range e.items {
		if item.kind == isList {
			out = append(out, item.kids...)
			continue
		}
		out = append(out, item)
	}
	return out
}

// usable reports whether a commented line can be used: alone, or with the header
// above it, which is commented out too, where that takes nothing from another.
func (l layout) usable(e entry) bool {
	s := l.sections[e.part]
	if !s.off {
		return true
	}
	if l.written(s.table, s.scope) {
		return false
	}
	to := len(l.text)
	if i := slices.IndexFunc(l.sections[e.part:], func(s section) bool { return !s.off }); i >= 0 {
		to = l.sections[e.part+i].line.from
	}
	return !slices.ContainsFunc(l.entries, func(e entry) bool { return !e.off && e.lines.from > s.line.from && e.lines.from < to })
}

func (l layout) uncommented(i int) layout {
	e := l.entries[i]
	lines := []span{e.lines}
	if s := l.sections[e.part]; s.off {
		lines = append(lines, s.line)
	}
	out := slices.Clone(l.text)
	for _, line := range lines {
		from := line.from + bytes.IndexByte(l.text[line.from:], '#')
		to := from + 1
		if l.text[to] == ' ' || l.text[to] == '\t' {
			to++
		}
		out = slices.Delete(out, from, to)
	}
	return survey(out)
}
