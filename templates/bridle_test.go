package templates

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"
	"pgregory.net/rapid"

	"rodsheet/geometry"
	"rodsheet/geometry/joint"
	"rodsheet/geometry/measure"
)

func drawnBridle(t *rapid.T) (joint.Bridle, Job) {
	b := joint.Bridle{
		Long:  3,
		Width: rapid.Float64Range(9, 60).Draw(t, "width"),
		Depth: rapid.Float64Range(9, 90).Draw(t, "depth"),
		Angle: measure.Radians(rapid.Float64Range(0, 45).Draw(t, "splay")),
		Leg:   rapid.Float64Range(9, 90).Draw(t, "leg"),
		Mortise: rapid.SampledFrom([]joint.BridleMember{
			joint.MortiseInStretcher, joint.MortiseInLeg}).Draw(t, "mortise"),
	}
	job := sound(t)(Bridle(b, Setting{Full: true}))
	return b, job
}

// corner is the joint on the right in space: x along the stretcher, z up, the
// ring sides on y = 0 towards the reader at −y, the stretcher's underside on
// z = 0. Its lower trimmed corner is the origin, through which the leg's
// back passes, foot leaning out to +x.
type corner struct{ joint.Bridle }

// outward is square to the leg's back and stretcher side, by turning the x
// direction about y.
func (c corner) outward() r3.Vec {
	return r3.NewRotation(-c.Angle, r3.Vec{Y: 1}).Rotate(r3.Vec{X: 1})
}

// down is the direction from the leg's head to its foot.
func (c corner) down() r3.Vec { return r3.Cross(r3.Vec{Y: 1}, c.outward()) }

// stretcher and leg put a folded point of a right hand strip in its place:
// rotations, no reflections, or the hands would not be tested.
func (c corner) stretcher(p r3.Vec) r3.Vec { return r3.Vec{X: p.X, Y: -p.Z, Z: p.Y} }

func (c corner) leg(p r3.Vec) r3.Vec {
	// The head's corner at the back, where back and top meet. The right hand is
	// drawn with its head to the right.
	along := c.outward()
	head := r3.Vec{X: -along.Z * c.Depth / along.X, Z: c.Depth}
	v := r3.Add(r3.Scale(-p.X, c.down()), r3.Scale(-p.Y, along))
	return r3.Add(head, r3.Add(v, r3.Vec{Y: -p.Z}))
}

// Folded and put in its place every line of a right hand wrap-round lies in a
// plane of the other part: the shoulder of the stretcher in the leg's
// stretcher side, its trim line in the back; the shoulder of the leg in the
// stretcher's underside, its trim line in the top.
func TestBridleWrapRoundsMeetInSpace(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		b, job := drawnBridle(t)
		c := corner{b}
		for _, part := range []struct {
			name           string
			wrap           wrap
			place          func(r3.Vec) r3.Vec
			normal         r3.Vec
			shoulder, trim float64
			slot           bool
		}{
			{"stretcher", wrap{width: b.Depth, thickness: b.Width, back: true}, c.stretcher, c.outward(), -b.Leg, 0, b.Mortise == joint.MortiseInStretcher},
			{"leg", wrap{width: b.Leg, thickness: b.Width, back: true}, c.leg, r3.Vec{Z: 1}, 0, b.Depth, b.Mortise == joint.MortiseInLeg},
		} {
			d := drawingNamed(t, job, part.name+", right hand, wrap-round")
			height := func(p geometry.Point) float64 { return r3.Dot(part.place(fold(part.wrap, p)), part.normal) }
			near := func(p geometry.Point, want float64) bool { return math.Abs(height(p)-want) < 1e-9 }
			for _, s := range strokesOf(d, Construction) {
				for _, p := range s.Points {
					if !near(p, part.trim) {
						t.Errorf("%s: trim line at %v, want %v", part.name, height(p), part.trim)
					}
				}
			}
			rough := part.trim + math.Copysign(b.Long*math.Cos(b.Angle), part.trim-part.shoulder)
			onShoulder := 0
			for _, s := range append(strokesOf(d, Cut), strokesOf(d, Hidden)...) {
				for _, p := range s.Points {
					switch {
					case near(p, part.shoulder):
						onShoulder++
					case !near(p, rough):
						t.Errorf("%s: cut point %v is %v from the plane of the shoulder", part.name, p, height(p)-part.shoulder)
					}
				}
			}
			// Two faces with a line of two points; on each edge the two
			// corners of the slot, or two lines of two points.
			want := 2*2 + 2*4
			if part.slot {
				want = 2*2 + 2*2
			}
			if onShoulder != want {
				t.Errorf("%s: %d points on the shoulder, want %d", part.name, onShoulder, want)
			}
		}
	})
}

