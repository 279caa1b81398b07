package shop

import (
	"math"

	"rodsheet/geometry/joint"
	"rodsheet/geometry/solid"
	"rodsheet/templates/piece"
)

// Frames of the parts, as they come from the planer and until they are finished:
//
// A stretcher lies in the frame of Piece.Place: x from mid-length to the leg end,
// y from the ring side, z from the underside. A leg has x up from the square end of
// its foot, y from its ring side, z from its back. Either is seen on its ring side
// with z up, as the marks are put on.

// sides are the faces of a part, each with the direction out of it.
var sides = map[Part]map[Face]solid.Vec{
	Stretcher: {
		RingSide: solid.V(0, -1, 0), OuterSide: solid.V(0, 1, 0), UpperFace: solid.V(0, 0, 1), Underside: solid.V(0, 0, -1),
		LegEnd: solid.V(1, 0, 0), PlainEnd: solid.V(-1, 0, 0),
	},
	Leg: {
		RingSide: solid.V(0, -1, 0), OuterSide: solid.V(0, 1, 0), StretcherSide: solid.V(0, 0, 1), Back: solid.V(0, 0, -1),
		Head: solid.V(1, 0, 0), Foot: solid.V(-1, 0, 0),
	},
}

// Out returns the direction out of a face of a part, in the part's own frame.
func Out(part Part, f Face) solid.Vec { return sides[part.frame()][f] }

// frame returns the part that one is marked like: a test piece is a short stretcher.
func (p Part) frame() Part {
	if p == Leg {
		return Leg
	}
	return Stretcher
}

// Blank returns a part squared to length, in its own frame.
func Blank(p piece.Piece, part Part) solid.Part { return blank(p, part, 0) }

// fromPlaner returns a part as it comes from the planer: past its leg end, or head, stands
// what its rough length allows.
func fromPlaner(p piece.Piece, part Part) solid.Part {
	s := sawnSize(p, part)
	return blank(p, part, p.Roughed(s).Length-s.Length)
}

func sawnSize(p piece.Piece, part Part) piece.StockSize {
	switch part {
	case Leg:
		return p.SawnLeg()
	case Stretcher:
		return p.SawnStretcher()
	}
	return p.TestPiece(p.SawnStretcher())
}

func blank(p piece.Piece, part Part, longer float64) solid.Part {
	s := sawnSize(p, part)
	low, high := solid.V(-s.Length/2, 0, 0), solid.V(s.Length/2+longer, s.Width, s.Thickness)
	if part == Leg {
		low, high = solid.Vec{}, solid.V(s.Length+longer, s.Thickness, s.Width)
	}
	return solid.Stock("", solid.Box(low, high))
}

// LegPlace takes the frame of a leg to that of its stretcher. Down the leg is
// (sin Splay, 0, −cos Splay); the square end of its foot meets the back on the floor.
func LegPlace(p piece.Piece) solid.Affine3 {
	l := p.Frame.Leg
	s, c := math.Sincos(l.Splay)
	return solid.Affine3{
		X: solid.V(-s, 0, c), Y: solid.V(0, 1, 0), Z: solid.V(-c, 0, -s),
		O: solid.V(l.Back(l.Height), 0, p.Frame.Ring.Depth-l.Height),
	}
}

// lengthwise is the run of every part, towards its leg end or head.
var lengthwise = solid.V(1, 0, 0)

// An attitude is how a part is turned in the room, before it is pushed home and
// before jig or gauge lean it: for a maker who stands at the saw, x to the right, y
// away, z up.
type attitude struct{ solid.Affine3 }

// facing returns the attitude in which right looks to the right, away looks away
// from the maker and up looks up.
func facing(right, away, up solid.Vec) attitude {
	return attitude{solid.Affine3{
		X: solid.V(right.X, away.X, up.X), Y: solid.V(right.Y, away.Y, up.Y), Z: solid.V(right.Z, away.Z, up.Z),
	}}
}

// A Turn is how a part is turned from one lie to the next.
type Turn uint8

const (
	NotTurned     Turn = iota
	EndForEnd          // half a turn about an upright axis: the same face down
	Tumbled            // end over end: the same edge on the fence
	RolledHalf         // half a turn about its length
	RolledQuarter      // a quarter of one
	TurnedAnew         // in some other way
)

