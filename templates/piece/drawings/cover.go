package drawings

import (
	"cmp"
	"slices"

	"rodsheet/templates"
	"rodsheet/templates/piece"
	"rodsheet/templates/piece/design"
	"rodsheet/templates/piece/kind"
	"rodsheet/templates/piece/wording"
)

// Cover is the first sheet: how the sizes look and whose they are, how large they are, what
// is in doubt, what there is to print and what to mind.
func Cover(designs []design.Design, looks []templates.Picture, rows [][][2]string, doubts []templates.Panel) Envelope {
	return Envelope{"cover", coverHeading, kind.Buying | kind.Bench, false, func() (templates.Section, error) {
		sizes := make([]string, len(designs))
		for i, d := range designs {
			sizes[i] = d.Size
			looks[i].Heading = cmp.Or(piece.SizeWords(sizes[i:i+1], len(designs)), looks[i].Heading)
		}
		glass := slices.ContainsFunc(designs, func(d design.Design) bool { return d.Top.Kind == design.GlassTop })
		panels := slices.Concat(titleBlock(designs[0]), mainSizes(sizes, rows), doubts, []templates.Panel{printing(designs[0].Unit), generalCautions(glass)})
		return templates.Section{Pictures: looks, Panels: panels}, nil
	}}
}

// Cautions lists every caution that a pack may hold, whatever the piece: those of its
// cover first.
func Cautions() []templates.Panel {
	return append([]templates.Panel{generalCautions(true)}, wording.Cautions()...)
}

// Pictures returns the views of every size, each under its name where there are
// several.
func Pictures(pieces []piece.Piece) []templates.Picture {
	var out []templates.Picture
	for _, p := range pieces {
		for _, v := range views(p) {
			v.Heading = piece.WithSizes(v.Heading, []string{p.Design.Size}, len(pieces))
			out = append(out, v)
		}
	}
	return out
}

// mainSizes puts the sizes side by side, as many as a sheet holds: names and figures. What
// every one of them has alike stands once. A size without a figure of that name leaves its
// place empty.
func mainSizes(sizes []string, of [][][2]string) []templates.Panel {
	const beside = 5
	var rows [][]string // a name, and a figure for every size
	for i := range sizes {
		for _, line := range of[i] {
			k := slices.IndexFunc(rows, func(r []string) bool { return r[0] == line[0] })
			if k < 0 {
				k, rows = len(rows), append(rows, append([]string{line[0]}, make([]string, len(sizes))...))
			}
			rows[k][i+1] = line[1]
		}
	}
	var out []templates.Panel
	for from := 0; from < len(sizes); from += beside {
		to := min(from+beside, len(sizes))
		panel := templates.Panel{Heading: say(sizesHeading)}
		if len(sizes) > 1 {
			panel.Table = append(panel.Table, append([]string{""}, sizes[from:to]...))
		}
		for _, row := range rows {
			figures := row[1:]
			switch alike := !slices.ContainsFunc(figures, func(s string) bool { return s != figures[0] }); {
			case alike && from == 0:
				panel.Table = append(panel.Table, row[:2])
			case !alike:
				panel.Table = append(panel.Table, append(row[:1:1], figures[from:to]...))
			}
		}
		out = append(out, panel)
	}
	out[len(out)-1].Text = []string{say(writeRealSizes)}
	return out
}
