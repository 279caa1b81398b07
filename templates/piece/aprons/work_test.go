package aprons

import (
	"math"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"rodsheet/geometry"
	"rodsheet/geometry/measure"
	"rodsheet/geometry/solid"
	"rodsheet/templates"
	"rodsheet/templates/piece/design"
	"rodsheet/templates/piece/internal/piecetest"
	"rodsheet/templates/piece/kind"
)

// slip is how far a face may stand from where it is reckoned, mm: cards say lengths and
// angles to a hundredth, which over a part of 200 mm comes to 0.02, and a few of them add up;
// a tilt that nobody sets, of less than 0.05°, comes to 0.04 over the depth of a mortise. The
// arch is drawn true; in the solid chords of a 24th stand for it.
const slip = 0.1

// anyFrame is a table that a maker may draw.
func anyFrame(t *rapid.T) design.Design {
	d := table()
	f := &d.Frame
	mm := func(name string, lo, hi float64) float64 { return rapid.Float64Range(lo, hi).Draw(t, name) }
	lean := func(name string) float64 {
		if rapid.IntRange(0, 5).Draw(t, name+" is none") == 0 {
			return 0
		}
		return measure.Radians(mm(name, -8, 16))
	}
	f.Length, f.Width, f.Height = mm("length", 330, 620), mm("width", 330, 500), mm("height", 420, 700)
	f.Legs.Rake, f.Legs.Splay = lean("rake"), lean("splay")
	f.Legs.Size = mm("size", 36, 50)
	switch rapid.IntRange(0, 3).Draw(t, "shape") {
	case 0:
		f.Shape, f.Sides, f.Legs.Splay, f.Length = design.RegularFrame, rapid.IntRange(3, 8).Draw(t, "sides"), 0, mm("side", 280, 400)
		if f.Sides == 3 {
			f.Legs.Size += 18
		}
	case 1:
		f.Legs.Splay = f.Legs.Rake
	}
	f.Aprons = design.Rail{
		Depth: mm("depth", 60, 100), Thickness: mm("thickness", 16, 24), Inset: mm("inset", 2, 6), LowerCut: mm("lower", 0, 12),
		Joint: rapid.SampledFrom([]design.RailJoint{design.SquareHaunch, design.SlopingHaunch, design.PlainTenon, design.Bridled}).Draw(t, "joint"),
		Plumb: rapid.Bool().Draw(t, "plumb"),
	}
	if rapid.Bool().Draw(t, "to the sightline") {
		f.Legs.Faces, f.Aprons.Inset = design.ToSightline, f.Aprons.Inset+4
	}
	f.Legs.Start, f.Legs.Foot = 0, 0
	if rapid.Bool().Draw(t, "tapered") {
		f.Legs.Foot = mm("foot", 24, 34)
	}
	if rapid.IntRange(0, 2).Draw(t, "arched") == 0 {
		f.Aprons.Arch = mm("arch", 5, 15)
	}
	if rapid.IntRange(0, 3).Draw(t, "square ends") == 0 {
		f.Aprons.Long = mm("tenon", 10, 18)
	}
	if rapid.IntRange(0, 2).Draw(t, "with stretchers") == 0 {
		f.Stretchers = design.Rail{Depth: mm("low depth", 24, 40), Thickness: mm("low thickness", 12, 18), Height: mm("low", 60, 160), Inset: mm("low inset", 3, 6), Plumb: rapid.Bool().Draw(t, "plumb too")}
	}
	f.Top.Fixing = rapid.SampledFrom([]design.FixingKind{design.NoFixing, design.Screws, design.Buttons}).Draw(t, "fixing")
	if rapid.Bool().Draw(t, "milled") {
		d = asMilled(d)
	}
	return d
}

// The cards of all parts, carried out on blanks by what they say and by the templates that
// they call for, give the solids.
func TestTheCardsMakeTheTable(t *testing.T) {
	variants(t, func(t *testing.T, m Model) {
		if fails(m) {
			return
		}
		carriedOut(t, m)
	})
}

func TestTheCardsMakeAnyTable(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		m, err := piecetest.Solved(judge(anyFrame(t), nil))
		if err != nil || fails(m) {
			t.Skip("no such table, or a check tells of it")
		}
		carriedOut(t, m)
	})
}

func fails(m Model) bool {
	return slices.ContainsFunc(m.Checks(), func(c kind.Check) bool { return c.Grade == kind.Fail })
}

