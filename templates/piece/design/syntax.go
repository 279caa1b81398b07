package design

import (
	"errors"
	"strings"

	"github.com/pelletier/go-toml/v2/unstable"
)

// stopped ends the words of a mistake behind which nothing was read.
const stopped = "; nothing behind this was read"

const quotesHint = `a word, and a figure with a unit or a fraction, stands in quotes: width = "1 1/4in"`

// A slip is what the parser says, by how it begins, and a maker's words for it.
type slip struct{ begins, words, hint string }

func slips() []slip {
	return []slip{
		{"strings must be quoted", "a figure is followed by letters", quotesHint},
		{"expected newline", "the line does not end here", quotesHint},
		{"expected '=' after key", "an = is missing after the key", "write width = 28"},
		{"expected value", "the value is missing", "write width = 28"},
		{"unexpected character", "the value is not understood", quotesHint},
		{"expected keyword", "the value is not understood", quotesHint},
		{"unterminated", "a text is not closed", `put the same quote at its end; for inch marks write 25in or '25"'`},
		{"basic strings cannot have new lines", "a text is not closed", `put the same quote at its end; for inch marks write 25in or '25"'`},
		{"literal strings cannot have new lines", "a text is not closed", `put the same quote at its end; for foot marks write 2ft or "2'"`},
		{"multiline", "a text of several lines is not closed", "put the same three quotes at its end"},
		{"integers cannot have leading zeroes", "a number begins with 0", "write 8, not 08"},
		{"decimal point must be followed", "a digit is missing after the point", "write 3.0 or 3"},
		{"expected ']", "the name of a table is not closed", "write [ring], or [[size]] for one of several"},
		{"array is incomplete", "a list is not closed", "put ] at its end"},
		{"expected ',' or ']'", "a comma or the closing ] of a list is missing", "write [8, 12]"},
		{"inline table is incomplete", "a table in braces is not closed", "put } at its end"},
		{"expected ',' or '}'", "a comma or the closing } of a table is missing", ""},
		{"invalid character at start of key", "a key is wanted here", "keys are plain words: width = 28"},
		{"expected key", "a key is wanted here", "keys are plain words: width = 28"},
		{"invalid escape", "a backslash means something else in double quotes", "take it out, or use single quotes"},
		{"need a character after", "a backslash means something else in double quotes", "take it out, or use single quotes"},
		{"arrays and inline tables are nested", "lists stand within lists without end", ""},
		{"carriage returns", "a line ends in the manner of very old files", "save it with the usual line ends"},
	}
}

// syntax says what keeps the file from being read.
func syntax(s source, err error) note {
	n := note{words: "this is not understood"}
	var fault *unstable.ParserError
	if !errors.As(err, &fault) {
		n.words += stopped
		return n
	}
	n.at = max(0, cap(s.text)-cap(fault.Highlight))
	message := fault.Message
	if strings.HasPrefix(message, "unexpected character U+000A") || strings.HasPrefix(message, "unexpected character U+000D") {
		message = "expected value" // and the line ends
	}
	for _, slip := range slips() {
		if strings.HasPrefix(message, slip.begins) {
			n.words, n.hint = slip.words, slip.hint
			break
		}
	}
	n.words += stopped
	n.hint = sharper(s.text, n.at, n.hint)
	return n
}

// sharper returns a better hint where the character in question tells more.
func sharper(text []byte, at int, hint string) string {
	if at >= len(text) || hint != quotesHint {
		return hint
	}
	switch text[at] {
	case ',':
		return "use a point for decimals, and nothing between thousands"
	case '.':
		return "write a 0 before the point: 0.5"
	case ':':
		return `a slope stands in quotes: splay = "1:6"`
	case '"':
		return `for inch marks write 25in, or use single quotes: '25"'`
	}
	return hint
}
