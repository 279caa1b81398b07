package aprons

import (
	"math"
	"slices"
	"strings"

	"rodsheet/geometry"
	"rodsheet/geometry/measure"
	"rodsheet/geometry/solid"
	"rodsheet/templates"
	"rodsheet/templates/piece"
	"rodsheet/templates/piece/assembly"
	"rodsheet/templates/piece/checks"
	"rodsheet/templates/piece/design"
	"rodsheet/templates/piece/kind"
	"rodsheet/templates/piece/shop"
)

// Screws returns how screws through the aprons hold the top; ok is false where none do.
// They run up along the sides of their aprons, in the middle of the thickness.
func (m Model) Screws() (f shop.Fixing, ok bool) {
	top := m.Design.Frame.Top
	if top.None || top.Fixing != design.Screws {
		return f, false
	}
	h := shop.Hold{Kind: design.Screws, Depth: math.Inf(1), Top: top.Thickness}
	for i, r := range m.Rows[0].Rails {
		h.Lines = append(h.Lines, m.line(r))
		// An arch takes its rise of the wood at mid-length.
		h.Depth = math.Min(h.Depth, m.deep(m.Rows[0], i)-r.Row.Of.Arch)
	}
	return h.Fixing(m.Design), true
}

// acrossGrain is the direction in plan in which the top moves.
func (m Model) acrossGrain() geometry.Point {
	if p := m.panel(); p.Y > p.X+piece.Slip {
		return geometry.Pt(1, 0)
	}
	return geometry.Pt(0, 1)
}

// line is where screws through an apron can pass from it into the top.
func (m Model) line(r Rail) shop.Line {
	var sum solid.Vec // of the four corners of its top
	for _, e := range r.Ends {
		sum = sum.Add(e.Mouth[1]).Add(e.Mouth[2])
	}
	mid, across, u := geometry.Pt(sum.X/4, sum.Y/4), m.acrossGrain(), m.Design.Unit
	l := shop.Line{
		Part: r.Side, Off: mid.Dot(across), Rise: m.sides[r.Side].along.Dot(across),
		Reach: shop.ToShoulder(u, r.shortest()/2), Half: mid.Norm() * grow(m.Design.Frame),
	}
	for _, at := range places(r) {
		l.Others = append(l.Others, math.Copysign(piece.WholeUp(u, math.Abs(at)), at))
	}
	return l
}

// bore is how deep the head of a screw is let into the underside of the apron of a sort,
// before it is arched.
func (m Model) bore(f shop.Fixing, sort int) float64 {
	return m.deep(m.Rows[0], sort) - (f.Screw - f.Bite)
}

// leastBore in mm is the least that is bored for a head: with less it stands on the underside
// (common practice, no source).
const leastBore = 1.0

// heads returns how deep the heads go into the aprons of each sort; 0 where these are not
// bored for them.
func (m Model) heads(f shop.Fixing) []float64 {
	out := make([]float64, m.RailSorts())
	for k := range out {
		if deep := m.bore(f, k); deep >= leastBore {
			out[k] = deep
		}
	}
	return out
}

// deepestBore in mm is what common bits for heads reach (common practice, no source).
const deepestBore = 100.0

// screwChecks ask whether screws hold the top and leave enough of top and aprons.
func (m Model) screwChecks() []kind.Check {
	u := m.Design.Unit
	m.Design.Unit = m.Design.Written // by the round sizes of the file it is judged
	f, ok := m.Screws()
	if !ok {
		return nil
	}
	in, top := m.Design.Unit, m.Design.Frame.Top.Thickness
	through := kind.Warn
	if f.Bite > top-piece.Slip {
		through = kind.Fail
	}
	shape, edge := m.TopShape(), math.Inf(1)
	widest, heads := 0.0, m.heads(f)
	for _, h := range f.Holes {
		f.Bore = heads[h.Part%len(heads)] // into the whole apron, before it is arched
		widest = math.Max(widest, f.Across(in, h))
		edge = math.Min(edge, shape.Inside(m.onTop(h)))
	}
	beside := (m.Rows[0].Of.Thickness - widest) / 2
	return []kind.Check{
		texts.AtMost(u, "aprons.screw-through", f.Bite, top*2/3, through),
		texts.AtLeast(u, "aprons.screw-hold", f.Bite, checks.LeastBite(in), kind.Warn),
		texts.AtLeast(u, "aprons.beside-screw", beside, checks.LeastBeside(in), m.thin(beside)),
		texts.AtMost(u, "aprons.screw-bore", slices.Max(heads), deepestBore, kind.Warn),
		texts.AtLeast(u, "aprons.screw-edge", edge, checks.LeastBeside(in), m.thin(edge)),
	}
}

