package wording

import (
	"maps"
	"math"
	"slices"
	"strconv"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"rodsheet/geometry/measure"
	"rodsheet/templates/piece"
	"rodsheet/templates/piece/design"
	"rodsheet/templates/piece/internal/piecetest"
	"rodsheet/templates/piece/shop"
)

// Noyes, Handwork in Wood (1910): a board foot is 12 × 12 × 1 in; a board of
// 1 × 6 in, 12 ft long, holds 6, one of 1 × 11 in, 14 ft long, 12 10/12.
func TestBoardFeetOfNoyes(t *testing.T) {
	const in = measure.MillimetresPerInch
	for _, c := range []struct{ feet, wide, want float64 }{{1, 12, 1}, {12, 6, 6}, {14, 11, 12 + 10.0/12}} {
		got := piece.StockSize{Length: c.feet * 12 * in, Width: c.wide * in, Thickness: 1 * in}.Volume() / design.BoardFoot
		if math.Abs(got-c.want) > 1e-9 {
			t.Errorf("%v ft of %v in: %v board feet, want %v", c.feet, c.wide, got, c.want)
		}
	}
}

func TestWoodVolume(t *testing.T) {
	const in = measure.MillimetresPerInch
	for _, c := range []struct {
		mm3  float64
		u    measure.Unit
		want string
	}{
		{0.0125e9, measure.Millimetre, "0.0125 m³"},
		{288 * in * in * in, measure.Inch, "2.00 board feet"},
		{0, measure.Millimetre, "0.0000 m³"},
	} {
		if got := woodVolume(c.mm3, c.u); got != c.want {
			t.Errorf("%v mm³ is written %q, want %q", c.mm3, got, c.want)
		}
	}
}

func TestCutListPrintsItsUnit(t *testing.T) {
	const in = measure.MillimetresPerInch
	inches := piecetest.Low()
	inches.Unit = measure.Inch
	inches.Wood.Boards = []design.Board{{Length: 96 * in, Width: 6 * in, Thickness: 2 * in, Count: 2}}
	millimetres := piecetest.Low()
	millimetres.Top.Pads.Bumpers = true
	for _, c := range []struct {
		d       design.Design
		has, no []string
	}{
		{inches, []string{"board feet", "thickness, in", "Cutting plan", "pad", "Spare, test and stick alone"}, []string{"m³", "thickness, mm", "bumper"}},
		{millimetres, []string{"m³", "thickness, mm", "Buying list", "bumper, 22 mm across, 8 mm high 3", "Glass order"}, []string{"board feet", "Cutting plan"}},
	} {
		var all strings.Builder
		for _, p := range CutList(planOf(t, c.d)) {
			all.WriteString(p.Heading + "\n")
			for _, r := range p.Table {
				all.WriteString(strings.Join(r, " ") + "\n")
			}
			all.WriteString(strings.Join(p.Text, "\n"))
		}
		for _, w := range c.has {
			if !strings.Contains(all.String(), w) {
				t.Errorf("%v: no %q", c.d.Unit, w)
			}
		}
		for _, w := range c.no {
			if strings.Contains(all.String(), w) {
				t.Errorf("%v: says %q", c.d.Unit, w)
			}
		}
	}
}

// Who adds up the rows of the wood gets the sum that stands below them; what is bought is
// said in one figure, or what the two are is said.
func TestWoodAddsUp(t *testing.T) {
	figure := func(text string) float64 {
		v, err := strconv.ParseFloat(strings.Fields(text)[0], 64)
		if err != nil {
			t.Fatal(err)
		}
		return v
	}
	for name, designs := range piecetest.Cases() {
		for _, boards := range [][]design.Board{nil, {{Length: 3000, Width: 200, Thickness: 60, Count: 4}}} {
			for i := range designs {
				designs[i].Wood.Boards = boards
			}
			plan := planOf(t, designs...)
			wood, buying := CutList(plan)[1], Buying(plan)
			sum, n := 0.0, len(wood.Table)
			for _, r := range wood.Table[:n-3] {
				sum += figure(r[1])
			}
			if got := figure(wood.Table[n-3][1]); math.Abs(got-sum) > 1e-9 {
				t.Errorf("%s: %v together, its rows make %v", name, got, sum)
			}
			if boards == nil && buying.Table[1][2] != wood.Table[n-1][1] {
				t.Errorf("%s: to buy %s, on the buying list %s", name, wood.Table[n-1][1], buying.Table[1][2])
			}
			if boards != nil && !strings.Contains(strings.Join(wood.Text, " "), buying.Table[1][2]) {
				t.Errorf("%s: %q does not say what the buying list has: %s", name, wood.Text, buying.Table[1][2])
			}
		}
	}
}

