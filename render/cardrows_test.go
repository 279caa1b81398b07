package render

import (
	"math"
	"slices"
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

// Grown, rows stand on the sheets they stood on, none of them lower than it was.
func TestGrownRowsKeepTheirSheets(t *testing.T) {
	grew := false
	rapid.Check(t, func(t *rapid.T) {
		const high, shares = 250, 3
		n := rapid.IntRange(1, 9).Draw(t, "cards")
		single, half := make([][]*card, shares), make([][]*card, shares)
		for range n {
			h := rapid.Float64Range(20, 90).Draw(t, "high")
			for s := range shares {
				larger := h * float64(shares+4-s) / 5
				single[s] = append(single[s], &card{size: geometry.Pt(180, larger)})
				half[s] = append(half[s], &card{size: geometry.Pt(88, 1.3*larger)})
			}
		}
		rows := cardRows(single[shares-1], half[shares-1], high)
		out := grown(rows, single[:shares-1], half[:shares-1], high)
		before, after := 0.0, 0.0
		for i, r := range rows {
			if len(out[i]) != len(r) || out[i].height() < r.height() {
				t.Fatalf("row %d: %d cards, %.1f high, were %d and %.1f", i, len(out[i]), out[i].height(), len(r), r.height())
			}
			grew = grew || out[i].height() > r.height()
			if before += gap + r.height(); before-gap > high {
				before, after = gap+r.height(), 0
			}
			if after += gap + out[i].height(); after-gap > high+1e-9 {
				t.Fatalf("row %d goes over the end of its sheet", i)
			}
		}
	})
	if !grew {
		t.Error("no row has grown")
	}
}

// On no card of an example is lettering struck or a figure broken.
func TestCardsOfExamplesHaveNoFlaws(t *testing.T) {
	for _, name := range []string{"hall-table", "plant-stand", "window-seat"} {
		for _, l := range everyday() {
			p := must(Lay(examplePack(t, name, l), l))(t)
			for _, s := range p.sheets {
				for _, b := range s.blocks {
					if b.card != nil && b.card.flaws > 0 {
						t.Errorf("%s on %s in %v: card %d has %d flaws", name, l.Paper.Name, l.Unit, b.card.Number, b.card.flaws)
					}
				}
			}
		}
	}
}

// A picture that the width of a card does not bound looks as one without bounds, in any
// width from that which it needs on.
func TestAPictureThatNoWidthBounds(t *testing.T) {
	free, bound := 0, 0
	for _, p := range slices.Concat(sawCard().Setup, sawCard().After) {
		for _, share := range cardShares {
			for width := 20.0; width < 190; width += 7.3 {
				k := &card{share: share, hanging: newHangings()}
				got, want := k.view(p, width), (&card{share: share, hanging: newHangings()}).viewIn(p, width)
				if got.needs > width {
					bound++
				} else {
					free++
				}
				if got.drawn != want.drawn || got.factor != want.factor || got.struck != want.struck || !slices.Equal(got.caption, want.caption) {
					t.Errorf("share %g, %g mm wide: %v at %g, want %v at %g", share, width, got.drawn, got.factor, want.drawn, want.factor)
				}
			}
		}
	}
	if free == 0 || bound == 0 {
		t.Errorf("%d without bounds, %d with", free, bound)
	}
}
