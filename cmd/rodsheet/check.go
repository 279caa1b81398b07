package main

import (
	"cmp"
	"context"
	"fmt"
	"slices"
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
		err = emit(w.stdout, r.text(v.unit, v.on("all")))
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

// text is what check prints for people: what fails and what is in doubt, whether
// the piece can be built, and its figures. What holds stands with the rest only
// where all is asked for.
func (f findings) text(u measure.Unit, all bool) string {
	var b strings.Builder
	for _, s := range f.Sizes {
		writeChecks(&b, heading(s.Piece), s.Checks, u, all)
	}
	together := ""
	if len(f.Sizes) > 1 {
		together = wording.AllSizes()
	}
	writeChecks(&b, together, f.Together, u, all)
	fmt.Fprintln(&b, strings.Join(fold(wording.Verdict(f.Findings), 78), "\n"))
	for _, s := range f.Sizes {
		fmt.Fprintf(&b, "\n%s\n", heading(s.Piece))
		for _, g := range wording.Groups(s, u) {
			writeGroup(&b, g, u)
		}
	}
	return b.String()
}

// writeChecks writes the checks that fail, that are in doubt and, where all are
// asked for, that hold, below their heading, and nothing where there are none.
func writeChecks(b *strings.Builder, heading string, checked []checks.Check, u measure.Unit, all bool) {
	shown := slices.DeleteFunc(slices.Clone(checked), func(c checks.Check) bool { return c.Grade == checks.Pass && !all })
	if len(shown) == 0 {
		return
	}
	slices.SortStableFunc(shown, func(p, q checks.Check) int { return cmp.Compare(q.Grade, p.Grade) })
	if heading != "" {
		fmt.Fprintln(b, heading)
	}
	for _, c := range shown {
		writeCheck(b, c, u)
	}
	fmt.Fprintln(b)
}

// writeGroup writes figures that belong together, and what is said of them.
func writeGroup(b *strings.Builder, g wording.Group, u measure.Unit) {
	plain := make([]templates.Figure, len(g.Figures))
	for i, f := range g.Figures {
		plain[i] = f.Figure
	}
	fmt.Fprintf(b, "\n%s\n%s", g.Heading, figureTable(plain, u))
	for _, text := range g.Text {
		b.WriteString(strings.Join(fold(text, 78), "\n") + "\n")
	}
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
