package checks

import (
	"fmt"
	"math"
	"regexp"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"rodsheet/geometry"
	"rodsheet/geometry/joint"
	"rodsheet/geometry/measure"
	"rodsheet/geometry/solid"
	"rodsheet/templates/piece"
	"rodsheet/templates/piece/design"
	"rodsheet/templates/piece/internal/piecetest"
)

// find returns the check of that name.
func find(t rapid.TB, checks []Check, name string) Check {
	t.Helper()
	for _, c := range checks {
		if c.Name == name {
			return c
		}
	}
	t.Fatalf("no check %q", name)
	return Check{}
}

// graded expects the grade of one check of a design, and returns it.
func graded(t *testing.T, d design.Design, name string, want Grade) Check {
	t.Helper()
	c := find(t, checksOf(piecetest.Worked(t, d)), name)
	if c.Grade != want {
		t.Errorf("%s %v, want %v: %s %s", name, c.Grade, want, c.Measured(d.Unit), c.Words)
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
		c := find(t, checksOf(p), "leg head and lap")
		if (c.Grade == Fail) != (gap < 0) || c.Value.Value != gap {
			t.Fatalf("clearance %.6f: %v, %+v", gap, c.Grade, c.Value)
		}
		if got, want := overlapOf(p), math.Max(0, -gap); math.Abs(got-want) > 1e-6 {
			t.Errorf("the solids overlap by %.9f, the check says %.9f", got, want)
		}
	})
}

// drawPiece draws any design with a top, sound or not.
func drawPiece(t *rapid.T) design.Design {
	mm := func(lo, hi float64, name string) float64 { return rapid.Float64Range(lo, hi).Draw(t, name) }
	pick := func(last int, name string) int { return rapid.IntRange(0, last).Draw(t, name) }
	n := 3 + pick(5, "sides")
	d := design.Design{
		Unit: measure.Unit(pick(1, "unit")),
		Ring: design.Ring{
			Ring:       joint.Ring{Sides: n, Inside: mm(60, 600, "inside"), Width: mm(10, 60, "width"), Depth: mm(10, 70, "depth")},
			LegEndOver: rapid.Bool().Draw(t, "over"), Plain: design.PlainEnd(pick(2, "plain")),
			Horn: mm(0, 60, "horn"), Slack: mm(0, 2, "slack"),
		},
		Legs: design.Legs{
			Breadth: mm(15, 70, "breadth"), Mortise: joint.BridleMember(pick(1, "mortise")),
			Given: mm(0, 0.6, "splay"), Height: mm(150, 800, "height"), Clear: mm(0, 6, "clear"),
			At: float64(pick(1, "own place")) * mm(20, 500, "at"), Proud: float64(pick(1, "proud")) * mm(0, 12, "proud by"),
		},
		Top: design.Top{
			Kind: design.TopKind(pick(2, "kind")), Outline: design.TopOutline(pick(1, "outline")),
			Thickness: mm(4, 25, "thickness"), Overhang: mm(-20, 150, "overhang"),
			Corner: design.Corner(pick(2, "corner")), CornerSize: mm(0, 20, "corner size"),
			Pads: design.Pads{Diameter: float64(pick(1, "pads")) * mm(8, 70, "pad"), Height: mm(2, 12, "pad height"),
				At: mm(-100, 250, "pad at"), Outermost: rapid.Bool().Draw(t, "outermost")},
		},
		Wood: design.Wood{Species: "Ash, white", MoistureFrom: 8, MoistureTo: 12, ExtraLength: 20,
			Boards: []design.Board{{Length: mm(300, 1200, "board"), Width: 150, Thickness: mm(20, 80, "thick"), Count: 3}}},
		Saw: design.Saw{Kerf: 3, Highest: mm(10, 80, "highest"), Dado: mm(5, 30, "dado"), StopReach: mm(50, 400, "reach")},
	}
	if rapid.Bool().Draw(t, "free") {
		d.Top.Outline, d.Top.Corner = design.FreeOutline, design.SharpCorner
		d.Top.Points = []geometry.Point{{X: -300, Y: -mm(100, 300, "a")}, {X: mm(100, 400, "b"), Y: -200}, {X: 350, Y: 250}, {X: -mm(100, 300, "c"), Y: 300}}
	}
	if rapid.Bool().Draw(t, "tapered") {
		d.Legs.Taper = &design.Taper{Start: mm(0, 140, "start"), Foot: mm(6, 60, "foot"), Faces: joint.TaperFaces(pick(3, "faces"))}
	}
	return d
}

