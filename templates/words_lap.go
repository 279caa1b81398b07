package templates

import (
	"math"

	"rodsheet/geometry/measure"
	"rodsheet/templates/wording"
)

// Titles, headings and notes of half-laps.
const (
	lapTitle    wording.Text = "Half-lap: %s crossed by %s at %s"
	beyondDatum wording.Text = "on the far edge the near shoulder falls %s beyond the datum; if the part ends there, the lap is open"
)

// SingleLap is what the lines of a lap are called where nothing is known of the
// part that it stands on.
func SingleLap() LapNames {
	return LapNames{
		Reference: tag("reference-edge"), Far: tag("far-edge"),
		Near: tag("near-shoulder"), Other: tag("far-shoulder"), Datum: tag("datum"),
	}
}

// steps is the order of work at the saw.
func (t lapTemplate) steps() Panel {
	first := say("4. First cut, the far shoulder: saw to the template line and set the stop against the end.")
	if t.At > 0 {
		first = say("4. First cut, the far shoulder: datum end against the stop, the stop %s from the blade, measured along the fence.", t.length(t.Stop()))
	}
	return panel(sawHeading,
		say(isolate),
		say("2. Blade height %s, half the stock. Prove it on two offcuts of the same milling: lapped, they come flush.", t.length(t.BladeHeight())),
		say("3. Mitre gauge %s off square; a bevel gauge laid to the edge shows bevel %s. Reference edge on the fence, the face to be cut down. Swing the gauge so that the blade runs along the line of the template.",
			measure.Angle(t.OffSquare()).Text(t.Unit), measure.Angle(t.Bevel()).Text(t.Unit)),
		first,
		say("5. Second cut, the near shoulder: spacer %s between part and stop. %s", t.length(t.Spacer()), t.usualRule()),
		say("6. Take out the rest in passes between the two cuts. Never trap an offcut between fence and blade."),
		say("7. Cut a test lap first, in an offcut of the same milling. The crossing part must go in by hand without shake, and the faces come flush. Too tight: lengthen the spacer. Too loose: shorten it."),
	)
}

// usualRule says what the shop rule would do at this angle.
func (t lapTemplate) usualRule() string {
	square, along := t.UsualRuleExcess()
	if square == 0 {
		return say("The usual rule, edge length less the kerf, gives the same at 90°.")
	}
	return say("The usual rule, edge length less the kerf, makes it %s too long and the lap %s too wide at this angle: the blade crosses the edge slanting and takes more than its kerf.",
		t.length(along), t.length(square))
}

// lapHands says which setting gives which lean; a square lap has no other hand.
func lapHands(otherHand float64) Panel {
	p := panel("Hands",
		say("Positions are from the datum, along the edge they name."),
		say("The template shows the face that is cut. Both parts of one crossing take the same hand, each on its own cut face. Where their widths differ, the part that crosses has width and crossing width exchanged."),
		say("One gauge setting gives two laps on a part. Turned end for end, the same face down, it repeats the same lean on the same face; the other edge comes to the fence, so measure from the other end along that edge."),
		say("Tumbled end over end, the other face down and the same edge on the fence, it gives the lap on the other face; seen from the first face it leans the other way."),
		say("Rolled about its length, the other edge is on the fence and the stop no longer serves."),
	)
	if otherHand != math.Pi/2 {
		p.Text = append(p.Text, say("For the other hand swing the gauge to the other side of square; its template is that of %s.", angleText(otherHand)))
	}
	return p
}
