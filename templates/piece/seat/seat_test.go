package seat

import (
	"errors"
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"
	"pgregory.net/rapid"

	"rodsheet/geometry"
	"rodsheet/geometry/lists"
	"rodsheet/geometry/measure"
	"rodsheet/geometry/solid"
	"rodsheet/templates/piece/assembly"
	"rodsheet/templates/piece/design"
	"rodsheet/templates/piece/internal/piecetest"
	"rodsheet/templates/piece/kind"
)

// stool is a round one on three legs.
func stool() design.Design {
	return design.Design{
		Title: "stool", Kind: design.SeatKind, Saw: design.Saw{Kerf: 3.2},
		Wood: design.Wood{Species: "Ash, white", Density: 670, MoistureFrom: 8, MoistureTo: 12, ExtraLength: 20, ExtraWidth: 4, ExtraThickness: 4},
		Seat: design.Seat{
			Diameter: 340, Thickness: 44, Height: 450,
			Front:   design.LegRow{Legs: 2, Apart: 180, From: 75, FrontBack: measure.Radians(9), Aside: measure.Radians(11)},
			Back:    design.LegRow{Legs: 1, From: 115, FrontBack: measure.Radians(14)},
			Legs:    design.SeatLegs{Size: 38, Foot: 28},
			Mortise: design.SeatMortise{Diameter: 28},
		},
	}
}

// bench has four legs, all leaning two ways, a seat that falls to the back, and stretchers.
func bench() design.Design {
	d := stool()
	s := &d.Seat
	s.Shape, s.Width, s.Depth, s.Corner, s.BackHeight = design.RectangleSeat, 700, 320, 30, 440
	s.Front = design.LegRow{Legs: 2, Apart: 500, From: 90, FrontBack: measure.Radians(8), Aside: measure.Radians(12)}
	s.Back = design.LegRow{Legs: 2, Apart: 460, From: 95, FrontBack: measure.Radians(15), Aside: measure.Radians(9)}
	s.Stretchers = design.SeatStretchers{Shape: design.HStretchers, Height: 150, Diameter: 22, Tenon: 16}
	return d
}

// onCircle is a seat with five legs on a circle in place of rows, without stretchers.
func onCircle(s design.Seat) design.Seat {
	s.Front, s.Middle, s.Back = design.LegRow{}, design.LegRow{}, design.LegRow{}
	s.Circle = design.LegRow{Legs: 5, From: 110, By: design.ByResultant, FrontBack: measure.Radians(12)}
	s.BackHeight, s.Stretchers = 0, design.SeatStretchers{}
	return s
}

// The legs of a circle are one leg turned about the middle of the seat, its hole and its
// foot so far out, whichever of them looks to the front.
func TestLegsOfACircle(t *testing.T) {
	for _, ahead := range []bool{false, true} {
		d := stool()
		d.Seat = onCircle(d.Seat)
		d.Seat.LegAhead = ahead
		s := worked(t, d)
		front := 0.0 // from straight forward to the first leg
		if !ahead {
			front = math.Pi / 5
		}
		for i, l := range s.legs {
			sin, cos := math.Sincos(front + 2*math.Pi*float64(i)/5)
			nearly(t, "hole", flat(l.at).Distance(geometry.Pt(110*sin, -110*cos)), 0, 1e-9)
			// Bored from below, the seat 450 high and 44 thick: the foot is (450 − 44)·tan 12°
			// farther out.
			foot := flat(s.room.Apply(l.point(l.foot)))
			out := 110 + 406*math.Tan(measure.Radians(12))
			nearly(t, "foot", foot.Distance(geometry.Pt(out*sin, -out*cos)), 0, 1e-9)
		}
		if sorts := s.sorts(); len(sorts) != 1 || s.count(sorts[0].sort) != 5 {
			t.Errorf("%d sorts of legs", len(sorts))
		}
		for _, f := range s.legGroup(s.legs[0]).Figures {
			if strings.Contains(f.Name, "forward") {
				t.Errorf("%s is called %q", f.ID, f.Name)
			}
		}
	}
}

