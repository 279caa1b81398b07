package main

import (
	"errors"
	"fmt"
	"io"
	"io/fs"
	"strconv"
	"strings"

	"github.com/spf13/pflag"

	"rodsheet/geometry/lists"
	"rodsheet/geometry/measure"
	"rodsheet/templates/piece/design"
	"rodsheet/templates/piece/kinds"
	"rodsheet/templates/wording"
)

// values holds a command line as typed. Its methods turn texts into figures
// once the unit is known and gather every problem on the way; a figure that
// could not be read is 0.
type values struct {
	command  string
	flags    *pflag.FlagSet
	words    []string
	unit     measure.Unit
	file     *design.File // that the command reads, if it does
	sizes    kinds.Sizes  // of it, in its own unit
	source   fs.FileInfo  // where it was read from
	problems refusal
}

// parse splits args into flags and words and checks that nothing is unknown,
// out of place or missing. With -h or --help it returns pflag.ErrHelp.
func (c command) parse(args []string) (*values, error) {
	set := pflag.NewFlagSet(c.name, pflag.ContinueOnError)
	set.SetOutput(io.Discard)
	set.Usage = func() {}
	for _, f := range c.all() {
		if f.value == "" {
			set.BoolP(f.name, f.short, false, f.usage)
		} else {
			set.StringP(f.name, f.short, "", f.usage)
		}
	}
	if err := set.Parse(args); err != nil {
		return nil, c.mistake(err)
	}
	if err := c.goTestFlag(args); err != nil {
		return nil, err
	}
	if help, _ := set.GetBool("help"); help {
		return nil, pflag.ErrHelp
	}
	v := &values{command: c.name, flags: set, words: set.Args()}
	if c.words == "" && len(v.words) > 0 {
		v.add(fmt.Sprintf("%s takes flags only, found %s", c.name, wording.Shown(v.words[0])), c.usage())
	}
	c.missing(v)
	return v, nil
}

func (c command) missing(v *values) {
	var lack []string
	for _, f := range c.flags {
		if f.required && !v.given(f.name) {
			lack = append(lack, "--"+f.name)
		}
	}
	if c.words != "" && c.words[0] != '[' && len(v.words) == 0 {
		lack = append(lack, c.lacking())
	}
	if len(lack) > 0 {
		v.add(c.name+" needs "+wording.And(lack...), c.usage())
	}
}

func (c command) lacking() string {
	word, several := strings.CutSuffix(strings.ToLower(c.words), "...")
	switch {
	case several:
		return "at least one " + word
	case c.words == fileWord:
		return "the name of a design file"
	}
	return "a " + word
}

func (c command) mistake(err error) error {
	var unknown *pflag.NotExistError
	var empty *pflag.ValueRequiredError
	var invalid *pflag.InvalidValueError
	switch {
	case errors.Is(err, pflag.ErrHelp):
		return err
	case errors.As(err, &unknown):
		return c.unknown(unknown.GetSpecifiedName(), unknown.GetSpecifiedShortnames())
	case errors.As(err, &empty):
		return refuse("--"+empty.GetFlag().Name+" needs a value", "")
	case errors.As(err, &invalid):
		return refuse("--"+invalid.GetFlag().Name+" takes no value, found "+wording.Shown(invalid.GetValue()), "")
	}
	return refuse(err.Error(), "rodsheet help "+c.name+" lists the flags")
}

// unknown refuses a flag that c does not have. A short one that begins as a
// figure does was meant as a figure below zero.
func (c command) unknown(name, shorts string) error {
	switch {
	case shorts == "":
		known := lists.Map(c.all(), func(f flag) string { return f.name })
		hint := suggest("--", name, known)
		if hint == "" {
			hint = "rodsheet help " + c.name + " lists the flags"
		}
		return refuse("unknown flag "+wording.Shown("--"+name), hint)
	case strings.Contains("0123456789.", shorts[:1]) && strings.HasPrefix(c.words, "ANGLE"):
		return refuse("angle "+wording.Shown("-"+shorts)+" must be more than 0", "leave the sign out; both hands are drawn")
	case strings.Contains("0123456789.", shorts[:1]) && c.words == "":
		return refuse(fmt.Sprintf("%s takes flags only, found %s", c.name, wording.Shown("-"+shorts)), c.usage())
	}
	hint := "rodsheet help " + c.name + " lists the flags"
	if len(shorts) > 1 {
		hint = "long flags have two dashes: " + wording.Shown("--"+shorts)
	}
	return refuse("unknown flag "+wording.Shown("-"+shorts), hint)
}

