package seat

import (
	"math"
	"slices"
	"strconv"

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
func Kind() kind.Kind {
	return assembly.Kind(assembly.Spec[Seat]{
		Solve: Solve, Faults: Faults, Envelopes: envelopes(), Mends: mends(), Mending: mending, Usual: usual(), Grips: Seat.grips,
	})
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

func (s Seat) reading(name text, mm float64, write bool) templates.Reading {
	return templates.Reading{Name: name.With(), Value: s.mm(mm), Write: write}
}

func (s Seat) angleReading(name text, rad float64) templates.Reading {
	return templates.Reading{Name: name.With(), Value: s.deg(rad)}
}

// legTicks are the legs of a sort to tick off.
func (s Seat) legTicks(of sort, spares int) []templates.Tick {
	return []templates.Tick{{Text: sortNames[of.id()].With(), Boxes: s.count(of) + spares}}
}

// slabWork is the seat: glued up, bored, sawn to its outline.
func (s Seat) slabWork(set templates.Setting) (templates.Section, error) {
	var out templates.Section
	k := s.design.Seat
	board, count := s.boards()
	box := s.size2()
	ticks := []templates.Tick{{Text: seatTick.With(), Boxes: 1}}
	planed := []templates.Tick{{Text: seatBoardsTick.With(), Boxes: count + s.design.Wood.Spares}}
	boards := templates.Card{
		Heading: slabHeading.With(), Ticks: planed, Setup: []templates.Picture{s.plan()},
		Figures: []templates.Reading{s.reading(thicknessReading, k.Thickness, true)},
		Text:    []string{slabText.With(count, s.mm(board.Width), assembly.Either(k.FrontToBack, frontToBack, sideToSide).With()), setOutText.With()}, Test: slabTest.With(), Caution: slabCaution.With(),
	}
	saw := templates.Card{
		Heading: sawHeading.With(), Ticks: ticks,
		Figures: []templates.Reading{s.reading(acrossReading, box.X, true), s.reading(depthReading, box.Y, true)},
		Text:    []string{sawText.With()}, Test: sawTest.With(), Caution: sawCaution.With(),
	}
	if s.whole() {
		out.Drawings = []templates.Drawing{s.slabDrawing()}
	} else {
		out.Drawings = s.holeDrawings()
	}
	for _, d := range out.Drawings {
		boards.Templates = append(boards.Templates, d.View)
	}
	out.Cards = append(out.Cards, boards)
	var bevels []float64
	for _, l := range s.sorts() {
		b := s.boring(l)
		out.Cards = append(out.Cards, s.boringCard(l, b))
		bevels = once(bevels, math.Pi/2-b.resultant)
	}
	out.Cards = append(out.Cards, saw)
	return withAngles(out, bevels, set)
}

// hasTriangle reports whether a triangle is drawn for a bevel: none where a square serves.
func hasTriangle(bevel float64) bool {
	_, _, err := joint.Acute(bevel)
	return err == nil
}

// once adds a bevel that has a triangle and is not among the others, as finely as angles
// are printed.
func once(bevels []float64, bevel float64) []float64 {
	const fine = 0.005 // degrees
	same := func(a float64) bool { return math.Abs(a-bevel) < measure.Radians(fine) }
	if !hasTriangle(bevel) || slices.ContainsFunc(bevels, same) {
		return bevels
	}
	return append(bevels, bevel)
}

// withAngles adds the triangles of some bevels.
func withAngles(out templates.Section, bevels []float64, set templates.Setting) (templates.Section, error) {
	if len(bevels) == 0 {
		return out, nil
	}
	job, err := templates.Angles(bevels, 0, set)
	if err != nil {
		return out, err
	}
	out.Append(job.Sections[0])
	return out, nil
}

func angleView(bevel float64) templates.View { return templates.View{Part: templates.AngleView(bevel)} }

// boringCard is the set-up of one resultant.
func (s Seat) boringCard(l leg, b boring) templates.Card {
	c := templates.Card{
		Heading: boreHeading.With(sortNames[l.sort.id()].With()), Ticks: s.legTicks(l.sort, 0),
		Setup: []templates.Picture{s.boringView(b)},
		Figures: []templates.Reading{
			s.angleReading(bevelReading, math.Pi/2-b.resultant), s.angleReading(sightlineReading, math.Abs(b.sightline)), s.reading(bitReading, b.pilot, true),
		},
		Text: []string{boreText.With()}, Caution: boreCaution.With(),
	}
	if b.sort.round() {
		c.Figures[1] = s.reading(circleReading, b.forward, true)
		c.Figures = append(c.Figures, s.reading(chordReading, chord(b.forward, b.count), true))
		c.Text = append(c.Text, circleText.With())
	}
	if hasTriangle(math.Pi/2 - b.resultant) {
		c.Templates = append(c.Templates, angleView(math.Pi/2-b.resultant))
	}
	exit := l.point(l.to(s.thickness() - s.bored()))
	if b.depth > 0 {
		c.Figures = append(c.Figures, s.reading(depthOnBit, b.depth, true))
		c.Text = append(c.Text, blindText.With())
		c.Test = blindTest.With(s.mm(s.thickness() - s.design.Seat.Mortise.Depth))
	} else {
		c.Text = append(c.Text, throughText.With())
		c.Test = assembly.Either(exit.Y > 0, exitBackward, exitForward).With(s.aside(exit.X), s.mm(math.Abs(exit.Y)))
		if b.sort.round() {
			c.Test = exitRound.With(s.mm(flat(exit).Norm()))
		}
	}
	if b.large > 0 {
		c.Figures = append(c.Figures, s.angleReading(reamerReading, b.reamer), s.reading(largeReading, b.large, false))
		c.Text = append(c.Text, reamText.With())
	}
	return c
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
func (s Seat) bySort(all, each text, of func(turning) float64) []templates.Reading {
	values := lists.Map(s.sorts(), func(l leg) float64 { return of(s.turning(l)) })
	return s.byEach(all, each, values)
}

// byEach is bySort of values in the order of sorts.
func (s Seat) byEach(all, each text, values []float64) []templates.Reading {
	var out []templates.Reading
	for i, l := range s.sorts() {
		out = append(out, templates.Reading{Name: each.With(sortNames[l.sort.id()].With()), Value: s.mm(values[i]), Write: true})
	}
	if slices.Max(values)-slices.Min(values) < alikeWithin {
		return []templates.Reading{{Name: all.With(), Value: s.mm(slices.Min(values)), Write: true}}
	}
	return out
}

// legWork is the legs: blanks, tapers or octagons, tenons.
func (s Seat) legWork(set templates.Setting) (templates.Section, error) {
	var out templates.Section
	k := s.design.Seat.Legs
	ticks := lists.Flat(s.sorts(), func(l leg) []templates.Tick { return s.legTicks(l.sort, s.design.Wood.Spares) })
	blank := templates.Card{
		Heading: blankHeading.With(), Ticks: ticks, Text: []string{blankText.With()}, Test: blankTest.With(), Caution: planeCaution.With(),
		Figures: append([]templates.Reading{s.reading(squareReading, k.Size, true)}, s.bySort(longReading, longOf, func(t turning) float64 { return t.blank.Length })...),
	}
	shape := templates.Card{Heading: shapeHeadings[k.Section].With(), Ticks: ticks, Text: shapeText(k.Section), Test: shapeTest.With(), Caution: planeCaution.With()}
	tapered := k.Foot > 0 && k.Foot < k.Size
	if tapered {
		if k.Section != design.RoundLeg {
			shape.Text = append([]string{taperText.With()}, shape.Text...)
		}
		shape.Figures = s.bySort(endReading, endOf, func(t turning) float64 { return t.end })
	}
	if k.Section == design.OctagonLeg {
		d := s.octagon()
		shape.Setup = []templates.Picture{s.octagonShown(d)}
		if set.Full { // straight lines between figures, which a gauge does as well
			out.Drawings, shape.Templates = []templates.Drawing{d}, []templates.View{d.View}
		}
		shape.Figures = append(shape.Figures, s.reading(cornerReading, joint.OctagonCorner(k.Size), false))
	}
	if k.Section == design.OctagonLeg && tapered {
		shape.Figures = append(shape.Figures, s.bySort(endCorner, endCornerOf, func(t turning) float64 { return joint.OctagonCorner(t.end) })...)
	}
	first := s.turning(s.sorts()[0])
	tenons := templates.Card{
		Heading: tenonHeading.With(), Ticks: ticks, Setup: []templates.Picture{s.legView(first)},
		Figures: append(s.bySort(shoulderReading, shoulderOf, func(t turning) float64 { return t.shoulder }), s.bySort(rootReading, rootOf, func(t turning) float64 { return t.root })...),
		Text:    []string{tenonText.With()}, Test: tenonTest.With(), Caution: latheCaution.With(),
	}
	if first.tip != first.root {
		tenons.Figures = append(tenons.Figures, s.bySort(tipReading, tipOf, func(t turning) float64 { return t.tip })...)
	}
	if first.over > 0 {
		tenons.Text = append(tenons.Text, longTip.With())
	}
	out.Cards = append(out.Cards, blank)
	if k.Section != design.SquareLeg || tapered {
		out.Cards = append(out.Cards, shape)
	}
	out.Cards = append(out.Cards, tenons)
	return out, nil
}

// rodWork is the stretchers and their holes.
func (s Seat) rodWork(set templates.Setting) (templates.Section, error) {
	var out templates.Section
	if len(s.rods) == 0 {
		return out, nil
	}
	k := s.design.Seat.Stretchers
	turn := templates.Card{Heading: rodHeading.With(), Text: []string{rodText.With()}, Test: rodTest.With(), Caution: latheCaution.With(),
		Figures: []templates.Reading{s.reading(rodReading, k.Diameter, true), s.reading(rodTenonReading, s.tenon(), true)}}
	first, count := s.kinds()
	for n, i := range first {
		r := s.rods[i]
		t := r.turning()
		turn.Ticks = append(turn.Ticks, templates.Tick{Text: rodNames[r.kind].With(), Boxes: count[n] + s.design.Wood.Spares})
		turn.Figures = append(turn.Figures,
			templates.Reading{Name: wholeReading.With(rodNames[r.kind].With()), Value: s.mm(t.whole), Write: true},
			templates.Reading{Name: betweenReading.With(rodNames[r.kind].With()), Value: s.mm(t.between)})
		turn.Figures = append(turn.Figures, s.rodTenons(r, t)...)
	}
	out.Cards = append(out.Cards, turn)
	var bevels []float64
	for _, holes := range s.rodHoles() {
		b := holes.rodBoring
		c := templates.Card{
			Heading: rodHoleHeading.With(rodNames[s.rods[b.rod].kind].With()), Ticks: []templates.Tick{{Text: holes.ticks, Boxes: holes.count}},
			Setup:   []templates.Picture{s.rodView(b)},
			Figures: []templates.Reading{s.angleReading(crossReading, b.lean), s.reading(holeDepth, b.depth, true)},
			Text:    []string{crossHoleText.With()}, Test: rodHoleTest.With(), Caution: boreCaution.With(),
		}
		if s.rods[b.rod].kind != crossRod {
			c.Text = []string{rodHoleText.With()}
			for _, way := range []struct {
				said text
				legs []string
			}{{counterClockwise, holes.left}, {clockwise, holes.right}} {
				if len(way.legs) > 0 {
					c.Text = append(c.Text, way.said.With(wording.And(way.legs...)))
				}
			}
			c.Figures[0].Name = leanReading.With()
			c.Figures = append(c.Figures, s.reading(alongReading, b.along, true), s.angleReading(turnReading, math.Abs(b.turn)))
		}
		if bevel := math.Min(b.lean, math.Pi-b.lean); hasTriangle(bevel) {
			c.Templates = append(c.Templates, angleView(bevel))
			bevels = once(bevels, bevel)
		}
		out.Cards = append(out.Cards, c)
	}
	return withAngles(out, bevels, set)
}

// rodTenons are the lengths of the tenons of a stretcher: one where its ends are alike.
func (s Seat) rodTenons(r rod, t rodTurning) []templates.Reading {
	name := rodNames[r.kind].With()
	if math.Abs(t.tenons[0]-t.tenons[1]) < alikeWithin {
		return []templates.Reading{{Name: tenonLong.With(name), Value: s.mm(t.tenons[0])}}
	}
	var out []templates.Reading
	for i, e := range r.ends { // of a stretcher between others both ends are alike
		out = append(out, templates.Reading{Name: tenonLongIn.With(name, sortNames[s.legs[e.into].sort.id()].With()), Value: s.mm(t.tenons[i])})
	}
	return out
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
			name := intoNames[intoSide]
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

// together is fitting, gluing, wedging and levelling.
func (s Seat) together(templates.Setting) (templates.Section, error) {
	var out templates.Section
	m := s.design.Seat.Mortise
	ticks := []templates.Tick{{Text: legsTick.With(), Boxes: len(s.legs)}}
	fit := templates.Card{Heading: fitHeading.With(), Ticks: ticks, Text: []string{fitText.With()}, Test: fitTest.With(), Caution: fitCaution.With()}
	glue := templates.Card{Heading: glueHeading.With(), Ticks: ticks, Text: []string{glueText.With()}, Test: glueTest.With(), Caution: glueCaution.With()}
	if len(s.rods) > 0 {
		fit.Text = append(fit.Text, rodsDry.With())
		glue.Text = append(glue.Text, rodsFirst.With())
	}
	if m.Depth > 0 {
		glue.Text = append(glue.Text, blindGlue.With())
	} else {
		fit.Text = append(fit.Text, proudText.With())
	}
	if m.Wedged() {
		w := s.wedging()
		fit.Heading, fit.Setup = slotHeading.With(), []templates.Picture{s.wedges()}
		fit.Text, fit.Caution = append(fit.Text, slotText.With()), slotCaution.With()
		fit.Figures = s.byEach(slotReading, slotOf, w.slots)
		glue.Text = append(glue.Text, wedgeText.With())
	}
	if m.Depth == 0 {
		glue.Text = append(glue.Text, flushText.With())
	}
	v := s.levelling()
	level := templates.Card{
		Heading: levelHeading.With(), Ticks: ticks, Setup: []templates.Picture{s.levelView()},
		Figures: []templates.Reading{s.reading(frontHigh, v.front, true), s.reading(backHigh, v.back, true), s.reading(pencilHigh, v.pencil, false)},
		Text:    []string{levelText.With(), lowText.With(), sawFeet.With()}, Test: levelTest.With(s.mm(v.front-v.pencil), s.mm(v.back-v.pencil)), Caution: footCaution.With(),
	}
	out.Cards = []templates.Card{s.wedgeCard(), fit, glue, level}
	return out, nil
}
