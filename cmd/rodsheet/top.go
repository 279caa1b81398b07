package main

import (
	"rodsheet/geometry"
	"rodsheet/geometry/joint"
	"rodsheet/templates"
)

func topCommand() command {
	return command{
		name:    "top",
		summary: "figures and corners of a table top",
		about: `Sets out a top: round with --diameter, with equal sides by --sides and --side,
or a rectangle by --length and --width. Corners may be clipped or rounded.
Straight edges and circles are set out by figures; a sheet shows each corner
that differs. --full draws the whole outline over as many sheets as it takes.`,
		flags: []flag{
			{name: "diameter", value: "LENGTH", usage: "of a round top"},
			{name: "sides", value: "3..36", usage: "of a top with equal sides"},
			{name: "side", value: "LENGTH", usage: "length of each of these"},
			{name: "length", value: "LENGTH", usage: "of a rectangle"},
			{name: "width", value: "LENGTH", usage: "of a rectangle"},
			{name: "clip", value: "LENGTH", usage: "taken off each corner, along both its sides"},
			{name: "round", value: "LENGTH", usage: "radius of each corner", figure: "outline.round"},
			fullFlag(),
		},
		examples: []example{
			{"rodsheet top --length 800 --width 600 --round 40", "a rectangle with round corners"},
			{"rodsheet top --diameter 600 --full --paper a3", "the whole of a round top, on larger sheets"},
			{"rodsheet top --sides 3 --side 36 --clip 4 --units in", "three sides, clipped, in inches"},
		},
		read: func(v *values) maker { return drawn(templates.Top, v.top()) },
	}
}

func (v *values) top() joint.Top {
	kinds := [][]string{{"diameter"}, {"sides", "side"}, {"length", "width"}}
	var found []string
	for _, kind := range kinds {
		if v.howMany(kind...) > 0 {
			found = append(found, kind...)
		}
	}
	switch {
	case len(found) == 0:
		v.add("top needs --diameter, or --sides and --side, or --length and --width", "rodsheet top --diameter 600")
	case len(found) > 2 || len(found) == 1 && (v.given("clip") || v.given("round")):
		v.add("top is of one kind: round, of equal sides, or a rectangle; only the last two have corners", "rodsheet help top")
	}
	for _, name := range found {
		if !v.given(name) {
			v.add("top needs --"+name+" as well", "rodsheet help top")
		}
	}
	t := joint.Top{Diameter: v.positive("diameter")}
	switch {
	case v.given("sides"):
		t.Corners = v.polygon()
	case v.given("length"):
		t = joint.RectangleTop(v.positive("length"), v.positive("width"))
	}
	t.Clip, t.Round = v.positive("clip"), v.positive("round")
	return t
}

func (v *values) polygon() []geometry.Point {
	r := joint.RegularBySide(v.count("sides", 3, 3, 36), v.positive("side"))
	if len(v.problems) > 0 {
		return nil
	}
	return r.Corners()
}
