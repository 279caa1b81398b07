package templates

import (
	"math"

	"rodsheet/geometry/measure"
	"rodsheet/templates/wording"
)

// Titles, headings and notes of bevel gauges.
const (
	angleTitle        wording.Text = "angle %s"
	anglesTitle       wording.Text = "Angles %s"
	andRest           wording.Text = "%s and %s"
	nMore             wording.Text = "%d more"
	angleHeading      wording.Text = "angle %s"
	anglesHeading     wording.Text = "angles %s and %s"
	bevelHeading      wording.Text = "%s: bevel %s"
	inHand            wording.Text = "%s, %s"
	anglePoints       wording.Text = "%s, set out by two points"
	drawnAsSupplement wording.Text = "%s is drawn as its supplement, bevel %s: the same line, read from the other side"
	drawnOnce         wording.Text = "%s is asked for more than once and drawn once"
	degreesAndMinutes wording.Text = "%s = %s"
	toTheEdge         wording.Text = "to the edge"
	slopeName         wording.Text = "slope"
	byOffSquare       wording.Text = "its %s"
	slipCosts         wording.Text = "a slip of %s at the far end costs"
	oneIn             wording.Text = "1 in %s"
)

// gaugeWords says how a triangle is used. It is printed once.
func gaugeWords(bothHands bool) Panel {
	hands := say("Turn the gauge over for the other hand.")
	if bothHands {
		hands = say("Right hand: with the gauge edge towards you the slope rises to the right. Left hand: to the left.")
	}
	return Panel{Heading: say("Setting a bevel gauge"), Text: []string{
		say("Stock of the gauge on the triangle's gauge edge, blade along the slope: the bevel of the lower corner. Stock on the upright side: that of the upper one. %s", hands),
		say("On an edge it strikes off square by the other corner's figure; a mitre gauge is turned by that figure too."),
		say("Proof: strike from both sides of a straight board; the lines are equal and opposite."),
	}}
}

// gaugeInShort says the same where there is more to say.
func gaugeInShort() Panel {
	return Panel{Heading: say("Setting a bevel gauge"), Text: []string{
		say("Stock of the gauge on the triangle's gauge edge or upright side, blade along the slope; turn it over for the other hand. Proof: struck from both sides of a straight board the lines are equal and opposite."),
	}}
}

// pointWords says how an angle is set out that has no triangle, and why.
func (g gauge) pointWords() []string {
	l := g.line()
	from := say("its working edge")
	if g.Rise() > g.Base {
		from = say("a line square to the working edge")
	}
	onPaper := l.Run * math.Tan(AngleOnPaper)
	return []string{
		say("On a wide straight board mark one point on %s and, %s along it, another one %s from it, with a knife. Lay a straight edge through both, strike the line, and set the gauge to that.",
			from, g.length(l.Run), g.length(l.AtEnd)),
		say("No triangle: %s of paper would be off by %s at the far point.",
			say("±%s", angleText(AngleOnPaper)), g.length(g.Unit.Round(math.Round(10*onPaper)/10, math.Round(32*onPaper/measure.MillimetresPerInch)/32))),
	}
}
