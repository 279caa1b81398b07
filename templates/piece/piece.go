// Package piece works a design out: a whole table frame as solids, with every
// figure that its checks, lists and drawings are made from.
//
// The way of the data: design.Design (the decisions for one size) → Piece (all
// that follows) → shop → checks → wording → drawings → templates.Job (what is printed).
package piece

import (
	"cmp"
	"math"
	"slices"

	"rodsheet/geometry/joint"
	"rodsheet/geometry/measure"
	"rodsheet/templates/piece/design"
)

// A Piece is all that follows from its Design. The sizes beside that are as
// milled where the design gives such: they fix every joint and every setting,
// while the outline (the inside of the ring, the place and lean of the
// backs of the legs, the top) stays as it was designed. Legs stand in the
// middle of their stretchers, so the circle of the feet follows half of a
// difference in width.
type Piece struct {
	Design design.Design // as decided, before the wood was milled
	Frame  joint.Frame   // ring and legs as milled
	Bridle joint.Bridle
	// Taper is counted along the back of the leg, from the level of the
	// frame's top to the floor; nil for none. A proud head stands above that.
	Taper *joint.Taper
	// PlainReach and LegReach are from mid-length to the farthest point of the
	// stretcher's two ends, finished.
	PlainReach, LegReach float64
	Kerf                 float64 // as milled
	// Extra is what both rough ends of a stretcher are left longer, so that one
	// stop serves several sizes.
	Extra float64
	solid *solids
}

// Solve works out one size. It returns a *measure.BoundError for a figure that
// no piece can have; what a piece can have and cannot be built with is the
// affair of package checks.
func Solve(d design.Design) (Piece, error) {
	p, errs := Judge(d, nil)
	if len(errs) > 0 {
		return Piece{}, errs[0]
	}
	return p, nil
}

// work returns the piece of the design and notes what is wrong with it: nothing
// where the piece is sound.
func (j *validator) work() Piece {
	d := j.design
	j.figures()
	frame := j.outline()
	j.asMilled()
	p := Piece{solid: new(solids), Design: d, Frame: milled(d, frame), Kerf: cmp.Or(d.Milled.Kerf, d.Saw.Kerf)}
	p.Bridle = joint.Bridle{
		Width: p.Frame.Ring.Width, Depth: p.Frame.Ring.Depth, Angle: p.Frame.Leg.Splay,
		Leg: p.Frame.Leg.Breadth, Tenon: cmp.Or(d.Legs.Tenon, p.Frame.Ring.Width/3), Long: joint.BridleLong(d.Unit), Mortise: d.Legs.Mortise,
	}
	p.PlainReach = p.Frame.Ring.Reach(horn(d.Ring))
	p.LegReach = p.Frame.Leg.Back(p.Frame.Ring.Depth)
	p.Taper = taper(d.Legs.Taper, p.Frame.Leg)
	j.geometry(p)
	return p
}

// geometry refuses figures that have none.
func (j *validator) geometry(p Piece) {
	j.frame(p.Frame, inPlanKeys, milledKeys, j.placed)
	if !j.ask(p.Bridle.Check, inPlanKeys, milledKeys, j.leaned) {
		plumb := p.Bridle
		plumb.Angle = 0
		j.ask(plumb.Check, inPlanKeys, milledKeys)
	}
	if kerf := keys("saw.kerf", "milled.kerf"); !j.ask(p.EndLap().Check, inPlanKeys, milledKeys, j.placed, kerf, endKeys) {
		j.ask(p.Frame.Ring.Lap(p.Kerf).Check, ringKeys, milledKeys, kerf)
	}
	j.taper(p.Taper, p.Frame.Leg.Thickness, milledKeys, j.height, j.leaned)
	j.top(p)
}

// frame asks of a frame all it can: where its height, or what places the legs,
// is not to be relied on, figures that serve any frame stand in for them.
func (j *validator) frame(f joint.Frame, of ...group) {
	if j.ask(f.Check, append(of, j.height)...) {
		return
	}
	f.Leg.Height, f.Leg.Splay, f.Leg.At = longest, 0, 1
	j.ask(f.Check, inPlanKeys, milledKeys)
}

// outline returns the frame as designed, with its splay and its legs' places
// worked out from whatever the design gives.
func (j *validator) outline() joint.Frame {
	d := j.design
	f := joint.Frame{
		Ring: d.Ring.Ring,
		Leg: joint.Leg{
			Breadth: d.Legs.Breadth, Thickness: d.Ring.Width, Height: frameHeight(d), At: d.Legs.At,
		},
		Head: head(d, d.Ring.Width),
		Over: !d.Ring.LegEndOver,
	}
	if d.Legs.Lean == design.BySplay && j.sure(leanKeys) {
		f.Leg.Splay = d.Legs.Given
	}
	probe := f
	probe.Leg.At = cmp.Or(f.Leg.At, 1) // not yet known: any will do to check the rest
	j.frame(probe, inPlanKeys)
	return j.settle(f)
}

