package templates

import (
	"math"
	"slices"
	"strings"

	"rodsheet/geometry"
	"rodsheet/geometry/joint"
	"rodsheet/geometry/measure"
)

// Lap returns the wrap-round of a half-lap, right hand, which both parts of a
// crossing take; a full setting draws face, reference edge and wrap-round for both
// hands. The error is a *measure.BoundError.
//
// The right hand is the frame of geometry.Lap: with the datum to the left and
// the reference edge below, an acute crossing leans to the right.
func Lap(l joint.Lap, s Setting) (Job, error) {
	if err := l.Check(); err != nil {
		return Job{}, err
	}
	t := newLapTemplate(l, SingleLap(), s)
	figures := lapFigures(l)
	angle := measure.Angle(l.Angle).Text(s.Unit)
	job := Job{
		Name:     "lap-" + strings.TrimSuffix(angle, "°"),
		Title:    say(lapTitle, t.length(l.Width), t.length(l.Other), angle),
		Figures:  figures,
		Warnings: t.warnings(),
	}
	views := t.views()
	if !s.Full {
		views = views[:1]
	}
	section := Section{
		Drawings: views,
		Panels: []Panel{
			{Heading: say(figuresHeading), Table: figureTable(append(lapGiven(l), figures...), s.Unit)},
			t.steps(),
			lapHands(math.Pi - l.Angle),
		},
	}
	job.Sections = []Section{section}
	return job, nil
}

// LapNames is what the lines of a lap are called on its part.
type LapNames struct {
	Reference, Far Tag // the two edges
	Near, Other    Tag // the shoulder that meets the reference edge at At, and the other one
	OtherOnly      Tag // where alone there is that other one; none: everywhere
	Datum          Tag // what At is counted from
}

// LapViews returns the wrap-round of a lap or, in a full setting, cut face,
// reference edge and wrap-round, the right hand of each before the left. The lap
// must have passed its Check.
func LapViews(l joint.Lap, names LapNames, s Setting) []Drawing {
	return newLapTemplate(l, names, s).views()
}

func newLapTemplate(l joint.Lap, names LapNames, s Setting) lapTemplate {
	return lapTemplate{l, names, s, wrap{width: l.Width, thickness: l.Depth}}
}

func (t lapTemplate) views() []Drawing {
	wrapped := t.wrapRound().hands(View{Part: "lap", Face: "wrap-round"}, RightHand)
	if !t.Full {
		return wrapped
	}
	return slices.Concat(
		t.face().hands(View{Part: "lap", Face: "cut-face"}, RightHand),
		t.edge().hands(View{Part: "lap", Face: "reference-edge"}, RightHand),
		wrapped,
	)
}

func lapGiven(l joint.Lap) []Figure {
	return []Figure{
		figure("lap.width", measure.Length(l.Width)),
		figure("lap.crossing-width", measure.Length(l.Other)),
		figure("lap.depth", measure.Length(l.Depth)),
		figure("lap.angle", measure.Angle(l.Angle)),
		figure("lap.kerf", measure.Length(l.Kerf)),
	}
}

func lapFigures(l joint.Lap) []Figure {
	near, far := l.Shoulders(0)
	farNear, farFar := l.Shoulders(l.Width)
	square, along := l.UsualRuleExcess()
	figures := []Figure{
		figure("lap.near-reference", measure.Length(near)),
		figure("lap.far-reference", measure.Length(far)),
		figure("lap.near-far-edge", measure.Length(farNear)),
		figure("lap.far-far-edge", measure.Length(farFar)),
		figure("lap.edge-length", measure.Length(l.EdgeLength())),
		figure("lap.corner-shift", measure.Length(l.Shift())),
		figure("lap.area", measure.Area(l.Area())),
		figure("lap.bevel", measure.Angle(l.Bevel())),
		figure("lap.off-square", measure.Angle(l.OffSquare())),
		figure("lap.blade-height", measure.Length(l.BladeHeight())),
		figure("lap.spacer", measure.Length(l.Spacer())),
	}
	if l.At > 0 {
		figures = append(figures, figure("lap.stop", measure.Length(l.Stop())))
	}
	return append(figures,
		figure("lap.usual-rule-wide", measure.Length(square)),
		figure("lap.usual-spacer-long", measure.Length(along)))
}

