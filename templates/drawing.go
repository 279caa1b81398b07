// Package templates says what each full-size drawing holds and what it means:
// which line is cut and which is folded, what every line is called, and the
// figures that go with it. One file holds one kind of template. The package
// knows neither paper nor file formats.
package templates

import (
	"math"
	"slices"

	"rodsheet/geometry"
	"rodsheet/geometry/lists"
	"rodsheet/geometry/measure"
)

// A Role is the meaning of a stroke. How it looks is render's affair.
type Role uint8

const (
	Cut          Role = iota // cut, or knifed, to this line
	Outline                  // an edge of the stock
	Fold                     // an arris over which the paper is folded
	Hidden                   // an edge behind the face shown
	Centre                   // a centre line
	Construction             // dimension lines, leaders, set-out marks
	Waste                    // hatching of what is cut away
)

// A Stroke is an open polyline with a meaning, in template millimetres, y up.
type Stroke struct {
	Role   Role
	Points []geometry.Point
}

// A Label is lettering that speaks of a line or, where both ends of On are the
// same, of a point. It is set near On, clear of every line but hatching; a
// LabelPoint of a line is repeated on each sheet that shows enough of the line.
type Label struct {
	ID   measure.ID // of what it says: "centre-line"
	Text string
	On   geometry.Segment
	Big  bool // the larger of the two letter heights
}

// A Tag is what a label says, and its identity.
type Tag struct {
	ID   measure.ID
	Text string
}

// A Hand says which of two mirror images a drawing shows.
type Hand uint8

const (
	EitherHand Hand = iota // it is its own mirror image, or serves both
	RightHand
	LeftHand
)

// Other returns the mirrored hand.
func (h Hand) Other() Hand {
	switch h {
	case RightHand:
		return LeftHand
	case LeftHand:
		return RightHand
	}
	return EitherHand
}

// A View tells a drawing from all others of a job.
type View struct {
	Part, Face measure.ID // "lap", "cut-face"
	Hand       Hand
	Size       string // of the design that it is for; empty where there is one or all share it
}

// A Drawing is one template at full size.
type Drawing struct {
	View    View
	Also    View   // another that it shows as well; zero: none
	Name    string // the view in words: "lap, right hand, cut face"
	Strokes []Stroke
	Labels  []Label
	Free    bool // may be turned by any angle on a sheet, not by quarters only
	Upright bool // stands as it is drawn, on a sheet as it is: neither is turned
	Proof   bool // proves a printer: how true it is is measured, not judged
}

// A Figure is one worked-out size with the name a maker calls it by.
type Figure struct {
	ID    measure.ID
	Name  string
	Value measure.Quantity
	Aside bool // for programs only: it goes by a length that is round in another unit
}

// A Panel is a block of words or figures printed beside the drawings.
type Panel struct {
	Heading string
	Table   [][]string // rows of cells; a row of one cell runs across; may be empty
	Text    []string   // paragraphs after the table
	// Ruled takes the whole width of a sheet and draws a line under every row
	// of the table and between its columns, the first row being its head: there
	// is room to write in, and an empty cell asks for it.
	Ruled bool
	// Of is the drawing or picture whose figures these are: they stand on its sheet where
	// that holds both, else on one that follows. Zero: of none.
	Of View
	// Near is the drawing or picture that they stand with where that takes no sheet more.
	Near View
	// Under says that a row of one cell below a row of several has the words of
	// that row and stays on its sheet. All others are headings and stay with
	// the row that follows.
	Under bool
}

// A Picture is a view of the whole piece, to look at and not to work from. It
// is drawn to a round scale that is stated, or without one where none means
// anything, as in a view from a corner.
type Picture struct {
	Heading string
	View    View   // what it sets out, where a card calls for that; else zero
	Areas   []Area // full-size millimetres, y up, as all that follows
	Strokes []Stroke
	Arrows  []Arrow
	Spans   []Span
	Labels  []Label
	NoScale bool
	Wide    bool // takes the width of a sheet
}

