package templates

import (
	"rodsheet/geometry/measure"
	"rodsheet/templates/wording"
)

// Titles, headings and notes of tops.
const (
	topTitle          wording.Text = "Top, %s"
	topHeading        wording.Text = "Top"
	topCornersHeading wording.Text = "Corners"
	topWorkHeading    wording.Text = "Order of work"
	roundSize         wording.Text = "%s round"
	overallSize       wording.Text = "%s × %s overall%s"
	asClipped         wording.Text = ", as clipped"
	asRounded         wording.Text = ", as rounded"
	sharpClipped      wording.Text = " to the sharp corners, clipped %s"
	sharpRounded      wording.Text = " to the sharp corners, rounded %s"
	cornerClipped     wording.Text = ", clipped %s"
	cornerRounded     wording.Text = ", rounded %s"
)

// topCornerName names the corners that one drawing serves.
func topCornerName(numbers []string, angle string) string {
	if len(numbers) == 1 {
		return say("top, corner %s: %s", numbers[0], angle)
	}
	return say("top, corners %s: %s", wording.And(numbers...), angle)
}

func topCornersHead() []string {
	return []string{say("corner"), say("right of the centre"), say("up from it"), say("to the next corner"), say("to corner 1")}
}

func topCornersWords() []string {
	return []string{say("Strike two lines square to each other through the centre and measure every corner from them: to the left and down where there is a minus. The two columns on the right prove it. Corners are counted as in the plan, before they are clipped or rounded.")}
}

// work says how a top is set out or, in a full setting, how its pattern is used; corners are those that have a sheet.
func (t topTemplate) work(corners []Drawing) []string {
	u := t.Unit
	rest := []string{
		say("3. Rough the edge %s outside the line, then work to it.", measure.Length(u.Round(2, 1.0/16)).Text(u)),
		say("4. Glass is ordered by its figures, never cut from paper: %s. All cutting and edge work comes before tempering.", t.glassOrder()),
	}
	corner := say("2. Prove each corner by a square.")
	switch {
	case t.Clip > 0 || t.Round > 0:
		corner = say("2. Lay the sheet of a corner on both its edges and strike what is clipped or rounded.")
	case len(corners) > 0:
		corner = say("2. Prove each corner by its sheet, one of 90° by a square.")
	}
	switch {
	case t.Full:
	case t.Diameter > 0:
		return append([]string{
			say("1. Strike both centre lines on the underside, square to each other."),
			say("2. Strike the circle from their crossing with a beam compass: radius %s. Proof: the diameter, measured along both lines.", measure.Length(t.Diameter/2).Text(u)),
		}, rest...)
	default:
		return append([]string{
			say("1. Strike both centre lines on the underside and set out the corners by the table."),
			corner,
		}, rest...)
	}
	return append([]string{
		say("1. Strike both centre lines on the underside first and lay the pattern on them."),
		say("2. A circle is better struck with a beam compass from the centre; the pattern proves it."),
	}, rest...)
}

// glassOrder names the figures that a glass shop needs of the outline.
func (t topTemplate) glassOrder() string {
	if t.Diameter > 0 {
		return say("the diameter")
	}
	needed := []string{say("the size overall%s", t.asWorked())}
	if _, alike := t.side(); alike {
		needed = append(needed, say("the side to the sharp corners"))
	}
	switch {
	case t.Clip > 0:
		needed = append(needed, say("what is clipped off"))
	case t.Round > 0:
		needed = append(needed, say("the radius of the corners"))
	}
	return wording.And(needed...)
}
