package templates

import (
	"testing"

	"rodsheet/geometry"
)

// What a drawing or a picture covers is what its strokes cover together.
func TestBounds(t *testing.T) {
	strokes := []Stroke{
		{Role: Cut},
		{Role: Cut, Points: []geometry.Point{{X: 10, Y: 20}, {X: 12, Y: 25}}},
		{Role: Cut, Points: []geometry.Point{{X: -3, Y: 22}}},
	}
	want := geometry.Box(-3, 20, 12, 25)
	if got := (Drawing{Strokes: strokes}).Bounds(); got != want {
		t.Errorf("the drawing covers %v, want %v", got, want)
	}
	if got := (Picture{Strokes: strokes}).Bounds(); got != want {
		t.Errorf("the picture covers %v, want %v", got, want)
	}
	if got := (Drawing{}).Bounds(); got != (geometry.Rect{}) {
		t.Errorf("nothing covers %v", got)
	}
}
