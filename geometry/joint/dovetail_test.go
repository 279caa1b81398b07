package joint_test

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"
	"pgregory.net/rapid"

	"rodsheet/geometry/joint"
	"rodsheet/geometry/measure"
	"rodsheet/geometry/solid"
)

func goodDovetail() joint.Dovetail {
	return joint.Dovetail{Width: 120, TailBoard: 16, PinBoard: 20, Slope: math.Atan(1.0 / 8), Tails: 4, Pin: 6, HalfPin: 5,
		Angle: math.Pi / 2, BoardSlope: math.Pi / 2}
}

func someDovetail(t *rapid.T) joint.Dovetail {
	d := goodDovetail()
	d.TailBoard, d.PinBoard = rapid.Float64Range(8, 25).Draw(t, "tail board"), rapid.Float64Range(8, 25).Draw(t, "pin board")
	d.Slope = math.Atan(1 / rapid.Float64Range(5, 10).Draw(t, "slope"))
	d.Tails = rapid.IntRange(1, 4).Draw(t, "tails")
	d.Angle = measure.Radians(rapid.Float64Range(60, 140).Draw(t, "angle"))
	d.BoardSlope = measure.Radians(rapid.OneOf(rapid.Just(90.0), rapid.Float64Range(45, 90)).Draw(t, "board slope"))
	d.HalfPin = d.UsualHalfPin()
	if rapid.Bool().Draw(t, "lapped") {
		d.Lap = 3
	}
	if err := d.Check(); err != nil {
		t.Skip(err)
	}
	return d
}

// boards are the two boards of a corner put up in the room by turning: planes, the
// inside negative. Each board is tipped outward about its own lower edge.
func boards(d joint.Dovetail) (tail, pin [2]solid.Plane, tailUp, pinUp r3.Vec) {
	tip := r3.NewRotation(-(d.BoardSlope - math.Pi/2), r3.Vec{X: 1})
	turn := r3.NewRotation(d.Angle, r3.Vec{Z: 1})
	mirror := func(v r3.Vec) r3.Vec { return r3.Vec{X: v.X, Y: -v.Y, Z: v.Z} }
	out, up := tip.Rotate(r3.Vec{Y: -1}), tip.Rotate(r3.Vec{Z: 1})
	if out.Z > 1e-12 { // tipped the other way
		tip = r3.NewRotation(d.BoardSlope-math.Pi/2, r3.Vec{X: 1})
		out, up = tip.Rotate(r3.Vec{Y: -1}), tip.Rotate(r3.Vec{Z: 1})
	}
	slab := func(out r3.Vec, thick float64) [2]solid.Plane {
		return [2]solid.Plane{{N: vec(out), D: 0}, {N: vec(r3.Scale(-1, out)), D: thick}}
	}
	return slab(out, d.TailBoard), slab(turn.Rotate(mirror(out)), d.PinBoard), up, turn.Rotate(mirror(up))
}

// Tails and pins share out the wood where the boards cross: cut apart by the
// cheeks they fill it, and neither holds any of the other.
func TestDovetailFillsTheCorner(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d := someDovetail(t)
		tail, pin, up, _ := boards(d)
		corner := solid.Box(solid.V(-999, -999, -999), solid.V(999, 999, 999)).Cut(tail[0]).Cut(tail[1]).Cut(pin[1]).
			Cut(solid.Plane{N: pin[0].N, D: -d.Lap}).
			Cut(solid.Plane{N: vec(up), D: d.Width}).Cut(solid.Plane{N: vec(r3.Scale(-1, up)), D: 0})
		// Square to the tail board is the section of the corner: its area times Width.
		want := d.Width * d.TailBoard * d.TailLength()
		if got := corner.Volume(); math.Abs(got-want) > 1e-7*want {
			t.Fatalf("%+v: the boards share %v mm³, want %v", d, got, want)
		}
		tails := 0.0
		pins := solid.Stock("pins", corner)
		for _, c := range d.Cheeks() {
			one := corner
			for _, cheek := range c {
				a, b, e := cheek.TipOuter, cheek.RootOuter, cheek.TipInner
				n := b.Sub(a).Cross(e.Sub(a))
				if middle := c[0].TipOuter.Lerp(c[1].TipOuter, 0.5); n.Dot(middle.Sub(a)) > 0 {
					n = n.Mul(-1)
				}
				one = one.Cut(solid.Through(a, n))
			}
			tails += one.Volume()
			pins = pins.Subtract(one)
		}
		if d.BoardSlope == math.Pi/2 {
			trapezium := (d.Tail() + d.Root()) / 2 * d.TailLength() * d.TailBoard * float64(d.Tails)
			if math.Abs(tails-trapezium) > 1e-7*want {
				t.Errorf("%+v: tails of %v mm³, want %v", d, tails, trapezium)
			}
		}
		if got := tails + pins.Volume(); math.Abs(got-want) > 1e-7*want {
			t.Errorf("%+v: tails and pins come to %v mm³ of %v", d, got, want)
		}
	})
}

