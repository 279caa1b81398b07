package geometry

import (
	"math"
	"sort"
)

// Area returns the area of a simple polygon in mm², positive when its
// corners run counter-clockwise (the shoelace formula).
func Area(polygon []Point) float64 {
	sum := 0.0
	for i, p := range polygon[:max(0, len(polygon)-1)] {
		sum += p.Cross(polygon[i+1])
	}
	if n := len(polygon); n > 0 {
		sum += polygon[n-1].Cross(polygon[0])
	}
	return sum / 2
}

// Closed returns the polygon as a polyline whose last point is its first.
func Closed(polygon []Point) []Point { return append(append([]Point{}, polygon...), polygon[0]) }

// Hatch fills a simple polygon with parallel lines in direction angle, step
// mm apart. The lines belong to one fixed family through the origin, so
// hatches of neighbouring polygons, and of one polygon on two sheets, join.
func Hatch(polygon []Point, angle, step float64) []Segment {
	along := Polar(1, angle)
	across := along.Perp()
	lo, hi := math.Inf(1), math.Inf(-1)
	for _, p := range polygon {
		v := p.Dot(across)
		lo, hi = math.Min(lo, v), math.Max(hi, v)
	}
	var out []Segment
	for k := math.Ceil(lo / step); k*step <= hi; k++ {
		cuts := crossings(polygon, along, across, k*step)
		for i := 0; i+1 < len(cuts); i += 2 {
			if cuts[i+1]-cuts[i] < 1e-9 {
				continue
			}
			base := across.Mul(k * step)
			out = append(out, Segment{base.Add(along.Mul(cuts[i])), base.Add(along.Mul(cuts[i+1]))})
		}
	}
	return out
}

// crossings returns in rising order the places along the line
// {p : p·across = level} where it crosses the polygon. A corner counts with
// the side above the line only, so the number is even.
func crossings(polygon []Point, along, across Point, level float64) []float64 {
	var cuts []float64
	for i, p := range polygon {
		q := polygon[(i+1)%len(polygon)]
		vp, vq := p.Dot(across), q.Dot(across)
		if (vp < level) == (vq < level) {
			continue
		}
		t := (level - vp) / (vq - vp)
		cuts = append(cuts, p.Lerp(q, t).Dot(along))
	}
	sort.Float64s(cuts)
	return cuts
}

// Decimate returns an outline with about most of its corners where it has many
// more, as arcs have. One with few comes back as it is.
func Decimate(outline []Point, most int) []Point {
	step := max(1, (len(outline)+most/2)/most)
	var out []Point
	for i := 0; i < len(outline); i += step {
		out = append(out, outline[i])
	}
	return out
}
