package templates

import (
	"math"

	"rodsheet/geometry"
	"rodsheet/geometry/joint"
	"rodsheet/geometry/measure"
)

// Top returns the full-size outline of a table top, which may be turned on the
// sheets as suits them: it has no hand. The error is a *measure.BoundError.
func Top(t joint.Top, s Setting) (Job, error) {
	if err := t.Check(); err != nil {
		return Job{}, err
	}
	top := topTemplate{t, s.Unit}
	figures := top.figures()
	return Job{
		Name:  "top",
		Title: "Top, " + top.size(),
		Sections: []Section{{
			Drawings: []Drawing{TopOutline(t, "top, outline", s.Unit)},
			Panels: []Panel{
				{Heading: "top", Table: figureTable(figures, s.Unit)},
				{Heading: "order of work", Text: topWords()},
			},
		}},
		Figures: figures,
	}, nil
}

// A topTemplate is a top about to be drawn.
type topTemplate struct {
	joint.Top
	unit measure.Unit
}

func (t topTemplate) length(mm float64) string { return measure.Length(mm).Text(t.unit) }

// size says how large the top is.
func (t topTemplate) size() string {
	if t.Diameter > 0 {
		return t.length(t.Diameter) + " round"
	}
	size := t.Size()
	return t.length(size.X) + " × " + t.length(size.Y)
}

func (t topTemplate) figures() []Figure {
	size := t.Size()
	figures := []Figure{
		{"length", measure.Length(size.X)},
		{"width", measure.Length(size.Y)},
	}
	if t.Diameter > 0 {
		figures = []Figure{{"diameter", measure.Length(t.Diameter)}}
	}
	if t.Clip > 0 {
		figures = append(figures, Figure{"clipped off each side of a corner", measure.Length(t.Clip)})
	}
	if t.Round > 0 {
		figures = append(figures, Figure{"corner radius", measure.Length(t.Round)})
	}
	return append(figures,
		Figure{"area", measure.Area(t.Area())},
		Figure{"edge all round", measure.Length(t.Perimeter())},
	)
}

// TopOutline draws the outline and, at its edge, the ends of its two centre
// lines. Drawn right across they would only keep sheets that hold nothing else.
// The top must have passed its Check.
func TopOutline(top joint.Top, name string, u measure.Unit) Drawing {
	t := topTemplate{top, u}
	outline := t.Outline()
	d := Drawing{Name: name, Free: true}
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
		d.LabelPoint(at, "radius "+t.length(t.Diameter/2))
		return d
	}
	for i, c := range t.Corners {
		next := t.Corners[(i+1)%len(t.Corners)]
		d.LabelLine(c, next, "side "+t.length(c.Distance(next))+t.worked())
	}
	return d
}

// worked says that the sides are counted to the corners as they were.
func (t topTemplate) worked() string {
	switch {
	case t.Clip > 0:
		return " to the sharp corners, clipped " + t.length(t.Clip)
	case t.Round > 0:
		return " to the sharp corners, rounded " + t.length(t.Round)
	}
	return ""
}

// centreEnds draws both ends of a centre line that runs from a to b.
func (d *Drawing) centreEnds(a, b geometry.Point) {
	const most = 30.0
	in := b.Sub(a).Unit().Mul(math.Min(most, a.Distance(b)/3))
	for _, end := range []geometry.Segment{{A: a, B: a.Add(in)}, {A: b, B: b.Sub(in)}} {
		d.Line(Centre, end.A, end.B)
		d.LabelLine(end.A, end.B, "centre line")
	}
}

// topWords says how the outline is used.
func topWords() []string {
	return []string{
		"1. Strike both centre lines on the underside first and lay the taped pattern on them.",
		"2. A circle is better struck with a beam compass from the centre; the pattern proves it.",
		"3. Rough the edge 2 mm outside the line, then work to it.",
		"4. Glass is ordered by its figures, never cut from paper. All cutting and edge work comes before tempering.",
	}
}
