package aprons

import (
	"math"

	"rodsheet/geometry"
	"rodsheet/geometry/lists"
	"rodsheet/geometry/measure"
	"rodsheet/geometry/solid"
	"rodsheet/templates"
	"rodsheet/templates/piece/design"
)

// past is how far beyond a joint the arrises of a part are drawn, mm.
const past = 30.0

// A leaf is one side of a part as it lies on a strip of paper that goes round it: places
// are measured along the part, and across the side from the arris at its foot.
type leaf struct {
	name   templates.Tag
	plane  solid.Plane
	at     solid.Vec // on the arris at the foot of the leaf, at 0 along the part
	across solid.Vec // of length 1, square to the part
	level  float64   // of that arris on the strip
	wide   float64
	rails  int // of which side it takes the rails: before or own; none: -1
}

// on returns where a point of the leaf lies on the strip.
func (f leaf) on(along, p solid.Vec) geometry.Point {
	q := p.Sub(f.at)
	return geometry.Pt(q.Dot(along), f.level+q.Dot(f.across))
}

// arrises returns the four arrises of a leg at the level of the head of its outer
// arris, square to it, in the order of Section.
func (l leg) arrises() [4]solid.Vec {
	n := [4]solid.Vec{l.outer[own], l.inner[own], l.inner[before], l.outer[before]}
	off := [4]float64{0, l.size, l.size, 0}
	var out [4]solid.Vec
	for i := range out {
		j := (i + 3) % 4
		out[i] = l.at.Add(meet(n[j], off[j], n[i], off[i]))
	}
	return out
}

// leaves are the four sides of a leg above its taper, from the corner arris round by its
// own outer side, printed side out: the head to the left, the sides follow each other up
// the strip.
func (l leg) leaves() []leaf {
	arris := l.arrises()
	sides := []leaf{
		{name: label("outer-side"), plane: solid.Through(l.at, l.outer[own]), rails: -1},
		{name: label("rail-side"), plane: l.straight(own), rails: own},
		{name: label("rail-side"), plane: l.straight(before), rails: before},
		{name: label("outer-side"), plane: solid.Through(l.at, l.outer[before]), rails: -1},
	}
	level := 0.0
	for i := range sides {
		a, b := arris[i], arris[(i+1)%4]
		sides[i].at, sides[i].across, sides[i].level, sides[i].wide = a, b.Sub(a).Unit(), level, a.Distance(b)
		level += a.Distance(b)
	}
	return sides
}

// wrapLeg is the strip that goes round the head of leg i: the level cut of the head and
// the mortises of the aprons on all four sides.
func (m Model) wrapLeg(i int) templates.Drawing {
	l, row := m.legs[i], m.Rows[0]
	d := templates.Drawing{View: templates.View{Part: "leg", Face: "wrap-round", Hand: m.hand(i)}, Name: wrapLegName.With(m.legsOf(i))}
	to := m.below(row, i) + past
	leaves := l.leaves()
	head, _ := level(l.at.Z)
	for k, f := range leaves {
		next := leaves[(k+1)%4]
		a, b := l.cutAt(f, head, 0), l.cutAt(f, head, f.wide)
		d.Line(templates.Cut, a, b)
		role := templates.Fold
		if k == 0 {
			role = templates.Outline
		}
		d.Line(role, a, geometry.Pt(to, f.level))
		if k == 3 {
			d.Line(templates.Outline, b, geometry.Pt(to, f.level+f.wide))
		}
		d.Line(templates.Outline, geometry.Pt(to, f.level), geometry.Pt(to, f.level+f.wide))
		d.LabelPoint(geometry.Pt(to-past/2, f.level+f.wide/2), f.name)
		if k < 3 {
			d.LabelLine(geometry.Pt(to-past, next.level), geometry.Pt(to, next.level), label("fold"))
		}
		if f.rails >= 0 {
			r, end := m.railAt(row, i, f.rails)
			m.mortise(&d, r, end, func(p solid.Vec) geometry.Point { return f.on(l.along, p) })
		}
	}
	d.LabelPoint(geometry.Pt(0, 0), label("head-at-arris"))
	d.LabelLine(l.cutAt(leaves[0], head, 0), l.cutAt(leaves[0], head, leaves[0].wide), label("head-cut"))
	return d
}

