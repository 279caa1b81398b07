package design

import (
	"cmp"
	"errors"
	"slices"
	"strconv"
	"strings"
	"unicode"

	"rodsheet/geometry/measure"
	"rodsheet/templates/wording"
)

// A field is one key of a table that fills a T: how it is read, and its limits,
// asked of a T however that was made. Nothing is outside where that is nil.
type field[T any] struct {
	key     Key
	kind    FormKind
	choices []string // its words
	within  limits   // of a figure; the letters of a text
	read    func(*node, measure.Unit) (reading[T], *fault)
	outside func(*T) error
	unset   func(*T) bool     // a figure is 0
	at      func(*T) *float64 // where a T holds a figure that is no count; else nil
	word    func(*T) string   // of a choice that a T holds; nil where it follows from other figures
}

// A FormKind says what a key takes.
type FormKind uint8

const (
	LengthField FormKind = iota
	AngleField
	NumberField
	CountField  // a whole number
	ChoiceField // one of some words
	LineField   // a line of text
	DateField   // a line of text, or a date
	YesNoField
	RangeField  // two numbers
	PointsField // corners, two lengths each
	rowsField   // a table that may stand several times
)

// A reading is a value that a T can take.
type reading[T any] struct {
	apply func(*T)
	value float64 // of a figure, in mm, rad or as it is
	word  string  // of a choice
	bare  bool    // a figure without a unit
	idle  bool    // says no more than leaving the key out: 0, or "sharp"
}

// A fault says what is wrong with a value, or with several in a list.
type fault struct {
	at          int
	unit        bool // it may be the unit that is wrong
	words, hint string
	key         Key // of the item it is about, below the field's; mostly empty
	also        []*fault
}

// wanted is the fault of a value of the wrong sort.
func wanted(n *node, what, hint wording.Text) *fault {
	return &fault{at: n.value, words: wantedFor.With(what.With(), n.described()), hint: hint.With()}
}

// limits of a figure. Open ones do not allow the least itself; where 0 of a design
// stands for a key left out, none says so.
type limits struct {
	least, most float64
	open, none  bool
}

// upTo allows more than nothing and at most so much; from allows the least too.
func upTo(most float64) limits        { return limits{most: most, open: true} }
func from(least, most float64) limits { return limits{least: least, most: most} }

func (l limits) orNone() limits {
	l.none = true
	return l
}

func (l limits) times(unit float64) limits {
	l.least, l.most = l.least*unit, l.most*unit
	return l
}

func (l limits) outside(figure measure.ID, q measure.Quantity) error {
	low := measure.AtLeast
	if l.open {
		low = measure.Above
	}
	bound := func(v float64) measure.Quantity { return measure.Quantity{Kind: q.Kind, Value: v} }
	return cmp.Or(low(figure, q, "", bound(l.least), ""), measure.AtMost(figure, q, "", bound(l.most), ""))
}

func (l limits) check(n *node, q measure.Quantity, u measure.Unit) *fault {
	outside := l.outside("", q)
	if outside == nil {
		return nil
	}
	words, _ := wording.Fault(outside, u)
	f := &fault{at: n.value, words: strings.TrimSpace(words)}
	if q.Kind == measure.KindLength && n.kind != isText && q.Value > l.most {
		f.unit, f.hint = true, bareLengths.With(u)
	}
	return f
}

// figure reads one quantity, which a T holds in the given unit of it.
func figure[T any](key Key, l limits, kind measure.Kind, unit float64, parse func(*node, measure.Unit) (measure.Quantity, *fault), of func(*T) *float64) field[T] {
	read := func(n *node, u measure.Unit) (reading[T], *fault) {
		q, f := parse(n, u)
		if f == nil {
			f = l.check(n, q, u)
		}
		return reading[T]{apply: func(t *T) { *of(t) = q.Value * unit }, value: q.Value, bare: n.kind != isText, idle: q.Value == 0}, f
	}
	held := l.times(unit)
	kinds := [...]FormKind{measure.KindLength: LengthField, measure.KindAngle: AngleField, measure.KindNumber: NumberField}
	return field[T]{key: key, kind: kinds[kind], within: l, read: read, at: of, unset: func(t *T) bool { return *of(t) == 0 }, outside: func(t *T) error {
		if v := *of(t); v != 0 || !l.none {
			return held.outside(measure.ID(key), measure.Quantity{Kind: kind, Value: v})
		}
		return nil
	}}
}

func length[T any](key Key, l limits, of func(*T) *float64) field[T] {
	return figure(key, l, measure.KindLength, 1, parseLength, of)
}

// angle takes its limits in degrees.
func angle[T any](key Key, l limits, of func(*T) *float64) field[T] {
	return figure(key, l.times(measure.Radians(1)), measure.KindAngle, 1, parseAngle, of)
}

func number[T any](key Key, l limits, of func(*T) *float64) field[T] {
	return figure(key, l, measure.KindNumber, 1, parseNumber, of)
}

// percent keeps a share: 0.25 for 25.
func percent[T any](key Key, l limits, of func(*T) *float64) field[T] {
	return figure(key, l, measure.KindNumber, 1.0/100, parseNumber, of)
}

func count[T any](key Key, l limits, of func(*T) *int) field[T] {
	read := func(n *node, u measure.Unit) (reading[T], *fault) {
		v, err := strconv.Atoi(n.text)
		if n.kind != isWhole || err != nil {
			return reading[T]{}, wanted(n, wholeNumber, "")
		}
		f := l.check(n, measure.Number(float64(v)), u)
		return reading[T]{apply: func(t *T) { *of(t) = v }, value: float64(v), idle: v == 0}, f
	}
	return field[T]{key: key, kind: CountField, within: l, read: read, unset: func(t *T) bool { return *of(t) == 0 }, outside: func(t *T) error {
		if v := *of(t); v != 0 || !l.none {
			return l.outside(measure.ID(key), measure.Number(float64(v)))
		}
		return nil
	}}
}

