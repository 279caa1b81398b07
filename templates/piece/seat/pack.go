package seat

import (
	"math"
	"slices"
	"strconv"
	"strings"
	"sync"

	"rodsheet/geometry/joint"
	"rodsheet/geometry/lists"
	"rodsheet/geometry/measure"
	"rodsheet/templates"
	"rodsheet/templates/piece/assembly"
	"rodsheet/templates/piece/design"
	"rodsheet/templates/piece/kind"
	"rodsheet/templates/wording"
)

// Kind returns the kind.
var Kind = sync.OnceValue(func() kind.Kind { return assembly.Kind(spec()) })

func spec() assembly.Spec[Seat] {
	return assembly.Spec[Seat]{
		Judge: judge, Envelopes: envelopes(), Mends: mends(), Mending: mending, Usual: usual(), Grips: Seat.grips,
	}
}

// envelopes are those of the work, in its order.
func envelopes() []assembly.Envelope[Seat] {
	return []assembly.Envelope[Seat]{
		{ID: "seat", Heading: seatHeading, Fill: Seat.slabWork},
		{ID: "legs", Heading: legsHeading, Fill: Seat.legWork},
		{ID: "stretchers", Heading: rodsHeading, Fill: Seat.rodWork},
		{ID: "together", Heading: togetherHeading, Fill: Seat.together},
	}
}

// legTicks are the legs of a sort to tick off.
func (s Seat) legTicks(of sort, spares int) []templates.Tick {
	n := s.count(of) + spares
	return assembly.Ticked(legsCalled(of, n), n)
}

// slabWork is the seat: glued up, bored, sawn to its outline.
func (s Seat) slabWork(set templates.Setting) (templates.Section, error) {
	var out templates.Section
	k := s.design.Seat
	board, count := s.boards()
	if s.whole() {
		out.Drawings = []templates.Drawing{s.slabDrawing()}
	} else {
		out.Drawings = s.holeDrawings()
	}
	boards := slabCard.Card(s.unit(), assembly.Ticked(seatBoardsTick, count+s.design.Wood.Spares), s.plan())
	boards.Templates = assembly.Views(out.Drawings)
	boards.Set(thicknessReading, measure.Length(k.Thickness))
	boards.Text = []string{slabText.With(count, s.mm(board.Length), s.mm(board.Width), assembly.Either(k.FrontToBack, frontToBack, sideToSide).With()), setOutText.With()}
	if k.Mortise.Depth == 0 {
		boards.Say(carryText)
	}
	if !s.whole() {
		s.setOut(&boards)
	}
	out.Cards = append(out.Cards, boards.Card)
	var bevels assembly.Bevels
	for _, l := range s.sorts() {
		b := s.boring(l)
		c := s.boringCard(l, b)
		c.Templates = bevels.Add(math.Pi/2 - b.resultant)
		out.Cards = append(out.Cards, c)
	}
	saw, box := sawCard.Card(s.unit(), assembly.Ticked(seatTick, 1)), s.box.Size()
	saw.Set(acrossReading, measure.Length(box.X))
	saw.Set(depthReading, measure.Length(box.Y))
	out.Cards = append(out.Cards, saw.Card)
	err := bevels.Onto(&out, set)
	return out, err
}

// setOut says the outline of a seat that no sheet shows whole.
func (s Seat) setOut(c *assembly.Card) {
	k, box := s.design.Seat, s.box.Size()
	c.Read(acrossReading, measure.Length(box.X))
	c.Read(depthReading, measure.Length(box.Y))
	switch k.Shape {
	case design.OvalSeat:
		// The sum of the ways to the foci is the longer axis; at the end of the shorter one
		// both are half of it.
		c.Read(pinsReading, measure.Length(math.Sqrt(math.Abs(k.Width*k.Width-k.Depth*k.Depth))/2))
		c.Read(stringReading, measure.Length(math.Max(k.Width, k.Depth)))
		c.Say(ovalText)
	case design.ShieldSeat:
		c.Read(backCurve, measure.Length(k.BackWidth))
		c.Say(shieldText)
	case design.FreeSeat:
		for i, p := range s.looking().ApplyAll(k.Points) {
			sides := assembly.Either(p.X < 0, toTheLeft, toTheRight).With(s.mm(math.Abs(p.X)))
			c.Figures = append(c.Figures, templates.Reading{Name: cornerAt.With(i + 1),
				Value: both.With(sides, assembly.Either(p.Y < 0, toTheFront, toTheBack).With(s.mm(math.Abs(p.Y))))})
		}
	}
	if k.Corner > 0 && k.Shape >= design.RectangleSeat {
		c.Read(assembly.Either(k.Shape == design.ShieldSeat, frontCorners, roundCornersReading), measure.Length(k.Corner))
	}
}

