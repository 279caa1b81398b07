package piece

import (
	"fmt"
	"math"
	"slices"
	"sync"

	"rodsheet/geometry"
	"rodsheet/geometry/joint"
	"rodsheet/geometry/solid"
	"rodsheet/templates/piece/design"
)

// Parts returns every part of the piece as solids in the room: the floor is
// z = 0 and the centre of the ring the z axis.
func (p Piece) Parts() []solid.Part {
	var out []solid.Part
	stretcher, leg := p.Stretcher(), p.Leg()
	var pad solid.Part
	if p.Design.Top.PadHeight() > 0 {
		pad = p.pad()
	}
	for i := range p.Frame.Ring.Sides {
		place := p.Place(i)
		out = append(out,
			named(stretcher.Transform(place), fmt.Sprintf("stretcher %d", i+1)),
			named(leg.Transform(place), fmt.Sprintf("leg %d", i+1)))
		if len(pad.Pieces) > 0 {
			out = append(out, named(pad.Transform(place), fmt.Sprintf("pad %d", i+1)))
		}
	}
	if p.Design.Top.Kind != design.NoTop {
		out = append(out, p.top())
	}
	return out
}

func named(s solid.Part, name string) solid.Part {
	s.Name = name
	return s
}

// Place takes the frame of stretcher i (x along it from mid-length, y outward
// from its ring side, z up from its underside) to the room.
func (p Piece) Place(i int) solid.Affine3 { return p.PlaceOpen(i, 0) }

// PlaceOpen is Place in a ring that is open by slide mm, as joint.Ring.Opening
// counts it.
func (p Piece) PlaceOpen(i int, slide float64) solid.Affine3 {
	m := p.Frame.Ring.Place(i, slide)
	return solid.Affine3{
		X: solid.V(m.A, m.B, 0), Y: solid.V(m.C, m.D, 0), Z: solid.V(0, 0, 1),
		O: solid.V(m.E, m.F, p.Frame.Leg.Height-p.Frame.Ring.Depth),
	}
}

// Around returns parts of one side as they stand on every side, placed by at.
func (p Piece) Around(at func(i int) solid.Affine3, of ...solid.Part) []solid.Part {
	var out []solid.Part
	for i := range p.Frame.Ring.Sides {
		for _, q := range of {
			out = append(out, q.Transform(at(i)))
		}
	}
	return out
}

// far returns a distance in mm beyond every end of every part, and not much
// beyond: how finely solids are cut goes by their size.
func (p Piece) far() float64 {
	l := p.Frame.Leg
	return 2 * (p.RoughReach() + l.Foot() + l.Section() + l.Height + 2*p.Design.Legs.Proud)
}

// slab returns the solid over a plan polygon between two heights.
func slab(polygon []geometry.Point, low, high float64) solid.Solid {
	return solid.Prism(solid.Lift(polygon, low), solid.V(0, 0, high-low))
}

// bar returns an endless bar along the stretcher, between two distances from
// its ring side and two heights over its underside.
func (p Piece) bar(y0, y1, low, high float64) solid.Solid {
	return slab(geometry.Box(-p.far(), y0, p.far(), y1).Corners(), low, high)
}

// solids are the parts that a piece is made of, each worked out when it is first
// asked for. Copies of a piece share them.
type solids struct{ stretcher, leg once }

type once struct {
	sync.Once
	part solid.Part
}

func (o *once) value(f func() solid.Part) solid.Part {
	o.Do(func() { o.part = f() })
	return o.part
}

// Stretcher returns the finished stretcher in its own frame, that of Place.
func (p Piece) Stretcher() solid.Part { return p.solid.stretcher.value(p.workStretcher) }

func (p Piece) workStretcher() solid.Part {
	bar := p.lapped(p.unlapped(p.StretcherPlan()).Cut(p.back()))
	for _, waste := range p.joint(p.Design.Legs.Mortise == joint.MortiseInStretcher) {
		bar = bar.Subtract(waste.Cut(p.stretcherSide().Flip()))
	}
	return bar
}

