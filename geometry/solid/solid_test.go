package solid

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"
	"pgregory.net/rapid"

	"rodsheet/geometry"
	"rodsheet/geometry/lists"
)

// near fails unless got is want within a share rel of the larger of want and 1.
func near(t rapid.TB, what string, got, want, rel float64) {
	t.Helper()
	if !(math.Abs(got-want) <= rel*math.Max(1, math.Abs(want))) {
		t.Errorf("%s: got %.12f, want %.12f", what, got, want)
	}
}

// slack is the volume in mm³ that cutting the given solids may lose or leave:
// the tolerance of a cut on all of their surface.
func slack(solids ...Solid) (sum float64) {
	for _, s := range solids {
		e := s.Bounds()
		sum += area(s) * Tolerance * max(e.Min.largest(), e.Max.largest())
	}
	return sum
}

// area returns the area of all faces in mm².
func area(s Solid) (sum float64) {
	for _, f := range s.faces {
		sum += around(f.Corners).Norm() / 2
	}
	return sum
}

// convex reports whether no corner stands outside a face by more than the
// tolerance of a cut: false for a prism on a base with a re-entrant corner.
func convex(s Solid) bool {
	for _, f := range s.faces {
		if _, hi, slack := s.span(f.Plane); hi > slack {
			return false
		}
	}
	return true
}

// upTo fails unless got is want within the absolute error allowed.
func upTo(t rapid.TB, what string, got, want, allowed float64) {
	t.Helper()
	if !(math.Abs(got-want) <= allowed) {
		t.Errorf("%s: got %.12f, want %.12f within %.12f", what, got, want, allowed)
	}
}

func nearVec(t rapid.TB, what string, got, want Vec) {
	t.Helper()
	if !(got.Distance(want) <= 1e-9*math.Max(1, want.Norm())) {
		t.Errorf("%s: got %.9f, want %.9f", what, got, want)
	}
}

var (
	lengths = rapid.Float64Range(1, 500)
	places  = rapid.Float64Range(-500, 500)
	turns   = rapid.Float64Range(-math.Pi, math.Pi)
	vecs    = rapid.Custom(func(t *rapid.T) Vec {
		return V(places.Draw(t, "x"), places.Draw(t, "y"), places.Draw(t, "z"))
	})
	axes = rapid.Custom(func(t *rapid.T) Vec {
		return Rotate(V(1, 0, 0), turns.Draw(t, "a")).Then(RotateZ(turns.Draw(t, "b"))).Apply(V(0, 0, 1))
	})
	planes = rapid.Custom(func(t *rapid.T) Plane { return Through(vecs.Draw(t, "at"), axes.Draw(t, "n")) })
	moves  = rapid.Custom(func(t *rapid.T) Affine3 {
		return Rotate(axes.Draw(t, "axis"), turns.Draw(t, "turn")).Then(Translate(vecs.Draw(t, "move")))
	})
	boxes = rapid.Custom(func(t *rapid.T) Solid {
		a := vecs.Draw(t, "corner")
		return Box(a, a.Add(V(lengths.Draw(t, "dx"), lengths.Draw(t, "dy"), lengths.Draw(t, "dz"))))
	})
	// solids are leaning boxes with up to three corners and edges cut away.
	solids = rapid.Custom(func(t *rapid.T) Solid {
		s := boxes.Draw(t, "box").Transform(moves.Draw(t, "move"))
		for range rapid.IntRange(0, 3).Draw(t, "cuts") {
			c := s.Centroid()
			out := axes.Draw(t, "out")
			s = s.Cut(Through(c.Add(out.Mul(rapid.Float64Range(0, 100).Draw(t, "depth"))), out))
		}
		return s
	})
)

// signs returns the images of v under all changes of sign that change it.
func signs(v Vec) []Vec {
	out := []Vec{v}
	for _, axis := range []Vec{V(1, 0, 0), V(0, 1, 0), V(0, 0, 1)} {
		for _, w := range out {
			if k := w.Dot(axis); k != 0 {
				out = append(out, w.Sub(axis.Mul(2*k)))
			}
		}
	}
	return out
}

