package piece

import (
	"cmp"
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

// ringOutline returns the polygon of the ring's outside edges as designed:
// glass is ordered to it whatever the wood comes out at.
func (p Piece) ringOutline() geometry.Regular { return p.Ring.Polygon().Grow(p.Ring.Width) }

// topPolygon returns the sharp corners of a top that is not round.
func (p Piece) topPolygon() []geometry.Point {
	if p.Top.Outline == design.FreeOutline {
		return p.Top.Points
	}
	return p.ringOutline().Grow(p.Top.Overhang).Corners()
}

// TopRadius returns the radius of a round top: as given, or over the corners
// of the ring by the overhang.
func (p Piece) TopRadius() float64 {
	if p.Top.Diameter > 0 {
		return p.Top.Diameter / 2
	}
	return p.ringOutline().Circumradius() + p.Top.Overhang
}

// worked clips or rounds the corners of a convex outline. Where two take a
// whole side between them they share a point.
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
	return distinct(out)
}

// distinct leaves out every corner that stands on the one before.
func distinct(corners []geometry.Point) []geometry.Point {
	const near = 1e-8 // mm, rounding
	var out []geometry.Point
	n := len(corners)
	for i, c := range corners {
		if c.Distance(corners[(i+n-1)%n]) > near {
			out = append(out, c)
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
	turn := turned(in, out)
	centre := c.Sub(in.Mul(r * math.Tan(turn/2))).Add(in.Turn().Mul(r))
	from := geometry.Segment{B: in}.Angle() - math.Pi/2
	return geometry.Arc(centre, r, from, from+turn)
}

// TopArea returns the area of the top in mm², its arcs taken as true arcs.
func (p Piece) TopArea() float64 {
	switch {
	case p.Top.Kind == design.NoTop:
		return 0
	case p.Top.Outline == design.RoundTop:
		return math.Pi * p.TopRadius() * p.TopRadius()
	case p.Top.Corner == design.RoundedCorner:
		return geometry.RoundedArea(p.topPolygon(), p.Top.CornerSize)
	}
	return geometry.Area(p.TopCorners())
}

// Rim returns how far from the centre a load on the edge of the top may stand,
// counted square to the line through two neighbouring feet, for the two where
// that is most.
func (p Piece) Rim() float64 {
	if p.Top.Kind != design.NoTop && p.Top.Outline == design.RoundTop {
		return p.TopRadius()
	}
	most := 0.0
	for i := range p.Frame.Ring.Sides {
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

// checkTop returns a *measure.BoundError for an outline that is none, and for
// what no pane can be.
func (p Piece) checkTop() error {
	if p.Top.Kind == design.NoTop {
		return nil
	}
	if err := p.checkOutline(); err != nil {
		return err
	}
	if p.Top.Kind == design.GlassTop {
		return geometry.Glass{Area: p.TopArea(), Thickness: p.Top.Thickness}.Check()
	}
	return nil
}

// checkOutline asks each question only once those before it are answered.
func (p Piece) checkOutline() error {
	const short = "give it more overhang"
	switch p.Top.Outline {
	case design.RoundTop:
		return measure.Above("radius of the top", measure.Length(p.TopRadius()), "", measure.Length(0), short)
	case design.RingTop:
		middle := measure.Length(p.ringOutline().Apothem + p.Top.Overhang)
		if err := measure.Above("centre to side of the top", middle, "", measure.Length(0), short); err != nil {
			return err
		}
	}
	corners := p.topPolygon()
	if err := checkPoints(corners); err != nil {
		return err
	}
	return cmp.Or(checkTurns(corners), p.checkCorners(corners))
}

// checkPoints refuses corners that are too few, too close or out of reach.
func checkPoints(corners []geometry.Point) error {
	if len(corners) < 3 {
		return measure.AtLeast("corners of the top", measure.Number(float64(len(corners))), "", measure.Number(3), "")
	}
	for _, c := range corners {
		if err := measure.AtMost("centre to corner of the top", measure.Length(c.Norm()), "", measure.Length(2*longest), ""); err != nil {
			return err
		}
	}
	for i, c := range corners {
		side := corners[(i+1)%len(corners)].Distance(c)
		if err := measure.AtLeast("side of the top", measure.Length(side), "", measure.Length(least), "leave out one of its corners"); err != nil {
			return err
		}
	}
	return nil
}

// checkTurns refuses corners that do not go once round, always to the left.
func checkTurns(corners []geometry.Point) error {
	const straight = 1e-6 // rad, less than any saw can make
	sum := 0.0
	n := len(corners)
	for i := range corners {
		turn := turned(sides(corners, i))
		if turn < straight || turn > math.Pi-straight {
			return &measure.BoundError{
				Figure: "corner of the top", Value: measure.Number(float64(i + 1)),
				Relation: "must turn to the left of the one before, corner", Limit: measure.Number(float64((i+n-1)%n + 1)),
				Hint: "give the corners counter-clockwise; an outline that turns inward cannot be worked yet",
			}
		}
		sum += turn
	}
	return measure.AtMost("turns of the outline of the top", measure.Number(math.Round(sum/(2*math.Pi))), "", measure.Number(1),
		"its sides cross; give the corners in their order round the edge")
}

// checkCorners refuses a clip or rounding that takes more than half of a side.
func (p Piece) checkCorners(corners []geometry.Point) error {
	const trace = 1e-9 // mm, of rounding where two corners share a whole side
	if p.Top.Corner == design.SharpCorner {
		return nil
	}
	for i := range corners {
		in, out := sides(corners, i)
		most := math.Min(in.Norm(), out.Norm()) / 2
		name := "half a side"
		if p.Top.Corner == design.RoundedCorner {
			// The arc begins r·tan(turn/2) from the corner.
			most /= math.Tan(turned(in, out) / 2)
			name = "what half a side holds"
		}
		if err := measure.AtMost("corner size of the top", measure.Length(p.Top.CornerSize), name, measure.Length(most+trace),
			"take less off the corners"); err != nil {
			return err
		}
	}
	return nil
}

// sides returns the side that comes to corner i and the one that leaves it.
func sides(corners []geometry.Point, i int) (in, out geometry.Point) {
	n := len(corners)
	return corners[i].Sub(corners[(i+n-1)%n]), corners[(i+1)%n].Sub(corners[i])
}

// turned returns the change of direction from in to out, counter-clockwise.
func turned(in, out geometry.Point) float64 { return math.Atan2(in.Cross(out), in.Dot(out)) }
