package piece_test

import (
	"cmp"
	"math"
	"testing"

	"pgregory.net/rapid"

	"rodsheet/geometry/measure"
	"rodsheet/geometry/solid"
	"rodsheet/templates/piece"
	"rodsheet/templates/piece/design"
	"rodsheet/templates/piece/internal/piecetest"
	"rodsheet/templates/piece/shop"
)

// Ends of stretchers, where more than four close in on each other: they pass
// until the reach that the ring allows, and meet beyond it.
func TestEndsOfStretchers(t *testing.T) {
	for n := 5; n <= 8; n++ {
		for _, beyond := range []float64{-0.5, 0.5} {
			d := piecetest.Low()
			d.Ring.Sides, d.Ring.Inside, d.Legs.Proud, d.Top.Kind = n, 300, 0, design.NoTop
			d.Legs.Given, d.Legs.Taper, d.Ring.LegEndOver = 0, nil, n%2 == 0
			// Both reaches at s/2·(1 − 1/cos φ), where square ends touch.
			most := 150 * (1 - 1/math.Cos(piecetest.Phi(n)))
			d.Ring.Horn = most + beyond - (150 + 28/math.Sin(piecetest.Phi(n)))
			d.Legs.At = most + beyond
			p := piecetest.Worked(t, d)
			if meet := clashing(p.Parts()); (meet > 0) != (beyond > 0) {
				t.Errorf("%d sides, ends %.1f mm beyond: they share %.3f mm³", n, beyond, meet)
			}
		}
	}
}

// openRing returns the stretchers with the ring open by slide.
func openRing(p piece.Piece, stretcher solid.Part, slide float64) []solid.Part {
	var out []solid.Part
	for i := range p.Frame.Ring.Sides {
		m := p.Frame.Ring.Place(i, slide)
		out = append(out, stretcher.Transform(solid.Affine3{
			X: solid.V(m.A, m.B, 0), Y: solid.V(m.C, m.D, 0), Z: solid.V(0, 0, 1), O: solid.V(m.E, m.F, 0),
		}))
	}
	return out
}

// rough returns the stretcher before its ends are trimmed, laps cut: square
// ends at the rough reach, the plain end's lap open.
func rough(t *rapid.T, p piece.Piece) solid.Part {
	reach := p.RoughReach()
	d := p.Design
	d.Ring.Plain, d.Ring.Horn = design.OpenEnd, reach-p.Frame.Ring.Reach(0)
	// A plumb leg beyond the end leaves it square and whole.
	d.Legs.At, d.Legs.Given, d.Legs.Breadth = reach+1, 0, 1
	return piecetest.Worked(t, d).Stretcher().Cut(solid.Through(solid.V(reach, 0, 0), solid.V(1, 0, 0)))
}

// With the plain ends open or flush the ring slides shut, finished or rough,
// with nothing in the way at any moment; with closed ends it does not.
func TestRingSlidesShut(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d := piecetest.Sound(t)
		p := piecetest.Worked(t, d)
		slide := rapid.Float64Range(0, 1.5*p.RoughReach()).Draw(t, "slide")
		clashes := func(stretcher solid.Part, slide float64) float64 { return clashing(openRing(p, stretcher, slide)) }
		if d.Ring.Plain == design.ClosedEnd {
			// Past its slack the neighbour runs into the outer shoulder.
			past := d.Ring.Slack/math.Sin(piecetest.Phi(d.Ring.Sides)) + 0.5
			if v := clashes(p.Stretcher(), past); v == 0 {
				t.Errorf("closed ends let the ring slide by %.2f", past)
			}
			return
		}
		if v := clashes(p.Stretcher(), slide); v != 0 {
			t.Errorf("open by %.2f the stretchers share %.6f mm³", slide, v)
		}
		if v := clashes(rough(t, p), slide); v != 0 {
			t.Errorf("rough and open by %.2f the stretchers share %.6f mm³", slide, v)
		}
	})
}