// cutAt returns where a level plane crosses a leaf so far from its lower arris.
func (l leg) cutAt(f leaf, plane solid.Plane, across float64) geometry.Point {
	p := f.at.Add(f.across.Mul(across))
	along := -plane.Height(p) / plane.N.Dot(l.along)
	return f.on(l.along, p.Add(l.along.Mul(along)))
}

// railAt returns the rail of a row that a side of leg i takes, and which of its ends.
func (m Model) railAt(row *Row, i, takes int) (Rail, int) {
	if takes == own {
		return row.Rails[i], left
	}
	return row.Rails[m.before(i)], right
}

// mortise draws the mouth of a mortise, the haunch above it and the outline of the rail,
// all in the plane of the shoulder.
func (m Model) mortise(d *templates.Drawing, r Rail, end int, on func(solid.Vec) geometry.Point) {
	e, row := r.Ends[end], r.Row
	place := func(all []solid.Vec) []geometry.Point {
		return lists.Map(all, on)
	}
	rail := place(e.Mouth[:])
	d.Polygon(templates.Construction, rail...)
	mouth := place(r.mouthOf(e, row.Of.LowerCut, row.Upper))
	d.Polygon(templates.Cut, mouth...)
	d.Hatch(mouth...)
	if row.Haunch() > 0 {
		groove := place(r.mouthOf(e, row.Of.Depth-row.Upper, 0))
		d.Line(templates.Cut, groove[0], groove[1], groove[2], groove[3])
		d.Hatch(groove...)
		d.LabelLine(groove[0], groove[1], label(haunchLabels[row.Joint], m.length(row.Haunch())))
	}
	d.LabelLine(mouth[0], mouth[1], label("long-and-wide", m.length(mouth[0].Distance(mouth[1])), m.length(mouth[1].Distance(mouth[2]))))
	d.LabelLine(mouth[0], mouth[1], label("from-outer", m.length(m.toOuter(r, end))))
	d.LabelLine(mouth[3], mouth[0], label("deep", m.length(m.intoLeg(r, end))))
	d.LabelLine(rail[3], rail[0], label("rail-here", railNames[row.Kind].With()))
}

var haunchLabels = [...]measure.ID{design.SquareHaunch: "haunch", design.SlopingHaunch: "sloping-haunch"}

// toOuter returns how far the mouth of a mortise stands from the outer side beside it,
// across its side of the leg, at the top of the tenon.
func (m Model) toOuter(r Rail, end int) float64 {
	e := r.Ends[end]
	l, p := m.legs[e.corner], r.mouthOf(e, r.Row.Of.LowerCut, r.Row.Upper)[1]
	outer := solid.Through(l.at, l.outer[e.takes])
	c := outer.N.Dot(e.shoulder.N)
	return -outer.Height(p) / math.Sqrt(1-c*c)
}

// mouthOf returns the corners of the mortise on the shoulder between a height over the
// underside and one below the top, in the order of Mouth.
func (r Rail) mouthOf(e End, above, below float64) []solid.Vec {
	outer, frame := r.Row.Cheeks()
	low, high := r.downTo(above), r.upTo(below)
	first, second := r.deep(outer), r.deep(frame)
	return []solid.Vec{
		solid.Meet(e.shoulder, first, low), solid.Meet(e.shoulder, first, high),
		solid.Meet(e.shoulder, second, high), solid.Meet(e.shoulder, second, low),
	}
}

// intoLeg returns how deep a mortise goes at its deepest, square to its side of the leg.
func (m Model) intoLeg(r Rail, end int) float64 {
	return lists.Most(corners(r.Ends[end].mortise()[0]), r.Ends[end].shoulder.Height)
}

