package render

import (
	"fmt"
	"math"
	"testing"
)

// More tiles take fewer sheets where several share one: at most so many as
// tiles a little smaller than the sheet took by trial, where the fewest tiles
// took 15, 12 and 9. No tile is narrower than what keeps its seams true.
func TestTilesShareSheets(t *testing.T) {
	for _, c := range []struct {
		wide, high float64
		sheets     int
	}{{1000, 700, 12}, {800, 600, 11}, {600, 400, 8}} {
		l := a4()
		p := layOne(t, l, boxOutline(c.wide, c.high))
		if p.Count() > c.sheets {
			t.Errorf("%.0f × %.0f: %d sheets, want at most %d", c.wide, c.high, p.Count(), c.sheets)
		}
		for _, tile := range p.sections[0].laids[0].tiles() {
			if side := math.Min(tile.window.Width(), tile.window.Height()); side < 100 {
				t.Errorf("%.0f × %.0f: a tile is %.1f mm narrow", c.wide, c.high, side)
			}
		}
	}
}

// By hand: on a sheet of 205 mm stand two windows of 100 mm with 5 mm between
// them, and one of any that is longer.
func TestSharesOfASheet(t *testing.T) {
	a := axis{most: 205, overlap: 10}
	// Windows of 100, 110 and 205 mm: half an overlap at the ends, a whole one inside.
	if got, want := fmt.Sprint(a.toSheet([]float64{0, 95, 195, 395}, 5)), "[2 1 1]"; got != want {
		t.Errorf("%s to a sheet, want %s", got, want)
	}
	if got := a.toSheet([]float64{0, 94, 195}, 5)[0]; got != 0 {
		t.Errorf("a window of 99 mm stands %.0f to a sheet, want none", got)
	}
	if got := sheets([]bool{true, true, false, true}, []float64{1, 2}, []float64{1, 3}); math.Abs(got-(1+1.0/2+1.0/6)) > 1e-12 {
		t.Errorf("%.6f sheets, want 1 + 1/2 + 1/6", got)
	}
	if got := sheets([]bool{true, true}, []float64{0, 2}, []float64{1}); !math.IsInf(got, 1) {
		t.Errorf("%.1f sheets with a tile too narrow, want no such cut", got)
	}
}
