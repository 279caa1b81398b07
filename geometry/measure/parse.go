package measure

import (
	"fmt"
	"math/big"
	"regexp"
	"strconv"
	"strings"
	"sync"
)

// A ParseError says why a text was not read.
type ParseError struct {
	Text   string // as given
	Reason Slip
	Hint   Slip // what to write instead
}

// A Slip is what is wrong with a text, or what to write instead: which sentence it
// is, and the figures, units and other pieces of text that it holds.
type Slip struct {
	ID   ID
	Args []string
}

func slipOf(id ID, args ...string) Slip { return Slip{id, args} }

// Error returns one line: the text in quotes, shortened if long, and the reason by
// its ID.
func (e *ParseError) Error() string {
	return e.Quoted() + ": " + strings.Join(append([]string{string(e.Reason.ID)}, e.Reason.Args...), " ")
}

// Quoted returns the text as it is shown.
func (e *ParseError) Quoted() string { return quote(e.Text) }

// quote shows s safely: at most 40 characters, none of them able to move the
// cursor or turn the line round.
func quote(s string) string {
	const most = 40
	if r := []rune(s); len(r) > most {
		s = string(r[:most-1]) + "…"
	}
	return fmt.Sprintf("%q", s)
}

// longest is the number of characters of the longest text that is looked at.
const longest = 64

// A fault is a ParseError that does not know its text yet.
type fault struct{ reason, hint Slip }

// wrong is a fault whose sentences hold nothing.
func wrong(reason, hint ID) *fault { return &fault{slipOf(reason), slipOf(hint)} }

func (f *fault) of(text string) error { return &ParseError{text, f.reason, f.hint} }

// parse cleans s, takes off its sign and hands what is left to read, which
// works in exact fractions: the one rounding is the last step here.
func parse(s string, read func(string) (*big.Rat, *fault)) (float64, error) {
	if len(s) > longest*4 || len([]rune(s)) > longest {
		return 0, &ParseError{s, slipOf("long-text", strconv.Itoa(longest)), slipOf("one-figure")}
	}
	text := clean(s)
	if text == "" {
		return 0, wrong("empty", "a-figure").of(s)
	}
	unsigned, negative := strings.CutPrefix(text, "-")
	if !negative {
		unsigned = strings.TrimPrefix(text, "+")
	}
	value, f := read(strings.TrimLeft(unsigned, " "))
	if f != nil {
		return 0, f.of(s)
	}
	if negative {
		value.Neg(value)
	}
	v, _ := value.Float64()
	return v, nil
}

// clean brings the typographic forms of a figure to plain ones: "25 ¼″"
// becomes `25 1/4 "`. Single spaces remain, and capitals go.
func clean(s string) string {
	var b strings.Builder
	var last rune
	for _, r := range s {
		if f := vulgar(r); f == "" {
			b.WriteRune(plain(r))
		} else {
			if '0' <= last && last <= '9' {
				b.WriteByte(' ')
			}
			b.WriteString(f + " ")
		}
		last = r
	}
	words := strings.FieldsFunc(b.String(), func(r rune) bool { return r == ' ' })
	return strings.ReplaceAll(strings.ToLower(strings.Join(words, " ")), "''", `"`)
}

func plain(r rune) rune {
	switch r {
	case '\t', '\u00a0', '\u2009', '\u202f': // no-break and thin spaces
		return ' '
	case '′', '’', '‘':
		return '\''
	case '″', '”', '“':
		return '"'
	case '⁄', '∕':
		return '/'
	case '−', '–', '‐', '‑': // minus, en dash, hyphens
		return '-'
	case 'º', '˚': // ordinal and ring, which look like degrees
		return '°'
	}
	return r
}

func vulgar(r rune) string {
	switch r {
	case '½':
		return "1/2"
	case '¼':
		return "1/4"
	case '¾':
		return "3/4"
	case '⅛':
		return "1/8"
	case '⅜':
		return "3/8"
	case '⅝':
		return "5/8"
	case '⅞':
		return "7/8"
	}
	return ""
}

