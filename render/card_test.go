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
	"rodsheet/render/label"
	"rodsheet/render/lettering"
	"rodsheet/templates"
)

// sawCard returns a card as a maker has it at the saw: a stretcher against the mitre
// gauge, 30° off square, cut by a blade 3.2 mm wide.
func sawCard() templates.Card {
	pt := geometry.Pt
	turn := geometry.Rotate(measure.Radians(30))
	box := func(x0, y0, x1, y1 float64) []geometry.Point {
		return turn.ApplyAll(geometry.Box(x0, y0, x1, y1).Corners())
	}
	line := func(r templates.Role, points ...geometry.Point) templates.Stroke {
		return templates.Stroke{Role: r, Points: points}
	}
	at := func(text string, a, b geometry.Point) templates.Label {
		return templates.Label{Text: text, On: geometry.Segment{A: a, B: b}}
	}
	gauge, part, stop := box(-170, -18, 110, 0), box(-110, 0, 160, 32), box(-134, -2, -110, 34)
	blade := geometry.Box(-1.6, -90, 1.6, 110).Corners()
	setup := templates.Picture{
		Areas: []templates.Area{
			{Tone: templates.Middle, Points: gauge}, {Tone: templates.Light, Points: part},
			{Tone: templates.Dark, Points: stop}, {Tone: templates.Dark, Points: blade},
		},
		Strokes: []templates.Stroke{
			line(templates.Outline, geometry.Closed(gauge)...), line(templates.Cut, geometry.Closed(part)...),
			line(templates.Outline, geometry.Closed(stop)...), line(templates.Outline, geometry.Closed(blade)...),
			line(templates.Centre, pt(0, -110), pt(0, 130)),
		},
		Arrows: []templates.Arrow{
			{Points: turn.ApplyAll([]geometry.Point{pt(-110, 42), pt(18, 42)}), Both: true},
			{Points: []geometry.Point{pt(0, 130), pt(0, 152)}},
		},
		Labels: []templates.Label{
			at("blade, 18 mm high", blade[3], blade[2]), at("mitre gauge", gauge[0], gauge[1]),
			at("stop", geometry.Bounds(stop...).Centre(), geometry.Bounds(stop...).Centre()),
			at("97.35", turn.Apply(pt(-110, 42)), turn.Apply(pt(18, 42))),
			at("top down", turn.Apply(pt(30, 16)), turn.Apply(pt(150, 16))),
		},
	}
	for _, s := range geometry.Hatch(box(-30, 0, 0, 32), measure.Radians(70), 4) {
		setup.Strokes = append(setup.Strokes, line(templates.Waste, s.A, s.B))
	}
	bar := func(x0, y0, x1, y1 float64) []geometry.Point { return geometry.Box(x0, y0, x1, y1).Corners() }
	after := templates.Picture{
		Heading: "after this card", NoScale: true,
		Areas:   []templates.Area{{Tone: templates.Light, Points: bar(0, 0, 300, 32)}, {Tone: templates.White, Points: bar(240, 16, 270, 32)}},
		Strokes: []templates.Stroke{line(templates.Cut, geometry.Closed(bar(0, 0, 300, 32))...), line(templates.Cut, geometry.Closed(bar(240, 16, 270, 32))...)},
		Arrows:  []templates.Arrow{{Points: geometry.Arc(pt(150, 40), 30, math.Pi, 0)}},
	}
	return templates.Card{
		Number: 12, Heading: "Laps, both ends",
		Ticks: []templates.Tick{{Text: "stretchers, low", Boxes: 3}, {Text: "stretchers, tall", Boxes: 3}, {Text: "spare", Boxes: 2}},
		Setup: []templates.Picture{setup}, After: []templates.Picture{after},
		Figures: []templates.Reading{
			{Name: "gauge", Value: "30° off square", Write: true}, {Name: "blade", Value: "18 mm", Write: true},
			{Name: "stop", Value: "97.35 mm", Write: true}, {Name: "spacer", Value: "28.64 mm", Write: true},
		},
		Text: []string{
			"Leg ends first, top down: all inner shoulders, then with the spacer all outer ones, then the rest between in passes.",
			"Tumble each stretcher end over end and do its plain end.",
		},
		Test:      "two stretchers cross at 60° and come flush.",
		Caution:   "The guard is off for this cut: a hold-down keeps the part, hands stay behind the gauge.",
		Templates: []templates.View{{Part: "lap", Face: "wrap-round"}},
	}
}

