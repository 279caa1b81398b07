package geometry

import (
	"cmp"
	"math"
	"slices"
)

// Sagitta is the largest distance in mm between an arc and the chords that
// stand for it: a fifth of what the written file promises.
const Sagitta = 0.002

// Arc returns points on the circle about c of radius r from direction from to
// direction to, as a polyline that leaves the circle by at most Sagitta. It
// runs counter-clockwise where to > from.
//
// A chord of angle δ leaves the circle by r·(1 − cos(δ/2)).
func Arc(c Point, r, from, to float64) []Point {
	n := Chords(r, to-from)
	out := make([]Point, n+1)
	for i := range out {
		out[i] = c.Add(Polar(r, from+(to-from)*float64(i)/float64(n)))
	}
	return out
}

// Chords returns how many stand for an arc of a radius that turns by an angle.
func Chords(r, turn float64) int {
	most := math.Pi / 8
	if r > Sagitta {
		most = math.Min(most, 2*math.Acos(1-Sagitta/r))
	}
	return int(math.Max(1, math.Ceil(math.Abs(turn)/most)))
}

// A Circle is a point where its radius is 0.
type Circle struct {
	Centre Point
	Radius float64 // mm
}

// reach returns how far the circle reaches from the origin in a direction, rad.
func (c Circle) reach(direction float64) float64 {
	return c.Centre.Dot(Polar(1, direction)) + c.Radius
}

// holds reports whether another circle reaches nowhere farther; of two that are the same
// each holds the other.
func (c Circle) holds(other Circle) bool {
	return c.Radius-other.Radius >= (1-1e-9)*c.Centre.Distance(other.Centre)
}

// RoundHull returns the outline of a band round circles, counter-clockwise: arcs, as Arc has
// them, and the common tangents from one to the next.
//
// In every direction θ the band touches the circle that reaches farthest. Circle b, at the
// distance D from a in direction φ, reaches as far as a where D·cos(θ − φ) = a.r − b.r, and
// farther from there on at θ = φ − acos((a.r − b.r)/D).
func RoundHull(circles ...Circle) []Point {
	const rounding = 1e-9 // rad, where three circles have a tangent in common
	var free []Circle
	for i, c := range circles {
		if !slices.ContainsFunc(free, func(d Circle) bool { return d.holds(c) }) &&
			!slices.ContainsFunc(circles[i+1:], func(d Circle) bool { return d.holds(c) && !c.holds(d) }) {
			free = append(free, c)
		}
	}
	at := slices.MaxFunc(free, func(a, b Circle) int { return cmp.Compare(a.reach(0), b.reach(0)) })
	var out []Point
	theta := 0.0
	for quarter := 1.0; quarter <= 4; quarter++ { // so that the box of the outline is true
		for end := quarter * math.Pi / 2; theta < end; {
			next, until := at, end
			for _, c := range free {
				if c == at {
					continue
				}
				apart := c.Centre.Sub(at.Centre)
				from := Segment{B: apart}.Angle() - math.Acos((at.Radius-c.Radius)/apart.Norm())
				from += 2 * math.Pi * math.Ceil((theta-rounding-from)/(2*math.Pi)) // the first from here on
				if from < until {
					next, until = c, from
				}
			}
			if at.Radius == 0 {
				out = append(out, at.Centre)
			} else {
				out = append(out, Arc(at.Centre, at.Radius, theta, until)...)
			}
			at, theta = next, until
		}
	}
	return out
}
