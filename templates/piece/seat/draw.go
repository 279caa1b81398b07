package seat

import (
	"math"
	"strconv"

	"rodsheet/geometry"
	"rodsheet/geometry/joint"
	"rodsheet/geometry/measure"
	"rodsheet/geometry/solid"
	"rodsheet/templates"
	"rodsheet/templates/piece/assembly"
	"rodsheet/templates/piece/design"
	"rodsheet/templates/piece/drawings"
)

// widestPlan is the largest seat that is drawn whole at full size, mm: a bench is set out
// from its centre line, and each hole on a sheet of its own.
const widestPlan = 560.0

// whole reports whether the seat is drawn at full size.
func (s Seat) whole() bool {
	box := s.box.Size()
	return math.Max(box.X, box.Y) <= widestPlan
}

// looking returns what takes a point of the slab's frame to what is seen of the face that
// is bored, the front at the bottom: from below left and right change places.
func (s Seat) looking() geometry.Affine {
	if s.design.Seat.Mortise.Upper {
		return geometry.Identity()
	}
	return geometry.MirrorX()
}

// slabDrawing is the face that is bored at full size: outline, holes, sightlines, grain.
func (s Seat) slabDrawing() templates.Drawing {
	d := templates.Drawing{View: templates.View{Part: "seat", Face: "bored"}, Name: faceDrawn(s.design.Seat.Mortise.Upper).With()}
	d.Polygon(templates.Cut, s.rim.Outline()...)
	d.LabelPoint(geometry.Pt(0, s.frontEdge()), templates.Tag{ID: "front", Text: frontLabel.With()})
	s.middleLines(&d)
	for i := range s.legs {
		s.holeOn(&d, i)
	}
	return d.Moved(s.looking())
}

// middleLines draws the centre line, the cross of the middle, and the way of the grain beside it,
// in the frame of the slab.
func (s Seat) middleLines(d *templates.Drawing) {
	const cross, grain = 12.0, 60.0
	front, back := geometry.Pt(0, s.frontEdge()), geometry.Pt(0, s.backEdge())
	d.Line(templates.Centre, front, back)
	d.LabelLine(front, front.Lerp(back, 0.4), templates.Tag{ID: "centre-line", Text: centreLabel.With()})
	d.Line(templates.Construction, geometry.Pt(-cross, 0), geometry.Pt(cross, 0))
	d.LabelPoint(geometry.Point{}, templates.Tag{ID: "middle", Text: middleLabel.With()})
	g := flat(s.grain())
	at := g.Perp().Mul(-18).Sub(g.Mul(grain / 2))
	tip := at.Add(g.Mul(grain))
	d.Line(templates.Construction, at, tip)
	arrowhead(d, at, g, -5)
	arrowhead(d, tip, g, 5)
	d.LabelLine(at, tip, templates.Tag{ID: "grain", Text: grainLabel.With()})
}

// arrowhead ends a line that runs along a unit vector, so long; below 0 one against that.
func arrowhead(d *templates.Drawing, tip, along geometry.Point, long float64) {
	for _, side := range []float64{1, -1} {
		d.Line(templates.Construction, tip, tip.Sub(along.Mul(long)).Add(along.Perp().Mul(2.5*side)))
	}
}

// holeOn draws one hole in the frame of the slab: its middle and mouth, where it comes out,
// its sightline.
func (s Seat) holeOn(d *templates.Drawing, i int) {
	l := s.legs[i]
	const past = 42.0
	at, along := flat(l.at), l.sightline()
	d.Polygon(templates.Cut, s.mouth(l, s.bored())...)
	if s.design.Seat.Mortise.Depth == 0 {
		d.Polygon(templates.Hidden, s.mouth(l, s.thickness()-s.bored())...)
	}
	inner, outer := at.Sub(along.Mul(past)), at.Add(along.Mul(past))
	d.Line(templates.Centre, inner, outer)
	arrowhead(d, outer, along, 6)
	if ahead := geometry.Pt(0, l.out*past); math.Abs(l.lean.Splay) > 1e-9 {
		d.Line(templates.Construction, at.Sub(ahead), at.Add(ahead))
	}
	d.LabelPoint(at, templates.Tag{ID: "hole", Text: holeLabel.With(i+1, s.mm(s.boring(l).pilot))})
	d.LabelLine(at, outer, templates.Tag{ID: "foot-leans", Text: footLabel.With()})
	d.LabelLine(inner, at, templates.Tag{ID: "sightline", Text: sightlineLabel.With(s.deg(math.Abs(l.lean.Sightline())))})
}

