package shop

import (
	"fmt"
	"maps"
	"math"
	"testing"

	"rodsheet/geometry/joint"
	"rodsheet/geometry/measure"
	"rodsheet/templates/piece"
	"rodsheet/templates/piece/design"
	"rodsheet/templates/piece/internal/piecetest"
)

// A block rises from Thin to Thick at its own angle, and comes out of the
// stock it names.
func TestBlocksLeanAsTheySay(t *testing.T) {
	for name, designs := range piecetest.Cases() {
		for _, p := range piecetest.WorkedAll(t, designs...) {
			for _, b := range Blocks(p) {
				if got := math.Atan((b.Thick - b.Thin) / b.Across); math.Abs(got-b.Angle) > 1e-9 {
					t.Errorf("%s, %v: leans %v, says %v", name, b.Part, got, b.Angle)
				}
				room := map[Source][2]float64{
					LegSticks:       {p.Frame.Leg.Breadth, p.Frame.Leg.Thickness},
					StretcherSticks: {p.Frame.Ring.Depth, p.Frame.Ring.Width},
					TaperOffcuts:    {p.Frame.Leg.Breadth, p.Frame.Leg.Thickness},
				}[b.From]
				s := b.size()
				if most, least := math.Max(room[0], room[1]), math.Min(room[0], room[1]); math.Max(s.Width, s.Thickness) > most+1e-9 || math.Min(s.Width, s.Thickness) > least+1e-9 {
					t.Errorf("%s, %v: %v does not come out of %v", name, b.Part, s, room)
				}
			}
		}
	}
}

// Clamp faces become parallel: the caul leans by the splay, at a flush end by
// what the lap is cut off square.
func TestCauls(t *testing.T) {
	d := piecetest.Low()
	d.Ring.Plain, d.Ring.Horn = design.FlushEnd, 0
	p := piecetest.WorkedAll(t, d)[0]
	if got := legCaul(p).Angle; got != p.Frame.Leg.Splay {
		t.Errorf("caul of the leg %v, splay %v", got, p.Frame.Leg.Splay)
	}
	if got, want := endCaul(p).Angle, measure.Radians(30); math.Abs(got-want) > 1e-6 {
		t.Errorf("caul of the plain end %v, want %v", got, want)
	}
	d.Ring.Sides = 4
	if p := piecetest.WorkedAll(t, d)[0]; slantedEnd(p) {
		t.Error("a square ring asks for a caul at the plain end")
	}
}

// Offcuts of a taper serve as wedges only where their slope holds.
func TestTaperOffcutsAsWedges(t *testing.T) {
	for _, c := range []struct {
		foot, start float64
		want        bool
	}{{26, 90, true}, {39, 90, false}, {12, 250, false}} {
		d := piecetest.Low()
		d.Legs.Taper = &design.Taper{Foot: c.foot, Start: c.start, Faces: joint.OneFace}
		p := piecetest.WorkedAll(t, d)[0]
		if got := foldingWedge(p).From == TaperOffcuts; got != c.want {
			t.Errorf("foot %v from %v: taper offcuts serve %v, want %v", c.foot, c.start, got, c.want)
		}
	}
}

// Cut list, settings and the list of blocks ask for the same number of each kind:
// what several sizes have alike is made once.
func TestBlocksAreCountedOnce(t *testing.T) {
	cases := piecetest.Cases()
	thick, odd := piecetest.Tall(), piecetest.Tall()
	thick.Size, thick.Ring.Depth, thick.Legs.Given = "thick", 42, piecetest.Low().Legs.Given
	odd.Size, odd.Legs.Given, odd.Ring.Sides = "odd", piecetest.Low().Legs.Given, 5
	cases["one splay"] = []design.Design{piecetest.Low(), odd, thick}
	for name, designs := range cases {
		plan := NewPlan(piecetest.WorkedAll(t, designs...))
		for _, part := range []Part{LegCaul, EndCaul, FillerStrip} {
			var listed, set, told int
			for _, r := range plan.Cuts.Rows {
				if r.Part == part {
					listed += r.Serves
				}
			}
			for _, s := range only(plan.steps(), SawBlocks) {
				for _, b := range s.Parts {
					if b.Part == part {
						set += b.Count
					}
				}
			}
			for _, l := range plan.Blocks {
				if l.What.Part == part {
					told += l.What.Count
				}
			}
			if listed == 0 && part != EndCaul || set != listed || told != listed {
				t.Errorf("%s, %v: %d in the cut list, %d in the settings, %d of the blocks", name, part, listed, set, told)
			}
		}
	}
}

