package joint_test

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"
	"pgregory.net/rapid"

	"rodsheet/geometry"
	"rodsheet/geometry/joint"
	"rodsheet/geometry/measure"
	"rodsheet/geometry/solid"
)

func goodMortise() joint.Mortise {
	return joint.Mortise{Width: 22, Depth: 70, Leg: 40, LegWidth: 40, Long: 28, Inset: 5, FromHead: 10}
}

// someMortise is one that fits its leg.
func someMortise(t *rapid.T) (joint.Mortise, leaningCorner) {
	c := someCorner(t)
	m := joint.Mortise{
		Width: rapid.Float64Range(12, 40).Draw(t, "width"), Depth: rapid.Float64Range(30, 120).Draw(t, "depth"),
		Leg: rapid.Float64Range(20, 60).Draw(t, "leg"), LegWidth: 400,
		Splay: c.splay, Rake: c.rake, Turn: c.turn,
		LowerCut: rapid.Float64Range(0, 8).Draw(t, "lower"), UpperCut: rapid.Float64Range(3, 8).Draw(t, "upper"),
		Haunch: joint.Haunch(rapid.IntRange(0, 2).Draw(t, "haunch")),
		Inset:  180, FromHead: 300,
	}
	m.HaunchLong = m.Leg * 0.3
	if rapid.Bool().Draw(t, "blind") {
		m.Long = m.Leg * rapid.Float64Range(0.5, 0.99).Draw(t, "long")
	}
	if s := m.Shoulder(); math.Abs(s.Edge) > joint.LeanSteepest {
		t.Skip("steeper than the limits")
	}
	if m.Splay >= 0 && m.Rake >= 0 {
		if err := m.Check(); err != nil {
			t.Fatal(err)
		}
	}
	return m, c
}

func vec(v r3.Vec) solid.Vec { return solid.V(v.X, v.Y, v.Z) }

// legFrame puts a point of the leg's rail side, so deep below it, in the room.
func (c leaningCorner) legFrame(m joint.Mortise, p geometry.Point, deep float64) solid.Vec {
	n := c.face()
	if n.X < 0 {
		n = r3.Scale(-1, n)
	}
	datum := c.place(m.Shoulder().At(m.Depth, 0), m.Depth, 0) // top of the rail at its outer side
	across := r3.Cross(n, c.leg())
	if across.Y < 0 {
		across = r3.Scale(-1, across)
	}
	v := r3.Add(datum, r3.Scale(m.FromHead-p.X, c.leg()))
	v = r3.Add(v, r3.Scale(p.Y-m.Inset, across))
	return vec(r3.Sub(v, r3.Scale(deep, n)))
}

// rail is the rail with its tenon in the room, made of its figures in its own frame.
func (c leaningCorner) rail(m joint.Mortise) solid.Part {
	s, far := m.Shoulder(), 400.0
	at := func(x, y, depth float64) solid.Vec { return vec(c.place(x, y, depth)) }
	piece := func(from func(y, depth float64) float64, to func(y, depth float64) float64, ys [4]float64, d0, d1 float64) solid.Solid {
		// A wedge between two planes is the prism of its outline cut by both.
		box := solid.Prism([]solid.Vec{at(-far, ys[0], d0), at(far, ys[0], d0), at(far, ys[2], d0), at(-far, ys[2], d0)},
			at(0, 0, d1).Sub(at(0, 0, d0)))
		plane := func(f func(y, depth float64) float64, inside solid.Vec) solid.Plane {
			a, b, e := at(f(ys[0], d0), ys[0], d0), at(f(ys[2], d0), ys[2], d0), at(f(ys[0], d1), ys[0], d1)
			n := b.Sub(a).Cross(e.Sub(a))
			if n.Dot(inside) > 0 {
				n = n.Mul(-1)
			}
			return solid.Through(a, n)
		}
		return box.Cut(plane(from, solid.V(1, 0, 0))).Cut(plane(to, solid.V(-1, 0, 0)))
	}
	past := func(mm float64) func(y, depth float64) float64 {
		return func(y, depth float64) float64 { return s.At(y, depth) - mm }
	}
	outer, frame := m.Cheeks()
	lower, upper := m.Edges()
	p := solid.Part{Pieces: []solid.Solid{
		piece(past(0), func(float64, float64) float64 { return far }, [4]float64{0, 0, m.Depth, m.Depth}, 0, m.Width),
		piece(past(m.Length()), past(0), [4]float64{lower, lower, upper, upper}, outer, frame),
	}}
	if m.Haunch != joint.NoHaunch {
		slope := past(m.Stub())
		if m.Haunch == joint.SlopingHaunch {
			slope = func(y, depth float64) float64 {
				return s.At(y, depth) - m.Stub()*(m.Depth-y)/(m.Depth-upper)
			}
		}
		p.Pieces = append(p.Pieces, piece(slope, past(0), [4]float64{upper, upper, m.Depth, m.Depth}, outer, frame))
	}
	return p
}

