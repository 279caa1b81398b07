package render

import (
	"testing"

	"rodsheet/geometry"
	"rodsheet/geometry/measure"
	"rodsheet/render/page"
	"rodsheet/templates"
	"rodsheet/templates/piece/checks"
	"rodsheet/templates/piece/drawings"
	"rodsheet/templates/piece/kind"
)

// On the sheet of names no leader runs across another, and the number, which is pencilled on a
// stretcher and on its leg, stands on them.
func TestNamesAreToldApart(t *testing.T) {
	for _, name := range []string{"window-seat", "plant-stand", "hall-table"} {
		for _, u := range []measure.Unit{measure.Millimetre, measure.Inch} {
			pieces := solved(t, exampleSizes(t, name), u)
			for _, paper := range []Paper{papers()[0], papers()[3]} {
				l := DefaultLayout(u, paper)
				job := must(drawings.Pack(checks.Examine(pieces), kind.Options{}, templates.Setting{Unit: u, Clear: l.Clear()}))(t)
				p, found := namesSheet(must(Lay(job, l))(t).Document())
				if !found {
					t.Fatalf("%s: no sheet names the slot bottom", name)
				}
				var leaders []geometry.Segment
				for _, s := range p.Strokes {
					if s.Line == leader {
						leaders = append(leaders, chain(s.Points)...)
					}
				}
				for i, a := range leaders {
					for _, b := range leaders[:i] {
						if crossing(a, b) {
							t.Errorf("%s in %v on %s: the leaders %.1f and %.1f cross", name, u, paper.Name, a, b)
						}
					}
				}
				numbers := 0
				for _, x := range p.Texts {
					if x.String != "1" {
						continue
					}
					numbers++
					if !onAreas(p.Areas, letters(x)) {
						t.Errorf("%s in %v on %s: the number at %.1f stands off its part", name, u, paper.Name, x.At)
					}
				}
				if numbers != 2 {
					t.Errorf("%s in %v on %s: %d numbers, want one on a stretcher and one on a leg", name, u, paper.Name, numbers)
				}
			}
		}
	}
}

// namesSheet finds the sheet of names by the face that no other names.
func namesSheet(d page.Document) (page.Page, bool) {
	for _, p := range d.Pages {
		for _, x := range p.Texts {
			if x.String == "slot bottom" {
				return p, true
			}
		}
	}
	return page.Page{}, false
}

// onAreas reports whether all corners lie on areas.
func onAreas(areas []page.Area, corners []geometry.Point) bool {
	for _, c := range corners {
		on := false
		for _, a := range areas {
			on = on || geometry.Meets(geometry.Segment{A: c, B: c}, a.Points)
		}
		if !on {
			return false
		}
	}
	return true
}
