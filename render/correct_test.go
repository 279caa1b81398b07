package render

import (
	"math"
	"reflect"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"rodsheet/geometry"
	"rodsheet/geometry/measure"
	"rodsheet/render/lettering"
	"rodsheet/render/page"
	"rodsheet/templates"
)

// drawCorrection returns the correction of a printer that is off by up to 3 %
// and 1°.
func drawCorrection(t *rapid.T) Correction {
	skew := measure.Radians(rapid.Float64Range(-1, 1).Draw(t, "skew"))
	along := rapid.Float64Range(0.97, 1.03).Draw(t, "along")
	prints := geometry.Affine{A: rapid.Float64Range(0.97, 1.03).Draw(t, "across"), C: along * math.Sin(skew), D: along * math.Cos(skew)}
	return Correction{Printer: "bench", Upright: prints.Inverse(), Text: "corrected for bench: across ×1.0000, along ×1.0000, skew 0.00°"}
}

// printed returns a page as the printer that c corrects puts it on paper.
func (c Correction) printed(p page.Page) page.Page {
	c.Upright = c.Upright.Inverse()
	return c.apply(p)
}

// A corrected job, printed, is the job as it was laid out, inside the margin;
// and so is the ink in the file.
func TestCorrectedJobComesOutTrue(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d, l := drawRandom(t), drawLayout(t)
		l.Correct = drawCorrection(t)
		margin := l.Margin
		if rapid.IntRange(0, 3).Draw(t, "whole") == 0 {
			l.Paper = Paper{Name: "whole", Whole: true}
		}
		plan := must(Lay(templates.Job{Name: "random", Title: "random", Sections: []templates.Section{{Cards: []templates.Card{sawCard()}, Drawings: []templates.Drawing{d}}}}, l))(t)
		where := plan.tileSheets()
		doc := plan.Document()
		for i, pg := range doc.Pages {
			laid := plan.sheet(i, where)
			paper := l.Correct.printed(pg)
			if off := farthest(laid, paper); off > 1e-9 {
				t.Fatalf("sheet %d comes out %.9f mm off", i+1, off)
			}
			printable := geometry.Box(0, 0, pg.Width, pg.Height).Offset(-margin + 0.2)
			for name, p := range map[string]page.Page{"file": pg, "paper": paper} {
				if ink := inked(doc, p); !printable.Holds(ink) {
					t.Fatalf("sheet %d has ink on the %s in %v, outside %v", i+1, name, ink, printable)
				}
			}
		}
	})
}

// farthest returns how far apart two pages are at most: points, base lines
// and letter heights.
func farthest(p, q page.Page) float64 {
	off := 0.0
	if len(p.Areas) != len(q.Areas) || len(p.Strokes) != len(q.Strokes) || len(p.Texts) != len(q.Texts) {
		return math.Inf(1)
	}
	for i, a := range p.Areas {
		for k, at := range a.Points {
			off = max(off, at.Distance(q.Areas[i].Points[k]))
		}
	}
	for i, s := range p.Strokes {
		for k, at := range s.Points {
			off = max(off, at.Distance(q.Strokes[i].Points[k]))
		}
	}
	for i, x := range p.Texts {
		y := q.Texts[i]
		off = max(off, x.At.Distance(y.At), math.Abs(x.Height-y.Height), geometry.Polar(1, x.Angle).Distance(geometry.Polar(1, y.Angle)))
	}
	return off
}

