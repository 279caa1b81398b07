package drawings

import (
	"fmt"
	"slices"

	"rodsheet/geometry/measure"
	"rodsheet/templates"
	"rodsheet/templates/piece"
	"rodsheet/templates/piece/design"
)

// coverJob is the first sheet: how the piece looks, how large it is, what
// there is to print and what to mind.
func coverJob(pieces []piece.Piece) templates.Section {
	job := templates.Section{Heading: "Cover", Pictures: Pictures(pieces)}
	job.Panels = append(mainSizes(pieces), printing(), cautions(pieces))
	return job
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

// mainSizes puts the sizes side by side, as many as a sheet holds. What every
// one of them has alike stands once.
func mainSizes(pieces []piece.Piece) []templates.Panel {
	const beside = 5
	var rows [][]string // a name, and a figure for every size
	for i, p := range pieces {
		for k, line := range sizeRows(p) {
			if i == 0 {
				rows = append(rows, []string{line[0]})
			}
			rows[k] = append(rows[k], line[1])
		}
	}
	var out []templates.Panel
	for from := 0; from < len(pieces); from += beside {
		to := min(from+beside, len(pieces))
		panel := templates.Panel{Heading: "Main sizes"}
		if len(pieces) > 1 {
			head := []string{""}
			for _, p := range pieces[from:to] {
				head = append(head, p.Design.Size)
			}
			panel.Table = append(panel.Table, head)
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
	out[len(out)-1].Text = []string{
		"Where wood or saw turn out different, write the real sizes into the design file and print again.",
	}
	return out
}

// sizeRows returns names and figures, the same names for every size.
func sizeRows(p piece.Piece) [][2]string {
	f, r, l := p.Frame, p.Frame.Ring, p.Frame.Leg
	return [][2]string{
		{"overall height", p.MM(p.Overall())},
		{"floor to top of frame", p.MM(l.Height)},
		{"foot circle, diameter", p.MM(2 * p.FootRadius())},
		{"ring", fmt.Sprintf("%d stretchers", r.Sides)},
		{"inside, corner to corner", p.MM(r.Inside)},
		{"stretcher, width × depth", p.MM(r.Width) + " × " + p.MM(r.Depth)},
		{"stretcher, finished length", p.MM(p.FinishedStretcher())},
		{"leg, breadth × thickness", p.MM(l.Breadth) + " × " + p.MM(l.Thickness)},
		{"leg, along the edge", p.MM(p.LegEdge())},
		{"splay from plumb", p.Say(measure.Angle(f.Leg.Splay))},
		{"top", topWords(p)},
	}
}

// topWords describes the top in a few words.
func topWords(p piece.Piece) string {
	if p.Design.Top.Kind == design.NoTop {
		return "none"
	}
	material := "glass"
	if p.Design.Top.Kind == design.WoodTop {
		material = "wood"
	}
	thick := p.MM(p.Design.Top.Thickness) + " " + material + ", "
	if p.Design.Top.Outline == design.RoundTop {
		return thick + p.MM(2*p.TopRadius()) + " across"
	}
	b := topBounds(p)
	return thick + p.MM(b.Width()) + " × " + p.MM(b.Height())
}

// printing says how a sheet comes out at full size.
func printing() templates.Panel {
	return templates.Panel{Heading: "How to print", Text: []string{
		"Print at 100 %, actual size. The choice is under page size, scaling or handling, often folded away under more settings or advanced, sometimes only in the dialog of the printer itself.",
		"Never fit, shrink, borderless, or several pages a sheet. Paper as on the foot of the sheet, one side only.",
		"Print sheet 1 first and measure the calibration square. Every other sheet has a rule along each axis: look at them before a template is cut out.",
	}}
}

// cautions are said once a pack; what belongs to one operation stands beside
// it as well.
func cautions(pieces []piece.Piece) templates.Panel {
	text := []string{
		"Isolate power before setting a machine. Follow its manual and keep its guards on.",
		"Featherboards, jigs and push blocks for small and for angled parts; hands never above or beside the cut. Never trap an offcut between fence and blade.",
	}
	if slices.ContainsFunc(pieces, func(p piece.Piece) bool { return p.Design.Top.Kind == design.GlassTop }) {
		text = append(text, "Glass tempered, its edges worked, and never lifted by its bonding.")
	}
	return templates.Panel{Heading: "Cautions", Text: append(text,
		"Adhesives and finish by their data sheets; rags soaked in finish can catch fire by themselves: dry them spread out, or keep them under water.",
		"Local rules and licensed practice come before these sheets.",
	)}
}
