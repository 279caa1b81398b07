package readback

import (
	"math"

	"pgregory.net/rapid"

	"rodsheet/geometry"
	"rodsheet/render/page"
)

// Lines are pens to draw samples with: continuous, dashed, long dash dot.
func Lines() []page.Line {
	return []page.Line{
		{Name: "cut", Width: 0.5},
		{Name: "hidden", Width: 0.25, Dash: []float64{3, 1.5}},
		{Name: "centre line", Width: 0.18, Dash: []float64{12, 1.5, 0.25, 1.5}},
	}
}

// Sample is a document for tests with everything a document can hold, on two
// sheets of different size and direction.
func Sample() page.Document {
	pt := geometry.Pt
	triangle := []geometry.Point{pt(10, 10), pt(210.0/3, 10), pt(50, 80.12345), pt(10, 10)}
	return page.Document{
		Title:   "Läp (60°) \\ sample",
		Subject: "a job of two sheets & no more",
		Lines:   Lines(),
		Pages: []page.Page{
			{Width: 210, Height: 297, Name: "lap, right hand <1>",
				Areas: []page.Area{
					{Gray: 0.8, Points: triangle[:3]},
					{Gray: 0.8, Points: []geometry.Point{pt(100, 10), pt(150.0/7, 40), pt(120, 60)}},
					{Gray: 1, Points: []geometry.Point{pt(20, 20), pt(40, 20), pt(40, 30), pt(20, 30)}},
				},
				Strokes: []page.Stroke{
					{Line: 0, Points: triangle},
					{Line: 2, Points: []geometry.Point{pt(0, 0), pt(210, 297)}},
					{Line: 0, Points: geometry.Arc(pt(100, 150), 40, 0, math.Pi)},
					{Line: 1, Points: []geometry.Point{pt(20, 20), pt(120, 400.0/3), pt(20, 200)}},
					{Line: 0, Points: []geometry.Point{pt(-5, 290), pt(215, 290)}},
				},
				Texts: []page.Text{
					{At: pt(30, 250), Height: 3.5, String: "HEAD: ring side (60°) \\ ½ in H"},
					{At: pt(150, 100), Height: 2.5, Angle: math.Pi / 2, String: "H up the edge H"},
					{At: pt(60, 60), Height: 2.5, Angle: -0.3, String: "H & <lean> H"},
					{At: pt(60, 30), Height: 2.5, String: ""},
				}},
			{Width: 17 * 25.4, Height: 11 * 25.4, Name: "second",
				Strokes: []page.Stroke{{Line: 1, Points: []geometry.Point{pt(400, 10), pt(10, 270)}}},
				Texts:   []page.Text{{At: pt(200, 140), Height: 5, Angle: math.Pi, String: "H on its head H"}}},
		},
	}
}

// Pages draws documents of one page with any strokes on or near it. Points
// lie on a fine grid that decimals do not hit: two of them are the same or
// clearly apart.
func Pages() *rapid.Generator[page.Document] {
	coordinate := rapid.Map(rapid.IntRange(-50*96, 1300*96), func(n int) float64 { return float64(n) / 96 })
	point := rapid.Custom(func(t *rapid.T) geometry.Point {
		return geometry.Pt(coordinate.Draw(t, "x"), coordinate.Draw(t, "y"))
	})
	// A reader that is told to close an outline drops a last corner on the first.
	open := func(corners []geometry.Point) bool { return corners[0] != corners[len(corners)-1] }
	return rapid.Custom(func(t *rapid.T) page.Document {
		p := page.Page{
			Width:  rapid.Float64Range(50, 1189).Draw(t, "width"),
			Height: rapid.Float64Range(50, 1189).Draw(t, "height"),
			Name:   "any",
		}
		for range rapid.IntRange(0, 12).Draw(t, "strokes") {
			points := rapid.SliceOfN(point, 2, 6).Draw(t, "points")
			if rapid.Bool().Draw(t, "closed") {
				points = append(points, points[0])
			}
			p.Strokes = append(p.Strokes, page.Stroke{Line: rapid.IntRange(0, 2).Draw(t, "line"), Points: points})
		}
		for range rapid.IntRange(0, 5).Draw(t, "areas") {
			p.Areas = append(p.Areas, page.Area{
				Gray: float64(rapid.IntRange(0, 255).Draw(t, "gray")) / 255, Points: rapid.SliceOfN(point, 3, 6).Filter(open).Draw(t, "corners"),
			})
		}
		return page.Document{Title: "any", Lines: Lines(), Pages: []page.Page{p}}
	})
}

// OnPage returns the segments a page should hold on one line.
func OnPage(p page.Page, line int) []geometry.Segment {
	var out []geometry.Segment
	for _, s := range p.Strokes {
		for i := 1; s.Line == line && i < len(s.Points); i++ {
			out = append(out, geometry.Segment{A: s.Points[i-1], B: s.Points[i]})
		}
	}
	return out
}
