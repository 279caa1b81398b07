// Package page is what a sheet of paper holds once everything is decided:
// strokes and lettering at their places, as plain values. render makes pages;
// pdf and svg write them; tests read them without any file.
//
// Everything is in millimetres on the paper, from the lower left corner of
// the sheet, y up.
package page

import (
	"iter"

	"rodsheet/geometry"
)

// A Line is how a stroke is drawn: its name (used for SVG groups), its width
// and its dash pattern in mm (none for a continuous line).
type Line struct {
	Name  string
	Width float64
	Dash  []float64
}

// A Stroke is an open polyline. A closed outline repeats its first point.
type Stroke struct {
	Line   int // index into Document.Lines
	Points []geometry.Point
}

// An Area is a filled polygon under all strokes, over the areas before it. Gray is
// its lightness, from 0 for black to 1 for white.
type Area struct {
	Gray   float64
	Points []geometry.Point
}

// A Text is one line of lettering. At is the left end of its base line,
// Height the height of a capital letter in mm, Angle the direction of the
// base line in radians.
type Text struct {
	At     geometry.Point
	Height float64
	Angle  float64
	String string
}

// A Page is one sheet.
type Page struct {
	Width, Height float64
	Number        int    // of the sheet in the whole job, from 1
	Name          string // what the bookmark says
	Part          string // what begins with this sheet, for a bookmark over those of its sheets; may be empty
	Areas         []Area
	Strokes       []Stroke
	Texts         []Text
}

// A Document is a whole job ready to be written.
type Document struct {
	Title, Subject string
	Lines          []Line
	Pages          []Page
}

// Runs returns areas that follow each other and are of one gray, together: filled
// at one go they show no seams where they meet.
func Runs(areas []Area) iter.Seq[[]Area] {
	return func(yield func([]Area) bool) {
		for from, to := 0, 0; from < len(areas); from = to {
			for to = from + 1; to < len(areas) && areas[to].Gray == areas[from].Gray; to++ {
			}
			if !yield(areas[from:to]) {
				return
			}
		}
	}
}

// Outline returns the points to join up and reports whether the last of them
// is to be joined to the first, as it is where a stroke of three sides or
// more comes back to its beginning.
func (s Stroke) Outline() (points []geometry.Point, closed bool) {
	last := len(s.Points) - 1
	if last > 2 && s.Points[0] == s.Points[last] {
		return s.Points[:last], true
	}
	return s.Points, false
}