func cyclic(v Vec) []Vec {
	return append(append(signs(v), signs(V(v.Y, v.Z, v.X))...), signs(V(v.Z, v.X, v.Y))...)
}

// Volumes for edge 1 and dihedral angles: Coxeter, Regular Polytopes,
// Table I, from memory.
func TestPlatonicSolids(t *testing.T) {
	phi := (1 + math.Sqrt(5)) / 2
	tests := []struct {
		name         string
		normals      []Vec
		faces, edges int
		volume       float64 // for edge 1
		dihedral     float64 // degrees
	}{
		{"tetrahedron", []Vec{V(1, 1, 1), V(1, -1, -1), V(-1, 1, -1), V(-1, -1, 1)}, 4, 6,
			math.Sqrt2 / 12, 70.528779366},
		{"cube", cyclic(V(1, 0, 0)), 6, 12, 1, 90},
		{"octahedron", signs(V(1, 1, 1)), 8, 12, math.Sqrt2 / 3, 109.471220634},
		{"dodecahedron", cyclic(V(0, 1, phi)), 12, 30, (15 + 7*math.Sqrt(5)) / 4, 116.565051177},
		{"icosahedron", append(signs(V(1, 1, 1)), cyclic(V(0, 1/phi, phi))...), 20, 30,
			5 * (3 + math.Sqrt(5)) / 12, 138.189685104},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			s := Box(V(-200, -200, -200), V(200, 200, 200))
			for _, n := range tt.normals {
				s = s.Cut(Through(n.Unit().Mul(30), n))
			}
			edges := s.Edges()
			if len(s.Faces()) != tt.faces || len(edges) != tt.edges {
				t.Fatalf("got %d faces and %d edges, want %d and %d", len(s.Faces()), len(edges), tt.faces, tt.edges)
			}
			a := edges[0].A.Distance(edges[0].B)
			for _, e := range edges {
				near(t, "edge", e.A.Distance(e.B), a, 1e-11)
				near(t, "dihedral", dihedral(s, e), tt.dihedral, 1e-9)
			}
			near(t, "volume", s.Volume(), tt.volume*a*a*a, 1e-10)
			// Every face is 30 mm from the centre, so the pyramids on them fill s.
			near(t, "area", area(s), 3*s.Volume()/30, 1e-10)
			near(t, "centroid", s.Centroid().Norm(), 0, 1e-10)
		})
	}
}

// dihedral returns the inner angle in degrees between the two faces at e.
func dihedral(s Solid, e Edge) float64 {
	var n []r3.Vec
	for _, f := range s.Faces() {
		p := f.Plane
		if math.Abs(p.Height(e.A)) < 1e-9 && math.Abs(p.Height(e.B)) < 1e-9 {
			n = append(n, r3.Vec(p.N))
		}
	}
	if len(n) != 2 {
		return math.NaN()
	}
	return 180 - math.Acos(r3.Cos(n[0], n[1]))*180/math.Pi
}

func TestBox(t *testing.T) {
	s := Box(V(40, 0, 5), V(10, 20, 105))
	want := Extent{V(10, 0, 5), V(40, 20, 105)}
	if got := s.Bounds(); got != want {
		t.Errorf("bounds: got %v, want %v", got, want)
	}
	near(t, "volume", s.Volume(), 30*20*100, 1e-15)
	near(t, "area", area(s), 2*(30*20+20*100+30*100), 1e-15)
	if got, want := s.Centroid(), V(25, 10, 55); !(got.Distance(want) <= 1e-12) {
		t.Errorf("centroid: got %v, want %v", got, want)
	}
	for _, f := range s.Faces() {
		if p := f.Plane; p.Height(s.Centroid()) >= 0 {
			t.Errorf("plane %v does not face outward", p)
		}
	}
}

