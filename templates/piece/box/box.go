// Package box is the kind of piece whose sides slope: planters, trays, hoppers. A side is
// cut from a board of even thickness; all edges at the floor and at the rim are level.
package box

import (
	"cmp"
	"math"
	"sync"

	"rodsheet/geometry/joint"
	"rodsheet/geometry/measure"
	"rodsheet/geometry/solid"
	"rodsheet/templates/piece/assembly"
	"rodsheet/templates/piece/design"
	"rodsheet/templates/piece/kind"
)

// Kind returns the kind.
var Kind = sync.OnceValue(func() kind.Kind {
	return assembly.Kind(assembly.Spec[Box]{
		Judge: judge, Envelopes: envelopes(), Mends: mends(), Mending: mending, Grips: Box.grips,
	})
})

// A Box is one size worked out.
//
// Frame: the lower edges lie on z = 0, the axis is z, the front looks to −y. Sides count
// from the front, counter-clockwise from above.
type Box struct {
	design design.Design
	faces  []face
}

// A face is the outer face of a side: at the distance apothem from the axis on the floor,
// leaning out by slope from plumb.
type face struct {
	out     solid.Vec // level, unit
	apothem float64   // mm
	slope   float64   // rad
}

// normal is the outward normal: out·cos slope − z·sin slope, since the face runs upward
// along out·sin slope + z·cos slope.
func (f face) normal() solid.Vec {
	s, c := math.Sincos(f.slope)
	return f.out.Mul(c).Add(solid.V(0, 0, -s))
}

// inside returns the plane of the face, moved inward by so much square to it; what lies
// inside the box is inside of it.
func (f face) inside(mm float64) solid.Plane {
	return solid.Plane{N: f.normal(), D: f.apothem*math.Cos(f.slope) - mm}
}

// along is level along the face, counter-clockwise from above; up runs up the face.
func (f face) along() solid.Vec { return solid.V(0, 0, 1).Cross(f.out) }

func (f face) up() solid.Vec {
	s, c := math.Sincos(f.slope)
	return f.out.Mul(s).Add(solid.V(0, 0, c))
}

// judge works one size out, as assembly.Spec wants it.
func judge(d design.Design, doubts design.Doubts) (Box, []error) {
	var b Box
	of := func(ask func(Box) error) func() error { return func() error { return ask(b) } }
	bottom := append(keys(), "box.bottom.kind", "box.bottom.thickness", "box.bottom.up", "box.bottom.gap")
	errs := assembly.Faults(d, doubts,
		assembly.Question{Keys: keys(), Ask: func() error {
			b = Box{d, faces(d.Box)}
			return cornered(b)
		}},
		assembly.Question{Keys: keys(), Ask: of(roomy)},
		assembly.Question{Keys: bottom, Ask: of(bottomed)})
	return b, errs
}

// cornered refuses corners that so many sides, or such slopes, do not have.
func cornered(b Box) error {
	if k := b.design.Box; k.Corner == design.ButtCorner && k.Outline == design.RegularBox {
		n := measure.Number(float64(k.Sides))
		const four = "box.mitre-others"
		return cmp.Or(measure.AtMost("box.butt-sides", n, "", measure.Number(4), four), measure.AtLeast("box.butt-sides", n, "", measure.Number(4), four))
	}
	if b.dovetailed() {
		return checkDovetails(b)
	}
	return nil
}

// roomy refuses a box turned inside out: half of the room between a side and the one
// across, or the axis, would be less than nothing.
func roomy(b Box) error {
	for i := range b.faces {
		if err := cmp.Or(
			measure.Above("box.room-below", measure.Length(b.room(i, 0, 0)), "", measure.Length(0), "box.thinner-or-larger"),
			measure.Above("box.room-above", measure.Length(b.room(i, b.design.Box.Height, 0)), "", measure.Length(0), "box.less-slope-or-height"),
		); err != nil {
			return err
		}
	}
	return nil
}

// room returns how far what lies so far inside of side i is from the axis, at a height.
func (b Box) room(i int, z, inside float64) float64 {
	f := b.faces[i]
	return f.apothem + z*math.Tan(f.slope) - (b.thickness()+inside)/math.Cos(f.slope)
}

// bottomed refuses a bottom that its gap eats up. One above the rim is a check.
func bottomed(b Box) error {
	k := b.design.Box.Bottom
	if k.Thickness == 0 || k.Up+k.Thickness > b.design.Box.Height {
		return nil
	}
	for i := range b.faces {
		for _, z := range []float64{k.Up, k.Up + k.Thickness} {
			if err := measure.Above("box.room-bottom", measure.Length(2*b.room(i, z, k.Gap)), "", measure.Length(0), "box.narrower-gap"); err != nil {
				return err
			}
		}
	}
	return nil
}