// head returns what the head of a leg measures across a stretcher of the given
// width where it is let in: the tenon, or all of it.
func head(d design.Design, width float64) float64 {
	if d.Legs.Mortise == joint.MortiseInStretcher {
		return cmp.Or(d.Legs.Tenon, width/3)
	}
	return width
}

// frameHeight returns the height of the top of the stretchers over the floor.
func frameHeight(d design.Design) float64 {
	if d.Legs.To == design.Overall {
		return d.Legs.Height - aboveFrame(d)
	}
	return d.Legs.Height
}

// aboveFrame returns how far the piece rises over its stretchers: by its pads
// and its top, or by legs left proud.
func aboveFrame(d design.Design) float64 {
	if d.Top.Kind == design.NoTop {
		return d.Legs.Proud
	}
	return math.Max(d.Legs.Proud, d.Top.PadHeight()+d.Top.Thickness)
}

// horn returns what the plain end runs past the neighbour: nothing where it is
// cut flush, whatever the design holds.
func horn(r design.Ring) float64 {
	if r.Plain == design.FlushEnd {
		return 0
	}
	return r.Horn
}

// Overall returns the height of the whole piece over the floor.
func (p Piece) Overall() float64 { return p.Frame.Leg.Height + aboveFrame(p.Design) }

// milled puts the sizes as milled in the place of the designed ones.
func milled(d design.Design, f joint.Frame) joint.Frame {
	f.Ring.Width = cmp.Or(d.Milled.Width, f.Ring.Width)
	f.Ring.Depth = cmp.Or(d.Milled.Depth, f.Ring.Depth)
	f.Leg.Breadth = cmp.Or(d.Milled.Breadth, f.Leg.Breadth)
	f.Leg.Thickness = f.Ring.Width
	f.Head = head(d, f.Ring.Width)
	return f
}

// EndLap returns the lap at the leg end with the square end of the rough
// stretcher as its datum: what a stop is set from.
func (p Piece) EndLap() joint.Lap { return p.Frame.Ring.EndLap(p.RoughReach(), p.Kerf) }

// RoughReach returns how far from mid-length the stretcher's ends stand
// before they are trimmed, the same at both, so that one stop serves both
// laps: the longer of the two reaches and what a bridle is left long.
func (p Piece) RoughReach() float64 {
	return math.Max(p.PlainReach, p.LegReach) + p.Bridle.Long + p.Extra
}

// ShareStops leaves the stretchers of sizes that have the same laps equally long
// before they are trimmed: the laps of all are then cut with one stop. It does
// so where that takes no more than a hand's breadth of wood a stretcher.
func ShareStops(pieces []Piece) []Piece {
	const most = 50.0 // mm, at each end
	out := slices.Clone(pieces)
	for i, p := range pieces {
		for _, q := range pieces {
			longer := q.RoughReach() - p.RoughReach()
			if q.SameLaps(p) && longer <= most && q.RoughReach() < p.Frame.Ring.MostReach() {
				out[i].Extra = math.Max(out[i].Extra, longer)
			}
		}
	}
	return out
}

// SameLaps reports whether the laps of two sizes are cut alike.
func (p Piece) SameLaps(q Piece) bool {
	return p.Frame.Ring == q.Frame.Ring && p.Frame.Over == q.Frame.Over && p.Kerf == q.Kerf
}

// RoughStretcher returns the length of the stretcher as it goes to the saw.
func (p Piece) RoughStretcher() float64 { return 2 * p.RoughReach() }

// FinishedStretcher returns the length of the finished stretcher from tip to
// tip.
func (p Piece) FinishedStretcher() float64 { return p.PlainReach + p.LegReach }

// Horn returns how far the plain end reaches past the outer shoulder of its lap, where
// that is closed.
func (p Piece) Horn() float64 {
	return p.PlainReach - p.Frame.Ring.Reach(p.Design.Ring.Slack/math.Sin(p.Frame.Ring.Angle()))
}

// Say writes a figure in the unit of the piece.
func (p Piece) Say(q measure.Quantity) string { return q.Text(p.Design.Unit) }

// MM writes a length, given in mm, in the unit of the piece.
func (p Piece) MM(v float64) string { return p.Say(measure.Length(v)) }

// Bare is MM with the unit left out.
func (p Piece) Bare(v float64) string { return measure.Length(v).Bare(p.Design.Unit) }
