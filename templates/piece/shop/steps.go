package shop

import (
	"math"

	"rodsheet/geometry/joint"
	"rodsheet/geometry/measure"
	"rodsheet/templates/piece"
	"rodsheet/templates/piece/design"
)

// A row is a step as it is built, with what it says where the saw cannot do it.
type row struct {
	Operation
	parts []Batch
	hand  handWork
}

// plain returns a step that says the same wherever it is done.
func plain(o Operation, parts ...Batch) row { return row{Operation: o, parts: parts} }

// lie returns the one way a part lies.
func lie(down, fence, rest Face) [2]Lie { return [2]Lie{{down, fence, rest}} }

func plane(s piece.StockSize) Note { return note("step.plane", length(s.Width), length(s.Thickness)) }

func millStretchers(p sized) (row, bool) {
	return plain(Operation{
		Do: Mill, What: plane(p.SawnStretcher()), Then: millAll(p), Test: milledAlike(p), Caution: "isolate-power",
	}, p.stretchers), true
}

// milledAlike says how near to each other planed parts come (common practice, no source).
func milledAlike(p sized) Note {
	return note("milled-alike", length(p.Design.Unit.Round(0.1, 1.0/256)))
}

// millAll is said of all stock. What blocks are sawn from is planed with the parts of its
// section: a filler strip must be as thick as what it holds.
func millAll(p sized) Notes {
	out := notes(note("mill-all-alone"))
	if p.extras != NoExtras {
		out = notes(note("mill-all", along(p.extras)))
	}
	if p.withSticks {
		out = out.with(note("sticks-with-parts"))
	}
	return out
}

func millLegs(p sized) (row, bool) {
	return plain(Operation{Do: Mill, What: plane(p.SawnLeg()), Then: millAll(p), Test: milledAlike(p)}, p.legs), true
}

// millSticks planes what the blocks are sawn from.
func millSticks(p sized) (row, bool) {
	return plain(Operation{Do: Mill, What: note("step.plane-sticks"), Then: millAll(p), Test: milledAlike(p)}, p.sticks...), len(p.sticks) > 0
}

func millTop(p sized) (row, bool) {
	if p.Design.Top.Kind != design.WoodTop {
		return row{}, false
	}
	panel := p.TopPanel()
	_, count := p.TopBoards()
	o := Operation{
		Do: GluePanel, What: note("step.glue-panel", length(p.Design.Top.Thickness)),
		Then: notes(note("panel-at-least", length(UpToEighths(panel.Length, p.Design.Unit)), length(UpToEighths(panel.Width, p.Design.Unit))), note("panel-past-planer")), Test: note("panel-flat"), Caution: "panel-care",
	}
	if count > 1 {
		o.Then = o.Then.with(note("panel-boards", number(count), length(UpToSixteenths(UpToEighths(panel.Width, p.Design.Unit)/float64(count), p.Design.Unit))))
	}
	return plain(o, p.topBoards), true
}

// measured is a figure to be measured, written down and put into the design.
func measured(what NoteID, figure func(sized) float64) op {
	return func(p sized) (row, bool) {
		return plain(Operation{Do: Measure, What: note(what, length(figure(p))), Then: notes(note("write-down"))}), true
	}
}

// squared is a crosscut to length, square. By hand the end is squared to a line.
func squared(part Batch, size piece.StockSize, fence Face, before Notes) row {
	part.Tests = 0
	return row{Operation{
		Do: Crosscut, What: note("step.crosscut", called(part.Part)), Lies: lie(NoFace, fence, NoFace),
		Cut:  Cut{How: OnGauge, Height: size.Thickness, Through: true, Stop: size.Length, At: Datum{Point: SquaredEnd}},
		Then: before.with(note("square-to-stop")),
		Test: note("one-length"), Caution: "free-offcut",
	}, []Batch{part}, handWork{Then: before.with(note("square-to-line"))}}
}

func crosscutStretchers(p sized) (row, bool) {
	return squared(p.stretchers, p.SawnStretcher(), RingSide, notes(note("mark-stretchers"))), true
}

func crosscutLegs(p sized) (row, bool) {
	return squared(p.legs, p.SawnLeg(), Back, notes(note("mark-legs"))), true
}

func crosscutTests(p sized) (row, bool) {
	part := Batch{Part: TestPiece, Count: p.stretchers.Tests + p.legs.Tests}
	return squared(part, p.TestPiece(p.SawnStretcher()), NoFace, Notes{}), part.Count > 0
}