// Grain is as long as one may go along it, forward or back, and stay in the outline; no
// outline is hollow, so that is found by halving. Beyond the rim, where mouths at the least
// and the most from the middle come, there is none.
func TestGrainByWalking(t *testing.T) {
	beyond := map[design.SeatShape]bool{}
	for _, shape := range []design.SeatShape{design.RoundSeat, design.RectangleSeat, design.OvalSeat, design.ShieldSeat} {
		for _, from := range []float64{15, 40, 75, 115, 150, 165} {
			for _, apart := range []float64{60, 180, 300} {
				d := stool()
				k := &d.Seat
				k.Shape, k.Front.From, k.Front.Apart = shape, from, apart
				if shape != design.RoundSeat {
					k.Diameter, k.Width, k.Depth, k.Corner = 0, 380, 330, 25
				}
				s := newSeat(d)
				in := func(p geometry.Point) bool { return s.rim.Inside(p) > 0 }
				g, want := flat(s.grain()), math.Inf(1)
				for _, l := range s.legs {
					if l.sort.row != design.FrontRow {
						continue
					}
					for _, p := range s.mouth(l, s.thickness()) {
						if !in(p) {
							want, beyond[shape] = 0, true
							continue
						}
						for _, way := range []float64{-1, 1} {
							near, far := 0.0, 1000.0
							for far-near > 1e-3 {
								if mid := (near + far) / 2; in(p.Add(g.Mul(way * mid))) {
									near = mid
								} else {
									far = mid
								}
							}
							want = min(want, near)
						}
					}
				}
				var rim []geometry.Point
				if s.rim.Diameter == 0 {
					rim = s.rim.Outline()
				}
				nearly(t, fmt.Sprintf("grain of shape %d, %g from the middle, %g apart", shape, from, apart), s.shortGrain(design.FrontRow, rim), want, 0.02)
			}
		}
		if !beyond[shape] {
			t.Errorf("no mouth crosses the rim of shape %d", shape)
		}
	}
}

// A leg or a tenon that comes to a point is a pyramid, and no more.
func TestPointed(t *testing.T) {
	for _, s := range []solid.Solid{taperedPrism(solid.Identity(), 4, 0, 10, 40, -10), taperedPrism(solid.Identity(), 4, 0, -10, 40, 10)} {
		if got, want := s.Volume(), 20.0*20*20/3; math.Abs(got-want) > 1e-6 || len(s.Faces()) != 6 {
			t.Errorf("%g mm³ in %d faces, want %g", got, len(s.Faces()), want)
		}
	}
}

// A box of stretchers runs round the outermost legs, row by row, and round a circle; a leg
// in the middle of the seat has none.
func TestBoxRunsRound(t *testing.T) {
	for _, tt := range []struct {
		front, middle, back, circle int
		want                        string
	}{
		{2, 0, 2, 0, "1-2 3-4 1-3 2-4"}, {2, 1, 2, 0, "1-2 4-5 1-4 2-5"}, {2, 2, 1, 0, "1-2 1-3 2-4 3-5 4-5"},
		{1, 2, 1, 0, "1-2 1-3 2-4 3-4"}, {1, 1, 1, 0, "1-3"}, {2, 1, 0, 0, "1-2 1-3 2-3"}, {0, 0, 0, 3, "1-2 2-3 3-1"}, {3, 0, 2, 0, "1-2 2-3 4-5 1-4 3-5"},
	} {
		d := bench()
		k := &d.Seat
		k.BackHeight = 0
		k.Front.Legs, k.Back.Legs, k.Middle = tt.front, tt.back, design.LegRow{Legs: tt.middle, Apart: 470}
		k.Circle = design.LegRow{Legs: tt.circle, From: 100}
		k.Stretchers.Shape = design.BoxStretchers
		var got []string
		for _, r := range newSeat(d).rods {
			got = append(got, fmt.Sprintf("%d-%d", r.ends[0].into+1, r.ends[1].into+1))
		}
		if all := strings.Join(got, " "); all != tt.want {
			t.Errorf("%d, %d, %d, %d: %s, want %s", tt.front, tt.middle, tt.back, tt.circle, all, tt.want)
		}
	}
}

