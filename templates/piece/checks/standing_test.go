package checks

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"rodsheet/geometry"
	"rodsheet/geometry/joint"
	"rodsheet/geometry/measure"
	"rodsheet/templates/piece"
	"rodsheet/templates/piece/design"
	"rodsheet/templates/piece/internal/piecetest"
	"rodsheet/templates/piece/kind"
)

// frameMass is FrameMass of the piece's own solids.
func frameMass(p piece.Piece) float64 { return p.FrameMass(p.Stretcher(), p.Leg()) }

// The worked examples of the test of ISO 7172, F = m·g·a/(o − 50 mm), with a
// from the centre to the tipping line and o the overhang of the top past it:
// the piece is made to stand so, and its density to weigh 20 kg.
func TestTippingForceOfThePiece(t *testing.T) {
	for _, tt := range []struct{ a, o, force float64 }{{300, 150, 588.6}, {250, 200, 327.0}} {
		d := piecetest.Square()
		d.Ring.Sides = 3
		d.Legs.Lean, d.Legs.Given = design.ByFootCircle, 2*tt.a/math.Cos(math.Pi/3)
		d.Top = design.Top{Kind: design.WoodTop, Thickness: 30, Diameter: 2 * (tt.a + tt.o)}
		unweighed := piecetest.Worked(t, d)
		d.Wood.Density *= 20 / (frameMass(unweighed) + unweighed.TopMass())
		var got []float64
		for _, g := range withSolids(piecetest.Worked(t, d)).groups() {
			for _, f := range g.Figures {
				if f.Value.Kind == measure.KindForce {
					got = append(got, f.Value.Value)
				}
			}
		}
		// The source reckons with g = 9.81 m/s².
		if len(got) != 1 || math.Abs(got[0]-tt.force*joint.StandardGravity/9.81) > 0.05 {
			t.Errorf("a %v, o %v: force %v, want %.1f", tt.a, tt.o, got, tt.force)
		}
	}
}

// The least load at a corner of a free outline that tips the piece, by moments
// about the line through each two neighbouring feet.
func TestTippingByMoments(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d := piecetest.Sound(t)
		mm := func(name string) float64 { return rapid.Float64Range(150, 900).Draw(t, name) }
		d.Top = design.Top{Kind: design.GlassTop, Outline: design.FreeOutline, Thickness: 8,
			Points: []geometry.Point{{X: -mm("a"), Y: -mm("b")}, {X: mm("c"), Y: -mm("d")}, {X: mm("e"), Y: mm("f")}, {X: -mm("g"), Y: mm("h")}}}
		d.Wood.Density = 700
		p, err := piece.Solve(d)
		if err != nil {
			t.Skip("no such outline")
		}
		c := find(t, checksOf(p), "standing")
		want, falls := leastLoad(p)
		switch {
		case falls:
			if c.Grade != kind.Fail {
				t.Errorf("its weight lies outside its feet, and %+v", c)
			}
		case math.IsInf(want, 1):
			if c.Grade != kind.Pass || c.Found.ID != "never-tips" {
				t.Errorf("nothing tips it, and %+v", c)
			}
		case math.Abs(c.Value.Value-want) > 1e-6*want:
			t.Errorf("load %.6f kg, want %.6f", c.Value.Value, want)
		}
	})
}

// leastLoad takes moments about every line of two feet for a load on every
// corner of the top.
func leastLoad(p piece.Piece) (kg float64, falls bool) {
	n := p.Frame.Ring.Sides
	foot := func(i int) geometry.Point {
		out := geometry.Polar(1, math.Pi/2+2*math.Pi*float64(i)/float64(n))
		along := geometry.Pt(out.Y, -out.X) // towards the leg
		return out.Mul(p.Frame.Ring.Axis()).Add(along.Mul(p.Foot()))
	}
	corners := p.Design.Top.Points
	var centre geometry.Point
	area := 0.0
	for i := 1; i+1 < len(corners); i++ {
		a, b, c := corners[0], corners[i], corners[i+1]
		k := b.Sub(a).Cross(c.Sub(a)) / 2
		area += k
		centre = centre.Add(a.Add(b).Add(c).Mul(k / 3))
	}
	top := area * p.Design.Top.Thickness * 2500e-9
	centre = centre.Mul(1 / area * top / (frameMass(p) + p.TopMass()))
	kg = math.Inf(1)
	for i := range n {
		a, b := foot(i), foot(i+1)
		within := func(q geometry.Point) float64 { return b.Sub(a).Cross(q.Sub(a)) } // a moment's arm, times the line's length
		falls = falls || within(centre) <= 0
		for _, q := range corners {
			if arm := -within(q); arm > 0 {
				kg = math.Min(kg, (frameMass(p)+p.TopMass())*within(centre)/arm)
			}
		}
	}
	return kg, falls
}

