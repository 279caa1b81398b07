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

// Bridle returns the templates of a corner bridle joint: the wrap-rounds of
// stretcher and leg for the right hand. The joint is in the middle of the
// thickness, so that with ring side and outer side exchanged they serve the other
// one. A full setting draws for both parts the ring side and the wrap-round of both
// hands, and one edge, which both hands share: turned end for end it is its own
// mirror image. The error is a *measure.BoundError.
//
// The right hand is the corner on the right as one looks at the ring side of
// both parts, foot down.
func Bridle(b joint.Bridle, s Setting) (Job, error) {
	if err := b.Check(); err != nil {
		return Job{}, err
	}
	b.Long = cmp.Or(b.Long, joint.BridleLong(s.Unit))
	angle := measure.Angle(b.Angle).Text(s.Unit)
	figures := bridleFigures(b)
	views := BridleViews(b, 0, s)
	if !s.Full {
		views = slices.DeleteFunc(views, func(d Drawing) bool { return d.View.Hand == LeftHand })
	}
	return Job{
		Name:    "bridle-" + strings.TrimSuffix(angle, "°"),
		Title:   say(bridleTitle, angle),
		Figures: figures,
		Sections: []Section{{
			Drawings: views,
			Panels: []Panel{
				{Heading: say(figuresHeading), Table: figureTable(append(bridleGiven(b), figures...), s.Unit)},
				{Heading: say(workHeading), Text: bridleSteps(b, s)},
				bridleHolding(b, s.Unit),
			},
		}},
	}, nil
}

// BridleViews returns the wrap-rounds of both parts for both hands, or all views in
// a full setting, the stretcher's first. A leg whose
// head is left proud mm above the stretcher is not trimmed at the joint. The
// bridle must have passed its Check.
//
// A part is drawn lying, the edge that it is set out from below: of the stretcher
// the underside, of the leg the back. In the frame of joint.BridleEnd the end is
// to the left, which shows the left hand of either.
func BridleViews(b joint.Bridle, proud float64, s Setting) []Drawing {
	stretcher := newBridleTemplate(b.Stretcher(), stretcherSides(), 0, s)
	leg := newBridleTemplate(b.Head(), legSides(), proud, s)
	return append(stretcher.drawings(), leg.drawings()...)
}

func bridleGiven(b joint.Bridle) []Figure {
	return []Figure{
		figure("bridle.width", measure.Length(b.Width)),
		figure("bridle.depth", measure.Length(b.Depth)),
		figure("bridle.leg", measure.Length(b.Leg)),
		figure("bridle.splay", measure.Angle(b.Angle)),
	}
}

// bridleFigures returns the sizes of both parts, counted from their datum
// corners: the stretcher's at its underside, the leg's at its back.
func bridleFigures(b joint.Bridle) []Figure {
	stretcher, leg := b.Stretcher(), b.Head()
	upper, lower := stretcher.Cheeks()
	named := func(id measure.ID, by string, mm float64) Figure {
		return Figure{ID: id, Name: say(figureNames[id], by), Value: measure.Length(mm)}
	}
	return []Figure{
		figure("bridle.tenon", measure.Length(b.Third())),
		figure("bridle.cheek", measure.Length(upper)),
		figure("bridle.far-cheek", measure.Length(lower)),
		figure("bridle.off-square", measure.Angle(b.Angle)),
		figure("bridle.bevel", measure.Angle(math.Pi/2-b.Angle)),
		named("bridle.stretcher-shoulder", across(stretcher), stretcher.Shoulder(0)),
		named("bridle.stretcher-shoulder-far", across(stretcher), stretcher.Shoulder(stretcher.Width)),
		figure("bridle.stretcher-end", measure.Length(stretcher.End(stretcher.Width))),
		named("bridle.stretcher-length", tongue(stretcher), stretcher.Length()),
		figure("bridle.stretcher-cut-height", measure.Length(stretcher.CutHeight())),
		named("bridle.leg-shoulder", across(leg), leg.Shoulder(0)),
		named("bridle.leg-shoulder-far", across(leg), leg.Shoulder(leg.Width)),
		figure("bridle.leg-end", measure.Length(-leg.End(leg.Width))),
		named("bridle.leg-length", tongue(leg), leg.Length()),
		figure("bridle.leg-cut-height", measure.Length(leg.CutHeight())),
		figure("bridle.over-length", measure.Length(b.Long)),
		figure("bridle.glue-area", measure.Area(2*stretcher.CheekArea())),
	}
}

// partSides is what the long sides of one part are called.
type partSides struct {
	part, lower        measure.ID // the part, the edge that it is set out from
	below, above       Tag        // the edges of the ring side
	facing, turnedAway Tag        // ring side and outer side
}

// A bridleTemplate is one part of a bridle joint about to be drawn.
type bridleTemplate struct {
	joint.BridleEnd
	partSides
	Setting
	wrap  wrap
	to    float64 // where the drawing breaks off
	proud float64 // how far the part runs on beyond the joint; 0 where it is trimmed to it
}

