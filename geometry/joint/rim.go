package joint

import (
	"math"

	"rodsheet/geometry"
	"rodsheet/geometry/lists"
)

// core returns the polygon and the radius whose disc, moved over all of the
// polygon, covers the top: the sides are drawn in by the radius of the corners.
// It is worked from the figures and has no chords.
func (t Top) core() (polygon []geometry.Point, radius float64) {
	switch {
	case t.Diameter > 0:
		return []geometry.Point{{}}, t.Diameter / 2
	case t.Round > 0:
		for i := range t.Corners {
			polygon = append(polygon, t.arcCentre(i))
		}
		return polygon, t.Round
	}
	if t.Clip == 0 {
		return t.Corners, 0
	}
	return t.Outline(), 0
}

// arcCentre returns the centre of the arc at corner i, which touches both sides
// Round·tan(turn/2) from the corner.
func (t Top) arcCentre(i int) geometry.Point {
	in, out := t.sides(i)
	along := in.Unit()
	return t.Corners[i].Sub(along.Mul(t.Round * math.Tan(turnOf(in, out)/2))).Add(along.Perp().Mul(t.Round))
}

// arcAt returns the centre of the corner's arc that the centre of the top sees
// beyond the point, and whether there is one: the point lies between the normals
// of the two sides that meet there.
func (t Top) arcAt(q geometry.Point) (centre geometry.Point, ok bool) {
	if t.Round <= 0 || t.Diameter > 0 {
		return geometry.Point{}, false
	}
	for i := range t.Corners {
		in, out := t.sides(i)
		c := t.arcCentre(i)
		if v := q.Sub(c); in.Perp().Cross(v) <= 0 && out.Perp().Cross(v) >= 0 {
			return c, true
		}
	}
	return geometry.Point{}, false
}

// Support returns how far in mm the edge reaches from the centre in a direction, a
// unit vector, counted along it.
func (t Top) Support(direction geometry.Point) float64 {
	polygon, radius := t.core()
	most := math.Inf(-1)
	for _, c := range polygon {
		most = math.Max(most, c.Dot(direction))
	}
	return most + radius
}

// Inside returns how far in mm points lie inside the edge, that which lies least, negative
// outside of it. Off a sharp corner that is the distance to the line of the side that the
// point is farthest beyond.
func (t Top) Inside(points ...geometry.Point) float64 {
	least := math.Inf(1)
	if t.Diameter > 0 {
		for _, q := range points {
			least = math.Min(least, t.Diameter/2-q.Norm())
		}
		return least
	}
	if t.Round == 0 {
		return insideAll(t.straight(), points, least)
	}
	var straight []geometry.Point // those that see a side
	for _, q := range points {
		if c, ok := t.arcAt(q); ok {
			least = math.Min(least, t.Round-q.Distance(c))
		} else {
			straight = append(straight, q)
		}
	}
	return insideAll(t.straight(), straight, least)
}

// insideAll returns how far points lie inside the lines of all sides of a convex polygon,
// that which lies least, or least where that is less. Begun next to the middle of the
// points, few sides can be nearer to any of them.
func insideAll(polygon, points []geometry.Point, least float64) float64 {
	middle := geometry.Bounds(points...).Centre()
	reach := lists.Most(points, middle.Distance)
	first, near := 0, math.Inf(1)
	for i := 0; i < len(polygon); i += 1 + len(polygon)/100 { // one near enough serves
		if to := polygon[i].Sub(middle); to.Dot(to) < near {
			first, near = i, to.Dot(to)
		}
	}
	for at := range polygon { // from the first on, once round
		if at += first; at >= len(polygon) {
			at -= len(polygon)
		}
		a, next := polygon[at], at+1
		if next == len(polygon) {
			next = 0
		}
		side := polygon[next].Sub(a)
		// The middle lies deep/|side| inside of it, and none of the points by reach less.
		deep, most := side.Cross(middle.Sub(a)), least+reach
		if deep > 0 && (most < 0 || deep*deep > most*most*side.Dot(side)) {
			continue
		}
		along := side.Unit()
		for _, q := range points {
			least = min(least, along.Cross(q.Sub(a)))
		}
	}
	return least
}

// Along returns how far in mm the edge is from the centre in a direction, a unit
// vector, measured on the line that runs so from the centre. The centre must lie
// inside the edge.
func (t Top) Along(direction geometry.Point) float64 {
	if t.Diameter > 0 {
		return t.Diameter / 2
	}
	polygon := t.straight()
	least := math.Inf(1)
	for i, a := range polygon {
		normal := polygon[(i+1)%len(polygon)].Sub(a).Perp().Mul(-1)
		if slope := normal.Dot(direction); slope > 0 {
			least = math.Min(least, normal.Dot(a)/slope)
		}
	}
	// Before the line of a side is reached the arc of a corner may be.
	for i := range t.Corners {
		c := t.arcCentre(i)
		off := c.Cross(direction)
		if t.Round <= math.Abs(off) {
			continue
		}
		reach := c.Dot(direction) + math.Sqrt(t.Round*t.Round-off*off)
		if at, ok := t.arcAt(direction.Mul(reach)); ok && at == c {
			return reach
		}
	}
	return least
}

// straight returns the corners of the outline with its straight sides alone: a
// rounded corner is sharp.
func (t Top) straight() []geometry.Point {
	if t.Round > 0 {
		return t.Corners
	}
	return t.Outline()
}

// Centroid returns the centre of gravity of the top.
//
// A corner rounded to r that turns by 2h loses the kite between its tangents,
// r²·tan h, less the sector in it, r²·h. On the line from the centre of the arc
// to the corner their centroids lie r·(cos h + 1/cos h)/3 and 2·r·sin h/(3·h)
// from that centre.
func (t Top) Centroid() geometry.Point {
	if t.Diameter > 0 {
		return geometry.Point{}
	}
	var moment geometry.Point
	polygon := t.straight()
	a := polygon[len(polygon)-1]
	for _, b := range polygon {
		moment = moment.Add(a.Add(b).Mul(a.Cross(b) / 6)) // a triangle with the origin
		a = b
	}
	for i := range t.Corners {
		if t.Round <= 0 {
			break
		}
		h, r, c := turnOf(t.sides(i))/2, t.Round, t.arcCentre(i)
		kite, sector := r*r*math.Tan(h), r*r*h
		beyond := kite*r*(math.Cos(h)+1/math.Cos(h))/3 - sector*2*r*math.Sin(h)/(3*h)
		moment = moment.Sub(c.Mul(kite - sector)).Sub(t.Corners[i].Sub(c).Unit().Mul(beyond))
	}
	return moment.Mul(1 / t.Area())
}
