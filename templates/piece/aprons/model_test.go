package aprons

import (
	"errors"
	"math"
	"strings"
	"testing"

	"rodsheet/geometry/joint"
	"rodsheet/geometry/measure"
	"rodsheet/geometry/solid"
	"rodsheet/templates/piece/design"
	"rodsheet/templates/piece/internal/piecetest"
	"rodsheet/templates/piece/kind"
)

// Parts meet and do not share wood, legs stand on one plane under one level head.
func TestSolidsMeet(t *testing.T) {
	variants(t, func(t *testing.T, m Model) {
		parts := m.finished()
		for i, a := range parts {
			if v := a.Volume(); v < 1000 {
				t.Errorf("%s %d: %.1f mm³", a.Name, i, v)
			}
			for j, b := range parts[:i] {
				for _, c := range solid.Clash(a, b) {
					t.Errorf("%s %d and %s %d share %.3f mm³", a.Name, i, b.Name, j, c.Volume())
				}
			}
		}
		for i := range m.legs {
			if b := parts[i].Bounds(); math.Abs(b.Min.Z) > 1e-9 || math.Abs(b.Max.Z-m.Head) > 1e-9 {
				t.Errorf("leg %d: from %g to %g", i, b.Min.Z, b.Max.Z)
			}
		}
	})
}

// near reports whether two angles or lengths are the same to what the geometry promises.
func near(a, b float64) bool { return math.Abs(a-b) <= 1e-9*math.Max(1, math.Abs(b)) }

// facing returns the faces of a part that look in one direction.
func facing(p solid.Part, n solid.Vec) []solid.Face {
	var out []solid.Face
	for _, s := range p.Pieces {
		for _, f := range s.Faces() {
			if f.Plane.N.Distance(n) < 1e-9 {
				out = append(out, f)
			}
		}
	}
	return out
}

// The shoulder lines of solids run as the closed form says: off square on the outer side
// by the lean of the leg in that side, through the thickness by what two leans make.
// For legs that look to the room and rails that lean with them, with λ the lean of the
// rail and σ that of the leg along it, these are tan σ·cos λ and tan σ·sin λ.
func TestShouldersFromSolids(t *testing.T) {
	variants(t, func(t *testing.T, m Model) {
		for _, row := range m.Rows {
			for _, r := range row.Rails {
				body := solid.Stock("", r.body())
				for end, e := range r.Ends {
					faces := facing(body, e.shoulder.N)
					if len(faces) != 1 || len(faces[0].Corners) != 4 {
						t.Fatalf("%v %d: %d shoulders", row.Kind, r.Side, len(faces))
					}
					for _, p := range faces[0].Corners {
						q := p.Sub(e.Mouth[0])
						depth, up := q.Dot(r.In), q.Dot(r.Up)
						if got, want := q.Dot(r.away(end)), e.Joint.At(up, depth); !near(got, want) {
							t.Errorf("%v %d: a corner stands at %.12g, the joint says %.12g", row.Kind, r.Side, got, want)
						}
					}
				}
			}
		}
	})
	m := newModel(table())
	for i, e := range m.Rows[0].Rails {
		lean, along := m.sides[i].lean, m.sides[(i+1)%4].lean
		want := [2]float64{math.Atan(math.Tan(along) * math.Cos(lean)), -math.Atan(math.Tan(along) * math.Sin(lean))}
		for _, end := range e.Ends {
			if !near(end.Joint.Face, want[0]) || !near(end.Joint.Edge, want[1]) {
				t.Errorf("side %d: got %v, want %v", i, end.Joint, want)
			}
		}
	}
}

