package joint_test

import (
	"math"
	"rodsheet/geometry/joint"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"
	"pgregory.net/rapid"

	"rodsheet/geometry/measure"
)

func compound(rake, splay float64) joint.Compound {
	return joint.Compound{Rake: measure.Radians(rake), Splay: measure.Radians(splay)}
}

// Machinery's Handbook, 31st ed., p. 122, to 0.2′. Fig. 4 counts its angle R
// from the line of the larger lean, Fig. 6 from that of the other.
func TestCompoundAgainstHandbook(t *testing.T) {
	const tolerance = 0.2 / 60
	fig4 := joint.Compound{Rake: dms(47, 14, 0), Splay: dms(38, 10, 0)}
	within(t, "Fig. 4, R", measure.Degrees(fig4.Sightline()), 36+0.9/60, tolerance)
	within(t, "Fig. 4, C", measure.Degrees(fig4.Resultant()), 53+12./60, tolerance)

	fig6 := compound(34, 39) // from memory
	within(t, "Fig. 6, R", measure.Degrees(fig6.Sightline()), 50+12.4/60, tolerance)
	within(t, "Fig. 6, C", measure.Degrees(fig6.Resultant()), 46+30.2/60, tolerance)
}

// Fig. 5 of the same page: a lean of A = 27° along a sightline of R = 35°2.5′
// shows as C = 22°38.6′ seen from the side.
func TestCompoundOfAgainstHandbook(t *testing.T) {
	got := joint.CompoundOf(dms(27, 0, 0), dms(35, 2.5, 0))
	within(t, "Fig. 5, C", measure.Degrees(got.Rake), 22+38.6/60, 0.2/60)
}

// The plain √(rake² + splay²) is wrong, and by 0.46° at 15° and 15°.
func TestResultantIsNotPythagoras(t *testing.T) {
	got := measure.Degrees(compound(15, 15).Resultant())
	within(t, "excess of the plain rule", math.Hypot(15, 15)-got, 0.46, 0.005)
}

// Worked by hand: 3 and 4 in 12 make 5 in 12, and 13 along the leg.
func TestCompoundByHand(t *testing.T) {
	c := joint.Compound{Rake: math.Atan(4. / 12), Splay: math.Atan(3. / 12)}
	within(t, "resultant", c.Resultant(), math.Atan(5./12), 1e-12)
	within(t, "sightline", c.Sightline(), math.Atan(3./4), 1e-12)
	within(t, "true length", c.TrueLength(12), 13, 1e-12)
	if got := (joint.Compound{}).Sightline(); got != 0 {
		t.Errorf("sightline of a plumb leg %v, want 0", got)
	}
}

// The leg as a vector, and its faces as cross products of it with the level
// lines that run across and along the room.
func TestCompoundAgainstVectors(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		lean := rapid.Float64Range(0.01, 59.9)
		c := compound(lean.Draw(t, "rake"), lean.Draw(t, "splay"))
		// Seen along y the leg leans by Splay, seen along x by Rake.
		leg := r3.Cross(r3.Vec{Y: math.Cos(c.Rake), Z: math.Sin(c.Rake)}, r3.Vec{X: math.Cos(c.Splay), Z: math.Sin(c.Splay)})
		leg = r3.Unit(leg) // down to the foot
		angle := func(a, b r3.Vec) float64 { return math.Acos(r3.Cos(a, b)) }

		front, side := r3.Cross(r3.Vec{X: 1}, leg), r3.Cross(leg, r3.Vec{Y: 1})
		acute, obtuse := c.Diamond()
		bevelFront, bevelSide := c.Bevels()
		for _, tt := range []struct {
			name      string
			got, want float64
		}{
			{"resultant", c.Resultant(), angle(leg, r3.Vec{Z: -1})},
			{"sightline", c.Sightline(), math.Atan2(leg.X, leg.Y)},
			{"true length", c.TrueLength(400), 400 / -leg.Z},
			{"acute", acute, angle(front, side)},
			{"obtuse", obtuse, math.Pi - angle(front, side)},
			{"bevel in front", bevelFront, math.Pi/2 - angle(leg, r3.Vec{X: 1})},
			{"bevel at the side", bevelSide, math.Pi/2 - angle(leg, r3.Vec{Y: 1})},
		} {
			if math.Abs(tt.got-tt.want) > 1e-7*math.Max(1, tt.want) {
				t.Errorf("%s %.9f, want %.9f", tt.name, tt.got, tt.want)
			}
		}
		back := joint.CompoundOf(c.Resultant(), c.Sightline())
		if !agree(back.Rake, c.Rake) || !agree(back.Splay, c.Splay) {
			t.Errorf("there and back: %v, want %v", back, c)
		}
	})
}

// The diamond is obtuse at the arris that leads: cut a unit square by a leg's
// faces on the level, and look along the leg.
func TestDiamondIsObtuseAlongTheLean(t *testing.T) {
	c := compound(20, 25)
	leg := r3.Unit(r3.Vec{X: math.Tan(c.Splay), Y: math.Tan(c.Rake), Z: -1})
	along := func(v r3.Vec) r3.Vec { return r3.Sub(v, r3.Scale(r3.Dot(v, leg), leg)) }
	x, y := along(r3.Vec{X: 1}), along(r3.Vec{Y: 1})
	acute, obtuse := c.Diamond()
	within(t, "leading arris", obtuse, math.Acos(r3.Cos(x, y)), 1e-12)
	within(t, "arris beside the lean", acute, math.Acos(r3.Cos(x, r3.Scale(-1, y))), 1e-12)
}

func TestCompoundCheck(t *testing.T) {
	if err := compound(10, 15).Check(); err != nil {
		t.Error(err)
	}
	checkBound(t, compound(-1, 15).Check(), "leg.rake", "≥ 0°")
	checkBound(t, compound(15, 61).Check(), "leg.splay", "≤ 60°")
	checkBound(t, compound(59, 59).Check(), "leg.resultant", "≤ 60°")
	checkBound(t, joint.Lean(1.1, 0), "leg.resultant", "≤ 60°")
	checkBound(t, joint.Lean(0.5, 1.6), "leg.sightline", "≤ 90°")
}