// anySeat is one that a maker may draw.
func anySeat(t *rapid.T) design.Design {
	d := bench()
	s := &d.Seat
	// In hundredths of a degree: the way in which a leg leans that is plumb but for rounding
	// is a matter of rounding.
	lean := func(name string) float64 {
		return measure.Radians(float64(rapid.IntRange(-400, 2400).Draw(t, name)) / 100)
	}
	s.Shape = rapid.SampledFrom([]design.SeatShape{design.RectangleSeat, design.OvalSeat, design.ShieldSeat}).Draw(t, "shape")
	s.BackWidth = 280
	s.BackHeight = rapid.Float64Range(400, 470).Draw(t, "back")
	s.Front.Legs, s.Back.Legs = rapid.IntRange(2, 4).Draw(t, "front"), rapid.IntRange(1, 4).Draw(t, "behind")
	s.Middle.Legs = rapid.SampledFrom([]int{0, 0, 1, 2}).Draw(t, "between")
	for _, row := range []*design.LegRow{&s.Front, &s.Middle, &s.Back} {
		row.Apart, row.From = rapid.Float64Range(180, 240).Draw(t, "apart"), rapid.Float64Range(30, 80).Draw(t, "from")
		row.FrontBack, row.Aside = lean("rake"), lean("splay")
		if row.Legs == 1 {
			row.Apart, row.Aside = 0, 0
		}
	}
	s.Middle.From = 0
	if rapid.IntRange(0, 3).Draw(t, "circle") == 0 {
		s.Front, s.Middle, s.Back, s.BackHeight = design.LegRow{}, design.LegRow{}, design.LegRow{}, 0
		s.Circle = design.LegRow{Legs: rapid.IntRange(3, 8).Draw(t, "legs"), From: rapid.Float64Range(80, 120).Draw(t, "radius"), By: design.ByResultant, FrontBack: math.Abs(lean("outward"))}
		s.LegAhead = rapid.Bool().Draw(t, "ahead")
	}
	s.Legs.Section = rapid.SampledFrom([]design.LegSection{design.OctagonLeg, design.SquareLeg, design.RoundLeg}).Draw(t, "section")
	s.Mortise.Upper = rapid.Bool().Draw(t, "from above")
	s.Mortise.Taper = measure.Radians(rapid.SampledFrom([]float64{0, 6, 12}).Draw(t, "reamer"))
	s.Mortise.Depth = rapid.SampledFrom([]float64{0, 32}).Draw(t, "depth")
	s.Mortise.Upper = s.Mortise.Upper && s.Mortise.Depth == 0
	s.Stretchers.Shape = rapid.SampledFrom([]design.StretcherShape{design.NoStretchers, design.BoxStretchers, design.HStretchers}).Draw(t, "stretchers")
	s.Stretchers.SideHeight = 0
	if s.Stretchers.Shape == design.BoxStretchers {
		s.Stretchers.SideHeight, s.Stretchers.Hole = 190, 9
	}
	return d
}

func worked(t rapid.TB, d design.Design) Seat {
	t.Helper()
	s, err := piecetest.Solved(judge(d, nil))
	var bound *measure.BoundError
	if errors.As(err, &bound) {
		if r, ok := t.(*rapid.T); ok {
			r.Skip("no such seat")
		}
	}
	if err != nil {
		t.Fatal(err)
	}
	return s
}

func nearly(t rapid.TB, what string, got, want, tolerance float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tolerance) {
		t.Errorf("%s: got %.9f, want %.9f", what, got, want)
	}
}