// The leg leans as rake and splay make it, its arris is as long as the true length, and
// its section square to it is the diamond, each read from the solid.
func TestLegFromSolids(t *testing.T) {
	m := newModel(table())
	for i, l := range m.legs {
		c := compound(m, i)
		rake, splay := c.Rake, c.Splay
		if i%2 == 1 { // its own side is the right or the left one
			rake, splay = splay, rake
		}
		f := m.Design.Frame.Legs
		if !near(rake, f.Rake) || !near(splay, f.Splay) {
			t.Errorf("leg %d: rake %g, splay %g", i, rake, splay)
		}
		if !near(l.length(), c.TrueLength(m.Head)) {
			t.Errorf("leg %d: %g long, want %g", i, l.length(), c.TrueLength(m.Head))
		}
		resultant, _ := m.Lean(i)
		if !near(resultant, c.Resultant()) {
			t.Errorf("leg %d leans %g, want %g", i, resultant, c.Resultant())
		}
		acute, obtuse := c.Diamond()
		section := l.Section()
		for k, p := range section {
			before, after := section[(k+3)%4].Sub(p), section[(k+1)%4].Sub(p)
			angle := math.Acos(before.Unit().Dot(after.Unit()))
			want := obtuse
			if k%2 == 1 {
				want = acute
			}
			if !near(angle, want) {
				t.Errorf("leg %d, corner %d: %g, want %g", i, k, angle, want)
			}
		}
	}
}

// Without lean the table is square: every angle a right one, each rail a box.
func TestUprightIsTheSquareTable(t *testing.T) {
	d := table()
	d.Frame.Legs.Rake, d.Frame.Legs.Splay, d.Frame.Legs.Foot, d.Frame.Width = 0, 0, 0, d.Frame.Length
	m := newModel(d)
	for i, l := range m.legs {
		b := l.at
		want := solid.Box(b, b.Add(solid.V(math.Copysign(40, -b.X), math.Copysign(40, -b.Y), -m.Head)))
		if got := block(l.planes()...); math.Abs(got.Volume()-want.Volume()) > 1e-6 || math.Abs(got.Intersect(want).Volume()-want.Volume()) > 1e-6 {
			t.Errorf("leg %d is no square post", i)
		}
	}
	for _, r := range m.Rows[0].Rails {
		if got, want := r.body().Volume(), (520-80.0)*90*22; !near(got, want) {
			t.Errorf("apron of %g mm³, want %g", got, want)
		}
		for _, e := range r.Ends {
			if e.Joint.Face != 0 || e.Joint.Edge != 0 {
				t.Errorf("shoulder %v", e.Joint)
			}
		}
	}
}

// The two hands of a rectangle are mirror images, and so are the ends of each rail.
func TestHandsAreMirrorImages(t *testing.T) {
	variants(t, func(t *testing.T, m Model) {
		if m.Design.Frame.Shape != 0 {
			return
		}
		mirror := solid.Mirror(solid.Plane{N: solid.V(1, 0, 0)})
		same := func(what string, a, b solid.Part) {
			shared := 0.0
			for _, s := range solid.Clash(a, b) {
				shared += s.Volume()
			}
			if v := a.Volume(); math.Abs(v-b.Volume()) > 1e-3 || math.Abs(v-shared) > 1e-1 {
				t.Errorf("%s: %.6f, %.6f and %.6f mm³", what, v, b.Volume(), shared)
			}
		}
		same("legs", m.Leg(0).Transform(mirror), m.Leg(1))
		for _, row := range m.Rows {
			front := row.Rails[0].Part("")
			same("rail", front, front.Transform(mirror))
		}
	})
}

// What begins a design can be built as it stands, whatever the sides and the unit.
func TestStartsCanBeBuilt(t *testing.T) {
	for sides := design.FrameFewest; sides <= design.FrameMost; sides++ {
		for _, u := range []measure.Unit{measure.Millimetre, measure.Inch} {
			text, err := design.Start(design.ApronsKind, sides, u)
			if err != nil {
				t.Fatal(err)
			}
			file, err := design.Read(text, piecetest.Faults(judge))
			if err != nil {
				t.Fatalf("%d sides: %v", sides, err)
			}
			var all []kind.Check
			for _, fixing := range []design.FixingKind{design.Buttons, design.Screws} {
				d := file.Sizes[0]
				d.Frame.Top.Fixing = fixing
				m, err := piecetest.Solved(judge(d, nil))
				if err != nil {
					t.Fatal(err)
				}
				all = append(all, m.Checks()...)
			}
			for _, c := range all {
				// Three aprons meet at 60°, eight legs have corners of 135°: no saw tilts so
				// far, and the check says so.
				if c.Grade != kind.Pass && !(c.ID == "aprons.tilt" && (sides == 3 || sides == 8)) {
					t.Errorf("%d sides in %v: %s: %s", sides, u, c.Name, c.Words)
				}
			}
		}
	}
}

