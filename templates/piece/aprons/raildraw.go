package aprons

import (
	"math"

	"rodsheet/geometry"
	"rodsheet/geometry/joint"
	"rodsheet/geometry/measure"
	"rodsheet/geometry/solid"
	"rodsheet/templates"
	"rodsheet/templates/piece/design"
)

// A railEnd is the left end of a rail as its templates show it, in the frame of
// joint.Shoulder: the outer side towards the reader, x along the rail from the corner of
// the shoulder at outer side and underside, y up the outer side, depth from it.
type railEnd struct {
	Rail
	shoulder, end joint.Shoulder // the end through its own place at y = 0 and depth = 0
	endAt         float64
	lean          float64 // of the outer side from plumb
}

func (m Model) railEnd(r Rail) railEnd {
	e, end := r.Ends[left], r.end(left)
	own := func(n solid.Vec) solid.Vec { return solid.V(n.Dot(r.Along), n.Dot(r.Up), n.Dot(r.In)) }
	n := own(end.N.Mul(-1))
	out := railEnd{Rail: r, shoulder: e.Joint, end: joint.ShoulderAgainst(n), lean: math.Asin(r.outer.N.Z)}
	out.endAt = end.Height(e.Mouth[0]) / n.X
	return out
}

// section returns the place in the section of the rail of a point so far along one of its
// four sides, which go round from the underside: that from the corner arris, the others as
// they follow on the strip.
type railLeaf struct {
	name  templates.Tag
	level float64 // of its lower arris on the strip
	wide  float64
	place func(s float64) (y, depth float64) // s across it from that arris
}

// leaves are the four sides from the foot of the strip: underside, outer side, top, frame
// side. Top and underside are level, so they run up by tan lean on their way in.
func (k railEnd) leaves() []railLeaf {
	sin, cos := math.Sincos(k.lean)
	deep, thick := k.Row.Of.Depth/cos, k.Row.Of.Thickness
	edge := thick / cos
	return []railLeaf{
		{label("underside"), -edge, edge, func(s float64) (float64, float64) { return (edge - s) * sin, (edge - s) * cos }},
		{label("outer-side"), 0, deep, func(s float64) (float64, float64) { return s, 0 }},
		{label("top"), deep, edge, func(s float64) (float64, float64) { return deep + s*sin, s * cos }},
		{label("frame-side"), deep + edge, deep, func(s float64) (float64, float64) { return deep + edge*sin - s, thick }},
	}
}

// at returns where the shoulder and the end of the tenon stand at a place of the section.
func (k railEnd) at(y, depth float64) (shoulder, end float64) {
	return k.shoulder.At(y, depth), k.endAt + k.end.At(y, depth)
}

// height returns the place on a leaf at a height over the underside, plumb.
func (k railEnd) height(f railLeaf, plumb float64) float64 {
	up := plumb / math.Cos(k.lean)
	if f.level > 0 { // the frame side runs down the strip
		return k.Row.Of.Depth/math.Cos(k.lean) - up
	}
	return up
}

// wrapRail is the strip that goes round the left end of a rail.
func (m Model) wrapRail(r Rail, sort int) templates.Drawing {
	k := m.railEnd(r)
	var d templates.Drawing
	to := 0.0
	leaves := k.leaves()
	for _, f := range leaves {
		shoulder, _ := k.at(f.place(0))
		to = math.Max(to, shoulder+past)
	}
	for i, f := range leaves {
		m.railLeaf(&d, k, f, i)
		role := templates.Fold
		if i == 0 {
			role = templates.Outline
		}
		_, end := k.at(f.place(0))
		d.Line(role, geometry.Pt(end, f.level), geometry.Pt(to, f.level))
		if i == 3 {
			_, end := k.at(f.place(f.wide))
			d.Line(templates.Outline, geometry.Pt(end, f.level+f.wide), geometry.Pt(to, f.level+f.wide))
		} else {
			d.LabelLine(geometry.Pt(to-past, f.level+f.wide), geometry.Pt(to, f.level+f.wide), label("fold"))
		}
		d.LabelPoint(geometry.Pt(to-past/2, f.level+f.wide/2), f.name)
	}
	d.LabelLine(geometry.Pt(0, 0), geometry.Pt(k.shoulder.At(leaves[1].wide, 0), leaves[1].wide), label("shoulder", m.angle(math.Abs(k.shoulder.Face))))
	return d
}