// Sizes as milled change laps, tenons and settings, and leave the outline and
// the fit alone.
func TestAsMilled(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d := piecetest.Sound(t)
		d.Top = design.Top{
			Kind: design.WoodTop, Outline: design.TopOutline(rapid.IntRange(0, 1).Draw(t, "outline")),
			Thickness: 20, Overhang: 12, Pads: design.Pads{Diameter: 10, Height: 15},
		}
		d.Legs.Proud, d.Legs.Clear = 0, d.Legs.Clear+10 // room for a wider stretcher
		less := rapid.Float64Range(-1, 1)
		m := d
		m.Milled = design.Milled{
			Width: d.Ring.Width - less.Draw(t, "less wide"), Depth: d.Ring.Depth - less.Draw(t, "less deep"),
			Breadth: d.Legs.Breadth - less.Draw(t, "less broad"), Kerf: 2.4,
		}
		p, q := piecetest.Worked(t, d), piecetest.Worked(t, m)
		a := piecetest.Phi(d.Ring.Sides)
		piecetest.Nearly(t, "at", q.Frame.Leg.At, p.Frame.Leg.At)
		piecetest.Nearly(t, "splay", q.Frame.Leg.Splay, p.Frame.Leg.Splay)
		piecetest.Nearly(t, "height", q.Overall(), p.Overall())
		piecetest.Nearly(t, "inside", q.Frame.Ring.Inside, d.Ring.Inside)
		piecetest.Nearly(t, "foot", q.Foot(), p.Foot())
		piecetest.Nearly(t, "area of the top", q.TopArea(), p.TopArea())
		piecetest.Nearly(t, "lap", q.EndLap().EdgeLength(), m.Milled.Width/math.Sin(a))
		piecetest.Nearly(t, "spacer", q.EndLap().Spacer(), (m.Milled.Width-2.4)/math.Sin(a))
		piecetest.Nearly(t, "blade", q.EndLap().BladeHeight(), m.Milled.Depth/2)
		piecetest.Nearly(t, "tenon", q.Bridle.Third(), cmp.Or(d.Legs.Tenon, m.Milled.Width/3))
		// In the room: outer face of every leg and inside of every stretcher
		// where they were, and every joint filled.
		for i := range 2 {
			before, after := p.Leg().Transform(p.Place(i)), q.Leg().Transform(q.Place(i))
			piecetest.Nearly(t, "thickness of the leg", q.Leg().Bounds().Size().Y, m.Milled.Width)
			piecetest.Nearly(t, "foot on the floor", after.Bounds().Min.Z, 0)
			piecetest.Nearly(t, "head", after.Bounds().Max.Z, before.Bounds().Max.Z)
		}
		crossing := solid.Prism(solid.Lift(q.Frame.Ring.Lap(q.Kerf).Corners(), 0), solid.V(0, 0, m.Milled.Depth)).Transform(q.Place(1))
		parts := q.Parts()
		piecetest.Nearly(t, "wood in a crossing", woodIn(crossing, parts[:6]...), m.Milled.Width*m.Milled.Width/math.Sin(a)*m.Milled.Depth)
		if v := clashing(parts); v != 0 {
			t.Errorf("parts share %.6f mm³", v)
		}
	})
}

// The setting of a stop goes with the measured blade and the rough length.
func TestEndLapIsSetFromTheRoughEnd(t *testing.T) {
	p := piecetest.Worked(t, piecetest.Low())
	if p.RoughStretcher() != 2*p.RoughReach() || p.RoughReach() <= math.Max(p.PlainReach, p.LegReach) {
		t.Errorf("rough %.3f for ends at %.3f and %.3f", p.RoughStretcher(), p.PlainReach, p.LegReach)
	}
	// 120 mm beyond the outer shoulder on the inside edge at 260/2 + 28/sin 60°.
	near, _ := p.EndLap().Shoulders(0)
	piecetest.Nearly(t, "near shoulder", p.RoughReach()-near, 130+28/math.Sin(measure.Radians(60)))
}

// Sizes with the same ring are sawn to one length, so that one stop serves the
// laps of all; one that would take far more wood for it keeps its own.
func TestTogetherSharesTheStop(t *testing.T) {
	tall := piecetest.Low()
	tall.Size, tall.Legs.Given, tall.Legs.Height = "tall", measure.Radians(11), 560
	horned := piecetest.Low()
	horned.Size, horned.Ring.Horn = "horned", 150
	alone := []piece.Piece{piecetest.Worked(t, piecetest.Low()), piecetest.Worked(t, tall), piecetest.Worked(t, horned)}
	both := piece.ShareStops(alone)
	if alone[0].RoughReach() == alone[1].RoughReach() {
		t.Fatal("the sizes need the same length anyway")
	}
	piecetest.Nearly(t, "stop of the second", both[1].EndLap().Stop(), both[0].EndLap().Stop())
	piecetest.Nearly(t, "length of the longer", both[0].RoughStretcher(), alone[0].RoughStretcher())
	piecetest.Nearly(t, "length of the far longer", both[2].RoughStretcher(), alone[2].RoughStretcher())
	rows := 0
	for _, c := range shop.NewPlan(both[:2]).Cards {
		for _, s := range c.Steps {
			if s.Do == shop.CutLap {
				rows++
			}
		}
	}
	if rows != 1 {
		t.Errorf("%d settings for the laps, want 1", rows)
	}
}