// holeDrawings are the holes of a bench, one drawing for each leg: centred on the hole,
// its cross lines along the seat's centre line and square to it.
func (s Seat) holeDrawings() []templates.Drawing {
	const half = 50.0
	var out []templates.Drawing
	for i, l := range s.legs {
		var d templates.Drawing
		s.holeOn(&d, i)
		at, fore, side := flat(l.at), geometry.Pt(0, half), geometry.Pt(half, 0)
		d.Named(templates.Construction, at.Sub(fore), at.Add(fore), templates.Tag{ID: "from-centre-line", Text: fromCentre.With(s.mm(math.Abs(at.X)))})
		d.Named(templates.Construction, at.Sub(side), at.Add(side), templates.Tag{ID: "from-edge", Text: assembly.Either(l.out > 0, fromBack, fromFront).With(s.mm(s.fromEdge(l)))})
		d.LabelPoint(at.Sub(fore), templates.Tag{ID: "front", Text: towardsFront.With()})
		out = append(out, d.Moved(geometry.Translate(at.Mul(-1)).Then(s.looking())).Of(
			templates.View{Part: "seat", Face: measure.ID("hole-" + strconv.Itoa(i+1))}, holeDrawn.With(i+1, faceDrawn(s.design.Seat.Mortise.Upper).With())))
	}
	return out
}

// fromEdge returns how far a hole stands in from the front or the back edge, along the
// centre line.
func (s Seat) fromEdge(l leg) float64 {
	if l.out > 0 {
		return s.backEdge() - l.at.Y
	}
	return l.at.Y - s.frontEdge()
}

// plan is the face that is bored, small, with the figures by which it is set out.
func (s Seat) plan() templates.Picture {
	var d templates.Drawing
	to := s.looking()
	d.Polygon(templates.Cut, to.ApplyAll(s.rim.Outline())...)
	box := s.box.Size()
	off := 0.09 * math.Max(box.X, box.Y)
	front, back := geometry.Pt(0, s.frontEdge()), geometry.Pt(0, s.backEdge())
	d.Line(templates.Centre, front, back)
	d.LabelPoint(front.Lerp(back, 0.02), templates.Tag{ID: "front", Text: frontLabel.With()})
	for i, l := range s.legs {
		at, along := flat(l.at), l.sightline()
		d.Polygon(templates.Outline, to.ApplyAll(s.mouth(l, s.bored()))...)
		d.Line(templates.Centre, to.Apply(at), to.Apply(at.Add(along.Mul(2.2*off))))
		d.LabelPoint(to.Apply(at), templates.Tag{ID: "leg-number", Text: legNumber.With(i + 1)})
	}
	p := templates.Picture{Heading: faceDrawn(s.design.Seat.Mortise.Upper).With()}
	left, below, above := -box.X/2, s.frontEdge(), s.backEdge()
	for _, r := range s.design.Seat.Rows() {
		row := s.row(r)
		y := row.From
		if r == design.CircleRow {
			d.Line(templates.Construction, geometry.Arc(geometry.Point{}, row.From, 0, 2*math.Pi)...)
			y = 0
		}
		if r == design.FrontRow {
			y = -y
		}
		left -= off
		switch {
		case y != 0:
			p.Span(geometry.Pt(left+off, 0), geometry.Pt(left+off, y), geometry.Pt(-off, 0), plainFigure(s.mm(row.From)))
		case r == design.CircleRow:
			p.Span(geometry.Pt(0, below), geometry.Pt(-row.From, below), geometry.Pt(0, -off), plainFigure(s.mm(row.From)))
		}
		if row.Legs == 1 || r == design.CircleRow {
			continue
		}
		edge, away := &below, -off
		if r != design.FrontRow {
			edge, away = &above, off
		}
		p.Span(geometry.Pt(-row.Apart/2, *edge), geometry.Pt(row.Apart/2, *edge), geometry.Pt(0, away), plainFigure(s.mm(row.Apart)))
		*edge += away
	}
	p.Strokes, p.Labels = d.Strokes, d.Labels
	return p
}

