package joint_test

import (
	"fmt"
	"math"
	"rodsheet/geometry/joint"
	"testing"

	"pgregory.net/rapid"

	"rodsheet/geometry"
	"rodsheet/geometry/measure"
)

func someRing(t *rapid.T) joint.Ring {
	r := joint.Ring{
		Sides: rapid.IntRange(3, 8).Draw(t, "sides"),
		Width: rapid.Float64Range(10, 120).Draw(t, "width"),
		Depth: rapid.Float64Range(10, 60).Draw(t, "depth"),
	}
	r.Inside = r.LeastInside() + rapid.Float64Range(1, 1500).Draw(t, "inside")
	return r
}

// cross returns where two straight lines cross, extended as they need.
func cross(a, b geometry.Segment) geometry.Point {
	da, db := a.B.Sub(a.A), b.B.Sub(b.A)
	return a.A.Add(da.Mul(b.A.Sub(a.A).Cross(db) / da.Cross(db)))
}

// level is the line y mm from the ring side in the frame of a stretcher.
func level(y float64) geometry.Segment {
	return geometry.Segment{A: geometry.Pt(-1, y), B: geometry.Pt(1, y)}
}

// seen takes a line from the frame of stretcher j to that of stretcher i.
func seen(r joint.Ring, i, j int, slide float64, s geometry.Segment) geometry.Segment {
	m := r.Place(j, slide).Then(r.Place(i, slide).Inverse())
	return geometry.Segment{A: m.Apply(s.A), B: m.Apply(s.B)}
}

// The shoulders are where the neighbours' edges cross, laid out in plan.
func TestRingShouldersAreTheNeighboursEdges(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r := someRing(t)
		i := rapid.IntRange(0, r.Sides-1).Draw(t, "stretcher")
		y := r.Width * rapid.Float64Range(0, 1).Draw(t, "share")
		before, next := (i+r.Sides-1)%r.Sides, (i+1)%r.Sides
		inner, outer := r.Shoulders(y)
		for _, tt := range []struct {
			name      string
			neighbour int
			edge      float64
			want      float64
		}{
			{"inner, end x > 0", before, 0, inner},
			{"outer, end x > 0", before, r.Width, outer},
			{"inner, end x < 0", next, 0, -inner},
			{"outer, end x < 0", next, r.Width, -outer},
		} {
			got := cross(level(y), seen(r, i, tt.neighbour, 0, level(tt.edge)))
			if !agree(got.X, tt.want) {
				t.Errorf("%s: %.9f, want %.9f", tt.name, got.X, tt.want)
			}
		}
	})
}

// Worked by hand: a hexagon of side 200 with stretchers √3·30 mm wide. cot 120°
// is −1/√3 and sin 120° is √3/2, so all is whole.
func TestRingByHand(t *testing.T) {
	r := joint.Ring{Sides: 6, Inside: 200, Width: 30 * math.Sqrt(3), Depth: 30}
	inside, insideFar := r.Shoulders(0)
	outside, outsideFar := r.Shoulders(r.Width)
	_, endFar := r.EndLap(r.Reach(10), 3).Shoulders(0)
	for _, tt := range []struct {
		name      string
		got, want float64
	}{
		{"ring side, inner", inside, 100},
		{"ring side, outer", insideFar, 160},
		{"outer side, inner", outside, 70},
		{"outer side, outer", outsideFar, 130},
		{"angle", measure.Degrees(r.Angle()), 120},
		{"centre to axis", r.Axis(), 115 * math.Sqrt(3)},
		{"least inside", r.LeastInside(), 60},
		{"reach with no horn", r.Reach(0), 160},
		{"reach with a horn", r.Reach(10), 170},
		{"most reach", r.MostReach(), 300},
		{"lap from the end, near", r.EndLap(r.Reach(10), 3).At, 10},
		{"lap from the end, far", endFar, 70},
		{"lap from the end, angle", measure.Degrees(r.EndLap(170, 3).Angle), 60},
		{"blade height", r.Lap(3).BladeHeight(), 15},
	} {
		within(t, tt.name, tt.got, tt.want, 1e-9)
	}
}

