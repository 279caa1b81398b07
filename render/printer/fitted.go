package printer

import (
	"fmt"
	"math"

	"rodsheet/geometry/measure"
	"rodsheet/templates/wording"
)

// A FittedError says that the sheet was not printed at actual size.
type FittedError struct {
	Record Record
	Share  float64 // of the true size; 0 where it is none that is known
}

func (e *FittedError) Error() string {
	across, along := e.Record.Stretch()
	sides := fmt.Sprintf("both sides are short: %.1f %% across, %.1f %% along", 100*across, 100*along)
	if e.Share == 0 {
		return fmt.Sprintf("both sides are off alike: %.1f %% across, %.1f %% along", 100*across, 100*along)
	}
	return fmt.Sprintf(`%s; %.1f %% looks like the print dialog's "fit to page"`, sides, 100*e.Share)
}

// Words returns Error, and what to do about it.
func (e *FittedError) Words(measure.Unit) (line, hint string) {
	return e.Error(), "print the sheet again at 100 %, actual size, and measure that"
}

// A SideError says that a side of the printed rectangle is further from its drawn
// length than any printer strays.
type SideError struct {
	Bound *measure.BoundError
	Drawn float64          // mm
	Near  measure.Quantity // the side that was read without its unit; zero for none
}

func (e *SideError) Error() string { return e.Bound.Error() }

// Words says of the limit which share of the drawn length it is.
func (e *SideError) Words(u measure.Unit) (line, hint string) {
	hint = wording.Hint(e.Bound.Hint)
	if e.Near.Value != 0 {
		other := measure.Millimetre
		if u == other {
			other = measure.Inch
		}
		hint = fmt.Sprintf("that is near %s: give the length its unit", e.Near.Text(other))
	}
	share := fmt.Sprintf("%.0f %% of %s", 100*e.Bound.Limit.Value/e.Drawn, measure.Length(e.Drawn).Text(u))
	return wording.Bound(e.Bound, share, u), hint
}

// fittings returns the sizes to which print dialogs bring a page: A4 to the
// height of letter paper, letter to the width of A4, and a page inside margins
// of about 4 mm, which is common practice without a source.
func fittings() []float64 { return []float64{279.4 / 297, 210 / 215.9, 0.96} }

// fitted reports whether both sides are off alike in the way of a print that
// was scaled: by a known share, or by any that is past the limit.
func (r Record) fitted() (share float64, ok bool) {
	const near, alike = 0.005, 0.005
	across, along := r.Stretch()
	if !(across > 0.5 && along > 0.5 && across < 2 && along < 2) || math.Abs(across-along) > 2*alike {
		return 0, false
	}
	mean := (across + along) / 2
	best := near
	for _, f := range fittings() {
		if d := math.Abs(mean - f); d <= best && math.Abs(across-along) <= alike {
			best, share = d, f
		}
	}
	return share, share > 0 || math.Abs(mean-1) > mostStretch
}