// Rough sizes are printed rounded up, never down.
func TestRoughIsRoundedUp(t *testing.T) {
	const in = measure.MillimetresPerInch
	for _, c := range []struct {
		u    measure.Unit
		s    piece.StockSize
		want string
	}{
		{measure.Millimetre, piece.StockSize{Length: 400.01, Width: 31, Thickness: 38.99}, "401 × 31 × 39"},
		{measure.Inch, piece.StockSize{Length: 18.01 * in, Width: 1.25 * in, Thickness: 2.0626 * in}, "18 1/16 × 1 1/4 × 2 1/8"},
	} {
		p := piece.Piece{Design: design.Design{Unit: c.u}}
		if got := (speaker{unit: c.u}).stock(p.Roughed(c.s)); got != c.want {
			t.Errorf("%v is printed %q, want %q", c.s, got, c.want)
		}
	}
}

func TestGlassOrder(t *testing.T) {
	d := piecetest.Low()
	d.Top.Kind = design.WoodTop
	if got := planOf(t, d).GlassOrders(); got != nil {
		t.Errorf("a wooden top is ordered as glass: %v", got)
	}
	for _, tt := range []struct {
		change func(*design.Design)
		want   []string
	}{
		{func(*design.Design) {}, []string{"8 mm thick", "tempered", "round, diameter 640 mm.", "6.4 kg", "before tempering", "ASTM F2813", "glass sizes"}},
		{func(d *design.Design) { d.Unit, d.Top.Diameter = measure.Inch, 25.4*24 }, []string{"5/16 in", "round, diameter 24 in."}},
		{func(d *design.Design) {
			d.Top.Outline, d.Top.Overhang, d.Top.Corner, d.Top.CornerSize = design.RingTop, 60, design.RoundedCorner, 20
		}, []string{"triangle", "rounded to a radius of 20 mm"}},
		{func(d *design.Design) {
			d.Top.Outline, d.Top.Overhang, d.Top.Corner, d.Top.CornerSize = design.RingTop, 60, design.ClippedCorner, 20
		}, []string{"clipped 20 mm back"}},
	} {
		d := piecetest.Low()
		tt.change(&d)
		order := strings.Join(speaker{unit: d.Unit}.all(planOf(t, d).GlassOrders()[0].What[:]), "\n")
		for _, want := range tt.want {
			if !strings.Contains(order, want) {
				t.Errorf("order lacks %q:\n%s", want, order)
			}
		}
	}
}

// Every pane is ordered by a line that counts it: a glazier delivers what that says.
func TestEveryPaneIsOrdered(t *testing.T) {
	low, tall := piecetest.Low(), piecetest.Low()
	low.Size, tall.Size = "low", "tall"
	order := func() string { return strings.Join(CutList(planOf(t, low, tall))[3].Text, "\n") }
	if got := order(); !strings.Contains(got, "2 table tops") || strings.Contains(got, "size low") {
		t.Errorf("two panes alike are ordered by\n%s", got)
	}
	tall.Top.Diameter -= 10
	if got := order(); strings.Count(got, "1 table top") != 2 || strings.Count(got, "size tall: ") < 2 {
		t.Errorf("two panes of two sizes are ordered by\n%s", got)
	}
}

// What has no room is counted, several of one kind as several.
func TestMissingIsCounted(t *testing.T) {
	leg, spare := shop.Name{Part: shop.Leg, Size: "low"}, shop.Name{Part: shop.Stretcher, Spare: true}
	got := Missing([]shop.Missing{{Name: leg, Count: 4}, {Name: spare, Count: 1}, {Name: spare, Count: 2}})
	if want := "4 legs low, 1 spare stretcher, 2 spare stretchers"; got != want {
		t.Errorf("got %q, want %q", got, want)
	}
}

