package shop

import (
	"cmp"
	"math"
	"slices"

	"rodsheet/templates/piece"
)

// A blade is changed in a step of its own, and changed back in another: so no card
// stands on a blade that a maker has to remember.

// flatTooth reports whether laps are cut with a blade of their own at the saw.
func flatTooth(p piece.Piece) bool {
	return p.Design.Saw.FlatTooth && rises(p, p.EndLap().BladeHeight())
}

// dadoSet reports whether a dado set clears the laps.
func dadoSet(p piece.Piece) bool {
	d := p.Design.Saw.Dado
	return d > 0 && d <= p.Frame.Ring.Width && rises(p, p.EndLap().BladeHeight())
}

// change is the step that puts another blade on.
func change(what, test NoteID, asked func(piece.Piece) bool, then ...NoteID) op {
	return func(p sized) (row, bool) {
		o := Operation{Do: ChangeBlade, What: note(what), Test: note(test), Caution: "change-blade"}
		for _, id := range then {
			o.Then = o.Then.with(note(id))
		}
		return plain(o), asked(p.Piece)
	}
}

// measureKerf is that of the only blade, and mountFlatTooth has that of the blade for laps.
func measureKerf(p sized) (row, bool) {
	r, _ := measured("step.measure-kerf", func(p sized) float64 { return p.Kerf })(p)
	return r, !flatTooth(p.Piece)
}

func mountFlatTooth(p sized) (row, bool) {
	r, ok := change("step.flat-tooth", "flat-cut", flatTooth, "flat-tooth-for", "flat-tooth-kerf")(p)
	r.What = note("step.flat-tooth", length(p.Kerf))
	return r, ok
}

func mountDado(p sized) (row, bool) {
	r, ok := change("step.dado", "dado-cut", dadoSet)(p)
	if ok {
		r.Then = notes(
			note("dado-height", length(p.EndLap().BladeHeight())),
			note("dado-between", length(p.Design.Saw.Dado), number(p.Passes(p.Frame.Ring.Width))), note("dado-guard"),
		)
	}
	return r, ok
}

// A handWork is what a step says where it is done by hand: all that is not empty
// stands in the place of what it says of the saw.
type handWork struct {
	Then   Notes
	Test   Note
	Line   float64 // from From, where that is not what the stop says
	From   Datum
	Narrow bool // the kerf is wider than what is sawn
}

// rises reports whether the blade rises so high.
func rises(p piece.Piece, height float64) bool {
	return p.Design.Saw.Highest == 0 || height <= p.Design.Saw.Highest
}

// handCautions are those of work by hand that is more than sawing.
var handCautions = map[Do]NoteID{
	TestLap: "chop-by-hand", CutLap: "chop-by-hand", OpenEnd: "chop-by-hand", CutSlot: "chop-by-hand", CutTaper: "plane-by-hand",
}

// byHand turns a step at the saw into one by hand, and says why. What the stop and
// the spacer give at the saw is measured and knifed: a line so far from the end,
// and a second one, for which the kerf counts too.
func (r *row) byHand(by Reason, why Note, kerf float64) {
	c, h := &r.Cut, r.hand
	switch {
	case h.From.Point != NoPoint:
		c.Line, c.From = h.Line, h.From
	case c.Stop > 0:
		c.Line, c.From = c.Stop, c.At
		c.From.Along = r.Lies[0].Fence
	}
	if c.Spacer > 0 {
		c.Along = c.Spacer + kerf/math.Cos(c.OffSquare)
	}
	c.By, c.Stop, c.At, c.Spacer = by, 0, Datum{}, 0
	r.Lies, r.From, r.Caution = [2]Lie{}, Bought, cmp.Or(handCautions[r.Do], "saw-by-hand")
	if h.Then.len() > 0 {
		r.Then = h.Then
	}
	if h.Test.ID != "" {
		r.Test = h.Test
	}
	r.Then = notes(why).with(r.Then.All()...)
}

// TestsToLines reports whether test pieces go over the card that a stop serves for its
// parts. They are not as long as these: what is sawn off them stands by their own lines.
func (c Card) TestsToLines() bool {
	return !c.Hand && slices.ContainsFunc(c.Steps, func(s Step) bool {
		return s.Cut.How == OnGauge && slices.ContainsFunc(s.Parts, func(b Batch) bool { return b.Tests > 0 })
	})
}

// Guard returns what is to be known of guard and riving knife for the cuts of a card:
// whether they can stay, and what holds the part where they cannot. There is none for
// work away from the saw, nor with the dado set, whose own caution says it.
func (c Card) Guard() NoteID {
	switch {
	case c.How == AwayFromSaw || c.Hand || c.Steps[0].Caution == "dado-guard":
		return ""
	case c.How == OnEnd:
		return "guard-on-end"
	case c.How == OnTaper:
		return "guard-taper"
	case !c.Through:
		return "guard-not-through"
	}
	return "guard-stays"
}
