package aprons

import (
	"math"
	"slices"

	"rodsheet/geometry"
	"rodsheet/geometry/measure"
	"rodsheet/geometry/solid"
	"rodsheet/templates"
	"rodsheet/templates/piece/assembly"
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
		out = append(out, templates.Tick{Text: assembly.Either(m.LegSorts() > 1, handsTick, spareTick).With(), Boxes: n})
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
		c := sectionCard.Card(m.Design.Unit, m.legTicks())
		c.Templates, c.Text = assembly.Views(out.Drawings), []string{kiteText.With()}
		c.Set(thicknessReading, measure.Length(l.Blank().Thickness))
		c.Read(outerArrisReading, measure.Angle(angles[0]))
		c.Read(besideReading, measure.Angle(angles[1]))
		if len(m.sides) != 4 { // no two sides are parallel
			c.Set(legSizeReading, measure.Length(l.size))
		}
		for _, p := range m.legPasses(0) {
			if p.ID == "rail-edge" {
				c.Text = []string{sectionText.With() + " " + otherFence.With()}
				_, face, _ := l.TaperAngle()
				c.Setup, c.Caution = append(c.Setup, m.ripPicture(p, face, l.Blank().Thickness)), shortCaution.With(ripCard.Caution.With())
				c.Set(leaning(p), tilted(p))
				c.Set(fenceReading, measure.Length(face))
				c.Templates = append(c.Templates, m.viewsOf(p)...)
			}
		}
		if len(out.Drawings) > 0 {
			c.Test = sectionTest.With()
		}
		if math.Abs(angles[2]-angles[0]) > least {
			c.Read(innerArrisReading, measure.Angle(angles[2]))
		}
		out.Cards = append(out.Cards, c.Card)
	} else {
		out.Cards = append(out.Cards, m.planed(legSortNames[0], l.size, legStockText, m.legTicks()))
	}
	if m.LegSorts() > 1 {
		out.Cards[0].Text = append(out.Cards[0].Text, handText.With())
	}
	for _, row := range m.Rows {
		out.Cards = append(out.Cards, m.planed(sortNames[row.Kind][0], row.Of.Thickness, stockText, m.railTicks(row)))
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
	c := legEndsCard.Card(m.Design.Unit, m.legTicks())
	var lies []any
	against, mirrored, tilts := railSideWord, outerSideWord, false
	for _, p := range l.Passes() {
		if p.ID != "foot" && p.ID != "head" {
			continue
		}
		lies = append(lies, m.lying(p))
		c.Setup = append(c.Setup, m.crosscut(p, l.Blank().Width))
		if p.ID == "foot" {
			c.Figures = m.cutReadings(p)
			c.Templates, tilts = m.viewsOf(p), math.Abs(p.Saw.Tilt) > least
			if p.Turned {
				against, mirrored = mirrored, against
			}
		}
	}
	c.Set(legLongReading, measure.Length(l.length()))
	c.Text = []string{legEndsText.With(append(lies, against.With())...)}
	other := ""
	if tilts {
		other = assembly.Either(m.LegSorts() > 1, otherHand, otherSide).With()
	}
	if resultant, _ := m.Lean(0); resultant > least {
		c.Text = append(c.Text, strikeText.With(other))
	}
	if m.LegSorts() > 1 {
		c.Text = append(c.Text, handsText.With(mirrored.With()))
	}
	return c.Card
}

// mortises is the chopping of those of a row.
func (m Model) mortises(row *Row, strips []templates.Drawing) templates.Card {
	deep := -m.least(row, func(r Rail, _ End) float64 { return -m.intoLeg(r, left) })
	bridled := row.Joint == design.Bridled
	c := mortiseCard.Card(m.Design.Unit, m.legTicks(), m.jointView(row))
	c.Heading, c.Templates = mortiseCards[row.Kind].With(), assembly.Views(strips)
	c.Say(assembly.Either(bridled, slotText, mortiseTexts[row.Kind]), mortiseLeanText)
	c.Set(tenonReading, measure.Length(row.Tenon))
	c.Read(deepReading, measure.Length(deep))
	if bridled {
		walls, post := m.headLeft(row)
		c.Read(wallsReading, measure.Length(walls))
		c.Read(postReading, measure.Length(post))
	}
	if row.Of.Long == 0 {
		c.Say(mitredText)
	}
	haunch(&c, row)
	return c.Card
}

// headLeft returns what two slots leave of the head of a leg, where they leave least: the
// thickness of the walls at its outer sides, and of the post between the slots and the inside.
func (m Model) headLeft(row *Row) (walls, post float64) {
	beside := func(outer bool) float64 {
		return m.least(row, func(r Rail, e End) float64 {
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
	d.Line(templates.Construction, geometry.Pt(start, 0), geometry.Pt(start, wide)) // as it is pencilled
	d.Label(geometry.Pt(0, wide), geometry.Pt(start, wide), label("plain", m.length(start)))
	d.Label(geometry.Pt(0, 0), geometry.Pt(long, 0), label("outer-arris"))
	d.Label(geometry.Pt(0, 0), geometry.Pt(0, wide), label("head"))
	d.Label(geometry.Pt(long, 0), geometry.Pt(long, narrow), label("foot-wide", m.length(narrow)))
	p := l.taperPass()
	c := taperCard.Card(m.Design.Unit, m.legTicks(), d.Picture)
	c.Set(taperReading, measure.Angle(rad))
	c.Read(startReading, measure.Length(start))
	c.Read(footReading, measure.Length(narrow))
	c.Set(leaning(p), tilted(p))
	c.Figures = append(c.Figures, m.standIns(p)...)
	c.Test, c.Templates = taperCard.Test.With(m.length(narrow)), m.viewsOf(p)
	if math.Abs(p.Saw.Tilt) > least {
		c.Say(otherJig)
	}
	return c.Card
}
