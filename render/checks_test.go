package render

import (
	"fmt"
	"strings"
	"testing"

	"rodsheet/geometry"
)

// A wrong check length is blamed on the seams between sheets that lie one
// after another between the crosses.
func TestRetapeNamesTheSheets(t *testing.T) {
	for _, c := range []struct {
		w, h float64
		want []string
	}{
		{150, 40, nil},
		{640, 45, []string{"off: retape at the seams of rows 1 to 3, sheets 1 and 2 (A to "}},
		{300, 250, []string{"retape at the seam of sheets"}},
		{280, 95, []string{"retape at the seam of sheets"}}, // crossed both ways
		{800, 600, []string{"(A to B), sheets", "the one where the ticks read most"}},
	} {
		d := boxOutline(c.w, c.h)
		p := layOne(t, a4(), d)
		laid := p.sections[0].laids[0]
		where := p.tileSheets()
		var all string
		for _, pg := range p.Document().Pages {
			for _, x := range pg.Texts {
				all += x.String + " "
			}
		}
		if len(laid.crosses) == 0 {
			if c.want != nil {
				t.Errorf("%.0f × %.0f mm: no check length", c.w, c.h)
			}
			continue
		}
		for _, want := range c.want {
			if !strings.Contains(all, want) {
				t.Errorf("%.0f × %.0f mm: %q is not said", c.w, c.h, want)
			}
		}
		told := map[int]bool{}
		for _, l := range laid.lengths {
			a, x := laid.crosses[l[0]], laid.crosses[l[1]]
			way := laid.way(a.at, x.at)
			if told[l[1]] && !straight(way) {
				continue // one length to each cross tells its seams, and any along a row or column
			}
			told[l[1]] = true
			row, col := laid.at(a.at)
			r, k := laid.at(x.at)
			if n := abs(row-r) + abs(col-k) + 1; len(way) != n || way[0] != (place{drawing: laid, row: row, col: col}) || way[n-1] != (place{drawing: laid, row: r, col: k}) {
				t.Errorf("the way over %d tiles from %d,%d to %d,%d is %v", n, row, col, r, k, way)
			}
			n := numbers{tiles: where}
			if len(way) > 1 && !strings.Contains(all, n.sheets(way)) {
				t.Errorf("sheets %s are not named", n.sheets(way))
			}
			for i := 1; i < len(way); i++ {
				if a, b := way[i-1], way[i]; abs(a.row-b.row)+abs(a.col-b.col) != 1 || where[b] == 0 {
					t.Errorf("tile %s does not lie beside %s", b.name(), a.name())
				}
			}
		}
	}
}

// The way between two tiles keeps to those that are printed.
func TestWayRoundDroppedTiles(t *testing.T) {
	p := &tiling{rows: 3, cols: 3, xs: []float64{0, 10, 20, 30}, ys: []float64{30, 20, 10, 0}}
	p.kept = []bool{true, true, true, true, false, false, true, true, true}
	way := p.way(geometry.Pt(25, 25), geometry.Pt(25, 5))
	var got []string
	for _, w := range way {
		got = append(got, fmt.Sprintf("%d%d", w.row, w.col))
	}
	if want := "13 12 11 21 31 32 33"; strings.Join(got, " ") != want {
		t.Errorf("the way is %v, want %s", got, want)
	}
	n := numbers{tiles: map[place]int{}}
	for i, at := range way {
		n.tiles[at] = []int{4, 5, 6, 7, 12, 14, 15}[i]
	}
	if got, want := n.sheets(way), "sheets 4 to 7, 12, 14 and 15"; got != want {
		t.Errorf("the sheets are %q, want %q", got, want)
	}
}
