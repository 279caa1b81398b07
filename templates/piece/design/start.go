package design

import (
	"bytes"
	"cmp"
	_ "embed"
	"strings"
	"text/template"
	"unicode/utf8"

	"rodsheet/geometry/measure"
)

//go:embed start/shared.toml
var sharedText string

// A starting is what a kind of piece begins with: the text of its file, a template that
// puts together what is shared and what is its own, and what fills it.
type starting struct {
	text                string
	fewest, most, usual int // of its sides or legs
	fill                func(n int, u measure.Unit) any
}

// usual are the figures of a starting file that all kinds have; each is written as it is
// to stand there.
type usual struct {
	Title, Unit, Species             string
	Kind                             Kind
	RoughLength, RoughWidth          string
	Kerf, BladeHeight, StopReach     string
	Dado                             string
	BoardLong, BoardWide, BoardThick string
}

func usualFigures(k Kind, title string, u measure.Unit) usual {
	if u == measure.Inch {
		return usual{
			Title: title, Unit: "in", Species: usualWood, Kind: k, RoughLength: `"3/4"`, RoughWidth: `"1/8"`,
			Kerf: `"1/8"`, BladeHeight: "3", StopReach: "36", Dado: `"3/4"`, BoardLong: `"8ft"`, BoardWide: "7", BoardThick: `"1 1/2"`,
		}
	}
	return usual{
		Title: title, Unit: "mm", Species: usualWood, Kind: k, RoughLength: "20", RoughWidth: "4",
		Kerf: "3.2", BladeHeight: "80", StopReach: "900", Dado: "20", BoardLong: "2400", BoardWide: "180", BoardThick: "40",
	}
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
	t, err := template.New("start").Parse(sharedText)
	if err == nil {
		t, err = t.Parse(s.text)
	}
	if err != nil {
		return nil, err
	}
	var out bytes.Buffer
	if err := t.Execute(&out, s.fill(sides, unit)); err != nil {
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
