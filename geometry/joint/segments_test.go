package joint_test

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"
	"pgregory.net/rapid"

	"rodsheet/geometry"
	"rodsheet/geometry/joint"
	"rodsheet/geometry/measure"
)

// A ring that keeps its flats is two regular polygons. Machinery's Handbook, 31st ed.,
// p. 82: inradius to side of 6, 8 and 12 sides; p. 77: a hexagon of side 40 has the
// inradius 34.64.
func TestSegmentsAgainstPolygons(t *testing.T) {
	for n, inradius := range map[int]float64{6: 0.8660, 8: 1.2071, 12: 1.8660} {
		r := joint.SegmentRing{Pieces: n, Outer: 300, Inner: 200}
		within(t, "outer side", 150/r.OuterSide(), inradius, 5e-5)
		within(t, "ring side", 100/r.RingSide(), inradius, 5e-5)
		within(t, "board", r.Board(), 50, 1e-9)
	}
	within(t, "hexagon", joint.SegmentRing{Pieces: 6, Outer: 2 * 34.64, Inner: 1}.OuterSide(), 40, 0.005)
}

func someSegments(t *rapid.T) joint.SegmentRing {
	outer := rapid.Float64Range(20, 3000).Draw(t, "outer")
	return joint.SegmentRing{
		Pieces: rapid.IntRange(3, 36).Draw(t, "pieces"), Outer: outer,
		Inner: outer * rapid.Float64Range(0.2, 0.98).Draw(t, "share"), Round: rapid.Bool().Draw(t, "round"), Kerf: 3,
	}
}

// Turned about the centre a piece lies against its neighbour on the whole mitre; the
// circles of a round ring lie in the wood and reach its sides.
func TestSegmentsClose(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r := someSegments(t)
		p := r.Piece()
		centre := geometry.Pt(0, r.Outer/2)
		turned := geometry.Translate(centre.Mul(-1)).Then(geometry.Rotate(2 * math.Pi / float64(r.Pieces))).Then(geometry.Translate(centre))
		if turned.Apply(p[0]).Distance(p[1]) > 1e-9*r.Outer || turned.Apply(p[3]).Distance(p[2]) > 1e-9*r.Outer {
			t.Errorf("the next piece lies at %v and %v, want %v and %v", turned.Apply(p[0]), turned.Apply(p[3]), p[1], p[2])
		}
		slant := p[2].Sub(p[1])
		if got := math.Atan2(-slant.X, slant.Y); math.Abs(got-r.OffSquare()) > 1e-9 {
			t.Errorf("end %.9f off square, want %.9f", got, r.OffSquare())
		}
		if !r.Round {
			return
		}
		outer, inner := r.Arcs(false)
		if inner[0].Distance(p[3]) > 1e-9*r.Outer || inner[len(inner)-1].Distance(p[2]) > 1e-9*r.Outer {
			t.Errorf("the inner circle ends at %v", inner[0])
		}
		for _, q := range append(outer, inner...) {
			if q.Y < -geometry.Sagitta || q.Y > r.Board()+geometry.Sagitta {
				t.Errorf("%v is off the board", q)
			}
		}
	})
}

// The stock holds the pieces and their kerfs and no more, laid side by side on it.
func TestSegmentsFillTheirStock(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r := someSegments(t)
		area := float64(r.Pieces)*geometry.Area(r.Piece()) + float64(r.Pieces+1)*r.Kerf*r.Board()/math.Cos(r.OffSquare()) + r.Board()*r.Board()*math.Tan(r.OffSquare())
		if got := r.Stock() * r.Board(); !agree(got, area) {
			t.Errorf("stock %.9f mm², pieces and kerfs %.9f", got, area)
		}
	})
}

// 2n ends off by a tenth of a degree: of 12 pieces 2.4° are open, on a radius of 150.
func TestSegmentsOpen(t *testing.T) {
	r := joint.SegmentRing{Pieces: 12, Outer: 300 * math.Cos(math.Pi/12), Inner: 200}
	within(t, "opens", r.Opens(measure.Radians(0.1)), 2*150*math.Sin(measure.Radians(1.2)), 1e-9)
}

func TestSegmentsCheck(t *testing.T) {
	good := joint.SegmentRing{Pieces: 12, Outer: 300, Inner: 200, Kerf: 3}
	if err := good.Check(); err != nil {
		t.Error(err)
	}
	for _, tt := range []struct {
		figure measure.ID
		want   string
		make   func(*joint.SegmentRing)
	}{
		{"segments.pieces", "≥ 3", func(r *joint.SegmentRing) { r.Pieces = 2 }},
		{"segments.pieces", "≤ 36", func(r *joint.SegmentRing) { r.Pieces = 37 }},
		{"segments.inner", "segments.outer, 300 mm", func(r *joint.SegmentRing) { r.Inner = 300 }},
		{"segments.inner", "> 0 mm", func(r *joint.SegmentRing) { r.Inner = 0 }},
		{"segments.board", "≤ 1000 mm", func(r *joint.SegmentRing) { r.Outer = 3000 }},
		{"segments.kerf", "> 0 mm", func(r *joint.SegmentRing) { r.Kerf = 0 }},
	} {
		r := good
		tt.make(&r)
		checkBound(t, r.Check(), tt.figure, tt.want)
	}
}

