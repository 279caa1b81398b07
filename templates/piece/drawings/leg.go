package drawings

import (
	"math"

	"rodsheet/geometry"
	"rodsheet/geometry/joint"
	"rodsheet/geometry/measure"
	"rodsheet/templates"
	"rodsheet/templates/piece"
)

// A legShape is a leg lying as its templates show it: x along the leg, foot to
// the right, x = 0 where the stretcher side meets the level of the stretcher's
// top. The level cuts are off square by Splay across its ring side and square
// across its back.
type legShape struct {
	piece.Piece
	joint.Leg
}

// Places along the stretcher side, in mm: the finished head, the head as it is
// sawn, and the shoulder at the underside of the stretcher.
func (l legShape) head() float64     { return -l.HeadProud() }
func (l legShape) rough() float64    { return l.head() - l.Bridle.Long }
func (l legShape) shoulder() float64 { return l.Frame.Ring.Depth / math.Cos(l.Splay) }

// step is how much further along anything level comes to the back.
func (l legShape) step() float64 { return l.Breadth * math.Tan(l.Splay) }

// foot is where the back meets the floor: the square end of the blank.
func (l legShape) foot() float64 { return l.Length() + l.step() }

// cutFaces reports which of the four faces taper.
func (l legShape) cutFaces() (stretcherSide, back, ringSide, outerSide bool) {
	if l.Taper == nil {
		return
	}
	f := l.Taper.Faces
	return f.Cut(joint.StretcherSide), f.Cut(joint.Back), f.Cut(joint.RingSide), f.Cut(joint.OuterSide)
}

// A legFace is one long face of a leg, y across it from its lower edge.
type legFace struct {
	legShape
	face         measure.ID    // what it is called
	lower, upper templates.Tag // its edges
	low, high    bool          // which of them taper
	size         float64       // across
	lean         float64       // of the level cuts, off square
	from         float64       // x of a level line at y = 0, less its x on the stretcher side
}

// legJob returns how the tapers are set out. A full setting draws the leg on its ring
// side and, where ring side and outer side taper too, on its back, and its foot.
func legJob(p piece.Piece, s templates.Setting) (templates.Section, error) {
	l := legShape{p, p.Frame.Leg}
	if !s.Full {
		return taperJob(p), nil
	}
	inner, outer, inside, outside := l.cutFaces()
	faces := []legFace{{
		legShape: l, face: "ring-side", lower: tag("stretcher-side"), upper: tag("back-reference"),
		low: inner, high: outer, size: l.Breadth, lean: l.Splay,
	}}
	if inside {
		faces = append(faces, legFace{
			legShape: l, face: "back", lower: tag("ring-side"), upper: tag("outer-side"),
			low: inside, high: outside, size: l.Thickness, from: l.step(),
		})
	}
	var job templates.Section
	for _, f := range faces {
		job.Drawings = append(job.Drawings, f.drawing())
	}
	job.Drawings = append(job.Drawings, l.footDrawing())
	return job, nil
}

// level returns what is level across the face and meets the stretcher side of
// the leg at x.
func (f legFace) level(x float64) geometry.Segment {
	a := geometry.Pt(x+f.from, 0)
	return geometry.Segment{A: a, B: a.Add(geometry.Pt(f.size*math.Tan(f.lean), f.size))}
}

// blank returns the blank with the square ends that hold both level cuts.
func (f legFace) blank() []geometry.Point {
	return geometry.Box(f.rough(), 0, f.foot(), f.size).Corners()
}

// tapers returns the lines to saw to, from the start of the taper to the end
// of the blank, the wood that stays on their left.
func (f legFace) tapers() []geometry.Segment {
	var out []geometry.Segment
	if f.Taper == nil {
		return nil
	}
	from := f.foot() - f.Taper.Run()
	if f.low {
		out = append(out, geometry.Segment{A: geometry.Pt(from, 0), B: geometry.Pt(f.foot(), f.Taper.Loss())})
	}
	if f.high {
		out = append(out, geometry.Segment{A: geometry.Pt(f.foot(), f.size-f.Taper.Loss()), B: geometry.Pt(from, f.size)})
	}
	return out
}

