package main

import (
	"strings"

	"rodsheet/geometry"
	"rodsheet/geometry/joint"
	"rodsheet/geometry/measure"
	"rodsheet/templates"
	"rodsheet/templates/wording"
)

func arcCommand() command {
	return command{
		name:    "arc",
		summary: "strip and offsets for an arc of up to half a circle",
		about: `Draws an arc at full size over as many sheets as it takes, with the points of a
batten and what strikes it without a centre. Any two of --chord, --rise and
--radius give it, or three points of it: both ends, and one between them,
each as its distances along and up from any corner.`,
		caution: sawCaution,
		flags: []flag{
			{name: "chord", value: "LENGTH", usage: "straight from end to end", figure: "segment.chord"},
			{name: "rise", value: "LENGTH", usage: "of the arc over the middle of its chord", figure: "segment.rise"},
			{name: "radius", value: "LENGTH", usage: "of the circle", figure: "segment.radius"},
			{name: "from", value: "LENGTH,LENGTH", usage: "one end, along and up"},
			{name: "through", value: "LENGTH,LENGTH", usage: "a point between the ends"},
			{name: "to", value: "LENGTH,LENGTH", usage: "the other end"},
		},
		examples: []example{
			{"rodsheet arc --chord 900 --rise 40", "the arched underside of an apron"},
			{"rodsheet arc --chord 24 --radius 30 --units in", "a curved rail, in inches"},
			{"rodsheet arc --from 0,0 --through 300,45 --to 700,20", "through three points taken off a part"},
		},
		read: func(v *values) maker { return drawn(templates.Arc, v.arc()) },
	}
}

// arc reads an arc: by two of its sizes or by three points.
func (v *values) arc() (b joint.CircularSegment) {
	const needs = "arc needs two of --chord, --rise and --radius, or --from, --through and --to"
	switch sizes, points := v.howMany("chord", "rise", "radius"), v.howMany("from", "through", "to"); {
	case sizes == 2 && points == 0:
		return v.arcBySizes()
	case sizes == 0 && points == 3:
		b, err := joint.SegmentThrough(v.point("from"), v.point("through"), v.point("to"))
		if len(v.problems) == 0 {
			v.fail("--through", err)
		}
		return b
	case sizes == 3 && points == 0:
		v.add("two of --chord, --rise and --radius set the third: leave one out", "rodsheet help arc")
	default:
		v.add(needs, "rodsheet arc --chord 900 --rise 40")
	}
	return b
}

func (v *values) arcBySizes() joint.CircularSegment {
	chord, rise, radius := v.positive("chord"), v.positive("rise"), v.positive("radius")
	if len(v.problems) > 0 || !v.given("radius") {
		return joint.CircularSegment{Chord: chord, Rise: rise}
	}
	v.fail("--radius", joint.CheckCircle(radius, chord, rise))
	if v.given("chord") {
		return joint.SegmentOverChord(radius, chord)
	}
	return joint.SegmentOfRise(radius, rise)
}

func (v *values) point(name string) geometry.Point {
	x, y, ok := strings.Cut(v.text(name), ",")
	if !ok || strings.Contains(y, ",") {
		v.add("--"+name+" "+wording.Shown(v.text(name))+" must be two lengths with a comma between", "rodsheet help arc")
		return geometry.Point{}
	}
	at := func(text string) float64 {
		mm, err := measure.ParseLength(text, v.unit)
		v.fail("--"+name, err)
		return mm
	}
	return geometry.Pt(at(x), at(y))
}
