package shop

import (
	"math"
	"slices"
	"testing"

	"pgregory.net/rapid"

	"rodsheet/geometry"
	"rodsheet/geometry/measure"
	"rodsheet/geometry/solid"
	"rodsheet/templates/piece"
	"rodsheet/templates/piece/design"
	"rodsheet/templates/piece/internal/piecetest"
)

// fastened draws a piece whose wooden top is screwed or buttoned down.
func fastened(t *rapid.T) piece.Piece {
	mm := func(lo, hi float64, name string) float64 { return rapid.Float64Range(lo, hi).Draw(t, name) }
	d := piecetest.Sound(t)
	d.Unit = measure.Unit(rapid.IntRange(0, 1).Draw(t, "unit"))
	d.Top = design.Top{
		Kind: design.WoodTop, Outline: design.RingTop, Overhang: mm(20, 150, "overhang"), Thickness: mm(12, 40, "thickness"),
		Fixing: design.Fixing{Kind: design.FixingKind(rapid.IntRange(1, 2).Draw(t, "kind"))},
	}
	d.Wood = design.Wood{Species: "Oak, white", MoistureFrom: 8, MoistureTo: mm(9, 13, "moisture")}
	return piecetest.Worked(t, d)
}

// The top is held on every stretcher, fast near its middle line and free elsewhere, and
// every hole stands on its own stretcher, clear of the laps and under the top.
func TestFixingsHoldAndLetMove(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := fastened(t)
		f, ok := FixingOf(p)
		if !ok {
			t.Fatal("nothing holds the top")
		}
		wood, _ := p.Design.Wood.Known()
		change := math.Max(wood.Radial, wood.Tangential) * (p.Design.Wood.MoistureTo - p.Design.Wood.MoistureFrom)
		held, round := map[int]bool{}, 0
		grain := p.TopAlong()
		for _, h := range f.Holes {
			held[h.Part] = true
			at := p.Frame.Ring.Place(h.Part, 0).Apply(geometry.Pt(h.At, p.Frame.Ring.Width/2))
			// By its own components, not by a product with the direction of the grain.
			off := math.Abs(at.Y)
			if grain.Y == 1 {
				off = math.Abs(at.X)
			}
			if moves := change * off; h.Slotted {
				if free := (f.Slot(p.Design.Unit) - sizesOfFixings(p.Design.Unit).shank) / 2; free < moves-1e-9 {
					t.Errorf("hole %+v: %v mm either way, the top moves %v", h, free, moves)
				}
			} else if round++; moves > 0.51 {
				t.Errorf("hole %+v is round, the top moves %v", h, moves)
			}
			if p.TopShape().Inside(at) <= 0 {
				t.Errorf("hole %+v is not under the top", h)
			}
			if math.Abs(h.At) > HoleReach(p) {
				t.Errorf("hole %+v is in the lap", h)
			}
		}
		if len(held) != p.Frame.Ring.Sides {
			t.Errorf("held on %d stretchers of %d", len(held), p.Frame.Ring.Sides)
		}
		// Head and point of the screw stand where the parts say: above the underside
		// of the stretcher and below the upper face of the top.
		under := p.Frame.Ring.Depth - f.Bore
		if f.Kind == design.Buttons {
			under = sizesOfFixings(p.Design.Unit).button
		}
		if tip := f.Screw - under; math.Abs(tip-f.Bite) > 1e-9 || tip > p.Design.Top.Thickness*2/3+1 {
			t.Errorf("%+v: %v mm in a top of %v", f, tip, p.Design.Top.Thickness)
		}
	})
}

