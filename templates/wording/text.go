// Package wording turns identities and figures into what a maker reads. Nothing
// below it holds a sentence, and nothing above looks into one.
package wording

import (
	"fmt"
	"strings"
	"unicode"
	"unicode/utf8"
)

// A Text is a sentence, or a part of one, with fmt verbs for what changes. As in
// every format a percent sign is written twice.
type Text string

// garble stands in for every Text; only tests set it.
var garble func(Text) string

// With returns the sentence with its verbs filled.
func (t Text) With(args ...any) string {
	format := string(t)
	if garble != nil {
		format = garble(t)
	}
	if len(args) == 0 && !strings.Contains(format, "%") {
		return format // as most are
	}
	return fmt.Sprintf(format, args...)
}

// Capital begins a text with a capital letter, if it begins with one.
func (t Text) Capital() Text {
	first, n := utf8.DecodeRuneInString(string(t))
	return Text(unicode.ToUpper(first)) + t[n:]
}

// Garble makes every Text from now on be printed as f returns it, until restore
// is called. It is for tests that show that no figure, step or order hangs on
// words. What f returns keeps the verbs; it must not run beside other tests.
func Garble(f func(Text) string) (restore func()) {
	garble = f
	return func() { garble = nil }
}