func carriedOut(t rapid.TB, m Model) {
	b := bench{TB: t, m: m}
	b.stock, _ = m.stock(setting)
	b.legs, _ = m.legEnvelope(setting)
	axes := make([][]shoulderAxis, len(m.Rows))
	for i, row := range m.Rows {
		var made []solid.Part
		for k := range m.sorts(row) {
			part, axis := b.rail(row, k)
			made, axes[i] = append(made, part), append(axes[i], axis)
		}
		for k, r := range row.Rails {
			rail := made[k%len(made)]
			if row.Kind == Aprons {
				rail = b.fixed(rail, k)
			}
			b.same(m.railCalled(row, k), rail, m.finished()[len(m.legs)+i*len(m.sides)+k].Transform(r.frame().to()))
		}
	}
	if top := m.Design.Frame.Top; !top.None {
		made := solid.Stock("", b.topped())
		b.same("top", made, solid.Stock("", solid.Prism(solid.Lift(m.TopOutline(), m.Head), solid.V(0, 0, top.Thickness))))
		// In the solid fewer chords stand for its curves.
		b.same("top in its chords", solid.Part{}, m.Top().Subtract(piecetest.Grown(made.Pieces[0], slip)))
		if got, want := m.Top().Volume(), made.Volume(); got < 0.99*want {
			b.Errorf("top of %g mm³, the solid has %g", want, got)
		}
	}
	for i := range m.legs {
		b.same(m.legName(i), b.leg(i, axes), m.Leg(i).Transform(m.lies(i).to()))
	}
}

// A bench follows the cards of one table.
type bench struct {
	rapid.TB
	m           Model
	stock, legs templates.Section
}

// same asks that of two parts none stands out of the other by more than slip.
func (b bench) same(what string, got, want solid.Part) {
	b.Helper()
	piecetest.Same(b, what, got, want, slip)
}

func (b bench) find(s templates.Section, heading string) (templates.Card, bool) {
	i := slices.IndexFunc(s.Cards, func(c templates.Card) bool { return c.Heading == heading })
	if i < 0 {
		return templates.Card{}, false
	}
	return s.Cards[i], true
}

func (b bench) card(s templates.Section, heading string) templates.Card {
	c, ok := b.find(s, heading)
	if !ok {
		b.Fatalf("no card %q", heading)
	}
	return c
}

func (b bench) value(printed string) float64 { return piecetest.Value(b, printed) }

// figure reads what a card says under one of some names; optional ones are 0 where it says
// nothing.
func (b bench) figure(c templates.Card, names ...text) float64 {
	v, ok := b.optional(c, names...)
	if !ok {
		b.Fatalf("%s: no %v", c.Heading, names)
	}
	return v
}

func (b bench) optional(c templates.Card, names ...text) (float64, bool) {
	return piecetest.Figure(b, c, names...)
}

// tilt reads that of the blade over the part, negative away from it; to neither side it stands
// upright.
func (b bench) tilt(c templates.Card) float64 {
	if v, ok := b.optional(c, tiltAwayReading); ok {
		return -v
	}
	if _, ok := b.optional(c, tiltReading); ok {
		return 0
	}
	return b.figure(c, tiltOverReading)
}

// swing reads how far the gauge is turned, and from its picture to which side: positive where
// the blade leans to the right beyond it.
func (b bench) swing(c templates.Card, p templates.Picture) float64 {
	i := slices.IndexFunc(p.Areas, func(a templates.Area) bool { return a.Tone == templates.Light })
	fence := p.Areas[i].Points[1].Sub(p.Areas[i].Points[0])
	if onRight(p) {
		fence = fence.Mul(-1)
	}
	drawn, says := math.Atan2(fence.Y, fence.X), b.value(c.Figures[0].Value)
	if math.Abs(math.Abs(drawn)-says) > measure.Radians(0.006) {
		b.Errorf("%s: %g off square, drawn at %g", c.Heading, says, drawn)
	}
	return math.Copysign(says, drawn)
}

// onRight reports whether a picture has the part to the right of the blade.
func onRight(p templates.Picture) bool {
	i := slices.IndexFunc(p.Areas, func(a templates.Area) bool { return a.Tone == templates.Light })
	return p.Areas[i].Points[1].X < p.Areas[i].Points[0].X
}

// drawing returns one of a section.
func (b bench) drawing(s templates.Section, v templates.View) templates.Drawing {
	i := slices.IndexFunc(s.Drawings, func(d templates.Drawing) bool { return d.View == v })
	if i < 0 {
		b.Fatalf("no drawing %v", v)
	}
	return s.Drawings[i]
}

// How a part lies at the saw: as in its frame, or turned about an axis of it.
var (
	asIs  = solid.Identity()
	overX = solid.Rotate(alongX, math.Pi)
	overY = solid.Rotate(alongY, math.Pi)
	round = solid.Rotate(solid.V(0, 0, 1), math.Pi)
)

