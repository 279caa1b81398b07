package measure

// Round returns a length that a shop takes round, in mm: so many millimetres where
// figures are in millimetres, so many inches where they are in inches. The two are
// near each other and neither is the other one converted.
func (u Unit) Round(mm, in float64) float64 {
	if u == Inch {
		return in * MillimetresPerInch
	}
	return mm
}
