package joint

import (
	"math"

	"rodsheet/geometry/solid"
)

// A Shoulder is the plane in which the end of a rail meets the face of a leg, by
// the lines that it leaves on the four sides of the rail.
//
// Frame: the outer side of the rail towards the reader, x along the rail from the
// corner of the shoulder where outer side and underside meet, y up from the
// underside, depth down from the outer side. The leg is at x < 0.
type Shoulder struct {
	Face float64 // off square across outer side and frame side, rad; positive where the top is the shorter
	Edge float64 // off square across underside and top, rad; positive where the frame side is the shorter
}

// ShoulderAgainst returns the shoulder against a face whose normal is n in the
// frame of the rail, with the depth for z. Its plane is n·p = 0.
func ShoulderAgainst(n solid.Vec) Shoulder {
	return Shoulder{Face: math.Atan(-n.Y / n.X), Edge: math.Atan(-n.Z / n.X)}
}

// LeaningShoulder returns the shoulder of a level rail against a leg that leans by
// splay along the rail and by rake across it, foot away from the rail and to the
// outer side. The outer side of the rail leans with the leg; the face that it
// meets is turned in plan by turn off square to the rail, positive where the frame
// side of the rail is the shorter.
//
// In the room, with x along the rail, y to the frame side and z up, the leg runs
// along a = (tan splay, tan rake, 1) and its face holds e = (sin turn, cos turn, 0)
// as well: its normal is e × a. Across the rail run v = (0, sin rake, cos rake)
// up its outer side and d = (0, cos rake, −sin rake) square to that. The three
// products of the normal with x, v and d, over cos turn, are
//
//	1,  −tan splay·cos rake,  tan splay·sin rake − tan turn/cos rake
func LeaningShoulder(splay, rake, turn float64) Shoulder {
	return ShoulderAgainst(solid.V(1, -math.Tan(splay)*math.Cos(rake),
		math.Tan(splay)*math.Sin(rake)-math.Tan(turn)/math.Cos(rake)))
}

// At returns where the shoulder stands on the rail.
func (s Shoulder) At(y, depth float64) float64 { return y*math.Tan(s.Face) + depth*math.Tan(s.Edge) }

// Square returns the cosine of the angle at which the rail meets the leg, 1 where
// that is square: what runs l along the rail goes l·Square deep.
//
// The plane x = y·tan Face + depth·tan Edge has the normal (1, −tan Face, −tan Edge).
func (s Shoulder) Square() float64 {
	f, e := math.Tan(s.Face), math.Tan(s.Edge)
	return 1 / math.Sqrt(1+f*f+e*e)
}

// spread returns what one mm of depth takes across the face of the leg. The
// shoulder line on the outer side runs along the leg, as a = (sin Face, cos Face, 0).
// What is left of the line (tan Edge, 0, 1) square to a is
// (tan Edge·cos² Face, −tan Edge·sin Face·cos Face, 1), √(1 + tan² Edge·cos² Face) long.
func (s Shoulder) spread() float64 { return math.Hypot(1, math.Tan(s.Edge)*math.Cos(s.Face)) }

// OnLeg returns the place of a point of the shoulder on the face of the leg: how
// far it lies up along the leg and across it, from the corner that the rail is set
// out from. See spread; up is the product with a.
func (s Shoulder) OnLeg(y, depth float64) (up, across float64) {
	return y/math.Cos(s.Face) + depth*math.Tan(s.Edge)*math.Sin(s.Face), depth * s.spread()
}

// Drift returns by how much a mortise that follows the rail moves along the leg,
// towards the foot, and across it, towards the outer side, for each mm of depth.
func (s Shoulder) Drift() (down, out float64) {
	c := math.Cos(s.Face)
	return math.Sin(s.Face) / s.Square(), math.Tan(s.Edge) * c * c / s.spread() / s.Square()
}