// waste returns the polygons that come away from the blank: beside the tapers,
// before the head and behind the foot.
func (f legFace) waste() [][]geometry.Point {
	var out [][]geometry.Point
	stays := f.blank()
	head, foot := f.level(f.rough()), f.level(f.Length())
	for _, cut := range append(f.tapers(), geometry.Segment{A: head.B, B: head.A}, foot) {
		if off := geometry.LeftOf(stays, geometry.Segment{A: cut.B, B: cut.A}); len(off) > 2 {
			out = append(out, off)
		}
		stays = geometry.LeftOf(stays, cut)
	}
	return out
}

// footLine returns the level cut of the foot between the tapers, and reports
// whether they leave one.
func (f legFace) footLine() (geometry.Segment, bool) {
	between := f.blank()
	for _, cut := range f.tapers() {
		between = geometry.LeftOf(between, cut)
	}
	return geometry.ClipConvex(f.level(f.Length()), between)
}

func (f legFace) drawing() templates.Drawing {
	d := named(templates.Drawing{}, "leg", f.face)
	d.View.Part = "whole-leg" // no face of its joint
	d.Polygon(templates.Outline, f.blank()...)
	for _, w := range f.waste() {
		d.Hatch(w...)
	}
	f.headLines(&d)
	f.taperLines(&d)
	if foot, ok := f.footLine(); ok {
		d.Named(templates.Cut, foot.A, foot.B, tag("foot", f.cutAngle()))
	}
	f.names(&d)
	return d
}

// headLines draws the level lines of the head.
func (f legFace) headLines(d *templates.Drawing) {
	line := func(role templates.Role, at float64, t templates.Tag) {
		s := f.level(at)
		d.Named(role, s.A, s.B, t)
	}
	line(templates.Cut, f.rough(), tag("saw-here", f.MM(f.Bridle.Long)))
	if f.Design.Legs.Proud > 0 {
		line(templates.Construction, f.head(), tag("trim-proud", f.MM(f.Design.Legs.Proud)))
		line(templates.Construction, 0, tag("top-of-stretcher"))
	} else {
		line(templates.Construction, 0, tag("trim-line"))
	}
	if f.Bridle.Head().Slot {
		line(templates.Hidden, f.shoulder(), tag("slot-bottom"))
	} else {
		line(templates.Cut, f.shoulder(), tag("shoulder", f.cutAngle()))
	}
}

// cutAngle says how a level cut runs across the face.
func (f legFace) cutAngle() string {
	if f.lean == 0 {
		return say(square)
	}
	return say(offSquare, f.Say(measure.Angle(f.lean)))
}

// taperLines draws the tapers, where they start and what they leave.
func (f legFace) taperLines(d *templates.Drawing) {
	for _, s := range f.tapers() {
		d.Named(templates.Cut, s.A, s.B, tag("taper-here", f.Say(measure.Angle(f.Taper.ToEdge()))))
	}
	if f.Taper == nil {
		return
	}
	start := f.foot() - f.Taper.Run()
	a, b := geometry.Pt(start, -2), geometry.Pt(start, f.size+2)
	d.Named(templates.Construction, a, b, tag("taper-starts"))
	low, high := 0.0, f.size
	if f.low {
		low = f.Taper.Loss()
	}
	if f.high {
		high -= f.Taper.Loss()
	}
	d.LabelLine(geometry.Pt(f.foot(), low), geometry.Pt(f.foot(), high), tag("remain", f.MM(high-low)))
	if f.Taper.Start > 0 {
		d.Span(geometry.Pt(start, f.size), geometry.Pt(f.step(), f.size), tag("taper-starts-from", f.MM(f.Taper.Start)))
	}
}

