package render

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"rodsheet/geometry"
	"rodsheet/geometry/measure"
	"rodsheet/templates"
)

// The scales of ISO 5455: reductions 1:2, 1:5, 1:10 and so on by powers of ten.
func TestReductions(t *testing.T) {
	var got []float64
	for n := range 10 {
		got = append(got, reduction(n))
	}
	if want := []float64{1, 2, 5, 10, 20, 50, 100, 200, 500, 1000}; !slices.Equal(got, want) {
		t.Errorf("reductions %v, want %v", got, want)
	}
}

// drawPicture returns a picture of a box with labels.
func drawPicture(t *rapid.T) templates.Picture {
	w, h := rapid.Float64Range(1, 3000).Draw(t, "w"), rapid.Float64Range(1, 3000).Draw(t, "h")
	box := geometry.Box(7, -9, 7+w, h-9)
	p := templates.Picture{
		Heading: rapid.StringMatching(`[a-z ]{0,40}`).Draw(t, "heading"),
		NoScale: rapid.Bool().Draw(t, "no scale"),
		Strokes: []templates.Stroke{{Role: templates.Outline, Points: geometry.Closed(box.Corners())}},
	}
	for range rapid.IntRange(0, 3).Draw(t, "labels") {
		p.Labels = append(p.Labels, templates.Label{Text: rapid.StringMatching(`[a-z]{1,20}|[a-z]{44}`).Draw(t, "label"), On: geometry.Segment{A: box.Min, B: box.Max}})
	}
	return p
}

// A picture is drawn at the scale that it states, in a block that holds it
// with its labels and words, and with lettering of the usual height.
func TestPictureIsToScale(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := drawPicture(t)
		n := rapid.IntRange(1, 9).Draw(t, "scale")
		v := newView(p, reduction(n))
		if p.NoScale {
			v = fitted(p, geometry.Pt(rapid.Float64Range(60, 100).Draw(t, "most"), 100))
		}
		at := geometry.Pt(500, 3000)
		pen := &pen{}
		v.draw(pen, at)
		size := v.size()
		box := geometry.Rect{Min: at.Sub(geometry.Pt(0, size.Y)), Max: at.Add(geometry.Pt(size.X, 0))}
		drawn := false
		for _, s := range pen.page.Strokes {
			b := geometry.Bounds(s.Points...)
			if !box.Offset(1e-6).Holds(b) {
				t.Fatalf("a line in %.3f, outside %.3f", b, box)
			}
			if s.Line == pictured(templates.Outline) {
				drawn = true
				if w := b.Width() / v.factor; math.Abs(w-v.bounds.Width()) > 1e-6 {
					t.Fatalf("%.6f mm are drawn %.6f mm wide at 1:%.0f", v.bounds.Width(), b.Width(), 1/v.factor)
				}
				if w := b.Height() / v.factor; math.Abs(w-v.bounds.Height()) > 1e-6 {
					t.Fatalf("%.6f mm are drawn %.6f mm high", v.bounds.Height(), b.Height())
				}
			}
		}
		want := fmt.Sprintf("scale 1:%.0f", 1/v.factor)
		if p.NoScale {
			want = "not to scale"
		}
		texts := ""
		for _, x := range pen.page.Texts {
			if !box.Offset(1e-6).Holds(geometry.Bounds(letters(x)...)) || x.Height != small && x.Height != large {
				t.Fatalf("%q %.2f mm high is outside", x.String, x.Height)
			}
			texts += x.String + "\n"
		}
		if !drawn || !strings.Contains(texts, want) {
			t.Fatalf("%q is not said: %q", want, texts)
		}
		for _, l := range p.Labels {
			if !strings.Contains(texts, l.Text) {
				t.Fatalf("the label %q is lost", l.Text)
			}
		}
	})
}

// All pictures to scale have one scale, the largest that fits them all.
func TestPicturesShareAScale(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		pictures := []templates.Picture{drawPicture(t), drawPicture(t), drawPicture(t)}
		most := geometry.Pt(190, 110)
		n := scaleFor(pictures, 1, most)
		larger := n == 1
		scaled := false
		for _, p := range pictures {
			if p.NoScale {
				continue
			}
			scaled = true
			if s := newView(p, reduction(n)).size(); s.X > most.X || s.Y > most.Y {
				t.Fatalf("at 1:%.0f a picture takes %.1f mm", reduction(n), s)
			}
			larger = larger || !newView(p, reduction(n-1)).fits(most)
		}
		if scaled && !larger {
			t.Fatalf("1:%.0f, though 1:%.0f fits", reduction(n), reduction(n-1))
		}
	})
}

// A label wider than a column makes the block wider, not the picture smaller.
func TestLongLabelKeepsTheScale(t *testing.T) {
	p := views(520, 450)[0]
	most := geometry.Pt(91, 110)
	want := scaleFor([]templates.Picture{p}, 1, most)
	p.Labels[0].Text = strings.Repeat("long ", 12)
	if got := scaleFor([]templates.Picture{p}, 1, most); got != want {
		t.Errorf("1:%.0f with a long label, 1:%.0f without", reduction(got), reduction(want))
	}
}

