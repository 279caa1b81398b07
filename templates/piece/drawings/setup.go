package drawings

import (
	"math"

	"rodsheet/geometry"
	"rodsheet/geometry/measure"
	"rodsheet/geometry/solid"
	"rodsheet/templates"
	"rodsheet/templates/piece"
	"rodsheet/templates/piece/shop"
	"rodsheet/templates/piece/wording"
)

// A setUp is a part as it lies at a tool, in the frame of that tool (see shop.Work),
// before a cut and after it.
type setUp struct {
	piece.Piece
	shop.Step
	shop.Work
	before, after solid.Part
	swing         float64 // of the blade off square to the fence, in the frame
	blade         float64 // where its near side meets the fence
}

func newSetUp(p piece.Piece, s shop.Step, w shop.Work) setUp {
	out := setUp{p, s, w, w.Before.Transform(w.At), w.After.Transform(w.At), 0, 0}
	if len(w.Blades) == 0 {
		return out
	}
	side := w.Blades[0].Side
	if out.cut().How == shop.OnEnd {
		out.swing, out.blade = out.cut().OffSquare, side.D
		return out
	}
	out.swing = math.Atan2(-side.N.Y, side.N.X)
	out.blade = side.D / math.Cos(out.swing)
	return out
}

// cut is what the saw does, also where it is done by hand.
func (s setUp) cut() shop.Cut { return s.Saw.Cut }

// lie is how the part lies.
func (s setUp) lie() shop.Lie { return s.Saw.Lies[min(s.Work.Lie, 1)] }

// Sizes of a saw as it is drawn, in mm: our own, near those of common machines.
const (
	gaugeDeep  = 22.0 // of the fence on the mitre gauge
	stopLong   = 28.0 // of the stop along the fence
	bladeLong  = 36.0 // what is shown of the blade before and behind the part
	fenceAfter = 70.0 // how far the fence reaches beyond the blade
)

// table returns what takes the frame of the gauge to the picture: the blade runs
// up the paper, north is the far side of the table, and the side of the blade
// nearer the stop stands on x = 0 where it meets the fence.
func (s setUp) table() geometry.Affine {
	m := geometry.Translate(geometry.Pt(-s.blade, 0))
	swing := s.swing
	if s.Mirrored() {
		m, swing = m.Then(geometry.MirrorX()), -swing
	}
	return m.Then(geometry.Rotate(swing))
}

// A sketcher draws in the frame of a tool on to a picture.
type sketcher struct {
	templates.Picture
	to geometry.Affine
}

func (k *sketcher) area(t templates.Tone, corners ...geometry.Point) {
	k.Areas = append(k.Areas, templates.Area{Tone: t, Points: k.to.ApplyAll(corners)})
}

func (k *sketcher) line(r templates.Role, points ...geometry.Point) {
	k.Strokes = append(k.Strokes, templates.Stroke{Role: r, Points: k.to.ApplyAll(points)})
}

// block draws something solid: an area in its outline.
func (k *sketcher) block(t templates.Tone, corners ...geometry.Point) {
	k.area(t, corners...)
	k.line(templates.Outline, geometry.Closed(corners)...)
}

func (k *sketcher) label(a, b geometry.Point, t templates.Tag) {
	k.Labels = append(k.Labels, templates.Label{ID: t.ID, Text: t.Text, On: geometry.Segment{A: k.to.Apply(a), B: k.to.Apply(b)}})
}

// span draws a distance from a to b, moved aside by off, with lines out to it.
func (k *sketcher) span(a, b, off geometry.Point, t templates.Tag) {
	c, d := a.Add(off), b.Add(off)
	past := off.Unit().Mul(off.Norm() / 6)
	k.line(templates.Construction, a, c.Add(past))
	k.line(templates.Construction, b, d.Add(past))
	k.arrow(true, c, d)
	k.label(c, d, t)
}

func (k *sketcher) arrow(both bool, points ...geometry.Point) {
	k.Arrows = append(k.Arrows, templates.Arrow{Points: k.to.ApplyAll(points), Both: both})
}

// wood draws a part as it is seen, and what a cut takes of it.
func (k *sketcher) wood(before, after solid.Part, v solid.View) {
	for _, s := range before.Pieces {
		k.area(templates.Light, v.Silhouette(s)...)
	}
	waste := without(before, after)
	visible, hidden := solid.Project([]solid.Part{after, waste}, v)
	for _, s := range visible {
		k.line(templates.Outline, s.A, s.B)
	}
	for _, s := range hidden {
		k.line(templates.Hidden, s.A, s.B)
	}
	step := geometry.Bounds(k.cornersOf(before, v)...)
	for _, s := range waste.Pieces {
		for _, h := range geometry.Hatch(v.Silhouette(s), math.Pi/4, math.Max(2, step.Width()/70)) {
			k.line(templates.Waste, h.A, h.B)
		}
	}
}