// unlapped returns a stretcher of an outline seen from above.
func (p Piece) unlapped(outline []geometry.Point) solid.Part {
	return solid.Stock("stretcher", slab(outline, 0, p.Frame.Ring.Depth))
}

// lapped cuts the laps of both ends.
func (p Piece) lapped(bar solid.Part) solid.Part {
	depth := p.Frame.Ring.Depth
	low, high := 0.0, depth/2
	if p.Frame.Over {
		low, high = high, depth
	}
	return bar.Subtract(slab(p.legLap(), low, high)).Subtract(slab(p.plainLap(), depth-high, depth-low))
}

// StretcherPlan returns the outline of the stretcher seen from above, its leg
// end still square.
func (p Piece) StretcherPlan() []geometry.Point {
	r := p.Frame.Ring
	corners := r.Corners(p.PlainReach, p.LegReach)
	if p.Design.Ring.Plain == design.FlushEnd {
		flush := r.FlushCorners()
		corners[0], corners[3] = flush[0], flush[3]
	}
	return corners
}

// legLap returns the lap at the leg end, seen from above.
func (p Piece) legLap() []geometry.Point { return p.Frame.Ring.Lap(p.Kerf).Corners() }

// plainLap returns the lap at the plain end, seen from above: out to the end
// where it is open, otherwise as long as the neighbour is wide and its slack.
func (p Piece) plainLap() []geometry.Point {
	lap := geometry.MirrorX().ApplyAll(p.legLap())
	out := geometry.Pt(-p.Design.Ring.Slack/math.Sin(p.Frame.Ring.Angle()), 0)
	if p.Design.Ring.Plain != design.ClosedEnd {
		out.X = -p.far()
	}
	// Mirrored, the corners of the outer shoulder are the second and third.
	lap[1], lap[2] = lap[1].Add(out), lap[2].Add(out)
	return lap
}

// stretcherSide and back are the planes of those faces of the leg, in the frame of
// the stretcher; what lies inside is nearer to mid-length.
func (p Piece) stretcherSide() solid.Plane { return p.face(p.Frame.Leg.StretcherSide(0)) }
func (p Piece) back() solid.Plane          { return p.face(p.Frame.Leg.Back(0)) }

func (p Piece) face(at float64) solid.Plane {
	s, c := math.Sincos(p.Frame.Leg.Splay)
	return solid.Through(solid.V(at, 0, p.Frame.Ring.Depth), solid.V(c, 0, s))
}

// joint returns what the bridle removes from a member at any height: the slot
// from the mortised one, the two cheeks from the other.
func (p Piece) joint(slot bool) []solid.Solid {
	w, q := p.Frame.Ring.Width, p.Bridle.Tenon
	near, away := (w-q)/2, (w+q)/2
	strip := func(y0, y1 float64) solid.Solid {
		return p.bar(y0, y1, -p.far(), p.far())
	}
	if slot {
		return []solid.Solid{strip(near, away)}
	}
	return []solid.Solid{strip(-1, near), strip(away, w+1)}
}

// Leg returns the finished leg in the frame of its stretcher.
func (p Piece) Leg() solid.Part { return p.solid.leg.value(p.workLeg) }

func (p Piece) workLeg() solid.Part {
	l := p.Frame.Leg
	foot := p.Frame.Ring.Depth - l.Height
	head := p.Frame.Ring.Depth + p.Design.Legs.Proud
	part := solid.Stock("leg", p.bar(0, l.Thickness, foot, head)).Cut(p.back()).Cut(p.stretcherSide().Flip())
	for _, waste := range p.joint(p.Design.Legs.Mortise == joint.MortiseInLeg) {
		shoulder := solid.Through(solid.V(0, 0, 0), solid.V(0, 0, -1))
		part = part.Subtract(waste.Cut(shoulder))
	}
	return p.tapered(part)
}

// tapered cuts the tapers of the leg, its stretcher side first, then the back or
// the neighbouring faces.
func (p Piece) tapered(leg solid.Part) solid.Part {
	if p.Taper == nil {
		return leg
	}
	for _, waste := range p.taperWaste() {
		leg = leg.Subtract(waste)
	}
	return leg
}