// A lapTemplate is a lap about to be drawn.
type lapTemplate struct {
	joint.Lap
	names LapNames
	Setting
	wrap wrap
}

// extent returns how far the stock is drawn, and whether the datum is on the
// drawing. A datum that would not go on one sheet with the lap is left off: a
// rule finds it better than sheets taped together. The stock is then drawn a
// little farther, with room for the words of the square line in its place.
func (t lapTemplate) extent() (from, to float64, datum bool) {
	box := geometry.Bounds(t.Corners()...)
	from, to = box.Min.X-reach, box.Max.X+reach
	switch longest := math.Max(t.Clear.X, t.Clear.Y); {
	case longest > 0 && to > longest && from > 0:
		return from - reach/3, to, false
	case t.At > 0 && box.Min.X > 0:
		return 0, to, true
	}
	return from, to, true
}

// face is the face with its two edges, centre lines and positions.
func (t lapTemplate) face() Drawing {
	from, to, _ := t.extent()
	d := t.side(faceSide)
	for _, y := range []float64{0, t.Width} {
		d.Line(Outline, geometry.Pt(from, y), geometry.Pt(to, y))
	}
	c := t.Corners()
	// The centre line stops short of the lap: there it would be in the way of
	// the names of the shoulders.
	box := geometry.Bounds(c...)
	d.Line(Centre, geometry.Pt(from, t.Width/2), geometry.Pt(box.Min.X, t.Width/2))
	d.Line(Centre, geometry.Pt(box.Max.X, t.Width/2), geometry.Pt(to, t.Width/2))
	d.Span(c[1], c[0], tag("edge-length", t.length(t.EdgeLength())))
	if square := geometry.Pt(c[0].X, t.Width); t.Shift() != 0 {
		left, right := square, c[3]
		if left.X > right.X {
			left, right = right, left
		}
		d.Span(left, right, tag("corner-shift", t.length(t.Shift())))
	}
	d.LabelLine(t.centreLine().A, t.centreLine().B, t.centre())
	t.shoulders(&d)
	d.LabelLine(c[1], geometry.Pt(to, 0), t.names.Reference)
	d.LabelLine(c[2], geometry.Pt(to, t.Width), t.names.Far)
	t.datum(&d, 0, t.Width)
	t.positions(&d)
	return d
}

// edge is the reference edge with the face up.
func (t lapTemplate) edge() Drawing {
	from, to, _ := t.extent()
	view := t.wrap.edgeView()
	d := t.side(referenceEdge).Moved(view)
	for _, y := range []float64{0, t.Depth} {
		d.Line(Outline, geometry.Pt(from, y), geometry.Pt(to, y))
	}
	near, far := t.Shoulders(0)
	d.Span(geometry.Pt(near, t.Depth), geometry.Pt(far, t.Depth), tag("edge-length", t.length(t.EdgeLength())))
	d.LabelLine(geometry.Pt(far, t.Depth), geometry.Pt(to, t.Depth), tag("cut-face"))
	d.LabelLine(geometry.Pt(far, t.Depth), geometry.Pt(far, t.Depth/2), tag("deep", t.length(t.BladeHeight())))
	t.datum(&d, 0, t.Depth)
	return d
}

// wrapRound is face and both edges in one strip.
func (t lapTemplate) wrapRound() Drawing {
	from, to, _ := t.extent()
	d := t.wrap.drawing(t.side, func(float64) float64 { return from }, to)
	if !t.Full { // the views that say so are left out
		t.shoulders(&d)
	}
	d.LabelLine(t.centreLine().A, t.centreLine().B, t.centre())
	t.datum(&d, -t.Depth, t.Width+t.Depth)
	t.positions(&d)
	near, far := t.Shoulders(0)
	d.LabelLine(geometry.Pt(near, -t.Depth/2), geometry.Pt(far, -t.Depth/2),
		tag("edge-length", t.length(t.EdgeLength())))
	if !t.Full {
		d.LabelLine(geometry.Pt(far, 0), geometry.Pt(far, -t.Depth/2), tag("deep", t.length(t.BladeHeight())))
	}
	t.wrap.nameFolds(&d, to)
	return d
}

