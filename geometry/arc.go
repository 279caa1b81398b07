package geometry

import "math"

// Sagitta is the largest distance in mm between an arc and the chords that
// stand for it: a fifth of what the written file promises.
const Sagitta = 0.002

// Arc returns points on the circle about c of radius r from direction from to
// direction to, as a polyline that leaves the circle by at most Sagitta. It
// runs counter-clockwise where to > from.
//
// A chord of angle δ leaves the circle by r·(1 − cos(δ/2)).
func Arc(c Point, r, from, to float64) []Point {
	most := math.Pi / 8
	if r > Sagitta {
		most = math.Min(most, 2*math.Acos(1-Sagitta/r))
	}
	n := int(math.Max(1, math.Ceil(math.Abs(to-from)/most)))
	out := make([]Point, n+1)
	for i := range out {
		out[i] = c.Add(Polar(r, from+(to-from)*float64(i)/float64(n)))
	}
	return out
}
