package solid

import (
	"cmp"
	"math"
	"slices"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"
	"pgregory.net/rapid"

	"rodsheet/geometry"
)

func seg(ax, ay, bx, by float64) geometry.Segment {
	return geometry.Segment{A: geometry.Pt(ax, ay), B: geometry.Pt(bx, by)}
}

// same fails unless got holds the segments of want, in any order and sense.
func same(t *testing.T, what string, got, want []geometry.Segment) {
	t.Helper()
	if len(got) != len(want) {
		t.Errorf("%s: got %d segments %.4f, want %d", what, len(got), got, len(want))
		return
	}
	for _, w := range want {
		if !slices.ContainsFunc(got, func(g geometry.Segment) bool {
			return g.A.Distance(w.A)+g.B.Distance(w.B) < 1e-9 || g.A.Distance(w.B)+g.B.Distance(w.A) < 1e-9
		}) {
			t.Errorf("%s: got %.6f, want among them %.6f", what, got, w)
		}
	}
}

func total(segments []geometry.Segment) (sum float64) {
	for _, s := range segments {
		sum += s.Length()
	}
	return sum
}

// isometric shortens lengths along all three axes alike, to √(2/3) of themselves.
var isometric = Look(V(1, -1, 1), V(0, 0, 1))

func TestViews(t *testing.T) {
	p := V(3, 5, 7)
	tests := []struct {
		name  string
		v     View
		want  geometry.Point
		depth float64
	}{
		{"plan", Plan(), geometry.Pt(3, 5), 7},
		{"front", Front(), geometry.Pt(3, 7), -5},
		{"side", Side(), geometry.Pt(5, 7), 3},
		// Isometric: right (1, 1, 0)/√2, up (-1, 1, 2)/√6.
		{"corner", isometric, geometry.Pt(8/math.Sqrt2, 16/math.Sqrt(6)), 5 / math.Sqrt(3)},
	}
	for _, tt := range tests {
		if got := tt.v.Point(p); !(got.Distance(tt.want) <= 1e-12) {
			t.Errorf("%s: got %v, want %v", tt.name, got, tt.want)
		}
		near(t, tt.name+" depth", p.Dot(tt.v.Out), tt.depth, 1e-12)
	}
}

// The shadow of a cube of edge a along the unit vector n is
// a²(|n.X| + |n.Y| + |n.Z|), by Cauchy's sum over its faces; the hexagon of
// its visible outline must fill that.
func TestCubeShadow(t *testing.T) {
	const a = 60
	cube := Box(V(0, 0, 0), V(a, a, a))
	rapid.Check(t, func(t *rapid.T) {
		n := axes.Draw(t, "from")
		v := Look(n, n.Cross(axes.Draw(t, "tilt")).Unit())
		if math.Abs(v.Up.Norm()-1) > 1e-9 {
			t.Skip("up runs along from")
		}
		want := a * a * (math.Abs(n.X) + math.Abs(n.Y) + math.Abs(n.Z))
		visible, _ := Project([]Part{Stock("cube", cube)}, v)
		var ends []geometry.Point
		for _, s := range visible {
			ends = append(ends, s.A, s.B)
		}
		near(t, "shadow", geometry.Area(hull(ends)), want, 1e-7)
	})
}

// hull returns the convex hull, counter-clockwise (Andrew's monotone chain).
func hull(points []geometry.Point) []geometry.Point {
	slices.SortFunc(points, func(p, q geometry.Point) int {
		return cmp.Or(cmp.Compare(p.X, q.X), cmp.Compare(p.Y, q.Y))
	})
	// The turn at a point that stands there twice but for rounding is noise.
	points = slices.CompactFunc(points, func(p, q geometry.Point) bool { return p.Distance(q) <= 1e-9 })
	chain := func(points []geometry.Point) (out []geometry.Point) {
		for _, p := range points {
			for n := len(out); n > 1 && out[n-1].Sub(out[n-2]).Cross(p.Sub(out[n-2])) <= 0; n-- {
				out = out[:n-1]
			}
			out = append(out, p)
		}
		return out[:len(out)-1]
	}
	lower := chain(points)
	slices.Reverse(points)
	return append(lower, chain(points)...)
}

