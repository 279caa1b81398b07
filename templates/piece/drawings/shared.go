package drawings

import (
	"math"
	"slices"

	"rodsheet/geometry"
	"rodsheet/templates"
	"rodsheet/templates/piece"
)

// A drawer draws one kind of template for one size of a design.
type drawer func(piece.Piece, templates.Setting) (templates.Section, error)

// shared draws every size and keeps once what several of them have alike.
func (k drawer) shared(pieces []piece.Piece, s templates.Setting) (templates.Section, error) {
	jobs := make([]templates.Section, len(pieces))
	for i, p := range pieces {
		job, err := k(p, s)
		if err != nil {
			return templates.Section{}, err
		}
		jobs[i] = job
	}
	return Shared(piece.Sizes(pieces), jobs), nil
}

// Shared returns what the named sizes have, once what several of them have alike.
func Shared(sizes []string, jobs []templates.Section) templates.Section {
	var out templates.Section
	for _, l := range piece.Lots(sizes, func(i int) []templates.Drawing { return jobs[i].Drawings }, alike) {
		l.What.Name = piece.WithSizes(l.What.Name, l.Sizes, len(sizes))
		if len(l.Sizes) == 1 && len(sizes) > 1 {
			l.What.View.Size = l.Sizes[0]
		}
		out.Drawings = append(out.Drawings, l.What)
	}
	out.Drawings = sideBySide(out.Drawings)
	for _, l := range piece.Lots(sizes, func(i int) []templates.Picture { return jobs[i].Pictures }, alikePictures) {
		l.What.Heading = piece.WithSizes(l.What.Heading, l.Sizes, len(sizes))
		if l.What.View != (templates.View{}) && len(l.Sizes) == 1 && len(sizes) > 1 {
			l.What.View.Size = l.Sizes[0]
		}
		out.Pictures = append(out.Pictures, l.What)
	}
	out.Panels = sharedPanels(sizes, func(i int) []templates.Panel { return jobs[i].Panels })
	return out
}

// sideBySide puts the sizes of one view next to each other.
func sideBySide(all []templates.Drawing) []templates.Drawing {
	view := func(d templates.Drawing) templates.View {
		d.View.Size = ""
		return d.View
	}
	at := map[templates.View]int{}
	for i, d := range all {
		if _, ok := at[view(d)]; !ok {
			at[view(d)] = i
		}
	}
	slices.SortStableFunc(all, func(a, b templates.Drawing) int { return at[view(a)] - at[view(b)] })
	return all
}

// alike reports whether two drawings would come out the same on paper.
func alike(a, b templates.Drawing) bool {
	return a.View == b.View && a.Name == b.Name && sameLabels(a.Labels, b.Labels) && sameStrokes(a.Strokes, b.Strokes)
}

// alikePictures reports it of two pictures.
func alikePictures(a, b templates.Picture) bool {
	return a.Heading == b.Heading && a.View == b.View && a.NoScale == b.NoScale && sameLabels(a.Lettering(), b.Lettering()) && sameStrokes(a.Strokes, b.Strokes)
}

func sameLabels(a, b []templates.Label) bool {
	return slices.EqualFunc(a, b, func(l, m templates.Label) bool {
		return l.ID == m.ID && l.Text == m.Text && near(l.On.A, m.On.A) && near(l.On.B, m.On.B)
	})
}

func sameStrokes(a, b []templates.Stroke) bool {
	return slices.EqualFunc(a, b, func(s, t templates.Stroke) bool {
		return s.Role == t.Role && slices.EqualFunc(s.Points, t.Points, near)
	})
}

// near reports whether two points are one on paper: within a thousandth of a
// millimetre.
func near(p, q geometry.Point) bool {
	const hair = 1e-3
	return math.Abs(p.X-q.X) <= hair && math.Abs(p.Y-q.Y) <= hair
}

// sharedPanels returns the panels of all sizes; of returns those of one. What
// several sizes have alike comes once, and its heading names them.
func sharedPanels(sizes []string, of func(i int) []templates.Panel) []templates.Panel {
	var out []templates.Panel
	for _, l := range piece.Lots(sizes, of, samePanel) {
		l.What.Heading = piece.WithSizes(l.What.Heading, l.Sizes, len(sizes))
		if l.What.Of != (templates.View{}) && len(l.Sizes) == 1 && len(sizes) > 1 {
			l.What.Of.Size = l.Sizes[0]
		}
		out = append(out, l.What)
	}
	return out
}

func samePanel(a, b templates.Panel) bool {
	return a.Heading == b.Heading && slices.Equal(a.Text, b.Text) &&
		slices.EqualFunc(a.Table, b.Table, func(r, s []string) bool { return slices.Equal(r, s) })
}
