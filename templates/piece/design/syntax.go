package design

import (
	"bytes"
	"errors"
	"regexp"
	"strings"
	"sync"
	"unicode"
	"unicode/utf8"

	"github.com/pelletier/go-toml/v2/unstable"

	"rodsheet/templates/wording"
)

// statement is the beginning of a line that sets a key or opens a table.
var statement = sync.OnceValue(func() *regexp.Regexp {
	return regexp.MustCompile(`^[ \t]*(?:(\[\[?)[ \t]*([A-Za-z][\w.-]*)|([\w.-]+)[ \t]*=)`)
})

// firstWord is what a line begins with where its = is missing.
var firstWord = sync.OnceValue(func() *regexp.Regexp { return regexp.MustCompile(`^[ \t]*([A-Za-z][\w.-]*)`) })

// brokenOff notes what keeps the file from being read and returns where reading
// goes on: at the next line that sets a key or opens a table. The key whose value
// is not understood, or the table whose header is not, still counts as given.
func (b *builder) brokenOff(err error) (next int) {
	at := b.base
	var fault *unstable.ParserError
	if errors.As(err, &fault) {
		at += int(b.parser.Range(fault.Highlight).Offset)
	}
	text := b.source.text
	begin := b.source.nextStatement(b.read)
	line := b.source.lineStart(at)
	begin = min(begin, line)
	n := slipAt(text, begin, at)
	if !b.keepBroken(text[begin:], begin) {
		n.doubts = []Key{everything}
	}
	for next = b.source.lineEnd(begin); next < len(text); next = b.source.lineEnd(next) {
		found := statement().Match(text[next:b.source.lineEnd(next)])
		if found && next >= line {
			break
		}
		if found {
			n.doubts = []Key{everything}
		}
	}
	b.lost = b.lost || n.doubts != nil
	b.notes = append(b.notes, n)
	b.read = next
	return next
}

// keepBroken puts the key or the table of a broken line into the tree; false
// where none can be made out.
func (b *builder) keepBroken(line []byte, at int) bool {
	line, _, _ = bytes.Cut(line, []byte("\n"))
	if m := statement().FindSubmatchIndex(line); m != nil && m[2] >= 0 {
		noted := len(b.notes)
		b.here = b.header(partsOf(line[m[4]:m[5]], at+m[4]), m[3]-m[2] == 2)
		b.notes = b.notes[:noted] // one mistake a line
		return true
	}
	m := firstWord().FindSubmatchIndex(line)
	if m == nil {
		return false
	}
	keys := partsOf(line[m[2]:m[3]], at+m[2])
	last := keys[len(keys)-1]
	if parent := b.descend(b.here, keys[:len(keys)-1]); parent.child(last.key) == nil {
		parent.add(&node{key: last.key, at: last.at, value: last.at, kind: isBroken})
	}
	return true
}

func partsOf(key []byte, at int) []part {
	var out []part
	for word := range bytes.SplitSeq(key, []byte(".")) {
		out = append(out, part{string(word), at})
		at += len(word) + 1
	}
	return out
}

// deepest is how far lists stand within lists before nothing else explains it.
const deepest = 1000

const curlyQuotes = "“”„‟‘’‚‛"

// slipAt says what is wrong at a place that the parser of TOML does not accept,
// by the text around it: the line of its key, or of its header, begins at begin.
func slipAt(text []byte, begin, at int) note {
	before, _ := strings.CutPrefix(string(text[begin:at]), byteOrderMark)
	rest, _, _ := strings.Cut(string(text[at:]), "\n")
	key, value, valued := strings.Cut(before, "=")
	value = strings.TrimLeft(value, " \t")
	first, _ := utf8.DecodeRuneInString(rest)
	slip := func(words wording.Text, hint string) note { return note{at: at, words: words.With(), hint: hint} }
	if i := strings.IndexAny(value+rest, curlyQuotes); i >= 0 && (value == "" && i == 0 || unclosed(value)) {
		r, _ := utf8.DecodeRuneInString((value + rest)[i:])
		return note{at: at - len(value) + i, words: curlyQuote.With(r), hint: curlyHint.With()}
	}
	switch {
	case strings.Count(before, "[")+strings.Count(before, "{") > deepest:
		return note{at: at, words: nestedWords.With(), doubts: []Key{everything}}
	case first == '\r':
		return slip(oldLineEnds, oldLineEndsHint.With())
	case strings.HasPrefix(strings.TrimLeft(before+rest, " \t"), "["):
		return slip(headerOpen, headerHint.With())
	case !valued && strings.TrimSpace(key) == "":
		return slip(keyWanted, keyHint.With())
	case !valued:
		return slip(equalsMissing, widthHint.With())
	case value == "":
		return badValue(at, rest)
	case first == '\\':
		return slip(backslash, backslashHint.With())
	case unclosed(value):
		return slip(notClosed(value))
	case value[0] == '[':
		return slip(listOpen, listHint.With())
	case value[0] == '{':
		return slip(braceOpen, "")
	case strings.HasSuffix(value, "."):
		return slip(digitMissing, digitHint.With())
	case unicode.IsLetter(first) && unicode.IsDigit(rune(value[len(value)-1])):
		return slip(unitUnquoted, quotesHint.With())
	}
	return slip(lineGoesOn, sharper(first))
}

// badValue says what is wrong with a value from its first character on.
func badValue(at int, rest string) note {
	word := strings.TrimRightFunc(rest, unicode.IsSpace)
	switch {
	case word == "" || word[0] == '#':
		return note{at: at, words: valueMissing.With(), hint: widthHint.With()}
	case trueOrFalse(word) != "":
		return note{at: at, words: wantedFor.With(trueFalse.With(), word), hint: writeIt.With(trueOrFalse(word))}
	case word[0] == '0':
		return note{at: at, words: leadingZero.With(), hint: leadingZeroHint.With()}
	}
	first, _ := utf8.DecodeRuneInString(word)
	return note{at: at, words: valueUnknown.With(), hint: sharper(first)}
}

// trueOrFalse returns what other notations write for true or false.
func trueOrFalse(word string) string {
	switch strings.ToLower(word) {
	case "yes", "on", "true":
		return "true"
	case "no", "off", "false":
		return "false"
	}
	return ""
}

// unclosed reports whether a value begins with a quote and has none at its end.
func unclosed(value string) bool {
	if value == "" || value[0] != '"' && value[0] != '\'' {
		return false
	}
	quote := value[:1]
	if strings.HasPrefix(value, strings.Repeat(quote, 3)) {
		return strings.Count(value, strings.Repeat(quote, 3)) < 2
	}
	return strings.Count(strings.ReplaceAll(value, `\"`, ""), quote)%2 == 1
}

func notClosed(value string) (wording.Text, string) {
	switch {
	case strings.HasPrefix(value, `"""`) || strings.HasPrefix(value, "'''"):
		return textsOpen, textsHint.With()
	case value[0] == '"':
		return textOpen, inchesHint.With()
	}
	return textOpen, feetHint.With()
}

// sharper returns a hint by the character in question.
func sharper(first rune) string {
	hint, known := map[rune]wording.Text{',': commaHint, '.': pointHint, ':': slopeHint, '"': inchMarkHint}[first]
	if !known {
		hint = quotesHint
	}
	return hint.With()
}
