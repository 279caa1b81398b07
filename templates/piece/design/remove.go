package design

import (
	"bytes"
	"slices"
	"strings"

	"rodsheet/templates/wording"
)

// without returns the layout without a key. What holds for all sizes is commented
// out where it has a line of its own; a size loses the line, and the header above it
// where nothing is left below.
func (l layout) without(key Key, at scope) layout {
	e, ok := l.find(key, at)
	switch {
	case !ok:
		return l
	case e.brace > 0:
		return l.unbraced(e)
	case at.size == 0:
		return l.commented(e)
	}
	if l.alone(e) {
		e.lines.from = l.sections[e.part].line.from
	}
	return l.cut(e.lines)
}

// alone reports whether the header above an entry holds nothing else, nor a comment.
func (l layout) alone(e entry) bool {
	s := l.sections[e.part]
	rest := l.of(span{s.line.to, e.lines.from}) + l.of(span{e.lines.to, l.end(e.part)})
	return s.table != "" && strings.TrimSpace(rest) == "" && !strings.Contains(l.of(s.line), "#")
}

// cut takes lines out. The last one has no line end where the text had none.
func (l layout) cut(lines span) layout {
	if lines.to == len(l.text) && !bytes.HasSuffix(l.text, []byte("\n")) {
		lines.from -= l.lineEndAt(lines.from)
	}
	return l.splice(lines, "")
}

// lineEndAt returns how long a line end is that stands before an offset.
func (l layout) lineEndAt(at int) int {
	before := l.text[:at]
	return at - len(bytes.TrimSuffix(bytes.TrimSuffix(before, []byte("\n")), []byte("\r")))
}

func (l layout) commented(e entry) layout {
	var out strings.Builder
	for line := range strings.Lines(l.of(e.lines)) {
		rest := strings.TrimLeft(line, " \t")
		out.WriteString(line[:len(line)-len(rest)] + "# " + rest)
	}
	return l.splice(e.lines, out.String())
}

// unbraced takes a key out of braces, with the comma behind it or else before it.
func (l layout) unbraced(e entry) layout {
	cut := e.whole
	behind := strings.TrimLeft(string(l.text[cut.to:]), " \t")
	if rest, found := strings.CutPrefix(behind, ","); found {
		return l.splice(span{cut.from, len(l.text) - len(strings.TrimLeft(rest, " \t"))}, "")
	}
	before := bytes.TrimRight(l.text[:cut.from], " \t\r\n")
	if bytes.HasSuffix(before, []byte(",")) {
		cut.from = len(before) - 1
	}
	return l.splice(cut, "")
}

// RemoveRow returns the text without one [[wood.board]] or [[item]], counted from 1.
func RemoveRow(text []byte, table Key, row int) ([]byte, error) {
	return rewrite(text, func(l layout) (layout, error) {
		if row < 1 || row > l.rows[table] {
			return l, refused("", "", noSuchRow.With(wording.Shown(string(table)), row), "")
		}
		return l.emptied(scope{row: row}, table), nil
	})
}

// emptied takes out the sections of a scope, of rows those of one table, each with the
// blank line above it.
func (l layout) emptied(at scope, table Key) layout {
	for i, s := range slices.Backward(l.sections) {
		if s.off || s.scope != at || at.row > 0 && s.table != table {
			continue
		}
		from := s.line.from
		if blank := l.lineEndAt(from); l.lineEndAt(from-blank) > 0 {
			from -= blank
		}
		l = l.cut(span{from, l.end(i)})
	}
	return l
}

// AddSize returns the text with one more size behind the last. A design without sizes
// is one itself, and a maker who adds a size keeps it: it becomes the first of two.
func AddSize(text []byte, name string) ([]byte, error) {
	return rewrite(text, func(l layout) (layout, error) {
		if l.sizes >= mostSizes {
			return l, refused("size", "", tooManySizes.With(l.sizes+1, mostSizes), "")
		}
		if err := l.unnamed(name, 0); err != nil {
			return l, err
		}
		if l.sizes == 0 {
			first := firstSize.With()
			if strings.EqualFold(first, name) {
				first = otherFirstSize.With()
			}
			l = l.sized(first)
		}
		return l.sized(name), nil
	})
}

// sized puts a size behind the last, or where the starting file has its first.
func (l layout) sized(name string) layout {
	after := 0
	for i, s := range l.sections {
		if !s.off && s.row == 0 && (s.size == l.sizes || l.sizes == 0) {
			after = i
		}
	}
	lines := []string{"", "[[size]]", "name = " + LineField.written(name, "")}
	if i := slices.IndexFunc(l.braces, func(b brace) bool { return b.table == "" && b.size == l.sizes && b.size > 0 }); i >= 0 {
		at := l.braces[i].shut + 1
		return l.splice(span{at, at}, ", {"+lines[2]+"}")
	}
	example := slices.IndexFunc(l.sections, func(s section) bool { return s.size == noSize })
	if l.sizes == 0 && example > after {
		return l.lines(l.sections[example].line.from, append(lines[1:], "")...)
	}
	return l.lines(l.end(after), lines...)
}

// RemoveSize returns the text without a size.
func RemoveSize(text []byte, name string) ([]byte, error) {
	return rewrite(text, func(l layout) (layout, error) {
		size, err := l.sizeOf(name)
		if err != nil {
			return l, err
		}
		return l.sizeless(size), nil
	})
}

func (l layout) sizeless(size int) layout {
	if i := slices.IndexFunc(l.braces, func(b brace) bool { return b.table == "" && b.size == size }); i >= 0 {
		b := l.braces[i]
		return l.unbraced(entry{whole: span{b.open, b.shut + 1}})
	}
	return l.emptied(scope{size: size}, "")
}
