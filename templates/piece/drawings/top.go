package drawings

import (
	"math"

	"rodsheet/geometry"
	"rodsheet/geometry/measure"
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

// topJob returns what sets out the top and the pads below it: figures, and on paper
// the corners that differ or, of a round top, a wedge from pad to pad. The ring below
// is left to its plan: its lines would take sheets that hold nothing else.
func topJob(p piece.Piece, s templates.Setting) (templates.Section, error) {
	switch {
	case p.Design.Top.Kind == design.NoTop:
		return templates.Section{}, nil
	case s.Full:
		return templates.Section{Drawings: []templates.Drawing{wholeTop(p)}}, nil
	case p.Design.Top.Outline == design.RoundTop:
		return roundTop(p, s), nil
	}
	job := templates.Section{
		Pictures: []templates.Picture{topPlan(p)},
		Drawings: templates.TopCorners(p.TopShape(), topGrain(p), s),
		Panels:   []templates.Panel{templates.TopCornerTable(p.TopShape(), p.Design.Unit)},
	}
	if panel, ok := padPanel(p); ok {
		job.Panels = append(job.Panels, panel)
	}
	return job, nil
}

// topGrain returns the direction of the grain of the top in plan, the zero Point for
// one of glass.
func topGrain(p piece.Piece) geometry.Point {
	if p.Design.Top.Kind != design.WoodTop {
		return geometry.Point{}
	}
	return p.TopAlong()
}

// padCentres returns where the pads are below the top; none where there are none.
func padCentres(p piece.Piece) []geometry.Point {
	var out []geometry.Point
	if p.Design.Top.PadHeight() > 0 {
		for i := range p.Frame.Ring.Sides {
			out = append(out, p.Frame.Ring.Place(i, 0).Apply(p.PadCentre()))
		}
	}
	return out
}

// topPlan shows the top with its pads and its grain.
func topPlan(p piece.Piece) templates.Picture {
	out := templates.TopPlan(p.TopShape())
	var d templates.Drawing
	for i, c := range padCentres(p) {
		circle(&d, templates.Hidden, c, p.Design.Top.Pads.Diameter/2)
		d.LabelPoint(c, tag("pad-n", i+1))
	}
	if along := topGrain(p); along != (geometry.Point{}) {
		box := geometry.Bounds(p.TopCorners()...)
		long := box.Width() / 4
		middle := box.Min.Lerp(box.Max, 0.5).Add(along.Perp().Mul(long / 3))
		a, b := middle.Sub(along.Mul(long/2)), middle.Add(along.Mul(long/2))
		out.Arrows = append(out.Arrows, templates.Arrow{Points: []geometry.Point{a, b}})
		d.LabelLine(a, b, tag("grain"))
	}
	out.Strokes = append(out.Strokes, d.Strokes...)
	out.Labels = append(out.Labels, d.Labels...)
	return out
}

// roundTop returns the figures of a round top and a wedge of paper that leads from one
// of its supports to the next.
func roundTop(p piece.Piece, s templates.Setting) templates.Section {
	return templates.Section{
		Panels:   []templates.Panel{roundPanel(p)},
		Drawings: []templates.Drawing{wedge(p, s)},
	}
}

// supports returns where a top rests, one place on each stretcher: its pads or, where
// it lies on the ring itself, the middles of the stretchers.
func supports(p piece.Piece) (places []geometry.Point, pads bool) {
	if at := padCentres(p); len(at) > 0 {
		return at, true
	}
	r := p.Frame.Ring
	for i := range r.Sides {
		places = append(places, r.Place(i, 0).Apply(geometry.Pt(0, r.Width/2)))
	}
	return places, false
}

// wedge is a sector about the centre of the top between two supports, as large as one
// sheet holds.
func wedge(p piece.Piece, s templates.Setting) templates.Drawing {
	places, pads := supports(p)
	face, edge, across := measure.ID("wedge-of-ring"), measure.ID("mid-from-centre"), measure.ID("from-mid-to-mid")
	if pads {
		face, edge, across = "wedge", "pad-from-centre", "from-pad-to-pad"
	}
	d := named(templates.Drawing{Free: true}, "top", face)
	out, half := places[0].Norm(), math.Pi/float64(p.Frame.Ring.Sides)
	edges := func(r float64) [2]geometry.Point {
		return [2]geometry.Point{geometry.Polar(r, math.Pi/2-half), geometry.Polar(r, math.Pi/2+half)}
	}
	unit := geometry.Bounds(append(geometry.Arc(geometry.Point{}, 1, math.Pi/2-half, math.Pi/2+half), geometry.Point{})...)
	r := math.Min(out, math.Min(s.Clear.X, s.Clear.Y)/math.Max(unit.Width(), unit.Height()))
	ends := edges(r)
	d.Line(templates.Cut, ends[0], geometry.Point{}, ends[1])
	d.Line(templates.Construction, geometry.Arc(geometry.Point{}, r, math.Pi/2-half, math.Pi/2+half)...)
	for _, end := range ends {
		d.LabelLine(geometry.Point{}, end, tag(edge, p.MM(out)))
	}
	d.LabelPoint(geometry.Point{}, tag("centre-of-top"))
	d.LabelPoint(geometry.Pt(0, r/3), tag(across, p.Say(measure.Angle(2*half))))
	if along := topGrain(p); along != (geometry.Point{}) {
		// The first support stands on the edge to the right.
		along = along.Unit()
		turn := geometry.Rotate(math.Pi/2 - half - math.Atan2(places[0].Y, places[0].X))
		grainArrow(&d, geometry.Pt(0, 2*r/3), turn.Apply(along), r/4)
	}
	return d
}

// wholeTop is the outline of the top at full size, a quarter of a round one, with the
// places of the pads.
func wholeTop(p piece.Piece) templates.Drawing {
	if p.Design.Top.Outline == design.RoundTop {
		return quarterTop(p)
	}
	d := named(templates.TopOutline(p.TopShape(), p.Design.Unit), "top", "from-above")
	for i := range p.Frame.Ring.Sides {
		words := tag("pad-below-top")
		if p.Design.Top.Outline == design.FreeOutline { // it matters which
			words = tag("pad-on-below", i+1)
		}
		padBelow(p, &d, p.Frame.Ring.Place(i, 0).Apply(p.PadCentre()), words)
	}
	if along := topGrain(p); along != (geometry.Point{}) {
		c := geometry.Bounds(p.TopCorners()...)
		grainArrow(&d, c.Min.Lerp(c.Max, 0.5), along, math.Min(c.Width(), c.Height())/3)
	}
	return d
}

// quarterTop is a quarter of a round top: the whole would take four times the
// sheets and say no more.
func quarterTop(p piece.Piece) templates.Drawing {
	r := p.TopRadius()
	d := named(templates.Drawing{Free: true}, "top", "quarter")
	d.Line(templates.Cut, geometry.Arc(geometry.Point{}, r, 0, math.Pi/2)...)
	d.LabelPoint(geometry.Polar(r, math.Pi/4), tag("rim-radius", p.MM(r)))
	for _, end := range []geometry.Point{geometry.Pt(r, 0), geometry.Pt(0, r)} {
		d.Named(templates.Centre, geometry.Point{}, end, tag("centre-line"))
	}
	d.LabelPoint(geometry.Point{}, tag("centre-of-top"))
	if along := topGrain(p); along != (geometry.Point{}) {
		grainArrow(&d, geometry.Polar(r/2, math.Pi/8), along, r/4)
	}
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
