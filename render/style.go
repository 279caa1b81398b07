package render

import (
	"rodsheet/render/lettering"
	"rodsheet/render/page"
	"rodsheet/templates"
)

// Strokes that belong to the sheet and not to a template.
const (
	register    = int(templates.Waste) + 1 + iota // registration marks and crosses
	trim                                          // where a sheet is trimmed
	rule                                          // the rules and the key map
	vernierLine                                   // ticks across a seam
	tableLine                                     // between the rows and columns of a table
	leader                                        // from a word to what it names
	pictureLine                                   // of a picture: one more for each role
)

func pictured(r templates.Role) int { return pictureLine + int(r) }

// lines returns the line of every role, in the order of templates.Role and
// then of the constants above. Types and the ratio of thick to thin follow
// ISO 128; widths are from its series, and dashes count in its line widths
// (long dash 24, dash 12, dot half a width, gap 3).
func lines() []page.Line {
	const thin, fine = 0.18, 0.13
	out := make([]page.Line, pictureLine)
	copy(out, roleLines("", 0.35, thin, thin, fine))
	out[register] = page.Line{Name: "registration", Width: thin}
	out[trim] = page.Line{Name: "trim", Width: thin, Dash: dash(thin, 6, 6)}
	out[rule] = page.Line{Name: "rule", Width: thin}
	out[vernierLine] = page.Line{Name: "vernier", Width: fine}
	out[tableLine] = page.Line{Name: "table", Width: fine}
	out[leader] = page.Line{Name: "leader", Width: 0.09} // finer than all that is drawn: ours
	return append(out, roleLines("picture ", 0.25, thin, fine, fine)...)
}

// roleLines returns the lines of all roles, of four widths: of what is cut, of
// the edges of the stock, of dashed and chain lines, and of the rest.
func roleLines(prefix string, thick, edge, thin, fine float64) []page.Line {
	return []page.Line{
		templates.Cut:          {Name: prefix + "cut", Width: thick},
		templates.Outline:      {Name: prefix + "outline", Width: edge},
		templates.Fold:         {Name: prefix + "fold", Width: thin, Dash: dash(thin, 24, 3, 0.5, 3, 0.5, 3)},
		templates.Hidden:       {Name: prefix + "hidden", Width: thin, Dash: dash(thin, 12, 3)},
		templates.Centre:       {Name: prefix + "centre", Width: thin, Dash: dash(thin, 24, 3, 0.5, 3)},
		templates.Construction: {Name: prefix + "construction", Width: fine},
		templates.Waste:        {Name: prefix + "waste", Width: fine},
	}
}

// dash returns a pattern given in widths of its line.
func dash(width float64, parts ...float64) []float64 {
	for i := range parts {
		parts[i] *= width
	}
	return parts
}

// Letter heights in mm.
const (
	small = lettering.Small
	large = lettering.Large
)
