package joint

import (
	"cmp"
	"math"

	"rodsheet/geometry"
	"rodsheet/geometry/measure"
)

// A SlopingCorner is the corner of two boards that slope outward as they rise, as
// those of a hopper or of a moulding that stands off the wall. It is looked at
// from one board; Turned looks at it from the other.
//
// Frame: z up; the level edge of the board leaves the corner along x, that of its
// neighbour along (cos Angle, sin Angle), the inside of the corner between them.
// In plan the boards face outward to a = (0, -1) and b = (-sin Angle, cos Angle),
// so their faces have the outward normals
//
//	A = (sin Slope·a, -cos Slope) and B = (sin Next·b, -cos Next).
type SlopingCorner struct {
	Slope float64 // of the board from level, rad
	Next  float64 // of its neighbour from level, rad
	Angle float64 // between their level edges in plan, measured inside the corner, rad
}

// HopperCorner returns the corner of a hopper with so many sides of one slope.
func HopperCorner(sides int, slope float64) SlopingCorner {
	return SlopingCorner{slope, slope, Regular{Sides: sides}.Angle()}
}

// CornerOfMitre returns the corner of two boards of one slope whose ends are cut
// off square and tilted by so much: OffSquare and Tilt backwards. With h for half of
// what the boards turn by, tan OffSquare = cos Slope·tan h and
// sin Tilt = sin Slope·sin h; squared and added, cos Slope and sin Slope drop out:
// cos h = cos OffSquare·cos Tilt.
func CornerOfMitre(offSquare, tilt float64) SlopingCorner {
	// 1 - cos² h without the loss of figures where both angles are small.
	sin := math.Hypot(math.Sin(offSquare), math.Cos(offSquare)*math.Sin(tilt))
	h := math.Atan2(sin, math.Cos(offSquare)*math.Cos(tilt))
	slope := math.Atan2(math.Sin(tilt)/sin, math.Tan(offSquare)/math.Tan(h))
	return SlopingCorner{slope, slope, math.Pi - 2*h}
}

// SlopeOfMitre returns the slope at which two boards that meet at angle in plan are
// cut off square by so much: cos Slope = tan OffSquare/tan h. It is a
// *measure.BoundError for more than a flat frame has.
func SlopeOfMitre(angle, offSquare float64) (float64, error) {
	h := (math.Pi - angle) / 2
	err := cmp.Or(
		within("corner.angle", angle),
		within("corner.off-square", offSquare),
		measure.Below("corner.off-square", measure.Angle(offSquare), "corner.flat-frame", measure.Angle(h), "corner.less-or-fewer"),
	)
	return math.Acos(math.Min(1, math.Tan(offSquare)/math.Tan(h))), err
}

// SlopeOfTilt returns the slope at which the ends of two boards that meet at angle in
// plan are mitred with the blade tilted by so much: sin Slope = sin Tilt/sin h. It is
// a *measure.BoundError for more than an upright box has.
func SlopeOfTilt(angle, tilt float64) (float64, error) {
	h := (math.Pi - angle) / 2
	err := cmp.Or(
		within("corner.angle", angle),
		within("corner.tilt", tilt),
		measure.AtMost("corner.tilt", measure.Angle(tilt), "corner.upright-box", measure.Angle(h), "corner.less-or-fewer"),
	)
	return math.Asin(math.Min(1, math.Sin(tilt)/math.Sin(h))), err
}

// Check returns a *measure.BoundError for a figure no corner has. The other
// methods take a SlopingCorner that has passed.
func (s SlopingCorner) Check() error {
	return cmp.Or(
		within("corner.slope", s.Slope), within("corner.slope", s.Next),
		within("corner.angle", s.Angle),
	)
}

// Turned returns the same corner as its neighbour has it.
func (s SlopingCorner) Turned() SlopingCorner { return SlopingCorner{s.Next, s.Slope, s.Angle} }

