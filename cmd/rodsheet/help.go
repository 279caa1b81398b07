package main

import (
	_ "embed" // of the topics of help
	"fmt"
	"io"
	"strings"
	"text/tabwriter"

	"rodsheet/geometry/lists"
	"rodsheet/templates/piece/design"
	"rodsheet/templates/piece/drawings"
	"rodsheet/templates/wording"
)

// sawCaution stands in the help of every command whose figures go to a saw.
const sawCaution = `Caution: isolate the saw before setting it and follow its manual. Guards,
featherboards and push blocks first; hold small or angled parts in a jig, and
never trap an offcut between fence and blade.`

const overviewAbout = `rodsheet makes a whole piece out of one design file: every figure, what
will not fit, the cut list, a card for every set-up in working order, full-size
templates on ordinary sheets of paper. Single angles, tapers, joints and tops
are printed from the command line alone.
`

const synopsis = `  rodsheet COMMAND [FLAGS]
  rodsheet help [COMMAND|TOPIC]
  rodsheet --version
`

const proof = `Print at 100 %, actual size, and measure the rules before you cut.
`

const exitStatus = `0 when all is done; 1 when a piece cannot be built or the system
failed, such as a full disk; 2 when something on the command line or in the
design file has to change. With 2 no file has been written or changed, and with
1 none that the message does not name as written.
`

// overviewExamples are commands for one small three-legged table: legs 640 mm
// long splayed 12°, stretchers 28 × 36 mm lapped at 60°.
func overviewExamples() []example {
	return []example{
		{"rodsheet scale", "prove the printer first"},
		{"rodsheet new table.toml", "a design to change, for a small table"},
		{"rodsheet piece table.toml", "and all that is needed to build it"},
		{"rodsheet angle 12 60", "set the gauge for splay and crossing"},
		{"rodsheet lap --width 28 --other 28 --depth 36 --angle 60 --json", "figures for another program"},
	}
}

// A topic is a page of help that belongs to no command.
type topic struct{ name, summary, text string }

func topics() []topic {
	return []topic{
		{"lengths", "how lengths and angles are written", lengthsTopic},
		{"paper", "units, paper sizes and sheets", paperTopic},
		{"design", "the design file of a whole piece", designTopic},
		{"woods", "woods with their density and movement", woodsTopic()},
		{"cautions", "every caution that a pack may hold", cautionsTopic()},
		{"json", "what --json prints", jsonTopic},
	}
}

// The topics that are text alone.
var (
	//go:embed help/lengths.txt
	lengthsTopic string
	//go:embed help/paper.txt
	paperTopic string
	//go:embed help/design.txt
	designTopic string
	//go:embed help/json.txt
	jsonTopic string
)

func woodsTopic() string {
	var b strings.Builder
	b.WriteString(`Woods that a design file may name, in either order: species = "red oak".
kg/m³ at 12 per cent of moisture; movement in mm of a width of 100 mm for each
per cent of moisture, along the rays (quarter-sawn) and across them (flat-sawn).
`)
	w := tabwriter.NewWriter(&b, 0, 0, 2, ' ', 0)
	fmt.Fprint(w, "\n  wood\tkg/m³\talong\tacross\talso called\n")
	for _, s := range design.Species() {
		mark := ""
		if s.Recalled {
			mark = "*"
		}
		row := fmt.Sprintf("  %s%s\t%.0f\t%.2f\t%.2f\t%s", s.Name, mark, s.Density, 100*s.Radial, 100*s.Tangential, strings.Join(s.Also, ", "))
		fmt.Fprintln(w, strings.TrimRight(row, "\t"))
	}
	w.Flush()
	b.WriteString(`
Movement: USDA, Wood Handbook, FPL-GTR-190 (2010), Tables 4-3 and 13-5;
densities, and all of a wood with *, by the same book from memory. For any other
wood give its density: density = 700.

Examples:
  rodsheet new table.toml
  rodsheet check table.toml
  rodsheet piece table.toml
`)
	return b.String()
}

