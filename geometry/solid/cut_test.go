package solid

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"rodsheet/geometry"
)

// The two sides of a cut fill what was cut.
func TestCutAddsUp(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s, p := solids.Draw(t, "s"), planes.Draw(t, "p")
		in, out := s.Cut(p), s.Cut(p.Flip())
		upTo(t, "volume", in.Volume()+out.Volume(), s.Volume(), slack(s))
		sound(t, in)
		sound(t, out)
		upTo(t, "cut twice", in.Cut(p).Volume(), in.Volume(), slack(s))
		long := Plane{p.N.Mul(-7), -7 * p.D}
		sound(t, s.Cut(long))
		upTo(t, "long normal", s.Cut(long).Volume(), out.Volume(), slack(s))
	})
}

func TestCutTolerance(t *testing.T) {
	s := Box(V(0, 0, 0), V(1000, 100, 100))
	tests := []struct {
		at, want float64 // where x ≤ at cuts, and the length left
	}{
		{1001, 1000}, {1000, 1000}, {1000 - 0.5e-8, 1000}, {1000 - 2e-8, 1000 - 2e-8},
		{250, 250}, {2e-8, 2e-8}, {0.5e-8, 0}, {0, 0}, {-1, 0},
	}
	for _, tt := range tests {
		got := s.Cut(Plane{V(1, 0, 0), tt.at})
		near(t, "length", got.Bounds().Max.X, tt.want, 1e-12)
		if got.Empty() != (tt.want == 0) {
			t.Errorf("cut at %.9f: empty %v", tt.at, got.Empty())
		}
	}
}

// A plane through corners leaves no slivers: half a cube is a wedge.
func TestCutThroughCorners(t *testing.T) {
	s := Box(V(0, 0, 0), V(10, 10, 10))
	wedge := s.Cut(Through(V(10, 0, 0), V(1, 1, 0)))
	if got := len(wedge.Faces()); got != 5 {
		t.Errorf("wedge: got %d faces, want 5", got)
	}
	corner := s.Cut(Through(V(10, 0, 0), V(1, 1, 1)))
	if got := len(corner.Faces()); got != 4 {
		t.Errorf("corner: got %d faces, want 4", got)
	}
	near(t, "corner", corner.Volume(), 1000.0/6, 1e-12)
}

// A chamfer narrower than the tolerance lies all on a plane that runs along
// it: the cut must not keep it as a face.
func TestCutAlongSliver(t *testing.T) {
	s := Box(V(0, 0, 0), V(1000, 100, 50))
	arris, diagonal := V(1000, 100, 0), V(1, 1, 0)
	s = s.Cut(Through(arris.Sub(diagonal.Unit().Mul(1.04e-8)), diagonal))
	if got := len(s.Faces()); got != 7 {
		t.Fatalf("chamfered: got %d faces, want 7", got)
	}
	half := s.Cut(Through(arris.Sub(diagonal.Unit().Mul(1.04e-8)), V(2, -1, 0)))
	sound(t, half)
	near(t, "volume", half.Volume(), 950*100*50+50*100*50/2, 1e-9)
}

// A bevelled end: both level cuts of a leaning leg, length H/cos α each side.
func TestCutLeg(t *testing.T) {
	const b, h, splay = 45.0, 430.0, 12 * math.Pi / 180
	leg := Box(V(0, 0, -200), V(b, 30, 800)).Transform(RotateY(splay))
	leg = leg.Cut(Plane{V(0, 0, 1), h}).Cut(Plane{V(0, 0, -1), 0})
	near(t, "volume", leg.Volume(), b*30*h/math.Cos(splay), 1e-12)
	for _, f := range leg.Faces() {
		if math.Abs(f.Plane.N.Z) > 0.999999 {
			near(t, "end on the level", around(f.Corners).Norm()/2, 30*b/math.Cos(splay), 1e-12)
		}
	}
}

