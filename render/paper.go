package render

import (
	"strings"

	"rodsheet/geometry/lists"
	"rodsheet/geometry/measure"
)

// A Paper is a sheet size in mm, upright. A whole paper has no size of its
// own: it grows to hold the job on one page, for a plotter or a laser.
type Paper struct {
	Name          string
	Width, Height float64
	Whole         bool
}

// papers lists the named sizes. ISO 216 for A4 and A3; ANSI/ASME Y14.1 for
// letter and tabloid; legal is from memory.
func papers() []Paper {
	const in = measure.MillimetresPerInch
	return []Paper{
		{Name: "letter", Width: 8.5 * in, Height: 11 * in},
		{Name: "legal", Width: 8.5 * in, Height: 14 * in},
		{Name: "tabloid", Width: 11 * in, Height: 17 * in},
		{Name: "A4", Width: 210, Height: 297},
		{Name: "A3", Width: 297, Height: 420},
		{Name: "whole", Whole: true},
	}
}

// PaperNames lists the names that ParsePaper reads.
func PaperNames() []string {
	return lists.Map(papers(), func(p Paper) string { return strings.ToLower(p.Name) })
}

// ParsePaper reads a named size or WIDTHxHEIGHT, where a length without a
// unit is in bare. A sheet wider than high stays so.
func ParsePaper(s string, bare measure.Unit) (Paper, error) {
	for _, p := range papers() {
		if strings.EqualFold(p.Name, strings.TrimSpace(s)) {
			return p, nil
		}
	}
	w, h, ok := strings.Cut(strings.ToLower(s), "x")
	if !ok {
		return Paper{}, &measure.ParseError{Text: s,
			Reason: measure.Slip{ID: "no-paper"}, Hint: measure.Slip{ID: "papers", Args: []string{strings.Join(PaperNames(), ", ")}}}
	}
	width, err := measure.ParseLength(w, bare)
	if err != nil {
		return Paper{}, err
	}
	height, err := measure.ParseLength(h, bare)
	if err != nil {
		return Paper{}, err
	}
	name := measure.Length(width).Bare(bare) + " × " + measure.Length(height).Text(bare)
	return Paper{Name: name, Width: width, Height: height}, nil
}

// SizeText writes a width and a height in mm: "300 × 450 mm". In inches each has
// its unit, since a decimal may stand behind the fraction.
func SizeText(width, height float64, u measure.Unit) string {
	first := measure.Length(width).Bare(u)
	if u == measure.Inch {
		first = measure.Length(width).Text(u)
	}
	return first + " × " + measure.Length(height).Text(u)
}
