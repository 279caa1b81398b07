package shop

import (
	"math"
	"slices"
	"testing"

	"pgregory.net/rapid"

	"rodsheet/geometry/solid"
	"rodsheet/templates/piece"
	"rodsheet/templates/piece/design"
	"rodsheet/templates/piece/internal/piecetest"
)

// follow does one operation.
func (b *bench) follow(s Step) {
	switch s.Cut.How {
	case OnGauge:
		b.followGauge(s)
	case OnEnd:
		b.followOnEnd(s)
	case OnTaper:
		b.followTaper(s)
	}
}

// lies are the ways in which a part is laid one after the other: one or two.
func lies(o Operation) []Lie {
	if o.Lies[1] == (Lie{}) {
		return o.Lies[:1]
	}
	return o.Lies[:]
}

// restAt are the ends that a stop may touch, by what it is said to touch.
var restAt = map[Point][]Face{
	ThePlainEnd: {PlainEnd}, FootEnd: {Foot}, HeadCorner: {Head}, StretcherEnd: {PlainEnd, LegEnd},
}

func (b *bench) followGauge(s Step) {
	c := s.Cut
	for i, l := range lies(s.Operation) {
		if c.Line > 0 {
			b.followLine(s, l)
			continue
		}
		if c.At.Point == SquaredEnd { // either will do
			l.Rest = PlainEnd
			if _, ok := b.marks[l.Rest]; !ok {
				l.Rest = Foot
			}
		} else if !slices.Contains(restAt[c.At.Point], l.Rest) {
			confused("the stop touches %d, and the part rests with %d", c.At.Point, l.Rest)
		}
		stood := b.mirrored
		m := b.laid(b.lower(s, l), b.side(l.Fence), b.side(l.Rest))
		if i > 0 && b.mirrored != stood {
			confused("%v: between its two cuts the stop would change sides", s.What)
		}
		b.cut(s, m, b.swing(s, m, l.Fence))
	}
}

// lower returns the side that lies down; where the operation does not care, either.
func (b *bench) lower(s Step, l Lie) solid.Vec {
	if l.Down == NoFace && s.Cut.Through && s.Cut.OffSquare == 0 {
		return b.side(l.Fence).Cross(solid.V(1, 0, 0))
	}
	return b.side(l.Down)
}

// cut makes the cuts of an operation on a part that lies at the stop.
func (b *bench) cut(s Step, m solid.Affine3, swing float64) {
	c := s.Cut
	if s.Do == SawEnd {
		b.endSwing = b.lastSwing
	}
	// Moved out by the spacer, the part has the blade so much nearer its end.
	first, last := c.Stop-c.Spacer, c.Stop
	switch {
	case c.Through:
		b.through(m, c.Stop, swing, c, true)
	case c.Passes || c.Spacer == 0:
		b.off(m, first, last, swing, c)
	default:
		b.off(m, first, first, swing, c)
		b.off(m, last, last, swing, c)
	}
}

// followLine saws to a line that is measured from the end that goes to waste.
func (b *bench) followLine(s Step, l Lie) {
	from := s.Cut.From
	if from.Point != ThePlainEnd || l.Rest != PlainEnd || from.Along != l.Fence && (from.Along != NoFace || s.Cut.OffSquare != 0) {
		confused("%v: the line is measured from %v, on the fence is %d", s.What, from, l.Fence)
	}
	m := b.laid(b.lower(s, l), b.side(l.Fence), b.side(l.Rest))
	swing := b.swing(s, m, l.Fence)
	if s.Cut.Through {
		b.through(m, s.Cut.Line, swing, s.Cut, false)
		return
	}
	if !s.Cut.Passes {
		confused("%v: what stands outside the line stays", s.What)
	}
	b.off(m, -overall, s.Cut.Line-b.kerf/math.Cos(swing), swing, s.Cut)
}

func (b *bench) followOnEnd(s Step) {
	c := s.Cut
	if c.ByHand() {
		m := b.stood(b.side(RingSide), c.OffSquare)
		b.standing(m, c.Line, b.wood.Transform(m).Bounds().Size().Y-c.Line-b.kerf, c.Height) // in the middle
		return
	}
	if c.At.Point != JigFace {
		confused("%v: %v from %d", s.What, c.Stop, c.At.Point)
	}
	var m solid.Affine3
	for _, l := range lies(s.Operation) {
		if l.Down != RoughEnd {
			confused("%v: stands on %d", s.What, l.Down)
		}
		m = b.stood(b.side(l.Fence), c.OffSquare)
		last := c.Stop
		if c.Passes { // as far as the cut from the other face
			last = b.wood.Transform(m).Bounds().Size().Y - c.Stop - b.kerf
		}
		b.standing(m, c.Stop, max(c.Stop, last), c.Height)
	}
	b.shed()
}

