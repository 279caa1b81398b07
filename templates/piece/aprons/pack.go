package aprons

import (
	"math"
	"slices"
	"strings"

	"rodsheet/geometry"
	"rodsheet/geometry/joint"
	"rodsheet/geometry/lists"
	"rodsheet/geometry/measure"
	"rodsheet/geometry/solid"
	"rodsheet/templates"
	"rodsheet/templates/piece"
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
		{ID: "angles", Heading: anglesHeading, Milled: Model.lowOnTaper, Fill: Model.angles},
		{ID: "stock", Heading: stockHeading, Fill: Model.stock},
		{ID: "legs", Heading: legsHeading, Milled: always, Fill: Model.legEnvelope},
		{ID: "aprons", Heading: apronsHeading, Milled: always, Fill: row(Aprons)},
		{ID: "stretchers", Heading: stretchersHeading, Milled: always, Fill: row(Stretchers)},
		{ID: "together", Heading: togetherHeading, Fill: Model.together},
	}
}

func always(Model) bool { return true }

// lowOnTaper reports whether stretchers stand on tapered sides: then their shoulders turn
// with what the taper takes off. All other angles are those of the outer sides.
func (m Model) lowOnTaper() bool { return len(m.Rows) > 1 && m.legs[0].taper.Top > 0 }

// least is the angle that nobody sets: less than the slip of a reading over a gauge's
// blade (0.25 mm over 250 mm).
var least = measure.Radians(0.05)

// drawn is the least angle off square, or tilt, that has a triangle: below it templates
// refuses one, and the figure on the card is set by a square and a feeler of paper.
var drawn = measure.Radians(0.5)

// alike is how near two angles lie that share a triangle: what a slip of 0.25 mm at the
// end of a gauge's blade of 200 mm comes to.
var alike = math.Atan(0.25 / 200)

// angles are how far the blade is off square and tilted.
func (p Pass) angles() []float64 { return []float64{math.Abs(p.Saw.OffSquare), math.Abs(p.Saw.Tilt)} }

// triangles are the angles of all cuts that have a triangle, in working order, one of those
// that are alike.
func (m Model) triangles() []float64 {
	var out []float64
	for _, p := range m.passes() {
		for _, a := range p.angles() {
			if a >= drawn && !slices.ContainsFunc(out, func(b float64) bool { return math.Abs(a-b) < alike }) {
				out = append(out, a)
			}
		}
	}
	return out
}

// drawnFor calls f with each angle of a cut that has a triangle, and with that of this.
func (m Model) drawnFor(p Pass, f func(angle, drawn float64)) {
	for _, b := range m.triangles() {
		for _, a := range p.angles() {
			if math.Abs(a-b) < alike {
				f(a, b)
			}
		}
	}
}

// viewsOf returns the triangles that a cut calls for.
func (m Model) viewsOf(p Pass) []templates.View {
	var out []templates.View
	m.drawnFor(p, func(_, drawn float64) {
		out = append(out, templates.View{Part: templates.AngleView(math.Pi/2 - drawn)})
	})
	return lists.Unique(out)
}

// standIns name the triangles of a cut that are drawn for an angle beside its own.
func (m Model) standIns(p Pass) []templates.Reading {
	var out []templates.Reading
	m.drawnFor(p, func(angle, drawn float64) {
		if own, other := m.angle(angle), m.angle(drawn); own != other {
			out = append(out, templates.Reading{Name: standInReading.With(own), Value: other})
		}
	})
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

// sectionOnPaper reports whether the section of a leg is worked by its template, or is so far
// out of square that paper proves it.
func (m Model) sectionOnPaper() bool {
	return len(m.sides) != 4 || slices.ContainsFunc(sectionAngles(m.legs[0].Section()), func(a float64) bool {
		return !templates.TooShallow(math.Abs(a - math.Pi/2))
	})
}

// cutReadings are the two angles of a cut.
func (m Model) cutReadings(p Pass) []templates.Reading {
	tilt := templates.Reading{Name: leaning(p).With(), Value: tilted(p).Text(m.Design.Unit), Write: true}
	return slices.Concat(assembly.OnGauge(m.Design, p.Saw.OffSquare), []templates.Reading{tilt}, m.standIns(p))
}

// tilted is by how much the blade leans.
func tilted(p Pass) measure.Quantity { return measure.Angle(math.Abs(p.Saw.Tilt)) }

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
	return m.crosscutOf(p, wide).Picture(m.fromAbove(p))
}

func (m Model) crosscutOf(p Pass, wide float64) assembly.Crosscut {
	c := assembly.Crosscut{
		Board:     geometry.Box(-shown, 0, 30+wide*math.Abs(math.Tan(p.Saw.OffSquare)), wide).Corners(),
		OffSquare: -p.Saw.OffSquare, Kerf: m.Design.Saw.Kerf, Down: m.lying(p), Unit: m.Design.Unit, Broken: true,
		Tilted: leaning(p) != tiltReading,
	}
	if leaning(p) == tiltAwayReading { // turned round on the table: the blade leans one way only
		c.Right, c.OffSquare = true, -c.OffSquare
	}
	return c
}

