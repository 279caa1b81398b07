package box

import (
	"cmp"
	"math"
	"slices"
	"strconv"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"rodsheet/geometry"
	"rodsheet/geometry/measure"
	"rodsheet/geometry/solid"
	"rodsheet/templates"
	"rodsheet/templates/piece/assembly"
	"rodsheet/templates/piece/design"
	"rodsheet/templates/piece/internal/piecetest"
	"rodsheet/templates/piece/kind"
)

// slip is how far a face may stand from where it is reckoned, mm: cards say lengths and
// angles to a hundredth.
const slip = 0.1

var setting = templates.Setting{Clear: geometry.Pt(190, 260)}

// soundBox is one that no check fails.
func soundBox(t *rapid.T, change func(*design.Box)) Box {
	d := anyBox(t)
	change(&d.Box)
	b := worked(t, d)
	if slices.ContainsFunc(b.Checks(), func(c kind.Check) bool { return c.Grade == kind.Fail }) {
		t.Skip("a check tells of it")
	}
	return b
}

func figure(t rapid.TB, c templates.Card, name text) float64 {
	t.Helper()
	v, ok := piecetest.Figure(t, c, name)
	if !ok {
		t.Fatalf("%s: no %q", c.Heading, name)
	}
	return v
}

// The bottom is sawn from its board by its card, edge after edge, each tilted over the face that
// lies down; it stands on the ledges that the glue-up says.
func TestTheCardMakesTheBottom(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		b := soundBox(t, func(x *design.Box) { x.Bottom = design.BoxBottom{Thickness: 8, Up: 5, Gap: 1} })
		floor, stock := b.floor()[0], b.stock()
		glue, err := b.glueUp(setting)
		if err != nil {
			t.Fatal(err)
		}
		want, _ := b.bottom()
		drawnEdges(t, floor.Setup[0], want)
		if said := slices.Contains(glue.Cards[len(glue.Cards)-1].Text, bottomBefore.With()); said == b.drops(want) {
			t.Errorf("the bottom goes in before the last side: %t", said)
		}
		thick := figure(t, stock[0], bottomThick)
		upper := b.ledgesOf(t, glue.Cards[len(glue.Cards)-1], want) + thick
		cuts := b.Cuts()
		board := cuts[len(cuts)-1]
		long, wide := board.Sawn.Length, board.Rough.Width
		alongX := want.Bounds().Size().X >= want.Bounds().Size().Y
		if !alongX {
			long, wide = wide, long
		}
		low, off := want.Bounds().Min, math.Abs(figure(t, floor, cornerReading)-math.Pi/2) > 1e-9
		if off { // what is spare lies on either side of the middle
			low.X -= (long - want.Bounds().Size().X) / 2
		}
		bench := bottomBench{floor, solid.Box(solid.V(low.X, low.Y, upper-thick), solid.V(low.X+long, low.Y+wide, upper)), upper - thick, upper}
		if off {
			bench.turned(t, b)
		} else {
			bench.oblong(t, b, alongX)
		}
		// Every edge carries on what was rounded of the one before.
		piecetest.Same(t, "bottom", solid.Stock("", bench.made), solid.Stock("", want), slip*math.Max(1, float64(len(b.faces))/6))
	})
}

// A bottomBench is the bottom on the saw: what is made of its board between two heights.
type bottomBench struct {
	card       templates.Card
	made       solid.Solid
	low, upper float64
}

// saw cuts an edge off that its outside looks away from so; at is a point of it on the face in view
// where view holds, else on the face down.
func (m *bottomBench) saw(t *rapid.T, s sort, at geometry.Point, view bool, out solid.Vec) {
	tilt := bottomEdge(t, m.card, s)
	z := m.low
	if (tilt >= 0) != view {
		z = m.upper
	}
	sin, cos := math.Sincos(tilt)
	m.made = m.made.Cut(solid.Through(solid.V(at.X, at.Y, z), out.Mul(cos).Sub(solid.V(0, 0, sin))))
}

