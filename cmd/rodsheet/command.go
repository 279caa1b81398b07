package main

import (
	"cmp"
	"context"
	"errors"
	"io"
	"slices"
	"strings"

	"github.com/spf13/pflag"

	"rodsheet/geometry/lists"
	"rodsheet/geometry/measure"
	"rodsheet/render"
	"rodsheet/templates"
)

// A command is one kind of template on the command line.
type command struct {
	name     string
	words    string   // given without a flag: "ANGLE...", "[NAME]" if it may be left out
	choices  []string // words that can be given, where they are known
	summary  string   // one line for the list of commands
	about    string   // a paragraph, broken into lines
	caution  string   // where a saw is involved, broken into lines
	flags    []flag
	examples []example
	// read takes the figures from the command line and returns what makes
	// the job from them. It is made only if v holds no problem.
	read func(v *values) maker
	// act stands in place of read where the command prints no job; it then
	// has no flags of printing.
	act func(ctx context.Context, v *values, w world) error
	// design says that its one word is a design file, which is read first.
	design bool
	// prints says that it writes to standard output alone. There is nothing to clean up
	// then: a signal ends it as it ends any program, and nothing has to wait for one.
	prints bool
}

// A world is what a command may touch besides the files that it writes.
type world struct {
	getenv         func(string) string
	read           func(name string) (designText, error)
	stdout, stderr io.Writer
	stops          func(context.Context) context.Context // cancelled when the user asks for an end; nil: that is never asked
}

// A maker makes a pack once the paper is known.
type maker func(templates.Setting) (pack, error)

// A pack is what one command prints.
type pack struct {
	job      templates.Job // its figures are printed to the terminal
	members  []memberJSON  // for other programs beside those
	warnings []string      // for the terminal
	remark   string        // for the foot of every sheet
}

// single makes a pack of the one job that a template is.
func single(build func(templates.Setting) (templates.Job, error)) maker {
	return func(s templates.Setting) (pack, error) {
		job, err := build(s)
		return pack{job: job, warnings: job.Warnings}, err
	}
}

// A drawer makes a template of figures.
type drawer[T any] func(T, templates.Setting) (templates.Job, error)

func drawn[T any](draw drawer[T], figures T) maker {
	return single(func(s templates.Setting) (templates.Job, error) { return draw(figures, s) })
}

// A flag is one option. Its value is raw text until the unit is known.
type flag struct {
	name, short string
	value       string   // what is given with it: "LENGTH"; empty for a switch
	choices     []string // words that can be given, where the value does not list them
	usage       string
	required    bool
	figure      measure.ID // that it sets, where that is not the command's of the flag's name
	limits      measure.ID // of the figure that it sets a limit to
	bounds      measure.ID // of a figure that the one with the limit is not less than
}

// known returns the words that can be given with the flag, where they are known.
func (f flag) known() []string {
	if f.choices == nil && strings.Contains(f.value, "|") {
		return strings.Split(f.value, "|")
	}
	return f.choices
}

// An example is a command line that works, and what it is for.
type example struct{ line, what string }

// makers make every command, in the order of the help: a run that is of one does not make
// the others' texts.
func makers() []func() command {
	return slices.Concat([]func() command{newCommand}, pageCommands(), []func() command{
		checkCommand,
		pieceCommand,
		buyingCommand,
		pictureCommand,
		angleCommand,
		taperCommand,
		lapCommand,
		bridleCommand,
		mortiseCommand,
		dovetailCommand,
		topCommand,
		arcCommand,
		ovalCommand,
		sightlineCommand,
		hopperCommand,
		segmentsCommand,
		scaleCommand,
		printerCommand,
		completionCommand,
	})
}

func commands() []command {
	return lists.Map(makers(), func(made func() command) command { return made() })
}

func find(name string) (command, bool) {
	for _, made := range makers() {
		if c := made(); c.name == name {
			return c, true
		}
	}
	return command{}, false
}

func names() []string {
	return append([]string{"help"}, lists.Map(commands(), func(c command) string { return c.name })...)
}

// all returns the command's own flags and the common ones.
func (c command) all() []flag { return slices.Concat(c.flags, c.common()) }

// common returns the flags that the command shares with others.
func (c command) common() []flag {
	if c.act != nil {
		return []flag{helpFlag()}
	}
	return commonFlags()
}

func (c command) setter(figure measure.ID) (name string, ok bool) {
	for _, f := range c.all() {
		own := measure.ID(c.name + "." + f.name)
		if figure == cmp.Or(f.figure, own) || f.figure == "" && figure == measure.ID(f.name) {
			return f.name, true
		}
	}
	return "", false
}

// usage returns the shortest command line that could work.
func (c command) usage() string {
	parts := []string{"rodsheet", c.name}
	if c.words != "" {
		parts = append(parts, c.words)
	}
	for _, f := range c.flags {
		if f.required {
			parts = append(parts, "--"+f.name, f.value)
		}
	}
	return strings.Join(parts, " ")
}

// perform reads the flags, makes the job, lays it on paper and writes it.
func (c command) perform(ctx context.Context, args []string, w world) error {
	if w.stops != nil && !c.prints {
		ctx = w.stops(ctx)
	}
	v, err := c.figures(ctx, args, w)
	if errors.Is(err, pflag.ErrHelp) {
		return emit(w.stdout, c.help())
	}
	if err != nil {
		return err
	}
	if c.act != nil {
		return c.act(ctx, v, w)
	}
	l, o, err := c.laid(ctx, v, w)
	if err != nil {
		return err
	}
	return o.deliver(ctx, l.pack, l.plan, w.stdout, w.stderr)
}

func (c command) figures(ctx context.Context, args []string, w world) (*values, error) {
	v, err := c.parse(args)
	if err != nil {
		return nil, err
	}
	if len(v.problems) == 0 && c.design {
		if err := v.design(ctx, w.read); err != nil {
			return nil, err
		}
	}
	v.unit = v.units(w.getenv(unitsVariable))
	if len(v.problems) > 0 {
		return nil, v.problems
	}
	return v, nil
}

// A laying is a pack and the sheets that it is laid on.
type laying struct {
	pack pack
	plan render.Plan
}

// laid lays the job of a command line that was read, up to what is written.
func (c command) laid(ctx context.Context, v *values, w world) (laying, options, error) {
	o, err := v.options(w.getenv, w.stdout)
	if err != nil {
		return laying{}, o, err
	}
	l, err := awaited(ctx, func() (laying, error) {
		build := c.read(v)
		if len(v.problems) > 0 {
			return laying{}, v.problems
		}
		l, err := lay(build, o.layout, v.on("full"))
		return l, explain(err, v.unit, c)
	})
	return l, o, err
}

// lay makes a pack for a layout and lays it on sheets. With full it holds all drawings.
func lay(build maker, l render.Layout, full bool) (laying, error) {
	if err := l.Check(); err != nil {
		return laying{}, err
	}
	made, err := build(templates.Setting{Unit: l.Unit, Clear: l.Clear(), Full: full})
	if err == nil && made.remark != "" { // it takes room from what is made to fill a sheet
		l.Remark = made.remark
		made, err = build(templates.Setting{Unit: l.Unit, Clear: l.Clear(), Full: full})
	}
	if err != nil {
		return laying{}, err
	}
	plan, err := render.Lay(made.job, l)
	return laying{made, plan}, err
}
