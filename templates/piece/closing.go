package piece

import (
	"math"
	"slices"

	"rodsheet/geometry/lists"
	"rodsheet/geometry/solid"
	"rodsheet/templates/piece/design"
)

// Apart returns the slide, as geometry.Ring.Opening counts it, at which every
// plain end has left the lap it lies in.
func (p Piece) Apart() float64 {
	r := p.Frame.Ring
	if p.Design.Ring.Plain == design.FlushEnd {
		return r.Lap(p.Kerf).EdgeLength()
	}
	inside, _ := r.Shoulders(0)
	outside, _ := r.Shoulders(r.Width)
	return p.PlainReach - math.Min(inside, outside)
}

// TrimFirst reports whether the ring slides shut only once its ends are trimmed.
func (p Piece) TrimFirst() bool {
	slides := p.Design.Ring.Plain != design.ClosedEnd
	return p.EndsMeet() || slides && p.Catches(p.roughBar())
}

// EndsMeet reports whether the ends before trimming meet.
func (p Piece) EndsMeet() bool { return p.RoughReach() > p.Frame.Ring.MostReach()-Slip }

// roughBar returns the stretcher before any end is trimmed: both ends square at
// RoughReach, both laps cut.
func (p Piece) roughBar() []solid.Part {
	bar := p.lapped(p.unlapped(p.Frame.Ring.Corners(p.RoughReach(), p.RoughReach())))
	return []solid.Part{bar.Transform(p.Place(0))}
}

// Catches reports whether bars, as Collides takes them, clash on the way from apart
// to closed, asked at four places: neighbours move along one straight line
// (Ring.Opening), so nothing can come between them that neither end of the way
// shows. The closed ring itself is not asked.
func (p Piece) Catches(bars []solid.Part) bool {
	return slices.ContainsFunc([]float64{0.02, 0.35, 0.7, 1.05}, func(share float64) bool { return p.Collides(bars, share*p.Apart()) })
}

// Collides reports whether the bars of one side, given as they stand in the closed
// ring at the first side, clash with those of another when the ring is open by
// slide mm.
//
// Each side has moved by the ring's opening in its own frame. Seen from the
// first side, which is not turned, side i has made that step, the turn to its
// place and the first side's step back. Sides past half way round meet the
// first one as it meets those before.
func (p Piece) Collides(bars []solid.Part, slide float64) bool {
	r := p.Frame.Ring
	open := r.Opening(slide)
	step := solid.V(open.X, open.Y, 0)
	room := lists.Map(bars, solid.Part.Bounds)
	for i := 1; 2*i <= r.Sides; i++ {
		turn := solid.RotateZ(float64(i) * r.Polygon().Turn())
		move := solid.Translate(step).Then(turn).Then(solid.Translate(step.Mul(-1)))
		for _, b := range bars {
			for k, a := range bars {
				if len(solid.Clash(a, b.Reaching(room[k], move))) > 0 {
					return true
				}
			}
		}
	}
	return false
}