// boringCard is the set-up of one resultant.
func (s Seat) boringCard(l leg, b boring) templates.Card {
	c := boreCard.Card(s.unit(), s.legTicks(l.sort, 0), s.boringView(b))
	c.Heading = boreCard.Heading.With(legsCalled(l.sort, s.count(l.sort)).With())
	c.Read(bevelReading, measure.Angle(math.Pi/2-b.resultant))
	if b.sort.round() {
		c.Set(circleReading, measure.Length(b.forward))
		c.Set(bitReading, measure.Length(b.pilot))
		c.Set(chordReading, measure.Length(chord(b.forward, b.count)))
		c.Say(circleText)
	} else {
		c.Read(sightlineReading, measure.Angle(math.Abs(b.sightline)))
		c.Set(bitReading, measure.Length(b.pilot))
	}
	exit := l.point(l.to(s.thickness() - s.bored()))
	if b.depth > 0 {
		c.Set(depthOnBit, measure.Length(b.depth))
		c.Say(blindText)
		c.Test = blindTest.With(s.mm(s.thickness() - s.design.Seat.Mortise.Depth))
	} else {
		c.Say(throughText)
		c.Test = assembly.Either(exit.Y > 0, exitBackward, exitForward).With(s.aside(exit.X), s.mm(math.Abs(exit.Y)))
		if b.sort.round() {
			c.Test = exitRound.With(s.mm(flat(exit).Norm()))
		}
	}
	if b.large > 0 {
		c.Read(reamerReading, measure.Angle(b.reamer))
		c.Read(largeReading, measure.Length(b.large))
		c.Say(reamText)
	}
	return c.Card
}

// aside says how far from the centre line something lies.
func (s Seat) aside(mm float64) string {
	if math.Abs(mm) < alikeWithin {
		return onCentre.With()
	}
	return fromCentre.With(s.mm(math.Abs(mm)))
}

// alikeWithin is the difference between two figures of hand work that nobody can tell, mm.
const alikeWithin = 0.1

// bySort are readings of the legs of every sort: one for all of them where they are alike.
func (s Seat) bySort(name text, of func(turning) float64) []templates.Reading {
	values := lists.Map(s.sorts(), func(l leg) float64 { return of(s.turning(l)) })
	return s.byEach(name, values)
}

// byEach is bySort of values in the order of sorts.
func (s Seat) byEach(name text, values []float64) []templates.Reading {
	var out []templates.Reading
	for i, l := range s.sorts() {
		out = append(out, templates.Reading{Name: both.With(name.With(), legsCalled(l.sort, s.count(l.sort)).With()), Value: s.mm(values[i]), Write: true})
	}
	if slices.Max(values)-slices.Min(values) < alikeWithin {
		return []templates.Reading{{Name: name.With(), Value: s.mm(values[0]), Write: true}} // as the picture of the first has it
	}
	return out
}

