package assembly

import (
	"rodsheet/geometry/lists"
	"rodsheet/geometry/measure"
	"rodsheet/templates"
	plain "rodsheet/templates/wording"
)

// A CardText is what a card says whatever its figures are.
type CardText struct{ Heading, Text, Test, Caution plain.Text }

// A Card is a card that is being put together, its figures in one unit.
type Card struct {
	templates.Card
	unit measure.Unit
}

// Card begins a card: what is ticked off on it, and how the tool stands. Texts with verbs
// are left to whoever has what fills them.
func (t CardText) Card(u measure.Unit, ticks []templates.Tick, setup ...templates.Picture) Card {
	c := templates.Card{Heading: whole(t.Heading), Ticks: ticks, Setup: setup, Test: whole(t.Test), Caution: whole(t.Caution)}
	if text := whole(t.Text); text != "" {
		c.Text = []string{text}
	}
	return Card{c, u}
}

// Read adds a figure, Set one that a tool is set to: it has room to write. Of fills its name.
func (c *Card) Read(name plain.Text, q measure.Quantity, of ...any) {
	c.Figures = append(c.Figures, templates.Reading{Name: name.With(of...), Value: q.Text(c.unit)})
}

func (c *Card) Set(name plain.Text, q measure.Quantity, of ...any) {
	c.Figures = append(c.Figures, templates.Reading{Name: name.With(of...), Value: q.Text(c.unit), Write: true})
}

// Say adds sentences.
func (c *Card) Say(texts ...plain.Text) {
	for _, t := range texts {
		c.Text = append(c.Text, t.With())
	}
}

// Ticked is one kind of part to tick off.
func Ticked(name plain.Text, boxes int) []templates.Tick {
	return []templates.Tick{{Text: name.With(), Boxes: boxes}}
}

// Views are those of drawings.
func Views(all []templates.Drawing) []templates.View {
	return lists.Map(all, func(d templates.Drawing) templates.View { return d.View })
}

// finish is the last card of every kind, for one piece of every size; a top that is screwed on
// comes off for it.
func finish(sizes int, screwed bool) templates.Card {
	c := finishCard.Card(measure.Millimetre, Ticked(finishTick, sizes))
	c.Say(Either(screwed, finishScrewed, finishText))
	return c.Card
}
