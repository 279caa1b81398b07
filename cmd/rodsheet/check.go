package main

import (
	"context"
	"fmt"
	"strings"

	"rodsheet/geometry/measure"
	"rodsheet/templates"
	"rodsheet/templates/piece"
	"rodsheet/templates/piece/checks"
	"rodsheet/templates/piece/wording"
)

func checkCommand() command {
	return command{
		name:    "check",
		words:   fileWord,
		summary: "every figure of a piece, and what will not fit",
		about: `Reads a design file, works out every figure and asks every question that can be
asked before wood is cut. What fails is followed by the changes that mend it,
the cheapest first. The exit status is 1 when the piece cannot be built.`,
		flags: []flag{
			sizeFlag(),
			{name: "units", value: "mm|in", usage: "of the figures printed; the file's own if not given"},
			{name: "json", usage: "print figures and checks as JSON"},
		},
		examples: []example{
			{"rodsheet check table.toml", "all sizes"},
			{"rodsheet check table.toml --units in", "with figures in inches"},
			{"rodsheet check table.toml --size low --json", "one size, for another program"},
		},
		design: true,
		act:    checkDesign,
	}
}

// checkDesign prints figures and checks, and fails where a check does.
func checkDesign(ctx context.Context, v *values, w world) error {
	var r findings
	if err := awaited(ctx, func() error {
		pieces, err := v.pieces()
		if err == nil {
			r = examine(pieces)
		}
		return err
	}); err != nil {
		return err
	}
	var err error
	if v.on("json") {
		err = r.writeJSON(w.stdout)
	} else {
		err = emit(w.stdout, r.text(v.unit))
	}
	if err != nil {
		return err
	}
	return r.verdict()
}

// findings are those of a design, to be said.
type findings struct{ checks.Findings }

func examine(pieces []piece.Piece) findings { return findings{checks.Examine(pieces)} }

// An unbuildable says why a piece cannot be built. Nothing is wrong with the
// command line, so its exit status is 1.
type unbuildable string

func (u unbuildable) Error() string { return string(u) }

// verdict returns nil for a design that can be built.
func (f findings) verdict() error {
	failing := f.graded(checks.Fail, wording.CheckName)
	if len(failing) == 0 {
		return nil
	}
	return unbuildable("cannot be built: " + strings.Join(failing, "; "))
}

// graded returns a text of every check that came out so, behind the name of its
// size where there is one.
func (f findings) graded(g checks.Grade, text func(checks.Check) string) []string {
	var out []string
	add := func(size string, all []checks.Check) {
		for _, c := range all {
			if c.Grade == g {
				out = append(out, strings.TrimPrefix(size+", "+text(c), ", "))
			}
		}
	}
	for _, s := range f.Sizes {
		add(s.Piece.Design.Size, s.Checks)
	}
	add("", f.Together)
	return out
}

// text is what check prints for people.
func (f findings) text(u measure.Unit) string {
	var b strings.Builder
	for i, s := range f.Sizes {
		if i > 0 {
			b.WriteString("\n")
		}
		fmt.Fprintln(&b, heading(s.Piece))
		for _, g := range wording.Groups(s, u) {
			plain := make([]templates.Figure, len(g.Figures))
			for i, f := range g.Figures {
				plain[i] = f.Figure
			}
			fmt.Fprintf(&b, "\n%s\n%s", g.Heading, figureTable(plain, u))
			for _, text := range g.Text {
				b.WriteString(strings.Join(fold(text, 78), "\n") + "\n")
			}
		}
		fmt.Fprintf(&b, "\nchecks\n")
		for _, c := range s.Checks {
			writeCheck(&b, c, u)
		}
	}
	if len(f.Together) > 0 && len(f.Sizes) > 1 {
		fmt.Fprintf(&b, "\nall sizes\n")
	}
	for _, c := range f.Together {
		writeCheck(&b, c, u)
	}
	return b.String()
}

// heading names a size of a piece.
func heading(p piece.Piece) string {
	if p.Design.Size == "" {
		return p.Design.Title
	}
	return p.Design.Title + ", " + p.Design.Size
}

// writeCheck writes one check: how it came out, its name, its figures, and
// below it, where these do not say it all, what that means and what mends it.
func writeCheck(b *strings.Builder, c checks.Check, u measure.Unit) {
	fmt.Fprintf(b, "%-8s  %s", wording.Grade(c.Grade), wording.CheckName(c))
	if measured := wording.Measured(c, u); measured != "" {
		b.WriteString(": " + measured)
	}
	b.WriteString("\n")
	paragraph := func(text string) {
		for _, line := range fold(text, 70) {
			fmt.Fprintf(b, "          %s\n", line)
		}
	}
	if words := wording.Said(c, u); words != "" {
		paragraph(words)
	}
	for i, m := range c.Fixes {
		if i == 0 {
			paragraph("to mend it: " + wording.Fix(m, u))
		} else {
			paragraph("or: " + wording.Fix(m, u))
		}
	}
}
