package render

import (
	"rodsheet/render/page"
	"rodsheet/templates"
)

// Strokes that belong to the sheet and not to a template.
const (
	register    = int(templates.Waste) + 1 + iota // registration marks and crosses
	trim                                          // where a sheet is trimmed
	rule                                          // the rules and the key map
	vernierLine                                   // ticks across a seam
)

// lines returns the line of every role, in the order of templates.Role and
// then of the constants above. Types and the ratio of thick to thin follow
// ISO 128; widths are from its series, and dashes count in its line widths
// (long dash 24, dash 12, dot half a width, gap 3).
func lines() []page.Line {
	const thick, thin, fine = 0.35, 0.18, 0.13
	dash := func(parts ...float64) []float64 {
		for i := range parts {
			parts[i] *= thin
		}
		return parts
	}
	return []page.Line{
		templates.Cut:          {Name: "cut", Width: thick},
		templates.Outline:      {Name: "outline", Width: thin},
		templates.Fold:         {Name: "fold", Width: thin, Dash: dash(24, 3, 0.5, 3, 0.5, 3)},
		templates.Hidden:       {Name: "hidden", Width: thin, Dash: dash(12, 3)},
		templates.Centre:       {Name: "centre", Width: thin, Dash: dash(24, 3, 0.5, 3)},
		templates.Construction: {Name: "construction", Width: fine},
		templates.Waste:        {Name: "waste", Width: fine},
		register:               {Name: "registration", Width: thin},
		trim:                   {Name: "trim", Width: thin, Dash: dash(6, 6)},
		rule:                   {Name: "rule", Width: thin},
		vernierLine:            {Name: "vernier", Width: fine},
	}
}

// Letter heights in mm: the height of a capital (ISO 3098 series; 2.5 is the
// least that is printed).
const (
	small = 2.5
	large = 3.5
)

// pitch returns the distance in mm from base line to base line.
func pitch(height float64) float64 { return 1.6 * height }
