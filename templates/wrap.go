package templates

import "rodsheet/geometry"

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
