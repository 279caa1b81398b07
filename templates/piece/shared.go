package piece

import (
	"math"
	"slices"
	"strings"

	"rodsheet/geometry"
	"rodsheet/templates"
)

// A kind draws one kind of template for one size of a design.
type kind func(Piece, templates.Setting) (templates.Job, error)

// shared draws every size and keeps once what several of them have alike.
func (k kind) shared(pieces []Piece, s templates.Setting) (templates.Job, error) {
	var out templates.Job
	jobs := make([]templates.Job, len(pieces))
	for i, p := range pieces {
		job, err := k(p, s)
		if err != nil {
			return out, err
		}
		jobs[i] = job
	}
	for _, l := range lots(pieces, func(i int) []templates.Drawing { return jobs[i].Drawings }, alike) {
		if words := sizeWords(l.sizes, len(pieces)); words != "" {
			l.what.Name += ", " + words
		}
		out.Drawings = append(out.Drawings, l.what)
	}
	for _, l := range lots(pieces, func(i int) []templates.Panel { return jobs[i].Panels }, samePanel) {
		out.Panels = append(out.Panels, ofSizes(l.what, l.sizes, len(pieces)))
	}
	return out, nil
}

// panelsOf is shared for panels alone.
func panelsOf(pieces []Piece, say func(Piece) []templates.Panel) []templates.Panel {
	var out []templates.Panel
	for _, l := range lots(pieces, func(i int) []templates.Panel { return say(pieces[i]) }, samePanel) {
		out = append(out, ofSizes(l.what, l.sizes, len(pieces)))
	}
	return out
}

// A lot is one thing and the sizes of the design that have it alike.
type lot[T any] struct {
	what  T
	sizes []string
}

// lots takes from every size what of returns, each thing once, in the order in
// which it comes up first.
func lots[T any](pieces []Piece, of func(int) []T, same func(a, b T) bool) []lot[T] {
	var out []lot[T]
	for i, p := range pieces {
		for _, what := range of(i) {
			k := slices.IndexFunc(out, func(l lot[T]) bool { return same(l.what, what) })
			if k < 0 {
				k = len(out)
				out = append(out, lot[T]{what: what})
			}
			if !slices.Contains(out[k].sizes, p.Design.Size) {
				out[k].sizes = append(out[k].sizes, p.Design.Size)
			}
		}
	}
	return out
}

// sizeWords says which of all sizes are meant; nothing where there is one.
func sizeWords(sizes []string, all int) string {
	n := len(sizes)
	switch {
	case all == 1:
		return ""
	case n == all && n == 2:
		return "both sizes"
	case n == all:
		return "all sizes"
	case n == 1:
		return "size " + sizes[0]
	}
	return "sizes " + strings.Join(sizes[:n-1], ", ") + " and " + sizes[n-1]
}

// ofSizes puts the sizes into the heading of a panel.
func ofSizes(p templates.Panel, sizes []string, all int) templates.Panel {
	if words := sizeWords(sizes, all); words != "" {
		p.Heading += ", " + words
	}
	return p
}

func samePanel(a, b templates.Panel) bool {
	return a.Heading == b.Heading && slices.Equal(a.Text, b.Text) &&
		slices.EqualFunc(a.Table, b.Table, func(r, s []string) bool { return slices.Equal(r, s) })
}

// alike reports whether two drawings would come out the same on paper.
func alike(a, b templates.Drawing) bool {
	return a.Name == b.Name &&
		slices.EqualFunc(a.Labels, b.Labels, func(l, m templates.Label) bool {
			return l.Text == m.Text && near(l.On.A, m.On.A) && near(l.On.B, m.On.B)
		}) &&
		slices.EqualFunc(a.Strokes, b.Strokes, func(s, t templates.Stroke) bool {
			return s.Role == t.Role && slices.EqualFunc(s.Points, t.Points, near)
		})
}

// near reports whether two points are one on paper: within a thousandth of a
// millimetre.
func near(p, q geometry.Point) bool {
	const hair = 1e-3
	return math.Abs(p.X-q.X) <= hair && math.Abs(p.Y-q.Y) <= hair
}
