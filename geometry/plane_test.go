package geometry

import (
	"math"
	"testing"

	"pgregory.net/rapid"
)

func drawPoint(t *rapid.T, name string) Point {
	at := rapid.Float64Range(-1000, 1000)
	return Pt(at.Draw(t, name+" x"), at.Draw(t, name+" y"))
}

func drawAffine(t *rapid.T) Affine {
	turn := rapid.Float64Range(-7, 7).Draw(t, "turn")
	scale := rapid.Float64Range(0.1, 10)
	return Scale(scale.Draw(t, "kx"), -scale.Draw(t, "ky")).Then(Rotate(turn)).Then(Translate(drawPoint(t, "step")))
}

func TestAffineLaws(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		m, n, p := drawAffine(t), drawAffine(t), drawPoint(t, "p")
		if got, want := m.Then(n).Apply(p), n.Apply(m.Apply(p)); got.Distance(want) > 1e-6 {
			t.Errorf("m then n takes %v to %v, want %v", p, got, want)
		}
		if got := m.Then(m.Inverse()).Apply(p); got.Distance(p) > 1e-6 {
			t.Errorf("m and back takes %v to %v", p, got)
		}
	})
}

func TestQuarterTurnsAreExact(t *testing.T) {
	for k, want := range []Point{{3, 4}, {-4, 3}, {-3, -4}, {4, -3}, {3, 4}} {
		if got := Rotate(float64(k) * math.Pi / 2).Apply(Pt(3, 4)); got != want {
			t.Errorf("%d quarter turns take (3, 4) to %v, want %v", k, got, want)
		}
	}
}

// Clipping by a box and by the four boxes round it gives back the whole.
func TestClipLineKeepsEveryPoint(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		line := rapid.SliceOfN(rapid.Custom(func(t *rapid.T) Point { return drawPoint(t, "corner") }), 2, 8).Draw(t, "line")
		a, b := drawPoint(t, "a"), drawPoint(t, "b")
		r := Box(a.X, a.Y, b.X, b.Y).Offset(math.Pi / 10) // so that no line runs along a side
		inside, outside := 0.0, 0.0
		for i := 1; i < len(line); i++ {
			s := Segment{line[i-1], line[i]}
			for _, part := range CutOut(s, r.Corners()) {
				outside += part.Length()
			}
			if c, ok := ClipSegment(s, r); ok {
				inside += c.Length()
			}
		}
		if got, want := inside+outside, length(line); math.Abs(got-want) > 1e-6*want {
			t.Errorf("parts inside and outside are %.6f mm long, want %.6f", got, want)
		}
		runs := 0.0
		for _, run := range ClipLine(line, r) {
			runs += length(run)
			for _, p := range run {
				if !r.Offset(1e-6).Contains(p) {
					t.Errorf("%v lies outside %v", p, r)
				}
			}
		}
		if math.Abs(runs-inside) > 1e-6*(1+inside) {
			t.Errorf("runs are %.6f mm long, segments inside %.6f", runs, inside)
		}
	})
}

func length(line []Point) float64 {
	sum := 0.0
	for i := 1; i < len(line); i++ {
		sum += line[i-1].Distance(line[i])
	}
	return sum
}

func TestClipLineStaysOpen(t *testing.T) {
	square := Closed(Box(0, 0, 10, 10).Corners())
	runs := ClipLine(square, Box(-5, 2, 5, 8))
	want := [][]Point{{{0, 8}, {0, 2}}}
	if len(runs) != 1 || len(runs[0]) != 2 || runs[0][0] != want[0][0] || runs[0][1] != want[0][1] {
		t.Errorf("a square cut by a window gives %v, want its one side %v", runs, want)
	}
}

func TestMeets(t *testing.T) {
	box := Box(0, 0, 2, 1).Corners()
	for _, c := range []struct {
		name string
		s    Segment
		want bool
	}{
		{"through", Segment{Pt(-1, 0.5), Pt(3, 0.5)}, true},
		{"inside", Segment{Pt(0.5, 0.5), Pt(1, 0.5)}, true},
		{"ends inside", Segment{Pt(1, 0.5), Pt(1, 5)}, true},
		{"along a side", Segment{Pt(-1, 1), Pt(3, 1)}, false},
		{"past a corner", Segment{Pt(2, 2), Pt(4, 0)}, false},
		{"short of it", Segment{Pt(-3, 0.5), Pt(-1, 0.5)}, false},
	} {
		if got := Meets(c.s, box); got != c.want {
			t.Errorf("%s: Meets = %v, want %v", c.name, got, c.want)
		}
	}
}

// The hatch of a polygon covers its area: lines step apart stand for strips
// step wide, so length × step comes near the area, nearer the finer the step.
func TestHatchCoversTheArea(t *testing.T) {
	ell := []Point{{0, 0}, {60, 0}, {60, 20}, {25, 20}, {25, 50}, {0, 50}}
	for _, angle := range []float64{0, 0.3, math.Pi / 4, math.Pi / 2} {
		const step = 0.05
		sum := 0.0
		for _, s := range Hatch(ell, angle, step) {
			sum += s.Length() * step
		}
		if want := Area(ell); math.Abs(sum-want) > 0.005*want {
			t.Errorf("hatch at %.2f covers %.2f mm², want %.2f", angle, sum, want)
		}
	}
}

func TestHatchesJoin(t *testing.T) {
	left, right := Box(0, 0, 10, 10).Corners(), Box(10, 0, 20, 10).Corners()
	ends := map[Point]bool{}
	for _, s := range Hatch(left, math.Pi/4, 3) {
		ends[Pt(math.Round(s.B.X*1e6), math.Round(s.B.Y*1e6))] = true
	}
	joined := 0
	for _, s := range Hatch(right, math.Pi/4, 3) {
		if ends[Pt(math.Round(s.A.X*1e6), math.Round(s.A.Y*1e6))] {
			joined++
		}
	}
	if joined < 2 {
		t.Errorf("%d hatch lines run on from one polygon to the next, want 2 or more", joined)
	}
}

func TestArcStaysOnItsCircle(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r := rapid.Float64Range(0.01, 2000).Draw(t, "r")
		from := rapid.Float64Range(-7, 7).Draw(t, "from")
		to := from + rapid.Float64Range(-7, 7).Draw(t, "turn")
		c := drawPoint(t, "centre")
		points := Arc(c, r, from, to)
		for i, p := range points {
			if d := math.Abs(p.Distance(c) - r); d > 1e-9*(1+r) {
				t.Errorf("point %d is %.2g mm off the circle", i, d)
			}
			if i > 0 {
				mid := p.Lerp(points[i-1], 0.5)
				if d := r - mid.Distance(c); d > Sagitta*1.0001 {
					t.Errorf("chord %d leaves the circle by %.6f mm, more than %.3f", i, d, Sagitta)
				}
			}
		}
		if d := points[len(points)-1].Distance(c.Add(Polar(r, to))); d > 1e-6 {
			t.Errorf("arc ends %.2g mm off", d)
		}
	})
}