// shoulders names both lines on the face, and how they are cut.
func (t lapTemplate) shoulders(d *Drawing) {
	c := t.Corners()
	d.LabelLine(c[0], c[3], t.names.Near)
	d.LabelLine(c[1], c[2], t.names.Other)
	if t.names.OtherOnly.ID != "" {
		d.LabelLine(c[1], c[2], t.names.OtherOnly)
	}
	d.LabelLine(c[1], c[2], t.cut())
}

// side is what one side of the part holds, in the frame of that side.
func (t lapTemplate) side(s side) Drawing {
	var d Drawing
	_, to, _ := t.extent()
	c := t.Corners()
	switch s {
	case faceSide:
		d.Line(Cut, c[0], c[3])
		d.Line(Cut, c[1], c[2])
		d.Hatch(c...)
		line := t.centreLine()
		past := line.B.Sub(line.A).Unit().Mul(offset / 2)
		d.Line(Centre, line.A.Sub(past), line.B.Add(past))
		d.LabelPoint(geometry.Pt(to-reach/2, t.Width/2), tag("cut-face"))
	case referenceEdge:
		t.notch(&d, c[0].X, c[1].X)
		d.LabelPoint(geometry.Pt(to-reach/2, t.Depth/2), t.names.Reference)
	case farEdge:
		t.notch(&d, c[3].X, c[2].X)
		d.LabelPoint(geometry.Pt(to-reach/2, t.Depth/2), t.names.Far)
	}
	return d
}

// centreLine is that of the part that crosses, from edge to edge.
func (t lapTemplate) centreLine() geometry.Segment {
	c := t.Corners()
	return geometry.Segment{A: c[0].Lerp(c[1], 0.5), B: c[3].Lerp(c[2], 0.5)}
}

// notch draws the lap as an edge shows it: from the face down to half depth.
func (t lapTemplate) notch(d *Drawing, near, far float64) {
	corners := geometry.Box(near, 0, far, t.BladeHeight()).Corners()
	d.Line(Cut, corners[0], corners[3], corners[2], corners[1])
	d.Hatch(corners...)
}

// datum draws the line square across from which positions are counted, or
// where that is off the drawing a square line through the near shoulder.
func (t lapTemplate) datum(d *Drawing, y0, y1 float64) {
	x, name := 0.0, t.names.Datum
	if _, _, on := t.extent(); !on {
		x, name = t.At, tag("square-line-at", t.length(t.At))
	}
	a, b := geometry.Pt(x, y0-offset/2), geometry.Pt(x, y1+offset/2)
	d.Named(Construction, a, b, name)
}

// positions says how far from the datum the near shoulder meets either edge.
// With the near shoulder at the datum the corner shift says it all, and the
// square line through it says it for the reference edge.
func (t lapTemplate) positions(d *Drawing) {
	if t.At == 0 {
		return
	}
	near, _ := t.Shoulders(0)
	farNear, _ := t.Shoulders(t.Width)
	if _, _, datum := t.extent(); datum {
		d.LabelPoint(geometry.Pt(near, 0), tag("position-on-reference-edge", t.length(near), t.names.Reference.Text))
	}
	d.LabelPoint(geometry.Pt(farNear, t.Width), tag("position-on-far-edge", t.length(farNear), t.names.Far.Text))
}

// cut says at which angle the shoulders are cut.
func (t lapTemplate) cut() Tag {
	return tag("cut", measure.Angle(t.Bevel()).Text(t.Unit), measure.Angle(t.OffSquare()).Text(t.Unit))
}

// centre names the centre line of the part that crosses, with the angle as it was
// given where that is not the bevel of the shoulders.
func (t lapTemplate) centre() Tag {
	if t.Angle > math.Pi/2 {
		return tag("crossing-centre-at", measure.Angle(t.Angle).Text(t.Unit))
	}
	return tag("crossing-centre")
}

// warnings says where a lap leaves the part it is counted on.
func (t lapTemplate) warnings() []string {
	if beyond := -(t.At + t.Shift()); t.At > 0 && beyond > 0 {
		return []string{say(beyondDatum, t.length(beyond))}
	}
	return nil
}
