package shop

import (
	"math"

	"rodsheet/geometry/joint"
	"rodsheet/geometry/measure"
	"rodsheet/templates/piece/design"
)

// A member is one of the two parts of the bridle joint as it comes to the saw.
type member struct {
	joint.BridleEnd
	batch Batch
	// base is from the square far end to the datum corner, along the fence edge;
	// long is what is sawn beyond it, along the part: for a proud head more than
	// what stands beyond the trim line.
	base, long float64
	height     float64 // of slot or cheeks above the table
	sawn       float64
	// fence is the edge on the fence, which is the long one at this end, and other
	// the one across from it. One setting of the gauge then serves both members,
	// and for legs the foot too. By hand all is measured along one edge.
	fence, other, along Face
	// down is the side on which its end is sawn: seen from above the ends of
	// stretcher and leg lean to one side of square then.
	down          Face
	rest          Datum // what touches the stop
	end           Face
	title, square NoteID // of the cut that makes its end
}

func (p sized) stretcherEnd() member {
	height, _ := p.CutHeights()
	return member{
		BridleEnd: p.Bridle.Stretcher(), batch: p.stretcherJoints,
		base: p.RoughReach() + p.LegReach, long: p.Bridle.Long, height: height, sawn: p.RoughStretcher(),
		down: OuterSide, fence: Underside, other: UpperFace, along: Underside, rest: Datum{Point: ThePlainEnd}, end: PlainEnd,
		title: "step.leg-end", square: "step.leg-end-square",
	}
}

func (p sized) legHead() member {
	_, height := p.CutHeights()
	return member{
		BridleEnd: p.Bridle.Head().FromFarEdge(), batch: p.legJoints,
		base: p.Frame.Leg.Blank(), long: p.HeadLong(), height: height, sawn: p.SawnLeg().Length,
		down: RingSide, fence: StretcherSide, other: Back, along: Back, rest: Datum{Point: FootEnd}, end: Foot,
		title: "step.head", square: "step.head-square",
	}
}

// slotted and tenoned are the two members by what they get.
func (p sized) slotted() member {
	if s := p.stretcherEnd(); s.Slot {
		return s
	}
	return p.legHead()
}

func (p sized) tenoned() member {
	if s := p.stretcherEnd(); !s.Slot {
		return s
	}
	return p.legHead()
}

// on returns a distance from the far end along another edge than that on the
// fence, or along that one: the end of the part and all that is parallel to it
// run away from the far end by Width·tan OffSquare.
func (m member) on(edge Face, at float64) float64 {
	if edge == m.fence {
		return at
	}
	return at - m.Width*math.Tan(m.OffSquare)
}

// beyondDatum is how far the datum stands from the end of a piece that is as short as its
// sawn end allows.
func (m member) beyondDatum() float64 { return m.base + m.long - m.on(m.along, m.base) }

// line is a distance from the far end as it is measured by hand.
func (m member) line(at float64, then Notes) handWork {
	from := m.rest
	from.Along = m.along
	return handWork{Then: then, Line: m.on(m.along, at), From: from}
}

// longer is the edge on which the end stands farther out, NoFace where it is square.
func (m member) longer() Face {
	if m.OffSquare == 0 {
		return NoFace
	}
	return m.fence
}

// sawEnd saws an end at the splay, past its trim line.
func (p sized) sawEnd(m member) (row, bool) {
	stop := m.base + m.long
	beyond := note("beyond-trim", length(p.Bridle.Long))
	if m.long > p.Bridle.Long {
		beyond = note("beyond-trim-and-top", length(p.Bridle.Long), length(m.long))
	}
	o := Operation{
		Do: SawEnd, What: note(m.title), Lies: lie(m.down, m.fence, m.end),
		Cut: Cut{
			How: OnGauge, OffSquare: m.OffSquare, Longer: m.longer(), Height: m.Thickness, Through: true, Stop: stop, At: m.rest,
		},
		Then: notes(beyond), Caution: "free-offcut",
	}
	if m.batch.Part == Stretcher {
		o.Then = o.Then.with(p.stopReach(m.fence))
	}
	if m.OffSquare == 0 {
		o.What, o.Test = note(m.square), note("end-square")
	}
	// A square end that the crosscut has already put there needs no cut.
	return row{o, []Batch{m.batch}, m.line(stop, notes(beyond))}, m.OffSquare > 0 || quantize(stop) < quantize(m.sawn)
}

