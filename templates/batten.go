package templates

import (
	"math"

	"rodsheet/geometry"
	"rodsheet/geometry/joint"
	"rodsheet/geometry/measure"
)

// stripWidth is how wide a strip of paper stays in shape beside the line that it carries.
func stripWidth(u measure.Unit) float64 { return u.Round(40, 1.5) }

// battenStep is how far the points of a batten stand apart on a curve of which half is
// that long.
func battenStep(half float64, u measure.Unit) float64 {
	const fewest = 3
	for _, step := range []float64{u.Round(50, 2), u.Round(20, 1)} {
		if half >= fewest*step {
			return step
		}
	}
	return u.Round(10, 1.0/2)
}

// battenPanel lists the points that a batten is bent through, on one side of the
// middle.
func battenPanel(c joint.Crown, half float64, head, words []string, u measure.Unit) Panel {
	bare := func(mm float64) string { return measure.Length(mm).Bare(u) }
	table := [][]string{head}
	for _, p := range joint.Offsets(c, half, battenStep(half, u)) {
		table = append(table, []string{bare(p.X), bare(p.Y)})
	}
	return Panel{Heading: say(offsetsHeading, u.String()), Table: table, Text: words}
}

// battenMark draws a line from a point of a curve to one inside it, and names the first
// by its two figures.
func (d *Drawing) battenMark(p, in geometry.Point, u measure.Unit) {
	d.Line(Construction, p, in)
	d.LabelPoint(in, tag("offset", measure.Length(math.Abs(p.X)).Bare(u), measure.Length(p.Y).Bare(u)))
}