// drawCard returns a card of any words, figures and pictures.
func drawCard(t *rapid.T, number int) templates.Card {
	word := func(most int) string {
		return rapid.StringMatching(fmt.Sprintf(`[a-z]{1,%d}( [a-z0-9.°]{1,12}){0,%d}`, 12+most/4, most)).Draw(t, "words")
	}
	picture := func(p templates.Picture) []templates.Picture {
		stretch := geometry.Scale(rapid.Float64Range(0.1, 9).Draw(t, "wide"), rapid.Float64Range(0.1, 4).Draw(t, "high"))
		for i := range p.Strokes {
			p.Strokes[i].Points = stretch.ApplyAll(p.Strokes[i].Points)
		}
		for i := range p.Areas {
			p.Areas[i].Points = stretch.ApplyAll(p.Areas[i].Points)
		}
		p.Labels, p.Arrows = nil, nil
		return slices.Repeat([]templates.Picture{p}, rapid.IntRange(0, 2).Draw(t, "pictures"))
	}
	c := sawCard()
	c.Number, c.Heading = number, word(8)
	c.Setup, c.After = picture(c.Setup[0]), picture(c.After[0])
	c.Ticks, c.Figures, c.Text, c.Test, c.Caution = nil, nil, nil, "", ""
	for range rapid.IntRange(0, 4).Draw(t, "ticks") {
		c.Ticks = append(c.Ticks, templates.Tick{Text: word(4), Boxes: rapid.IntRange(1, 60).Draw(t, "boxes")})
	}
	for range rapid.IntRange(0, 6).Draw(t, "figures") {
		c.Figures = append(c.Figures, templates.Reading{Name: word(3), Value: word(3), Write: rapid.Bool().Draw(t, "write")})
	}
	for range rapid.IntRange(0, 3).Draw(t, "sentences") {
		c.Text = append(c.Text, word(25))
	}
	if rapid.Bool().Draw(t, "tested") {
		c.Test, c.Caution = word(12), word(20)
	}
	return c
}

// said returns all words of a card, letter by letter.
func said(c templates.Card) string {
	out := fmt.Sprint(c.Number) + c.Heading + strings.Join(c.Text, "") + c.Test + c.Caution
	for _, x := range c.Ticks {
		out += x.Text
	}
	for _, f := range c.Figures {
		out += f.Name + f.Value
	}
	return out
}

// Whatever is on a card stands in its frame, says every letter and ticks every box, and
// no line runs through a letter, on sheets of any size.
func TestCardKeepsItsFrame(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c := drawCard(t, rapid.IntRange(1, 99).Draw(t, "number"))
		most := geometry.Pt(rapid.Float64Range(116, 290).Draw(t, "width"), rapid.Float64Range(240, 400).Draw(t, "height"))
		k, ok := layCard(c, most, 1, 0, newHangings())
		if !ok {
			return // it is set as words
		}
		if k.size.X != most.X || k.size.Y > most.Y {
			t.Fatalf("a card of %.2f on a sheet of %.2f", k.size, most)
		}
		n := &pen{}
		at := geometry.Pt(20, 500)
		k.draw(n, at, nil)
		frame := geometry.Box(at.X, at.Y-k.size.Y, at.X+k.size.X, at.Y).Offset(1e-6)
		text := ""
		for _, x := range n.page.Texts {
			if !frame.Holds(geometry.Bounds(letters(x)...)) || x.Height < small {
				t.Fatalf("%q, %.1f mm high, is outside or small", x.String, x.Height)
			}
			text += x.String
		}
		boxes := 0
		for _, s := range n.page.Strokes {
			b := geometry.Bounds(s.Points...)
			if !frame.Holds(b) {
				t.Fatalf("a line in %.2f is outside %.2f", b, frame)
			}
			if s.Line == tableLine && math.Abs(b.Width()-tickSide) < 1e-6 {
				boxes++
			}
		}
		for _, a := range n.page.Areas {
			if !frame.Holds(geometry.Bounds(a.Points...)) {
				t.Fatalf("an area of %.2f is outside", a.Points)
			}
		}
		if s := struck(n.page); len(s) > 0 {
			t.Fatalf("struck: %q", s)
		}
		for _, x := range c.Ticks {
			boxes -= x.Boxes
		}
		if boxes != 0 {
			t.Fatalf("%d boxes too many", boxes)
		}
		want := said(c)
		for _, r := range "abcdefghijklmnopqrstuvwxyz0123456789." {
			if n := strings.Count(want, string(r)); strings.Count(text, string(r)) < n {
				t.Fatalf("%c stands %d times, want %d", r, strings.Count(text, string(r)), n)
			}
		}
	})
}

