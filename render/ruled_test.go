package render

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"rodsheet/geometry"
	"rodsheet/render/table"
	"rodsheet/templates"
)

// drawRuled returns a ruled panel of rows of the same number of cells, with
// rows of a single cell among them.
func drawRuled(t *rapid.T) templates.Panel {
	cell := rapid.OneOf(rapid.Just(""), rapid.StringMatching(`[a-z]{1,9}( [a-z]{1,9}){0,12}`), rapid.StringMatching(`[0-9]{1,4}(\.[0-9])? mm`))
	n := rapid.IntRange(2, 8).Draw(t, "columns")
	p := templates.Panel{Heading: "list", Ruled: true, Table: [][]string{{}}}
	for i := range n {
		p.Table[0] = append(p.Table[0], fmt.Sprintf("head %d", i+1))
	}
	for range rapid.IntRange(0, 40).Draw(t, "rows") {
		if rapid.IntRange(0, 5).Draw(t, "across") == 0 {
			p.Table = append(p.Table, []string{"across " + rapid.StringMatching(`[a-z ]{0,150}`).Draw(t, "text")})
			continue
		}
		p.Table = append(p.Table, rapid.SliceOfN(cell, n, n).Draw(t, "cells"))
	}
	p.Text = rapid.SliceOfN(rapid.StringMatching(`[a-z]{1,9}( [a-z]{1,9}){0,40}`), 0, 3).Draw(t, "words")
	return p
}

// levels returns the heights of the level strokes of words, from the top.
func levels(w *table.Block) []float64 {
	var out []float64
	for _, l := range w.Lines {
		if l.A.Y == l.B.Y {
			out = append(out, l.A.Y)
		}
	}
	slices.SortFunc(out, func(a, b float64) int { return int(math.Copysign(1, b-a)) })
	return slices.Compact(out)
}

// rowsOf returns what stands between each two level strokes.
func rowsOf(w *table.Block) [][]string {
	levels := levels(w)
	out := make([][]string, len(levels))
	for _, x := range w.Texts {
		for i := range levels {
			if x.At.Y < levels[i] && (i == len(levels)-1 || x.At.Y > levels[i+1]) {
				out[i] = append(out[i], x.String)
			}
		}
	}
	return out
}

// A ruled panel takes the whole width, keeps inside its blocks, strikes no
// lettering, and says every word of its table under a head on every sheet.
func TestRuledPanel(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := drawRuled(t)
		most := geometry.Pt(rapid.Float64Range(165, 280).Draw(t, "width"), rapid.Float64Range(120, 260).Draw(t, "height"))
		items := panelItems(p, nil, most)
		said := ""
		for i, it := range items {
			b := it[0]
			if b.size.X != most.X || b.size.Y > most.Y+1e-9 {
				t.Fatalf("block %d is %.3f, want %.3f wide and no higher", i+1, b.size, most)
			}
			if (len(items) > 1) != (b.chain == items[0][0].panel) || !b.upright {
				t.Fatalf("block %d may stand anywhere", i+1)
			}
			box := geometry.Box(0, -b.size.Y, b.size.X, 0).Offset(1e-6)
			pen := &pen{}
			pen.words(b.panel, geometry.Point{})
			pg := pen.page
			if len(struck(pg)) > 0 {
				t.Fatalf("block %d: struck: %q", i+1, struck(pg))
			}
			for _, x := range pg.Texts {
				if !box.Holds(geometry.Bounds(letters(x)...)) {
					t.Fatalf("block %d: %q is outside", i+1, x.String)
				}
				said += x.String + " "
			}
			heading := "list"
			if i > 0 {
				heading += ", continued"
			}
			if b.panel.Texts[0].String != heading {
				t.Fatalf("block %d is headed %q", i+1, b.panel.Texts[0].String)
			}
			if rows := rowsOf(b.panel); len(rows) > 2 && !strings.HasPrefix(strings.Join(rows[0], " "), "head") {
				t.Fatalf("block %d: the head is %q", i+1, rows[0])
			}
		}
		want := ""
		for _, cells := range p.Table[1:] {
			want += strings.Join(cells, " ")
		}
		want += strings.Join(p.Text, " ")
		for _, r := range "abcdefghijklmnopqrstuvwxyz0123456789" {
			if n := strings.Count(want, string(r)); strings.Count(said, string(r)) < n {
				t.Fatalf("%c stands %d times, want %d or more", r, strings.Count(said, string(r)), n)
			}
		}
	})
}

