package templates

import (
	"math"
	"strconv"

	"rodsheet/geometry"
	"rodsheet/geometry/joint"
	"rodsheet/geometry/measure"
)

// Hopper returns what the ends of sloping sides are cut by: the triangles of gauge and
// blade, and how a side and a corner look. Sides of two slopes differ in the gauge and
// share the blade. The error is a *measure.BoundError.
func Hopper(h joint.Hopper, s Setting) (Job, error) {
	if err := h.Check(); err != nil {
		return Job{}, err
	}
	t := hopperTemplate{h, s}
	figures := t.figures()
	bevels := []bevel{{math.Pi/2 - math.Abs(h.OffSquare()), say(gaugeName)}}
	section := Section{Pictures: []Picture{t.side(h.SlopingCorner), t.corner()}}
	if h.Slope != h.Next {
		bevels[0].of = say(gaugeOfSlope, angleText(h.Slope))
		bevels = append(bevels, bevel{math.Pi/2 - math.Abs(h.Turned().OffSquare()), say(gaugeOfSlope, angleText(h.Next))})
		section.Pictures = append(section.Pictures[:1], t.side(h.Turned()), t.corner())
	}
	bevels = append(bevels, bevel{math.Pi/2 - math.Abs(h.EndTilt()), say(bladeName)})
	section.Panels = []Panel{
		{Heading: say(figuresHeading), Table: figureTable(figures, s.Unit)},
		{Heading: say(sawHeading), Text: t.steps()},
		hopperCaution(),
	}
	section.Append(bevelGauges(bevels, s))
	return Job{Name: t.name(), Title: t.title(), Sections: []Section{section}, Figures: figures}, nil
}

// A hopperTemplate is a hopper about to be drawn.
type hopperTemplate struct {
	joint.Hopper
	Setting
}

// name is that of the file.
func (t hopperTemplate) name() string {
	if t.Sides == 0 {
		return "hopper-corner"
	}
	return "hopper-" + strconv.Itoa(t.Sides)
}

// side is a side lying flat, its outer side up.
func (t hopperTemplate) side(c joint.SlopingCorner) Picture {
	const long, wide = 60.0, 36.0
	past := wide * math.Tan(c.OffSquare())
	lower := long + 2*math.Max(0, -past) // one that narrows upward must not cross itself
	outline := []geometry.Point{{}, geometry.Pt(lower, 0), geometry.Pt(lower+past, wide), geometry.Pt(-past, wide)}
	p := Picture{Heading: say(sideHeading, angleText(c.Slope)), NoScale: true,
		Areas:   []Area{{Light, outline}},
		Strokes: []Stroke{{Cut, geometry.Closed(outline)}, {Construction, []geometry.Point{outline[1], geometry.Pt(lower, wide)}}},
	}
	p.LabelLine(outline[0], outline[1], tag("lower-edge"))
	p.LabelLine(outline[3], outline[2], tag("upper-edge"))
	p.LabelLine(outline[1], outline[2], tag("line-off-square", angleText(math.Abs(c.OffSquare()))))
	acute := outline[2]
	if past < 0 {
		acute = outline[1]
	}
	p.LabelLine(acute, acute, tag("bevel", angleText(math.Pi/2-math.Abs(c.OffSquare()))))
	return p
}

// corner is the section of two boards, square to the line in which they meet.
func (t hopperTemplate) corner() Picture {
	const thick, reach = 9, 50
	first, second := t.Section(thick, reach)
	p := Picture{Heading: say(cornerHeading), NoScale: true}
	for _, board := range [][]geometry.Point{first, second} {
		p.Areas = append(p.Areas, Area{Light, board})
		p.Strokes = append(p.Strokes, Stroke{Cut, geometry.Closed(board)})
	}
	p.Strokes = append(p.Strokes, Stroke{Construction, geometry.Arc(geometry.Point{}, reach/3, 0, t.Dihedral())})
	mid := geometry.Polar(reach/3, t.Dihedral()/2)
	p.LabelLine(mid, mid, tag("between-hollow-sides", angleText(t.Dihedral())))
	p.LabelLine(second[2], second[3], tag("outer-side"))
	p.LabelLine(first[3], first[3], tag("tilt-of-blade", angleText(math.Abs(t.EndTilt()))))
	return p
}

func (t hopperTemplate) figures() []Figure {
	var out []Figure
	if t.Sides > 0 {
		out = append(out, figure("hopper.sides", measure.Number(float64(t.Sides))))
	}
	out = append(out, figure("hopper.corner", measure.Angle(t.Angle)))
	out = append(out, t.sideFigures(t.SlopingCorner, "hopper.")...)
	if t.Slope != t.Next {
		out = append(out, t.sideFigures(t.Turned(), "hopper.next-")...)
	}
	rise := func(unit measure.Unit, id measure.ID) Figure {
		return figureIn(unit, t.Unit, id, measure.Length(joint.RiseOver(unit.Round(100, 4), math.Abs(t.EndTilt()))))
	}
	return append(out,
		figure("hopper.tilt", measure.Angle(math.Abs(t.EndTilt()))),
		figure("hopper.blade", measure.Angle(math.Pi/2-math.Abs(t.EndTilt()))),
		rise(measure.Millimetre, "hopper.blade-rise-over-100-mm"),
		rise(measure.Inch, "hopper.blade-rise-over-4-in"),
		figure("hopper.dihedral", measure.Angle(t.Dihedral())),
	)
}

// sideFigures are those of the sides of one slope.
func (t hopperTemplate) sideFigures(c joint.SlopingCorner, of measure.ID) []Figure {
	longer := func(unit measure.Unit, id measure.ID) Figure {
		return figureIn(unit, t.Unit, id, measure.Length(joint.RiseOver(unit.Round(100, 4), c.OffSquare())))
	}
	return []Figure{
		figure(of+"slope", measure.Angle(c.Slope)),
		figure(of+"from-plumb", measure.Angle(math.Pi/2-c.Slope)),
		figure(of+"off-square", measure.Angle(math.Abs(c.OffSquare()))),
		figure(of+"bevel", measure.Angle(math.Pi/2-math.Abs(c.OffSquare()))),
		longer(measure.Millimetre, of+"longer-per-100-mm"),
		longer(measure.Inch, of+"longer-per-4-in"),
		figure(of+"level-edges", measure.Angle(math.Pi/2-c.Slope)),
	}
}
