package render

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"rodsheet/geometry/measure"
	"rodsheet/templates"
)

// figuresOf is a panel of so many lines that belongs to a drawing.
func figuresOf(d templates.Drawing, lines int) templates.Panel {
	p := templates.Panel{Heading: "figures of " + d.Name, Of: d.View}
	for i := range lines {
		p.Table = append(p.Table, []string{fmt.Sprint("figure ", i+1), "123.4 mm"})
	}
	return p
}

// sheetsOf returns on which sheets a drawing stands, and its figures.
func (p Plan) sheetsOf(d templates.Drawing) (drawing, figures []int) {
	for i, s := range p.sheets {
		for _, b := range s.blocks {
			if b.tile != nil && b.tile.View == d.View {
				drawing = append(drawing, i)
			}
			if b.panel != nil && strings.HasPrefix(b.panel.Title, "figures of "+d.Name) {
				figures = append(figures, i)
			}
		}
	}
	return slices.Compact(drawing), slices.Compact(figures)
}

// Figures that fit one sheet with their drawing stand on it, whatever else the
// section holds; all of them are printed, once, clear of everything.
func TestFiguresStandWithTheirDrawing(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		var s templates.Section
		for i := range rapid.IntRange(1, 9).Draw(t, "drawings") {
			d := boxOutline(rapid.Float64Range(20, 150).Draw(t, "w"), rapid.Float64Range(20, 150).Draw(t, "h"))
			d.Name = fmt.Sprintf("drawing %c", 'a'+i)
			d.View = templates.View{Part: measure.ID(d.Name)}
			d.Upright = rapid.Bool().Draw(t, "upright")
			s.Drawings = append(s.Drawings, d)
			for range rapid.IntRange(0, 2).Draw(t, "panels") {
				s.Panels = append(s.Panels, figuresOf(d, rapid.IntRange(0, 8).Draw(t, "lines")))
			}
		}
		s.Drawings = append(s.Drawings, boxOutline(160, 220)) // the zero view has no figures
		s.Panels = append(s.Panels, templates.Panel{Heading: "of none", Text: []string{"words"}})
		p := must(Lay(jobOf(s), a4()))(t)
		said := map[string]int{}
		for i, pg := range p.Document().Pages {
			for _, text := range struck(pg) {
				t.Fatalf("sheet %d: %q is struck", i+1, text)
			}
			for _, x := range pg.Texts {
				said[x.String]++
			}
		}
		for _, panel := range s.Panels {
			said[panel.Heading]--
		}
		for _, d := range s.Drawings[:len(s.Drawings)-1] {
			if on, with := p.sheetsOf(d); len(on) != 1 || len(with) > 0 && !slices.Equal(with, on) {
				t.Fatalf("%s stands on sheets %v, its figures on %v", d.Name, on, with)
			}
			if n := said["figures of "+d.Name]; n != 0 {
				t.Fatalf("%d too many figures of %s", n, d.Name)
			}
		}
	})
}

// Figures that need a sheet of their own follow that of their drawing; those of a
// drawing of several tiles stand on one of its sheets or behind them.
func TestFiguresFollowTheirDrawing(t *testing.T) {
	full, wide := boxOutline(160, 220), boxOutline(500, 180)
	full.Name, full.View.Part = "full", "full"
	wide.Name, wide.View.Part = "wide", "wide"
	for _, first := range []templates.Drawing{full, wide} {
		p, err := Lay(jobOf(templates.Section{
			Drawings: []templates.Drawing{first, boxOutline(165, 225), boxOutline(160, 215)},
			Panels:   []templates.Panel{figuresOf(first, 40)},
		}), a4())
		if err != nil {
			t.Fatal(err)
		}
		on, with := p.sheetsOf(first)
		if len(with) != 1 || with[0] < on[len(on)-1] || with[0] > on[len(on)-1]+1 {
			t.Errorf("%s stands on sheets %v, its figures on %v", first.Name, on, with)
		}
	}
}