// Every figure by itself at nothing, below, beyond and far beyond: refused by a
// *measure.BoundError, or a table of wood. What is not finite is always refused.
func TestEveryFigureAtItsLimits(t *testing.T) {
	values := []float64{
		0, -1, 1, 2, 3, 7, 1e-300, 1e-9, 0.5, 200, 1000, 9999, 10000, 10001, 1e300, -1e300, -0.2, 0.7, math.NaN(), math.Inf(1), math.Inf(-1),
	}
	if testing.Short() {
		values = []float64{0, -1, 3, 1e-9, 200, 10001, math.NaN()}
	}
	bases := []func() design.Design{table, func() design.Design {
		d := table()
		d.Frame.Shape, d.Frame.Sides, d.Frame.Legs.Splay, d.Frame.Legs.Faces, d.Frame.Aprons.Inset = design.RegularFrame, 5, 0, design.ToSightline, 8
		d.Frame.Stretchers = design.Rail{Depth: 30, Thickness: 18, Height: 120, Inset: 3, Long: 12}
		d.Frame.Aprons.Arch, d.Frame.Aprons.Plumb = 15, true
		return d
	}}
	accepted := 0
	for b, base := range bases {
		d := base()
		for k := range piecetest.Knobs(&d) {
			for _, v := range values {
				d := base()
				knob := piecetest.Knobs(&d)[k]
				if !strings.HasPrefix(knob.Name, ".Frame.") {
					continue
				}
				knob.Set(v)
				m, err := piecetest.Solved(judge(d, nil))
				var bound *measure.BoundError
				switch {
				case err != nil && !errors.As(err, &bound):
					t.Errorf("base %d, %s = %v: %v", b, knob.Name, v, err)
				case err != nil:
					continue
				}
				accepted++
				for _, c := range m.Checks() {
					if c.Figure != "" && !c.Value.Finite() {
						t.Errorf("base %d, %s = %v: %s is %v", b, knob.Name, v, c.ID, c.Value)
					}
				}
				for _, g := range m.Groups() {
					for _, f := range g.Figures {
						if !f.Value.Finite() {
							t.Errorf("base %d, %s = %v: %s is %v", b, knob.Name, v, f.ID, f.Value)
						}
					}
				}
				m.Cuts()
			}
		}
	}
	if accepted < 100 {
		t.Errorf("only %d designs accepted", accepted)
	}
}

// compound returns the lean of leg i as seen along the side before it and along its
// own: tan of its rake and of its splay. For a rectangle these are those of the design.
func compound(m Model, i int) joint.Compound {
	a := m.legs[i].along
	in := func(s side) float64 { return math.Atan(flat(s.out).Dot(a) / -a.Z) }
	return joint.Compound{Rake: in(m.sides[i]), Splay: in(m.sides[m.before(i)])}
}

// A leg whose slots are open at the head slides down off both its aprons along its own
// length; one with mortises does not, nor one with plumb aprons.
func TestBridledLegsSlide(t *testing.T) {
	variants(t, func(t *testing.T, m Model) {
		free := true
		for i, l := range m.legs {
			leg := m.Leg(i).Transform(solid.Translate(l.along.Mul(m.Design.Frame.Aprons.Depth / 2)))
			for _, r := range []Rail{m.Rows[0].Rails[i], m.Rows[0].Rails[m.before(i)]} {
				free = free && len(solid.Clash(leg, r.Part(""))) == 0
			}
		}
		if len(m.Rows) == 1 && free != m.slides() {
			t.Errorf("slides %v, said to %v", free, m.slides())
		}
	})
}