// Parts touch and do not overlap, the legs stand on the floor and nothing reaches below.
func TestPartsFit(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := worked(t, anySeat(t))
		if len(s.clashes()) > 0 {
			t.Skip("a check tells of it")
		}
		parts := s.Parts()
		for i, a := range parts {
			for _, b := range parts[:i] {
				for _, c := range solid.Clash(a.Part, b.Part) {
					t.Errorf("%s and %s share %.3f mm³", a.Name, b.Name, c.Volume())
				}
			}
			if low := a.Bounds().Min.Z; a.Kind == "leg" {
				nearly(t, a.Name, low, 0, 1e-9)
			} else if low < 1 {
				t.Errorf("%s reaches down to %g", a.Name, low)
			}
		}
		// What a slab loses to its holes is what the tenons fill in it.
		lost := s.board().Volume() - s.slab().Volume()
		filled := 0.0
		for i := range s.legs {
			for _, p := range s.legPart(i).Pieces {
				filled += p.Intersect(s.board()).Volume()
			}
		}
		nearly(t, "holes are filled", filled, lost, 1e-6*lost)
	})
}

// The legs on the left are mirror images of those on the right.
func TestHandsAreMirrored(t *testing.T) {
	s := worked(t, bench())
	for _, pair := range [][2]int{{0, 1}, {2, 3}} {
		left, right := s.legPart(pair[0]), s.legPart(pair[1])
		mirrored := left.Transform(solid.Mirror(solid.Plane{N: solid.V(1, 0, 0)}))
		nearly(t, "volume", mirrored.Volume(), right.Volume(), 1e-6)
		nearly(t, "centroid", mirrored.Centroid().Distance(right.Centroid()), 0, 1e-9)
		shared := 0.0
		for _, a := range mirrored.Pieces {
			for _, b := range right.Pieces {
				shared += a.Intersect(b).Volume()
			}
		}
		nearly(t, "shared", shared, right.Volume(), 1e-4)
	}
}

func vec(v solid.Vec) r3.Vec { return r3.Vec{X: v.X, Y: v.Y, Z: v.Z} }

// Resultant, lean in the room, sightline and foot cut of the closed forms, read back from
// the solids as they stand: the axis from the middles of a shaft's two ends, the cut from
// the edges of its sole.
func TestAnglesAreThoseOfTheSolids(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d := anySeat(t)
		d.Seat.Stretchers = design.SeatStretchers{}
		d.Seat.Legs.Section = design.SquareLeg
		d.Seat.Legs.Foot = 0
		s := worked(t, d)
		for i, l := range s.legs {
			if l.lean.Resultant() < 0.01 {
				continue
			}
			shaft := s.legPart(i).Pieces[1]
			room := shaft.Transform(s.room)
			var along r3.Vec // the longest edge of a straight leg runs along it
			for _, e := range room.Edges() {
				if v := vec(e.A.Sub(e.B)); r3.Norm(v) > r3.Norm(along) {
					along = v
				}
			}
			if along.Z > 0 {
				along = r3.Scale(-1, along)
			}
			axis := r3.Unit(along)
			nearly(t, "from plumb", math.Acos(r3.Dot(axis, r3.Vec{Z: -1})), l.stake.FromPlumb(), 1e-7)
			var face r3.Vec // the upper face of the slab
			for _, f := range s.board().Transform(s.room).Faces() {
				if f.Plane.N.Z > 0.9 {
					face = vec(f.Plane.N)
				}
			}
			nearly(t, "resultant", math.Atan2(r3.Norm(r3.Cross(axis, face)), -r3.Dot(axis, face)), l.lean.Resultant(), 1e-9)
			flat := r3.Sub(axis, r3.Scale(r3.Dot(axis, face), face))
			ahead := r3.Vec{Y: l.out}
			ahead = r3.Unit(r3.Sub(ahead, r3.Scale(r3.Dot(ahead, face), face)))
			nearly(t, "sightline", r3.Cos(flat, ahead), math.Cos(l.lean.Sightline()), 1e-9)

			across, level := l.stake.FootCut()
			var got []float64
			for _, f := range room.Faces() {
				if f.Plane.N.Z > -1+1e-9 {
					continue
				}
				for k, c := range f.Corners {
					edge := r3.Unit(vec(f.Corners[(k+1)%len(f.Corners)].Sub(c)))
					got = append(got, math.Abs(math.Asin(r3.Dot(edge, axis))))
				}
			}
			slices.Sort(got)
			want := []float64{math.Abs(across), math.Abs(level)}
			slices.Sort(want)
			nearly(t, "flatter cut", got[0], want[0], 1e-9)
			nearly(t, "steeper cut", got[len(got)-1], want[1], 1e-9)
		}
	})
}