// railLeaf draws what one side of the end of a rail holds.
func (m Model) railLeaf(d *templates.Drawing, k railEnd, f railLeaf, i int) {
	on := func(s, share float64) geometry.Point { // share: from the shoulder to the end
		shoulder, end := k.at(f.place(s))
		return geometry.Pt(shoulder+(end-shoulder)*share, f.level+s)
	}
	d.Line(templates.Cut, on(0, 0), on(f.wide, 0))
	d.Line(templates.Cut, on(0, 1), on(f.wide, 1))
	row, cos := k.Row, math.Cos(k.lean)
	stub := func(s float64) geometry.Point { return on(s, 0).Add(geometry.Pt(-row.Haunch(), 0)) }
	if i == 1 || i == 3 {
		low, high := k.height(f, row.Of.LowerCut), k.height(f, row.Of.Depth-row.Upper)
		d.Hatch(on(0, 0), on(f.wide, 0), on(f.wide, 1), on(0, 1))
		d.Line(templates.Hidden, on(low, 0), on(low, 1))
		if row.Upper > 0 {
			d.Line(templates.Hidden, on(high, 0), on(high, 1))
		}
		switch top := k.height(f, row.Of.Depth); row.Joint {
		case design.SquareHaunch:
			d.Line(templates.Hidden, stub(high), stub(top))
		case design.SlopingHaunch:
			d.Line(templates.Hidden, stub(high), on(top, 0))
		}
		if i == 1 {
			if row.Upper > 0 {
				d.LabelLine(on(high, 0), on(high, 1), label("tenon-edge", m.length(high)))
			}
			if row.Of.LowerCut > 0 {
				d.LabelLine(on(low, 0), on(low, 1), label("tenon-edge", m.length(low)))
			}
			d.LabelLine(on(0, 1), on(f.wide, 1), label("tenon-end", m.angle(math.Abs(k.end.Face))))
		}
		return
	}
	outer, frame := row.Cheeks()
	first, second := outer/cos, frame/cos
	if i == 0 { // it runs up the strip to the corner arris
		first, second = f.wide-frame/cos, f.wide-outer/cos
	}
	d.Line(templates.Cut, on(first, 0), on(first, 1))
	d.Line(templates.Cut, on(second, 0), on(second, 1))
	d.Hatch(on(0, 0), on(first, 0), on(first, 1), on(0, 1))
	d.Hatch(on(second, 0), on(f.wide, 0), on(f.wide, 1), on(second, 1))
	switch {
	case i == 2 && row.Joint == design.SquareHaunch:
		d.Line(templates.Cut, stub(first), stub(second))
		d.Hatch(stub(first), stub(second), on(second, 1), on(first, 1))
		d.LabelLine(stub(first), stub(second), label("haunch-end", m.length(row.Haunch())))
	case i == 2 && row.Upper > 0 || i == 0 && row.Of.LowerCut > 0:
		d.Hatch(on(first, 0), on(second, 0), on(second, 1), on(first, 1))
	}
	if i == 2 {
		d.LabelLine(on(first, 0), on(first, 1), label("cheek", m.length(outer)))
	}
}

