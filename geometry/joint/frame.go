package joint

import (
	"cmp"
	"math"

	"rodsheet/geometry/measure"
)

// A Frame is a ring with a leg joined to the end x > 0 of every stretcher,
// centred in its width: the ring's and the leg's frames are the same x.
type Frame struct {
	Ring Ring
	Leg  Leg
	// Head is what the head of the leg measures across the stretcher where it
	// is let in, centred, mm: the tenon where the stretcher carries the
	// mortise, the whole thickness where the leg does.
	Head float64
	// Over says that the neighbour passes over this stretcher at the end that
	// has the leg; otherwise it passes under.
	Over bool
}

// Check returns a *measure.BoundError for the first figure that no frame can
// have. A leg that fouls the lap is not among them: ask Clearance.
func (f Frame) Check() error {
	return cmp.Or(
		f.Ring.Check(),
		f.Leg.Check(),
		measure.Above("leg.height", measure.Length(f.Leg.Height), "ring.depth", measure.Length(f.Ring.Depth),
			"leg.height-from-floor"),
		within("frame.head", f.Head),
		measure.AtMost("frame.head", measure.Length(f.Head), "ring.width", measure.Length(f.Ring.Width), ""),
	)
}

// Shoulder returns how far from mid-length the neighbour's outer side comes
// over the width of the leg's head: on the far side of the head where the
// edge leans outward, on the near side where it leans in.
func (f Frame) Shoulder() float64 {
	_, outer := f.Ring.Shoulders(f.Ring.Width / 2)
	return outer + f.Head/2*math.Abs(cot(f.Ring.Angle()))
}

// NeighbourTop returns how far below the top of the stretcher the neighbour
// begins: 0 where it passes over, half the depth where it passes under.
//
// The leg leans outward as it goes down, so this is where it comes nearest.
func (f Frame) NeighbourTop() float64 {
	if f.Over {
		return 0
	}
	return f.Ring.Depth / 2
}

// Clearance returns the least level distance along the stretcher between the
// stretcher side of the leg and the neighbour. Where it is negative they clash.
func (f Frame) Clearance() float64 { return f.Leg.StretcherSide(f.NeighbourTop()) - f.Shoulder() }

// LeastAt returns the least distance from mid-length to the back of the leg
// that leaves a clearance of gap mm, all else as it is. What it exceeds
// Leg.At by is what the stretcher must be made longer.
func (f Frame) LeastAt(gap float64) float64 { return f.Leg.At + gap - f.Clearance() }

// SplaysThatClear returns the least and the largest splay, from 0 to
// LeanSteepest, that leave a clearance of gap mm, all else as it is, or a
// *measure.BoundError where none does. Every splay between the two clears.
//
// With g from the shoulder (and gap) to the back of the head and h the
// depth of NeighbourTop the leg clears where g·cos α + h·sin α ≥ Breadth, that
// is √(g² + h²)·cos(α − atan(h/g)) ≥ Breadth.
func (f Frame) SplaysThatClear(gap float64) (least, most float64, err error) {
	g, h := f.Leg.At-f.Shoulder()-gap, f.NeighbourTop()
	best := math.Atan2(h, g)
	nearest := math.Min(best, LeanSteepest)
	room := math.Hypot(g, h) * math.Cos(nearest-best)
	if err := measure.AtMost("leg.breadth", measure.Length(f.Leg.Breadth), "frame.room",
		measure.Length(room), "frame.no-splay-clears"); err != nil {
		return 0, 0, err
	}
	swing := math.Acos(f.Leg.Breadth / math.Hypot(g, h))
	return math.Max(0, best-swing), math.Min(best+swing, LeanSteepest), nil
}
