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
	"rodsheet/templates/piece/drawings"
	"rodsheet/templates/piece/kind"
	"rodsheet/templates/piece/shop"
)

// A button is a block whose tongue goes into a groove of an apron, on its frame side; its
// screw draws it up to the top. Its sizes are plumb and level, in mm.
type button struct {
	below, high, deep float64 // the groove: from the top of the apron, on and square to its frame side
	step              float64 // from the upper face of the button to that of its tongue
	tongue, reach     float64 // how thick and long the tongue is
	wide, long        float64 // of the button, its tongue with it
}

// buttonsOnEach says how many buttons an apron takes, of each sort where they differ.
func (m Model) buttonsOnEach() string {
	rails := m.sorts(m.Rows[0])
	if n := fixings(rails[0]); !slices.ContainsFunc(rails, func(r Rail) bool { return fixings(r) != n }) {
		return count.With(n)
	}
	var out []string
	for k, r := range rails {
		out = append(out, buttonsOf.With(m.sortName(m.Rows[0], k), count.With(fixings(r))))
	}
	return strings.Join(out, "; ")
}

// thick is that of the button.
func (b button) thick() float64 { return b.step + b.tongue }

// button returns that which serves all aprons.
//
// In an apron that leans by a the groove rises from its mouth: its upper arris lies
// below·cos a under the top, and of its plumb height high/cos a a level tongue loses reach·tan a.
// Where the apron leans inward the groove falls, and the tongue's tip touches lower by that.
// The tongue is drawn out by half of what the top moves, or pushed in.
func (m Model) button() button {
	u := m.Design.Unit
	fine, coarse := u.Round(0.5, 1.0/64), u.Round(1, 1.0/32)
	down := func(mm, step float64) float64 { return math.Floor(mm/step+1e-9) * step }
	below, high, least, bite := shop.ButtonGroove(u)
	size, _ := m.TopSize()
	moves := size.Width * shop.TopShare(m.Design)
	b := button{below: below, high: high, deep: math.Max(least, -down(-moves-bite, coarse))}
	b.wide, b.long = shop.ButtonSize(u)
	b.reach = b.deep - coarse
	lean, under := 0.0, math.Inf(1)
	for _, r := range m.Rows[0].Rails {
		a := math.Atan2(-r.In.Z, r.Up.Z)
		lean = math.Max(lean, math.Abs(a))
		under = math.Min(under, below*math.Cos(a)+math.Max(0, -b.reach*math.Tan(a)))
	}
	b.step = -down(-under, fine) - fine
	b.tongue = down(high/math.Cos(lean)-b.reach*math.Tan(lean)-fine/2, fine)
	return b
}

// leastTongue in mm is the thinnest that a button holds by (common practice, no source).
func leastTongue(u measure.Unit) float64 { return u.Round(3, 1.0/8) }

// buttonEdge is how near the screw of a button comes to the rim of the top. It stands in the
// middle of what the button has beyond its tongue.
func (m Model) buttonEdge() float64 {
	var out []geometry.Point
	b, plan := m.button(), func(v solid.Vec) geometry.Point { return geometry.Pt(v.X, v.Y) }
	for _, r := range m.Rows[0].Rails {
		along := plan(r.Along)
		mid := plan(r.Ends[left].Mouth[2].Lerp(r.Ends[right].Mouth[2], 0.5)).Sub(m.sides[r.Side].out.Mul((b.long - b.reach) / 2))
		for _, at := range places(r) {
			out = append(out, mid.Add(along.Mul(at)))
		}
	}
	return m.TopShape().Inside(out...)
}

// grooveSpare returns the groove that has least to spare for its buttons: how long it is, and
// what they take of it, from the first to the last and as far as the top takes them along it.
func (m Model) grooveSpare(b button) (long, taken float64) {
	spare := math.Inf(1)
	for _, r := range m.sorts(m.Rows[0]) {
		from, to := r.grooveEnds(b)
		at := places(r)
		apart := at[len(at)-1] - at[0] // the outermost two
		has, wants := math.Max(0, to.Sub(from).Dot(r.Along)), b.wide+apart*(1+shop.TopShare(m.Design))
		if has-wants < spare {
			spare, long, taken = has-wants, has, wants
		}
	}
	return long, taken
}

// buttonChecks ask whether the groove leaves enough of the aprons, and room for a tongue, and
// whether the screws are clear of the rim.
func (m Model) buttonChecks() []kind.Check {
	if m.Buttons() == 0 {
		return nil
	}
	own := m
	own.Design.Unit = m.Design.Written // by the round sizes of the file it is judged
	edge := own.buttonEdge()
	u, b := m.Design.Unit, m.button()
	long, taken := own.grooveSpare(own.button())
	grade := func(mm, least float64) kind.Grade {
		if mm < least-piece.Slip {
			return m.thin(mm)
		}
		return kind.Pass
	}
	// Round sizes hang on the unit, so the first two have no figure.
	return []kind.Check{
		texts.Found("aprons.behind-groove", grade(m.Rows[0].Of.Thickness-b.deep, checks.LeastBeside(u))),
		texts.Found("aprons.tongue", grade(b.tongue, leastTongue(u))),
		texts.AtLeast(u, "aprons.groove-long", long, taken, kind.Fail),
		texts.AtLeast(u, "aprons.button-edge", edge, checks.LeastBeside(own.Design.Unit), m.thin(edge)),
	}
}