// A square ring of 300 mm, its grain along the first stretcher: the middle line crosses
// the second and the fourth at mid-length. By hand: their quarter points lie 75 mm from
// it, the first and third stretcher 150 + 34/2 = 167 mm.
func TestFixingsOfASquare(t *testing.T) {
	d := piecetest.Square()
	d.Ring.Inside, d.Ring.Width = 300, 34
	d.Top = design.Top{Kind: design.WoodTop, Outline: design.RingTop, Overhang: 110, Thickness: 20, Fixing: design.Fixing{Kind: design.Screws}}
	d.Wood.Species, d.Wood.MoistureFrom, d.Wood.MoistureTo = "oak, white", 8, 12
	p := piecetest.Worked(t, d)
	f, _ := FixingOf(p)
	want := map[[2]float64]float64{
		{0, -75}: 167, {0, 75}: 167, {1, -75}: 75, {1, 0}: 0, {1, 75}: 75,
		{2, -75}: 167, {2, 75}: 167, {3, -75}: 75, {3, 0}: 0, {3, 75}: 75,
	}
	if len(f.Holes) != len(want) {
		t.Errorf("%d holes, want %d", len(f.Holes), len(want))
	}
	for _, h := range f.Holes {
		off, ok := want[[2]float64{float64(h.Part), h.At}]
		if !ok || math.Abs(math.Abs(h.Off)-off) > 1e-9 || h.Slotted != (off > 0) {
			t.Errorf("hole %+v: want %v from the middle line", h, off)
		}
		if want := []float64{90, 0, 90, 0}[h.Part]; math.Abs(measure.Degrees(h.Lean)-want) > 1e-6 {
			t.Errorf("hole %+v: its slot lies %v° to the edge, want %v°", h, measure.Degrees(h.Lean), want)
		}
	}
}

// A slot leans across the grain: from its end at the ring side to that at the outer side it
// comes nearer to the end that it names. By the directions in plan, the grain along x or y.
func TestSlotsLeanAcrossTheGrain(t *testing.T) {
	leaning := 0
	rapid.Check(t, func(t *rapid.T) {
		p := fastened(t)
		f, _ := FixingOf(p)
		for _, h := range f.Holes {
			place := p.Frame.Ring.Place(h.Part, 0)
			end := map[Face]float64{LegEnd: 1, PlainEnd: -1}[h.Leans]
			long := geometry.Pt(end*math.Cos(h.Lean), math.Sin(h.Lean))
			if h.Leans == NoFace {
				long = geometry.Pt(math.Cos(h.Lean), math.Sin(h.Lean))
			} else {
				leaning++
			}
			way := place.Apply(long).Sub(place.Apply(geometry.Point{}))
			if along := math.Abs(way.Dot(p.TopAlong())); along > 1e-6 {
				t.Fatalf("hole %+v: its slot runs %v along the grain", h, along)
			}
		}
	})
	if leaning == 0 {
		t.Error("no slot leans")
	}
}

// The board of the glue-up lies under every end of the ring, and under 100 mm of wedges and
// blocks beside it; the boards to buy are as thick as the thinner way of each rough part.
// By hand: a triangle of 260 mm, 28 wide, stands 260/(2·tan 60°) + 28 = 103.06 from the
// centre outside.
func TestWhatTheGlueUpTakes(t *testing.T) {
	p := piecetest.WorkedAll(t, piecetest.Low())[0]
	board := glueBoard(p)
	for _, end := range []float64{p.PlainReach, p.LegReach} {
		for _, side := range []float64{0, p.Frame.Ring.Width} {
			if at := p.Frame.Ring.Place(0, 0).Apply(geometry.Pt(end, side)).Norm(); board/2 < at {
				t.Errorf("a board %v across, an end %v from its middle", board, at)
			}
		}
	}
	if want := 2 * (103.0555 + 100); board < want {
		t.Errorf("a board %v across, want %v or more", board, want)
	}
}

func TestThicknessesToBuy(t *testing.T) {
	plan := NewPlan(piecetest.WorkedAll(t, piecetest.Low()))
	least := plan.Cuts.Thicknesses()
	for _, r := range plan.Cuts.Rows {
		if r.From == Bought && !slices.ContainsFunc(least, func(v float64) bool {
			return math.Abs(v-r.Rough.Width) < 1e-5 || math.Abs(v-r.Rough.Thickness) < 1e-5
		}) {
			t.Errorf("%v: no board of %v serves", r.Rough, least)
		}
	}
}

