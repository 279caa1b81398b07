package drawings

import (
	"slices"

	"rodsheet/templates"
	"rodsheet/templates/piece"
	"rodsheet/templates/piece/kind"
)

// coverJob is the first sheet: how the pieces look and whose they are, how large they
// are, what there is to print, what is in doubt and what to mind.
func coverJob(pieces []piece.Piece, looks []templates.Picture, r kind.Report) templates.Section {
	var job templates.Section
	for i, p := range pieces {
		v := looks[i]
		if words := piece.SizeWords([]string{p.Design.Size}, len(pieces)); words != "" {
			v.Heading = words
		}
		job.Pictures = append(job.Pictures, v)
	}
	job.Panels = slices.Concat(TitleBlock(pieces[0].Design), mainSizes(pieces))
	if doubtsOnCover(pieces) {
		job.Panels = append(job.Panels, r.DoubtPanels()...)
	}
	job.Panels = append(job.Panels, Printing(), cautions(pieces))
	return job
}

// doubtsOnCover reports whether the cover has room for what is in doubt. Pictures of
// several sizes leave none: then it is said before the first cut, with the stock.
func doubtsOnCover(pieces []piece.Piece) bool { return len(pieces) == 1 }

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

// mainSizes puts the sizes side by side, as many as a sheet holds. What every
// one of them has alike stands once.
func mainSizes(pieces []piece.Piece) []templates.Panel {
	rows := make([][][2]string, len(pieces))
	for i, p := range pieces {
		rows[i] = sizeRows(p)
	}
	return MainSizes(piece.Sizes(pieces), rows)
}

// MainSizes is mainSizes for what the named sizes say: names and figures. A size without a
// figure of that name leaves its place empty.
func MainSizes(sizes []string, of [][][2]string) []templates.Panel {
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
