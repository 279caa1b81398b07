package drawings

import (
	"math"

	"rodsheet/geometry"
	"rodsheet/geometry/lists"
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

// wood draws a part as it is seen, and what a cut takes of it.
func (k *Sketch) wood(before, after solid.Part, v solid.View) {
	for _, s := range before.Pieces {
		k.Area(templates.Light, v.Silhouette(s)...)
	}
	waste := without(before, after)
	visible, hidden := solid.Project([]solid.Part{after, waste}, v)
	k.Lines(templates.Outline, visible)
	k.Lines(templates.Hidden, hidden)
	step := geometry.Bounds(cornersOf(before, v)...)
	for _, s := range waste.Pieces {
		k.Lines(templates.Waste, geometry.Hatch(v.Silhouette(s), math.Pi/4, math.Max(2, step.Width()/70)))
	}
}

func cornersOf(p solid.Part, v solid.View) []geometry.Point {
	return lists.Flat(p.Pieces, v.Silhouette)
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
	return lists.Where(all, func(s solid.Solid) bool { return s.Volume() > solid.ClashFloor })
}

// onGauge draws the table saw from above.
func (s setUp) onGauge() templates.Picture {
	k := Sketch{To: s.table()}
	room := s.before.Bounds()
	across := room.Max.Y
	k.Gauge(room.Min.X, room.Max.X, 0, s.blade)
	k.wood(s.before, s.after, solid.Plan())
	k.Blade(s.blade, s.swing, s.Piece.Kerf, across)
	if s.cut().Stop > 0 {
		k.StopBlock(0, s.blade, across, s.MM(s.blade))
	}
	if s.cut().Spacer > 0 {
		y := across + 12
		k.Line(templates.Hidden, geometry.Closed([]geometry.Point{
			geometry.Pt(0, y), geometry.Pt(s.cut().Spacer, y), geometry.Pt(s.cut().Spacer, y+18), geometry.Pt(0, y+18),
		})...)
		k.Label(geometry.Pt(0, y+18), geometry.Pt(s.cut().Spacer, y+18), tag("spacer-block", s.MM(s.cut().Spacer)))
	}
	k.faces(s, room)
	k.GaugeAngle(s.blade, s.swing, s.Say(measure.Angle(math.Abs(s.swing))))
	return k.Picture
}

// faces says how the part lies, on it only which face is down: on the longer side of
// the blade, where no waste is hatched.
func (k *Sketch) faces(s setUp, room solid.Extent) {
	lie := s.lie()
	if lie.Down != shop.NoFace {
		end := room.Min.X
		if room.Max.X-s.blade > s.blade-end {
			end = room.Max.X
		}
		mid := geometry.Pt((end+s.blade)/2, room.Max.Y/2)
		k.Label(mid, mid, tag("face-down", wording.Face(lie.Down)))
	}
	k.Heading = say(fromAbove, wording.Lying(lie, s.cut()))
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
	k := NewSketch()
	k.wood(before, after, solid.Look(solid.V(-1, 0, 0), solid.V(0, 0, 1)))
	k.To = geometry.MirrorX()
	room := before.Bounds()
	right := math.Max(room.Max.Y, s.blade+s.Piece.Kerf) + tableOut
	k.Block(templates.Middle, geometry.Pt(-jigThick, 0), geometry.Pt(0, 0), geometry.Pt(0, tall*0.9), geometry.Pt(-jigThick, tall*0.9))
	k.Label(geometry.Pt(-jigThick, tall*0.9), geometry.Pt(0, tall*0.9), tag("jig"))
	k.Block(templates.Dark, geometry.Pt(s.blade, -25), geometry.Pt(s.blade+s.Piece.Kerf, -25), geometry.Pt(s.blade+s.Piece.Kerf, s.cut().Height), geometry.Pt(s.blade, s.cut().Height))
	k.Line(templates.Outline, geometry.Pt(-jigThick-tableOut, 0), geometry.Pt(right-0.7*tableOut, 0))
	k.Span(geometry.Pt(0, 0), geometry.Pt(s.blade, 0), geometry.Pt(0, -34), tag("from-jig", s.MM(s.blade)))
	k.Span(geometry.Pt(right-tableOut, 0), geometry.Pt(right-tableOut, s.cut().Height), geometry.Pt(tableOut/4, 0), tag("blade-high", s.MM(s.cut().Height)))
	k.Heading = wording.Lying(s.lie(), s.cut())
	return k.Picture
}

// jigFace looks square to the face of the jig, from the left of the saw: the part leans
// there, held by the filler strip against an upright cleat. The cleat stands on the
// maker's side of the part, which is the right of the picture, whichever way it leans:
// the teeth at the front of the blade push the part down and towards the maker.
func (s setUp) jigFace(before, after solid.Part, tall float64) templates.Picture {
	k := NewSketch()
	v := solid.Look(solid.V(0, 1, 0), solid.V(0, 0, 1))
	edge := makersEdge(before, v, math.Abs(s.swing))
	room := geometry.Bounds(cornersOf(before, v)...)
	const thin, cleat = 6.0, 18.0
	from, to := math.Min(12, thin/math.Tan(math.Abs(s.swing))), tall*0.8
	upright := math.Max(edge(from), edge(to)) + thin
	k.Block(templates.Middle, geometry.Pt(upright, 4), geometry.Pt(upright+cleat, 4), geometry.Pt(upright+cleat, to), geometry.Pt(upright, to))
	if s.swing != 0 {
		k.Block(templates.White, geometry.Pt(upright, from), geometry.Pt(edge(from), from), geometry.Pt(edge(to), to), geometry.Pt(upright, to))
		// Its upper end stands free; farther down the name would stand on the cleat.
		k.named(geometry.Pt((upright+edge(to))/2, to), tag("strip-beside"))
	}
	k.named(geometry.Pt(upright+cleat, 0.6*to), tag("cleat"))
	k.wood(before, after, v)
	left, right := room.Min.X-tableOut, upright+cleat+tableOut
	k.Line(templates.Outline, geometry.Pt(left, 0), geometry.Pt(right, 0))
	k.Line(templates.Centre, geometry.Pt(left+tableOut/2, s.cut().Height), geometry.Pt(right-tableOut/2, s.cut().Height))
	k.Label(geometry.Pt(left+tableOut/2, s.cut().Height), geometry.Pt(room.Min.X, s.cut().Height), tag("blade"))
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
	for _, c := range cornersOf(p, v) {
		most = math.Max(most, c.Dot(n))
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
	k := NewSketch()
	v := solid.Plan()
	edge, end := longestSide(s.before, v, geometry.Pt(1, 0)), longestSide(s.before, v, geometry.Pt(0, -1))
	room := geometry.Bounds(cornersOf(s.before, v)...)
	low, high, right := room.Min.Y-rail-jigApron, room.Max.Y+8, room.Max.X+rail+jigApron
	k.Block(templates.White, geometry.Pt(0, low), geometry.Pt(right, low), geometry.Pt(right, high), geometry.Pt(0, high))
	k.rail(edge)
	k.rail(end)
	k.wood(s.before, s.after, v)
	k.Block(templates.Dark, geometry.Pt(-s.Piece.Kerf, high+10), geometry.Pt(0, high+10), geometry.Pt(0, high+10+bladeRun), geometry.Pt(-s.Piece.Kerf, high+10+bladeRun))
	k.Line(templates.Centre, geometry.Pt(-s.Piece.Kerf/2, low), geometry.Pt(-s.Piece.Kerf/2, high+20+bladeRun))
	k.Label(geometry.Pt(0, high+10+bladeRun), geometry.Pt(0, high+bladeRun), tag("blade"))
	foot, head := edge.A, edge.B
	if foot.Y < head.Y {
		foot, head = head, foot
	}
	along := head.Sub(foot).Unit()
	out := along.Perp() // along runs down the paper: its left is the right of the picture
	k.Span(foot, foot.Add(along.Mul(line)), out.Mul(rail+2*jigApron), tag("plain-figure", s.MM(line)))
	k.Arrow(geometry.Pt(-s.Piece.Kerf/2, low-50), geometry.Pt(-s.Piece.Kerf/2, low-8))
	k.Heading = say(fromAbove, wording.Lying(s.lie(), s.cut()))
	return k.Picture
}

// rail draws a block along a side of the part, outside it.
func (k *Sketch) rail(side geometry.Segment) {
	out := side.A.Sub(side.B).Unit().Perp().Mul(rail) // the outline runs counter-clockwise
	k.Block(templates.Middle, side.A, side.A.Add(out), side.B.Add(out), side.B)
}

// longestSide returns the longest side of a part that looks in a direction, as the
// outline runs, counter-clockwise.
func longestSide(p solid.Part, v solid.View, towards geometry.Point) geometry.Segment {
	var best geometry.Segment
	for _, s := range around(geometry.Hull(cornersOf(p, v))) {
		out := s.A.Sub(s.B).Unit().Perp()
		if out.Dot(towards) > 0.7 && s.Length() > best.Length() {
			best = s
		}
	}
	return best
}