// blade is that through a point of a part as it lies, in the frame of the part: the gauge
// along x, what is to the right of it falls off.
func blade(lies solid.Affine3, off, tilt float64, at solid.Vec) solid.Plane {
	so, co := math.Sincos(off)
	st, ct := math.Sincos(tilt)
	return solid.Through(at, lies.Apply(solid.V(co*ct, -so*ct, st)))
}

// trimmed is the blade that just cleans the right end of a part as it lies.
func trimmed(p solid.Part, lies solid.Affine3, off, tilt float64) solid.Plane {
	cut := blade(lies, off, tilt, solid.Vec{})
	right := lies.Apply(alongX)
	far, least := math.Inf(-1), math.Inf(1)
	for _, q := range ends(p) {
		far = math.Max(far, right.Dot(q))
	}
	for _, q := range ends(p) {
		if right.Dot(q) > far-1e-6 {
			least = math.Min(least, cut.Height(q))
		}
	}
	cut.D += least - 0.5
	return cut
}

// ends returns the corners of all pieces.
func ends(p solid.Part) []solid.Vec {
	var out []solid.Vec
	for _, s := range p.Pieces {
		out = append(out, corners(s)...)
	}
	return out
}

// least returns the corner of a part that reaches least far in a direction, and how far.
func leastOf(p solid.Part, way solid.Vec) float64 {
	out := math.Inf(1)
	for _, q := range ends(p) {
		out = math.Min(out, way.Dot(q))
	}
	return out
}

// shifted moves a plane.
func shifted(p solid.Plane, by solid.Vec) solid.Plane {
	return solid.Plane{N: p.N, D: p.D + p.N.Dot(by)}
}

// A shoulderAxis is the way of a rail into its leg: square to the shoulder, up its outer side
// in the shoulder, and square to both towards the frame side.
type shoulderAxis [3]float64

