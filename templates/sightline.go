package templates

import (
	"cmp"
	"math"

	"rodsheet/geometry"
	"rodsheet/geometry/joint"
	"rodsheet/geometry/measure"
)

// Sightline returns what a leg with rake and splay is bored by: the sightline as it
// lies on the slab, for each hand, and the triangle of its resultant. A leg that leans
// along the edge or square to it has one drawing for both hands. A hole that is not said
// to be anywhere is drawn well inside the edge. The error is a
// *measure.BoundError.
//
// Right hand: with the edge that the legs lean out over towards the reader the foot
// stands out to the right.
func Sightline(l joint.Staked, s Setting) (Job, error) {
	if err := l.Check(); err != nil {
		return Job{}, err
	}
	l.In = cmp.Or(l.In, s.Unit.Round(60, 2.5))
	t := sightlineTemplate{l, s}
	figures := t.figures()
	section := Section{Pictures: []Picture{t.elevations()}, Drawings: t.sheets()}
	section.Panels = []Panel{
		{Heading: say(figuresHeading), Table: figureTable(figures, s.Unit)},
		t.boring(),
		boringCaution(),
	}
	section.Append(bevelGauges([]bevel{{math.Pi/2 - t.Resultant(), say(resultantName)}}, s))
	return Job{
		Name:     "sightline",
		Title:    say(sightlineTitle, angleText(t.Rake), angleText(t.Splay)),
		Sections: []Section{section},
		Figures:  figures,
	}, nil
}

// A sightlineTemplate is a sightline about to be drawn.
type sightlineTemplate struct {
	joint.Staked
	Setting
}

// sheets are the slab from above, for each hand that there is.
func (t sightlineTemplate) sheets() []Drawing {
	v := View{Part: "slab", Face: "sightline"}
	if t.hand() == EitherHand {
		return []Drawing{t.slab().of(v)}
	}
	return t.slab().hands(v, RightHand)
}

// hand is that of the drawing: a leg that leans square to the edge or along it has none.
func (t sightlineTemplate) hand() Hand {
	if line := t.Sightline(); line < 1e-9 || line > math.Pi/2-1e-9 {
		return EitherHand
	}
	return RightHand
}

// slab is the right hand. The edge lies along x, the fore-and-aft line through the
// centre of the hole along y; the foot stands out to the right and below.
func (t sightlineTemplate) slab() Drawing {
	var d Drawing
	half := t.Unit.Round(75, 3)
	centre := geometry.Pt(0, t.In)
	s, c := math.Sincos(t.Sightline())
	out := geometry.Pt(s, -c)
	left, right := geometry.Pt(-half, 0), geometry.Pt(half, 0)
	d.Line(Outline, left, right)
	edge, foot := tag("edge-of-slab"), tag("foot-leans")
	if t.hand() == EitherHand && t.Rake < t.Splay {
		edge, foot = tag("front-edge"), tag("foot-leans-along")
	}
	d.LabelLine(left, right, edge)

	inner, outer := centre.Sub(out.Mul(half)), centre.Add(out.Mul(half))
	d.Line(Cut, inner, outer)
	d.LabelLine(inner, centre, tag("sightline"))
	if head := outer.Sub(out.Mul(8)); foot.ID == "foot-leans" {
		d.Line(Construction, head.Add(out.Perp().Mul(2)), outer, head.Sub(out.Perp().Mul(2)))
	}
	d.LabelLine(centre, outer, foot)

	above := geometry.Pt(0, t.In+half)
	d.Line(Centre, geometry.Pt(0, 0), above)
	d.LabelLine(centre, above, tag("fore-and-aft"))
	d.Line(Centre, centre.Sub(geometry.Pt(half/3, 0)), centre.Add(geometry.Pt(half/3, 0)))
	d.LabelLine(geometry.Point{}, centre, tag("hole-in", t.length(t.In)))
	d.LabelPoint(centre, tag("centre-of-hole"))
	if t.Sightline() > 1e-9 {
		const radius = 35
		from := math.Pi / 2
		d.Line(Construction, geometry.Arc(centre, radius, from, from+t.Sightline())...)
		d.LabelPoint(centre.Add(geometry.Polar(radius, from+t.Sightline()/2)), tag("sightline-at", angleText(t.Sightline())))
	}
	return d
}

// elevations shows the leg from the front and from the side.
func (t sightlineTemplate) elevations() Picture {
	p := Picture{Heading: say(elevationsHeading), NoScale: true}
	const tall, thick, wide = 60.0, 8.0, 34.0
	view := func(x, lean float64, from, leans Tag) {
		slab := geometry.Box(x-wide/2, 0, x+wide/2, thick)
		p.Areas = append(p.Areas, Area{Light, slab.Corners()})
		p.Strokes = append(p.Strokes, Stroke{Outline, geometry.Closed(slab.Corners())})
		head, foot := geometry.Pt(x, thick), geometry.Pt(x+tall*math.Tan(lean), thick-tall)
		p.Strokes = append(p.Strokes,
			Stroke{Cut, []geometry.Point{head, foot}},
			Stroke{Centre, []geometry.Point{geometry.Pt(x, thick+6), geometry.Pt(x, thick-tall)}})
		p.LabelLine(slab.Corners()[3], slab.Corners()[2], from)
		p.LabelLine(head, foot, leans)
	}
	view(0, t.Splay, tag("from-the-front"), tag("splay", angleText(t.Splay)))
	view(wide+tall*math.Tan(t.Splay)+30, t.Rake, tag("from-the-side"), tag("rake", angleText(t.Rake)))
	return p
}

func (t sightlineTemplate) figures() []Figure {
	front, side := t.Bevels()
	_, obtuse := t.Diamond()
	line := t.Sightline()
	figures := []Figure{
		figure("sightline.rake", measure.Angle(t.Rake)),
		figure("sightline.splay", measure.Angle(t.Splay)),
		figure("sightline.resultant", measure.Angle(t.Resultant())),
		figure("sightline.sightline", measure.Angle(line)),
		figure("sightline.to-edge", measure.Angle(math.Pi/2-line)),
		figure("sightline.bevel", measure.Angle(math.Pi/2-t.Resultant())),
		figure("sightline.level-front", measure.Angle(front)),
		figure("sightline.level-side", measure.Angle(side)),
		figure("sightline.arris", measure.Angle(obtuse)),
	}
	if t.Height == 0 {
		return figures
	}
	return append(figures,
		figure("sightline.height", measure.Length(t.Height)),
		figure("sightline.length", measure.Length(t.TrueLength(t.Height))),
		figure("sightline.out", measure.Length(t.Height*math.Tan(t.Resultant()))),
		figure("sightline.aside", measure.Length(t.Height*math.Tan(t.Splay))),
		figure("sightline.ahead", measure.Length(t.Height*math.Tan(t.Rake))),
	)
}
