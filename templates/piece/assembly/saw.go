package assembly

import (
	"math"

	"rodsheet/geometry"
	"rodsheet/geometry/measure"
	"rodsheet/templates"
	"rodsheet/templates/piece/design"
	"rodsheet/templates/piece/drawings"
)

// What is shown of the blade, mm.
const (
	bladeHigh = 30.0 // above the board
	leanAfter = 14.0 // from the board to the arrow of its lean
	leanLong  = 34.0
)

// OnGauge says an angle off square by both of its names, that first which the mitre gauge of
// the design reads.
func OnGauge(d design.Design, offSquare float64) []templates.Reading {
	offSquare = math.Abs(offSquare)
	square, bevel := measure.Angle(offSquare).Text(d.Unit), measure.Angle(math.Pi/2-offSquare).Text(d.Unit)
	if d.Saw.FromFence {
		return []templates.Reading{{Name: gaugeBevelReading.With(), Value: bevel, Write: true}, {Name: offSquareReading.With(), Value: square}}
	}
	return []templates.Reading{{Name: gaugeReading.With(), Value: square, Write: true}, {Name: bevelReading.With(), Value: bevel}}
}

// A Crosscut is a board on the mitre gauge, from above. Frame: the fence of the gauge
// along x, the board beyond it from y = 0 on; the blade meets the fence at the origin, the
// part lies to its left and what falls off to its right, or all is the mirror image.
type Crosscut struct {
	Board     []geometry.Point // convex, counter-clockwise
	OffSquare float64          // of the blade to the fence; positive: it leans to the right
	Right     bool             // mirrored: the part lies to the right of the blade
	Tilted    bool             // the blade leans: to the left, on every picture
	Kerf      float64
	Stop      float64 // from the blade along the fence, to the left; 0: none
	Broken    bool    // the part runs on to the left
	Shallow   bool    // the blade does not come through: nothing falls off
	Down      string  // which face lies on the table
	Unit      measure.Unit
}

// Picture draws it to scale, the blade up the paper.
func (c Crosscut) Picture(heading string) templates.Picture {
	k := drawings.Sketch{To: geometry.Rotate(c.OffSquare)}
	if c.Right {
		k.To = k.To.Then(geometry.MirrorX())
	}
	k.Heading = heading
	box, tan := geometry.Bounds(c.Board...), math.Tan(c.OffSquare)
	across := box.Max.Y
	k.Gauge(box.Min.X, box.Max.X, -c.Stop, 0)
	c.part(&k)
	if !c.Shallow {
		hatch(&k, geometry.LeftOf(c.Board, geometry.Segment{A: geometry.Pt(tan, 1)}))
	}
	k.Blade(0, c.OffSquare, c.Kerf, across)
	if c.Tilted {
		from := k.To.Apply(geometry.Pt((across+leanAfter)*tan, across+leanAfter))
		to := from.Add(geometry.Pt(-leanLong, 0))
		k.Arrows = append(k.Arrows, templates.Arrow{Points: []geometry.Point{from, to}})
		k.Labels = append(k.Labels, templates.Label{ID: "lean", Text: leanLabel.With(), On: geometry.Segment{A: from, B: to}})
	}
	if c.Stop > 0 {
		k.StopBlock(-c.Stop, 0, across, measure.Length(c.Stop).Text(c.Unit))
	}
	k.GaugeAngle(0, c.OffSquare, measure.Angle(math.Abs(c.OffSquare)).Text(c.Unit))
	mid := geometry.Pt((box.Min.X+math.Min(0, tan*across))/2, across/2)
	k.Label(mid, mid, templates.Tag{ID: "face-down", Text: c.Down})
	return k.Picture
}

// part draws the board, a break where it runs on as the thin zigzag of ISO 128.
func (c Crosscut) part(k *drawings.Sketch) {
	if !c.Broken {
		k.Block(templates.Light, c.Board...)
		return
	}
	k.Area(templates.Light, c.Board...)
	k.Line(templates.Outline, c.Board...)
	near, far := c.Board[0], c.Board[len(c.Board)-1]
	at := func(share, aside float64) geometry.Point { return near.Lerp(far, share).Add(geometry.Pt(aside, 0)) }
	k.Line(templates.Construction, at(-0.1, 0), at(0.44, 0), at(0.47, -7), at(0.53, 7), at(0.56, 0), at(1.1, 0))
}

// A Rip is a board along the rip fence, as it is seen from the maker's end of the table.
// Frame: x from the fence, which stands on the right, to the left; y up from the table. So the
// blade leans to the left, as on the pictures of the mitre gauge.
type Rip struct {
	Section []geometry.Point // of the board before the cut, convex, counter-clockwise
	Cut     geometry.Segment // where the blade leaves the part, from the table up; it leans away from the fence
	Kerf    float64          // the blade is beyond Cut
	Tilt    float64          // of the blade from plumb, for its figure
	Unit    measure.Unit
}

// Picture draws it to scale.
func (r Rip) Picture(heading string) templates.Picture {
	k := drawings.Sketch{To: geometry.MirrorX()}
	k.Heading = heading
	box := geometry.Bounds(r.Section...)
	high := math.Max(1.6*box.Max.Y, box.Max.Y+20)
	k.Line(templates.Outline, geometry.Pt(-60, 0), geometry.Pt(box.Max.X+60, 0))
	k.Block(templates.Middle, geometry.Box(-16, 0, 0, high).Corners()...)
	k.Label(geometry.Pt(-16, high), geometry.Pt(0, high), templates.Tag{ID: "fence", Text: fenceLabel.With()})
	k.Block(templates.Light, r.Section...)
	hatch(&k, geometry.LeftOf(r.Section, geometry.Segment{A: r.Cut.B, B: r.Cut.A}))
	up := r.Cut.B.Sub(r.Cut.A).Unit()
	side := up.Perp().Mul(-r.Kerf)
	foot, top := r.Cut.A.Sub(up.Mul(18)), r.Cut.B.Add(up.Mul(bladeHigh/3))
	k.Block(templates.Dark, foot, foot.Add(side), top.Add(side), top)
	k.Label(top, top.Add(side), templates.Tag{ID: "blade", Text: bladeLabel.With()})
	if r.Tilt != 0 {
		const radius = 34.0
		corner := r.Cut.A
		turned := math.Atan2(up.Y, up.X)
		k.Line(templates.Construction, corner, corner.Add(geometry.Pt(0, radius*1.15)))
		k.Line(templates.Construction, geometry.Arc(corner, radius, math.Min(turned, math.Pi/2), math.Max(turned, math.Pi/2))...)
		mid := corner.Add(geometry.Polar(radius, (turned+math.Pi/2)/2))
		k.Label(mid, mid, templates.Tag{ID: "tilt", Text: tiltLabel.With(measure.Angle(math.Abs(r.Tilt)).Text(r.Unit))})
	}
	k.Span(geometry.Point{}, geometry.Pt(r.Cut.A.X, 0), geometry.Pt(0, -30), templates.Tag{ID: "plain-figure", Text: measure.Length(r.Cut.A.X).Text(r.Unit)})
	return k.Picture
}

// hatch marks what is cut away.
func hatch(k *drawings.Sketch, waste []geometry.Point) {
	if len(waste) < 3 {
		return
	}
	step := math.Max(2, geometry.Bounds(waste...).Width()/12)
	k.Lines(templates.Waste, geometry.Hatch(waste, math.Pi/4, step))
}