func (k *sketcher) cornersOf(p solid.Part, v solid.View) []geometry.Point {
	var out []geometry.Point
	for _, s := range p.Pieces {
		out = append(out, v.Silhouette(s)...)
	}
	return out
}

// without returns what a cut takes away.
func without(before, after solid.Part) solid.Part {
	waste := before
	for _, s := range after.Pieces {
		waste = waste.Subtract(s)
	}
	waste.Pieces = slicesOf(waste.Pieces)
	return waste
}

// slicesOf leaves out slivers of rounding.
func slicesOf(all []solid.Solid) []solid.Solid {
	var out []solid.Solid
	for _, s := range all {
		if s.Volume() > solid.ClashFloor {
			out = append(out, s)
		}
	}
	return out
}

// onGauge draws the table saw from above.
func (s setUp) onGauge() templates.Picture {
	k := sketcher{to: s.table()}
	room := s.before.Bounds()
	across := room.Max.Y
	from, to := -stopLong-15, math.Max(room.Max.X, s.blade+fenceAfter)+10
	k.block(templates.Middle, geometry.Pt(from, -gaugeDeep), geometry.Pt(to, -gaugeDeep), geometry.Pt(to, 0), geometry.Pt(from, 0))
	k.wood(s.before, s.after, solid.Plan())
	k.blade(across+bladeLong, -gaugeDeep-bladeLong, s)
	if s.cut().Stop > 0 {
		high := math.Min(across, 40)
		k.block(templates.Dark, geometry.Pt(-stopLong, 0), geometry.Pt(0, 0), geometry.Pt(0, high), geometry.Pt(-stopLong, high))
		k.label(geometry.Pt(-stopLong, high), geometry.Pt(0, high), tag("stop-block"))
		k.span(geometry.Pt(0, 0), geometry.Pt(s.blade, 0), geometry.Pt(0, -gaugeDeep-24), tag("plain-figure", s.MM(s.blade)))
	}
	if s.cut().Spacer > 0 {
		y := across + 12
		k.line(templates.Hidden, geometry.Closed([]geometry.Point{
			geometry.Pt(0, y), geometry.Pt(s.cut().Spacer, y), geometry.Pt(s.cut().Spacer, y+18), geometry.Pt(0, y+18),
		})...)
		k.label(geometry.Pt(0, y+18), geometry.Pt(s.cut().Spacer, y+18), tag("spacer-block", s.MM(s.cut().Spacer)))
	}
	k.faces(s, room)
	k.gaugeAngle(s)
	return k.Picture
}

// blade draws the blade between two distances from the fence, along itself, and
// the line it saws in.
func (k *sketcher) blade(far, near float64, s setUp) {
	tan := math.Tan(s.swing)
	wide := s.Piece.Kerf / math.Cos(s.swing)
	at := func(x, y float64) geometry.Point { return geometry.Pt(s.blade+x+y*tan, y) }
	k.block(templates.Dark, at(0, near*0.6), at(wide, near*0.6), at(wide, far*0.9), at(0, far*0.9))
	k.line(templates.Centre, at(wide/2, near), at(wide/2, far))
	k.arrow(false, at(wide/2, near-28), at(wide/2, near-4)) // the way it is pushed
	k.label(at(wide, far*0.9), at(wide, far), tag("blade"))
}

// faces says how the part lies, on it only which face is down: on the longer side of
// the blade, where no waste is hatched.
func (k *sketcher) faces(s setUp, room solid.Extent) {
	lie := s.lie()
	if lie.Down != shop.NoFace {
		end := room.Min.X
		if room.Max.X-s.blade > s.blade-end {
			end = room.Max.X
		}
		mid := geometry.Pt((end+s.blade)/2, room.Max.Y/2)
		k.label(mid, mid, tag("face-down", wording.Face(lie.Down)))
	}
	k.Heading = say(fromAbove, wording.Lying(lie, s.cut()))
}

// gaugeAngle draws by how much the gauge is turned off square: between the blade and a
// line square to the fence, before the fence.
func (k *sketcher) gaugeAngle(s setUp) {
	if s.swing == 0 {
		return
	}
	const radius = gaugeDeep + 18
	square, blade := -math.Pi/2, -math.Pi/2-s.swing
	corner := geometry.Pt(s.blade, 0)
	k.line(templates.Construction, corner, corner.Add(geometry.Polar(1.1*radius, square)))
	k.line(templates.Construction, geometry.Arc(corner, radius, math.Min(square, blade), math.Max(square, blade))...)
	mid := corner.Add(geometry.Polar(radius, (square+blade)/2))
	k.label(mid, mid, tag("off-square", s.Say(measure.Angle(math.Abs(s.swing)))))
}

