package solid

import (
	"fmt"
	"math"
	"testing"

	"pgregory.net/rapid"
)

func TestClashTouching(t *testing.T) {
	a := Stock("a", Box(V(0, 0, 0), V(100, 50, 20)))
	tests := []struct {
		name string
		b    Solid
		want float64 // mm³ shared
	}{
		{"faces touch", Box(V(100, 0, 0), V(200, 50, 20)), 0},
		{"edges touch", Box(V(100, 50, 0), V(200, 90, 20)), 0},
		{"corners touch", Box(V(100, 50, 20), V(200, 90, 40)), 0},
		{"apart", Box(V(101, 0, 0), V(200, 50, 20)), 0},
		{"under the floor", Box(V(100-0.9e-6, 0, 0), V(200, 50, 20)), 0},
		{"over the floor", Box(V(100-1.1e-6, 0, 0), V(200, 50, 20)), 1.1e-3},
		{"overlap", Box(V(90, 0, 0), V(200, 50, 20)), 10 * 50 * 20},
		{"inside", Box(V(10, 10, 5), V(20, 20, 10)), 10 * 10 * 5},
	}
	// The same must hold away from the axes, where nothing is round.
	for _, m := range []Affine3{Identity(), Rotate(V(1, 2, 3), 0.7).Then(Translate(V(311, -77, 430)))} {
		for _, tt := range tests {
			got := 0.0
			for _, s := range Clash(a.Transform(m), Stock("b", tt.b).Transform(m)) {
				got += s.Volume()
			}
			near(t, tt.name, got, tt.want, 1e-6)
			if (got > 0) != (tt.want > 0) {
				t.Errorf("%s: got %.9f mm³, want %.9f", tt.name, got, tt.want)
			}
		}
	}
}

// lap returns two bars of w × d that cross at angle a, each notched for the
// other: one from above, one from below.
func lap(w, d, a float64) (over, under Part) {
	bar := Box(V(-200, -w/2, 0), V(200, w/2, d))
	m := RotateZ(a)
	other := bar.Transform(m)
	upper, lower := Plane{V(0, 0, -1), -d / 2}, Plane{V(0, 0, 1), d / 2}
	over = Stock("over", bar).Subtract(other.Cut(lower))
	under = Stock("under", other).Subtract(bar.Cut(upper))
	return over, under
}

// A lap at θ takes w²/sin θ · d/2 from each bar, and then nothing clashes.
func TestLap(t *testing.T) {
	for _, degrees := range []float64{90, 60, 45, 30} {
		const w, d = 40.0, 30.0
		a := degrees * math.Pi / 180
		over, under := lap(w, d, a)
		for _, p := range []Part{over, under} {
			near(t, p.Name, p.Volume(), 400*w*d-w*w/math.Sin(a)*d/2, 1e-12)
		}
		if got := Clash(over, under); len(got) != 0 {
			t.Errorf("lap at %.0f°: clashes in %d places", degrees, len(got))
		}
		sunk := under.Transform(Translate(V(0, 0, -1)))
		sum := 0.0
		for _, s := range Clash(over, sunk) {
			sum += s.Volume()
		}
		near(t, "sunk by 1 mm", sum, 0, 1e-9)
		raised := under.Transform(Translate(V(0, 0, 1)))
		for _, s := range Clash(over, raised) {
			sum += s.Volume()
		}
		near(t, "raised by 1 mm", sum, w*w/math.Sin(a), 1e-9)
	}
}

