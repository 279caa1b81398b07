package drawings

import (
	"math"

	"rodsheet/geometry"
	"rodsheet/templates"
)

// A Sketch draws in the frame of a tool on to a picture.
type Sketch struct {
	templates.Picture
	To geometry.Affine
}

// NewSketch returns one whose frame is that of the paper.
func NewSketch() Sketch { return Sketch{To: geometry.Identity()} }

func (k *Sketch) Area(t templates.Tone, corners ...geometry.Point) {
	k.Areas = append(k.Areas, templates.Area{Tone: t, Points: k.To.ApplyAll(corners)})
}

// Lines draws segments.
func (k *Sketch) Lines(r templates.Role, segments []geometry.Segment) {
	for _, s := range segments {
		k.Line(r, s.A, s.B)
	}
}

func (k *Sketch) Line(r templates.Role, points ...geometry.Point) {
	k.Strokes = append(k.Strokes, templates.Stroke{Role: r, Points: k.To.ApplyAll(points)})
}

// Block draws something solid: an area in its outline.
func (k *Sketch) Block(t templates.Tone, corners ...geometry.Point) {
	k.Area(t, corners...)
	k.Line(templates.Outline, geometry.Closed(corners)...)
}

func (k *Sketch) Label(a, b geometry.Point, t templates.Tag) {
	k.Labels = append(k.Labels, templates.Label{ID: t.ID, Text: t.Text, On: geometry.Segment{A: k.To.Apply(a), B: k.To.Apply(b)}})
}

// Span draws a distance from a to b, moved aside by off.
func (k *Sketch) Span(a, b, off geometry.Point, t templates.Tag) {
	k.Picture.Span(k.To.Apply(a), k.To.Apply(b), k.To.Apply(off).Sub(k.To.Apply(geometry.Point{})), t)
}

func (k *Sketch) Arrow(points ...geometry.Point) {
	k.Arrows = append(k.Arrows, templates.Arrow{Points: k.To.ApplyAll(points)})
}

// Sizes of a saw as it is drawn, in mm: our own, near those of common machines.
const (
	gaugeDeep  = 22.0 // of the fence on the mitre gauge
	stopLong   = 28.0 // of the stop along the fence
	bladeLong  = 36.0 // what is shown of the blade before and behind the part
	fenceAfter = 70.0 // how far the fence reaches beyond the blade
)

// The saw from above: the fence of the gauge runs along x, the part lies beyond it, and the
// blade meets the fence at some x, its swing off square to the right.

// Gauge draws the fence of the gauge behind a part, its stop and the blade.
func (k *Sketch) Gauge(from, to, stop, blade float64) {
	from, to = math.Min(from, stop-stopLong)-15, math.Max(to, blade+fenceAfter)+10
	k.Block(templates.Middle, geometry.Pt(from, -gaugeDeep), geometry.Pt(to, -gaugeDeep), geometry.Pt(to, 0), geometry.Pt(from, 0))
}

// StopBlock draws the stop for a part so far across, and how far it stands from the blade.
func (k *Sketch) StopBlock(at, blade, across float64, distance string) {
	high := math.Min(across, 40)
	k.Block(templates.Dark, geometry.Pt(at-stopLong, 0), geometry.Pt(at, 0), geometry.Pt(at, high), geometry.Pt(at-stopLong, high))
	k.Label(geometry.Pt(at-stopLong, high), geometry.Pt(at, high), tag("stop-block"))
	k.Span(geometry.Pt(at, 0), geometry.Pt(blade, 0), geometry.Pt(0, -gaugeDeep-24), tag("plain-figure", distance))
}

// Blade draws the blade before and behind a part so far across, and the line it saws in.
func (k *Sketch) Blade(blade, swing, kerf, across float64) {
	tan, wide := math.Tan(swing), kerf/math.Cos(swing)
	near, far := -gaugeDeep-bladeLong, across+bladeLong
	at := func(x, y float64) geometry.Point { return geometry.Pt(blade+x+y*tan, y) }
	k.Block(templates.Dark, at(0, near*0.6), at(wide, near*0.6), at(wide, far*0.9), at(0, far*0.9))
	k.Line(templates.Centre, at(wide/2, near), at(wide/2, far))
	k.Arrow(at(wide/2, near-28), at(wide/2, near-4)) // the way it is pushed
	k.Label(at(wide, far*0.9), at(wide, far), tag("blade"))
}

// GaugeAngle draws by how much the gauge is turned off square: between the blade and a
// line square to the fence, before the fence.
func (k *Sketch) GaugeAngle(blade, swing float64, angle string) {
	if swing == 0 {
		return
	}
	const radius = gaugeDeep + 18
	square, turned := -math.Pi/2, -math.Pi/2-swing
	corner := geometry.Pt(blade, 0)
	k.Line(templates.Construction, corner, corner.Add(geometry.Polar(1.1*radius, square)))
	k.Line(templates.Construction, geometry.Arc(corner, radius, math.Min(square, turned), math.Max(square, turned))...)
	mid := corner.Add(geometry.Polar(radius, (square+turned)/2))
	k.Label(mid, mid, tag("off-square", angle))
}