// taperWaste returns what each taper removes: outside a plane that leaves the
// face at the start of the taper, below that start. Start and foot are counted
// along the leg from the back of its head, square across the leg. A single taper
// is on the stretcher side, two adjacent ones are there and on the ring side.
func (p Piece) taperWaste() []solid.Solid {
	l := p.Frame.Leg
	s, c := math.Sincos(l.Splay)
	along := solid.V(s, 0, -c) // down the leg
	loss := p.Taper.Loss() / p.Taper.Run()
	head := solid.V(l.Back(0), 0, p.Frame.Ring.Depth)
	square := solid.V(c, 0, s) // out of the back
	faces := []struct{ at, out solid.Vec }{
		{head.Sub(square.Mul(l.Breadth)), square.Mul(-1)},
		{head, square},
		{head, solid.V(0, -1, 0)},
		{head.Add(solid.V(0, l.Thickness, 0)), solid.V(0, 1, 0)},
	}
	all := p.bar(-p.far(), p.far(), -p.far(), p.far())
	var out []solid.Solid
	for k, f := range faces {
		if !p.Taper.Faces.Cut(joint.LegFace(k)) {
			continue
		}
		start := f.at.Add(along.Mul(p.Taper.Start))
		below := solid.Through(start, along.Mul(-1))
		// The cut face turns from the straight one by the taper: it loses
		// loss mm for every mm down the leg.
		cut := solid.Through(start, f.out.Add(along.Mul(loss)))
		out = append(out, all.Cut(below).Cut(cut.Flip()))
	}
	return out
}

// PadAt returns how far from mid-length of its stretcher, towards the leg, the
// centre of a pad stands. Outermost, its edge touches the inner shoulder of the
// lap, which leaves the ring side at Inside/2 and leans by the crossing angle:
// a circle of radius r about (x, w/2) touches it where
// x = Inside/2 + (w/2)·cot φ − r/sin φ.
func (p Piece) PadAt() float64 {
	if !p.Design.Top.Pads.Outermost {
		return p.Design.Top.Pads.At
	}
	shoulder, _ := p.Frame.Ring.Shoulders(p.Frame.Ring.Width / 2)
	return shoulder - p.Design.Top.Pads.Diameter/2/math.Sin(p.Frame.Ring.Angle())
}

// PadCentre returns the centre of a pad in plan, in the frame of its stretcher.
func (p Piece) PadCentre() geometry.Point { return geometry.Pt(p.PadAt(), p.Frame.Ring.Width/2) }

// pad returns one pad in the frame of its stretcher.
func (p Piece) pad() solid.Part {
	round := geometry.Arc(p.PadCentre(), p.Design.Top.Pads.Diameter/2, 0, 2*math.Pi)
	d := p.Frame.Ring.Depth
	return solid.Stock("pad", slab(geometry.Decimate(round[:len(round)-1], solidCorners), d, d+p.Design.Top.Pads.Height))
}

// solidCorners is how many corners a round outline keeps as a solid: enough to
// meet other parts by.
const solidCorners = 48

// solidTop returns the outline of the top as a solid, alike for every side of the
// ring where it follows that or is round: what one leg meets, every leg does.
func (p Piece) solidTop() []geometry.Point {
	outline, sides := p.TopCorners(), p.Frame.Ring.Sides
	var out []geometry.Point
	switch t := p.Design.Top; {
	case t.Outline == design.RoundTop:
		n := (solidCorners + sides - 1) / sides * sides
		for i := range n {
			out = append(out, geometry.Polar(p.TopRadius(), 2*math.Pi*float64(i)/float64(n)))
		}
	case t.Corner != design.RoundedCorner:
		return outline
	case t.Outline == design.FreeOutline:
		return geometry.Decimate(outline, solidCorners)
	default:
		for corner := range slices.Chunk(outline, len(outline)/sides) {
			out = append(out, geometry.Decimate(corner, solidCorners/sides)...)
		}
	}
	return out
}

// top returns the top in the room.
func (p Piece) top() solid.Part {
	under := p.Frame.Leg.Height + p.Design.Top.PadHeight()
	return solid.Stock("top", slab(p.solidTop(), under, under+p.Design.Top.Thickness))
}