// An open mortise a third wide, 60 deep, in the end of a bar of 30 × 45.
func TestOpenMortise(t *testing.T) {
	p := Stock("bridle", Box(V(0, 0, 0), V(300, 30, 45))).Subtract(Box(V(240, 10, -1), V(301, 20, 46)))
	near(t, "volume", p.Volume(), 300*30*45-60*10*45, 1e-14)
	if got := len(p.Pieces); got != 3 {
		t.Errorf("got %d pieces, want 3", got)
	}
	if got, want := p.Bounds(), (Extent{V(0, 0, 0), V(300, 30, 45)}); got != want {
		t.Errorf("bounds: got %v, want %v", got, want)
	}
	// Centre of the bar less the slot: (405000·150 − 27000·270)/378000.
	if got, want := p.Centroid(), V(405000.0*150/378000-27000.0*270/378000, 15, 22.5); !(got.Distance(want) <= 1e-10) {
		t.Errorf("centroid: got %v, want %v", got, want)
	}
	tenon := p.Cut(Plane{V(0, 1, 0), 10})
	near(t, "one cheek", tenon.Volume(), 300*10*45, 1e-14)
}

func TestEmptyPart(t *testing.T) {
	p := Stock("gone", Box(V(0, 0, 0), V(1, 1, 1))).Cut(Plane{V(1, 0, 0), -5})
	if len(p.Pieces) != 0 || p.Volume() != 0 || p.Bounds() != (Extent{}) || !math.IsNaN(p.Centroid().X) {
		t.Errorf("got %v, want nothing", p)
	}
	if got := p.Name; got != "gone" {
		t.Errorf("name: got %q, want %q", got, "gone")
	}
}

// Wood taken from a part no longer clashes with what took it, whatever moves
// both; and clashing is mutual.
func TestClashLaws(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a, b := bars.Draw(t, "a"), bars.Draw(t, "b")
		m := moves.Draw(t, "m")
		p, q := Stock("p", a).Subtract(b).Transform(m), Stock("q", b).Transform(m)
		if got := Clash(p, q); len(got) != 0 {
			t.Errorf("clashes by %.9f mm³ after the waste is gone", got[0].Volume())
		}
		volume := func(list []Solid) (sum float64) {
			for _, s := range list {
				sum += s.Volume()
			}
			return sum
		}
		upTo(t, "mutual", volume(Clash(Stock("", a), q)), volume(Clash(q, Stock("", a))), slack(a, b))
	})
}

// ring returns n parts of four pieces each, leaning and turned round a circle
// so that neighbours cross.
func ring(n int) []Part {
	var out []Part
	for i := range n {
		bar := Stock(fmt.Sprintf("part %d", i+1), Box(V(-150, 180, 0), V(150, 220, 40)))
		for _, x := range []float64{-75, 0, 75} {
			bar = bar.Subtract(Box(V(x-10, 170, 20), V(x+10, 230, 50)))
		}
		bar.Pieces = bar.Pieces[:4]
		out = append(out, bar.Transform(Rotate(V(1, 0, 0), 0.1).Then(RotateZ(2*math.Pi*float64(i)/float64(n)))))
	}
	return out
}

func BenchmarkClash(b *testing.B) {
	parts := ring(12)
	for b.Loop() {
		for i, p := range parts {
			for _, q := range parts[:i] {
				Clash(p, q)
			}
		}
	}
}

func BenchmarkProject(b *testing.B) {
	parts := ring(12)
	for b.Loop() {
		Project(parts, isometric)
	}
}

// What may reach into a box holds all that does, and nothing far from it.
func TestReaching(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a, b, m := Stock("a", solids.Draw(t, "a")), Stock("b", solids.Draw(t, "b")), moves.Draw(t, "m")
		b.Pieces = append(b.Pieces, solids.Draw(t, "c"))
		near := b.Reaching(a.Bounds(), m)
		want := Part{Pieces: Clash(a, b.Transform(m))}
		if got := (Part{Pieces: Clash(a, near)}); got.Volume() != want.Volume() {
			t.Errorf("shares %.9f mm³ with what is near, %.9f with all", got.Volume(), want.Volume())
		}
		for i, s := range b.Pieces {
			corners := Box(s.Bounds().Min, s.Bounds().Max).Transform(m).Bounds()
			if got := s.Bounds().Transform(m); !got.Overlaps(corners) || got.Size().Distance(corners.Size()) > 1e-9 {
				t.Errorf("piece %d: box %v, of its corners %v", i, got, corners)
			}
		}
	})
}
