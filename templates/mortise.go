package templates

import (
	"cmp"
	"math"
	"slices"
	"strings"

	"rodsheet/geometry"
	"rodsheet/geometry/joint"
	"rodsheet/geometry/measure"
)

// headOff is how far from the head of the leg a mortise may begin with the head
// still on the strip, mm: farther down a rule finds it better than paper.
const headOff = 120

// blindClear is what is left between a blind tenon and the bottom of its mortise, mm.
// Common practice, no source.
const blindClear = 1.5

// Mortise returns the wrap-round of a rail's end, with shoulder and tenon on its four
// sides, and the mortise strip of the leg. The right hand alone is drawn where the
// joint is alike from outer side and frame side, so that it serves both; a full
// setting draws both hands of all. The error is a *measure.BoundError.
//
// The right hand is the end on the right as one looks at the outer side of the
// rail, foot down.
func Mortise(m joint.Mortise, s Setting) (Job, error) {
	m.Over = cmp.Or(m.Over, joint.BridleLong(s.Unit))
	m.Clear = s.Unit.Round(blindClear, 1.0/16)
	if err := m.Check(); err != nil {
		return Job{}, err
	}
	t := mortiseTemplate{m, s,
		wrap{width: m.Depth, thickness: m.Width, back: true},
		wrap{width: m.LegWidth, thickness: m.Leg, back: m.Through(), corner: !m.Through()}}
	lean := measure.Angle(m.Splay).Text(s.Unit)
	return Job{
		Name:     "mortise-" + strings.TrimSuffix(lean, "°"),
		Title:    t.title(),
		Figures:  t.figures(),
		Warnings: t.thin(),
		Sections: []Section{{
			Drawings: t.drawings(),
			Panels: []Panel{
				{Heading: say(figuresHeading), Table: figureTable(append(t.given(), t.railFigures()...), s.Unit)},
				{Heading: say(workHeading), Text: t.steps()},
				{Heading: say(mortiseHeading), Table: figureTable(t.legFigures(), s.Unit)},
				t.mortising(),
			},
		}},
	}, nil
}

// A mortiseTemplate is a mortise and tenon about to be drawn.
type mortiseTemplate struct {
	joint.Mortise
	Setting
	rail, leg wrap
}

// drawings returns the wrap-round of the rail and the strip of the leg, for the
// hands that are needed. In the frame of joint.Shoulder the leg is to the left.
func (t mortiseTemplate) drawings() []Drawing {
	rail := t.railRound().hands(View{Part: "rail", Face: "wrap-round"}, LeftHand)
	leg := t.legStrip().hands(View{Part: "leg", Face: "mortise-strip"}, LeftHand)
	if !t.Full && t.Symmetric() {
		rail = rail[1:]
		if t.centred() {
			leg = leg[1:]
		}
	}
	return slices.Concat(rail, leg)
}

// centred reports whether the mortise of a symmetric joint stands in the middle of
// the leg.
func (t mortiseTemplate) centred() bool {
	outer, frame := t.Beside()
	return math.Abs(outer-frame) < 1e-9
}

func (t mortiseTemplate) given() []Figure {
	out := []Figure{
		figure("mortise.width", measure.Length(t.Width)),
		figure("mortise.depth", measure.Length(t.Depth)),
		figure("mortise.leg", measure.Length(t.Leg)),
		figure("mortise.leg-width", measure.Length(t.LegWidth)),
		figure("mortise.inset", measure.Length(t.Inset)),
		figure("mortise.from-head", measure.Length(t.FromHead)),
	}
	for _, lean := range []struct {
		id  measure.ID
		rad float64
	}{{"mortise.splay", t.Splay}, {"mortise.rake", t.Rake}, {"mortise.turn", t.Turn}} {
		if lean.rad != 0 {
			out = append(out, figure(lean.id, measure.Angle(lean.rad)))
		}
	}
	return out
}

func (t mortiseTemplate) figures() []Figure { return slices.Concat(t.railFigures(), t.legFigures()) }

// unless keeps a figure for programs only where it says nothing, as what is 0 on a
// square joint.
func unless(plain bool, f Figure) Figure {
	f.Aside = plain
	return f
}