// wedges is the upper face with the slots of the tenons, square to the grain.
func (s Seat) wedges() templates.Picture {
	var d templates.Drawing
	d.Polygon(templates.Outline, s.rim.Outline()...)
	across := flat(s.grain()).Perp()
	for i, l := range s.legs {
		z := s.thickness()
		mouth := s.mouth(l, z)
		d.Polygon(templates.Outline, mouth...)
		p := flat(l.point(l.to(z)))
		if line, ok := geometry.ClipConvex(geometry.Segment{A: p.Sub(across.Mul(1000)), B: p.Add(across.Mul(1000))}, mouth); ok {
			d.Line(templates.Cut, line.A, line.B)
		}
		d.LabelPoint(p, templates.Tag{ID: "leg-number", Text: legNumber.With(i + 1)})
	}
	g, box := flat(s.grain()), s.box.Size()
	reach := 0.18 * math.Min(box.X, box.Y)
	d.LabelPoint(geometry.Pt(0, s.frontEdge()), templates.Tag{ID: "front", Text: frontLabel.With()})
	d.LabelLine(g.Mul(-reach), g.Mul(reach), templates.Tag{ID: "grain", Text: grainLabel.With()})
	return templates.Picture{Heading: upperFace.With(), Strokes: d.Strokes, Labels: d.Labels,
		Arrows: []templates.Arrow{{Points: []geometry.Point{g.Mul(-reach), g.Mul(reach)}, Both: true}}}
}

// boringView is the slab cut along the sightline, bit and bevel gauge in it. The face that is
// bored is up; the foot leans out to the right. From above the bit leans inward then.
func (s Seat) boringView(b boring) templates.Picture {
	k := s.design.Seat
	p := drawings.NewSketch()
	p.Heading = alongSightline.With()
	t := k.Thickness
	lean := b.resultant
	if b.upper {
		lean = -lean
	}
	sin, cos := math.Sincos(lean)
	axis, square := geometry.Pt(sin, cos), geometry.Pt(cos, -sin) // up the bit; square to it
	half := math.Max(3.2*b.bit, t*math.Tan(b.resultant)+2.5*b.bit)
	slab := geometry.Box(-half, -t, half, 0).Corners()
	backing := geometry.Box(-half, -t-16, half, -t).Corners()
	p.Block(templates.Light, slab...)
	name := func(a, c geometry.Point, id measure.ID, text string) {
		p.Label(a, c, templates.Tag{ID: id, Text: text})
	}
	reach := b.depth
	if reach == 0 {
		reach = t/cos + 8
		p.Block(templates.Middle, backing...)
	}
	r := b.bit / 2
	at := func(along, across float64) geometry.Point { return axis.Mul(along).Add(square.Mul(across)) }
	hole := []geometry.Point{at(-reach, -r), at(-reach, r), at(1.2*t, r), at(1.2*t, -r)}
	p.Area(templates.White, hole...)
	p.Line(templates.Cut, geometry.Closed(hole)...)
	p.Line(templates.Centre, at(-reach-8, 0), at(1.2*t+30, 0))
	// The gauge stands beside the bit on the side to which it leans: it encloses the bevel.
	side := math.Copysign(1, lean)
	foot := geometry.Pt(side*2.2*r, 0)
	p.Line(templates.Cut, foot.Add(geometry.Pt(side*1.1*t, 0)), foot, foot.Add(axis.Mul(1.1*t)))
	bevel := math.Pi/2 - b.resultant
	from, to := 0.0, bevel
	if side < 0 {
		from, to = math.Pi-bevel, math.Pi
	}
	p.Line(templates.Construction, geometry.Arc(foot, 0.6*t, from, to)...)
	mid := foot.Add(geometry.Polar(0.6*t, (from+to)/2))
	name(mid, mid, "bevel", bevelLabel.With(s.deg(bevel))) // first: the bit bars all room but that beside it
	name(hole[2], hole[3], "bit", bitLabel.With(s.mm(b.pilot)))
	name(slab[3], slab[2].Lerp(slab[3], 0.65), "bored-face", faceDrawn(b.upper).With())
	// Outward is to the right; the arrow stands where the gauge does not.
	from, to = half*0.25, half
	if side > 0 {
		from, to = -half, -half*0.25
	}
	tail, head := geometry.Pt(from, 0.75*t), geometry.Pt(to, 0.75*t)
	p.Arrow(tail, head)
	name(tail, head, "foot-leans", footOut.With())
	if b.depth == 0 {
		name(backing[0], backing[1], "backing", backingLabel.With())
	}
	return p.Picture
}