func TestIntersectBoxes(t *testing.T) {
	share := func(a, b, c, d float64) float64 { return math.Max(0, math.Min(b, d)-math.Max(a, c)) }
	rapid.Check(t, func(t *rapid.T) {
		s, u := boxes.Draw(t, "s"), boxes.Draw(t, "u")
		a, b := s.Bounds(), u.Bounds()
		want := share(a.Min.X, a.Max.X, b.Min.X, b.Max.X) *
			share(a.Min.Y, a.Max.Y, b.Min.Y, b.Max.Y) *
			share(a.Min.Z, a.Max.Z, b.Min.Z, b.Max.Z)
		upTo(t, "shared", s.Intersect(u).Volume(), want, slack(s, u))
		if (want > 0) && !a.Overlaps(b) {
			t.Errorf("extents %v and %v share %.3f but do not overlap", a, b, want)
		}
	})
}

// Boxes turned about z share a plan polygon times a height. The polygon comes
// from clipping in the plane, and a last move takes both off the axes.
func TestIntersectTurnedBoxes(t *testing.T) {
	small := rapid.Float64Range(-150, 150)
	rapid.Check(t, func(t *rapid.T) {
		var plan [2][]geometry.Point
		var lo, hi [2]float64
		var s [2]Solid
		m := moves.Draw(t, "m")
		for i := range s {
			w, d := lengths.Draw(t, "w"), lengths.Draw(t, "d")
			place := geometry.Rotate(turns.Draw(t, "turn")).
				Then(geometry.Translate(geometry.Pt(small.Draw(t, "x"), small.Draw(t, "y"))))
			plan[i] = place.ApplyAll(geometry.Box(-w/2, -d/2, w/2, d/2).Corners())
			lo[i] = small.Draw(t, "z")
			hi[i] = lo[i] + lengths.Draw(t, "h")
			s[i] = Prism(Lift(plan[i], lo[i]), V(0, 0, hi[i]-lo[i])).Transform(m)
		}
		height := math.Max(0, math.Min(hi[0], hi[1])-math.Max(lo[0], lo[1]))
		want := geometry.Area(clipPlan(plan[0], plan[1])) * height
		upTo(t, "shared", s[0].Intersect(s[1]).Volume(), want, slack(s[:]...))
	})
}

// clipPlan returns the part of a convex polygon inside another; both run
// counter-clockwise.
func clipPlan(polygon, by []geometry.Point) []geometry.Point {
	for i, a := range by {
		e := by[(i+1)%len(by)].Sub(a)
		var out []geometry.Point
		for j, p := range polygon {
			q := polygon[(j+1)%len(polygon)]
			hp, hq := e.Cross(p.Sub(a)), e.Cross(q.Sub(a))
			if hp >= 0 {
				out = append(out, p)
			}
			if hp*hq < 0 {
				out = append(out, p.Lerp(q, hp/(hp-hq)))
			}
		}
		polygon = out
	}
	return polygon
}

func TestIntersectLaws(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s, u := solids.Draw(t, "s"), solids.Draw(t, "u")
		both := s.Intersect(u)
		sound(t, both)
		upTo(t, "other way round", u.Intersect(s).Volume(), both.Volume(), slack(s, u))
		upTo(t, "with itself", s.Intersect(s).Volume(), s.Volume(), slack(s))
	})
}

// What is taken and what is left fill s, and no two pieces share wood.
func TestSubtract(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s, u := solids.Draw(t, "s"), solids.Draw(t, "u")
		if rapid.Bool().Draw(t, "pierced") {
			u = u.Transform(Translate(s.Centroid().Sub(u.Centroid())))
		}
		both, left := s.Intersect(u), s.Subtract(u)
		sum := both.Volume()
		for i, p := range left {
			sound(t, p)
			sum += p.Volume()
			upTo(t, "left of u", p.Intersect(u).Volume(), 0, slack(s))
			for _, q := range left[:i] {
				upTo(t, "shared by two pieces", p.Intersect(q).Volume(), 0, slack(s))
			}
		}
		upTo(t, "sum", sum, s.Volume(), 2*slack(s))
		if both.Empty() && len(left) != 1 {
			t.Errorf("nothing taken, yet %d pieces", len(left))
		}
	})
}