func TestOverlaps(t *testing.T) {
	e := Extent{V(0, 0, 0), V(10, 10, 10)}
	for _, axis := range []Vec{V(1, 0, 0), V(0, 1, 0), V(0, 0, 1)} {
		for _, tt := range []struct {
			by   float64
			want bool
		}{{0, true}, {9, true}, {10, true}, {11, false}} {
			f := Extent{e.Min.Add(axis.Mul(tt.by)), e.Max.Add(axis.Mul(tt.by))}
			if e.Overlaps(f) != tt.want || f.Overlaps(e) != tt.want {
				t.Errorf("moved by %.0f along %.0f: got %v and %v, want %v",
					tt.by, axis, e.Overlaps(f), f.Overlaps(e), tt.want)
			}
		}
	}
}

func TestEmpty(t *testing.T) {
	box := Box(V(0, 0, 0), V(1, 1, 1))
	for name, s := range map[string]Solid{
		"zero value":     {},
		"flat box":       Box(V(0, 0, 0), V(1, 1, 0)),
		"base on a line": Prism([]Vec{V(0, 0, 0), V(1, 0, 0), V(2, 0, 0)}, V(0, 0, 1)),
		"no base":        Prism(nil, V(0, 0, 1)),
		"flattened":      box.Transform(Affine3{X: V(1, 0, 0), Y: V(0, 1, 0)}),
		"nothing inside": box.Cut(Plane{V(1, 0, 0), -1}),
		"cut with empty": box.Intersect(Solid{}),
		"empty cut":      Solid{}.Intersect(box),
	} {
		if !s.Empty() || s.Volume() != 0 || area(s) != 0 || s.Bounds() != (Extent{}) {
			t.Errorf("%s: not empty", name)
		}
		if !math.IsNaN(s.Centroid().X) {
			t.Errorf("%s: has a centroid", name)
		}
	}
	if got := len(Solid{}.Subtract(box)); got != 0 {
		t.Errorf("empty less box: got %d pieces, want none", got)
	}
	if got := box.Subtract(Solid{}); len(got) != 1 || got[0].Volume() != 1 {
		t.Errorf("box less empty: got %v, want the box", got)
	}
}

func TestPrism(t *testing.T) {
	hexagon := make([]Vec, 6)
	for i := range hexagon {
		p := geometry.Polar(40, float64(i)*math.Pi/3)
		hexagon[i] = V(p.X, p.Y, 3)
	}
	for _, up := range []Vec{V(0, 0, 10), V(0, 0, -10), V(7, -4, 10)} { // Cavalieri: leaning costs nothing
		s := Prism(hexagon, up)
		near(t, "volume", s.Volume(), 1.5*math.Sqrt(3)*40*40*10, 1e-12)
		if got, want := s.Centroid(), V(0, 0, 3).Add(up.Mul(0.5)); !(got.Distance(want) <= 1e-10) {
			t.Errorf("centroid: got %v, want %v", got, want)
		}
		if !convex(s) {
			t.Error("not convex")
		}
	}
	// A truncated pyramid between areas A and B: h/3·(A + √(A·B) + B), here B = A/4.
	half := lists.Map(hexagon, func(p Vec) Vec { return V(p.X/2, p.Y/2, 15) })
	for _, s := range []Solid{Frustum(hexagon, half), Frustum(half, hexagon)} {
		near(t, "volume of a frustum", s.Volume(), 12.0/3*1.75*1.5*math.Sqrt(3)*40*40, 1e-12)
		if !convex(s) {
			t.Error("a frustum is not convex")
		}
	}
	twice := Prism(append(hexagon, hexagon[5], hexagon[0]), V(0, 0, 10))
	if got := len(twice.Faces()); got != 8 {
		t.Errorf("corners given twice: got %d faces, want 8", got)
	}
	bent := Lift([]geometry.Point{{X: 0, Y: 0}, {X: 4, Y: 0}, {X: 4, Y: 4}, {X: 3, Y: 1}}, 0)
	if convex(Prism(bent, V(0, 0, 1))) {
		t.Error("a base with a re-entrant corner passes for convex")
	}
}

