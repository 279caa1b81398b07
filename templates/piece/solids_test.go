package piece_test

import (
	"cmp"
	"math"
	"testing"

	"pgregory.net/rapid"

	"rodsheet/geometry"
	"rodsheet/geometry/joint"
	"rodsheet/geometry/solid"
	"rodsheet/templates/piece"
	"rodsheet/templates/piece/design"
	"rodsheet/templates/piece/internal/piecetest"
)

// The closed forms below are written out from the figures of a design, so that
// nothing of the code that makes the solids has a part in them: φ is the
// crossing angle π·(n − 2)/n, s the inside, w and d width and depth of the
// stretcher, b the breadth of the leg, α its splay.

func cotOf(a float64) float64 { return math.Cos(a) / math.Sin(a) }

// expectRuns compares runs of wood.
func expectRuns(t *rapid.T, what string, got, want []piecetest.Run) {
	t.Helper()
	if len(got) != len(want) {
		t.Errorf("%s: wood at %v, want %v", what, got, want)
		return
	}
	for i := range got {
		piecetest.Nearly(t, what+", from", got[i].Lo, want[i].Lo)
		piecetest.Nearly(t, what+", to", got[i].Hi, want[i].Hi)
	}
}

// clashVolume returns what two parts want both, in mm³.
func clashVolume(a, b solid.Part) float64 {
	sum := 0.0
	for _, s := range solid.Clash(a, b) {
		sum += s.Volume()
	}
	return sum
}

// clashing returns what any two of the parts want both.
func clashing(parts []solid.Part) float64 {
	sum := 0.0
	for i, a := range parts {
		for _, b := range parts[:i] {
			sum += clashVolume(a, b)
		}
	}
	return sum
}

// inside returns what of a part lies in a solid.
func inside(p solid.Part, s solid.Solid) solid.Part {
	for _, f := range s.Faces() {
		q := f.Plane
		p = p.Cut(q)
	}
	return p
}

// The wood of a stretcher along lines on both edges and between them, above
// and below the middle of its depth: that says where every shoulder stands,
// on which face, and where the ends are.
func TestShouldersOfTheStretcher(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d := piecetest.Sound(t)
		p := piecetest.Worked(t, d)
		a, w := piecetest.Phi(d.Ring.Sides), d.Ring.Width
		for _, y := range []float64{0, w * 0.02, w} { // the slot is further in
			inner := d.Ring.Inside/2 + y*cotOf(a)
			outer := inner + w/math.Sin(a)
			plain := -outer
			if d.Ring.Plain != design.FlushEnd {
				far := math.Max(0, w*cotOf(a))
				plain = -(d.Ring.Inside/2 + far + w/math.Sin(a) + d.Ring.Horn)
			}
			for _, share := range []float64{0.25, 0.75} {
				z := share * d.Ring.Depth
				end := p.Frame.Leg.At + (d.Ring.Depth-z)*math.Tan(d.Legs.Given)
				if d.Legs.Mortise == joint.MortiseInLeg { // the cheeks are the leg's
					end -= d.Legs.Breadth / math.Cos(d.Legs.Given)
				}
				// The leg end is cut from above where the neighbour passes over it.
				if (share > 0.5) == !d.Ring.LegEndOver {
					expectRuns(t, "leg end", piecetest.Along(p.Stretcher(), solid.V(0, y, z)), piecetest.SomeRuns(piecetest.Run{Lo: plain, Hi: inner}, piecetest.Run{Lo: outer, Hi: end}))
					continue
				}
				want := piecetest.SomeRuns(piecetest.Run{Lo: -inner, Hi: end})
				if d.Ring.Plain == design.ClosedEnd {
					want = piecetest.SomeRuns(piecetest.Run{Lo: plain, Hi: -outer - d.Ring.Slack/math.Sin(a)}, piecetest.Run{Lo: -inner, Hi: end})
				}
				expectRuns(t, "plain end", piecetest.Along(p.Stretcher(), solid.V(0, y, z)), want)
			}
		}
	})
}

// woodIn returns how much of a solid is filled by parts, in mm³.
func woodIn(s solid.Solid, parts ...solid.Part) float64 {
	sum := 0.0
	for _, p := range parts {
		sum += inside(p, s).Volume()
	}
	return sum
}

