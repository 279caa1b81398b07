package joint

import (
	"cmp"
	"math"
)

// A Leg is a straight leg that leans in the plane of its stretcher, foot
// outward. Head and foot are cut level, and the head is level with the top of
// the stretcher.
//
// Frame: seen square to that plane, x along the stretcher from its
// mid-length, outward to the right. Heights are given as depth below the top
// of the stretcher, which puts the floor at Height.
type Leg struct {
	Breadth   float64 // along the stretcher, square to the leg, mm
	Thickness float64 // square to the plane of the stretcher, mm
	Height    float64 // from the floor to the top of the stretcher, mm
	Splay     float64 // from plumb, rad
	At        float64 // from mid-length to the back of the head, mm
}

// Check returns a *measure.BoundError for the first figure no leg can have.
// The other methods take a Leg that has passed.
func (l Leg) Check() error {
	return cmp.Or(
		within("leg.breadth", l.Breadth),
		within("leg.thickness", l.Thickness),
		within("leg.height", l.Height),
		within("leg.splay", l.Splay),
		within("leg.at", l.At),
	)
}

// Length returns the length along the leg between the two level cuts:
// Height/cos Splay.
func (l Leg) Length() float64 { return l.Height / math.Cos(l.Splay) }

// Blank returns the length of the blank with square ends. The level cuts lean
// by Splay off square, which takes Breadth·tan Splay more than Length.
func (l Leg) Blank() float64 { return l.Length() + l.Breadth*math.Tan(l.Splay) }

// Section returns what the leg measures along any level line in its plane:
// Breadth/cos Splay.
func (l Leg) Section() float64 { return l.Breadth / math.Cos(l.Splay) }

// Back returns where the back of the leg stands below mm under the top of the
// stretcher.
func (l Leg) Back(below float64) float64 { return l.At + below*math.Tan(l.Splay) }

// StretcherSide returns where that face of the leg stands below mm under the top
// of the stretcher.
func (l Leg) StretcherSide(below float64) float64 { return l.Back(below) - l.Section() }

// Foot returns where the back of the foot stands on the floor.
func (l Leg) Foot() float64 { return l.Back(l.Height) }
