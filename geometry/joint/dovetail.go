package joint

import (
	"cmp"
	"math"

	"rodsheet/geometry"
	"rodsheet/geometry/measure"
	"rodsheet/geometry/solid"
)

// Limits of dovetails (common practice, no source): a narrower pin than thinnestPin
// is gone with the kerf, a tail with a root under narrowestRoot breaks off, a lap
// under thinnestLap shows the chisel.
const (
	thinnestPin   = 1.5
	narrowestRoot = 3
	thinnestLap   = 2
)

// MostTails keeps a slip from printing a comb.
const MostTails = 60

// A Dovetail is a dovetailed corner of two boards, whose edges are flush: tails on
// one board, pins on the other, half a pin at either edge.
//
// In the room, z up, the outer faces of the boards meet in a line through the
// origin, which is the lower edge. The tail board runs along x, the pin board at
// Angle to it in plan; both slope alike and lean outward, as the sides of a
// hopper that opens upward. Pins run along the grain of their board, and
// so do the cheeks between pins and tails: the tails slide on to the pins that way.
type Dovetail struct {
	Width      float64 // of both boards, mm
	TailBoard  float64 // thickness, mm
	PinBoard   float64 // thickness, mm
	Slope      float64 // of the sides of a tail to the grain, on the outer face, rad
	Tails      int
	Pin        float64 // where it is narrowest, at the end of the tails, mm
	HalfPin    float64 // the same at the two edges, mm
	Lap        float64 // wood of the pin board before the end of the tails, mm; 0: through
	Angle      float64 // inside the corner in plan, rad
	BoardSlope float64 // of both boards from level, rad: 90° where they stand upright
}

// Check returns a *measure.BoundError for the first figure that no dovetail can
// have. The other methods take a Dovetail that has passed.
func (d Dovetail) Check() error {
	return cmp.Or(
		within("dovetail.width", d.Width),
		within("dovetail.tail-board", d.TailBoard), within("dovetail.pin-board", d.PinBoard),
		within("dovetail.corner", d.Angle), within("dovetail.board-slope", d.BoardSlope),
		within("dovetail.slope", d.Slope), within("dovetail.tails", float64(d.Tails)),
		within("dovetail.pin", d.Pin), within("dovetail.half-pin", d.HalfPin),
		within("dovetail.lap", d.Lap), d.checkLap(),
		measure.Below("dovetail.pins-together", measure.Length(d.pins()), "dovetail.width", measure.Length(d.Width), "dovetail.fewer-tails"),
		measure.AtLeast("dovetail.root", measure.Length(d.Root()), "", measure.Length(narrowestRoot), "dovetail.fewer-tails"),
		measure.AtLeast("dovetail.lower-pin", measure.Length(d.lowerPin()), "", measure.Length(thinnestPin), "dovetail.wider-half-pin"),
	)
}

// lowerPin returns the least width of the lower half pin on either board. Pins are
// level: on boards that lean outward they come nearer the lower edge on the
// way to the hollow side, where the edges are square to the faces.
func (d Dovetail) lowerPin() float64 {
	c := d.cheek(d.HalfPin, -1)
	_, tail := d.tailBoard()
	_, pin := d.pinBoard()
	return min(d.HalfPin, c.TipInner.Dot(tail), c.RootOuter.Dot(pin), c.RootInner.Dot(pin))
}

// UsualHalfPin returns half pins that are as wide as a pin on either side of
// sloping boards too: crossing a thickness t they come t·cot BoardSlope nearer the edge.
func (d Dovetail) UsualHalfPin() float64 {
	return d.Pin + max(d.TailBoard, d.PinBoard)*max(0, cot(d.BoardSlope))
}

func (d Dovetail) checkLap() error {
	if d.Lap == 0 {
		return nil
	}
	return cmp.Or(
		measure.AtLeast("dovetail.lap", measure.Length(d.Lap), "", measure.Length(thinnestLap), "dovetail.lap-through"),
		measure.Below("dovetail.lap", measure.Length(d.Lap), "dovetail.pin-board", measure.Length(d.PinBoard), ""),
	)
}

