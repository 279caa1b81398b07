package aprons

import (
	"math"
	"slices"
	"strings"

	"rodsheet/geometry"
	"rodsheet/geometry/measure"
	"rodsheet/geometry/solid"
	"rodsheet/templates"
	"rodsheet/templates/piece/assembly"
	"rodsheet/templates/piece/design"
	"rodsheet/templates/piece/drawings"
	"rodsheet/templates/piece/kind"
)

// envelopes are those of the work, in its order.
func envelopes() []assembly.Envelope[Model] {
	row := func(k RowKind) func(Model, templates.Setting) (templates.Section, error) {
		return func(m Model, s templates.Setting) (templates.Section, error) {
			if int(k) >= len(m.Rows) {
				return templates.Section{}, nil
			}
			return m.railEnvelope(m.Rows[k], s), nil
		}
	}
	return []assembly.Envelope[Model]{
		{ID: "angles", Heading: anglesHeading, Fill: Model.angles},
		{ID: "legs", Heading: legsHeading, Fill: Model.legEnvelope},
		{ID: "aprons", Heading: apronsHeading, Fill: row(Aprons)},
		{ID: "stretchers", Heading: stretchersHeading, Fill: row(Stretchers)},
		{ID: "together", Heading: togetherHeading, Fill: Model.together},
	}
}

// least is the angle that nobody sets: less than the slip of a reading over a gauge's
// blade (0.25 mm over 250 mm).
var least = measure.Radians(0.05)

// drawn is the least angle off square, or tilt, that has a triangle: below it templates
// refuses one, and the figure on the card is set by a square and a feeler of paper.
var drawn = measure.Radians(0.5)

// alike is how near two angles lie that share a triangle: what a slip of 0.25 mm at the
// end of a gauge's blade of 200 mm comes to.
var alike = math.Atan(0.25 / 200)

// triangles are the angles off square and tilts of all cuts that have a triangle, in
// working order, one of those that are alike.
func (m Model) triangles() []float64 {
	var out []float64
	add := func(all []Pass) {
		for _, p := range all {
			for _, a := range []float64{math.Abs(p.Saw.OffSquare), math.Abs(p.Saw.Tilt)} {
				if a >= drawn && !slices.ContainsFunc(out, func(b float64) bool { return math.Abs(a-b) < alike }) {
					out = append(out, a)
				}
			}
		}
	}
	for i := range m.LegSorts() {
		add(m.legs[i].Passes())
	}
	for _, row := range m.Rows {
		for _, r := range m.sorts(row) {
			add(r.Passes())
		}
	}
	return out
}

// viewsOf returns the triangles that a cut calls for.
func (m Model) viewsOf(p Pass) []templates.View {
	var out []templates.View
	for _, b := range m.triangles() {
		view := templates.View{Part: templates.AngleView(math.Pi/2 - b)}
		for _, a := range []float64{math.Abs(p.Saw.OffSquare), math.Abs(p.Saw.Tilt)} {
			if math.Abs(a-b) < alike && !slices.Contains(out, view) {
				out = append(out, view)
			}
		}
	}
	return out
}

// standIns name the triangles of a cut that are drawn for an angle beside its own.
func (m Model) standIns(p Pass) []templates.Reading {
	var out []templates.Reading
	for _, b := range m.triangles() {
		for _, a := range []float64{math.Abs(p.Saw.OffSquare), math.Abs(p.Saw.Tilt)} {
			if math.Abs(a-b) < alike && m.angle(a) != m.angle(b) {
				out = append(out, templates.Reading{Name: standInReading.With(m.angle(a)), Value: m.angle(b)})
			}
		}
	}
	return out
}

// angles are the triangles for gauges, and blocks for the tilt of the blade, of all
// cuts.
func (m Model) angles(s templates.Setting) (templates.Section, error) {
	all := m.triangles()
	if len(all) == 0 {
		return templates.Section{}, nil
	}
	for i, a := range all {
		all[i] = math.Pi/2 - a
	}
	job, err := templates.Angles(all, 0, s)
	if err != nil {
		return templates.Section{}, err
	}
	return job.Sections[0], nil
}

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

