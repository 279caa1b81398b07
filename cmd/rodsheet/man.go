package main

import (
	"fmt"
	"strings"
	"time"
)

// manWord stands behind help for the page for man: it is the help in another form, so
// it is asked for where the help is.
const manWord = "man"

func manPage(e edition) string {
	var p roff
	date := ""
	if !e.at.IsZero() {
		date = e.at.Format(time.DateOnly)
	}
	p.request(".TH RODSHEET 1 \""+date+"\"", "rodsheet "+e.version)
	p.request(".nh") // no word is parted, no line is stretched
	p.request(".ad l")
	p.section("name")
	p.text("rodsheet - full-size templates for furniture makers")
	p.section("synopsis")
	p.prose(synopsis)
	p.section("description")
	p.prose(overviewAbout + "\n" + proof)
	p.section("commands")
	for _, c := range commands() {
		p.command(c)
	}
	p.section("common flags")
	p.prose("For every command that prints sheets:")
	p.flags(commonFlags())
	for _, t := range topics() {
		p.section(t.name)
		p.prose(t.summary + "\n\n" + t.text)
	}
	p.section("environment")
	p.entry(unitsVariable, "", "mm or in, of figures, where --units is not given")
	p.entry(printerVariable, "", "the printer to correct for, where --printer is not given")
	p.section("exit status")
	p.prose(exitStatus)
	p.section("examples")
	p.examples(overviewExamples())
	return p.String()
}

// roff writes the language of man(7).
type roff struct{ strings.Builder }

// request writes a line that is an order, its arguments in quotes.
func (p *roff) request(order string, args ...string) {
	p.WriteString(order)
	for _, a := range args {
		fmt.Fprintf(p, ` "%s"`, strings.ReplaceAll(escapedRoff(a), `"`, `\(dq`))
	}
	p.WriteByte('\n')
}

func (p *roff) section(name string) { p.request(".SH", strings.ToUpper(name)) }

// text writes a line to be filled. A line that begins as an order does is none behind
// an empty sign.
func (p *roff) text(line string) { p.WriteString(`\&` + escapedRoff(line) + "\n") }

// prose writes paragraphs to be filled; lines that begin with a blank stay as they are.
func (p *roff) prose(text string) {
	apart, literal := false, false
	for _, line := range strings.Split(strings.TrimRight(text, "\n"), "\n") {
		if line == "" {
			apart = true
			continue
		}
		asItIs := line[0] == ' '
		if literal && !asItIs {
			p.request(".fi")
		}
		if apart {
			p.request(".PP")
		}
		if asItIs && !literal {
			p.request(".nf")
		}
		p.text(line)
		apart, literal = false, asItIs
	}
	if literal {
		p.request(".fi")
	}
}

func (p *roff) entry(word, value, use string) {
	p.request(".TP")
	p.WriteString(`\fB` + escapedRoff(word) + `\fR \fI` + escapedRoff(value) + `\fR` + "\n")
	p.text(use)
}

func (p *roff) flags(flags []flag) {
	for _, f := range flags {
		names := "--" + f.name
		if f.short != "" {
			names = "-" + f.short + ", " + names
		}
		p.entry(names, f.value, f.usage)
	}
}

func (p *roff) examples(examples []example) {
	for _, e := range examples {
		p.entry(e.line, "", e.what)
	}
}

func (p *roff) command(c command) {
	p.request(".SS", c.name+": "+c.summary)
	p.prose("  " + c.usage() + "\n\n" + c.about)
	p.flags(c.flags)
	p.request(".PP")
	p.prose("Examples:")
	p.examples(c.examples)
	if c.caution != "" {
		p.request(".PP")
		p.prose(c.caution)
	}
}

// escapedRoff writes each sign as what a reader may copy: without this a hyphen
// becomes a dash, and a straight quote a curly one.
func escapedRoff(s string) string { return roffSigns.Replace(s) }

var roffSigns = strings.NewReplacer(`\`, `\e`, "-", `\-`, "'", `\(aq`, "`", `\(ga`, "^", `\(ha`, "~", `\(ti`)