// names names the edges, the centre line and the grain, and says how long the
// leg is.
func (f legFace) names(d *templates.Drawing) {
	from, to := f.shoulder()+f.step(), f.Length()
	d.LabelLine(geometry.Pt(from, 0), geometry.Pt(to, 0), f.lower)
	d.LabelLine(geometry.Pt(from, f.size), geometry.Pt(to, f.size), f.upper)
	a, b := geometry.Pt(f.rough(), f.size/2), geometry.Pt(f.foot(), f.size/2)
	if f.low && f.high {
		d.Named(templates.Centre, a, b, tag("centre-of-blank"))
	}
	mid := geometry.Pt((from+to)/2, f.size*0.75)
	if f.low && f.high {
		mid.Y = f.size * 0.6
	}
	grainArrow(d, mid, geometry.Pt(1, 0), math.Min(60, f.Length()/4))
	end := f.level(f.Length()).A
	d.Span(end, f.level(f.head()).A, tag("head-to-foot", f.MM(f.LegEdge())))
}

// footDrawing is the section of the leg on the floor, seen from above as it
// stands: x outward along the stretcher from where the blank's back stands, y
// from the ring side to the outer side.
func (l legShape) footDrawing() templates.Drawing {
	d := named(templates.Drawing{}, "foot")
	section := l.footSection()
	d.Polygon(templates.Cut, section...)
	box := geometry.Bounds(section...)
	middle := l.Thickness / 2
	a, b := geometry.Pt(box.Min.X-45, middle), geometry.Pt(box.Max.X+8, middle)
	d.Line(templates.Centre, a, b)
	d.LabelLine(a, geometry.Pt(box.Min.X-10, middle), tag("mid-thickness"))
	out := b.Add(geometry.Pt(22, 0))
	arrow(&d, b.Add(geometry.Pt(4, 0)), out)
	d.LabelPoint(out, tag("outward"))
	for _, side := range around(section) {
		d.LabelLine(side.A, side.B, footEdge(side.B.Sub(side.A)))
	}
	d.Span(geometry.Pt(box.Max.X, box.Min.Y), geometry.Pt(box.Min.X, box.Min.Y), tag("along-stretcher", l.MM(box.Width())))
	d.Span(geometry.Pt(box.Min.X, box.Min.Y), geometry.Pt(box.Min.X, box.Max.Y), tag("across-stretcher", l.MM(box.Height())))
	return d
}

// footEdge names a side of the foot that runs in direction along,
// counter-clockwise.
func footEdge(along geometry.Point) templates.Tag {
	switch {
	case math.Abs(along.Y) > math.Abs(along.X) && along.Y > 0:
		return tag("back")
	case math.Abs(along.Y) > math.Abs(along.X):
		return tag("stretcher-side")
	case along.X > 0:
		return tag("ring-side")
	}
	return tag("outer-side")
}

// footSection returns the corners, counter-clockwise. A point x outward stands
// -x·cos Splay from the back of the blank, square to it, and
// Length + x·sin Splay down it; there each tapered face has lost
// Loss/Run·(Run + x·sin Splay).
func (l legShape) footSection() []geometry.Point {
	out := geometry.Box(-l.Section(), 0, 0, l.Thickness).Corners()
	if l.Taper == nil {
		return out
	}
	s, c := math.Sincos(l.Splay)
	loss, k := l.Taper.Loss(), l.Taper.Loss()/l.Taper.Run()*s
	inner, outer, inside, outside := l.cutFaces()
	for _, face := range []struct {
		cut   bool
		n     geometry.Point
		limit float64
	}{
		{inner, geometry.Pt(k-c, 0), l.Breadth - loss},
		{outer, geometry.Pt(k+c, 0), -loss},
		{inside, geometry.Pt(k, -1), -loss},
		{outside, geometry.Pt(k, 1), l.Thickness - loss},
	} {
		if face.cut {
			out = geometry.ClipHalfPlane(nil, out, face.n, face.limit)
		}
	}
	return out
}
