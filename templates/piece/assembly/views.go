package assembly

import (
	"math"

	"rodsheet/geometry"
	"rodsheet/geometry/lists"
	"rodsheet/geometry/solid"
	"rodsheet/templates"
	"rodsheet/templates/piece"
	"rodsheet/templates/piece/drawings"
	"rodsheet/templates/piece/kind"
)

func solids(parts []Part) []solid.Part {
	return lists.Map(parts, func(p Part) solid.Part { return p.Part })
}

// cornerView is seen from above, from the right of the front, in tones.
func cornerView(parts []Part) templates.Picture {
	p := templates.Picture{Heading: cornerHeading.With(), NoScale: true}
	drawings.Toned(&p, solids(parts), kind.AtCorner())
	return p
}

// Pictures are plan, elevation and corner view of every size.
func (w work[M]) Pictures() []templates.Picture {
	var out []templates.Picture
	sizes := w.sizes()
	for i, m := range w.models {
		views := []templates.Picture{
			lineView(m, kind.FromAbove), lineView(m, kind.FromFront), cornerView(m.Parts()),
		}
		views[0].Heading, views[1].Heading = planHeading.With(), elevationHeading.With()
		for _, v := range views {
			v.Heading = piece.WithSizes(v.Heading, sizes[i:i+1], len(sizes))
			out = append(out, v)
		}
	}
	return out
}

// lineView shows the edges of a piece as a look sees them, with its dimensions.
func lineView(m Model, l kind.Look) templates.Picture {
	var d templates.Drawing
	visible, _ := solid.Project(solids(m.Parts()), l.View)
	for _, s := range visible {
		d.Line(templates.Outline, s.A, s.B)
	}
	box := d.Bounds()
	out := templates.Picture{Strokes: d.Strokes}
	dimensions, _ := m.Dimensions(l)
	for _, f := range dimensions { // they stand beside the piece
		away := f.B.Sub(f.A).Unit().Perp().Mul(0.05 * math.Max(box.Width(), box.Height()))
		if away.Dot(f.Mid().Sub(box.Centre())) < 0 {
			away = away.Mul(-1)
		}
		out.Span(f.A.Sub(away), f.B.Sub(away), away, templates.Tag{Text: f.Text})
	}
	return out
}

// A stand is a piece put together.
type stand[M Model] struct {
	model M
	parts []Part
	scene solid.Scene
}

func (w work[M]) Stand(size int) kind.Stand {
	parts := w.models[size].Parts()
	return stand[M]{w.models[size], parts, solid.NewScene(solids(parts))}
}

// Show returns what a look shows. Apart, every part moves away from the middle of them
// all.
func (s stand[M]) Show(l kind.Look) kind.Shown {
	var out kind.Shown
	scene, bodies := s.scene, solids(s.parts)
	if l.Close {
		bodies = near(bodies, s.joint)
	}
	if l.Close || l.Apart > 0 {
		scene = solid.NewScene(apart(bodies, l.Apart))
	}
	for _, p := range s.parts {
		out.Parts = append(out.Parts, kind.Seen{Kind: p.Kind, Name: p.Name})
	}
	for _, patch := range scene.Patches(l.View) {
		seen := &out.Parts[patch.Part]
		seen.Areas = append(seen.Areas, templates.Area{Tone: kind.ToneOf(patch.N, l.View), Points: patch.Corners})
	}
	visible, _ := scene.Project(l.View)
	for _, e := range visible {
		out.Strokes = append(out.Strokes, templates.Stroke{Role: templates.Outline, Points: []geometry.Point{e.A, e.B}})
	}
	if l.Apart == 0 && !l.Close {
		out.Clashes = lists.Map(solid.Clashes(bodies), l.View.Silhouette)
		if l.View == kind.FromAbove.View || l.View == kind.FromFront.View {
			out.Figures, out.Handles = s.model.Dimensions(l)
		}
	}
	return out
}

// joint returns the middle of the joint that is looked at close up, and how far round it
// is shown: what the model names, or else the head of the leg at the front on the right.
func (s stand[M]) joint() (at solid.Vec, reach float64) {
	if j, ok := any(s.model).(Jointed); ok {
		return j.Joint()
	}
	best := math.Inf(-1)
	for _, p := range s.parts {
		box := p.Bounds()
		if front := box.Max.X - box.Min.Y; p.Kind == "leg" && front > best {
			best, at, reach = front, head(p.Part), 0.28*box.Size().Z
		}
	}
	return at, reach
}

// head returns the middle of the highest corners of a part.
func head(p solid.Part) solid.Vec {
	const near = 1.0 // mm
	top, n := p.Bounds().Max.Z, 0.0
	var sum solid.Vec
	for _, s := range p.Pieces {
		for _, f := range s.Faces() {
			for _, c := range f.Corners {
				if c.Z > top-near {
					sum, n = sum.Add(c), n+1
				}
			}
		}
	}
	return sum.Mul(1 / n)
}

// near cuts away all of the parts but a cube about a joint.
func near(parts []solid.Part, joint func() (solid.Vec, float64)) []solid.Part {
	at, reach := joint()
	return lists.Map(parts, func(p solid.Part) solid.Part { return kind.Near(p, at, reach) })
}

// apart moves parts away from the middle of all of them.
func apart(parts []solid.Part, by float64) []solid.Part {
	var room solid.Extent
	for i, p := range parts {
		if len(p.Pieces) == 0 {
			continue
		}
		if room == (solid.Extent{}) {
			room = parts[i].Bounds()
		}
		room = room.Union(p.Bounds())
	}
	middle := room.Min.Add(room.Max).Mul(0.5)
	out := make([]solid.Part, len(parts))
	for i, p := range parts {
		if len(p.Pieces) == 0 {
			continue
		}
		box := p.Bounds()
		away := box.Min.Add(box.Max).Mul(0.5).Sub(middle)
		out[i] = p.Transform(solid.Translate(away.Mul(0.6 * by)))
	}
	return out
}
