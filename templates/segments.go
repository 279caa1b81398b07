package templates

import (
	"math"

	"rodsheet/geometry"
	"rodsheet/geometry/joint"
	"rodsheet/geometry/measure"
)

// Segments returns what a mitred ring is sawn by: one piece at full size, with the
// circles that it is rounded to, and the triangle of its ends. Of a piece that would not
// go on one sheet a full setting draws the whole; else its right half is drawn if it is
// round, and nothing if figures say all.
// The error is a *measure.BoundError.
func Segments(r joint.SegmentRing, s Setting) (Job, error) {
	if err := r.Check(); err != nil {
		return Job{}, err
	}
	t := segmentTemplate{r, s}
	figures := t.figures()
	var section Section
	switch d := t.piece(false); {
	case s.Full || t.holds(d.Bounds()):
		section.Drawings = []Drawing{d}
	case r.Round:
		section.Drawings = []Drawing{t.piece(true)}
	}
	section.Panels = []Panel{
		{Heading: say(figuresHeading), Table: figureTable(figures, s.Unit)},
		{Heading: say(sawHeading), Text: t.steps()},
		segmentsCaution(),
	}
	section.Append(bevelGauges([]bevel{{math.Pi/2 - r.OffSquare(), say(gaugeName)}}, s))
	return Job{Name: "segments", Title: t.title(), Sections: []Section{section}, Figures: figures}, nil
}

// A segmentTemplate is a mitred ring about to be drawn.
type segmentTemplate struct {
	joint.SegmentRing
	Setting
}

// roomOfNames is how wide the drawing of a piece is at least, mm: in less its names would
// stand on its lines, by tries in print from 3 to 20 pieces in both units.
const roomOfNames = 120

// piece is its own mirror image: the whole of it, or its right half.
func (t segmentTemplate) piece(half bool) Drawing {
	v, p := View{Part: "segment"}, t.Piece()
	outer, ring := tag("outer-side-long", t.length(t.OuterSide())), tag("ring-side-long", t.length(t.SegmentRing.RingSide()))
	ends := [][2]geometry.Point{{p[1], p[2]}, {p[3], p[0]}}
	if half {
		v.Face, p[0].X, p[3].X, ends = "right-half", 0, 0, ends[:1]
		outer, ring = tag("half-outer-side", t.length(t.OuterSide()/2)), tag("half-ring-side", t.length(t.SegmentRing.RingSide()/2))
	}
	d := Drawing{Free: true}.of(v)
	d.Line(Outline, p[0], p[1])
	d.Line(Outline, p[2], p[3])
	d.LabelLine(p[0], p[1], outer)
	d.LabelLine(p[3], p[2], ring)
	for _, end := range ends {
		d.Line(Cut, end[0], end[1])
	}
	d.LabelLine(p[1], p[2], tag("line-off-square", angleText(t.OffSquare()))) // the other is its mirror image
	if t.Round {
		outer, inner := t.Arcs(half)
		d.Line(Construction, outer...)
		d.Line(Construction, inner...)
		// Off the centre line, and to both sides of it where both are drawn.
		d.LabelPoint(outer[len(outer)/3], tag("rounded-to", t.length(t.Outer/2)))
		d.LabelPoint(inner[2*len(inner)/3], tag("rounded-to", t.length(t.Inner/2)))
	}
	if past := (roomOfNames - t.OuterSide()) / 2; past > 0 && !half { // the board runs on to both sides
		d.Line(Construction, p[0], p[0].Sub(geometry.Pt(past, 0)))
		d.Line(Construction, p[1], p[1].Add(geometry.Pt(past, 0)))
		d.Line(Construction, p[2], p[2].Add(geometry.Pt(past, 0)))
		d.Line(Construction, p[3], p[3].Sub(geometry.Pt(past, 0)))
	}
	foot, head := geometry.Pt(0, -offset/2), geometry.Pt(0, t.Board()+offset/2)
	d.Line(Centre, foot, head)
	if half {
		d.LabelLine(foot, head, tag("other-half"))
	}
	return d
}