// The axis along the feed is y of an upright page and x of one that is wider
// than high. The centre stays, and either way of turning the sheet is the same.
func TestCorrectionFollowsTheFeed(t *testing.T) {
	c := Correction{Printer: "bench", Upright: geometry.Affine{A: 1.01, C: 0.002, D: 0.98}}
	upright, wide := c.on(200, 300), c.on(300, 200)
	for _, test := range []struct {
		name       string
		m          geometry.Affine
		from, want geometry.Point
	}{
		{"upright, centre", upright, geometry.Pt(100, 150), geometry.Pt(100, 150)},
		{"upright, x", upright, geometry.Pt(200, 150), geometry.Pt(201, 150)},
		{"upright, y", upright, geometry.Pt(100, 250), geometry.Pt(100.2, 248)},
		{"wide, centre", wide, geometry.Pt(150, 100), geometry.Pt(150, 100)},
		{"wide, x", wide, geometry.Pt(250, 100), geometry.Pt(248, 99.8)},
		{"wide, y", wide, geometry.Pt(150, 200), geometry.Pt(150, 201)},
	} {
		if got := test.m.Apply(test.from); got.Distance(test.want) > 1e-9 {
			t.Errorf("%s: %v goes to %v, want %v", test.name, test.from, got, test.want)
		}
	}
	for _, way := range []float64{math.Pi / 2, -math.Pi / 2} {
		// From the sheet as drawn, wide, to the sheet as fed, upright.
		turn := geometry.Translate(geometry.Pt(-150, -100)).Then(geometry.Rotate(way)).Then(geometry.Translate(geometry.Pt(100, 150)))
		got := turn.Then(upright).Then(turn.Inverse())
		for _, p := range []geometry.Point{{}, {X: 300}, {Y: 200}} {
			if got.Apply(p).Distance(wide.Apply(p)) > 1e-9 {
				t.Errorf("turned by %.0f°: %v goes to %v, want %v", measure.Degrees(way), p, got.Apply(p), wide.Apply(p))
			}
		}
	}
}

// A point of a template stands where its placement says, in the file.
func TestPlacementsAreCorrected(t *testing.T) {
	d := templates.Drawing{Name: "bar", Strokes: []templates.Stroke{{Points: []geometry.Point{{}, {X: 130, Y: 20}}}}}
	l := DefaultLayout(measure.Millimetre, Paper{Name: "A4", Width: 210, Height: 297})
	l.Correct = Correction{Printer: "bench", Upright: geometry.Affine{A: 1.01, C: 0.01, D: 0.98}}
	plan := must(Lay(templates.Job{Name: "bar", Title: "bar", Sections: []templates.Section{{Drawings: []templates.Drawing{d}}}}, l))(t)
	doc, found := plan.Document(), false
	for _, p := range plan.Placements() {
		if p.Template != "bar" {
			continue
		}
		for _, s := range doc.Pages[p.Sheet-1].Strokes {
			if len(s.Points) == 2 && s.Points[0].Distance(p.ToPage.Apply(geometry.Pt(0, 0))) < 1e-9 &&
				s.Points[1].Distance(p.ToPage.Apply(geometry.Pt(130, 20))) < 1e-9 {
				found = true
			}
		}
	}
	if !found {
		t.Error("no stroke where the placement puts the template")
	}
}

func TestEveryCorrectedSheetSaysSo(t *testing.T) {
	d := templates.Drawing{Name: "bar", Strokes: []templates.Stroke{{Points: []geometry.Point{{}, {X: 900, Y: 20}}}}}
	job := templates.Job{Name: "bar", Title: "bar", Sections: []templates.Section{{Drawings: []templates.Drawing{d}}}}
	l := DefaultLayout(measure.Millimetre, Paper{Name: "A4", Width: 210, Height: 297})
	plain := must(Lay(job, l))(t)
	l.Correct = Correction{Printer: "bench", Upright: geometry.Identity(), Text: "corrected for bench: " + strings.Repeat("word ", 30) + "end"}
	plan := must(Lay(job, l))(t)
	for i, pg := range plan.Document().Pages {
		said := ""
		for _, x := range pg.Texts {
			said += x.String + " "
		}
		if !strings.Contains(said, l.Correct.Text) {
			t.Errorf("sheet %d does not say %q but %q", i+1, l.Correct.Text, said)
		}
	}
	for _, pg := range plain.Document().Pages {
		for _, x := range pg.Texts {
			if strings.Contains(x.String, "corrected") {
				t.Errorf("a plain sheet says %q", x.String)
			}
		}
	}
}

// Without a printer nothing is touched, whatever else the correction holds.
func TestNoCorrection(t *testing.T) {
	p := page.Page{Width: 210, Height: 297, Strokes: []page.Stroke{{Points: []geometry.Point{{X: 1}, {X: 2}}}}, Texts: []page.Text{{Height: 3}}}
	if got := (Correction{Text: "x"}).apply(p); !reflect.DeepEqual(got, p) {
		t.Errorf("%+v, want %+v", got, p)
	}
	l := DefaultLayout(measure.Millimetre, Paper{Name: "A4", Width: 210, Height: 297})
	if got := l.inset(); !reflect.DeepEqual(got, l) {
		t.Errorf("%+v, want %+v", got, l)
	}
}

