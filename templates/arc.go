package templates

import (
	"math"

	"rodsheet/geometry"
	"rodsheet/geometry/joint"
	"rodsheet/geometry/measure"
)

// Arc returns a template of an arc, its figures and what sets it out without paper. The
// template is a strip: a flat arc stands on its chord, so that both share a row of
// sheets, a bolder one is as wide all along. The error is a *measure.BoundError.
func Arc(b joint.CircularSegment, s Setting) (Job, error) {
	if err := b.Check(); err != nil {
		return Job{}, err
	}
	t := arcTemplate{b, s}
	figures := t.figures()
	return Job{
		Name:  "arc",
		Title: say(arcTitle, t.length(b.Chord), t.length(b.Rise)),
		Sections: []Section{{
			Drawings: []Drawing{t.drawing(s)},
			Panels: []Panel{
				{Heading: say(arcHeading), Table: figureTable(figures, s.Unit)},
				battenPanel(b, b.Chord/2, arcOffsetsHead(), arcOffsetsWords(), s.Unit),
				{Heading: say(strikeHeading), Text: t.work()},
				curveCaution(),
			},
		}},
		Figures: figures,
	}, nil
}

// An arcTemplate is an arc about to be drawn.
type arcTemplate struct {
	joint.CircularSegment
	Setting
}

func (t arcTemplate) figures() []Figure {
	return []Figure{
		figure("arc.chord", measure.Length(t.Chord)),
		figure("arc.rise", measure.Length(t.Rise)),
		figure("arc.radius", measure.Length(t.Radius())),
		figure("arc.angle", measure.Angle(t.Angle())),
		figure("arc.length", measure.Length(t.Length())),
		figure("arc.area", measure.Area(t.Area())),
		figure("arc.centre-below", measure.Length(t.CentreBelow())),
		figure("arc.sticks", measure.Angle(t.SticksAngle())),
	}
}

// drawing draws the strip, marked where the offsets stand.
func (t arcTemplate) drawing(s Setting) Drawing {
	wide := stripWidth(s.Unit)
	d := Drawing{Free: true}.of(View{Part: "arc"})
	d.Line(Cut, t.Points()...)
	if flat := t.Rise+wide <= math.Min(s.Clear.X, s.Clear.Y); flat {
		t.onChord(&d, wide)
	} else {
		t.along(&d, wide)
	}
	return d
}

// onChord draws what lies below a flat arc: its chord, the strip that carries it and
// the offsets up to the arc.
func (t arcTemplate) onChord(d *Drawing, wide float64) {
	half := t.Chord / 2
	left, right := geometry.Pt(-half, 0), geometry.Pt(half, 0)
	down := geometry.Pt(0, -wide)
	d.Line(Construction, left, right)
	d.Line(Outline, left, left.Add(down), right.Add(down), right)
	d.LabelLine(left, right, tag("chord", t.length(t.Chord)))
	d.Line(Centre, geometry.Pt(0, t.Rise), geometry.Pt(0, -wide))
	d.LabelLine(geometry.Pt(0, 0), geometry.Pt(0, t.Rise), tag("mid-chord", t.length(t.Rise)))
	for _, p := range t.marks() {
		d.battenMark(p, geometry.Pt(p.X, 0), t.Unit)
	}
}

// along draws what lies inside a bold arc: a line parallel to it, both ends of the
// chord and short marks of the offsets, all of them towards the centre.
func (t arcTemplate) along(d *Drawing, wide float64) {
	centre, half := geometry.Pt(0, -t.CentreBelow()), t.Chord/2
	inward := func(p geometry.Point, mm float64) geometry.Point { return p.Add(centre.Sub(p).Unit().Mul(mm)) }
	left, right := geometry.Pt(-half, 0), geometry.Pt(half, 0)
	d.Line(Outline, left, inward(left, wide))
	d.Line(Outline, t.Parallel(-wide)...)
	d.Line(Outline, right, inward(right, wide))
	crown := geometry.Pt(0, t.Rise)
	d.Named(Centre, crown, inward(crown, wide), tag("mid-chord", t.length(t.Rise)))
	for _, p := range t.marks() {
		d.battenMark(p, inward(p, wide/3), t.Unit)
	}
	for _, end := range []geometry.Point{left, right} {
		d.LabelLine(end, inward(end, wide), tag("chord-end", t.length(t.Chord)))
	}
}

// marks returns the offsets on both sides of the middle, but for the crown and the ends
// of the chord.
func (t arcTemplate) marks() []geometry.Point {
	right := joint.Offsets(t, t.Chord/2, battenStep(t.Chord/2, t.Unit))
	var out []geometry.Point
	for _, p := range right[1 : len(right)-1] {
		out = append(out, geometry.Pt(-p.X, p.Y), p)
	}
	return out
}
