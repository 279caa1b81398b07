package live

import (
	"context"
	"html/template"

	"rodsheet/geometry/measure"
	"rodsheet/templates/wording"
)

// Show fills the page with all that it shows of a design before any script runs: every
// size, every list, and whose plan it is.
func (p *Page) Show(d *Desk, r Request) {
	w, err := d.solve(r.Text)
	if err != nil {
		return
	}
	if u, err := measure.ParseUnit(r.Print.Units); err == nil {
		if w, err = w.in(u); err != nil {
			return
		}
	}
	p.Title, p.Shown = w.design.Title, map[string]template.HTML{}
	plan := w.design.Sizes[0].Plan
	for _, one := range []struct {
		words wording.Text
		what  string
	}{{planBy, plan.Maker}, {planOf, plan.Date}, {planRevision, plan.Revision}, {planNote, plan.Note}} {
		if one.what != "" {
			p.Notes = append(p.Notes, one.words.With(one.what))
		}
	}
	r.Look = Look{Aside: 0.5, Above: 0.5}
	for i, size := range w.design.Sizes {
		a := newAsked(context.Background(), d, r, r.Text, w, i)
		for name, draw := range elements() {
			switch name {
			case "form", "sheets":
			case "corner", "front", "plan", "checks", "figures":
				if len(w.design.Sizes) > 1 {
					p.Shown[name] += template.HTML("<h3>" + template.HTMLEscapeString(size.Size) + "</h3>")
				}
				p.Shown[name] += draw(a)
			default:
				if i == 0 {
					p.Shown[name] = draw(a)
				}
			}
		}
	}
}