// rail follows the cards of a sort of rail, in the frame of one.
func (b bench) rail(row *Row, k int) (part solid.Part, axis shoulderAxis) {
	m, r, name := b.m, b.m.sorts(row)[k], b.m.sortName(row, k)
	s := m.railEnvelope(row, setting)
	thick := b.figure(b.card(b.stock, stockCard.Heading.With(sortNames[row.Kind][0].With())), thicknessReading)
	sawn := m.sawnRail(r)
	under, top := solid.Plane{N: solid.V(0, -1, 0)}, solid.Plane{N: solid.V(0, 1, 0), D: sawn.Width}
	part = solid.Stock("", solid.Box(solid.V(-sawn.Length/2, -2*thick, 0), solid.V(sawn.Length/2, sawn.Width+2*thick, thick)))
	if c, ok := b.find(s, ripCard.Heading.With(name)); ok {
		tilt := -b.tilt(c)
		up := [2]bool{}
		for i, says := range [...][2]text{{outerDown, outerDown}, {outerDown, outerUp}, {outerUp, outerDown}, {outerUp, outerUp}} {
			if c.Text[0] == ripText.With(says[0].With(), says[1].With()) {
				up = [2]bool{i > 1, i%2 == 1}
			}
		}
		// The fence to the left, an edge to the blade, which leans away from it.
		rip := func(way, at float64, up bool) solid.Plane {
			if up {
				return solid.Through(solid.V(0, way*at, thick), solid.V(0, way*math.Cos(tilt), math.Sin(tilt)))
			}
			return solid.Through(solid.V(0, way*at, 0), solid.V(0, way*math.Cos(tilt), -math.Sin(tilt)))
		}
		under = rip(-1, 0, up[0])
		part = part.Cut(under)
		top = rip(1, leastOf(part, alongY)+b.figure(c, fenceReading), up[1])
	}
	by := solid.V(0, -under.D/under.N.Y, 0) // from the outer side at the underside
	under, top = shifted(under, by), shifted(top, by)
	part = part.Transform(solid.Translate(by)).Cut(under).Cut(top)

	long := b.railEnds(&part, b.card(s, endCard.Heading.With(name)))

	c := b.card(s, shoulderCard.Heading.With(name))
	strip := b.drawing(s, templates.View{Part: railPart(row.Kind, k), Face: "wrap-round", Hand: templates.LeftHand})
	tip, lowest, frameLine := 0.0, math.Inf(1), 0.0 // where the shoulder stands on the arris that begins the strip
	for _, l := range strip.Strokes {
		switch at := l.Points[0]; {
		case l.Role == templates.Fold && math.Abs(at.Y) < 1e-6:
			tip = -at.X
		case l.Role == templates.Cut && at.Y < lowest+1e-6:
			if at.Y < lowest-1e-6 || at.X > frameLine {
				frameLine = at.X
			}
			lowest = at.Y
		}
	}
	if got := long - 2*tip; math.Abs(got-b.figure(c, shouldersReading)) > slip {
		b.Errorf("%s: %g from shoulder to shoulder by the strips", c.Heading, got)
	}
	at := solid.V(long/2-tip, 0, 0)
	tilts := [2]float64{b.tilt(c)}
	for _, lean := range []text{tiltReading, tiltOverReading, tiltAwayReading} {
		if c.Setup[1].Heading == gaugeFromAbove.With(passNames["shoulder-frame"].With(), leanWords[lean].With()) {
			tilts[1] = map[text]float64{tiltOverReading: 1, tiltAwayReading: -1}[lean] * math.Abs(tilts[0])
		}
	}
	// The blade leans to the left on the table: over a part that lies there, away from one on the
	// right. The first picture has the rail as in its frame, its underside to the gauge, or turned
	// round; the second, rolled over, on the other side of the blade, the same edge to the gauge.
	sides, edges := [2]bool{onRight(c.Setup[0]), onRight(c.Setup[1])}, []any{underEdge.With(), topEdge.With()}
	if sides[0] {
		slices.Reverse(edges)
	}
	if sides != [2]bool{tilts[0] < 0, tilts[1] < 0} || slices.Contains(c.Text, shoulderText.With(edges...)) != (tilts[0] != 0) {
		b.Errorf("%s: part on the right %v, tilts %v; %s", c.Heading, sides, tilts, c.Text)
	}
	outer := blade(asIs, b.swing(c, c.Setup[0]), tilts[0], at)
	frame := blade(overX, b.swing(c, c.Setup[1]), tilts[1], solid.V(at.X-frameLine, -under.N.Z*thick/under.N.Y, thick))
	for i, shoulder := range []solid.Plane{outer, frame} {
		b.wantEnd(c, i, part, shoulder, float64(i)*thick)
	}
	cheek := b.figure(c, cheekReading)
	tenon := b.card(s, tenonCard.Heading.With())
	if got := b.figure(tenon, tenonReading) + 2*cheek; math.Abs(got-thick) > slip || math.Abs(b.figure(tenon, cheekReading)-cheek) > 0 {
		b.Errorf("%s: tenon and cheeks make %g", tenon.Heading, got)
	}
	upper, _ := b.optional(tenon, upperReading)
	haunch, sloping := b.optional(tenon, haunchReadings[design.SlopingHaunch])
	if !sloping {
		haunch, _ = b.optional(tenon, haunchReadings[design.SquareHaunch])
	}
	low, high := inward(under, b.figure(tenon, lowerReading)), inward(top, upper)
	far := shifted(outer, solid.V(haunch, 0, 0))
	if sloping { // from that line at its foot to the shoulder at the top
		flat := solid.Plane{N: solid.V(0, 0, -1)}
		a, foot := solid.Meet(outer, flat, top), solid.Meet(far, flat, high)
		far = solid.Through(a, a.Sub(foot).Cross(outer.N.Cross(top.N)))
		if far.N.X < 0 {
			far = far.Flip()
		}
	}
	for _, hand := range []func(solid.Plane) solid.Plane{func(p solid.Plane) solid.Plane { return p }, mirrored} {
		beyond := hand(outer).Flip()
		for _, waste := range []solid.Solid{
			block(beyond, solid.Plane{N: solid.V(0, 0, 1), D: cheek}), block(hand(frame).Flip(), solid.Plane{N: solid.V(0, 0, -1), D: cheek - thick}),
			block(beyond, low.Flip()), block(hand(far).Flip(), high.Flip()),
		} {
			part = part.Subtract(waste)
		}
	}
	if _, ok := b.find(s, archCard.Heading.With()); ok {
		line := b.drawing(s, templates.View{Part: railPart(row.Kind, k), Face: "outer-side"}).Strokes[0].Points
		for i, p := range line[2 : len(line)-1] { // from one end of the arc to the other

			o := line[i+1]
			base := []solid.Vec{solid.V(o.X, -thick, -1), solid.V(p.X, -thick, -1), solid.V(p.X, p.Y, -1), solid.V(o.X, o.Y, -1)}
			part = part.Subtract(solid.Prism(base, solid.V(0, 0, thick+2)))
		}
	}
	up := outer.N.Cross(solid.V(0, 0, 1)).Unit()
	up = up.Mul(math.Copysign(1, up.Y))
	in := outer.N.Cross(up)
	in = in.Mul(math.Copysign(1, in.Z))
	return part, shoulderAxis{outer.N.X, up.X, in.X}
}