func (t segmentTemplate) figures() []Figure {
	return []Figure{
		figure("segments.pieces", measure.Number(float64(t.Pieces))),
		figure("segments.outer", measure.Length(t.Outer)),
		figure("segments.inner", measure.Length(t.Inner)),
		figure("segments.off-square", measure.Angle(t.OffSquare())),
		figure("segments.bevel", measure.Angle(math.Pi/2-t.OffSquare())),
		figure("segments.outer-side", measure.Length(t.OuterSide())),
		figure("segments.ring-side", measure.Length(t.SegmentRing.RingSide())),
		figure("segments.board", measure.Length(t.Board())),
		figure("segments.stock", measure.Length(t.Stock())),
		figure("segments.kerf", measure.Length(t.Kerf)),
		figure("segments.opens", measure.Length(t.Opens(slipOfEnds))),
	}
}

// slipOfEnds is the error of an end by which a ring is judged, rad: what a careful
// setting of a saw leaves (common practice, no source).
const slipOfEnds = 0.1 * math.Pi / 180

// Staves returns what the staves of a vessel are sawn by: their edges by two points,
// or in a full setting by an outline, and the triangle of the blade. The error is a
// *measure.BoundError.
func Staves(v joint.Staves, s Setting) (Job, error) {
	if err := v.Check(); err != nil {
		return Job{}, err
	}
	t := staveTemplate{v, s}
	figures := t.figures()
	var section Section
	switch {
	case s.Full:
		section.Drawings = []Drawing{t.outline()}
	case v.Wide() > v.Narrow():
		section.Pictures = []Picture{t.line().Picture(say(taperPointsHeading), s.Unit)}
	}
	section.Panels = []Panel{
		{Heading: say(figuresHeading), Table: figureTable(figures, s.Unit)},
		{Heading: say(sawHeading), Text: t.steps()},
		t.caution(),
	}
	section.Append(bevelGauges([]bevel{{math.Pi/2 - v.EdgeTilt(), say(bladeName)}}, s))
	return Job{Name: "staves", Title: t.title(), Sections: []Section{section}, Figures: figures}, nil
}

// A staveTemplate is a stave about to be drawn.
type staveTemplate struct {
	joint.Staves
	Setting
}

// line is either edge by its two points, the narrow end to the right.
func (t staveTemplate) line() PointedLine {
	return PointedLine{AtEnd: (t.Wide() - t.Narrow()) / 2, Run: t.Long(), Across: t.Wide(), Edge: tag("either-edge"), End: tag("narrow-end")}
}

// outline is the outer side, its own mirror image.
func (t staveTemplate) outline() Drawing {
	d := Drawing{Free: true}.of(View{Part: "stave", Face: "outer-side"})
	p := t.Stave()
	d.Polygon(Cut, p...)
	d.LabelLine(p[3], p[0], tag("wide-end", t.length(t.Wide())))
	d.LabelLine(p[1], p[2], tag("narrow-end-wide", t.length(t.Narrow())))
	for _, edge := range [][2]geometry.Point{{p[0], p[1]}, {p[3], p[2]}} {
		d.LabelLine(edge[0], edge[1], tag("edge-tilted", angleText(t.EdgeTilt())))
	}
	a, b := geometry.Pt(-offset, 0), geometry.Pt(t.Long()+offset, 0)
	d.Named(Centre, a, b, tag("centre-line"))
	return d
}

func (t staveTemplate) figures() []Figure {
	out := []Figure{
		figure("staves.pieces", measure.Number(float64(t.Pieces))),
		figure("staves.top", measure.Length(t.Top)),
		figure("staves.bottom", measure.Length(t.Bottom)),
		figure("staves.height", measure.Length(t.Height)),
		figure("staves.thickness", measure.Length(t.Thickness)),
		figure("staves.tilt", measure.Angle(t.EdgeTilt())),
		figure("staves.blade", measure.Angle(math.Pi/2-t.EdgeTilt())),
		figure("staves.long", measure.Length(t.Long())),
		figure("staves.wide", measure.Length(t.Wide())),
	}
	if t.Wide() > t.Narrow() {
		out = append(out,
			figure("staves.narrow", measure.Length(t.Narrow())),
			figure("staves.to-edge", measure.Angle(t.ToEdge())),
			figure("staves.ends", measure.Angle(math.Pi/2-t.Corner().Slope)),
		)
	}
	return append(out,
		figure("staves.hollow", measure.Length(t.Hollow())),
		figure("staves.inside", measure.Length(t.Inside())),
	)
}
