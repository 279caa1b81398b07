package templates

import (
	"math"
	"strconv"
)

// Titles, headings and notes of rings and staves.

func (t segmentTemplate) title() string {
	shape := say("flats left")
	if t.Round {
		shape = say("round")
	}
	return say("Ring of %s pieces, %s, %s over %s", strconv.Itoa(t.Pieces), shape, t.length(t.Outer), t.length(t.Inner))
}

// steps is the order of work at the saw.
func (t segmentTemplate) steps() []string {
	out := []string{
		say(isolate),
		say("2. Rip the board to %s. All pieces one after the other take %s of it.", t.length(t.Board()), t.length(t.Stock())),
		say("3. Set the gauge %s off square, by the triangle, the blade upright. Cut the first end, then roll the board over about its length after every cut: the mitres lean to and fro and no wood is lost between them.", angleText(t.OffSquare())),
		say("4. Set a stop by the first piece that measures %s on its outer side. All are cut at that setting.", t.length(t.OuterSide())),
		say("5. Hold the ring together with a band before any glue. %s off at every end leaves the last joint open by %s. Glued as two halves, their ends can be planed true before the ring is closed.",
			angleText(slipOfEnds), t.length(t.Opens(slipOfEnds))),
	}
	if t.Round {
		out = append(out, say("6. The circles are struck from the centre on the glued ring, or traced from the piece before; saw and turn to them last."))
	}
	return out
}

func segmentsCaution() Panel {
	return panel(cautionHeading,
		say("Small pieces: hold them down in a sled, with a stop that ends before the blade; let a cut piece lie until the blade stands still. Guard on, follow the machine's manual; local rules come first. A ring is turned only when its glue is cured, at low speed at first and with a face shield."))
}

func (t staveTemplate) title() string {
	return say("Vessel of %s staves, %s to %s, %s high", strconv.Itoa(t.Pieces), t.length(t.Bottom), t.length(t.Top), t.length(t.Height))
}

// steps is the order of work at the saw.
func (t staveTemplate) steps() []string {
	tilt := angleText(t.EdgeTilt())
	out := []string{
		say(isolate),
		say("2. Plane the staves to %s and leave them over length; %s is their length between level ends.", t.length(t.Thickness), t.length(t.Long())),
	}
	if t.Wide() > t.Narrow() {
		out = append(out,
			say("3. Set out both edges of one stave by their points, on the outer side. Saw to the lines in a tapering jig with the blade tilted %s, by the bevel gauge stood on the table: the outer side stays the wider one on both edges.", tilt),
			say("4. Ends that are to lie level are cut square across with a tilt of %s.", angleText(math.Pi/2-t.Corner().Slope)))
	} else {
		out = append(out, say("3. Rip both edges with the blade tilted %s, by the bevel gauge stood on the table: the outer side stays the wider one on both edges, %s.", tilt, t.length(t.Wide())))
	}
	return append(out, say("Tape the staves side by side, outer sides up, and roll them up dry. Joints open on the outer side ask for more tilt, on the hollow side for less; a slip of 0.1° counts twice at every joint."))
}

// caution is that of the cut that is made: upright staves are ripped by the fence, others
// go in a jig; the blade is tilted for both.
func (t staveTemplate) caution() Panel {
	if t.Wide() == t.Narrow() {
		return panel(cautionHeading, say(TiltedRip))
	}
	p := taperCaution()
	p.Text = append(p.Text, say("A tilted blade traps an offcut more easily: the jig runs on the side from which the blade leans away, so that the waste falls free."))
	return p
}
