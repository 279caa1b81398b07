package assembly

import "rodsheet/templates/wording"

const (
	finishTick       wording.Text = "piece"
	finishBare       wording.Text = "Finish by its data sheet, a trial on an offcut first; hidden faces too, or the wood cups"
	finishText                    = finishBare + "."
	finishScrewed                 = finishBare + ": what is screwed on comes off for it."
	planHeading      wording.Text = "Plan, from above"
	elevationHeading wording.Text = "Elevation, from the front"
	cornerHeading    wording.Text = "From above, at a corner"

	gaugeReading      wording.Text = "gauge, off square"
	bevelReading      wording.Text = "bevel"
	gaugeBevelReading wording.Text = "gauge, bevel"
	offSquareReading  wording.Text = "off square"

	bladeLabel wording.Text = "blade"
	fenceLabel wording.Text = "rip fence"
	tiltLabel  wording.Text = "tilt %s"
	leanLabel  wording.Text = "top leans"
)

var finishCard = CardText{Heading: "Sand and finish", Test: "Light from the side shows no scratch across the grain.",
	Text:    "Sand with the grain, one hundred and twenty grit, one hundred and eighty, then two hundred and forty, and ease every edge that a hand meets.",
	Caution: "Dust mask; rags soaked in finish can catch fire by themselves: hang them out flat or keep them under water."}