// The pens of pictures have the dashes of their roles and are no thicker.
func TestPicturePens(t *testing.T) {
	all := lines()
	for r := templates.Cut; r <= templates.Waste; r++ {
		full, small := all[r], all[pictured(r)]
		if small.Width > full.Width || len(small.Dash) != len(full.Dash) || small.Name != "picture "+full.Name {
			t.Errorf("%s: %+v in a picture", full.Name, small)
		}
		for i := range small.Dash {
			if math.Abs(small.Dash[i]/small.Width-full.Dash[i]/full.Width) > 1e-9 {
				t.Errorf("%s: dash %d is %.3f widths", small.Name, i, small.Dash[i]/small.Width)
			}
		}
	}
	if len(all) != pictured(templates.Waste)+1 {
		t.Errorf("%d lines, want one for each role and each kind", len(all))
	}
}

// A page of pictures holds them clear of each other inside its margin, at one
// scale, and says what it is not for.
func TestPictureDocument(t *testing.T) {
	papersTried := append(papers(), Paper{Name: "landscape", Width: 297, Height: 210})
	for _, u := range []measure.Unit{measure.Millimetre, measure.Inch} {
		for _, paper := range papersTried {
			for _, size := range [][2]float64{{350, 300}, {520, 450}, {900, 400}, {600, 1100}} {
				doc := PictureDocument("picture", "Low table", views(size[0], size[1]), u, paper)
				if err := doc.Check(); err != nil || len(doc.Pages) != 1 {
					t.Fatalf("%d pages: %v", len(doc.Pages), err)
				}
				pg := doc.Pages[0]
				what := fmt.Sprintf("%s, %.0f mm", paper.Name, size)
				short, long := min(pg.Width, pg.Height), max(pg.Width, pg.Height)
				if !paper.Whole && (short != min(paper.Width, paper.Height) || long != max(paper.Width, paper.Height)) {
					t.Errorf("%s: a page of %.1f × %.1f mm", what, pg.Width, pg.Height)
				}
				for _, s := range struck(pg) {
					t.Errorf("%s: %q is struck", what, s)
				}
				wantInside(t, what, readPDF(t, doc).Pages[0], pictureMargin)
				scales := map[string]int{}
				for _, x := range pg.Texts {
					scales[strings.Split(x.String, "1:")[0]]++
					if strings.HasPrefix(x.String, "scale") {
						scales[x.String]++
					}
				}
				if scales["scale "] != 2 || scales["not to scale"] != 1 || len(scales) < 3 || scales[string(lookOnly)] != 1 || scales["Low table"] != 1 {
					t.Errorf("%s says %v", what, scales)
				}
				for s, n := range scales {
					if strings.HasPrefix(s, "scale 1:") && n != 2 {
						t.Errorf("%s: %q for one of two", what, s)
					}
				}
			}
		}
	}
}

// No pictures, and pictures of nothing, still make a page.
func TestPictureDocumentOfNothing(t *testing.T) {
	for _, pictures := range [][]templates.Picture{nil, {{}}, {{NoScale: true}}, {{Heading: "dot", Strokes: []templates.Stroke{{Points: []geometry.Point{{X: 5, Y: 5}}}}}}} {
		for _, paper := range []Paper{papers()[3], papers()[5]} {
			if err := PictureDocument("x", "x", pictures, 0, paper).Check(); err != nil {
				t.Errorf("%d pictures on %s: %v", len(pictures), paper.Name, err)
			}
		}
	}
}

// A job of pictures of any size is laid, and each is printed once.
func TestPicturesAreLaid(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		var pictures []templates.Picture
		for range rapid.IntRange(1, 7).Draw(t, "pictures") {
			pictures = append(pictures, drawPicture(t))
		}
		l := drawLayout(t)
		p := must(Lay(templates.Job{Name: "job", Title: "job", Sections: []templates.Section{{Pictures: pictures}}}, l))(t)
		n := 0
		for _, s := range p.sheets {
			for _, b := range s.blocks {
				if b.view != nil {
					n++
				}
			}
		}
		if n != len(pictures) {
			t.Fatalf("%d pictures laid, want %d", n, len(pictures))
		}
		doc := p.Document()
		for i, pg := range doc.Pages {
			if clear := geometry.Box(0, 0, pg.Width, pg.Height).Offset(0.2 - l.Margin); !clear.Holds(inked(doc, pg)) {
				t.Fatalf("sheet %d has ink outside its margin", i+1)
			}
		}
	})
}

// Figures of a picture stand beside it or below, and not beside another.
func TestFiguresStandWithTheirPicture(t *testing.T) {
	var section templates.Section
	for _, size := range []string{"low", "tall"} {
		v := templates.View{Part: "whole-leg", Face: "back", Size: size}
		p := views(600, 400)[0]
		p.Heading, p.View, p.NoScale = size, v, true
		section.Pictures = append(section.Pictures, p)
		section.Panels = append(section.Panels, templates.Panel{Heading: "figures, " + size, Of: v, Text: []string{"words"}})
	}
	slices.Reverse(section.Panels)
	plan := must(Lay(jobOf(section), DefaultLayout(measure.Millimetre, papers()[3])))(t)
	for _, s := range plan.sheets {
		for i, b := range s.blocks {
			if b.view == nil {
				continue
			}
			if own := s.blocks[i+1]; own.panel == nil || own.panel.Title != "figures, "+b.view.Heading ||
				own.at.X != b.at.X+b.size.X+gap && own.at.Y != b.at.Y+b.size.Y+gap {
				t.Errorf("beside the picture of %s: %q", b.view.Heading, own.title())
			}
		}
	}
}
