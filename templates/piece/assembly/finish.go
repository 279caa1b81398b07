package assembly

import "rodsheet/templates"

// finish is the last card of every kind.
func finish() templates.Card {
	return templates.Card{
		Heading: finishCard.With(), Text: []string{sandText.With(), finishText.With()},
		Test: finishTest.With(), Caution: finishCaution.With(),
	}
}