// The rail put together in the room from its set-out and the leg, chopped by the
// strip of its rail side, meet without sharing wood, and the tenon fills the mortise.
func TestMortiseTakesTheTenon(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		m, c := someMortise(t)
		m.Haunch = joint.NoHaunch
		legBox := solid.Prism([]solid.Vec{
			c.legFrame(m, geometry.Pt(-200, 0), 0), c.legFrame(m, geometry.Pt(900, 0), 0),
			c.legFrame(m, geometry.Pt(900, m.LegWidth), 0), c.legFrame(m, geometry.Pt(-200, m.LegWidth), 0),
		}, c.legFrame(m, geometry.Pt(0, 0), m.Leg).Sub(c.legFrame(m, geometry.Pt(0, 0), 0)))
		var mouth []solid.Vec
		for _, p := range m.Mouth(m.Edges()) {
			mouth = append(mouth, c.legFrame(m, p, 0))
		}
		first := m.Mouth(m.Edges())[0]
		into := c.legFrame(m, m.Floor(first), m.IntoLeg()).Sub(mouth[0])
		hole := solid.Prism(mouth, into)
		leg := solid.Stock("leg", legBox)
		bored := leg.Subtract(hole)
		rail := c.rail(m)
		shared := 0.0
		for _, a := range rail.Pieces {
			for _, b := range bored.Pieces {
				shared += a.Intersect(b).Volume()
			}
		}
		if shared > 1e-5*m.Length() {
			t.Errorf("%+v: rail and leg share %v mm³", m, shared)
		}
		if got, want := leg.Volume()-bored.Volume(), rail.Pieces[1].Volume(); math.Abs(got-want) > 1e-7*want {
			t.Errorf("%+v: the mortise takes %v mm³, the tenon has %v", m, got, want)
		}
	})
}

// The outline of the tenon is what its solids show from the side.
func TestMortiseProfile(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		m, c := someMortise(t)
		outer, frame := m.Cheeks()
		area := geometry.Area(m.Profile(m.Length()))
		volume := c.rail(m).Volume() - c.rail(m).Pieces[0].Volume()
		if want := math.Abs(area) * (frame - outer); math.Abs(volume-want) > 1e-7*want {
			t.Errorf("%+v: tenon of %v mm³, by its outline %v", m, volume, want)
		}
	})
}

// By hand: leg splayed so that tan is 3/4, cos 4/5; rail 70 deep, 10 below the head.
func TestMortiseByHand(t *testing.T) {
	m := goodMortise()
	m.Splay, m.Width = math.Atan(0.75), 24
	m.LowerCut, m.UpperCut = 8, 12
	foot, outer := m.Lean()
	for _, c := range []struct {
		name      string
		got, want float64
	}{
		{"thickness of the tenon, a third (Noyes, Handwork in Wood, 1910)", m.Third(), 8},
		{"shoulder at the top", m.Shoulder().At(70, 0), 52.5},
		{"mortise along the leg, 50/cos", m.LongSide(), 62.5},
		{"its upper end, 10 + 12/cos", m.Mouth(m.Edges())[2].X, 25},
		{"its sides, inset 5 and cheek 8", m.Mouth(m.Edges())[0].Y, 13},
		{"its width", m.Across(), 8},
		{"depth, 28·cos", m.IntoLeg(), 22.4},
		{"wood behind", m.Behind(), 17.6},
		{"lean to the foot", foot, math.Atan(0.75)},
		{"lean to the outer side", outer, 0},
		{"ends", m.EndOffSquare(), 0},
		{"glue, two cheeks of 28 × 50", m.GlueArea(), 2800},
	} {
		if !agree(c.got, c.want) {
			t.Errorf("%s: %v, want %v", c.name, c.got, c.want)
		}
	}
	m.Long = 0
	if !m.Through() || !agree(m.Length(), 50) || m.Behind() != 0 {
		t.Errorf("through tenon %v long, want 50", m.Length())
	}
}

func TestMortiseCheck(t *testing.T) {
	refuses(t, goodMortise(), []refused[joint.Mortise]{
		{"mortise.width", "> 0 mm", func(m *joint.Mortise) { m.Width = 0 }},
		{"mortise.depth", "≤ 1000 mm", func(m *joint.Mortise) { m.Depth = 1001 }},
		{"mortise.leg", "finite", func(m *joint.Mortise) { m.Leg = math.NaN() }},
		{"mortise.leg-width", "> 0 mm", func(m *joint.Mortise) { m.LegWidth = -1 }},
		{"mortise.splay", "≤ 60°", func(m *joint.Mortise) { m.Splay = measure.Radians(61) }},
		{"mortise.rake", "≥ 0°", func(m *joint.Mortise) { m.Rake = -0.1 }},
		{"mortise.turn", "≥ -60°", func(m *joint.Mortise) { m.Turn = measure.Radians(-61) }},
		{"mortise.edge", "≤ 60°", func(m *joint.Mortise) { m.Turn, m.Rake = measure.Radians(60), measure.Radians(30) }},
		{"mortise.tenon", "< mortise.width, 22 mm", func(m *joint.Mortise) { m.Tenon = 22 }},
		{"mortise.length", "≥ 0 mm", func(m *joint.Mortise) { m.Long = -1 }},
		{"mortise.into-leg", "≤ mortise.leg, 40 mm", func(m *joint.Mortise) { m.Long = 41 }},
		{"mortise.tenon-width", "> 0 mm", func(m *joint.Mortise) { m.LowerCut, m.UpperCut = 35, 35 }},
		{"mortise.haunch", "≤ 2", func(m *joint.Mortise) { m.Haunch = 3 }},
		{"mortise.haunch-length", "< mortise.length, 28 mm", func(m *joint.Mortise) { m.Haunch, m.HaunchLong = joint.SquareHaunch, 28 }},
		{"mortise.outer-wood", "> 0 mm", func(m *joint.Mortise) { m.Inset, m.Tenon, m.Turn = 0, 21, 0.5 }},
		{"mortise.frame-wood", "> 0 mm", func(m *joint.Mortise) { m.Inset = 30 }},
		{"mortise.above", "> 0 mm", func(m *joint.Mortise) { m.FromHead = 0 }},
		{"mortise.inset", "≥ 0 mm", func(m *joint.Mortise) { m.Inset = -1 }},
		{"mortise.from-head", "≥ 0 mm", func(m *joint.Mortise) { m.FromHead = -1 }},
	})
}
