package piece

import "rodsheet/templates/wording"

const (
	bothSizes wording.Text = "both sizes"
	allSizes  wording.Text = "all sizes"
	oneSize   wording.Text = "size %s"
	someSizes wording.Text = "sizes %s"
)
