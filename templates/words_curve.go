package templates

import (
	"rodsheet/geometry/measure"
	"rodsheet/templates/wording"
)

// Titles, headings and notes of arcs and ovals.
const (
	arcTitle      wording.Text = "Arc over %s, rise %s"
	arcHeading    wording.Text = "Arc"
	ovalHeading   wording.Text = "Oval"
	strikeHeading wording.Text = "To strike it"
)

const roughCurve wording.Text = "Rough the edge outside the line and work to it."

func curveCaution() Panel {
	return panel(cautionHeading, say("Isolate power before setting; follow the machine's manual and keep its guards on. Curved and narrow parts are held in a jig, never by hand near a blade or cutter. Local rules come first."))
}

func arcOffsetsHead() []string { return []string{say("from mid-chord"), say("over the chord")} }

func arcOffsetsWords() []string {
	return []string{say("Both ways from mid-chord: strike the chord and its square lines, measure each height, and bend a batten round pins at the points. The marks of the template have the same two figures.")}
}

// work says how the template is used, and what strikes the arc without one.
func (t arcTemplate) work() []string {
	centre := say("From the centre, where there is floor for it: %s below the chord, square from its middle, by a stick of %s.", t.length(t.CentreBelow()), t.length(t.Radius()))
	if t.CentreBelow() < 0.005 { // printed as 0
		centre = say("From the centre, the middle of the chord, by a stick of %s.", t.length(t.Radius()))
	}
	return []string{
		say("Template: cut along the arc, or glue it to thin board and work that to the line. It is its own mirror image. Lay its mid-chord and both ends of the chord on those of the work."),
		centre,
		say("Without the centre: drive a pin at each end of the chord, and fix two sticks, each longer than the chord, to each other at %s. Slid along both pins their corner, with a pencil in it, strikes the whole arc; over mid-chord it must stand at the rise.",
			measure.Angle(t.SticksAngle()).Text(t.Unit)),
		say(roughCurve),
	}
}

// title says which oval it is.
func (t ovalTemplate) title() string {
	size := []any{t.length(t.Length), t.length(t.Width)}
	if t.Ellipse() {
		return say("Ellipse, %s × %s", size...)
	}
	return say("Oval of four centres, %s × %s", size...)
}

func ovalOffsetsHead() []string {
	return []string{say("from the short centre line"), say("from the long centre line")}
}

func ovalOffsetsWords() []string {
	return []string{say("One quarter; the others are its mirror images. Bend a batten round pins at the points. The marks of the template have the same two figures.")}
}

// work says how the template is used, and what strikes the oval without one.
func (t ovalTemplate) work(full bool) []string {
	lay := say("Template: strike both centre lines on the work, square to each other. Mark the ends of both axes on them, lay the ends of the quarter there and trace it; turned over about each of its centre lines it serves the other three. --full prints the whole outline.")
	if full {
		lay = say("Template: strike both centre lines on the work, square to each other, and lay those of the outline on them.")
	}
	out := []string{lay}
	if t.Ellipse() {
		out = append(out,
			say("With a stick: pencil at its end, a pin %s from it and another %s from it. With the first pin on the long centre line and the second on the short one, all the way round, the pencil strikes the ellipse.",
				t.length(t.Width/2), t.length(t.Length/2)),
			say("With a string: pins at both foci, and round them a loop of %s, which does not stretch. Prove it at all four ends of the centre lines.", t.length(2*t.Focus()+t.Length)),
		)
	} else {
		end, side := t.Centres()
		out = append(out,
			say("With the compass: end centres, E in the plan, on the long centre line, %s to both sides of the middle; side centres, S, on the short one, %s to both sides. Strike each line from a side centre through an end centre: the joins lie on it.", t.length(end.X), t.length(-side.Y)),
			say("Strike the ends with %s and the sides with %s, each up to the joins, where they have one tangent. A line inside it is struck from the same centres.", t.length(t.EndRadius), t.length(t.AtSide())),
		)
	}
	if t.Inset > 0 && t.Ellipse() {
		out = append(out, say("The line inside the rim runs parallel to it and is no ellipse: stick and string do not strike it. Gauge it from the rim, or trace the template."))
	}
	return append(out, say(roughCurve))
}
