package lettering

import (
	"strings"
	"unicode/utf8"
)

// Wrap breaks s between words into lines no longer than width. A word too
// long for a line of its own is broken where it must be; a line holds one
// letter at least, however small width is. Spaces at the breaks are dropped,
// runs of spaces and line breaks become one space, and a no-break space
// (U+00A0) holds its neighbours together. So do the words of a quantity,
// 18 13/64 in (18.203), where a line has room for them.
func Wrap(s string, height, width float64) []string {
	w := wrapper{face: face(), room: width / Em(height) * 1000}
	held := ""
	for word := range strings.FieldsFuncSeq(s, breakable) {
		if held == "" {
			held = word
			continue
		}
		if holds(held, word) {
			if whole := held + " " + word; w.length(whole) <= w.room {
				held = whole
				continue
			}
		}
		w.add(held)
		held = word
	}
	if held != "" {
		w.add(held)
	}
	return w.finish()
}

// holds reports whether a word belongs to the figure before it: a fraction, a unit, or
// the same value again in brackets.
func holds(before, word string) bool {
	last, first := before[len(before)-1], strings.TrimLeft(word, "(")
	switch strings.TrimRight(word, ".,;:)") {
	case "mm", "in":
		return digit(last)
	}
	return first != "" && digit(first[0]) && (digit(last) && strings.Contains(word, "/") || first != word && strings.HasSuffix(before, " in"))
}

func digit(b byte) bool { return '0' <= b && b <= '9' }

func breakable(r rune) bool { return r == ' ' || r == '\n' || r == '\t' || r == '\r' }

// A wrapper gathers words into lines. Lengths are in thousandths of an em.
type wrapper struct {
	face  *typeface
	room  float64
	lines []string
	line  []byte
	used  float64
}

func (w *wrapper) add(word string) {
	if len(w.line) > 0 {
		if length := w.face.stepOr(' ') + w.length(word); w.used+length <= w.room {
			w.line = append(append(w.line, ' '), word...)
			w.used += length
			return
		}
		w.flush()
	}
	for _, r := range word {
		step := w.face.stepOr(r)
		if len(w.line) > 0 && !(w.used+step <= w.room) {
			w.flush()
		}
		w.line = utf8.AppendRune(w.line, r)
		w.used += step
	}
}

func (w *wrapper) length(word string) float64 {
	sum := 0.0
	for _, r := range word {
		sum += w.face.stepOr(r)
	}
	return sum
}

func (w *wrapper) flush() {
	w.lines = append(w.lines, string(w.line))
	w.line = w.line[:0]
	w.used = 0
}

func (w *wrapper) finish() []string {
	if len(w.line) > 0 {
		w.flush()
	}
	return w.lines
}