// turn returns how a part is turned from one attitude to another.
func turn(from, to attitude) Turn {
	turned := solid.Affine3{ // from's inverse, then to
		X: to.Apply(from.back(solid.V(1, 0, 0))), Y: to.Apply(from.back(solid.V(0, 1, 0))), Z: to.Apply(from.back(solid.V(0, 0, 1))),
	}
	run, now := from.Apply(lengthwise), to.Apply(lengthwise)
	trace := turned.X.X + turned.Y.Y + turned.Z.Z
	switch same, half := now.Dot(run), 1e-6; {
	case trace > 3-half:
		return NotTurned
	case same > 1-half && trace < -1+half:
		return RolledHalf
	case same > 1-half:
		return RolledQuarter
	case same < -1+half && turned.Z.Z > 1-half:
		return EndForEnd
	case same < -1+half && turned.Z.Z < -1+half:
		return Tumbled
	}
	return TurnedAnew
}

// back takes a direction back from the room to the part.
func (a attitude) back(v solid.Vec) solid.Vec { return solid.V(a.X.Dot(v), a.Y.Dot(v), a.Z.Dot(v)) }

// A stance is how a part stands at a tool: its attitude, the way from its frame to
// that of the saw but for the push home, and how the blade runs there.
type stance struct {
	attitude
	turn  solid.Affine3
	swing float64 // in the frame of the saw
}

// ready puts in what a lie leaves open, as a square cut through may be made on any
// face and from either end: the stop on the left of the blade then.
func (l Lie) ready(part Part) Lie {
	if l.Rest == NoFace {
		l.Rest = map[Part]Face{Stretcher: PlainEnd, Leg: Foot}[part.frame()]
	}
	if l.Fence == NoFace {
		l.Fence = RingSide
	}
	if l.Down == NoFace {
		down := Out(part, l.Fence).Cross(Out(part, l.Rest))
		for f, out := range sides[part.frame()] {
			if out == down {
				l.Down = f
			}
		}
	}
	return l
}

// onGauge is a part on the table against the fence of the gauge. The frame of the
// saw has the stop at x = 0 and the part beyond it; where the part then lies mirrored,
// the stop stands on the right of the blade and x runs to the left.
func onGauge(part Part, l Lie, c Cut) stance {
	l = l.ready(part)
	out := func(f Face) solid.Vec { return Out(part, f) }
	away, up := out(l.Fence).Mul(-1), out(l.Down).Mul(-1)
	s := stance{attitude: facing(away.Cross(up), away, up), turn: facing(out(l.Rest).Mul(-1), away, up).Affine3}
	if c.Longer != NoFace {
		s.swing = -c.OffSquare * out(c.Longer).Dot(out(l.Fence))
	}
	return s
}

// swing returns how far the gauge is turned for a step, counter-clockwise seen from
// above: as far as the blade leans to the right there.
func (s Step) swing() float64 {
	if s.Cut.OffSquare == 0 || s.Cut.Longer == NoFace {
		return s.Cut.OffSquare
	}
	at := onGauge(s.Parts[0].Part, s.Lies[0], s.Cut)
	return at.swing * at.turn.Det()
}

// onEnd is a part that stands on its sawn end in the tenoning jig, leaned by the
// filler strip until that lies on the table. Frame of the saw: y from the jig's
// face, z up.
func onEnd(part Part, l Lie, c Cut) stance {
	face := Out(part, l.Fence)
	a := facing(face.Cross(lengthwise), face.Mul(-1), lengthwise.Mul(-1))
	lean := 0.0
	if c.Longer != NoFace {
		// The longer edge reaches lower; it is lifted.
		lean = -c.OffSquare * a.Apply(Out(part, c.Longer)).X
	}
	return stance{attitude: a, turn: a.Then(solid.RotateY(lean))}
}

// ThinEndDown reports whether the filler strip of a step on end has its thin end down
// for the first face. It stands on the maker's side of the part (see drawings), and x
// is away from the maker: so where the part leans away.
func (s Step) ThinEndDown() bool {
	at := onEnd(s.Parts[0].Part, s.Saw.Lies[0], s.Saw.Cut)
	return at.turn.Apply(lengthwise.Mul(-1)).X > 0
}

// taperedSides are the faces that a taper takes, in the order in which they are sawn.
var taperedSides = map[joint.TaperFaces][]Face{
	joint.OneFace:       {StretcherSide},
	joint.AdjacentFaces: {StretcherSide, RingSide},
	joint.OppositeFaces: {StretcherSide, Back},
	joint.FourFaces:     {StretcherSide, Back, RingSide, OuterSide},
}

// onTaper is a leg in the tapering jig, which runs on the right of the blade, the
// foot going first: the face that is sawn looks to the left. Frame of the saw: x from
// the blade's side to the jig, y along the blade away from the maker, z up. Run and
// depth of the taper fall on x = 0.
func onTaper(side Face, c Cut) stance {
	out := Out(Leg, side)
	away := Out(Leg, Foot)
	up := out.Cross(away).Mul(-1)
	a := facing(out.Mul(-1), away, up)
	return stance{attitude: a, turn: a.Then(solid.RotateZ(c.OffSquare))}
}