// Sizes of a tenoning jig as it is drawn, in mm.
const (
	jigThick = 20.0
	jigHigh  = 170.0 // the part is shown up to here
	tableOut = 40.0  // of the table shown to each side
)

// Frame in the tenoning jig: y from the face of the jig, along the fence x, z up
// from the table. The part leans in x. The rip fence stands on the right of the blade,
// as for tapers: y looks to the left there, and x = y × z away from the maker.

// onEnd draws the tenoning jig twice: as the blade comes to it, and square to its
// face, where the part leans.
func (s setUp) onEnd() []templates.Picture {
	tall := solid.Plane{N: solid.V(0, 0, 1), D: math.Max(jigHigh, 2.5*s.cut().Height)}
	before, after := s.before.Cut(tall), s.after.Cut(tall)
	return []templates.Picture{s.jigAlong(before, after, tall.D), s.jigFace(before, after, tall.D)}
}

// jigAlong looks along the fence from where the maker stands: y to the left, z up.
func (s setUp) jigAlong(before, after solid.Part, tall float64) templates.Picture {
	k := sketcher{to: geometry.Identity()}
	k.wood(before, after, solid.Look(solid.V(-1, 0, 0), solid.V(0, 0, 1)))
	k.to = geometry.MirrorX()
	room := before.Bounds()
	right := math.Max(room.Max.Y, s.blade+s.Piece.Kerf) + tableOut
	k.block(templates.Middle, geometry.Pt(-jigThick, 0), geometry.Pt(0, 0), geometry.Pt(0, tall*0.9), geometry.Pt(-jigThick, tall*0.9))
	k.label(geometry.Pt(-jigThick, tall*0.9), geometry.Pt(0, tall*0.9), tag("jig"))
	k.block(templates.Dark, geometry.Pt(s.blade, -25), geometry.Pt(s.blade+s.Piece.Kerf, -25), geometry.Pt(s.blade+s.Piece.Kerf, s.cut().Height), geometry.Pt(s.blade, s.cut().Height))
	k.line(templates.Outline, geometry.Pt(-jigThick-tableOut, 0), geometry.Pt(right, 0))
	k.span(geometry.Pt(0, 0), geometry.Pt(s.blade, 0), geometry.Pt(0, -34), tag("from-jig", s.MM(s.blade)))
	k.span(geometry.Pt(right-10, 0), geometry.Pt(right-10, s.cut().Height), geometry.Pt(12, 0), tag("blade-high", s.MM(s.cut().Height)))
	k.Heading = wording.Lying(s.lie(), s.cut())
	return k.Picture
}

// jigFace looks square to the face of the jig, from the left of the saw: the part leans
// there, held by the filler strip against an upright cleat. The cleat stands on the
// maker's side of the part, which is the right of the picture, whichever way it leans:
// the teeth at the front of the blade push the part down and towards the maker.
func (s setUp) jigFace(before, after solid.Part, tall float64) templates.Picture {
	k := sketcher{to: geometry.Identity()}
	v := solid.Look(solid.V(0, 1, 0), solid.V(0, 0, 1))
	edge := makersEdge(before, v, math.Abs(s.swing))
	room := geometry.Bounds(k.cornersOf(before, v)...)
	const thin, cleat = 6.0, 18.0
	from, to := math.Min(12, thin/math.Tan(math.Abs(s.swing))), tall*0.8
	upright := math.Max(edge(from), edge(to)) + thin
	k.block(templates.Middle, geometry.Pt(upright, 4), geometry.Pt(upright+cleat, 4), geometry.Pt(upright+cleat, to), geometry.Pt(upright, to))
	k.label(geometry.Pt(upright, to), geometry.Pt(upright+cleat, to), tag("cleat"))
	if s.swing != 0 {
		k.block(templates.White, geometry.Pt(upright, from), geometry.Pt(edge(from), from), geometry.Pt(edge(to), to), geometry.Pt(upright, to))
		mid := geometry.Pt((upright+edge(to/2))/2, to/2)
		k.label(mid, mid, tag("strip-beside"))
	}
	k.wood(before, after, v)
	left, right := room.Min.X-tableOut, upright+cleat+tableOut
	k.line(templates.Outline, geometry.Pt(left, 0), geometry.Pt(right, 0))
	k.line(templates.Centre, geometry.Pt(left+tableOut/2, s.cut().Height), geometry.Pt(right-tableOut/2, s.cut().Height))
	k.label(geometry.Pt(left+tableOut/2, s.cut().Height), geometry.Pt(room.Min.X, s.cut().Height), tag("blade"))
	k.Heading = say(fromTheLeft)
	return k.Picture
}

