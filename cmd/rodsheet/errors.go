package main

import (
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"strings"
	"unicode"

	"rodsheet/geometry/measure"
	"rodsheet/templates/piece/design"
	"rodsheet/templates/wording"
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
	var unbuilt unbuildable
	if err == nil || errors.As(err, &unbuilt) {
		return err
	}
	line, hint := wording.Fault(err, u)
	if errors.As(err, &bound) {
		hint = c.hint(bound, hint, u)
	}
	return refuse(line, hint)
}

// hint says what to do about a figure outside its limit. One without a hint
// gets the flag that sets the figure, where there is one; and a limit that a
// flag sets gets that flag with the figure it would have to allow.
func (c command) hint(e *measure.BoundError, hint string, u measure.Unit) string {
	if name, ok := c.setter(e.Figure); ok && hint == "" {
		return "--" + name + " sets it"
	}
	for _, f := range c.all() {
		if f.limits == e.Figure && f.limits != "" {
			return strings.TrimPrefix(fmt.Sprintf("%s; --%s %s allows it", hint, f.name, e.Value.Bare(u)), "; ")
		}
	}
	return hint
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
