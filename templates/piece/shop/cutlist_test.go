package shop

import (
	"math"
	"slices"
	"testing"

	"pgregory.net/rapid"

	"rodsheet/geometry/joint"
	"rodsheet/geometry/measure"
	"rodsheet/geometry/solid"
	"rodsheet/templates/piece"
	"rodsheet/templates/piece/design"
	"rodsheet/templates/piece/internal/piecetest"
)

// minus returns what is left of a blank when a part is taken out of it.
func minusPart(blank solid.Solid, part solid.Part) solid.Part {
	rest := solid.Stock("waste", blank)
	for _, s := range part.Pieces {
		rest = rest.Subtract(s)
	}
	return rest
}

// Blank = part + waste, the waste by subtraction: it holds only if the finished
// part lies wholly within the wood that the list asks for.
// Every part of the cut list is made by a card that has as many boxes to tick off.
func TestEveryPartHasItsCard(t *testing.T) {
	made := []Do{Mill, GluePanel, Crosscut, SawBlocks, MakeJigs, CutTaper, FitPads}
	for name, designs := range piecetest.Cases() {
		plan := NewPlan(piecetest.WorkedAll(t, designs...))
		listed := map[Part]int{}
		for _, r := range plan.Cuts.Rows {
			part, ok := madeAs[r.Part]
			if !ok {
				part = r.Part
			}
			if part == 0 {
				continue
			}
			listed[part] += r.Parts() + r.Serves + r.Spares
		}
		ticked := map[Part][]int{}
		for _, c := range plan.Cards {
			boxes := map[Part]int{}
			for _, s := range c.Steps {
				for _, b := range s.Parts {
					if slices.Contains(made, s.Do) {
						boxes[b.Part] += b.Count + b.Spares
					}
				}
			}
			for part, n := range boxes {
				ticked[part] = append(ticked[part], n)
			}
		}
		for part, n := range listed {
			all := 0
			for _, k := range ticked[part] {
				all += k
			}
			if !(slices.Contains(ticked[part], n) || all == n) {
				t.Errorf("%s, part %d: %d in the cut list, %v on cards", name, part, n, ticked[part])
			}
		}
	}
}

// madeAs are parts that a card makes under the name of another: a jig is counted by one
// part of it, the others under none.
var madeAs = map[Part]Part{
	StretcherTest: TestPiece, LegTest: TestPiece,
	TenoningJigFace: TenoningJig, TenoningJigBase: 0, TenoningJigBracket: 0, TenoningJigCleat: 0,
	LapSledBase: LapSled, LapSledFence: 0, LapSledBridge: 0, LapSledStop: 0, LapSledCover: 0, LapSledRunner: 0,
	TaperSledBase: TaperSled, TaperSledFence: 0, TaperSledStop: 0,
}

