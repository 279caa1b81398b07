package templates

import (
	"math"

	"rodsheet/geometry/joint"
	"rodsheet/templates/wording"
)

// Titles, headings and notes of mortise and tenon.
const mortiseHeading wording.Text = "Mortise"

// title names the joint and its leans.
func (t mortiseTemplate) title() string {
	splay, rake, turn := "", "", ""
	if t.Splay != 0 {
		splay = say(", leg splayed %s", angleText(t.Splay))
	}
	if t.Rake != 0 {
		rake = say(", raked %s", angleText(t.Rake))
	}
	if t.Turn != 0 {
		turn = say(", turned %s in plan", angleText(t.Turn))
	}
	return say("Mortise and tenon%s%s%s", splay, rake, turn)
}

// thin says where little wood is left of the leg.
func (t mortiseTemplate) thin() (out []string) {
	least := t.Unit.Round(joint.ThinWood, 1.0/4)
	judged := t
	judged.Mortise.Clear = blindClear // in either unit, or one piece would be thin by the other alone
	for i, f := range t.figures() {
		wood := f.ID == "mortise.above" || f.ID == "mortise.behind" || f.ID == "mortise.outer-wood" || f.ID == "mortise.frame-wood"
		if wood && !f.Aside && judged.figures()[i].Value.Value < joint.ThinWood { // under what is said in either unit
			out = append(out, say("%s: %s; under %s is little", f.Name, f.Value.Text(t.Unit), t.length(least)))
		}
	}
	return out
}

// slants says how far the shoulder runs off square, for those ways that it does.
func (t mortiseTemplate) slants() string {
	s := t.Shoulder()
	face, edge := angleText(math.Abs(s.Face)), angleText(math.Abs(s.Edge))
	switch {
	case s.Face != 0 && s.Edge != 0:
		return say("%s off square across the outer side and %s across the underside", face, edge)
	case s.Face != 0:
		return say("%s off square across the outer side, square across underside and top", face)
	case s.Edge != 0:
		return say("%s off square across the underside, square across outer and frame side", edge)
	}
	return say("square all round")
}

// steps is the order of work at the rail.
func (t mortiseTemplate) steps() []string {
	outer, _ := t.Cheeks()
	end := say("to length")
	if t.Through() {
		end = say("%s over length", t.length(t.RoughLength()-t.Length()))
	}
	steps := []string{
		say(isolate),
		say("2. Chop the mortise first, and fit the tenon to it. Cut the whole joint in offcuts of the same milling before the parts."),
		say("3. Saw the end of the rail parallel to the shoulder, %s: %s.", end, t.slants()),
		say("4. Knife the shoulder round all four sides from the wrap-round. Where the lines do not meet at an arris the paper has slipped."),
		say("5. Gauge the cheeks from the outer side, %s deep, and saw them to the shoulder. Then saw the edges of the tenon.", t.length(outer)),
	}
	switch t.Haunch {
	case joint.SquareHaunch:
		steps = append(steps, say("6. Leave the haunch %s long, parallel to the shoulder. Chop its groove in the leg %s deep, square to the leg, up to the top of the rail.", t.length(t.Stub()), t.length(t.Groove())))
	case joint.SlopingHaunch:
		steps = append(steps, say("6. Saw the haunch from %s at the tenon to nothing at the top. Its groove in the leg slopes alike, from %s deep, square to the leg.", t.length(t.Stub()), t.length(t.Groove())))
	}
	steps = append(steps, say("Fit: the tenon goes in by hand and stays. Pare the cheeks, not the shoulder."))
	if t.Through() {
		steps = append(steps, say("The tenon comes out at the back: trim it flush once the glue is hard."))
	} else {
		steps = append(steps, say("The mortise is %s deeper than the tenon goes in, so that the shoulder closes before the tenon meets the bottom.", t.length(t.Clearance())))
	}
	if !t.Full && t.Symmetric() {
		steps = append(steps, say("The rail is alike from outer side and frame side: for its other end wrap the same template with the two exchanged."))
	}
	return append(steps, say("Right hand: the end on the right as you look at the outer side, foot down. A rail takes one of each hand, and so do the two legs it joins."))
}

// mortising is the order of work at the leg.
func (t mortiseTemplate) mortising() Panel {
	foot, out := t.Lean()
	side := say("outer side")
	if out < 0 {
		side = say("frame side")
	}
	var leans []string
	if foot != 0 {
		leans = append(leans, say("%s off square towards the foot", angleText(foot)))
	}
	if out != 0 {
		leans = append(leans, say("%s off square towards the %s", angleText(math.Abs(out)), side))
	}
	wedge := say("The mortise is square to the rail side.")
	if len(leans) > 0 {
		wedge = say("The mortise follows the rail: it runs %s. Wedge the leg up so far under an upright bit or chisel, or work to a bevel gauge stood on the leg.",
			wording.And(leans...))
	}
	work := say("Bore out the waste %s deep, then pare to the knife lines; mark the depth on the bit.", t.length(t.Bored()))
	switch {
	case t.Through():
		work = say("Work from both sides to the middle, by the lines on rail side and back, so that nothing breaks out.")
	case len(leans) > 0:
		work = say("Bore out the waste along the slant, then pare to the knife lines. The mark on the bit stands %s from its point: the mortise is %s deep, square to the leg.", t.length(t.Slant()), t.length(t.Bored()))
	}
	return panel("Mortising",
		say("Leave the leg long until after glue-up: the end grain above the mortise splits easily. Square the line of its head round it. Lay the strip on the rail side, its head at that line, the fold on the arris with the outer side, and knife the outline."),
		wedge,
		work,
		say("Clamp the leg down; both hands behind the edge of the chisel."),
	)
}
