package solid

import (
	"cmp"
	"math"
	"slices"

	"rodsheet/geometry"
	"rodsheet/geometry/lists"
)

// A span is the interval lo ≤ t ≤ hi.
type span struct{ lo, hi float64 }

// merge returns the spans in rising order, joined where less than gap is
// between them.
func merge(spans []span, gap float64) []span {
	slices.SortFunc(spans, func(a, b span) int { return cmp.Compare(a.lo, b.lo) })
	var out []span
	for _, s := range spans {
		if n := len(out) - 1; n >= 0 && s.lo <= out[n].hi+gap {
			out[n].hi = max(out[n].hi, s.hi)
			continue
		}
		out = append(out, s)
	}
	return out
}

// minus returns what the spans of b, in rising order, leave of those of a,
// dropping what is not longer than gap.
func minus(a, b []span, gap float64) []span {
	var out []span
	keep := func(lo, hi float64) {
		if hi-lo > gap {
			out = append(out, span{lo, hi})
		}
	}
	for _, s := range a {
		at := s.lo
		for _, t := range b {
			keep(at, min(t.lo, s.hi))
			at = max(at, t.hi)
		}
		keep(at, s.hi)
	}
	return out
}

// An ink is one edge on the paper with the shares of it that are hidden.
type ink struct {
	line geometry.Segment
	dark []span
}

// A rule is a straight line on the paper without ends, and what is drawn on
// it, in mm from at.
type rule struct {
	at, along       geometry.Point
	visible, hidden []span
}

// tidy draws every place of every line once, visible before hidden. The
// longest lines come first: they carry the shorter ones that lie on them.
func tidy(inks []ink) (visible, hidden []geometry.Segment) {
	slices.SortStableFunc(inks, func(a, b ink) int {
		return cmp.Compare(b.line.Length(), a.line.Length())
	})
	rules := make([]rule, 0, len(inks))
	for _, k := range inks {
		i := 0
		for i < len(rules) && !rules[i].carries(k.line) {
			i++
		}
		if i == len(rules) {
			rules = append(rules, rule{at: k.line.A, along: k.line.B.Sub(k.line.A).Unit()})
		}
		rules[i].draw(k)
	}
	for _, r := range rules {
		seen := merge(r.visible, hair)
		visible = append(visible, r.segments(minus(seen, nil, hair))...)
		hidden = append(hidden, r.segments(minus(merge(r.hidden, hair), seen, hair))...)
	}
	return visible, hidden
}

// carries reports whether s lies on r.
func (r *rule) carries(s geometry.Segment) bool {
	return math.Abs(r.along.Cross(s.A.Sub(r.at))) <= hair &&
		math.Abs(r.along.Cross(s.B.Sub(r.at))) <= hair
}

// draw puts k, which r carries, on r.
func (r *rule) draw(k ink) {
	a, b := r.along.Dot(k.line.A.Sub(r.at)), r.along.Dot(k.line.B.Sub(r.at))
	put := func(to []span, shares []span) []span {
		for _, s := range shares {
			p, q := a+(b-a)*s.lo, a+(b-a)*s.hi
			to = append(to, span{min(p, q), max(p, q)})
		}
		return to
	}
	r.hidden = put(r.hidden, k.dark)
	r.visible = put(r.visible, minus([]span{{0, 1}}, k.dark, 0))
}

func (r rule) segments(spans []span) []geometry.Segment {
	return lists.Map(spans, func(s span) geometry.Segment {
		return geometry.Segment{A: r.at.Add(r.along.Mul(s.lo)), B: r.at.Add(r.along.Mul(s.hi))}
	})
}
