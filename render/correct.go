package render

import (
	"math"

	"rodsheet/geometry"
	"rodsheet/render/page"
)

// A Correction undoes what a printer does to a sheet. The zero value corrects
// nothing.
type Correction struct {
	Printer string // its name
	// Upright takes a point of a page fed upright to where it has to be
	// written, in mm from the centre of the page: x across the feed, y along
	// it. It is linear.
	Upright geometry.Affine
	Text    string // what every sheet says of it
}

func (c Correction) none() bool { return c.Printer == "" }

// on returns the correction in mm from the lower left corner of a page.
//
// A page wider than high is taken to be turned to feed short edge first, so
// that its x axis runs along the feed. Which way it is turned does not matter:
// half a turn changes no linear map.
func (c Correction) on(width, height float64) geometry.Affine {
	if c.none() {
		return geometry.Identity()
	}
	m := c.Upright
	if width > height {
		turn := geometry.Rotate(math.Pi / 2)
		m = turn.Then(m).Then(turn.Inverse())
	}
	centre := geometry.Pt(width/2, height/2)
	return geometry.Translate(centre.Mul(-1)).Then(m).Then(geometry.Translate(centre))
}

// apply returns the page as it has to be written. Letters keep their shape,
// and are as much larger or smaller as their base line becomes.
func (c Correction) apply(p page.Page) page.Page {
	if c.none() {
		return p
	}
	m := c.on(p.Width, p.Height)
	linear := geometry.Affine{A: m.A, B: m.B, C: m.C, D: m.D}
	areas, strokes, texts := p.Areas, p.Strokes, p.Texts
	p.Areas = make([]page.Area, len(areas))
	for i, a := range areas {
		p.Areas[i] = page.Area{Gray: a.Gray, Points: m.ApplyAll(a.Points)}
	}
	p.Strokes = make([]page.Stroke, len(strokes))
	for i, s := range strokes {
		p.Strokes[i] = page.Stroke{Line: s.Line, Points: m.ApplyAll(s.Points)}
	}
	p.Texts = make([]page.Text, len(texts))
	for i, t := range texts {
		along := linear.Apply(geometry.Polar(1, t.Angle))
		t.At, t.Angle, t.Height = m.Apply(t.At), math.Atan2(along.Y, along.X), t.Height*along.Norm()
		p.Texts[i] = t
	}
	return p
}

// reach returns how far in mm the correction moves ink outward from the box
// inside the margin, with a little for letters, which it does not shear.
func (c Correction) reach(p Paper, margin float64) float64 {
	if c.none() {
		return 0
	}
	const letters = 0.25
	box := geometry.Box(margin, margin, p.Width-margin, p.Height-margin)
	moved := geometry.Bounds(c.on(p.Width, p.Height).ApplyAll(box.Corners())...)
	return letters + max(0, box.Min.X-moved.Min.X, box.Min.Y-moved.Min.Y)
}

// inset returns the layout with its margin widened by the reach of its
// correction: what is laid out inside stays inside the margin asked for, both
// in the file and on the paper. A whole paper has no size yet; shrink does
// the same for it.
func (l Layout) inset() Layout {
	if !l.Paper.Whole {
		l.Margin += l.Correct.reach(l.Paper, l.Margin)
	}
	return l
}
