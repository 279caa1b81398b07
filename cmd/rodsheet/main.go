// Command rodsheet prints full-size templates for furniture makers on ordinary
// sheets of paper: bevel angles, tapers, half-laps, bridles and tops, and all that
// it takes to build a whole piece from a few decisions.
package main

import (
	"context"
	"io"
	"os"
	"os/signal"
	"runtime"
	"runtime/debug"
	"strings"
	"syscall"

	"rodsheet/templates/wording"
)

// garbage is how far in percent the memory may grow before what is no longer
// used is collected. A command is short and small: fewer collections than by
// default save a tenth of its time and more.
const garbage = 400

func main() {
	debug.SetGCPercent(garbage)
	if engine() {
		return
	}
	w := world{os.Getenv, readSome, os.Stdout, os.Stderr, untilStopped}
	os.Exit(w.run(context.Background(), os.Args[1:]))
}

// untilStopped returns a context that a signal cancels: the first one asks for a clean
// end, a second one gets its way.
func untilStopped(ctx context.Context) context.Context {
	ctx, stop := signal.NotifyContext(ctx, stopSignals()...)
	context.AfterFunc(ctx, stop)
	return ctx
}

// hangup is SIGHUP, which not every system has a name for.
const hangup = syscall.Signal(1)

// stopSignals are those that ask for an end. A closed terminal does not, where
// the program was started to outlive it.
func stopSignals() []os.Signal {
	all := []os.Signal{os.Interrupt, syscall.SIGTERM}
	if runtime.GOOS != "js" && !signal.Ignored(hangup) { // a browser knows no signals
		all = append(all, hangup)
	}
	return all
}

// run carries out one command line, without the program's name, and returns
// the exit status: 0, 1 where the system failed, 2 where the user has to
// change something.
func (w world) run(ctx context.Context, args []string) int {
	return report(w.stderr, caught(func() error { return w.dispatch(ctx, args) }))
}

// dispatch finds the command that the first word names.
func (w world) dispatch(ctx context.Context, args []string) error {
	if len(args) == 0 && doubleClicked() {
		args = []string{"open"}
	}
	if len(args) == 0 {
		return refuse("no command given", "rodsheet help lists the commands")
	}
	first, rest := args[0], args[1:]
	switch first {
	case "help", "-h", "--help":
		return help(rest, w.stdout)
	case "--version":
		return printVersion(rest, w.stdout)
	}
	if strings.HasPrefix(first, "-") {
		return refuse(wording.Shown(first)+" stands before the command", "the command comes first: rodsheet angle 14.5")
	}
	c, ok := find(first)
	if !ok {
		return refuse("unknown command "+wording.Shown(first), suggest("", first, names()))
	}
	return c.perform(ctx, rest, w)
}

// emit writes finished text to standard output.
func emit(stdout io.Writer, text string) error {
	if _, err := io.WriteString(stdout, text); err != nil {
		return cannot("write", "standard output", err)
	}
	return nil
}