func TestBlankIsPartAndWaste(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d := piecetest.Low()
		d.Ring.Sides = rapid.IntRange(3, 8).Draw(t, "sides")
		d.Ring.Inside = rapid.Float64Range(250, 400).Draw(t, "inside")
		d.Ring.Plain = design.PlainEnd(rapid.IntRange(0, 2).Draw(t, "plain end"))
		d.Ring.Horn = rapid.Float64Range(0, 40).Draw(t, "horn")
		d.Legs.Given = measure.Radians(rapid.Float64Range(0, 30).Draw(t, "splay"))
		d.Legs.Proud = rapid.Float64Range(0, 10).Draw(t, "proud")
		d.Legs.Taper.Faces = joint.TaperFaces(rapid.IntRange(0, 3).Draw(t, "tapers"))
		d.Top.Kind = design.NoTop
		p := piecetest.WorkedAll(t, d)[0]
		list := cutListOf([]piece.Piece{p})
		check := func(row CutRow, blank solid.Solid, part solid.Part) {
			waste := minusPart(blank, part).Volume()
			if off := blank.Volume() - row.Net - waste; math.Abs(off) > 1e-6*blank.Volume() {
				t.Errorf("%v: blank %.3f, part %.3f, waste %.3f: off by %.4f mm³", row.Part, blank.Volume(), row.Net, waste, off)
			}
			if off := row.Sawn.Volume() - blank.Volume(); math.Abs(off) > 1e-6*blank.Volume() {
				t.Errorf("%v: sawn %v holds %.3f, its blank %.3f mm³", row.Part, row.Sawn, row.Sawn.Volume(), blank.Volume())
			}
			if row.Finished.Length > row.Sawn.Length || row.Sawn.Length > row.Rough.Length {
				t.Errorf("%v: finished %v, sawn %v, rough %v", row.Part, row.Finished, row.Sawn, row.Rough)
			}
		}
		r := p.Frame.Ring
		bar := solid.Box(solid.V(-p.RoughReach(), 0, 0), solid.V(p.RoughReach(), r.Width, r.Depth))
		check(list.Rows[0], bar, p.Stretcher())
		// Upright, its foot at the foot of the blank.
		leg := p.Leg().Transform(solid.RotateY(p.Frame.Leg.Splay))
		outer := solid.RotateY(p.Frame.Leg.Splay).Apply(solid.V(p.Frame.Leg.Back(0), 0, r.Depth))
		foot := solid.RotateY(p.Frame.Leg.Splay).Apply(solid.V(p.Frame.Leg.Foot(), 0, r.Depth-p.Frame.Leg.Height)).Z
		blank := solid.Box(solid.V(outer.X-p.Frame.Leg.Breadth, 0, foot), solid.V(outer.X, r.Width, foot+p.SawnLeg().Length))
		check(list.Rows[1], blank, leg)
		if got, want := list.Rows[0].Finished.Length, p.Stretcher().Bounds().Size().X; math.Abs(got-want) > 1e-6 {
			t.Errorf("finished stretcher %v, its solid %v", got, want)
		}
	})
}

func TestRoughIsSawnAndAllowances(t *testing.T) {
	d := piecetest.Low()
	d.Wood.ExtraLength, d.Wood.ExtraWidth, d.Wood.ExtraThickness = 20, 3, 4
	p := piecetest.WorkedAll(t, d)[0]
	rows := cutListOf([]piece.Piece{p}).Rows
	l := p.Frame.Leg
	for i, want := range []piece.StockSize{
		{Length: math.Ceil(p.RoughStretcher() + 20), Width: 28 + 3, Thickness: 36 + 4},
		{Length: math.Ceil(l.Height/math.Cos(l.Splay) + 40*math.Tan(l.Splay) + 3 + 20), Width: 40 + 3, Thickness: 28 + 4},
	} {
		got := rows[i].Rough
		if math.Abs(got.Length-want.Length) > 1e-9 || got.Width != want.Width || got.Thickness != want.Thickness {
			t.Errorf("%v: rough %v, want %v", rows[i].Part, got, want)
		}
	}
}

// The sum is the sum of the pieces, counted one by one.
func TestWoodIsSummed(t *testing.T) {
	for name, designs := range piecetest.Cases() {
		for i := range designs {
			designs[i].Wood.Spares, designs[i].Wood.Tests, designs[i].Wood.Waste = 2, 3, 0.25
		}
		c := cutListOf(piecetest.WorkedAll(t, designs...))
		sum := 0.0
		for _, p := range c.roughPieces() {
			sum += p.Size.Volume()
		}
		if math.Abs(sum-c.Rough()) > 1e-9*sum {
			t.Errorf("%s: pieces hold %v, the list %v mm³", name, sum, c.Rough())
		}
		if got := c.Buy(); math.Abs(got-1.25*sum) > 1e-9*sum {
			t.Errorf("%s: to buy %v, want %v mm³", name, got, 1.25*sum)
		}
		if net := c.Net(); net <= 0 || net >= c.Rough() {
			t.Errorf("%s: net %v of %v mm³ rough", name, net, c.Rough())
		}
	}
}