func glueLegs(p sized) (row, bool) {
	return plain(Operation{
		Do: GlueLegs, What: note("step.glue-legs"), Then: notes(note("dry-run-legs")),
		Test: note("bevel-before-glue", angle(underStretcher(p.Piece))), Caution: "data-sheets",
	}, p.stretchers.real(), p.legs.real()), true
}

// underStretcher returns the corner between the underside of the stretcher and the
// stretcher side of the leg, which leans away from it below.
func underStretcher(p piece.Piece) float64 { return math.Pi/2 + p.Frame.Leg.Splay }

func trimHeads(p sized) (row, bool) {
	return plain(Operation{
		Do: TrimHeads, What: note("step.trim-heads"), Then: notes(trimmedTo(p.Piece)), Test: trimmedFlush(p.Piece), Caution: "trim-clamped",
	}, p.stretchers.real(), p.legs.real()), true
}

func glueRing(p sized) (row, bool) {
	return plain(Operation{
		Do: GlueRing, What: note("step.glue-ring"), Then: notes(note("dry-run-ring"), thinHorn(p.Piece)),
		Test: note("inside-and-feet", length(p.Frame.Ring.Inside), length(p.FootSpread())), Caution: "draw-evenly",
	}, p.stretchers.real()), true
}

// thinWall warns of a wall of short grain that is thinner than it is high, which is half
// the depth beside a lap: a knock breaks it off (common practice, no source).
func thinWall(id NoteID, p piece.Piece, thick float64) Note {
	if thick >= p.Frame.Ring.Depth/2 {
		return Note{}
	}
	return note(id, length(thick))
}

// thinHorn is the wall past the outer shoulder of a closed plain end.
func thinHorn(p piece.Piece) Note {
	if p.Design.Ring.Plain != design.ClosedEnd {
		return Note{}
	}
	return thinWall("thin-horn", p, p.Horn())
}

// fitPads glues pads on before the finish, or sticks bumpers on after it.
func fitPads(bumpers bool) op {
	return func(p sized) (row, bool) {
		o, part := Operation{Do: FitPads, What: note("step.pads"), Then: notes(note("pads-by-hand"), note("glue-pads", length(p.PadAt())))}, p.pads
		if bumpers {
			part = Batch{Part: Bumper, Size: p.Design.Size, Count: p.Frame.Ring.Sides}
			o.What, o.Then = note("step.bumpers"), notes(note("stick-bumpers", length(p.PadAt())))
		}
		o.Test = note("pads-level", length(p.PadPoint(0).Distance(p.PadPoint(1))))
		if o.Caution = "pads-on-stick"; bumpers {
			o.Caution = "bumper-sheet"
		}
		return plain(o, part), p.Design.Top.PadHeight() > 0 && p.Design.Top.Pads.Bumpers == bumpers
	}
}

func fitTop(p sized) (row, bool) {
	o := Operation{Do: FitTop, What: note("step.lay-top"), Test: note("top-lies"), Caution: "glass-care"}
	placing(p.Piece, &o)
	if p.Design.Top.Kind == design.GlassTop && p.Design.Top.Fixing.Bond == design.Silicone {
		o.Test = note("bond-holds")
	}
	if p.Design.Top.Kind == design.WoodTop {
		o.What, o.Test, o.Caution = note("step.fix-top"), note("top-held"), "drill-top"
	}
	if p.Design.Top.Kind != design.NoTop {
		o.Then = o.Then.with(fixed(p.Piece)...)
		o.Heed = tips(p.Piece)
	}
	return plain(o, Batch{Part: Top, Size: p.Design.Size, Count: 1}), p.Design.Top.Kind != design.NoTop
}

// tips warns of what load on the rim tips the piece, where a person may be it.
func tips(p piece.Piece) Note {
	s := p.Standing(p.FrameMass(p.Stretcher(), p.Leg()))
	w := s.Weakest(0)
	load := w.TippingLoad(0)
	switch {
	case s.Falls():
		return note("falls-over")
	case w.NeverTips() || load > design.PersonLoad:
		return Note{}
	case load < design.HandLoad:
		return note("tips-leaned-on", figure(measure.Mass(load)))
	}
	return note("tips-sat-on", figure(measure.Mass(load)))
}