// railFigures returns the sizes of shoulder and tenon.
func (t mortiseTemplate) railFigures() []Figure {
	s := t.Shoulder()
	outer, _ := t.Cheeks()
	lower, upper := t.Edges()
	return []Figure{
		figure("mortise.tenon", measure.Length(t.Third())),
		figure("mortise.cheek", measure.Length(outer)),
		figure("mortise.length", measure.Length(t.Length())),
		unless(!t.Through(), figure("mortise.over-length", measure.Length(t.RoughLength()-t.Length()))),
		unless(lower == 0, figure("mortise.lower-edge", measure.Length(lower))),
		figure("mortise.upper-edge", measure.Length(upper)),
		unless(t.Haunch == joint.NoHaunch, figure("mortise.haunch-length", measure.Length(t.Stub()))),
		unless(s.Face == 0, figure("mortise.off-square", measure.Angle(math.Abs(s.Face)))),
		unless(s.Face == 0, figure("mortise.bevel", measure.Angle(math.Pi/2-math.Abs(s.Face)))),
		unless(s.Edge == 0, figure("mortise.edge-off-square", measure.Angle(math.Abs(s.Edge)))),
		unless(s.Face == 0, figure("mortise.shoulder-top", measure.Length(s.At(t.Depth, 0)))),
		unless(s.Edge == 0, figure("mortise.shoulder-frame-side", measure.Length(s.At(0, t.Width)))),
		unless(s.Face == 0 || s.Edge == 0, figure("mortise.shoulder-far", measure.Length(s.At(t.Depth, t.Width)))),
		figure("mortise.glue-area", measure.Area(t.GlueArea())),
	}
}

// legFigures returns the sizes of the mortise and of the wood round it.
func (t mortiseTemplate) legFigures() []Figure {
	s, mouth, exit := t.Shoulder(), t.Mouth(t.Edges()), t.exit()
	foot, across := t.Lean()
	outerWood, frameWood := t.Beside()
	out := []Figure{
		figure("mortise.upper-end", measure.Length(mouth[3].X)),
		figure("mortise.long-side", measure.Length(t.LongSide())),
		figure("mortise.from-outer", measure.Length(mouth[0].Y)),
		figure("mortise.across", measure.Length(t.Across())),
		unless(s.Edge == 0 || s.Face == 0, figure("mortise.end-off-square", measure.Angle(math.Abs(t.EndOffSquare())))),
		aside(figure("mortise.into-leg", measure.Length(t.IntoLeg()))),
		figure("mortise.bored", measure.Length(t.Bored())),
		unless(foot == 0, figure("mortise.lean-foot", measure.Angle(foot))),
		unless(across <= 0, figure("mortise.lean-outer", measure.Angle(across))),
		unless(across >= 0, figure("mortise.lean-frame", measure.Angle(-across))),
		figure("mortise.outer-wood", measure.Length(outerWood)),
		figure("mortise.frame-wood", measure.Length(frameWood)),
		figure("mortise.above", measure.Length(t.Above())),
		unless(t.Through(), figure("mortise.behind", measure.Length(t.Behind()))),
	}
	if t.Through() { // they stand on the strip
		out = append(out, aside(figure("mortise.exit-upper-end", measure.Length(exit[3].X))), aside(figure("mortise.exit-from-outer", measure.Length(exit[0].Y))))
	}
	return out
}

// railRound is all four sides of the rail's end: the outer side is the face, the
// underside the reference edge.
func (t mortiseTemplate) railRound() Drawing {
	s := t.Shoulder()
	to := max(0, s.At(t.Depth, 0), s.At(0, t.Width), s.At(t.Depth, t.Width)) + reach
	from := func(y float64) float64 { return s.At(y, 0) - t.RoughLength() }
	var d Drawing
	t.nameShoulder(&d)
	d.Add(t.rail.drawing(func(at side) Drawing { return t.railSide(at, to) }, from, to))
	d.LabelPoint(geometry.Pt(0, 0), tag("datum"))
	outer, frame := t.Cheeks()
	for _, depth := range []float64{outer, frame} {
		end := s.At(0, depth)
		d.LabelLine(geometry.Pt(end-t.RoughLength(), -depth), geometry.Pt(end, -depth), tag("cheek-at", t.length(depth)))
	}
	t.rail.nameFolds(&d, to)
	return d
}