// Whatever Work accepts is asked and answered: every mend that is offered, once
// made, holds and is no worse, and no text holds a figure that is none.
func TestEveryPieceIsAnswered(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p, err := piece.Solve(drawPiece(t))
		if err != nil {
			t.Skip("no such piece")
		}
		checks := checksOf(p)
		grades := map[string]Grade{}
		for _, c := range checks {
			if _, twice := grades[c.Name]; twice || c.Words == "" {
				t.Errorf("check %q twice, or without words", c.Name)
			}
			grades[c.Name] = c.Grade
		}
		for _, c := range checks {
			for i, m := range c.Fixes {
				for _, asked := range withSolids(piecetest.Worked(t, m.Design)).ask() {
					for _, again := range asked {
						if again.Name == c.Name && again.Grade != Pass {
							t.Errorf("%s: mend %d %q does not mend it", c.Name, i, m.Words)
						}
						if was, asked := grades[again.Name]; again.Grade > was && (asked || again.Grade == Fail) {
							t.Errorf("%s: mend %q: %s is %v and was %v", c.Name, m.Words, again.Name, again.Grade, was)
						}
					}
				}
			}
		}
		text := fmt.Sprint(figurePanels(p), gradedPanels(checks, p.Design.Unit), checkAll([]piece.Piece{p, p}))
		if twice := inTwice.FindString(fmt.Sprint(figurePanels(p), gradedPanels(checks, measure.Inch))); twice != "" {
			t.Errorf("an inch runs into a word: %q", twice)
		}
		for _, bad := range []string{"NaN", "Inf", "-0 ", "%!"} {
			if strings.Contains(text, bad) {
				t.Errorf("%q in %s", bad, text)
			}
		}
	})
}

// inTwice is a length in inches before the word "in".
var inTwice = regexp.MustCompile(`\bin( \([^)]*\))? in\b.*`)

// One figure too much or too little, and the check that says so.
func TestFaults(t *testing.T) {
	five := func(d *design.Design) {
		d.Ring.Sides, d.Ring.Inside = 5, 200
	}
	for _, tt := range []struct {
		check  string
		grade  Grade
		change func(*design.Design)
		advice string // begins so
	}{
		{"wood between lap and leg", Warn, func(d *design.Design) { d.Legs.Clear = 1 },
			"leave 2 mm clear between leg and neighbour"},
		{"putting the ring together", Fail, func(d *design.Design) { d.Ring.Plain = design.ClosedEnd },
			"leave the outer shoulder at every plain end open"},
		{"putting the ring together", Warn, func(d *design.Design) { d.Ring.Plain, d.Ring.Slack = design.ClosedEnd, 0.5 }, ""},
		{"horn at the plain end", Warn, func(d *design.Design) { d.Ring.Plain, d.Ring.Slack, d.Ring.Horn = design.ClosedEnd, 0.5, 9 },
			// 10 + 0.5/sin 60° = 10.577
			"leave a horn of 10.6 mm"},
		{"horn at the plain end", Fail, func(d *design.Design) { d.Ring.Plain, d.Ring.Slack, d.Ring.Horn = design.ClosedEnd, 0.5, 0.5 },
			"leave the outer shoulder"},
		{"ends, finished", Fail, func(d *design.Design) { five(d); d.Ring.Horn = 300; d.Legs.At = 420 }, ""},
		{"ends before trimming", Warn, func(d *design.Design) { five(d); d.Ring.Horn = 292 }, "make the inside of the ring 20"},
		{"wood left at the laps", Warn, func(d *design.Design) { d.Ring.Depth = 11.5 }, "make the stretchers 12 mm deep"},
		{"cheeks of the bridle", Warn, func(d *design.Design) { d.Legs.Tenon = 17 }, "make the stretchers 29 mm wide and the legs as thick, or make the tenon 16 mm thick"},
		{"tenon of the bridle", Warn, func(d *design.Design) { d.Legs.Tenon = 5.5 }, "make the tenon 6 mm thick"},
		{"taper and joint", Fail, func(d *design.Design) { d.Legs.Taper.Start = 25 },
			// 36/cos 16° − 40·tan 16° = 25.98
			"start the taper at 26 mm"},
		{"taper and joint", Fail, func(d *design.Design) { d.Legs.Taper.Start = 30; d.Legs.Taper.Faces = joint.OppositeFaces },
			// 36/cos 16° = 37.45
			"start the taper at 37.5 mm"},
		{"foot", Warn, func(d *design.Design) { d.Legs.Taper.Foot = 8 }, "leave the foot 12 mm"},
		{"standing", Warn, func(d *design.Design) {}, "make the diameter of the top "},
		{"standing", Pass, func(d *design.Design) { d.Top.Diameter = 300 }, ""},
		{"loose top", Warn, func(d *design.Design) {}, ""},
		{"blade at the laps", Warn, func(d *design.Design) { d.Saw.Highest = 17 }, ""},
		{"blade at the bridle", Warn, func(d *design.Design) { d.Saw.Highest = 42 }, ""},
		{"reach of the stop", Warn, func(d *design.Design) { d.Saw.StopReach = 97 }, ""},
		{"dado set and lap", Warn, func(d *design.Design) { d.Saw.Dado = 29 }, ""},
		{"pads on the stretchers", Warn, func(d *design.Design) { d.Top.Pads.Diameter = 30 }, "make the diameter of the pads 28 mm"},
		{"pads and shoulders", Warn, func(d *design.Design) { d.Top.Pads.Outermost, d.Top.Pads.At = false, 140 },
			// 130 + 14/tan 60° − 11/sin 60° = 125.38; 138.083 − 140 would leave nothing of the pad
			"set the pads 125.3 mm from mid-length"},
		{"pads and edge of the top", Warn, func(d *design.Design) { d.Top.Diameter = 340 }, "make the diameter of the top 350 mm"},
		{"pads and edge of the top", Fail, func(d *design.Design) { d.Top.Diameter = 300 }, "make the diameter of the top 350 mm"},
		{"corners of the glass", Warn, func(d *design.Design) { d.Top.Outline, d.Top.Overhang = design.RingTop, 60 },
			"round the corners to a radius of 8 mm"},
		{"frame under the top", Warn, func(d *design.Design) { d.Top.Diameter = 490 }, "make the diameter of the top 501 mm"},
		{"proud head and top", Fail, func(d *design.Design) { d.Legs.Proud = 9 }, "leave the heads 8 mm proud"},
		{"boards for the stretchers", Fail, func(d *design.Design) {
			d.Wood.Boards = []design.Board{{Length: 482, Width: 150, Thickness: 50, Count: 9}}
		}, ""},
		{"boards for the stretchers", Warn, func(d *design.Design) {
			d.Wood.Boards = []design.Board{{Length: 2000, Width: 150, Thickness: 30, Count: 9}}
		}, ""},
		{"boards for the legs", Pass, func(d *design.Design) {
			d.Wood.Boards = []design.Board{{Length: 482, Width: 43, Thickness: 31, Count: 9}}
		}, ""},
		{"boards for the top boards", Fail, func(d *design.Design) {
			d.Top.Kind, d.Top.Thickness = design.WoodTop, 18
			// 640 across and 20 of allowance
			d.Wood.Boards = []design.Board{{Length: 659, Width: 150, Thickness: 50, Count: 9}}
		}, ""},
		{"boards for the test pieces, leg stock", Warn, func(d *design.Design) {
			d.Ring.Inside, d.Legs.Height, d.Top.Pads = 120, 200, design.Pads{}
			d.Wood.Boards = []design.Board{{Length: 319, Width: 150, Thickness: 50, Count: 9}}
		}, ""},
	} {
		d := piecetest.Low()
		tt.change(&d)
		c := graded(t, d, tt.check, tt.grade)
		if !strings.HasPrefix(c.advice(), tt.advice) {
			t.Errorf("%s: advice %q, want %q first", tt.check, c.advice(), tt.advice)
		}
	}
}