// placing says where the top lies over the ring. A free outline need not follow
// it: what places that is how far it stands past each stretcher.
func placing(p piece.Piece, o *Operation) {
	if p.Design.Top.Outline != design.FreeOutline {
		sides, _ := p.Overhangs()
		o.Then = notes(note("same-overhang", length(sides[0])))
		return
	}
	sides, corners := p.Overhangs()
	o.Past.Stretchers = len(sides)
	copy(o.Past.Sides[:], sides)
	copy(o.Past.Corners[:], corners)
	o.Then = notes(note("any-is-first"), note("past-sides"), note("past-corners"))
	if p.Design.Top.PadHeight() > 0 {
		o.Then = o.Then.with(note("pads-on-template"))
	}
}

// real leaves out what is not built in.
func (b Batch) real() Batch {
	b.Spares, b.Tests = 0, 0
	return b
}

// spared leaves out the test pieces.
func (b Batch) spared() Batch {
	b.Tests = 0
	return b
}

// sawFoot saws the foot parallel to the head. The blank with square ends is
// just so long that both cuts leave it at its long corners, so head and foot
// have one stop.
func sawFoot(p sized) (row, bool) {
	splay, edge := p.Frame.Leg.Splay, p.Frame.Leg.Length()+p.HeadLong()
	return row{Operation{
		Do: SawFoot, What: note("step.foot"), Lies: lie(RingSide, Back, Head),
		Cut: Cut{
			How: OnGauge, OffSquare: splay, Longer: Back, Height: p.Frame.Leg.Thickness, Through: true,
			Stop: p.SawnLeg().Length, At: Datum{Point: HeadCorner},
		},
		Then:    notes(note("stop-at-corner", length(p.Frame.Leg.Breadth))),
		Caution: "free-offcut",
		Test:    note("parallel-ends", length(edge)),
	}, []Batch{p.legs.spared()}, handWork{Then: notes(note("foot-by-hand")), Line: edge, From: Datum{Point: SawnHead, Along: Back}}}, splay > 0
}

func cutTaper(p sized) (row, bool) {
	if p.Taper == nil {
		return row{}, false
	}
	t := p.Taper
	fence := OppositeCut
	if !t.Faces.Symmetric() {
		fence = Back
	}
	return row{Operation{
		Do: CutTaper, What: note(taperTitles[t.Faces]), Lies: lie(RingSide, fence, NoFace),
		Cut: Cut{
			How: OnTaper, OffSquare: t.ToEdge(), Height: taperCut(p.Piece), Through: true,
			Line: t.Run(), From: Datum{Point: FootEnd, Along: Back},
		},
		Then: taperNotes(p.Piece),
		Test: note(p.tried("sole-measures", "sole-measures-spare"), length(sole(p.Piece))), Caution: "taper-in-jig",
	}, p.tapered(), handWork{Then: taperByHand(p.Piece)}}, true
}

// tapered are the legs, and the offcuts that are wedges.
func (p sized) tapered() []Batch {
	out := []Batch{p.legs.spared()}
	if b, batch, ok := p.block(FoldingWedge); ok && b.From == TaperOffcuts {
		out = append(out, batch)
	}
	return out
}

var taperTitles = map[joint.TaperFaces]NoteID{
	joint.OneFace: "step.taper-one", joint.AdjacentFaces: "step.taper-adjacent",
	joint.OppositeFaces: "step.taper-opposite", joint.FourFaces: "step.taper-four",
}

// sole returns what the tapered foot measures on the floor, in the plane of its
// stretcher. Across the leg from its back the floor climbs the leg by tan Splay,
// and every mm up the leg gives Loss/Run back: with k the product of the two, the
// stretcher side stands (Breadth − Loss)/(1 − k) from the back, a tapered back
// Loss/(1 + k).
func sole(p piece.Piece) float64 {
	l, t := p.Frame.Leg, p.Taper
	k := math.Tan(l.Splay) * t.Loss() / t.Run()
	across := (l.Breadth - t.Loss()) / (1 - k)
	if t.Faces.Symmetric() {
		across -= t.Loss() / (1 + k)
	}
	return across / math.Cos(l.Splay)
}

// taperCut returns how high the blade must come through: the thickness where
// the leg lies on its ring side, the larger way where it is rolled too.
func taperCut(p piece.Piece) float64 {
	l := p.Frame.Leg
	if p.Taper.Faces.Square() {
		return max(l.Thickness, l.Breadth)
	}
	return l.Thickness
}