// The words of a row stay together, an empty cell is at least 18 mm wide and
// its row 7 mm high, and no sheet ends with the heading of what follows.
func TestRuledRows(t *testing.T) {
	p := settingsTable(30)
	most := geometry.Pt(186.8, 250)
	items := panelItems(p, nil, most)
	if len(items) < 2 {
		t.Fatalf("%d blocks, want several", len(items))
	}
	row := 0
	for i, it := range items {
		w := it[0].panel
		rows, levels := rowsOf(w), levels(w)
		for k, texts := range rows[1 : len(rows)-1] {
			text := strings.Join(texts, " ")
			if strings.HasPrefix(text, "Operation") {
				if k == len(rows)-3 {
					t.Errorf("block %d ends with %q", i+1, text)
				}
				continue
			}
			row++
			for _, want := range []string{fmt.Sprint(row), "stretcher,", "cross-cut", "other end", fmt.Sprintf("%.1f mm", 122.4+float64(row))} {
				if !strings.Contains(text, want) {
					t.Errorf("row %d is %q, without %q", row, text, want)
				}
			}
		}
		for k := range levels[1 : len(levels)-1] {
			if high := levels[k+1] - levels[k+2]; len(rows[k+1]) > 1 && high < 7 {
				t.Errorf("block %d: a row to write in is %.2f mm high", i+1, high)
			}
		}
	}
	if row != 30 {
		t.Errorf("%d rows, want 30", row)
	}
	for high := 100.0; high < 260; high += 3 {
		for i, it := range panelItems(p, nil, geometry.Pt(186.8, high)) {
			rows := rowsOf(it[0].panel)
			if len(rows) < 2 {
				continue // words alone
			}
			if last := strings.Join(rows[len(rows)-2], " "); strings.HasPrefix(last, "Operation") {
				t.Errorf("of %.0f mm: block %d ends with %q", high, i+1, last)
			}
		}
	}
	short := templates.Panel{Ruled: true, Table: [][]string{{"a", "b", "c"}, {"1", "", "2"}, {"3", "4", "5"}}}
	edges := levels(panelItems(short, nil, most)[0][0].panel)
	if a, b := edges[1]-edges[2], edges[2]-edges[3]; math.Abs(a-7) > 1e-9 || b > 6.9 {
		t.Errorf("rows of %.2f and %.2f mm, want 7 with an empty cell and less without", a, b)
	}
}

// Every row is printed even where one alone is higher than a sheet, or the
// head is.
func TestRuledGiant(t *testing.T) {
	giant := strings.Repeat("words ", 3000)
	for _, p := range []templates.Panel{
		{Heading: "row", Ruled: true, Table: [][]string{{"a", "b"}, {giant, "1"}, {"end", "2"}}},
		{Heading: "head", Ruled: true, Table: [][]string{{giant, "b"}, {"end", "2"}}},
		{Heading: "across", Ruled: true, Table: [][]string{{giant}, {"end"}}},
		{Heading: "text", Ruled: true, Text: []string{giant, "end"}},
	} {
		n, end := 0, false
		for _, it := range panelItems(p, nil, geometry.Pt(186.8, 250)) {
			if it[0].size.Y > 250 {
				t.Errorf("%s: a block of %.1f mm", p.Heading, it[0].size.Y)
			}
			for _, x := range it[0].panel.Texts {
				n += strings.Count(x.String, "words")
				end = end || x.String == "end"
			}
		}
		if n < 3000 || !end {
			t.Errorf("%s: %d words of 3000, end %t", p.Heading, n, end)
		}
	}
}

// What is to be read in order stands on sheets in order, whatever the packer
// tries.
func TestReadInOrder(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		section := templates.Section{Panels: []templates.Panel{
			settingsTable(rapid.IntRange(10, 60).Draw(t, "rows")),
			{Heading: "notes", Text: slices.Repeat([]string{strings.Repeat("words ", 60)}, rapid.IntRange(1, 60).Draw(t, "notes"))},
		}}
		for range rapid.IntRange(0, 8).Draw(t, "drawings") {
			section.Drawings = append(section.Drawings, boxOutline(
				rapid.Float64Range(20, 170).Draw(t, "w"), rapid.Float64Range(20, 220).Draw(t, "h")))
		}
		plan := must(Lay(jobOf(section), a4()))(t)
		part := map[any]int{}
		for i, s := range plan.sheets {
			for _, b := range s.blocks {
				if b.chain == nil {
					continue
				}
				first := b.panel == b.chain
				if want := part[b.chain] == 0; first != want {
					t.Fatalf("sheet %d: %q after %d others of its kind", i+1, b.panel.Title, part[b.chain])
				}
				part[b.chain]++
			}
		}
		for _, j := range plan.sections {
			order := map[any]int{}
			for i, s := range j.sheets {
				for _, p := range s.Placed {
					order[j.items[p.Item][0].panel] = i
				}
			}
			for k := 1; k < len(j.items); k++ {
				a, b := j.items[k-1][0], j.items[k][0]
				if a.chain != nil && a.chain == b.chain && order[a.panel] > order[b.panel] {
					t.Fatalf("a part stands on sheet %d, the one before it on %d", order[b.panel]+1, order[a.panel]+1)
				}
			}
		}
	})
}

// Where words stand under their row, neither is alone on a sheet, and a heading
// stays with what follows.
func TestWordsStayUnderTheirRow(t *testing.T) {
	p := templates.Panel{Ruled: true, Under: true, Table: [][]string{{"no.", "what"}}}
	for i := range 40 {
		if i%7 == 0 {
			p.Table = append(p.Table, []string{"heading"})
		}
		p.Table = append(p.Table, []string{fmt.Sprint("row ", i), "x"})
		if i%3 > 0 || i%7 == 6 { // a row above a heading has its words
			p.Table = append(p.Table, []string{fmt.Sprint("words ", i)})
		}
	}
	for high := 60.0; high < 260; high += 1.5 {
		items := panelItems(p, nil, geometry.Pt(186.8, high))
		for i, it := range items[:len(items)-1] {
			rows := rowsOf(it[0].panel)
			last := strings.Join(rows[len(rows)-2], " ")
			next := rowsOf(items[i+1][0].panel)
			if first := strings.Join(next[1], " "); strings.HasPrefix(last, "heading") || strings.HasPrefix(first, "words") {
				t.Fatalf("of %.1f mm: a sheet ends with %q, the next begins with %q", high, last, first)
			}
		}
	}
}