// stopReach says how far a stop must reach for a plain end whose lap has been taken out
// to the end, on the edge that is on the fence.
func (p sized) stopReach(fence Face) Note {
	if _, cut := cutFaces(p.Piece); fence != cut || p.Design.Ring.Plain == design.ClosedEnd {
		return Note{}
	}
	return note("lap-took-half", length(p.Frame.Ring.Depth/2))
}

// firstThrough says what is taken through the joint first: where there are no
// test pieces, the spare. Test pieces are shorter than the stop at the saw.
func (p sized) firstThrough() Note {
	switch {
	case p.tested:
		return note("tests-first", length(p.stretcherEnd().beyondDatum()), length(p.legHead().beyondDatum()))
	case p.extras&Spares != 0:
		return note("spares-first")
	}
	return Note{}
}

// markedAnew says of test pieces that their other end serves too.
func (p sized) markedAnew() Note {
	if p.bothEnds {
		return note("marked-anew")
	}
	return Note{}
}

// tried returns the note of a test for a setting that has no test piece: by the spare,
// where there is one.
func (p sized) tried(first, spare NoteID) NoteID {
	if p.extras&Spares != 0 {
		return spare
	}
	return first
}

func sawStrips(p sized) (row, bool) {
	b, batch, ok := p.block(FillerStrip)
	return plain(Operation{
		Do: SawBlocks, What: note("step.strip"), From: b.From,
		Then: notes(note("strip-from-stick")),
		Test: note("stands-on-end"), Caution: "small-parts",
	}, batch), ok
}

// sawCaul saws cauls from the end of a stick by hand: too short a piece for a saw table,
// and at either end another angle.
func sawCaul(part Part, title NoteID) op {
	return func(p sized) (row, bool) {
		b, batch, ok := p.block(part)
		return plain(Operation{
			Do: SawBlocks, What: note(title), From: b.From,
			Then: notes(note("cauls-by-hand")), Test: note("caul-square"), Caution: "small-parts",
		}, batch), ok
	}
}

// sawWedges saws the wedges that are no offcuts of the tapers, which are kept.
func sawWedges(p sized) (row, bool) {
	b, batch, ok := p.block(FoldingWedge)
	how := NoteID("wedges-one-by-one")
	if b.Pairs {
		how = "wedges-by-hand"
	}
	return plain(Operation{
		Do: SawBlocks, What: note("step.wedges"), From: b.From, Then: notes(note(how)), Test: note("wedges-parallel"), Caution: "small-parts",
	}, batch), ok && b.From != TaperOffcuts
}

func knifeShoulders(p sized) (row, bool) {
	s, l := p.stretcherEnd(), p.legHead()
	return plain(Operation{
		Do: KnifeShoulders, What: note("step.knife"),
		Then: notes(note("datum-from", length(s.on(s.along, s.base)), length(l.on(l.along, l.base))), p.firstThrough(), p.markedAnew()),
		Test: linesMeet(s), Caution: "knife-away",
	}, p.stretcherJoints, p.legJoints), true
}

// linesMeet says how the knifed lines run: on ring side and outer side at the splay.
func linesMeet(m member) Note {
	if m.OffSquare == 0 {
		return note("lines-meet-square")
	}
	return note("lines-meet", angle(Cut{OffSquare: m.OffSquare}.Bevel()))
}

// onItsEnd is how a part stands in the tenoning jig: its ring side on the jig
// first, then its outer side.
func onItsEnd(stop float64, m member) (lies [2]Lie, c Cut) {
	return [2]Lie{{RoughEnd, RingSide, NoFace}, {RoughEnd, OuterSide, NoFace}},
		Cut{How: OnEnd, OffSquare: m.OffSquare, Longer: m.longer(), Height: m.height, Stop: stop, At: Datum{Point: JigFace}}
}