// A name of one letter stands above a value that leaves no room beside it.
func TestShortNameBesideALongValue(t *testing.T) {
	c := templates.Card{Number: 1, Heading: "a", Figures: []templates.Reading{{Name: "a", Value: "aaaaaaaaaa ...00000"}}}
	width := lettering.Width(c.Figures[0].Value, figureHigh) + 0.5
	k := &card{Card: c, hanging: newHangings()}
	k.figures(0, 0, width)
	n := &pen{}
	n.words(&k.words, geometry.Pt(20, 100))
	if s := struck(n.page); len(s) > 0 {
		t.Errorf("struck: %q", s)
	}
}

// Words to be ticked off that are longer than a narrow card is wide are broken.
func TestLongWordsToTickOff(t *testing.T) {
	c := templates.Card{Number: 1, Heading: "a", Ticks: []templates.Tick{{Text: strings.Repeat("spare stretchers ", 6), Boxes: 2}}}
	k := &card{Card: c, size: geometry.Pt(80, 100), hanging: newHangings()}
	k.head()
	for _, x := range k.words.Texts {
		if right := geometry.Bounds(letters(x)...).Max.X; right > k.size.X-cardEdge {
			t.Errorf("%q ends at %.1f of %.1f", x.String, right, k.size.X)
		}
	}
	if len(k.boxes) != 2 {
		t.Errorf("%d boxes, want 2", len(k.boxes))
	}
}

// Cards come in order, each whole, above all else on sheets that follow one another; and
// every figure is read back from the file.
func TestCardsInOrder(outer *testing.T) {
	rapid.Check(outer, func(t *rapid.T) {
		l := DefaultLayout(measure.Millimetre, papers()[rapid.SampledFrom([]int{0, 3}).Draw(t, "paper")])
		section := templates.Section{Heading: "laps", Panels: []templates.Panel{{Heading: "figures", Text: []string{"words"}}}}
		want := ""
		for i := range rapid.IntRange(1, 7).Draw(t, "cards") {
			section.Cards = append(section.Cards, drawCard(t, i+1))
			for _, f := range section.Cards[i].Figures {
				want += f.Value
			}
		}
		for range rapid.IntRange(0, 4).Draw(t, "drawings") {
			section.Drawings = append(section.Drawings, boxOutline(rapid.Float64Range(20, 160).Draw(t, "w"), rapid.Float64Range(20, 200).Draw(t, "h")))
		}
		job := templates.Job{Name: "job", Title: "job", Sections: []templates.Section{section}}
		if rapid.Bool().Draw(t, "behind") {
			job.Sections = append([]templates.Section{{Heading: "cover", Panels: section.Panels}}, job.Sections...)
		}
		p := must(Lay(job, l))(t)
		next, last := 1, -1
		for i, s := range p.sheets {
			low, others := 0.0, math.Inf(1)
			var before placed
			for _, b := range s.blocks {
				if b.card == nil {
					if !b.first && b.panel == nil {
						others = min(others, b.at.Y)
					}
					continue
				}
				beside := before.card != nil && b.at.Y == before.at.Y && b.at.X >= before.at.X+before.size.X+gap
				if b.card.Number != next || b.at.Y < low && !beside || last >= 0 && i > last+1 {
					t.Fatalf("card %d on sheet %d, want %d", b.card.Number, i+1, next)
				}
				next, last, low, before = next+1, i, b.at.Y+b.size.Y, b
			}
			if others < low && s.blocks[0].card != nil {
				t.Fatalf("sheet %d has a drawing above a card", i+1)
			}
		}
		doc := p.Document()
		text := ""
		for i, pg := range doc.Pages {
			if clear := geometry.Box(0, 0, pg.Width, pg.Height).Offset(0.2 - l.Margin); !clear.Holds(inked(doc, pg)) {
				t.Fatalf("sheet %d has ink outside its margin", i+1)
			}
		}
		if rapid.IntRange(0, 9).Draw(t, "read") > 0 {
			return
		}
		for _, pg := range readPDF(outer, doc).Pages {
			for _, x := range pg.Texts {
				text += x.String
			}
		}
		for _, r := range "abcdefghijklmnopqrstuvwxyz0123456789" {
			if n := strings.Count(want, string(r)); strings.Count(text, string(r)) < n {
				t.Fatalf("%c is read %d times, want %d", r, strings.Count(text, string(r)), n)
			}
		}
	})
}

