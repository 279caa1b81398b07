package templates

import (
	"math"

	"rodsheet/geometry/measure"
	"rodsheet/templates/wording"
)

// Titles, headings and notes of dovetails.
const (
	dovetailThrough wording.Text = "Dovetails, through: %s on %s"
	dovetailLapped  wording.Text = "Dovetails, lapped: %s on %s"
	setOutHeading   wording.Text = "Tails, from the lower edge, %s"
)

// title names the joint and its boards.
func (t dovetailTemplate) title() string {
	kind := dovetailThrough
	if t.Lap > 0 {
		kind = dovetailLapped
	}
	tails := say("%d tails", t.Tails)
	if t.Tails == 1 {
		tails = say("one tail")
	}
	return say(kind, tails, t.length(t.Width))
}

func setOutHead() []string {
	return []string{say("tail"), say("end, lower"), say("end, upper"), say("root, lower"), say("root, upper")}
}

// warnings says what is at the edge of what wood bears (common practice, no source).
func (t dovetailTemplate) warnings() (out []string) {
	lap, pin := t.Unit.Round(4, 5.0/32), t.Unit.Round(3, 1.0/8)
	// The lesser of what is said in both units, so that they say the same of one piece.
	const leastLap, leastPin = 5.0 / 32 * measure.MillimetresPerInch, 3
	if t.Slope > math.Atan(1.0/5) {
		out = append(out, say("slope %s: the corners of the tails are short grain and break easily; 1:6 to 1:8 is usual", angleText(t.Slope)))
	}
	if t.Lap > 0 && t.Lap < leastLap {
		out = append(out, say("lap before the tails: %s; under %s the chisel easily shows", t.length(t.Lap), t.length(lap)))
	}
	if narrow := math.Min(t.Pin, t.HalfPin); narrow < leastPin {
		out = append(out, say("pins of %s need a thin saw; %s is the usual least", t.length(narrow), t.length(pin)))
	}
	return out
}

// steps is the order of work.
func (t dovetailTemplate) steps() []string {
	face, thick := t.TailEnd().OffSquare()
	ends := say("square all round")
	if math.Abs(thick) > 1e-9 {
		ends = say("%s off square through the thickness, the %s the longer", angleText(math.Abs(thick)), t.longer(thick))
	}
	if math.Abs(face) > 1e-9 {
		ends = say("%s off square across the board, the upper edge the longer, and %s through the thickness, the %s the longer",
			angleText(math.Abs(face)), angleText(math.Abs(thick)), t.longer(thick))
	}
	saw := say("4. Saw the tails square through the board, in the waste beside the lines.")
	if math.Abs(thick) > 1e-9 {
		saw = say("4. Saw the tails along the grain of the pin board: from the line on the outer side to that on the hollow side, which is not square to the face.")
	}
	gauge := say("Gauge the lines of the roots round both boards.")
	chop := say("5. Chop the waste from both sides to the middle, by the gauge lines.")
	if t.Lap > 0 {
		gauge = say("Gauge the lines of the roots round the tail board; on the pin board across the hollow side, and the lap on its end. Its outer side has no line.")
		chop = say("5. The sockets of the pin board stop %s behind its outer side: saw slanting to both lines, then chop and pare. Nothing is cut on the outer side.", t.length(t.Lap))
	}
	out := []string{
		say(isolate),
		say("2. Mill both boards flat and to one width, and saw the ends %s. Mark the outer sides and the lower edges. Try the joint in offcuts of the same milling.", ends),
		say("3. Fold the strips over the ends, the folds on the arrises, and knife the lines; prick the corners through. %s", gauge),
		saw, chop,
		say("6. The pins may as well be scribed from the tails once these are cut: that is truer than any paper. Saw beside the line, in the waste."),
		say("7. Pare to fit: the tail board slides on along the grain of the pin board, by taps on a block and all its width at once."),
		say("Clamp the board; both hands stay behind the edge of the chisel. With a router follow its manual and that of the jig; the slope is that of its bit."),
	}
	if !t.upright() {
		out = append(out, say("Right hand: the right end of a board as you look at its outer side, lower edge down. A right end of a tail board meets a left end of a pin board."))
	}
	return out
}

// longer names the face that reaches farther where an end is off square through the
// thickness.
func (t dovetailTemplate) longer(thickness float64) string {
	if thickness > 0 {
		return say("outer side")
	}
	return say("hollow side")
}