// On the edges the lines along the part are the cheeks: a third and two
// thirds below the face in both parts.
func TestBridleCheeksAgree(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		b, job := drawnBridle(t)
		for part, size := range map[string]float64{"stretcher": b.Depth, "leg": b.Leg} {
			w := wrap{width: size, thickness: b.Width, back: true}
			depths := map[int64]bool{}
			for _, s := range strokesOf(drawingNamed(t, job, part+", right hand, wrap-round"), Cut) {
				for i := 1; i < len(s.Points); i++ {
					if a, e := s.Points[i-1], s.Points[i]; a.Y == e.Y {
						depths[int64(math.Round(-fold(w, a).Z/b.Width*1e6))] = true
					}
				}
			}
			if len(depths) != 2 || !depths[333333] || !depths[666667] {
				t.Errorf("%s: cheeks at millionths %v of the width, want 333333 and 666667", part, depths)
			}
		}
	})
}

func TestBridleHandsMirror(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		_, job := drawnBridle(t)
		for _, part := range []string{"stretcher", "leg"} {
			for _, view := range []string{"ring side", "wrap-round"} {
				wantMirror(t,
					drawingNamed(t, job, part+", right hand, "+view),
					drawingNamed(t, job, part+", left hand, "+view))
			}
		}
	})
}

// The edge view serves both hands because half a turn takes its cuts to
// their mirror image.
func TestBridleEdgeServesBothHands(t *testing.T) {
	b := sound(t)(Bridle(joint.Bridle{Width: 24, Depth: 30, Angle: 0.2, Leg: 45}, Setting{Full: true}))
	for _, name := range []string{"stretcher, underside", "leg, back"} {
		cuts := strokesOf(drawingNamed(t, b, name), Cut)
		for _, s := range cuts {
			for _, p := range s.Points {
				turned := geometry.Pt(p.X, 24-p.Y)
				found := false
				for _, other := range cuts {
					for _, q := range other.Points {
						found = found || q.Distance(turned) < 1e-9
					}
				}
				if !found {
					t.Errorf("%s: nothing at %v, the image of %v", name, turned, p)
				}
			}
		}
	}
}

// The face beside a tenon is hatched, the face over a slot is not.
func TestBridleFaceHatching(t *testing.T) {
	for _, tt := range []struct {
		mortise        joint.BridleMember
		stretcher, leg bool
	}{
		{joint.MortiseInStretcher, false, true},
		{joint.MortiseInLeg, true, false},
	} {
		job := sound(t)(Bridle(joint.Bridle{Width: 24, Depth: 30, Angle: 0.1, Leg: 45, Mortise: tt.mortise}, Setting{Full: true}))
		for part, want := range map[string]bool{"stretcher": tt.stretcher, "leg": tt.leg} {
			d := drawingNamed(t, job, part+", right hand, ring side")
			if got := len(strokesOf(d, Waste)) > 0; got != want {
				t.Errorf("mortise in %v: face of the %s hatched %v, want %v", tt.mortise, part, got, want)
			}
			if got := len(strokesOf(d, Hidden)) == 0; got != want {
				t.Errorf("mortise in %v: face of the %s without hidden line %v, want %v", tt.mortise, part, got, want)
			}
		}
	}
}

func TestBridleFigures(t *testing.T) {
	b := joint.Bridle{Width: 24, Depth: 30, Angle: measure.Radians(10), Leg: 45}
	job := sound(t)(Bridle(b, Setting{Full: true}))
	// By hand, cos 10° = 0.9848078, tan 10° = 0.1763270.
	for name, want := range map[string]string{
		"tenon and slot width":                             "8 mm",
		"cheek depth, each side":                           "8 mm",
		"far cheek from the ring side":                     "16 mm",
		"off square":                                       "10°",
		"bevel":                                            "80°",
		"stretcher slot bottom, underside":                 "45.69 mm",
		"stretcher slot bottom, top":                       "50.98 mm",
		"stretcher trimmed end, top":                       "5.29 mm",
		"stretcher slot length, trimmed":                   "45.69 mm",
		"stretcher cut height on its rough end":            "47.95 mm",
		"leg shoulder, back":                               "30.46 mm",
		"leg shoulder, stretcher side":                     "22.53 mm",
		"leg trimmed head, stretcher side, past the datum": "7.93 mm",
		"leg tenon length, trimmed":                        "30.46 mm",
		"leg cut height on its rough end":                  "32.95 mm",
		"over length at both ends":                         "3 mm",
		"glue area, two cheeks":                            "2741.7 mm²",
	} {
		wantFigure(t, job, name, want)
	}
}

func TestBridleStepsNameTheRightPart(t *testing.T) {
	b := joint.Bridle{Width: 24, Depth: 30, Angle: 0.1, Leg: 45, Mortise: joint.MortiseInLeg}
	job := sound(t)(Bridle(b, Setting{Full: true}))
	wantSaid(t, job, "Slot in the leg", "Tenon on the stretcher", "Cheeks are counted from the ring side", "Isolate power")
}
