package geometry_test

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"rodsheet/geometry"
	"rodsheet/geometry/measure"
)

func someFrame(t *rapid.T) geometry.Frame {
	f := geometry.Frame{Ring: someRing(t), Leg: someLeg(t), Over: rapid.Bool().Draw(t, "over")}
	f.Head = f.Ring.Width * rapid.Float64Range(0.1, 1).Draw(t, "head")
	return f
}

// bisect returns where a rising f comes to want, between lo and hi.
func bisect(lo, hi, want float64, f func(float64) float64) float64 {
	for range 200 {
		if mid := (lo + hi) / 2; f(mid) < want {
			lo = mid
		} else {
			hi = mid
		}
	}
	return (lo + hi) / 2
}

// The feet set down in plan, stretcher by stretcher.
func TestFeetInPlan(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		f := someFrame(t)
		foot := func(i int) geometry.Point {
			return f.Ring.Place(i, 0).Apply(geometry.Pt(f.Leg.Foot(), f.Ring.Width/2))
		}
		for i := range f.Ring.Sides {
			if got := foot(i).Norm(); !agree(f.FootRadius(), got) {
				t.Errorf("foot %d stands at %.9f, want %.9f", i, got, f.FootRadius())
			}
			if got := foot(i).Distance(foot((i + 1) % f.Ring.Sides)); !agree(f.FootSpread(), got) {
				t.Errorf("feet %d and next stand %.9f apart, want %.9f", i, got, f.FootSpread())
			}
		}
	})
}

// Both inverse solutions against the root of the forward one.
func TestSplayForFeet(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		f := someFrame(t)
		with := func(splay float64) geometry.Frame {
			g := f
			g.Leg.Splay = splay
			return g
		}
		share := rapid.Float64Range(0, 1).Draw(t, "share")
		for _, tt := range []struct {
			name string
			of   func(float64) float64
			got  func(float64) (float64, error)
		}{
			{"foot circle", func(a float64) float64 { return with(a).FootRadius() }, f.SplayForFootRadius},
			{"foot spread", func(a float64) float64 { return with(a).FootSpread() }, f.SplayForFootSpread},
		} {
			lo, hi := tt.of(0), tt.of(geometry.LeanSteepest)
			mm := lo + share*(hi-lo)
			got, err := tt.got(math.Min(mm, hi))
			if err != nil {
				t.Fatalf("%s of %.3f: %v", tt.name, mm, err)
			}
			if want := bisect(0, geometry.LeanSteepest, mm, tt.of); math.Abs(got-want) > 1e-7 {
				t.Errorf("%s of %.3f: splay %.9f, want %.9f", tt.name, mm, got, want)
			}
			if back := tt.of(got); !agree(back, mm) {
				t.Errorf("%s of %.9f comes out as %.9f", tt.name, mm, back)
			}
		}
	})
}

// Worked by hand: a square ring with its axis 150 mm from the centre, feet at
// 200 mm from mid-length, so on a circle of 250 mm.
func TestFeetByHand(t *testing.T) {
	f := geometry.Frame{
		Ring: geometry.Ring{Sides: 4, Inside: 240, Width: 60, Depth: 30},
		Leg:  geometry.Leg{Breadth: 30, Thickness: 60, Height: 400, Splay: math.Atan(0.05), At: 180},
		Head: 20,
	}
	within(t, "foot circle", f.FootRadius(), 250, 1e-9)
	within(t, "foot spread", f.FootSpread(), 250*math.Sqrt2, 1e-9)

	_, err := f.SplayForFootRadius(234.3) // plumb: √(150² + 180²) = 234.31
	checkBound(t, err, "foot circle radius", "that of plumb legs, 234.31 mm")
	_, err = f.SplayForFootRadius(900)
	checkBound(t, err, "foot circle radius", "that of the steepest legs, 885.62 mm")
	_, err = f.SplayForFootSpread(331)
	checkBound(t, err, "foot spread", "that of plumb legs, 331.36 mm")
	_, err = f.SplayForFootSpread(math.NaN())
	checkBound(t, err, "foot spread", "finite")
}

// The nearest that leg and neighbour come along the stretcher, measured level
// by level and line by line through the wood that the neighbour has.
func nearest(f geometry.Frame) float64 {
	least := math.Inf(1)
	depth := f.Ring.Depth
	from, to := depth/2, depth // passing under: the lower half of the neighbour
	if f.Over {
		from, to = 0, depth/2
	}
	edge := seen(f.Ring, 0, f.Ring.Sides-1, 0, level(f.Ring.Width))
	const steps = 16
	for i := range steps + 1 {
		y := f.Ring.Width/2 + f.Head*(float64(i)/steps-0.5)
		shoulder := cross(level(y), edge).X
		for j := range steps + 1 {
			below := from + (to-from)*float64(j)/steps
			least = math.Min(least, f.Leg.Inner(below)-shoulder)
		}
	}
	return least
}

func TestClearanceIsTheNearest(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		f := someFrame(t)
		if got, want := f.Clearance(), nearest(f); !agree(got, want) {
			t.Errorf("clearance %.9f, want %.9f", got, want)
		}
	})
}