// legEnvelope is the legs: their section, their ends, mortises and tapers.
func (m Model) legEnvelope(s templates.Setting) (templates.Section, error) {
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
		for _, p := range l.Passes() {
			if p.ID == "rail-edge" && len(m.sides) == 4 {
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
	}
	if resultant, _ := m.Lean(0); s.Full && resultant > least {
		out.Drawings = append(out.Drawings, m.levelSection())
	}
	out.Cards = append(out.Cards, m.legEnds())
	strips := m.strips()
	out.Cards = append(out.Cards, m.mortises(strips))
	if l.taper.Top > 0 {
		out.Cards = append(out.Cards, m.taperCard())
	}
	out.Drawings = append(out.Drawings, strips...)
	return out, nil
}

// sectionOnPaper reports whether the section of a leg is worked by its template, or is so far
// out of square that paper proves it.
func (m Model) sectionOnPaper() bool {
	return len(m.sides) != 4 || slices.ContainsFunc(sectionAngles(m.legs[0].Section()), func(a float64) bool {
		return !templates.TooShallow(math.Abs(a - math.Pi/2))
	})
}

// skewed reports whether the section of a leg is out of square.
func (l leg) skewed() bool {
	for _, a := range sectionAngles(l.Section()) {
		if math.Abs(a-math.Pi/2) > least {
			return true
		}
	}
	return false
}

// strips are those that set out the mortises of each sort of leg.
func (m Model) strips() []templates.Drawing {
	var out []templates.Drawing
	for i := range m.LegSorts() {
		out = append(out, m.wrapLeg(i))
		if len(m.Rows) > 1 {
			out = append(out, m.lowStrip(i, own), m.lowStrip(i, before))
		}
	}
	return out
}

func views(all []templates.Drawing) []templates.View {
	var out []templates.View
	for _, d := range all {
		out = append(out, d.View)
	}
	return out
}

// legEnds is sawing the foot and, in the same setting, the head.
func (m Model) legEnds() templates.Card {
	l := m.legs[0]
	c := templates.Card{Heading: legEndsCard.With(), Ticks: m.legTicks(), Test: legEndsTest.With(), Caution: sawCaution.With()}
	var lies []any
	for _, p := range l.Passes() {
		if p.ID != "foot" && p.ID != "head" {
			continue
		}
		lies = append(lies, m.lying(p))
		c.Setup = append(c.Setup, m.crosscut(p, l.Blank().Width))
		if p.ID == "foot" {
			c.Figures = m.cutReadings(p)
			c.Templates = m.viewsOf(p)
		}
	}
	c.Figures = append(c.Figures, templates.Reading{Name: legLongReading.With(), Value: m.length(l.length()), Write: true})
	c.Text = []string{legEndsText.With(lies...)}
	if m.LegSorts() > 1 {
		c.Text = append(c.Text, handsText.With())
	}
	return c
}

// cutReadings are the two angles of a cut.
func (m Model) cutReadings(p Pass) []templates.Reading {
	return append([]templates.Reading{
		{Name: gaugeReading.With(), Value: m.angle(math.Abs(p.Saw.OffSquare)), Write: true},
		{Name: bevelReading.With(), Value: m.angle(math.Pi/2 - math.Abs(p.Saw.OffSquare))},
		m.tiltOf(p),
	}, m.standIns(p)...)
}

// tiltOf is the tilt of a cut and which way the blade leans.
func (m Model) tiltOf(p Pass) templates.Reading {
	return templates.Reading{Name: leaning(p).With(), Value: m.angle(math.Abs(p.Saw.Tilt)), Write: true}
}

// leaning names the tilt by the side to which the blade leans.
func leaning(p Pass) text {
	switch {
	case p.Saw.Tilt > least:
		return tiltOverReading
	case p.Saw.Tilt < -least:
		return tiltAwayReading
	}
	return tiltReading
}

// shown is how much of a long part a picture of the saw shows, mm.
const shown = 220.0

// crosscut is a part on the gauge, from above, with its outer side down or turned over.
func (m Model) crosscut(p Pass, wide float64) templates.Picture {
	c := assembly.Crosscut{
		Board:     geometry.Box(-shown, 0, 30+wide*math.Abs(math.Tan(p.Saw.OffSquare)), wide).Corners(),
		OffSquare: -p.Saw.OffSquare, Kerf: m.Design.Saw.Kerf, Down: m.lying(p), Unit: m.Design.Unit,
	}
	return c.Picture(gaugeFromAbove.With(passNames[p.ID].With(), leanWords[leaning(p)].With()))
}

// lying says which side of a part lies on the table.
func (m Model) lying(p Pass) string {
	down, turned := outerDown, outerUp
	if m.LegSorts() > 1 && (p.ID == "foot" || p.ID == "head") {
		down, turned = frontDown, frontUp
	}
	if p.Turned {
		down = turned
	}
	return down.With()
}

// ripPicture is a part along the rip fence, from the maker's end, its first edge sawn and
// against the fence: both sides of it are as wide.
func (m Model) ripPicture(p Pass, wide, thick float64) templates.Picture {
	lean := thick * math.Tan(math.Abs(p.Saw.Tilt))
	r := assembly.Rip{
		Section:   []geometry.Point{geometry.Pt(0, 0), geometry.Pt(wide+lean+6, 0), geometry.Pt(wide+lean+6, thick), geometry.Pt(lean, thick)},
		Cut:       geometry.Segment{A: geometry.Pt(wide, 0), B: geometry.Pt(wide+lean, thick)},
		FenceLeft: true, Kerf: m.Design.Saw.Kerf, Tilt: p.Saw.Tilt, Unit: m.Design.Unit,
	}
	return r.Picture(fromMaker.With())
}

// mortises is the chopping of them.
func (m Model) mortises(strips []templates.Drawing) templates.Card {
	row := m.Rows[0]
	deep := 0.0
	for k := range row.Rails[0].Ends {
		deep = math.Max(deep, m.intoLeg(row.Rails[0], k))
	}
	c := templates.Card{
		Heading: mortiseCard.With(), Ticks: m.legTicks(), Setup: []templates.Picture{m.jointView(row)},
		Figures: []templates.Reading{
			{Name: tenonReading.With(), Value: m.length(row.Tenon), Write: true},
			{Name: deepReading.With(), Value: m.length(deep)},
		},
		Text: []string{mortiseText.With(), mortiseLeanText.With()}, Test: mortiseTest.With(), Caution: mortiseCaution.With(), Templates: views(strips),
	}
	if row.Joint == design.Bridled {
		c.Text[0] = slotText.With()
	}
	c.Figures = append(c.Figures, haunchOf(m, row)...)
	return c
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
	d := templates.Picture{Heading: taperView.With()}
	start, long := l.taper.Start, l.length()
	line := func(role templates.Role, points ...geometry.Point) {
		d.Strokes = append(d.Strokes, templates.Stroke{Role: role, Points: points})
	}
	line(templates.Outline, geometry.Pt(0, 0), geometry.Pt(long, 0))
	line(templates.Outline, geometry.Pt(0, 0), geometry.Pt(0, wide), geometry.Pt(start, wide))
	line(templates.Cut, geometry.Pt(start, wide), geometry.Pt(long, narrow))
	line(templates.Outline, geometry.Pt(start, wide), geometry.Pt(long, wide), geometry.Pt(long, 0))
	for _, h := range geometry.Hatch([]geometry.Point{geometry.Pt(start, wide), geometry.Pt(long, narrow), geometry.Pt(long, wide)}, math.Pi/4, 4) {
		line(templates.Waste, h.A, h.B)
	}
	name := func(a, b geometry.Point, t templates.Tag) {
		d.Labels = append(d.Labels, templates.Label{ID: t.ID, Text: t.Text, On: geometry.Segment{A: a, B: b}})
	}
	name(geometry.Pt(0, wide), geometry.Pt(start, wide), label("plain", m.length(start)))
	name(geometry.Pt(0, 0), geometry.Pt(long, 0), label("outer-arris"))
	name(geometry.Pt(0, 0), geometry.Pt(0, wide), label("head"))
	name(geometry.Pt(long, 0), geometry.Pt(long, narrow), label("foot-wide", m.length(narrow)))
	d.Wide = true
	return templates.Card{
		Heading: taperCard.With(), Ticks: m.legTicks(), Setup: []templates.Picture{d},
		Figures: []templates.Reading{
			{Name: taperReading.With(), Value: m.angle(rad), Write: true},
			{Name: startReading.With(), Value: m.length(start)},
			{Name: footReading.With(), Value: m.length(narrow)},
		},
		Text: []string{taperText.With()}, Test: taperTest.With(m.length(narrow)), Caution: taperCaution.With(),
	}
}

// railEnvelope is the rails of one row: edges, ends, shoulders, tenons, and their
// templates.
func (m Model) railEnvelope(row *Row, s templates.Setting) templates.Section {
	var out templates.Section
	var wraps []templates.View
	out.Cards = append(out.Cards, m.stockCard(row))
	for k, r := range m.sorts(row) {
		if row.Of.Arch == 0 { // the card of the arches shows it otherwise
			out.Pictures = append(out.Pictures, m.shape(r, k))
		}
		hands := m.railHands(r, k)
		wraps = append(wraps, views(hands)...)
		out.Drawings = append(out.Drawings, hands...)
		if row.Of.Arch > 0 || s.Full {
			out.Drawings = append(out.Drawings, m.outlineOf(r, k))
		}
		out.Cards = append(out.Cards, m.railCards(row, k, r, views(hands))...)
	}
	out.Cards = append(out.Cards, m.tenonCard(row, wraps))
	if row.Kind == Aprons && m.Buttons() > 0 {
		out.Cards = append(out.Cards, m.grooveCard(row))
	}
	if row.Of.Arch > 0 {
		out.Cards = append(out.Cards, m.archCard(row))
	}
	return out
}

func (m Model) railTicks(row *Row) []templates.Tick {
	var out []templates.Tick
	for k := range m.sorts(row) {
		out = append(out, m.sortTick(row, k))
	}
	return out
}

func (m Model) sortTick(row *Row, k int) templates.Tick {
	return templates.Tick{Text: m.sortName(row, k), Boxes: m.count(m.RailSorts()) + m.Design.Wood.Spares}
}

// railCards are the cards of one sort of rail at the saw.
func (m Model) railCards(row *Row, k int, r Rail, wraps []templates.View) []templates.Card {
	name, ticks, blank := m.sortName(row, k), []templates.Tick{m.sortTick(row, k)}, r.Blank("")
	var out []templates.Card
	shoulder := templates.Card{Heading: shoulderCard.With(name), Ticks: ticks, Test: shoulderTest.With(), Caution: shoulderCaution.With(), Text: []string{shoulderText.With()}}
	for _, p := range r.Passes() {
		switch p.ID {
		case "top":
			out = append(out, templates.Card{
				Heading: ripCard.With(name), Ticks: ticks, Setup: []templates.Picture{m.ripPicture(p, m.deep(row, k), blank.Thickness)}, Templates: m.viewsOf(p),
				Figures: append([]templates.Reading{
					m.tiltOf(p),
					{Name: fenceReading.With(), Value: m.length(m.deep(row, k)), Write: true},
				}, m.standIns(p)...),
				Text: []string{ripText.With(m.lying(r.Passes()[0]), m.lying(p))}, Test: ripTest.With(), Caution: ripCaution.With(),
			})
		case "end":
			across, against, other := 2*p.At, underEdge, topEdge
			if p.Turned {
				against, other = other, against
			}
			out = append(out, templates.Card{
				Heading: endCard.With(name), Ticks: ticks, Setup: []templates.Picture{m.crosscut(p, blank.Width)}, Templates: m.viewsOf(p),
				Figures: append(m.cutReadings(p), templates.Reading{Name: endsReading.With(), Value: m.length(across), Write: true}),
				Text:    []string{endText.With(m.lying(p), against.With(), other.With())}, Test: endTest.With(m.length(across)), Caution: sawCaution.With(),
			})
		case "shoulder-outer":
			shoulder.Figures = append(m.cutReadings(p),
				templates.Reading{Name: cheekReading.With(), Value: m.length(p.Deep), Write: true},
				templates.Reading{Name: shouldersReading.With(), Value: m.length(2 * p.At)})
			shoulder.Setup = append(shoulder.Setup, m.crosscut(p, blank.Width))
			if math.Abs(p.Saw.Tilt) < least {
				shoulder.Text = []string{uprightText.With()}
			}
			shoulder.Templates = append(m.viewsOf(p), wraps...)
		case "shoulder-frame":
			shoulder.Setup = append(shoulder.Setup, m.crosscut(p, blank.Width))
		}
	}
	return append(out, shoulder)
}

// tenonCard is the cheeks, edges and haunches of all tenons of a row.
func (m Model) tenonCard(row *Row, wraps []templates.View) templates.Card {
	outer, _ := row.Cheeks()
	c := templates.Card{
		Heading: tenonCard.With(), Ticks: m.railTicks(row), Setup: []templates.Picture{m.jointView(row)}, Templates: wraps,
		Figures: []templates.Reading{
			{Name: tenonReading.With(), Value: m.length(row.Tenon), Write: true},
			{Name: cheekReading.With(), Value: m.length(outer)},
			{Name: lowerReading.With(), Value: m.length(row.Of.LowerCut)},
		},
		Text: []string{tenonText.With()}, Test: tenonTest.With(), Caution: tenonCaution.With(),
	}
	if row.Joint == design.Bridled {
		c.Text = []string{bridleText.With()}
	}
	c.Figures = append(c.Figures, haunchOf(m, row)...)
	return c
}

// haunchOf is what is off the tenon at its top, and what stays there.
func haunchOf(m Model, row *Row) []templates.Reading {
	var out []templates.Reading
	if row.Upper > 0 {
		out = append(out, templates.Reading{Name: upperReading.With(), Value: m.length(row.Upper)})
	}
	if row.Haunch() > 0 {
		out = append(out, templates.Reading{Name: haunchReadings[row.Joint].With(), Value: m.length(row.Haunch())})
	}
	return out
}

// archCard is sawing the underside to its template.
func (m Model) archCard(row *Row) templates.Card {
	c := templates.Card{
		Heading: archCard.With(), Ticks: m.railTicks(row), Text: []string{archText.With()}, Test: archTest.With(), Caution: archCaution.With(),
		Figures: []templates.Reading{{Name: riseReading.With(), Value: m.length(row.Of.Arch)}},
	}
	for k, r := range m.sorts(row) {
		c.Setup = append(c.Setup, m.shape(r, k))
		c.Templates = append(c.Templates, m.outlineOf(r, k).View)
	}
	return c
}

// together is gluing up, levelling the feet and putting the top on.
func (m Model) together(templates.Setting) (templates.Section, error) {
	whole := func(parts []solid.Part) templates.Picture {
		p := templates.Picture{NoScale: true}
		drawings.Toned(&p, parts, kind.AtCorner())
		return p
	}
	all := m.solids()
	frame := all
	if !m.Design.Frame.Top.None {
		frame = all[:len(all)-1]
	}
	text := glueRegular
	switch {
	case m.slides():
		text = glueBridled
	case len(m.sides) == 4:
		text = glueRectangle
	}
	var out templates.Section
	if !m.Design.Frame.Top.None {
		out.Cards = append(out.Cards, m.topStock())
	}
	glue := templates.Card{
		Heading: glueCard.With(), Ticks: []templates.Tick{{Text: frameTick.With(), Boxes: 1}}, Setup: []templates.Picture{whole(frame)},
		Text: []string{dryText.With(), text.With()}, Test: glueTest.With(), Caution: glueCaution.With(),
		Figures: m.diagonals(),
	}
	var jaws []string
	for k, r := range m.sorts(m.Rows[0]) {
		for _, p := range r.Passes() {
			if off := math.Abs(p.Saw.OffSquare); p.ID == "shoulder-outer" && off > least {
				p.Saw.Tilt = 0 // a wedge is square through its thickness
				jaws = append(jaws, caulOf.With(m.angle(off), m.sortName(m.Rows[0], k)))
				glue.Templates = append(glue.Templates, m.viewsOf(p)...)
			}
		}
	}
	if len(jaws) > 0 {
		glue.Text = append(glue.Text, caulText.With(strings.Join(jaws, "; ")))
	}
	out.Cards = append(out.Cards, glue)
	if n := m.Buttons(); n > 0 {
		moves, _ := m.TopMoves()
		b := m.button()
		out.Cards = append(out.Cards, templates.Card{
			Heading: topCard.With(), Ticks: []templates.Tick{{Text: topWord.With(), Boxes: 1}}, Setup: []templates.Picture{whole(all)},
			Figures: []templates.Reading{
				{Name: buttonsReading.With(), Value: count.With(n)},
				{Name: buttonReading.With(), Value: by(by(m.bare(b.long), m.bare(b.wide)), m.length(b.thick()))},
				{Name: tongueReading.With(), Value: by(m.bare(b.reach), m.length(b.tongue))},
				{Name: stepReading.With(), Value: m.length(b.step)},
				{Name: screwReading.With(), Value: m.length(m.screw())},
				{Name: movesReading.With(), Value: m.length(moves)},
			},
			Text: []string{topText.With(m.length(m.Design.Frame.Top.Overhang))}, Test: topTest.With(), Caution: topCaution.With(),
		})
	}
	return out, nil
}

// slides reports whether a leg goes on to its two aprons along its own length: its slots are
// open at the head, and their cheeks run along it, which those of plumb aprons do not. Tenons
// of stretchers would stand in the way.
func (m Model) slides() bool {
	return m.Rows[0].Joint == design.Bridled && !m.Rows[0].Of.Plumb && len(m.Rows) == 1
}

// diagonals are what proves a frame square, or regular: over the corner arrises of the
// heads and of the feet, from a leg to the one across.
func (m Model) diagonals() []templates.Reading {
	across := len(m.legs) / 2
	a, b := m.legs[0], m.legs[across]
	foot := func(l leg) solid.Vec { return l.at.Add(l.along.Mul(l.length())) }
	return []templates.Reading{
		{Name: headsReading.With(), Value: m.length(a.at.Distance(b.at)), Write: true},
		{Name: feetReading.With(), Value: m.length(foot(a).Distance(foot(b))), Write: true},
	}
}