// legView is a leg on the bench, its tip on the left, with its lengths.
func (s Seat) legView(t turning) templates.Picture {
	var d templates.Drawing
	r0, r1, a0, a1 := t.tip/2, t.root/2, t.size/2, t.end/2
	long := t.blank.Length
	outline := []geometry.Point{
		geometry.Pt(0, -r0), geometry.Pt(t.shoulder, -r1), geometry.Pt(t.shoulder, -a0), geometry.Pt(long, -a1),
		geometry.Pt(long, a1), geometry.Pt(t.shoulder, a0), geometry.Pt(t.shoulder, r1), geometry.Pt(0, r0),
	}
	d.Polygon(templates.Outline, outline...)
	d.Line(templates.Centre, geometry.Pt(-10, 0), geometry.Pt(long+10, 0))
	if t.section == design.OctagonLeg {
		for _, y := range []float64{1, -1} { // the arrises of the flat that is seen
			k := math.Tan(math.Pi / 8)
			d.Line(templates.Outline, geometry.Pt(t.shoulder, y*a0*k), geometry.Pt(long, y*a1*k))
		}
	}
	d.LabelLine(outline[6], outline[7], templates.Tag{ID: "tenon", Text: tenonLabel.With()})
	d.LabelLine(outline[4], outline[5].Lerp(outline[4], 0.6), templates.Tag{ID: "foot-end", Text: footEnd.With(s.mm(t.end))})
	p := templates.Picture{Heading: legViewHeading.With(), Strokes: d.Strokes, Labels: d.Labels, Wide: true}
	for i, to := range []float64{t.shoulder, long} {
		p.Span(geometry.Point{}, geometry.Pt(to, 0), geometry.Pt(0, -0.9*t.size*float64(i+1)), plainFigure(s.mm(to)))
	}
	return p
}

// octagon is the end of a leg's blank at full size, with the lines that are gauged on it.
func (s Seat) octagon() templates.Drawing {
	k := s.design.Seat.Legs
	d := templates.Drawing{View: templates.View{Part: "seat", Face: "octagon"}, Name: octagonName.With(), Free: true}
	half := k.Size / 2
	d.Polygon(templates.Outline, geometry.Box(-half, -half, half, half).Corners()...)
	d.Polygon(templates.Cut, geometry.Rotate(math.Pi/4).ApplyAll(ring(8, half))...)
	d.LabelLine(geometry.Pt(-half, half), geometry.Pt(half, half), templates.Tag{ID: "square-of-blank", Text: blankLabel.With(s.mm(k.Size))})
	if s.tapered() {
		d.Polygon(templates.Hidden, geometry.Rotate(math.Pi/4).ApplyAll(ring(8, k.Foot/2))...)
		d.LabelPoint(geometry.Pt(k.Foot/2, 0), templates.Tag{ID: "foot-size", Text: footSize.With(s.mm(k.Foot))})
	}
	return d
}

// octagonShown is the octagon on its card, with the distance that is gauged from a corner.
func (s Seat) octagonShown(d templates.Drawing) templates.Picture {
	p := templates.Picture{Heading: d.Name, Strokes: d.Strokes, Labels: d.Labels}
	corner, cut := d.Bounds().Min, joint.OctagonCorner(s.design.Seat.Legs.Size)
	p.Span(corner, corner.Add(geometry.Pt(cut, 0)), geometry.Pt(0, -cut/4), plainFigure(s.mm(cut)))
	return p
}

