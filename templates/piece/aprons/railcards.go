package aprons

import (
	"math"

	"rodsheet/templates"
	"rodsheet/templates/piece/design"
)

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