// onTop is where a screw enters the top, in plan.
func (m Model) onTop(h shop.Hole) geometry.Point {
	r := m.Rows[0].Rails[h.Part]
	at := r.Along.Mul(h.At)
	for _, e := range r.Ends {
		at = at.Add(e.Mouth[1].Add(e.Mouth[2]).Mul(0.25))
	}
	return geometry.Pt(at.X, at.Y)
}

// screwCard is drilling the aprons, before anything is glued.
func (m Model) screwCard(row *Row, f shop.Fixing) templates.Card {
	u := m.Design.Unit
	shank, head := shop.Bits(u)
	c := drillCard.Card(u, m.railTicks(row), m.underPictures(f)...)
	c.Test = drillCard.Test.With(m.length(f.Bite), m.length(m.Design.Frame.Top.Thickness))
	heads := m.heads(f)
	bored, bore := slices.Max(heads) > 0, boreText
	if bored {
		c.Read(headHole, measure.Length(head))
	}
	switch {
	case !bored:
		bore = noBoreText
	case slices.Min(heads) == 0:
		bore = someBoreText
	}
	for k, deep := range heads {
		if deep == 0 {
			continue
		}
		c.Figures = append(c.Figures, templates.Reading{Name: headDeep.With(m.sortName(row, k)), Value: m.length(deep), Write: true})
	}
	before := assembly.Either(row.Of.Arch > 0, beforeArchText, "")
	c.Text = []string{drillText.With(before.With(), bore.With())}
	c.Read(shankHole, measure.Length(shank))
	if f.Play > 0 {
		if bored {
			c.Read(headSlot, measure.Length(f.HeadSlot(u)))
		}
		c.Read(shankSlot, measure.Length(f.Slot(u)))
		c.Say(slotsText)
	}
	switch {
	case m.Design.Frame.Shape == design.Rectangle && m.RailSorts() == 1:
		c.Say(sidesText)
	case m.Design.Frame.Shape == design.RegularFrame:
		c.Say(assembly.Either(m.acrossGrain().X != 0, grainAcross, grainAlong))
	}
	return c.Card
}

// underPictures show the undersides of the aprons with their holes; those that are drilled
// alike share theirs.
func (m Model) underPictures(f shop.Fixing) []templates.Picture {
	var names [][]string
	var first []int // of those that are drilled alike
	same := func(a, b screwHole) bool { return a.at.Distance(b.at)+a.way.Distance(b.way) < piece.Slip }
	for i := range m.sides {
		holes := m.slots(f, i)
		at := slices.IndexFunc(first, func(other int) bool {
			return i%m.RailSorts() == other%m.RailSorts() && slices.EqualFunc(m.slots(f, other), holes, same)
		})
		if at < 0 {
			at, names, first = len(first), append(names, nil), append(first, i)
		}
		names[at] = append(names[at], m.railCalled(m.Rows[0], i))
	}
	var out []templates.Picture
	for k, i := range first {
		out = append(out, m.underside(f, i, underName.With(strings.Join(names[k], ", "))))
	}
	return out
}

// A screwHole is where a screw passes through the underside of an apron: x along to the right
// end as seen from outside, y down from the outer side inward. So the apron lies underside
// up, its outer side at the fence.
type screwHole struct {
	at, way geometry.Point // way is that of a slot, of no length where the hole is round
}

