package design

import (
	"strconv"
	"strings"

	"github.com/pelletier/go-toml/v2/unstable"
	"golang.org/x/text/unicode/norm"

	"rodsheet/geometry/lists"
	"rodsheet/templates/wording"
)

// A kind says what a node of the file is.
type kind uint8

const (
	isText kind = iota
	isWhole
	isDecimal
	isYesNo
	isDate
	isList
	isTable
	isBroken // a key whose value is no TOML; said already
)

// A node is a key of the file with what stands behind it, or an item of a
// list. Places are offsets in the source.
type node struct {
	key   string
	at    int // of the key; of the header for a table that has one
	value int // of what stands behind it
	end   int // of a value that is no list or table
	kind  kind
	text  string  // of the first five kinds: as written, without quotes
	lacks []rune  // what of it cannot be lettered
	kids  []*node // keys of a table in the order of the file; items of a list
	index map[string]*node

	headed bool // a table with a header line, a list of tables each with one
	inline bool // a table in braces, a list in brackets
	twice  bool // more was written under its key, and not read
}

func (n *node) child(key string) *node { return n.index[key] }

func (n *node) add(kid *node) *node {
	n.kids = append(n.kids, kid)
	if n.kind == isTable {
		if n.index == nil {
			n.index = map[string]*node{}
		}
		n.index[kid.key] = kid
	}
	return kid
}

// described says what a node is where something else was wanted.
func (n *node) described() string {
	switch n.kind {
	case isText:
		return strconv.Quote(wording.Shorten(n.text, wording.MostShown))
	case isDate:
		return aDate.With()
	case isList:
		return aList.With()
	case isTable:
		return aTable.With()
	}
	return wording.Shorten(n.text, wording.MostShown)
}

// A builder turns the expressions of a file into one tree. Whatever is written
// twice is noted; the first counts.
type builder struct {
	source source
	lacks  func(string) []rune
	parser unstable.Parser
	base   int // where the text begins that the parser reads
	read   int // where the line behind the last expression begins
	root   *node
	here   *node // the table that the header above has opened
	notes  []note
	lost   bool // lines were passed over that may hold any key
}

// build returns the tree of a file. What cannot be read as TOML is noted and
// passed over.
func build(s source, lacks func(string) []rune) *builder {
	b := &builder{source: s, lacks: lacks, root: &node{kind: isTable, headed: true}}
	b.here = b.root
	for b.base < len(s.text) && len(b.notes) <= mostMistakes {
		b.parser.Reset(s.text[b.base:])
		b.expressions()
		err := b.parser.Error()
		if err == nil {
			break
		}
		b.base = b.brokenOff(err)
	}
	return b
}

func (b *builder) expressions() {
	for b.parser.NextExpression() {
		e := b.parser.Expression()
		if e.Kind == unstable.KeyValue {
			b.keyValue(b.here, e)
			continue
		}
		b.here = b.header(b.keys(e), e.Kind == unstable.ArrayTable)
	}
}

// at returns an offset in the source, and keeps where the line behind it begins.
func (b *builder) at(offset uint32) int {
	at := b.base + int(offset)
	if at >= b.read {
		b.read = b.source.lineEnd(at)
	}
	return at
}

// A part is one word of a dotted key.
type part struct {
	key string
	at  int
}

func (b *builder) keys(e *unstable.Node) []part {
	var out []part
	for it := e.Key(); it.Next(); {
		n := it.Node()
		out = append(out, part{string(n.Data), b.at(n.Raw.Offset)})
	}
	return out
}

// header opens the table of a header line, or the next of several.
func (b *builder) header(keys []part, several bool) *node {
	last := keys[len(keys)-1]
	parent := b.descend(b.root, keys[:len(keys)-1])
	name := dotted(keys)
	old := parent.child(last.key)
	switch {
	case old == nil && several:
		all := parent.add(&node{key: last.key, at: last.at, value: last.at, kind: isList, headed: true})
		return all.add(&node{key: last.key, at: last.at, value: last.at, kind: isTable, headed: true})
	case old == nil:
		return parent.add(&node{key: last.key, at: last.at, value: last.at, kind: isTable, headed: true})
	case several && old.kind == isList && old.headed:
		return old.add(&node{key: last.key, at: last.at, value: last.at, kind: isTable, headed: true})
	case !several && old.kind == isTable && !old.headed && !old.inline:
		old.headed, old.at, old.value = true, last.at, last.at
		return old
	case !several && old.kind == isTable && old.headed:
		b.twice(last.at, theTable.With(name), old)
		return old
	}
	b.twice(last.at, name, old)
	old.twice = true
	return &node{kind: isTable}
}

// descend walks down a dotted key and makes the tables that are not there yet.
// Of several tables it takes the last. Where a figure is in the way it notes
// that and returns a table that nobody reads.
func (b *builder) descend(n *node, keys []part) *node {
	for i, k := range keys {
		next := n.child(k.key)
		if next == nil {
			next = n.add(&node{key: k.key, at: k.at, value: k.at, kind: isTable})
		}
		if next.kind == isList && next.headed {
			next = next.kids[len(next.kids)-1]
		}
		if next.kind != isTable || next.inline {
			b.twice(k.at, dotted(keys[:i+1]), next)
			next.twice = true
			return &node{kind: isTable}
		}
		n = next
	}
	return n
}

func (b *builder) keyValue(into *node, e *unstable.Node) {
	keys := b.keys(e)
	last := keys[len(keys)-1]
	parent := b.descend(into, keys[:len(keys)-1])
	if old := parent.child(last.key); old != nil {
		b.twice(last.at, wording.Shown(last.key), old)
		old.twice = true
		return
	}
	n := b.valueOf(e.Value(), last.at)
	n.key, n.at = last.key, last.at
	parent.add(n)
}

// composed is a text as it is lettered: a letter and the accent after it are one where
// there is such a letter (Unicode Standard Annex 15, form C), as some keyboards and file
// systems keep them apart.
func composed(text []byte) string { return norm.NFC.String(string(text)) }

// valueOf returns a node without a key. A list has no place of its own: it
// takes that of its first item, and failing this the one given.
func (b *builder) valueOf(v *unstable.Node, at int) *node {
	n := &node{at: at, value: at, kind: kindOf(v.Kind), text: composed(v.Data)}
	switch v.Kind {
	default:
		n.value, n.lacks = b.at(v.Raw.Offset), b.lacks(n.text)
		n.end = n.value + int(v.Raw.Length)
	case unstable.Array:
		n.text, n.inline = "", true
		for it := v.Children(); it.Next(); {
			n.add(b.valueOf(it.Node(), at))
		}
		if len(n.kids) > 0 {
			n.value = n.kids[0].value
		}
	case unstable.InlineTable:
		n.text, n.inline, n.value = "", true, b.at(v.Raw.Offset)
		for it := v.Children(); it.Next(); {
			b.keyValue(n, it.Node())
		}
	}
	return n
}

func (b *builder) twice(at int, name string, old *node) {
	b.notes = append(b.notes, note{
		at: at, words: standsTwice.With(name, b.source.place(old.at).line), hint: keepOne.With(),
	})
}

func dotted(keys []part) string {
	return strings.Join(lists.Map(keys[:min(len(keys), 4)], func(k part) string { return wording.Shown(k.key) }), ".")
}

func kindOf(k unstable.Kind) kind {
	switch k {
	case unstable.String:
		return isText
	case unstable.Integer:
		return isWhole
	case unstable.Float:
		return isDecimal
	case unstable.Bool:
		return isYesNo
	case unstable.Array:
		return isList
	case unstable.InlineTable:
		return isTable
	}
	return isDate
}
