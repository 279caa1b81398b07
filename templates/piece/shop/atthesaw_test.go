package shop

import (
	"fmt"
	"math"
	"slices"

	"rodsheet/geometry"
	"rodsheet/geometry/solid"
)

// A hand who knows a table saw and nothing of this program takes a rough blank
// of the cut list and does what each operation says, by its figures, faces and
// edges alone. What cannot be done, or contradicts itself, stops the work, as it
// would stop a maker.
//
// Frame of the saw: X along the gauge's fence away from the stop, Y from the
// fence over the table, Z up. The face of the stop is X = 0, square to the
// fence. The blade's side nearer the stop meets the fence at X = Stop; swung by
// s the blade stands tan s further from the stop for every mm off the fence. A
// stop on the other side of the blade is the same saw seen in a mirror.
//
// Frame of a blank: x along it, the leg end or the head where x is most. For
// one who looks at its ring side, y = 0, with that end on the right, z is up.
type bench struct {
	wood      solid.Part
	marks     marks
	kerf      float64
	mirrored  bool    // where the stop stood last
	endSwing  float64 // of the gauge, seen from above, at the sawn end
	lastSwing float64
	card      Card
	after     map[int]solid.Part // as each card leaves it
}

// marks are the sides of a part, each with the direction out of it.
type marks map[Face]solid.Vec

// marked returns the marks of a part as the list has them put on. Where it does
// not say on which hand they stand, a maker may as well take the other.
func marked(part Part, steps []Step) marks {
	out, up := solid.V(0, 1, 0), solid.V(0, 0, 1)
	told := map[Part]NoteID{Stretcher: "mark-stretchers", Leg: "mark-legs"}[part]
	if !slices.ContainsFunc(steps, func(s Step) bool {
		return s.Do == Crosscut && s.Parts[0].Part == part && slices.Contains(s.Then[:], Note{ID: told})
	}) {
		up = up.Mul(-1)
	}
	m := marks{RingSide: out.Mul(-1), OuterSide: out}
	if part == Leg {
		m[StretcherSide], m[Back], m[Head], m[Foot] = up, up.Mul(-1), solid.V(1, 0, 0), solid.V(-1, 0, 0)
		return m
	}
	m[UpperFace], m[Underside], m[LegEnd], m[PlainEnd] = up, up.Mul(-1), solid.V(1, 0, 0), solid.V(-1, 0, 0)
	return m
}

// A confusion is what stops the work: the list cannot be followed.
type confusion struct{ error }

func confused(format string, args ...any) {
	panic(confusion{fmt.Errorf(format, args...)})
}

func (b *bench) side(f Face) solid.Vec {
	v, ok := b.marks[f]
	if !ok {
		confused("the part has no side %d", f)
	}
	return v
}

// laid returns how the part comes to lie: down on the table, fence on the
// fence, rest towards the stop, pushed home against all three.
func (b *bench) laid(down, fence, rest solid.Vec) solid.Affine3 {
	if down.Dot(fence) != 0 || fence.Dot(rest) != 0 || rest.Dot(down) != 0 {
		confused("no part lies on %v with %v on the fence and %v at the stop", down, fence, rest)
	}
	turn := axes(rest.Mul(-1), fence.Mul(-1), down.Mul(-1))
	b.mirrored = turn.Det() < 0
	return b.home(turn)
}

// axes returns the turn that takes three unit vectors to the axes.
func axes(x, y, z solid.Vec) solid.Affine3 {
	return solid.Affine3{X: solid.V(x.X, y.X, z.X), Y: solid.V(x.Y, y.Y, z.Y), Z: solid.V(x.Z, y.Z, z.Z)}
}

// home pushes the turned part against table, fence and stop.
func (b *bench) home(turn solid.Affine3) solid.Affine3 {
	return turn.Then(solid.Translate(b.wood.Transform(turn).Bounds().Min.Mul(-1)))
}

// work does to the wood as it lies at m what act does, and takes it back.
func (b *bench) work(m solid.Affine3, act func(solid.Part) solid.Part) {
	away := axes(m.X, m.Y, m.Z)
	b.wood = act(b.wood.Transform(m)).Transform(solid.Translate(m.O.Mul(-1)).Then(away))
}

const overall = 1e4 // mm, farther than any part reaches

// kerfs is the room the blade takes, its near side wandering along the fence
// from one place to another.
func (b *bench) kerfs(from, to, swing, height float64) solid.Solid {
	tan, wide := math.Tan(swing), b.kerf/math.Cos(swing)
	at := func(x, y float64) geometry.Point { return geometry.Pt(x+y*tan, y) }
	base := []geometry.Point{at(from, -1), at(to+wide, -1), at(to+wide, 1e3), at(from, 1e3)}
	return solid.Prism(solid.Lift(base, -1), solid.V(0, 0, height+1))
}

// off takes away what the blade takes, without coming through.
func (b *bench) off(m solid.Affine3, from, to, swing float64, c Cut) {
	b.work(m, func(p solid.Part) solid.Part { return p.Subtract(b.kerfs(from, to, swing, c.Height)) })
}

