package piece

import (
	"math"

	"rodsheet/geometry"
	"rodsheet/geometry/joint"
	"rodsheet/geometry/measure"
	"rodsheet/templates/piece/design"
)

// TopShape returns the outline of the top about the centre of the ring: the
// zero Top where there is none.
func (p Piece) TopShape() joint.Top {
	switch {
	case p.Design.Top.Kind == design.NoTop:
		return joint.Top{}
	case p.Design.Top.Outline == design.RoundTop:
		return joint.Top{Diameter: 2 * p.TopRadius()}
	}
	t := joint.Top{Corners: p.topPolygon()}
	switch p.Design.Top.Corner {
	case design.ClippedCorner:
		t.Clip = p.Design.Top.CornerSize
	case design.RoundedCorner:
		t.Round = p.Design.Top.CornerSize
	}
	return t
}

// TopCorners returns the worked outline counter-clockwise, empty where there is
// no top.
func (p Piece) TopCorners() []geometry.Point { return p.TopShape().Outline() }

// TopArea returns the area of the top in mm², 0 where there is none.
func (p Piece) TopArea() float64 { return p.TopShape().Area() }

// ringOutline returns the polygon of the ring's outer sides as designed:
// glass is ordered to it whatever the wood comes out at.
func (p Piece) ringOutline() joint.Regular {
	return p.Design.Ring.Polygon().Offset(p.Design.Ring.Width)
}

// RegularTop returns the outline of a top that follows the ring, its corners
// sharp.
func (p Piece) RegularTop() joint.Regular { return p.ringOutline().Offset(p.Design.Top.Overhang) }

// topPolygon returns the sharp corners of a top that is not round.
func (p Piece) topPolygon() []geometry.Point {
	if p.Design.Top.Outline == design.FreeOutline {
		return p.Design.Top.Points
	}
	return p.RegularTop().Corners()
}

// TopRadius returns the radius of a round top: as given, or over the corners
// of the ring by the overhang.
func (p Piece) TopRadius() float64 {
	if p.Design.Top.Diameter > 0 {
		return p.Design.Top.Diameter / 2
	}
	return p.ringOutline().Circumradius() + p.Design.Top.Overhang
}

// Overhangs returns how far the edge of the top stands past the ring: at
// mid-length of the outer side of every stretcher, square to it, and at the
// ring's outside corner by the leg end of every stretcher, on the line from the
// centre.
func (p Piece) Overhangs() (sides, corners []float64) {
	r := p.Frame.Ring
	outside := r.Polygon().Offset(r.Width).Corners() // the first by the leg end of the first stretcher
	for i, c := range outside {
		sides = append(sides, p.past(c.Lerp(outside[(i+1)%len(outside)], 0.5)))
		corners = append(corners, p.past(c))
	}
	return sides, corners
}

// past returns how far the edge of the top stands beyond a point in plan, seen
// from the centre of the ring.
func (p Piece) past(q geometry.Point) float64 { return p.TopShape().Along(q.Unit()) - q.Norm() }

// top refuses an outline that is none, and what no pane can be.
func (j *validator) top(p Piece) {
	if p.Design.Top.Kind == design.NoTop {
		return
	}
	outline := keys("top.kind", "top.outline", "top.diameter", "top.overhang", "top.corner", "top.corner-size", "top.points")
	ring := func() []design.Key { return nil } // what the outline goes by beside
	if p.Design.Top.Outline == design.RingTop || p.Design.Top.Outline == design.RoundTop && p.Design.Top.Diameter == 0 {
		ring = keys("ring.sides", "ring.inside", "ring.width")
	}
	if !j.ask(p.checkSize, outline, ring) || !j.ask(func() error { return p.TopShape().Check() }, outline, ring) {
		return
	}
	if p.Design.Top.Kind == design.GlassTop {
		j.ask(p.Pane().Check, outline, ring, keys("top.thickness"))
	}
}

// checkSize refuses an overhang that leaves nothing of the top.
func (p Piece) checkSize() error {
	const short = "top.more-overhang"
	switch p.Design.Top.Outline {
	case design.RoundTop:
		return measure.Above("top.radius", measure.Length(p.TopRadius()), "", measure.Length(0), short)
	case design.RingTop:
		middle := measure.Length(p.ringOutline().Apothem + p.Design.Top.Overhang)
		return measure.Above("top.apothem", middle, "", measure.Length(0), short)
	}
	return nil
}

// Pane returns the top as a pane of glass.
func (p Piece) Pane() joint.Glass {
	return joint.Glass{Area: p.TopArea(), Thickness: p.Design.Top.Thickness}
}

// TopAlong returns the direction in plan of the grain of a wooden top: along its
// longer side, where both are equal along stretcher 1.
func (p Piece) TopAlong() geometry.Point {
	if size := p.TopShape().Size(); size.Y > size.X+Slip {
		return geometry.Pt(0, 1)
	}
	return geometry.Pt(1, 0)
}

// TopPanel returns the rectangle that the top is set out on and sawn from, its grain
// along TopAlong: it holds the corners as they are before they are clipped or rounded.
func (p Piece) TopPanel() StockSize {
	t := p.TopShape()
	t.Clip, t.Round = 0, 0
	length, width := t.Size().X, t.Size().Y
	if p.TopAlong().Y > 0 {
		length, width = width, length
	}
	return StockSize{length, width, p.Design.Top.Thickness}
}

// TopWidth returns the width of the finished top across its grain.
func (p Piece) TopWidth() float64 {
	size := p.TopShape().Size()
	return math.Min(size.X, size.Y)
}