// goTestFlag refuses what the flag parser passes over without a word because
// Go's own test programs are started with it.
func (c command) goTestFlag(args []string) error {
	for _, a := range args {
		if a == "--" {
			break
		}
		if strings.HasPrefix(a, "-test.") {
			return c.unknown("", strings.TrimPrefix(a, "-"))
		}
	}
	return nil
}

func (v *values) add(text, hint string) { v.problems = append(v.problems, problem{text, hint}) }

// fail adds an error of reading what, if there is one.
func (v *values) fail(what string, err error) {
	var parse *measure.ParseError
	var bound *measure.BoundError
	var own wording.Spoken
	switch {
	case err == nil:
	case errors.As(err, &bound), errors.As(err, &own):
		v.add(wording.Fault(err, v.unit))
	case errors.As(err, &parse):
		line, hint := wording.Fault(err, v.unit)
		v.add(what+": "+line, hint)
	default:
		v.add(what+": "+err.Error(), "")
	}
}

func (v *values) given(name string) bool { return v.flags.Changed(name) }

// howMany returns how many of the flags are given.
func (v *values) howMany(names ...string) int { return lists.Count(names, v.given) }

// on reports whether a switch is given; a command may not have it.
func (v *values) on(name string) bool {
	on, err := v.flags.GetBool(name)
	return on && err == nil
}

// text returns the flag as typed; a command may not have it.
func (v *values) text(name string) string {
	if f := v.flags.Lookup(name); f != nil {
		return f.Value.String()
	}
	return ""
}

// length returns the flag in mm, or otherwise where it is not given.
func (v *values) length(name string, otherwise float64) float64 {
	if !v.given(name) {
		return otherwise
	}
	mm, err := measure.ParseLength(v.text(name), v.unit)
	v.fail("--"+name, err)
	return mm
}

// positive returns the flag in mm, or 0 where it is not given: 0 then stands
// for the usual choice or for none, and so cannot be given itself.
func (v *values) positive(name string) float64 {
	mm := v.length(name, 0)
	if v.given(name) && mm <= 0 && len(v.problems) == 0 {
		v.fail("--"+name, measure.Positive(measure.ID(name), measure.Length(mm)))
	}
	return mm
}

// angle returns the flag in radians, 0 where it is not given.
func (v *values) angle(name string) float64 {
	if !v.given(name) {
		return 0
	}
	rad, err := measure.ParseAngle(v.text(name))
	v.fail("--"+name, err)
	return rad
}

// angleOr returns the flag in radians, or otherwise where it is not given.
func (v *values) angleOr(name string, otherwise float64) float64 {
	if !v.given(name) {
		return otherwise
	}
	return v.angle(name)
}

func (v *values) angles() []float64 {
	var out []float64
	for _, w := range v.words {
		rad, err := measure.ParseAngle(w)
		v.fail("angle", err)
		out = append(out, rad)
	}
	return out
}

// count returns the flag as a whole number from least to most.
func (v *values) count(name string, otherwise, least, most int) int {
	if !v.given(name) {
		return otherwise
	}
	n, err := strconv.Atoi(v.text(name))
	if err != nil || n < least || n > most {
		v.add(fmt.Sprintf("--%s %s must be a whole number from %d to %d", name, wording.Shown(v.text(name)), least, most), "")
	}
	return n
}

// choose returns what the flag names among the choices, the first of them
// where it is not given.
func choose[T fmt.Stringer](v *values, name string, choices ...T) T {
	if !v.given(name) {
		return choices[0]
	}
	for _, c := range choices {
		if c.String() == v.text(name) {
			return c
		}
	}
	known := spelled(choices)
	v.add(fmt.Sprintf("--%s %s must be %s", name, wording.Shown(v.text(name)), wording.Or(known...)), suggest("", v.text(name), known))
	return choices[0]
}

// A word is a choice that is no more than its name.
type word string

func (w word) String() string { return string(w) }

func spelled[T fmt.Stringer](choices []T) []string { return lists.Map(choices, T.String) }
