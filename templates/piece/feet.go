package piece

import (
	"math"

	"rodsheet/geometry"
	"rodsheet/geometry/joint"
	"rodsheet/geometry/measure"
	"rodsheet/templates/piece/design"
)

// settle finds splay and place of the legs, each of which may hang on the
// other. With the foot circle or the foot spread given it halves the range of
// splays: however the legs are placed, more splay sets the feet further out.
func (j *validator) settle(f joint.Frame) joint.Frame {
	d := j.design
	lean := func(splay float64) joint.Frame {
		f.Leg.Splay = splay
		if d.Legs.At == 0 {
			f.Leg.At = f.LeastAt(d.Legs.Clear)
		}
		return f
	}
	if d.Legs.Lean == design.BySplay || !j.sure(leanKeys) {
		return lean(d.Legs.Given)
	}
	plumb := lean(0)
	j.taper(taper(d.Legs.Taper, plumb.Leg), plumb.Leg.Thickness, j.height)
	j.feet(plumb, lean(joint.LeanSteepest))
	if !j.sure(j.leaned) {
		return plumb
	}
	lo, hi := 0.0, joint.LeanSteepest
	const halvings = 60 // leave less than the last bit of a splay
	for range halvings {
		if mid := (lo + hi) / 2; feet(d, lean(mid)) <= d.Legs.Given {
			lo = mid
		} else {
			hi = mid
		}
	}
	return lean(lo)
}

// feet returns what the design gives of the feet: the diameter of their circle
// or the distance from one to the next.
func feet(d design.Design, f joint.Frame) float64 {
	radius := footRadius(taper(d.Legs.Taper, f.Leg), f)
	if d.Legs.Lean == design.ByFootSpread {
		return joint.Chord(radius, f.Ring.Polygon().Turn())
	}
	return 2 * radius
}

// feet refuses feet that no splay gives. Plumb feet stand where they do however
// tall the legs are and wherever their taper starts.
func (j *validator) feet(plumb, steepest joint.Frame) {
	d := j.design
	figure := measure.ID("legs.foot-circle")
	if d.Legs.Lean == design.ByFootSpread {
		figure = "legs.foot-spread"
	}
	given := measure.Length(d.Legs.Given)
	near := func() error {
		d, plumb := d, plumb
		plumb.Leg.Height = longest
		if d.Legs.Taper != nil {
			d.Legs.Taper = &design.Taper{Foot: d.Legs.Taper.Foot, Faces: d.Legs.Taper.Faces}
		}
		return measure.AtLeast(figure, given, "legs.plumb", measure.Length(feet(d, plumb)),
			"legs.inward")
	}
	far := func() error {
		return measure.AtMost(figure, given, "legs.steepest", measure.Length(feet(d, steepest)),
			"legs.outward")
	}
	j.ask(near, inPlanKeys, keys("legs.clear", "legs.taper.foot", "legs.taper.faces"))
	j.ask(far, j.leaned)
}

// taper returns the taper of a leg; nil where it keeps its section.
func taper(t *design.Taper, l joint.Leg) *joint.Taper {
	if t == nil {
		return nil
	}
	return &joint.Taper{Length: l.Length(), Top: l.Breadth, Foot: t.Foot, Start: t.Start, Faces: t.Faces}
}

// taper refuses a taper that no leg so thick can have; the groups are what the
// length of the leg hangs on. Where not all of it can be relied on it asks what
// the foot takes off a leg of any length, and for the start alone.
func (j *validator) taper(t *joint.Taper, thickness float64, length ...group) {
	if t == nil {
		return
	}
	of := keys("ring.width", "legs.breadth", "legs.taper.foot", "legs.taper.faces")
	start := keys("legs.taper.start", "legs.breadth")
	if j.ask(func() error { return checkTaper(*t, thickness) }, append(length, of, start)...) {
		return
	}
	foot, begin := *t, *t
	foot.Length, foot.Start = 1000, 0
	begin.Foot = math.Nextafter(t.Top, 0)
	j.ask(func() error { return checkTaper(foot, thickness) }, of, milledKeys)
	j.ask(begin.Check, append(length, start)...)
}

// checkTaper returns a *measure.BoundError for a taper that no leg so thick can
// have.
func checkTaper(t joint.Taper, thickness float64) error {
	if err := t.Check(); err != nil {
		return err
	}
	return measure.AtMost("legs.taper.across", measure.Length(t.LostAcross()),
		"legs.leaves-least", measure.Length(thickness-design.Thinnest), "legs.taper.less")
}

// foot returns where the middle of the back of the finished foot stands
// on the floor, in the frame of a stretcher so wide.
//
// A taper of the back brings it in: t mm down the leg the face has lost
// k·(t − Start), k its loss for every mm, and so it comes to the floor where
// t·cos α + k·(t − Start)·sin α = Height. Of two adjacent tapers one leaves the
// back as it is and takes its loss off the ring side.
func foot(t *joint.Taper, l joint.Leg, width float64) geometry.Point {
	at := geometry.Pt(l.Foot(), width/2)
	switch {
	case t == nil:
	case t.Faces.Square() && !t.Faces.Symmetric():
		at.Y += t.Loss() / 2
	case t.Faces.Symmetric():
		s, c := math.Sincos(l.Splay)
		k := t.Loss() / t.Run()
		run := (l.Height - t.Start*c) / (c + k*s)
		at.X = l.At + s*t.Start + (s-k*c)*run
	}
	return at
}

// footRadius returns how far from the centre of the ring that point stands.
func footRadius(t *joint.Taper, f joint.Frame) float64 {
	at := foot(t, f.Leg, f.Ring.Width)
	return math.Hypot(at.X, f.Ring.Polygon().Apothem+at.Y)
}

// Foot returns how far from mid-length of its stretcher the back of the
// finished foot stands on the floor.
func (p Piece) Foot() float64 { return foot(p.Taper, p.Frame.Leg, p.Frame.Ring.Width).X }

// FootRadius returns the radius of the circle on the floor, about the centre
// of the ring, through the middles of the backs of the finished feet.
// A leg that keeps its back and its ring side has them under the middle
// of its stretcher.
func (p Piece) FootRadius() float64 { return footRadius(p.Taper, p.Frame) }

// FootSpread returns the distance between the same points of neighbouring feet.
func (p Piece) FootSpread() float64 {
	return joint.Chord(p.FootRadius(), p.Frame.Ring.Polygon().Turn())
}

// FootPoint returns in plan the middle of the back of finished foot i, from
// the centre of the ring.
func (p Piece) FootPoint(i int) geometry.Point {
	return p.Frame.Ring.Place(i, 0).Apply(foot(p.Taper, p.Frame.Leg, p.Frame.Ring.Width))
}
