package main

import (
	"cmp"
	"context"
	"fmt"
	"slices"
	"strings"

	"rodsheet/geometry/measure"
	"rodsheet/templates/piece/design"
	"rodsheet/templates/piece/kind"
)

func checkCommand() command {
	return command{
		name:    "check",
		words:   fileWord,
		summary: "every figure of a piece, and what will not fit",
		about: `Reads a design file, works out every figure and asks every question that can be
asked before wood is cut. What fails and what is in doubt comes first, with the
changes that mend it, the cheapest first; then whether the piece can be built,
then its figures. The exit status is 1 when the piece cannot be built.`,
		flags: []flag{
			sizeFlag(),
			unitsFlag("of the figures printed; the file's own if not given"),
			{name: "all", usage: "list the checks that hold as well"},
			{name: "json", usage: "print all figures and checks as JSON"},
		},
		examples: []example{
			{"rodsheet check table.toml", "all sizes"},
			{"rodsheet check table.toml --all", "with all that holds"},
			{"rodsheet check table.toml --units in", "with figures in inches"},
			{"rodsheet check table.toml --size low --json", "one size, for another program"},
		},
		design: true,
		prints: true,
		act:    checkDesign,
	}
}

func checkDesign(ctx context.Context, v *values, w world) error {
	r, err := awaited(ctx, func() (findings, error) {
		work, err := v.work()
		if err != nil {
			return findings{}, err
		}
		return findings{work.Report()}, nil
	})
	if err != nil {
		return err
	}
	if v.on("json") {
		err = r.writeJSON(w.stdout)
	} else {
		err = emit(w.stdout, r.text(v.unit, v.on("all")))
	}
	if err != nil {
		return err
	}
	return r.verdict()
}

type findings struct{ kind.Report }

// An unbuildable says why a piece cannot be built. Nothing is wrong with the
// command line, so its exit status is 1.
type unbuildable string

func (u unbuildable) Error() string { return string(u) }

// verdict returns nil for a design that can be built.
func (f findings) verdict() error {
	failing := f.graded(kind.Fail, func(c kind.Check) string { return c.Name })
	if len(failing) == 0 {
		return nil
	}
	return unbuildable("cannot be built: " + strings.Join(failing, "; "))
}

// graded returns a text of every check that came out so, behind the name of its
// size where there is one.
func (f findings) graded(g kind.Grade, text func(kind.Check) string) []string {
	var out []string
	add := func(size string, all []kind.Check) {
		for _, c := range all {
			if c.Grade == g {
				out = append(out, strings.TrimPrefix(size+", "+text(c), ", "))
			}
		}
	}
	for _, s := range f.Sizes {
		add(s.Design.Size, s.Checks)
	}
	add("", f.Together)
	return out
}

// text is what check prints for people: what fails and what is in doubt, whether
// the piece can be built, and its figures. What holds stands with the rest only
// where all is asked for.
func (f findings) text(u measure.Unit, all bool) string {
	var b strings.Builder
	b.Grow(16 << 10) // more than most
	for _, s := range f.Sizes {
		writeChecks(&b, heading(s.Design), s.Checks, u, all)
	}
	together := ""
	if len(f.Sizes) > 1 {
		together = kind.AllSizes()
	}
	writeChecks(&b, together, f.Together, u, all)
	fmt.Fprintln(&b, strings.Join(fold(f.Verdict(), 78), "\n"))
	for _, s := range f.Sizes {
		fmt.Fprintf(&b, "\n%s\n", heading(s.Design))
		for _, g := range s.Groups {
			writeGroup(&b, g, u)
		}
	}
	return b.String()
}

// writeChecks writes the checks that fail, that are in doubt and, where all are
// asked for, that hold, below their heading, and nothing where there are none.
func writeChecks(b *strings.Builder, heading string, checked []kind.Check, u measure.Unit, all bool) {
	shown := slices.DeleteFunc(slices.Clone(checked), func(c kind.Check) bool { return c.Grade == kind.Pass && !all })
	if len(shown) == 0 {
		return
	}
	slices.SortStableFunc(shown, func(p, q kind.Check) int { return cmp.Compare(q.Grade, p.Grade) })
	if heading != "" {
		fmt.Fprintln(b, heading)
	}
	for _, c := range shown {
		writeCheck(b, c, u)
	}
	fmt.Fprintln(b)
}

func writeGroup(b *strings.Builder, g kind.Group, u measure.Unit) {
	fmt.Fprintf(b, "\n%s\n%s", g.Heading, figureTable(g.Figures, u))
	for _, text := range g.Text {
		b.WriteString(strings.Join(fold(text, 78), "\n") + "\n")
	}
}

func heading(d design.Design) string {
	if d.Size == "" {
		return d.Title
	}
	return d.Title + ", " + d.Size
}

// writeCheck writes one check: how it came out, its name, its figures, and
// below it, where these do not say it all, what that means and what mends it.
func writeCheck(b *strings.Builder, c kind.Check, u measure.Unit) {
	fmt.Fprintf(b, "%-8s  %s", c.Grade.Word(), c.Name)
	if measured := c.Measured(u); measured != "" {
		b.WriteString(": " + measured)
	}
	b.WriteString("\n")
	paragraph := func(text string) {
		for _, line := range fold(text, 70) {
			fmt.Fprintf(b, "          %s\n", line)
		}
	}
	if words := c.Said(); words != "" {
		paragraph(words)
	}
	for i, m := range c.Fixes {
		if i == 0 {
			paragraph("to mend it: " + m.Words)
		} else {
			paragraph("or: " + m.Words)
		}
	}
}