// legWork is the legs: blanks, tapers or octagons, tenons.
func (s Seat) legWork(set templates.Setting) (templates.Section, error) {
	var out templates.Section
	k := s.design.Seat.Legs
	ticks := lists.Flat(s.sorts(), func(l leg) []templates.Tick { return s.legTicks(l.sort, s.design.Wood.Spares) })
	blank := blankCard.Card(s.unit(), ticks)
	blank.Set(squareReading, measure.Length(k.Size))
	blank.Figures = append(blank.Figures, s.bySort(longReading, func(t turning) float64 { return t.blank.Length })...)
	blank.Figures = append(blank.Figures, s.bySort(shoulderReading, func(t turning) float64 { return t.shoulder })...)
	shape := shapeCards[k.Section].Card(s.unit(), ticks)
	if s.tapered() {
		if k.Section == design.OctagonLeg {
			shape.Text = append([]string{taperText.With()}, shape.Text...)
		}
		shape.Figures = s.bySort(endReading, func(t turning) float64 { return t.end })
	}
	if k.Section == design.OctagonLeg {
		d := s.octagon()
		shape.Setup = []templates.Picture{s.octagonShown(d)}
		if set.Full { // straight lines between figures, which a gauge does as well
			out.Drawings, shape.Templates = []templates.Drawing{d}, []templates.View{d.View}
		}
		shape.Read(cornerReading, measure.Length(joint.OctagonCorner(k.Size)))
		if s.tapered() {
			shape.Figures = append(shape.Figures, s.bySort(endCorner, func(t turning) float64 { return joint.OctagonCorner(t.end) })...)
		}
	}
	first := s.turning(s.sorts()[0])
	tenons := tenonCard.Card(s.unit(), ticks, s.legView(first))
	tenons.Figures = s.bySort(rootReading, func(t turning) float64 { return t.root })
	if first.tip != first.root {
		tenons.Figures = append(tenons.Figures, s.bySort(tipReading, func(t turning) float64 { return t.tip })...)
	}
	if first.over > 0 {
		tenons.Say(longTip)
	}
	out.Cards = append(out.Cards, blank.Card)
	if k.Section != design.SquareLeg || s.tapered() {
		out.Cards = append(out.Cards, shape.Card)
	}
	out.Cards = append(out.Cards, tenons.Card)
	return out, nil
}

// rodWork is the stretchers and their holes.
func (s Seat) rodWork(set templates.Setting) (templates.Section, error) {
	var out templates.Section
	if len(s.rods) == 0 {
		return out, nil
	}
	k := s.design.Seat.Stretchers
	turn := rodCard.Card(s.unit(), nil)
	turn.Set(rodReading, measure.Length(k.Diameter))
	turn.Set(rodTenonReading, measure.Length(s.tenon()))
	first, count := s.kinds()
	for n, i := range first {
		r := s.rods[i]
		t := r.turning()
		turn.Ticks = append(turn.Ticks, assembly.Ticked(rodNames[r.kind], count[n]+s.design.Wood.Spares)...)
		name := rodNames[r.kind].With()
		turn.Set(wholeReading, measure.Length(t.whole), name)
		turn.Read(betweenReading, measure.Length(t.between), name)
		if math.Abs(t.tenons[0]-t.tenons[1]) < alikeWithin { // as both of one between others are
			turn.Read(tenonLong, measure.Length(t.tenons[0]), name)
			continue
		}
		for i, e := range r.ends {
			turn.Read(tenonLongIn, measure.Length(t.tenons[i]), name, sortNames[s.legs[e.into].sort.id()].With())
		}
	}
	out.Cards = append(out.Cards, turn.Card)
	var bevels assembly.Bevels
	for _, holes := range s.rodHoles() {
		b := holes.rodBoring
		cross := s.rods[b.rod].kind == crossRod
		c := rodHoleCard.Card(s.unit(), []templates.Tick{{Text: holes.ticks, Boxes: holes.count}}, s.rodView(b))
		c.Heading = rodHoleCard.Heading.With(rodNames[s.rods[b.rod].kind].With())
		c.Read(assembly.Either(cross, crossReading, leanReading), measure.Angle(b.lean))
		c.Set(holeDepth, measure.Length(b.depth))
		c.Say(assembly.Either(cross, crossHoleText, rodHoleText))
		if !cross {
			for _, way := range []struct {
				said text
				legs []string
			}{{counterClockwise, holes.left}, {clockwise, holes.right}} {
				if len(way.legs) > 0 {
					c.Text = append(c.Text, way.said.With(wording.And(way.legs...)))
				}
			}
			c.Set(alongReading, measure.Length(b.along))
			c.Read(turnReading, measure.Angle(math.Abs(b.turn)))
		}
		c.Templates = bevels.Add(math.Min(b.lean, math.Pi-b.lean))
		out.Cards = append(out.Cards, c.Card)
	}
	err := bevels.Onto(&out, set)
	return out, err
}