// turned follows the card of corners off square: the first edge just clean along the front of the
// board, its corner beyond its middle, each further edge from a corner marked on the face in view.
func (m *bottomBench) turned(t *rapid.T, b Box) {
	middle := m.made.Bounds().Min.X + m.made.Bounds().Size().X/2
	turn := math.Pi - figure(t, m.card, cornerReading)
	words := strings.Split(string(bottomTurned), "%s")
	_, said, _ := strings.Cut(m.card.Text[0], words[0])
	said, _, _ = strings.Cut(said, words[1])
	each, half := figure(t, m.card, bottomMark), piecetest.Value(t, said)
	m.saw(t, b.sortOf(0), geometry.Pt(middle, m.made.Bounds().Min.Y), false, solid.V(0, -1, 0))
	in := (m.upper - m.low) * math.Tan(math.Abs(bottomEdge(t, m.card, b.sortOf(0))))
	at := geometry.Pt(middle+half, m.made.Bounds().Min.Y+in)
	for i := 1; i < len(b.faces); i++ {
		heading := float64(i) * turn
		m.saw(t, b.sortOf(i), at, true, solid.V(math.Sin(heading), -math.Cos(heading), 0))
		at = at.Add(geometry.Polar(each, heading))
	}
}

// oblong follows that of square corners: of either pair one edge just clean, that along the grain
// first, the one across from the stop, the sawn one against it on the table.
func (m *bottomBench) oblong(t *rapid.T, b Box, alongX bool) {
	pair := []int{0, 1}
	if !alongX {
		pair = []int{1, 0}
	}
	for _, i := range pair {
		so, out := b.sortOf(i), solid.V(0, -1, 0)
		room := m.made.Bounds()
		if i == 1 {
			out = solid.V(-1, 0, 0)
		}
		first := geometry.Pt(room.Min.X, room.Min.Y)
		stop := figure(t, m.card, text(bottomStop.With(edgeNames[so.id].With())))
		m.saw(t, so, first, false, out)
		m.saw(t, so, first.Sub(geometry.Pt(out.X, out.Y).Mul(stop)), false, out.Mul(-1))
	}
}

// ledgesOf asks that the ledges of a card lie along every hollow arris, and leave the bottom what
// room they say; it returns how high its underside comes to lie.
func (b Box) ledgesOf(t *rapid.T, c templates.Card, bottom solid.Solid) float64 {
	words := strings.Split(string(ledgeText), "%s")
	var said []float64
	rest := strings.TrimPrefix(c.Text[0], words[0])
	for _, next := range words[1:] {
		v, after, ok := strings.Cut(rest, next)
		if !ok {
			t.Fatalf("%q says no ledge", c.Text[0])
		}
		said, rest = append(said, piecetest.Value(t, v)), after
	}
	least := math.Inf(1)
	for i, f := range b.faces {
		run := f.along()
		low, high := math.Inf(1), math.Inf(-1)
		hollow := f.inside(b.thickness())
		level := solid.Plane{N: solid.V(0, 0, 1)} // of boards square to their edges, too: these lean out
		for _, j := range []int{b.before(i), b.next(i)} {
			p := solid.Meet(hollow, level, b.faces[j].inside(b.thickness()))
			low, high = math.Min(low, p.Dot(run)), math.Max(high, p.Dot(run))
		}
		least = math.Min(least, high-low)
		for _, face := range bottom.Faces() {
			for _, p := range face.Corners {
				if room := -hollow.Height(p); room < said[2]-0.006 {
					t.Errorf("%g mm to spare, the card says %g", room, said[2])
				}
			}
		}
	}
	if said[0] > 0.6*least || said[0] < 0.2*least {
		t.Errorf("a ledge of %g mm on an edge of %g", said[0], least)
	}
	return said[1]
}

// drops reports whether the bottom goes level through the rim.
func (b Box) drops(bottom solid.Solid) bool {
	for _, face := range bottom.Faces() {
		for _, p := range face.Corners {
			for _, f := range b.faces {
				if f.inside(b.thickness()).Height(solid.V(p.X, p.Y, b.design.Box.Height)) > 0 {
					return false
				}
			}
		}
	}
	return true
}

// drawnEdges asks that the picture of the bottom says the lengths of its upper face.
func drawnEdges(t *rapid.T, p templates.Picture, bottom solid.Solid) {
	top := slices.MaxFunc(bottom.Faces(), func(a, b solid.Face) int { return cmp.Compare(a.Plane.N.Z, b.Plane.N.Z) }).Corners
	for i, at := range top {
		long := at.Distance(top[(i+1)%len(top)])
		if !slices.ContainsFunc(p.Labels, func(l templates.Label) bool {
			before, after, _ := strings.Cut(string(bottomEach), "%s")
			return math.Abs(piecetest.Value(t, strings.TrimSuffix(strings.TrimPrefix(l.Text, before), after))-long) < 0.006
		}) {
			t.Errorf("no label says an edge of %g mm", long)
		}
	}
}