func TestTransform(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s, m := solids.Draw(t, "s"), moves.Draw(t, "m")
		if rapid.Bool().Draw(t, "mirrored") {
			m = m.Then(Mirror(planes.Draw(t, "mirror")))
		}
		got := s.Transform(m)
		near(t, "volume", got.Volume(), s.Volume(), 1e-9)
		near(t, "area", area(got), area(s), 1e-9)
		nearVec(t, "centroid", got.Centroid(), m.Apply(s.Centroid()))
		sound(t, got)

		skew := Affine3{X: V(2, 0, 1), Y: V(0.5, -1, 0), Z: V(0, 0.25, 1)}
		got = s.Transform(skew)
		near(t, "skewed volume", got.Volume(), s.Volume()*math.Abs(skew.Det()), 1e-9)
		sound(t, got)
	})
}

func TestMirror(t *testing.T) {
	m := Mirror(Plane{V(2, 0, 0), 10}) // x = 5
	if got, want := m.Apply(V(1, 2, 3)), V(9, 2, 3); got != want {
		t.Errorf("got %v, want %v", got, want)
	}
	rapid.Check(t, func(t *rapid.T) {
		m, v := Mirror(planes.Draw(t, "p")), vecs.Draw(t, "v")
		near(t, "det", m.Det(), -1, 1e-12)
		nearVec(t, "twice", m.Then(m).Apply(v), v)
	})
}

func TestTurn(t *testing.T) {
	if got, want := Rotate(V(1, 0, 0), math.Pi/2).Apply(V(0, 1, 0)), V(0, 0, 1); got != want {
		t.Errorf("x: got %v, want %v", got, want)
	}
	if got, want := RotateY(math.Pi/2).Apply(V(0, 0, 1)), V(1, 0, 0); got != want {
		t.Errorf("y: got %v, want %v", got, want)
	}
	if got, want := RotateZ(math.Pi/2).Apply(V(1, 0, 0)), V(0, 1, 0); got != want {
		t.Errorf("z: got %v, want %v", got, want)
	}
	rapid.Check(t, func(t *rapid.T) {
		axis, a, v := axes.Draw(t, "axis"), turns.Draw(t, "a"), vecs.Draw(t, "v")
		nearVec(t, "turn", Rotate(axis.Mul(3), a).Apply(v), Vec(r3.NewRotation(a, r3.Vec(axis)).Rotate(r3.Vec(v))))
		m, n := moves.Draw(t, "m"), moves.Draw(t, "n")
		nearVec(t, "then", m.Then(n).Apply(v), n.Apply(m.Apply(v)))
	})
}

// sound fails unless s is well formed: convex, every edge shared by two faces
// to the last bit, corners on their planes, and Euler's formula holds.
func sound(t rapid.TB, s Solid) {
	t.Helper()
	if s.Empty() {
		return
	}
	if !convex(s) {
		t.Errorf("not convex")
	}
	ways, corners := map[Edge]bool{}, map[Vec]bool{}
	for _, f := range s.Faces() {
		for i, a := range f.Corners {
			corners[a] = true
			ways[Edge{a, f.Corners[(i+1)%len(f.Corners)]}] = true
			near(t, "height over own plane", f.Plane.Height(a), 0, 1e-8)
		}
		near(t, "length of normal", f.Plane.N.Norm(), 1, 1e-12)
		if around(f.Corners).Dot(f.Plane.N) <= 0 {
			t.Errorf("face turned inward: %v", f)
		}
	}
	for e := range ways {
		if !ways[Edge{e.B, e.A}] {
			t.Errorf("edge %v has one face", e)
		}
	}
	if len(corners)-len(ways)/2+len(s.Faces()) != 2 || len(s.Edges()) != len(ways)/2 {
		t.Errorf("%d corners, %d edges, %d faces: not Euler's", len(corners), len(ways)/2, len(s.Faces()))
	}
}
