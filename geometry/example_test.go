package geometry_test

import (
	"fmt"
	"math"

	"rodsheet/geometry"
)

// The corners of an outline in any order, one of them inside.
func ExampleHull() {
	hull := geometry.Hull([]geometry.Point{{X: 60}, {X: 20, Y: 10}, {}, {X: 60, Y: 40}, {Y: 40}})
	fmt.Println(hull, geometry.Area(hull), "mm²")
	// Output: [{0 0} {60 0} {60 40} {0 40}] 2400 mm²
}

// A board 60 mm by 40 mm loses a corner: what stays is where x + y ≤ 80.
func ExampleClipHalfPlane() {
	board := geometry.Box(0, 0, 60, 40).Corners()
	fmt.Println(geometry.ClipHalfPlane(nil, board, geometry.Pt(1, 1), 80))
	// Output: [{0 0} {60 0} {60 20} {40 40} {0 40}]
}

// A line across a sheet, cut where the sheet ends; and what of it lies beside a
// label.
func ExampleCutOut() {
	line := geometry.Segment{A: geometry.Pt(-10, 20), B: geometry.Pt(110, 20)}
	on, ok := geometry.ClipSegment(line, geometry.Box(0, 0, 100, 50))
	fmt.Println(on, ok)
	fmt.Println(geometry.CutOut(on, geometry.Box(40, 10, 60, 30).Corners()))
	// Output:
	// {{0 20} {100 20}} true
	// [{{0 20} {40 20}} {{60 20} {100 20}}]
}

// A quarter of a circle of 100 mm, drawn in chords that leave it by 0.002 mm at
// most.
func ExampleArc() {
	arc := geometry.Arc(geometry.Point{}, 100, 0, math.Pi/2)
	chord := geometry.Segment{A: arc[0], B: arc[1]}
	fmt.Printf("%d points, %.4f mm\n", len(arc), 100-chord.Mid().Norm())
	// Output: 126 points, 0.0020 mm
}

// Left hand becomes right, then the sheet is turned.
func ExampleAffine() {
	m := geometry.MirrorX().Then(geometry.Rotate(math.Pi / 2)).Then(geometry.Translate(geometry.Pt(10, 0)))
	fmt.Println(m.Apply(geometry.Pt(30, 5)), m.Inverse().Apply(m.Apply(geometry.Pt(30, 5))))
	// Output: {5 -30} {30 5}
}