// trimPlainEnd cuts the plain end to its finished length. There is no stop: the
// offcut would be trapped between it and the blade.
func trimPlainEnd(p sized) (row, bool) {
	lap := p.EndLap()
	lapUp, _ := cutFaces(p.Piece)
	high := p.Frame.Ring.Depth
	if p.Design.Ring.Plain != design.ClosedEnd { // the lap has taken the upper half
		high /= 2
	}
	o := Operation{
		Do: TrimPlainEnd, What: note("step.horn"), Lies: lie(lapUp, RingSide, PlainEnd),
		Cut: Cut{
			How: OnGauge, Height: high, Through: true,
			Line: p.RoughReach() - p.PlainReach, From: Datum{Point: ThePlainEnd},
		},
		Then: notes(note("no-stop-here")), Test: note("horns-alike"), Caution: "free-offcut",
	}
	if p.Design.Ring.Plain == design.FlushEnd {
		o.Cut.OffSquare = lap.OffSquare()
		o.What, o.Test = note("step.flush-end"), note("end-is-flush")
		o.Cut.Longer, o.Cut.Line, o.Cut.From.Along = lapLonger(lap), lap.At, RingSide
	}
	return row{o, []Batch{p.stretchers.spared()}, handWork{Then: notes(note("beside-line"))}}, true
}

func sandParts(p sized) (row, bool) {
	return plain(Operation{
		Do: Sand, What: note("step.sand-parts"),
		Then: notes(note("sand-before-glue"), note("crisp-joints"), note("ease-where")),
		Test: note("joints-as-before"), Caution: "dust",
	}, p.stretchers.real(), p.legs.real()), true
}

func sandAll(p sized) (row, bool) {
	o := Operation{Do: Sand, What: note("step.sand-all"), Then: notes(note("sand-after-glue")), Test: note("no-scratch"), Caution: "dust"}
	if p.Frame.Ring.Sides > 3 { // three feet never rock
		o.Then = o.Then.with(note("level-soles"))
	}
	o.Then = o.Then.with(note("ease-feet"))
	if p.Design.Top.Kind == design.WoodTop {
		o.Then = o.Then.with(note("sand-top"))
	}
	return plain(o), true
}

func finishAll(p sized) (row, bool) {
	o := Operation{Do: Finish, What: note("step.finish"), Then: notes(note("finish-by-sheet")), Test: note("finish-hard"), Caution: "rags"}
	switch top := p.Design.Top; {
	case top.Kind == design.WoodTop:
		o.Then = o.Then.with(note("finish-both-faces"))
	case bonds(p):
		o.Then = o.Then.with(note("bare-bond"))
	}
	return plain(o), true
}

// bonds reports whether something is still to be stuck to the finished frame.
func bonds(p sized) bool {
	top := p.Design.Top
	return top.Kind == design.GlassTop && (top.Fixing.Bond == design.Silicone || top.Pads.Bumpers)
}

// sawTop saws the outline of a wooden top before it is finished.
func sawTop(p sized) (row, bool) {
	grain := note("grain-along")
	if p.TopAlong().Y > 0 {
		grain = note("grain-across")
	}
	return plain(Operation{
		Do: SawTop, What: note("step.saw-top"), Then: notes(note("outline-to-line"), grain, cornersWorked(p.Piece)), Test: outlineTrue(p.Piece), Caution: "saw-outline",
	}, Batch{Part: Top, Size: p.Design.Size, Count: 1}), p.Design.Top.Kind == design.WoodTop
}

// cornersWorked says how the corners of an outline that follows the ring are worked.
func cornersWorked(p piece.Piece) Note {
	top := p.Design.Top
	switch {
	case top.Outline == design.RoundTop || top.CornerSize == 0 || top.Corner == design.SharpCorner:
		return Note{}
	case top.Corner == design.ClippedCorner:
		return note("clip-corners", length(top.CornerSize))
	}
	return note("round-corners", length(top.CornerSize))
}

// outlineTrue says how the sawn outline is measured: what has no one figure, by its sheet.
func outlineTrue(p piece.Piece) Note {
	switch p.Design.Top.Outline {
	case design.RoundTop:
		return note("round-true", length(2*p.TopRadius()))
	case design.RingTop:
		return note("sides-true", length(p.RegularTop().Side()))
	}
	return note("outline-true")
}