// A rodHole is a hole and its mirror image.
type rodHole struct {
	rodBoring
	ticks string
	count int
	// The legs round which it is turned counter-clockwise as seen from the foot, and
	// clockwise.
	left, right []string
}

// turned notes round which leg a hole is turned, and which way.
func (h *rodHole) turned(leg int, by float64) {
	name := strconv.Itoa(leg + 1)
	switch {
	case by > 0 && !slices.Contains(h.left, name):
		h.left = append(h.left, name)
	case by < 0 && !slices.Contains(h.right, name):
		h.right = append(h.right, name)
	}
}

// rodHoles are the holes of the stretchers, mirror images once.
func (s Seat) rodHoles() []rodHole {
	const fine = 1e-6
	var out []rodHole
	for i, r := range s.rods {
		for end := range r.ends {
			b := s.rodBoring(i, end)
			name := rodNames[sideRod]
			if r.kind != crossRod {
				name = sortNames[s.legs[r.ends[end].into].sort.id()]
			}
			k := slices.IndexFunc(out, func(h rodHole) bool {
				return h.ticks == name.With() && s.rods[h.rod].kind == r.kind && math.Abs(h.lean-b.lean) < fine && math.Abs(h.along-b.along) < fine &&
					math.Abs(math.Abs(h.turn)-math.Abs(b.turn)) < fine && math.Abs(h.depth-b.depth) < fine
			})
			if k < 0 {
				k, out = len(out), append(out, rodHole{rodBoring: b, ticks: name.With()})
			}
			out[k].count++
			if r.kind != crossRod {
				out[k].turned(r.ends[end].into, b.turn)
			}
		}
	}
	return out
}

// endsApart says how far the ends of the blanks of mirrored legs, or of neighbours on a circle,
// stand apart from middle to middle: the feet are not sawn yet.
func (s Seat) endsApart() (out []string) {
	for _, l := range s.sorts() {
		t, n := s.turning(l), s.count(l.sort)
		end := flat(l.point(s.tip(l) - t.over + t.blank.Length))
		apart := 2 * math.Abs(end.X)
		if l.sort.round() {
			apart = chord(end.Norm(), n)
		}
		if n > 1 {
			out = append(out, apartOf.With(sortNames[l.sort.id()].With(), s.mm(apart)))
		}
	}
	return out
}

// together is fitting, gluing, wedging and levelling.
func (s Seat) together(templates.Setting) (templates.Section, error) {
	var out templates.Section
	m := s.design.Seat.Mortise
	ticks := assembly.Ticked(legsTick, len(s.legs))
	fit, glue := fitCard.Card(s.unit(), ticks), glueCard.Card(s.unit(), ticks)
	if apart := s.endsApart(); apart != nil {
		fit.Test = apartTest.With(strings.Join(apart, "; "))
	}
	if len(s.rods) > 0 {
		fit.Say(rodsDry)
		glue.Say(rodsFirst)
	}
	if m.Depth > 0 {
		glue.Say(blindGlue)
	} else {
		fit.Say(proudText)
	}
	if m.Wedged() {
		w := s.wedging()
		fit.Heading, fit.Setup = slotHeading.With(), []templates.Picture{s.wedges()}
		fit.Caution, fit.Figures = slotCaution.With(), s.byEach(slotReading, w.slots)
		fit.Say(slotText)
		glue.Say(wedgeText)
	}
	if m.Depth == 0 {
		glue.Say(flushText)
	}
	v, level := s.levelling(), levelCard.Card(s.unit(), ticks, s.levelView())
	level.Set(frontHigh, measure.Length(v.front))
	level.Set(backHigh, measure.Length(v.back))
	level.Read(pencilHigh, measure.Length(v.pencil))
	level.Say(lowText, sawFeet)
	level.Test = levelTest.With(s.mm(v.front-v.pencil), s.mm(v.back-v.pencil))
	out.Cards = []templates.Card{s.wedgeCard(), fit.Card, glue.Card, level.Card}
	return out, nil
}
