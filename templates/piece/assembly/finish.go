package assembly

import "rodsheet/templates"

// finish is the last card of every kind, for one piece of every size.
func finish(sizes int) templates.Card {
	return templates.Card{
		Heading: finishCard.With(), Ticks: []templates.Tick{{Text: finishTick.With(), Boxes: sizes}}, Text: []string{sandText.With(), finishText.With()},
		Test: finishTest.With(), Caution: finishCaution.With(),
	}
}