// hands returns the wrap-round of both ends of a rail, left one first.
func (m Model) railHands(r Rail, sort int) []templates.Drawing {
	d := m.wrapRail(r, sort)
	view := templates.View{Part: railPart(r.Row.Kind, sort), Face: "wrap-round", Hand: templates.LeftHand}
	mirror := view
	mirror.Hand = templates.RightHand
	return []templates.Drawing{
		d.Of(view, leftEndName.With(m.sortName(r.Row, sort))),
		d.Moved(geometry.MirrorX()).Of(mirror, rightEndName.With(m.sortName(r.Row, sort))),
	}
}

// railPart names the rails of a row and sort in views.
func railPart(k RowKind, sort int) measure.ID {
	return [...][2]measure.ID{Aprons: {"apron", "apron-side"}, Stretchers: {"stretcher", "stretcher-side"}}[k][sort]
}

// outline returns the corners of the outer side of a rail between its shoulders, from the
// left end of the underside, in the frame of the outer side; the arch runs along it.
func (r Rail) outline() (corners, under []geometry.Point) {
	o := r.Ends[left].Mouth[0].Lerp(r.Ends[right].Mouth[0], 0.5)
	on := func(p solid.Vec) geometry.Point {
		q := p.Sub(o)
		return geometry.Pt(q.Dot(r.Along), q.Dot(r.Up))
	}
	a, b := r.Ends[left].Mouth, r.Ends[right].Mouth
	corners = []geometry.Point{on(a[0]), on(b[0]), on(b[1]), on(a[1])}
	under = []geometry.Point{corners[0]}
	if bow, ok := r.Arc(); ok {
		radius := bow.Radius()
		half := bow.Angle() / 2
		arc := geometry.Arc(geometry.Pt(0, bow.Rise-radius), radius, math.Pi/2-half, math.Pi/2+half)
		for i := range arc {
			under = append(under, arc[len(arc)-1-i])
		}
	}
	return corners, append(under, corners[1])
}

// shape is the outer side of a rail with its sizes, to scale.
func (m Model) shape(r Rail, sort int) templates.Picture {
	var d templates.Drawing
	corners, under := r.outline()
	d.Line(templates.Cut, under...)
	d.Line(templates.Cut, corners[1], corners[2], corners[3], corners[0])
	d.LabelLine(corners[0], corners[1], label("under-long", m.length(corners[0].Distance(corners[1]))))
	d.LabelLine(corners[3], corners[2], label("top-long", m.length(corners[3].Distance(corners[2]))))
	x := corners[0].X - 0.06*corners[1].X
	d.Named(templates.Construction, geometry.Pt(x, 0), geometry.Pt(x, corners[2].Y), label("plain", m.length(corners[2].Y)))
	d.LabelLine(corners[1], corners[2], label("shoulder", m.angle(math.Abs(r.Ends[right].Joint.Face))))
	return templates.Picture{
		Heading: shapeName.With(m.sortName(r.Row, sort)), Wide: true,
		View: templates.View{Part: railPart(r.Row.Kind, sort), Face: "shape"}, Strokes: d.Strokes, Labels: d.Labels,
	}
}

// outlineOf is the outer side of a rail at full size, which an arch wants.
func (m Model) outlineOf(r Rail, sort int) templates.Drawing {
	d := templates.Drawing{View: templates.View{Part: railPart(r.Row.Kind, sort), Face: "outer-side"}, Name: shapeName.With(m.sortName(r.Row, sort)), Free: true}
	corners, under := r.outline()
	d.Line(templates.Cut, under...)
	d.Line(templates.Cut, corners[1], corners[2], corners[3], corners[0])
	d.Line(templates.Centre, geometry.Pt(0, -5), geometry.Pt(0, corners[2].Y+5))
	if bow, ok := r.Arc(); ok {
		d.LabelLine(under[1], under[2], label("arch", m.length(bow.Rise), m.length(bow.Radius())))
	}
	d.LabelLine(corners[3], corners[2], label("top"))
	d.LabelLine(corners[1], corners[2], label("shoulder", m.angle(math.Abs(r.Ends[right].Joint.Face))))
	return d
}
