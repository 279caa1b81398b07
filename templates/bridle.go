package templates

import (
	"strings"

	"rodsheet/geometry"
	"rodsheet/geometry/joint"
	"rodsheet/geometry/measure"
)

// Bridle returns the templates of a corner bridle joint: for stretcher and
// leg the face and the wrap-round of both hands, and the reference edge,
// which both hands share: turned end for end it is its own mirror image. The
// error is a *measure.BoundError.
//
// The right hand is the corner on the right as one looks at the face side of
// both parts, foot down. A part is drawn lying: the leg with its head to the
// left, a right hand stretcher with its end to the right.
func Bridle(b joint.Bridle, s Setting) (Job, error) {
	if err := b.Check(); err != nil {
		return Job{}, err
	}
	stretcher := newBridleTemplate(b.Stretcher(), partWords{"stretcher", "underside", "top"}, s)
	leg := newBridleTemplate(b.Head().FromFarEdge(), partWords{"leg", "inner edge", "outer edge"}, s)
	angle := measure.Angle(b.Angle).Text(s.Unit)
	figures := bridleFigures(b)
	return Job{
		Name:    "bridle-" + strings.TrimSuffix(angle, "°"),
		Title:   "Corner bridle, leg splayed " + angle,
		Figures: figures,
		Sections: []Section{{
			Drawings: append(stretcher.drawings("left", "right"), leg.drawings("right", "left")...),
			Panels: []Panel{
				{Heading: "Figures", Table: figureTable(append(bridleGiven(b), figures...), s.Unit)},
				{Heading: "Order of work", Text: bridleSteps(b, s.Unit)},
				{Heading: "Holding the part", Text: bridleHolding(b, s.Unit)},
			},
		}},
	}, nil
}

// partWords is what the edges of one part are called.
type partWords struct{ part, reference, far string }

// A bridleTemplate is one part of a bridle joint about to be drawn.
type bridleTemplate struct {
	joint.BridleEnd
	partWords
	Setting
	wrap wrap
	to   float64 // where the drawing breaks off
}

func newBridleTemplate(e joint.BridleEnd, words partWords, s Setting) bridleTemplate {
	return bridleTemplate{e, words, s, wrap{e.Width, e.Thickness, true}, e.Shoulder(e.Width) + reach}
}

func (t bridleTemplate) length(mm float64) string { return measure.Length(mm).Text(t.Unit) }

// drawings returns all views; straight is the hand that has the frame of
// geometry.BridleEnd, mirror the other.
func (t bridleTemplate) drawings(straight, mirror string) []Drawing {
	name := func(hand, view string) string { return t.part + ", " + hand + " hand, " + view }
	face, round := t.face(), t.wrapRound()
	return []Drawing{
		face.Named(name(straight, "face")),
		face.Mirrored(name(mirror, "face")),
		t.edge().Named(t.part + ", both hands, " + t.reference),
		round.Named(name(straight, "wrap-round")),
		round.Mirrored(name(mirror, "wrap-round")),
	}
}

// face is the face with its two edges and the positions on them.
func (t bridleTemplate) face() Drawing {
	d := t.side(faceSide)
	for _, y := range []float64{0, t.Width} {
		d.Line(Outline, geometry.Pt(t.RoughEnd(y), y), geometry.Pt(t.to, y))
	}
	d.Span(geometry.Pt(t.Shoulder(0), 0), geometry.Pt(t.End(0), 0), t.length(t.Length()))
	d.Span(geometry.Pt(t.End(t.Width), t.Width), geometry.Pt(t.Shoulder(t.Width), t.Width), t.length(t.Length()))
	d.LabelLine(geometry.Pt(t.Shoulder(0), 0), geometry.Pt(t.to, 0), t.reference+", reference edge")
	d.LabelLine(geometry.Pt(t.Shoulder(t.Width), t.Width), geometry.Pt(t.to, t.Width), t.far)
	d.LabelPoint(geometry.Pt(0, 0), "datum")
	return d
}

