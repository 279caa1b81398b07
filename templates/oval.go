package templates

import (
	"math"

	"rodsheet/geometry"
	"rodsheet/geometry/joint"
	"rodsheet/geometry/measure"
)

// Oval returns one quarter of an oval as a template, which serves all four, or the whole
// outline where one sheet holds it and in a full setting; its figures, and what strikes
// it without paper. The error is a *measure.BoundError.
func Oval(o joint.Oval, s Setting) (Job, error) {
	if err := o.Check(); err != nil {
		return Job{}, err
	}
	t := ovalTemplate{o, s}
	figures := t.figures()
	full := s.Full || s.holds(geometry.Box(0, 0, o.Length, o.Width))
	section := Section{
		Pictures: []Picture{t.plan()},
		Drawings: []Drawing{t.quarter()},
		Panels: []Panel{
			{Heading: say(ovalHeading), Table: figureTable(figures, s.Unit)},
			battenPanel(o, o.Length/2, ovalOffsetsHead(), ovalOffsetsWords(), s.Unit),
			{Heading: say(strikeHeading), Text: t.work(full)},
			curveCaution(),
		},
	}
	if full {
		section.Drawings = []Drawing{t.whole()}
	}
	return Job{
		Name:     "oval",
		Title:    t.title(),
		Sections: []Section{section},
		Figures:  figures,
	}, nil
}

// An ovalTemplate is an oval about to be drawn.
type ovalTemplate struct {
	joint.Oval
	Setting
}

func (t ovalTemplate) figures() []Figure {
	out := []Figure{
		figure("oval.length", measure.Length(t.Length)),
		figure("oval.width", measure.Length(t.Width)),
		figure("oval.area", measure.Area(t.Area())),
		figure("oval.rim", measure.Length(t.Perimeter())),
		figure("oval.end-radius", measure.Length(t.AtEnd())),
		figure("oval.side-radius", measure.Length(t.AtSide())),
	}
	if t.Ellipse() {
		out = append(out,
			figure("oval.focus", measure.Length(t.Focus())),
			figure("oval.string", measure.Length(2*t.Focus()+t.Length)),
		)
	} else {
		end, side := t.Centres()
		join := t.Join()
		out = append(out,
			figure("oval.end-centre", measure.Length(end.X)),
			figure("oval.side-centre", measure.Length(-side.Y)),
			figure("oval.join-angle", measure.Angle(t.JoinAngle())),
			figure("oval.join-along", measure.Length(join.X)),
			figure("oval.join-across", measure.Length(join.Y)),
		)
	}
	if t.Inset > 0 {
		out = append(out,
			figure("oval.inset", measure.Length(t.Inset)),
			figure("oval.inset-length", measure.Length(t.Length-2*t.Inset)),
			figure("oval.inset-width", measure.Length(t.Width-2*t.Inset)),
			figure("oval.inset-rim", measure.Length(t.Perimeter()-2*math.Pi*t.Inset)),
			figure("oval.inset-area", measure.Area(t.InsetArea())),
		)
	}
	return out
}

// quarter draws the upper right quarter and, at both its ends, the centre line that it
// begins on. Drawn to the middle they would only keep a sheet that holds nothing else.
func (t ovalTemplate) quarter() Drawing {
	d := Drawing{Free: true}.of(View{Part: "oval", Face: "quarter"})
	d.Line(Cut, t.Quarter(0)...)
	const most = 80.0
	for _, end := range []struct {
		at geometry.Point
		id measure.ID
	}{
		{geometry.Pt(t.Length/2, 0), "long-centre-line"},
		{geometry.Pt(0, t.Width/2), "short-centre-line"},
	} {
		in := end.at.Sub(end.at.Unit().Mul(math.Min(most, end.at.Norm())))
		d.Named(Centre, end.at, in, tag(end.id, t.length(end.at.Norm())))
	}
	if t.Inset > 0 {
		t.inset(&d, t.Quarter(t.Inset))
	}
	t.marked(&d)
	return d
}

// whole draws all of the outline and the ends of both centre lines.
func (t ovalTemplate) whole() Drawing {
	d := Drawing{Free: true}.of(View{Part: "oval", Face: "outline"})
	d.Polygon(Cut, t.Outline(0)...)
	a, b := t.Length/2, t.Width/2
	d.centreEnds(geometry.Pt(-a, 0), geometry.Pt(a, 0))
	d.centreEnds(geometry.Pt(0, -b), geometry.Pt(0, b))
	if t.Inset > 0 {
		t.inset(&d, geometry.Closed(t.Outline(t.Inset)))
	}
	t.marked(&d)
	return d
}

// inset draws the line parallel to the rim.
func (t ovalTemplate) inset(d *Drawing, line []geometry.Point) {
	d.Line(Construction, line...)
	d.LabelPoint(line[len(line)/8], tag("inset", t.length(t.Inset)))
}

// marked marks the offsets of the upper right quarter and, of four centres, the join of
// its arcs, on the line from the end centre; it names both arcs.
func (t ovalTemplate) marked(d *Drawing) {
	long := math.Min(stripWidth(t.Unit)/4, t.Width/12)
	for _, p := range t.marks() {
		d.battenMark(p, p.Sub(p.Unit().Mul(long)), t.Unit)
	}
	if t.Ellipse() {
		return
	}
	end, side := t.Centres()
	at := t.JoinAngle()
	from := end.Add(geometry.Polar(math.Max(0, t.EndRadius-2*stripWidth(t.Unit)), at))
	d.Named(Construction, from, t.Join(), tag("join-line", angleText(at)))
	d.LabelPoint(end.Add(geometry.Polar(t.EndRadius, at/2)), tag("radius", t.length(t.EndRadius)))
	d.LabelPoint(side.Add(geometry.Polar(t.AtSide(), (at+math.Pi/2)/2)), tag("radius", t.length(t.AtSide())))
}

// marks returns the offsets between the ends of both axes.
func (t ovalTemplate) marks() []geometry.Point {
	all := joint.Offsets(t, t.Length/2, battenStep(t.Length/2, t.Unit))
	return all[1 : len(all)-1]
}

// plan shows the whole, and what strikes it: the foci with the string to the end of the
// short axis, or of four centres those of the upper half, on the
// lines to its joins.
func (t ovalTemplate) plan() Picture {
	a, b := t.Length/2, t.Width/2
	p := Picture{Heading: say(topPlanHeading), Strokes: []Stroke{
		{Cut, geometry.Closed(t.Outline(0))},
		{Centre, []geometry.Point{geometry.Pt(-a, 0), geometry.Pt(a, 0)}},
		{Centre, []geometry.Point{geometry.Pt(0, -b), geometry.Pt(0, b)}},
	}}
	point := func(at geometry.Point, id measure.ID) { p.LabelLine(at, at, tag(id)) }
	line := func(points ...geometry.Point) { p.Strokes = append(p.Strokes, Stroke{Construction, points}) }
	if t.Inset > 0 {
		line(geometry.Closed(t.Outline(t.Inset))...)
	}
	if t.Ellipse() {
		left, right := geometry.Pt(-t.Focus(), 0), geometry.Pt(t.Focus(), 0)
		line(left, geometry.Pt(0, b), right)
		point(left, "focus")
		point(right, "focus")
		return p
	}
	end, side := t.Centres()
	join := t.Join()
	line(geometry.Pt(-join.X, join.Y), side, join)
	point(side, "side-centre")
	point(end, "end-centre")
	point(end.Mul(-1), "end-centre")
	return p
}