// pick is a choice whose words stand in the order of the constants of a C.
func pick[T any, C ~uint8](key Key, words []string, of func(*T) *C) field[T] {
	f := choice(key, words, func(t *T, i int) { *of(t) = C(i) })
	f.outside = func(t *T) error {
		return from(0, float64(len(words)-1)).outside(measure.ID(key), measure.Number(float64(*of(t))))
	}
	f.word = func(t *T) string { return words[min(int(*of(t)), len(words)-1)] }
	return f
}

// choice reads one of several words and hands on which; the first says no
// more than leaving the key out where nothing hangs on it.
func choice[T any](key Key, words []string, set func(*T, int)) field[T] {
	return field[T]{key: key, kind: ChoiceField, choices: words, read: func(n *node, _ measure.Unit) (reading[T], *fault) {
		if n.kind != isText {
			quoted := `"` + strings.Join(words, orQuoted.With()) + `"`
			return reading[T]{}, &fault{at: n.value, words: wantedFor.With(quoted, n.described()), hint: wordQuoted.With()}
		}
		i := slices.Index(words, n.text)
		if i < 0 {
			return reading[T]{}, &fault{at: n.value, words: noneOf.With(n.described(), wording.Or(words...)),
				hint: didYouMean(strings.ToLower(n.text), words)}
		}
		return reading[T]{apply: func(t *T) { set(t, i) }, word: words[i], idle: i == 0}, nil
	}}
}

// refusing tells why a choice has not a word that it might be thought to have.
func refusing[T any](f field[T], word string, why wording.Text) field[T] {
	read := f.read
	f.read = func(n *node, u measure.Unit) (reading[T], *fault) {
		out, wrong := read(n, u)
		if wrong != nil && n.kind == isText && n.text == word {
			wrong.hint = why.With()
		}
		return out, wrong
	}
	return f
}

func boolean[T any](key Key, of func(*T) *bool) field[T] {
	return field[T]{key: key, kind: YesNoField, read: func(n *node, _ measure.Unit) (reading[T], *fault) {
		if n.kind != isYesNo {
			return reading[T]{}, &fault{at: n.value, words: wantedFor.With(trueFalse.With(), n.described()), hint: boolHint(n.text)}
		}
		return reading[T]{apply: func(t *T) { *of(t) = n.text == "true" }, idle: n.text == "false"}, nil
	}}
}

func boolHint(text string) string {
	if word := trueOrFalse(text); word != "" {
		return writeIt.With(word)
	}
	return writeIt.With(trueFalse.With())
}

func line[T any](key Key, most int, of func(*T) *string) field[T] {
	return field[T]{key: key, kind: LineField, within: limits{most: float64(most)}, read: func(n *node, _ measure.Unit) (reading[T], *fault) {
		f := checkLine(n, most)
		return reading[T]{apply: func(t *T) { *of(t) = n.text }, word: n.text}, f
	}}
}

// date reads a text of one line, or a date as TOML writes it.
func date[T any](key Key, most int, of func(*T) *string) field[T] {
	f := line(key, most, of)
	f.kind = DateField
	read := f.read
	f.read = func(n *node, u measure.Unit) (reading[T], *fault) {
		text := *n
		if text.kind == isDate {
			text.kind = isText
		}
		return read(&text, u)
	}
	return f
}

// checkLine returns a fault for what cannot be printed in one line.
func checkLine(n *node, most int) *fault {
	switch runes := []rune(n.text); {
	case n.kind != isText:
		return wanted(n, aText, textQuoted)
	case strings.TrimSpace(n.text) == "":
		return &fault{at: n.value, words: textEmpty.With()}
	case len(runes) > most:
		return &fault{at: n.value, words: textLong.With(len(runes), most)}
	case slices.ContainsFunc(runes, func(r rune) bool { return !unicode.IsPrint(r) }):
		return &fault{at: n.value, words: textUnprintable.With(), hint: plainLine.With()}
	case len(n.lacks) > 0:
		return &fault{at: n.value, words: textLacks.With(n.lacks[0], n.lacks[0]), hint: otherLetters.With()}
	}
	return nil
}

func parseLength(n *node, u measure.Unit) (measure.Quantity, *fault) {
	return parseFigure(n, aLength, lengthHint, measure.Length, func(text string) (float64, error) { return measure.ParseLength(text, u) })
}

func parseAngle(n *node, _ measure.Unit) (measure.Quantity, *fault) {
	return parseFigure(n, anAngle, angleHint, measure.Angle, measure.ParseAngle)
}

func parseFigure(n *node, what, hint wording.Text, of func(float64) measure.Quantity, parse func(string) (float64, error)) (measure.Quantity, *fault) {
	if n.kind > isDecimal {
		return measure.Quantity{}, wanted(n, what, hint)
	}
	v, err := parse(n.text)
	var bad *measure.ParseError
	if !errors.As(err, &bad) {
		return of(v), nil
	}
	f := &fault{at: n.value}
	f.words, f.hint = wording.Fault(bad, measure.Millimetre)
	return of(v), f
}

func parseNumber(n *node, _ measure.Unit) (measure.Quantity, *fault) {
	v, err := strconv.ParseFloat(n.text, 64)
	if n.kind != isWhole && n.kind != isDecimal || err != nil {
		return measure.Quantity{}, wanted(n, aNumber, numberHint)
	}
	return measure.Number(v), nil
}
