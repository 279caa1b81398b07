package checks

import (
	"fmt"
	"math"
	"slices"

	"rodsheet/geometry/measure"
	"rodsheet/templates/piece"
	"rodsheet/templates/piece/design"
)

// askHead asks whether the head of a leg reaches into the lap beside it: the
// mistake that is easily made, for the leg leans in as it goes up.
func askHead(p piece.Piece) []Check {
	f := p.Frame
	c := limited("leg head and lap", "clearance", measure.Length(f.Clearance()), atLeast, measure.Length(0), Fail)
	level := "at the top of the stretcher, where the neighbour passes over"
	if !f.Over {
		level = "at half the depth of the stretcher, where the neighbour passes under"
	}
	band := fmt.Sprintf("over the middle %s of its width", p.MM(f.Head))
	return []Check{c.with(
		fmt.Sprintf("The leg's inner face stays %s clear of the neighbour's outside edge, %s, %s.",
			p.MM(math.Max(0, f.Clearance())), band, level),
		fmt.Sprintf("The leg's inner face reaches %s into the neighbour, %s, %s.",
			p.MM(-f.Clearance()), band, level),
	)}
}

// clears returns the predicate that leaves gap mm between leg and neighbour.
func clears(gap float64) func(piece.Piece) bool {
	return func(w piece.Piece) bool { return w.Frame.Clearance() >= gap-piece.Slip }
}

func fixHead(p piece.Piece, _ Check) []change { return clearHead(p, 0) }

// clearHead returns the changes that leave gap mm between leg and neighbour:
// longer stretchers, a narrower leg, another splay. Where the design says how
// far the legs keep clear, their place follows from breadth and splay, and only
// that distance, or the breadth that came out of the plane, is left to change.
func clearHead(p piece.Piece, gap float64) []change {
	follows := p.Design.Legs.At == 0
	var out []change
	if !follows || p.Design.Milled.Breadth > 0 {
		out = search(p, parameter{
			now: p.Frame.Leg.Breadth, down: true, set: func(d *design.Design, v float64) { setBreadth(p, d, v) },
			words: func(v float64) string { return "reduce the leg's breadth at the joint to " + p.MM(v) },
		}, clears(gap))
	}
	if !follows {
		return slices.Concat(out, outward(p, clears(gap)), otherSplay(p, gap))
	}
	return append(out, search(p, parameter{
		now: p.Design.Legs.Clear, of: p.Frame.Leg.At,
		set:   func(d *design.Design, v float64) { d.Legs.Clear = v },
		words: func(v float64) string { return "leave " + p.MM(v) + " clear between leg and neighbour" },
	}, clears(gap))...)
}

// setBreadth sets the breadth of the legs where the design has it: as they came
// out, or as they are to be.
func setBreadth(p piece.Piece, d *design.Design, v float64) {
	if p.Design.Milled.Breadth > 0 {
		d.Milled.Breadth = v
		return
	}
	d.Legs.Breadth = v
}

// outward moves the legs out, and the ends of the stretchers with them. The
// place is turned and not the step: it is what the design gives.
func outward(p piece.Piece, holds func(piece.Piece) bool) []change {
	at := p.Frame.Leg.At
	return search(p, parameter{
		now:   at,
		set:   func(d *design.Design, v float64) { d.Legs.At = v },
		words: func(v float64) string { return "lengthen the stretchers by " + p.MM(v-at) },
	}, holds)
}

// otherSplay returns the nearest splay, to the tenth of a degree on the safe
// side, that leaves gap mm between leg and neighbour.
func otherSplay(p piece.Piece, gap float64) []change {
	least, most, err := p.Frame.SplaysThatClear(gap)
	if err != nil {
		return nil
	}
	now := p.Frame.Leg.Splay
	splay := math.Ceil(least/fineAngle) * fineAngle
	if now > most {
		splay = math.Floor(most/fineAngle) * fineAngle
	}
	if splay < least || splay > most {
		return nil // they lie within one tenth
	}
	d := p.Design
	d.Legs.Lean, d.Legs.Given, d.Legs.At = design.BySplay, splay, p.Frame.Leg.At
	words := "splay the legs by " + p.Say(measure.Angle(splay))
	if p.Design.Legs.Lean != design.BySplay {
		words += ", in place of what the feet are given by"
	}
	return []change{{Fix{words, d}, math.Abs(splay-now) / math.Max(now, fineAngle)}}
}

