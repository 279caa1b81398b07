package lettering

import (
	"golang.org/x/image/font/sfnt"
	"golang.org/x/image/math/fixed"

	"rodsheet/geometry"
)

// A Contour is one closed outline of a letter. Filled together under the
// non-zero rule, the contours of a string show its letters.
type Contour struct {
	Start  geometry.Point
	Pieces []Piece
}

// A Piece runs from the end of the piece before it to To: straight or, where
// Curved, as the quadratic Bézier curve with the one control point Control.
type Piece struct {
	Curved      bool
	Control, To geometry.Point
}

// Outline returns the contours of s, its base line starting at the origin and
// running along the x axis. Runes that cannot be lettered appear as the one
// Clean puts for them.
func Outline(s string, height float64) []Contour {
	t := face()
	var b sfnt.Buffer
	var out []Contour
	em, x := Em(height), 0.0
	for _, r := range Clean(s) {
		segments := try(t.font.LoadGlyph(&b, try(t.font.GlyphIndex(&b, r)), t.ppem, nil))
		out = appendGlyph(out, segments, func(p fixed.Point26_6) geometry.Point {
			// sfnt counts y downward.
			return geometry.Pt(x+float64(p.X)/t.em*em, -float64(p.Y)/t.em*em)
		})
		x += t.stepOr(r) / 1000 * em
	}
	return out
}

// appendGlyph adds the contours of one glyph. TrueType knows no cubic curves.
func appendGlyph(out []Contour, segments sfnt.Segments, at func(fixed.Point26_6) geometry.Point) []Contour {
	for _, s := range segments {
		if s.Op == sfnt.SegmentOpMoveTo {
			out = append(out, Contour{Start: at(s.Args[0])})
			continue
		}
		p := Piece{To: at(s.Args[0])}
		if s.Op == sfnt.SegmentOpQuadTo {
			p = Piece{Curved: true, Control: at(s.Args[0]), To: at(s.Args[1])}
		}
		c := &out[len(out)-1]
		c.Pieces = append(c.Pieces, p)
	}
	return out
}