// Pieces of the forms below. A number is 640, 0.5 or .5; a figure is a number,
// a fraction, or a whole number with a fraction.
const (
	number = `(?:\d+\.\d+|\.\d+|\d+)`
	figure = `(\d+[ -]\d+/\d+|\d+/\d+|` + number + `)`
)

// form returns the pattern that a whole text must fit. It is compiled when it
// is first asked for: most forms tell only what is wrong with a figure.
func form(pattern string) func() *regexp.Regexp {
	return sync.OnceValue(func() *regexp.Regexp { return regexp.MustCompile(`^(?:` + pattern + `)$`) })
}

// plainNumber reads a number by itself, as most texts are, without a pattern.
func plainNumber(text string) (v *big.Rat, ok bool) {
	whole, part, point := strings.Cut(text, ".")
	if digits := whole + part; digits == "" || point && part == "" || strings.Trim(digits, "0123456789") != "" {
		return nil, false
	}
	return new(big.Rat).SetString(text)
}

// exact reads what fits figure: "25 1/4" is 101/4.
func exact(text string) (*big.Rat, *fault) {
	num, den, fraction := strings.Cut(text, "/")
	if !fraction {
		v, _ := new(big.Rat).SetString(text)
		return v, nil
	}
	whole := "0"
	i := strings.IndexAny(num, " -")
	if i >= 0 {
		whole, num = num[:i], num[i+1:]
	}
	n, d, w := integer(num), integer(den), integer(whole)
	switch {
	case d.Sign() == 0:
		return nil, wrong("divides-by-zero", "other-below")
	case i >= 0 && n.Cmp(d) >= 0:
		return nil, wrong("whole-fraction", "mixed-or-fraction")
	}
	return new(big.Rat).SetFrac(n.Add(n, w.Mul(w, d)), d), nil
}

// integer reads a text of digits.
func integer(digits string) *big.Int {
	v, _ := new(big.Int).SetString(digits, 10)
	return v
}

// twoWays refuses a text that has two readings.
func twoWays(one, other string, hint ID, args ...string) *fault {
	return &fault{slipOf("two-ways", one, other), slipOf(hint, args...)}
}

var (
	commaForm     = form(`(\d+),(\d+)( ?(?:[a-z]+\.?|°|'|"))?`)
	mixedForm     = form(`(?:\d+\.\d*|\.\d+)[ -]\d+/\d+.*`)
	exponentForm  = form(number + ` ?e ?[+-]?\d+.*`)
	unmarkedForm  = form(number + `(?: ` + number + `)+\D*`)
	underlineForm = form(`\d[\d_]*_.*|0[xob][\da-f]+.*`)
)

// slip explains what is wrong with a text that fits no form. It returns nil
// where nothing better can be said than that.
func slip(text string) *fault {
	if m := commaForm().FindStringSubmatch(text); m != nil {
		point := m[1] + "." + m[2] + m[3]
		if len(m[2]) == 3 {
			return twoWays(point, m[1]+m[2]+m[3], "no-thousands")
		}
		return &fault{slipOf("one-or-two", point, m[1], m[2]+m[3]), slipOf("point")}
	}
	switch {
	case strings.Contains(text, ","):
		return wrong("comma", "no-thousands")
	case strings.ContainsAny(text, "()"):
		return wrong("brackets", "fraction-or-decimal")
	case mixedForm().MatchString(text):
		return wrong("decimal-and-fraction", "decimal-or-fraction")
	case exponentForm().MatchString(text):
		return wrong("power-of-ten", "written-out")
	case underlineForm().MatchString(text):
		return wrong("no-decimal", "digits")
	case unmarkedForm().MatchString(text):
		return wrong("several-figures", "")
	}
	return nil
}
