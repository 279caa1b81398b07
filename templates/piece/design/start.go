package design

import (
	"bytes"
	"cmp"
	_ "embed"
	"strings"
	"text/template"
	"unicode/utf8"

	"rodsheet/geometry/measure"
	"rodsheet/templates/wording"
)

//go:embed start/shared.toml
var sharedText string

// A starting is what a kind of piece begins with: the text of its file, a template that
// puts together what is shared and what is its own. In it "fig" takes a figure in
// millimetres and in inches, each as it is to stand there; "nth" such lists, with one for
// each number of sides or legs.
type starting struct {
	text                string
	fewest, most, usual int // of its sides or legs
	titles              map[int]wording.Text
}

// A beginning fills the text.
type beginning struct {
	Title, Species string
	Kind           Kind
	Unit           measure.Unit
	N              int // sides or legs
}

// Sides returns how few and how many sides or legs the starting design of a kind can
// have, and how many it has if nobody says.
func (k Kind) Sides() (fewest, most, usual int) {
	s := schemas()[k].start
	return s.fewest, s.most, s.usual
}

// Start returns the text of a design of a kind to begin with, which can be built as it
// stands: a small piece on so many sides or legs. Every key is explained in it; those
// that may be left out are commented out.
func Start(k Kind, sides int, unit measure.Unit) ([]byte, error) {
	s, n := schemas()[k].start, measure.Number(float64(sides))
	err := cmp.Or(
		measure.AtLeast("sides", n, "", measure.Number(float64(s.fewest)), ""),
		measure.AtMost("sides", n, "", measure.Number(float64(s.most)), ""),
	)
	if err != nil {
		return nil, err
	}
	fig := func(mm, in string) string {
		return map[measure.Unit]string{measure.Millimetre: mm, measure.Inch: in}[unit]
	}
	nth := func(mm, in string) string { return strings.Fields(fig(mm, in))[sides-s.fewest] }
	t, err := template.New("start").Funcs(template.FuncMap{"fig": fig, "nth": nth}).Parse(sharedText)
	if err == nil {
		t, err = t.Parse(s.text)
	}
	if err != nil {
		return nil, err
	}
	var out bytes.Buffer
	if err := t.Execute(&out, beginning{s.titles[sides].With(), usualWood, k, unit, sides}); err != nil {
		return nil, err
	}
	return aligned(out.Bytes()), nil
}

// aligned puts the comments, each behind a tab, below one another.
func aligned(text []byte) []byte {
	const column = 26
	var out bytes.Buffer
	for line := range bytes.Lines(text) {
		setting, comment, found := bytes.Cut(line, []byte("\t"))
		out.Write(setting)
		if found {
			out.WriteString(strings.Repeat(" ", max(2, column-utf8.RuneCount(setting))))
			out.Write(comment)
		}
	}
	return out.Bytes()
}