// listedSides are the sides that a taper takes.
var listedSides = map[NoteID][]Face{
	"step.taper-one":      {StretcherSide},
	"step.taper-adjacent": {StretcherSide, RingSide},
	"step.taper-opposite": {StretcherSide, Back},
	"step.taper-four":     {StretcherSide, Back, RingSide, OuterSide},
}

// followTaper saws every tapered face from its start, squared across the leg,
// at its angle to the straight one.
func (b *bench) followTaper(s Step) {
	sides, ok := listedSides[s.What.ID]
	if !ok || s.Cut.From != (Datum{FootEnd, Back, false}) {
		confused("%v, from %v", s.What, s.Cut.From)
	}
	down := b.side(Foot)
	foot := reaches(b.wood, down)
	room := b.wood.Bounds()
	for _, side := range sides {
		out := b.side(side)
		start := down.Mul(foot - s.Cut.Line).Add(out.Mul(math.Max(room.Max.Dot(out), room.Min.Dot(out))))
		face := solid.Through(start, out.Add(down.Mul(math.Tan(s.Cut.OffSquare))))
		b.wood = b.wood.Cut(face)
	}
}

// reaches returns how far a part reaches in one direction.
func reaches(p solid.Part, out solid.Vec) float64 {
	most := math.Inf(-1)
	for _, s := range p.Pieces {
		for _, f := range s.Faces() {
			for _, c := range f.Corners {
				most = math.Max(most, c.Dot(out))
			}
		}
	}
	return most
}

// madeByTheList takes the blank of one part of one size through all operations
// that name it.
func madeByTheList(t rapid.TB, p piece.Piece, part Part, plan Plan) *bench {
	defer func() {
		switch c := recover().(type) {
		case nil:
		case confusion:
			t.Fatalf("%v %s: %v", part, p.Design.Size, c.error)
		default:
			panic(c)
		}
	}()
	k := slices.IndexFunc(plan.Cuts.Rows, func(r CutRow) bool {
		return r.Part == part && slices.ContainsFunc(r.Sizes, func(s SizeCount) bool { return s.Size == p.Design.Size })
	})
	row := plan.Cuts.Rows[k]
	if row.Rough.Width < row.Sawn.Width || row.Rough.Thickness < row.Sawn.Thickness {
		t.Fatalf("%v: rough %v, planed to %v", part, row.Rough, row.Sawn)
	}
	b := &bench{marks: marked(part, plan.steps()), kerf: p.Kerf, after: map[int]solid.Part{}}
	size := solid.V(row.Rough.Length, row.Sawn.Width, row.Sawn.Thickness)
	if part == Leg { // its ring side is the one across its breadth
		size.Y, size.Z = size.Z, size.Y
	}
	b.wood = solid.Stock("part", solid.Box(solid.Vec{}, size))
	for _, c := range plan.Cards {
		b.card = c
		for _, s := range c.Steps {
			if slices.ContainsFunc(s.Parts, func(q Batch) bool { return q.Part == part && q.Size == p.Design.Size && q.Count == p.Frame.Ring.Sides }) {
				b.follow(s)
				b.after[c.Number-1] = b.wood
			}
		}
	}
	return b
}

// trimmed saws the ends flush when the joint is glued: the stretcher to the
// leg's back, the head to the stretcher's top or proud of it.
func trimmed(p piece.Piece, stretcher, leg solid.Part) (solid.Part, solid.Part) {
	m := LegPlace(p)
	s, c := math.Sincos(p.Frame.Leg.Splay)
	outer := solid.Through(m.Apply(solid.Vec{}), solid.V(c, 0, s))
	top := solid.V(0, 0, reaches(stretcher, solid.V(0, 0, 1))+p.Design.Legs.Proud)
	return stretcher.Cut(outer), leg.Transform(m).Cut(solid.Through(top, solid.V(0, 0, 1)))
}

