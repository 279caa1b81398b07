package render

import (
	"cmp"
	"math"
	"slices"

	"rodsheet/geometry"
	"rodsheet/geometry/lists"
	"rodsheet/geometry/measure"
	"rodsheet/render/pack"
	"rodsheet/render/page"
	"rodsheet/templates"
)

// A Plan says what stands where on which sheet.
type Plan struct {
	layout   Layout
	name     string
	sheets   []sheet
	sections []laidSection
}

// A sheet is one page of a plan.
type sheet struct {
	title  string
	part   string // the heading of its section; empty where there is but one
	milled bool   // it hangs on the sizes as milled
	blocks []placed
	layout Layout // of this sheet: its paper may stand on its side
}

// A Placement is one template, or one tile of it, on one sheet.
type Placement struct {
	Sheet       int // from 1
	Template    string
	Row, Column int             // of the tile, from 1: rows from the top, columns from the left
	ToPage      geometry.Affine // with the correction of the printer
}

// Lay puts the sections of a job on sheets in order, each beginning a sheet of
// its own, and numbers the sheets through. The calibration square is on the
// first, and the first of several sections lists the sheets of all. The title
// is that of a layout that has none.
//
// It returns a *measure.BoundError where the layout leaves no room, or where
// the job needs more sheets than it allows.
func Lay(job templates.Job, l Layout) (Plan, error) {
	l.Title = cmp.Or(l.Title, job.Title)
	if err := l.Check(); err != nil {
		return Plan{}, err
	}
	l = l.inset()
	parts := partsOf(job)
	laids, errs := make([]laidSection, len(parts)), make([]error, len(parts))
	lists.Each(len(parts), func(i int) { laids[i], errs[i] = l.laySection(parts[i]) })
	if err := cmp.Or(errs...); err != nil {
		return Plan{}, err
	}
	p := Plan{layout: l, name: job.Name}
	for i, laid := range laids {
		p.add(parts[i].Section, laid)
	}
	if l.Paper.Whole {
		p.shrink()
	}
	if err := p.check(); err != nil {
		return Plan{}, err
	}
	p.number()
	return p, nil
}

// partsOf returns what is to be laid of a job. One without a section has its
// calibration square all the same.
func partsOf(job templates.Job) []part {
	job.Sections = slices.DeleteFunc(slices.Clone(job.Sections), templates.Section.Empty)
	parts := make([]part, max(1, len(job.Sections)))
	for i, s := range job.Sections {
		parts[i].Section = s
	}
	parts[0].first = true
	drawn := func(p part) bool { return len(p.Drawings) > 0 }
	if i := slices.IndexFunc(parts, drawn); i >= 0 {
		parts[i].told = true
	}
	if len(parts) > 1 {
		parts[0].added = []deferredWords{contents(job.Sections)}
	} else {
		parts[0].Heading = "" // there is nothing to tell it from
	}
	parts[len(parts)-1].notes = job.Warnings
	return parts
}

func (p *Plan) add(of templates.Section, laid laidSection) {
	title := p.layout.Title
	if of.Heading != "" {
		title += ": " + of.Heading
	}
	for _, s := range laid.sheets {
		blocks := lists.Flat(s.Placed, func(q pack.Placed) []placed { return placed{laid.items[q.Item][q.Shape], q.At}.all() })
		p.sheets = append(p.sheets, sheet{title, of.Heading, of.Milled, blocks, p.layout.of(s.Turned)})
	}
	p.sections = append(p.sections, laid)
}

// number puts the numbers of the sheets in the words that speak of them.
func (p *Plan) number() {
	n := numbers{tiles: p.tileSheets()}
	first := 1
	for _, j := range p.sections {
		n.sections = append(n.sections, [2]int{first, first + len(j.sheets) - 1})
		first += len(j.sheets)
	}
	for _, j := range p.sections {
		for _, p := range j.deferred {
			p.set(n)
		}
	}
}

// of returns the layout of one sheet of l.
func (l Layout) of(turned bool) Layout {
	if turned {
		return l.onSide()
	}
	return l
}