func cautionsTopic() string {
	var b strings.Builder
	for i, p := range drawings.Cautions() {
		fmt.Fprintf(&b, "%s%s:\n", []string{"", "\n"}[min(i, 1)], p.Heading)
		for _, text := range p.Text {
			fmt.Fprintf(&b, "  - %s\n", strings.Join(fold(text, 76), "\n    "))
		}
	}
	writeExamples(&b, []example{
		{"rodsheet piece table.toml", "a pack, each caution beside its set-up"},
		{"rodsheet piece table.toml --for bench", "the cards and what goes with them"},
		{"rodsheet taper --length 640 --top 45 --foot 28 --start 110", "a single template with its own"},
	})
	return b.String()
}

func help(words []string, stdout io.Writer) error {
	if len(words) == 0 {
		return emit(stdout, overviewText())
	}
	word := words[0]
	if len(words) > 1 {
		return refuse("help takes one command or topic, found "+wording.Shown(words[1])+" as well", "rodsheet help "+word)
	}
	if word == manWord {
		return emit(stdout, manPage(thisEdition()))
	}
	if c, ok := find(word); ok {
		return emit(stdout, c.help())
	}
	known := []string{manWord}
	for _, t := range topics() {
		if t.name == word {
			return emit(stdout, t.text)
		}
		known = append(known, t.name)
	}
	if word == "help" {
		return emit(stdout, overviewText())
	}
	hint := suggest("rodsheet help ", word, append(known, names()...))
	if hint == "" {
		hint = "rodsheet help lists them"
	}
	return refuse("no help on "+wording.Shown(word), hint)
}

func overviewText() string {
	var b strings.Builder
	b.WriteString(overviewAbout + "\nUsage:\n" + synopsis)
	rows := lists.Map(commands(), func(c command) [2]string { return [2]string{c.name, c.summary} })
	columns(&b, "Commands", rows)
	rows = nil
	for _, t := range topics() {
		rows = append(rows, [2]string{t.name, t.summary})
	}
	columns(&b, "Topics", append(rows, [2]string{manWord, "all of this and of the help, as a page for man"}))
	writeExamples(&b, overviewExamples())
	b.WriteString("\n" + proof + "\nExit status: " + exitStatus)
	return b.String()
}

func (c command) help() string {
	var b strings.Builder
	fmt.Fprintf(&b, "Usage:\n  %s\n\n%s\n", c.usage(), c.about)
	if len(c.flags) > 0 {
		columns(&b, "Flags", flagRows(c.flags))
	}
	columns(&b, "Common flags", flagRows(c.common()))
	writeExamples(&b, c.examples)
	if c.caution != "" {
		b.WriteString("\n" + c.caution + "\n")
	}
	b.WriteString("\nSee also: rodsheet help lengths, rodsheet help paper, rodsheet help json\n")
	return b.String()
}

func flagRows(flags []flag) [][2]string {
	var rows [][2]string
	for _, f := range flags {
		name := "    --" + f.name
		if f.short != "" {
			name = "-" + f.short + ", --" + f.name
		}
		rows = append(rows, [2]string{strings.TrimRight(name+" "+f.value, " "), f.usage})
	}
	return rows
}

func columns(out io.Writer, heading string, rows [][2]string) {
	fmt.Fprintf(out, "\n%s:\n", heading)
	w := tabwriter.NewWriter(out, 0, 0, 2, ' ', 0)
	for _, r := range rows {
		fmt.Fprintf(w, "  %s\t%s\n", r[0], r[1])
	}
	w.Flush()
}

func writeExamples(out io.Writer, examples []example) {
	fmt.Fprintf(out, "\nExamples:\n")
	for _, e := range examples {
		fmt.Fprintf(out, "  # %s\n  %s\n", e.what, e.line)
	}
}