// lowStrip is a side of leg i with the mortise of a stretcher: x up from the foot along
// the arris between it and the outer side beside it, y across the side from that arris.
// Seen from the rail the arris of its own side is on the right, foot down: y runs up the
// paper on that of the own side, and down on the other, so that both are seen from outside.
func (m Model) lowStrip(i, takes int) templates.Drawing {
	l, row := m.legs[i], m.Rows[1]
	r, end := m.railAt(row, i, takes)
	plane := r.Ends[end].shoulder.Flip()
	outer := solid.Through(l.at, l.outer[takes])
	_, foot := level(0)
	up := plane.N.Cross(outer.N).Unit()
	if up.Z < 0 {
		up = up.Mul(-1)
	}
	at := solid.Meet(plane, outer, foot)
	across := plane.N.Cross(up)
	if across.Dot(outer.N) > 0 {
		across = across.Mul(-1)
	}
	hand := 1.0
	if plane.N.Dot(up.Cross(across)) < 0 { // seen from outside x, y and the normal turn to the right
		hand = -1
	}
	on := func(p solid.Vec) geometry.Point {
		q := p.Sub(at)
		return geometry.Pt(q.Dot(up), hand*q.Dot(across))
	}
	d := templates.Drawing{
		View: templates.View{Part: "leg", Face: [...]measure.ID{before: "stretcher-strip-left", own: "stretcher-strip-right"}[takes], Hand: m.hand(i)},
		Name: lowStripName.With(endWords[end].With(), m.legsOf(i)),
	}
	other := l.sideAt(1-takes, at)
	far := on(solid.Meet(plane, other, foot))
	box := geometry.Bounds(on(r.Ends[end].Mouth[0]), on(r.Ends[end].Mouth[1]), on(r.Ends[end].Mouth[2]), on(r.Ends[end].Mouth[3]))
	from, to := math.Max(0, math.Floor((box.Min.X-2*past)/10)*10), box.Max.X+2*past
	wide := on(solid.Meet(plane, other, solid.Plane{N: up, D: up.Dot(at) + to})).Y
	near := on(solid.Meet(plane, other, solid.Plane{N: up, D: up.Dot(at) + from})).Y
	d.Line(templates.Outline, geometry.Pt(to, 0), geometry.Pt(to, wide))
	d.Line(templates.Outline, geometry.Pt(from, 0), geometry.Pt(to, 0))
	d.Line(templates.Outline, geometry.Pt(from, near), geometry.Pt(to, wide))
	first := label("foot")
	if from == 0 {
		d.Line(templates.Cut, geometry.Pt(0, 0), far)
	} else {
		first = label("from-foot", m.length(from))
		d.Line(templates.Outline, geometry.Pt(from, 0), geometry.Pt(from, near))
	}
	d.LabelLine(geometry.Pt(from, 0), geometry.Pt(from, near), first)
	d.LabelLine(geometry.Pt(to-2*past, 0), geometry.Pt(to, 0), label("beside-outer"))
	m.mortise(&d, r, end, on)
	return d
}

// hand returns which of two mirror images leg i is; a leg that leans alike both ways is
// its own.
func (m Model) hand(i int) templates.Hand {
	if m.LegSorts() == 1 {
		return templates.EitherHand
	}
	return [...]templates.Hand{templates.LeftHand, templates.RightHand}[i%2]
}

// section is a leg square to its length, and on the level.
func (m Model) section() templates.Drawing {
	l := m.legs[0]
	d := templates.Drawing{View: templates.View{Part: "leg", Face: "section"}, Name: sectionName.With(), Free: true}
	corners := l.Section()
	d.Polygon(templates.Cut, corners...)
	angles := sectionAngles(corners)
	for i, p := range corners {
		d.LabelPoint(p, label("corner", m.angle(angles[i])))
	}
	for i, id := range []measure.ID{"outer-side", "rail-side", "rail-side", "outer-side"} {
		d.LabelLine(corners[i], corners[(i+1)%4], label(id))
	}
	return d
}

// levelSection is what a leg measures on the level, below its head: what stands on the
// floor is the same where it is not tapered.
func (m Model) levelSection() templates.Drawing {
	d := templates.Drawing{View: templates.View{Part: "leg", Face: "level-section"}, Name: levelName.With(), Free: true}
	corners := m.legs[0].LevelSection()
	mid := corners[0]
	d.Polygon(templates.Cut, corners...)
	angles := sectionAngles(corners)
	for i, p := range corners {
		d.LabelPoint(p, label("corner", m.angle(angles[i])))
	}
	return d.Moved(geometry.Translate(geometry.Pt(-mid.X, -mid.Y))).Of(d.View, d.Name)
}
