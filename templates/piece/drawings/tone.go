package drawings

import (
	"rodsheet/geometry"
	"rodsheet/geometry/solid"
	"rodsheet/templates"
	"rodsheet/templates/piece/kind"
)

// Toned adds the parts as they are seen, their faces in light tones, and returns these
// faces.
func Toned(p *templates.Picture, parts []solid.Part, v solid.View) []solid.Patch {
	s := solid.NewScene(parts)
	seen := s.Patches(v)
	p.Areas = append(p.Areas, tones(seen, v)...)
	visible, _ := s.Project(v)
	for _, e := range visible {
		p.Strokes = append(p.Strokes, templates.Stroke{Role: templates.Outline, Points: []geometry.Point{e.A, e.B}})
	}
	return seen
}

// tones returns what is seen of every face in its tone.
func tones(seen []solid.Patch, v solid.View) []templates.Area {
	out := make([]templates.Area, 0, len(seen))
	for _, patch := range seen {
		out = append(out, templates.Area{Tone: kind.ToneOf(patch.N, v), Points: patch.Corners})
	}
	return out
}
