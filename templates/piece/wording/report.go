package wording

import (
	"rodsheet/geometry/measure"
	"rodsheet/templates/piece/checks"
	"rodsheet/templates/piece/kind"
)

// Report says what was found of the sizes of one design.
func Report(f checks.Findings) kind.Report {
	var out kind.Report
	for _, s := range f.Sizes {
		d := s.Piece.Design
		out.Sizes = append(out.Sizes, kind.Size{Design: d, Checks: Checks(s.Checks, d.Unit), Groups: groupsOf(s, d.Unit)})
		out.Together = Checks(f.Together, d.Unit)
	}
	return out
}

// Checks says checks in a unit.
func Checks(all []checks.Check, u measure.Unit) []kind.Check {
	out := make([]kind.Check, len(all))
	for i, c := range all {
		out[i] = kind.Check{ID: c.ID(), Name: checkName(c), Grade: c.Grade, Words: words(c, u)}
		if c.Figure != "" {
			out[i].Figure, out[i].FigureName = c.Figure, speak(checkFigures(), c.Figure)
			out[i].Value, out[i].Relation, out[i].Limit = c.Value, c.Relation, c.Limit
		}
		for _, f := range c.Fixes {
			out[i].Fixes = append(out[i].Fixes, saidFix(f, u))
		}
	}
	return out
}

func saidFix(f checks.Fix, u measure.Unit) kind.Fix {
	out := kind.Fix{Turn: f.Turn, Follows: f.Follows, Words: fixWords(f, u)}
	if f.Sized {
		out.Size = f.Design.Size
	}
	return out
}
