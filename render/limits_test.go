package render

import (
	"errors"
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
			p, err := Lay(job, l)
			if err != nil {
				t.Fatal(err)
			}
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
		if !ok || bound.Figure != "job.sheets" && bound.Figure != "job.tiles" || bound.Hint != "paper.larger" {
			t.Errorf("%s: %v", d.Name, err)
		}
	}
}
