package box

import (
	"cmp"
	"math"

	"rodsheet/geometry/joint"
	"rodsheet/geometry/measure"
	"rodsheet/geometry/solid"
	"rodsheet/templates"
	"rodsheet/templates/piece/assembly"
)

// Dovetails: as usual as any (common practice, no source).
const (
	tailSlope = 1.0 / 7
	tailWide  = 30.0 // about so wide a tail, mm
	pinShare  = 0.4  // of the thickness, a pin where it is narrowest
)

// dovetail returns the corner of two boards that are still square at their edges: the level
// edges are planed when the box is glued. So the half pins hold what is planed off, too.
func (b Box) dovetail() joint.Dovetail {
	t, slope := b.thickness(), b.faces[0].slope
	c := b.corner(0)
	d := joint.Dovetail{
		Width: b.blank(0), TailBoard: t, PinBoard: t, Slope: math.Atan(tailSlope),
		Pin: math.Max(pinShare*t, 3), Angle: c.Angle, BoardSlope: c.Slope,
	}
	d.HalfPin = d.UsualHalfPin() + t*math.Abs(math.Tan(slope))
	d.Tails = cmp.Or(b.design.Box.Tails, d.TailsOf(tailWide))
	return d
}

// checkDovetails refuses what does not alternate: sides with tails stand between sides with
// pins, and all slope alike.
func checkDovetails(b Box) error {
	for _, f := range b.faces {
		if off := math.Abs(f.slope - b.faces[0].slope); off > 1e-9 {
			return measure.AtMost("box.dovetail-slopes", measure.Angle(off), "", measure.Angle(0), "box.slope-alike")
		}
	}
	odd := measure.Number(float64(len(b.faces) % 2))
	return cmp.Or(measure.AtMost("box.dovetail-odd", odd, "", measure.Number(0), "box.sides-in-pairs"), b.dovetail().Check())
}

// edges returns the heights of the lowest and the highest arris of the boards on their
// outer faces: dovetailed ones are as wide there as their square-edged blanks.
func (b Box) edges(i int) (low, high float64) {
	low, high = 0, b.design.Box.Height
	if !b.dovetailed() {
		return low, high
	}
	// Along the face the blank goes on by thickness·tan slope: below where it leans out.
	more := b.thickness() * math.Sin(b.faces[i].slope)
	return low - math.Max(0, more), high + math.Max(0, -more)
}

// tails returns the wedges of wood that side i, which has tails, holds in its corner with
// side j, its neighbour at either end: between the cheeks of every tail.
func (b Box) tails(i, j int) []solid.Solid {
	f, d := b.faces[i], b.dovetail()
	low, _ := b.edges(i)
	x := f.along() // the dovetail's x runs from the corner along the tail board
	if j == b.next(i) {
		x = x.Mul(-1)
	}
	at := solid.Meet(f.inside(0), b.faces[j].inside(0), solid.Plane{N: solid.V(0, 0, 1), D: low})
	room := solid.Affine3{X: x, Y: f.out.Mul(-1), Z: solid.V(0, 0, 1), O: at}
	var out []solid.Solid
	for _, pair := range d.Cheeks() {
		tail := b.cornerOf(i, j)
		for k, c := range pair {
			p, q, r := room.Apply(c.TipOuter), room.Apply(c.RootOuter), room.Apply(c.TipInner)
			n := q.Sub(p).Cross(r.Sub(p)).Unit()
			if up := k == 1; (n.Dot(f.up()) > 0) != up {
				n = n.Mul(-1)
			}
			tail = tail.Cut(solid.Through(p, n))
		}
		out = append(out, tail)
	}
	return out
}

// cornerOf returns the wood that belongs to both boards of a corner if they run through it.
func (b Box) cornerOf(i, j int) solid.Solid {
	s := b.between(0, b.design.Box.Height)
	for _, k := range []int{i, j} {
		s = s.Cut(b.faces[k].inside(0)).Cut(b.faces[k].inside(b.thickness()).Flip())
	}
	return s
}

// withTails takes side i, which runs through both corners, to its dovetails: of a side with
// tails only these stay there, of one with pins all but the tails of its neighbours.
func (b Box) withTails(i int, side solid.Part) solid.Part {
	for _, j := range []int{b.before(i), b.next(i)} {
		if !runsPast(i) {
			for _, tail := range b.tails(j, i) {
				side = side.Subtract(tail)
			}
			continue
		}
		side = side.Subtract(b.cornerOf(i, j))
		side.Pieces = append(side.Pieces, b.tails(i, j)...)
	}
	return side
}

// dovetailJob is the strips over both ends, the figures and the steps of the bench.
func (b Box) dovetailJob(s templates.Setting) (templates.Section, error) {
	job, err := templates.Dovetail(b.dovetail(), s)
	if err != nil {
		return templates.Section{}, err
	}
	out := job.Sections[0]
	card, d := dovetailCard.Card(b.design.Unit, assembly.Ticked(dovetailTick, b.allEnds())), b.dovetail()
	card.Read(tailsReading, measure.Number(float64(d.Tails)))
	card.Read(tailReading, measure.Length(d.Tail()))
	card.Read(pinReading, measure.Length(d.Pin))
	card.Templates = assembly.Views(out.Drawings)
	out.Cards = []templates.Card{card.Card}
	return out, nil
}
