package piece

import (
	"cmp"

	"rodsheet/geometry/joint"
	"rodsheet/geometry/measure"
	"rodsheet/templates/piece/design"
)

// longest is more than any furniture, in mm.
const longest = design.Longest

// figures refuses what the geometry of ring, legs and joints does not look at by
// itself.
func (j *validator) figures() {
	d := j.design
	plan := d.Ring.Ring // the depth is asked apart: where the laps meet does not hang on it
	plan.Depth = plan.Width
	j.ask(plan.Check, keys("ring.sides", "ring.inside", "ring.width"))
	j.note(
		choice("legs.lean", d.Legs.Lean, design.ByFootSpread),
		choice("legs.height-to", d.Legs.To, design.Overall),
	)
	j.note(d.Outside(j.doubts)...)
	j.ask(func() error {
		return measure.AtMost("ring.slack", measure.Length(d.Ring.Slack), "ring.width", measure.Length(d.Ring.Width), "ring.slack-play")
	}, keys("ring.width"))
	if d.Top.Kind != design.NoTop {
		j.ask(func() error {
			return measure.AtMost("top.points", measure.Number(float64(len(d.Top.Points))), "", measure.Number(design.MostPoints), "top.round-diameter")
		}, keys("top.kind"))
	}
	if d.Legs.To == design.Overall {
		j.ask(func() error { return checkRoom(d) }, keys("ring.depth"), aboveFrameKeys)
	}
	j.note(checkMoisture(d.Wood))
}

// choice refuses a number that stands for none of the choices, which count
// from 0.
func choice[C ~uint8](figure measure.ID, c, last C) error {
	return measure.AtMost(figure, measure.Number(float64(c)), "", measure.Number(float64(last)), "")
}

// checkRoom refuses an overall height that leaves no room for the frame.
func checkRoom(d design.Design) error {
	return measure.Above("legs.height", measure.Length(d.Legs.Height),
		"piece.above-floor", measure.Length(d.Ring.Depth+aboveFrame(d)),
		"legs.overall-from-floor")
}

// checkMoisture refuses moisture at which the movement of wood is not
// proportional to it. Where both are 0 the design states none.
func checkMoisture(w design.Wood) error {
	if w.MoistureFrom == 0 && w.MoistureTo == 0 {
		return nil
	}
	// Any width and wood will do: the limits are those of the rule.
	return joint.Movement{Width: 1, Coefficient: 0.001, From: w.MoistureFrom, To: w.MoistureTo}.Check()
}

// asMilled refuses sizes as milled that are nothing, or so far from the
// designed ones, which are sound, that they are rather a slip or another
// design.
func (j *validator) asMilled() {
	d := j.design
	j.ask(func() error { return CheckAsMilled("milled.width", d.Milled.Width, d.Ring.Width) }, keys("ring.width"))
	j.ask(func() error { return CheckAsMilled("milled.depth", d.Milled.Depth, d.Ring.Depth) }, keys("ring.depth"))
	j.ask(func() error { return CheckAsMilled("milled.breadth", d.Milled.Breadth, d.Legs.Breadth) }, keys("legs.breadth"))
}

// CheckAsMilled allows a quarter of the designed size either way.
func CheckAsMilled(figure measure.ID, mm, designed float64) error {
	const hint = "milled.change-design"
	if mm == 0 {
		return nil
	}
	return cmp.Or(
		measure.AtLeast(figure, measure.Length(mm), "milled.least", measure.Length(designed*0.75), hint),
		measure.AtMost(figure, measure.Length(mm), "milled.most", measure.Length(designed*1.25), hint),
	)
}
