package piece

import (
	"cmp"

	"rodsheet/geometry/joint"
	"rodsheet/geometry/measure"
	"rodsheet/templates/piece/design"
)

// Limits in mm and of counts, beside those of package design, beyond any
// furniture (common practice, no source).
const (
	longest   = design.Longest
	mostCount = 1000.0
	least     = 1.0 // of stock, and of the side of an outline
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
		j.note(measure.AtMost("legs.height", measure.Length(d.Legs.Height), "", measure.Length(longest), ""))
	}
	j.note(woodFigures(d.Wood)...)
	j.note(sawFigures(d.Saw)...)
	j.note(buyingFigures(d)...)
}

// upTo refuses a length that is negative or beyond the most.
func upTo(figure measure.ID, mm, most float64) error {
	return within(figure, measure.Length(mm), 0, most, "")
}

// within refuses a figure below the least or beyond the most; the hint is for
// one beyond it.
func within(figure measure.ID, q measure.Quantity, low, most float64, hint measure.ID) error {
	bound := func(v float64) measure.Quantity { return measure.Quantity{Kind: q.Kind, Value: v} }
	return cmp.Or(measure.AtLeast(figure, q, "", bound(low), ""), measure.AtMost(figure, q, "", bound(most), hint))
}

// more refuses a length that is nothing or less, or beyond the most.
func more(figure measure.ID, mm, most float64) error {
	return cmp.Or(measure.Positive(figure, measure.Length(mm)), upTo(figure, mm, most))
}

// choice refuses a number that stands for none of the choices, which count
// from 0.
func choice[C ~uint8](figure measure.ID, c, last C) error {
	return measure.AtMost(figure, measure.Number(float64(c)), "", measure.Number(float64(last)), "")
}

// stock refuses a size of wood or glass that is hardly there, or beyond the
// most.
func stock(figure measure.ID, mm, most float64) error {
	return cmp.Or(measure.AtLeast(figure, measure.Length(mm), "", measure.Length(least), ""), upTo(figure, mm, most))
}

// count refuses a count that is negative or beyond reason.
func count(figure measure.ID, n int) error {
	return within(figure, measure.Number(float64(n)), 0, mostCount, "")
}

// ring asks the depth apart: where the laps meet does not hang on it.
func (j *validator) ring(r design.Ring) {
	plan := r.Ring
	plan.Depth = plan.Width
	j.ask(plan.Check, keys("ring.sides", "ring.inside", "ring.width"))
	j.note(
		stock("ring.width", r.Width, longest),
		stock("ring.depth", r.Depth, longest),
		choice("ring.plain-end", r.Plain, design.ClosedEnd),
		upTo("ring.horn", r.Horn, longest),
		measure.NotNegative("ring.slack", measure.Length(r.Slack)),
	)
	j.ask(func() error {
		return measure.AtMost("ring.slack", measure.Length(r.Slack), "ring.width", measure.Length(r.Width),
			"ring.slack-play")
	}, keys("ring.width"))
}

func legFigures(l design.Legs) []error {
	return []error{
		stock("legs.breadth", l.Breadth, longest),
		checkTenon(l.Tenon),
		choice("legs.lean", l.Lean, design.ByFootSpread),
		choice("legs.height-to", l.To, design.Overall),
		upTo("legs.clear", l.Clear, longest),
		upTo("legs.proud", l.Proud, longest),
	}
}

// checkTenon refuses a tenon that is hardly there; 0 stands for a third.
func checkTenon(mm float64) error {
	if mm == 0 {
		return nil
	}
	return stock("legs.tenon", mm, longest)
}

// checkRoom refuses an overall height that leaves no room for the frame.
func checkRoom(d design.Design) error {
	return measure.Above("legs.height", measure.Length(d.Legs.Height),
		"piece.above-floor", measure.Length(d.Ring.Depth+aboveFrame(d)),
		"legs.overall-from-floor")
}

