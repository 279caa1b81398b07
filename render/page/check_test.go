package page

import (
	"math"
	"strings"
	"testing"

	"rodsheet/geometry"
)

// sound is a document that can be written.
func sound() Document {
	return Document{
		Title: "sound",
		Lines: []Line{{Name: "cut", Width: 0.5}, {Name: "hidden", Width: 0.25, Dash: []float64{3, 1}}},
		Pages: []Page{
			{Width: 210, Height: 297, Name: "empty"},
			{Width: 210, Height: 297, Name: "second",
				Strokes: []Stroke{{1, []geometry.Point{{X: 1, Y: 1}, {X: 9, Y: 9}}}},
				Texts:   []Text{{At: geometry.Pt(5, 5), Height: 2.5, String: "lap"}}},
		},
	}
}

func TestCheck(t *testing.T) {
	nan, inf := math.NaN(), math.Inf(1)
	for _, c := range []struct {
		name  string
		spoil func(*Document)
		want  string // part of the message; empty for none
	}{
		{"sound", func(*Document) {}, ""},
		{"off the sheet, in reach", func(d *Document) { d.Pages[1].Strokes[0].Points[0].X = -Reach }, ""},
		{"as far as may be", func(d *Document) {
			d.Pages[1].Strokes[0].Points = []geometry.Point{{X: Reach, Y: Reach}, {X: -Reach, Y: -Reach}}
		}, ""},
		{"farther up", func(d *Document) { d.Pages[1].Strokes[0].Points[0].Y = Reach + 1 }, "out of reach"},
		{"as wide as may be", func(d *Document) { d.Lines[0].Width = Reach }, ""},
		{"wider", func(d *Document) { d.Lines[0].Width = Reach + 1 }, `line "cut"`},
		{"no pages", func(d *Document) { d.Pages = nil }, "no pages"},
		{"x not a number", func(d *Document) { d.Pages[1].Strokes[0].Points[1].X = nan }, `page 2 "second"`},
		{"y not a number", func(d *Document) { d.Pages[1].Strokes[0].Points[1].Y = nan }, `page 2 "second"`},
		{"infinite", func(d *Document) { d.Pages[1].Strokes[0].Points[0].Y = -inf }, `page 2 "second"`},
		{"out of reach", func(d *Document) { d.Pages[1].Strokes[0].Points[0].X = Reach + 1 }, "out of reach"},
		{"area off the sheet", func(d *Document) { d.Pages[1].Areas = []Area{{1, []geometry.Point{{X: nan}}}} }, "area 1: point"},
		{"area darker than black", func(d *Document) { d.Pages[1].Areas = []Area{{Gray: -0.1}} }, "area 1: gray"},
		{"area of no gray", func(d *Document) { d.Pages[1].Areas = []Area{{Gray: nan}} }, "area 1: gray"},
		{"unknown line", func(d *Document) { d.Pages[1].Strokes[0].Line = 2 }, `page 2 "second": stroke 1: line 2 of 2`},
		{"line below 0", func(d *Document) { d.Pages[1].Strokes[0].Line = -1 }, `page 2 "second"`},
		{"text nowhere", func(d *Document) { d.Pages[1].Texts[0].At.X = nan }, `page 2 "second": text "lap"`},
		{"text at no angle", func(d *Document) { d.Pages[1].Texts[0].Angle = inf }, `page 2 "second": text "lap"`},
		{"text angle not a number", func(d *Document) { d.Pages[1].Texts[0].Angle = nan }, `page 2 "second": text "lap"`},
		{"text without height", func(d *Document) { d.Pages[1].Texts[0].Height = 0 }, `page 2 "second": text "lap"`},
		{"sheet without width", func(d *Document) { d.Pages[0].Width = 0 }, `page 1 "empty"`},
		{"sheet height not a number", func(d *Document) { d.Pages[0].Height = nan }, `page 1 "empty"`},
		{"line without width", func(d *Document) { d.Lines[0].Width = 0 }, `line "cut"`},
		{"line width not a number", func(d *Document) { d.Lines[0].Width = nan }, `line "cut"`},
		{"dash infinite", func(d *Document) { d.Lines[1].Dash[1] = inf }, `line "hidden"`},
		{"dash of no length", func(d *Document) { d.Lines[1].Dash[0] = 0 }, `line "hidden"`},
	} {
		d := sound()
		c.spoil(&d)
		err := d.Check()
		switch {
		case c.want == "" && err != nil:
			t.Errorf("%s: %v", c.name, err)
		case c.want != "" && (err == nil || !strings.Contains(err.Error(), c.want)):
			t.Errorf("%s: error %v, want %q in it", c.name, err, c.want)
		}
	}
}

func TestOutline(t *testing.T) {
	a, b, c := geometry.Pt(0, 0), geometry.Pt(1, 0), geometry.Pt(0, 1)
	for _, x := range []struct {
		name   string
		points []geometry.Point
		n      int
		closed bool
	}{
		{"none", nil, 0, false},
		{"a point", []geometry.Point{a}, 1, false},
		{"a line", []geometry.Point{a, b}, 2, false},
		{"there and back", []geometry.Point{a, b, a}, 3, false},
		{"open", []geometry.Point{a, b, c}, 3, false},
		{"closed", []geometry.Point{a, b, c, a}, 3, true},
	} {
		points, closed := Stroke{Points: x.points}.Outline()
		if len(points) != x.n || closed != x.closed {
			t.Errorf("%s: %d points, closed %t; want %d, %t", x.name, len(points), closed, x.n, x.closed)
		}
	}
}
