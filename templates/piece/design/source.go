package design

import (
	"bytes"
	"slices"
	"unicode"
	"unicode/utf8"
)

// mostBytes is far more than any design needs.
const mostBytes = 256 << 10

// A source is the text of a design file, valid UTF-8 without byte order mark.
type source struct {
	text  []byte
	lines []int // offsets at which the lines begin
}

type place struct{ line, column int }

const byteOrderMark = "\xef\xbb\xbf"

// open refuses what no editor of plain text writes.
func open(data []byte) (source, *Mistake) {
	s := newSource(bytes.TrimPrefix(data, []byte(byteOrderMark)))
	bad := func(at int, words, hint string) (source, *Mistake) {
		p := s.place(at)
		return source{}, &Mistake{Line: p.line, Column: p.column, Text: words, Hint: hint}
	}
	if len(data) > mostBytes {
		return bad(0, tooLong.With(mostBytes), otherFile.With())
	}
	if bytes.HasPrefix(data, []byte("\xff\xfe")) || bytes.HasPrefix(data, []byte("\xfe\xff")) {
		return bad(0, utf16.With(), utf16Hint.With())
	}
	next := 0 // behind the last letter of several bytes
	for i, c := range s.text {
		if c >= ' ' && c < unicode.MaxASCII || c == '\n' || i < next { // most are
			continue
		}
		r, size := utf8.DecodeRune(s.text[i:])
		switch {
		case r == utf8.RuneError && size < 2:
			return bad(i, notUTF8.With(), notUTF8Hint.With())
		case r != '\r' && r != '\t' && unicode.IsControl(r):
			return bad(i, control.With(r), controlHint.With())
		}
		next = i + size
	}
	return s, nil
}

func newSource(text []byte) source {
	s := source{text: slices.Clip(slices.Clone(text)), lines: make([]int, 1, 1+bytes.Count(text, []byte("\n")))}
	for at := 0; len(s.lines) < cap(s.lines); {
		at = s.lineEnd(at)
		s.lines = append(s.lines, at)
	}
	return s
}

func (s source) place(at int) place {
	at = min(max(at, 0), len(s.text))
	line, found := slices.BinarySearch(s.lines, at)
	if !found {
		line--
	}
	if line > 0 && at == len(s.text) && s.lines[line] == at {
		// Behind the last line feed there is no line to look at.
		line, at = line-1, at-1
	}
	return place{line + 1, utf8.RuneCount(s.text[s.lines[line]:at]) + 1}
}

// lineStart returns where the line of an offset begins, lineEnd where the next
// one does.
func (s source) lineStart(at int) int { return bytes.LastIndexByte(s.text[:at], '\n') + 1 }

func (s source) lineEnd(at int) int {
	if i := bytes.IndexByte(s.text[at:], '\n'); i >= 0 {
		return at + i + 1
	}
	return len(s.text)
}

// nextStatement returns where the first line from an offset on begins that is
// neither blank nor a comment.
func (s source) nextStatement(at int) int {
	for at < len(s.text) {
		end := s.lineEnd(at)
		if line := bytes.TrimSpace(s.text[at:end]); len(line) > 0 && line[0] != '#' {
			break
		}
		at = end
	}
	return at
}

// offset is the inverse of place for a column that counts bytes.
func (s source) offset(line, column int) int {
	line = min(max(line, 1), len(s.lines))
	return min(s.lines[line-1]+max(column, 1)-1, len(s.text))
}
