package design

import (
	"regexp"
	"slices"
	"strings"
	"sync"
	"time"
	"unicode"

	"rodsheet/geometry/lists"
)

var (
	tomlNumber = sync.OnceValue(func() *regexp.Regexp { return regexp.MustCompile(`^[+-]?(?:0|[1-9][0-9]*)(?:\.[0-9]+)?$`) })
	pointFirst = sync.OnceValue(func() *regexp.Regexp { return regexp.MustCompile(`^[+-]?\.[0-9]+$`) })
)

// bare returns a value as it stands without quotes; false where it needs them.
func (k FormKind) bare(value string) (string, bool) {
	switch k {
	case LengthField, AngleField:
		return value, tomlNumber().MatchString(value)
	case NumberField, CountField:
		if pointFirst().MatchString(value) {
			value = strings.Replace(value, ".", "0.", 1)
		}
		return value, tomlNumber().MatchString(value)
	case YesNoField:
		return trueOrFalse(value), trueOrFalse(value) != ""
	case DateField:
		_, err := time.Parse(time.DateOnly, value)
		return value, err == nil
	}
	return value, false
}

// written returns a value as it is to stand in the place of another, which may be
// empty. Quotes stand where they are needed. A maker who has put them without need, or
// of another sort than is needed, finds the same again.
func (k FormKind) written(value, old string) string {
	quote := quoteOf(old)
	inside := old[len(quote) : len(old)-len(quote)]
	plain, bare := k.bare(value)
	if bare && quote != "" && (k == LengthField || k == AngleField || k == DateField) {
		_, wasBare := k.bare(inside)
		bare = !wasBare
	}
	switch {
	case bare:
		return plain
	case quoted(inside, "") == old:
		quote = ""
	}
	return quoted(value, quote)
}

// quoteOf returns what a text begins with: one quote or three; nothing where it is
// none.
func quoteOf(text string) string {
	for _, q := range []string{`"""`, "'''", `"`, "'"} {
		if strings.HasPrefix(text, q) && len(text) >= 2*len(q) {
			return q
		}
	}
	return ""
}

// quoted puts a value in quotes that need no escapes, in the given ones first.
func quoted(value, quote string) string {
	control := strings.ContainsFunc(value, unicode.IsControl)
	for _, q := range []string{quote, `"`, "'"} {
		taken := q
		if len(q) > 0 {
			taken = q[:1]
		}
		if q != "" && !control && !strings.Contains(value, taken) && (taken == "'" || !strings.Contains(value, `\`)) {
			return q + value + q
		}
	}
	return `"` + escaped(value) + `"`
}

func escaped(value string) string {
	const hex = "0123456789ABCDEF"
	var b strings.Builder
	for _, r := range value {
		switch {
		case r == '"' || r == '\\':
			b.WriteRune('\\')
			b.WriteRune(r)
		case unicode.IsControl(r):
			b.WriteString(`\u00`)
			b.WriteByte(hex[r>>4])
			b.WriteByte(hex[r&15])
		default:
			b.WriteRune(r)
		}
	}
	return b.String()
}

// fresh returns a value as it stands in a new line.
func (k FormKind) fresh(value string) string {
	switch k {
	case RangeField, PointsField:
		return k.list(value)
	}
	return k.written(value, "")
}

func (k FormKind) item() FormKind {
	if k == PointsField {
		return LengthField
	}
	return NumberField
}

func (k FormKind) list(value string) string {
	var corners []string
	for _, corner := range listed(value) {
		items := lists.Map(corner, func(item string) string { return k.item().written(item, "") })
		corners = append(corners, strings.Join(items, ", "))
	}
	if k == PointsField {
		return "[[" + strings.Join(corners, "], [") + "]]"
	}
	return "[" + strings.Join(corners, ", ") + "]"
}

// listed takes a list apart that a maker has written: "8, 12", or "-300, -200;
// 300, -200; 0, 350". Brackets and quotes of TOML may stand in it.
func listed(value string) [][]string {
	value = strings.NewReplacer("],", ";", "[", "", "]", "").Replace(value)
	var out [][]string
	for corner := range strings.SplitSeq(strings.Trim(value, "; \t"), ";") {
		var pair []string
		for item := range strings.SplitSeq(corner, ",") {
			item = strings.TrimSpace(item)
			if q := quoteOf(item); q != "" && strings.HasSuffix(item, q) {
				item = strings.Trim(item, q)
			}
			pair = append(pair, item)
		}
		out = append(out, pair)
	}
	return out
}

// shown writes the items of a list as listed reads them.
func (e entry) shown() string {
	if e.kind != isList {
		return e.text
	}
	var corners []string
	for _, item := range e.items {
		if item.kind != isList {
			corners = append(corners, item.text)
			continue
		}
		corners = append(corners, strings.Join(lists.Map(item.kids, func(n *node) string { return n.text }), ", "))
	}
	if slices.ContainsFunc(e.items, func(n *node) bool { return n.kind == isList }) {
		return strings.Join(corners, "; ")
	}
	return strings.Join(corners, ", ")
}
