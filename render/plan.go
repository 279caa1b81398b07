package render

import (
	"fmt"
	"math"

	"rodsheet/geometry"
	"rodsheet/geometry/measure"
	"rodsheet/render/page"
	"rodsheet/templates"
)

// A Plan says what stands where on which sheet.
type Plan struct {
	layout Layout
	name   string
	sheets []sheet
}

// A sheet is one page of a plan.
type sheet struct {
	title  string
	blocks []placed
}

// A Placement is one template, or one tile of it, on one sheet.
type Placement struct {
	Sheet       int // from 1
	Template    string
	Row, Column int             // of the tile, from 1: rows from the top, columns from the left
	ToPage      geometry.Affine // with the correction of the printer
}

// Lay puts a job on sheets. It returns a *measure.BoundError where the layout
// leaves no room, or where the job needs more sheets than it allows.
func Lay(job templates.Job, l Layout) (Plan, error) {
	if l.Title == "" {
		l.Title = job.Title
	}
	return LayPack(job.Name, []templates.Job{job}, l)
}

// LayPack puts several jobs on sheets in order, each beginning a sheet of its
// own, and numbers the sheets through. The calibration square is on the first.
func LayPack(name string, jobs []templates.Job, l Layout) (Plan, error) {
	if err := l.Check(); err != nil {
		return Plan{}, err
	}
	l = l.inset()
	p := Plan{layout: l, name: name}
	for i, job := range jobs {
		sheets, err := l.layJob(job, i == 0)
		if err != nil {
			return Plan{}, err
		}
		title := l.Title
		if len(jobs) > 1 {
			title += ": " + job.Title
		}
		for _, blocks := range sheets {
			p.sheets = append(p.sheets, sheet{title, blocks})
		}
	}
	if l.Paper.Whole {
		p.shrink()
	}
	return p, p.check()
}

// layJob packs one job, behind the calibration square where it comes first.
func (l Layout) layJob(job templates.Job, first bool) ([][]placed, error) {
	clear := l.clear()
	if l.Paper.Whole {
		clear = wholeSize(job)
	}
	laids, err := layDrawings(job.Drawings, l, clear)
	if err != nil {
		return nil, err
	}
	var items []item
	if first {
		items = append(items, item{lay(templates.Calibration(l.Unit), false, clear, l.Overlap).tiles()[0].block()})
	}
	items = append(items, drawingItems(job.Drawings, laids, clear, l.Overlap)...)
	for _, p := range panels(job, laids, l.Unit) {
		items = append(items, layPanel(p, columns(clear.X), clear)...)
	}
	return pack(items, clear), nil
}

// columns returns the widths of a column of words: half the sheet by
// preference, or what is left beside the calibration square.
func columns(clear float64) []float64 {
	half := (math.Min(clear, 190) - gap) / 2
	return []float64{half, math.Min(half, 62), math.Min(half, 50)}
}

// check refuses a plan of too many sheets, or of one whole page too large.
func (p Plan) check() error {
	if n := len(p.sheets); n > p.layout.MaxSheets {
		return tooMany(n, p.layout.MaxSheets)
	}
	side := math.Max(p.layout.Paper.Width, p.layout.Paper.Height)
	return measure.AtMost("page", measure.Length(side), "the longest side of a page", measure.Length(wholeLimit),
		"named paper cuts the drawing into tiles")
}

func tooMany(n, most int) error {
	return measure.AtMost("number of sheets", measure.Number(float64(n)), "", measure.Number(float64(most)),
		fmt.Sprintf("larger paper needs fewer; --max-sheets %d allows them", n))
}

// layDrawings turns and tiles every drawing with as few tiles as can be;
// upright wins between equals. It counts tiles before it makes any.
func layDrawings(drawings []templates.Drawing, l Layout, clear geometry.Point) ([]*laid, error) {
	step := 10.0
	if l.Unit == measure.Inch {
		step = measure.MillimetresPerInch / 2
	}
	var out []*laid
	sum := 0
	for _, d := range drawings {
		p, turned := lay(d, false, clear, l.Overlap), lay(d, true, clear, l.Overlap)
		if !d.Upright && turned.rows*turned.cols < p.rows*p.cols {
			p = turned
		}
		if n := p.rows * p.cols; n > 1 {
			sum += n
		}
		if sum > l.MaxSheets && p.tile.X > clear.X/2 {
			return nil, tooMany(sum, l.MaxSheets)
		}
		p.addCrosses(step)
		out = append(out, p)
	}
	for _, p := range out {
		p.register()
	}
	return out, nil
}