// shoulderCut is a rail on the gauge whose end is sawn as it will stay: seen from above it
// reaches as far as the farther of its two sides does.
func (m Model) shoulderCut(r Rail, p Pass, wide float64) assembly.Crosscut {
	c := m.crosscutOf(p, wide)
	table, over := 0.0, r.Row.Of.Thickness
	if p.Turned {
		table, over = over, table
	}
	shoulder, end := p.plane(), r.frame().moved(r.end(left))
	x := func(of solid.Plane, y, z float64) float64 { return (of.D - of.N.Y*y - of.N.Z*z) / of.N.X }
	beyond := func(y float64) float64 { return math.Max(x(end, y, table), x(end, y, over)) - x(shoulder, y, table) }
	low, high, lean := beyond(0), beyond(wide), math.Tan(c.OffSquare)
	if lean*shoulder.N.Y*shoulder.N.X > 0 { // the part lies the other way about
		low, high = high, low
	}
	c.Board[1], c.Board[2] = geometry.Pt(low, 0), geometry.Pt(high+lean*wide, wide)
	c.Shallow = true
	return c
}

// fromAbove heads the picture of a cut on the mitre gauge.
func (m Model) fromAbove(p Pass) string {
	return gaugeFromAbove.With(passNames[p.ID].With(), leanWords[leaning(p)].With())
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
		Section: []geometry.Point{geometry.Pt(0, 0), geometry.Pt(wide+lean+6, 0), geometry.Pt(wide+lean+6, thick), geometry.Pt(lean, thick)},
		Cut:     geometry.Segment{A: geometry.Pt(wide, 0), B: geometry.Pt(wide+lean, thick)},
		Kerf:    m.Design.Saw.Kerf, Tilt: p.Saw.Tilt, Unit: m.Design.Unit,
	}
	return r.Picture(fromMaker.With())
}

// together is gluing up, levelling the feet and putting the top on.
func (m Model) together(s templates.Setting) (templates.Section, error) {
	whole := func(parts []solid.Part) templates.Picture {
		p := templates.Picture{NoScale: true}
		drawings.Toned(&p, parts, kind.AtCorner())
		return p
	}
	all := m.finished()
	frame := all
	if !m.Design.Frame.Top.None {
		frame = all[:len(all)-1]
	}
	var out templates.Section
	if !m.Design.Frame.Top.None {
		if err := m.topSheets(&out, s); err != nil {
			return out, err
		}
		out.Cards = append(out.Cards, m.topStock(assembly.Views(out.Drawings)))
	}
	glue := glueCard.Card(m.Design.Unit, assembly.Ticked(frameTick, 1), whole(frame))
	glue.Figures = m.diagonals()
	switch {
	case m.slides():
		glue.Say(glueBridled)
	case len(m.sides) == 4:
		glue.Text = append(glue.Text, glueRectangle.With(m.packed()))
	default:
		glue.Say(glueRegular)
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
	out.Cards = append(out.Cards, glue.Card)
	if c := topCard.Card(m.Design.Unit, assembly.Ticked(topWord, 1), whole(all)); m.topOn(&c) {
		out.Cards = append(out.Cards, c.Card)
	}
	return out, nil
}

// packed says what lies under rails that stand back from the legs.
func (m Model) packed() string {
	var all []string
	for _, row := range m.Rows {
		if row.Of.Inset > least && !row.Of.Plumb {
			all = append(all, caulOf.With(m.length(row.Of.Inset), sortNames[row.Kind][0].With()))
		}
	}
	if all == nil {
		return ""
	}
	return packText.With(strings.Join(all, "; "))
}

// topSheets are those that a top is set out by: its corners, or what draws an oval. A round
// one is struck by a beam compass.
func (m Model) topSheets(out *templates.Section, s templates.Setting) error {
	switch t, across := m.TopShape(), m.acrossGrain(); {
	case m.Design.Frame.Top.Outline == design.OvalOnFrame:
		size, _ := m.TopSize()
		job, err := templates.Oval(joint.Oval{Length: size.Length, Width: size.Width}, s)
		if err != nil {
			return err
		}
		out.Drawings, out.Pictures, out.Panels = job.Sections[0].Drawings, job.Sections[0].Pictures, job.Sections[0].Panels
	case t.Clip+t.Round > 0:
		out.Drawings = templates.TopCorners(t, geometry.Pt(across.Y, across.X), s)
	}
	return nil
}

// laying says how the top lies on the frame.
func (m Model) laying() string {
	f := m.Design.Frame
	if f.Top.Outline == design.AsFrame {
		return layText.With(m.length(f.Top.Overhang))
	}
	grains := [...][2]text{design.Rectangle: {alongFront, alongSides}, design.RegularFrame: {alongFirst, squareToFirst}}[f.Shape]
	grain, lay := assembly.Either(m.acrossGrain().X != 0, grains[1], grains[0]), layRimText
	over := m.overCorners()
	if slices.Max(over)-slices.Min(over) > piece.Slip {
		lay = layFirstText
	}
	return lay.With(grain.With(), m.length(over[0]))
}

// topOn adds how the top is put on; it reports whether there is one.
func (m Model) topOn(c *assembly.Card) bool {
	moves, _ := m.TopMoves()
	c.Text = []string{m.laying()}
	if f, ok := m.Screws(); ok {
		m.screwTop(c, f)
	} else if m.Buttons() > 0 {
		c.Figures = append(c.Figures, templates.Reading{Name: buttonsReading.With(), Value: m.buttonsOnEach()})
		c.Read(screwReading, measure.Length(m.screw()))
		m.pilots(c, m.screw()-m.button().thick())
		c.Say(buttonText)
		c.Test = topTest.With()
	} else if !m.Design.Frame.Top.None {
		c.Say(freeText)
		c.Test = freeTest.With()
	} else {
		return false
	}
	c.Read(movesReading, measure.Length(moves))
	return true
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
