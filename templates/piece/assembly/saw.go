package assembly

import (
	"math"

	"rodsheet/geometry"
	"rodsheet/geometry/measure"
	"rodsheet/templates"
)

// Sizes of a saw as it is drawn, in mm: our own, near those of common machines.
const (
	gaugeDeep  = 22.0 // of the fence on the mitre gauge
	stopLong   = 28.0 // of the stop along the fence
	bladeLong  = 36.0 // what is shown of the blade before and behind the part
	fenceAfter = 70.0 // how far the fence reaches beyond the blade
	bladeHigh  = 30.0 // what is shown of the blade above the board
)

// A Crosscut is a board on the mitre gauge, from above. Frame: the fence of the gauge
// along x, the board beyond it from y = 0 on; the blade meets the fence at the origin, the
// part lies to its left and what falls off to its right.
type Crosscut struct {
	Board     []geometry.Point // convex, counter-clockwise
	OffSquare float64          // of the blade to the fence; positive: it leans to the right
	Kerf      float64
	Stop      float64 // from the blade along the fence, to the left; 0: none
	Down      string  // which face lies on the table
	Unit      measure.Unit
}

// Picture draws it to scale, the blade up the paper.
func (c Crosscut) Picture(heading string) templates.Picture {
	s := sketch{to: geometry.Rotate(c.OffSquare)}
	s.Heading = heading
	box := geometry.Bounds(c.Board...)
	tan := math.Tan(c.OffSquare)
	left, right := math.Min(box.Min.X, -c.Stop-stopLong)-15, math.Max(box.Max.X, fenceAfter)+10
	s.block(templates.Middle, geometry.Pt(left, -gaugeDeep), geometry.Pt(right, -gaugeDeep), geometry.Pt(right, 0), geometry.Pt(left, 0))
	s.block(templates.Light, c.Board...)
	across := box.Max.Y
	at := func(x, y float64) geometry.Point { return geometry.Pt(x+y*tan, y) }
	waste := geometry.LeftOf(c.Board, geometry.Segment{A: at(0, 1)})
	s.hatch(waste)
	wide := c.Kerf / math.Cos(c.OffSquare)
	near, far := -gaugeDeep-bladeLong, across+bladeLong
	s.block(templates.Dark, at(0, near*0.6), at(wide, near*0.6), at(wide, far*0.9), at(0, far*0.9))
	s.line(templates.Centre, at(wide/2, near), at(wide/2, far))
	s.arrow(false, at(wide/2, near-28), at(wide/2, near-4))
	s.label("blade", at(wide, far*0.9), at(wide, far), bladeLabel.With())
	if c.Stop > 0 {
		high := math.Min(across, 40)
		s.block(templates.Dark, geometry.Pt(-c.Stop-stopLong, 0), geometry.Pt(-c.Stop, 0), geometry.Pt(-c.Stop, high), geometry.Pt(-c.Stop-stopLong, high))
		s.label("stop-block", geometry.Pt(-c.Stop-stopLong, high), geometry.Pt(-c.Stop, high), stopLabel.With())
		s.span(geometry.Pt(-c.Stop, 0), geometry.Point{}, geometry.Pt(0, -gaugeDeep-24), "plain-figure", measure.Length(c.Stop).Text(c.Unit))
	}
	if c.OffSquare != 0 {
		const radius = gaugeDeep + 18
		square, blade := -math.Pi/2, -math.Pi/2-c.OffSquare
		s.line(templates.Construction, geometry.Point{}, geometry.Polar(1.1*radius, square))
		s.line(templates.Construction, geometry.Arc(geometry.Point{}, radius, math.Min(square, blade), math.Max(square, blade))...)
		mid := geometry.Polar(radius, (square+blade)/2)
		s.label("off-square", mid, mid, offSquareLabel.With(measure.Angle(math.Abs(c.OffSquare)).Text(c.Unit)))
	}
	mid := geometry.Pt((box.Min.X+math.Min(0, tan*across))/2, across/2)
	s.label("face-down", mid, mid, c.Down)
	return s.Picture
}

// A Rip is a board along the rip fence, as it is seen from the maker's end of the table.
// Frame: x to the right from the board's left side at the table, y up from the table.
type Rip struct {
	Section   []geometry.Point // of the board before the cut, convex, counter-clockwise
	Cut       geometry.Segment // where the blade leaves the part, from the table up; it leans away from the fence
	Kerf      float64          // the blade is on the right of Cut
	FenceLeft bool             // the fence stands left of the board; else on its right
	Fence     float64          // x of its side towards the board
	Tilt      float64          // of the blade from plumb, for its figure
	Unit      measure.Unit
}

