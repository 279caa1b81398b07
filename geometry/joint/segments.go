package joint

import (
	"cmp"
	"math"

	"rodsheet/geometry"
	"rodsheet/geometry/measure"
)

// A SegmentRing is a flat ring of equal pieces, mitred end to end. Round, it is made
// round after it is glued, and its sizes are diameters; else it keeps its flats, and its
// sizes are twice the way from the centre to mid-flat: across flats where these are even
// in number.
//
// Frame of a piece: its outer side along x about the origin, the wood above it; the
// centre of the ring is (0, Outer/2).
type SegmentRing struct {
	Pieces       int
	Outer, Inner float64 // mm
	Round        bool
	Kerf         float64 // mm
}

// Check returns a *measure.BoundError for a ring that nobody saws.
func (r SegmentRing) Check() error {
	return cmp.Or(
		within("segments.pieces", float64(r.Pieces)),
		within("segments.outer", r.Outer), within("segments.inner", r.Inner),
		measure.Below("segments.inner", measure.Length(r.Inner), "segments.outer", measure.Length(r.Outer), ""),
		within("segments.board", r.Board()),
		within("segments.kerf", r.Kerf),
	)
}

// OffSquare returns the angle at which the ends are cut: π/n, half of what two pieces
// turn by.
func (r SegmentRing) OffSquare() float64 { return math.Pi / float64(r.Pieces) }

// inner is the way from the centre to the ring side of a piece. A round ring needs
// wood up to its inner circle everywhere, so the pieces' corners lie on that circle:
// (Inner/2)·cos(π/n).
func (r SegmentRing) inner() float64 {
	if r.Round {
		return r.Inner / 2 * math.Cos(r.OffSquare())
	}
	return r.Inner / 2
}

// Board returns the width of the board that the pieces are sawn from.
func (r SegmentRing) Board() float64 { return r.Outer/2 - r.inner() }

// OuterSide and RingSide return how long a piece is on its two sides: 2·a·tan(π/n),
// a being the way from the centre to that side.
func (r SegmentRing) OuterSide() float64 { return r.Outer * math.Tan(r.OffSquare()) }
func (r SegmentRing) RingSide() float64  { return 2 * r.inner() * math.Tan(r.OffSquare()) }

// Stock returns the length of board that all pieces take, turned over after every cut:
// for each its mean length and a kerf, which the blade takes slantwise, one kerf more,
// and half the slant at either end.
func (r SegmentRing) Stock() float64 {
	n, m := float64(r.Pieces), r.OffSquare()
	return n*(r.OuterSide()+r.RingSide())/2 + (n+1)*r.Kerf/math.Cos(m) + r.Board()*math.Tan(m)
}

// Opens returns how wide the last joint of the ring stands open at the outer side, or
// at the ring side, where every end is off by so much: each of 2n ends adds it.
func (r SegmentRing) Opens(slip float64) float64 {
	return Chord(r.Outer/2/math.Cos(r.OffSquare()), 2*float64(r.Pieces)*slip)
}

// Piece returns the corners of a piece counter-clockwise, its outer side first.
func (r SegmentRing) Piece() []geometry.Point {
	a, b, w := r.OuterSide()/2, r.RingSide()/2, r.Board()
	return []geometry.Point{geometry.Pt(-a, 0), geometry.Pt(a, 0), geometry.Pt(b, w), geometry.Pt(-b, w)}
}

// Arcs returns what of the outer and of the inner circle runs over a piece of a round
// ring, or over its right half, left to right.
func (r SegmentRing) Arcs(half bool) (outer, inner []geometry.Point) {
	centre, to := geometry.Pt(0, r.Outer/2), r.OffSquare()-math.Pi/2
	from := -r.OffSquare() - math.Pi/2
	if half {
		from = -math.Pi / 2
	}
	return geometry.Arc(centre, r.Outer/2, from, to), geometry.Arc(centre, r.Inner/2, from, to)
}

// Staves close to a vessel that may narrow to one end. Outside they touch its round at
// mid-stave, or are as wide as its flats.
type Staves struct {
	Pieces      int
	Top, Bottom float64 // outside, diameter or twice the way from the centre to mid-flat, mm
	Height      float64 // upright, mm
	Thickness   float64 // of a stave, mm
}

// Check returns a *measure.BoundError for a vessel that nobody makes.
func (s Staves) Check() error {
	return cmp.Or(
		within("staves.pieces", float64(s.Pieces)),
		within("staves.top", s.Top), within("staves.bottom", s.Bottom),
		within("staves.height", s.Height), within("staves.thickness", s.Thickness),
		s.Corner().Check(),
		within("hopper.tilt", s.EdgeTilt()),
		measure.Positive("staves.inside", measure.Length(s.Inside())),
	)
}

// Corner returns two neighbouring staves as a corner of sloping boards, wide end up:
// they rise Height while the sides of the polygon move by half the difference of the
// diameters.
func (s Staves) Corner() SlopingCorner {
	return HopperCorner(s.Pieces, math.Atan2(s.Height, math.Abs(s.Top-s.Bottom)/2))
}

// EdgeTilt returns the tilt of the blade for the edges.
func (s Staves) EdgeTilt() float64 { return s.Corner().Tilt() }

// Wide and Narrow return the outer width of a stave at its ends: 2·a·tan(π/n).
func (s Staves) Wide() float64   { return s.width(math.Max(s.Top, s.Bottom)) }
func (s Staves) Narrow() float64 { return s.width(math.Min(s.Top, s.Bottom)) }

func (s Staves) width(size float64) float64 { return size * math.Tan(math.Pi/float64(s.Pieces)) }

// Long returns the length of a stave between ends that lie level: Height/sin Slope.
func (s Staves) Long() float64 { return math.Hypot(s.Height, (s.Top-s.Bottom)/2) }

// ToEdge returns the angle of one long edge to the middle line of the stave:
// atan((Wide − Narrow)/(2·Long)), which is the OffSquare of Corner.
func (s Staves) ToEdge() float64 { return math.Atan((s.Wide() - s.Narrow()) / 2 / s.Long()) }

// Hollow returns how much narrower the hollow side of a stave is than its outer side:
// both edges lose Thickness·tan EdgeTilt square to themselves, and 1/cos ToEdge of that
// across the stave.
func (s Staves) Hollow() float64 {
	return 2 * s.Thickness * math.Tan(s.EdgeTilt()) / math.Cos(s.ToEdge())
}

// Inside returns the narrow end's size inside: on the level a stave measures
// Thickness/sin Slope.
func (s Staves) Inside() float64 {
	return math.Min(s.Top, s.Bottom) - 2*s.Thickness/math.Sin(s.Corner().Slope)
}

// Stave returns the outer side of a stave: its middle line along x from the wide end,
// at the origin, to the narrow one; counter-clockwise.
func (s Staves) Stave() []geometry.Point {
	a, b, l := s.Wide()/2, s.Narrow()/2, s.Long()
	return []geometry.Point{geometry.Pt(0, -a), geometry.Pt(l, -b), geometry.Pt(l, b), geometry.Pt(0, a)}
}
