// Package geometry holds the plane figures that everything is drawn from: points,
// lines, polygons, hulls, and what clips them.
//
// Lengths are in millimetres and angles in radians. x runs to the right and y
// runs up. The package knows neither paper nor file formats.
package geometry

import "math"

// A Point is a position, or the step from one position to another, in mm.
type Point struct{ X, Y float64 }

// Pt is shorthand for Point{x, y}.
func Pt(x, y float64) Point { return Point{x, y} }

// Polar returns the point at distance r from the origin in direction a,
// counted counter-clockwise from the x axis.
func Polar(r, a float64) Point { return Point{r * math.Cos(a), r * math.Sin(a)} }

func (p Point) Add(q Point) Point        { return Point{p.X + q.X, p.Y + q.Y} }
func (p Point) Sub(q Point) Point        { return Point{p.X - q.X, p.Y - q.Y} }
func (p Point) Mul(k float64) Point      { return Point{p.X * k, p.Y * k} }
func (p Point) Dot(q Point) float64      { return p.X*q.X + p.Y*q.Y }
func (p Point) Cross(q Point) float64    { return p.X*q.Y - p.Y*q.X }
func (p Point) Norm() float64            { return math.Hypot(p.X, p.Y) }
func (p Point) Distance(q Point) float64 { return p.Sub(q).Norm() }

// Perp returns p turned counter-clockwise by a quarter turn.
func (p Point) Perp() Point { return Point{-p.Y, p.X} }

// Unit returns p at length 1. The zero point stays as it is.
func (p Point) Unit() Point {
	if n := p.Norm(); n > 0 {
		return p.Mul(1 / n)
	}
	return p
}

// Lerp returns the point at share t of the way from p to q.
func (p Point) Lerp(q Point, t float64) Point { return p.Add(q.Sub(p).Mul(t)) }

// A Segment is a straight line from A to B.
type Segment struct{ A, B Point }

func (s Segment) Length() float64 { return s.A.Distance(s.B) }
func (s Segment) Mid() Point      { return s.A.Lerp(s.B, 0.5) }

// Angle returns the direction from A to B, counter-clockwise from the x axis.
func (s Segment) Angle() float64 { d := s.B.Sub(s.A); return math.Atan2(d.Y, d.X) }

// A Rect is the closed box Min.X ≤ x ≤ Max.X, Min.Y ≤ y ≤ Max.Y. It is well
// formed when neither inequality excludes the other; the zero Rect is the
// single point at the origin.
type Rect struct{ Min, Max Point }

// Box returns the well-formed Rect between two opposite corners.
func Box(x0, y0, x1, y1 float64) Rect {
	return Rect{Pt(math.Min(x0, x1), math.Min(y0, y1)), Pt(math.Max(x0, x1), math.Max(y0, y1))}
}

func (r Rect) Width() float64   { return r.Max.X - r.Min.X }
func (r Rect) Height() float64  { return r.Max.Y - r.Min.Y }
func (r Rect) Size() Point      { return r.Max.Sub(r.Min) }
func (r Rect) Centre() Point    { return r.Min.Lerp(r.Max, 0.5) }
func (r Rect) Add(p Point) Rect { return Rect{r.Min.Add(p), r.Max.Add(p)} }

// Offset returns r moved outward by m on every side, inward where m < 0.
func (r Rect) Offset(m float64) Rect { return Rect{Pt(r.Min.X-m, r.Min.Y-m), Pt(r.Max.X+m, r.Max.Y+m)} }

// Union returns the smallest Rect that holds r and s.
func (r Rect) Union(s Rect) Rect {
	return Rect{
		Pt(min(r.Min.X, s.Min.X), min(r.Min.Y, s.Min.Y)),
		Pt(max(r.Max.X, s.Max.X), max(r.Max.Y, s.Max.Y)),
	}
}

// Contains reports whether p lies in r.
func (r Rect) Contains(p Point) bool {
	return r.Min.X <= p.X && p.X <= r.Max.X && r.Min.Y <= p.Y && p.Y <= r.Max.Y
}

// Holds reports whether the whole of s lies in r.
func (r Rect) Holds(s Rect) bool { return r.Contains(s.Min) && r.Contains(s.Max) }

// Overlaps reports whether r and s share a point.
func (r Rect) Overlaps(s Rect) bool {
	return r.Min.X <= s.Max.X && s.Min.X <= r.Max.X && r.Min.Y <= s.Max.Y && s.Min.Y <= r.Max.Y
}

// Corners returns the corners counter-clockwise from the lower left.
func (r Rect) Corners() []Point {
	return []Point{r.Min, Pt(r.Max.X, r.Min.Y), r.Max, Pt(r.Min.X, r.Max.Y)}
}

// Bounds returns the smallest Rect that holds all points. With no points it
// is the zero Rect.
func Bounds(points ...Point) Rect {
	if len(points) == 0 {
		return Rect{}
	}
	r := Rect{points[0], points[0]}
	for _, p := range points[1:] {
		r = r.Union(Rect{p, p})
	}
	return r
}

// Distance returns the least distance from p to a point of s.
func (s Segment) Distance(p Point) float64 { return s.Nearest(p).Distance(p) }

// Nearest returns the point of s that is nearest to p.
func (s Segment) Nearest(p Point) Point {
	d := s.B.Sub(s.A)
	n := d.Dot(d)
	if n == 0 {
		return s.A
	}
	return s.A.Add(d.Mul(max(0, min(1, p.Sub(s.A).Dot(d)/n))))
}