// wantEnd wants the part in a picture of its shoulder to reach as far beyond the blade as it
// does, sawn to its ends, with the table at that height of its frame, and nothing of it to
// be waste.
func (b bench) wantEnd(c templates.Card, i int, part solid.Part, shoulder solid.Plane, table float64) {
	p := c.Setup[i]
	drawn, is := 0.0, 0.0
	for _, a := range p.Areas {
		for _, q := range a.Points {
			if x := q.X; a.Tone == templates.Light && onRight(p) != (x > 0) {
				drawn = math.Max(drawn, math.Abs(x))
			}
		}
	}
	along := solid.V(shoulder.N.X, shoulder.N.Y, 0).Unit() // square to the blade's line on the table
	blade := (shoulder.D - shoulder.N.Z*table) / math.Hypot(shoulder.N.X, shoulder.N.Y)
	for _, q := range ends(part) {
		is = math.Max(is, along.Dot(q)-blade)
	}
	if math.Abs(drawn-is) > 0.5 {
		b.Errorf("%s: picture %d shows %g beyond the blade, it is %g", c.Heading, i, drawn, is)
	}
	if slices.ContainsFunc(p.Strokes, func(s templates.Stroke) bool { return s.Role == templates.Waste }) {
		b.Errorf("%s: picture %d shows waste", c.Heading, i)
	}
}

// A lying is how a rail lies for both of its ends: what the card says of it, and the frames of
// the saw.
type lying struct {
	down, edge, other, end text
	at                     [2]solid.Affine3
}

// lyings are all ways in which a rail lies whose ends are sawn to the right of it, or to the
// left on the saw that tilts the other way: the whole set-up is the mirror image of the first.
func lyings(otherSaw bool) []lying {
	out := []lying{
		{outerDown, underEdge, topEdge, leftEndWord, [2]solid.Affine3{asIs, round}}, {outerDown, topEdge, underEdge, rightEndWord, [2]solid.Affine3{round, asIs}},
		{outerUp, underEdge, topEdge, rightEndWord, [2]solid.Affine3{overY, overX}}, {outerUp, topEdge, underEdge, leftEndWord, [2]solid.Affine3{overX, overY}},
	}
	if !otherSaw {
		return out
	}
	for i, l := range out {
		out[i].end = map[text]text{leftEndWord: rightEndWord, rightEndWord: leftEndWord}[l.end]
		for k, at := range l.at {
			out[i].at[k] = solid.Mirror(solid.Plane{N: alongX}).Then(at)
		}
	}
	return out
}

// railEnds saws both ends of a rail as its card says, on the saw that is shown and on one that
// tilts the other way, puts its mid-length at x = 0 and returns how long it is on the outer side
// at the underside.
func (b bench) railEnds(part *solid.Part, c templates.Card) float64 {
	said := lyings(false)
	i := slices.IndexFunc(said, func(l lying) bool {
		second := map[text]text{leftEndWord: rightEndWord, rightEndWord: leftEndWord}[l.end]
		return c.Text[0] == endText.With(l.down.With(), l.edge.With(), l.other.With(), l.end.With(), second.With())
	})
	if i < 0 {
		b.Fatalf("%s: no rail lies so: %s", c.Heading, c.Text[0])
	}
	made, long := b.endsSawn(*part, c, said[i].at)
	if b.tilt(c) != 0 {
		others := lyings(true)
		k := slices.IndexFunc(others, func(l lying) bool {
			return l.down == said[i].down && slices.Contains(c.Text, otherEnd.With(l.end.With(), l.edge.With()))
		})
		if k < 0 {
			b.Fatalf("%s: no rail lies so on the other saw: %s", c.Heading, c.Text)
		}
		other, _ := b.endsSawn(*part, c, others[k].at)
		b.same(c.Heading+" on the other saw", other, made)
	}
	*part = made
	return long
}

// endsSawn is railEnds for a rail that lies so.
func (b bench) endsSawn(part solid.Part, c templates.Card, lies [2]solid.Affine3) (solid.Part, float64) {
	first, second, tilt := lies[0], lies[1], b.tilt(c)
	part = part.Cut(trimmed(part, first, b.swing(c, c.Setup[0]), tilt))
	onArris := func() (low, high float64) {
		low, high = math.Inf(1), math.Inf(-1)
		for _, p := range ends(part) {
			if math.Hypot(p.Y, p.Z) < 1e-6 {
				low, high = math.Min(low, p.X), math.Max(high, p.X)
			}
		}
		return low, high
	}
	off := b.swing(c, c.Setup[1])
	if stop, ok := b.optional(c, stopReading); ok {
		// The gauge and the table touch what reaches farthest to them; so does the stop.
		least := solid.V(leastOf(part, second.Apply(alongX))+stop, leastOf(part, second.Apply(alongY)), leastOf(part, second.Apply(solid.V(0, 0, 1))))
		part = part.Cut(blade(second, off, tilt, second.Apply(least)))
	} else {
		low, high := onArris()
		at := solid.V(low+b.figure(c, endsReading), 0, 0)
		if second.Apply(alongX).X < 0 {
			at.X = high - b.figure(c, endsReading)
		}
		part = part.Cut(blade(second, off, tilt, at))
	}
	low, high := onArris()
	if want := endCard.Test.With(b.m.length(high - low)); want != c.Test && math.Abs(high-low-b.value(strings.Fields(strings.TrimPrefix(c.Test, "The outer side measures "))[0]+" mm")) > slip {
		b.Errorf("%s: %g long; %s", c.Heading, high-low, c.Test)
	}
	return part.Transform(solid.Translate(solid.V(-(low+high)/2, 0, 0))), high - low
}

