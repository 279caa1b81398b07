// Package readback reads written files back, for tests: PDF by PDFium, which
// knows nothing of how the files were made, and SVG as this program writes
// it. Everything comes back in mm from the lower left corner of the page, y
// up.
//
// It is to be imported by test files only: it carries a whole PDF reader.
package readback

import (
	"math"

	"rodsheet/geometry"
)

// A File is what a PDF holds. Without print scaling a viewer is asked to
// print at actual size.
type File struct {
	Title, Subject, Creator string
	PrintScaling            bool
	Bookmarks               []Bookmark
	Pages                   []Page
}

// A Bookmark leads to a page, counted from 0, and shows it from Top mm above
// its lower edge down. Level is how many others it stands under.
type Bookmark struct {
	Title string
	Level int
	Page  int
	Top   float64
}

// A Page is one page of a PDF, in the order of drawing.
type Page struct {
	Width, Height float64
	Areas         []Area
	Strokes       []Stroke
	Texts         []Text
}

// An Area is one filled polygon. Gray is 0 for black and 1 for white; it is -1 for
// a colour.
type Area struct {
	Gray   float64
	Points []geometry.Point
}

// A Stroke is one stroked polyline with its pen. A closed one does not repeat
// its first point. Group is the id of the group in an SVG file and empty in a
// PDF. Curved is set where a curve has been taken for its control points.
type Stroke struct {
	Group                   string
	Width                   float64
	Dash                    []float64
	RoundEnds, RoundCorners bool
	Points                  []geometry.Point
	Closed, Curved          bool
}

// close joins the ends. A last point on the first is dropped: readers differ
// in whether they give it.
func (s *Stroke) close() {
	s.Closed = true
	if n := len(s.Points) - 1; n > 0 && s.Points[n] == s.Points[0] {
		s.Points = s.Points[:n]
	}
}

// Segments returns the straight pieces, the closing one included.
func (s Stroke) Segments() []geometry.Segment {
	var out []geometry.Segment
	for i := 1; i < len(s.Points); i++ {
		out = append(out, geometry.Segment{A: s.Points[i-1], B: s.Points[i]})
	}
	if n := len(s.Points); s.Closed && n > 1 {
		out = append(out, geometry.Segment{A: s.Points[n-1], B: s.Points[0]})
	}
	return out
}

// A Text is one string. At is the left end of its base line, Size the size of
// the font. Ink is the box round the letters, turned with the base line, its
// corners counter-clockwise from the lower left; Box is the upright box round
// that.
type Text struct {
	String string
	At     geometry.Point
	Size   float64
	Angle  float64
	Black  bool
	Ink    [4]geometry.Point
	Box    geometry.Rect
}

// InkWidth returns how far the letters reach along the base line, from the
// left of the first to the right of the last.
func (t Text) InkWidth() float64 { return t.Ink[0].Distance(t.Ink[1]) }

// mmPerPoint: a point is 1/72 in.
const mmPerPoint = 25.4 / 72

// scale returns by how much m stretches lengths, for a matrix that stretches
// all directions alike.
func scale(m geometry.Affine) float64 { return math.Sqrt(math.Abs(m.A*m.D - m.B*m.C)) }