// Every corner of a cheek lies where it should in both boards: on the faces that
// its name says, measured by planes that were turned into place.
func TestDovetailCheeksLieInTheFaces(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d := someDovetail(t)
		tail, pin, up, _ := boards(d)
		for i, pair := range d.Cheeks() {
			for side, c := range pair {
				for _, at := range []struct {
					p         solid.Vec
					deep, end float64
				}{{c.TipOuter, 0, d.Lap}, {c.RootOuter, 0, d.PinBoard}, {c.TipInner, d.TailBoard, d.Lap}, {c.RootInner, d.TailBoard, d.PinBoard}} {
					if a, b := -tail[0].Height(at.p), -pin[0].Height(at.p); math.Abs(a-at.deep) > 1e-9 || math.Abs(b-at.end) > 1e-9 {
						t.Errorf("%+v: %v deep in the tail board and %v in the pin board, want %v and %v", d, a, b, at.deep, at.end)
					}
				}
				want := d.HalfPin + float64(i)*(d.Tail()+d.Pin) + float64(side)*d.Tail()
				if got := c.TipOuter.Dot(vec(up)); !agree(got, want) {
					t.Errorf("%+v: cheek at %v, want %v", d, got, want)
				}
				// On the outer face the side of a tail leans by the slope to the grain.
				run := c.RootOuter.Sub(c.TipOuter)
				if got := math.Abs(run.Dot(vec(up)) / run.X); !agree(got, math.Tan(d.Slope)) {
					t.Errorf("%+v: slope %v", d, got)
				}
			}
		}
	})
}

// The two strips agree: what is as long or as far apart on one is so on the other,
// for they show the same cheeks.
func TestDovetailStripsFit(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d := someDovetail(t)
		tails, pins := d.TailEnd(), d.PinEnd()
		var all []joint.Cheek
		for _, c := range d.Cheeks() {
			all = append(all, c[0], c[1])
		}
		for _, a := range all {
			for _, b := range all {
				for _, pair := range [][2]float64{
					// The outer face of the tail board lies in the end of the pin board.
					{tails.OnOuter(a.TipOuter).Distance(tails.OnOuter(b.RootOuter)), pins.OnEnd(a.TipOuter).Distance(pins.OnEnd(b.RootOuter))},
					{tails.OnOuter(a.RootOuter).Distance(tails.OnOuter(b.RootOuter)), pins.OnInner(a.RootOuter).Distance(pins.OnInner(b.RootOuter))},
					// The bottom of a socket between tails lies in the inner face of the pin board.
					{a.RootOuter.Distance(b.RootInner), pins.OnInner(a.RootOuter).Distance(pins.OnInner(b.RootInner))},
					{tails.OnEnd(a.TipOuter).Distance(tails.OnEnd(b.TipInner)), a.TipOuter.Distance(b.TipInner)},
					{tails.OnInner(a.TipInner).Distance(tails.OnInner(b.RootInner)), a.TipInner.Distance(b.RootInner)},
				} {
					if !agree(pair[0], pair[1]) {
						t.Errorf("%+v: %v and %v", d, pair[0], pair[1])
					}
				}
			}
			// Panels meet at the arrises.
			if p, q := tails.OnEnd(a.TipInner), tails.OnInner(a.TipInner); p.Distance(q) > 1e-9 {
				t.Errorf("%+v: the inner arris at %v and %v", d, p, q)
			}
			if p, q := tails.OnEnd(a.TipOuter), tails.OnOuter(a.TipOuter); p.Distance(q) > 1e-9 {
				t.Errorf("%+v: the outer arris at %v and %v", d, p, q)
			}
		}
	})
}