// drawBuilt draws the sizes of one design: one, or a second one on the same
// ring.
func drawBuilt(t *rapid.T) []design.Design {
	d := piecetest.Sound(t)
	d.Size = "low"
	d.Legs.Clear += 0.1       // so that there is wood to find the joint by
	if d.Legs.Given < 0.002 { // no saw is set to a tenth of a degree
		d.Legs.Given = 0
	}
	d.Saw.Kerf = rapid.Float64Range(1, 5).Draw(t, "kerf")
	d.Wood = design.Wood{ExtraLength: 20, ExtraWidth: 3, ExtraThickness: 3, Spares: 1, Tests: 1}
	if rapid.Bool().Draw(t, "tapered") {
		d.Legs.Taper = piecetest.Taper(t, d)
		// So that leg and foot differ when the leg is milled narrower, and some
		// of a stretcher milled thinner is left.
		d.Legs.Taper.Foot = math.Max(d.Legs.Taper.Foot*0.9, d.Legs.Breadth-0.75*d.Ring.Width)
	}
	if rapid.Bool().Draw(t, "milled") {
		by := func(name string, mm float64) float64 { return mm * rapid.Float64Range(0.95, 1.02).Draw(t, name) }
		d.Legs.Clear += 4 // what wider wood takes
		d.Milled = design.Milled{
			Width: by("milled width", d.Ring.Width), Depth: by("milled depth", d.Ring.Depth),
			Breadth: by("milled breadth", d.Legs.Breadth), Kerf: by("kerf as measured", d.Saw.Kerf),
		}
	}
	out := []design.Design{d}
	if rapid.Bool().Draw(t, "two sizes") {
		d.Size = "tall"
		// The list takes for one what differs by less than it prints.
		d.Legs.Height += rapid.Float64Range(1, 300).Draw(t, "taller by")
		d.Legs.Given *= rapid.SampledFrom([]float64{0, 0.7, 1}).Draw(t, "as much splay")
		d.Ring.Horn += rapid.SampledFrom([]float64{0, 5}).Draw(t, "longer horn")
		out = append(out, d)
	}
	return out
}

// drawPlan draws the sizes of one design and how they are made, at a saw whose blade rises
// so high.
func drawPlan(t *rapid.T, highest float64) Plan {
	var pieces []piece.Piece
	for _, d := range drawBuilt(t) {
		d.Saw.Highest = highest
		pieces = append(pieces, piecetest.Worked(t, d))
	}
	return NewPlan(piece.ShareStops(pieces))
}

// What the cards leave of the blanks of the cut list is the finished
// parts, to the last shaving that they print.
func TestTheListMakesTheParts(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		plan := drawPlan(t, 0)
		pieces := plan.Pieces
		for _, p := range pieces {
			stretcher := madeByTheList(t, p, Stretcher, plan).wood
			leg := madeByTheList(t, p, Leg, plan).wood
			stretcher = stretcher.Transform(solid.Translate(solid.V(-p.SawnStretcher().Length/2, 0, 0)))
			stretcher, leg = trimmed(p, stretcher, leg)
			for _, c := range []struct {
				name      string
				part      Part
				got, want solid.Part
				from      piece.StockSize
			}{
				{"stretcher", Stretcher, stretcher, p.Parts()[0].Transform(fromRoom(p)), p.SawnStretcher()},
				{"leg", Leg, leg, p.Parts()[1].Transform(fromRoom(p)), p.SawnLeg()},
			} {
				allowed := 1e-6*c.want.Volume() + unpared(p, plan, c.part)
				if len(pieces) > 1 { // lengths of two sizes that print alike are one to the list
					allowed += 0.01 * c.from.Width * c.from.Thickness
				}
				if off := amiss(c.got, c.want); math.Abs(off) > allowed {
					t.Errorf("%s %s: %.4f mm³ left, want %.4f; %.6f mm³ are not where they should be", c.name, p.Design.Size,
						c.got.Volume(), c.want.Volume(), off)
				}
			}
		}
	})
}

// fromRoom takes the first stretcher and its leg back to their own frame.
func fromRoom(p piece.Piece) solid.Affine3 {
	m := p.Place(0)
	return solid.Translate(m.O.Mul(-1)).Then(axes(m.X, m.Y, m.Z))
}

// A stretcher and a leg that are nearly as long are squared to a stop each: what one is
// left longer would move its laps and its slot.
func TestNearLengthsMoveNoJoint(t *testing.T) {
	d := piecetest.Low()
	d.Ring.Sides, d.Ring.Inside, d.Ring.Width, d.Ring.Depth, d.Ring.Horn = 6, 162.375, 48.9375, 20, 0
	d.Ring.LegEndOver, d.Ring.Plain = false, design.FlushEnd
	d.Legs = design.Legs{Breadth: 20.5625, Height: 307.625, Clear: 3.4125, To: design.ToFrame}
	d.Top, d.Saw.Kerf = design.Top{}, 1
	p := piecetest.Worked(t, d)
	if off := math.Abs(p.SawnStretcher().Length - p.SawnLeg().Length); off == 0 || off >= near {
		t.Fatalf("lengths %.3f mm apart ask nothing", off)
	}
	made := madeByTheList(t, p, Stretcher, NewPlan([]piece.Piece{p})).wood
	made = made.Transform(solid.Translate(solid.V(-p.SawnStretcher().Length/2, 0, 0)))
	made, _ = trimmed(p, made, p.Leg())
	if off := amiss(made, p.Parts()[0].Transform(fromRoom(p))); math.Abs(off) > 1 {
		t.Errorf("%.3f mm³ are not where they should be", off)
	}
}
