package templates

import (
	"math"
	"strconv"

	"rodsheet/templates/wording"
)

// Titles, headings and notes of sloping sides.
const (
	sideHeading   wording.Text = "A side at %s, its outer side up"
	cornerHeading wording.Text = "The corner, end on"
	gaugeOfSlope  wording.Text = "gauge for the sides at %s"
)

// ends says how the corners are made.
func (t hopperTemplate) ends() string {
	if t.Butt {
		return say("butted")
	}
	return say("mitred")
}

func (t hopperTemplate) title() string {
	slope := angleText(t.Slope)
	switch {
	case t.Slope != t.Next:
		return say("Hopper, sides at %s and %s from level, %s", slope, angleText(t.Next), t.ends())
	case t.Sides == 0:
		return say("Corner of %s, sides at %s from level, %s", angleText(t.Angle), slope, t.ends())
	}
	return say("Hopper of %s sides at %s from level, %s", strconv.Itoa(t.Sides), slope, t.ends())
}

// steps is the order of work at the saw.
func (t hopperTemplate) steps() []string {
	gauge := say("gauge %s off square", angleText(math.Abs(t.OffSquare())))
	if t.Slope != t.Next {
		gauge = say("gauge %s off square for the sides at %s, %s for those at %s", angleText(math.Abs(t.OffSquare())), angleText(t.Slope),
			angleText(math.Abs(t.Turned().OffSquare())), angleText(t.Next))
	}
	longer := say("outer side")
	if !t.OuterLonger() {
		longer = say("hollow side")
	}
	out := []string{
		say(isolate),
		say("2. Rip the sides to width first and mark the hollow side of each, which is to look in. Edges that are to lie level take the tilt of the level edges."),
		say("3. Set the %s and the blade to a tilt of %s, both by the bevel gauge: it lies on the board for the one and stands on the table for the other.", gauge, angleText(math.Abs(t.EndTilt()))),
		say("4. The end leaves the %s longer: it lies down where the blade leans over the part that is kept, up where the blade leans away from it.", longer),
		say("5. The other end: turn the board end for end, the same side down, and swing the gauge to the same angle on the other side of square."),
	}
	if t.Butt {
		return append(out, say("6. Cut two offcuts first and hold them together: hollow side to hollow side they show %s, and the end lies close on its whole thickness. The board that runs past is cut at the same setting, or trimmed after glue-up.", angleText(t.Dihedral())))
	}
	return append(out, say("6. Cut a short set in offcuts first and hold it together with tape. Joints open on the outer side ask for more tilt, on the hollow side for less; open at the upper or the lower edge, for another gauge."))
}

func hopperCaution() Panel {
	return panel(cautionHeading,
		say("A tilted blade traps an offcut more easily: let it fall free, with no stop beside it. Clamp short or wide boards to a sled; guard on, hands clear of the side to which the blade leans. Follow the machine's manual; local rules come first."))
}
