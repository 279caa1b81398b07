package shop

import (
	"iter"
	"math"
	"slices"

	"rodsheet/geometry/solid"
	"rodsheet/templates/piece"
)

// A Work is what one lie of one step does to a part: at the saw, or by hand as the
// saw would do it.
type Work struct {
	Card, Step, Lie int // counted from 0
	// At takes the frame of the part to that of the saw, as Cut has it on the gauge,
	// with y from the jig's face on end, with x from the blade to the tapering jig on
	// a taper. Where it mirrors, the stop stands on the right of the blade: x runs to
	// the left. It is nothing for work that no saw does.
	At     solid.Affine3
	Turn   Turn   // since the last lie on this card
	Blades []Slab // where the blade goes first, and last
	// Before and After are the part in its own frame.
	Before, After solid.Part
}

// Mirrored reports whether the stop stands on the right of the blade.
func (w Work) Mirrored() bool { return w.At.Det() < 0 }

// A Slab is the room that the blade takes, in the frame of the saw. Side is the side
// of the blade nearer to the stop, or to the jig, and looks into the blade.
type Slab struct {
	Side         solid.Plane
	Kerf, Height float64
}

// at returns the slab whose side meets y = 0 of the frame at x.
func (c Cut) at(x, swing, kerf float64) Slab {
	return Slab{solid.Through(solid.V(x, 0, 0), solid.V(math.Cos(swing), -math.Sin(swing), 0)), kerf, c.Height}
}

// far returns the other side of the blade, looking out of it.
func (s Slab) far() solid.Plane { return solid.Plane{N: s.Side.N, D: s.Side.D + s.Kerf} }

// to returns the room from the blade's side to a plane beyond it, as high as the
// blade stands.
func (s Slab) to(end solid.Plane, part solid.Part) solid.Solid {
	room := part.Bounds()
	beyond := room.Size().Norm() + s.Kerf
	low, high := room.Min.Sub(solid.V(beyond, beyond, 1)), room.Max.Add(solid.V(beyond, beyond, 1))
	low.Z, high.Z = -1, s.Height
	return solid.Box(low, high).Cut(s.Side.Flip()).Cut(end)
}

// Works goes along the cards and returns what every lie of every step does to one
// part of one size: a stretcher, a leg, or a test piece.
func Works(p piece.Piece, all []Card, part Part) iter.Seq[Work] {
	return func(yield func(Work) bool) {
		b := workpiece{Piece: p, part: part, wood: fromPlaner(p, part)}
		for i, c := range all {
			b.last = nil
			for k, s := range c.Steps {
				if !s.does(part, p.Design.Size) {
					continue
				}
				for n := range b.lies(s) {
					w := b.do(s, n)
					w.Card, w.Step, w.Lie = i, k, n
					if !yield(w) {
						return
					}
				}
			}
		}
	}
}

// States returns a part of one size as it stands after every card: as the planer left it,
// less all that was sawn off it so far.
func States(p piece.Piece, all []Card, part Part) []solid.Part {
	wood, out := fromPlaner(p, part), make([]solid.Part, 0, len(all))
	for w := range Works(p, all, part) {
		for len(out) < w.Card {
			out = append(out, wood)
		}
		wood = w.After
	}
	for len(out) < len(all) {
		out = append(out, wood)
	}
	return out
}

// does reports whether a step is done to a part of that size.
func (s Step) does(part Part, size string) bool {
	return slices.ContainsFunc(s.Parts, func(b Batch) bool {
		of := b.Part == part || b.Part == TestPiece && part == StretcherTest
		return of && b.Count > 0 && (b.Size == size || b.Size == "")
	})
}

// A workpiece is one part on its way along the cards.
type workpiece struct {
	piece.Piece
	part Part
	wood solid.Part
	last *attitude // of the lie before, on the same card
	// straight is the room of the leg before its first taper, which takes the corner
	// away that the others are counted from.
	straight solid.Extent
}

// lies returns how often the part is laid for a step.
func (b *workpiece) lies(s Step) int {
	switch {
	case s.Saw.Cut.How == OnTaper:
		return len(taperedSides[b.Taper.Faces])
	case s.Saw.Lies[1] != (Lie{}):
		return 2
	}
	return 1
}

// do does the work of one lie of a step.
func (b *workpiece) do(s Step, n int) Work {
	w := Work{Before: b.wood}
	switch c := s.Saw.Cut; c.How {
	case OnGauge:
		b.atGauge(&w, s, n)
	case OnEnd:
		b.atEnd(&w, s, n)
	case OnTaper:
		if n == 0 {
			b.straight = b.wood.Bounds()
		}
		b.atTaper(&w, c, taperedSides[b.Taper.Faces][n])
	default:
		w.At = solid.Identity()
		if s.Do == TrimHeads {
			b.wood = b.wood.Cut(b.trimLine())
		}
	}
	w.After = b.wood
	return w
}

