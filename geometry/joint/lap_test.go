package joint_test

import (
	"errors"
	"math"
	"rodsheet/geometry/joint"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"rodsheet/geometry"
	"rodsheet/geometry/measure"
)

const inch = measure.MillimetresPerInch

func someLap(t *rapid.T) joint.Lap {
	other := rapid.Float64Range(2, 300).Draw(t, "other")
	return joint.Lap{
		Width: rapid.Float64Range(2, 300).Draw(t, "width"),
		Other: other,
		Depth: rapid.Float64Range(2, 100).Draw(t, "depth"),
		Angle: measure.Radians(rapid.Float64Range(10.001, 169.999).Draw(t, "angle")),
		Kerf:  other * rapid.Float64Range(0.01, 0.99).Draw(t, "kerf share"),
		At:    rapid.Float64Range(0, 2000).Draw(t, "at"),
	}
}

// agree reports whether two lengths agree to 1e-9 of their size.
func agree(got, want float64) bool {
	return math.Abs(got-want) <= 1e-9*math.Max(1, math.Abs(want))
}

// What stock takes on the edge at 60°: common practice, no source.
func TestLapEdgeLengthAtSixtyDegrees(t *testing.T) {
	for _, tt := range []struct{ other, want, tolerance float64 }{
		{1, 1.155, 0.0005},
		{1, 1 + 5.0/32, 1.0 / 64},
		{0.75, 0.866, 0.0005},
	} {
		l := joint.Lap{Width: 50, Other: tt.other * inch, Depth: 20, Angle: measure.Radians(60)}
		if got := l.EdgeLength() / inch; math.Abs(got-tt.want) > tt.tolerance {
			t.Errorf("%v in at 60°: edge length %.4f in, want %.4f ± %.4f", tt.other, got, tt.want, tt.tolerance)
		}
	}
}

// "Half the thickness of each member is notched out": Noyes, Handwork in
// Wood (1910).
func TestLapIsHalfTheThickness(t *testing.T) {
	if got := (joint.Lap{Depth: 19}).BladeHeight(); got != 9.5 {
		t.Errorf("blade height in 19 mm stock %v, want 9.5", got)
	}
}

// sawn cuts two kerfs, the second one after the part has moved on by spacer,
// and returns the width of the slot square to it. Each kerf is a strip as
// wide as the blade, given by the two sides of the saw plate; the fence runs
// along x.
func sawn(angle, kerf, spacer float64) float64 {
	plate := geometry.Polar(1, angle)
	square := plate.Perp().Mul(-1) // to the right of the plate
	sides := func(moved float64) (lo, hi float64) {
		near := geometry.Pt(moved, 0)
		far := near.Add(square.Mul(kerf))
		return near.Dot(square), far.Dot(square)
	}
	lo, _ := sides(0)
	_, hi := sides(spacer)
	return hi - lo
}

// The usual rule is 1.155 − 0.125 = 1.03 in, and the joint comes a little
// loose: common practice, no source. Here the cuts are made and measured.
func TestLapSpacerSawsTheWidth(t *testing.T) {
	l := joint.Lap{
		Width: inch, Other: inch, Depth: 20,
		Angle: measure.Radians(60), Kerf: inch / 8,
	}
	if got := l.Spacer() / inch; math.Abs(got-1.010) > 0.0005 {
		t.Errorf("spacer %.4f in, want 1.010", got)
	}
	if got := sawn(l.Angle, l.Kerf, l.Spacer()); !agree(got, l.Other) {
		t.Errorf("with the spacer the slot is %.6f mm wide, want %.6f", got, l.Other)
	}
	usual := l.EdgeLength() - l.Kerf
	loose := (sawn(l.Angle, l.Kerf, usual) - l.Other) / inch
	if math.Abs(loose-0.017) > 0.0005 {
		t.Errorf("by the usual rule the slot is %.4f in too wide, want 0.017", loose)
	}
}

