package kind

import (
	"slices"
	"strings"

	"rodsheet/geometry/lists"
	"rodsheet/geometry/measure"
	"rodsheet/templates"
	"rodsheet/templates/piece"
	"rodsheet/templates/wording"
)

// Word says how a check came out.
func (g Grade) Word() string {
	return [...]wording.Text{Pass: "holds", Warn: "doubtful", Fail: "fails"}[g].With()
}

// say fills the verbs of a sentence.
func say(t wording.Text, args ...any) string { return t.With(args...) }

const (
	checksThatFail wording.Text = "Checks that fail"
	checksInDoubt  wording.Text = "Checks in doubt"
	checksThatHold wording.Text = "Checks that hold"
	checksNotHeld  wording.Text = "Checks that fail or are in doubt"
)

// RelationWords says what the figure of a check has to be to its limit, nothing for a
// check without figures.
func (c Check) RelationWords() string {
	if c.Figure == "" {
		return ""
	}
	return map[measure.Relation]wording.Text{measure.IsAtLeast: "at least", measure.IsAtMost: "at most"}[c.Relation].With()
}

// Measured says the figure of a check and its limit in one line, in unit u:
// "clearance -4.2 mm, at least 0 mm". It is empty for a check without figures.
func (c Check) Measured(u measure.Unit) string {
	if c.Figure == "" {
		return ""
	}
	value, limit := measure.Apart(c.Value, c.Limit, u)
	return say("%s %s, %s %s", c.FigureName, value, c.RelationWords(), limit)
}

// Said is Words, or nothing where the check holds and its figures say so.
func (c Check) Said() string {
	if c.Grade == Pass && c.Figure != "" {
		return ""
	}
	return c.Words
}

// Advice says all fixes of a check in one line, the cheapest first: "reduce …, or
// lengthen …". It is empty where there is none.
func (c Check) Advice() string {
	words := lists.Map(c.Fixes, func(f Fix) string { return f.Words })
	return strings.Join(words, say(", or "))
}

// AllSizes heads the checks of all sizes together.
func AllSizes() string { return say("all sizes") }

// Verdict says in one line whether a piece can be built.
func (r Report) Verdict() string {
	var count [Fail + 1]int
	for _, c := range r.All() {
		count[c.Grade]++
	}
	if count[Fail] == 0 {
		return say("The piece can be built. Checks in doubt: %d; checks that hold: %d.", count[Warn], count[Pass])
	}
	return say("The piece cannot be built. Checks that fail: %d; in doubt: %d; that hold: %d.", count[Fail], count[Warn], count[Pass])
}

// DoubtPanels says in a line each what fails or is in doubt, the same of several sizes
// once, as far as a few lines go; nothing where all holds.
func (r Report) DoubtPanels() []templates.Panel {
	const most = 3
	type doubt struct{ name, words string }
	var order []doubt
	sizes := map[doubt][]string{}
	add := func(all []Check, size ...string) {
		for _, c := range all {
			if c.Grade == Pass {
				continue
			}
			d := doubt{c.Name, c.Words}
			if _, ok := sizes[d]; !ok {
				order = append(order, d)
			}
			sizes[d] = append(sizes[d], size...)
		}
	}
	for _, s := range r.Sizes {
		add(s.Checks, s.Design.Size)
	}
	add(r.Together)
	if order == nil {
		return nil
	}
	panel := templates.Panel{Heading: checksInDoubt.With()}
	if slices.ContainsFunc(r.All(), func(c Check) bool { return c.Grade == Fail }) {
		panel.Heading = checksNotHeld.With()
	}
	for i, d := range order {
		if i == most {
			panel.Text = append(panel.Text, say("%d more: all of them are printed with --for record.", len(order)-most))
			break
		}
		name := d.name
		if len(sizes[d]) > 0 {
			name = piece.WithSizes(name, sizes[d], len(r.Sizes))
		}
		panel.Text = append(panel.Text, say("%s: %s", name, d.words))
	}
	return []templates.Panel{panel}
}

// CheckPanels returns the checks and the figures of each size in turn, then the
// checks of all together. What is asked of all stands with the rest where there
// is one.
func (r Report) CheckPanels() []templates.Panel {
	var out []templates.Panel
	for _, s := range r.Sizes {
		u, own := s.Design.Unit, s.Checks
		if len(r.Sizes) == 1 {
			own = append(own[:len(own):len(own)], r.Together...)
		}
		for _, panel := range append(gradedPanels(own, u), s.figurePanels()...) {
			panel.Heading = piece.WithSizes(panel.Heading, []string{s.Design.Size}, len(r.Sizes))
			out = append(out, panel)
		}
	}
	if len(r.Sizes) == 1 {
		return out
	}
	for _, panel := range gradedPanels(r.Together, r.Sizes[0].Design.Unit) {
		panel.Heading = say("%s, all sizes together", panel.Heading)
		out = append(out, panel)
	}
	return out
}

// figurePanels returns the figures for the printed pack, a panel for each group.
func (s Size) figurePanels() []templates.Panel {
	var out []templates.Panel
	for _, g := range s.Groups {
		panel := templates.Panel{Heading: g.Heading, Text: g.Text}
		for _, f := range g.Figures {
			panel.Table = append(panel.Table, []string{f.Name, f.Value.Text(s.Design.Unit)})
		}
		out = append(out, panel)
	}
	return out
}

// gradedPanels returns checks as panels: what fails, what is doubtful and what
// holds, each in the order given.
func gradedPanels(all []Check, u measure.Unit) []templates.Panel {
	var out []templates.Panel
	for _, part := range []struct {
		grade   Grade
		heading wording.Text
	}{{Fail, checksThatFail}, {Warn, checksInDoubt}, {Pass, checksThatHold}} {
		panel := templates.Panel{Heading: part.heading.With()}
		for _, c := range all {
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
	out := [][]string{{c.Name}}
	if c.Figure != "" {
		out[0] = append(out[0], c.Measured(u))
	}
	if words := c.Said(); words != "" {
		out = append(out, []string{words})
	}
	if len(c.Fixes) > 0 {
		out = append(out, []string{say("To mend it: %s.", c.Advice())})
	}
	return out
}