// One corner of a box is hidden in the corner view, and with it the three
// edges that meet there; each edge is √(2/3) of itself on the paper.
func TestBoxCorner(t *testing.T) {
	for _, size := range []Vec{V(10, 10, 10), V(10, 20, 40), V(300, 20, 5)} {
		visible, hidden := Project([]Part{Stock("box", Box(V(0, 0, 0), size))}, isometric)
		if len(visible) != 9 || len(hidden) != 3 {
			t.Errorf("box %v: got %d visible, %d hidden, want 9 and 3", size, len(visible), len(hidden))
		}
		sum := (size.X + size.Y + size.Z) * math.Sqrt(2.0/3)
		near(t, "visible", total(visible), 3*sum, 1e-12)
		near(t, "hidden", total(hidden), sum, 1e-12)
	}
}

// A box stands behind another: its edges are hidden where the front one is.
func TestTwoBoxes(t *testing.T) {
	near := Stock("near", Box(V(0, 0, 0), V(100, 100, 100)))
	far := Stock("far", Box(V(60, 200, 30), V(160, 260, 130)))
	visible, hidden := Project([]Part{far, near}, Front())
	same(t, "visible", visible, []geometry.Segment{
		seg(0, 0, 100, 0), seg(100, 0, 100, 100), seg(100, 100, 0, 100), seg(0, 100, 0, 0),
		seg(100, 30, 160, 30), seg(160, 30, 160, 130), seg(160, 130, 60, 130), seg(60, 130, 60, 100),
	})
	same(t, "hidden", hidden, []geometry.Segment{seg(60, 30, 100, 30), seg(60, 30, 60, 100)})

	// From behind, the far one is whole and covers the near one.
	visible, hidden = Project([]Part{far, near}, Look(V(0, 1, 0), V(0, 0, 1)))
	same(t, "hidden from behind", hidden, []geometry.Segment{seg(-60, 100, -100, 100), seg(-100, 30, -100, 100)})
	if got := total(visible); math.Abs(got-(400+400-110)) > 1e-9 {
		t.Errorf("visible from behind: got %.6f mm, want 690", got)
	}
}

// A roof hides a rod on the ground behind it. The viewer stands 2 up for 1
// forward, so a point at (y, z) falls on the ground at y + z/2: the roof
// covers the rod from the near eaves at -50 + 40/2 to the far ones at
// 50 + 40/2, and the ridge, at 90/2, lies between.
func TestSlopingHider(t *testing.T) {
	roof := Prism([]Vec{V(0, -50, 40), V(0, 50, 40), V(0, 0, 90)}, V(200, 0, 0))
	rod := Box(V(100, -500, -1), V(101, 500, 0))
	v := Look(V(0, -1, 2), V(0, 0, 1))
	_, hidden := Project([]Part{Stock("roof", roof), Stock("rod", rod)}, v)
	for _, x := range []float64{100, 101} {
		want := geometry.Segment{A: v.Point(V(x, -30, 0)), B: v.Point(V(x, 70, 0))}
		top := slices.DeleteFunc(slices.Clone(hidden), func(s geometry.Segment) bool {
			return math.Abs(s.A.X-x)+math.Abs(s.B.X-x) > 1e-9 || s.Length() < 50
		})
		same(t, "upper edge", top, []geometry.Segment{want})
	}
}

// notched is a bar of 200 × 40 × 20 with a notch 40 wide and half deep from
// above: three or more pieces, but one part.
func notched() Part {
	return Stock("bar", Box(V(0, 0, 0), V(200, 40, 20))).Subtract(Box(V(60, -1, 10), V(100, 41, 21)))
}

// The edges between coplanar faces of the pieces do not belong to the part.
func TestPartEdges(t *testing.T) {
	for _, m := range []Affine3{Identity(), Rotate(V(3, -1, 2), 1.1).Then(Translate(V(700, 20, -90)))} {
		p := notched().Transform(m)
		sum := 0.0
		for _, e := range p.Edges() {
			sum += e.A.Distance(e.B)
		}
		// Two outlines of 2·(200 + 20) + 2·10 and eight edges across.
		near(t, "edges", sum, 2*460+8*40, 1e-9)
	}
	// Two seams break four edges of a cube along x and two along y.
	split := Part{Pieces: []Solid{
		Box(V(0, 0, 0), V(5, 10, 10)), Box(V(5, 0, 0), V(10, 4, 10)), Box(V(5, 4, 0), V(10, 10, 10))}}
	if got, want := len(split.Edges()), 12+4+2; got != want {
		t.Errorf("cube in three: got %d edges, want %d", got, want)
	}
	// Boxes that meet in an edge only share it: it is drawn, once.
	apart := Part{Pieces: []Solid{Box(V(0, 0, 0), V(5, 5, 5)), Box(V(5, 5, 0), V(9, 9, 5))}}
	if got, want := len(apart.Edges()), 12+12-1; got != want {
		t.Errorf("two boxes on one edge: got %d edges, want %d", got, want)
	}
}

