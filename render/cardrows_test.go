package render

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"rodsheet/geometry"
)

// Cards stand in rows in their order, on as few sheets as any rows of one or two take:
// all of them are tried.
func TestRowsOfCardsTakeTheFewestSheets(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		const high = 250
		n := rapid.IntRange(1, 9).Draw(t, "cards")
		single, half := make([]*card, n), make([]*card, n)
		for i := range n {
			if rapid.IntRange(0, 9).Draw(t, "held") > 0 {
				single[i] = &card{size: geometry.Pt(180, rapid.Float64Range(20, high).Draw(t, "high"))}
				if rapid.Bool().Draw(t, "halved") {
					half[i] = &card{size: geometry.Pt(88, rapid.Float64Range(20, high).Draw(t, "higher"))}
				}
			}
		}
		sheets := func(rows []cardRow) int {
			count, used := 0, math.Inf(1)
			for _, r := range rows {
				if used += gap + r.height(); used > high || len(r) == 0 {
					count, used = count+1, r.height()
				}
			}
			return count
		}
		fewest := math.MaxInt
		var try func(rows []cardRow, i int)
		try = func(rows []cardRow, i int) {
			if i == n {
				fewest = min(fewest, sheets(rows))
				return
			}
			if single[i] == nil {
				try(append(rows, nil), i+1)
				return
			}
			try(append(rows, cardRow{single[i]}), i+1)
			if i+1 < n && half[i] != nil && half[i+1] != nil {
				try(append(rows, cardRow{half[i], half[i+1]}), i+2)
			}
		}
		try(nil, 0)
		rows := cardRows(single, half, high)
		if got := sheets(rows); got != fewest {
			t.Fatalf("%d sheets, want %d", got, fewest)
		}
		next := 0
		for _, r := range rows {
			for k, c := range r {
				if want := [][]*card{single, half}[len(r)-1][next+k]; c != want {
					t.Fatalf("card %d is not where it should be", next+k)
				}
			}
			next += max(1, len(r))
		}
		if next != n {
			t.Fatalf("%d cards of %d", next, n)
		}
	})
}

// Two cards side by side stand in frames of one height, a gap apart, over the whole width.
func TestTwoCardsInARow(t *testing.T) {
	a, b := &card{size: geometry.Pt(88, 50)}, &card{size: geometry.Pt(88, 70)}
	row := cardRow{a, b}.block(180)
	if row.size != geometry.Pt(180, 70) || len(row.parts) != 2 {
		t.Fatalf("a row of %v with %d cards", row.size, len(row.parts))
	}
	for i, p := range row.parts {
		if p.at != geometry.Pt(float64(i)*(88+gap), 0) || p.size.Y != 70 || p.card.size.Y != 70 {
			t.Errorf("card %d: %v at %v", i, p.card.size, p.at)
		}
	}
	if a.size.Y != 50 {
		t.Error("the card itself is changed")
	}
}
