package render

import (
	"fmt"
	"math"

	"rodsheet/geometry"
	"rodsheet/geometry/joint"
	"rodsheet/geometry/measure"
	"rodsheet/templates"
)

// views returns a plan, an elevation and a view from a corner of a table so
// wide and high in mm, with labels.
func views(wide, high float64) []templates.Picture {
	plan := templates.Picture{Heading: "plan"}
	elevation := templates.Picture{Heading: "elevation of one side"}
	corner := templates.Picture{Heading: "from above at a corner", NoScale: true}
	stroke := func(p *templates.Picture, role templates.Role, points ...geometry.Point) {
		p.Strokes = append(p.Strokes, templates.Stroke{Role: role, Points: points})
	}
	name := func(p *templates.Picture, text string, a, b geometry.Point) {
		p.Labels = append(p.Labels, templates.Label{Text: text, On: geometry.Segment{A: a, B: b}})
	}
	r := wide / 2
	stroke(&plan, templates.Outline, geometry.Arc(geometry.Pt(0, 0), r, 0, fullTurn)...)
	stroke(&plan, templates.Centre, geometry.Pt(-r-20, 0), geometry.Pt(r+20, 0))
	for i := range 3 {
		a := geometry.Polar(0.7*r, float64(i)*fullTurn/3+0.3)
		b := geometry.Polar(0.7*r, float64(i+1)*fullTurn/3+0.3)
		away := b.Sub(a).Unit().Perp().Mul(-28)
		stroke(&plan, templates.Hidden, a, b)
		stroke(&plan, templates.Hidden, a.Add(away), b.Add(away))
		name(&plan, fmt.Sprintf("stretcher %d", i+1), a, b)
	}
	name(&plan, "top", geometry.Pt(r, 0), geometry.Pt(r, 0))
	stroke(&elevation, templates.Cut, geometry.Closed(geometry.Box(-r, high-12, r, high).Corners())...)
	for _, s := range []float64{-1, 1} {
		foot := s * 0.45 * wide
		stroke(&elevation, templates.Outline, geometry.Pt(s*0.3*wide, high-12), geometry.Pt(foot, 0), geometry.Pt(foot-s*38, 0), geometry.Pt(s*0.3*wide-s*38, high-12))
	}
	stroke(&elevation, templates.Outline, geometry.Closed(geometry.Box(-0.3*wide, high-60, 0.3*wide, high-24).Corners())...)
	for _, h := range geometry.Hatch(geometry.Box(-0.3*wide, high-60, 0.3*wide, high-24).Corners(), math.Pi/4, 20) {
		stroke(&elevation, templates.Waste, h.A, h.B)
	}
	stroke(&elevation, templates.Construction, geometry.Pt(-r-40, 0), geometry.Pt(-r-40, high))
	name(&elevation, measure.Length(high).Text(measure.Millimetre), geometry.Pt(-r-40, 0), geometry.Pt(-r-40, high))
	name(&elevation, "frame", geometry.Pt(0, high-42), geometry.Pt(0, high-42))
	iso := func(x, y, z float64) geometry.Point {
		return geometry.Pt((x-y)*0.866, z+(x+y)*0.35)
	}
	var rim, under []geometry.Point
	for k := range 61 {
		p := geometry.Polar(r, float64(k)*fullTurn/60)
		rim = append(rim, iso(p.X, p.Y, high))
		under = append(under, iso(p.X, p.Y, high-12))
	}
	stroke(&corner, templates.Outline, rim...)
	stroke(&corner, templates.Outline, under...)
	for i := range 3 {
		a, b := geometry.Polar(0.7*r, float64(i)*fullTurn/3+0.3), geometry.Polar(0.95*r, float64(i)*fullTurn/3+0.3)
		stroke(&corner, templates.Outline, iso(a.X, a.Y, high-12), iso(b.X, b.Y, 0))
		name(&corner, fmt.Sprintf("leg %d", i+1), iso(b.X, b.Y, 0), iso(b.X, b.Y, 0))
	}
	return []templates.Picture{plan, elevation, corner}
}

// settingsTable is a long ruled table with columns to write in.
func settingsTable(rows int) templates.Panel {
	p := templates.Panel{Heading: "settings, in working order", Ruled: true, Table: [][]string{
		{"no", "part", "work", "gauge", "tilt", "height", "stop", "spacer", "used", "done"}}}
	for i := range rows {
		if i%9 == 0 {
			p.Table = append(p.Table, []string{fmt.Sprintf("Operation %d: everything that is cut with one setting of the gauge, test pieces first", i/9+1)})
		}
		p.Table = append(p.Table, []string{fmt.Sprint(i + 1), "stretcher, plain end",
			"cross-cut the lap to half the depth, reference edge to the fence, face up; tumble for the other end",
			"30° / 60°", "0°", "18 mm", fmt.Sprintf("%.1f mm", 123.4+float64(i)), "29.1 mm", "", ""})
	}
	p.Text = []string{
		"Isolate the power before setting. Use the guards and read the machine's manual. Feather boards, jigs and push blocks for small or angled parts.",
		"Never trap an offcut between fence and blade.",
	}
	return p
}

// samplePack is a pack as a whole piece has it: a cover, lists, templates and
// the figures.
func samplePack(wide, high float64, u measure.Unit, l Layout) []templates.Section {
	sizes := templates.Panel{Heading: "main sizes", Table: [][]string{
		{"height", measure.Length(high).Text(u)}, {"width of the top", measure.Length(wide).Text(u)},
		{"stretcher", measure.Length(28).Text(u)}, {"leg", measure.Length(38).Text(u)},
		{"splay of the legs", "12.00°"}, {"weight", "4.2 kg"}},
		Text: []string{"Three legs never rock; they tip sooner than four."}}
	cuts := templates.Panel{Heading: "cut list", Ruled: true, Table: [][]string{
		{"part", "count", "finished", "rough", "wood"},
		{"stretcher", "3", "412.5 × 28 × 36 mm", "430 × 32 × 40 mm", "ash, straight grain"},
		{"leg", "3", "455 × 38 × 28 mm", "470 × 42 × 32 mm", "ash"},
		{"spare leg", "1", "", "470 × 42 × 32 mm", "ash"},
	}, Text: []string{"Wood, with 20 % waste: 0.0041 m³."}}
	taper, err := templates.Taper(joint.Taper{Length: 640, Top: 45, Foot: 28, Start: 110}, templates.Setting{Unit: u, Clear: l.Clear(), Full: true})
	if err != nil {
		panic(err)
	}
	drawn := taper.Sections[0]
	drawn.Heading = "Templates"
	return []templates.Section{
		{Heading: "Cover", Pictures: views(wide, high), Panels: []templates.Panel{sizes}},
		{Heading: "Cut list", Panels: []templates.Panel{cuts}},
		{Heading: "Settings", Panels: []templates.Panel{settingsTable(30)}},
		drawn,
		{Heading: "Top outline", Drawings: []templates.Drawing{roundOutline(wide)}},
	}
}

// jobOf returns a job of the sections.
func jobOf(sections ...templates.Section) templates.Job {
	return templates.Job{Name: "job", Title: "job", Sections: sections}
}