func newBridleTemplate(e joint.BridleEnd, sides partSides, proud float64, s Setting) bridleTemplate {
	to := math.Max(e.Shoulder(0), e.Shoulder(e.Width)) + reach
	return bridleTemplate{e, sides, s, wrap{width: e.Width, thickness: e.Thickness, back: true}, to, proud}
}

// drawings returns the views that are printed.
func (t bridleTemplate) drawings() []Drawing {
	wrapped := t.wrapRound().hands(View{Part: t.part, Face: "wrap-round"}, LeftHand)
	if !t.Full {
		return wrapped
	}
	return slices.Concat(
		t.face().hands(View{Part: t.part, Face: "ring-side"}, LeftHand),
		[]Drawing{t.edge().of(View{Part: t.part, Face: t.lower})},
		wrapped,
	)
}

// face is the face with its two edges and the positions on them.
func (t bridleTemplate) face() Drawing {
	d := t.side(faceSide)
	t.crosswise(&d)
	for _, y := range []float64{0, t.Width} {
		d.Line(Outline, geometry.Pt(t.RoughEnd(y), y), geometry.Pt(t.to, y))
	}
	d.Span(geometry.Pt(t.Shoulder(0), 0), geometry.Pt(t.End(0), 0), tag("joint-length", t.length(t.Length())))
	d.Span(geometry.Pt(t.End(t.Width), t.Width), geometry.Pt(t.Shoulder(t.Width), t.Width), tag("joint-length", t.length(t.Length())))
	d.LabelLine(geometry.Pt(t.Shoulder(0), 0), geometry.Pt(t.to, 0), t.below)
	d.LabelLine(geometry.Pt(t.Shoulder(t.Width), t.Width), geometry.Pt(t.to, t.Width), t.above)
	d.LabelPoint(geometry.Pt(0, 0), tag("datum"))
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
		d.LabelLine(geometry.Pt(t.RoughEnd(0), y), geometry.Pt(t.Shoulder(0), y), tag("cheek-at", t.length(depth)))
	}
	d.Span(geometry.Pt(t.End(0), t.Thickness), geometry.Pt(t.Shoulder(0), t.Thickness), tag("joint-length", t.length(t.Length())))
	d.LabelLine(geometry.Pt(t.Shoulder(0), t.Thickness), geometry.Pt(t.to, t.Thickness), t.facing)
	return d
}

// wrapRound is all four sides in one strip. The lines across are named first: for the
// names of the sides and of the folds there is room elsewhere too.
func (t bridleTemplate) wrapRound() Drawing {
	var d Drawing
	t.crosswise(&d)
	d.Add(t.wrap.drawing(t.side, t.RoughEnd, t.to))
	d.LabelPoint(geometry.Pt(0, 0), tag("datum"))
	if !t.Full { // the edge, which says so, is left out
		upper, lower := t.Cheeks()
		for _, depth := range []float64{upper, lower} {
			d.LabelLine(geometry.Pt(t.RoughEnd(0), -depth), geometry.Pt(t.Shoulder(0), -depth), tag("cheek-at", t.length(depth)))
		}
	}
	t.wrap.nameFolds(&d, t.to)
	return d
}

// side is what one side of the part holds, in the frame of that side.
func (t bridleTemplate) side(s side) Drawing {
	var d Drawing
	middle := geometry.Pt(t.to-reach/2, t.wrap.breadth(s)/2)
	switch s {
	case faceSide:
		t.cheek(&d)
		d.LabelPoint(middle, t.facing)
	case backFace:
		t.cheek(&d)
		d.LabelPoint(middle, t.turnedAway)
	case referenceEdge:
		t.section(&d, 0)
		d.LabelPoint(middle, t.below)
	case farEdge:
		t.section(&d, t.Width)
		d.LabelPoint(middle, t.above)
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
	d.Line(t.endRole(), endA, endB)
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
	name := tag("shoulder")
	if t.Slot {
		name = tag("slot-bottom")
	}
	end, trim := tag("saw-here", t.length(t.Long)), tag("trim-line")
	if t.proud > 0 {
		end, trim = tag("runs-on", t.length(t.proud)), tag("top-of-stretcher")
	}
	for _, line := range []struct {
		at   func(y float64) float64
		name Tag
	}{
		{t.Shoulder, name},
		{t.Shoulder, tag("line-off-square", measure.Angle(math.Abs(t.OffSquare)).Text(t.Unit))},
		{t.RoughEnd, end},
		{t.End, trim},
	} {
		d.LabelLine(geometry.Pt(line.at(0), 0), geometry.Pt(line.at(t.Width), t.Width), line.name)
	}
}

// endRole returns what the drawn end is: sawn there, or only where the drawing
// breaks off a part that runs on.
func (t bridleTemplate) endRole() Role {
	if t.proud > 0 {
		return Construction
	}
	return Cut
}

// section draws the joint as the edge at y shows it, down from the face: the
// slot in the middle, or the waste on both sides of the tenon.
func (t bridleTemplate) section(d *Drawing, y float64) {
	end, trim, shoulder := t.RoughEnd(y), t.End(y), t.Shoulder(y)
	upper, lower := t.Cheeks()
	d.Line(t.endRole(), geometry.Pt(end, 0), geometry.Pt(end, t.Thickness))
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
