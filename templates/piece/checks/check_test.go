package checks

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"rodsheet/geometry/joint"
	"rodsheet/geometry/measure"
	"rodsheet/geometry/solid"
	"rodsheet/templates/piece"
	"rodsheet/templates/piece/design"
	"rodsheet/templates/piece/internal/piecetest"
	"rodsheet/templates/piece/kind"
)

// checksOf returns everything asked of a piece.
func checksOf(p piece.Piece) []Check { return withSolids(p).checks() }

// checkAll returns what is asked of several sizes together.
func checkAll(pieces []piece.Piece) []Check { return Examine(pieces).Together }

// find returns the check of that ID.
func find(t rapid.TB, checks []Check, id measure.ID) Check {
	t.Helper()
	for _, c := range checks {
		if c.ID() == id {
			return c
		}
	}
	t.Fatalf("no check %q", id)
	return Check{}
}

// advice returns the keys that the fixes of a check turn, and to what, in one line:
// "ring.width 29 mm, legs.tenon 16 mm".
func advice(c Check) string {
	out := make([]string, len(c.Fixes))
	for i, f := range c.Fixes {
		out[i] = told(f.Turn)
		for _, also := range f.Follows {
			out[i] += " + " + told(also)
		}
	}
	return strings.Join(out, ", ")
}

func told(t kind.Turn) string {
	if t.Key == "ring.plain-end" {
		return string(t.Key)
	}
	return string(t.Key) + " " + t.To.Text(measure.Millimetre)
}

// graded expects the grade of one check of a design, and returns it.
func graded(t *testing.T, d design.Design, id measure.ID, want kind.Grade) Check {
	t.Helper()
	c := find(t, checksOf(piecetest.Worked(t, d)), id)
	if c.Grade != want {
		t.Errorf("%s %v, want %v: %+v", id, c.Grade, want, c)
	}
	return c
}

// overlapOf returns the extent along the first stretcher of what leg 1 and the
// neighbour that crosses beside it both claim.
func overlapOf(p piece.Piece) float64 {
	parts := p.Parts()
	kinds := len(parts) / p.Frame.Ring.Sides
	neighbour := parts[kinds*(p.Frame.Ring.Sides-1)]
	shared := solid.Part{Pieces: solid.Clash(parts[1], neighbour)}
	return shared.Bounds().Size().X
}

// The closed form of the clearance against the solids: they clash where it is
// negative and nowhere else, and as deep as it says.
func TestHeadCheckIsWhatTheSolidsSay(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d := piecetest.Sound(t)
		p := piecetest.Worked(t, d)
		d.Legs.At = p.Frame.LeastAt(rapid.Float64Range(-12, 12).Draw(t, "gap"))
		p = piecetest.Worked(t, d)
		gap := p.Frame.Clearance()
		if math.Abs(gap) < 0.3 {
			// What a leaning leg takes off the arris is a tetrahedron, a fraction
			// of gap³: below the least volume that counts.
			t.Skip("too near for the least clash to count")
		}
		c := find(t, checksOf(p), "leg-head")
		if (c.Grade == kind.Fail) != (gap < 0) || c.Value.Value != gap {
			t.Fatalf("clearance %.6f: %v, %+v", gap, c.Grade, c.Value)
		}
		if got, want := overlapOf(p), math.Max(0, -gap); math.Abs(got-want) > 1e-6 {
			t.Errorf("the solids overlap by %.9f, the check says %.9f", got, want)
		}
	})
}

