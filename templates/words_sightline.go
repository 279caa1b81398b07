package templates

import (
	"math"

	"rodsheet/templates/wording"
)

// Titles, headings and notes of legs that lean two ways.
const (
	sightlineTitle    wording.Text = "Leg with a rake of %s and a splay of %s"
	elevationsHeading wording.Text = "How the leg looks"
	resultantName     wording.Text = "gauge on the sightline"
)

// boring is the order of work at a slab.
func (t sightlineTemplate) boring() Panel {
	bevel := angleText(math.Pi/2 - t.Resultant())
	edge, hands := say("the edge that the foot leans out over"), say("2. Right hand: the leg on your right as you stand before that edge; left hand: the one on your left. On the underside the hands change places.")
	if t.hand() == EitherHand {
		hands = say("2. The drawing serves both legs of a pair.")
	}
	if t.Rake < 1e-9 {
		edge = say("the front edge")
	}
	return panel("Boring",
		say("1. Mark the centre of the hole on the upper face of the slab. Lay the sheet on it, its edge line along %s, or parallel to it, and strike the sightline across the slab.", edge),
		hands,
		say("3. Set the bevel gauge to %s and stand it on the sightline. Seen along the line the bit is plumb, seen across it the bit lies in the blade of the gauge: %s from plumb.", bevel, angleText(t.Resultant())),
		say("4. Bored from above the upper end of the bit leans away from where the foot goes; bored from below the bit leans towards it. Back the far side with waste wood, or bore from the other side once the point comes through."),
		say("5. Bore a test hole in an offcut of the same thickness, put a stick in it, and measure rake and splay with a second gauge from the front and from the side."),
	)
}

func boringCaution() Panel {
	return panel(cautionHeading,
		say("Clamp the slab; keep both hands on the drill or the brace and behind the bit. At a drill press clamp slab and wedge to the table. Follow the machine's manual; local rules come first."))
}