// lies returns the frame of a leg as the pictures show it: of the other hand, the mirror image.
func (m Model) lies(i int) frame {
	l := m.legs[i]
	f := l.frame()
	if m.Sort(i) == 1 {
		f.z = l.outer[before].Mul(-1)
		f.y = f.x.Cross(f.z)
	}
	return f
}

// A legSide is a side that takes rails, as a leg is made: its arris with the outer side beside
// it at the foot, the ways up along that and across from it, and its normal.
type legSide struct{ foot, up, across, out solid.Vec }

// leg follows the cards of a leg.
func (b bench) leg(i int, axes [][]shoulderAxis) solid.Part {
	m, l := b.m, b.m.legs[i]
	section := b.section()
	blank := m.sawn(l.Blank())
	var base []solid.Vec
	for _, p := range section {
		base = append(base, solid.V(0, p.X, p.Y))
	}
	leg := solid.Stock("", solid.Prism(base, solid.V(blank.Length, 0, 0)))

	c := b.card(b.legs, legEndsCard.Heading.With())
	foot, head := b.lyingLeg(c)
	tilt := b.tilt(c)
	sole := trimmed(leg, foot, b.swing(c, c.Setup[0]), tilt)
	leg = leg.Cut(sole)
	atFoot := solid.V(sole.D/sole.N.X, 0, 0)
	atHead := atFoot.Add(solid.V(b.figure(c, legLongReading), 0, 0))
	leg = leg.Cut(blade(head, b.swing(c, c.Setup[1]), tilt, atHead))

	flat := func(p geometry.Point) solid.Vec { return solid.V(0, p.X, p.Y) }
	sides := [2]legSide{} // the one beside the outer side on the table, and the other
	var cut []solid.Plane
	for k, ends := range [][2]int{{1, 2}, {3, 2}} {
		edge, rail := flat(section[ends[0]]), flat(section[ends[1]].Sub(section[ends[0]])).Unit()
		out := rail.Cross(alongX)
		out = out.Mul(math.Copysign(1, out.Dot(edge)))
		sides[k] = legSide{edge, alongX, rail, out}
		c, ok := b.find(b.legs, taperCard.Heading.With())
		if !ok {
			continue
		}
		if start := b.figure(c, startReading); !slices.ContainsFunc(c.Setup[0].Strokes, func(l templates.Stroke) bool {
			return l.Role == templates.Construction && math.Abs(l.Points[0].X-start) < 0.006 && math.Abs(l.Points[1].X-start) < 0.006
		}) {
			b.Errorf("%s: no line is drawn where the taper starts", c.Heading)
		}
		wide, e := edge.Norm(), edge.Unit()
		from := solid.V(atHead.X-b.figure(c, startReading), 0, 0).Add(e.Mul(wide))
		to := atFoot.Add(e.Mul(b.figure(c, footReading)))
		down := to.Sub(from).Unit()
		in := e.Cross(alongX) // square to the outer side
		in = in.Mul(math.Copysign(1, in.Dot(rail)))
		side := down.Cross(in)
		side = side.Mul(math.Copysign(1, side.Dot(e)))
		way := in.Mul(math.Cos(b.tilt(c))).Sub(side.Mul(math.Sin(b.tilt(c))))
		n := down.Cross(way)
		n = n.Mul(math.Copysign(1, n.Dot(e)))
		cut = append(cut, solid.Through(to, n))
		sides[k] = legSide{to, down.Mul(-1), way, n}
	}
	for k := range sides { // down to the sole, and square to the arris
		s := &sides[k]
		s.foot = s.foot.Sub(s.up.Mul(sole.Height(s.foot) / sole.N.Dot(s.up)))
		s.across = s.across.Sub(s.up.Mul(s.across.Dot(s.up))).Unit()
	}
	strip := b.drawing(b.legs, templates.View{Part: "leg", Face: "wrap-round", Hand: m.hand(i)})
	for _, waste := range b.chopped(m.Rows[0], i, axes[0], b.card(b.legs, mortiseCards[Aprons].With()), b.folded(strip, section, atHead.X, i)) {
		leg = leg.Subtract(waste)
	}
	for _, p := range cut {
		leg = leg.Cut(p)
	}
	if len(m.Rows) > 1 {
		var low [2]setOut
		for takes, face := range []measure.ID{before: "stretcher-strip-left", own: "stretcher-strip-right"} {
			s := sides[(takes+1+m.Sort(i))%2] // that beside its own outer side is first, unless mirrored
			d := b.drawing(b.legs, templates.View{Part: "leg", Face: face, Hand: m.hand(i)})
			low[takes] = b.setOut(d, s.out, func(geometry.Point) bool { return true }, func(p geometry.Point) solid.Vec {
				return s.foot.Add(s.up.Mul(p.X)).Add(s.across.Mul(math.Abs(p.Y)))
			})
		}
		for _, waste := range b.chopped(m.Rows[1], i, axes[1], b.card(b.legs, mortiseCards[Stretchers].With()), low) {
			leg = leg.Subtract(waste)
		}
	}
	return leg.Transform(solid.Translate(atFoot.Mul(-1)))
}

