package piece

import (
	"cmp"

	"rodsheet/geometry/joint"
	"rodsheet/geometry/measure"
	"rodsheet/templates/piece/design"
)

// Limits in mm, and of counts and densities, that keep a slip of the keyboard
// from going to the saw. They lie beyond any furniture (common practice, no
// source).
const (
	longest     = 10000.0
	thickestTop = 200.0
	mostCount   = 1000.0
	least       = 1.0    // of stock, and of the side of an outline
	heaviest    = 1500.0 // kg/m³: the densest woods come near 1300
)

// figures refuses what the geometry of ring, legs and joints does not look at by
// itself.
func (j *validator) figures() {
	d := j.design
	j.ring(d.Ring)
	j.note(legFigures(d.Legs)...)
	if j.sure(keys("top.kind")) {
		j.note(topFigures(d.Top)...)
	}
	if d.Legs.To == design.Overall {
		j.ask(func() error { return checkRoom(d) }, keys("ring.depth"), aboveFrameKeys)
		j.note(measure.AtMost("overall height", measure.Length(d.Legs.Height), "", measure.Length(longest), ""))
	}
	j.note(woodFigures(d.Wood)...)
	j.note(sawFigures(d.Saw)...)
}

// upTo refuses a length that is negative or beyond the most.
func upTo(figure string, mm, most float64) error {
	return cmp.Or(
		measure.NotNegative(figure, measure.Length(mm)),
		measure.AtMost(figure, measure.Length(mm), "", measure.Length(most), ""),
	)
}

// more refuses a length that is nothing or less, or beyond the most.
func more(figure string, mm, most float64) error {
	return cmp.Or(measure.Positive(figure, measure.Length(mm)), upTo(figure, mm, most))
}

// choice refuses a number that stands for none of the choices, which count
// from 0.
func choice[C ~uint8](figure string, c, last C) error {
	return measure.AtMost("number of the "+figure, measure.Number(float64(c)), "", measure.Number(float64(last)), "")
}

// stock refuses a size of wood or glass that is hardly there, or beyond the
// most.
func stock(figure string, mm, most float64) error {
	return cmp.Or(measure.AtLeast(figure, measure.Length(mm), "", measure.Length(least), ""), upTo(figure, mm, most))
}

// count refuses a count that is negative or beyond reason.
func count(figure string, n int) error {
	number := measure.Number(float64(n))
	return cmp.Or(
		measure.NotNegative(figure, number),
		measure.AtMost(figure, number, "", measure.Number(mostCount), ""),
	)
}

// ring asks the depth apart: where the laps meet does not hang on it.
func (j *validator) ring(r design.Ring) {
	plan := r.Ring
	plan.Depth = plan.Width
	j.ask(plan.Check, keys("ring.sides", "ring.inside", "ring.width"))
	j.note(
		stock("width", r.Width, longest),
		stock("depth", r.Depth, longest),
		choice("plain end", r.Plain, design.ClosedEnd),
		upTo("horn", r.Horn, longest),
		measure.NotNegative("slack", measure.Length(r.Slack)),
	)
	j.ask(func() error {
		return measure.AtMost("slack", measure.Length(r.Slack), "the width of the stretcher", measure.Length(r.Width),
			"give only the play of the lap, square to it")
	}, keys("ring.width"))
}

func legFigures(l design.Legs) []error {
	return []error{
		stock("breadth", l.Breadth, longest),
		checkTenon(l.Tenon),
		choice("lean", l.Lean, design.ByFootSpread),
		choice("height", l.To, design.Overall),
		upTo("clearance of leg and neighbour", l.Clear, longest),
		upTo("proud head", l.Proud, longest),
	}
}

// checkTenon refuses a tenon that is hardly there; 0 stands for a third.
func checkTenon(mm float64) error {
	if mm == 0 {
		return nil
	}
	return stock("tenon", mm, longest)
}

// checkRoom refuses an overall height that leaves no room for the frame.
func checkRoom(d design.Design) error {
	return measure.Above("overall height", measure.Length(d.Legs.Height),
		"stretcher, pads and top", measure.Length(d.Ring.Depth+aboveFrame(d)),
		"give the height from the floor to the highest point of the piece")
}

