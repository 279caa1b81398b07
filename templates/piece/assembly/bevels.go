package assembly

import (
	"math"
	"slices"

	"rodsheet/geometry/joint"
	"rodsheet/geometry/measure"
	"rodsheet/templates"
)

// Bevels are those of which the work wants triangles, in its order.
type Bevels []float64

// Triangle returns the view of the triangle of a bevel: none where a square serves.
func Triangle(bevel float64) []templates.View {
	if _, _, err := joint.Acute(bevel); err != nil {
		return nil
	}
	return []templates.View{{Part: templates.AngleView(bevel)}}
}

// Add adds a bevel that has a triangle and is not among the others, as finely as angles
// are printed, and returns its view.
func (b *Bevels) Add(bevel float64) []templates.View {
	const fine = 0.005 // degrees
	same := func(a float64) bool { return math.Abs(a-bevel) < measure.Radians(fine) }
	view := Triangle(bevel)
	if view != nil && !slices.ContainsFunc(*b, same) {
		*b = append(*b, bevel)
	}
	return view
}

// Onto adds the triangles to what is worked by them.
func (b Bevels) Onto(out *templates.Section, s templates.Setting) error {
	if len(b) == 0 {
		return nil
	}
	job, err := templates.Angles(b, 0, s)
	if err == nil {
		out.Append(job.Sections[0])
	}
	return err
}
