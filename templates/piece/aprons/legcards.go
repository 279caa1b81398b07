package aprons

import (
	"math"
	"slices"

	"rodsheet/geometry"
	"rodsheet/geometry/solid"
	"rodsheet/templates"
	"rodsheet/templates/piece/design"
	"rodsheet/templates/piece/drawings"
	"rodsheet/templates/piece/kind"
)

func (m Model) legTicks() []templates.Tick {
	var out []templates.Tick
	for i := range m.LegSorts() {
		out = append(out, templates.Tick{Text: m.legsOf(i), Boxes: m.count(m.LegSorts())})
	}
	if n := m.Design.Wood.Spares; n > 0 { // of either hand, as the list counts them
		out = append(out, templates.Tick{Text: spareTick.With(), Boxes: n})
	}
	return out
}

// stock is what is planed before anything is set out: the section of the legs, and rails.
func (m Model) stock(s templates.Setting) (templates.Section, error) {
	l := m.legs[0]
	var out templates.Section
	angles := sectionAngles(l.Section())
	if s.Full || m.sectionOnPaper() {
		out.Drawings = append(out.Drawings, m.section())
	}
	if l.skewed() {
		c := templates.Card{
			Heading: sectionCard.With(), Ticks: m.legTicks(), Templates: views(out.Drawings), Test: gaugeTest.With(), Caution: planeCaution.With(),
			Text: []string{kiteText.With()},
			Figures: []templates.Reading{
				{Name: thicknessReading.With(), Value: m.length(l.Blank().Thickness), Write: true},
				{Name: outerArrisReading.With(), Value: m.angle(angles[0])},
				{Name: besideReading.With(), Value: m.angle(angles[1])},
			},
		}
		if len(m.sides) != 4 { // no two sides are parallel
			c.Figures = append(c.Figures, templates.Reading{Name: legSizeReading.With(), Value: m.length(l.size), Write: true})
		}
		for _, p := range m.legPasses(0) {
			if p.ID == "rail-edge" {
				c.Text = []string{sectionText.With()}
				_, face, _ := l.TaperAngle()
				c.Setup, c.Caution = append(c.Setup, m.ripPicture(p, face, l.Blank().Thickness)), planeCaution.With()+" "+ripCaution.With()
				c.Figures = append(c.Figures, m.tiltOf(p), templates.Reading{Name: fenceReading.With(), Value: m.length(face), Write: true})
				c.Templates = append(c.Templates, m.viewsOf(p)...)
			}
		}
		if len(out.Drawings) > 0 {
			c.Test = sectionTest.With()
		}
		if math.Abs(angles[2]-angles[0]) > least {
			c.Figures = append(c.Figures, templates.Reading{Name: innerArrisReading.With(), Value: m.angle(angles[2])})
		}
		out.Cards = append(out.Cards, c)
	} else {
		out.Cards = append(out.Cards, templates.Card{
			Heading: stockCard.With(legSortNames[0].With()), Ticks: m.legTicks(),
			Figures: []templates.Reading{{Name: thicknessReading.With(), Value: m.length(l.size), Write: true}},
			Text:    []string{legStockText.With()}, Test: stockTest.With(), Caution: planeCaution.With(),
		})
	}
	for _, row := range m.Rows {
		out.Cards = append(out.Cards, m.stockCard(row))
	}
	for i, key := range []string{"legs", "aprons", "stretchers"}[:len(out.Cards)] {
		measured := thicknessReading
		if i == 0 && len(m.sides) != 4 && l.skewed() {
			measured = legSizeReading
		}
		out.Cards[i].Text = append(out.Cards[i].Text, writeDownText.With(key, measured.With()))
	}
	return out, nil
}

// legEnvelope is the legs: their ends, mortises and tapers.
func (m Model) legEnvelope(s templates.Setting) (templates.Section, error) {
	var out templates.Section
	if resultant, _ := m.Lean(0); s.Full && resultant > least {
		out.Drawings = append(out.Drawings, m.levelSection())
	}
	out.Cards = append(out.Cards, m.legEnds())
	wraps, low := m.strips()
	out.Cards = append(out.Cards, m.mortises(m.Rows[0], wraps))
	if m.legs[0].taper.Top > 0 {
		out.Cards = append(out.Cards, m.taperCard())
	}
	if len(m.Rows) > 1 { // on the sides as they are tapered
		out.Cards = append(out.Cards, m.mortises(m.Rows[1], low))
	}
	out.Drawings = append(append(out.Drawings, wraps...), low...)
	return out, nil
}

// skewed reports whether the section of a leg is out of square.
func (l leg) skewed() bool {
	return slices.ContainsFunc(sectionAngles(l.Section()), func(a float64) bool { return math.Abs(a-math.Pi/2) > least })
}

// strips are those that set out the mortises of each sort of leg, at the head and below.
func (m Model) strips() (wraps, low []templates.Drawing) {
	for i := range m.LegSorts() {
		wraps = append(wraps, m.wrapLeg(i))
		if len(m.Rows) > 1 {
			low = append(low, m.lowStrip(i, own), m.lowStrip(i, before))
		}
	}
	return wraps, low
}

