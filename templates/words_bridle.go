package templates

import (
	"math"

	"rodsheet/geometry/joint"
	"rodsheet/geometry/measure"
	"rodsheet/templates/wording"
)

// Titles, headings and notes of bridles.
const bridleTitle wording.Text = "Corner bridle, leg splayed %s"

func stretcherSides() partSides {
	return partSides{"stretcher", "underside", tag("underside"), tag("top"), tag("ring-side"), tag("outer-side")}
}

func legSides() partSides {
	return partSides{"leg", "back", tag("back"), tag("stretcher-side"), tag("ring-side"), tag("outer-side")}
}

// tongue names what the end of a part is made into.
func tongue(e joint.BridleEnd) string {
	if e.Slot {
		return say("slot")
	}
	return say("tenon")
}

// across names the line across a part where its joint ends.
func across(e joint.BridleEnd) string {
	if e.Slot {
		return say(labels["slot-bottom"])
	}
	return say(labels["shoulder"])
}

// bridleSteps is the order of work.
func bridleSteps(b joint.Bridle, s Setting) []string {
	u := s.Unit
	length := func(mm float64) string { return measure.Length(mm).Text(u) }
	slotted, tenoned := say("stretcher"), say("leg")
	slot, tenon := b.Stretcher(), b.Head()
	if b.Mortise == joint.MortiseInLeg {
		slotted, tenoned = tenoned, slotted
		slot, tenon = tenon, slot
	}
	cheek, _ := tenon.Cheeks()
	steps := []string{
		say(isolate),
		say("2. Mill stretchers, legs and some spare length together. Cut the whole joint in offcuts of that milling first: the fit depends on their thickness, not on the drawing."),
		say("3. Saw the ends %s off square, bevel %s, %s beyond the trim line. Stretcher and leg have the same angle.",
			measure.Angle(b.Angle).Text(u), measure.Angle(math.Pi/2-b.Angle).Text(u), length(b.Long)),
		say("4. Knife the shoulders round all four sides from the wrap-round. Where they do not meet at an arris the paper has slipped."),
		say("5. Slot in the %s: %s wide, in the middle of the thickness. Standing on its rough end it is cut %s high, square to the bottom of the slot.",
			slotted, length(slot.Tenon), length(slot.CutHeight())),
		say("6. Tenon on the %s: take %s off ring side and outer side, from the shoulder to the end. For the outer side swing the gauge to the same angle on the other side of square.",
			tenoned, length(cheek)),
		say("7. Fit: the tenon slides in by hand and stays when the joint is lifted. Pare the cheeks, not the shoulder."),
		say("8. Both ends stand about %s proud. Glue up, and trim them flush once the glue is hard: the stretcher to the leg's back, the head to the stretcher's top.",
			length(b.Long)),
		say("Datum: the corner of the trimmed end, on the stretcher the lower one, on the leg the one at its back. The trim line is for after glue-up. Cheeks are counted from the ring side."),
		say("Right hand: the corner on the right as you look at the ring side, foot down. Stretcher and leg have their ring sides to the same way, and a stretcher with a leg at both ends takes one of each hand."),
	}
	if !s.Full {
		steps = append(steps, say("The joint is alike from both sides: for the left hand wrap the same template with ring side and outer side exchanged."))
	}
	return steps
}

// bridleHolding is how an angled part is held upright.
func bridleHolding(b joint.Bridle, u measure.Unit) Panel {
	lean := say("The part stands square on its end.")
	if b.Angle > 0 {
		lean = say("Standing on its rough end the part leans %s. Clamp it in a tenoning jig against a filler strip sawn at that angle; for the other side the strip goes to the other side.",
			measure.Angle(b.Angle).Text(u))
	}
	return panel("Holding the part",
		lean,
		say("The jig slides along the fence; a featherboard holds it there. Hands stay on the jig, never above or beside the cut."),
		say("Back the far side with waste wood so that it does not break out."),
	)
}
