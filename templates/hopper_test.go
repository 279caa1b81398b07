package templates

import (
	"math"
	"slices"
	"testing"

	"pgregory.net/rapid"

	"rodsheet/geometry"
	"rodsheet/geometry/joint"
	"rodsheet/geometry/measure"
)

func hopper(sides int, slope float64, butt bool) joint.Hopper {
	return joint.Hopper{SlopingCorner: joint.HopperCorner(sides, measure.Radians(slope)), Sides: sides, Butt: butt}
}

// The dodecahedron and the cap of the icosahedron: dihedral angles from Coxeter, Regular
// Polytopes, Table I (from memory).
func TestHopperFigures(t *testing.T) {
	for _, c := range []struct{ slope, offSquare, dihedral float64 }{
		{63.434949, 18, 116.565051}, {37.377368, 30, 138.189685},
	} {
		job := sound(t)(Hopper(hopper(5, c.slope, false), Setting{Clear: a4}))
		for name, want := range map[string]float64{
			"gauge, off square": c.offSquare, "bevel on the outer side": 90 - c.offSquare, "blade, tilt": 90 - c.dihedral/2,
			"corner, hollow side to hollow side": c.dihedral, "corner, in plan": 108, "level edges, tilt": 90 - c.slope,
		} {
			if got := measure.Degrees(valueOf(t, job, name)); math.Abs(got-want) > 2e-6 {
				t.Errorf("%s %.6f, want %.6f", name, got, want)
			}
		}
		if got, want := valueOf(t, job, "longer, each end, per 100 mm of width"), 100*math.Tan(measure.Radians(c.offSquare)); math.Abs(got-want) > 1e-5 {
			t.Errorf("longer by %.6f, want %.6f", got, want)
		}
	}
}

// One triangle for each angle that a saw is set to: gauge and blade, with two slopes a
// gauge for each, and none for what is square.
func TestHopperTriangles(t *testing.T) {
	two := hopper(4, 78, true)
	two.Next = measure.Radians(70)
	for _, c := range []struct {
		hopper joint.Hopper
		want   []string
	}{
		{hopper(5, 75, false), []string{"gauge: bevel 79.35°", "blade to table: bevel 55.41°"}},
		{hopper(4, 90, false), []string{"blade to table: bevel 45°"}},
		{hopper(4, 90, true), nil},
		{hopper(3, 54.735610, false), []string{"gauge and blade to table: bevel 45°"}},
		{two, []string{"gauge for the sides at 78°: bevel 70.4°", "gauge for the sides at 70°: bevel 78.7°", "blade to table: bevel 85.92°"}},
	} {
		job := sound(t)(Hopper(c.hopper, Setting{Clear: a4}))
		var names []string
		for _, d := range job.Drawings() {
			names = append(names, d.Name)
		}
		if !slices.Equal(names, c.want) {
			t.Errorf("%s: %q, want %q", job.Title, names, c.want)
		}
	}
}

// The picture of a side shows its true angles and does not cross itself.
func TestHopperSide(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		h := hopper(4, rapid.Float64Range(10, 90).Draw(t, "slope"), true)
		h.Next = measure.Radians(rapid.Float64Range(10, 90).Draw(t, "next"))
		if rapid.Bool().Draw(t, "wide corner") {
			h.Sides, h.Angle = 0, measure.Radians(150)
		}
		job, err := Hopper(h, Setting{Clear: a4})
		if err != nil {
			t.Skip(err)
		}
		side := job.Sections[0].Pictures[0].Areas[0].Points
		end := side[2].Sub(side[1])
		if got := math.Atan2(end.X, end.Y); math.Abs(got-h.OffSquare()) > 1e-9 {
			t.Errorf("end %.9f off square, want %.9f", got, h.OffSquare())
		}
		if geometry.Area(side) <= 0 || side[3].X >= side[2].X {
			t.Errorf("crosses itself: %v", side)
		}
	})
}

// Which side is the longer one is said, and how the other end is cut.
func TestHopperWords(t *testing.T) {
	for want, h := range map[string]joint.Hopper{
		"leaves the outer side longer":      hopper(5, 75, false),
		"leaves the hollow side longer":     hopper(5, 75, true),
		"swing the gauge to the same angle": hopper(4, 60, true),
	} {
		job := sound(t)(Hopper(h, Setting{Clear: a4}))
		wantSaid(t, job, want)
	}
}
