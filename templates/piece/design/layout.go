package design

import (
	"bytes"
	"errors"
	"regexp"
	"slices"
	"strings"
	"sync"

	"rodsheet/geometry/lists"

	"github.com/pelletier/go-toml/v2/unstable"
)

type span struct{ from, to int }

// A scope says of what a key is one: of all sizes or, by its number from 1, of one
// size; and of which of several boards or items.
type scope struct{ size, row int }

// An entry is a key with its value as they stand in a text. Inline tables are taken
// apart; lists are not.
type entry struct {
	scope
	key   Key  // whole: "legs.height"; "name" for that of a size
	in    Key  // the table of the header, or of the braces, in which it is written
	lines span // on which it stands
	whole span // from its key to the end of its value
	value span
	kind  kind
	text  string
	items []*node // of a list
	part  int     // the section in which it stands
	brace int     // the braces in which it stands, from 1
	off   bool    // commented out
}

// node returns an entry as fields read it.
func (e entry) node() *node {
	return &node{kind: e.kind, text: e.text, kids: e.items, at: e.whole.from, value: e.value.from}
}

// A section is a header with what stands below it. The first has no header.
type section struct {
	scope
	table Key // "" at the head of the file and right below [[size]]
	line  span
	off   bool // commented out
}

type brace struct {
	scope
	table      Key
	open, shut int
}

// A layout says what stands where in a text without byte order mark.
type layout struct {
	text     []byte
	sections []section
	entries  []entry
	braces   []brace
	rows     map[Key]int // how many of each there are
	sizes    int
}

// A surveyor goes through a text. An example of a size that is commented out
// belongs to no size that counts.
type surveyor struct {
	layout
	whole   unstable.Parser
	line    unstable.Parser // of one that is commented out
	source  source
	base    int  // where the text begins that the parser reads
	off     bool // it is a comment
	example bool
	read    int // comments have been read up to here
}

// noSize is that of an example.
const noSize = -1

// survey reads a text, and passes over what is no TOML.
func survey(text []byte) layout {
	s := surveyor{source: newSource(text)}
	s.layout = layout{text: s.source.text, sections: []section{{}}, rows: map[Key]int{}}
	for at := 0; at < len(text); {
		at = s.expressions(at)
	}
	s.comments(len(text))
	return s.layout
}

// expressions reads a text from an offset on. It returns where to go on: at the end, or
// at the next line behind what is no TOML that sets a key or opens a table.
func (s *surveyor) expressions(from int) (next int) {
	s.whole.Reset(s.source.text[from:])
	for s.whole.NextExpression() {
		e := s.whole.Expression()
		s.base = from
		lines := s.lines(e)
		s.comments(lines.from)
		s.base = from
		s.expression(e, lines)
		s.read = lines.to
	}
	var fault *unstable.ParserError
	if !errors.As(s.whole.Error(), &fault) {
		return len(s.text)
	}
	line := s.source.lineStart(from + int(s.whole.Range(fault.Highlight).Offset))
	next = s.source.lineEnd(min(s.source.nextStatement(max(from, s.read)), line))
	for next < len(s.text) && (next < line || !statement().Match(s.text[next:])) {
		next = s.source.lineEnd(next)
	}
	return next
}

func (s *surveyor) lines(e *unstable.Node) span {
	it := e.Key()
	it.Next()
	out := span{int(it.Node().Raw.Offset), int(it.Node().Raw.Offset)}
	if e.Kind == unstable.KeyValue {
		out = rawSpan(e, 0)
	}
	return span{s.source.lineStart(s.base + out.from), s.source.lineEnd(s.base + out.to)}
}

func rawSpan(n *unstable.Node, base int) span {
	return span{base + int(n.Raw.Offset), base + int(n.Raw.Offset+n.Raw.Length)}
}

// comment is a key, or a header, that is commented out.
var comment = sync.OnceValue(func() *regexp.Regexp {
	return regexp.MustCompile(`^[ \t]*#[ \t]?(\[\[?[a-z][a-z.]*\]|[a-z][a-z0-9.-]*[ \t]*=)`)
})

// comments reads the lines from where reading stands up to an offset, between two
// expressions.
func (s *surveyor) comments(to int) {
	for at := s.read; at < to; at = s.source.lineEnd(at) {
		line := span{at, s.source.lineEnd(at)}
		m := comment().FindSubmatchIndex(s.text[line.from:line.to])
		if m == nil {
			continue
		}
		s.base, s.off = line.from+m[2], true
		s.line.Reset(s.text[s.base:line.to])
		if s.line.NextExpression() {
			s.expression(s.line.Expression(), line)
		}
		s.base, s.off = 0, false
	}
}

