package solid

import (
	"cmp"
	"math"
	"slices"

	"rodsheet/geometry/lists"
)

// flat is the angle in radians by which two faces must differ for an edge to
// show between them.
const flat = 1e-7

// Edges returns the edges of the part as a whole. Where pieces meet in one
// flat surface, or fill the space round an edge, there is none.
func (p Part) Edges() []Edge {
	var out []Edge
	room := lists.Map(p.Pieces, func(s Solid) Extent { return s.Bounds().grown(hair) })
	for i, s := range p.Pieces {
		for _, e := range s.Edges() {
			out = append(out, p.sharp(i, e, room)...)
		}
	}
	return out
}

// A wedge is what a piece fills round a straight line, between two places on
// it: on a section square to the line, the directions from angle lo to hi.
type wedge struct {
	along  span // mm from the beginning of the line
	lo, hi float64
	edge   bool // the line is an edge of the piece
}

// sharp returns the parts of e, an edge of piece own, that are edges of the
// whole. What several pieces call their edge belongs to the first of them; those whose room
// it does not touch have nothing to say of it.
func (p Part) sharp(own int, e Edge, room []Extent) []Edge {
	reach := Extent{e.A, e.A}.Union(Extent{e.B, e.B})
	length := e.A.Distance(e.B)
	if length <= hair {
		return nil
	}
	first := 0 // index in near of the piece's own wedge
	near, here := make([]wedge, 0, 8), make([]wedge, 0, 8)
	cuts := append(make([]float64, 0, 16), 0, length)
	for i, s := range p.Pieces {
		if i == own {
			first = len(near)
		} else if !room[i].Overlaps(reach) {
			continue
		}
		w, ok := s.wedge(e, length)
		if ok {
			near = append(near, w)
			cuts = append(cuts, w.along.lo, w.along.hi)
		}
	}
	slices.Sort(cuts)
	var out []Edge
	for i := 1; i < len(cuts); i++ {
		lo, hi := cuts[i-1], cuts[i]
		if hi-lo <= hair {
			continue
		}
		var taken bool
		if here, taken = within(here[:0], near, (lo+hi)/2, first); !taken && broken(here) {
			out = append(out, Edge{e.A.Lerp(e.B, lo/length), e.A.Lerp(e.B, hi/length)})
		}
	}
	return out
}

// within appends to here the wedges at the place t, and reports whether one before
// first has its edge there.
func within(here, near []wedge, t float64, first int) (all []wedge, taken bool) {
	for i, w := range near {
		if w.along.lo < t && t < w.along.hi {
			here = append(here, w)
			taken = taken || i < first && w.edge
		}
	}
	return here, taken
}

// wedge returns what s fills round e, and reports whether it meets more than
// a hair of it.
func (s Solid) wedge(e Edge, length float64) (wedge, bool) {
	d := e.B.Sub(e.A).Mul(1 / length)
	u, v := d.square()
	w := wedge{along: span{0, length}, lo: 0, hi: 2 * math.Pi}
	sides := 0
	for _, f := range s.faces {
		slope, rest := f.Plane.N.Dot(d), -f.Plane.Height(e.A)
		switch {
		case slope > parallel:
			w.along.hi = min(w.along.hi, rest/slope)
		case slope < -parallel:
			w.along.lo = max(w.along.lo, rest/slope)
		case rest < -hair:
			return wedge{}, false
		case rest <= hair: // e lies in this face: half of the directions go
			in := math.Atan2(-f.Plane.N.Dot(v), -f.Plane.N.Dot(u))
			if sides++; sides == 1 {
				w.lo, w.hi = in-math.Pi/2, in+math.Pi/2
				continue
			}
			mid := (w.lo + w.hi) / 2
			in = mid + math.Remainder(in-mid, 2*math.Pi)
			w.lo, w.hi = max(w.lo, in-math.Pi/2), min(w.hi, in+math.Pi/2)
		}
	}
	w.edge = sides > 1
	return w, w.along.hi-w.along.lo > hair
}

// broken reports whether the wedges round a line leave an edge: they fill
// neither all directions nor exactly one half of them.
func broken(wedges []wedge) bool {
	if len(wedges) == 0 {
		return false
	}
	const turn = 2 * math.Pi
	for i, w := range wedges {
		k := turn * math.Floor(w.lo/turn)
		wedges[i].lo, wedges[i].hi = w.lo-k, w.hi-k
	}
	slices.SortFunc(wedges, func(a, b wedge) int { return cmp.Compare(a.lo, b.lo) })
	end := wedges[0].hi
	for _, w := range wedges {
		end = max(end, w.hi-turn) // runs on past the full turn
	}
	gaps := make([]float64, 0, 8)
	for _, w := range append(wedges[1:], wedge{lo: wedges[0].lo + turn}) {
		if w.lo-end > flat {
			gaps = append(gaps, w.lo-end)
		}
		end = max(end, w.hi)
	}
	return len(gaps) > 1 || len(gaps) == 1 && math.Abs(gaps[0]-math.Pi) > flat
}