// section follows the card of the section of the legs: from the corner arris along the outer
// side that lies on the table.
func (b bench) section() []geometry.Point {
	c := b.stock.Cards[0]
	thick, _ := b.optional(c, thicknessReading)
	if c.Heading != sectionCard.Heading.With() {
		return geometry.Box(0, 0, thick, thick).Corners()
	}
	if c.Text[0] == kiteText.With() {
		return b.drawing(b.stock, templates.View{Part: "leg", Face: "section"}).Strokes[0].Points[:4]
	}
	face, corner := b.figure(c, fenceReading), b.figure(c, outerArrisReading)
	step := geometry.Pt(math.Copysign(thick*math.Tan(math.Abs(b.tilt(c))), math.Pi/2-corner), thick)
	if off := math.Abs(math.Abs(corner-math.Pi/2) - math.Abs(b.tilt(c))); off > measure.Radians(0.011) {
		b.Errorf("%s: corner and tilt differ by %g", c.Heading, off)
	}
	return []geometry.Point{{}, geometry.Pt(face, 0), geometry.Pt(face, 0).Add(step), step}
}

// lyingLeg reads how a leg lies for its foot and for its head.
func (b bench) lyingLeg(c templates.Card) (foot, head solid.Affine3) {
	down, up := outerDown.With(), outerUp.With()
	if b.m.LegSorts() > 1 {
		down, up = frontDown.With(), frontUp.With()
	}
	switch c.Text[0] {
	case legEndsText.With(down, up, railSideWord.With()):
		return round, overX
	case legEndsText.With(up, down, outerSideWord.With()):
		return overY, asIs
	}
	b.Fatalf("no leg lies so: %s", c.Text[0])
	return foot, head
}

// A setOut is what a template shows of a mortise, on its leg: the outline of the rail, that of
// the mortise and of the haunch over it, and how deep the mortise is at most.
type setOut struct {
	rail, mouth, haunch []solid.Vec
	deep                float64
	out                 solid.Vec
}

// setOut reads the lines of a drawing that lie on a side.
func (b bench) setOut(d templates.Drawing, out solid.Vec, on func(geometry.Point) bool, place func(geometry.Point) solid.Vec) setOut {
	s := setOut{out: out}
	for _, l := range d.Strokes {
		if len(l.Points) < 4 || !slices.ContainsFunc(l.Points, on) {
			continue
		}
		var at []solid.Vec
		for _, p := range l.Points[:4] {
			at = append(at, place(p))
		}
		switch {
		case l.Role == templates.Construction:
			s.rail = at
		case l.Role == templates.Cut && len(l.Points) == 5:
			s.mouth = at
		case l.Role == templates.Cut:
			s.haunch = at
		}
	}
	named := false
	for _, l := range d.Labels {
		switch here := on(l.On.Mid()); {
		case here && l.ID == "deep":
			s.deep = b.value(strings.Fields(l.Text)[0] + " mm")
		case here && l.ID == "rail-here":
			named = true
		}
	}
	if !named {
		b.Errorf("%s: the outline of the rail has no name", d.Name)
	}
	return s
}