// Three feet never rock; feet outside the rim are said to be.
func TestFeetAndRim(t *testing.T) {
	for _, tt := range []struct {
		sides int
		top   float64
		want  measure.ID
		mm    float64
	}{
		{3, 640, "outside-and-rock-never", 18.61},
		{3, 700, "inside-and-rock-never", 11.39},
		{4, 900, "inside-and-rock", 106.76}, // 450 − √(144² + (158 + 3 + 40/cos 16° + 380·tan 16°)²),
	} {
		d := piecetest.Low()
		d.Ring.Sides, d.Top.Diameter = tt.sides, tt.top
		c := find(t, checksOf(piecetest.Worked(t, d)), "feet")
		if c.Found.ID != tt.want || math.Abs(c.Found.Figures[0].Value-tt.mm) > 0.005 || c.Found.Figures[1].Value != float64(tt.sides) {
			t.Errorf("%d sides under %v mm: %+v", tt.sides, tt.top, c.Found)
		}
	}
}

// A rim that stands nowhere outside its feet cannot be pressed down.
func TestNothingTipsIt(t *testing.T) {
	d := piecetest.Low()
	d.Top.Diameter = 300
	p := piecetest.Worked(t, d)
	if c := find(t, checksOf(p), "standing"); c.Figure != "" || c.Found.ID != "never-tips" {
		t.Errorf("%+v", c)
	}
	for _, g := range withSolids(p).groups() {
		for _, f := range g.Figures {
			if !f.Value.Finite() {
				t.Errorf("%s: %s is %v", g.ID, f.ID, f.Value.Value)
			}
		}
	}
}

// The least load 50 mm inside the rim is over all lines, and need not be over the
// one where the least does it at the rim. By moments: on supports at ±100 on one
// axis and ±300 on the other, a rim of 400 and 460, 20 kg tip at 20·100/300 = 6.67
// and 20·300/160 = 37.5 kg; pressed 50 in, at 20·100/250 = 8 and 20·300/110 = 54.5.
func TestLoadWithinTheRimIsTheLeast(t *testing.T) {
	line := func(a, rim float64) joint.Standing {
		return joint.Standing{Feet: 4, FootRadius: a / math.Cos(math.Pi/4), Rim: rim, Mass: 20}
	}
	for _, tt := range []struct {
		s          piece.Stand
		rim, inset float64
	}{
		{piece.Stand{line(300, 460), line(100, 400)}, 20. * 100 / 300, 20. * 100 / 250},
		// At the rim the first tips sooner, 50 mm in the second.
		{piece.Stand{line(10, 70), line(100, 800)}, 20. * 100 / 700, 20. * 100 / 650},
		{piece.Stand{line(30, 90), line(200, 640)}, 20. * 200 / 440, 20. * 200 / 390},
		{piece.Stand{line(10, 62), line(100, 560)}, 20. * 10 / 52, 20. * 100 / 410},
	} {
		piecetest.Nearly(t, "at the rim", tt.s.Weakest(0).TippingLoad(0), tt.rim)
		piecetest.Nearly(t, "within", tt.s.Weakest(joint.EdgeInset).TippingLoad(joint.EdgeInset), tt.inset)
	}
	// Where nothing tips it, the line is the one that the rim comes nearest to.
	never := piece.Stand{line(300, 100), line(200, 190), line(250, 100)}
	if got := never.Weakest(0); got != never[1] {
		t.Errorf("nothing tips it: %+v", got)
	}
}