// makersEdge returns the right edge of a part that stands leaning so far from upright:
// where it is at a height. Which way it leans its longest edge along shows; a part that
// is deeper than long has longer ones across.
func makersEdge(p solid.Part, v solid.View, lean float64) func(z float64) float64 {
	const rounding = 1e-6 // rad
	var along geometry.Point
	for _, e := range p.Edges() {
		d := v.Point(e.B).Sub(v.Point(e.A))
		if d.Y < 0 {
			d = d.Mul(-1)
		}
		if math.Abs(math.Atan2(math.Abs(d.X), d.Y)-lean) < rounding && d.Norm() > along.Norm() {
			along = d
		}
	}
	n := along.Unit().Perp().Mul(-1) // to the right of the way up
	most := math.Inf(-1)
	for _, s := range p.Pieces {
		for _, c := range v.Silhouette(s) {
			most = math.Max(most, c.Dot(n))
		}
	}
	return func(z float64) float64 { return (most - n.Y*z) / n.X }
}

// Sizes of a tapering jig as it is drawn, in mm.
const (
	rail     = 25.0  // of the blocks that the leg lies against
	jigApron = 30.0  // of the board, beyond the leg
	bladeRun = 150.0 // of the blade, before the foot
)

// onTaper draws the tapering jig from above, in its frame: x from the side of the
// blade to the jig, y along the blade away from the maker. The foot goes first.
// line is how far the taper starts from the foot, up the straight edge.
func (s setUp) onTaper() templates.Picture {
	line := s.cut().Line
	k := sketcher{to: geometry.Identity()}
	v := solid.Plan()
	edge, end := longestSide(s.before, v, geometry.Pt(1, 0)), longestSide(s.before, v, geometry.Pt(0, -1))
	room := geometry.Bounds(k.cornersOf(s.before, v)...)
	low, high, right := room.Min.Y-rail-jigApron, room.Max.Y+8, room.Max.X+rail+jigApron
	k.block(templates.White, geometry.Pt(0, low), geometry.Pt(right, low), geometry.Pt(right, high), geometry.Pt(0, high))
	k.rail(edge)
	k.rail(end)
	k.wood(s.before, s.after, v)
	k.block(templates.Dark, geometry.Pt(-s.Piece.Kerf, high+10), geometry.Pt(0, high+10), geometry.Pt(0, high+10+bladeRun), geometry.Pt(-s.Piece.Kerf, high+10+bladeRun))
	k.line(templates.Centre, geometry.Pt(-s.Piece.Kerf/2, low), geometry.Pt(-s.Piece.Kerf/2, high+20+bladeRun))
	k.label(geometry.Pt(0, high+10+bladeRun), geometry.Pt(0, high+bladeRun), tag("blade"))
	foot, head := edge.A, edge.B
	if foot.Y < head.Y {
		foot, head = head, foot
	}
	along := head.Sub(foot).Unit()
	out := along.Perp() // along runs down the paper: its left is the right of the picture
	k.span(foot, foot.Add(along.Mul(line)), out.Mul(rail+2*jigApron), tag("plain-figure", s.MM(line)))
	k.arrow(false, geometry.Pt(-s.Piece.Kerf/2, low-50), geometry.Pt(-s.Piece.Kerf/2, low-8))
	k.Heading = say(fromAbove, wording.Lying(s.lie(), s.cut()))
	return k.Picture
}

// rail draws a block along a side of the part, outside it.
func (k *sketcher) rail(side geometry.Segment) {
	out := side.A.Sub(side.B).Unit().Perp().Mul(rail) // the outline runs counter-clockwise
	k.block(templates.Middle, side.A, side.A.Add(out), side.B.Add(out), side.B)
}

// longestSide returns the longest side of a part that looks in a direction, as the
// outline runs, counter-clockwise.
func longestSide(p solid.Part, v solid.View, towards geometry.Point) geometry.Segment {
	var all []geometry.Point
	for _, s := range p.Pieces {
		all = append(all, v.Silhouette(s)...)
	}
	hull := geometry.Hull(all)
	var best geometry.Segment
	for i, a := range hull {
		s := geometry.Segment{A: a, B: hull[(i+1)%len(hull)]}
		out := a.Sub(s.B).Unit().Perp()
		if out.Dot(towards) > 0.7 && s.Length() > best.Length() {
			best = s
		}
	}
	return best
}