// The three ways to give a lean give the same leg.
func TestLeanIsGivenInAnyWay(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d := anySeat(t)
		s := worked(t, d)
		m := s.room
		for _, way := range []design.SeatLean{design.ByResultant, design.ByFeet} {
			other := d
			for _, l := range s.sorts() {
				row := other.Seat.Row(l.sort.row)
				if l.sort.inner {
					continue
				}
				row.By = way
				row.FrontBack, row.Aside = l.lean.Resultant(), l.lean.Sightline()
				if foot := m.Apply(l.point(l.foot)); way == design.ByFeet {
					row.FrontBack, row.Aside = l.out*foot.Y, 2*math.Abs(foot.X)
					if l.sort.round() {
						row.FrontBack = flat(foot).Norm()
					}
				}
				if row.Legs == 1 || l.sort.round() {
					row.Aside = 0
				}
				if row.Legs == 1 && row.By == design.ByResultant && l.lean.Rake < 0 {
					return // backward under the seat: a sightline of 180°
				}
			}
			again := worked(t, other)
			for i, l := range s.legs {
				nearly(t, "axis", again.legs[i].axis.Distance(l.axis), 0, 1e-9)
			}
		}
	})
}

// Feet of a row stand equally far apart.
func TestFeetOfARow(t *testing.T) {
	d := bench()
	d.Seat.Stretchers = design.SeatStretchers{}
	d.Seat.Front.Legs = 4
	s := worked(t, d)
	m := s.room
	var x []float64
	for _, l := range s.legs[:4] {
		x = append(x, m.Apply(l.point(l.foot)).X)
	}
	nearly(t, "first and second", x[1]-x[0], x[2]-x[1], 1e-9)
	nearly(t, "second and third", x[2]-x[1], x[3]-x[2], 1e-9)
}

// Heights at the front and back edge are as decided.
func TestHeights(t *testing.T) {
	s := worked(t, bench())
	top := s.thickness()
	nearly(t, "front", s.height(solid.V(0, s.frontEdge(), top)), 450, 1e-9)
	nearly(t, "back", s.height(solid.V(0, s.backEdge(), top)), 440, 1e-9)
	nearly(t, "middle", s.room.Apply(solid.V(0, 0, top)).Y, 0, 1e-9)
}

// The mouth of a hole is where the round solid meets the face: an octagon of many corners
// has its area.
func TestMouthIsThatOfTheHole(t *testing.T) {
	d := bench()
	d.Seat.Mortise.Taper = measure.Radians(10)
	s := worked(t, d)
	for _, l := range s.legs {
		for _, z := range []float64{0, s.thickness()} {
			var area float64
			for _, f := range s.hole(l).Cut(solid.Plane{N: solid.V(0, 0, 1), D: z}).Faces() {
				if f.Plane.N.Z > 1-1e-9 {
					var flatCorners []geometry.Point
					for _, c := range f.Corners {
						flatCorners = append(flatCorners, flat(c))
					}
					area = geometry.Area(flatCorners)
				}
			}
			_, a, b := s.bore(l, z).Mouth()
			nearly(t, "area", area/(math.Pi*a*b), 1, 2e-3)
		}
	}
}

// A shield of which the back is as wide as the front is a rectangle with a half round:
// area w·(d − w/2) + π·w²/8.
func TestShield(t *testing.T) {
	top := rim(design.Seat{Shape: design.ShieldSeat, Width: 300, Depth: 400, BackWidth: 300})
	nearly(t, "area", top.Area(), 300*250+math.Pi*300*300/8, 1)
	nearly(t, "front", top.Support(geometry.Pt(0, -1)), 200, 1e-9)
	nearly(t, "back", top.Support(geometry.Pt(0, 1)), 200, 2*geometry.Sagitta)
}