func TestNotchedBar(t *testing.T) {
	bar := []Part{notched()}
	visible, hidden := Project(bar, Front())
	same(t, "front", visible, []geometry.Segment{
		seg(0, 0, 200, 0), seg(200, 0, 200, 20), seg(200, 20, 100, 20), seg(100, 20, 100, 10),
		seg(100, 10, 60, 10), seg(60, 10, 60, 20), seg(60, 20, 0, 20), seg(0, 20, 0, 0),
	})
	same(t, "front, hidden", hidden, nil)

	visible, hidden = Project(bar, Plan())
	outline := []geometry.Segment{seg(0, 0, 200, 0), seg(200, 0, 200, 40), seg(200, 40, 0, 40), seg(0, 40, 0, 0)}
	shoulders := []geometry.Segment{seg(60, 0, 60, 40), seg(100, 0, 100, 40)}
	same(t, "plan", visible, append(shoulders, outline...))
	same(t, "plan, hidden", hidden, nil)

	// From below, the sight lines of the shoulders run in the very faces
	// between the pieces.
	below := View{Right: V(1, 0, 0), Up: V(0, 1, 0), Out: V(0, 0, -1)}
	visible, hidden = Project(bar, below)
	same(t, "below", visible, outline)
	same(t, "below, hidden", hidden, shoulders)
}

// A closed lap at 90° looks the same as a cross from above, but for the two
// shoulders of the under part, which the over part covers.
func TestLapPlan(t *testing.T) {
	over, under := lap(40, 30, math.Pi/2)
	visible, hidden := Project([]Part{over, under}, Plan())
	same(t, "visible", visible, []geometry.Segment{
		seg(-200, -20, 200, -20), seg(-200, 20, 200, 20), seg(-200, -20, -200, 20), seg(200, -20, 200, 20),
		seg(-20, -200, -20, -20), seg(20, -200, 20, -20), seg(-20, 20, -20, 200), seg(20, 20, 20, 200),
		seg(-20, -200, 20, -200), seg(-20, 200, 20, 200),
	})
	same(t, "hidden", hidden, []geometry.Segment{seg(-20, -20, -20, 20), seg(20, -20, 20, 20)})
}

// A rod in the open slot between two cheeks is seen from above, although its
// sight lines run square between the faces of the cheeks.
func TestRodInSlot(t *testing.T) {
	cheeks := Part{Pieces: []Solid{Box(V(0, 0, 0), V(60, 10, 45)), Box(V(0, 20, 0), V(60, 30, 45))}}
	rod := Stock("rod", Box(V(5, 12, 20), V(55, 18, 25)))
	_, hidden := Project([]Part{cheeks, rod}, Plan())
	same(t, "hidden", hidden, nil)
}

// A hidden edge right behind a visible one is not drawn: of the far box, the
// left side lies behind the joint line at x = 50.
func TestHiddenBehindVisible(t *testing.T) {
	_, hidden := Project([]Part{
		Stock("slab", Box(V(0, 10, 0), V(100, 20, 100))),
		Stock("fillet", Box(V(0, 0, 0), V(50, 10, 100))),
		Stock("far", Box(V(50, 30, 20), V(70, 40, 80))),
	}, Front())
	same(t, "hidden", hidden, []geometry.Segment{seg(50, 20, 70, 20), seg(70, 20, 70, 80), seg(70, 80, 50, 80)})
}

// rays reports whether the ray from p towards the viewer passes through the
// inside of the box of half sizes h that m placed: the slab test, in the
// frame of the box.
func rays(p, out, h, centre r3.Vec, turn r3.Rotation) bool {
	back := r3.Rotation(turn)
	back.Imag, back.Jmag, back.Kmag = -back.Imag, -back.Jmag, -back.Kmag
	o, d := back.Rotate(r3.Sub(p, centre)), back.Rotate(out)
	lo, hi := 0.0, math.Inf(1)
	for _, s := range [3][3]float64{{o.X, d.X, h.X}, {o.Y, d.Y, h.Y}, {o.Z, d.Z, h.Z}} {
		a, b := (-s[2]-s[0])/s[1], (s[2]-s[0])/s[1]
		lo, hi = math.Max(lo, math.Min(a, b)), math.Min(hi, math.Max(a, b))
	}
	return lo < hi
}