func TestLapSpacerAtAnyAngle(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		l := someLap(t)
		if got := sawn(l.Angle, l.Kerf, l.Spacer()); !agree(got, l.Other) {
			t.Errorf("slot %v, want %v", got, l.Other)
		}
		square, along := l.UsualRuleExcess()
		usual := l.EdgeLength() - l.Kerf
		if got := sawn(l.Angle, l.Kerf, usual) - l.Other; !agree(got, square) {
			t.Errorf("usual rule: slot %v too wide, said %v", got, square)
		}
		if got := usual - l.Spacer(); !agree(got, along) {
			t.Errorf("usual rule: spacer %v too long, said %v", got, along)
		}
	})
}

func TestLapUsualRuleIsRightWhenSquare(t *testing.T) {
	l := joint.Lap{Width: 40, Other: 40, Depth: 20, Angle: measure.Radians(90), Kerf: 3.2}
	if square, along := l.UsualRuleExcess(); square != 0 || along != 0 {
		t.Errorf("excess at 90° = %v, %v, want 0, 0", square, along)
	}
	if got := l.Shift(); got != 0 {
		t.Errorf("shift at 90° = %v, want 0", got)
	}
}

func TestLapAreaIsThatOfItsCorners(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		l := someLap(t)
		want := l.Width * l.Other / math.Sin(l.Angle)
		if got := geometry.Area(l.Corners()); !agree(got/want, 1) {
			t.Errorf("corners enclose %v mm², want %v", got, want)
		}
		if got := l.Area(); !agree(got/want, 1) {
			t.Errorf("area %v mm², want %v", got, want)
		}
	})
}

// The shoulders lie Other apart and the angle between shoulder and edge is
// Angle, measured on the corners alone.
func TestLapCornersHoldTheOtherPart(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		l := someLap(t)
		c := l.Corners()
		shoulder := geometry.Segment{A: c[0], B: c[3]}
		if got := shoulder.Angle(); !agree(got, l.Angle) {
			t.Errorf("shoulder leans %v rad, want %v", got, l.Angle)
		}
		apart := math.Abs(c[3].Sub(c[0]).Unit().Cross(c[2].Sub(c[0])))
		if !agree(apart, l.Other) {
			t.Errorf("shoulders %v mm apart, want %v", apart, l.Other)
		}
		if got := c[3].X - c[0].X; !agree(got, l.Shift()) {
			t.Errorf("far edge stands %v mm on, shift says %v", got, l.Shift())
		}
	})
}

// The lap of the part that crosses, laid on its own cut face with the same
// hand and turned over on to the first, has the same four corners: what
// either takes away the other fills.
func TestLapUpAndLapDownFillTheSection(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		up := someLap(t)
		down := joint.Lap{Width: up.Other, Other: up.Width, Depth: up.Depth, Angle: up.Angle, Kerf: up.Kerf / 1e3}
		if got := up.BladeHeight() + down.BladeHeight(); !agree(got, up.Depth) {
			t.Errorf("laps together %v mm deep, want %v", got, up.Depth)
		}
		// Turned over about its length, then swung so that its reference
		// edge lies on the near shoulder of the lap up.
		turn := geometry.Scale(1, -1).Then(geometry.Rotate(up.Angle)).
			Then(geometry.Translate(geometry.Pt(up.At, 0)))
		for _, p := range turn.ApplyAll(down.Corners()) {
			nearest := math.Inf(1)
			for _, q := range up.Corners() {
				nearest = math.Min(nearest, p.Distance(q))
			}
			if nearest > 1e-8 {
				t.Errorf("corner %v of the lap down is %v mm off the lap up", p, nearest)
			}
		}
	})
}