// rodView is a hole for a stretcher: the leg upside down on its side, its foot to the
// left, or the stretcher that is entered, its back end to the left.
func (s Seat) rodView(b rodBoring) templates.Picture {
	var d templates.Drawing
	thick := s.design.Seat.Stretchers.Diameter
	if s.rods[b.rod].kind != crossRod {
		thick = s.design.Seat.Legs.Size
	}
	half, long := thick/2, 3*thick
	d.Polygon(templates.Outline, geometry.Box(-long, -half, long, half).Corners()...)
	d.Line(templates.Centre, geometry.Pt(-long-6, 0), geometry.Pt(long+6, 0))
	r := s.tenon() / 2
	u := geometry.Polar(1, math.Pi-b.lean) // the foot, or the end of the rod, on the left
	n := u.Perp()
	out := half / math.Sin(b.lean)
	from, to := out-b.depth, out+1.6*thick
	d.Polygon(templates.Cut, u.Mul(from).Sub(n.Mul(r)), u.Mul(to).Sub(n.Mul(r)), u.Mul(to).Add(n.Mul(r)), u.Mul(from).Add(n.Mul(r)))
	d.Line(templates.Centre, u.Mul(from-5), u.Mul(to+5))
	radius := 1.2 * thick
	d.Line(templates.Construction, geometry.Arc(geometry.Point{}, radius, math.Pi-b.lean, math.Pi)...)
	mid := geometry.Polar(radius, math.Pi-b.lean/2)
	d.LabelPoint(mid, templates.Tag{ID: "bevel", Text: s.deg(b.lean)})
	end := footLabelEnd
	if s.rods[b.rod].kind == crossRod {
		end = backEndLabel
	}
	d.LabelLine(geometry.Pt(-long, -half), geometry.Pt(-long, half), templates.Tag{ID: "foot-end", Text: end.With()})
	return templates.Picture{Heading: rodViewHeading.With(), Strokes: d.Strokes, Labels: d.Labels}
}

// levelView is the seat from its right, blocked up on the bench.
func (s Seat) levelView() templates.Picture {
	var d templates.Drawing
	// Outlines alone: so small the edges of round parts would be no more than dark.
	m, side := s.room, solid.Side()
	bodies := []solid.Solid{solid.Box(solid.V(-1, s.frontEdge(), 0), solid.V(1, s.backEdge(), s.thickness()))}
	for _, l := range s.legs {
		t := s.turning(l)
		bodies = append(bodies, s.shaftTo(l, s.tip(l)-t.over+t.blank.Length))
	}
	for _, r := range s.rods {
		bodies = append(bodies, s.rodShaft(r))
	}
	for _, b := range bodies {
		d.Polygon(templates.Outline, side.Silhouette(b.Transform(m))...)
	}
	v := s.levelling()
	box := d.Bounds()
	off := 0.1 * box.Height()
	front, back := side.Point(m.Apply(solid.V(0, s.frontEdge(), s.thickness()))), side.Point(m.Apply(solid.V(0, s.backEdge(), s.thickness())))
	left, middle, right := box.Min.X-off, geometry.Pt(box.Centre().X, 0), box.Max.X+off
	bench := geometry.Box(left-off, -v.pencil-2*off, right+off, -v.pencil)
	pencil := [2]geometry.Point{geometry.Pt(left-4*off, 0), geometry.Pt(right+off/2, 0)}
	d.Polygon(templates.Outline, bench.Corners()...)
	d.Line(templates.Cut, pencil[:]...)
	d.LabelPoint(geometry.Pt((middle.X+right)/2, bench.Centre().Y), templates.Tag{ID: "bench", Text: benchLabel.With()})
	d.LabelLine(pencil[0], geometry.Pt(left, 0), templates.Tag{ID: "scribe", Text: scribeLabel.With()})
	d.LabelPoint(front, templates.Tag{ID: "front", Text: frontLabel.With()})
	p := templates.Picture{Heading: levelViewHeading.With(), Strokes: d.Strokes, Labels: d.Labels}
	p.Span(middle.Sub(geometry.Pt(0, v.pencil)), middle, geometry.Point{}, plainFigure(s.mm(v.pencil)))
	for _, e := range []struct {
		x, at, high, away float64
	}{{left, front.Y, v.front, -off}, {right, back.Y, v.back, off}} {
		p.Span(geometry.Pt(e.x-e.away, -v.pencil), geometry.Pt(e.x-e.away, e.at), geometry.Pt(e.away, 0), plainFigure(s.mm(e.high)))
	}
	return p
}

func plainFigure(s string) templates.Tag { return templates.Tag{ID: "plain-figure", Text: s} }
