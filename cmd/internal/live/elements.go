package live

import (
	"bytes"
	"embed"
	"html/template"
	"slices"
	"sync"

	"rodsheet/geometry"
	"rodsheet/geometry/lists"
	"rodsheet/geometry/measure"
	"rodsheet/render"
	"rodsheet/render/page"
	"rodsheet/templates"
	"rodsheet/templates/piece/kind"
)

//go:embed parts
var parts embed.FS

// layouts are read when a page is first asked for: every other command starts without.
var layouts = sync.OnceValue(func() *template.Template {
	return template.Must(template.New("").Funcs(helpers()).ParseFS(parts, "parts/*.html"))
})

func fill(name string, data any) template.HTML {
	var b bytes.Buffer
	if err := layouts().ExecuteTemplate(&b, name, data); err != nil {
		return template.HTML(template.HTMLEscapeString(err.Error()))
	}
	return template.HTML(b.String())
}

func elements() map[string]func(asked) template.HTML {
	return map[string]func(asked) template.HTML{
		"form":    formOf,
		"plan":    func(a asked) template.HTML { return a.view(kind.FromAbove, planName.With(a.design.Title)) },
		"front":   func(a asked) template.HTML { return a.view(kind.FromFront, frontName.With(a.design.Title)) },
		"corner":  asked.corner,
		"checks":  asked.checks,
		"figures": asked.figures,
		"cards": func(a asked) template.HTML {
			return a.sections(func(s templates.Section) bool { return len(s.Cards) > 0 })
		},
		"buying": func(a asked) template.HTML { return a.sections(oneOf("wood")) },
		"glue":   func(a asked) template.HTML { return a.sections(oneOf("glue-up", "names")) },
		"sheets": asked.sheets,
	}
}

func oneOf(ids ...measure.ID) func(templates.Section) bool {
	return func(s templates.Section) bool { return slices.Contains(ids, s.ID) }
}

func (a asked) view(l kind.Look, name string) template.HTML { return showSVG(a.stand().Show(l), name) }

func (a asked) corner() template.HTML {
	l := kind.Look{View: kind.FromCorner(a.Look.Aside, a.Look.Above), Apart: min(max(a.Look.Apart, 0), 1), Close: a.Look.Close}
	return a.view(l, cornerName.With(a.design.Title))
}

// A verdict is a check of a size, or of all together, as the page lists it.
type verdict struct {
	kind.Check
	Size     string
	Together bool
	Unit     measure.Unit
}

// checks lists those of the size shown and of all together: fails and doubts, what holds
// behind them.
func (a asked) checks() template.HTML {
	var bad, good []verdict
	add := func(size string, together bool, all []kind.Check) {
		for _, c := range all {
			to := &bad
			if c.Grade == kind.Pass {
				to = &good
			}
			*to = append(*to, verdict{c, size, together, a.design.Unit})
		}
	}
	s := a.found.Sizes[a.shown]
	add(s.Design.Size, false, s.Checks)
	add("", true, a.found.Together)
	slices.SortStableFunc(bad, func(p, q verdict) int { return int(q.Grade) - int(p.Grade) })
	return fill("checks", map[string]any{"Bad": bad, "Good": good, "Verdict": a.found.Verdict()})
}

func (a asked) figures() template.HTML {
	return fill("figures", map[string]any{"Groups": a.found.Sizes[a.shown].Groups, "Unit": a.design.Unit})
}

// sheetOfUnit is what the usual sheet of a unit offers a drawing.
func sheetOfUnit(u measure.Unit) geometry.Point {
	name := "a4"
	if u == measure.Inch {
		name = "letter"
	}
	paper, _ := render.ParsePaper(name, u)
	return render.DefaultLayout(u, paper).Clear()
}

func (a asked) sections(wanted func(templates.Section) bool) template.HTML {
	job, err := a.work.Pack(kind.Options{}, templates.Setting{Unit: a.design.Unit, Clear: sheetOfUnit(a.design.Unit)})
	if err != nil {
		return fill("fault", faults(err))
	}
	out := lists.Where(job.Sections, wanted)
	return fill("sections", out)
}

type thumb struct {
	Number int
	Name   string
}

// A cell stands in a row of a table; across so many columns where it is the only one.
type cell struct {
	Text   string
	Head   bool
	Across int
}

// rowsOf returns the rows of a panel as a page sets them: a first row above several
// columns is their head, a row of one cell runs across.
func rowsOf(p templates.Panel) [][]cell {
	wide := lists.Most(p.Table, func(row []string) int { return len(row) })
	var out [][]cell
	for i, row := range p.Table {
		var cells []cell
		for k, text := range row {
			cells = append(cells, cell{Text: text, Head: i == 0 && p.Ruled || k == 0 && len(row) > 1 && wide == 2})
		}
		if len(row) == 1 {
			cells[0].Across, cells[0].Head = wide, !p.Under
		}
		out = append(out, cells)
	}
	return out
}

func (a asked) sheets() template.HTML {
	doc, err := a.desk.laid(a.ctx, a.Request, a.text)
	if err != nil {
		return fill("fault", []Fault{{Text: noSheets.With(err.Error())}})
	}
	out := lists.Map(doc.Pages, func(p page.Page) thumb { return thumb{p.Number, sheetOf.With(p.Number, len(doc.Pages), p.Name)} })
	return fill("sheets", out)
}