// Every place of an edge is hidden just where a ray says so.
func TestShadowsByRays(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		h := V(lengths.Draw(t, "hx"), lengths.Draw(t, "hy"), lengths.Draw(t, "hz"))
		axis, angle, centre := axes.Draw(t, "axis"), turns.Draw(t, "angle"), vecs.Draw(t, "centre")
		box := Box(h.Mul(-1), h).Transform(Rotate(axis, angle).Then(Translate(centre)))
		e := Edge{vecs.Draw(t, "a"), vecs.Draw(t, "b")}
		v := Look(axes.Draw(t, "from"), V(1, 2, 3))
		if v.segment(e).Length() < 1 || math.Abs(v.Up.Norm()-1) > 1e-9 {
			t.Skip("seen end on")
		}
		shadows := v.curtain(e, 2000).shadows([]screen{v.screen(Stock("", box))})
		if len(shadows) > 1 {
			t.Fatalf("one convex solid throws %d shadows", len(shadows))
		}
		ray := func(at float64) bool {
			return rays(r3.Vec(e.A.Lerp(e.B, at)), r3.Vec(v.Out), r3.Vec(h), r3.Vec(centre),
				r3.NewRotation(angle, r3.Vec(axis)))
		}
		for i := 1; i < 64; i++ {
			at := float64(i) / 64
			clear, in := true, false
			for _, s := range shadows {
				clear = clear && (at < s.lo-1e-6 || at > s.hi+1e-6)
				in = in || at > s.lo+1e-6 && at < s.hi-1e-6
			}
			if got := ray(at); got && clear || !got && in {
				t.Errorf("at %.4f of the edge: ray hits %v, shadows %.6f", at, got, shadows)
			}
		}
	})
}

// Round figures, as makers have them, so that faces and edges coincide often.
var (
	round  = rapid.Custom(func(t *rapid.T) float64 { return float64(rapid.IntRange(1, 12).Draw(t, "n")) * 10 })
	steps  = rapid.Custom(func(t *rapid.T) Vec { return V(round.Draw(t, "x"), round.Draw(t, "y"), round.Draw(t, "z")) })
	angles = rapid.Custom(func(t *rapid.T) float64 {
		return float64(rapid.IntRange(-12, 12).Draw(t, "n")) * math.Pi / 12
	})
	directions = rapid.Custom(func(t *rapid.T) Vec {
		return Rotate(V(1, 0, 0), angles.Draw(t, "a")).Then(RotateZ(angles.Draw(t, "b"))).Apply(V(0, 0, 1))
	})
	bars = rapid.Custom(func(t *rapid.T) Solid {
		a := steps.Draw(t, "at")
		return Box(a, a.Add(steps.Draw(t, "size"))).
			Transform(Rotate(directions.Draw(t, "axis"), angles.Draw(t, "turn")))
	})
)

// However a part is split into pieces, the drawing is the same.
func TestSplittingDoesNotShow(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s, other := bars.Draw(t, "s"), bars.Draw(t, "other")
		split := Stock("split", s)
		for range rapid.IntRange(1, 3).Draw(t, "splits") {
			p := Through(s.Centroid().Add(directions.Draw(t, "off").Mul(5)), directions.Draw(t, "p"))
			split = Part{"split", append(split.Cut(p).Pieces, split.Cut(p.Flip()).Pieces...)}
		}
		for _, v := range []View{Plan(), Front(), isometric} {
			v1, h1 := Project([]Part{Stock("s", s), Stock("other", other)}, v)
			v2, h2 := Project([]Part{split, Stock("other", other)}, v)
			near(t, "visible", total(v2), total(v1), 1e-7)
			near(t, "hidden", total(h2), total(h1), 1e-7)
		}
	})
}

// Parts do not care in which order they are drawn.
func TestProjectOrder(t *testing.T) {
	parts := ring(6)
	v1, h1 := Project(parts, isometric)
	slices.Reverse(parts)
	v2, h2 := Project(parts, isometric)
	near(t, "visible", total(v2), total(v1), 1e-9)
	near(t, "hidden", total(h2), total(h1), 1e-9)
	if len(v1) != len(v2) || len(h1) != len(h2) || len(h1) == 0 {
		t.Errorf("got %d and %d, want %d and %d segments", len(v2), len(h2), len(v1), len(h1))
	}
}

func TestProjectNothing(t *testing.T) {
	if v, h := Project(nil, Plan()); len(v) != 0 || len(h) != 0 {
		t.Errorf("got %v and %v, want nothing", v, h)
	}
}
