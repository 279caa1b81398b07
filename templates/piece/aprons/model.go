// Package aprons works out tables with aprons between legs that lean out: solids,
// figures, checks, cards and drawings of the kind "aprons".
//
// Frame of the room: x to the right along the front, y away from the maker, z up from
// the floor. Sides and corners go round counter-clockwise as seen from above, side 0
// being the front and corner i its left end, as seen from outside.
package aprons

import (
	"cmp"
	"math"
	"slices"
	"sync"

	"rodsheet/geometry"
	"rodsheet/geometry/joint"
	"rodsheet/geometry/solid"
	"rodsheet/templates/piece"
	"rodsheet/templates/piece/design"
)

// A Model is a table of one size worked out.
type Model struct {
	Design  design.Design // its stock as planed
	decided design.Design
	Head    float64 // of the legs and the top of the aprons, over the floor
	sides   []side
	legs    []leg
	Rows    []*Row // aprons first, then stretchers where there are some
	// parts stand in the room, each worked out once: legs, rails row by row, the top.
	parts  []func() solid.Part
	volume func() float64 // of all wood, mm³; worked out once
	// finished are the parts with what the fixings of the top take from the aprons, for
	// pictures only.
	finished func() []solid.Part
}

// A side of the frame is the plane that holds the corner arrises of two legs.
type side struct {
	out   geometry.Point // in plan, level
	along geometry.Point // in plan, to the right as seen from outside
	lean  float64        // from plumb, the foot outward
	plane solid.Plane
}

// flat returns a step in plan as one in the room.
func flat(p geometry.Point) solid.Vec { return solid.V(p.X, p.Y, 0) }

// newSide returns the side through a point of its level top line.
//
// It holds the level direction along and runs out by tan lean for each mm down, so its
// normal is (out, tan lean) at unit length.
func newSide(at solid.Vec, out geometry.Point, lean float64) side {
	s, c := math.Sincos(lean)
	return side{
		out: out, along: geometry.Pt(-out.Y, out.X), lean: lean,
		plane: solid.Through(at, flat(out.Mul(c)).Add(solid.V(0, 0, s))),
	}
}

// newModel works out a design that has passed Faults.
func newModel(d design.Design) Model {
	f := d.Frame.Planed()
	m := Model{decided: d, Head: headHeight(f)}
	m.Design, m.Design.Frame = d, f
	corners := planCorners(f)
	for i, a := range corners {
		b := corners[(i+1)%len(corners)]
		along := b.Sub(a).Unit()
		m.sides = append(m.sides, newSide(solid.V(a.X, a.Y, m.Head), geometry.Pt(along.Y, -along.X), leanOf(f, i)))
	}
	for i := range corners {
		m.legs = append(m.legs, m.newLeg(i, corners[i]))
	}
	m.Rows = append(m.Rows, m.newRow(Aprons, f.Aprons, m.Head-f.Aprons.Depth))
	m.taper() // which begins below the aprons
	if f.Stretchers.Depth > 0 {
		m.Rows = append(m.Rows, m.newRow(Stretchers, f.Stretchers, f.Stretchers.Height))
	}
	m.parts = m.all()
	m.volume = sync.OnceValue(m.wood)
	m.finished = sync.OnceValue(m.withFixings)
	return m
}

// headHeight returns the height of the frame: that of the table less its top.
func headHeight(f design.Frame) float64 {
	if f.Top.None {
		return f.Height
	}
	return f.Height - f.Top.Thickness
}

// leanOf returns the lean of a side.
func leanOf(f design.Frame, i int) float64 {
	if f.Shape == design.Rectangle && i%2 == 1 {
		return f.Legs.Splay
	}
	return f.Legs.Rake
}

// planCorners returns the corner arrises of the legs at their heads, the first at the
// left end of the front.
func planCorners(f design.Frame) []geometry.Point {
	if f.Shape == design.Rectangle {
		x, y := f.Length/2, f.Width/2
		return []geometry.Point{geometry.Pt(-x, -y), geometry.Pt(x, -y), geometry.Pt(x, y), geometry.Pt(-x, y)}
	}
	out := make([]geometry.Point, f.Sides)
	step := 2 * math.Pi / float64(f.Sides)
	radius := f.Length / 2 / math.Sin(step/2)
	for i := range out {
		out[i] = geometry.Polar(radius, -math.Pi/2-step/2+step*float64(i))
	}
	return out
}

// before returns the number of the side at whose right end corner i stands.
func (m Model) before(i int) int { return (i + len(m.sides) - 1) % len(m.sides) }

// wide is more than any piece: half the size of the block that planes cut parts from.
const wide = 3 * design.Longest

// block returns what all the planes leave of space.
func block(planes ...solid.Plane) solid.Solid {
	s := solid.Box(solid.V(-wide, -wide, -wide), solid.V(wide, wide, wide))
	for _, p := range planes {
		s = s.Cut(p)
	}
	return s
}

// level returns all that is below a height, over all that is above it.
func level(z float64) (below, above solid.Plane) {
	below = solid.Plane{N: solid.V(0, 0, 1), D: z}
	return below, below.Flip()
}