// folded lays the strip of the head round the leg: both sides that take rails.
func (b bench) folded(d templates.Drawing, section []geometry.Point, headAt float64, i int) [2]setOut {
	levels := []float64{0}
	for _, l := range d.Strokes {
		if l.Role == templates.Fold {
			levels = append(levels, l.Points[0].Y)
		}
	}
	round := slices.Clone(section)
	if b.m.Sort(i) == 1 { // its own outer side is not on the table
		slices.Reverse(round[1:])
	}
	var out [2]setOut
	for takes, leaf := range []int{before: 2, own: 1} {
		a, way := round[leaf], round[(leaf+1)%4].Sub(round[leaf]).Unit()
		n := solid.V(0, way.X, way.Y).Cross(alongX)
		n = n.Mul(math.Copysign(1, n.Dot(solid.V(0, round[2].X, round[2].Y))))
		on := func(p geometry.Point) bool { return p.Y > levels[leaf] && p.Y < levels[leaf+1] }
		out[takes] = b.setOut(d, n, on, func(p geometry.Point) solid.Vec {
			q := a.Add(way.Mul(p.Y - levels[leaf]))
			return solid.V(headAt-p.X, q.X, q.Y)
		})
	}
	return out
}

// chopped returns what is chopped out of a leg for the rails of a row: the walls follow the
// rail; a mitred mortise goes on to the outer wall of the other, one of a square end to its depth.
func (b bench) chopped(row *Row, i int, axes []shoulderAxis, c templates.Card, at [2]setOut) []solid.Solid {
	m := b.m
	var into [2]solid.Vec
	var wall [2]solid.Plane
	for takes, s := range at {
		rail := i
		if takes == before {
			rail = m.before(i)
		}
		axis := axes[rail%len(axes)]
		up := s.rail[1].Sub(s.rail[0]).Unit()
		in := s.out.Cross(up)
		in = in.Mul(math.Copysign(1, in.Dot(s.rail[2].Sub(s.rail[1]))))
		into[takes] = s.out.Mul(-axis[0]).Add(up.Mul(axis[1])).Add(in.Mul(axis[2]))
		n := s.mouth[1].Sub(s.mouth[0]).Cross(into[takes]).Unit()
		wall[takes] = solid.Through(s.mouth[0], n.Mul(math.Copysign(1, n.Dot(s.mouth[0].Sub(s.mouth[3])))))
	}
	square := !slices.Contains(c.Text, mitredText.With())
	var out []solid.Solid
	most := 0.0
	for takes, s := range at {
		most = math.Max(most, s.deep)
		// From a little outside; to the head where it is open there.
		sunk := func(mouth []solid.Vec, open bool) solid.Solid {
			mouth = slices.Clone(mouth)
			if open {
				up := mouth[1].Sub(mouth[0]).Unit()
				mouth[1], mouth[2] = mouth[1].Add(up), mouth[2].Add(up)
			}
			for k := range mouth {
				mouth[k] = mouth[k].Sub(into[takes])
			}
			return solid.Prism(mouth, into[takes].Mul(400))
		}
		bottom := func(deep float64) solid.Plane { return solid.Through(s.mouth[0].Sub(s.out.Mul(deep)), s.out.Mul(-1)) }
		hole := sunk(s.mouth, row.Joint == design.Bridled)
		if square {
			hole = hole.Cut(bottom(s.deep))
		} else {
			hole = hole.Cut(wall[1-takes])
			far := math.Inf(-1)
			for _, p := range s.mouth[:2] { // where both outer walls meet
				level := solid.Through(p, into[takes].Cross(s.mouth[3].Sub(s.mouth[0])))
				far = math.Max(far, solid.Meet(wall[0], wall[1], level).Sub(p).Dot(s.out.Mul(-1)))
			}
			if math.Abs(far-s.deep) > slip {
				b.Errorf("%s: %g deep by its walls, the strip says %g", c.Heading, far, s.deep)
			}
		}
		out = append(out, hole)
		if len(s.haunch) == 0 {
			continue
		}
		long, sloping := b.optional(c, haunchReadings[design.SlopingHaunch])
		if !sloping {
			long = b.figure(c, haunchReadings[design.SquareHaunch])
		}
		floor := bottom(-long * into[takes].Dot(s.out))
		if sloping { // from nothing at the top to that at its foot
			n := s.haunch[2].Sub(s.haunch[1]).Cross(s.haunch[0].Add(into[takes].Mul(long)).Sub(s.haunch[1])).Unit()
			floor = solid.Through(s.haunch[1], n.Mul(math.Copysign(1, -n.Dot(s.out))))
		}
		out = append(out, sunk(s.haunch, true).Cut(floor))
	}
	if said := b.figure(c, deepReading); math.Abs(said-most) > 0 {
		b.Errorf("%s: %g deep, the strips say %g", c.Heading, said, most)
	}
	return out
}