// legEnds is sawing the foot and, in the same setting, the head.
func (m Model) legEnds() templates.Card {
	l := m.legs[0]
	c := templates.Card{Heading: legEndsCard.With(), Ticks: m.legTicks(), Test: legEndsTest.With(), Caution: sawCaution.With()}
	var lies []any
	against, mirrored := railSideWord, outerSideWord
	for _, p := range l.Passes() {
		if p.ID != "foot" && p.ID != "head" {
			continue
		}
		lies = append(lies, m.lying(p))
		c.Setup = append(c.Setup, m.crosscut(p, l.Blank().Width))
		if p.ID == "foot" {
			c.Figures = m.cutReadings(p)
			c.Templates = m.viewsOf(p)
			if p.Turned {
				against, mirrored = mirrored, against
			}
		}
	}
	c.Figures = append(c.Figures, templates.Reading{Name: legLongReading.With(), Value: m.length(l.length()), Write: true})
	c.Text = []string{legEndsText.With(append(lies, against.With())...)}
	if m.LegSorts() > 1 {
		c.Text = append(c.Text, handsText.With(mirrored.With()))
	}
	return c
}

// mortises is the chopping of those of a row.
func (m Model) mortises(row *Row, strips []templates.Drawing) templates.Card {
	deep := -row.least(func(r Rail, k int) float64 { return -m.intoLeg(r, k) })
	c := templates.Card{
		Heading: mortiseCards[row.Kind].With(), Ticks: m.legTicks(), Setup: []templates.Picture{m.jointView(row)},
		Figures: []templates.Reading{
			{Name: tenonReading.With(), Value: m.length(row.Tenon), Write: true},
			{Name: deepReading.With(), Value: m.length(deep)},
		},
		Text: []string{mortiseTexts[row.Kind].With(), mortiseLeanText.With()}, Test: mortiseTest.With(), Caution: mortiseCaution.With(), Templates: views(strips),
	}
	if row.Joint == design.Bridled {
		walls, post := m.headLeft(row)
		c.Text[0] = slotText.With()
		c.Figures = append(c.Figures,
			templates.Reading{Name: wallsReading.With(), Value: m.length(walls)}, templates.Reading{Name: postReading.With(), Value: m.length(post)})
	}
	if row.Of.Long == 0 {
		c.Text = append(c.Text, mitredText.With())
	}
	c.Figures = append(c.Figures, haunchOf(m, row)...)
	return c
}

// headLeft returns what two slots leave of the head of a leg, where they leave least: the
// thickness of the walls at its outer sides, and of the post between the slots and the inside.
func (m Model) headLeft(row *Row) (walls, post float64) {
	beside := func(outer bool) float64 {
		return row.least(func(r Rail, k int) float64 {
			e := r.Ends[k]
			l, mouth := m.legs[e.corner], r.mouthOf(e, row.Of.LowerCut, 0)
			side, at := l.straight(1-e.takes), mouth[2:]
			if outer {
				side, at = solid.Through(l.at, l.outer[e.takes]), mouth[:2]
			}
			return math.Min(-side.Height(at[0]), -side.Height(at[1]))
		})
	}
	return beside(true), beside(false)
}

// jointView shows a leg of the front and its two rails of a row drawn out of it.
func (m Model) jointView(row *Row) templates.Picture {
	p := templates.Picture{Heading: jointHeading.With(), NoScale: true}
	l := m.legs[1]
	_, low := level(row.Under - 2*l.size)
	high, _ := level(row.Top() + 2*l.size)
	parts := []solid.Part{m.Leg(l.corner).Cut(low).Cut(high)}
	for _, takes := range []int{before, own} {
		r, end := m.railAt(row, l.corner, takes)
		away := r.away(end)
		near := solid.Through(r.Ends[end].Mouth[0].Add(away.Mul(2*l.size+row.Of.Depth)), away)
		parts = append(parts, r.Part("").Cut(near).Transform(solid.Translate(away.Mul(1.2*l.size))))
	}
	drawings.Toned(&p, parts, kind.AtCorner())
	return p
}

// taperCard is the tapering of the sides that take rails.
func (m Model) taperCard() templates.Card {
	l := m.legs[0]
	rad, wide, narrow := l.TaperAngle()
	d := drawings.NewSketch()
	d.Heading, d.Wide = taperView.With(), true
	start, long := l.taper.Start, l.length()
	d.Line(templates.Outline, geometry.Pt(0, 0), geometry.Pt(long, 0))
	d.Line(templates.Outline, geometry.Pt(0, 0), geometry.Pt(0, wide), geometry.Pt(start, wide))
	d.Line(templates.Cut, geometry.Pt(start, wide), geometry.Pt(long, narrow))
	d.Line(templates.Outline, geometry.Pt(start, wide), geometry.Pt(long, wide), geometry.Pt(long, 0))
	d.Lines(templates.Waste, geometry.Hatch([]geometry.Point{geometry.Pt(start, wide), geometry.Pt(long, narrow), geometry.Pt(long, wide)}, math.Pi/4, 4))
	d.Label(geometry.Pt(0, wide), geometry.Pt(start, wide), label("plain", m.length(start)))
	d.Label(geometry.Pt(0, 0), geometry.Pt(long, 0), label("outer-arris"))
	d.Label(geometry.Pt(0, 0), geometry.Pt(0, wide), label("head"))
	d.Label(geometry.Pt(long, 0), geometry.Pt(long, narrow), label("foot-wide", m.length(narrow)))
	p := l.taperPass()
	return templates.Card{
		Heading: taperCard.With(), Ticks: m.legTicks(), Setup: []templates.Picture{d.Picture},
		Figures: append([]templates.Reading{
			{Name: taperReading.With(), Value: m.angle(rad), Write: true},
			{Name: startReading.With(), Value: m.length(start)},
			{Name: footReading.With(), Value: m.length(narrow)}, m.tiltOf(p),
		}, m.standIns(p)...), Templates: m.viewsOf(p),
		Text: []string{taperText.With()}, Test: taperTest.With(m.length(narrow)), Caution: taperCaution.With(),
	}
}