func (s *surveyor) expression(e *unstable.Node, lines span) {
	if e.Kind != unstable.KeyValue {
		s.header(s.keyOf(e), e.Kind == unstable.ArrayTable, lines)
		return
	}
	part := len(s.sections) - 1
	for !s.off && s.sections[part].off {
		part--
	}
	s.keyValue(e, entry{scope: s.sections[part].scope, in: s.sections[part].table, part: part, lines: lines, off: s.off})
}

func (s *surveyor) keyOf(e *unstable.Node) Key {
	var words []string
	for it := e.Key(); it.Next(); {
		words = append(words, string(it.Node().Data))
	}
	return Key(strings.Join(words, "."))
}

func (s *surveyor) header(key Key, several bool, line span) {
	next := section{table: key, line: line, off: s.off}
	s.example = s.example && s.off
	switch {
	case key == "size" && several:
		if next.table = ""; s.off {
			s.example = true
		} else {
			s.sizes++
		}
		next.size = s.ofSize()
	case Key("size").holds(key):
		next.table, next.size = key[len("size."):], s.ofSize()
	case several && !s.off:
		s.rows[key]++
		next.row = s.rows[key]
	case several:
		next.row = s.rows[key] + 1
	}
	s.sections = append(s.sections, next)
}

// ofSize returns the size that headers below [[size]] are of.
func (s *surveyor) ofSize() int {
	if s.example {
		return noSize
	}
	return s.sizes
}

// keyValue keeps one key with its value; of like it has all but these.
func (s *surveyor) keyValue(e *unstable.Node, like entry) {
	var last unstable.Node
	for it := e.Key(); it.Next(); {
		last = *it.Node()
	}
	like.key = like.in.with(string(s.keyOf(e)))
	like.whole = rawSpan(e, s.base)
	at := rawSpan(&last, s.base).to
	at += bytes.IndexByte(s.text[at:], '=') + 1
	at += len(s.text[at:]) - len(bytes.TrimLeft(s.text[at:], " \t"))
	like.value = span{at, like.whole.to}
	v := e.Value()
	switch {
	case v.Kind == unstable.InlineTable && like.off: // no place for a key
	case v.Kind == unstable.InlineTable:
		s.inline(v, like)
	case v.Kind == unstable.Array && like.key == "size" && like.size == 0 && !like.off:
		for it := v.Children(); it.Next(); {
			if like.key, like.size = "", like.size+1; it.Node().Kind == unstable.InlineTable {
				s.inline(it.Node(), like)
			}
		}
		s.sizes = like.size
	default:
		like.kind, like.text = kindOf(v.Kind), string(v.Data)
		if v.Kind == unstable.Array {
			b := builder{source: s.source, base: s.base, lacks: func(string) []rune { return nil }}
			like.text, like.items = "", b.valueOf(v, like.value.from).kids
		}
		s.entries = append(s.entries, like)
	}
}

func (s *surveyor) inline(v *unstable.Node, like entry) {
	at := rawSpan(v, s.base).from
	s.braces = append(s.braces, brace{like.scope, like.key, at, at})
	like.in, like.brace = like.key, len(s.braces)
	n := like.brace - 1
	shut := at + 1
	for it := v.Children(); it.Next(); {
		s.keyValue(it.Node(), like)
		shut = rawSpan(it.Node(), s.base).to
	}
	s.braces[n].shut = shut + bytes.IndexByte(s.text[shut:], '}')
}

func (l layout) find(key Key, at scope) (entry, bool) {
	return lists.First(l.entries, func(e entry) bool { return !e.off && e.key == key && e.scope == at })
}

func (l layout) written(table Key, at scope) bool {
	return slices.ContainsFunc(l.entries, func(e entry) bool { return !e.off && e.scope == at && e.key.table() == table }) ||
		slices.ContainsFunc(l.sections, func(s section) bool { return !s.off && s.scope == at && s.table == table }) ||
		slices.ContainsFunc(l.braces, func(b brace) bool { return b.scope == at && b.table == table })
}

// end returns where a section ends: behind its last key, be it commented out, and
// the comments that go on below it.
func (l layout) end(part int) int {
	at := l.sections[part].line.to
	for _, e := range l.entries {
		if e.part == part {
			at = max(at, e.lines.to)
		}
	}
	return l.behindComments(at)
}

// goesOn is a comment that goes on with the one above it.
var goesOn = sync.OnceValue(func() *regexp.Regexp { return regexp.MustCompile(`^[ \t]*#[ \t]+#`) })

func (l layout) behindComments(at int) int {
	for at < len(l.text) && goesOn().Match(l.text[at:]) {
		if i := bytes.IndexByte(l.text[at:], '\n'); i >= 0 {
			at += i + 1
			continue
		}
		return len(l.text)
	}
	return at
}
