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

// Dihedral angles from Coxeter, Regular Polytopes, Table I (from memory); the
// rest computed.
func TestHopperAgainstRegularSolids(t *testing.T) {
	for _, row := range tableRows(t, "platonic-solids.csv") {
		c := joint.HopperCorner(int(fraction(t, row[1])), measure.Radians(fraction(t, row[2])))
		for i, got := range []float64{c.OffSquare(), c.Tilt(), c.Dihedral()} {
			within(t, row[0], measure.Degrees(got), fraction(t, row[i+3]), 2e-6)
		}
	}
}

// Crown moulding at a spring of 38° from the wall, so 52° from level: a
// published worked example; its row for 90° is from memory.
func TestSlopingMoulding(t *testing.T) {
	for _, tt := range []struct{ corner, mitre, tilt, tolerance float64 }{
		{135, 14.30638, 17.55124, 1e-5},
		{90, 31.62, 33.86, 0.005},
	} {
		c := joint.SlopingCorner{Slope: measure.Radians(52), Next: measure.Radians(52), Angle: measure.Radians(tt.corner)}
		within(t, "mitre", measure.Degrees(c.OffSquare()), tt.mitre, tt.tolerance)
		within(t, "tilt", measure.Degrees(c.Tilt()), tt.tilt, tt.tolerance)
	}
}

// Every row of a published setting chart.
func TestHopperAgainstChart(t *testing.T) {
	for _, row := range tableRows(t, "compound-mitre.csv") {
		c := joint.HopperCorner(int(fraction(t, row[1])), measure.Radians(fraction(t, row[0])))
		within(t, "slope and sides "+row[0]+", "+row[1]+": off square", measure.Degrees(c.OffSquare()), fraction(t, row[2]), 0.006)
		within(t, "slope and sides "+row[0]+", "+row[1]+": tilt", measure.Degrees(c.Tilt()), fraction(t, row[3]), 0.006)
	}
}

// An upright box is mitred by its tilt alone, and a flat frame all but by its mitre.
func TestUprightAndFlatCorners(t *testing.T) {
	upright, flat := joint.HopperCorner(6, math.Pi/2), joint.HopperCorner(6, 1e-7)
	within(t, "upright, off square", upright.OffSquare(), 0, 1e-12)
	within(t, "upright, tilt", upright.Tilt(), math.Pi/6, 1e-12)
	within(t, "flat, off square", flat.OffSquare(), math.Pi/6, 1e-12)
	within(t, "flat, tilt", flat.Tilt(), 0, 1e-7)
	within(t, "upright square box, butt tilt", joint.HopperCorner(4, math.Pi/2).ButtTilt(), 0, 1e-12)
}

// Two boards as planes. The line in which they meet is the end of both; the plane
// between their normals halves the corner, and the face of either is a butted end.
func TestSlopingCornerAgainstPlanes(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		slope := rapid.Float64Range(1, 89)
		c := joint.SlopingCorner{
			Slope: measure.Radians(slope.Draw(t, "slope")), Next: measure.Radians(slope.Draw(t, "next")),
			Angle: measure.Radians(rapid.Float64Range(10, 170).Draw(t, "corner")),
		}
		// A level board, its edge along the vector, is turned up about that edge.
		board := func(edge r3.Vec, slope, hand float64) (outward, up r3.Vec) {
			turn := r3.NewRotation(hand*slope, edge)
			return turn.Rotate(r3.Vec{Z: -1}), turn.Rotate(r3.Cross(r3.Vec{Z: hand}, edge))
		}
		first := r3.Vec{X: 1}
		second := r3.Vec{X: math.Cos(c.Angle), Y: math.Sin(c.Angle)}
		n1, up1 := board(first, c.Slope, -1)
		n2, up2 := board(second, c.Next, 1)
		end := r3.Unit(r3.Cross(n1, n2))
		if end.Z < 0 {
			end = r3.Scale(-1, end)
		}
		offSquare := func(edge, up r3.Vec) float64 { return math.Atan2(-r3.Dot(end, edge), r3.Dot(end, up)) }
		halving := r3.Unit(r3.Sub(n1, n2)) // the normal of the plane of the mitre
		for _, tt := range []struct {
			name      string
			got, want float64
		}{
			{"off square", c.OffSquare(), offSquare(first, up1)},
			{"off square of the neighbour", c.Turned().OffSquare(), offSquare(second, up2)},
			{"dihedral", c.Dihedral(), math.Pi - math.Acos(r3.Cos(n1, n2))},
			{"tilt", c.Tilt(), math.Asin(math.Abs(r3.Dot(n1, halving)))},
			{"butt tilt", c.ButtTilt(), math.Asin(r3.Dot(n1, n2))},
		} {
			if math.Abs(tt.got-tt.want) > 1e-7 {
				t.Errorf("%s %.9f, want %.9f", tt.name, tt.got, tt.want)
			}
		}
	})
}

