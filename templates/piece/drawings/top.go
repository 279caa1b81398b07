package drawings

import (
	"math"

	"rodsheet/geometry"
	"rodsheet/templates"
	"rodsheet/templates/piece"
	"rodsheet/templates/piece/design"
)

// padJob returns the place of a pad on its stretcher: the top, ring side
// towards the maker, with the lap of the leg end.
func padJob(p piece.Piece, _ templates.Setting) (templates.Section, error) {
	if p.Design.Top.PadHeight() == 0 {
		return templates.Section{}, nil
	}
	d := named(templates.Drawing{}, "pad", "stretcher-top")
	w, r, c := p.Frame.Ring.Width, p.Design.Top.Pads.Diameter/2, p.PadCentre()
	lap := p.Frame.Ring.Lap(p.Kerf).Corners()
	bounds := geometry.Bounds(append(lap, c.Sub(geometry.Pt(r, r)), c.Add(geometry.Pt(r, r)))...)
	from, to := bounds.Min.X-beyond/2, math.Min(bounds.Max.X+beyond/2, p.Frame.Leg.Back(0))
	for _, y := range []float64{0, w} {
		d.Line(templates.Outline, geometry.Pt(from, y), geometry.Pt(to, y))
	}
	d.LabelLine(geometry.Pt(from, 0), geometry.Pt(c.X, 0), tag("ring-side-reference"))
	d.LabelLine(geometry.Pt(from, w), geometry.Pt(c.X, w), tag("outer-side"))
	d.Line(templates.Centre, geometry.Pt(from, w/2), geometry.Pt(to, w/2))
	d.Line(templates.Centre, geometry.Pt(c.X, -4), geometry.Pt(c.X, w+4))
	circle(&d, templates.Cut, c, r)
	d.LabelPoint(c.Add(geometry.Polar(r, 3*math.Pi/4)), tag("pad-across", p.MM(2*r)))
	d.LabelPoint(geometry.Pt(c.X, w+4), tag("centre-from-mid", p.MM(c.X)))
	padLap(p, &d, lap)
	if inner := lap[0]; inner.X-c.X > 5 {
		d.Span(geometry.Pt(inner.X, 0), geometry.Pt(c.X, 0), tag("pad-to-lap", p.MM(inner.X-c.X)))
	}
	return templates.Section{Drawings: []templates.Drawing{d}}, nil
}

// padLap draws the shoulders of the lap beside the pad, hidden where the lap
// is on the underside.
func padLap(p piece.Piece, d *templates.Drawing, lap []geometry.Point) {
	role, inner, outer := templates.Outline, tag("inner-shoulder"), tag("outer-shoulder")
	if !p.Frame.Over {
		role, inner, outer = templates.Hidden, tag("inner-shoulder-below"), tag("outer-shoulder-below")
	}
	d.Line(role, lap[0], lap[3])
	d.Line(role, lap[1], lap[2])
	d.LabelLine(lap[0], lap[3], inner)
	d.LabelLine(lap[1], lap[2], outer)
}

// topJob returns the outline of the top with the places of the pads. The ring
// below is left to its plan: its lines would take sheets that hold nothing else.
func topJob(p piece.Piece, _ templates.Setting) (templates.Section, error) {
	switch {
	case p.Design.Top.Kind == design.NoTop:
		return templates.Section{}, nil
	case p.Design.Top.Outline == design.RoundTop:
		return templates.Section{Drawings: []templates.Drawing{quarterTop(p)}}, nil
	}
	d := named(templates.TopOutline(p.TopShape(), p.Design.Unit), "top", "from-above")
	for i := range p.Frame.Ring.Sides {
		words := tag("pad-below-top")
		if p.Design.Top.Outline == design.FreeOutline { // it matters which
			words = tag("pad-on-below", i+1)
		}
		padBelow(p, &d, p.Frame.Ring.Place(i, 0).Apply(p.PadCentre()), words)
	}
	return templates.Section{Drawings: []templates.Drawing{d}}, nil
}

// quarterTop is a quarter of a round top: the whole would take four times the
// sheets and say no more.
func quarterTop(p piece.Piece) templates.Drawing {
	r := p.TopRadius()
	d := named(templates.Drawing{Free: true}, "top", "quarter")
	d.Line(templates.Cut, geometry.Arc(geometry.Point{}, r, 0, math.Pi/2)...)
	d.LabelPoint(geometry.Polar(r, math.Pi/4), tag("rim-radius", p.MM(r)))
	for _, end := range []geometry.Point{geometry.Pt(r, 0), geometry.Pt(0, r)} {
		d.Line(templates.Centre, geometry.Point{}, end)
		d.LabelLine(geometry.Point{}, end, tag("centre-line"))
	}
	d.LabelPoint(geometry.Point{}, tag("centre-of-top"))
	out := p.Frame.Ring.Place(0, 0).Apply(p.PadCentre()).Norm()
	padBelow(p, &d, geometry.Polar(out, math.Pi/4),
		tag("pads-round", p.MM(out), p.Frame.Ring.Sides))
	return d
}

// padBelow draws a pad under the top, if there is one.
func padBelow(p piece.Piece, d *templates.Drawing, c geometry.Point, words templates.Tag) {
	if p.Design.Top.PadHeight() == 0 {
		return
	}
	r := p.Design.Top.Pads.Diameter / 2
	circle(d, templates.Hidden, c, r)
	cross(d, c, r+4)
	d.LabelPoint(c, words)
}
