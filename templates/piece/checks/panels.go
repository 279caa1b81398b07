package checks

import (
	"slices"

	"rodsheet/geometry/measure"
	"rodsheet/templates"
	"rodsheet/templates/piece"
)

// Panels returns the checks and the figures of each size in turn, then the
// checks of all together. What is asked of all stands with the rest where there
// is one.
func (f Findings) Panels() []templates.Panel {
	var out []templates.Panel
	if len(f.Pieces) == 1 {
		f.Sizes = [][]Check{slices.Concat(f.Sizes[0], f.Together)}
		f.Together = nil
	}
	for i, p := range f.Pieces {
		for _, panel := range append(gradedPanels(f.Sizes[i], p.Design.Unit), figurePanels(p)...) {
			panel.Heading = piece.WithSizes(panel.Heading, []string{p.Design.Size}, len(f.Pieces))
			out = append(out, panel)
		}
	}
	if len(f.Together) == 0 {
		return out
	}
	for _, panel := range gradedPanels(f.Together, f.Pieces[0].Design.Unit) {
		panel.Heading += ", all sizes together"
		out = append(out, panel)
	}
	return out
}

// figurePanels returns the figures for the printed pack, a panel for each group.
func figurePanels(p piece.Piece) []templates.Panel {
	var out []templates.Panel
	for _, g := range Groups(p) {
		panel := templates.Panel{Heading: g.Heading, Text: g.Text}
		for _, f := range g.Figures {
			panel.Table = append(panel.Table, []string{f.Name, p.Say(f.Value)})
		}
		out = append(out, panel)
	}
	return out
}

// gradedPanels returns checks as panels: what fails, what is doubtful and what
// holds, each in the order given.
func gradedPanels(checks []Check, u measure.Unit) []templates.Panel {
	var out []templates.Panel
	for _, part := range []struct {
		grade   Grade
		heading string
	}{{Fail, "Checks that fail"}, {Warn, "Checks in doubt"}, {Pass, "Checks that hold"}} {
		panel := templates.Panel{Heading: part.heading}
		for _, c := range checks {
			if c.Grade == part.grade {
				panel.Table = append(panel.Table, c.rows(u)...)
			}
		}
		if panel.Table != nil {
			out = append(out, panel)
		}
	}
	return out
}

// rows returns a check as rows of a table: its name and figure, then its words
// and what mends it, across.
func (c Check) rows(u measure.Unit) [][]string {
	rows := [][]string{{c.Name, c.Measured(u)}}
	if c.Relation == "" {
		rows[0] = []string{c.Name}
	}
	if words := c.Said(); words != "" {
		rows = append(rows, []string{words})
	}
	if len(c.Fixes) > 0 {
		rows = append(rows, []string{"To mend it: " + c.advice() + "."})
	}
	return rows
}
