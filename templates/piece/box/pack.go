package box

import (
	"math"
	"slices"
	"strings"

	"rodsheet/geometry"
	"rodsheet/geometry/joint"
	"rodsheet/geometry/lists"
	"rodsheet/geometry/measure"
	"rodsheet/templates"
	"rodsheet/templates/piece/assembly"
	"rodsheet/templates/piece/design"
	"rodsheet/templates/piece/drawings"
	"rodsheet/templates/wording"
)

// envelopes are those of the work, in its order.
func envelopes() []assembly.Envelope[Box] {
	return []assembly.Envelope[Box]{
		{ID: "sides", Heading: sidesHeading, Fill: after(Box.stock, Box.ends)},
		{ID: "glue-up", Heading: glueHeading, Fill: after(Box.floor, Box.glueUp)},
	}
}

// after fills an envelope with cards, and with the work that comes after them.
func after(cards func(Box) []templates.Card, work func(Box, templates.Setting) (templates.Section, error)) func(Box, templates.Setting) (templates.Section, error) {
	return func(b Box, s templates.Setting) (templates.Section, error) {
		out, err := work(b, s)
		out.Cards = append(cards(b), out.Cards...)
		return out, err
	}
}

func (b Box) ticks(s sort) []templates.Tick {
	return assembly.Ticked(sortNames[s.id], s.count+b.design.Wood.Spares)
}

func (b Box) bottomTicks() []templates.Tick {
	return assembly.Ticked(bottomTick, 1+b.design.Wood.Spares)
}

// stock is planing, and ripping with the edges sloped.
func (b Box) stock() []templates.Card {
	u := b.design.Unit
	plane := planeCard.Card(u, nil)
	plane.Set(thicknessReading, measure.Length(b.thickness()))
	for _, s := range b.sorts() {
		plane.Ticks = append(plane.Ticks, b.ticks(s)...)
		plane.Set(squaredReading, measure.Length(b.squared(s.first)), sortNames[s.id].With())
	}
	if thick := b.design.Box.Bottom.Thickness; thick > 0 {
		plane.Set(bottomThick, measure.Length(thick))
		plane.Ticks = append(plane.Ticks, b.bottomTicks()...)
	}
	if b.splined() {
		plane.Set(splineThickReading, measure.Length(b.splineThick()))
		plane.Caution = splineCaution.With()
		plane.Text = append(plane.Text, splineStock.With(len(b.faces)+b.design.Wood.Spares, b.mm(2*splineDeep*b.thickness())))
		plane.Ticks = append(plane.Ticks, assembly.Ticked(splineBoard, 1)...)
	}
	if b.wedges() > 0 {
		plane.Ticks = append(plane.Ticks, assembly.Ticked(wedgeBoard, 1)...)
	}
	out := []templates.Card{plane.Card}
	for _, s := range b.sorts() {
		r := b.ripCut(s)
		view := assembly.Rip{
			Section: r.section(b.thickness(), 8), Cut: r.line(b.thickness()), Kerf: b.design.Saw.Kerf,
			Tilt: r.tilt, Unit: u,
		}
		c := ripCard.Card(u, b.ticks(s), view.Picture(assembly.Either(r.tilt > 0, fromMakerSecond, fromMaker).With()))
		c.Heading, c.Test = ripCard.Heading.With(sortNames[s.id].With()), ripCard.Test.With(b.mm(r.width))
		c.Read(assembly.Either(r.tilt > 0, tiltAwayReading, tiltReading), measure.Angle(r.tilt))
		c.Set(fenceReading, measure.Length(r.width))
		if r.tilt == 0 {
			c.Text, c.Caution = []string{ripSquareText.With()}, squareCaution.With()
		} else {
			first, second := assembly.Either(r.outerFirst, outerDown, innerDown), assembly.Either(r.outerFirst, innerDown, outerDown)
			c.Text, c.Templates = []string{ripText.With(first.Capital().With(), second.With())}, assembly.Triangle(math.Pi/2-r.tilt)
		}
		out = append(out, c.Card)
	}
	return out
}

// ends is sawing the ends: the cards, the triangles of their gauges, the true shape of
// every side.
func (b Box) ends(s templates.Setting) (templates.Section, error) {
	var out templates.Section
	var bevels assembly.Bevels
	for _, sides := range b.sorts() {
		for k, c := range b.endCuts(sides) {
			out.Cards = append(out.Cards, b.endCard(c, k))
		}
		for _, a := range []float64{b.corner(sides.first).OffSquare(), b.tilt(sides.first), b.faces[sides.first].slope} {
			bevels.Add(math.Pi/2 - math.Abs(a))
		}
		out.Pictures = append(out.Pictures, b.shape(sides))
	}
	err := bevels.Onto(&out, s)
	if s.Full {
		for _, sides := range b.sorts() {
			out.Drawings = append(out.Drawings, b.outlineOf(sides))
		}
	}
	return out, err
}

