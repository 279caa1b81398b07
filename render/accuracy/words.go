package accuracy

import "rodsheet/templates/wording"

func say(t wording.Text, args ...any) string { return t.With(args...) }

// How far a template is to be trusted.
const (
	byPrinting       wording.Text = "printing"
	byPaper          wording.Text = "paper"
	byPencil         wording.Text = "pencil line"
	bySeams          wording.Text = "seams"
	roundMillimetres wording.Text = "%.1f mm"
	roundInches      wording.Text = "%.2f in"
	fractionOfInch   wording.Text = "%d/%d in"
	goodTo           wording.Text = "good to ±%s (%s)"
	goodToAlike      wording.Text = "good to ±%.2f°, ±%s (%s)"
	goodToBoth       wording.Text = "good to ±%.2f° (%s), ±%s (%s)"

	heading   wording.Text = "How true it is"
	explained wording.Text = "Under each template: how far off angle and length may be in 95 of 100 cases, and the main cause. " +
		"Printing: %s. Paper: 0.2 %% along its grain, 0.4 %% across. " +
		"Pencil line: %s.%s"
	unmeasured wording.Text = "0.5 %% unmeasured, a quarter of that measured"
	asMeasured wording.Text = "%s in %s, as measured"
	seamEnds   wording.Text = " Seams: %s at either end of each, so that a sheet may lie crooked and turn all beyond it."
)
