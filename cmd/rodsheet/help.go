package main

import (
	"fmt"
	"io"
	"strings"
	"text/tabwriter"

	"rodsheet/templates/piece/design"
	"rodsheet/templates/wording"
)

// sawCaution stands in the help of every command whose figures go to a saw.
const sawCaution = `Caution: isolate the saw before setting it and follow its manual. Guards,
featherboards and push blocks first; hold small or angled parts in a jig, and
never trap an offcut between fence and blade.`

const overview = `rodsheet makes a whole piece out of one design file: every figure, what will not
fit, the cut list, the saw settings in working order, and full-size templates on
ordinary sheets of paper. Single angles, tapers, joints and tops are printed
from the command line alone.

Usage:
  rodsheet COMMAND [FLAGS]
  rodsheet help [COMMAND|TOPIC]
  rodsheet --version
`

const closing = `Print at 100 %, actual size, and measure the rules before you cut.

Exit status: 0 when all is done; 1 when a piece cannot be built or the system
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
		{"json", "what --json prints", jsonTopic},
	}
}

const lengthsTopic = `Lengths:
  640  640mm  64cm  0.64m     without a unit: in the unit of --units
  25.25in  '25 1/4in'  25-1/4in  '2ft 1 1/4in'
  25¼″  2′1¼″                 the signs of print are read as well
Angles:
  14.5  14.5°  14.5deg        degrees
  '14 deg 30 min' is written 14°30′
  1:6                         rise over base
A cut across a part is given off square (0° is a square crosscut: what a mitre
gauge is turned by) and as a bevel (the corner that a bevel gauge encloses on
that part, 90° less the other). A taper is so many degrees to the edge.
What can be read in two ways, such as 14,5 or 1/6, is refused with both
readings. The marks ' and " and blanks need quotes from most shells.

Examples:
  rodsheet angle 14.5 1:6
  rodsheet taper --length 64cm --top 45 --foot 28mm --start 110
  rodsheet lap --width 1-1/8in --other 28 --depth 36 --angle 60
`

const paperTopic = `Units, the first that applies:
  1. --units mm or --units in
  2. the environment variable RODSHEET_UNITS, mm or in: your standing choice
  3. millimetres
A design file's own units stand between --units and the variable. Paper never
decides them. Paper without --paper: A4 for millimetres, letter for inches.

Sizes:
  letter, legal, tabloid, a4, a3
  WIDTHxHEIGHT                such as 300x450 or 12inx18in
  whole                       one page as large as the job, for a plotter

What is larger than a sheet is cut into tiles that share a strip with
registration marks; nothing is ever scaled to fit. Two tiles share --overlap,
and --margin stays blank at each side: printers leave 4 to 6 mm. With --verbose
one more line says how many sheets a job takes, how many its tiles cover at
least by their area, and how many tiles it takes at least to reach so far.
--only 3,5-7 prints some of the sheets again, just as they were.

Files: the ending of --out says which kind. .pdf holds all sheets; .svg makes
one file a sheet, leg-1.svg, leg-2.svg, or leg.svg where one sheet is enough.
Without --out the job names the file, such as lap-60.pdf. A file that has the
name already is replaced. Sheets that an earlier, larger job left beside the
new ones are named; --replace removes them.

Examples:
  rodsheet scale --units in
  rodsheet angle 12 --paper a3 --margin 6
  rodsheet taper --length 640 --top 45 --foot 28 --start 110 --paper whole
  rodsheet lap --width 28 --other 28 --depth 36 --angle 60 --only 2
`

const jsonTopic = `--json prints one object, on one line, on standard output; the file is written
as usual. Its fields may grow in number but keep their names. Arrays are never
null, numbers are never written with a power of ten.

  figures   what was worked out, in the order of the sheet
    size      of a piece: the name of the size, if it has one
    group     of a piece: the heading that it stands under
    name      as printed
    value     a number in unit, whatever --units says
    unit      mm, deg, mm2, mm3, kg, N, or "" for a bare number
  pages     the templates, or tiles of them, sheet by sheet
    page      the sheet of the whole job, from 1, also with --only
    template  the name of the drawing
    row       of the tile, from 1, counted from the top
    column    of the tile, from 1, counted from the left
    to_page   [a,b,c,d,e,f]: the point x, y of the template, in mm, stands at
              a x + c y + e, b x + d y + f on the sheet, in mm from its lower
              left corner, y up
  bounds    how many sheets the job takes
    sheets    that it takes, least: fewer than which its tiles do not fill
    tiles     of each drawing of several: template, tiles, and least as above
  warnings  what to know before cutting, one text each

Examples:
  rodsheet angle 12 --json
  rodsheet lap --width 28 --other 28 --depth 36 --angle 60 --json --out lap.pdf
  rodsheet scale --json --out scale.svg
`

// woodsTopic lists the table of woods.
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
`)
	return b.String()
}

const designTopic = `A design file is plain text (TOML): the few decisions from which all else
follows. rodsheet new FILE.toml writes one with every key explained.

  [ring]    sides, inside size, width and depth of the stretchers, their ends
  [legs]    breadth, lean, height, place, joint, taper
  [top]     glass, wood or none; outline, thickness, overhang, pads
  [wood]    species, allowances, spares, boards at hand
  [saw]     kerf, blade height, stop, gauge
  [milled]  real sizes after planing: a saw is set by these, not by the design;
            but not in a size with its own width, depth, breadth or kerf
  [[size]]  a name and what differs: several sizes of one design in one file

Lengths and angles are written as on the command line, in quotes where they
are more than a number: width = "1 1/8". A bare number takes the file's units.
All mistakes are listed with line and column, and comments are never touched.

Examples:
  rodsheet new table.toml --sides 3
  rodsheet check table.toml
  rodsheet piece table.toml --plan
`

// help answers "rodsheet help" and what stands after it.
func help(words []string, stdout io.Writer) error {
	if len(words) == 0 {
		return emit(stdout, overviewText())
	}
	word := words[0]
	if len(words) > 1 {
		return refuse("help takes one command or topic, found "+wording.Shown(words[1])+" as well", "rodsheet help "+word)
	}
	if c, ok := find(word); ok {
		return emit(stdout, c.help())
	}
	var known []string
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

// overviewText is the help of the whole program.
func overviewText() string {
	var b strings.Builder
	b.WriteString(overview)
	var rows [][2]string
	for _, c := range commands() {
		rows = append(rows, [2]string{c.name, c.summary})
	}
	columns(&b, "Commands", rows)
	rows = nil
	for _, t := range topics() {
		rows = append(rows, [2]string{t.name, t.summary})
	}
	columns(&b, "Topics", rows)
	writeExamples(&b, overviewExamples())
	b.WriteString("\n" + closing)
	return b.String()
}

// help is the command's page of help.
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

// columns writes a heading and two columns under it.
func columns(out io.Writer, heading string, rows [][2]string) {
	fmt.Fprintf(out, "\n%s:\n", heading)
	w := tabwriter.NewWriter(out, 0, 0, 2, ' ', 0)
	for _, r := range rows {
		fmt.Fprintf(w, "  %s\t%s\n", r[0], r[1])
	}
	w.Flush()
}

// writeExamples writes every example below what it is for.
func writeExamples(out io.Writer, examples []example) {
	fmt.Fprintf(out, "\nExamples:\n")
	for _, e := range examples {
		fmt.Fprintf(out, "  # %s\n  %s\n", e.what, e.line)
	}
}
