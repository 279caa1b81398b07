package geometry

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
		measure.Above("height", measure.Length(f.Leg.Height), "the depth of the stretcher", measure.Length(f.Ring.Depth),
			"give the height from the floor to the top of the stretcher"),
		measure.Positive("head of leg", measure.Length(f.Head)),
		measure.AtMost("head of leg", measure.Length(f.Head), "the width of the stretcher", measure.Length(f.Ring.Width), ""),
	)
}

// FootRadius returns the radius of the circle on the floor, about the centre
// of the ring, that the outer edges of the feet touch at mid-thickness:
// √(Axis² + Foot²).
func (f Frame) FootRadius() float64 { return math.Hypot(f.Ring.Axis(), f.Leg.Foot()) }

// FootSpread returns the distance between the same points of neighbouring
// feet: the chord of one n-th of the circle.
func (f Frame) FootSpread() float64 { return f.spread(f.FootRadius()) }

// spread returns the distance between neighbouring feet on a circle.
func (f Frame) spread(radius float64) float64 { return Chord(radius, f.Ring.Polygon().Turn()) }

// SplayForFootRadius returns the splay that puts the feet on a circle of so
// many mm, all else as it is, or a *measure.BoundError where no splay from 0
// to LeanSteepest does: tan Splay = (√(radius² − Axis²) − At)/Height.
func (f Frame) SplayForFootRadius(radius float64) (float64, error) {
	plumb, widest := f.splayed(0).FootRadius(), f.splayed(LeanSteepest).FootRadius()
	if err := checkFeet("foot circle radius", radius, plumb, widest); err != nil {
		return 0, err
	}
	return f.splayFor(radius), nil
}

// SplayForFootSpread returns the splay that sets neighbouring feet so many mm
// apart, like SplayForFootRadius.
func (f Frame) SplayForFootSpread(spread float64) (float64, error) {
	plumb, widest := f.splayed(0).FootSpread(), f.splayed(LeanSteepest).FootSpread()
	if err := checkFeet("foot spread", spread, plumb, widest); err != nil {
		return 0, err
	}
	return f.splayFor(spread / f.spread(1)), nil
}

func (f Frame) splayFor(radius float64) float64 {
	axis := f.Ring.Axis()
	foot := math.Sqrt((radius - axis) * (radius + axis))
	// At the plumb limit rounding may leave a trace below At.
	return math.Atan(math.Max(0, foot-f.Leg.At) / f.Leg.Height)
}

// splayed returns the same frame with another splay.
func (f Frame) splayed(splay float64) Frame {
	f.Leg.Splay = splay
	return f
}

// checkFeet returns a *measure.BoundError unless plumb ≤ mm ≤ widest.
func checkFeet(figure string, mm, plumb, widest float64) error {
	return cmp.Or(
		measure.AtLeast(figure, measure.Length(mm), "that of plumb legs", measure.Length(plumb),
			"move the legs inward, or make the ring smaller"),
		measure.AtMost(figure, measure.Length(mm), "that of the steepest legs", measure.Length(widest),
			"move the legs outward, or make the ring larger"),
	)
}

// Shoulder returns how far from mid-length the neighbour's outside edge comes
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
// inner face of the leg and the neighbour. Where it is negative they want the
// same wood.
func (f Frame) Clearance() float64 { return f.Leg.Inner(f.NeighbourTop()) - f.Shoulder() }

// LeastAt returns the least distance from mid-length to the outer edge of the
// leg that leaves a clearance of gap mm, all else as it is. What it exceeds
// Leg.At by is what the stretcher must be made longer.
func (f Frame) LeastAt(gap float64) float64 { return f.Leg.At + gap - f.Clearance() }

// MostBreadth returns the largest breadth of leg that leaves a clearance of
// gap mm, all else as it is, or a *measure.BoundError where none does.
func (f Frame) MostBreadth(gap float64) (float64, error) {
	room := f.Clearance() + f.Leg.Section() - gap
	if err := measure.Above("mid-length to leg", measure.Length(f.Leg.At), "the lap",
		measure.Length(f.Leg.At-room), "no leg is narrow enough: move it outward"); err != nil {
		return 0, err
	}
	return room * math.Cos(f.Leg.Splay), nil
}

// SplaysThatClear returns the least and the largest splay, from 0 to
// LeanSteepest, that leave a clearance of gap mm, all else as it is, or a
// *measure.BoundError where none does. Every splay between the two clears.
//
// With g from the shoulder (and gap) to the outer edge of the head and h the
// depth of NeighbourTop the leg clears where g·cos α + h·sin α ≥ Breadth, that
// is √(g² + h²)·cos(α − atan(h/g)) ≥ Breadth.
func (f Frame) SplaysThatClear(gap float64) (least, most float64, err error) {
	g, h := f.Leg.At-f.Shoulder()-gap, f.NeighbourTop()
	best := math.Atan2(h, g)
	nearest := math.Min(best, LeanSteepest)
	room := math.Hypot(g, h) * math.Cos(nearest-best)
	if err := measure.AtMost("breadth", measure.Length(f.Leg.Breadth), "the room beside the lap",
		measure.Length(room), "no splay clears the lap: move the leg outward, or take a narrower one"); err != nil {
		return 0, 0, err
	}
	swing := math.Acos(f.Leg.Breadth / math.Hypot(g, h))
	return math.Max(0, best-swing), math.Min(best+swing, LeanSteepest), nil
}
