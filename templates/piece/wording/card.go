package wording

import (
	"rodsheet/templates"
	"rodsheet/templates/piece/shop"
)

// Card returns all that is written on a card.
func Card(plan shop.Plan, c shop.Card) templates.Card {
	s := speakerFor(plan.Pieces)
	out := templates.Card{Number: c.Number, Heading: s.note(c.What)}
	for _, step := range c.Steps {
		for _, b := range step.Parts {
			out.Ticks = append(out.Ticks, templates.Tick{Text: Part(b.Part) + " " + s.count(b), Boxes: b.Count + b.Spares + b.Tests})
		}
		out.Text = append(out.Text, s.all(step.Then.All())...)
		if out.Test == "" {
			out.Test = s.note(step.Test)
		}
		if out.Caution == "" && step.Caution != "" {
			out.Caution = noteTexts[step.Caution].With()
		}
	}
	for _, t := range c.Templates {
		out.Templates = append(out.Templates, templates.View{Part: t.Part, Face: t.Face})
	}
	return out
}