// Bad figures are told by their keys.
func TestFaults(t *testing.T) {
	for _, tt := range []struct {
		want   string
		change func(*design.Seat)
	}{
		{"", func(*design.Seat) {}},
		{"seat.legs-together 2: not ≥ 3", func(s *design.Seat) {
			s.Front.Legs, s.Back.Legs, s.Stretchers.Shape = 1, 1, 0
			s.Front.Apart, s.Front.Aside = 0, 0
			s.Back.Apart, s.Back.Aside = 0, 0
		}},
		{"seat.back.apart 460 mm: not ≤ 0 mm", func(s *design.Seat) { s.Back.Legs = 1; s.Stretchers.Shape = 0; s.Back.Aside = 0 }},
		{"seat.back.splay 9°: not ≤ 0°", func(s *design.Seat) { s.Back.Legs = 1; s.Stretchers.Shape = 0; s.Back.Apart = 0 }},
		{"seat.back.legs 1: not ≥ 2", func(s *design.Seat) { s.Back.Legs = 1; s.Back.Apart, s.Back.Aside = 0, 0 }},
		{"seat.front.hole -20 mm: not > 0 mm", func(s *design.Seat) { s.Front.From = 180 }},
		{"seat.front.apart 20 mm: not > seat.mortise.diameter, 28 mm", func(s *design.Seat) { s.Front.Apart = 20 }},
		{"seat.front.feet -95.41 mm: not > 0 mm", func(s *design.Seat) { s.Front.Apart, s.Front.Aside = 200, measure.Radians(-20) }},
		{"seat.front.lean 53.79°: not ≤ 45°", func(s *design.Seat) { s.Front.FrontBack, s.Front.Aside = measure.Radians(44), measure.Radians(44) }},
		{"seat.mortise.depth 44 mm: not < seat.thickness, 44 mm", func(s *design.Seat) { s.Mortise.Depth = 44 }},
		{"seat.mortise.depth 30 mm: not ≤ 0 mm", func(s *design.Seat) { s.Mortise.Depth, s.Mortise.Upper = 30, true }},
		{"seat.mortise.diameter 39 mm: not ≤ seat.legs.size, 38 mm", func(s *design.Seat) { s.Mortise.Diameter = 39 }},
		{"seat.legs.foot 39 mm: not ≤ seat.legs.size, 38 mm", func(s *design.Seat) { s.Legs.Foot = 39 }},
		{"seat.back-height 300 mm: not ≥ seat.steepest-fall, 367.18 mm", func(s *design.Seat) { s.BackHeight = 300 }},
		{"seat.leg-height 31.31 mm: not > seat.legs.size, 38 mm", func(s *design.Seat) { s.Height, s.BackHeight = 80, 0 }},
		{"seat.outline.round 170 mm: not ≤ outline.half-side-holds, 160 mm", func(s *design.Seat) { s.Corner = 170 }},
		{"seat.stretchers.height 400 mm: not < seat.shoulders, 370.36 mm", func(s *design.Seat) { s.Stretchers.Height = 400 }},
		{"seat.stretchers.tenon 30 mm: not ≤ seat.stretchers.diameter, 22 mm", func(s *design.Seat) { s.Stretchers.Tenon = 30 }},
		{"seat.legs-together 9: not ≤ 8", func(s *design.Seat) { s.Circle = design.LegRow{Legs: 5, From: 100} }},
		{"seat.front.legs 0: not ≥ 2", func(s *design.Seat) { s.Front.Legs = 0; s.Circle = design.LegRow{Legs: 5, From: 100} }},
		{"seat.back-height 440 mm: not ≥ seat.height, 450 mm", func(s *design.Seat) { *s = onCircle(*s); s.BackHeight = 440 }},
		{"seat.circle.apart 23.51 mm: not > seat.mortise.diameter, 28 mm", func(s *design.Seat) { *s = onCircle(*s); s.Circle.From = 20 }},
		{"seat.circle.hole -1.8 mm: not > 0 mm", func(s *design.Seat) { *s = onCircle(*s); s.Circle.From = 200 }},
		{"seat.circle.feet 0 mm: not > 0 mm", func(s *design.Seat) { *s = onCircle(*s); s.Circle.By, s.Circle.FrontBack = design.ByFeet, 0 }},
		{"seat.middle.apart 20 mm: not > seat.mortise.diameter, 28 mm", func(s *design.Seat) { s.Middle = design.LegRow{Legs: 2, Apart: 20} }},
		{"seat.depth 50 mm: not ≥ seat.tenth, 70 mm", func(s *design.Seat) { s.Shape, s.Depth = design.OvalSeat, 50 }},
	} {
		d := bench()
		tt.change(&d.Seat)
		_, err := piecetest.Solved(judge(d, nil))
		got := ""
		if err != nil {
			got = err.Error()
		}
		if tt.want == "" && err != nil || len(got) < len(tt.want) || got[:len(tt.want)] != tt.want {
			t.Errorf("got %q, want %q", got, tt.want)
		}
		if err != nil && len(design.SetBy(err)) == 0 {
			t.Errorf("%v: set by no key", err)
		}
	}
}

