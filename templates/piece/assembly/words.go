package assembly

import "rodsheet/templates/wording"

const (
	coverHeading     wording.Text = "Cover"
	woodHeading      wording.Text = "Wood and buying"
	recordHeading    wording.Text = "Figures and checks"
	planHeading      wording.Text = "Plan, from above"
	elevationHeading wording.Text = "Elevation, from the front"
	cornerHeading    wording.Text = "From above, at a corner"

	bladeLabel     wording.Text = "blade"
	stopLabel      wording.Text = "stop"
	fenceLabel     wording.Text = "rip fence"
	offSquareLabel wording.Text = "%s off square"
	tiltLabel      wording.Text = "tilt %s"
)
