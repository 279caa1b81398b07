package checks

import (
	"math"
	"rodsheet/templates/piece/kind"

	"rodsheet/geometry/measure"
	"rodsheet/templates/piece"
)

// steepFrom is the splay from which legs are asked what steepness does to them: below
// it none of the limits here is met by any usual leg (common practice, no source).
const steepFrom = 30 * math.Pi / 180

func steep(p piece.Piece) bool { return p.Frame.Leg.Splay > steepFrom }

// askArm asks how far out of its joint a leg stands on the floor. Each part of a load
// that a leg bears bends its joint by that arm, which a joint as deep as the breadth of
// the leg holds up to ten times it (common practice, no source).
func askArm(p piece.Piece) (Check, bool) {
	const times = 10
	l := p.Frame.Leg
	return atMost("foot-arm", l.Height*math.Tan(l.Splay), times*l.Breadth, kind.Warn), steep(p)
}

// leastSoleCorner is the least corner between sole and back of a leg: a sharper one is
// little but end grain and splits off when the piece is pushed (common practice, no
// source).
const leastSoleCorner = 55 * math.Pi / 180

func askSole(p piece.Piece) (Check, bool) {
	corner := math.Pi/2 - p.Frame.Leg.Splay
	return limited("sole-corner", measure.Angle(corner), measure.IsAtLeast, measure.Angle(leastSoleCorner), kind.Warn), steep(p)
}

// mostSwing is how far off square a mitre gauge holds a part that is only pressed to its
// fence: beyond it the blade draws the part along (common practice, no source).
const mostSwing = math.Pi / 4

func askSwing(p piece.Piece) (Check, bool) {
	return limited("gauge-swing", measure.Angle(p.Frame.Leg.Splay), measure.IsAtMost, measure.Angle(mostSwing), kind.Warn), steep(p)
}