// Lean returns the true lean of leg i from plumb and the direction in plan in which its
// foot stands out, from the line square to its own side and away from that side's middle;
// 0 for a plumb leg.
func (m Model) Lean(i int) (resultant, sightline float64) {
	a, s := m.legs[i].along, m.sides[i]
	out := geometry.Pt(a.X, a.Y)
	resultant = math.Atan2(out.Norm(), -a.Z)
	if resultant < 1e-9 {
		return 0, 0
	}
	return resultant, math.Atan2(-out.Dot(s.along), out.Dot(s.out))
}

// Sort returns the sort of leg at corner i: 0, or 1 for the mirrored hand of a rectangle
// that leans by two angles.
func (m Model) Sort(i int) int {
	f := m.Design.Frame
	if f.Shape == design.Rectangle && f.Legs.Rake != f.Legs.Splay {
		return i % 2
	}
	return 0
}

// RailSorts returns how many sorts of rail a row has: two where the sides of a
// rectangle differ.
func (m Model) RailSorts() int {
	f := m.Design.Frame
	if f.Shape == design.Rectangle && (f.Length != f.Width || f.Legs.Rake != f.Legs.Splay) {
		return 2
	}
	return 1
}

// LegSorts returns how many sorts of leg there are.
func (m Model) LegSorts() int { return 1 + m.Sort(1) }

// TopShape returns the top in plan: the zero Top where there is none.
func (m Model) TopShape() joint.Top { return topShape(m.Design.Frame) }

func topShape(f design.Frame) joint.Top {
	switch {
	case f.Top.None:
		return joint.Top{}
	case f.Top.Outline == design.RoundOnFrame: // all corners are as far from the middle
		return joint.Top{Diameter: cmp.Or(f.Top.Diameter, 2*(planCorners(f)[0].Norm()+f.Top.Overhang))}
	case f.Top.Outline == design.OvalOnFrame:
		return joint.OvalTop(f.Top.Length, f.Top.Width)
	}
	f.Length += 2 * f.Top.Overhang * grow(f)
	f.Width += 2 * f.Top.Overhang
	out := joint.Top{Corners: planCorners(f)}
	switch f.Top.Corner {
	case design.ClippedCorner:
		out.Clip = f.Top.CornerSize
	case design.RoundedCorner:
		out.Round = f.Top.CornerSize
	}
	return out
}

// TopOutline returns the outline of the top in plan; empty where there is none.
func (m Model) TopOutline() []geometry.Point { return m.TopShape().Outline() }

// panel is the size along x and y of what the top is sawn from: with its corners sharp.
func (m Model) panel() geometry.Point {
	t := m.TopShape()
	t.Clip, t.Round = 0, 0
	return t.Size()
}

// arcChords stand for the arc at a corner of the top where it is a solid, rimChords for the
// whole rim of one that has no corners.
const (
	arcChords = 8
	rimChords = 64
)

// coarse returns the outline of a top with few chords. The ends of its arcs stay, so that
// its sides are where they are; two arcs that take a whole side between them share one.
func coarse(t joint.Top) []geometry.Point {
	var out []geometry.Point
	if rim := t.Outline(); t.Diameter > 0 || len(t.Corners) > rimChords {
		n := min(len(rim), rimChords)
		for k := range n {
			out = append(out, rim[k*len(rim)/n])
		}
		return out
	}
	for i := range t.Corners {
		arc := t.Worked(i)
		n := min(len(arc)-1, arcChords)
		for k := range n {
			out = append(out, arc[k*(len(arc)-1)/n])
		}
		out = append(out, arc[len(arc)-1])
	}
	same := func(a, b geometry.Point) bool { return a.Distance(b) < piece.Slip }
	out = slices.CompactFunc(out, same)
	if last := len(out) - 1; last > 0 && same(out[0], out[last]) {
		out = out[:last]
	}
	return out
}

// grow returns by how much half a side gets longer for each mm that all sides move
// outward: tan(π/n).
func grow(f design.Frame) float64 { return math.Tan(math.Pi / float64(f.Corners())) }

// Top returns the top as a part; empty where there is none.
func (m Model) Top() solid.Part {
	if m.Design.Frame.Top.None {
		return solid.Part{Name: "top"}
	}
	return solid.Stock("top", solid.Prism(solid.Lift(coarse(m.TopShape()), m.Head), solid.V(0, 0, m.Design.Frame.Top.Thickness)))
}

// third returns the thickness of a tenon: as given, or a third of the rail, the
// ordinary share (Noyes, Handwork in Wood, 1910).
func third(r design.Rail) float64 { return cmp.Or(r.Tenon, r.Thickness/3) }

// upperCut returns what a tenon is narrower at the top: as given, or a quarter of the
// depth (common practice, no source); nothing off a bridle.
func upperCut(r design.Rail) float64 {
	if r.Joint == design.Bridled {
		return 0
	}
	return cmp.Or(r.UpperCut, r.Depth/4)
}
