package drawings

import (
	"rodsheet/geometry"
	"rodsheet/geometry/solid"
	"rodsheet/templates"
)

// toned adds the parts as they are seen, their faces in light tones.
func toned(p *templates.Picture, parts []solid.Part, v solid.View) {
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
		out = append(out, templates.Area{Tone: toneOf(patch.N, v), Points: patch.Corners})
	}
	return out
}

// toneOf returns the tone of a face in light from above on the left: what looks up
// stays white, what looks to the right lies in the shade.
func toneOf(n solid.Vec, v solid.View) templates.Tone {
	const up = 0.5 // of the way from level to upright
	switch {
	case n.Z > up:
		return templates.White
	case n.Dot(v.Right) > 0:
		return templates.Middle
	}
	return templates.Light
}
