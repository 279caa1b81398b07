package drawings

import (
	"rodsheet/geometry"
	"rodsheet/geometry/solid"
	"rodsheet/templates"
	"rodsheet/templates/piece"
)

// planJob returns the ring at full size, from above, to lay the parts on: the
// stretchers with their laps, and of the legs what is let into them.
func planJob(p piece.Piece, _ templates.Setting) (templates.Section, error) {
	d := named(templates.Drawing{Free: true}, "plan")
	head := p.Leg().Cut(solid.Plane{N: solid.V(0, 0, -1)}) // down to the underside of the ring
	visible, hidden := solid.Project(p.Around(p.Place, p.Stretcher(), head), solid.Plan())
	lines(&d, templates.Cut, visible)
	lines(&d, templates.Hidden, hidden)
	for i := range p.Frame.Ring.Sides {
		planLabels(p, &d, i)
	}
	cross(&d, geometry.Point{}, 10)
	d.LabelPoint(geometry.Point{}, tag("centre-of-ring"))
	return templates.Section{Drawings: []templates.Drawing{d}}, nil
}

// planLabels names stretcher i, its sizes and what passes over at its leg end.
func planLabels(p piece.Piece, d *templates.Drawing, i int) {
	r := p.Frame.Ring
	n := r.Sides
	at := func(x, y float64) geometry.Point { return r.Place(i, 0).Apply(geometry.Pt(x, y)) }
	half := r.Inside / 2
	d.LabelLine(at(-half, r.Width), at(half, r.Width), tag("stretcher-n", i+1))
	d.LabelLine(at(-half, 0), at(half, 0), tag("corner-to-corner", p.MM(r.Inside)))
	d.Line(templates.Centre, at(0, -6), at(0, r.Width+6))
	d.LabelPoint(at(0, -6), tag("mid-length"))
	// The neighbour whose plain end crosses here is the one before.
	before := (i+n-1)%n + 1
	over, under := before, i+1
	if !p.Frame.Over {
		over, under = under, over
	}
	inner, outer := r.Shoulders(r.Width / 2)
	d.LabelPoint(at((inner+outer)/2, r.Width/2), tag("passes-over", over, under))
	head := (p.Frame.Leg.Back(0) + p.Frame.Leg.StretcherSide(0)) / 2
	d.LabelPoint(at(head, r.Width/2), tag("leg-n", i+1))
	if p.Design.Top.PadHeight() > 0 {
		c := at(p.PadCentre().X, p.PadCentre().Y)
		circle(d, templates.Construction, c, p.Design.Top.Pads.Diameter/2)
		d.LabelPoint(c, tag("pad"))
	}
}
