package aprons

import (
	"math"
	"slices"
	"strings"

	"rodsheet/geometry"
	"rodsheet/geometry/solid"
	"rodsheet/templates"
	"rodsheet/templates/piece/design"
	"rodsheet/templates/piece/internal/piecetest"
)

// fixed follows the card of the groove or that of the screws on apron i, in its frame.
func (b bench) fixed(apron solid.Part, i int) solid.Part {
	s := b.m.railEnvelope(b.m.Rows[0], setting)
	if c, ok := b.find(s, grooveCard.Heading.With()); ok {
		return apron.Subtract(b.groove(c, apron))
	}
	if c, ok := b.find(s, drillCard.Heading.With()); ok {
		return b.drilled(c, apron, i)
	}
	return apron
}

// groove runs a router along the frame side, as far from the top as the card says, and stops
// it short of both shoulders.
func (b bench) groove(c templates.Card, apron solid.Part) solid.Solid {
	thick := apron.Bounds().Max.Z // its outer side lies at 0
	levels := heights(apron, thick)
	low, top := levels[0], levels[1]
	high := b.figure(c, grooveHigh)
	middle := top - b.figure(c, grooveBelow) - high/2
	stop := piecetest.Said(b, c.Text[0], grooveText)
	end := func(way float64) solid.Vec { // where the shoulder crosses the middle of the groove
		at := func(y float64) float64 {
			most := math.Inf(-1)
			for _, p := range ends(apron) {
				if math.Abs(p.Y-y)+math.Abs(p.Z-thick) < slip {
					most = math.Max(most, way*p.X)
				}
			}
			return most
		}
		a, z := at(low), at(top)
		return solid.V(way*(a+(z-a)*(middle-low)/(top-low)-stop), middle, thick)
	}
	from, to := end(-1), end(1)
	return solid.Slot(from.Lerp(to, 0.5), alongX, solid.V(0, 0, -b.figure(c, grooveDeep)), high, from.Distance(to))
}

// heights returns the lowest and the highest corner of the side of a rail so deep below its
// outer side.
func heights(p solid.Part, deep float64) [2]float64 {
	out := [2]float64{math.Inf(1), math.Inf(-1)}
	for _, q := range ends(p) {
		if math.Abs(q.Z-deep) < 1e-3 {
			out = [2]float64{math.Min(out[0], q.Y), math.Max(out[1], q.Y)}
		}
	}
	return out
}

// drilled bores an apron, underside up, as its picture and the figures of the card say.
func (b bench) drilled(c templates.Card, apron solid.Part, i int) solid.Part {
	m, thick := b.m, apron.Bounds().Max.Z
	name := m.railCalled(m.Rows[0], i)
	before, _, _ := strings.Cut(string(underName), "%s")
	at := slices.IndexFunc(c.Setup, func(p templates.Picture) bool {
		return slices.Contains(strings.Split(strings.TrimPrefix(p.Heading, before), ", "), name)
	})
	if at < 0 {
		b.Fatalf("%s: no picture of %s", c.Heading, name)
	}
	p := c.Setup[at]
	// Across the level underside, which rises or falls on its way in.
	inward := solid.V(0, heights(apron, thick)[0], thick).Unit()
	shank, head := b.figure(c, shankHole), 0.0
	deep, bored := b.optional(c, text(headDeep.With(m.sortName(m.Rows[0], i%m.RailSorts()))))
	if bored {
		head = b.figure(c, headHole)
	}
	waste := func(l templates.Label, wide, deep float64, long text) solid.Solid {
		x := 0.0
		if words := strings.Split(l.Text, ","); words[0] != atMiddle.With() {
			x = math.Copysign(b.value(words[0]), l.On.A.X)
		}
		middle := solid.V(-x, 0, 0).Add(inward.Mul(thick / 2 / inward.Z))
		way, run := alongX, wide
		if l.ID == "slot" {
			drawn := drawnSlot(b, p, l.On.A)
			way, run = solid.V(-drawn.X, 0, 0).Sub(inward.Mul(drawn.Y)), b.figure(c, long)
		}
		from := solid.V(0, -300, 0)
		return solid.Slot(middle.Add(from), way, solid.V(0, 300+deep, 0), wide, run)
	}
	for _, l := range p.Lettering() {
		if l.ID != "hole" && l.ID != "slot" {
			continue
		}
		apron = apron.Subtract(waste(l, shank, 300, shankSlot))
		if bored {
			apron = apron.Subtract(waste(l, head, deep, headSlot))
		}
	}
	return apron
}

