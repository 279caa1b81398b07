package main

import (
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"strconv"
	"strings"
	"unicode"
	"unicode/utf8"

	"rodsheet/geometry/measure"
	"rodsheet/templates/piece/design"
)

// A problem is one thing for the user to change.
type problem struct {
	text string // one line, lower case
	hint string // what to do about it; may be empty
}

// A refusal is all that is wrong with a command line.
type refusal []problem

func (r refusal) Error() string {
	texts := make([]string, len(r))
	for i, p := range r {
		texts[i] = p.text
	}
	return strings.Join(texts, "; ")
}

// refuse returns a refusal of one problem.
func refuse(text, hint string) error { return refusal{{text, hint}} }

// interrupted says that the user stopped the program in time.
type interrupted struct{}

func (interrupted) Error() string { return "interrupted; nothing written" }

// report prints err, the only place that does, and returns the exit status.
func report(stderr io.Writer, err error) int {
	if err == nil {
		return 0
	}
	problems, status := refusal{{text: err.Error()}}, 1
	if errors.As(err, &problems) {
		status = 2
	}
	for _, p := range problems {
		fmt.Fprintf(stderr, "rodsheet: %s\n", oneLine(p.text))
		if p.hint != "" {
			fmt.Fprintf(stderr, "  hint: %s\n", oneLine(p.hint))
		}
	}
	return status
}

// note tells the user something that is no failure.
func note(stderr io.Writer, text string) {
	fmt.Fprintf(stderr, "rodsheet: note: %s\n", oneLine(text))
}

// oneLine replaces every rune that could move the cursor.
func oneLine(s string) string {
	return strings.Map(func(r rune) rune {
		if unicode.IsPrint(r) {
			return r
		}
		return '?'
	}, s)
}

// shown returns what the user typed fit for a message: shortened where it is
// long, in quotes where it is more than plain letters.
func shown(s string) string {
	const most = 40
	if r := []rune(s); len(r) > most {
		s = string(r[:most-1]) + "…"
	}
	plain := func(r rune) bool { return r > ' ' && r != '"' && unicode.IsPrint(r) }
	if s != "" && utf8.ValidString(s) && strings.IndexFunc(s, func(r rune) bool { return !plain(r) }) < 0 {
		return s
	}
	return strconv.Quote(s)
}

// reason returns the bare cause of a failed system call: "permission denied".
func reason(err error) string {
	var path *fs.PathError
	var link *os.LinkError
	switch {
	case errors.As(err, &path):
		err = path.Err
	case errors.As(err, &link):
		err = link.Err
	}
	return err.Error()
}

// explain turns an error about figures into a refusal, its lengths in u.
func explain(err error, u measure.Unit, c command) error {
	var bound *measure.BoundError
	var parse *measure.ParseError
	var unbuilt unbuildable
	switch {
	case err == nil || errors.As(err, &unbuilt):
		return err
	case errors.As(err, &bound):
		return refuse(bound.Text(u), c.hint(bound, u))
	case errors.As(err, &parse):
		return refuse(parse.Error(), parse.Hint)
	}
	return refuse(err.Error(), "")
}

// hint says what to do about a figure outside its limit. One without a hint
// gets the flag that sets the figure, where there is one; and a limit that a
// flag sets gets that flag with the figure it would have to allow.
func (c command) hint(e *measure.BoundError, u measure.Unit) string {
	if name, ok := c.setter(e.Figure); ok && e.Hint == "" {
		return "--" + name + " sets it"
	}
	for _, f := range c.all() {
		if f.limits == e.Figure && f.limits != "" {
			return strings.TrimPrefix(fmt.Sprintf("%s; --%s %s allows it", e.Hint, f.name, e.Value.Bare(u)), "; ")
		}
	}
	return e.Hint
}

// suggest returns a hint naming the known word nearest to the one given, or
// nothing where none is near. The prefix stands before each: "--".
func suggest(prefix, word string, known []string) string {
	best := design.Nearest(word, known)
	if best == "" {
		return ""
	}
	return "did you mean " + prefix + best + "?"
}