// A Section is what belongs together in a job: it begins a sheet of its own and
// stays on consecutive sheets. The heading of the only one is not printed.
type Section struct {
	ID       measure.ID
	Heading  string
	Milled   bool // it hangs on the sizes as milled: printed again once these are known
	Pictures []Picture
	Cards    []Card
	Drawings []Drawing
	Panels   []Panel
}

// Empty reports whether the section would print nothing.
func (s Section) Empty() bool {
	return len(s.Pictures) == 0 && len(s.Cards) == 0 && len(s.Drawings) == 0 && len(s.Panels) == 0
}

// Append puts what t holds behind what s holds.
func (s *Section) Append(t Section) {
	s.Pictures = append(s.Pictures, t.Pictures...)
	s.Cards = append(s.Cards, t.Cards...)
	s.Drawings = append(s.Drawings, t.Drawings...)
	s.Panels = append(s.Panels, t.Panels...)
}

// A Job is all that one command prints.
type Job struct {
	Name     string // short, fit for a file name: "lap-60"
	Title    string
	Sections []Section
	Figures  []Figure
	Warnings []string // printed behind the last section
}

// Drawings returns those of all sections.
func (j Job) Drawings() []Drawing {
	return lists.Flat(j.Sections, func(s Section) []Drawing { return s.Drawings })
}

// A Setting is what a template must know of the world outside it.
type Setting struct {
	Unit measure.Unit
	// Clear is the width and height in mm that one sheet offers the strokes
	// of a drawing; room for labels round them is already taken off.
	Clear geometry.Point
	// Full draws everything at full size: both hands of all, every view, the
	// whole outline.
	Full bool
	// Proved is set where the calibration square stands on a sheet before.
	Proved bool
}

// holds reports whether a sheet holds what is so large, either way round.
func (s Setting) holds(r geometry.Rect) bool {
	return math.Min(r.Width(), r.Height()) <= math.Min(s.Clear.X, s.Clear.Y) && math.Max(r.Width(), r.Height()) <= math.Max(s.Clear.X, s.Clear.Y)
}

func (s Setting) length(mm float64) string { return measure.Length(mm).Text(s.Unit) }

// Bounds returns the box round all strokes.
func (d Drawing) Bounds() geometry.Rect { return bounds(d.Strokes).Rect }

// Bounds returns the box round all that is drawn but lettering.
func (p Picture) Bounds() geometry.Rect {
	box := bounds(p.Strokes)
	for _, a := range p.Areas {
		box.add(a.Points)
	}
	for _, a := range p.Arrows {
		box.add(a.Points)
	}
	for _, s := range p.Spans {
		box.add([]geometry.Point{s.A, s.B, s.A.Add(s.Away), s.B.Add(s.Away)})
	}
	return box.Rect
}

// Lettering returns the labels and the figures of the spans, each on its line.
func (p Picture) Lettering() []Label {
	out := slices.Clone(p.Labels)
	for _, s := range p.Spans {
		out = append(out, Label{ID: s.ID, Text: s.Text, On: s.Segment})
	}
	return out
}

// Span adds a distance with its figure.
func (p *Picture) Span(a, b, away geometry.Point, t Tag) {
	p.Spans = append(p.Spans, Span{ID: t.ID, Text: t.Text, Segment: geometry.Segment{A: a, B: b}, Away: away})
}

// An extent is the box round all points added so far.
type extent struct {
	geometry.Rect
	any bool
}

func (e *extent) add(points []geometry.Point) {
	own := geometry.Bounds(points...)
	switch {
	case len(points) == 0:
	case e.any:
		e.Rect = e.Union(own)
	default:
		e.Rect, e.any = own, true
	}
}

func bounds(strokes []Stroke) (box extent) {
	for _, s := range strokes {
		box.add(s.Points)
	}
	return box
}