// Parts that are alike are one row with one lot of spares, and those that
// differ in one figure are not.
func TestPartsAlikeAreOneRow(t *testing.T) {
	twin := piecetest.Low()
	twin.Size = "twin"
	rows := func(d design.Design, part Part) []CutRow {
		var out []CutRow
		for _, r := range cutListOf(piecetest.WorkedAll(t, piecetest.Low(), d)).Rows {
			if r.Part == part {
				out = append(out, r)
			}
		}
		return out
	}
	for _, part := range []Part{Stretcher, Leg, Pad} {
		got := rows(twin, part)
		if len(got) != 1 || !slices.Equal(got[0].Sizes, []SizeCount{{"low", 3}, {"twin", 3}}) || got[0].Spares != 1 || got[0].Parts()+got[0].Serves+got[0].Spares != 7 {
			t.Errorf("%v: %+v", part, got)
		}
	}
	for _, c := range []struct {
		part   Part
		change func(*design.Design)
	}{
		{Leg, func(d *design.Design) { d.Legs.Height++ }},
		{Leg, func(d *design.Design) { d.Legs.Taper = nil }},
		{Leg, func(d *design.Design) { d.Legs.Proud = 4 }},
		{Leg, func(d *design.Design) { d.Legs.Tenon = 8 }},
		{Stretcher, func(d *design.Design) { d.Legs.Tenon = 8 }},
		{Stretcher, func(d *design.Design) { d.Ring.Inside++ }},
		{Stretcher, func(d *design.Design) { d.Legs.Given += 0.01 }},
	} {
		other := twin
		c.change(&other)
		if got := rows(other, c.part); len(got) != 2 {
			t.Errorf("%v: %d rows, want 2", c.part, len(got))
		}
	}
}

// Which face is lapped at which end makes another stretcher, though every
// length is the same.
func TestOverAndUnderAreTwoStretchers(t *testing.T) {
	under, over := piecetest.Low(), piecetest.Low()
	under.Legs.At, over.Legs.At = 240, 240
	over.Size, over.Ring.LegEndOver = "over", true
	pieces := piecetest.WorkedAll(t, under, over)
	if pieces[0].SawnStretcher() != pieces[1].SawnStretcher() {
		t.Fatalf("sawn %v and %v", pieces[0].SawnStretcher(), pieces[1].SawnStretcher())
	}
	if got := cutListOf(pieces).Rows[0].Sizes; !slices.Equal(got, []SizeCount{{"low", 3}}) {
		t.Errorf("first row holds %v, want 3 low", got)
	}
}

func TestWoodenTop(t *testing.T) {
	d := piecetest.Low()
	d.Top.Kind, d.Top.Thickness, d.Top.Diameter = design.WoodTop, 20, 636
	d.Wood.Boards = []design.Board{{Length: 2000, Width: 160, Thickness: 26, Count: 4}, {Length: 600, Width: 400, Thickness: 26, Count: 1}}
	var top CutRow
	list := cutListOf(piecetest.WorkedAll(t, d))
	for _, r := range list.Rows {
		if r.Part == TopBoard {
			top = r
		}
	}
	// The wide board is too short; 160 less 3 of allowance leave 157, and five
	// of those are needed for 636. Chords of a round outline fall short of it by
	// no more than geometry.Sagitta.
	if top.Parts() != 5 || math.Abs(top.Finished.Width-127.2) > 0.01 || top.Rough.Width != 131 {
		t.Errorf("%+v", top)
	}
	if top.Rough.Length != 656 || top.Rough.Thickness != 23 {
		t.Errorf("rough %v", top.Rough)
	}
	if want := math.Pi * 318 * 318 * 20 / 5; math.Abs(top.Net-want) > 1e-6*want {
		t.Errorf("net %v mm³ a board, want %v", top.Net, want)
	}
	steps := stepsOf(piecetest.WorkedAll(t, d))
	if n := len(only(steps, Mill)) + len(only(steps, GluePanel)); n != 4 { // stretchers, legs, sticks, panel
		t.Errorf("%d rows of milling, want 4", n)
	}
}

// That block sticks are planed with the parts is said of every part of every size, or of
// none where there is no stick: the sticks are counted with the first size alone.
func TestSticksAreMilledWithAllParts(t *testing.T) {
	for name, designs := range piecetest.Cases() {
		pieces := piecetest.WorkedAll(t, designs...)
		want := slices.ContainsFunc(cutListOf(pieces).Rows, func(r CutRow) bool { return r.Part.IsStick() })
		for _, s := range only(stepsOf(pieces), Mill) {
			if got := slices.ContainsFunc(s.Then.All(), func(n Note) bool { return n.ID == "sticks-with-parts" }); got != want {
				t.Errorf("%s: %v: said %v, want %v", name, s.Parts, got, want)
			}
		}
	}
}