// endCard is the set-up of one end.
func (b Box) endCard(c endCut, k int) templates.Card {
	down, edge := assembly.Either(c.outerDown, outerDown, innerDown), assembly.Either(c.upper, upperEdge, lowerEdge)
	view := assembly.Crosscut{
		Board: b.board(c), OffSquare: c.swing, Kerf: b.design.Saw.Kerf, Stop: c.stop, Down: down.With(), Tilted: c.tilt > 1e-9, Unit: b.design.Unit,
	}
	words := [...]assembly.CardText{firstEnd, secondEnd}[k]
	tilt := tiltReading
	out := words.Card(b.design.Unit, b.ticks(c.sort), view.Picture(fromAbove.With(edge.With())))
	out.Heading, out.Figures = words.Heading.With(sortNames[c.id].With()), assembly.OnGauge(b.design, c.swing)
	switch {
	case k == 0:
		out.Text = []string{firstEndText.With(turned(c.swing))}
	case math.Abs(c.swing) < 1e-9:
		out.Text = []string{secondSquare.With()}
	}
	if c.tilt > 1e-9 {
		tilt = tiltOverReading
		out.Say(otherSaw)
	}
	out.Set(tilt, measure.Angle(c.tilt))
	for _, a := range []float64{math.Abs(c.swing), c.tilt} {
		out.Templates = append(out.Templates, assembly.Triangle(math.Pi/2-a)...)
	}
	out.Test = firstEnd.Test.With(b.tool(c.swing), b.tool(c.tilt))
	if out.Templates == nil {
		out.Test = squareTest.With()
	}
	if c.stop > 0 {
		out.Set(stopReading, measure.Length(c.stop))
		if !b.dovetailed() { // those are as long as the box: they do not meet before their tails are cut
			out.Test = cornerTest.With(b.angle(b.corner(c.first).Dihedral()))
		}
	}
	return out.Card
}

// tool names what a cut so far off square is checked with.
func (b Box) tool(off float64) string {
	bevel := math.Pi/2 - math.Abs(off)
	if assembly.Triangle(bevel) == nil {
		return squareTool.With()
	}
	return triangleOf.With(b.angle(bevel))
}

// turned says how the gauge is turned for a blade that is so far off square: its end beside the
// waste goes the way of the fence on the picture, away from the maker where that is positive.
func turned(swing float64) string {
	switch {
	case swing > 1e-9:
		return turnedAway.With()
	case swing < -1e-9:
		return turnedTowards.With()
	}
	return squareGauge.With()
}

// shape is the outer face of a side with its sizes.
func (b Box) shape(s sort) templates.Picture {
	var d templates.Drawing
	face := b.down(s.first, true)
	d.Polygon(templates.Cut, face...)
	low, high := b.downEdges(s.first, true)
	off := 0.08 * math.Max(low, high)
	d.LabelLine(face[0], face[1], templates.Tag{ID: "lower-edge", Text: lowerEdgeOf.With(b.mm(low))})
	d.LabelLine(face[3], face[2], templates.Tag{ID: "upper-edge", Text: upperEdgeOf.With(b.mm(high))})
	x := math.Min(face[0].X, face[3].X) - off
	d.Named(templates.Construction, geometry.Pt(x, face[0].Y), geometry.Pt(x, face[3].Y), templates.Tag{ID: "wide", Text: b.mm(b.ripped(s.first))})
	d.LabelLine(face[1], face[2], templates.Tag{ID: "end", Text: offSquareOf.With(b.angle(math.Abs(b.corner(s.first).OffSquare())))})
	return templates.Picture{Heading: shapeHeading.With(sortNames[s.id].With()), View: templates.View{Part: "box", Face: s.id}, Strokes: d.Strokes, Labels: d.Labels}
}

// outlineOf is the same at full size.
func (b Box) outlineOf(s sort) templates.Drawing {
	p := b.shape(s)
	d := templates.Drawing{View: templates.View{Part: "box-side", Face: s.id}, Name: p.Heading, Free: true}
	d.Polygon(templates.Cut, b.down(s.first, true)...)
	d.Labels = slices.DeleteFunc(p.Labels, func(l templates.Label) bool { return l.ID == "wide" })
	return d
}