// through saws the part in two and keeps what lies at the stop, or the rest.
func (b *bench) through(m solid.Affine3, at, swing float64, c Cut, atStop bool) {
	b.work(m, func(p solid.Part) solid.Part {
		near := at
		if !atStop { // the line is on the far side
			near -= b.kerf / math.Cos(swing)
		}
		blade := b.kerfs(near, near, swing, overall)
		for _, s := range p.Pieces {
			if in := s.Intersect(blade); !in.Empty() && in.Volume() > solid.ClashFloor && in.Bounds().Max.Z > c.Height+1e-9 {
				confused("a blade %.4f mm high does not come through %.4f mm", c.Height, in.Bounds().Max.Z)
			}
		}
		side := solid.Through(solid.V(at, 0, 0), solid.V(math.Cos(swing), -math.Sin(swing), 0))
		if !atStop {
			side = side.Flip()
		}
		return p.Cut(side)
	})
}

// swing returns by how much the gauge is swung in the frame of the saw: the blade
// stands farther from the stop along the longer edge. Where the step is said to go
// by an earlier one or by the sawn end, it must agree with that.
func (b *bench) swing(s Step, m solid.Affine3, fence Face) float64 {
	c, seen := s.Cut, 1.0 // from above, on the stop's side of the saw
	if b.mirrored {
		seen = -1
	}
	if (c.Longer == NoFace) != (c.OffSquare == 0) {
		confused("off square by %v, yet the longer edge is %d", c.OffSquare, c.Longer)
	}
	swing := 0.0
	if c.Longer != NoFace {
		swing = -c.OffSquare * b.side(c.Longer).Dot(b.side(fence))
	}
	said := seen * b.card.Swing
	switch s.What.ID {
	case "step.foot": // as for the head
		said = seen * b.endSwing
	}
	if math.Abs(said-swing) > 1e-9 {
		confused("%v: swung by %v, and said to be by %v", s.What, swing, said)
	}
	b.lastSwing = seen * swing
	return swing
}

// hasFace reports whether a part has a face that looks in one direction.
func hasFace(p solid.Part, out solid.Vec) bool {
	for _, s := range p.Pieces {
		for _, f := range s.Faces() {
			q := f.Plane
			if q.N.Distance(out) < 1e-9 {
				return true
			}
		}
	}
	return false
}

// stood stands the part on its sawn end in the tenoning jig, with one face on
// the jig: Y from the jig, the filler strip leaning it until the end lies flat.
func (b *bench) stood(face solid.Vec, lean float64) solid.Affine3 {
	x, y, z := face.Cross(solid.V(1, 0, 0)), face.Mul(-1), solid.V(-1, 0, 0)
	for _, a := range []float64{lean, -lean} {
		turn := axes(x, y, z).Then(solid.RotateY(a))
		if hasFace(b.wood.Transform(turn), solid.V(0, 0, -1)) {
			return b.home(turn)
		}
	}
	confused("leaning by %v the part does not stand on its end", lean)
	return solid.Affine3{}
}

// standing is what the blade takes of a part in the tenoning jig, its near side
// between two distances from the jig.
func (b *bench) standing(m solid.Affine3, from, to, height float64) {
	b.work(m, func(p solid.Part) solid.Part {
		return p.Subtract(solid.Box(solid.V(-overall, from, -1), solid.V(overall, to+b.kerf, height)))
	})
}

// shed lets fall what no longer hangs together with the largest piece.
func (b *bench) shed() {
	all := b.wood.Pieces
	held := make([]bool, len(all))
	largest := 0
	for i, s := range all {
		if s.Volume() > all[largest].Volume() {
			largest = i
		}
	}
	held[largest] = true
	for queue := []int{largest}; len(queue) > 0; queue = queue[1:] {
		for k, s := range all {
			if !held[k] && touch(all[queue[0]], s) {
				held[k] = true
				queue = append(queue, k)
			}
		}
	}
	kept := b.wood.Pieces[:0:0]
	for i, s := range all {
		if held[i] {
			kept = append(kept, s)
		}
	}
	b.wood.Pieces = kept
}

// touch reports whether two pieces meet in more than an edge.
func touch(a, b solid.Solid) bool {
	const hair = 1e-3 // mm
	if room := a.Bounds(); !(solid.Extent{Min: room.Min.Sub(solid.V(hair, hair, hair)), Max: room.Max.Add(solid.V(hair, hair, hair))}).Overlaps(b.Bounds()) {
		return false
	}
	for _, f := range a.Faces() {
		q := f.Plane
		moved := a.Transform(solid.Translate(q.N.Mul(hair)))
		if moved.Intersect(b).Volume() > hair*1e-2 {
			return true
		}
	}
	return false
}

// amiss returns how much of two parts is not the same wood, in mm³.
func amiss(a, b solid.Part) float64 {
	both := 0.0
	for _, s := range a.Pieces {
		for _, t := range b.Pieces {
			both += s.Intersect(t).Volume()
		}
	}
	return a.Volume() + b.Volume() - 2*both
}
