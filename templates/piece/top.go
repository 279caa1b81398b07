package piece

import (
	"math"

	"rodsheet/geometry"
	"rodsheet/geometry/measure"
	"rodsheet/templates/piece/design"
)

// TopCorners returns the outline of the top about the centre of the ring,
// counter-clockwise, arcs as chords that leave them by at most
// geometry.Sagitta. It is empty where there is no top.
func (p Piece) TopCorners() []geometry.Point {
	switch {
	case p.Top.Kind == design.NoTop:
		return nil
	case p.Top.Outline == design.RoundTop:
		round := geometry.Arc(geometry.Point{}, p.TopRadius(), 0, 2*math.Pi)
		return round[:len(round)-1]
	}
	return p.worked(p.topPolygon())
}

// topPolygon returns the sharp corners of a top that is not round.
func (p Piece) topPolygon() []geometry.Point {
	if p.Top.Outline == design.FreeOutline {
		return p.Top.Points
	}
	return p.Frame.Ring.Polygon().Grow(p.Frame.Ring.Width + p.Top.Overhang).Corners()
}

// TopRadius returns the radius of a round top: as given, or over the corners
// of the ring by the overhang.
func (p Piece) TopRadius() float64 {
	if p.Top.Diameter > 0 {
		return p.Top.Diameter / 2
	}
	return p.Frame.Ring.Polygon().Grow(p.Frame.Ring.Width).Circumradius() + p.Top.Overhang
}

// worked clips or rounds the corners of a convex outline.
func (p Piece) worked(corners []geometry.Point) []geometry.Point {
	if p.Top.Corner == design.SharpCorner || p.Top.CornerSize == 0 {
		return corners
	}
	var out []geometry.Point
	n := len(corners)
	for i, c := range corners {
		before, after := corners[(i+n-1)%n], corners[(i+1)%n]
		if p.Top.Corner == design.ClippedCorner {
			out = append(out, toward(c, before, p.Top.CornerSize), toward(c, after, p.Top.CornerSize))
		} else {
			out = append(out, rounded(before, c, after, p.Top.CornerSize)...)
		}
	}
	return out
}

func toward(from, to geometry.Point, by float64) geometry.Point {
	return from.Add(to.Sub(from).Unit().Mul(by))
}

// rounded returns the arc of radius r that rounds the corner c. It touches
// both sides r·tan(turn/2) from the corner, turn being the change of
// direction there.
func rounded(before, c, after geometry.Point, r float64) []geometry.Point {
	in, out := c.Sub(before).Unit(), after.Sub(c).Unit()
	turn := math.Atan2(in.Cross(out), in.Dot(out))
	centre := c.Sub(in.Mul(r * math.Tan(turn/2))).Add(in.Turn().Mul(r))
	from := geometry.Segment{B: in}.Angle() - math.Pi/2
	return geometry.Arc(centre, r, from, from+turn)
}

// TopArea returns the area of the top in mm².
func (p Piece) TopArea() float64 {
	if p.Top.Kind != design.NoTop && p.Top.Outline == design.RoundTop {
		return math.Pi * p.TopRadius() * p.TopRadius()
	}
	if p.Top.Kind == design.NoTop {
		return 0
	}
	return geometry.Area(p.TopCorners())
}

// Rim returns the greatest distance from the centre to the edge of the top,
// counted square to the line of two feet in whichever direction it is most
// for that line: what a load on the rim has for an arm.
func (p Piece) Rim() float64 {
	most := 0.0
	n := p.Frame.Ring.Sides
	for i := range n {
		out := p.tippingDirection(i)
		for _, c := range p.TopCorners() {
			most = math.Max(most, c.Dot(out))
		}
	}
	return most
}

// tippingDirection is square to the line through feet i and i+1, outward.
func (p Piece) tippingDirection(i int) geometry.Point {
	a := p.footPoint(i)
	b := p.footPoint(i + 1)
	return a.Lerp(b, 0.5).Unit()
}

// footPoint returns where the outer edge of foot i stands in plan, at
// mid-thickness.
func (p Piece) footPoint(i int) geometry.Point {
	local := geometry.Pt(p.Frame.Leg.Foot(), p.Frame.Ring.Width/2)
	return p.Frame.Ring.Place(i, 0).Apply(local)
}

// checkTop returns a *measure.BoundError for an outline that is none: a clip
// or rounding that leaves nothing of a side, or corners that turn inward.
func (p Piece) checkTop() error {
	if p.Top.Kind == design.NoTop || p.Top.Outline == design.RoundTop {
		return nil
	}
	corners := p.topPolygon()
	n := len(corners)
	for i, c := range corners {
		before, after := corners[(i+n-1)%n], corners[(i+1)%n]
		in, out := c.Sub(before), after.Sub(c)
		if in.Cross(out) <= 0 {
			return &measure.BoundError{
				Figure: "corner of the top", Value: measure.Number(float64(i + 1)),
				Relation: "must turn to the left of the one before, corner", Limit: measure.Number(float64((i+n-1)%n + 1)),
				Hint: "give the corners counter-clockwise; an outline that turns inward cannot be worked yet",
			}
		}
		take := p.Top.CornerSize
		if p.Top.Corner == design.RoundedCorner {
			take *= math.Tan(math.Atan2(in.Cross(out), in.Dot(out)) / 2)
		}
		if p.Top.Corner == design.SharpCorner {
			take = 0
		}
		half := math.Min(in.Norm(), out.Norm()) / 2
		if err := measure.AtMost("corner of the top", measure.Length(take), "half a side", measure.Length(half), ""); err != nil {
			return err
		}
	}
	return nil
}
