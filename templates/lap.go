package templates

import (
	"fmt"
	"math"
	"strings"

	"rodsheet/geometry"
	"rodsheet/geometry/joint"
	"rodsheet/geometry/measure"
)

// Lap returns the templates of a half-lap: face, reference edge and
// wrap-round, each for both hands. The error is a *measure.BoundError.
//
// The right hand is the frame of geometry.Lap: with the datum to the left and
// the reference edge below, an acute crossing leans to the right.
func Lap(l joint.Lap, s Setting) (Job, error) {
	if err := l.Check(); err != nil {
		return Job{}, err
	}
	t := lapTemplate{l, s, wrap{width: l.Width, thickness: l.Depth}}
	figures := lapFigures(l)
	angle := measure.Angle(l.Angle).Text(s.Unit)
	job := Job{
		Name: "lap-" + strings.TrimSuffix(angle, "°"),
		Title: fmt.Sprintf("Half-lap: %s crossed by %s at %s",
			t.length(l.Width), t.length(l.Other), angle),
		Figures:  figures,
		Warnings: t.warnings(),
	}
	section := Section{
		Panels: []Panel{
			{Heading: "Figures", Table: figureTable(append(lapGiven(l), figures...), s.Unit)},
			{Heading: "Setting the saw", Text: t.steps()},
			{Heading: "Hands", Text: lapHands()},
		},
	}
	for _, view := range []struct {
		name string
		of   Drawing
	}{{"face", t.face()}, {"reference edge", t.edge()}, {"wrap-round", t.wrapRound()}} {
		section.Drawings = append(section.Drawings,
			view.of.Named("lap, right hand, "+view.name),
			view.of.Mirrored("lap, left hand, "+view.name))
	}
	job.Sections = []Section{section}
	return job, nil
}

func lapGiven(l joint.Lap) []Figure {
	return []Figure{
		{"width", measure.Length(l.Width)},
		{"crossing width", measure.Length(l.Other)},
		{"depth of stock", measure.Length(l.Depth)},
		{"angle", measure.Angle(l.Angle)},
		{"kerf", measure.Length(l.Kerf)},
	}
}

func lapFigures(l joint.Lap) []Figure {
	near, far := l.Shoulders(0)
	farNear, farFar := l.Shoulders(l.Width)
	fromEdge, fromSquare := l.Bevel(), l.OffSquare()
	square, along := l.UsualRuleExcess()
	figures := []Figure{
		{"near shoulder, reference edge", measure.Length(near)},
		{"far shoulder, reference edge", measure.Length(far)},
		{"near shoulder, far edge", measure.Length(farNear)},
		{"far shoulder, far edge", measure.Length(farFar)},
		{"edge length", measure.Length(l.EdgeLength())},
		{"corner shift", measure.Length(l.Shift())},
		{"lap area", measure.Area(l.Area())},
		{"gauge from the edge", measure.Angle(fromEdge)},
		{"gauge from square", measure.Angle(fromSquare)},
		{"blade height", measure.Length(l.BladeHeight())},
		{"spacer", measure.Length(l.Spacer())},
	}
	if l.At > 0 {
		figures = append(figures, Figure{"stop, first cut", measure.Length(l.Stop())})
	}
	return append(figures,
		Figure{"usual rule too wide by", measure.Length(square)},
		Figure{"usual spacer too long by", measure.Length(along)})
}

// A lapTemplate is a lap about to be drawn.
type lapTemplate struct {
	joint.Lap
	Setting
	wrap wrap
}

func (t lapTemplate) length(mm float64) string { return measure.Length(mm).Text(t.Unit) }

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
	d.Span(c[1], c[0], "edge length "+t.length(t.EdgeLength()))
	if square := geometry.Pt(c[0].X, t.Width); t.Shift() != 0 {
		left, right := square, c[3]
		if left.X > right.X {
			left, right = right, left
		}
		d.Span(left, right, "corner shift "+t.length(math.Abs(t.Shift())))
	}
	d.LabelLine(c[0], c[3], measure.Angle(t.Angle).Text(t.Unit)+" from the edge")
	d.LabelLine(c[1], geometry.Pt(to, 0), "reference edge")
	d.LabelLine(c[2], geometry.Pt(to, t.Width), "far edge")
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
	d.Span(geometry.Pt(near, t.Depth), geometry.Pt(far, t.Depth), "edge length "+t.length(t.EdgeLength()))
	d.LabelLine(geometry.Pt(far, t.Depth), geometry.Pt(to, t.Depth), "face side")
	d.LabelLine(geometry.Pt(far, t.Depth), geometry.Pt(far, t.Depth/2), t.length(t.BladeHeight())+" deep")
	t.datum(&d, 0, t.Depth)
	return d
}