// lay pushes a part home that stands so: against the table, and against stop and
// fence where home says so.
func (b *workpiece) lay(w *Work, at stance, home func(lowest solid.Vec) solid.Vec) {
	w.At = at.turn
	w.At.O = home(b.wood.Transform(at.turn).Bounds().Min).Mul(-1)
	if b.last != nil {
		w.Turn = turn(*b.last, at.attitude)
	}
	b.last = &at.attitude
}

func againstAll(lowest solid.Vec) solid.Vec { return lowest }

// saw does to the wood as it lies what cut does.
func (b *workpiece) saw(w *Work, cut func(solid.Part) solid.Part) {
	away := solid.Affine3{
		X: solid.V(w.At.X.X, w.At.Y.X, w.At.Z.X), Y: solid.V(w.At.X.Y, w.At.Y.Y, w.At.Z.Y), Z: solid.V(w.At.X.Z, w.At.Y.Z, w.At.Z.Z),
	}
	b.wood = cut(b.wood.Transform(w.At)).Transform(solid.Translate(w.At.O.Mul(-1)).Then(away))
}

func (b *workpiece) atGauge(w *Work, s Step, n int) {
	c := s.Saw.Cut
	at := onGauge(b.part, s.Saw.Lies[n], c)
	b.lay(w, at, againstAll)
	wide := b.Kerf / math.Cos(at.swing)
	switch {
	case c.Line > 0 && !c.Through: // out to the end
		w.Blades = []Slab{c.at(c.Line-wide, at.swing, b.Kerf), c.at(-wide, at.swing, b.Kerf)}
		b.saw(w, func(p solid.Part) solid.Part {
			out := c.at(-p.Bounds().Size().X, at.swing, b.Kerf)
			return p.Subtract(out.to(w.Blades[0].far(), p))
		})
	case c.Line > 0:
		w.Blades = []Slab{c.at(c.Line-wide, at.swing, b.Kerf)}
		b.saw(w, func(p solid.Part) solid.Part { return p.Cut(w.Blades[0].far().Flip()) })
	case c.Through:
		w.Blades = []Slab{c.at(c.Stop, at.swing, b.Kerf)}
		b.saw(w, func(p solid.Part) solid.Part { return p.Cut(w.Blades[0].Side) })
	default:
		stop := c.Stop
		if stop == 0 { // a test piece, anywhere
			stop = b.EndLap().Stop()
		}
		// Moved out by the spacer, the part has the blade so much nearer its end.
		inner, outer := c.at(stop, at.swing, b.Kerf), c.at(stop-c.Spacer, at.swing, b.Kerf)
		w.Blades = []Slab{inner, outer}
		if c.Spacer == 0 {
			w.Blades = w.Blades[:1]
		}
		b.saw(w, func(p solid.Part) solid.Part { return p.Subtract(outer.to(inner.far(), p)) })
	}
}

// atEnd saws a slot one cheek from each face, and with the second the wood between
// them; of a tenon all that lies away from the jig falls off.
func (b *workpiece) atEnd(w *Work, s Step, n int) {
	c := s.Saw.Cut
	b.lay(w, onEnd(b.part, s.Saw.Lies[n], c), againstAll)
	side := solid.Through(solid.V(0, c.Stop, 0), solid.V(0, 1, 0))
	blade := Slab{side, b.Kerf, c.Height}
	w.Blades = []Slab{blade}
	end := solid.Plane{N: side.N, D: 2 * b.Frame.Ring.Width}
	if c.Passes {
		end.D = b.Frame.Ring.Width - c.Stop
		if n == 0 {
			end.D = math.Min(end.D, c.Stop+b.Kerf)
		}
	}
	b.saw(w, func(p solid.Part) solid.Part { return p.Subtract(blade.to(end, p)) })
}

// atTaper saws one tapered face from where the run starts on it.
func (b *workpiece) atTaper(w *Work, c Cut, side Face) {
	at := onTaper(side, c)
	room, out := b.straight, Out(Leg, side)
	start := solid.V(room.Min.X+c.Line, 0, 0).Add(out.Mul(math.Max(room.Max.Dot(out), room.Min.Dot(out))))
	b.lay(w, at, func(lowest solid.Vec) solid.Vec {
		on := at.turn.Apply(start)
		return solid.V(on.X, on.Y, lowest.Z)
	})
	// Seen from the jig, which is where x runs to.
	w.Blades = []Slab{{solid.Through(solid.Vec{}, solid.V(-1, 0, 0)), b.Kerf, c.Height}}
	b.saw(w, func(p solid.Part) solid.Part { return p.Cut(w.Blades[0].Side) })
}

// trimLine returns what a part is trimmed to when the joint is glued, in its own
// frame: the stretcher to the leg's back, the head of the leg to what it stands above
// the stretcher's top, as high as LegEdge on its back.
func (b *workpiece) trimLine() solid.Plane {
	s, c := math.Sincos(b.Frame.Leg.Splay)
	if b.part == Leg {
		return solid.Through(solid.V(b.LegEdge(), 0, 0), solid.V(c, 0, -s))
	}
	return solid.Through(solid.V(b.Frame.Leg.Back(0), 0, b.Frame.Ring.Depth), solid.V(c, 0, s))
}
