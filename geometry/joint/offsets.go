package joint

import (
	"math"

	"rodsheet/geometry"
)

// A Crown is a curve over a base line, its own mirror image about the origin: highest
// there, and falling ever steeper to the base line.
type Crown interface {
	Height(x float64) float64 // over the base line, x from its middle
	Across(y float64) float64 // from the middle, y over the base line
}

// Offsets returns the points a batten is bent through, from the top of a curve down
// to the right end of its base line, where it has half its length. Where it is flatter
// than 45° they stand every step along the base line, from there on every step in
// height, so that no two are much farther apart than a step and a half.
func Offsets(c Crown, half, step float64) []geometry.Point {
	at := func(x float64) geometry.Point { return geometry.Pt(x, c.Height(x)) }
	const fewest = 0.25 // of a step, between two points
	last := at(0)
	out := []geometry.Point{last}
	for x := step; x < half-fewest*step && last.Y-c.Height(x) <= step; x += step {
		last = at(x)
		out = append(out, last)
	}
	if last.Y > half-last.X {
		for y := step * math.Ceil((last.Y-fewest*step)/step-1); y > fewest*step; y -= step {
			out = append(out, geometry.Pt(c.Across(y), y))
		}
	}
	return append(out, geometry.Pt(half, 0))
}