// drawnSlot returns the way of the slot that is drawn about a place.
func drawnSlot(b bench, p templates.Picture, at geometry.Point) geometry.Point {
	var way geometry.Point
	for _, s := range p.Strokes {
		if s.Role != templates.Cut || geometry.Bounds(s.Points...).Centre().Distance(at) > 1e-6 {
			continue
		}
		for k, q := range s.Points[1:] { // its straight sides are the longest of its outline
			if d := q.Sub(s.Points[k]); d.Norm() > way.Norm() {
				way = d
			}
		}
	}
	if way.Norm() == 0 {
		b.Fatalf("no slot is drawn about %v", at)
	}
	return way.Unit()
}

// topped follows the card of the top and lays that on the frame, middle on middle.
func (b bench) topped() solid.Solid {
	s, err := b.m.together(setting)
	if err != nil {
		b.Fatal(err)
	}
	c := b.card(s, topStockCard.Heading.With())
	i := slices.IndexFunc(c.Figures, func(r templates.Reading) bool { return r.Name == topSizeReading.With() })
	long, wide, _ := strings.Cut(c.Figures[i].Value, " × ")
	outline := b.sawnTop(c, geometry.Box(0, 0, b.value(long+" mm"), b.value(wide)))
	if oval := slices.IndexFunc(s.Drawings, func(d templates.Drawing) bool { return d.View.Part == "oval" }); oval >= 0 {
		outline = nil
		for _, p := range s.Drawings[oval].Strokes[0].Points { // a quarter at least, which serves all
			outline = append(outline, p, geometry.Pt(-p.X, p.Y), geometry.Pt(p.X, -p.Y), p.Mul(-1))
		}
		outline = geometry.Hull(outline)
	}
	if b.m.acrossGrain().X != 0 { // its grain lies along left and right
		outline = geometry.Rotate(math.Pi / 2).ApplyAll(outline)
	}
	top := solid.Prism(solid.Lift(outline, b.m.Head), solid.V(0, 0, b.figure(c, thicknessReading)))
	middle := top.Centroid()
	return top.Transform(solid.Translate(solid.V(-middle.X, -middle.Y, 0)))
}

// sawnTop is the rectangle of a card, or the regular figure of so many sides that it holds,
// with its corners worked, or the rim about its middle.
func (b bench) sawnTop(c templates.Card, from geometry.Rect) []geometry.Point {
	if radius, ok := b.optional(c, rimReading); ok {
		return geometry.Arc(geometry.Pt(0, 0), radius, 0, 2*math.Pi)[1:]
	}
	corners := geometry.Translate(from.Centre().Mul(-1)).ApplyAll(from.Corners())
	if n := len(b.m.sides); slices.Contains(c.Text, topOutlineText.With(count.With(n))) {
		corners = nil
		for k := range n { // a side in front
			corners = append(corners, geometry.Polar(1, -math.Pi/2+(2*float64(k)-1)*math.Pi/float64(n)))
		}
		if b.m.acrossGrain().X != 0 { // the grain runs square to it
			corners = geometry.Rotate(-math.Pi / 2).ApplyAll(corners)
		}
		larger := from.Width() / geometry.Bounds(corners...).Width()
		corners = geometry.Scale(larger, larger).ApplyAll(corners)
	}
	clip, clipped := b.optional(c, cornerReadings[design.ClippedCorner])
	radius, rounded := b.optional(c, cornerReadings[design.RoundedCorner])
	var out []geometry.Point
	for i, p := range corners {
		n := len(corners)
		on, back := corners[(i+1)%n].Sub(p).Unit(), corners[(i+n-1)%n].Sub(p).Unit()
		switch {
		case clipped:
			out = append(out, p.Add(on.Mul(clip)), p.Add(back.Mul(clip)))
		case rounded: // by a disc that touches both sides
			out = append(out, geometry.Arc(p.Add(on.Add(back).Unit().Mul(radius/math.Sin(math.Acos(on.Dot(back))/2))), radius, 0, 2*math.Pi)...)
		default:
			out = append(out, p)
		}
	}
	return geometry.Hull(out)
}
