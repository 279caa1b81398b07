package render

import (
	"cmp"
	"math"
	"slices"

	"rodsheet/geometry"
	"rodsheet/geometry/lists"
	"rodsheet/templates"
)

// ink returns the strokes of p, with the hatching or without, as segments in laid
// coordinates.
func (p *tiling) ink(hatching bool) []geometry.Segment {
	var out []geometry.Segment
	for _, s := range p.Strokes {
		if hatching || !light(s.Role) {
			out = append(out, chain(p.turn.ApplyAll(s.Points))...)
		}
	}
	return out
}

func (p *tiling) laidOut(segments []geometry.Segment) []geometry.Segment {
	return lists.Map(segments, func(s geometry.Segment) geometry.Segment {
		return geometry.Segment{A: p.turn.Apply(s.A), B: p.turn.Apply(s.B)}
	})
}

// sketch returns the strokes of d more coarsely, in template coordinates: a
// curve as chords of up to 15 mm, of hatching every eighth line. It is enough
// to compare cuts by.
func sketch(d templates.Drawing) []geometry.Segment {
	const chord, lines = 15.0, 8
	var out []geometry.Segment
	hatch := 0
	for _, s := range d.Strokes {
		if light(s.Role) {
			if hatch++; hatch%lines != 0 {
				continue
			}
		}
		points, last := s.Points, 0
		for i := 1; i < len(points); i++ {
			if i < len(points)-1 && points[last].Distance(points[i+1]) <= chord {
				continue
			}
			out = append(out, geometry.Segment{A: points[last], B: points[i]})
			last = i
		}
	}
	return out
}

// A reach is what ink there is in a column, from the lowest y to the highest.
type reach struct{ low, high float64 }

// inColumns returns, for each column between xs, where the ink in it reaches,
// from below, in reaches that do not meet.
func inColumns(ink []geometry.Segment, xs []float64) [][]reach {
	out := make([][]reach, len(xs)-1)
	for _, s := range ink {
		if s.A.X > s.B.X {
			s.A, s.B = s.B, s.A
		}
		for c := range out {
			left, right := xs[c]-inkEdge, xs[c+1]+inkEdge
			if right < s.A.X {
				continue
			}
			if left > s.B.X {
				break
			}
			low, high := between(s, left, right)
			out[c] = with(out[c], reach{low, high})
		}
	}
	for c, all := range out {
		slices.SortFunc(all, func(a, b reach) int { return cmp.Compare(a.low, b.low) })
		out[c] = all[:0]
		for _, r := range all {
			out[c] = with(out[c], r)
		}
	}
	return out
}

// with adds a reach to others, as part of the last one where the two meet.
func with(all []reach, r reach) []reach {
	n := len(all) - 1
	if n < 0 || r.low > all[n].high || r.high < all[n].low {
		return append(all, r)
	}
	all[n] = reach{min(all[n].low, r.low), max(all[n].high, r.high)}
	return all
}

// touched returns, row by row, which cores have ink in them. ys run down.
func touched(columns [][]reach, ys []float64) []bool {
	cols, rows := len(columns), len(ys)-1
	kept := make([]bool, cols*rows)
	for c, reaches := range columns {
		for r := range rows {
			for _, ink := range reaches {
				if ink.high >= ys[r+1]-inkEdge && ink.low <= ys[r]+inkEdge {
					kept[r*cols+c] = true
				}
			}
		}
	}
	return kept
}

// between returns the least and the greatest y of s, which runs to the right,
// from x = left to x = right. They meet.
func between(s geometry.Segment, left, right float64) (low, high float64) {
	if s.A.X == s.B.X {
		return min(s.A.Y, s.B.Y), max(s.A.Y, s.B.Y)
	}
	y := func(x float64) float64 {
		switch {
		case x <= s.A.X:
			return s.A.Y
		case x >= s.B.X:
			return s.B.Y
		}
		return s.A.Y + (s.B.Y-s.A.Y)*(x-s.A.X)/(s.B.X-s.A.X)
	}
	a, b := y(left), y(right)
	return min(a, b), max(a, b)
}

// join adds the tiles that tie those kept into one piece, so that every tile
// is registered to the rest: between the first piece and the nearest other
// one, along a row and then a column, until there is one piece only.
func join(kept []bool, cols int) {
	for {
		piece := pieceOf(kept, cols)
		from, to, far := -1, -1, math.MaxInt
		for i, k := range kept {
			if !k || piece[i] {
				continue
			}
			for j := range kept {
				if piece[j] && apart(i, j, cols) < far {
					from, to, far = j, i, apart(i, j, cols)
				}
			}
		}
		if from < 0 {
			return
		}
		for from != to {
			switch a, b := from%cols, to%cols; {
			case a < b:
				from++
			case a > b:
				from--
			case from < to:
				from += cols
			default:
				from -= cols
			}
			kept[from] = true
		}
	}
}

// pieceOf marks the tiles that hang together with the first kept one over
// common seams.
func pieceOf(kept []bool, cols int) []bool {
	piece := make([]bool, len(kept))
	var reach func(i int)
	reach = func(i int) {
		if i < 0 || i >= len(kept) || !kept[i] || piece[i] {
			return
		}
		piece[i] = true
		if i%cols > 0 {
			reach(i - 1)
		}
		if i%cols < cols-1 {
			reach(i + 1)
		}
		reach(i - cols)
		reach(i + cols)
	}
	reach(slices.Index(kept, true))
	return piece
}

func apart(i, j, cols int) int { return abs(i%cols-j%cols) + abs(i/cols-j/cols) }

func abs(n int) int { return max(n, -n) }

// number counts what is true.
func number(kept []bool) int { return lists.Count(kept, func(k bool) bool { return k }) }