// OffSquare returns the angle off square at which the end of the board is cut across
// its face, mitred or butted: that of the line in which the faces meet. It is
// positive where the board is longer at its upper edge.
//
// Rising by 1 that line moves by p in plan, with p·a = cot Slope and
// p·b = cot Next. So it runs beyond the corner, along the board, by
// (cot Next + cot Slope·cos Angle)/sin Angle, while the face is 1/sin Slope wide:
//
//	tan OffSquare = (sin Slope·cot Next + cos Slope·cos Angle)/sin Angle.
//
// With one slope and n sides this is cos Slope·tan(π/n).
func (s SlopingCorner) OffSquare() float64 {
	across := math.Sin(s.Slope)/math.Tan(s.Next) + math.Cos(s.Slope)*math.Cos(s.Angle)
	return math.Atan2(across, math.Sin(s.Angle))
}

// Dihedral returns the angle between the faces of the two boards, measured
// inside the corner, square to the line in which they meet: what the outward
// normals leave of π, so that its cosine is
//
//	-A·B = sin Slope·sin Next·cos Angle - cos Slope·cos Next.
func (s SlopingCorner) Dihedral() float64 {
	return math.Acos(math.Sin(s.Slope)*math.Sin(s.Next)*math.Cos(s.Angle) - math.Cos(s.Slope)*math.Cos(s.Next))
}

// Tilt returns the tilt of the blade off square to the face for an end that is
// mitred through the thickness. Boards of one thickness take half of the dihedral
// angle each: Tilt = (π - Dihedral)/2. With one slope and n sides
// sin Tilt = sin Slope·sin(π/n). The outer face is the longer one.
func (s SlopingCorner) Tilt() float64 { return (math.Pi - s.Dihedral()) / 2 }

// ButtTilt returns the tilt of the blade for an end that lies against the face of its
// neighbour: Dihedral - π/2. It is positive where the hollow side is the longer one,
// which it is but for corners of three or few steep sides.
func (s SlopingCorner) ButtTilt() float64 { return s.Dihedral() - math.Pi/2 }

// A Hopper is a box of sloping sides, or one corner of it.
type Hopper struct {
	SlopingCorner
	Sides int  // 0 where one corner is asked for and no more
	Butt  bool // each end lies against the hollow side of the next board; else mitred
}

// Check returns a *measure.BoundError for a hopper that closes on itself or that no saw
// cuts.
func (h Hopper) Check() error {
	sides := error(nil)
	if h.Sides != 0 {
		sides = within("hopper.sides", float64(h.Sides))
	}
	return cmp.Or(sides, h.SlopingCorner.Check(), within("hopper.tilt", math.Abs(h.EndTilt())))
}

// EndTilt returns the tilt of the blade for the ends: see Tilt and ButtTilt.
func (h Hopper) EndTilt() float64 {
	if h.Butt {
		return h.ButtTilt()
	}
	return h.Tilt()
}

// OuterLonger reports whether the ends leave the outer side of a board longer than the
// hollow side.
func (h Hopper) OuterLonger() bool { return !h.Butt || h.ButtTilt() < 0 }

// Section returns the ends of two boards so thick, as seen along the line in which
// their hollow sides meet, which is the origin: each shown for reach mm along its hollow
// side. The first lies along x, its hollow side up; butted, it is the one that runs past.
func (h Hopper) Section(thick, reach float64) (first, second []geometry.Point) {
	angle := h.Dihedral()
	s, c := math.Sincos(angle)
	way, out := geometry.Pt(c, s), geometry.Pt(-s, c)
	corner := geometry.Polar(thick/math.Sin(angle/2), angle/2+math.Pi)
	far := []geometry.Point{geometry.Pt(reach, -thick), geometry.Pt(reach, 0)}
	if !h.Butt {
		return append(far, geometry.Point{}, corner), []geometry.Point{{}, way.Mul(reach), way.Mul(reach).Add(out.Mul(thick)), corner}
	}
	past := geometry.Pt(-thick/s, 0)
	return append(far, past, past.Sub(way.Mul(thick/s))),
		[]geometry.Point{{}, way.Mul(reach), way.Mul(reach).Add(out.Mul(thick)), past}
}
