package templates

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"
	"pgregory.net/rapid"

	"rodsheet/geometry"
)

// fold bends a strip round a part as paper goes round it: flat as far as the
// next arris, then a quarter turn. The face is the plane z = 0 and the wood
// lies below it; turn counts clockwise where the paper goes over the far edge.
func fold(w wrap, p geometry.Point) r3.Vec {
	at, heading := r3.Vec{X: p.X}, r3.Vec{Y: 1}
	quarter := func(turn float64) { heading = r3.NewRotation(turn, r3.Vec{X: 1}).Rotate(heading) }
	if p.Y < 0 {
		quarter(math.Pi / 2)
		return r3.Add(at, r3.Scale(p.Y, heading))
	}
	left := p.Y
	for _, panel := range []float64{w.width, w.thickness, w.width} {
		step := math.Min(left, panel)
		at = r3.Add(at, r3.Scale(step, heading))
		if left -= step; left <= 0 {
			break
		}
		quarter(-math.Pi / 2)
	}
	return at
}

// space puts a point of a side where it is on the part.
func space(w wrap, s side, p geometry.Point) r3.Vec {
	switch s {
	case referenceEdge:
		return r3.Vec{X: p.X, Z: -p.Y}
	case farEdge:
		return r3.Vec{X: p.X, Y: w.width, Z: -p.Y}
	case backFace:
		return r3.Vec{X: p.X, Y: p.Y, Z: -w.thickness}
	}
	return r3.Vec{X: p.X, Y: p.Y}
}

// Every point of every side, laid on the strip and folded, comes to its place
// on the part.
func TestWrapFoldsOnToThePart(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		size := rapid.Float64Range(1, 100)
		w := wrap{width: size.Draw(t, "width"), thickness: size.Draw(t, "thickness"), back: true}
		s := rapid.SampledFrom(w.sides()).Draw(t, "side")
		p := geometry.Pt(rapid.Float64Range(-500, 500).Draw(t, "x"),
			rapid.Float64Range(0.001, 0.999).Draw(t, "share")*w.breadth(s))
		got, want := fold(w, w.place(s).Apply(p)), space(w, s, p)
		if r3.Norm(r3.Sub(got, want)) > 1e-9 {
			t.Errorf("side %d, %v folds to %v, want %v", s, p, got, want)
		}
	})
}

// The arrises divide the strip into panels as broad as the sides.
func TestWrapArrisesBoundTheSides(t *testing.T) {
	for _, w := range []wrap{{width: 40, thickness: 25}, {width: 40, thickness: 25, back: true}, {width: 40, thickness: 25, corner: true}} {
		edges := w.arrises()
		for i, s := range w.sides() {
			if got := edges[i+1].level - edges[i].level; got != w.breadth(s) {
				t.Errorf("side %d is %v broad on the strip, want %v", s, got, w.breadth(s))
			}
		}
		for _, e := range edges {
			if got := fold(w, geometry.Pt(0, e.level)).Y; math.Abs(got-e.y) > 1e-9 {
				t.Errorf("arris at %v folds to y = %v, want %v", e.level, got, e.y)
			}
		}
	}
}

// A dimension line is as long as what it measures and stands beside it.
func TestSpanIsTrue(t *testing.T) {
	var d Drawing
	a, b := geometry.Pt(10, 0), geometry.Pt(10, 30)
	d.Span(a, b, Tag{"span", "30 mm"})
	on := d.Labels[0].On
	if got := on.Length(); math.Abs(got-30) > 1e-12 {
		t.Errorf("dimension line %v mm long, want 30", got)
	}
	if want := geometry.Pt(10-offset, 0); on.A.Distance(want) > 1e-12 {
		t.Errorf("dimension line starts at %v, want %v", on.A, want)
	}
}