// TestTriesOnce has two checks in doubt that the same figures mend, and works no seat out
// twice to mend them.
func TestTriesOnce(t *testing.T) {
	type places struct{ apart, from float64 }
	d, s, tried := bench(), spec(), map[places]int{}
	d.Seat.Shape, d.Seat.BackWidth, d.Seat.Stretchers = design.ShieldSeat, 230, design.SeatStretchers{}
	d.Seat.Width, d.Seat.Front.Apart, d.Seat.Back.Apart = 430, 200, 200
	s.Judge = func(d design.Design, doubts design.Doubts) (Seat, []error) {
		tried[places{d.Seat.Back.Apart, d.Seat.Back.From}]++
		return judge(d, doubts)
	}
	w, err := assembly.Kind(s).Solve([]design.Design{d})
	if err != nil {
		t.Fatal(err)
	}
	mended := lists.Count(w.Report().Sizes[0].Checks, func(c kind.Check) bool { return len(c.Fixes) == 2 })
	if mended < 2 {
		t.Errorf("%d checks are mended by both places of the back row, want 2 at least", mended)
	}
	for at, times := range tried {
		if times > 1 {
			t.Errorf("a back row %v is worked out %d times", at, times)
		}
	}
}

// The cover says one leg of what is one.
func TestTheCoverCountsLegs(t *testing.T) {
	met := map[bool]bool{} // legs that are one, or several
	for _, d := range []design.Design{stool(), bench()} {
		s := worked(t, d)
		counts := map[string]int{}
		for _, l := range s.legs {
			counts[string(l.sort.id())]++
		}
		for id, n := range counts {
			for _, r := range s.MainSizes() {
				of, _, _ := strings.Cut(r[0], ":")
				for _, called := range []map[measure.ID]text{sortNames, oneName} {
					if string(called[measure.ID(id)]) != of {
						continue
					}
					if met[n > 1] = true; strings.HasSuffix(of, "s") != (n > 1) {
						t.Errorf("%q of %d", r[0], n)
					}
				}
			}
		}
	}
	if len(met) < 2 {
		t.Errorf("legs met: %v", met)
	}
}

// The legs on the right are those on the left seen in a mirror: each is as it were made by
// itself, with the holes of its stretchers.
func TestLegsInAMirror(t *testing.T) {
	right := 0
	rapid.Check(t, func(t *rapid.T) {
		s := worked(t, anySeat(t))
		for i, l := range s.legs {
			if l.side > 0 && !l.sort.round() {
				right++
			}
			same(t, legPartName(i), s.built().legs[i], s.legPart(i))
		}
	})
	if right == 0 {
		t.Error("no leg stands on the right of a row")
	}
}