// Whatever Solve accepts is asked and answered: every fix that is offered, once
// made, holds and is no worse.
func TestEveryPieceIsAnswered(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p, err := piece.Solve(piecetest.Any(t))
		if err != nil {
			t.Skip("no such piece")
		}
		checks := checksOf(p)
		grades := map[measure.ID]kind.Grade{}
		for _, c := range checks {
			if _, twice := grades[c.ID()]; twice || c.Found.ID == "" {
				t.Errorf("check %q twice, or without a finding", c.ID())
			}
			grades[c.ID()] = c.Grade
		}
		for _, c := range checks {
			for i, m := range c.Fixes {
				for _, asked := range withSolids(piecetest.Worked(t, m.Design)).ask() {
					for _, again := range asked {
						if again.ID() == c.ID() && again.Grade != kind.Pass {
							t.Errorf("%s: fix %d %+v does not mend it", c.ID(), i, m.Turn)
						}
						if was, asked := grades[again.ID()]; again.Grade > was && (asked || again.Grade == kind.Fail) {
							t.Errorf("%s: fix %+v: %s is %v and was %v", c.ID(), m.Turn, again.ID(), again.Grade, was)
						}
					}
				}
			}
		}
	})
}

// One figure too much or too little, and the check that says so.
func TestFaults(t *testing.T) {
	five := func(d *design.Design) {
		d.Ring.Sides, d.Ring.Inside = 5, 200
	}
	for _, tt := range []struct {
		check  measure.ID
		grade  kind.Grade
		change func(*design.Design)
		advice string // begins so
	}{
		{"short-grain", kind.Warn, func(d *design.Design) { d.Legs.Clear = 1 },
			"legs.clear 2 mm"},
		{"together", kind.Fail, func(d *design.Design) { d.Ring.Plain = design.ClosedEnd },
			"ring.plain-end"},
		{"together", kind.Warn, func(d *design.Design) { d.Ring.Plain, d.Ring.Slack = design.ClosedEnd, 0.5 }, ""},
		{"horn", kind.Warn, func(d *design.Design) { d.Ring.Plain, d.Ring.Slack, d.Ring.Horn = design.ClosedEnd, 0.5, 9 },
			// 10 + 0.5/sin 60° = 10.577
			"ring.horn 10.6 mm"},
		{"horn", kind.Fail, func(d *design.Design) { d.Ring.Plain, d.Ring.Slack, d.Ring.Horn = design.ClosedEnd, 0.5, 0.5 },
			"ring.plain-end"},
		{"ends-finished", kind.Fail, func(d *design.Design) { five(d); d.Ring.Horn = 300; d.Legs.At = 420 }, ""},
		{"ends-rough", kind.Warn, func(d *design.Design) { five(d); d.Ring.Horn = 292 }, "ring.inside 20"},
		{"wood-at-laps", kind.Warn, func(d *design.Design) { d.Ring.Depth = 11.5 }, "ring.depth 12 mm"},
		{"cheeks", kind.Warn, func(d *design.Design) { d.Legs.Tenon = 17 }, "ring.width 29 mm, legs.tenon 16 mm"},
		{"tenon", kind.Warn, func(d *design.Design) { d.Legs.Tenon = 5.5 }, "legs.tenon 6 mm"},
		{"taper-start", kind.Fail, func(d *design.Design) { d.Legs.Taper.Start = 25 },
			// 36/cos 16° − 40·tan 16° = 25.98
			"legs.taper.start 26 mm"},
		{"taper-start", kind.Fail, func(d *design.Design) { d.Legs.Taper.Start = 30; d.Legs.Taper.Faces = joint.OppositeFaces },
			// 36/cos 16° = 37.45
			"legs.taper.start 37.5 mm"},
		{"foot", kind.Warn, func(d *design.Design) { d.Legs.Taper.Foot = 8 }, "legs.taper.foot 12 mm"},
		{"standing", kind.Warn, func(d *design.Design) {}, "top.diameter "},
		{"standing", kind.Pass, func(d *design.Design) { d.Top.Diameter = 300 }, ""},
		{"loose-top", kind.Warn, func(d *design.Design) {}, ""},
		{"blade-laps", kind.Warn, func(d *design.Design) { d.Saw.Highest = 17 }, ""},
		{"blade-bridle", kind.Warn, func(d *design.Design) { d.Saw.Highest = 42 }, ""},
		{"stop-reach", kind.Warn, func(d *design.Design) { d.Saw.StopReach = 97 }, ""},
		{"dado", kind.Warn, func(d *design.Design) { d.Saw.Dado = 29 }, ""},
		{"pads-on-stretchers", kind.Warn, func(d *design.Design) { d.Top.Pads.Diameter = 30 }, "top.pads.diameter 28 mm"},
		{"pads-shoulder", kind.Warn, func(d *design.Design) { d.Top.Pads.Outermost, d.Top.Pads.At = false, 140 },
			// 130 + 14/tan 60° − 11/sin 60° = 125.38; 138.083 − 140 would leave nothing of the pad
			"top.pads.mid-to-pad 125.3 mm"},
		{"pads-edge", kind.Warn, func(d *design.Design) { d.Top.Diameter = 340 }, "top.diameter 350 mm"},
		{"pads-edge", kind.Fail, func(d *design.Design) { d.Top.Diameter = 300 }, "top.diameter 350 mm"},
		{"glass-corners", kind.Warn, func(d *design.Design) { d.Top.Outline, d.Top.Overhang = design.RingTop, 60 },
			"top.corner-size 8 mm"},
		{"frame-under-top", kind.Warn, func(d *design.Design) { d.Top.Diameter = 490 }, "top.diameter 501 mm"},
		{"proud-head", kind.Fail, func(d *design.Design) { d.Legs.Proud = 9 }, "legs.proud 8 mm"},
		{"board.stretcher", kind.Fail, func(d *design.Design) {
			d.Wood.Boards = []design.Board{{Length: 482, Width: 150, Thickness: 50, Count: 9}}
		}, ""},
		{"board.stretcher", kind.Warn, func(d *design.Design) {
			d.Wood.Boards = []design.Board{{Length: 2000, Width: 150, Thickness: 30, Count: 9}}
		}, ""},
		{"board.leg", kind.Pass, func(d *design.Design) {
			d.Wood.Boards = []design.Board{{Length: 482, Width: 43, Thickness: 31, Count: 9}}
		}, ""},
		{"board.top-board", kind.Fail, func(d *design.Design) {
			d.Top.Kind, d.Top.Thickness = design.WoodTop, 18
			// 640 across and 20 of allowance
			d.Wood.Boards = []design.Board{{Length: 659, Width: 150, Thickness: 50, Count: 9}}
		}, ""},
		{"board.test-leg", kind.Warn, func(d *design.Design) {
			d.Ring.Inside, d.Legs.Height, d.Top.Pads = 120, 200, design.Pads{}
			d.Wood.Boards = []design.Board{{Length: 319, Width: 150, Thickness: 50, Count: 9}}
		}, ""},
	} {
		d := piecetest.Low()
		tt.change(&d)
		c := graded(t, d, tt.check, tt.grade)
		if !strings.HasPrefix(advice(c), tt.advice) {
			t.Errorf("%s: advice %q, want %q first", tt.check, advice(c), tt.advice)
		}
	}
}

