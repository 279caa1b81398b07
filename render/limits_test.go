package render

import (
	"errors"
	"rodsheet/geometry"
	"testing"

	"rodsheet/geometry/measure"
	"rodsheet/templates"
)

// A job that may take as many sheets as it takes is printed, and one that may
// not is refused with that number.
func TestAsManySheetsAsItTakes(t *testing.T) {
	for _, plain := range []bool{false, true} {
		for _, d := range []templates.Drawing{boxOutline(100, 80), boxOutline(800, 600), boxOutline(3000, 30), roundOutline(600), roundOutline(1200), roundOutline(4000)} {
			l := a4()
			l.Plain = plain
			job := templates.Job{Name: "job", Title: "job", Sections: []templates.Section{{Drawings: []templates.Drawing{d}}}}
			l.MaxSheets = 1000
			p := must(Lay(job, l))(t)
			n := p.Count()
			for _, l.MaxSheets = range []int{n, n + 1} {
				if p, err := Lay(job, l); err != nil || p.Count() != n {
					t.Errorf("%s: %d sheets allowed, of %d: %v", d.Name, l.MaxSheets, n, err)
				}
			}
			if l.MaxSheets = n - 1; l.MaxSheets == 0 {
				continue
			}
			var bound *measure.BoundError
			if _, err := Lay(job, l); !errors.As(err, &bound) || bound.Figure != "job.sheets" || bound.Value.Value != float64(n) {
				t.Errorf("%s: of %d sheets %d allowed: %v", d.Name, n, l.MaxSheets, err)
			}
		}
	}
}

// Render knows paper and no flags.
func TestHintsNameNoFlags(t *testing.T) {
	l := a4()
	l.MaxSheets = 3
	for _, d := range []templates.Drawing{boxOutline(800, 600), boxOutline(1e5, 1e5), boxOutline(500, 200)} {
		_, err := Lay(templates.Job{Name: "job", Title: "job", Sections: []templates.Section{{Drawings: []templates.Drawing{d}}}}, l)
		bound, ok := err.(*measure.BoundError)
		if !ok || bound.Figure != "job.sheets" && bound.Figure != "job.least-sheets" || bound.Hint != "paper.larger" {
			t.Errorf("%s: %v", d.Name, err)
		}
	}
}

// There is one limit, that of sheets. A job that is refused unplanned would have
// taken more of them than were allowed; one that takes no more is never refused.
func TestRefusedUnplannedTakesTooMany(t *testing.T) {
	for _, size := range []geometry.Point{{X: 900, Y: 700}, {X: 2000, Y: 20}, {X: 3000, Y: 2500}, {X: 5200, Y: 4100}} {
		d := boxOutline(size.X, size.Y)
		l := a4()
		l.MaxSheets = MostSheets
		all := must(Lay(jobOf(templates.Section{Drawings: []templates.Drawing{d}}), l))(t)
		for _, most := range []int{all.Count(), all.Count() - 1, 3} {
			l.MaxSheets = most
			_, err := Lay(jobOf(templates.Section{Drawings: []templates.Drawing{d}}), l)
			var bound *measure.BoundError
			refused := errors.As(err, &bound)
			if refused != (all.Count() > most) {
				t.Errorf("%v takes %d sheets of %d: %v", size, all.Count(), most, err)
			}
			if refused && (bound.Figure == "job.least-sheets" && bound.Value.Value > float64(all.Count()) || bound.Limit.Value != float64(most)) {
				t.Errorf("%v takes %d sheets of %d and is refused for %v", size, all.Count(), most, err)
			}
		}
	}
}
