package solid

import (
	"math"
	"slices"

	"rodsheet/geometry"
)

// A curtain is the strip that an edge sweeps on its way to the viewer: the
// points at + t·along + u·out with 0 ≤ t ≤ length and 0 ≤ u ≤ reach, in mm.
// Where it passes through the inside of a solid, the edge is hidden.
type curtain struct {
	at, along, out Vec
	length, reach  float64
	room           Extent // what it takes in the frame of the View
}

// curtain returns the curtain of e up to the depth front.
func (v View) curtain(e Edge, front float64) curtain {
	length := e.A.Distance(e.B)
	a, b := v.seen(e.A), v.seen(e.B)
	room := Extent{a, a}.Union(Extent{b, b})
	c := curtain{
		at: e.A, along: e.B.Sub(e.A).Mul(1 / length), out: v.Out,
		length: length, reach: front - room.Min.Z + 1,
	}
	// What touches the curtain with a face counts, rounded either way.
	touch := V(hair, hair, hair)
	c.room = Extent{room.Min.Sub(touch), room.Max.Add(touch)}
	c.room.Max.Z = math.Inf(1)
	return c
}

// A half is the part a·t + b·u ≤ c of a curtain.
type half struct{ a, b, c float64 }

// A screen is a Part with the room that it and its pieces take, as a View sees
// them: X to the right, Y up and Z towards the viewer.
type screen struct {
	Part
	room   Extent
	pieces []Extent
}

// screen returns p as v sees it.
func (v View) screen(p Part) screen {
	out := screen{Part: p, pieces: make([]Extent, len(p.Pieces))}
	for i, s := range p.Pieces {
		out.pieces[i] = v.room(s)
		if i == 0 {
			out.room = out.pieces[0]
		}
		out.room = out.room.Union(out.pieces[i])
	}
	return out
}

// room returns the Extent of s in the frame of v.
func (v View) room(s Solid) Extent {
	least, most := math.Inf(1), math.Inf(-1)
	e := Extent{V(least, least, least), V(most, most, most)}
	for _, f := range s.faces {
		for _, q := range f.Corners {
			p := v.seen(q)
			e = e.Union(Extent{p, p})
		}
	}
	return e
}

// seen returns q in the frame of v.
func (v View) seen(q Vec) Vec { return V(q.Dot(v.Right), q.Dot(v.Up), q.Dot(v.Out)) }

// shadows returns where the parts hide the edge, as shares of its length.
func (c curtain) shadows(screens []screen) []span {
	var out []span
	for _, s := range screens {
		if s.room.Overlaps(c.room) {
			out = append(out, c.shadowsOf(s)...)
		}
	}
	out = merge(out, hair)
	for i := range out {
		out[i] = span{out[i].lo / c.length, out[i].hi / c.length}
	}
	return out
}

// shadowsOf returns where p hides the edge, in mm along it. A curtain that
// runs in the very face between two pieces is inside neither of them but
// inside both together.
func (c curtain) shadowsOf(p screen) []span {
	var out []span
	var left, right [][]half
	var room [16]half
	add := func(halves []half) {
		if s, ok := c.inside(halves); ok {
			out = append(out, s)
		}
	}
	for i, s := range p.Pieces {
		if !p.pieces[i].Overlaps(c.room) {
			continue
		}
		switch halves, side, ok := c.halves(s, room[:0]); {
		case !ok:
		case side < 0:
			left = append(left, slices.Clone(halves))
		case side > 0:
			right = append(right, slices.Clone(halves))
		default:
			add(halves)
		}
	}
	for _, l := range left {
		for _, r := range right {
			add(slices.Concat(l, r))
		}
	}
	return out
}

// halves returns the section of s by the curtain's plane, in the place given. side tells that s
// only touches that plane with a face, and from which side (+1 or -1). ok is
// false when s does not reach the curtain.
func (c curtain) halves(s Solid, room []half) (halves []half, side int, ok bool) {
	halves = room
	for i := range s.faces {
		f := &s.faces[i]
		n := f.Plane.N
		h := half{n.Dot(c.along), n.Dot(c.out), -f.Plane.Height(c.at)}
		switch {
		case h.c < min(0, h.a*c.length)+min(0, h.b*c.reach)-hair:
			return nil, 0, false // all of the curtain is outside
		case math.Abs(h.a) > parallel || math.Abs(h.b) > parallel:
			halves = append(halves, h)
		case h.c <= hair:
			side = 1
			if n.Dot(c.along.Cross(c.out)) < 0 {
				side = -1
			}
		}
	}
	return halves, side, len(halves) > 0
}

// inside returns the part of the edge whose rays enter the section given by
// halves. Whether there is one is asked a hair inside the section, so that
// grazing does not count; where it begins and ends is taken exactly.
func (c curtain) inside(halves []half) (span, bool) {
	var room [2][16]geometry.Point // more is rarely needed
	if len(c.section(halves, hair, room[0][:0], room[1][:0])) == 0 {
		return span{}, false
	}
	out := span{math.Inf(1), math.Inf(-1)}
	for _, p := range c.section(halves, 0, room[0][:0], room[1][:0]) {
		out = span{min(out.lo, p.X), max(out.hi, p.X)}
	}
	return out, out.hi-out.lo > hair
}

// section clips the curtain, as a polygon of points (t, u), by halves drawn
// in by inset, in one of the two places given.
func (c curtain) section(halves []half, inset float64, polygon, spare []geometry.Point) []geometry.Point {
	polygon = append(polygon, geometry.Point{}, geometry.Pt(c.length, 0), geometry.Pt(c.length, c.reach), geometry.Pt(0, c.reach))
	for _, h := range halves {
		h.c -= inset
		polygon, spare = geometry.ClipHalfPlane(spare[:0], polygon, geometry.Pt(h.a, h.b), h.c), polygon
		if len(polygon) == 0 {
			break
		}
	}
	return polygon
}
