package main

import (
	"errors"
	"fmt"
	"io"
	"unicode"
	"unicode/utf8"

	"golang.org/x/text/unicode/norm"

	"rodsheet/geometry/measure"
	"rodsheet/render"
	"rodsheet/render/lettering"
	"rodsheet/templates/piece/drawings"
)

// unitsVariable names the environment variable that holds a standing choice
// of units.
const unitsVariable = "RODSHEET_UNITS"

const (
	longestTitle = 120 // characters: two lines on the sheet
	mostSheets   = render.MostSheets
)

// commonFlags are the flags that every command has.
func commonFlags() []flag {
	return []flag{
		{name: "out", short: "o", value: "FILE", usage: "write FILE, .pdf or .svg; - is standard output"},
		{name: "paper", value: "SIZE", choices: render.PaperNames(), usage: "letter, legal, tabloid, a4, a3, WIDTHxHEIGHT or whole"},
		{name: "margin", value: "LENGTH", usage: "blank at each side of a sheet"},
		{name: "overlap", value: "LENGTH", usage: "strip that neighbouring sheets share"},
		unitsFlag("of figures, and of lengths given without a unit"),
		{name: "printer", value: "NAME", usage: "correct for a printer that was measured; none for none"},
		{name: "title", value: "TEXT", usage: "printed on every sheet"},
		{name: "sheets", value: "HOW", choices: spelled(searches), usage: "fewest searches for fewer; plain is the even grid"},
		{name: "only", value: "LIST", usage: "print only these sheets of the job: 3,5-7, or milled"},
		{name: "max-sheets", value: "N", limits: "job.sheets", bounds: "job.least-sheets", usage: "refuse a job of more sheets; 400 if not given"},
		{name: "replace", usage: "remove SVG sheets that an earlier, larger job left"},
		{name: "json", usage: "print figures and placements as JSON"},
		{name: "verbose", usage: "say how few sheets and tiles could do"},
		helpFlag(),
	}
}

// fullFlag asks for what is left out as long as rule, square and compass do better.
func fullFlag() flag {
	return flag{name: "full", usage: "both hands, all views and whole outlines at full size"}
}

func unitsFlag(usage string) flag { return flag{name: "units", value: "mm|in", usage: usage} }

func helpFlag() flag { return flag{name: "help", short: "h", usage: "show this help"} }

type options struct {
	layout        render.Layout
	out           destination
	json, verbose bool
}

func (v *values) options(getenv func(string) string, stdout io.Writer) (options, error) {
	l := render.DefaultLayout(v.unit, v.paper())
	l.Margin = v.length("margin", l.Margin)
	l.Overlap = v.length("overlap", l.Overlap)
	l.MaxSheets = v.count("max-sheets", l.MaxSheets, 1, mostSheets)
	l.Plain = choose(v, "sheets", searches...) == "plain"
	l.Only, l.Milled = v.only()
	l.Title = v.title()
	if v.file != nil {
		l.Imprint = drawings.Imprint(v.file.Sizes[0].Plan)
	}
	correct, err := v.correction(getenv(printerVariable))
	var more refusal
	switch {
	case errors.As(err, &more):
		v.problems = append(v.problems, more...)
	case err != nil:
		return options{}, err
	}
	l.Correct = correct
	json := v.on("json")
	return options{l, v.destination(stdout, json, ".pdf", ".svg"), json, v.on("verbose")}, nil
}

var searches = []word{"fewest", "plain"}

// units decides the unit: --units, then that of the design file, then the
// standing choice, then millimetres. Paper has no say: a maker in inches may
// have A4, and letter paper holds drawings in millimetres.
func (v *values) units(standing string) measure.Unit {
	if v.file != nil && !v.given("units") {
		return v.file.Unit
	}
	source, text := unitsVariable, standing
	switch {
	case v.given("units"):
		source, text = "--units", v.text("units")
	case standing == "" || v.flags.Lookup("units") == nil: // a command without lengths
		return measure.Millimetre
	}
	u, err := measure.ParseUnit(text)
	v.fail(source, err)
	return u
}

// paper returns the paper asked for, or the usual one for the unit.
func (v *values) paper() render.Paper {
	size := map[measure.Unit]string{measure.Millimetre: "a4", measure.Inch: "letter"}[v.unit]
	if v.given("paper") {
		size = v.text("paper")
	}
	p, err := render.ParsePaper(size, v.unit)
	v.fail("--paper", err)
	return p
}

// title returns the title, if every sign of it can be printed.
func (v *values) title() string {
	t := norm.NFC.String(v.text("title")) // an accent on its letter: see design
	switch n := utf8.RuneCountInString(t); {
	case n > longestTitle:
		v.add(fmt.Sprintf("title of %d characters must be at most %d", n, longestTitle), "")
		return ""
	case !utf8.ValidString(t):
		v.add("title is not valid UTF-8", "")
		return ""
	}
	for _, r := range t {
		if unicode.IsControl(r) {
			v.add(fmt.Sprintf("title holds the control character %U", r), "write it in one line")
			return ""
		}
	}
	if lack := lettering.Missing(t); len(lack) > 0 {
		v.add(fmt.Sprintf("title holds %s, which the lettering lacks", sign(lack[0])), "write it in other letters")
		return ""
	}
	return t
}

func sign(r rune) string {
	if unicode.IsGraphic(r) && !unicode.IsMark(r) && r != ' ' {
		return fmt.Sprintf("%c (%U)", r, r)
	}
	return fmt.Sprintf("%U", r)
}
