package joint

import (
	"cmp"
	"math"

	"rodsheet/geometry"
)

// GlassDensity is that of soda-lime silicate glass in kg/m³ (EN 572-1).
const GlassDensity = 2500.0

// Mass returns the mass in kg of so many mm³ at a density in kg/m³.
func Mass(volume, density float64) float64 {
	const cubicMetre = 1e9 // mm³
	return volume / cubicMetre * density
}

// A Glass is a flat pane.
type Glass struct {
	Area      float64 // of one face, mm²
	Thickness float64 // mm
}

// Limits of a pane's thickness in mm: float glass is made from 2 to 25 mm
// thick (common practice, no source).
const (
	glassThinnest = 2.0
	glassThickest = 25.0
)

// Check returns a *measure.BoundError for a figure no pane can have. The other
// methods take a Glass that has passed.
func (g Glass) Check() error {
	return cmp.Or(within("glass.area", g.Area), within("glass.thickness", g.Thickness))
}

// Mass returns the mass in kg: 2.5 kg for each m² and mm of thickness.
func (g Glass) Mass() float64 { return Mass(g.Area*g.Thickness, GlassDensity) }

// LeastCornerRadius returns the radius in mm that the corners are to have at
// least: the thickness (common practice, no source).
func (g Glass) LeastCornerRadius() float64 { return g.Thickness }

// RoundedArea returns the area in mm² that is left of a polygon whose corners
// run counter-clockwise when each is rounded to radius mm. A corner of inside
// angle φ loses the kite between its two tangents, radius²·cot(φ/2), less the
// sector in it, radius²·(π − φ)/2.
//
// The polygon must be convex, and each side hold both its roundings.
func RoundedArea(polygon []geometry.Point, radius float64) float64 {
	area := geometry.Area(polygon)
	n := len(polygon)
	for i, p := range polygon {
		in, out := p.Sub(polygon[(i+n-1)%n]), polygon[(i+1)%n].Sub(p)
		turn := math.Atan2(in.Cross(out), in.Dot(out)) // π − φ
		area -= radius * radius * (math.Tan(turn/2) - turn/2)
	}
	return area
}