func topFigures(t design.Top) []error {
	if t.Kind == design.NoTop {
		return nil
	}
	corners := measure.Number(float64(len(t.Points)))
	return append([]error{
		choice("top", t.Kind, design.WoodTop),
		choice("outline of the top", t.Outline, design.FreeOutline),
		choice("corner of the top", t.Corner, design.RoundedCorner),
		stock("thickness of the top", t.Thickness, thickestTop),
		upTo("diameter of the top", t.Diameter, longest),
		measure.AtLeast("overhang", measure.Length(t.Overhang), "", measure.Length(-longest), ""),
		measure.AtMost("overhang", measure.Length(t.Overhang), "", measure.Length(longest), ""),
		upTo("corner size of the top", t.CornerSize, longest),
		measure.AtMost("corners of the top", corners, "", measure.Number(design.MostPoints), "give a round top its diameter"),
	}, padFigures(t.Pads)...)
}

func padFigures(pads design.Pads) []error {
	if pads.Diameter == 0 {
		return nil
	}
	at := measure.Length(pads.At)
	return []error{
		stock("diameter of the pads", pads.Diameter, longest),
		stock("height of the pads", pads.Height, longest),
		measure.AtLeast("mid-length to pad", at, "", measure.Length(-longest), ""),
		measure.AtMost("mid-length to pad", at, "", measure.Length(longest), ""),
	}
}

func woodFigures(w design.Wood) []error {
	density := measure.Number(w.Density)
	waste := measure.Number(w.Waste)
	return []error{
		measure.NotNegative("density", density),
		measure.AtMost("density", density, "", measure.Number(heaviest), "give it in kg/m³"),
		upTo("extra length", w.ExtraLength, longest),
		upTo("extra width", w.ExtraWidth, longest),
		upTo("extra thickness", w.ExtraThickness, longest),
		count("spare parts", w.Spares),
		count("test pieces", w.Tests),
		measure.NotNegative("waste", waste),
		measure.AtMost("waste", waste, "", measure.Number(10), "give it as a share: 0.25 for a quarter"),
		checkMoisture(w),
		checkBoards(w.Boards),
	}
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

func checkBoards(boards []design.Board) error {
	for _, b := range boards {
		if err := cmp.Or(
			more("length of a board", b.Length, longest),
			more("width of a board", b.Width, longest),
			more("thickness of a board", b.Thickness, longest),
			count("boards", b.Count),
		); err != nil {
			return err
		}
	}
	return nil
}

func sawFigures(s design.Saw) []error {
	return []error{
		more("kerf", s.Kerf, design.WidestKerf),
		upTo("highest blade", s.Highest, longest),
		upTo("dado width", s.Dado, longest),
		upTo("reach of the stop", s.StopReach, longest),
	}
}

// asMilled refuses sizes as milled that are nothing, or so far from the
// designed ones, which are sound, that they are rather a slip or another
// design.
func (j *validator) asMilled() {
	d := j.design
	j.ask(func() error { return checkAsMilled("width as milled", d.Milled.Width, d.Ring.Width) }, keys("ring.width"))
	j.ask(func() error { return checkAsMilled("depth as milled", d.Milled.Depth, d.Ring.Depth) }, keys("ring.depth"))
	j.ask(func() error { return checkAsMilled("breadth as milled", d.Milled.Breadth, d.Legs.Breadth) }, keys("legs.breadth"))
	j.note(upTo("kerf as measured", d.Milled.Kerf, design.WidestKerf))
}

// checkAsMilled allows a quarter of the designed size either way.
func checkAsMilled(figure string, mm, designed float64) error {
	const hint = "the outline follows the design: change the size there"
	if mm == 0 {
		return nil
	}
	return cmp.Or(
		measure.AtLeast(figure, measure.Length(mm), "three quarters of the designed size", measure.Length(designed*0.75), hint),
		measure.AtMost(figure, measure.Length(mm), "five quarters of the designed size", measure.Length(designed*1.25), hint),
	)
}
