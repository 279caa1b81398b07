package main

import (
	"context"
	"errors"
	"fmt"
	"io"
	"strconv"
	"strings"
	"unicode"

	"rodsheet/geometry/lists"
	"rodsheet/geometry/measure"
	"rodsheet/render/atomicfile"
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
	return strings.Join(lists.Map(r, func(p problem) string { return p.text }), "; ")
}

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
	var broken crash
	if errors.As(err, &broken) {
		problems[0].text += "; " + broken.keep()
	}
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

// named returns the name of a file for the terminal: as it is, or in quotes
// where it holds what could move the cursor.
func named(name string) string {
	if oneLine(name) != name {
		return strconv.Quote(name)
	}
	return name
}

func cannot(do, what string, err error) error {
	return fmt.Errorf("cannot %s %s: %s", do, what, atomicfile.Reason(err))
}

// unwritten says which of the files could not be written; without any, that
// standard output could not.
func unwritten(ctx context.Context, files []file, err error) error {
	failed := &atomicfile.Error{Err: err}
	switch {
	case err == nil:
		return nil
	case errors.As(err, &failed) && failed.Done > 0:
		return fmt.Errorf("%w; new until then: %s", cannot("write", named(failed.Name), failed.Err), span(files[:failed.Done]))
	case ctx.Err() != nil:
		return interrupted{}
	case len(files) == 0:
		return cannot("write", "standard output", err)
	}
	return cannot("write", named(failed.Name), failed.Err)
}

// afterWriting adds what is written to an error that came later.
func afterWriting(err error, files []file) error {
	if err == nil {
		return nil
	}
	return fmt.Errorf("%w; %s written all the same", err, span(files))
}

// span names files, those of three sheets and more in a row by the first and
// the last.
func span(files []file) string {
	var runs []string
	for first := 0; first < len(files); {
		last := first
		for last+1 < len(files) && files[last+1].sheet == files[last].sheet+1 {
			last++
		}
		run := []string{named(files[first].Name), named(files[last].Name)}
		switch last - first {
		case 0:
			run = run[:1]
		case 1:
		default:
			run = []string{run[0] + " to " + run[1]}
		}
		runs = append(runs, run...)
		first = last + 1
	}
	return wording.And(runs...)
}

// explain turns an error about figures into a refusal, its lengths in u.
func explain(err error, u measure.Unit, c command) error {
	var bound *measure.BoundError
	var unbuilt unbuildable
	var refused refusal
	if err == nil || errors.As(err, &unbuilt) || errors.As(err, &refused) {
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
		if f.bounds == e.Figure && f.bounds != "" {
			return strings.TrimPrefix(fmt.Sprintf("%s; --%s sets the limit", hint, f.name), "; ")
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
