package aprons

import (
	"math"

	"rodsheet/geometry"
	"rodsheet/geometry/measure"
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
		wraps = append(wraps, assembly.Views(hands)...)
		out.Drawings = append(out.Drawings, hands...)
		if row.Of.Arch > 0 || s.Full {
			out.Drawings = append(out.Drawings, m.outlineOf(r, k))
		}
		out.Cards = append(out.Cards, m.railCards(row, k, r, assembly.Views(hands))...)
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
	shoulder := shoulderCard.Card(m.Design.Unit, ticks)
	shoulder.Heading = shoulderCard.Heading.With(name)
	for _, p := range r.Passes() {
		switch p.ID {
		case "top":
			c := ripCard.Card(m.Design.Unit, ticks, m.ripPicture(p, m.deep(row, k), blank.Thickness))
			c.Heading, c.Text = ripCard.Heading.With(name), []string{ripText.With(m.lying(r.Passes()[0]), m.lying(p))}
			if math.Abs(p.Saw.Tilt) > least {
				c.Say(otherFence)
			}
			c.Set(leaning(p), tilted(p))
			c.Set(fenceReading, measure.Length(m.deep(row, k)))
			c.Figures, c.Templates = append(c.Figures, m.standIns(p)...), m.viewsOf(p)
			out = append(out, c.Card)
		case "end":
			c := m.endsCard(r, p, blank.Width)
			c.Heading, c.Ticks = endCard.Heading.With(name), ticks
			out = append(out, c)
		case "shoulder-outer":
			shoulder.Figures = m.cutReadings(p)
			shoulder.Set(cheekReading, measure.Length(p.Deep))
			shoulder.Read(shouldersReading, measure.Length(2*p.At))
			shoulder.Setup = append(shoulder.Setup, m.shoulderCut(r, p, blank.Width).Picture(m.fromAbove(p)))
			shoulder.Text = shoulderWords(p)
			shoulder.Templates = append(m.viewsOf(p), wraps...)
		case "shoulder-frame":
			shoulder.Setup = append(shoulder.Setup, m.shoulderCut(r, p, blank.Width).Picture(m.fromAbove(p)))
		}
	}
	return append(out, shoulder.Card)
}

// shoulderWords say how a rail lies for its shoulders: the left one with its underside against
// the gauge, or with its top where else the blade would lean the other way.
func shoulderWords(p Pass) []string {
	edge, other := underEdge, topEdge
	switch leaning(p) {
	case tiltReading:
		return []string{uprightText.With()}
	case tiltAwayReading:
		edge, other = other, edge
	}
	return []string{shoulderText.With(edge.With(), other.With())}
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
		Kerf: m.Design.Saw.Kerf, Down: m.lying(p), Unit: m.Design.Unit, Broken: true, Tilted: leaning(p) != tiltReading,
	}
	second := first
	second.OffSquare = -swing
	c := endCard.Card(m.Design.Unit, nil)
	c.Text = []string{endText.With(m.lying(p), edges[0].With(), edges[1].With(), ends[0].With(), ends[1].With())}
	c.Test, c.Figures, c.Templates = endCard.Test.With(across), m.cutReadings(p), m.viewsOf(p)
	if reach := m.Design.Saw.StopReach; reach > 0 && stop > reach+piece.Slip {
		c.Say(atLine)
		c.Set(endsReading, measure.Length(2*p.At))
	} else {
		second.Board = []geometry.Point{geometry.Pt(-stop, 0), geometry.Pt(30, 0), geometry.Pt(30, wide), geometry.Pt(wide*math.Tan(swing)-stop, wide)}
		second.Stop, second.Broken = stop, false
		c.Say(atStop)
		c.Set(stopReading, measure.Length(stop))
	}
	if math.Abs(p.Saw.Tilt) > least {
		c.Text = append(c.Text, otherEnd.With(ends[1].With(), edges[0].With()))
	}
	for i, view := range []assembly.Crosscut{first, second} {
		c.Setup = append(c.Setup, view.Picture(gaugeFromAbove.With(ends[i].With(), leanWords[leaning(p)].With())))
	}
	return c.Card
}

// tenonCard is the cheeks, edges and haunches of all tenons of a row.
func (m Model) tenonCard(row *Row, wraps []templates.View) templates.Card {
	outer, _ := row.Cheeks()
	c := tenonCard.Card(m.Design.Unit, m.railTicks(row), m.jointView(row))
	c.Templates = wraps
	c.Say(assembly.Either(row.Joint == design.Bridled, bridleText, tenonText))
	c.Set(tenonReading, measure.Length(row.Tenon))
	c.Read(cheekReading, measure.Length(outer))
	c.Read(lowerReading, measure.Length(row.Of.LowerCut))
	c.Read(tenonLongReading, measure.Length(m.tenonLong(row)))
	haunch(&c, row)
	return c.Card
}

// haunch reads what is off the tenon at its top, and what stays there.
func haunch(c *assembly.Card, row *Row) {
	if row.Upper > 0 {
		c.Read(upperReading, measure.Length(row.Upper))
	}
	if row.Haunch() > 0 {
		c.Read(haunchReadings[row.Joint], measure.Length(row.Haunch()))
	}
}

// archCard is sawing the underside to its template.
func (m Model) archCard(row *Row) templates.Card {
	c := archCard.Card(m.Design.Unit, m.railTicks(row))
	c.Read(riseReading, measure.Length(row.Of.Arch))
	for k, r := range m.sorts(row) {
		c.Setup = append(c.Setup, m.shape(r, k))
		c.Templates = append(c.Templates, m.outlineOf(r, k).View)
	}
	return c.Card
}