// bottomEdge is the tilt of an edge of the bottom off plumb, positive where the upper face is
// the longer: the blade leans over what lies above the table, so the face down keeps more.
func bottomEdge(t rapid.TB, c templates.Card, s sort) float64 {
	tilt := figure(t, c, text(bottomTilt.With(edgeNames[s.id].With())))
	before, _, _ := strings.Cut(string(bottomText), "%s")
	if strings.HasPrefix(c.Text[0], before+underDown.With()) || len(c.Text) > 1 && c.Text[1] == bottomOther.With(edgeNames[s.id].With()) {
		return -tilt
	}
	return tilt
}

// A mitredEnd is an end of a side sawn without slots, as it is measured on the wood.
type mitredEnd struct {
	end   solid.Plane
	inner solid.Vec // a point of the inner arris
	out   solid.Vec // in the end, square to that arris, towards the outer one
}

// endOf looks at a sawn side, from outside, at its end that lies so, on one of its edges.
func endOf(side solid.Solid, outside, way solid.Vec, edge solid.Plane) mitredEnd {
	farthest := func(way solid.Vec) solid.Plane {
		return slices.MaxFunc(side.Faces(), func(a, b solid.Face) int { return cmp.Compare(a.Plane.N.Dot(way), b.Plane.N.Dot(way)) }).Plane
	}
	end, hollow := farthest(way), farthest(outside.Mul(-1))
	out := end.N.Cross(hollow.N).Cross(end.N).Unit()
	if out.Dot(outside) < 0 {
		out = out.Mul(-1)
	}
	return mitredEnd{end, solid.Meet(end, hollow, edge), out}
}

// slab returns what lies so far from the inner arris, and so far below the end or above it.
func (e mitredEnd) slab(room solid.Solid, from, to, deep, above float64) solid.Solid {
	return room.Cut(solid.Through(e.inner.Add(e.out.Mul(from)), e.out.Mul(-1))).Cut(solid.Through(e.inner.Add(e.out.Mul(to)), e.out)).
		Cut(solid.Through(e.inner.Sub(e.end.N.Mul(deep)), e.end.N.Mul(-1))).Cut(solid.Through(e.inner.Add(e.end.N.Mul(above)), e.end.N))
}

// The ends are slotted by their card, measured from the inner corner in the sawn end itself.
// That gives the sides; the slots of a corner are one, which holds the spline of its strip
// and stays clear of the faces.
func TestTheCardMakesTheSlots(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		b := soundBox(t, func(x *design.Box) { x.Corner = design.SplinedCorner })
		s, err := b.glueUp(setting)
		if err != nil {
			t.Fatal(err)
		}
		c := s.Cards[0]
		plane := b.stock()[0]
		near, wide, deep := figure(t, c, splinePlaceReading), figure(t, c, splineReading), figure(t, c, splineDeepReading)
		strip := piecetest.Said(t, plane.Text[1], text(strings.Replace(string(splineStock), "%d", strconv.Itoa(len(b.faces)), 1)))
		middle := near + wide/2
		thick := figure(t, plane, splineThickReading)
		drawnSpline(t, c.Setup[0], near, wide, strip)
		plain := b
		plain.design.Box.Corner = design.MitredCorner
		room := b.between(0, b.design.Box.Height)
		slots, splines := map[[2]int]solid.Solid{}, map[[2]int]solid.Solid{}
		for i, f := range b.faces {
			made := plain.side(i)
			whole := made.Pieces[0]
			for j, way := range map[int]solid.Vec{b.next(i): f.along(), b.before(i): f.along().Mul(-1)} {
				e := endOf(whole, f.normal(), way, solid.Plane{N: solid.V(0, 0, 1)})
				if off := math.Abs(math.Asin(e.end.N.Dot(f.normal()))) - piecetest.Said(t, c.Text[0], splineText); math.Abs(off) > measure.Radians(0.006) {
					t.Errorf("the block is %g rad off the mitre", off)
				}
				slots[[2]int{i, j}] = e.slab(room, near, near+wide, deep, 0)
				splines[[2]int{i, j}] = e.slab(room, middle-thick/2, middle+thick/2, strip/2, strip/2)
				made = made.Subtract(e.slab(room, near, near+wide, deep, 1))
				if clear := clearOf(slots[[2]int{i, j}], f, b.thickness()); math.Abs(clear-b.behindSpline()) > slip {
					t.Errorf("a slot leaves %g mm to a face, the check knows of %g", clear, b.behindSpline())
				}
			}
			piecetest.Same(t, "side", made, b.side(i), slip)
		}
		for at, spline := range splines {
			if at[1] != b.next(at[0]) {
				continue
			}
			piecetest.Same(t, "spline", solid.Stock("", spline), solid.Stock("", b.spline(at[0])), slip)
			left := solid.Stock("", spline)
			for _, slot := range []solid.Solid{slots[at], slots[[2]int{at[1], at[0]}]} {
				left = left.Subtract(piecetest.Grown(slot, 0.01))
			}
			if v := left.Volume(); v > 1e-3 {
				t.Errorf("%g mm³ of a spline are outside its slot", v)
			}
		}
	})
}