// A drawing that is to stand upright does, even where turned it would need
// fewer tiles, or find room on a sheet that is begun.
func TestUprightIsNeverTurned(t *testing.T) {
	for name, c := range map[string]struct {
		corner geometry.Point
		paper  Paper
	}{
		"fewer tiles":   {geometry.Pt(20, 200), Paper{Name: "own", Width: 300, Height: 200}},
		"begun a sheet": {geometry.Pt(60, 130), Paper{Name: "own", Width: 200, Height: 260}},
	} {
		bar := templates.Drawing{Name: "bar", Strokes: []templates.Stroke{{Points: []geometry.Point{{}, c.corner}}}}
		for _, bar.Upright = range []bool{false, true} {
			plan := must(Lay(templates.Job{Name: "bar", Title: "bar", Sections: []templates.Section{{Drawings: []templates.Drawing{bar}}}}, DefaultLayout(measure.Millimetre, c.paper)))(t)
			for _, p := range plan.Placements() {
				if stands := p.ToPage.B == 0; p.Template == "bar" && stands != bar.Upright {
					t.Errorf("%s, upright %v: stands as drawn %v", name, bar.Upright, stands)
				}
			}
		}
	}
}

// A base line ends where the correction puts its end, so that lettering keeps
// to its place on paper.
func TestLettersKeepTheirPlace(t *testing.T) {
	c := Correction{Printer: "bench", Upright: geometry.Affine{A: 1.03, C: 0.017, D: 0.97}}
	for _, angle := range []float64{0, math.Pi / 4, math.Pi / 2, math.Pi} {
		x := page.Text{At: geometry.Pt(20, 30), Height: 2.5, Angle: angle, String: "lay row 2, sheet 3, to this line"}
		end := func(x page.Text) geometry.Point {
			return x.At.Add(geometry.Polar(lettering.Width(x.String, x.Height), x.Angle))
		}
		got := c.apply(page.Page{Width: 210, Height: 297, Texts: []page.Text{x}}).Texts[0]
		if want := c.on(210, 297).Apply(end(x)); end(got).Distance(want) > 1e-9 {
			t.Errorf("at %.0f°: ends at %v, want %v", measure.Degrees(angle), end(got), want)
		}
	}
}

// Letters are not sheared, and grow by their base line: they reach a little
// farther than the box that they stand in. Flush with the margin they stay
// inside it, for a printer that is off by as much as any.
func TestLettersAtTheMarginStayInside(t *testing.T) {
	l := DefaultLayout(measure.Millimetre, Paper{Name: "A4", Width: 210, Height: 297})
	skew := math.Sin(measure.Radians(1))
	for _, across := range []float64{1 / 1.03, 1, 1 / 0.97} {
		for _, along := range []float64{1 / 1.03, 1, 1 / 0.97} {
			for _, lean := range []float64{-skew, 0, skew} {
				l.Correct = Correction{Printer: "bench", Upright: geometry.Affine{A: across, C: lean, D: along}}
				in := l.inset().Margin
				allowed := geometry.Box(l.Margin, l.Margin, l.Paper.Width-l.Margin, l.Paper.Height-l.Margin)
				for angle, at := range map[float64]geometry.Point{
					0:           {X: in, Y: l.Paper.Height - in - large},
					math.Pi / 2: {X: in + large, Y: in},
				} {
					x := page.Text{At: at, Height: large, Angle: angle, String: "foot"}
					x = l.Correct.apply(page.Page{Width: l.Paper.Width, Height: l.Paper.Height, Texts: []page.Text{x}}).Texts[0]
					up := geometry.Polar(x.Height, x.Angle+math.Pi/2)
					if box := geometry.Bounds(x.At, x.At.Add(up)); !allowed.Holds(box) {
						t.Errorf("%v, at %.0f°: letters over %v, outside %v", l.Correct.Upright, measure.Degrees(angle), box, allowed)
					}
				}
			}
		}
	}
}
