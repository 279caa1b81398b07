package joint

import "math"

// A Stake is a leg that leans two ways out of a slab, round where it is let in. The slab
// may lie tilted: then the floor is not parallel to it.
//
// Frame: that of Compound, z square to the slab, upward. The axis runs down along
// (tan Splay, tan Rake, −1). Up in the room is (0, sin Tilt, cos Tilt): the slab is
// Tilt lower on the side to which the foot leans by Rake where Tilt is negative.
type Stake struct {
	Compound
	Tilt float64
}

// FromPlumb returns the lean of the leg as it stands in the room: the cosine is that of
// the axis, upward, and up in the room, (cos Tilt − tan Rake·sin Tilt)/√(1 + lean²).
func (s Stake) FromPlumb() float64 {
	sin, cos := math.Sincos(s.Tilt)
	return math.Acos(math.Max(-1, math.Min(1, (cos-math.Tan(s.Rake)*sin)/math.Hypot(1, s.lean()))))
}

// FootCut returns how a level cut runs off square over the faces of a leg two of whose
// faces look along the sightline and two across it: over the faces that look across, which
// are seen square to the lean, and over those that look along it. Positive means longer
// on the side to which the leg leans, or on its left as one looks along the sightline.
//
// Square to the axis w lie f = (cos R along the sightline, sin R up) and g, level, to the
// left. A plane square to up leaves on the face that holds f and w a trace of which tan is
// f·up/w·up, on the face of g and w one of g·up/w·up. With h the sightline along y,
// up = (0, sin T, cos T): along the sightline it has sin T·cos h, to its left sin T·sin h
// (g = (−cos h, sin h) where the sightline is (sin h, cos h)).
func (s Stake) FootCut() (across, along float64) {
	sinT, cosT := math.Sincos(s.Tilt)
	sinR, cosR := math.Sincos(s.Resultant())
	sinH, cosH := math.Sincos(s.Sightline())
	f := cosR*sinT*cosH + sinR*cosT
	w := -sinR*sinT*cosH + cosR*cosT
	return math.Atan(f / w), math.Atan(sinT * sinH / w)
}

// A Bore is a round hole that leans, as a slab's face cuts it.
type Bore struct {
	Radius float64 // on the axis, in the plane of the face, mm
	Lean   float64 // of the axis off square to the face, rad
	Narrow float64 // half of the included angle, narrower upward, rad; 0: the same all along
}

// Mouth returns the ellipse of the hole on the face: how far its middle lies off the
// axis, along the sightline towards the foot, and its half axes along the sightline and
// across.
//
// In the plane of the lean the two sides of the cone are at t·(sin R, −cos R) ±
// (r + t·k)·(cos R, sin R), with t down along the axis and k = tan Narrow. They meet z = 0
// at t = ±r·sin R/(cos R ∓ k·sin R), at ±r/(cos R ∓ k·sin R) along the sightline. Half the
// minor axis of a plane section of a cone is the geometric mean of the cone's radii at
// the two ends of the major one, r + k·t.
func (b Bore) Mouth() (off, along, across float64) {
	sin, cos := math.Sincos(b.Lean)
	k := math.Tan(b.Narrow)
	out, in := b.Radius/(cos-k*sin), b.Radius/(cos+k*sin)
	return (out - in) / 2, (out + in) / 2, math.Sqrt((b.Radius + k*out*sin) * (b.Radius - k*in*sin))
}

// BlindReach returns how far along the axis a flat-bottomed bit goes whose deepest point
// is to be depth below the face, square to it: its rim reaches radius·sin R deeper than
// its middle.
func (b Bore) BlindReach(depth float64) float64 {
	sin, cos := math.Sincos(b.Lean)
	// The radius at the bottom is Radius − reach·k: depth = reach·cos + (r − reach·k)·sin.
	return (depth - b.Radius*sin) / (cos - math.Tan(b.Narrow)*sin)
}

// OctagonCorner returns what a corner of a square loses along each side to make it a
// regular octagon: side/(2 + √2).
func OctagonCorner(side float64) float64 { return side / (2 + math.Sqrt2) }