// Obtuse is the other hand: the mirror image about a square line.
func TestLapObtuseMirrorsAcute(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		l := someLap(t)
		l.At = 0
		m := l
		m.Angle = math.Pi - l.Angle
		want := geometry.MirrorX().Then(geometry.Translate(geometry.Pt(l.EdgeLength(), 0))).ApplyAll(m.Corners())
		got := l.Corners()
		for i, j := range []int{1, 0, 3, 2} {
			if got[i].Distance(want[j]) > 1e-8 {
				t.Errorf("corner %d at %v, mirror image at %v", i, got[i], want[j])
			}
		}
		edge, square := l.Bevel(), l.OffSquare()
		otherEdge, otherSquare := m.Bevel(), m.OffSquare()
		if !agree(edge, otherEdge) || !agree(square, otherSquare) {
			t.Errorf("gauge %v, %v, mirrored %v, %v", edge, square, otherEdge, otherSquare)
		}
		if edge <= 0 || square < 0 || !agree(edge+square, math.Pi/2) {
			t.Errorf("gauge %v and %v are not together square", edge, square)
		}
	})
}

// From the stop the first kerf ends at the far shoulder, and with the spacer
// the second begins at the near one.
func TestLapStopPutsTheBladeAtBothShoulders(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		l := someLap(t)
		near, far := l.Shoulders(0)
		if got := l.Stop() + l.Kerf/math.Sin(l.Angle); !agree(got, far) {
			t.Errorf("first kerf ends at %v, far shoulder is at %v", got, far)
		}
		if got := l.Stop() - l.Spacer(); !agree(got, near) {
			t.Errorf("second kerf begins at %v, near shoulder is at %v", got, near)
		}
	})
}

func TestLapCheck(t *testing.T) {
	good := joint.Lap{Width: 40, Other: 40, Depth: 20, Angle: measure.Radians(60), Kerf: 3.2}
	for _, deg := range []float64{10, 90, 170} {
		l := good
		l.Angle = measure.Radians(deg)
		if err := l.Check(); err != nil {
			t.Errorf("%v°: %v", deg, err)
		}
	}
	refuses(t, good, []refused[joint.Lap]{
		{"lap.width", "> 0 mm", func(l *joint.Lap) { l.Width = 0 }},
		{"lap.width", "finite", func(l *joint.Lap) { l.Width = math.NaN() }},
		{"lap.width", "≤ 1000 mm", func(l *joint.Lap) { l.Width = 1001 }},
		{"lap.crossing-width", "> 0 mm", func(l *joint.Lap) { l.Other = -40 }},
		{"lap.depth", "finite", func(l *joint.Lap) { l.Depth = math.Inf(1) }},
		{"lap.angle", "≥ 10°", func(l *joint.Lap) { l.Angle = measure.Radians(9.9) }},
		{"lap.angle", "≤ 170°", func(l *joint.Lap) { l.Angle = measure.Radians(170.1) }},
		{"lap.angle", "finite", func(l *joint.Lap) { l.Angle = math.NaN() }},
		{"lap.kerf", "> 0 mm", func(l *joint.Lap) { l.Kerf = 0 }},
		{"lap.kerf", "< lap.crossing-width, 40 mm", func(l *joint.Lap) { l.Kerf = 40 }},
		{"lap.at", "≥ 0 mm", func(l *joint.Lap) { l.At = -1 }},
		{"lap.at", "≤ 10000 mm", func(l *joint.Lap) { l.At = 10001 }},
	})
}

// A refused is a change that a check refuses, by that figure and in these words.
type refused[T any] struct {
	figure measure.ID
	want   string
	change func(*T)
}

// refuses fails unless what is good passes its check, and each change of it does not.
func refuses[T interface{ Check() error }](t *testing.T, good T, all []refused[T]) {
	t.Helper()
	if err := good.Check(); err != nil {
		t.Errorf("%+v: %v", good, err)
	}
	for _, tt := range all {
		bad := good
		tt.change(&bad)
		checkBound(t, bad.Check(), tt.figure, tt.want)
	}
}

// checkBound fails unless err is a bound error of that figure that says want.
func checkBound(t *testing.T, err error, figure measure.ID, want string) {
	t.Helper()
	var bound *measure.BoundError
	if !errors.As(err, &bound) {
		t.Errorf("%s, %q: got %v, want a bound error", figure, want, err)
		return
	}
	if bound.Figure != figure || !strings.Contains(err.Error(), want) {
		t.Errorf("got %q, want %s … %s", err, figure, want)
	}
}