// The boards are asked by the figure that fails: of those long enough the
// thickest, and of those thick enough the one that lacks the least width. The
// blank of a stretcher is 482.x long before it is rounded up, 28 + 4 by 36 + 4.
func TestBoardsSayWhatFails(t *testing.T) {
	for _, tt := range []struct {
		boards []design.Board
		figure measure.ID
		value  float64
		limit  float64
	}{
		{[]design.Board{{Length: 2400, Width: 25, Thickness: 20}}, "blank-thickness", 32, 20},
		{[]design.Board{{Length: 2400, Width: 25, Thickness: 20}, {Length: 300, Width: 200, Thickness: 50}}, "blank-thickness", 32, 20},
		{[]design.Board{{Length: 2400, Width: 25, Thickness: 34}, {Length: 2400, Width: 30, Thickness: 50}}, "blank-width", 32, 30},
		{[]design.Board{{Length: 2400, Width: 39, Thickness: 34}}, "blank-width", 40, 39},
		{[]design.Board{{Length: 400, Width: 39, Thickness: 34}}, "blank-length", 483, 400},
		{[]design.Board{{Length: 400, Width: 39, Thickness: 34}, {Length: 2400, Width: 100, Thickness: 34}}, "blank-length", 483, 2400},
	} {
		d := piecetest.Low()
		d.Wood.ExtraWidth, d.Wood.ExtraThickness, d.Wood.Boards = 4, 4, tt.boards
		for i := range tt.boards {
			tt.boards[i].Count = 1
		}
		c := find(t, checksOf(piecetest.Worked(t, d)), "board.stretcher")
		short := c.Value.Value > c.Limit.Value
		if c.Figure != tt.figure || c.Value.Value != tt.value || c.Limit.Value != tt.limit || short != (c.Grade != kind.Pass) {
			t.Errorf("%+v; want %+v", c, tt)
		}
	}
}