// Holes and slots are bored as cards and table say, as solids: each lies whole in its
// stretcher, clear of the laps, and a screw that stands fast in the top has room in it on all
// the way that the top takes it, across the grain in the room.
func TestTheHolesAreBored(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := fastened(t)
		f, _ := FixingOf(p)
		u := p.Design.Unit
		if f.Kind != design.Screws {
			t.Skip("buttons")
		}
		shank, head := Bits(u)
		share := TopShare(p.Design)
		stretcher := p.Stretcher()
		low, high := stretcher.Bounds().Min.Z, stretcher.Bounds().Max.Z
		for _, h := range f.Holes {
			if f.Across(u, h) > p.Frame.Ring.Width-head/28 {
				continue // a check tells of it; so far the corners of a slot stand out of the bit
			}
			along := solid.V(math.Cos(h.Lean), math.Sin(h.Lean), 0)
			if h.Leans == PlainEnd {
				along.X = -along.X
			}
			at := solid.V(h.At, p.Frame.Ring.Width/2, low)
			bored := func(wide, long, deep float64) solid.Solid {
				if !h.Slotted {
					long = wide
				}
				return solid.Slot(at, along, solid.V(0, 0, deep), wide, long)
			}
			through, sunk := bored(shank, f.Slot(u), high-low), bored(head, f.HeadSlot(u), f.Bore)
			for _, hole := range []solid.Solid{through, sunk} {
				if hole.Empty() {
					continue
				}
				if lost := stretcher.Volume() - stretcher.Subtract(hole).Volume(); math.Abs(lost-hole.Volume()) > 1e-6*hole.Volume()+1e-3 {
					t.Errorf("hole %+v takes %g mm³ of wood, it is of %g", h, lost, hole.Volume())
				}
			}
			place := p.Frame.Ring.Place(h.Part, 0)
			grain := p.TopAlong()
			across := place.Inverse().Apply(place.Apply(geometry.Point{}).Add(grain.Perp()))
			middle := place.Apply(geometry.Pt(h.At, p.Frame.Ring.Width/2))
			moves := share * math.Abs(middle.Dot(grain.Perp()))
			if !h.Slotted && moves < 0.51 {
				continue // its own clearance allows that
			}
			for _, way := range []float64{-moves, moves} {
				by := solid.V(across.X, across.Y, 0).Mul(way)
				for _, part := range []struct {
					room       solid.Solid
					wide, deep float64
				}{{through, shank, high - low}, {sunk, head, f.Bore}} {
					screw := solid.Stock("", solid.Slot(at.Add(by), along, solid.V(0, 0, part.deep), part.wide, part.wide))
					if left := screw.Subtract(part.room).Volume(); left > 1e-3 {
						t.Errorf("hole %+v: the top moves %g, and %g mm³ of the screw have no room", h, way, left)
					}
				}
			}
		}
	})
}

// The mortises for buttons are cut as their card says, as solids: each lies whole in its
// stretcher, clear of the laps.
func TestTheButtonMortisesAreCut(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := fastened(t)
		f, _ := FixingOf(p)
		if f.Kind != design.Buttons {
			t.Skip("screws")
		}
		cut, _ := grooveFixings(sized{Piece: p})
		below, high, deep := cut.Then[0].Args[0].Figure.Value, cut.Then[0].Args[1].Figure.Value, cut.Then[0].Args[2].Figure.Value
		long := cut.Then[1].Args[0].Figure.Value
		if deep > p.Frame.Ring.Width || below+high > p.Frame.Ring.Depth {
			t.Skip("too slight")
		}
		stretcher := p.Stretcher()
		top := stretcher.Bounds().Max.Z
		for _, h := range f.Holes {
			mortise := solid.Box(solid.V(h.At-long/2, 0, top-below-high), solid.V(h.At+long/2, deep, top-below))
			if lost := stretcher.Volume() - stretcher.Subtract(mortise).Volume(); math.Abs(lost-mortise.Volume()) > 1 {
				t.Errorf("mortise %+v of %g × %g takes %g mm³ of wood, it is of %g", h, long, deep, lost, mortise.Volume())
			}
		}
	})
}