// From the settings of the saw back to the slope.
func TestSlopeOfSettings(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		want := joint.HopperCorner(rapid.IntRange(3, 12).Draw(t, "sides"), measure.Radians(rapid.Float64Range(2, 88).Draw(t, "slope")))
		both := joint.CornerOfMitre(want.OffSquare(), want.Tilt())
		byMitre, err := joint.SlopeOfMitre(want.Angle, want.OffSquare())
		if err != nil {
			t.Fatal(err)
		}
		byTilt, err := joint.SlopeOfTilt(want.Angle, want.Tilt())
		if err != nil {
			t.Fatal(err)
		}
		for name, got := range map[string]float64{"both": both.Slope, "off square": byMitre, "tilt": byTilt} {
			if math.Abs(got-want.Slope) > 1e-9 {
				t.Errorf("slope by %s %.12f, want %.12f", name, got, want.Slope)
			}
		}
		if math.Abs(both.Angle-want.Angle) > 1e-9 {
			t.Errorf("corner %.12f, want %.12f", both.Angle, want.Angle)
		}
	})
	_, err := joint.SlopeOfMitre(math.Pi/2, math.Pi/4)
	checkBound(t, err, "corner.off-square", "corner.flat-frame, 45°")
	_, err = joint.SlopeOfTilt(math.Pi/2, measure.Radians(46))
	checkBound(t, err, "corner.tilt", "corner.upright-box, 45°")
}

func TestSlopingCornerCheck(t *testing.T) {
	if err := joint.HopperCorner(4, 1).Check(); err != nil {
		t.Error(err)
	}
	checkBound(t, joint.HopperCorner(4, 0.01).Check(), "corner.slope", "≥ 1°")
	checkBound(t, joint.HopperCorner(4, 1.6).Check(), "corner.slope", "≤ 90°")
	checkBound(t, joint.SlopingCorner{Slope: 1, Next: 2, Angle: 1}.Check(), "corner.slope", "≤ 90°")
	checkBound(t, joint.SlopingCorner{Slope: 1, Next: 1}.Check(), "corner.angle", "> 0°")
	checkBound(t, joint.SlopingCorner{Slope: 1, Next: 1, Angle: math.Pi}.Check(), "corner.angle", "< 180°")
}

func TestHopperCheck(t *testing.T) {
	good := joint.Hopper{SlopingCorner: joint.HopperCorner(5, 1), Sides: 5}
	if err := good.Check(); err != nil {
		t.Error(err)
	}
	for _, tt := range []struct {
		figure measure.ID
		want   string
		sides  int
		slope  float64
		butt   bool
	}{
		{"hopper.sides", "≤ 12", 13, 1, false},
		{"hopper.sides", "≥ 3", 2, 1, false},
		{"hopper.tilt", "≤ 45°", 3, 70, false}, // the tetrahedron
		{"hopper.tilt", "≤ 45°", 12, 85, true},
		{"corner.slope", "≤ 90°", 4, 91, true},
	} {
		h := joint.Hopper{SlopingCorner: joint.HopperCorner(tt.sides, measure.Radians(tt.slope)), Sides: tt.sides, Butt: tt.butt}
		checkBound(t, h.Check(), tt.figure, tt.want)
	}
}

// The section holds what the figures say: both boards as thick as they are, square to
// their sides, the ends tilted, no wood twice and no gap between the boards.
func TestHopperSection(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		sides := rapid.IntRange(3, 8).Draw(t, "sides")
		h := joint.Hopper{
			SlopingCorner: joint.HopperCorner(sides, measure.Radians(rapid.Float64Range(5, 88).Draw(t, "slope"))),
			Butt:          rapid.Bool().Draw(t, "butt"),
		}
		first, second := h.Section(10, 200)
		for name, board := range map[string][]geometry.Point{"first": first, "second": second} {
			long, end := board[1].Sub(board[0]), board[3].Sub(board[2])
			if name == "second" {
				end = board[3].Sub(board[0])
			} else {
				long = board[2].Sub(board[1])
			}
			tilt := math.Abs(math.Pi/2 - math.Acos(long.Dot(end)/long.Norm()/end.Norm()))
			if math.Abs(tilt-math.Abs(h.EndTilt())) > 1e-9 {
				t.Errorf("%s: tilt %.9f, want %.9f", name, tilt, h.EndTilt())
			}
			outer, hollow := board[3].Distance(board[0]), board[2].Distance(board[1])
			if name == "second" {
				outer, hollow = board[3].Distance(board[2]), board[1].Distance(board[0])
			}
			if (outer > hollow) != h.OuterLonger() && math.Abs(h.EndTilt()) > 1e-9 {
				t.Errorf("%s: outer side %.3f, hollow side %.3f", name, outer, hollow)
			}
		}
		if math.Abs(first[3].Y+10) > 1e-9 {
			t.Errorf("the first board is %.9f thick at its end, want 10", -first[3].Y)
		}
		if shared := first[3]; !h.Butt && shared != second[3] {
			t.Errorf("the mitres end at %v and %v", shared, second[3])
		}
	})
}

// Butted, the sides of a flat box are longer inside; those of a steep one of three sides,
// whose corner is sharper than a right angle, outside.
func TestHopperLongerSide(t *testing.T) {
	for sides, outer := range map[int]bool{3: true, 5: false} {
		h := joint.Hopper{SlopingCorner: joint.HopperCorner(sides, measure.Radians(80)), Butt: true}
		if first, _ := h.Section(10, 200); h.OuterLonger() != outer || first[3].Distance(first[0]) > first[2].Distance(first[1]) != outer {
			t.Errorf("%d sides: outer side longer %v, want %v; %v", sides, h.OuterLonger(), outer, first)
		}
	}
}
