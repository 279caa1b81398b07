package joint

import (
	"cmp"
	"math"
	"sort"

	"rodsheet/geometry"
	"rodsheet/geometry/lists"
	"rodsheet/geometry/measure"
)

// TaperFaces says which faces of a square leg are tapered.
type TaperFaces uint8

const (
	OneFace       TaperFaces = iota // the stretcher side
	AdjacentFaces                   // stretcher side and ring side, which share an arris
	OppositeFaces                   // stretcher side and back
	FourFaces
)

func (f TaperFaces) String() string {
	return lists.At([]string{"one", "adjacent", "opposite", "four"}, f, "unknown")
}

// A LegFace is one of the four long faces of a leg, named by what it looks at.
type LegFace uint8

const (
	StretcherSide LegFace = iota // towards the stretcher that the leg carries
	Back                         // away from it
	RingSide                     // to the centre of the ring
	OuterSide                    // away from it
)

// Cut reports whether the face is tapered.
func (f TaperFaces) Cut(face LegFace) bool {
	switch face {
	case StretcherSide:
		return true
	case Back:
		return f.Symmetric()
	case RingSide:
		return f == AdjacentFaces || f == FourFaces
	}
	return f == FourFaces
}

// Symmetric reports whether a face tapers from both its edges; otherwise the back,
// which is the reference edge, stays straight.
func (f TaperFaces) Symmetric() bool { return f == OppositeFaces || f == FourFaces }

// Square reports whether the leg tapers the other way too, seen square to the
// first: on ring side or outer side.
func (f TaperFaces) Square() bool { return f.Cut(RingSide) }

// A Taper is one face of a leg that narrows from Top to Foot.
//
// Frame: the face towards the reader, x along the leg from the top end (0) to
// the foot (Length), y = 0 the reference edge, y = Top the far edge of the
// blank. With one face or two adjacent faces tapered the reference edge stays
// straight and the far edge is cut; otherwise both edges are cut alike and
// y = Top/2 is the centre line.
type Taper struct {
	Length float64 // from the top end to the foot, mm
	Top    float64 // width of the blank, mm
	Foot   float64 // width at the foot, mm
	Start  float64 // where the taper begins, from the top end, mm
	Faces  TaperFaces
}

// Check returns a *measure.BoundError for the first figure no leg can have.
func (t Taper) Check() error {
	return cmp.Or(
		within("taper.length", t.Length),
		within("taper.top", t.Top),
		within("taper.foot", t.Foot),
		measure.Below("taper.foot", measure.Length(t.Foot), "taper.top", measure.Length(t.Top), "taper.narrows"),
		within("taper.start", t.Start),
		measure.Below("taper.start", measure.Length(t.Start), "taper.length", measure.Length(t.Length), "taper.start-from-top"),
		measure.AtLeast("taper.run", measure.Length(t.Run()), "taper.loss", measure.Length(t.Loss()), "taper.less"),
		within("taper.faces", float64(t.Faces)),
	)
}

// Run returns the length of the tapered part along the leg.
func (t Taper) Run() float64 { return t.Length - t.Start }

// Loss returns how much one tapered edge loses at the foot.
func (t Taper) Loss() float64 {
	if t.Faces.Symmetric() {
		return (t.Top - t.Foot) / 2
	}
	return t.Top - t.Foot
}

// ToEdge returns the angle of one tapered face to the edge of the blank, with
// opposite tapers to the centre line as well: atan(Loss/Run).
func (t Taper) ToEdge() float64 { return math.Atan(t.Loss() / t.Run()) }

// Included returns the angle between the two long edges of the finished face.
// With opposite tapers it is 2·atan((Top − Foot)/(2·Run)), which is not the
// atan((Top − Foot)/Run) of a single taper that leaves the same foot.
func (t Taper) Included() float64 {
	if t.Faces.Symmetric() {
		return 2 * t.ToEdge()
	}
	return t.ToEdge()
}

// LossOver returns how much one tapered face loses over run mm along the leg.
func (t Taper) LossOver(run float64) float64 { return t.Loss() * run / t.Run() }

// NarrowingOver returns by how much the face between the tapers becomes narrower
// over run mm: LossOver of one face, or of both together.
func (t Taper) NarrowingOver(run float64) float64 { return (t.Top - t.Foot) * run / t.Run() }

// LostAcross returns how much the leg loses at the foot the other way, square to
// Top: nothing, or what one face or both of RingSide and OuterSide lose.
func (t Taper) LostAcross() float64 {
	lost := 0.0
	for _, face := range []LegFace{RingSide, OuterSide} {
		if t.Faces.Cut(face) {
			lost += t.Loss()
		}
	}
	return lost
}

// Lost returns how much one tapered edge has lost at x.
func (t Taper) Lost(x float64) float64 { return t.Loss() * math.Max(0, x-t.Start) / t.Run() }

// Edges returns where the finished face lies at x: from y = lo to y = hi.
func (t Taper) Edges(x float64) (lo, hi float64) {
	lost := t.Lost(x)
	if t.Faces.Symmetric() {
		lo = lost
	}
	return lo, t.Top - lost
}

// Width returns the width of the finished face at x.
func (t Taper) Width(x float64) float64 {
	lo, hi := t.Edges(x)
	return hi - lo
}

// Cuts returns the lines to saw to, each from the start to the foot, the one
// by the far edge first.
func (t Taper) Cuts() []geometry.Segment {
	cuts := []geometry.Segment{{A: geometry.Pt(t.Start, t.Top), B: geometry.Pt(t.Length, t.Top-t.Loss())}}
	if t.Faces.Symmetric() {
		cuts = append(cuts, geometry.Segment{A: geometry.Pt(t.Start, 0), B: geometry.Pt(t.Length, t.Loss())})
	}
	return cuts
}

// Blank returns the corners of the blank counter-clockwise from the origin.
func (t Taper) Blank() []geometry.Point { return geometry.Box(0, 0, t.Length, t.Top).Corners() }

// Waste returns the triangles that Cuts takes off, in the same order, corners
// counter-clockwise.
func (t Taper) Waste() [][]geometry.Point {
	cuts := t.Cuts()
	waste := [][]geometry.Point{{cuts[0].A, cuts[0].B, geometry.Pt(t.Length, t.Top)}}
	if len(cuts) > 1 {
		waste = append(waste, []geometry.Point{cuts[1].A, geometry.Pt(t.Length, 0), cuts[1].B})
	}
	return waste
}

// Stations returns in rising order where the leg is measured: the top end,
// every step mm from it, the start and the foot. Two that would fall within a
// tenth of a millimetre are one. The taper must have passed Check.
func (t Taper) Stations(step float64) []float64 {
	all := []float64{t.Start}
	for i := 1.0; i*step < t.Length; i++ {
		all = append(all, i*step)
	}
	sort.Float64s(all)

	const near = 0.1
	out := []float64{0}
	for _, x := range all {
		if x-out[len(out)-1] > near && t.Length-x > near {
			out = append(out, x)
		}
	}
	return append(out, t.Length)
}
