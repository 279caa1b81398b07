package design

import (
	"bytes"
	"slices"
	"strings"
	"sync"

	"rodsheet/geometry/measure"
)

// inserted returns the layout with a key that was not there: in the table in braces
// that holds it, below its header, beside other keys written with dots, or below a
// new header.
func (l layout) inserted(key Key, at scope, value string) layout {
	table := key.table()
	for t := table; ; t = t.table() {
		if i := slices.IndexFunc(l.braces, func(b brace) bool { return b.scope == at && b.table == t }); i >= 0 {
			return l.braced(i, key, value)
		}
		if t == "" {
			break
		}
	}
	beside := func(e entry) bool { return e.scope == at && e.key.table() == table && e.brace == 0 }
	part := slices.IndexFunc(l.sections, func(s section) bool { return !s.off && s.scope == at && s.table == table })
	if part >= 0 {
		return l.line(key, value, part, func(e entry) bool { return beside(e) && e.part == part })
	}
	dotted := func(e entry) bool { return beside(e) && !e.off }
	if i := slices.IndexFunc(l.entries, dotted); i >= 0 {
		return l.line(key, value, l.entries[i].part, dotted)
	}
	return l.headed(key, at, value)
}

// below returns what is left of a key in a table.
func (k Key) below(table Key) string {
	if table == everything {
		return string(k)
	}
	return strings.TrimPrefix(string(k), string(table)+".")
}

// braced puts a key into braces behind the nearest that it follows.
func (l layout) braced(i int, key Key, value string) layout {
	b := l.braces[i]
	setting := key.below(b.table) + " = " + value
	e, found := l.before(key, func(e entry) bool { return e.brace == i+1 })
	inside := strings.TrimLeft(l.of(span{b.open + 1, b.shut}), " \t")
	at := b.shut - len(inside)
	switch {
	case found:
		return l.splice(span{e.whole.to, e.whole.to}, ", "+setting)
	case inside == "":
		return l.splice(span{b.open + 1, b.open + 1}, setting)
	}
	return l.splice(span{at, at}, setting+", ")
}

// before returns the nearest of some entries that a key follows in the starting file.
func (l layout) before(key Key, some func(entry) bool) (entry, bool) {
	var best entry
	kind, found := l.kind(), false
	for _, e := range l.entries {
		if some(e) && kind.rank(e.key) < kind.rank(key) && (!found || kind.rank(e.key) >= kind.rank(best.key)) {
			best, found = e, true
		}
	}
	return best, found
}

// line puts a key on a line of its own into a section: behind the nearest of some
// entries that it follows; else below the header, at the head of the file before the
// first of them.
func (l layout) line(key Key, value string, part int, some func(entry) bool) layout {
	if e, found := l.before(key, some); found {
		return l.lines(l.behindComments(e.lines.to), l.indent(e.lines)+key.below(l.sections[e.part].table)+" = "+value)
	}
	s := l.sections[part]
	setting := l.indent(s.line) + key.below(s.table) + " = " + value
	first := slices.IndexFunc(l.entries, some)
	switch {
	case part > 0:
		return l.lines(l.behindComments(s.line.to), setting)
	case first >= 0:
		return l.lines(l.entries[first].lines.from, setting)
	}
	return l.atHead(setting)
}

func (l layout) atHead(lines ...string) layout {
	if len(l.sections) > 1 {
		return l.lines(l.sections[1].line.from, append(lines, "")...)
	}
	return l.lines(len(l.text), lines...)
}

func (l layout) indent(line span) string {
	text := l.of(line)
	return text[:len(text)-len(strings.TrimLeft(text, " \t"))]
}

// lines puts lines in where a line begins, with the line ends of the text.
func (l layout) lines(at int, lines ...string) layout {
	end := "\n"
	if i := bytes.IndexByte(l.text, '\n'); i > 0 && l.text[i-1] == '\r' {
		end = "\r\n"
	}
	text := strings.Join(lines, end)
	if at > 0 && l.text[at-1] != '\n' {
		return l.splice(span{at, at}, end+text)
	}
	return l.splice(span{at, at}, text+end)
}

// headed puts a key below a new header: behind the nearest table that it follows in
// the starting file, for a size within that size.
func (l layout) headed(key Key, at scope, value string) layout {
	table := key.table()
	header, setting := "["+string(table)+"]", string(key.word())+" = "+value
	after, kind := 0, l.kind()
	for i, s := range l.sections {
		follows := s.size == at.size && !s.off && kind.tableRank(s.table) <= kind.tableRank(table)
		if follows && (kind.tableRank(s.table) >= kind.tableRank(l.sections[after].table) || l.sections[after].size != at.size) {
			after = i
		}
	}
	switch {
	case at.size > 0:
		return l.lines(l.end(after), "[size."+string(table)+"]", setting)
	case at.row > 0:
		header = "[" + header + "]"
	}
	if end := l.end(after); end > 0 {
		return l.lines(end, "", header, setting)
	}
	return l.atHead(header, setting)
}

// An order says as the how-manieth keys and tables stand in the starting file of a kind.
type order struct{ keys, tables map[Key]int }

var startOrder = sync.OnceValue(func() []order {
	var all []order
	for kind, s := range schemas() {
		out := order{map[Key]int{}, map[Key]int{}}
		text, _ := Start(Kind(kind), s.start.usual, measure.Millimetre)
		l := survey(text)
		for i, s := range l.sections {
			if s.size == 0 {
				out.tables[s.table] = i
			}
		}
		for i, e := range l.entries {
			if e.size == 0 {
				out.keys[e.key] = i
			}
		}
		all = append(all, out)
	}
	return all
})

func (k Kind) rank(key Key) int      { return startOrder()[k].keys[key] }
func (k Kind) tableRank(key Key) int { return startOrder()[k].tables[key] }