// leastShortGrain is the least wood in mm to be left along the stretcher
// between its lap and the leg: less breaks off (common practice, no source).
const leastShortGrain = 2.0

// askShortGrain asks what is left between the outer shoulder of the lap and the
// inner face of the leg.
func askShortGrain(p piece.Piece) []Check {
	if p.Frame.Clearance() < -piece.Slip {
		return nil // askHead has said worse
	}
	c := limited("wood between lap and leg", "wood left", measure.Length(p.Frame.Clearance()),
		atLeast, measure.Length(leastShortGrain), Warn)
	return []Check{c.with(
		"Enough is left along the grain between the lap's outer shoulder and the leg.",
		"So little between the lap's outer shoulder and the leg breaks off at a touch: saw it with care, or leave more.",
	)}
}

func fixShortGrain(p piece.Piece, _ Check) []change { return clearHead(p, leastShortGrain) }

// askTogether asks whether the ring can be put together at all.
func askTogether(m model) []Check {
	const name = "putting the ring together"
	if m.Design.Ring.Plain == design.ClosedEnd {
		return []Check{closedRing(m.Piece, name)}
	}
	c := Check{Name: name, Words: "The stretchers slide shut in plan, all at once: every plain end is open past its lap." +
		" So they do before their ends are trimmed, and with the legs on."}
	withLegs := m.Catches(m.bars())
	switch {
	case withLegs && m.Catches(m.stretcherBar()):
		c.Grade, c.Words = Fail, "The stretchers catch on each other as the ring slides shut."
	case m.TrimFirst():
		c.Grade, c.Words = Warn, "The stretchers slide shut only once their ends are trimmed."
	case withLegs && m.Frame.Clearance() >= -piece.Slip:
		c.Grade, c.Words = Warn, "The ring slides shut before the legs are on, not after: join the legs when the ring is together."
	}
	return []Check{c}
}

// closedRing is the check of a ring whose laps all have both shoulders.
func closedRing(p piece.Piece, name string) Check {
	c := Check{Name: name, Figure: "slack", Value: measure.Length(p.Design.Ring.Slack)}
	if p.Design.Ring.Slack == 0 {
		c.Grade = Fail
		c.Words = "With both shoulders of every lap closed and no slack the ring cannot be put together: the last part has no way in."
		return c
	}
	c.Grade = Warn
	c.Words = fmt.Sprintf("With both shoulders of every lap closed the ring can go together only by tilting all parts at once and letting them down together,"+
		" and the outer shoulder of every plain end stays open by %s. The slack eases the plain ends alone; in the laps at the leg ends a tilted part binds."+
		" How much slack it takes has not been worked out: try the whole ring dry before anything else is cut.", p.MM(p.Design.Ring.Slack))
	return c
}

func fixTogether(m model, _ Check) []change {
	if m.Design.Ring.Plain != design.ClosedEnd {
		return nil
	}
	return leaveOpen(m.Piece)
}

// leaveOpen leaves the plain ends open.
func leaveOpen(p piece.Piece) []change {
	d := p.Design
	d.Ring.Plain, d.Ring.Slack = design.OpenEnd, 0
	return []change{{Fix: Fix{"leave the outer shoulder at every plain end open", d}}}
}

// leastHorn is the least wood in mm to be left past the outer shoulder of a
// closed plain end, where it is held by short grain of half the depth (common
// practice, no source).
const leastHorn = 10.0