// Picture draws it to scale.
func (r Rip) Picture(heading string) templates.Picture {
	s := sketch{to: geometry.Identity()}
	s.Heading = heading
	box := geometry.Bounds(r.Section...)
	high := math.Max(1.6*box.Max.Y, box.Max.Y+20)
	left, right := math.Min(box.Min.X, r.Fence)-60, math.Max(box.Max.X, r.Fence)+60
	s.line(templates.Outline, geometry.Pt(left, 0), geometry.Pt(right, 0))
	way, deep := r.Fence, 16.0
	if r.FenceLeft {
		deep = -deep
	}
	lo, hi := math.Min(way, way+deep), math.Max(way, way+deep)
	s.block(templates.Middle, geometry.Pt(lo, 0), geometry.Pt(hi, 0), geometry.Pt(hi, high), geometry.Pt(lo, high))
	s.label("fence", geometry.Pt(lo, high), geometry.Pt(hi, high), fenceLabel.With())
	s.block(templates.Light, r.Section...)
	s.hatch(geometry.LeftOf(r.Section, geometry.Segment{A: r.Cut.B, B: r.Cut.A}))
	up := r.Cut.B.Sub(r.Cut.A).Unit()
	side := up.Perp().Mul(-r.Kerf)
	foot, top := r.Cut.A.Sub(up.Mul(18)), r.Cut.B.Add(up.Mul(bladeHigh/3))
	s.block(templates.Dark, foot, foot.Add(side), top.Add(side), top)
	s.label("blade", top, top.Add(side), bladeLabel.With())
	if r.Tilt != 0 {
		const radius = 34.0
		corner := r.Cut.A
		turned := math.Atan2(up.Y, up.X)
		s.line(templates.Construction, corner, corner.Add(geometry.Pt(0, radius*1.15)))
		s.line(templates.Construction, geometry.Arc(corner, radius, math.Min(turned, math.Pi/2), math.Max(turned, math.Pi/2))...)
		mid := corner.Add(geometry.Polar(radius, (turned+math.Pi/2)/2))
		s.label("tilt", mid, mid, tiltLabel.With(measure.Angle(math.Abs(r.Tilt)).Text(r.Unit)))
	}
	s.span(geometry.Pt(r.Fence, 0), geometry.Pt(r.Cut.A.X, 0), geometry.Pt(0, -30), "plain-figure", measure.Length(math.Abs(r.Fence-r.Cut.A.X)).Text(r.Unit))
	return s.Picture
}

// A sketch draws in the frame of a tool on to a picture.
type sketch struct {
	templates.Picture
	to geometry.Affine
}

func (s *sketch) line(r templates.Role, points ...geometry.Point) {
	s.Strokes = append(s.Strokes, templates.Stroke{Role: r, Points: s.to.ApplyAll(points)})
}

// block draws something solid: an area in its outline.
func (s *sketch) block(t templates.Tone, corners ...geometry.Point) {
	s.Areas = append(s.Areas, templates.Area{Tone: t, Points: s.to.ApplyAll(corners)})
	s.line(templates.Outline, geometry.Closed(corners)...)
}

// hatch marks what is cut away.
func (s *sketch) hatch(waste []geometry.Point) {
	if len(waste) < 3 {
		return
	}
	step := math.Max(2, geometry.Bounds(waste...).Width()/12)
	for _, h := range geometry.Hatch(waste, math.Pi/4, step) {
		s.line(templates.Waste, h.A, h.B)
	}
}

func (s *sketch) label(id measure.ID, a, b geometry.Point, text string) {
	s.Labels = append(s.Labels, templates.Label{ID: id, Text: text, On: geometry.Segment{A: s.to.Apply(a), B: s.to.Apply(b)}})
}

// span draws a distance from a to b, moved aside by off, with lines out to it.
func (s *sketch) span(a, b, off geometry.Point, id measure.ID, text string) {
	c, d := a.Add(off), b.Add(off)
	past := off.Mul(1.0 / 6)
	s.line(templates.Construction, a, c.Add(past))
	s.line(templates.Construction, b, d.Add(past))
	s.arrow(true, c, d)
	s.label(id, c, d, text)
}

func (s *sketch) arrow(both bool, points ...geometry.Point) {
	s.Arrows = append(s.Arrows, templates.Arrow{Points: s.to.ApplyAll(points), Both: both})
}
