package templates

import (
	"rodsheet/geometry"
	"rodsheet/geometry/measure"
)

// A Tone is how dark an area of a picture is. The tones copy well and none says
// anything that a line or a word beside it does not.
type Tone uint8

const (
	White  Tone = iota // covers what lies behind
	Light              // wood that faces up, or stands
	Middle             // wood in the shade, the fence
	Dark               // blade, stop
)

// An Area is a filled polygon of a picture, drawn below every line and over the
// areas before it.
type Area struct {
	Tone   Tone
	Points []geometry.Point
}

// An Arrow is a line with a head at its end, or at both ends: the grain, or the way
// that a part is turned. Its heads have one size on paper, whatever the scale.
type Arrow struct {
	Points []geometry.Point
	Both   bool
}

// A Span is a distance with its figure: the arrow between its ends, moved Away from them
// by so much or by what it takes on paper for the figure to stand beside it. Without Away
// the arrow stands where the distance is.
type Span struct {
	ID   measure.ID // of what it says
	Text string
	geometry.Segment
	Away geometry.Point
}

// A Card is one set-up of one tool and all that is done before it moves.
type Card struct {
	Number  int
	Heading string
	Ticks   []Tick
	Setup   []Picture // how tool and part stand; one after the other
	After   []Picture // the part once the card is done
	Figures []Reading
	Text    []string // one to three sentences
	Test    string   // what it must show
	Caution string
	// Templates are the drawings that the card calls for: it prints their sheets.
	Templates []View
}

// A Tick is a kind of part with a box for each to tick off.
type Tick struct {
	Text  string
	Boxes int
}

// A Reading is a figure that the tool is set to, printed large, with room to
// write the one used where Write is set.
type Reading struct {
	Name, Value string
	Write       bool
}