// Where two neighbours cross they fill the crossing and want nothing twice.
// Half is the neighbour's; the leg may reach over it into the other half.
func TestLapsMate(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d := piecetest.Sound(t)
		p := piecetest.Worked(t, d)
		a, w, depth := piecetest.Phi(d.Ring.Sides), d.Ring.Width, d.Ring.Depth
		parts := p.Parts()
		own, leg, neighbour := parts[2], parts[3], parts[0] // the plain end of stretcher 1 crosses the leg end of 2
		s, c := d.Ring.Inside/2, cotOf(a)
		crossing := solid.Prism(solid.Lift([]geometry.Point{
			{X: s}, {X: s + w/math.Sin(a)}, {X: s + w*c + w/math.Sin(a), Y: w}, {X: s + w*c, Y: w},
		}, 0), solid.V(0, 0, depth))
		full := w * w / math.Sin(a) * depth
		piecetest.Nearly(t, "crossing", crossing.Volume(), full)
		piecetest.Nearly(t, "the neighbour's share", woodIn(crossing.Transform(p.Place(1)), neighbour), full/2)
		// A narrow leg of much splay trims its stretcher before the corner of
		// the lap.
		sin, cos := math.Sincos(d.Legs.Given)
		left := crossing.Cut(solid.Through(solid.V(p.Frame.Leg.At, 0, depth), solid.V(cos, 0, sin)))
		piecetest.Nearly(t, "wood in the crossing", woodIn(left.Transform(p.Place(1)), own, leg, neighbour), left.Volume())
		if v := clashVolume(own, neighbour); v != 0 {
			t.Errorf("neighbours want %.6f mm³ twice", v)
		}
	})
}

// Nothing of a sound piece wants the wood of another part.
func TestSoundPiecesHaveNoClash(t *testing.T) {
	none := func(t rapid.TB, d design.Design) {
		if v := clashing(piecetest.Worked(t, d).Parts()); v != 0 {
			t.Errorf("parts of %+v want %.6f mm³ both", d, v)
		}
	}
	none(t, piecetest.Low()) // with a taper, pads and a top
	rapid.Check(t, func(t *rapid.T) { none(t, piecetest.Sound(t)) })
}

// Volume from the closed forms: the bar, less laps, less what the bridle takes.
func TestVolumeOfTheParts(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d := piecetest.Sound(t)
		p := piecetest.Worked(t, d)
		a, w, depth, b := piecetest.Phi(d.Ring.Sides), d.Ring.Width, d.Ring.Depth, d.Legs.Breadth
		tan, cos := math.Tan(d.Legs.Given), math.Cos(d.Legs.Given)
		q := cmp.Or(d.Legs.Tenon, w/3)
		middle := d.Ring.Inside/2 + w/2*cotOf(a) // inner shoulder, mean over the width
		lap := w / math.Sin(a)
		plain := middle + lap
		if d.Ring.Plain != design.FlushEnd {
			plain = d.Ring.Inside/2 + math.Max(0, w*cotOf(a)) + lap + d.Ring.Horn
		}
		cut := plain - middle // length of the plain end's lap, mean over the width
		if d.Ring.Plain == design.ClosedEnd {
			cut = (w + d.Ring.Slack) / math.Sin(a)
		}
		open, kept := b/cos*depth, q
		if d.Legs.Mortise == joint.MortiseInStretcher {
			kept = w - q
		}
		stretcher := w*depth*(plain+p.Frame.Leg.At+depth/2*tan) - w*depth/2*(lap+cut) - open*(w-kept)
		piecetest.Nearly(t, "stretcher", p.Stretcher().Volume(), stretcher)

		proud := d.Legs.Proud
		leg := w*b/cos*(d.Legs.Height+proud) - b/cos*(depth+proud)*kept
		piecetest.Nearly(t, "leg", p.Leg().Volume(), leg)
	})
}

// Stock is parts and waste: the blank less the part, cut away piece by piece,
// is what is left when the volume of the part is taken off. A part that stood
// out of its blank would leave too much.
func TestStockIsPartAndWaste(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d := piecetest.Sound(t)
		d.Legs.Taper = piecetest.Taper(t, d)
		p := piecetest.Worked(t, d)
		reach, r := p.RoughReach(), d.Ring
		stretcher := solid.Box(solid.V(-reach, 0, 0), solid.V(reach, r.Width, r.Depth))

		// The blank of the leg lies along it, its outer edge through the
		// head's, and is proud/cos α longer where the head is proud.
		l, s, c := p.Frame.Leg, math.Sin(d.Legs.Given), math.Cos(d.Legs.Given)
		down, in := solid.V(s, 0, -c), solid.V(-c, 0, -s)
		long := l.Blank() + d.Legs.Proud/c
		long0 := solid.V(l.At, 0, r.Depth).Sub(down.Mul(d.Legs.Proud/c + l.Breadth*s/c))
		base := []solid.Vec{long0, long0.Add(down.Mul(long + l.Breadth*s/c)), long0.Add(down.Mul(long + l.Breadth*s/c)).Add(in.Mul(l.Breadth)), long0.Add(in.Mul(l.Breadth))}
		leg := solid.Prism(base, solid.V(0, r.Width, 0))

		for _, tt := range []struct {
			name  string
			blank solid.Solid
			part  solid.Part
		}{{"stretcher", stretcher, p.Stretcher()}, {"leg", leg, p.Leg()}} {
			waste := solid.Stock("waste", tt.blank)
			for _, piece := range tt.part.Pieces {
				waste = waste.Subtract(piece)
			}
			piecetest.Nearly(t, tt.name, waste.Volume()+tt.part.Volume(), tt.blank.Volume())
		}
	})
}

