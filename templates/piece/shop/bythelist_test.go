package shop

import (
	"math"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"rodsheet/geometry/joint"
	"rodsheet/geometry/solid"
	"rodsheet/templates/piece"
	"rodsheet/templates/piece/design"
	"rodsheet/templates/piece/internal/piecetest"
)

// follow does one row.
func (b *bench) follow(s step) {
	if s.Cut == nil {
		return
	}
	switch s.Cut.How {
	case upright:
		b.followUpright(s)
	case onTaper:
		b.followTaper(s)
	default:
		b.followGauge(s)
	}
}

// A lie is one way a part lies at the gauge.
type lie struct{ down, fence, rest string }

// lies reads the ways in which a row lays the part: one, or two of them
// divided by "then".
func lies(s step) []lie {
	downs, fences := strings.Split(s.Down, ", then "), strings.Split(s.Fence, ", then ")
	out := make([]lie, len(downs))
	for i, down := range downs {
		l := lie{down: down, fence: fences[min(i, len(fences)-1)], rest: s.Cut.Against}
		if end, face, ok := strings.Cut(down, ": "); ok {
			l.down, l.rest = face, end
		}
		out[i] = l
	}
	return out
}

// restWords are the things that a stop touches, by the mark of that end.
var restWords = map[string]string{
	"plain end": "plain end", "foot end": "foot end", "leg end": "leg end", "long corner of the head": "head",
}

func (b *bench) followGauge(s step) {
	c := *s.Cut
	for i, l := range lies(s) {
		if c.Line > 0 {
			b.followLine(s, l)
			continue
		}
		rest := restWords[l.rest]
		if s.Op == doCrosscut && l.rest == "squared end" { // either will do
			rest = "plain end"
			if _, ok := b.marks[rest]; !ok {
				rest = "foot end"
			}
		}
		if rest == "" {
			confused("what touches the stop is %q", l.rest)
		}
		stood := b.mirrored
		m := b.laid(b.lower(s, l), b.side(l.fence), b.side(rest))
		if i > 0 && b.mirrored != stood {
			confused("%s: between its two cuts the stop would change sides", s.Name)
		}
		b.cut(s, m, b.swing(c, m, l.fence))
	}
	if s.Op == doCutShoulders {
		b.shed()
	}
}

// lower returns the side that lies down; where the row does not care, either.
func (b *bench) lower(s step, l lie) solid.Vec {
	if l.down == "" && s.Cut.Through && s.Cut.Square == 0 {
		return b.side(l.fence).Cross(solid.V(1, 0, 0))
	}
	return b.side(l.down)
}

// cut makes the cuts of a row on a part that lies at the stop.
func (b *bench) cut(s step, m solid.Affine3, swing float64) {
	c := *s.Cut
	if s.Op == doSawEnd {
		b.endSwing = b.lastSwing
	}
	// Moved out by the spacer, the part has the blade so much nearer its end.
	first, last := c.Stop-c.Spacer, c.Stop
	switch passes := strings.Contains(s.words(), "in passes"); {
	case c.Through:
		b.through(m, c.Stop, swing, c, true)
	case passes || c.Spacer == 0:
		b.off(m, first, last, swing, c)
	default:
		b.off(m, first, first, swing, c)
		b.off(m, last, last, swing, c)
	}
}

// followLine saws to a line that is measured from the end that goes to waste.
func (b *bench) followLine(s step, l lie) {
	from, edge, ok := strings.Cut(s.Cut.From, ", along the ")
	if ok && edge != l.fence || !ok && s.Cut.Square != 0 {
		confused("%s: the line is measured along %q, the fence has %q", s.Name, edge, l.fence)
	}
	m := b.laid(b.lower(s, l), b.side(l.fence), b.side(from))
	swing := b.swing(*s.Cut, m, l.fence)
	if s.Cut.Through {
		b.through(m, s.Cut.Line, swing, *s.Cut, false)
		return
	}
	b.off(m, -overall, s.Cut.Line-b.kerf/math.Cos(swing), swing, *s.Cut)
}

func (b *bench) followUpright(s step) {
	c := *s.Cut
	if c.ByHand {
		m := b.onEnd(b.side("face side"), c.Square)
		b.upright(m, c.Line, b.wood.Transform(m).Bounds().Size().Y-c.Line-b.kerf, c.Height) // in the middle
		return
	}
	if s.Down != "the rough end" || s.Fence != "face side on the jig, then the back" || c.Against != "jig's face to the near side of the blade" {
		confused("%s: %q, %q, %q", s.Name, s.Down, s.Fence, c.Against)
	}
	var m solid.Affine3
	for _, face := range []string{"face side", "back"} {
		m = b.onEnd(b.side(face), c.Square)
		last := c.Stop
		if s.Op == doCutSlot && strings.Contains(s.words(), "in passes") { // as far as the cut from the other face
			last = b.wood.Transform(m).Bounds().Size().Y - c.Stop - b.kerf
		}
		b.upright(m, c.Stop, max(c.Stop, last), c.Height)
	}
}

// taperedSides names the sides that a taper takes, by the words of its row.
var taperedSides = map[string][]string{
	"taper, inner face":                            {"inner edge"},
	"taper, inner face and the face into the ring": {"inner edge", "face side"},
	"taper, inner and outer face":                  {"inner edge", "outer edge"},
	"taper, four faces":                            {"inner edge", "outer edge", "face side", "back"},
}