// nameShoulder names the lines across the outer side, and what the shoulder does
// across the underside.
func (t mortiseTemplate) nameShoulder(d *Drawing) {
	s, long := t.Shoulder(), t.RoughLength()
	line := func(back float64, name Tag) {
		d.LabelLine(geometry.Pt(s.At(0, 0)-back, 0), geometry.Pt(s.At(t.Depth, 0)-back, t.Depth), name)
	}
	line(0, tag("shoulder"))
	if s.Face != 0 {
		line(0, tag("line-off-square", angleText(math.Abs(s.Face))))
	}
	if t.Through() {
		line(long, tag("saw-here", t.length(t.Over)))
		line(t.Length(), tag("trim-line"))
	} else {
		line(long, tag("end-of-tenon", t.length(long)))
	}
	if s.Edge != 0 {
		d.LabelLine(geometry.Pt(0, 0), geometry.Pt(s.At(0, t.Width), -t.Width), tag("line-off-square", angleText(math.Abs(s.Edge))))
	}
	p := t.profile(0)
	lower, upper := t.Edges()
	if lower > 0 {
		d.LabelLine(p[0], p[1], tag("tenon-edge-at", t.length(lower)))
	}
	if upper < t.Depth {
		d.LabelLine(p[2], p[3], tag("tenon-edge-at", t.length(upper)))
	}
}

// profile is the outline of the tenon as it is sawn, on the side of the rail at that depth.
func (t mortiseTemplate) profile(depth float64) []geometry.Point {
	p := t.Profile(t.RoughLength())
	for i, q := range p {
		p[i].X = t.Shoulder().At(q.Y, depth) - q.X
	}
	return p
}

// railSide is what one side of the rail holds, in the frame of that side.
func (t mortiseTemplate) railSide(at side, to float64) Drawing {
	var d Drawing
	middle := geometry.Pt(to-reach/2, t.rail.breadth(at)/2)
	switch at {
	case faceSide:
		t.cheek(&d, 0)
		d.LabelPoint(middle, tag("outer-side"))
	case backFace:
		t.cheek(&d, t.Width)
		d.LabelPoint(middle, tag("frame-side"))
	case referenceEdge:
		lower, _ := t.Edges()
		t.edge(&d, 0, kept(lower, 0, t.RoughLength()))
		d.LabelPoint(middle, tag("underside"))
	case farEdge:
		_, upper := t.Edges()
		stub := 0.0
		if t.Haunch == joint.SquareHaunch {
			stub = t.Stub()
		}
		t.edge(&d, t.Depth, kept(t.Depth-upper, stub, t.RoughLength()))
		d.LabelPoint(middle, tag("top"))
	}
	return d
}

// kept is how much of the tenon an edge of the rail shows: all where nothing is
// cut off there, else the stub.
func kept(off, stub, long float64) float64 {
	if off == 0 {
		return long
	}
	return stub
}

// cheek draws what a face of the rail shows: all beside the tenon is cut away.
func (t mortiseTemplate) cheek(d *Drawing, depth float64) {
	at := func(y, back float64) geometry.Point { return geometry.Pt(t.Shoulder().At(y, depth)-back, y) }
	long := t.RoughLength()
	d.Line(Cut, at(0, 0), at(t.Depth, 0))
	d.Line(Cut, at(0, long), at(t.Depth, long))
	if t.Through() {
		d.Line(Construction, at(0, t.Length()), at(t.Depth, t.Length()))
	}
	d.Line(Hidden, t.profile(depth)...)
	d.Hatch(at(0, 0), at(t.Depth, 0), at(t.Depth, long), at(0, long))
}

// edge draws what underside or top shows, down from the outer side: the waste on
// both sides of the tenon, and beyond what is kept of it.
func (t mortiseTemplate) edge(d *Drawing, y, kept float64) {
	at := func(depth, back float64) geometry.Point { return geometry.Pt(t.Shoulder().At(y, depth)-back, depth) }
	long, outer := t.RoughLength(), 0.0
	first, second := t.Cheeks()
	d.Line(Cut, at(0, long), at(t.Width, long))
	d.Line(Cut, at(0, 0), at(t.Width, 0))
	for _, strip := range []struct{ to, kept float64 }{{first, 0}, {second, kept}, {t.Width, 0}} {
		if strip.kept < long {
			d.Hatch(at(outer, strip.kept), at(strip.to, strip.kept), at(strip.to, long), at(outer, long))
		}
		if 0 < strip.kept && strip.kept < long {
			d.Line(Cut, at(outer, strip.kept), at(strip.to, strip.kept))
		}
		outer = strip.to
	}
	for _, depth := range []float64{first, second} {
		d.Line(Cut, at(depth, 0), at(depth, long))
	}
	if t.Through() {
		d.Line(Construction, at(0, t.Length()), at(t.Width, t.Length()))
	}
}