// keys are those that the outline hangs on.
func keys() []design.Key {
	return []design.Key{"box.outline", "box.sides", "box.side", "box.length", "box.width", "box.height", "box.thickness",
		"box.slope", "box.end-slope", "box.rim-side", "box.rim-length", "box.rim-width", "box.corner", "box.tails"}
}

// faces returns the outer faces. A slope that is given by a size at the rim has the tangent
// (half of the rim − half of the floor)/height.
func faces(b design.Box) []face {
	leans := func(rim, floor float64) float64 { return math.Atan2((rim-floor)/2, b.Height) }
	if b.Outline == design.RegularBox {
		n := b.Sides
		r := joint.RegularBySide(n, b.Side)
		slope := b.Slope
		if b.RimSide > 0 {
			slope = math.Atan2(joint.RegularBySide(n, b.RimSide).Apothem-r.Apothem, b.Height)
		}
		out := make([]face, n)
		for i := range out {
			a := 2*math.Pi*float64(i)/float64(n) - math.Pi/2
			out[i] = face{solid.V(math.Cos(a), math.Sin(a), 0), r.Apothem, slope}
		}
		return out
	}
	slope, ends := b.Slope, b.EndSlope
	if b.RimWidth > 0 {
		slope = leans(b.RimWidth, b.Width)
	}
	switch {
	case !b.OwnEnds:
		ends = slope
	case b.RimLength > 0:
		ends = leans(b.RimLength, b.Length)
	}
	return []face{
		{solid.V(0, -1, 0), b.Width / 2, slope}, {solid.V(1, 0, 0), b.Length / 2, ends},
		{solid.V(0, 1, 0), b.Width / 2, slope}, {solid.V(-1, 0, 0), b.Length / 2, ends},
	}
}

// Decided is the design.
func (b Box) Decided() design.Design { return b.design }

func (b Box) thickness() float64 { return b.design.Box.Thickness }

func (b Box) splined() bool    { return b.design.Box.Corner == design.SplinedCorner }
func (b Box) dovetailed() bool { return b.design.Box.Corner == design.DovetailedCorner }

// mitred reports whether the corners are, with splines or without.
func (b Box) mitred() bool { return b.design.Box.Corner <= design.SplinedCorner }

// next and before are the neighbours of a side.
func (b Box) next(i int) int   { return (i + 1) % len(b.faces) }
func (b Box) before(i int) int { return (i + len(b.faces) - 1) % len(b.faces) }

// corner returns the corner of side i and the next.
func (b Box) corner(i int) joint.SlopingCorner {
	f, g := b.faces[i], b.faces[b.next(i)]
	turn := math.Acos(math.Max(-1, math.Min(1, f.out.Dot(g.out))))
	return joint.SlopingCorner{Slope: math.Pi/2 - f.slope, Next: math.Pi/2 - g.slope, Angle: math.Pi - turn}
}

// runsPast reports whether a side of butted corners runs past its neighbours.
func runsPast(i int) bool { return i%2 == 0 }

// end returns the plane in which side i ends towards side j; the side is inside of it.
//
// Mitred, the two sides have equal distances to their outer faces there: the plane is
// N·p − D of one equal to that of the other.
func (b Box) end(i, j int) solid.Plane {
	f, g := b.faces[i].inside(0), b.faces[j].inside(0)
	switch {
	case b.mitred():
		return solid.Plane{N: g.N.Sub(f.N), D: g.D - f.D}
	case b.dovetailed() || runsPast(i):
		return g
	}
	return b.faces[j].inside(b.thickness())
}

// tilt returns by how much the ends of side i are tilted off square to its face; the outer
// face is the longer one where it is positive.
func (b Box) tilt(i int) float64 {
	if b.mitred() {
		return b.corner(i).Tilt()
	}
	return -b.corner(i).ButtTilt()
}

// far is a distance beyond everything.
func (b Box) far() float64 {
	most := b.design.Box.Height
	for _, f := range b.faces {
		most += f.apothem + b.design.Box.Height*math.Abs(math.Tan(f.slope))
	}
	return 4 * most
}

// between returns what lies between two heights.
func (b Box) between(low, high float64) solid.Solid {
	far := b.far()
	return solid.Box(solid.V(-far, -far, low), solid.V(far, far, high))
}

