package box

import (
	"math"

	"rodsheet/geometry"
	"rodsheet/templates"
)

// Sizes of a wedge block, in mm.
const (
	wedgeBase = 50.0
	wedgeHigh = 90.0
	// leastClamp is how far from the thin tip a clamp still holds.
	leastClamp = 8.0
	clampMark  = 12.0 // how long its line is drawn
)

// wedges is how many are stuck on, two beside every mitred corner.
func (b Box) wedges() int {
	if !b.mitred() {
		return 0
	}
	return 2 * len(b.faces)
}

// wedgeCorners is the outline of a block, its face on the side along x.
func (b Box) wedgeCorners() [3]geometry.Point {
	rise := math.Tan(b.corner(0).Dihedral() / 2)
	base := math.Min(wedgeBase, wedgeHigh/rise)
	return [3]geometry.Point{{}, geometry.Pt(base, 0), geometry.Pt(base, base*rise)}
}

// clampAt is where a clamp presses through the middle of the mitre, from the thin tip of a
// block along its slope; ok is false where that is hardly on the block.
//
// The mitre runs inward from the outer arris along the slope, t/sin a long where a is half of
// the dihedral angle and t the thickness: its middle lies base·cos a − t/(2·sin a) up the slope.
func (b Box) clampAt() (at float64, ok bool) {
	sin, cos := math.Sincos(b.corner(0).Dihedral() / 2)
	at = b.wedgeCorners()[1].X*cos - b.design.Box.Thickness/(2*sin)
	return at, at >= leastClamp
}

// wedge is the block that is stuck beside a corner, so that a clamp presses square to the
// mitre: one face lies on the side, the jaw bears on the other, which runs along the mitre;
// the faces of a side and of its mitre stand at half of the dihedral angle.
func (b Box) wedge() templates.Drawing {
	angle, corners := b.corner(0).Dihedral()/2, b.wedgeCorners()
	d := templates.Drawing{View: templates.View{Part: "box", Face: "wedge-block"}, Name: wedgeName.With(), Free: true}
	d.Polygon(templates.Cut, corners[:]...)
	d.LabelLine(corners[0], corners[1], templates.Tag{ID: "on-the-side", Text: wedgeOnSide.With()})
	d.LabelLine(corners[0], corners[2], templates.Tag{ID: "jaw", Text: wedgeJaw.With()})
	d.LabelLine(corners[1], corners[2], templates.Tag{ID: "at-corner", Text: wedgeAtCorner.With()})
	d.LabelPoint(corners[0], templates.Tag{ID: "wedge-angle", Text: b.angle(angle)})
	if at, ok := b.clampAt(); ok {
		mark, in := geometry.Polar(at, angle), geometry.Polar(clampMark, angle-math.Pi/2)
		d.Named(templates.Construction, mark, mark.Add(in), templates.Tag{ID: "clamp", Text: wedgeClamp.With()})
	}
	return d
}
