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

// A leg of a tilted slab as vectors: its faces and the floor by cross products.
func TestStakeAgainstVectors(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		lean := rapid.Float64Range(-30, 45)
		c := compound(lean.Draw(t, "rake"), lean.Draw(t, "splay"))
		if c.Resultant() < 0.01 {
			return
		}
		s := joint.Stake{Compound: c, Tilt: measure.Radians(rapid.Float64Range(-15, 15).Draw(t, "tilt"))}
		axis := r3.Unit(r3.Vec{X: -math.Tan(c.Splay), Y: -math.Tan(c.Rake), Z: 1})
		up := r3.Rotate(r3.Vec{Z: 1}, -s.Tilt, r3.Vec{X: 1})
		within(t, "from plumb", math.Cos(s.FromPlumb()), r3.Dot(axis, up), 1e-12)

		// The faces that look across hold the axis and the direction of the lean.
		left := r3.Unit(r3.Cross(axis, r3.Vec{X: math.Tan(c.Splay), Y: math.Tan(c.Rake)}))
		outer := r3.Cross(left, axis)
		across, along := s.FootCut()
		for _, tt := range []struct {
			name        string
			got         float64
			normal, way r3.Vec
		}{{"across", across, left, outer}, {"along", along, outer, left}} {
			trace := r3.Cross(up, tt.normal)
			if r3.Dot(trace, tt.way) < 0 {
				trace = r3.Scale(-1, trace)
			}
			within(t, tt.name, math.Tan(tt.got), -r3.Dot(trace, axis)/r3.Dot(trace, tt.way), 1e-9)
		}
	})
}

// A slab that lies level: the foot is cut by the resultant one way and square the other.
func TestFootOfALevelSlab(t *testing.T) {
	s := joint.Stake{Compound: compound(9, 11)}
	across, along := s.FootCut()
	within(t, "across", across, s.Resultant(), 1e-12)
	within(t, "along", along, 0, 1e-12)
	within(t, "from plumb", s.FromPlumb(), s.Resultant(), 1e-12)
}

// Every point of the mouth lies on the cone: its distance from the axis is the radius there.
func TestMouthLiesOnTheHole(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		b := joint.Bore{
			Radius: rapid.Float64Range(3, 50).Draw(t, "radius"),
			Lean:   rapid.Float64Range(0, 0.8).Draw(t, "lean"),
			Narrow: rapid.Float64Range(0, 0.17).Draw(t, "narrow"),
		}
		off, along, across := b.Mouth()
		sin, cos := math.Sincos(b.Lean)
		axis := r3.Vec{X: sin, Z: -cos}
		for i := range 12 {
			s, c := math.Sincos(float64(i) * math.Pi / 6)
			p := r3.Vec{X: off + along*c, Y: across * s}
			down := r3.Dot(p, axis)
			within(t, "distance", r3.Norm(r3.Sub(p, r3.Scale(down, axis))), b.Radius+down*math.Tan(b.Narrow), 1e-9)
		}
		// The deepest point of a blind hole, one of its rim.
		reach := b.BlindReach(30)
		r := b.Radius - reach*math.Tan(b.Narrow)
		within(t, "depth", reach*cos+r*sin, 30, 1e-9)
	})
}

func TestOctagonIsRegular(t *testing.T) {
	cut := joint.OctagonCorner(100)
	within(t, "side", 100-2*cut, cut*math.Sqrt2, 1e-12)
}

// On regular feet a footing is a Standing.
func TestFootingIsStanding(t *testing.T) {
	for feet := 3; feet <= 8; feet++ {
		var at []geometry.Point
		for i := range feet {
			at = append(at, geometry.Polar(300, 2*math.Pi*float64(i)/float64(feet)))
		}
		f := joint.NewFooting(append(at, geometry.Pt(1, 2)), geometry.Point{}, 20)
		s := joint.Standing{Feet: feet, FootRadius: 300, Rim: 400, Mass: 20}
		way := math.Pi / float64(feet) // square to the first side
		within(t, "force", f.TippingForce(geometry.Polar(350, way)), s.TippingForce(50), 1e-9)
		within(t, "inside", f.Inside(geometry.Point{}), s.TippingLine(), 1e-9)
	}
}

// By hand: 10 kg on feet 400 apart, pressed with 600 N 60 outside of one side, 500 up:
// 98.0665·200 − 600·60 = −16386.7 N·mm: it goes over by itself, and 60 inside it holds
// against (19613.3 + 36000)/500 N.
func TestPullByHand(t *testing.T) {
	f := joint.NewFooting(geometry.Box(-200, -200, 200, 200).Corners(), geometry.Point{}, 10)
	front := geometry.Pt(0, -1)
	within(t, "outside", f.Pull(600, geometry.Pt(0, -260), front, 500), -16386.7/500, 1e-9)
	within(t, "inside", f.Pull(600, geometry.Pt(0, -140), front, 500), 55613.3/500, 1e-9)
	if got := f.TippingForce(geometry.Pt(0, -140)); !math.IsInf(got, 1) {
		t.Errorf("a load inside tips it: %g", got)
	}
}