func topFigures(t design.Top) []error {
	if t.Kind == design.NoTop {
		return nil
	}
	corners := measure.Number(float64(len(t.Points)))
	return append([]error{
		choice("top.kind", t.Kind, design.WoodTop),
		choice("top.outline", t.Outline, design.FreeOutline),
		choice("top.corner", t.Corner, design.RoundedCorner),
		stock("top.thickness", t.Thickness, design.ThickestTop),
		upTo("top.diameter", t.Diameter, longest),
		within("top.overhang", measure.Length(t.Overhang), -longest, longest, ""),
		upTo("top.corner-size", t.CornerSize, longest),
		measure.AtMost("top.points", corners, "", measure.Number(design.MostPoints), "top.round-diameter"),
		choice("top.fixing.kind", t.Fixing.Kind, design.Buttons),
		choice("top.fixing.bond", t.Fixing.Bond, design.Silicone),
		upTo("top.fixing.screw", t.Fixing.Screw, longest),
	}, padFigures(t.Pads)...)
}

func padFigures(pads design.Pads) []error {
	if pads.Diameter == 0 {
		return nil
	}
	return []error{
		stock("top.pads.diameter", pads.Diameter, longest),
		stock("top.pads.height", pads.Height, longest),
		within("top.pads.mid-to-pad", measure.Length(pads.At), -longest, longest, ""),
	}
}

func woodFigures(w design.Wood) []error {
	return []error{
		within("wood.density", measure.Number(w.Density), 0, design.MostDense, "wood.density-unit"),
		upTo("wood.rough-length", w.ExtraLength, longest),
		upTo("wood.rough-width", w.ExtraWidth, longest),
		upTo("wood.rough-thickness", w.ExtraThickness, longest),
		count("wood.spares", w.Spares),
		count("wood.tests", w.Tests),
		within("wood.waste", measure.Number(w.Waste), 0, 10, "wood.waste-share"),
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
			more("wood.board.length", b.Length, longest),
			more("wood.board.width", b.Width, longest),
			more("wood.board.thickness", b.Thickness, longest),
			count("wood.board.count", b.Count),
		); err != nil {
			return err
		}
	}
	return nil
}

func sawFigures(s design.Saw) []error {
	return []error{
		more("saw.kerf", s.Kerf, design.WidestKerf),
		upTo("saw.blade-height", s.Highest, longest),
		upTo("saw.dado", s.Dado, longest),
		upTo("saw.stop-reach", s.StopReach, longest),
	}
}

func buyingFigures(d design.Design) []error {
	price := func(figure measure.ID, p design.Price) error {
		return within(figure, measure.Number(p.Value), 0, design.MostPrice, "")
	}
	errs := []error{price("prices.wood", d.Prices.Wood.Price), price("prices.glass", d.Prices.Glass.Price)}
	for _, i := range d.Items {
		if err := cmp.Or(price("item.price", i.Price), count("item.count", i.Count)); err != nil {
			return append(errs, err)
		}
	}
	return errs
}

// asMilled refuses sizes as milled that are nothing, or so far from the
// designed ones, which are sound, that they are rather a slip or another
// design.
func (j *validator) asMilled() {
	d := j.design
	j.ask(func() error { return checkAsMilled("milled.width", d.Milled.Width, d.Ring.Width) }, keys("ring.width"))
	j.ask(func() error { return checkAsMilled("milled.depth", d.Milled.Depth, d.Ring.Depth) }, keys("ring.depth"))
	j.ask(func() error { return checkAsMilled("milled.breadth", d.Milled.Breadth, d.Legs.Breadth) }, keys("legs.breadth"))
	j.note(upTo("milled.kerf", d.Milled.Kerf, design.WidestKerf))
}

// checkAsMilled allows a quarter of the designed size either way.
func checkAsMilled(figure measure.ID, mm, designed float64) error {
	const hint = "milled.change-design"
	if mm == 0 {
		return nil
	}
	return cmp.Or(
		measure.AtLeast(figure, measure.Length(mm), "milled.least", measure.Length(designed*0.75), hint),
		measure.AtMost(figure, measure.Length(mm), "milled.most", measure.Length(designed*1.25), hint),
	)
}