// floor is how the bottom is sawn, and its shape. Corners off square are marked one from the
// other: at a stop the wood behind such a corner would meet it first.
func (b Box) floor() []templates.Card {
	k := b.design.Box.Bottom
	if k.Thickness == 0 {
		return nil
	}
	c := bottomCard.Card(b.design.Unit, b.bottomTicks(), b.bottomPicture())
	corner := b.corner(0).Angle
	off := corner - math.Pi/2
	c.Read(cornerReading, measure.Angle(corner))
	if math.Abs(off) > 1e-9 {
		c.Figures = append(c.Figures, assembly.OnGauge(b.design, math.Abs(off))...)
	}
	for _, s := range b.sorts() {
		tilt := math.Abs(b.faces[s.first].slope)
		c.Read(bottomTilt, measure.Angle(tilt), edgeNames[s.id].With())
		c.Templates = append(c.Templates, assembly.Triangle(math.Pi/2-tilt)...)
	}
	if math.Abs(off) > 1e-9 {
		view := b.outline(b.inView(0), b.thickness()+k.Gap)
		edge := view[0].Distance(view[1])
		c.Read(bottomMark, measure.Length(edge))
		c.Text = b.bottomLies(bottomTurned.With(b.mm(edge/2), turned(off)))
	} else {
		for _, s := range b.sorts() {
			c.Set(bottomStop, measure.Length(2*b.room(s.first, b.onTable(s.first), k.Gap)), edgeNames[s.id].With())
		}
		c.Text, c.Test = b.bottomLies(bottomOblong.With()), oblongTest.With()
	}
	return []templates.Card{c.Card}
}

// bottomPicture shows the bottom from above with the lengths of its edges.
func (b Box) bottomPicture() templates.Picture {
	var d templates.Drawing
	k := b.design.Box.Bottom
	inward := b.thickness() + k.Gap
	under, upper := b.outline(k.Up, inward), b.outline(k.Up+k.Thickness, inward)
	for i := range upper {
		j := (i + 1) % len(upper)
		edge := upper[i].Distance(upper[j])
		if b.design.Box.Outline == design.RegularBox { // all alike
			d.LabelPoint(geometry.Bounds(upper...).Centre(), templates.Tag{ID: "upper-side", Text: bottomEach.With(b.mm(edge))})
			break
		}
		d.LabelLine(upper[i], upper[j], templates.Tag{ID: "upper-side", Text: b.mm(edge)})
	}
	d.Polygon(templates.Cut, upper...)
	d.Polygon(templates.Hidden, under...)
	return templates.Picture{Heading: bottomView.With(), Strokes: d.Strokes, Labels: d.Labels}
}

// onTable is at what height the face of the bottom lies that is down while its edge along side i
// is sawn: the larger one, so that the blade leans over the part. The other one is in view.
func (b Box) onTable(i int) float64 { return b.bottomFace(b.faces[i].slope >= 0) }

func (b Box) inView(i int) float64 { return b.bottomFace(b.faces[i].slope < 0) }

func (b Box) bottomFace(upper bool) float64 {
	k := b.design.Box.Bottom
	if upper {
		return k.Up + k.Thickness
	}
	return k.Up
}

// bottomLies says which face of the bottom lies on the table, and what comes after the first
// edge. Between sides of which some lean in and some out, that face differs.
func (b Box) bottomLies(then string) []string {
	var in []string
	out := false
	for _, s := range b.sorts() {
		if slope := b.faces[s.first].slope; slope < 0 {
			in = append(in, edgeNames[s.id].With())
		} else {
			out = out || slope > 0
		}
	}
	lies := assembly.Either(len(in) > 0 && !out, underDown, upperDown).With()
	if out || len(in) > 0 {
		lies = tiltedOver.With(lies)
	}
	text := []string{bottomText.With(lies, then)}
	if out && len(in) > 0 {
		text = append(text, bottomOther.With(wording.And(in...)))
	}
	return text
}

