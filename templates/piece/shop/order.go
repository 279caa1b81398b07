package shop

import (
	"iter"
	"math"
	"slices"

	"rodsheet/templates/piece"
)

// An op makes the step of one size, or none where that size has no need of it.
type op func(sized) (row, bool)

// A round is the ops that are run through before the next are taken up: for all
// sizes at once, or where by is given for those of one setting after the other, its
// figures one within the other.
type round struct {
	stage Stage
	ops   []op
	by    []func(sized) float64
	// away is work away from the saw.
	away bool
}

// rounds returns every op in working order.
func rounds() []round {
	lap, away := []func(sized) float64{lapHeight, lapLean}, true
	return []round{
		// Everything is milled at once: only wood of one milling gives laps and tenons that
		// fit alike, spares and test pieces among them.
		{stage: StockStage, ops: []op{
			millStretchers, millLegs, millSticks,
			measured("step.measure-width", func(p sized) float64 { return p.Frame.Ring.Width }),
			measured("step.measure-depth", func(p sized) float64 { return p.Frame.Ring.Depth }),
			measured("step.measure-breadth", func(p sized) float64 { return p.Frame.Leg.Breadth }),
			measureKerf,
			millTop, crosscutStretchers, crosscutLegs, crosscutTests,
		}},
		// The sled gets its slot, and the spacer its length, by the blade of the laps.
		{stage: LapStage, away: away, ops: []op{mountFlatTooth}},
		{stage: LapStage, away: away, ops: []op{makeJig(LapSled), makeJig(TenoningJig), makeJig(TaperSled), makeSpacer}},
		// All that is sawn at one blade height, half the depth.
		{stage: LapStage, by: lap, ops: []op{testLap, cutLaps, slackLaps, openEnds(false)}},
		// The dado set clears the laps once the plain blade has sawn all their shoulders.
		{stage: LapStage, away: away, ops: []op{mountDado}},
		{stage: LapStage, by: lap, ops: []op{openEnds(true)}},
		{stage: LapStage, away: away, ops: []op{change("step.dado-back", "turns-free", dadoSet, "dado-back-for")}},
		// The ring is tried before any joint that depends on it is cut.
		{stage: LapStage, away: away, ops: []op{dryRing(false)}},
		{stage: BridleStage, away: away, ops: []op{knifeShoulders}},
		// The gauge swings once, between the two shoulders, and stands for the second as it
		// does for all ends. Shoulders come first, while the blade is low and the far end is
		// square that their stop touches; the foot comes last, for it takes that end away and
		// its stop touches the long corner of the sawn head.
		{stage: BridleStage, by: []func(sized) float64{splay}, ops: []op{
			func(p sized) (row, bool) { return p.shoulder(p.tenoned().down == RingSide) },
			func(p sized) (row, bool) { return p.shoulder(p.tenoned().down == OuterSide) },
			func(p sized) (row, bool) { return p.sawEnd(p.stretcherEnd()) },
			func(p sized) (row, bool) { return p.sawEnd(p.legHead()) },
			sawFoot,
		}},
		// What holds the parts on end and in the clamps, once the bevel is set.
		{stage: BridleStage, away: away, ops: []op{sawStrips, sawCaul(LegCaul, "step.leg-caul"), sawCaul(EndCaul, "step.end-caul"), sawWedges}},
		// On the sawn ends; the waste of the cheeks falls off there, for the shoulders are sawn.
		{stage: BridleStage, ops: []op{cutSlot, cutCheeks}},
		{stage: BridleStage, away: away, ops: []op{change("step.blade-back", "turns-free", flatTooth, "blade-back-for")}},
		// The joint is tried while its parts are square and easily pared.
		{stage: BridleStage, away: away, ops: []op{fitBridle}},
		{stage: TaperStage, ops: []op{cutTaper, trimPlainEnd}},
		// Holes are made while each stretcher lies by itself, for no drill stands upright
		// between the legs of a frame.
		{stage: TopStage, away: away, ops: []op{drillFixings, grooveFixings, sawTop}},
		{stage: GlueStage, away: away, ops: []op{dryRing(true)}},
		// What cannot be reached any more when the piece is together.
		{stage: GlueStage, away: away, ops: []op{sandParts}},
		// Ends that stand proud are trimmed when the glue of the bridles is hard and before the
		// ring is closed, while each leg with its stretcher still lies flat on the bench.
		{stage: GlueStage, away: away, ops: []op{glueLegs, trimHeads, glueRing}},
		{stage: GlueStage, away: away, ops: []op{fitPads(false)}},
		// The whole piece, its top still off.
		{stage: FinishStage, away: away, ops: []op{sandAll, finishAll}},
		{stage: FinishStage, away: away, ops: []op{fitPads(true), fitTop}},
	}
}

