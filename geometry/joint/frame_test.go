package joint_test

import (
	"math"
	"rodsheet/geometry/joint"
	"testing"

	"pgregory.net/rapid"

	"rodsheet/geometry/measure"
)

func someFrame(t *rapid.T) joint.Frame {
	f := joint.Frame{Ring: someRing(t), Leg: someLeg(t), Over: rapid.Bool().Draw(t, "over")}
	f.Head = f.Ring.Width * rapid.Float64Range(0.1, 1).Draw(t, "head")
	return f
}

// The nearest that leg and neighbour come along the stretcher, measured level
// by level and line by line through the wood that the neighbour has.
func nearest(f joint.Frame) float64 {
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
			least = math.Min(least, f.Leg.StretcherSide(below)-shoulder)
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
		check := func(name string, g joint.Frame) {
			if got := nearest(g); !agree(got, gap) {
				t.Errorf("%s: clearance %.9f, want %.9f", name, got, gap)
			}
		}

		g := f
		g.Leg.At = f.LeastAt(gap)
		check("least at", g)

		least, most, err := f.SplaysThatClear(gap)
		if err != nil {
			return
		}
		if g = f; least > 0 {
			g.Leg.Splay = least
			check("least splay", g)
		}
		if g = f; most < joint.LeanSteepest {
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
			splay := joint.LeanSteepest * float64(i) / steps
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
	f := joint.Frame{
		Ring: joint.Ring{Sides: 4, Inside: 200, Width: 60, Depth: 40},
		Leg:  joint.Leg{Breadth: 40, Thickness: 60, Height: 400, Splay: math.Atan(0.75), At: 200},
		Head: 20,
		Over: true,
	}
	within(t, "shoulder", f.Shoulder(), 160, 1e-9)
	within(t, "over", f.Clearance(), 200-50-160, 1e-9)
	within(t, "least at, over", f.LeastAt(0), 210, 1e-9)
	f.Over = false
	within(t, "under", f.Clearance(), 200+15-50-160, 1e-9)

	hexagon := f
	hexagon.Ring.Sides, hexagon.Ring.Width, hexagon.Head = 6, 30*math.Sqrt(3), 10*math.Sqrt(3)
	within(t, "shoulder in a hexagon", hexagon.Shoulder(), 100+60-15+5, 1e-9)
	hexagon.Ring.Sides = 3
	within(t, "shoulder in a triangle", hexagon.Shoulder(), 100+60+15+5, 1e-9)
}

func TestNoRemedy(t *testing.T) {
	f := joint.Frame{
		Ring: joint.Ring{Sides: 4, Inside: 200, Width: 60, Depth: 40},
		Leg:  joint.Leg{Breadth: 40, Thickness: 60, Height: 400, At: 150},
		Head: 20,
		Over: true,
	}
	f.Leg.At = 190
	_, _, err := f.SplaysThatClear(0)
	checkBound(t, err, "leg.breadth", "≤ frame.room, 30 mm")
}

func TestFrameCheck(t *testing.T) {
	good := joint.Frame{
		Ring: joint.Ring{Sides: 6, Inside: 300, Width: 50, Depth: 30},
		Leg:  joint.Leg{Breadth: 45, Thickness: 50, Height: 420, Splay: measure.Radians(14.5), At: 300},
		Head: 50. / 3,
	}
	refuses(t, good, []refused[joint.Frame]{
		{"ring.stretchers", "≥ 3", func(f *joint.Frame) { f.Ring.Sides = 2 }},
		{"leg.splay", "≤ 60°", func(f *joint.Frame) { f.Leg.Splay = 2 }},
		{"leg.height", "ring.depth, 30 mm", func(f *joint.Frame) { f.Leg.Height = 30 }},
		{"frame.head", "> 0 mm", func(f *joint.Frame) { f.Head = 0 }},
		{"frame.head", "ring.width, 50 mm", func(f *joint.Frame) { f.Head = 51 }},
	})
}