// axis is that of a slot so long and wide, of no length where the hole is round.
func (h screwHole) axis(long, wide float64) geometry.Segment {
	half := h.way.Mul((long - wide) / 2)
	return geometry.Segment{A: h.at.Sub(half), B: h.at.Add(half)}
}

// slots are the holes of an apron.
func (m Model) slots(f shop.Fixing, i int) []screwHole {
	var out []screwHole
	s, across := m.sides[i], m.acrossGrain()
	along := geometry.Pt(across.Dot(s.along), across.Dot(s.out))
	if along.X < -piece.Slip || along.X < piece.Slip && along.Y < 0 {
		along = along.Mul(-1)
	}
	for _, h := range f.Holes {
		if h.Part != i {
			continue
		}
		hole := screwHole{at: geometry.Pt(h.At, -m.edge(i)/2)}
		if h.Slotted {
			hole.way = along
		}
		out = append(out, hole)
	}
	return out
}

// edge is how wide the underside of an apron is, on the level.
func (m Model) edge(i int) float64 {
	r := m.Rows[0].Rails[i]
	return r.Row.Of.Thickness / r.Up.Z
}

// underside is that of an apron with its holes: for the heads in solid line, for the shanks
// in broken.
func (m Model) underside(f shop.Fixing, i int, name string) templates.Picture {
	r := m.Rows[0].Rails[i]
	half, edge := r.Ends[right].Mouth[0].Distance(r.Ends[left].Mouth[0])/2, m.edge(i)
	var d templates.Drawing
	d.Polygon(templates.Outline, geometry.Box(-half, -edge, half, 0).Corners()...)
	d.Line(templates.Centre, geometry.Pt(0, -edge-5), geometry.Pt(0, 5))
	d.LabelLine(geometry.Pt(-half, 0), geometry.Pt(half, 0), label("outer-side"))
	u := m.Design.Unit
	shank, head := shop.Bits(u)
	bored := m.heads(f)[i%m.RailSorts()] > 0
	for _, h := range m.slots(f, i) {
		through := templates.Cut
		if bored {
			d.Polygon(templates.Cut, slot(h.axis(f.HeadSlot(u), head), head)...)
			through = templates.Hidden
		}
		d.Polygon(through, slot(h.axis(f.Slot(u), shank), shank)...)
		where := m.length(math.Abs(h.at.X))
		if math.Abs(h.at.X) < piece.Slip {
			where = atMiddle.With()
		}
		id := measure.ID("hole")
		if h.way != (geometry.Point{}) {
			id = "slot"
		}
		d.LabelPoint(h.at, label(id, where))
	}
	return templates.Picture{Heading: name, Wide: true, Strokes: d.Strokes, Labels: d.Labels}
}

// slot is the outline of a slot so wide about its axis.
func slot(axis geometry.Segment, wide float64) []geometry.Point {
	a := 0.0
	if axis.A != axis.B {
		a = axis.Angle()
	}
	return slices.Concat(geometry.Arc(axis.B, wide/2, a-math.Pi/2, a+math.Pi/2), geometry.Arc(axis.A, wide/2, a+math.Pi/2, a+3*math.Pi/2))
}

// screwTop is putting the top on by screws.
func (m Model) screwTop(c *assembly.Card, f shop.Fixing) {
	c.Read(screwsReading, measure.Number(float64(len(f.Holes))))
	c.Read(screwReading, measure.Length(f.Screw))
	m.pilots(c, f.Bite)
	c.Say(screwText)
	c.Test = screwTest.With()
}

// pilots reads the holes for the threads of screws that go so far into the top.
func (m Model) pilots(c *assembly.Card, bite float64) {
	hard, soft := shop.Pilots(m.Design.Unit)
	c.Figures = append(c.Figures, templates.Reading{Name: pilotReading.With(), Value: pilotSizes.With(m.bare(hard), m.length(soft))})
	c.Set(pilotDeep, measure.Length(bite))
}
