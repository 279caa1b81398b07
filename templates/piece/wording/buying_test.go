package wording

import (
	"math"
	"strconv"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"rodsheet/geometry/measure"
	"rodsheet/templates/piece/design"
	"rodsheet/templates/piece/internal/piecetest"
)

func priced(value float64) design.Price { return design.Price{Value: value, Given: true} }

// The sums of the lines add up to the total, whatever has a price; an item is bought for
// each of the sizes; every record has a cell for each column.
func TestBuyingAddsUp(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		low, tall := piecetest.Low(), piecetest.Tall()
		amount := rapid.Float64Range(0, 5000)
		low.Prices = design.Prices{Currency: "EUR", Wood: design.Rate{Price: priced(amount.Draw(t, "wood")), Unit: measure.Unit(rapid.IntRange(0, 1).Draw(t, "unit"))}}
		if rapid.Bool().Draw(t, "glass") {
			low.Prices.Glass = design.Rate{Price: priced(amount.Draw(t, "per m²"))}
		}
		each := math.Round(100*amount.Draw(t, "each")) / 100
		low.Items = []design.Item{{Name: "insert", Count: 3, Price: priced(each)}, {Name: "felt", Count: 1}}
		if rapid.Bool().Draw(t, "boards") {
			low.Wood.Boards = []design.Board{{Length: 2400, Width: 160, Thickness: 46, Count: rapid.IntRange(1, 3).Draw(t, "boards")}}
		}
		tall.Prices, tall.Items, tall.Wood = low.Prices, low.Items, low.Wood
		records := BuyingRecords(planOf(t, low, tall))
		head, last := records[0], records[len(records)-1]
		sum := 0.0
		for _, r := range records[1 : len(records)-1] {
			if len(r) != len(head) {
				t.Fatalf("%d cells below %d names: %q", len(r), len(head), r)
			}
			if r[0] == "insert" && (r[5] != "6" || r[10] != money(6*each)) {
				t.Fatalf("six inserts at %v: %q", each, r)
			}
			if v, err := strconv.ParseFloat(r[10], 64); err == nil {
				sum += v
			}
		}
		total, err := strconv.ParseFloat(last[10], 64)
		if err != nil || math.Abs(sum-total) > 0.005 {
			t.Fatalf("the lines cost %v, together %q", sum, last)
		}
	})
}

// By hand: two boards of 2400 × 160 × 46 mm hold 0.035328 m³, at 1800 a cubic metre
// 63.59; the same in board feet of 12 × 12 × 1 in (Noyes, Handwork in Wood, 1910).
func TestBuyingByHand(t *testing.T) {
	d := piecetest.Low()
	d.Wood.Boards = []design.Board{{Length: 2400, Width: 160, Thickness: 46, Count: 1}}
	d.Prices.Wood.Price = priced(1800)
	r := BuyingRecords(planOf(t, d))
	if got := strings.Join(r[1][2:], "|"); got != "2400|160|46|1|0.017664||1800.00|per m³|31.80" {
		t.Errorf("board %q", got)
	}
	d.Unit, d.Prices.Wood.Unit = measure.Inch, measure.Inch
	if r = BuyingRecords(planOf(t, d)); r[0][2] != "length in" || r[0][6] != "wood board feet" || !strings.HasPrefix(r[1][6], "7.485") || r[1][9] != "per board foot" {
		t.Errorf("head %q, board %q", r[0], r[1])
	}
}

// What a spreadsheet would take for a formula is a text.
func TestBuyingHoldsNoFormula(t *testing.T) {
	d := piecetest.Low()
	for _, first := range []string{"=", "+", "-", "@", "\t="} {
		d.Items = append(d.Items, design.Item{Name: first + "1", Note: first + "cmd", Count: 1})
	}
	for _, r := range BuyingRecords(planOf(t, d)) {
		for _, cell := range r {
			if cell != "" && strings.ContainsAny(cell[:1], "=+-@\t\r") {
				t.Errorf("a cell begins as a formula: %q", cell)
			}
		}
	}
}

// What the cards use up is on the list, without a count; screws for jigs only where the
// saw reaches what these hold.
func TestWhatIsUsedUpIsBought(t *testing.T) {
	d := piecetest.Low()
	for high, want := range map[float64]int{80: 5, 1: 4} {
		d.Saw.Highest = high
		plan := planOf(t, d)
		listed := 0
		text := strings.Join(Buying(plan).Text, " ")
		for _, w := range plan.Wares {
			if w.Count == 0 && strings.Contains(text, Ware(w, d.Unit)) {
				listed++
			}
		}
		recorded := 0
		for _, r := range BuyingRecords(plan) {
			if r[1] == "as needed" && r[5] == "" {
				recorded++
			}
		}
		if listed != want || recorded != want {
			t.Errorf("blade to %v: %d lines as needed, %d records, want %d", high, listed, recorded, want)
		}
	}
}