// A block that serves several sizes says which.
func TestBlocksNameTheirSizes(t *testing.T) {
	twin := piecetest.Low()
	twin.Size = "twin"
	third := twin
	third.Size, third.Ring.Depth = "thick", 42
	got := map[Part]string{}
	for _, s := range only(stepsOf(piecetest.WorkedAll(t, piecetest.Low(), twin, third)), SawBlocks) {
		for _, b := range s.Parts {
			got[b.Part] += fmt.Sprint(b.Count, b.For)
		}
	}
	if want := (map[Part]string{LegCaul: "3 [low twin]3 [thick]", FillerStrip: "1 [low twin thick]"}); !maps.Equal(got, want) {
		t.Errorf("got %v, want %v", got, want)
	}
}

// A caul pressed along the stretcher slides down the slant of the plain end: to the outer
// side where that edge is the shorter one, as in a ring of six, in one of three to the ring
// side. By the finished solid, not by its angles.
func TestEndCaulsAreStopped(t *testing.T) {
	for sides, want := range map[int]Face{3: RingSide, 5: OuterSide, 6: OuterSide} {
		d := piecetest.Low()
		d.Ring.Sides, d.Ring.Plain, d.Ring.Horn = sides, design.FlushEnd, 0
		p := piecetest.WorkedAll(t, d)[0]
		least := map[Face]float64{}
		for _, e := range p.Stretcher().Edges() {
			at := map[bool]Face{false: RingSide, true: OuterSide}[e.A.Y > p.Frame.Ring.Width/2]
			least[at] = math.Min(least[at], math.Min(e.A.X, e.B.X))
		}
		if short := map[bool]Face{false: RingSide, true: OuterSide}[least[OuterSide] > least[RingSide]]; short != want {
			t.Errorf("%d sides: shorter on %v, want %v", sides, short, want)
		}
		if got := legClamp(p).Args[0].Face; got != want {
			t.Errorf("%d sides: the block stands on %v, want %v", sides, got, want)
		}
	}
}

// Glass that is bonded down is tried only when the bond is hard, and the rim has its
// caution: m·a/(r − a) tips the piece, a the distance from its middle to the line through
// two feet, by the feet in plan.
func TestTopsAreNotLeanedOn(t *testing.T) {
	d := piecetest.Low()
	d.Top.Fixing.Bond = design.Silicone
	p := piecetest.WorkedAll(t, d)[0]
	lay := only(stepsOf([]piece.Piece{p}), FitTop)[0]
	a := p.FootPoint(0).Lerp(p.FootPoint(1), 0.5).Norm()
	mass := p.TopMass() + p.FrameMass(p.Stretcher(), p.Leg())
	piecetest.Nearly(t, "tipping load", lay.Heed.Args[0].Figure.Value, mass*a/(p.TopRadius()-a))
	if lay.Test.ID != "bond-holds" {
		t.Errorf("the test is %s", lay.Test.ID)
	}
	for load, want := range map[float64]NoteID{5: "tips-leaned-on", 20: "tips-sat-on", 149: "tips-sat-on", 160: ""} {
		d.Top.Diameter = 2 * (a + mass*a/load) // a wider one weighs more, and is tipped by more
		p := piecetest.WorkedAll(t, d)[0]
		w := p.Standing(p.FrameMass(p.Stretcher(), p.Leg())).Weakest(0)
		d.Top.Diameter = 2 * (a + w.TippingLoad(0)/load*(p.TopRadius()-a))
		if got := tips(piecetest.WorkedAll(t, d)[0]).ID; got != want {
			t.Errorf("about %g kg tips it: %q, want %q", load, got, want)
		}
	}
	d.Top.Diameter = 2 * (a - 10)
	if got := only(stepsOf(piecetest.WorkedAll(t, d)), FitTop)[0].Heed; got != (Note{}) {
		t.Errorf("nothing tips it: %v", got)
	}
}

// Two folding wedges of round inches, 1/4 and 7/8, and a kerf of 1/8 between them come out
// of a stick of 1 1/4 head to tail, though the slant of the cut makes them a hair more; of
// one of 1 1/8 they do not, and their card says so.
func TestWedgesHeadToTail(t *testing.T) {
	const in = measure.MillimetresPerInch
	for breadth, want := range map[float64]NoteID{1.25: "wedges-by-hand", 1.125: "wedges-one-by-one"} {
		d := piecetest.Low()
		d.Unit, d.Legs.Taper, d.Legs.Breadth, d.Saw.Kerf = measure.Inch, nil, breadth*in, in/8
		p := piecetest.Worked(t, d)
		if p.Taper != nil {
			t.Fatal("its wedges are offcuts of the taper")
		}
		w := foldingWedge(p)
		if math.Abs(w.Thin-in/4) > 1e-9 || math.Abs(w.Thick-7*in/8) > 1e-9 {
			t.Fatalf("a wedge of %g and %g in", w.Thin/in, w.Thick/in)
		}
		said := false
		for _, c := range NewPlan([]piece.Piece{p}).Cards {
			for _, s := range c.Steps {
				said = said || s.Then[0].ID == want
			}
		}
		if !said {
			t.Errorf("a stick of %g in: no %s", breadth, want)
		}
	}
}
