package templates

import (
	"rodsheet/geometry/joint"
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

// topWords says how a top is set out or, in a full setting, how its pattern is used.
func topWords(t joint.Top, s Setting) []string {
	u := s.Unit
	rest := []string{
		say("3. Rough the edge %s outside the line, then work to it.", measure.Length(u.Round(2, 1.0/16)).Text(u)),
		say("4. Glass is ordered by its figures, never cut from paper. All cutting and edge work comes before tempering."),
	}
	switch {
	case s.Full:
	case t.Diameter > 0:
		return append([]string{
			say("1. Strike both centre lines on the underside, square to each other."),
			say("2. Strike the circle from their crossing with a beam compass: radius %s. Proof: the diameter, measured along both lines.", measure.Length(t.Diameter/2).Text(u)),
		}, rest...)
	default:
		return append([]string{
			say("1. Strike both centre lines on the underside and set out the corners by the table."),
			say("2. Lay the sheet of a corner on both its edges and strike what is clipped or rounded; a sharp corner of 90° is proved by a square."),
		}, rest...)
	}
	return append([]string{
		say("1. Strike both centre lines on the underside first and lay the taped pattern on them."),
		say("2. A circle is better struck with a beam compass from the centre; the pattern proves it."),
	}, rest...)
}