// workingOrder returns the steps over all sizes of one design in working order.
// What is the same for several sizes is one step, and steps that differ in
// nothing but the stop follow each other.
func workingOrder(all []sized) []Step {
	var out []Step
	for _, r := range rounds() {
		for _, s := range grouped(all, r.by...) {
			for _, o := range r.ops {
				for _, step := range together(s, o) {
					step.Stage = r.stage
					out = append(out, step)
				}
			}
		}
	}
	return out
}

// Stops returns the farthest stop that the cards ask for, mm from the
// blade, and what the steps are called whose stop stands beyond reach.
func Stops(p piece.Piece) (farthest float64, beyond []Note) {
	for s := range sawn(p) {
		if s.Cut.How != OnGauge {
			continue
		}
		uncounted(p).limit(&s)
		farthest = math.Max(farthest, s.Cut.Stop)
		if s.Cut.Beyond && !slices.Contains(beyond, s.What) {
			beyond = append(beyond, s.What)
		}
	}
	return farthest, beyond
}

// Through returns how thick the stock is, in mm, that the blade comes through at
// most, and what the steps are called for which it does not rise so high.
func Through(p piece.Piece) (thickest float64, beyond []Note) {
	for s := range sawn(p) {
		if !s.Cut.Through {
			continue
		}
		thickest = math.Max(thickest, s.Cut.Height)
		if !rises(p, s.Cut.Height) && !slices.Contains(beyond, s.What) {
			beyond = append(beyond, s.What)
		}
	}
	return thickest, beyond
}

// sawn goes through the steps of one size at the saw, before it is asked how far
// that reaches.
func sawn(p piece.Piece) iter.Seq[row] {
	return func(yield func(row) bool) {
		size := uncounted(p)
		for _, r := range rounds() {
			for _, o := range r.ops {
				if r.away {
					continue
				}
				if s, ok := o(size); ok && s.Cut.How != AwayFromSaw && !yield(s) {
					return
				}
			}
		}
	}
}

func lapHeight(p sized) float64 { return on(lengthGrid, p.EndLap().BladeHeight()) }
func splay(p sized) float64     { return on(angleGrid, p.Frame.Leg.Splay) }

// lapLean is how the gauge stands for the laps of a size. Rings that pass over and
// under the other way round have their laps to the other side of square.
func lapLean(p sized) float64 {
	lean := on(angleGrid, p.EndLap().OffSquare())
	if p.Frame.Over {
		return -lean
	}
	return lean
}

// grouped puts together the sizes that have their figures in common, in the order
// of the design.
func grouped(all []sized, figures ...func(sized) float64) [][]sized {
	if len(figures) == 0 {
		return [][]sized{all}
	}
	var out, within [][]sized
	figure := figures[0]
	for _, p := range all {
		i := slices.IndexFunc(out, func(g []sized) bool {
			return figure(g[0]) == figure(p)
		})
		if i < 0 {
			out = append(out, nil)
			i = len(out) - 1
		}
		out[i] = append(out[i], p)
	}
	for _, g := range out {
		within = append(within, grouped(g, figures[1:]...)...)
	}
	return within
}

// together makes one step for all the sizes that have the same setting. Those that
// differ in the stop only come next to each other.
func together(all []sized, o op) []Step {
	var out []Step
	for _, p := range all {
		if r, ok := o(p); ok {
			saw := r.Operation
			p.limit(&r)
			out = join(out, Step{Operation: r.Operation, Parts: r.parts, Saw: saw})
		}
	}
	return out
}

// join adds a step to the one of the same setting, else behind the last that
// differs in the stop only, else at the end.
func join(steps []Step, s Step) []Step {
	at := len(steps)
	for i := range steps {
		a, b := steps[i].setting(), s.setting()
		if a == b {
			steps[i].Parts = append(steps[i].Parts, s.Parts...)
			return steps
		}
		a.Cut, b.Cut = a.Cut.anyStop(), b.Cut.anyStop()
		if a == b {
			at = i + 1
		}
	}
	return slices.Insert(steps, at, s)
}

// limit marks what the saw cannot reach.
func (p sized) limit(r *row) {
	if r.Cut.How == AwayFromSaw {
		return
	}
	c := &r.Cut
	if r.hand.Narrow {
		r.byHand(SlotTooNarrow, note("slot-under-kerf", length(p.Bridle.Tenon)), p.Kerf)
	}
	if !c.ByHand() && !rises(p.Piece, c.Height) {
		r.byHand(BladeTooLow, note("blade-rises", length(p.Design.Saw.Highest)), p.Kerf)
	}
	c.Beyond = c.How == OnGauge && p.Design.Saw.StopReach > 0 && c.Stop > p.Design.Saw.StopReach+piece.Slip
}