// followTaper saws every tapered face from its start, squared across the leg,
// at its angle to the straight one.
func (b *bench) followTaper(s step) {
	names, ok := taperedSides[s.Name]
	if !ok || s.Cut.From != "the foot, up the outer edge, squared across" {
		confused("%s, from %q", s.Name, s.Cut.From)
	}
	down := b.side("foot end")
	foot := reaches(b.wood, down)
	room := b.wood.Bounds()
	for _, name := range names {
		out := b.side(name)
		start := down.Mul(foot - s.Cut.Line).Add(out.Mul(math.Max(room.Max.Dot(out), room.Min.Dot(out))))
		face := solid.Through(start, out.Add(down.Mul(math.Tan(s.Cut.Square))))
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

// madeByTheList takes the blank of one part of one size through all rows that
// name it.
func madeByTheList(t *rapid.T, p piece.Piece, part string, list cutList, steps []step) *bench {
	defer func() {
		if c, ok := recover().(confusion); ok {
			t.Fatalf("%s %s: %v", part, p.Design.Size, c.error)
		}
	}()
	k := slices.IndexFunc(list.Rows, func(r cutRow) bool {
		return r.Part == part && slices.ContainsFunc(r.Sizes, func(s sizeCount) bool { return s.Size == p.Design.Size })
	})
	row := list.Rows[k]
	if row.Rough.Width < row.Sawn.Width || row.Rough.Thickness < row.Sawn.Thickness {
		t.Fatalf("%s: rough %v, planed to %v", part, row.Rough, row.Sawn)
	}
	b := &bench{marks: marked(part, steps), kerf: p.Kerf}
	size := solid.V(row.Rough.Length, row.Sawn.Width, row.Sawn.Thickness)
	if part == "leg" { // its face side is the one across its breadth
		size.Y, size.Z = size.Z, size.Y
	}
	b.wood = solid.Stock(part, solid.Box(solid.Vec{}, size))
	for _, s := range steps {
		if slices.ContainsFunc(s.Parts, func(q batch) bool { return q.Part == part && q.Size == p.Design.Size && q.Count == p.Frame.Ring.Sides }) {
			b.follow(s)
		}
	}
	return b
}

// joined takes a leg from the frame of its blank to that of its stretcher,
// shoulder on shoulder: the corner where the leg's inner edge meets the
// underside is found on either part.
func joined(p piece.Piece, stretcher, leg solid.Part) solid.Affine3 {
	s, c := math.Sincos(p.Frame.Leg.Splay)
	m := solid.Affine3{X: solid.V(-s, 0, c), Y: solid.V(0, 1, 0), Z: solid.V(-c, 0, -s)}
	cheek, middle := p.Frame.Ring.Width*0.01, p.Frame.Ring.Width/2
	inStretcher, inLeg := middle, cheek
	if p.Design.Legs.Mortise == joint.MortiseInLeg {
		inStretcher, inLeg = cheek, middle
	}
	const hair = 1e-7
	at := lastRun(stretcher, solid.V(0, inStretcher, hair))
	on := lastRun(leg, solid.V(0, inLeg, p.Frame.Leg.Breadth-hair))
	corner := solid.V(on, 0, p.Frame.Leg.Breadth)
	return m.Then(solid.Translate(solid.V(at, 0, 0).Sub(m.Apply(corner))))
}

// lastRun returns where the wood ends along x, on a line.
func lastRun(p solid.Part, at solid.Vec) float64 {
	runs := piecetest.Along(p, at)
	return runs[len(runs)-1].Hi
}

// trimmed saws the ends flush when the joint is glued: the stretcher to the
// leg's outer face, the head to the stretcher's top or proud of it.
func trimmed(p piece.Piece, stretcher, leg solid.Part) (solid.Part, solid.Part) {
	m := joined(p, stretcher, leg)
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

// What the settings list leaves of the blanks of the cut list is the finished
// parts, to the last shaving that it prints.
func TestTheListMakesTheParts(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		var pieces []piece.Piece
		for _, d := range drawBuilt(t) {
			pieces = append(pieces, piecetest.Worked(t, d))
		}
		pieces = piece.ShareStops(pieces)
		list, steps := newCutList(pieces), inFull(workingOrder(pieces))
		for _, p := range pieces {
			stretcher := madeByTheList(t, p, "stretcher", list, steps).wood
			leg := madeByTheList(t, p, "leg", list, steps).wood
			stretcher = stretcher.Transform(solid.Translate(solid.V(-p.SawnStretcher().Length/2, 0, 0)))
			stretcher, leg = trimmed(p, stretcher, leg)
			for _, c := range []struct {
				name      string
				got, want solid.Part
				from      piece.StockSize
			}{
				{"stretcher", stretcher, p.Parts()[0].Transform(fromRoom(p)), p.SawnStretcher()},
				{"leg", leg, p.Parts()[1].Transform(fromRoom(p)), p.SawnLeg()},
			} {
				allowed := 1e-6 * c.want.Volume()
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

// inFull gives each row that is otherwise as the one above what that one says.
func inFull(steps []step) []step {
	out := slices.Clone(steps)
	for i := range out {
		if strings.Contains(out[i].words(), "s the row above") {
			out[i].Then = append(slices.Clone(out[i].Then), out[i-1].words())
		}
	}
	return out
}

// fromRoom takes the first stretcher and its leg back to their own frame.
func fromRoom(p piece.Piece) solid.Affine3 {
	m := p.Place(0)
	return solid.Translate(m.O.Mul(-1)).Then(axes(m.X, m.Y, m.Z))
}
