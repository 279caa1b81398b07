package wording

import (
	"strconv"
	"strings"
	"unicode"
	"unicode/utf8"
)

const (
	and Text = "%s and %s"
	or  Text = "%s or %s"
)

// And joins words as a sentence does: "a, b and c".
func And(words ...string) string { return and.join(words) }

// Or joins words for a choice: "a, b or c".
func Or(words ...string) string { return or.join(words) }

func (t Text) join(words []string) string {
	last := len(words) - 1
	if last < 1 {
		return strings.Join(words, "")
	}
	return t.With(strings.Join(words[:last], ", "), words[last])
}

// Shorten cuts a text to so many characters, an ellipsis the last of them.
func Shorten(s string, most int) string {
	if r := []rune(s); len(r) > most {
		return string(r[:most-1]) + "…"
	}
	return s
}

// MostShown is how much of what a user wrote stands in a message.
const MostShown = 40

// Shown returns what a user wrote fit for a message: shortened where it is long,
// in quotes where it is more than plain letters.
func Shown(s string) string {
	s = Shorten(s, MostShown)
	odd := func(r rune) bool { return r <= ' ' || r == '"' || r == '\'' || !unicode.IsPrint(r) }
	if s != "" && utf8.ValidString(s) && strings.IndexFunc(s, odd) < 0 {
		return s
	}
	return strconv.Quote(s)
}