// askShoulders asks whether both outer shoulders stand on the stock.
func askShoulders(p piece.Piece) []Check {
	r := p.Frame.Ring
	past := p.Frame.Leg.Back(p.Frame.NeighbourTop()) - r.Reach(0)
	leg := limited("outer shoulder at the leg end", "wood past it", measure.Length(past),
		atLeast, measure.Length(0), Warn).with(
		"The lap's outer shoulder at the leg end stands on the stretcher along its whole length.",
		"The lap's outer shoulder at the leg end runs off the trimmed end.")
	if p.Design.Ring.Plain != design.ClosedEnd {
		return []Check{leg}
	}
	horn := p.PlainReach - r.Reach(p.Design.Ring.Slack/math.Sin(r.Angle()))
	grade := Warn
	if horn <= piece.Slip {
		grade = Fail
	}
	plain := limited("horn at the plain end", "horn past the shoulder", measure.Length(horn), atLeast, measure.Length(leastHorn), grade).with(
		"Enough wood is left past the outer shoulder of the plain end.",
		"What is left past the outer shoulder of the plain end is short grain and breaks off.")
	return []Check{leg, plain}
}

func fixShoulders(p piece.Piece, c Check) []change {
	if c.Name == "outer shoulder at the leg end" {
		return outward(p, func(w piece.Piece) bool { return askShoulders(w)[0].Grade == Pass })
	}
	out := leaveOpen(p)
	out[0].share = 1 // a change of kind, so the dearer one
	return append(out, search(p, parameter{
		now: p.Design.Ring.Horn, set: func(d *design.Design, v float64) { d.Ring.Horn = v },
		words: func(v float64) string { return "leave a horn of " + p.MM(v) },
	}, func(w piece.Piece) bool { return askShoulders(w)[1].Grade == Pass })...)
}

// askEnds asks whether the ends of two stretchers that cross the same third
// from its two sides meet, as they may from five sides on.
func askEnds(m model) []Check {
	r := m.Frame.Ring
	if math.IsInf(r.MostReach(), 1) {
		return nil
	}
	most := measure.Length(r.MostReach())
	rough := limited("ends before trimming", "mid-length to end", measure.Length(m.RoughReach()), atMost, most, Warn).with(
		"The ring goes together before any end is trimmed.",
		"Ends that cross the same stretcher would meet: trim them before the ring goes together.")
	reach := math.Max(m.PlainReach, m.LegReach)
	finished := limited("ends, finished", "mid-length to end", measure.Length(reach), atMost, most, Fail)
	finished = finished.with("No two ends that cross the same stretcher meet.",
		"Two ends that cross the same stretcher meet.")
	if finished.Grade == Fail && !m.Collides(m.bars(), 0) {
		finished.Grade = Warn
		finished.Words = "Two ends that cross the same stretcher pass each other only because one of them is shorter."
	}
	return []Check{finished, rough}
}

func fixEnds(m model, c Check) []change {
	p := m.Piece
	if math.IsInf(p.Frame.Ring.MostReach(), 1) {
		return nil
	}
	fits := func(w piece.Piece) bool { return math.Max(w.PlainReach, w.LegReach) < w.Frame.Ring.MostReach() }
	if c.Name == "ends before trimming" {
		fits = func(w piece.Piece) bool { return !w.EndsMeet() }
	}
	out := search(p, parameter{
		now: p.Design.Ring.Inside,
		set: func(d *design.Design, v float64) {
			d.Ring.Inside = v
			carryLegs(p, d)
		},
		words: func(v float64) string { return "make the inside of the ring " + p.MM(v) },
	}, fits)
	if p.Design.Ring.Plain == design.FlushEnd {
		return out
	}
	return append(out, search(p, parameter{
		now: p.Design.Ring.Horn, down: true,
		set:   func(d *design.Design, v float64) { d.Ring.Horn = v },
		words: func(v float64) string { return "shorten the horns to " + p.MM(v) },
	}, fits)...)
}
