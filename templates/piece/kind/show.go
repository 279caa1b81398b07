package kind

import (
	"math"

	"rodsheet/geometry"
	"rodsheet/geometry/measure"
	"rodsheet/geometry/solid"
	"rodsheet/templates"
	"rodsheet/templates/piece/design"
)

// A Stand is a piece put together, to be looked at from more than one side.
type Stand interface{ Show(Look) Shown }

// A Look says from where a piece is looked at on a screen, and how far apart it is.
type Look struct {
	View  solid.View // from above or from the side
	Apart float64    // from 0, put together, to 1
	Close bool       // the joints alone, where the kind has such a view
}

// The views of a piece that carry figures.
var (
	FromAbove = Look{View: solid.Plan()}
	FromFront = Look{View: solid.Front()}
)

// FromCorner looks at the piece from so many radians to the right of the front and
// above the level, less than a quarter turn above it.
func FromCorner(aside, above float64) solid.View {
	sa, ca := math.Sincos(aside)
	sb, cb := math.Sincos(min(max(above, 0), 1.55))
	return solid.Look(solid.V(sa*cb, -ca*cb, sb), solid.V(0, 0, 1))
}

// AtCorner is what one sees who stands to the right of the front and looks down on the
// piece: the view that is printed.
func AtCorner() solid.View { return solid.Look(solid.V(0.55, -1, 0.62), solid.V(0, 0, 1)) }

// Near cuts away all of a part but a cube about a place.
func Near(p solid.Part, at solid.Vec, reach float64) solid.Part {
	for _, way := range []solid.Vec{solid.V(1, 0, 0), solid.V(0, 1, 0), solid.V(0, 0, 1)} {
		p = p.Cut(solid.Through(at.Add(way.Mul(reach)), way)).Cut(solid.Through(at.Sub(way.Mul(reach)), way.Mul(-1)))
	}
	return p
}

// ToneOf returns the tone of a face in light from above on the left: what looks up
// stays white, what looks to the right lies in the shade.
func ToneOf(n solid.Vec, v solid.View) templates.Tone {
	const up = 0.5 // of the way from level to upright
	switch {
	case n.Z > up:
		return templates.White
	case n.Dot(v.Right) > 0:
		return templates.Middle
	}
	return templates.Light
}

// A Seen is what is seen of one part, in areas of different tones. Glass is seen through.
type Seen struct {
	Kind  measure.ID // "leg"
	Name  string     // with its finished size
	Glass bool
	Areas []templates.Area
}

// A Shown is a piece as a screen shows it: parts, lines over them, what parts that
// clash have in common, figures, and points that may be dragged. Lengths in mm, y up.
type Shown struct {
	Parts   []Seen
	Strokes []templates.Stroke
	Clashes [][]geometry.Point
	Figures []Dimension
	Handles []Handle
}

// A Dimension is a figure that a key of the design fixes, on its line.
type Dimension struct {
	Key  design.Key
	Text string
	geometry.Segment
}

// A Handle is a point that may be dragged, and along which axis.
type Handle struct {
	ID measure.ID
	At geometry.Point
	Up bool // along y, else along x
}
