package templates

import (
	"math"

	"rodsheet/geometry"
	"rodsheet/geometry/measure"
)

// A PointedLine is a line too shallow, or too long, for an angle from paper: it
// is set out on the part itself by two points. Both are counted from a straight
// edge of the part: one at its end, and one Run along the edge from there.
type PointedLine struct {
	AtEnd, AtRun float64 // how far the line stands inside Edge, mm
	Run          float64 // mm
	Across       float64 // the part, from that edge to the other, mm
	Edge, End    Tag     // what they are called
	Line         bool    // the edge is a line struck square to one
}

// AngleOnPaper is what the angle of a printed triangle is good to, rad: what a printer
// that was not measured costs most (half a per cent between its axes), with pencil and
// paper.
const AngleOnPaper = 0.25 * math.Pi / 180

// TooShallow reports whether paper does not hold an angle, or what is left of it to a
// right angle: it would be off by more than a tenth of it.
func TooShallow(rad float64) bool {
	return math.Min(rad, math.Pi/2-rad) < 10*AngleOnPaper-1e-9
}

// Picture shows where the points are, the end to the right. It is no drawing to
// work from: across the part it is stretched, or nothing would show.
func (l PointedLine) Picture(heading string, u measure.Unit) Picture {
	length := func(mm float64) string { return measure.Length(mm).Text(u) }
	long := 1.3 * l.Run
	up := 0.35 * long / l.Across
	at := func(fromEnd, y float64) geometry.Point { return geometry.Pt(-fromEnd, y*up) }
	end, far := at(0, l.AtEnd), at(l.Run, l.AtRun)
	p := Picture{Heading: heading, NoScale: true, Strokes: []Stroke{
		{Outline, []geometry.Point{at(long, 0), at(0, 0), at(0, l.Across), at(long, l.Across)}},
		{Cut, []geometry.Point{far, end}},
	}}
	along := tag("along-edge", length(l.Run))
	if l.Line {
		along = tag("along-line", length(l.Run))
	}
	from := func(mm float64) Tag {
		if l.Line && mm == 0 {
			return tag("on-line")
		}
		return tag("from-edge", length(mm))
	}
	below := at(0, -0.2*l.Across)
	for _, x := range []float64{0, l.Run} {
		p.Strokes = append(p.Strokes, Stroke{Construction, []geometry.Point{at(x, 0), at(x, -0.25*l.Across)}})
	}
	for _, d := range []struct {
		a, b geometry.Point
		t    Tag
	}{
		{at(0, 0), end, from(l.AtEnd)},
		{at(l.Run, 0), far, from(l.AtRun)},
		{geometry.Pt(-l.Run, below.Y), below, along},
	} {
		p.LabelLine(d.a, d.b, d.t)
		if d.a.Distance(d.b) > 1e-9 {
			p.Arrows = append(p.Arrows, Arrow{Points: []geometry.Point{d.a, d.b}, Both: true})
		}
	}
	p.LabelLine(at(long, 0), at(l.Run, 0), l.Edge)
	p.LabelLine(at(0, l.AtEnd), at(0, l.Across), l.End)
	return p
}
