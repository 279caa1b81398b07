package aprons

import (
	"math"

	"rodsheet/geometry"
	"rodsheet/templates"
	"rodsheet/templates/piece"
	"rodsheet/templates/piece/assembly"
	"rodsheet/templates/piece/design"
)

// railEnvelope is the rails of one row: edges, ends, shoulders, tenons, and their
// templates.
func (m Model) railEnvelope(row *Row, s templates.Setting) templates.Section {
	var out templates.Section
	var wraps []templates.View
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
	if f, ok := m.Screws(); ok && row.Kind == Aprons {
		out.Cards = append(out.Cards, m.screwCard(row, f))
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
			c := m.endsCard(r, p, blank.Width)
			c.Heading, c.Ticks = endCard.With(name), ticks
			out = append(out, c)
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

// endsCard is both ends of a rail. First comes the one with the shorter edge against the
// gauge: then the tip of what is sawn lies at the gauge for the other, where a stop meets it.
func (m Model) endsCard(r Rail, p Pass, wide float64) templates.Card {
	stop, longTop := r.stop(p)
	ends, edges := [...]text{leftEndWord, rightEndWord}, [...]text{topEdge, underEdge}
	if longTop {
		edges[0], edges[1] = edges[1], edges[0]
	}
	// The left end has its underside against the gauge, turned over its top.
	if leftAgainst := map[bool]text{false: underEdge, true: topEdge}[p.Turned]; leftAgainst != edges[0] {
		ends[0], ends[1] = ends[1], ends[0]
	}
	across, swing := m.length(2*p.At), math.Abs(p.Saw.OffSquare)
	first := assembly.Crosscut{
		Board: geometry.Box(-shown, 0, 30+wide*math.Tan(swing), wide).Corners(), OffSquare: swing,
		Kerf: m.Design.Saw.Kerf, Down: m.lying(p), Unit: m.Design.Unit,
	}
	second := first
	second.OffSquare = -swing
	c := templates.Card{
		Text: []string{endText.With(m.lying(p), edges[0].With(), edges[1].With(), ends[0].With(), ends[1].With())}, Test: endTest.With(across), Caution: sawCaution.With(),
		Figures: m.cutReadings(p), Templates: m.viewsOf(p),
	}
	if reach := m.Design.Saw.StopReach; reach > 0 && stop > reach+piece.Slip {
		c.Text = append(c.Text, atLine.With())
		c.Figures = append(c.Figures, templates.Reading{Name: endsReading.With(), Value: across, Write: true})
	} else {
		second.Board = []geometry.Point{geometry.Pt(-stop, 0), geometry.Pt(30, 0), geometry.Pt(30, wide), geometry.Pt(wide*math.Tan(swing)-stop, wide)}
		second.Stop = stop
		c.Text = append(c.Text, atStop.With())
		c.Figures = append(c.Figures, templates.Reading{Name: stopReading.With(), Value: m.length(stop), Write: true})
	}
	for i, view := range []assembly.Crosscut{first, second} {
		c.Setup = append(c.Setup, view.Picture(gaugeFromAbove.With(ends[i].With(), leanWords[leaning(p)].With())))
	}
	return c
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
			{Name: tenonLongReading.With(), Value: m.length(m.tenonLong(row))},
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