// clearOf returns how far a solid in a side stays clear of the two faces of it.
func clearOf(s solid.Solid, f face, thick float64) float64 {
	least := math.Inf(1)
	for _, e := range s.Edges() {
		for _, p := range []solid.Vec{e.A, e.B} {
			h := f.inside(0).Height(p)
			least = min(least, -h, h+thick)
		}
	}
	return least
}

// drawnSpline asks that a corner shows its spline where the figures have it: from the inner
// corner, the origin, along the mitre, which the spline stands square to.
func drawnSpline(t rapid.TB, p templates.Picture, near, wide, strip float64) {
	for _, a := range p.Areas {
		if a.Tone != templates.Middle {
			continue
		}
		along := a.Points[0].Lerp(a.Points[2], 0.5).Unit()
		least, most, aside := math.Inf(1), math.Inf(-1), 0.0
		for _, q := range a.Points {
			least, most, aside = min(least, q.Dot(along)), max(most, q.Dot(along)), max(aside, math.Abs(q.Dot(along.Perp())))
		}
		if math.Abs(least-near)+math.Abs(most-near-wide)+math.Abs(2*aside-strip) > slip {
			t.Errorf("a spline is drawn from %g to %g, %g wide", least, most, 2*aside)
		}
		return
	}
	t.Error("no spline is drawn")
}

// The triangles that the test of an end names are among those that its card calls for; the first is
// the angle of the end on the outer side, the second that between both, as the solid has it.
func TestTheTestOfAnEndNamesItsTriangles(t *testing.T) {
	named := 0
	rapid.Check(t, func(t *rapid.T) {
		b := worked(t, anyBox(t))
		s, err := b.ends(setting)
		if err != nil {
			t.Skip("an angle that no triangle has")
		}
		for i, so := range b.sorts() {
			c := s.Cards[2*i]
			face := b.down(so.first, true)
			up, level := face[2].Sub(face[1]), face[1].Sub(face[0])
			acute := func(a float64) float64 { return math.Min(a, math.Pi-a) }
			onFace := acute(math.Acos(up.Dot(level) / up.Norm() / level.Norm()))
			outer, end := b.faces[so.first].normal(), math.Inf(1)
			for _, f := range b.side(so.first).Pieces[0].Faces() {
				if math.Abs(f.Plane.N.Dot(b.faces[so.first].along())) > 0.5 {
					end = math.Min(end, acute(math.Acos(f.Plane.N.Dot(outer))))
				}
			}
			rest := c.Test
			for _, want := range []float64{onFace, end} {
				view := assembly.Triangle(want)
				if view == nil {
					continue
				}
				_, after, ok := strings.Cut(rest, string(triangleOf[:len(triangleOf)-2]))
				if !ok {
					t.Fatalf("%s: %q names no triangle of %g", c.Heading, c.Test, want)
				}
				said, after, _ := strings.Cut(after, "°")
				rest = after
				if got := piecetest.Value(t, said+"°"); math.Abs(got-want) > measure.Radians(0.006) || !slices.Contains(c.Templates, view[0]) {
					t.Errorf("%s: triangle of %s°, the solid has %g°, the card calls for %v", c.Heading, said, want*180/math.Pi, c.Templates)
				}
				named++
			}
		}
	})
	if named == 0 {
		t.Error("no end names a triangle")
	}
}