// The boards are asked by the figure that fails: of those long enough the
// thickest, and of those thick enough the one that lacks the least width. The
// blank of a stretcher is 482.x long before it is rounded up, 28 + 4 by 36 + 4.
func TestBoardsSayWhatFails(t *testing.T) {
	for _, tt := range []struct {
		boards []design.Board
		want   string
	}{
		{[]design.Board{{Length: 2400, Width: 25, Thickness: 20}}, "thickness of the blank 32 mm, at most 20 mm"},
		{[]design.Board{{Length: 2400, Width: 25, Thickness: 20}, {Length: 300, Width: 200, Thickness: 50}}, "thickness of the blank 32 mm, at most 20 mm"},
		{[]design.Board{{Length: 2400, Width: 25, Thickness: 34}, {Length: 2400, Width: 30, Thickness: 50}}, "width of the blank 32 mm, at most 30 mm"},
		{[]design.Board{{Length: 2400, Width: 39, Thickness: 34}}, "width of the blank 40 mm, at most 39 mm"},
		{[]design.Board{{Length: 400, Width: 39, Thickness: 34}}, "length of the blank 483 mm, at most 400 mm"},
		{[]design.Board{{Length: 400, Width: 39, Thickness: 34}, {Length: 2400, Width: 100, Thickness: 34}}, "length of the blank 483 mm, at most 2400 mm"},
	} {
		d := piecetest.Low()
		d.Wood.ExtraWidth, d.Wood.ExtraThickness, d.Wood.Boards = 4, 4, tt.boards
		for i := range tt.boards {
			tt.boards[i].Count = 1
		}
		c := find(t, checksOf(piecetest.Worked(t, d)), "boards for the stretchers")
		short := c.Value.Value > c.Limit.Value
		if got := c.Measured(d.Unit); got != tt.want || short != (c.Grade != Pass) {
			t.Errorf("%v: %v, %s; want %s", tt.boards, c.Grade, got, tt.want)
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
		if find(t, checksOf(q), "taper and joint").Grade != Pass {
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
		if c.Grade == Fail {
			return false
		}
	}
	return true
}

func TestBuildable(t *testing.T) {
	for _, tt := range []struct {
		grades []Grade
		want   bool
	}{{nil, true}, {[]Grade{Pass, Warn}, true}, {[]Grade{Pass, Fail, Pass}, false}} {
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
				Groups(p)
			}
		})
	}
}