// groove is the section of the groove under the top of an apron, in the frame of its
// section: x from the outer side inward, y up that side from its top.
func (r Rail) groove(b button) []geometry.Point {
	t, high := r.Row.Of.Thickness, r.topAt(r.Row.Of.Thickness)-b.below
	return geometry.Box(t-b.deep, high-b.high, t, high).Corners()
}

// topAt is how much higher the top is so deep below the outer side than on it.
func (r Rail) topAt(deep float64) float64 { return -deep * r.In.Z / r.Up.Z }

// grooveCard is the groove for the buttons, made before anything is glued.
func (m Model) grooveCard(row *Row) templates.Card {
	b := m.button()
	c := grooveCard.Card(m.Design.Unit, m.railTicks(row), m.groovePicture(row.Rails[0], b))
	c.Text, c.Test = []string{grooveText.With(m.length(row.Of.Thickness))}, grooveCard.Test.With(m.length(b.tongue))
	c.Set(grooveBelow, measure.Length(b.below))
	c.Read(grooveHigh, measure.Length(b.high))
	c.Set(grooveDeep, measure.Length(b.deep))
	c.Figures = append(c.Figures,
		templates.Reading{Name: buttonReading.With(), Value: by(by(m.bare(b.long), m.bare(b.wide)), m.length(b.thick()))},
		templates.Reading{Name: tongueReading.With(), Value: by(m.bare(b.reach), m.length(b.tongue))})
	c.Read(stepReading, measure.Length(b.step))
	shank, _ := shop.Bits(m.Design.Unit)
	c.Read(boreReading, measure.Length(shank))
	c.Say(makeButtons)
	return c.Card
}

// groovePicture is the upper part of an apron, cut through, its top level.
func (m Model) groovePicture(r Rail, b button) templates.Picture {
	t := r.Row.Of.Thickness
	level := geometry.Rotate(-math.Atan2(r.topAt(t), t))
	low := -2.5 * (b.below + b.high)
	body := level.ApplyAll([]geometry.Point{geometry.Pt(0, low), geometry.Pt(t, low), geometry.Pt(t, r.topAt(t)), geometry.Pt(0, 0)})
	groove := level.ApplyAll(r.groove(b))
	p := drawings.NewSketch()
	p.Heading = grooveView.With()
	p.Block(templates.Light, body...)
	p.Line(templates.Cut, geometry.Closed(groove)...)
	p.Lines(templates.Waste, geometry.Hatch(groove, math.Pi/4, 1.5))
	p.Label(body[2], body[3], label("top"))
	p.Label(body[3], body[0], label("outer-side"))
	p.Label(body[1], groove[1], label("frame-side"))
	return p.Picture
}

// planed is planing parts to one thickness.
func (m Model) planed(parts text, thick float64, words text, ticks []templates.Tick) templates.Card {
	c := stockCard.Card(m.Design.Unit, ticks)
	c.Heading = stockCard.Heading.With(parts.With())
	c.Set(thicknessReading, measure.Length(thick))
	c.Say(words)
	return c.Card
}

// topStock is gluing, planing and sawing the top.
func (m Model) topStock(sheets []templates.View) templates.Card {
	size, _ := m.TopSize()
	c := topStockCard.Card(m.Design.Unit, assembly.Ticked(topBoardsTick, m.TopBoards()+m.Design.Wood.Spares))
	switch outline := m.Design.Frame.Top.Outline; {
	case outline == design.RoundOnFrame:
		c.Say(roundTopText)
		c.Test = rimTest.With()
	case outline == design.OvalOnFrame:
		c.Say(ovalTopText)
		c.Test = rimTest.With()
	case len(m.sides) != 4:
		c.Text = append(c.Text, topOutlineText.With(count.With(len(m.sides))))
	}
	jointed := piece.WholeUp(m.Design.Unit, size.Width/float64(m.TopBoards()))
	c.Figures = append(c.Figures, templates.Reading{Name: boardsReading.With(), Value: by(count.With(m.TopBoards()), m.length(jointed))})
	c.Set(thicknessReading, measure.Length(size.Thickness))
	c.Figures = append(c.Figures, templates.Reading{Name: topSizeReading.With(), Value: by(m.bare(size.Length), m.length(size.Width)), Write: true})
	c.Templates = sheets
	switch t := m.TopShape(); {
	case t.Diameter > 0:
		c.Setup = []templates.Picture{templates.TopPlan(t)}
		c.Read(rimReading, measure.Length(t.Diameter/2))
	case t.Clip+t.Round > 0:
		c.Setup = []templates.Picture{templates.TopPlan(t)}
		c.Read(cornerReadings[m.Design.Frame.Top.Corner], measure.Length(t.Clip+t.Round))
		c.Say(topCornersText)
	}
	return c.Card
}
