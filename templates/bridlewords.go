package templates

import (
	"fmt"
	"math"

	"rodsheet/geometry/joint"
	"rodsheet/geometry/measure"
)

func bridleGiven(b joint.Bridle) []Figure {
	return []Figure{
		{"width of stretcher, thickness of leg", measure.Length(b.Width)},
		{"depth of stretcher", measure.Length(b.Depth)},
		{"breadth of leg", measure.Length(b.Leg)},
		{"splay", measure.Angle(b.Angle)},
	}
}

// bridleFigures returns the sizes of both parts, counted from their datum
// corners.
func bridleFigures(b joint.Bridle) []Figure {
	stretcher, leg := b.Stretcher(), b.Head().FromFarEdge()
	upper, lower := stretcher.Cheeks()
	return []Figure{
		{"tenon and slot width", measure.Length(b.Third())},
		{"cheek depth, each side", measure.Length(upper)},
		{"far cheek from the face", measure.Length(lower)},
		{"gauge from square", measure.Angle(b.Angle)},
		{"gauge from the edge", measure.Angle(math.Pi/2 - b.Angle)},
		{"stretcher shoulder, underside", measure.Length(stretcher.Shoulder(0))},
		{"stretcher shoulder, top", measure.Length(stretcher.Shoulder(stretcher.Width))},
		{"stretcher trimmed end, top", measure.Length(stretcher.End(stretcher.Width))},
		{"stretcher " + tongue(stretcher) + " length, trimmed", measure.Length(stretcher.Length())},
		{"stretcher cut height on its rough end", measure.Length(stretcher.CutHeight())},
		{"leg shoulder, inner edge", measure.Length(leg.Shoulder(0))},
		{"leg shoulder, outer edge", measure.Length(leg.Shoulder(leg.Width))},
		{"leg trimmed head, outer edge", measure.Length(leg.End(leg.Width))},
		{"leg " + tongue(leg) + " length, trimmed", measure.Length(leg.Length())},
		{"leg cut height on its rough end", measure.Length(leg.CutHeight())},
		{"left long at both ends", measure.Length(joint.BridleLong)},
		{"glue area, two cheeks", measure.Area(2 * stretcher.CheekArea())},
	}
}

// tongue names what the end of a part is made into.
func tongue(e joint.BridleEnd) string {
	if e.Slot {
		return "slot"
	}
	return "tenon"
}

// bridleSteps is the order of work.
func bridleSteps(b joint.Bridle, u measure.Unit) []string {
	length := func(mm float64) string { return measure.Length(mm).Text(u) }
	slotted, tenoned := "stretcher", "leg"
	slot, tenon := b.Stretcher(), b.Head()
	if b.Mortise == joint.MortiseInLeg {
		slotted, tenoned = tenoned, slotted
		slot, tenon = tenon, slot
	}
	cheek, _ := tenon.Cheeks()
	return []string{
		"1. Isolate power before setting. Follow the machine's manual and keep its guards on.",
		"2. Mill stretchers, legs and some spare length together. Cut the whole joint in offcuts of that milling first: the fit depends on their thickness, not on the drawing.",
		fmt.Sprintf("3. Saw the ends at %s from square, %s beyond the trim line. Stretcher and leg have the same angle.",
			measure.Angle(b.Angle).Text(u), length(joint.BridleLong)),
		"4. Knife the shoulders round all four sides from the wrap-round. Where they do not meet at an arris the paper has slipped.",
		fmt.Sprintf("5. Slot in the %s: %s wide, in the middle of the thickness. Standing on its rough end it is cut %s high, square to the bottom of the slot.",
			slotted, length(slot.Tenon), length(slot.CutHeight())),
		fmt.Sprintf("6. Tenon on the %s: take %s off face and back, from the shoulder to the end. For the back swing the gauge to the same angle on the other side of square.",
			tenoned, length(cheek)),
		"7. Fit: the tenon slides in by hand and stays when the joint is lifted. Pare the cheeks, not the shoulder.",
		fmt.Sprintf("8. Both ends stand about %s proud. Glue up, and trim them flush once the glue is hard: the stretcher to the leg's outer face, the head to the stretcher's top.",
			length(joint.BridleLong)),
		"Datum: the long corner of the trimmed end, on the stretcher the lower one, on the leg the inner one. Angles are from square. The trim line is for after glue-up.",
		"Right hand: the corner on the right as you look at the face side, foot down. A stretcher takes one of each. Face sides of stretcher and leg look the same way.",
	}
}

// bridleHolding is how an angled part is held upright.
func bridleHolding(b joint.Bridle, u measure.Unit) []string {
	lean := "The part stands square on its end."
	if b.Angle > 0 {
		lean = fmt.Sprintf("Standing on its rough end the part leans %s. Clamp it in an upright jig against a filler strip sawn at that angle; for the other face the strip goes to the other side.",
			measure.Angle(b.Angle).Text(u))
	}
	return []string{
		lean,
		"The jig slides along the fence; a featherboard holds it there. Hands stay on the jig, never above or beside the cut.",
		"Back the far side with waste wood so that it does not break out.",
	}
}