// check refuses a plan of too many sheets, of one whole page too large, or of
// sheets asked for that it does not have.
func (p Plan) check() error {
	if err := measure.AtMost("job.sheets", measure.Number(float64(len(p.sheets))), "",
		measure.Number(float64(p.layout.MaxSheets)), "paper.larger"); err != nil {
		return err
	}
	for _, n := range p.layout.Only {
		sheet, last := measure.Number(float64(n)), measure.Number(float64(len(p.sheets)))
		if err := cmp.Or(
			measure.AtLeast("sheet", sheet, "", measure.Number(1), "sheet.first"),
			measure.AtMost("sheet", sheet, "sheet.last", last, ""),
		); err != nil {
			return err
		}
	}
	side := math.Max(p.layout.Paper.Width, p.layout.Paper.Height)
	return measure.AtMost("page", measure.Length(side), "page.longest", measure.Length(wholeLimit),
		"paper.named")
}

// wholeSize returns the clear part of a page that is to hold all drawings: as
// wide as its widest drawing or as a square of the same area, and as high as
// need be.
func wholeSize(drawings []templates.Drawing, u measure.Unit) geometry.Point {
	widest, area := calibrationSide(u), 0.0
	for _, d := range drawings {
		b := d.Bounds().Offset(room)
		widest = math.Max(widest, b.Width()+gap)
		area += (b.Width() + gap) * (b.Height() + gap)
	}
	least := ruleLength + 18 + footText
	return geometry.Pt(math.Max(math.Max(widest, least), math.Sqrt(area)), 1e6)
}

// shrink fits a whole paper round what stands on its fullest sheet.
func (p *Plan) shrink() {
	var used geometry.Point
	for _, s := range p.sheets {
		for _, b := range s.blocks {
			used.X = math.Max(used.X, b.at.X+b.size.X)
			used.Y = math.Max(used.Y, b.at.Y+b.size.Y)
		}
	}
	l := &p.layout
	used.X = math.Max(used.X, ruleLength+18+footText)
	used.Y = math.Max(used.Y, ruleLength+2)
	l.Paper = Paper{Name: "whole", Width: used.X + 2*l.Margin + railWidth, Height: used.Y + 2*l.Margin + l.footHeight()}
	wider := l.Correct.reach(l.Paper, l.Margin)
	l.Margin += wider
	l.Paper.Width += 2 * wider
	l.Paper.Height += 2 * wider
	for i := range p.sheets {
		p.sheets[i].layout = *l
	}
}

func (p Plan) drawn(i int) bool {
	return (len(p.layout.Only) == 0 || slices.Contains(p.layout.Only, i+1)) && (!p.layout.Milled || p.sheets[i].milled)
}

// Count returns the number of sheets of the whole job, drawn or not.
func (p Plan) Count() int { return len(p.sheets) }

// Placements lists the templates sheet by sheet, of the sheets that are drawn.
func (p Plan) Placements() []Placement {
	var out []Placement
	for i, s := range p.sheets {
		if !p.drawn(i) {
			continue
		}
		correct := p.layout.Correct.on(s.layout.Paper.Width, s.layout.Paper.Height)
		for _, b := range s.blocks {
			if b.tile != nil {
				out = append(out, Placement{i + 1, b.tile.Name, b.tile.row, b.tile.col, b.tile.toPage(s.corner(b)).Then(correct)})
			}
		}
	}
	return out
}

func (s sheet) corner(b placed) geometry.Point {
	l := s.layout
	top := l.Paper.Height - l.Margin - b.at.Y
	return geometry.Pt(l.Margin+railWidth+b.at.X, top-b.tile.window.Height())
}

// Document draws the sheets: all of them, or those that are asked for, which
// come out as they do among all.
func (p Plan) Document() page.Document {
	doc := page.Document{Title: p.layout.Title, Subject: p.name, Lines: lines()}
	var drawn []int
	for i := range p.sheets {
		if p.drawn(i) {
			drawn = append(drawn, i)
		}
	}
	where := p.tileSheets()
	doc.Pages = make([]page.Page, len(drawn))
	lists.Each(len(drawn), func(k int) { doc.Pages[k] = p.layout.Correct.apply(p.sheet(drawn[k], where)) })
	part := ""
	for k, i := range drawn {
		if s := p.sheets[i]; s.part != part {
			part = s.part
			doc.Pages[k].Part = part
		}
	}
	return doc
}