// glueUp is the corner with its spline, the wedge blocks and putting together.
func (b Box) glueUp(s templates.Setting) (templates.Section, error) {
	var out templates.Section
	c := b.corner(0)
	glue := glueCard.Card(b.design.Unit, nil, b.cornerPicture())
	glue.Read(dihedralReading, measure.Angle(c.Dihedral()))
	if b.dovetailed() {
		glue.Setup, glue.Test = nil, edgesTest.With(b.angle(math.Abs(b.faces[0].slope)))
		glue.Text = b.withBottom(dovetailGlue.With())
		job, err := b.dovetailJob(s)
		if err != nil {
			return out, err
		}
		job.Cards = append(job.Cards, glue.Card)
		return job, nil
	}
	if n := b.wedges(); n == 0 {
		glue.Text = b.withBottom(buttText.With())
	} else {
		glue.Ticks, glue.Caution = assembly.Ticked(wedgeTick, n), wedgeCaution.With()
		fit := assembly.Either(b.design.Box.Bottom.Thickness > 0, dryFitBottom, dryFit)
		how := strapText.With()
		if at, ok := b.clampAt(); ok {
			how = clampText.With(b.mm(at))
		}
		steps := []string{wedgeText.With(), fit.With(), blocksOn.With(), glueText.With(), how, blocksOff.With()}
		if b.splined() {
			steps[3] = splinedGlue.With()
			steps = append(steps, splinesFlush.With())
		}
		glue.Text = b.withBottom(steps...)
		out.Drawings = []templates.Drawing{b.wedge()}
		glue.Templates = []templates.View{out.Drawings[0].View}
	}
	if b.splined() {
		glue.Setup = nil // the corner stands on the card before
		slots := splineCard.Card(b.design.Unit, assembly.Ticked(splineTick, b.allEnds()), b.cornerPicture())
		slots.Set(splineReading, measure.Length(b.splineThick()))
		slots.Read(splineDeepReading, measure.Length(b.slotDeep()))
		slots.Read(splinePlaceReading, measure.Length(splinePlace*b.mitre()-b.splineThick()/2))
		slots.Text = []string{splineText.With(b.angle(math.Abs(b.tilt(0))))}
		out.Cards = append(out.Cards, slots.Card)
	}
	out.Cards = append(out.Cards, glue.Card)
	return out, nil
}

// withBottom says the steps of the glue-up between what the bottom asks for: its ledges are glued
// while the sides are apart, and no rim that is narrower lets it through.
func (b Box) withBottom(steps ...string) (out []string) {
	k := b.design.Box.Bottom
	if k.Thickness > 0 && k.Up > 0 {
		out = append(out, ledgeText.With(b.mm(b.ledgeLong()), b.mm(k.Up), b.mm(k.Gap)))
	}
	out = append(out, strings.Join(steps, " "))
	if k.Thickness > 0 && b.held() {
		out = append(out, bottomBefore.With())
	}
	return out
}

// held reports whether the rim is narrower than the bottom somewhere.
func (b Box) held() bool {
	k := b.design.Box.Bottom
	for i := range b.faces {
		if b.room(i, b.design.Box.Height, 0) < b.room(i, k.Up, k.Gap) {
			return true
		}
	}
	return false
}

// ledgeLong is about half of the shortest edge that a ledge lies along, in whole steps.
func (b Box) ledgeLong() float64 {
	inside, half := b.outline(0, b.thickness()), math.Inf(1)
	for i, p := range inside {
		half = min(half, p.Distance(inside[(i+1)%len(inside)])/2)
	}
	step := b.design.Unit.Round(5, 1.0/4)
	return math.Max(math.Floor(half/step), 1) * step
}

// allEnds is how many ends the sides have, those of the spares among them.
func (b Box) allEnds() int {
	return lists.Sum(b.sorts(), func(s sort) int { return 2 * (s.count + b.design.Wood.Spares) })
}

// cornerPicture is the section of a corner, square to the line in which the faces meet.
func (b Box) cornerPicture() templates.Picture {
	h := joint.Hopper{SlopingCorner: b.corner(0), Butt: b.design.Box.Corner == design.ButtCorner}
	first, second := h.Section(b.thickness(), 4*b.thickness())
	p := drawings.NewSketch()
	p.Heading = cornerView.With()
	p.Block(templates.Light, first...)
	p.Block(templates.Light, second...)
	angle := h.Dihedral()
	radius := 1.6 * b.thickness()
	p.Line(templates.Construction, geometry.Arc(geometry.Point{}, radius, 0, angle)...)
	mid := geometry.Polar(radius, angle/2)
	p.Label(mid, mid, templates.Tag{ID: "dihedral", Text: b.angle(angle)})
	if b.splined() {
		// From the inner corner, the origin, the mitre runs out along the bisector.
		along := geometry.Polar(1, angle/2+math.Pi)
		at, across := along.Mul(splinePlace*b.mitre()), along.Perp()
		half, deep := along.Mul(b.splineThick()/2), across.Mul(splineDeep*b.thickness())
		p.Block(templates.Middle, at.Sub(half).Sub(deep), at.Add(half).Sub(deep), at.Add(half).Add(deep), at.Sub(half).Add(deep))
	}
	return p.Picture
}