// drawingItems returns the blocks of every drawing; one of a single tile may
// be packed either way round.
func drawingItems(drawings []templates.Drawing, laids []*laid, clear geometry.Point, overlap float64) []item {
	var out []item
	for i, p := range laids {
		if p.rows*p.cols > 1 {
			for _, t := range p.tiles() {
				out = append(out, item{t.block()})
			}
			continue
		}
		var shapes item
		for _, turned := range []bool{false, true} {
			if turned && drawings[i].Upright {
				continue
			}
			if q := lay(drawings[i], turned, clear, overlap); q.rows*q.cols == 1 {
				shapes = append(shapes, q.tiles()[0].block())
			}
		}
		out = append(out, shapes)
	}
	return out
}

// panels returns the panels of the job and those the sheets add: how to tape
// up, and what was noticed.
func panels(job templates.Job, laids []*laid, u measure.Unit) []templates.Panel {
	out := append([]templates.Panel{}, job.Panels...)
	if p, ok := checkPanel(laids, u); ok {
		out = append(out, p)
	}
	if len(job.Warnings) > 0 {
		out = append(out, templates.Panel{Heading: "note", Text: job.Warnings})
	}
	return out
}

// checkPanel states the check lengths of every drawing of several tiles.
func checkPanel(laids []*laid, u measure.Unit) (templates.Panel, bool) {
	p := templates.Panel{
		Heading: "check lengths, after taping up",
		Text: []string{"Trim each sheet along the trim lines that say so, lay it on its neighbour so that the " +
			"halves of the registration marks meet, tape, then measure between the lettered crosses."},
	}
	for _, d := range laids {
		if len(d.crosses) == 0 {
			continue
		}
		a, b, c := d.crosses[0].at, d.crosses[1].at, d.crosses[2].at
		p.Table = append(p.Table, []string{d.Name})
		for _, way := range []struct {
			name string
			s    geometry.Segment
		}{
			{"A to B", geometry.Segment{A: a, B: b}},
			{"A to C", geometry.Segment{A: a, B: c}},
			{"B to C", geometry.Segment{A: b, B: c}},
		} {
			p.Table = append(p.Table, []string{way.name, bothUnits(way.s.Length(), u)})
		}
	}
	return p, len(p.Table) > 0
}

// bothUnits prints a length in mm and in inches, the job's own unit first.
func bothUnits(mm float64, u measure.Unit) string {
	q := measure.Length(mm)
	if u == measure.Inch {
		return q.Text(measure.Inch) + " = " + q.Text(measure.Millimetre)
	}
	return q.Text(measure.Millimetre) + " = " + q.Text(measure.Inch)
}

// wholeSize returns the clear part of a page that is to hold a whole job: as
// wide as its widest drawing or as a square of the same area, and as high as
// need be.
func wholeSize(job templates.Job) geometry.Point {
	widest, area := calibrationSide(), 0.0
	for _, d := range job.Drawings {
		b := d.Bounds().Grow(room)
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
}

// Placements lists the templates sheet by sheet.
func (p Plan) Placements() []Placement {
	var out []Placement
	correct := p.layout.Correct.on(p.layout.Paper.Width, p.layout.Paper.Height)
	for i, s := range p.sheets {
		for _, b := range s.blocks {
			if b.tile != nil {
				out = append(out, Placement{i + 1, b.tile.Name, b.tile.row, b.tile.col, b.tile.toPage(p.corner(b)).Then(correct)})
			}
		}
	}
	return out
}

// Paper returns the size of every sheet of the plan.
func (p Plan) Paper() Paper { return p.layout.Paper }

// corner returns the lower left corner of a tile's window on the page.
func (p Plan) corner(b placed) geometry.Point {
	top := p.layout.Paper.Height - p.layout.Margin - b.at.Y
	return geometry.Pt(p.layout.Margin+railWidth+b.at.X, top-b.tile.window.Height())
}

// Document draws every sheet.
func (p Plan) Document() page.Document {
	doc := page.Document{Title: p.layout.Title, Subject: p.name, Lines: lines()}
	where := p.tileSheets()
	for i := range p.sheets {
		doc.Pages = append(doc.Pages, p.layout.Correct.apply(p.sheet(i, where)))
	}
	return doc
}