// Upright and square: by hand. Slope 1:8 is 7.125° (sources: common practice), 20 long.
func TestDovetailByHand(t *testing.T) {
	d := goodDovetail()
	// 120 − 2·5 − 3·6 = 92, in four tails of 23, narrower by 2·20/8 = 5 at the root.
	if !agree(d.Tail(), 23) || !agree(d.Root(), 18) || !agree(d.TailLength(), 20) || !agree(d.PinLength(), 16) {
		t.Errorf("tail %v, root %v, %v and %v long", d.Tail(), d.Root(), d.TailLength(), d.PinLength())
	}
	if got := measure.Degrees(d.Slope); math.Abs(got-7.1250) > 5e-5 {
		t.Errorf("1:8 is %v°", got)
	}
	if n := d.TailsOf(23); n != 4 {
		t.Errorf("%d tails of 23", n)
	}
	for _, e := range []joint.BoardEnd{d.TailEnd(), d.PinEnd()} {
		if face, thickness := e.OffSquare(); math.Abs(face)+math.Abs(thickness) > 1e-12 {
			t.Errorf("square end off by %v and %v", face, thickness)
		}
	}
	// Six upright boards: ends bevelled by 30°, all lengths along the boards over sin 120°.
	d.Angle = measure.Radians(120)
	if _, thickness := d.TailEnd().OffSquare(); !agree(math.Abs(thickness), measure.Radians(30)) {
		t.Errorf("hexagon: bevel %v", thickness)
	}
	if want := 20 / math.Sin(measure.Radians(120)); !agree(d.TailLength(), want) {
		t.Errorf("hexagon: tails %v long, want %v", d.TailLength(), want)
	}
}

// The ends of sloping boards are those of a hopper with butted corners.
func TestDovetailEndsOfAHopper(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d := someDovetail(t)
		c := joint.SlopingCorner{Slope: d.BoardSlope, Next: d.BoardSlope, Angle: d.Angle}
		for _, e := range []joint.BoardEnd{d.TailEnd(), d.PinEnd()} {
			face, thickness := e.OffSquare()
			if !agree(face, c.OffSquare()) || !agree(math.Abs(thickness), math.Abs(c.ButtTilt())) {
				t.Errorf("%+v: %v and %v, want %v and %v", d, face, thickness, c.OffSquare(), c.ButtTilt())
			}
		}
	})
}

func TestDovetailCheck(t *testing.T) {
	refuses(t, goodDovetail(), []refused[joint.Dovetail]{
		{"dovetail.width", "> 0 mm", func(d *joint.Dovetail) { d.Width = 0 }},
		{"dovetail.tail-board", "finite", func(d *joint.Dovetail) { d.TailBoard = math.NaN() }},
		{"dovetail.pin-board", "≤ 1000 mm", func(d *joint.Dovetail) { d.PinBoard = 1001 }},
		{"dovetail.slope", "≤ 14.04°", func(d *joint.Dovetail) { d.Slope = 0.3 }},
		{"dovetail.slope", "≥ 3.58°", func(d *joint.Dovetail) { d.Slope = 0 }},
		{"dovetail.tails", "≥ 1", func(d *joint.Dovetail) { d.Tails = 0 }},
		{"dovetail.pin", "≥ 1.5 mm", func(d *joint.Dovetail) { d.Pin = 1 }},
		{"dovetail.half-pin", "≥ 1.5 mm", func(d *joint.Dovetail) { d.HalfPin = 0 }},
		{"dovetail.lap", "≥ 2 mm", func(d *joint.Dovetail) { d.Lap = 1 }},
		{"dovetail.lap", "≥ 0 mm", func(d *joint.Dovetail) { d.Lap = -1 }},
		{"dovetail.lap", "< dovetail.pin-board, 20 mm", func(d *joint.Dovetail) { d.Lap = 20 }},
		{"dovetail.corner", "≥ 45°", func(d *joint.Dovetail) { d.Angle = 0.5 }},
		{"dovetail.corner", "≤ 150°", func(d *joint.Dovetail) { d.Angle = 3 }},
		{"dovetail.board-slope", "≥ 30°", func(d *joint.Dovetail) { d.BoardSlope = 0.5 }},
		{"dovetail.board-slope", "≤ 90°", func(d *joint.Dovetail) { d.BoardSlope = 1.6 }},
		{"dovetail.pins-together", "< dovetail.width, 120 mm", func(d *joint.Dovetail) { d.Tails = 21 }},
		{"dovetail.lower-pin", "≥ 1.5 mm", func(d *joint.Dovetail) { d.BoardSlope = measure.Radians(70) }},
		{"dovetail.root", "≥ 3 mm", func(d *joint.Dovetail) { d.Tails = 12 }},
	})
}