// pins returns what all pins take of the width at the end of the tails.
func (d Dovetail) pins() float64 { return 2*d.HalfPin + float64(d.Tails-1)*d.Pin }

// TailsOf returns how many tails of about that width go on the boards, one at
// least.
func (d Dovetail) TailsOf(width float64) int {
	n := math.Round((d.Width - 2*d.HalfPin + d.Pin) / (width + d.Pin))
	return int(max(1, min(n, MostTails+1)))
}

// Tail returns the width of a tail at its end, where it is widest.
func (d Dovetail) Tail() float64 { return (d.Width - d.pins()) / float64(d.Tails) }

// steep returns the sine by which a step along one board leaves the face of the
// other. The outer faces have the outward normals (0, −sin S, −cos S) and
// (−sin A·sin S, cos A·sin S, −cos S), the boards the directions (1, 0, 0) and
// (cos A, sin A, 0): the products crosswise are both −sin S·sin A.
func (d Dovetail) steep() float64 { return math.Sin(d.BoardSlope) * math.Sin(d.Angle) }

// TailLength returns the length of the tails along the grain of their board.
func (d Dovetail) TailLength() float64 { return (d.PinBoard - d.Lap) / d.steep() }

// PinLength returns the length of the pins along the grain of theirs.
func (d Dovetail) PinLength() float64 { return d.TailBoard / d.steep() }

// Root returns the width of a tail at its root, where it is narrowest.
func (d Dovetail) Root() float64 {
	t := d.cheek(0, 1).RootOuter.Sub(d.cheek(0, -1).RootOuter)
	_, up := d.tailBoard()
	return d.Tail() + t.Dot(up)
}

// tailBoard returns the outward normal of the outer face of the tail board and the
// way up that face; pinBoard those of the pin board.
func (d Dovetail) tailBoard() (out, up solid.Vec) {
	s, c := math.Sincos(d.BoardSlope)
	return solid.V(0, -s, -c), solid.V(0, -c, s)
}

func (d Dovetail) pinBoard() (out, up solid.Vec) {
	s, c := math.Sincos(d.BoardSlope)
	sa, ca := math.Sincos(d.Angle)
	return solid.V(-sa*s, ca*s, -c), solid.V(-sa*c, ca*c, s)
}

// along returns the direction of the pin board; that of the tail board is x.
func (d Dovetail) along() solid.Vec {
	s, c := math.Sincos(d.Angle)
	return solid.V(c, s, 0)
}

// A Cheek is the plane between a tail and the pin beside it: the corners where the
// end of the tail and its root meet the two faces of the tail board. The end of the
// tail lies in the outer face of the pin board, or Lap behind it, the root
// in its hollow side; Outer is the plane of the end of the pin board.
type Cheek struct{ TipOuter, RootOuter, TipInner, RootInner solid.Vec }

// onFace returns the point of the tail board's outer face that is y up it and so
// deep behind the outer face of the pin board. For (x, 0, 0) + y·up that depth is
// x·steep − y·up·out.
func (d Dovetail) onFace(y, deep float64) solid.Vec {
	_, up := d.tailBoard()
	out, _ := d.pinBoard()
	return solid.V((deep+y*up.Dot(out))/d.steep(), 0, 0).Add(up.Mul(y))
}

// cheek returns the cheek of a tail that meets the end of it at y, on its upper
// side (1) or its lower side (−1). From there it runs by (1, ∓tan Slope) on the face,
// down on the upper side, to the root; through the board it runs along the pins.
func (d Dovetail) cheek(y, side float64) Cheek {
	_, up := d.tailBoard()
	out, _ := d.pinBoard()
	tip := d.onFace(y, d.Lap)
	run := solid.V(1, 0, 0).Sub(up.Mul(side * math.Tan(d.Slope)))
	root := tip.Add(run.Mul((d.Lap - d.PinBoard) / run.Dot(out)))
	in := d.along().Mul(d.PinLength())
	return Cheek{tip, root, tip.Add(in), root.Add(in)}
}

