package drawings

import (
	"rodsheet/geometry"
	"rodsheet/geometry/solid"
	"rodsheet/templates"
	"rodsheet/templates/piece/kind"
)

// Toned adds the parts as they are seen, their faces in light tones.
func Toned(p *templates.Picture, parts []solid.Part, v solid.View) {
	s := solid.NewScene(parts)
	p.Areas = append(p.Areas, patches(s, v)...)
	visible, _ := s.Project(v)
	for _, e := range visible {
		p.Strokes = append(p.Strokes, templates.Stroke{Role: templates.Outline, Points: []geometry.Point{e.A, e.B}})
	}
}

// patches returns what is seen of every face in its tone.
func patches(s solid.Scene, v solid.View) []templates.Area {
	var out []templates.Area
	for _, patch := range s.Patches(v) {
		out = append(out, templates.Area{Tone: kind.ToneOf(patch.N, v), Points: patch.Corners})
	}
	return out
}