// Line adds an open polyline.
func (d *Drawing) Line(role Role, points ...geometry.Point) {
	d.Strokes = append(d.Strokes, Stroke{role, points})
}

// Polygon adds a closed outline.
func (d *Drawing) Polygon(role Role, corners ...geometry.Point) {
	d.Line(role, geometry.Closed(corners)...)
}

// LabelPoint names a point.
func (d *Drawing) LabelPoint(at geometry.Point, t Tag) { d.LabelLine(at, at, t) }

// LabelLine names a line.
func (d *Drawing) LabelLine(a, b geometry.Point, t Tag) {
	d.Labels = append(d.Labels, Label{ID: t.ID, Text: t.Text, On: geometry.Segment{A: a, B: b}})
}

// Named draws a line and names it.
func (d *Drawing) Named(role Role, a, b geometry.Point, t Tag) {
	d.Line(role, a, b)
	d.LabelLine(a, b, t)
}

// LabelLine names a line of a picture or, where both ends are the same, a point.
func (p *Picture) LabelLine(a, b geometry.Point, t Tag) {
	p.Labels = append(p.Labels, Label{ID: t.ID, Text: t.Text, On: geometry.Segment{A: a, B: b}})
}

// Add puts everything of o into d.
func (d *Drawing) Add(o Drawing) {
	d.Strokes = append(d.Strokes, o.Strokes...)
	d.Labels = append(d.Labels, o.Labels...)
}

// Moved returns d with every point taken through m. Its lettering is not
// mirrored: labels hold places, not shapes.
func (d Drawing) Moved(m geometry.Affine) Drawing {
	out := Drawing{View: d.View, Also: d.Also, Name: d.Name}
	for _, s := range d.Strokes {
		out.Line(s.Role, m.ApplyAll(s.Points)...)
	}
	for _, l := range d.Labels {
		l.On = geometry.Segment{A: m.Apply(l.On.A), B: m.Apply(l.On.B)}
		out.Labels = append(out.Labels, l)
	}
	return out
}

// Of returns d as that of a view, under a name.
func (d Drawing) Of(v View, name string) Drawing {
	d.View, d.Name = v, name
	return d
}

// of returns d as that of a view of a single template.
func (d Drawing) of(v View) Drawing { return d.Of(v, viewName(v)) }

// hands returns d, which shows hand of the view, and its mirror image.
func (d Drawing) hands(v View, hand Hand) []Drawing {
	v.Hand = hand
	mirror := v
	mirror.Hand = hand.Other()
	return []Drawing{d.of(v), d.Moved(geometry.MirrorX()).of(mirror)}
}

// Hatch fills a polygon with waste hatching.
func (d *Drawing) Hatch(polygon ...geometry.Point) {
	for _, s := range geometry.Hatch(polygon, math.Pi/4, hatchStep) {
		d.Line(Waste, s.A, s.B)
	}
}

// Span draws a dimension line beside a and b, to the left on the way from a
// to b, and names it.
func (d *Drawing) Span(a, b geometry.Point, t Tag) {
	along := b.Sub(a).Unit()
	out := along.Perp().Mul(offset)
	p, q := a.Add(out), b.Add(out)
	d.Line(Construction, p, q)
	for _, end := range [2]geometry.Point{p, q} {
		slant := along.Add(along.Perp()).Mul(tick)
		d.Line(Construction, end.Sub(slant), end.Add(slant))
	}
	for _, s := range [2]geometry.Segment{{A: a, B: p}, {A: b, B: q}} {
		d.Line(Construction, s.A.Lerp(s.B, 0.2), s.B)
	}
	d.LabelLine(p, q, t)
}

// figureTable returns figures as rows of name and value.
func figureTable(figures []Figure, u measure.Unit) [][]string {
	var rows [][]string
	for _, f := range figures {
		if !f.Aside {
			rows = append(rows, []string{f.Name, f.Value.Text(u)})
		}
	}
	return rows
}
