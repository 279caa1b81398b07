package checks

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"rodsheet/geometry"
	"rodsheet/geometry/measure"
	"rodsheet/geometry/solid"
	"rodsheet/templates/piece"
	"rodsheet/templates/piece/design"
	"rodsheet/templates/piece/internal/piecetest"
	"rodsheet/templates/piece/kind"
)

// A clash of parts is named with its place, its size and its volume, and the
// mends of the head mend it too.
func TestClashNamesThePlace(t *testing.T) {
	d := piecetest.Low()
	d.Legs.At = piecetest.Worked(t, d).Frame.LeastAt(-6.75)
	c := graded(t, d, "clash.stretcher-1.leg-2", kind.Fail)
	// It lies against the top of the stretcher, and reaches as far down as the leg
	// leans out of the way: 6.75 mm deep there.
	at := c.Found.Figures
	if c.Found.ID != Everywhere || at[0].Kind != measure.KindVolume || at[1].Value != 1 || len(at) != 11 {
		t.Errorf("%+v", c.Found)
	}
	if c.Of != (Subject{A: Part{Stretcher, 1}, B: Part{Leg, 2}}) {
		t.Errorf("of %+v", c.Of)
	}
	if len(c.Fixes) != 2 {
		t.Errorf("%d mends: %s", len(c.Fixes), advice(c))
	}
}

// Asked are all pairs that differ by more than a turn: whatever two parts
// clash, so does a pair that is asked.
func TestPairsStandForAll(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d := piecetest.Any(t)
		p, err := piece.Solve(d)
		if err != nil {
			t.Skip("no such piece")
		}
		parts := p.Parts()
		any := false
		for i := range parts {
			for _, b := range parts[:i] {
				any = any || len(solid.Clash(parts[i], b)) > 0
			}
		}
		if asked := !buildable(askClash(withSolids(p))); asked != any {
			t.Errorf("clash by all pairs %v, by those asked %v", any, asked)
		}
	})
}

// Every pair of parts is one of those asked, turned about the axis.
func TestPairsAreAllTurns(t *testing.T) {
	for sides := 3; sides <= 8; sides++ {
		d := piecetest.Low()
		d.Ring.Sides = sides
		m := withSolids(piecetest.Worked(t, d))
		const kinds = 3
		asked := map[pair]bool{}
		for _, q := range m.pairs() {
			asked[q] = true
		}
		top := len(m.parts()) - 1
		turned := func(part, by int) int {
			if part == top {
				return top
			}
			return (part + by*kinds) % (sides * kinds)
		}
		for a := range m.parts() {
			for b := range a {
				found := false
				for by := range sides {
					x, y := turned(a, by), turned(b, by)
					found = found || asked[pair{x, y}] || asked[pair{y, x}]
				}
				if !found {
					t.Errorf("%d sides: %s and %s are never asked", sides, m.parts()[a].Name, m.parts()[b].Name)
				}
			}
		}
	}
}

// Under a top with an outline of its own the sides differ: here only the third
// head stands under it, and too high.
func TestEveryHeadIsAskedUnderAFreeTop(t *testing.T) {
	d := piecetest.Low()
	d.Legs.Proud, d.Top.Pads = 12, design.Pads{}
	p := piecetest.Worked(t, d)
	head := p.Frame.Ring.Place(2, 0).Apply(geometry.Pt(p.Frame.Leg.At-20, 14))
	d.Top.Outline = design.FreeOutline
	for i := range 4 {
		d.Top.Points = append(d.Top.Points, head.Add(geometry.Polar(30, float64(i)*math.Pi/2)))
	}
	graded(t, d, "clash.leg-3.top", kind.Fail)
}

// A top that follows the ring, or is round, is one solid to every leg: turned by a side
// it covers itself. Otherwise a clash that only leg 3 has would not be asked.
func TestTopIsAlikeAllRound(t *testing.T) {
	for sides := 3; sides <= 8; sides++ {
		for _, outline := range []design.TopOutline{design.RoundTop, design.RingTop} {
			d := piecetest.Low()
			d.Ring.Sides = sides
			d.Top.Outline, d.Top.Corner, d.Top.CornerSize = outline, design.RoundedCorner, 30
			p := piecetest.Worked(t, d)
			parts := p.Parts()
			top := parts[len(parts)-1]
			turned := top.Transform(solid.RotateZ(p.Frame.Ring.Polygon().Turn()))
			for _, s := range turned.Pieces {
				top = top.Subtract(s)
			}
			if v := top.Volume(); v > solid.ClashFloor {
				t.Errorf("%d sides, outline %v: %.4f mm³ differ", sides, outline, v)
			}
		}
	}
}
