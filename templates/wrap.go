package templates

import (
	"math"

	"rodsheet/geometry"
	"rodsheet/geometry/measure"
)

const (
	reach     = 30.0 // how far past a joint the edges of the stock are drawn, mm
	hatchStep = 3.0  // between the lines of waste hatching, mm
	offset    = 7.0  // from an edge to its dimension line, mm
	tick      = 1.5  // half an end mark of a dimension line, mm
)

// A side is one of the four long sides of a part. Each has a frame of its
// own: x along the part from the datum, y from the reference edge on the two
// faces and down from the face on the two edges.
type side uint8

const (
	referenceEdge side = iota
	faceSide
	farEdge
	backFace
)

// A wrap is the strip of paper that goes round a part: its long sides one
// above the other as they follow each other round the section, printed side
// out, from the reference edge at the foot. The face keeps its frame.
type wrap struct {
	width, thickness float64
	back             bool // the back face is covered too
	corner           bool // only reference edge and face are covered
}

// sides returns the sides from the foot of the strip.
func (w wrap) sides() []side {
	all := []side{referenceEdge, faceSide, farEdge, backFace}
	switch {
	case w.corner:
		return all[:2]
	case w.back:
		return all
	}
	return all[:3]
}

// place returns the map from the frame of a side to the strip. The frames of
// the reference edge and of the back run down the strip.
func (w wrap) place(s side) geometry.Affine {
	switch s {
	case referenceEdge:
		return geometry.Scale(1, -1)
	case farEdge:
		return geometry.Translate(geometry.Pt(0, w.width))
	case backFace:
		return geometry.Scale(1, -1).Then(geometry.Translate(geometry.Pt(0, 2*w.width+w.thickness)))
	}
	return geometry.Identity()
}

// breadth returns the size of a side across the part.
func (w wrap) breadth(s side) float64 {
	if s == faceSide || s == backFace {
		return w.width
	}
	return w.thickness
}

// An arris is a long edge of the part: where it lies on the strip, and at
// which y across the face.
type arris struct{ level, y float64 }

// arrises returns the bounds of the sides from the foot of the strip.
func (w wrap) arrises() []arris {
	all := []arris{
		{-w.thickness, 0}, {0, 0},
		{w.width, w.width}, {w.width + w.thickness, w.width},
		{2*w.width + w.thickness, 0},
	}
	return all[:len(w.sides())+1]
}

// drawing lays what each side holds on the strip, and draws the arrises from
// x = from(y) to x = to.
func (w wrap) drawing(content func(side) Drawing, from func(y float64) float64, to float64) Drawing {
	var d Drawing
	for _, s := range w.sides() {
		d.Add(content(s).Moved(w.place(s)))
	}
	edges := w.arrises()
	for i, e := range edges {
		a, b := geometry.Pt(from(e.y), e.level), geometry.Pt(to, e.level)
		if i == 0 || i == len(edges)-1 {
			d.Line(Outline, a, b)
			continue
		}
		d.Line(Fold, a, b)
	}
	return d
}

// nameFolds names the folds of a strip that ends at to. That comes after all other
// names: there is room for it anywhere along them.
func (w wrap) nameFolds(d *Drawing, to float64) {
	edges := w.arrises()
	for _, e := range edges[1 : len(edges)-1] {
		d.LabelLine(geometry.Pt(to-reach, e.level), geometry.Pt(to, e.level), tag("fold"))
	}
}

// edgeView returns the map that shows a reference edge with the face up and
// the back on y = 0.
func (w wrap) edgeView() geometry.Affine {
	return geometry.Scale(1, -1).Then(geometry.Translate(geometry.Pt(0, w.thickness)))
}

// Add puts everything of o into d.
func (d *Drawing) Add(o Drawing) {
	d.Strokes = append(d.Strokes, o.Strokes...)
	d.Labels = append(d.Labels, o.Labels...)
}

// Moved returns d with every point taken through m. Its lettering is not
// mirrored: labels hold places, not shapes.
func (d Drawing) Moved(m geometry.Affine) Drawing {
	out := Drawing{View: d.View, Also: d.Also, Name: d.Name}
	for _, s := range d.Strokes {
		out.Line(s.Role, m.ApplyAll(s.Points)...)
	}
	for _, l := range d.Labels {
		l.On = geometry.Segment{A: m.Apply(l.On.A), B: m.Apply(l.On.B)}
		out.Labels = append(out.Labels, l)
	}
	return out
}

// Of returns d as that of a view, under a name.
func (d Drawing) Of(v View, name string) Drawing {
	d.View, d.Name = v, name
	return d
}

// of returns d as that of a view of a single template.
func (d Drawing) of(v View) Drawing { return d.Of(v, viewName(v)) }

// hands returns d, which shows hand of the view, and its mirror image.
func (d Drawing) hands(v View, hand Hand) []Drawing {
	v.Hand = hand
	mirror := v
	mirror.Hand = hand.Other()
	return []Drawing{d.of(v), d.Moved(geometry.MirrorX()).of(mirror)}
}

// Hatch fills a polygon with waste hatching.
func (d *Drawing) Hatch(polygon ...geometry.Point) {
	for _, s := range geometry.Hatch(polygon, math.Pi/4, hatchStep) {
		d.Line(Waste, s.A, s.B)
	}
}

// Span draws a dimension line beside a and b, to the left on the way from a
// to b, and names it.
func (d *Drawing) Span(a, b geometry.Point, t Tag) {
	along := b.Sub(a).Unit()
	out := along.Perp().Mul(offset)
	p, q := a.Add(out), b.Add(out)
	d.Line(Construction, p, q)
	for _, end := range [2]geometry.Point{p, q} {
		slant := along.Add(along.Perp()).Mul(tick)
		d.Line(Construction, end.Sub(slant), end.Add(slant))
	}
	for _, s := range [2]geometry.Segment{{A: a, B: p}, {A: b, B: q}} {
		d.Line(Construction, s.A.Lerp(s.B, 0.2), s.B)
	}
	d.LabelLine(p, q, t)
}

// figureTable returns figures as rows of name and value.
func figureTable(figures []Figure, u measure.Unit) [][]string {
	var rows [][]string
	for _, f := range figures {
		if !f.Aside {
			rows = append(rows, []string{f.Name, f.Value.Text(u)})
		}
	}
	return rows
}