// In inches a pane is ordered in sixteenths, nowhere smaller than drawn, so that nothing comes
// out from under it, and larger by less than one; its thickness is a sixteenth too. In
// millimetres it is ordered as drawn.
func TestGlassIsOrderedInSixteenths(t *testing.T) {
	const step = measure.MillimetresPerInch / 16
	whole := func(mm float64) bool { return math.Abs(mm/step-math.Round(mm/step)) < 1e-6 }
	sheets := map[float64][2]string{ // ordered as, made as
		4.8: {"3/16 in", "5 mm"}, 6: {"1/4 in", "6 mm"}, 8: {"5/16 in", "8 mm"}, 9.525: {"3/8 in", "10 mm"}, 10: {"3/8 in", "10 mm"},
		12: {"1/2 in", "12 mm"}, 12.7: {"1/2 in", "12 mm"}, 15.9: {"5/8 in", "16 mm"}, 19: {"3/4 in", "19 mm"},
	}
	rapid.Check(t, func(t *rapid.T) {
		d := piecetest.Low()
		d.Unit = measure.Inch
		d.Top.Thickness = rapid.SampledFrom(slices.Sorted(maps.Keys(sheets))).Draw(t, "thick")
		d.Top.Diameter = rapid.Float64Range(420, 900).Draw(t, "diameter")
		plan := planOf(t, d)
		order := plan.GlassOrders()[0].What
		got := order[1].Args[0].Figure.Value
		if !whole(got) || got < d.Top.Diameter-1e-6 || got > d.Top.Diameter+step {
			t.Fatalf("%v mm ordered of %v", got, d.Top.Diameter)
		}
		words := strings.Join((speaker{unit: d.Unit}).all(order[:]), " ")
		if want := sheets[d.Top.Thickness]; !strings.Contains(words, want[0]+" thick") || !strings.Contains(words, "glass of "+want[1]) {
			t.Fatalf("glass of %v mm is not %v in %s", d.Top.Thickness, want, words)
		}
		for _, b := range plan.Buying() {
			if b.Kind == shop.GlassToBuy && (b.Size.Length != got || !whole(b.Size.Thickness)) {
				t.Fatalf("bought is %+v", b.Size)
			}
		}
		ring := d
		ring.Top.Outline, ring.Top.Diameter, ring.Top.Overhang = design.RingTop, 0, rapid.Float64Range(0, 150).Draw(t, "overhang")
		ring.Top.Corner, ring.Top.CornerSize = design.ClippedCorner, rapid.Float64Range(2, 40).Draw(t, "corner")
		plan = planOf(t, ring)
		drawn, asked := plan.Pieces[0].RegularTop().Apothem, plan.GlassOrders()[0].What
		side, apothem, clip := asked[1].Args[1].Figure.Value, asked[1].Args[2].Figure.Value, asked[4].Args[0].Figure.Value
		if !whole(apothem) || apothem < drawn-1e-6 || apothem > drawn+step || math.Abs(side-2*apothem*math.Tan(math.Pi/3)) > 1e-6 {
			t.Fatalf("a triangle of sides %v, %v from its centre, is ordered for one of %v", side, apothem, drawn)
		}
		if !whole(clip) || clip > ring.Top.CornerSize+1e-6 || clip < ring.Top.CornerSize-step {
			t.Fatalf("corners clipped %v are ordered of %v", clip, ring.Top.CornerSize)
		}
		for _, b := range plan.Buying() {
			over := side - clip // a clip takes half of its length off either end
			if b.Kind == shop.GlassToBuy && (b.Size.Length < over-1e-6 || b.Size.Length > over+step) {
				t.Fatalf("a triangle of sides %v clipped %v is bought as %+v", side, clip, b.Size)
			}
		}
		d.Unit = measure.Millimetre
		if got := planOf(t, d).GlassOrders()[0].What[1].Args[0].Figure.Value; math.Abs(got-d.Top.Diameter) > 1e-9 {
			t.Fatalf("%v mm ordered of %v in millimetres", got, d.Top.Diameter)
		}
	})
}

// Boards are asked for in eighths of an inch, none smaller than its design has it.
func TestBoardsAreBoughtInEighths(t *testing.T) {
	b := shop.Buy{Kind: shop.BoardToBuy, Size: piece.StockSize{Length: 2700, Width: 160, Thickness: 46}}
	if got, want := (speaker{unit: measure.Inch}).buySize(b), "106 3/8 × 6 3/8 × 1 7/8 in, or more"; got != want {
		t.Errorf("%q, want %q", got, want)
	}
	if got, want := (speaker{}).buySize(b), "2700 × 160 × 46 mm"; got != want {
		t.Errorf("%q, want %q", got, want)
	}
	b.Size = piece.StockSize{Length: 25.4 * 96, Width: 25.4 * 6, Thickness: 25.4 * 1.75}
	if got, want := (speaker{unit: measure.Inch}).buySize(b), "96 × 6 × 1 3/4 in"; got != want {
		t.Errorf("%q, want %q", got, want)
	}
}

// Slot and tenon of no round size go by the decimals, and the cards of both say so.
func TestSlotAndTenonGoByTheDecimals(t *testing.T) {
	for tenon, want := range map[float64]int{9: 2, 25.4 * 3 / 8: 0} {
		d := piecetest.Low()
		d.Unit, d.Ring.Width, d.Legs.Tenon = measure.Inch, 25.4*9/8, tenon
		d.Saw.Kerf = 3
		got := 0
		for _, c := range planOf(t, d).Cards {
			for _, s := range c.Steps {
				for _, n := range s.Then.All() {
					if n.ID == "decimals-fit" {
						got++
					}
				}
			}
		}
		if got != want {
			t.Errorf("a tenon of %v mm: said %d times, want %d", tenon, got, want)
		}
	}
}

// Pieces of a board that differ in size differ in name.
func TestPiecesOfABoardAreToldApart(t *testing.T) {
	low, tall := piecetest.Low(), piecetest.Tall()
	board := []design.Board{{Length: 3000, Width: 200, Thickness: 46, Count: 3}}
	low.Wood.Boards, tall.Wood.Boards = board, board
	low.Wood.Spares, tall.Wood.Spares = 1, 1
	sizes := map[string]piece.StockSize{}
	for _, b := range planOf(t, low, tall).Cuts.Boards.Boards {
		for _, l := range b.Lanes {
			for _, p := range slices.Concat(l.Strips...) {
				name := PieceName(p.Name)
				if was, met := sizes[name]; met && p.Name.Part != shop.StretcherStick && was != p.Size {
					t.Errorf("%q is %v and %v", name, was, p.Size)
				}
				sizes[name] = p.Size
			}
		}
	}
	if _, ok := sizes["spare leg"]; ok || len(sizes) < 7 {
		t.Errorf("names: %v", sizes)
	}
}
