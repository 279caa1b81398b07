package joint_test

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"
	"pgregory.net/rapid"

	"rodsheet/geometry/joint"
	"rodsheet/geometry/measure"
)

// A leaningCorner is a level rail and a leaning leg in the room: x along the rail,
// y to the frame side, z up. The leg leans foot to −x and −y.
type leaningCorner struct {
	splay, rake, turn float64
}

func someCorner(t *rapid.T) leaningCorner {
	lean := func(name string, most float64) float64 {
		return measure.Radians(rapid.OneOf(rapid.Just(0.0), rapid.Float64Range(-most, most)).Draw(t, name))
	}
	return leaningCorner{lean("splay", 50), lean("rake", 50), lean("turn", 45)}
}

func (c leaningCorner) leg() r3.Vec {
	return r3.Unit(r3.Vec{X: math.Tan(c.splay), Y: math.Tan(c.rake), Z: 1})
}

// face is the normal of the leg's face, found by turning the direction of the
// level line in it.
func (c leaningCorner) face() r3.Vec {
	level := r3.NewRotation(-c.turn, r3.Vec{Z: 1}).Rotate(r3.Vec{Y: 1})
	return r3.Unit(r3.Cross(level, c.leg()))
}

// up and deep are square to the rail, up along its outer side and into it: the
// rail is tipped about its own length.
func (c leaningCorner) up() r3.Vec {
	return r3.NewRotation(-c.rake, r3.Vec{X: 1}).Rotate(r3.Vec{Z: 1})
}
func (c leaningCorner) deep() r3.Vec {
	return r3.NewRotation(-c.rake, r3.Vec{X: 1}).Rotate(r3.Vec{Y: 1})
}

// place puts a point of the rail's frame in the room.
func (c leaningCorner) place(x, y, depth float64) r3.Vec {
	return r3.Add(r3.Vec{X: x}, r3.Add(r3.Scale(y, c.up()), r3.Scale(depth, c.deep())))
}

// Every point of the shoulder touches the leg's face, which the leg's own
// directions measure, and the outer side of the rail leans as the leg does.
func TestShoulderTouchesTheLeg(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c := someCorner(t)
		s := joint.LeaningShoulder(c.splay, c.rake, c.turn)
		y, depth := rapid.Float64Range(0, 200).Draw(t, "y"), rapid.Float64Range(0, 80).Draw(t, "depth")
		p := c.place(s.At(y, depth), y, depth)
		if off := r3.Dot(p, c.face()); math.Abs(off) > 1e-9 {
			t.Errorf("%+v: %v, %v stands %v off the leg", c, y, depth, off)
		}
		if lean := r3.Dot(c.leg(), c.deep()); math.Abs(lean) > 1e-12 {
			t.Errorf("%+v: the leg leaves the outer side by %v", c, lean)
		}
		if !agree(s.Square(), math.Abs(c.face().X)) {
			t.Errorf("%+v: square %v, want %v", c, s.Square(), c.face().X)
		}
		up, across := s.OnLeg(y, depth)
		crosswise := r3.Unit(r3.Cross(c.leg(), c.face()))
		if wantUp, want := r3.Dot(p, c.leg()), r3.Dot(p, crosswise); !agree(up, wantUp) || !agree(across, want) {
			t.Errorf("%+v: %v up and %v across, want %v and %v", c, up, across, wantUp, want)
		}
		deeper := r3.Scale(-1/math.Abs(c.face().X), r3.Vec{X: 1}) // along the rail, 1 mm into the leg
		down, out := s.Drift()
		if wantDown, want := -r3.Dot(deeper, c.leg()), -r3.Dot(deeper, crosswise); !agree(down, wantDown) || !agree(out, want) {
			t.Errorf("%+v: drifts %v down and %v out, want %v and %v", c, down, out, wantDown, want)
		}
	})
}

// Square to the rail, a leg that leans both ways shows the bevels of Compound, which
// Machinery's Handbook, 31st ed., p. 121, Fig. 1 gives; plumb it is square.
func TestShoulderOfKnownLeans(t *testing.T) {
	if s := joint.LeaningShoulder(0, 0, 0); s != (joint.Shoulder{}) {
		t.Errorf("plumb leg: %+v", s)
	}
	c := joint.Compound{Rake: measure.Radians(12), Splay: measure.Radians(8)}
	front, _ := c.Bevels()
	if s := joint.LeaningShoulder(c.Splay, c.Rake, 0); !agree(s.Face, front) {
		t.Errorf("across the outer side %v, want %v", s.Face, front)
	}
	if s := joint.LeaningShoulder(c.Splay, 0, 0); !agree(s.Face, c.Splay) || s.Edge != 0 {
		t.Errorf("splay alone: %+v", s)
	}
	if s := joint.LeaningShoulder(0, 0, 0.5); s.Face != 0 || !agree(s.Edge, 0.5) {
		t.Errorf("turned in plan alone: %+v", s)
	}
}