// side returns side i in the room, with its dovetails or the slots for its splines.
func (b Box) side(i int) solid.Part {
	f := b.faces[i]
	s := b.between(0, b.design.Box.Height).Cut(f.inside(0)).Cut(f.inside(b.thickness()).Flip())
	part := solid.Stock("", s.Cut(b.end(i, b.next(i))).Cut(b.end(i, b.before(i))))
	if b.dovetailed() {
		return b.withTails(i, part)
	}
	if b.splined() {
		part = part.Subtract(b.tongue(i, b.slotDeep())).Subtract(b.tongue(b.before(i), b.slotDeep()))
	}
	return part
}

// Splines: how deep they go into either side, and where their middle stands on the mitre,
// from the inner corner, as shares (common practice, no source): nearer the inside, where
// there is more wood behind them.
const (
	splineDeep  = 0.5  // of the thickness
	splinePlace = 0.35 // of the width of the mitre
)

// splineThick is that of the spline, a quarter of the sides' if none is given.
func (b Box) splineThick() float64 { return cmp.Or(b.design.Box.Spline, b.thickness()/4) }

// slotDeep is the depth of a slot: with it the mitre closes before the spline is home.
func (b Box) slotDeep() float64 {
	return splineDeep*b.thickness() + b.design.Written.Round(0.5, 1.0/64)
}

// spline returns that in the corner of side i and the next.
func (b Box) spline(i int) solid.Solid { return b.tongue(i, splineDeep*b.thickness()) }

// tongue returns what stands so deep in both ends of a corner, square to the mitre, along
// which it runs.
func (b Box) tongue(i int, deep float64) solid.Solid {
	mitre := b.end(i, b.next(i))
	m := mitre.N.Unit()
	line := m.Cross(b.faces[i].normal()).Unit() // in which faces and mitre meet
	across := m.Cross(line)                     // over the mitre, square to the line
	outer, inner := b.onMitre(i, 0), b.onMitre(i, b.thickness())
	middle := inner.Lerp(outer, splinePlace)
	half := b.splineThick() / 2
	s := b.between(0, b.design.Box.Height)
	for _, p := range []solid.Plane{
		solid.Through(middle.Add(m.Mul(deep)), m), solid.Through(middle.Sub(m.Mul(deep)), m.Mul(-1)),
		solid.Through(middle.Add(across.Mul(half)), across), solid.Through(middle.Sub(across.Mul(half)), across.Mul(-1)),
	} {
		s = s.Cut(p)
	}
	return s
}

// onMitre returns the point in the corner of side i and the next where faces moved inward
// by so much meet, on a line square to that in which they meet: the floor's outer corner is
// on it too.
func (b Box) onMitre(i int, mm float64) solid.Vec {
	f, g := b.faces[i].inside(mm), b.faces[b.next(i)].inside(mm)
	line := f.N.Cross(g.N)
	corner := solid.Meet(b.faces[i].inside(0), b.faces[b.next(i)].inside(0), solid.Plane{N: solid.V(0, 0, 1)})
	return solid.Meet(f, g, solid.Plane{N: line, D: line.Dot(corner)})
}

// bottom returns the bottom, none where the design has none.
func (b Box) bottom() (solid.Solid, bool) {
	k := b.design.Box.Bottom
	if k.Thickness == 0 {
		return solid.Solid{}, false
	}
	return b.hollow(k.Up, k.Up+k.Thickness, k.Gap), true
}

// hollow returns what lies between the sides and two heights, so far from their faces.
func (b Box) hollow(low, high, gap float64) solid.Solid {
	s := b.between(low, high)
	for _, f := range b.faces {
		s = s.Cut(f.inside(b.thickness() + gap))
	}
	return s
}

// capacity returns the room above the bottom, or above the floor, in mm³.
func (b Box) capacity() float64 {
	k := b.design.Box.Bottom
	low := 0.0
	if k.Thickness > 0 {
		low = k.Up + k.Thickness
	}
	return b.hollow(low, math.Max(low, b.design.Box.Height), 0).Volume()
}

// edge returns the length of side i along its outer face at a height.
func (b Box) edge(i int, z float64) float64 {
	level, f := solid.Plane{N: solid.V(0, 0, 1), D: z}, b.faces[i].inside(0)
	right, left := solid.Meet(f, level, b.end(i, b.next(i))), solid.Meet(f, level, b.end(i, b.before(i)))
	return right.Sub(left).Dot(b.faces[i].along())
}

// wide returns how wide side i is along its outer face.
func (b Box) wide(i int) float64 { return b.design.Box.Height / math.Cos(b.faces[i].slope) }

// blank returns how wide the board is that side i is ripped from: the level edges lean
// through its thickness, so that its two faces stand apart by thickness·tan slope.
func (b Box) blank(i int) float64 {
	return b.wide(i) + b.thickness()*math.Abs(math.Tan(b.faces[i].slope))
}