// Written and read back, a set-up stands as it is drawn: its blade as far from its stop
// as the figure says, at the scale that is stated; and the card names the sheet of its
// template.
func TestCardReadBack(t *testing.T) {
	lap := templates.Drawing{View: templates.View{Part: "lap", Face: "wrap-round"}, Name: "lap", Strokes: []templates.Stroke{
		{Points: geometry.Closed(geometry.Box(0, 0, 150, 200).Corners())}}}
	for _, paper := range []Paper{papers()[0], papers()[3]} {
		p, err := Lay(templates.Job{Name: "job", Title: "job", Sections: []templates.Section{
			{Heading: "cover", Panels: []templates.Panel{{Heading: "x", Text: []string{"words"}}}},
			{Heading: "laps", Cards: []templates.Card{sawCard()}, Drawings: []templates.Drawing{lap}},
		}}, DefaultLayout(measure.Millimetre, paper))
		if err != nil {
			t.Fatal(err)
		}
		doc := p.Document()
		pg := readPDF(t, doc).Pages[1]
		if s := struck(doc.Pages[1]); len(s) > 0 {
			t.Errorf("%s: struck: %q", paper.Name, s)
		}
		scale, sheet := 0.0, false
		for _, x := range pg.Texts {
			fmt.Sscanf(x.String, "scale 1:%g", &scale)
			sheet = sheet || x.String == "Template: sheet 3"
		}
		if scale == 0 || !sheet {
			t.Fatalf("%s: scale 1:%g, sheet of the template said: %t", paper.Name, scale, sheet)
		}
		// The dark areas are the stop and the blade, in this order.
		var dark [][]geometry.Point
		for _, a := range pg.Areas {
			if math.Abs(a.Gray-grays[templates.Dark]) < 0.01 {
				dark = append(dark, a.Points)
			}
		}
		if len(dark) != 2 {
			t.Fatalf("%s: %d dark areas", paper.Name, len(dark))
		}
		// Along the fence from the corner of the stop at the part to the near side of the
		// blade: 110 mm less half the kerf and the way from the corner to the blade's line.
		corner, blade := dark[0][1], geometry.Bounds(dark[1]...)
		turn := measure.Radians(30)
		along := geometry.Polar(1, turn)
		corner = corner.Add(along.Perp().Mul(2 / scale)) // the stop reaches 2 mm below the fence
		if got := (blade.Min.X - corner.X) / along.X * scale; math.Abs(got-(110-1.6/along.X)) > 0.02 {
			t.Errorf("%s: the blade is %.3f mm from the stop along the fence, want %.3f", paper.Name, got, 110-1.6/along.X)
		}
		if w := blade.Width() * scale; math.Abs(w-3.2) > 0.02 {
			t.Errorf("%s: a kerf of %.3f mm", paper.Name, w)
		}
	}
}

// However a caption breaks, its scale stays in one line.
func TestAScaleIsNotBroken(t *testing.T) {
	p := sawCard().Setup[0]
	for p.Heading = "fence"; len(p.Heading) < 60; p.Heading += "s" {
		v := newView(p, 1).onCard(90, 1, cardAirs[0]).captioned(90)
		last, scale := v.caption[len(v.caption)-1], say(cardScale, 1/v.factor)
		if !strings.HasSuffix(last, scale) {
			t.Errorf("%s: the last line is %q, want %q whole", p.Heading, last, scale)
		}
	}
}

// A drawing of two views is called for by either.
func TestADrawingOfTwoViews(t *testing.T) {
	d := templates.Drawing{View: templates.View{Part: "angle-75"}, Also: templates.View{Part: "angle-80"}}
	at := place{drawing: &tiling{Drawing: d}}
	for part, want := range map[measure.ID]bool{"angle-75": true, "angle-80": true, "angle-60": false} {
		if got := at.shows(templates.View{Part: part}); got != want {
			t.Errorf("%s: %t, want %t", part, got, want)
		}
	}
}

