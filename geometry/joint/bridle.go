package joint

import (
	"cmp"
	"math"

	"rodsheet/geometry/lists"
	"rodsheet/geometry/measure"
)

// A BridleMember says which of the two parts of a bridle joint carries the
// open mortise; the other carries the tenon.
type BridleMember uint8

const (
	MortiseInStretcher BridleMember = iota
	MortiseInLeg
)

func (m BridleMember) String() string { return lists.At([]string{"stretcher", "leg"}, m, "unknown") }

// A Bridle is the open mortise and tenon at the corner of a level stretcher
// and a leg that is splayed in the plane of that stretcher, foot outward. The
// leg is as thick as the stretcher is wide, and its head is level with the
// stretcher's top.
type Bridle struct {
	Width   float64 // of the stretcher seen in plan, and thickness of the leg, mm
	Depth   float64 // of the stretcher, vertical, mm
	Angle   float64 // splay of the leg from plumb, rad
	Leg     float64 // breadth of the leg along the stretcher, square to the leg, mm
	Tenon   float64 // thickness of the tenon, centred in Width, mm; 0 for a third
	Long    float64 // by how much both ends are cut over length, along the part, to be trimmed after glue-up, mm
	Mortise BridleMember
}

// BridleLong returns the usual over-length of both ends: 3 mm or 1/8 in (common
// practice, no source).
func BridleLong(u measure.Unit) float64 { return u.Round(3, 1.0/8) }

// Check returns a *measure.BoundError for the first figure that no bridle
// can have. The other methods take a Bridle that has passed.
func (b Bridle) Check() error {
	return cmp.Or(
		within("bridle.width", b.Width),
		within("bridle.depth", b.Depth),
		within("bridle.leg", b.Leg),
		within("bridle.splay", b.Angle),
		within("bridle.tenon", b.Tenon),
		measure.Below("bridle.tenon", measure.Length(b.Tenon), "bridle.width", measure.Length(b.Width), "tenon.third"),
		within("bridle.mortise", float64(b.Mortise)),
	)
}

// Third returns the thickness of the tenon: Tenon, or a third of Width.
// A third is the usual share (Fairham, Woodwork Joints).
func (b Bridle) Third() float64 {
	if b.Tenon == 0 {
		return b.Width / 3
	}
	return b.Tenon
}

// Stretcher returns the stretcher's end. Its reference edge is the
// underside, its datum the lower corner that is trimmed to the leg's back: the
// long corner of an end that leans.
func (b Bridle) Stretcher() BridleEnd {
	return BridleEnd{
		Width: b.Depth, Thickness: b.Width, OffSquare: b.Angle, Tenon: b.Third(), Long: b.Long,
		Across: b.Leg, Slot: b.Mortise == MortiseInStretcher,
	}
}

// Head returns the leg's head. Its reference edge is the back, its datum the
// corner of that edge that is trimmed level with the stretcher's top: the short
// corner of a head that leans.
func (b Bridle) Head() BridleEnd {
	return BridleEnd{
		Width: b.Leg, Thickness: b.Width, OffSquare: -b.Angle, Tenon: b.Third(), Long: b.Long,
		Across: b.Depth, Slot: b.Mortise == MortiseInLeg,
	}
}

// A BridleEnd is the end of one part of a bridle joint. Stretcher and leg
// are the same figure with breadth and depth exchanged: trimmed end and
// shoulder run parallel.
//
// Frame: face towards the reader, x along the part from the datum, which is
// the corner of the trimmed end on the reference edge, y = 0 that edge,
// y = Width the far edge.
type BridleEnd struct {
	Width     float64 // across the face, mm
	Thickness float64 // square to the face, mm
	OffSquare float64 // of end and shoulder, rad; positive where the far edge is the shorter
	Tenon     float64 // thickness of tenon or slot, centred in Thickness, mm
	Long      float64 // what the rough end stands beyond the trimmed one, along the part, mm
	Across    float64 // of the part that crosses, square to its own edges, mm
	Slot      bool    // this part carries the open mortise
}

// Length returns how far the joint runs along any edge, from the trimmed end
// to the shoulder: a part Across wide that crosses so far off square
// takes Across/cos OffSquare.
func (e BridleEnd) Length() float64 { return e.Across / math.Cos(e.OffSquare) }

// FromFarEdge returns the same end with the far edge for reference and its own
// corner for datum.
func (e BridleEnd) FromFarEdge() BridleEnd {
	e.OffSquare = -e.OffSquare
	return e
}

// End returns where the trimmed end stands at y.
func (e BridleEnd) End(y float64) float64 { return y * math.Tan(e.OffSquare) }

// RoughEnd returns where the end stands at y before it is trimmed.
func (e BridleEnd) RoughEnd(y float64) float64 { return e.End(y) - e.Long }

// Shoulder returns where the shoulder, or the bottom of the slot, stands at y.
func (e BridleEnd) Shoulder(y float64) float64 { return e.End(y) + e.Length() }

// Cheeks returns how deep below the face the two cheeks lie.
func (e BridleEnd) Cheeks() (upper, lower float64) {
	upper = (e.Thickness - e.Tenon) / 2
	return upper, upper + e.Tenon
}

// CutHeight returns how high the cut is above the rough end, square to the
// shoulder, when the part stands on that end.
func (e BridleEnd) CutHeight() float64 { return e.Across + e.Long*math.Cos(e.OffSquare) }

// CheekArea returns the area in mm² of one trimmed cheek.
func (e BridleEnd) CheekArea() float64 { return e.Width * e.Length() }