// A triangle's shoulders lean outward, so the outer side sets the reach; a
// square's do not lean at all.
func TestReachInTriangleAndSquare(t *testing.T) {
	triangle := joint.Ring{Sides: 3, Inside: 200, Width: 30 * math.Sqrt(3), Depth: 30}
	within(t, "triangle", triangle.Reach(0), 100+30+60, 1e-9)
	square := joint.Ring{Sides: 4, Inside: 200, Width: 50, Depth: 30}
	within(t, "square", square.Reach(0), 150, 0)
	for _, r := range []joint.Ring{triangle, square} {
		if r.LeastInside() != 0 || !math.IsInf(r.MostReach(), 1) {
			t.Errorf("%d sides: least inside %v and most reach %v, want none", r.Sides, r.LeastInside(), r.MostReach())
		}
	}
}

// Both views of a lap mark the same wood.
func TestEndLapIsTheLap(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r := someRing(t)
		reach := r.Reach(rapid.Float64Range(0, 200).Draw(t, "horn"))
		middle, end := r.Lap(3), r.EndLap(reach, 3)
		if end.Check() != nil || middle.Check() != nil {
			t.Fatal(middle.Check(), end.Check())
		}
		y := r.Width * rapid.Float64Range(0, 1).Draw(t, "share")
		inner, outer := middle.Shoulders(y)
		near, far := end.Shoulders(y)
		if !agree(reach-near, outer) || !agree(reach-far, inner) {
			t.Errorf("from the end %.9f to %.9f, want %.9f to %.9f", reach-far, reach-near, inner, outer)
		}
		if !agree(near, math.Abs(near)) {
			t.Errorf("the shoulder at y = %.3f lies %.9f beyond the end", y, -near)
		}
	})
}

// A flush end lies on the outer side of the neighbour, and the longer edge
// of the piece reaches as far as the blank.
func TestFlushCorners(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r := someRing(t)
		corners := r.FlushCorners()
		edge := seen(r, 0, r.Sides-1, 0, level(r.Width))
		for _, i := range []int{1, 2} {
			if got := cross(level(corners[i].Y), edge); !agree(got.X, corners[i].X) {
				t.Errorf("corner %d at x = %.9f, want %.9f", i, corners[i].X, got.X)
			}
		}
		if got := geometry.Bounds(corners...).Width(); !agree(got, 2*r.Reach(0)) {
			t.Errorf("flush stretcher %.9f long, want %.9f", got, 2*r.Reach(0))
		}
		square := r.Corners(r.Reach(5), r.Reach(7))
		if got := geometry.Area(square); !agree(got, r.Width*(2*r.Reach(0)+12)) {
			t.Errorf("square-ended stretcher has area %.9f", got)
		}
	})
}

// touch reports whether two convex polygons share a point: no side of either
// has the other wholly outside.
func touch(a, b []geometry.Point) bool {
	apart := func(a, b []geometry.Point) bool {
		for i, p := range a {
			side, clear := a[(i+1)%len(a)].Sub(p), true
			for _, q := range b {
				clear = clear && side.Cross(q.Sub(p)) < 0
			}
			if clear {
				return true
			}
		}
		return false
	}
	return !apart(a, b) && !apart(b, a)
}

// clash reports whether two stretchers that are not neighbours share a point.
func clash(r joint.Ring, reach float64) bool {
	first := r.Place(0, 0).ApplyAll(r.Corners(reach, reach))
	for i := 2; i <= r.Sides-2; i++ {
		if touch(first, r.Place(i, 0).ApplyAll(r.Corners(reach, reach))) {
			return true
		}
	}
	return false
}

func TestMostReachIsWhereStretchersMeet(t *testing.T) {
	for sides := 4; sides <= 8; sides++ {
		for _, inside := range []float64{130, 300, 900} {
			r := joint.Ring{Sides: sides, Inside: inside, Width: 50, Depth: 30}
			most := r.MostReach()
			if sides == 4 {
				if clash(r, 1e5) {
					t.Errorf("%+v: opposite stretchers meet", r)
				}
				continue
			}
			if clash(r, most-0.01) {
				t.Errorf("%+v: stretchers meet before %.3f", r, most)
			}
			if !clash(r, most+0.01) {
				t.Errorf("%+v: stretchers do not meet at %.3f", r, most)
			}
		}
	}
}

