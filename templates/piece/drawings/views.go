package drawings

import (
	"math"
	"slices"

	"rodsheet/geometry"
	"rodsheet/geometry/lists"
	"rodsheet/geometry/solid"
	"rodsheet/templates"
	"rodsheet/templates/piece"
	"rodsheet/templates/piece/design"
	"rodsheet/templates/piece/kind"
)

// views returns the pictures of the piece: plan, elevation and a view from
// above at a corner. Stretcher 1 is the near one, so that the elevation shows
// the splay of its leg as it is. A glass top hides nothing, and what it would
// hide is drawn; below a wooden one edges are hidden lines, or none in the view
// at a corner.
func views(p piece.Piece) []templates.Picture {
	s := sceneOf(p)
	return []templates.Picture{planView(p, s), elevation(p, s), cornerView(p, s)}
}

// A scene is what is looked at.
type scene struct {
	frame solid.Scene // stretchers and legs
	pads  []lid
	top   []lid // none or one
}

// sceneOf turns the piece half round, which brings stretcher 1 to the front.
func sceneOf(p piece.Piece) scene {
	half := geometry.Rotate(math.Pi)
	var s scene
	height := p.Frame.Leg.Height
	for i := range p.Frame.Ring.Sides {
		if p.Design.Top.PadHeight() > 0 {
			c := p.Frame.Ring.Place(i, 0).Then(half).Apply(p.PadCentre())
			s.pads = append(s.pads, lid{geometry.Decimate(geometry.Arc(c, p.Design.Top.Pads.Diameter/2, 0, 2*math.Pi), 36), height, height + p.Design.Top.Pads.Height})
		}
	}
	turned := func(i int) solid.Affine3 { return p.Place(i).Then(solid.RotateZ(math.Pi)) }
	s.frame = solid.NewScene(p.Around(turned, p.Stretcher(), p.Leg()))
	if corners := p.TopCorners(); len(corners) > 0 {
		under := height + p.Design.Top.PadHeight()
		s.top = []lid{{geometry.Decimate(half.ApplyAll(corners), 120), under, under + p.Design.Top.Thickness}}
	}
	return s
}

// drawn projects the scene. What the frame itself hides is left out: so small,
// the insides of the joints would be a blot. What lies below a wooden top is
// drawn in hidden lines where they are wanted.
func drawn(p piece.Piece, s scene, v solid.View, hidden bool) templates.Drawing {
	var d templates.Drawing
	visible, _ := s.frame.Project(v)
	for _, pad := range s.pads {
		visible = uncovered(visible, pad.silhouette(v))
	}
	for _, pad := range s.pads {
		visible = append(visible, pad.edges(v)...)
	}
	for _, top := range s.top {
		if p.Design.Top.Kind == design.GlassTop {
			role := templates.Construction
			if v.Out.Z < grazing {
				role = templates.Outline // edge on, glass is as dark as wood
			}
			lines(&d, role, append(top.edges(v), top.glints(v)...))
			continue
		}
		if hidden {
			lines(&d, templates.Hidden, covered(visible, top.silhouette(v)))
		}
		visible = append(uncovered(visible, top.silhouette(v)), top.edges(v)...)
	}
	lines(&d, templates.Outline, visible)
	return d
}

// faces returns what is seen of the faces in tones: the frame, and over it what
// lies on it, which hides whatever falls together with it. Glass has none.
func faces(p piece.Piece, s scene, v solid.View) []templates.Area {
	out := tones(s.frame.Patches(v), v)
	on := s.pads
	if p.Design.Top.Kind == design.WoodTop {
		on = append(slices.Clip(on), s.top...)
	}
	for _, l := range on {
		out = append(out, l.faces(v)...)
	}
	return out
}

func lines(d *templates.Drawing, role templates.Role, segments []geometry.Segment) {
	for _, s := range segments {
		d.Line(role, s.A, s.B)
	}
}

// uncovered and covered return the parts of the segments outside and inside a
// convex outline.
func uncovered(segments []geometry.Segment, convex []geometry.Point) []geometry.Segment {
	return lists.Flat(segments, func(s geometry.Segment) []geometry.Segment { return geometry.CutOut(s, convex) })
}

func covered(segments []geometry.Segment, convex []geometry.Point) []geometry.Segment {
	var out []geometry.Segment
	for _, s := range segments {
		if part, ok := geometry.ClipConvex(s, convex); ok {
			out = append(out, part)
		}
	}
	return out
}

// planView is seen from straight above.
func planView(p piece.Piece, s scene) templates.Picture {
	d := drawn(p, s, solid.Plan(), true)
	box := d.Bounds()
	off := 0.05 * math.Max(box.Width(), box.Height())
	radius := p.FootRadius()
	circle(&d, templates.Centre, geometry.Point{}, radius)
	out := templates.Picture{Heading: say(planHeading), Strokes: d.Strokes, Labels: d.Labels}
	below := geometry.Pt(0, math.Min(box.Min.Y, -radius)-off)
	out.Span(geometry.Pt(-radius, 0), geometry.Pt(radius, 0), below, tag("feet", p.MM(2*radius)))
	if len(s.top) > 0 {
		top := topBounds(p)
		above := geometry.Pt(0, math.Max(box.Max.Y, radius)+off)
		out.Span(geometry.Pt(-top.Max.X, 0), geometry.Pt(-top.Min.X, 0), above, tag("top", p.MM(top.Width())))
	}
	return out
}

// topBounds returns the box round the outline of the top as it lies over the
// ring; the pictures show it turned half round.
func topBounds(p piece.Piece) geometry.Rect { return geometry.Bounds(p.TopCorners()...) }

// elevation is seen from the front.
func elevation(p piece.Piece, s scene) templates.Picture {
	d := drawn(p, s, solid.Front(), false)
	box := d.Bounds()
	off := 0.05 * math.Max(box.Width(), box.Height())
	d.Line(templates.Construction, geometry.Pt(box.Min.X-off, 0), geometry.Pt(box.Max.X+off, 0))
	out := templates.Picture{Heading: say(elevationHeading), Strokes: d.Strokes, Labels: d.Labels}
	left, right := box.Min.X-off, box.Max.X+off
	out.Span(geometry.Pt(left, 0), geometry.Pt(left, p.Overall()), geometry.Pt(-off, 0), tag("overall", p.MM(p.Overall())))
	if frame := p.Frame.Leg.Height; frame < p.Overall() {
		out.Span(geometry.Pt(right, 0), geometry.Pt(right, frame), geometry.Pt(off, 0), tag("frame", p.MM(frame)))
	}
	return out
}

// cornerView is seen from above, from the right of the near stretcher.
func cornerView(p piece.Piece, s scene) templates.Picture {
	d := drawn(p, s, kind.AtCorner(), false)
	return templates.Picture{Heading: say(cornerHeading), Areas: faces(p, s, kind.AtCorner()), Strokes: d.Strokes, NoScale: true}
}
