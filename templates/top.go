package templates

import (
	"math"

	"rodsheet/geometry"
	"rodsheet/geometry/joint"
	"rodsheet/geometry/measure"
	"rodsheet/templates/wording"
)

// Top returns what sets out a table top: figures, and where its edges are straight a
// plan and a sheet of each corner that differs. A full setting draws the outline at
// full size, which may be turned on the sheets as suits them: it has no hand. The
// error is a *measure.BoundError.
func Top(t joint.Top, s Setting) (Job, error) {
	if err := t.Check(); err != nil {
		return Job{}, err
	}
	top := topTemplate{t, s}
	figures := top.figures()
	section := Section{Panels: []Panel{{Heading: say(topHeading), Table: figureTable(figures, s.Unit)}}}
	switch {
	case s.Full:
		section.Drawings = []Drawing{TopOutline(t, s.Unit)}
	case t.Diameter == 0:
		section.Pictures = []Picture{TopPlan(t)}
		section.Drawings = TopCorners(t, geometry.Point{}, s)
		section.Panels = append(section.Panels, TopCornerTable(t, s.Unit))
	}
	section.Panels = append(section.Panels, Panel{Heading: say(topWorkHeading), Text: top.work(section.Drawings)})
	return Job{Name: "top", Title: say(topTitle, top.size()), Sections: []Section{section}, Figures: figures}, nil
}

// A topTemplate is a top about to be drawn.
type topTemplate struct {
	joint.Top
	Setting
}

// size says how large the top is.
func (t topTemplate) size() string {
	if t.Diameter > 0 {
		return say(roundSize, t.length(t.Diameter))
	}
	size := t.Size()
	return say(overallSize, t.length(size.X), t.length(size.Y), t.asWorked())
}

// asWorked says that a size is that of the top whose corners are worked.
func (t topTemplate) asWorked() string {
	switch {
	case t.Clip > 0:
		return say(asClipped)
	case t.Round > 0:
		return say(asRounded)
	}
	return ""
}

// side returns the side to the sharp corners, where all are alike and it is not the size
// overall, as that of a square is.
func (t topTemplate) side() (mm float64, alike bool) {
	for i, c := range t.Corners {
		long := c.Distance(t.Corners[(i+1)%len(t.Corners)])
		if i > 0 && math.Abs(long-mm) > 1e-6 {
			return 0, false
		}
		mm = long
	}
	size := t.Size()
	square := math.Max(math.Abs(size.X-mm), math.Abs(size.Y-mm)) < 1e-6
	return mm, t.Diameter == 0 && !square
}

func (t topTemplate) figures() []Figure {
	size := t.Size()
	overall := func(id measure.ID, mm float64) Figure {
		return Figure{ID: id, Name: say(figureNames[id], t.asWorked()), Value: measure.Length(mm)}
	}
	figures := []Figure{overall("top.length", size.X), overall("top.width", size.Y)}
	if t.Diameter > 0 {
		figures = []Figure{figure("top.diameter", measure.Length(t.Diameter))}
	}
	if side, alike := t.side(); alike {
		figures = append(figures, figure("top.side", measure.Length(side)))
	}
	if t.Clip > 0 {
		figures = append(figures, figure("top.clip", measure.Length(t.Clip)))
	}
	if t.Round > 0 {
		figures = append(figures, figure("top.corner-radius", measure.Length(t.Round)))
	}
	return append(figures,
		figure("top.area", measure.Area(t.Area())),
		figure("top.rim", measure.Length(t.Perimeter())),
	)
}

// TopOutline draws the outline and, at its edge, the ends of its two centre
// lines. Drawn right across they would only keep sheets that hold nothing else.
// The top must have passed its Check.
func TopOutline(top joint.Top, u measure.Unit) Drawing {
	t := topTemplate{top, Setting{Unit: u}}
	outline := t.Outline()
	d := Drawing{Free: true}.of(View{Part: "top", Face: "outline"})
	d.Polygon(Cut, outline...)
	past := geometry.Bounds(outline...).Offset(1)
	for _, centre := range []geometry.Segment{
		{A: geometry.Pt(past.Min.X, 0), B: geometry.Pt(past.Max.X, 0)},
		{A: geometry.Pt(0, past.Min.Y), B: geometry.Pt(0, past.Max.Y)},
	} {
		if outside := geometry.CutOut(centre, outline); len(outside) == 2 {
			d.centreEnds(outside[0].B, outside[1].A)
		}
	}
	if t.Diameter > 0 {
		at := geometry.Polar(t.Diameter/2, math.Pi/4)
		d.LabelPoint(at, tag("radius", t.length(t.Diameter/2)))
		return d
	}
	for i, c := range t.Corners {
		next := t.Corners[(i+1)%len(t.Corners)]
		d.LabelLine(c, next, tag("side-of-top", t.length(c.Distance(next)), t.worked(sharpClipped, sharpRounded)))
	}
	return d
}

// worked says what is done to the corners, nothing where they stay sharp.
func (t topTemplate) worked(clipped, rounded wording.Text) string {
	switch {
	case t.Clip > 0:
		return say(clipped, t.length(t.Clip))
	case t.Round > 0:
		return say(rounded, t.length(t.Round))
	}
	return ""
}

// centreEnds draws both ends of a centre line that runs from a to b.
func (d *Drawing) centreEnds(a, b geometry.Point) {
	const most = 30.0
	in := b.Sub(a).Unit().Mul(math.Min(most, a.Distance(b)/3))
	for _, end := range []geometry.Segment{{A: a, B: a.Add(in)}, {A: b, B: b.Sub(in)}} {
		d.Named(Centre, end.A, end.B, tag("centre-line"))
	}
}