// At the least inside the neighbours of a stretcher meet on its outer side.
func TestLeastInside(t *testing.T) {
	for sides := 5; sides <= 8; sides++ {
		r := joint.Ring{Sides: sides, Width: 50, Depth: 30}
		r.Inside = r.LeastInside()
		checkBound(t, r.Check(), "ring.inside", "ring.laps-meet")
		left := cross(level(r.Width), seen(r, 0, 1, 0, level(0)))
		right := cross(level(r.Width), seen(r, 0, sides-1, 0, level(0)))
		within(t, fmt.Sprintf("%d sides, between the laps", sides), left.Distance(right), 0, 1e-9)

		r.Inside += 0.01
		if err := r.Check(); err != nil {
			t.Error(err)
		}
		if least := r.Reach(0); !(least < r.MostReach()) {
			t.Errorf("%d sides: least reach %.3f, most %.3f", sides, least, r.MostReach())
		}
	}
}

// Equal slides close round the ring, and unequal ones do not.
func TestEqualSlidesClose(t *testing.T) {
	for sides := 3; sides <= 8; sides++ {
		r := joint.Ring{Sides: sides, Inside: 400, Width: 50, Depth: 30}
		var sum, uneven geometry.Point
		for i := range sides {
			origin := r.Place(i, 0).Apply(geometry.Point{})
			along := r.Place(i, 0).Apply(geometry.Pt(1, 0)).Sub(origin)
			sum = sum.Add(along.Mul(20))
			if i > 0 {
				uneven = uneven.Add(along.Mul(20))
			}
		}
		within(t, fmt.Sprintf("%d sides, equal slides", sides), sum.Norm(), 0, 1e-9)
		within(t, fmt.Sprintf("%d sides, one left out", sides), uneven.Norm(), 20, 1e-9)
	}
}

// While the ring is open by any slide, the closed lap at the end x > 0 of each
// stretcher fits its neighbour on both shoulders, and the neighbour has left
// the inner shoulder at the end x < 0 by just that slide, outward.
func TestOpeningKeepsClosedShoulders(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r := someRing(t)
		slide := rapid.Float64Range(0, 300).Draw(t, "slide")
		i := rapid.IntRange(0, r.Sides-1).Draw(t, "stretcher")
		before, next := (i+r.Sides-1)%r.Sides, (i+1)%r.Sides
		for _, y := range []float64{0, r.Width} {
			inner, outer := r.Shoulders(y)
			if got := cross(level(y), seen(r, i, before, slide, level(0))).X; !agree(got, inner) {
				t.Errorf("end x > 0, inner shoulder: %.9f, want %.9f", got, inner)
			}
			if got := cross(level(y), seen(r, i, before, slide, level(r.Width))).X; !agree(got, outer) {
				t.Errorf("end x > 0, outer shoulder: %.9f, want %.9f", got, outer)
			}
			if got := cross(level(y), seen(r, i, next, slide, level(0))).X; !agree(got, -inner-slide) {
				t.Errorf("end x < 0, inner shoulder: %.9f, want %.9f", got, -inner-slide)
			}
		}
		open := joint.RegularBySide(r.Sides, r.Inside+slide)
		if got := r.Place(i, slide).Apply(geometry.Point{}); got.Norm() < open.Apothem-1e-9 {
			t.Errorf("mid-length %.9f from the centre, want at least %.9f", got.Norm(), open.Apothem)
		}
	})
}

func TestRingCheck(t *testing.T) {
	good := joint.Ring{Sides: 6, Inside: 300, Width: 50, Depth: 30}
	refuses(t, good, []refused[joint.Ring]{
		{"ring.stretchers", "≥ 3", func(r *joint.Ring) { r.Sides = 2 }},
		{"ring.stretchers", "≤ 8", func(r *joint.Ring) { r.Sides = 9 }},
		{"ring.inside", "> 0 mm", func(r *joint.Ring) { r.Inside = 0 }},
		{"ring.inside", "≤ 10000 mm", func(r *joint.Ring) { r.Inside = 10001 }},
		{"ring.inside", "finite", func(r *joint.Ring) { r.Inside = math.Inf(1) }},
		{"ring.width", "> 0 mm", func(r *joint.Ring) { r.Width = 0 }},
		{"ring.depth", "≤ 1000 mm", func(r *joint.Ring) { r.Depth = 1001 }},
		{"ring.inside", "ring.laps-meet, 461.88 mm", func(r *joint.Ring) { r.Width = 400 }},
	})
}
