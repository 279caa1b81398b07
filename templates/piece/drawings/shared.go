package drawings

import (
	"math"
	"slices"

	"rodsheet/geometry"
	"rodsheet/templates"
	"rodsheet/templates/piece"
	"rodsheet/templates/piece/shop"
)

// A kind draws one kind of template for one size of a design.
type kind func(piece.Piece, templates.Setting) (templates.Job, error)

// shared draws every size and keeps once what several of them have alike.
func (k kind) shared(pieces []piece.Piece, s templates.Setting) (templates.Job, error) {
	var out templates.Job
	jobs := make([]templates.Job, len(pieces))
	for i, p := range pieces {
		job, err := k(p, s)
		if err != nil {
			return out, err
		}
		jobs[i] = job
	}
	for _, l := range piece.Lots(pieces, func(i int) []templates.Drawing { return jobs[i].Drawings }, alike) {
		l.What.Name = piece.WithSizes(l.What.Name, l.Sizes, len(pieces))
		out.Drawings = append(out.Drawings, l.What)
	}
	out.Panels = shop.SharedPanels(pieces, func(i int) []templates.Panel { return jobs[i].Panels })
	return out, nil
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