// Cheeks returns the lower and the upper cheek of every tail, from the lower edge.
func (d Dovetail) Cheeks() [][2]Cheek {
	out := make([][2]Cheek, d.Tails)
	for i := range out {
		y := d.HalfPin + float64(i)*(d.Tail()+d.Pin)
		out[i] = [2]Cheek{d.cheek(y, -1), d.cheek(y+d.Tail(), 1)}
	}
	return out
}

// A BoardEnd is the end of one board with the strip of paper that goes over it:
// outer face below, end, hollow side above, as they unfold round the two arrises of
// the end. On the strip x runs along those arrises, y square to them, 0 at the
// outer one.
type BoardEnd struct {
	arris        solid.Vec // along the arrises, to the right for one who looks at the outer face, end up
	face, end    solid.Vec // square to them, away from the end and into it
	outer, inner solid.Vec // a point of each arris
	up, grain    solid.Vec // across the board and along it
	width        float64
}

// TailEnd and PinEnd return the ends of the two boards. The tail board lies to the
// right of its end for one who looks at its outer face, the pin board to the left.
func (d Dovetail) TailEnd() BoardEnd {
	l, onTail, onPin := d.square()
	_, up := d.tailBoard()
	tip := d.onFace(0, d.Lap)
	return BoardEnd{l, onTail, onPin, tip, tip.Add(d.along().Mul(d.PinLength())), up, solid.V(1, 0, 0), d.Width}
}

func (d Dovetail) PinEnd() BoardEnd {
	l, onTail, onPin := d.square()
	_, up := d.pinBoard()
	return BoardEnd{l.Mul(-1), onPin, onTail, solid.Vec{}, d.onFace(0, d.PinBoard), up, d.along(), d.Width}
}

// square returns the direction of the arrises, up, and those square to it in the
// faces of both boards, away from the corner.
func (d Dovetail) square() (arris, onTail, onPin solid.Vec) {
	a, _ := d.tailBoard()
	b, _ := d.pinBoard()
	arris = b.Cross(a).Unit()
	flat := func(v solid.Vec) solid.Vec { return v.Sub(arris.Mul(v.Dot(arris))).Unit() }
	return arris, flat(solid.V(1, 0, 0)), flat(d.along())
}

// Up returns the way across the board, from the lower edge to the upper one.
func (b BoardEnd) Up() solid.Vec { return b.up }

// Thick returns how far the end runs from arris to arris.
func (b BoardEnd) Thick() float64 { return b.inner.Sub(b.outer).Dot(b.end) }

// OnOuter, OnEnd and OnInner return the place on the strip of a point of that
// side.
func (b BoardEnd) OnOuter(p solid.Vec) geometry.Point {
	return geometry.Pt(p.Dot(b.arris), -p.Sub(b.outer).Dot(b.face))
}
func (b BoardEnd) OnEnd(p solid.Vec) geometry.Point {
	return geometry.Pt(p.Dot(b.arris), p.Sub(b.outer).Dot(b.end))
}
func (b BoardEnd) OnInner(p solid.Vec) geometry.Point {
	return geometry.Pt(p.Dot(b.arris), b.Thick()+p.Sub(b.inner).Dot(b.face))
}

// Edges returns the points of the lower and the upper edge of the board on the outer
// or hollow side, so far from the end along the grain. The edges are square to
// the face.
func (b BoardEnd) Edges(inner bool, from float64) (lower, upper solid.Vec) {
	at := b.outer
	if inner {
		at = b.inner
	}
	across := func(y float64) solid.Vec {
		step := (y - at.Dot(b.up)) / b.arris.Dot(b.up)
		return at.Add(b.arris.Mul(step)).Add(b.grain.Mul(from))
	}
	return across(0), across(b.width)
}

// OffSquare returns how far the end runs off square: across the face, positive
// where the upper edge is the longer, and through the thickness, positive where the
// hollow side is the shorter.
//
// The end holds the arris and what runs square to it into the end.
func (b BoardEnd) OffSquare() (face, thickness float64) {
	return math.Atan(-b.arris.Dot(b.grain) / b.arris.Dot(b.up)), math.Asin(b.end.Dot(b.face))
}
