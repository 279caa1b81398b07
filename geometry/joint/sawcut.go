package joint

import (
	"math"

	"rodsheet/geometry/solid"
)

// A SawCut is a flat end as it is sawn with the part flat on one face: OffSquare is
// what the mitre gauge or the head of the saw is turned by, Tilt what the blade leans
// by off square to the table.
//
// Frame: x along the part towards the waste, z up from the table, y to the left. With
// both angles positive the part is longer at its right edge and at the face that lies
// on the table.
type SawCut struct {
	OffSquare float64 // rad
	Tilt      float64 // rad
}

// SawCutOf returns the cut of a plane with the normal out, towards the waste, on a part
// that runs along and lies on the face with the outward normal down, all of them
// in one frame.
//
// A blade that is tilted by T and meets the part A off square has the normal
// (cos T·cos A, cos T·sin A, sin T) in the frame of the saw: it leans about the line in
// which it meets the table, which itself is turned by A. Read backwards that is
// tan A = y/x and sin T = z.
func SawCutOf(along, down, out solid.Vec) SawCut {
	up := down.Mul(-1).Unit()
	along, out = along.Unit(), out.Unit()
	left := up.Cross(along)
	return SawCut{OffSquare: math.Atan2(out.Dot(left), out.Dot(along)), Tilt: math.Asin(max(-1, min(1, out.Dot(up))))}
}

// Normal returns the normal of the cut in the frame of the saw.
func (c SawCut) Normal() solid.Vec {
	sa, ca := math.Sincos(c.OffSquare)
	st, ct := math.Sincos(c.Tilt)
	return solid.V(ct*ca, ct*sa, st)
}