// wrapRound is face and both edges in one strip.
func (t lapTemplate) wrapRound() Drawing {
	from, to, _ := t.extent()
	d := t.wrap.drawing("", t.side, func(float64) float64 { return from }, to)
	t.datum(&d, -t.Depth, t.Width+t.Depth)
	t.positions(&d)
	near, far := t.Shoulders(0)
	d.LabelLine(geometry.Pt(near, -t.Depth/2), geometry.Pt(far, -t.Depth/2),
		"edge length "+t.length(t.EdgeLength()))
	return d
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
		lower, upper := c[0].Lerp(c[1], 0.5), c[3].Lerp(c[2], 0.5)
		past := upper.Sub(lower).Unit().Mul(offset / 2)
		d.Line(Centre, lower.Sub(past), upper.Add(past))
		d.LabelLine(lower, upper, "crossing centre")
		d.LabelPoint(geometry.Pt(to-reach/2, t.Width/2), "lap up: face side")
	case referenceEdge:
		t.notch(&d, c[0].X, c[1].X)
		d.LabelPoint(geometry.Pt(to-reach/2, t.Depth/2), "reference edge")
	case farEdge:
		t.notch(&d, c[3].X, c[2].X)
		d.LabelPoint(geometry.Pt(to-reach/2, t.Depth/2), "far edge")
	}
	return d
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
	x, text := 0.0, "datum"
	if _, _, on := t.extent(); !on {
		x, text = t.At, "square line, at "+t.length(t.At)
	}
	a, b := geometry.Pt(x, y0-offset/2), geometry.Pt(x, y1+offset/2)
	d.Line(Construction, a, b)
	d.LabelLine(a, b, text)
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
		d.LabelPoint(geometry.Pt(near, 0), t.length(near)+", reference edge")
	}
	d.LabelPoint(geometry.Pt(farNear, t.Width), t.length(farNear)+", far edge")
}

// steps is the order of work at the saw.
func (t lapTemplate) steps() []string {
	fromEdge, fromSquare := t.Bevel(), t.OffSquare()
	first := "First cut, the far shoulder: saw to the template line and set the stop against the end."
	if t.At > 0 {
		first = "First cut, the far shoulder: datum end against the stop, the stop " + t.length(t.Stop()) +
			" from the blade, measured along the fence."
	}
	return []string{
		"1. Isolate power before setting. Follow the machine's manual and keep its guards on.",
		"2. Blade height " + t.length(t.BladeHeight()) + ", half the stock. Prove it on two offcuts of the same milling: lapped, they come flush.",
		fmt.Sprintf("3. Mitre gauge %s from the edge, which is %s from square. Reference edge on the fence, the face to be cut down. Swing the gauge so that the blade runs along the line of the template.",
			measure.Angle(fromEdge).Text(t.Unit), measure.Angle(fromSquare).Text(t.Unit)),
		"4. " + first,
		"5. Second cut, the near shoulder: spacer " + t.length(t.Spacer()) + " between part and stop. " + t.usualRule(),
		"6. Take out the rest in passes between the two cuts. Never trap an offcut between fence and blade.",
		"7. Cut a test lap first, in an offcut of the same milling. The crossing part must go in by hand without shake, and the faces come flush. Too tight: lengthen the spacer. Too loose: shorten it.",
	}
}

// warnings says where a lap leaves the part it is counted on.
func (t lapTemplate) warnings() []string {
	if beyond := -(t.At + t.Shift()); t.At > 0 && beyond > 0 {
		return []string{"on the far edge the near shoulder falls " + t.length(beyond) +
			" beyond the datum; if the part ends there, the lap is open"}
	}
	return nil
}

// usualRule says what the shop rule would do at this angle.
func (t lapTemplate) usualRule() string {
	const rule = "The usual rule, edge length less the kerf,"
	square, along := t.UsualRuleExcess()
	if square == 0 {
		return rule + " gives the same at 90°."
	}
	return fmt.Sprintf("%s makes it %s too long and the lap %s too wide at this angle: the blade crosses the edge slanting and takes more than its kerf.",
		rule, t.length(along), t.length(square))
}

// lapHands says which setting gives which lean.
func lapHands() []string {
	return []string{
		"Positions are from the datum, along the edge they name.",
		"The template shows the face that is cut. Both parts of one crossing take the same hand, each on its own cut face. Where their widths differ, the part that crosses has width and crossing width exchanged.",
		"One gauge setting gives two laps on a part. Turned end for end, the same face down, it repeats the same lean on the same face; the other edge comes to the fence, so measure from the other end along that edge.",
		"Tumbled end over end, the other face down and the same edge on the fence, it gives the lap on the other face; seen from the first face it leans the other way.",
		"Rolled about its length, the other edge is on the fence and the stop no longer serves.",
		"For the other hand swing the gauge to the other side of square.",
	}
}