func cutSlot(p sized) (row, bool) {
	m := p.slotted()
	upper, _ := m.Cheeks()
	lies, cut := onItsEnd(upper, m)
	cut.Passes = true
	fromEach := note("slot-from-each-square", length(m.Tenon))
	if m.OffSquare > 0 {
		fromEach = note("slot-from-each", length(m.Tenon))
	}
	r := row{Operation{
		Do: CutSlot, What: note("step.slot", called(m.batch.Part)), Lies: lies, Cut: cut,
		Then: notes(fromEach),
		Test: note("slot-is-wide", length(m.Tenon)), Caution: "hands-on-jig",
	}, []Batch{m.batch}, handWork{
		Then: notes(note("slot-by-hand", length(m.Tenon))), Line: upper, From: Datum{Point: EitherFace},
	}}
	r.Then = r.Then.with(decimalsFit(p))
	if !p.Design.Saw.FlatTooth {
		r.Then = r.Then.with(note("leave-slot-bottom"))
	}
	if m.Tenon < p.Kerf {
		r.hand.Narrow, r.Then, r.hand.Then = true, Notes{}, Notes{}
	}
	return r, true
}

// decimalsFit says that slot and tenon are no fractions: rounded by themselves, two that fit
// each other are up to a 64th apart.
func decimalsFit(p sized) Note {
	in64ths := func(mm float64) float64 { return 64 * mm / measure.MillimetresPerInch }
	upper, _ := p.slotted().Cheeks()
	for _, mm := range []float64{upper, p.Bridle.Tenon} {
		if n := in64ths(mm); p.Design.Unit == measure.Inch && math.Abs(n-math.Round(n)) > 0.03 {
			return note("decimals-fit")
		}
	}
	return Note{}
}

func cutCheeks(p sized) (row, bool) {
	m := p.tenoned()
	upper, lower := m.Cheeks()
	lies, cut := onItsEnd(lower, m)
	waste := note("cheek-waste-square", length(upper))
	if m.OffSquare > 0 {
		waste = note("cheek-waste", length(upper))
	}
	return row{Operation{
		Do: CutCheeks, What: note("step.cheeks", called(m.batch.Part)), Lies: lies, Cut: cut,
		Then: notes(waste, decimalsFit(p)), Test: note("tenon-is-thick", length(m.Tenon)), Caution: "hands-on-jig",
	}, []Batch{m.batch}, handWork{Then: notes(note("cheeks-by-hand")), Line: upper, From: Datum{Point: EitherFace}}}, true
}

// shoulder cuts a shoulder of the tenon, the part flat on the table: that of the ring
// side or, rolled half a turn, of the outer side, where the other edge is on the fence
// and the gauge on the other side of square. Where the end is square both are one step.
func (p sized) shoulder(outer bool) (row, bool) {
	m := p.tenoned()
	upper, _ := m.Cheeks()
	at := m.base - m.Length()
	lies, title := lie(RingSide, m.fence, m.end), NoteID("step.shoulder-ring")
	switch {
	case outer:
		lies, title = lie(OuterSide, m.other, m.end), "step.shoulder-outer"
	case m.OffSquare == 0:
		lies, title = [2]Lie{{RingSide, m.fence, m.end}, {OuterSide, m.other, m.end}}, "step.shoulders"
	}
	o := Operation{
		Do: CutShoulders, What: note(title), Lies: lies,
		Cut: Cut{
			How: OnGauge, OffSquare: m.OffSquare, Longer: m.longer(), Height: upper,
			Stop: m.on(lies[0].Fence, at), At: m.rest,
		},
		Then: notes(note("hair-outside", length(p.Design.Unit.Round(0.5, 1.0/32)))), Test: note("shoulder-line", length(upper)),
	}
	if second := (m.down == OuterSide) == outer; second && m.OffSquare > 0 {
		o.Then = o.Then.with(note("rolled-half"))
	}
	if m.batch.Part == Stretcher {
		o.Then = o.Then.with(p.stopReach(lies[0].Fence))
	}
	return row{o, []Batch{m.batch}, m.line(at, notes(note("beside-line")))}, !outer || m.OffSquare > 0
}

func fitBridle(p sized) (row, bool) {
	return plain(Operation{
		Do: FitBridle, What: note("step.fit-bridle"), Then: notes(note("pare-cheeks"), thinWall("thin-at-lap", p.Piece, p.Frame.Clearance())),
		Test: note("slides-in-by-hand", angle(underStretcher(p.Piece))), Caution: "pare-clamped",
	}, p.stretchers.real(), p.legs.real()), true
}
