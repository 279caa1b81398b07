package table

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"rodsheet/geometry"
	"rodsheet/render/lettering"
	"rodsheet/templates"
)

// drawTable returns rows of the same number of cells, with rows of a single cell
// among them.
func drawTable(t *rapid.T) [][]string {
	cell := rapid.OneOf(rapid.Just(""), rapid.StringMatching(`[a-z]{1,9}( [a-z]{1,9}){0,12}`), rapid.StringMatching(`[0-9]{1,4}(\.[0-9])? mm`))
	n := rapid.IntRange(2, 8).Draw(t, "columns")
	rows := [][]string{{}}
	for i := range n {
		rows[0] = append(rows[0], fmt.Sprintf("head %d", i+1))
	}
	for range rapid.IntRange(0, 40).Draw(t, "rows") {
		if rapid.IntRange(0, 5).Draw(t, "across") == 0 {
			rows = append(rows, []string{"across " + rapid.StringMatching(`[a-z ]{0,150}`).Draw(t, "text")})
			continue
		}
		rows = append(rows, rapid.SliceOfN(cell, n, n).Draw(t, "cells"))
	}
	return rows
}

func ruledWidths(rows [][]string, width float64) []float64 {
	return columnWidths(templates.Panel{Table: rows, Ruled: true}, width, 3)
}

// Columns share the whole width where they are ruled, and need no more where
// they are not. A figure keeps its unit beside it, and what is left over goes to
// words.
func TestColumnWidths(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		rows := drawTable(t)
		width := rapid.Float64Range(150, 280).Draw(t, "width")
		for _, ruled := range []bool{true, false} {
			sum := -3.0
			for _, w := range columnWidths(templates.Panel{Table: rows, Ruled: ruled}, width, 3) {
				sum += w + 3
				if w <= 0 {
					t.Fatalf("a column of %.3f mm", w)
				}
			}
			if sum > width+1e-6 || ruled && sum < width-1e-6 {
				t.Fatalf("the columns take %.6f mm of %.6f, ruled %t", sum, width, ruled)
			}
		}
	})
	words := strings.Repeat("words and words ", 12)
	for _, text := range []string{"words that are short, and no more", words} {
		w := ruledWidths([][]string{{"no", "what", "stop"}, {"1", text, "123.4 mm"}}, 180)
		if w[0] > 6 || w[2] > 18 || w[2] < 14 {
			t.Errorf("columns of %.1f mm; want figures narrow and in one line", w)
		}
	}
}

// A table takes no more lines than with any other widths of two columns: all are tried
// in steps of a millimetre.
func TestColumnsTakeTheFewestLines(t *testing.T) {
	rows := [][]string{{"part", "finished"}}
	for _, name := range []string{"a short one", "a somewhat longer one", "a part of some such name", "b", "c"} {
		rows = append(rows, []string{name, "9 29/64 by 7/8 by 1 1/4 or nearly so"})
	}
	rows = append(rows, []string{"d", "19 61/64 by 4 17/32 by 3/4, which is longer than any other figure"})
	height := func(widths []float64) (lines int) {
		for _, cells := range rows[1:] {
			most := 0
			for k, cell := range cells {
				most = max(most, len(lettering.Wrap(cell, lettering.Small, widths[k]+rounding)))
			}
			lines += most
		}
		return lines
	}
	const width = 110.0
	got, fewest := height(ruledWidths(rows, width)), 1000
	for a := 10.0; a < width-20; a++ {
		fewest = min(fewest, height([]float64{a, width - 3 - a}))
	}
	if got != fewest {
		t.Errorf("%d lines, want %d", got, fewest)
	}
}

// Where not even the longest words fit, there is room to write in still.
func TestRoomToWrite(t *testing.T) {
	heads := append(append([]string{"a"}, slices.Repeat([]string{"longestwordofall"}, 6)...), "b")
	for i, w := range ruledWidths([][]string{heads, {"", "1", "2", "3", "4", "5", "6", ""}}, 170) {
		if write := i == 0 || i == 7; write && w < 18 {
			t.Errorf("column %d to write in is %.2f mm wide", i+1, w)
		}
	}
}

// A panel without rules keeps to its blocks and says every letter in each of its
// shapes.
func TestPlainPanel(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := templates.Panel{Heading: "list", Table: drawTable(t)}
		p.Text = rapid.SliceOfN(rapid.StringMatching(`[a-z]{1,9}( [a-z]{1,9}){0,40}`), 0, 3).Draw(t, "words")
		most := geometry.Pt(rapid.Float64Range(165, 280).Draw(t, "width"), rapid.Float64Range(60, 260).Draw(t, "height"))
		want := strings.Join(p.Text, "")
		for _, cells := range p.Table {
			want += strings.Join(cells, "")
		}
		items := Lay(p, []float64{90, 62, 50}, most)
		for k := range items[0] {
			said := ""
			for i, shapes := range items {
				b := shapes[k]
				if b.Size.X > most.X+1e-9 || b.Size.Y > most.Y+1e-9 {
					t.Fatalf("block %d takes %.3f of %.3f", i+1, b.Size, most)
				}
				for _, x := range b.Texts[1:] {
					if x.At.Y > 0 || x.At.Y < -b.Size.Y || x.At.X < 0 || x.At.X+lettering.Width(x.String, x.Height) > b.Size.X+1e-3 {
						t.Fatalf("block %d: %q is outside", i+1, x.String)
					}
					said += x.String
				}
			}
			if letters(said) != letters(want) {
				t.Fatalf("%q is said, want %q", letters(said), letters(want))
			}
		}
	})
}

// letters returns what is printed of a text, sorted.
func letters(s string) string {
	all := []byte(strings.Join(strings.Fields(s), ""))
	slices.Sort(all)
	return string(all)
}
