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
	Far          Tag     // what the place at Run is called; empty: nothing
	Line         bool    // the edge is a line struck square to one
}

// AngleOnPaper is what the angle of a printed triangle is good to, rad: what a printer
// that was not measured costs most (half a per cent between its axes), with pencil and
// paper.
const AngleOnPaper = 0.25 * math.Pi / 180

// TooShallow reports whether paper does not hold an angle, or what is left of it to a
// right angle: it would be off by more than a tenth of it.
func TooShallow(rad float64) bool { return math.Min(rad, math.Pi/2-rad) < 10*AngleOnPaper-1e-9 }

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
		switch {
		case l.Line && mm == 0:
			return tag("on-line")
		case mm == 0:
			return tag("on-edge")
		}
		return tag("from-edge", length(mm))
	}
	p.Span(at(l.Run, 0), at(0, 0), at(0, -0.2*l.Across), along)
	for _, d := range []struct {
		a, b, away geometry.Point
		in         float64
	}{{at(0, 0), end, at(-0.1*l.Run, 0), l.AtEnd}, {at(l.Run, 0), far, at(0.4*l.Run, 0), l.AtRun}} {
		if t := from(d.in); d.a == d.b {
			p.LabelLine(d.a, d.b, t)
		} else {
			p.Span(d.a, d.b, d.away, t)
		}
	}
	p.LabelLine(at(long, 0), at(l.Run, 0), l.Edge)
	p.LabelLine(at(0, l.AtEnd), at(0, l.Across), l.End)
	if l.Far.Text != "" {
		over := at(l.Run, l.Across)
		p.Strokes = append(p.Strokes, Stroke{Construction, []geometry.Point{at(l.Run, 0), over}})
		p.LabelLine(over, over, l.Far)
	}
	return p
}