// A taper at the limit of the check leaves the leg inside the stretcher as it
// was; half a millimetre higher it does not.
func TestTaperLimitAgainstSolids(t *testing.T) {
	const nothing = 1e-4 // mm³, of rounding
	rapid.Check(t, func(t *rapid.T) {
		d := piecetest.Sound(t)
		// The leg mortised keeps all its faces at the height of the joint.
		d.Legs.Proud, d.Legs.Mortise = 0, joint.MortiseInLeg
		whole := piecetest.Worked(t, d)
		d.Legs.Taper = &design.Taper{Start: 1, Foot: d.Legs.Breadth * 0.8, Faces: joint.TaperFaces(rapid.IntRange(0, 3).Draw(t, "faces"))}
		p, err := piece.Solve(d)
		if err != nil {
			t.Skip("no such taper")
		}
		limit := leastTaperStart(p)
		within := func(q piece.Piece) float64 {
			return q.Leg().Cut(solid.Through(solid.V(0, 0, 0), solid.V(0, 0, -1))).Volume()
		}
		at := func(start float64) (piece.Piece, bool) {
			taper := *d.Legs.Taper
			taper.Start = start
			e := d
			e.Legs.Taper = &taper
			q, err := piece.Solve(e)
			return q, err == nil
		}
		if limit < 1 {
			t.Skip("the joint is lost in the splay")
		}
		q, ok := at(limit)
		if !ok {
			t.Skip("no such taper")
		}
		if lost := within(whole) - within(q); lost > nothing {
			t.Errorf("a taper from %.6f takes %.9f mm³ off the joint", limit, lost)
		}
		if find(t, checksOf(q), "taper-start").Grade != kind.Pass {
			t.Error("the limit does not hold")
		}
		higher, _ := at(limit - 0.5)
		if lost := within(whole) - within(higher); !(lost > nothing) {
			t.Errorf("a taper from %.6f takes nothing off the joint", limit-0.5)
		}
	})
}

// buildable reports whether none of the checks fails.
func buildable(checks []Check) bool {
	for _, c := range checks {
		if c.Grade == kind.Fail {
			return false
		}
	}
	return true
}

func TestBuildable(t *testing.T) {
	for _, tt := range []struct {
		grades []kind.Grade
		want   bool
	}{{nil, true}, {[]kind.Grade{kind.Pass, kind.Warn}, true}, {[]kind.Grade{kind.Pass, kind.Fail, kind.Pass}, false}} {
		var checks []Check
		for _, g := range tt.grades {
			checks = append(checks, Check{Grade: g})
		}
		if got := buildable(checks); got != tt.want {
			t.Errorf("Buildable(%v) = %v", tt.grades, got)
		}
	}
}

func BenchmarkCheck(b *testing.B) {
	for _, n := range []int{3, 4, 6, 8} {
		d := piecetest.Low()
		d.Ring.Sides, d.Top.Diameter, d.Wood.Density = n, 480, 670
		d.Ring.Horn = 4
		b.Run(fmt.Sprintf("%d sides", n), func(b *testing.B) {
			for b.Loop() {
				p, err := piece.Solve(d)
				if err != nil {
					b.Fatal(err)
				}
				checksOf(p)
				withSolids(p).groups()
			}
		})
	}
}
