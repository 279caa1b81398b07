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
	thousandths      wording.Text = "%.3f in"
	goodTo           wording.Text = "good to ±%s (%s)"
	goodToBoth       wording.Text = "good to ±%.2f° (%s), ±%s (%s)"

	heading   wording.Text = "how true it is"
	explained wording.Text = "Under each template: the worst angle and the whole length, in 95 of 100 cases, and in brackets what does most of it. " +
		"Printing: %s. Paper: 0.2 %% along its grain and 0.4 %% across with damp. " +
		"Pencil line: %s. Seams: %s. The figures hold whatever the paper does."
	unmeasured wording.Text = "0.5 %% unmeasured; measure the printer once and it is a quarter of that"
	asMeasured wording.Text = "%s in %s, as measured"
	seamEach   wording.Text = "%s each"
	seamEnds   wording.Text = "%s at either end of each, so that a sheet may lie crooked and turn all beyond it"
)