// legStrip is the rail side of the leg with its outer side, and all four sides where
// the tenon comes out at the back.
func (t mortiseTemplate) legStrip() Drawing {
	rail := []geometry.Point{t.OnLeg(0, 0), t.OnLeg(0, t.Width), t.OnLeg(t.Depth, t.Width), t.OnLeg(t.Depth, 0)}
	box := geometry.Bounds(append(rail, t.exit()...)...)
	from, to := 0.0, box.Max.X+reach
	if box.Min.X > headOff {
		from = math.Floor((box.Min.X-reach)/10) * 10
	}
	mouth := t.Mouth(t.Edges())
	var d Drawing
	d.LabelLine(mouth[0], mouth[3], tag("from-outer-side", t.length(mouth[0].Y)))
	d.LabelLine(mouth[3], mouth[2], tag("from-head", t.length(mouth[3].X)))
	d.LabelLine(mouth[1], mouth[2], tag("long-and-wide", t.length(t.LongSide()), t.length(t.Across())))
	head := tag("head")
	if from > 0 {
		head = tag("square-line-from-head", t.length(from))
	}
	d.LabelLine(geometry.Pt(from, 0), geometry.Pt(from, t.LegWidth), head)
	d.LabelLine(rail[0], rail[1], tag("rail-here"))
	d.Add(t.leg.drawing(func(at side) Drawing { return t.legSide(at, rail, to) }, func(float64) float64 { return from }, to))
	end := t.leg.arrises()
	d.Line(Outline, geometry.Pt(from, end[0].level), geometry.Pt(from, end[len(end)-1].level))
	t.leg.nameFolds(&d, to)
	return d
}

// exit is where the walls of the mortise end.
func (t mortiseTemplate) exit() []geometry.Point {
	out := t.Mouth(t.Edges())
	for i, p := range out {
		out[i] = t.Floor(p)
	}
	return out
}

// legSide is what one side of the leg holds, in the frame of that side.
func (t mortiseTemplate) legSide(at side, rail []geometry.Point, to float64) Drawing {
	var d Drawing
	lower, upper := t.Edges()
	mouth, exit := t.Mouth(lower, upper), t.exit()
	middle := geometry.Pt(to-reach/2, t.leg.breadth(at)/2)
	switch at {
	case faceSide:
		d.Polygon(Construction, rail...)
		d.Polygon(Cut, mouth...)
		d.Hatch(mouth...)
		if t.Haunch != joint.NoHaunch {
			groove := t.Mouth(upper, t.Depth)
			d.Line(Cut, groove[0], groove[3], groove[2], groove[1])
			d.Hatch(groove...)
			d.LabelLine(groove[0], groove[3], tag("haunch"))
		}
		d.LabelPoint(middle, tag("rail-side"))
	case backFace:
		d.Polygon(Cut, exit...)
		d.Hatch(exit...)
		d.LabelLine(exit[0], exit[3], tag("from-outer-side", t.length(exit[0].Y)))
		d.LabelLine(exit[3], exit[2], tag("from-head", t.length(exit[3].X)))
		d.LabelPoint(middle, tag("leg-back"))
	case referenceEdge:
		deep := t.Bored()
		d.Line(Hidden, geometry.Pt(mouth[0].X, 0), geometry.Pt(exit[0].X, deep), geometry.Pt(exit[3].X, deep), geometry.Pt(mouth[3].X, 0))
		d.LabelLine(geometry.Pt(exit[0].X, deep), geometry.Pt(exit[3].X, deep), tag("deep", t.length(deep)))
		d.LabelPoint(middle, tag("outer-side"))
	case farEdge:
		d.LabelPoint(middle, tag("frame-side"))
	}
	return d
}