// Each remedy, taken alone, leaves just the gap that was asked for.
func TestRemediesLeaveTheGap(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		f := someFrame(t)
		gap := rapid.Float64Range(0, 10).Draw(t, "gap")
		check := func(name string, g geometry.Frame) {
			if got := nearest(g); !agree(got, gap) {
				t.Errorf("%s: clearance %.9f, want %.9f", name, got, gap)
			}
		}

		g := f
		g.Leg.At = f.LeastAt(gap)
		check("least at", g)

		g = f
		breadth, err := f.MostBreadth(gap)
		if room := f.Leg.At + f.NeighbourTop()*math.Tan(f.Leg.Splay) - f.Shoulder() - gap; (err != nil) != (room <= 0) {
			t.Errorf("most breadth with %.9f of room: %v", room, err)
		}
		if g.Leg.Breadth = breadth; err == nil {
			check("most breadth", g)
		}

		least, most, err := f.SplaysThatClear(gap)
		if err != nil {
			return
		}
		if g = f; least > 0 {
			g.Leg.Splay = least
			check("least splay", g)
		}
		if g = f; most < geometry.LeanSteepest {
			g.Leg.Splay = most
			check("most splay", g)
		}
	})
}

// Every splay between the two clears, and no other does.
func TestSplaysThatClear(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		f := someFrame(t)
		// Near the lap, where the question is open.
		f.Leg.At = f.Shoulder() + rapid.Float64Range(-60, 150).Draw(t, "beyond")
		least, most, err := f.SplaysThatClear(0)
		const steps = 500
		for i := range steps + 1 {
			splay := geometry.LeanSteepest * float64(i) / steps
			g := f
			g.Leg.Splay = splay
			got := err == nil && least <= splay && splay <= most
			if c := g.Clearance(); math.Abs(c) > 1e-6 && got != (c > 0) {
				t.Fatalf("splay %.6f of %.6f to %.6f (%v): clearance %.9f", splay, least, most, err, c)
			}
		}
	})
}

// Worked by hand for a square ring: the shoulder stands at 100 + 60 = 160 mm
// whatever the head's width.
func TestClearanceByHand(t *testing.T) {
	f := geometry.Frame{
		Ring: geometry.Ring{Sides: 4, Inside: 200, Width: 60, Depth: 40},
		Leg:  geometry.Leg{Breadth: 40, Thickness: 60, Height: 400, Splay: math.Atan(0.75), At: 200},
		Head: 20,
		Over: true,
	}
	within(t, "shoulder", f.Shoulder(), 160, 1e-9)
	within(t, "over", f.Clearance(), 200-50-160, 1e-9)
	within(t, "least at, over", f.LeastAt(0), 210, 1e-9)
	f.Over = false
	within(t, "under", f.Clearance(), 200+15-50-160, 1e-9)
	breadth, err := f.MostBreadth(1)
	within(t, "most breadth, under", breadth, (55-1)*0.8, 1e-9)
	if err != nil {
		t.Error(err)
	}

	hexagon := f
	hexagon.Ring.Sides, hexagon.Ring.Width, hexagon.Head = 6, 30*math.Sqrt(3), 10*math.Sqrt(3)
	within(t, "shoulder in a hexagon", hexagon.Shoulder(), 100+60-15+5, 1e-9)
	hexagon.Ring.Sides = 3
	within(t, "shoulder in a triangle", hexagon.Shoulder(), 100+60+15+5, 1e-9)
}

func TestNoRemedy(t *testing.T) {
	f := geometry.Frame{
		Ring: geometry.Ring{Sides: 4, Inside: 200, Width: 60, Depth: 40},
		Leg:  geometry.Leg{Breadth: 40, Thickness: 60, Height: 400, At: 150},
		Head: 20,
		Over: true,
	}
	_, err := f.MostBreadth(0)
	checkBound(t, err, "mid-length to leg", "must be more than the lap, 160 mm")
	f.Leg.At = 190
	_, _, err = f.SplaysThatClear(0)
	checkBound(t, err, "breadth", "must be at most the room beside the lap, 30 mm")
}

func TestFrameCheck(t *testing.T) {
	good := geometry.Frame{
		Ring: geometry.Ring{Sides: 6, Inside: 300, Width: 50, Depth: 30},
		Leg:  geometry.Leg{Breadth: 45, Thickness: 50, Height: 420, Splay: measure.Radians(14.5), At: 300},
		Head: 50. / 3,
	}
	if err := good.Check(); err != nil {
		t.Errorf("%+v: %v", good, err)
	}
	for _, tt := range []struct {
		figure, want string
		change       func(*geometry.Frame)
	}{
		{"stretchers", "at least 3", func(f *geometry.Frame) { f.Ring.Sides = 2 }},
		{"splay", "at most 60°", func(f *geometry.Frame) { f.Leg.Splay = 2 }},
		{"height", "the depth of the stretcher, 30 mm", func(f *geometry.Frame) { f.Leg.Height = 30 }},
		{"head of leg", "more than 0 mm", func(f *geometry.Frame) { f.Head = 0 }},
		{"head of leg", "the width of the stretcher, 50 mm", func(f *geometry.Frame) { f.Head = 51 }},
	} {
		f := good
		tt.change(&f)
		checkBound(t, f.Check(), tt.figure, tt.want)
	}
}
