package piece

import "rodsheet/geometry/measure"

// Say writes a figure in the unit of the piece.
func (p Piece) Say(q measure.Quantity) string { return q.Text(p.Design.Unit) }

// MM writes a length, given in mm, in the unit of the piece.
func (p Piece) MM(v float64) string { return p.Say(measure.Length(v)) }

// Bare is MM with the unit left out.
func (p Piece) Bare(v float64) string { return measure.Length(v).Bare(p.Design.Unit) }
