package render

import (
	"math"
	"os"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"rodsheet/geometry"
	"rodsheet/geometry/measure"
	"rodsheet/render/page"
	"rodsheet/render/pdf"
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

// TestShowCards writes what it lays where CARDS says, to be looked at.
func TestShowCards(t *testing.T) {
	name := os.Getenv("CARDS")
	if name == "" {
		t.Skip()
	}
	plain := sawCard()
	plain.Number, plain.Setup, plain.After, plain.Templates = 13, nil, nil, nil
	two := sawCard()
	two.Number, two.Setup, two.After = 14, append(two.Setup, two.Setup...), nil
	three := sawCard()
	three.Number, three.Figures = 15, append(three.Figures, templates.Reading{Name: "stop, the tall size, from the nearest edge of the blade", Value: "112.4 mm"})
	job := templates.Job{Name: "cards", Title: "cards", Sections: []templates.Section{
		{Heading: "a", Panels: []templates.Panel{{Heading: "x", Text: []string{"words"}}}},
		{Heading: "laps", Cards: []templates.Card{sawCard(), plain, two, three}, Drawings: []templates.Drawing{
			{View: templates.View{Part: "lap", Face: "wrap-round"}, Name: "lap", Strokes: []templates.Stroke{{Points: geometry.Closed(geometry.Box(0, 0, 60, 40).Corners())}}},
		}}}}
	p, _ := ParsePaper(os.Getenv("PAPER"), measure.Millimetre)
	plan, err := Lay(job, DefaultLayout(measure.Millimetre, p))
	if err != nil {
		t.Fatal(err)
	}
	f, err := os.Create(name)
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	if err := pdf.Write(f, plan.Document()); err != nil {
		t.Fatal(err)
	}
	_ = slices.Contains[[]string]
	_ = strings.Contains
	_ = rapid.Check
	_ = page.Page{}
}