// edge is the reference edge with the face up, and the depths of the cheeks.
func (t bridleTemplate) edge() Drawing {
	view := t.wrap.edgeView()
	d := t.side(referenceEdge).Moved(view)
	for _, y := range []float64{0, t.Thickness} {
		d.Line(Outline, geometry.Pt(t.RoughEnd(0), y), geometry.Pt(t.to, y))
	}
	upper, lower := t.Cheeks()
	for _, depth := range []float64{upper, lower} {
		y := t.Thickness - depth
		d.LabelLine(geometry.Pt(t.RoughEnd(0), y), geometry.Pt(t.Shoulder(0), y), t.length(depth)+" from face")
	}
	d.Span(geometry.Pt(t.End(0), t.Thickness), geometry.Pt(t.Shoulder(0), t.Thickness), t.length(t.Length()))
	d.LabelLine(geometry.Pt(t.Shoulder(0), t.Thickness), geometry.Pt(t.to, t.Thickness), "face side")
	return d
}

// wrapRound is all four sides in one strip.
func (t bridleTemplate) wrapRound() Drawing {
	d := t.wrap.drawing("", t.side, t.RoughEnd, t.to)
	d.LabelPoint(geometry.Pt(0, 0), "datum")
	return d
}

// side is what one side of the part holds, in the frame of that side.
func (t bridleTemplate) side(s side) Drawing {
	var d Drawing
	middle := geometry.Pt(t.to-reach/2, t.wrap.breadth(s)/2)
	switch s {
	case faceSide:
		t.cheek(&d)
		t.crosswise(&d)
		d.LabelPoint(middle, "face side")
	case backFace:
		t.cheek(&d)
		d.LabelPoint(middle, "back face")
	case referenceEdge:
		t.section(&d, 0)
		d.LabelPoint(middle, t.reference)
	case farEdge:
		t.section(&d, t.Width)
		d.LabelPoint(middle, t.far)
	}
	return d
}

// cheek draws the joint as a face shows it: the side cheek cut away beside a
// tenon, or the bottom of the slot hidden behind the wood.
func (t bridleTemplate) cheek(d *Drawing) {
	across := func(x func(float64) float64) (a, b geometry.Point) {
		return geometry.Pt(x(0), 0), geometry.Pt(x(t.Width), t.Width)
	}
	endA, endB := across(t.RoughEnd)
	trimA, trimB := across(t.End)
	a, b := across(t.Shoulder)
	d.Line(Cut, endA, endB)
	d.Line(Construction, trimA, trimB)
	if t.Slot {
		d.Line(Hidden, a, b)
		return
	}
	d.Line(Cut, a, b)
	d.Hatch(endA, a, b, endB)
}

// crosswise names the lines that run across the face.
func (t bridleTemplate) crosswise(d *Drawing) {
	name := "shoulder"
	if t.Slot {
		name = "slot bottom"
	}
	if t.OffSquare > 0 {
		name += ", " + measure.Angle(t.OffSquare).Text(t.Unit)
	}
	for _, line := range []struct {
		at   func(y float64) float64
		text string
	}{
		{t.Shoulder, name},
		{t.RoughEnd, "saw, " + t.length(joint.BridleLong) + " long"},
		{t.End, "trim line"},
	} {
		d.LabelLine(geometry.Pt(line.at(0), 0), geometry.Pt(line.at(t.Width), t.Width), line.text)
	}
}

// section draws the joint as the edge at y shows it, down from the face: the
// slot in the middle, or the waste on both sides of the tenon.
func (t bridleTemplate) section(d *Drawing, y float64) {
	end, trim, shoulder := t.RoughEnd(y), t.End(y), t.Shoulder(y)
	upper, lower := t.Cheeks()
	d.Line(Cut, geometry.Pt(end, 0), geometry.Pt(end, t.Thickness))
	d.Line(Construction, geometry.Pt(trim, 0), geometry.Pt(trim, t.Thickness))
	if t.Slot {
		slot := geometry.Box(end, upper, shoulder, lower).Corners()
		d.Line(Cut, slot...)
		d.Hatch(slot...)
		return
	}
	for _, waste := range []struct{ cheek, face float64 }{{upper, 0}, {lower, t.Thickness}} {
		d.Line(Cut, geometry.Pt(end, waste.cheek), geometry.Pt(shoulder, waste.cheek), geometry.Pt(shoulder, waste.face))
		d.Hatch(geometry.Box(end, waste.cheek, shoulder, waste.face).Corners()...)
	}
}
