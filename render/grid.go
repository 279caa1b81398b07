package render

import (
	"math"
	"sort"

	"rodsheet/geometry"
	"rodsheet/geometry/lists"
	"rodsheet/templates"
)

const (
	seamClear  = 15.0        // how far a seam keeps from a corner of the template where it can
	shortPart  = 40.0        // least core of a tile that is not one of equal parts
	inkEdge    = 0.5         // a tile is kept for ink so near to its core
	turnsSharp = math.Pi / 9 // a bend that counts as a corner; flatter ones are a curve
)

// An axis is one direction in which a drawing is cut: its extent, the longest
// window, and what seams had better avoid. Rows are cut along −y, so that the
// first is the top one.
type axis struct {
	lo, hi  float64
	most    float64 // the longest window
	overlap float64
	corners []float64    // sorted
	joints  [][2]float64 // from, to
}

// axes returns the two directions in which p is cut into windows that need no
// more than size, caption included.
func (p *tiling) axes(size geometry.Point) (x, y axis) {
	b := p.bounds
	x = axis{lo: b.Min.X, hi: b.Max.X, most: size.X, overlap: p.overlap}
	y = axis{lo: -b.Max.Y, hi: -b.Min.Y, most: size.Y - captionHeight(2), overlap: p.overlap}
	return x, y
}

// avoid tells the axes where the corners and the joints of p are.
func (p *tiling) avoid(x, y *axis) {
	for _, c := range p.corners() {
		x.corners, y.corners = append(x.corners, c.X), append(y.corners, -c.Y)
	}
	sort.Float64s(x.corners)
	sort.Float64s(y.corners)
	for _, j := range p.joints(math.Min(x.most, y.most) / 2) {
		x.joints = append(x.joints, [2]float64{j.Min.X, j.Max.X})
		y.joints = append(y.joints, [2]float64{-j.Max.Y, -j.Min.Y})
	}
}

// corners returns the ends and the sharp bends of all strokes that are part of the
// template's outline, and the ends of its centre lines: a trim line on one of these is
// not to be told from it. In laid coordinates.
func (p *tiling) corners() []geometry.Point {
	var out []geometry.Point
	for _, s := range p.Strokes {
		if light(s.Role) || s.Role == templates.Construction {
			continue
		}
		for i, q := range s.Points {
			if i == 0 || i == len(s.Points)-1 || sharp(s.Points[i-1], q, s.Points[i+1]) {
				out = append(out, p.turn.Apply(q))
			}
		}
	}
	return out
}

func sharp(a, b, c geometry.Point) bool {
	u, v := b.Sub(a), c.Sub(b)
	return math.Abs(math.Atan2(u.Cross(v), u.Dot(v))) > turnsSharp
}

// joints returns the boxes of what is to be cut out in one piece: closed
// outlines, and hatching without a break, no longer than most.
func (p *tiling) joints(most float64) []geometry.Rect {
	var out []geometry.Rect
	var held []geometry.Point
	add := func() {
		if box := geometry.Bounds(held...); len(held) > 2 && math.Max(box.Width(), box.Height()) <= most {
			out = append(out, box)
		}
		held = held[:0]
	}
	for _, s := range p.Strokes {
		closed := len(s.Points) > 3 && s.Points[0] == s.Points[len(s.Points)-1]
		if !light(s.Role) {
			add()
		}
		if light(s.Role) || closed {
			held = append(held, p.turn.ApplyAll(s.Points)...)
		}
		if !light(s.Role) {
			add()
		}
	}
	add()
	return out
}

// least returns into how many windows the axis must be cut. What fills a
// sheet to the last bit is not cut for the rounding of its size.
func (a axis) least() int {
	const rounding = 1e-6
	if a.hi-a.lo <= a.most+rounding {
		return 1
	}
	return int(math.Ceil((a.hi - a.lo - a.overlap) / (a.most - a.overlap)))
}

// borders returns lo, n − 1 seams a pitch apart, and hi. A shift of 0 gives
// the first part the same window as the inner ones.
func (a axis) borders(n int, pitch, shift float64) []float64 {
	out := []float64{a.lo}
	for i := 1; i < n; i++ {
		out = append(out, a.lo+float64(i)*pitch+a.overlap/2-shift)
	}
	return append(out, a.hi)
}

func (a axis) equal(n int) []float64 { return a.borders(n, (a.hi-a.lo-a.overlap)/float64(n), 0) }

// slack is how far a row of n full windows reaches beyond the axis.
func (a axis) slack(n int) float64 { return float64(n)*(a.most-a.overlap) + a.overlap - (a.hi - a.lo) }

// shifted returns the borders of n full windows of which the first and the
// last are cut short: the first by the share t of the slack. It returns nil
// where that leaves a sliver.
func (a axis) shifted(n int, t float64) []float64 {
	out := a.borders(n, a.most-a.overlap, t*a.slack(n))
	for i := 1; i < len(out); i++ {
		if out[i]-out[i-1] < math.Min(shortPart, (a.most-a.overlap)/2) {
			return nil
		}
	}
	return out
}

// harm counts what a seam at x runs through: a joint counts ten corners.
func (a axis) harm(x float64) int {
	const joint = 10
	i := sort.SearchFloat64s(a.corners, x-seamClear+1e-9)
	j := sort.SearchFloat64s(a.corners, x+seamClear-1e-9)
	n := j - i
	for _, s := range a.joints {
		if s[0] < x && x < s[1] {
			n += joint
		}
	}
	return n
}

func (a axis) harms(borders []float64) int { return lists.Sum(borders[1:len(borders)-1], a.harm) }

// bestSeams returns the borders of n windows whose seams do the least harm,
// and between equals lie nearest to those of equal windows. Seams are tried a
// fixed step apart; the best way through them is found seam by seam (the
// shortest path through layers).
func (a axis) bestSeams(n int) []float64 {
	const most = 60 // places of a seam
	even, full := a.equal(n), a.most-a.overlap
	short, span := math.Min(shortPart, full/2), a.slack(n)
	step := math.Max(1, span/most)
	layers := [][]float64{{a.lo}}
	for i := 1; i < n; i++ {
		var places []float64
		// From as far left as the windows to the right of the seam allow, to as far
		// right as those to the left do.
		for k := range int(span/step) + 1 {
			places = append(places, a.lo+float64(i)*full+a.overlap/2-span+float64(k)*step)
		}
		layers = append(layers, places)
	}
	layers = append(layers, []float64{a.hi})
	best, from := [][]float64{{0}}, [][]int{{0}} // least cost up to a place, and the place before it
	for i := 1; i <= n; i++ {
		costs, before := make([]float64, len(layers[i])), make([]int, len(layers[i]))
		longest := full
		if i == 1 || i == n {
			longest = a.most - a.overlap/2
		}
		for k, x := range layers[i] {
			own := 0.0
			if i < n {
				off := (x - even[i]) / full
				own = float64(1000*a.harm(x)) + off*off
			}
			costs[k] = math.Inf(1)
			for j, y := range layers[i-1] {
				if part := x - y; part >= short && part <= longest+1e-9 && best[i-1][j]+own < costs[k] {
					costs[k], before[k] = best[i-1][j]+own, j
				}
			}
		}
		best, from = append(best, costs), append(from, before)
	}
	if math.IsInf(best[n][0], 1) {
		return even
	}
	out := make([]float64, n+1)
	for i, k := n, 0; i >= 0; i-- {
		out[i], k = layers[i][k], from[i][k]
	}
	return out
}

// negated returns borders counted along −y as y.
func negated(v []float64) []float64 { return lists.Map(v, func(x float64) float64 { return -x }) }