// Leg and stretcher fill their joint, and want nothing twice, with either part
// mortised, tenon of any size, and the head proud or not. Beside the head the
// neighbour may reach into a cheek that its lap leaves short.
func TestBridleFillsItsJoint(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d := piecetest.Sound(t)
		p := piecetest.Worked(t, d)
		s, c := math.Sincos(d.Legs.Given)
		at := p.Frame.Leg.At
		outer := solid.Through(solid.V(at, 0, d.Ring.Depth), solid.V(c, 0, s))
		inner := solid.Through(solid.V(at-d.Legs.Breadth/c, 0, d.Ring.Depth), solid.V(-c, 0, -s))
		joint := solid.Box(solid.V(-2000, 0, 0), solid.V(2000, d.Ring.Width, d.Ring.Depth)).Cut(outer).Cut(inner)
		parts := p.Parts()
		got := woodIn(joint.Transform(p.Place(0)), parts[0], parts[1], parts[2*(d.Ring.Sides-1)])
		piecetest.Nearly(t, "wood in the joint", got, d.Ring.Width*d.Ring.Depth*d.Legs.Breadth/c)
		if v := clashVolume(parts[0], parts[1]); v != 0 {
			t.Errorf("leg and stretcher want %.6f mm³ twice", v)
		}
	})
}

// A leg set too far in takes from its neighbour: the tenon's or the leg's
// thickness times half the depth times the mean overlap, all being linear.
func TestClashOfALegTooFarIn(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d := piecetest.Sound(t)
		a, w, depth := piecetest.Phi(d.Ring.Sides), d.Ring.Width, d.Ring.Depth
		cos, tan := math.Cos(d.Legs.Given), math.Tan(d.Legs.Given)
		thick := w
		if d.Legs.Mortise == joint.MortiseInStretcher {
			thick = cmp.Or(d.Legs.Tenon, w/3)
		}
		kept := thick // what of the leg is there to clash
		if d.Legs.Mortise == joint.MortiseInLeg {
			kept = w - cmp.Or(d.Legs.Tenon, w/3)
		}
		// So far in that it overlaps all over, and not as far as the other
		// shoulder of the lap or the inner face.
		lean, skew := depth/2*tan, thick*math.Abs(cotOf(a))
		least, most := lean+skew+0.1, math.Min(w/math.Sin(a), d.Legs.Breadth/cos)-lean-skew
		if most < least {
			t.Skip("no room to overlap all over")
		}
		over := rapid.Float64Range(least, most).Draw(t, "overlap")
		share := 0.75
		if d.Ring.LegEndOver {
			share = 0.25
		}
		shoulder := d.Ring.Inside/2 + w/2*cotOf(a) + w/math.Sin(a)
		below := depth * (1 - share)
		d.Legs.At = shoulder - over - below*tan + d.Legs.Breadth/cos // inner face of the leg, in the middle of the overlap
		p := piecetest.Worked(t, d)
		got := clashVolume(p.Parts()[1], p.Parts()[2*(d.Ring.Sides-1)])
		piecetest.Nearly(t, "clash", got, kept*depth/2*over)
	})
}

// A leg that clears its neighbour by so much clashes when it moves in by a
// hair more, and not when it moves by a hair less.
func TestClearIsWhatTheSolidsLeave(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d := piecetest.Sound(t)
		p := piecetest.Worked(t, d)
		piecetest.Nearly(t, "clearance", p.Frame.Clearance(), d.Legs.Clear)
		neighbour := p.Parts()[2*(d.Ring.Sides-1)]
		move := func(in float64) float64 {
			return clashVolume(p.Leg().Transform(solid.Translate(solid.V(-in, 0, 0))).Transform(p.Place(0)), neighbour)
		}
		const hair = 0.01
		if v := move(d.Legs.Clear - hair); v != 0 {
			t.Errorf("moved in by less than its clearance the leg takes %.6f mm³", v)
		}
		if v := move(d.Legs.Clear + 5); v == 0 {
			t.Errorf("moved in by more than its clearance the leg takes nothing")
		}
		// What is shared grows from nothing just there: by as little as a
		// corner where both faces lean, so ask a hair with a fine measure.
		shared := 0.0
		leg := p.Leg().Transform(solid.Translate(solid.V(-d.Legs.Clear-hair, 0, 0))).Transform(p.Place(0))
		for _, a := range leg.Pieces {
			for _, b := range neighbour.Pieces {
				shared += a.Intersect(b).Volume()
			}
		}
		if !(shared > 1e-9) {
			t.Errorf("moved in by its clearance and a hair the leg shares %.3g mm³", shared)
		}
	})
}

// Stretcher and leg are worked out once for a piece and its copies, and not again.
func TestSolidsAreWorkedOutOnce(t *testing.T) {
	p := piecetest.Worked(t, piecetest.Low())
	again := p
	for name, f := range map[string]func(piece.Piece) solid.Part{"stretcher": piece.Piece.Stretcher, "leg": piece.Piece.Leg} {
		f(p)
		if n := testing.AllocsPerRun(3, func() { f(again) }); n > 2 {
			t.Errorf("%s: %v allocations for one that is there", name, n)
		}
	}
}
