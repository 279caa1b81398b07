package templates

import (
	"math"

	"rodsheet/geometry"
	"rodsheet/geometry/joint"
	"rodsheet/geometry/measure"
)

// Taper returns how a tapered leg is set out by two points, which is truer than any
// paper, or in a full setting its templates. One face, and two adjacent ones, have a right and a left hand; opposite tapers are their own mirror
// image and have one drawing. The error is a *measure.BoundError.
//
// Right hand: with the straight edge towards the reader the foot lies to the
// right.
func Taper(t joint.Taper, s Setting) (Job, error) {
	if err := t.Check(); err != nil {
		return Job{}, err
	}
	leg := taperTemplate{t, s}
	section := Section{Pictures: []Picture{leg.line().Picture(say(taperPointsHeading), s.Unit)}}
	if s.Full {
		section = Section{Drawings: leg.drawings()}
	}
	section.Panels = []Panel{
		{Heading: say(taperHeading), Table: figureTable(leg.figures(), s.Unit)},
		leg.offsets(),
		{Heading: say(cutsHeading), Text: leg.cuts()},
		leg.bevels(),
		taperCaution(),
	}
	return Job{
		Name:     "taper-" + t.Faces.String(),
		Title:    say(taperTitle, leg.faces(), leg.length(t.Top), leg.length(t.Foot), leg.length(t.Run())),
		Sections: []Section{section},
		Figures:  leg.figures(),
	}, nil
}

// A taperTemplate is a taper about to be drawn.
type taperTemplate struct {
	joint.Taper
	Setting
}

// line is the taper by its two points: counted from the straight edge or, where both
// edges are cut, from that of the blank that it is cut out of.
func (t taperTemplate) line() PointedLine {
	l := PointedLine{AtEnd: t.Foot, AtRun: t.Top, Run: t.Run(), Across: t.Top, Edge: t.referenceEdge(), End: tag("foot-end"), Far: tag("start")}
	if t.Faces.Symmetric() {
		l.AtEnd, l.AtRun, l.Edge = t.Loss(), 0, tag("either-edge")
	}
	return l
}

func (t taperTemplate) drawings() []Drawing {
	v := View{Part: "taper", Face: "face"}
	if t.Faces.Symmetric() {
		return []Drawing{t.drawing().of(v)}
	}
	return t.drawing().hands(v, RightHand)
}

func (t taperTemplate) drawing() Drawing {
	var d Drawing
	d.Polygon(Outline, t.Blank()...)
	for _, c := range t.Cuts() {
		d.Named(Cut, c.A, c.B, tag("cut-line-to-edge", angleText(t.ToEdge())))
	}
	for _, w := range t.Waste() {
		d.Hatch(w...)
		d.LabelPoint(w[0].Add(w[1]).Add(w[2]).Mul(1.0/3), tag("waste"))
	}
	t.ends(&d)
	t.start(&d)
	t.grain(&d)
	if mid := t.Top / 2; t.Faces.Symmetric() {
		a, b := geometry.Pt(-offset, mid), geometry.Pt(t.Length+offset, mid)
		d.Named(Centre, a, b, tag("centre-line"))
	}
	d.LabelLine(geometry.Pt(0, 0), geometry.Pt(t.Length, 0), t.line().Edge)
	return d
}

// ends names the widths at top and foot.
func (t taperTemplate) ends(d *Drawing) {
	d.LabelLine(geometry.Pt(0, 0), geometry.Pt(0, t.Top), tag("width-at-top", t.length(t.Top)))
	lo, hi := t.Edges(t.Length)
	d.LabelLine(geometry.Pt(t.Length, lo), geometry.Pt(t.Length, hi), tag("width-at-foot", t.length(t.Foot)))
}

// start marks where the taper begins, square across the blank.
func (t taperTemplate) start(d *Drawing) {
	a, b := geometry.Pt(t.Start, -tick), geometry.Pt(t.Start, t.Top+tick)
	d.Named(Construction, a, b, t.startTag())
}

// startTag says where the taper begins.
func (t taperTemplate) startTag() Tag {
	if t.Start > 0 {
		return tag("start-from-top", t.length(t.Start))
	}
	return tag("start-at-top")
}

// grain draws an arrow along the grain, in the wood that stays and clear of
// the centre line: a quarter of the foot above its lower edge.
func (t taperTemplate) grain(d *Drawing) {
	lo, hi := t.Edges(t.Length)
	y := lo + (hi-lo)/4
	long := math.Min(60, t.Length/3)
	tail := geometry.Pt((t.Length-long)/2, y)
	head := tail.Add(geometry.Pt(long, 0))
	barb := math.Min(4, (hi-lo)/5)
	d.Line(Construction, tail, head)
	d.Line(Construction, head.Add(geometry.Pt(-2*barb, barb/2)), head, head.Add(geometry.Pt(-2*barb, -barb/2)))
	d.LabelLine(tail, head, tag("grain"))
}

// figures returns what the taper comes to: of one face, and where two opposite
// faces are cut of both together, named as such.
func (t taperTemplate) figures() []Figure {
	const hundred, foot = 100, 12 * measure.MillimetresPerInch
	out := []Figure{
		figure("taper.length", measure.Length(t.Length)),
		figure("taper.top", measure.Length(t.Top)),
		figure("taper.foot", measure.Length(t.Foot)),
		figure("taper.start", measure.Length(t.Start)),
		figure("taper.run", measure.Length(t.Run())),
		figure("taper.loss", measure.Length(t.Loss())),
		figure("taper.to-edge", measure.Angle(t.ToEdge())),
		figureIn(measure.Millimetre, t.Unit, "taper.per-100-mm", measure.Length(t.LossOver(hundred))),
		figureIn(measure.Inch, t.Unit, "taper.per-foot", measure.Length(t.LossOver(foot))),
	}
	if t.Faces.Symmetric() {
		out = append(out,
			figure("taper.included", measure.Angle(t.Included())),
			figureIn(measure.Millimetre, t.Unit, "taper.both-per-100-mm", measure.Length(t.NarrowingOver(hundred))),
			figureIn(measure.Inch, t.Unit, "taper.both-per-foot", measure.Length(t.NarrowingOver(foot))),
		)
	}
	return append(out, figure("taper.cut", measure.Length(t.Cuts()[0].Length())))
}

// offsets is the table to set the cut out by rule. A symmetric leg is
// measured from its centre line and from both edges of the blank.
func (t taperTemplate) offsets() Panel {
	step := t.Unit.Round(50, 2)
	bare := func(mm float64) string { return measure.Length(mm).Bare(t.Unit) }
	table := [][]string{offsetsHead(t.Faces.Symmetric())}
	for _, x := range t.Stations(step) {
		row := []string{bare(x), bare(t.Width(x))}
		if t.Faces.Symmetric() {
			row = append(row, bare(t.Width(x)/2))
		}
		table = append(table, append(row, bare(t.Lost(x))))
	}
	return Panel{Heading: say(offsetsHeading, t.Unit.String()), Table: table}
}
