package joint

import (
	"cmp"
	"math"

	"rodsheet/geometry"
	"rodsheet/geometry/measure"
)

// A Ring is Sides equal stretchers lapped end over end round a regular
// polygon, each over one neighbour and under the next.
//
// Frame of a stretcher: seen from above, x along it from mid-length, y = 0
// the ring side, y = Width the outer side. Its two ends are mirror images
// in plan, and one is lapped on the upper face, the other on the lower one.
//
// Frame of the plan: the centre of the ring at the origin, stretcher 0 across
// the y axis above it, the others counter-clockwise from there. The end x < 0
// of each stretcher crosses the end x > 0 of the next.
type Ring struct {
	Sides  int     // 3 to 8
	Inside float64 // one side of the inside polygon, between two corners, mm
	Width  float64 // of a stretcher in plan, mm
	Depth  float64 // of a stretcher, vertical, mm
}

// Limits of the number of stretchers. In a ring of more than eight the parts
// cross at less than 45°.
const (
	RingFewest = 3
	RingMost   = 8
)

// Check returns a *measure.BoundError for the first figure no ring can have,
// among them an inside so small that the laps of one stretcher's two ends
// meet: both are half the depth, so the stretcher would fall apart. The other
// methods take a Ring that has passed.
func (r Ring) Check() error {
	return cmp.Or(
		within("ring.stretchers", float64(r.Sides)),
		within("ring.inside", r.Inside),
		within("ring.width", r.Width),
		within("ring.depth", r.Depth),
		measure.Above("ring.inside", measure.Length(r.Inside), "ring.laps-meet", measure.Length(r.LeastInside()), "ring.larger"),
	)
}

// Polygon returns the inside polygon of the ring. Offset(Width) makes of it the
// polygon of the outer sides, and more than that a top with an overhang.
func (r Ring) Polygon() Regular { return RegularBySide(r.Sides, r.Inside) }

// Angle returns the crossing angle of two neighbours, the inside angle of the
// polygon.
func (r Ring) Angle() float64 { return r.Polygon().Angle() }

// Axis returns the distance from the centre of the ring to the centre line of
// a stretcher.
func (r Ring) Axis() float64 { return r.Polygon().Apothem + r.Width/2 }

// LeastInside returns the inside at which the inner shoulders of a
// stretcher's two laps meet on the outer side: −2·Width·cot Angle, and
// nothing up to four sides.
func (r Ring) LeastInside() float64 { return math.Max(0, -2*r.Width*cot(r.Angle())) }

// Lap returns the lap of the end x > 0 in the frame of a stretcher: its datum
// is mid-length, its reference edge the inside one. Seen on its own face,
// ring side towards the maker, the lap of the other end is the same.
func (r Ring) Lap(kerf float64) Lap {
	return Lap{
		Width: r.Width, Other: r.Width, Depth: r.Depth,
		Angle: r.Angle(), Kerf: kerf, At: r.Inside / 2,
	}
}

// EndLap returns the same lap from the other side: its datum is the square
// end of the stretcher, which stands reach mm from mid-length. That is the
// view for a stop.
func (r Ring) EndLap(reach, kerf float64) Lap {
	l := r.Lap(kerf)
	_, outer := l.Shoulders(0)
	l.At, l.Angle = reach-outer, math.Pi-l.Angle
	return l
}

// Shoulders returns where the shoulders of the end x > 0 cross the line y mm
// from the ring side: Inside/2 + y·cot Angle, and Width/sin Angle beyond.
func (r Ring) Shoulders(y float64) (inner, outer float64) { return r.Lap(0).Shoulders(y) }

// Reach returns how far from mid-length a square end stands that runs past
// the outermost point of the outer shoulder by horn mm. Twice that is the
// length of a stretcher with two such ends.
//
// With no horn it is the least reach: what an end cut flush with the outside
// edge of its neighbour is made from.
func (r Ring) Reach(horn float64) float64 {
	_, inside := r.Shoulders(0)
	_, outside := r.Shoulders(r.Width)
	return math.Max(inside, outside) + horn
}

// MostReach returns the reach at which the square ends of two stretchers meet
// that cross the same third from its two sides: both then touch the line
// through the centre and mid-length of the third. Up to four sides they never
// do, and MostReach is infinite.
//
// Past the corner the ring side leaves its neighbour's by Angle; over a run
// of −(Inside/2)/cos Angle it comes to mid-length of that neighbour.
func (r Ring) MostReach() float64 {
	if r.Sides <= 4 {
		return math.Inf(1)
	}
	return r.Inside/2 - r.Inside/2/math.Cos(r.Angle())
}

// Corners returns the corners in plan of a stretcher with square ends, left
// and right mm from mid-length, counter-clockwise from the inside left.
func (r Ring) Corners(left, right float64) []geometry.Point {
	return geometry.Box(-left, 0, right, r.Width).Corners()
}

// FlushCorners returns the corners in plan of a stretcher whose ends are cut
// flush with its neighbours' outer sides, in the order of Corners.
func (r Ring) FlushCorners() []geometry.Point {
	_, inside := r.Shoulders(0)
	_, outside := r.Shoulders(r.Width)
	return []geometry.Point{geometry.Pt(-inside, 0), geometry.Pt(inside, 0), geometry.Pt(outside, r.Width), geometry.Pt(-outside, r.Width)}
}

// Place returns the Affine from the frame of stretcher i to the plan, with
// the ring open by slide mm; 0 is the closed ring.
func (r Ring) Place(i int, slide float64) geometry.Affine {
	at := geometry.Pt(0, r.Polygon().Apothem).Add(r.Opening(slide))
	return geometry.Translate(at).Then(geometry.Rotate(float64(i) * r.Polygon().Turn()))
}

// Opening returns how far each stretcher stands, in its own frame, from its
// place in the closed ring when every stretcher has slid by slide mm through
// the lap that its end x < 0 shares with the next. The outer shoulders at the
// ends x < 0 must be left open for that; all the others may be closed.
//
// Let u be the direction of stretcher i and v its step. Closed shoulders let
// it move against the next along u only, v(i) − v(i+1) = slide·u(i), so the
// steps close round the ring only if the slides solve Σ slide·u = 0: equal
// slides do. With v(i) turned by 2π/n from one to the next that gives half
// the slide along the stretcher and slide/(2·tan(π/n)) outward: the ring opens
// to one with Inside + slide.
func (r Ring) Opening(slide float64) geometry.Point {
	return geometry.Pt(slide/2, RegularBySide(r.Sides, slide).Apothem)
}