// Two staves as planes in space: through their outer corners top and bottom.
func TestStavesAgainstPlanes(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		size := rapid.Float64Range(100, 900)
		s := joint.Staves{
			Pieces: rapid.IntRange(4, 24).Draw(t, "pieces"), Top: size.Draw(t, "top"), Bottom: size.Draw(t, "bottom"),
			Height: rapid.Float64Range(300, 1500).Draw(t, "height"), Thickness: rapid.Float64Range(6, 20).Draw(t, "thickness"),
		}
		half := math.Pi / float64(s.Pieces)
		corner := func(size, at, z float64) r3.Vec {
			r := size / 2 / math.Cos(half)
			return r3.Vec{X: r * math.Cos(at), Y: r * math.Sin(at), Z: z}
		}
		a, b, c := corner(s.Bottom, -half, 0), corner(s.Bottom, half, 0), corner(s.Bottom, 3*half, 0)
		u, v, w := corner(s.Top, -half, s.Height), corner(s.Top, half, s.Height), corner(s.Top, 3*half, s.Height)
		n1, n2 := r3.Cross(r3.Sub(b, a), r3.Sub(v, a)), r3.Cross(r3.Sub(c, b), r3.Sub(w, b))
		bottom, top := r3.Norm(r3.Sub(b, a)), r3.Norm(r3.Sub(v, u))
		middle := r3.Norm(r3.Sub(r3.Scale(0.5, r3.Add(u, v)), r3.Scale(0.5, r3.Add(a, b))))
		across, along := r3.Unit(r3.Sub(b, a)), r3.Unit(r3.Sub(r3.Add(u, v), r3.Add(a, b)))
		// The hollow sides meet where both faces are moved in: along what lies between
		// their normals, by Thickness over the cosine of half the angle between them.
		between := r3.Unit(r3.Add(r3.Unit(n1), r3.Unit(n2)))
		in := r3.Scale(-s.Thickness/r3.Cos(between, n1), between)
		slant := r3.Dot(r3.Sub(v, b), across) / r3.Dot(r3.Sub(v, b), along)
		narrower := -2 * (r3.Dot(in, across) - slant*r3.Dot(in, along))
		n1 = r3.Unit(n1)
		inside := func(p r3.Vec) float64 { // across the flats, at the level of a corner
			return 2 * (r3.Dot(n1, p) - s.Thickness - n1.Z*p.Z) / math.Hypot(n1.X, n1.Y)
		}
		edge := math.Acos(math.Abs(r3.Cos(r3.Sub(v, b), r3.Sub(b, a))))
		for _, tt := range []struct {
			name      string
			got, want float64
		}{
			{"tilt", s.EdgeTilt(), math.Acos(r3.Cos(n1, n2)) / 2},
			{"wide", s.Wide(), math.Max(top, bottom)},
			{"narrow", s.Narrow(), math.Min(top, bottom)},
			{"long", s.Long(), middle},
			{"to the edge", s.ToEdge(), math.Pi/2 - edge},
			{"narrower", s.Hollow(), narrower},
			{"inside", s.Inside(), math.Min(inside(a), inside(u))},
			{"to the edge, as a hopper", s.ToEdge(), s.Corner().OffSquare()},
		} {
			if math.Abs(tt.got-tt.want) > 1e-7*math.Max(1, tt.want) {
				t.Errorf("%s %.9f, want %.9f", tt.name, tt.got, tt.want)
			}
		}
	})
}

// An upright square box of boards 20 thick, mitred, is 40 less inside than outside, on
// each board and across.
func TestStavesOfABox(t *testing.T) {
	s := joint.Staves{Pieces: 4, Top: 300, Bottom: 300, Height: 500, Thickness: 20}
	within(t, "hollow side", s.Wide()-s.Hollow(), 260, 1e-9)
	within(t, "inside", s.Inside(), 260, 1e-9)
}

func TestStavesCheck(t *testing.T) {
	good := joint.Staves{Pieces: 12, Top: 300, Bottom: 240, Height: 400, Thickness: 18}
	if err := good.Check(); err != nil {
		t.Error(err)
	}
	for _, tt := range []struct {
		figure measure.ID
		want   string
		make   func(*joint.Staves)
	}{
		{"staves.pieces", "≥ 3", func(s *joint.Staves) { s.Pieces = 2 }},
		{"hopper.tilt", "≤ 45°", func(s *joint.Staves) { s.Pieces = 3 }},
		{"staves.top", "> 0 mm", func(s *joint.Staves) { s.Top = 0 }},
		{"staves.height", "≤ 10000 mm", func(s *joint.Staves) { s.Height = 10001 }},
		{"corner.slope", "≥ 1°", func(s *joint.Staves) { s.Height = 0.1 }},
		{"staves.inside", "> 0 mm", func(s *joint.Staves) { s.Thickness = 120 }},
	} {
		s := good
		tt.make(&s)
		checkBound(t, s.Check(), tt.figure, tt.want)
	}
}
