// Package page is what a sheet of paper holds once everything is decided:
// strokes and lettering at their places, as plain values. render makes pages;
// pdf and svg write them; tests read them without any file.
//
// Everything is in millimetres on the paper, from the lower left corner of
// the sheet, y up.
package page

import "rodsheet/geometry"

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
	Strokes       []Stroke
	Texts         []Text
}

// A Document is a whole job ready to be written.
type Document struct {
	Title, Subject string
	Lines          []Line
	Pages          []Page
}