// A picture that sets something out is called for as a drawing is.
func TestACardNamesTheSheetOfAPicture(t *testing.T) {
	c := sawCard()
	picture := templates.Picture{Heading: "two points", NoScale: true, View: c.Templates[0], Strokes: []templates.Stroke{
		{Points: geometry.Closed(geometry.Box(0, 0, 60, 80).Corners())}}}
	other := picture
	other.View = templates.View{Part: "leg"}
	for want, pictures := range map[string][]templates.Picture{"Template: sheet 3": {picture}, "": {other}} {
		p, err := Lay(templates.Job{Name: "job", Title: "job", Sections: []templates.Section{
			{Heading: "laps", Cards: slices.Repeat([]templates.Card{c}, 3)}, {Heading: "points", Pictures: pictures},
		}}, DefaultLayout(measure.Millimetre, papers()[0]))
		if err != nil {
			t.Fatal(err)
		}
		said := 0
		for _, pg := range p.Document().Pages {
			for _, x := range pg.Texts {
				if strings.HasPrefix(x.String, "Template") {
					said++
					if x.String != want {
						t.Errorf("%q, want %q", x.String, want)
					}
				}
			}
		}
		if said != map[bool]int{true: 3}[want != ""] {
			t.Errorf("%d cards name a sheet", said)
		}
	}
}

// Under 5 mm two heads would meet: they stand outside, and still point to where the
// distance ends.
func TestHeadsOfAShortDistanceStandOutside(t *testing.T) {
	for _, c := range []struct{ long, beyond float64 }{{4.9, 2.4}, {0.5, 2.4}, {5, -2.4}} {
		n := &pen{}
		n.span(label.Span{Line: geometry.Segment{A: geometry.Pt(10, 0), B: geometry.Pt(10+c.long, 0)}})
		for i, tip := range []geometry.Point{{X: 10}, {X: 10 + c.long}} {
			out := 2*float64(i) - 1
			head := n.page.Areas[i].Points
			if head[0] != tip || math.Abs(head[1].X-tip.X-out*c.beyond) > 1e-9 || math.Abs(geometry.Area(head)) < 0.9 {
				t.Errorf("%.1f mm long: a head %.3f at %.3f", c.long, head, tip)
			}
			if b := geometry.Bounds(n.page.Strokes[0].Points...); b.Min.X > head[1].X || b.Max.X < head[1].X {
				t.Errorf("%.1f mm long: no line behind the head at %.3f", c.long, tip)
			}
		}
	}
}

// Heads of arrows have one size on paper, and point to where the arrow ends.
func TestArrowHeads(t *testing.T) {
	for _, reduced := range []float64{1, 5, 20} {
		n := &pen{}
		move := geometry.Scale(1/reduced, 1/reduced)
		n.arrow(templates.Arrow{Points: []geometry.Point{{X: 0, Y: 0}, {X: 300, Y: 400}}, Both: true}, move, &label.Placer{})
		if len(n.page.Areas) != 2 {
			t.Fatalf("%d heads", len(n.page.Areas))
		}
		for i, tip := range []geometry.Point{{X: 300 / reduced, Y: 400 / reduced}, {}} {
			head := n.page.Areas[i].Points
			if head[0].Distance(tip) > 1e-9 || math.Abs(geometry.Area(head)) > 1 || math.Abs(geometry.Area(head)) < 0.9 {
				t.Errorf("1:%g: a head %.3f of %.3f mm² at %.3f", reduced, head, geometry.Area(head), tip)
			}
		}
	}
}

// A picture without scale keeps a size however much its labels take beside it.
func TestASmallPictureBetweenItsLabels(t *testing.T) {
	p := templates.Picture{NoScale: true, Strokes: []templates.Stroke{{Points: geometry.Closed(geometry.Box(0, 0, 30, 60).Corners())}}}
	for _, share := range cardShares {
		if v := newView(p, 1).onCard(afterWide, share, geometry.Pt(20, 3)); v.factor <= 0 {
			t.Errorf("at %v of its size it is drawn at %v", share, v.factor)
		}
	}
}
