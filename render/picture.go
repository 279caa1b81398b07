package render

import (
	"math"

	"rodsheet/geometry"
	"rodsheet/render/label"
	"rodsheet/render/lettering"
	"rodsheet/render/page"
	"rodsheet/render/table"
	"rodsheet/templates"
)

// A view is a picture at the scale it is drawn to, under its heading and over
// the words that state the scale.
type view struct {
	templates.Picture
	bounds  geometry.Rect  // of the strokes, full size
	factor  float64        // mm on paper for a mm of the piece
	reduced float64        // on a card: so many times
	scale   string         // what is said of it
	caption []string       // on a card: heading and scale, below it
	air     geometry.Point // kept free at each side of the strokes
	struck  int            // labels that find no clear place on a card
}

// reduction returns scale number n of ISO 5455, from 0: 1:1, 1:2, 1:5, 1:10
// and so on.
func reduction(n int) float64 {
	return [...]float64{1, 2, 5}[n%3] * math.Pow(10, float64(n/3))
}

// newView returns a picture reduced by a number of times, or one that is not
// to scale by any.
func newView(p templates.Picture, reduced float64) *view {
	v := &view{Picture: p, factor: 1 / reduced, scale: say(scaleOf, reduced), air: geometry.Pt(3, 3)}
	if p.NoScale {
		v.scale = say(notToScale)
	}
	if len(p.Labels) > 0 {
		v.air = geometry.Pt(room, room)
	}
	v.bounds = p.Bounds()
	return v
}

func (v *view) drawn() geometry.Point {
	return geometry.Pt(v.bounds.Width(), v.bounds.Height()).Mul(v.factor).Add(v.air.Mul(2))
}

// size returns the width and height of the picture with its words. It is wide
// enough for the longest label and for a heading of two lines.
func (v *view) size() geometry.Point {
	const narrowest = 40.0
	width := max(narrowest, v.drawn().X, lettering.Width(v.Heading, large)/2+10)
	for _, l := range v.Labels {
		width = max(width, lettering.Width(l.Text, letterHeight(l))+2*v.air.X)
	}
	return geometry.Pt(width, v.top(width)+v.drawn().Y+captionHeight(1))
}

func (v *view) top(width float64) float64 { return table.Top(v.Heading, width) }

func (v *view) block() block { return block{view: v, size: v.size(), named: true} }

// fits reports whether the picture needs no more than most, and its words no
// more height. A label may be wider: no scale would mend that.
func (v *view) fits(most geometry.Point) bool {
	return v.drawn().X <= most.X && v.size().Y <= most.Y
}

// fitted returns the picture as large as most allows, by no round scale.
func fitted(p templates.Picture, most geometry.Point) *view {
	v := newView(p, 1)
	wide, high := v.bounds.Width(), v.bounds.Height()
	words := v.size().Y - high
	if wide > 0 {
		v.factor = min(v.factor, (most.X-2*v.air.X)/wide)
	}
	if high > 0 {
		v.factor = min(v.factor, (most.Y-words)/high)
	}
	return v
}

// scaleFor returns the number of the largest scale, from a given one on, at
// which all pictures that have one fit in most.
func scaleFor(pictures []templates.Picture, from int, most geometry.Point) int {
	const smallest = 24 // 1:10⁸: more than any length that is accepted needs
	n := from
	for _, p := range pictures {
		for !p.NoScale && n < smallest && !newView(p, reduction(n)).fits(most) {
			n++
		}
	}
	return n
}

// pictureItems returns the pictures of a job laid at the scale they have in
// common; those of none in each of the widths that they are free to take. It reports
// whether all lettering finds a clear place at that scale.
func pictureItems(pictures []templates.Picture, scale int, widths []float64, most float64) (out []item, clear bool) {
	clear = true
	for _, p := range pictures {
		if !p.NoScale {
			v := newView(p, reduction(scale))
			clear = v.widen(widths[0]) && clear
			out = append(out, item{v.block()})
			continue
		}
		var shapes item
		for _, width := range widths {
			shapes = append(shapes, fitted(p, geometry.Pt(min(widths[0], width), min(most, 1.2*width))).block())
		}
		out = append(out, shapes)
	}
	return out, clear
}

// widen gives the picture more air where its lettering finds no clear place, as far as
// a width allows, and reports whether it then does.
func (v *view) widen(most float64) bool {
	usual := v.air
	for _, more := range [...]float64{0, 6, 12, 18} {
		if v.air = usual.Add(geometry.Pt(more, more)); v.size().X > most {
			break
		}
		size := v.size()
		if v.inside(nil, geometry.Box(0, captionHeight(1), size.X, size.Y-v.top(size.X)), 0) == 0 {
			return true
		}
	}
	v.air = usual
	return false
}

func (v *view) draw(n *pen, at geometry.Point) {
	size := v.size()
	w := &table.Block{}
	level := w.Heading(v.Heading, size.X)
	foot := captionHeight(1) - size.Y
	w.Text(0, foot-small-1, small, v.scale)
	n.words(w, at)
	v.inside(n, geometry.Box(at.X, at.Y+foot, at.X+size.X, at.Y+level-1), math.MaxInt) // clear of the line below the heading
}

// inside draws the picture in the middle of a window, and returns how much of its
// lettering found no clear place; with more than enough of that it leaves off.
func (v *view) inside(n *pen, window geometry.Rect, enough int) (struck int) {
	if n == nil && len(v.Labels) == 0 {
		return 0
	}
	room := window.Offset(-1)
	room.Max.Y = window.Max.Y + 0.5 // the air round letters may reach out above: there stand no others
	letters := &label.Placer{Window: room, Strict: enough == 0}
	move := geometry.Translate(v.bounds.Centre().Mul(-1)).
		Then(geometry.Scale(v.factor, v.factor)).
		Then(geometry.Translate(window.Centre()))
	letters.Reserve(v.lines())
	for _, a := range v.Areas {
		n.area(grays[a.Tone], move, a.Points)
	}
	for _, a := range v.Arrows {
		n.arrow(a, move, letters)
	}
	var moved [1][]geometry.Point
	whole := func(points []geometry.Point) [][]geometry.Point {
		if n != nil {
			moved[0] = nil // the pen keeps what it draws
		}
		moved[0] = move.Append(moved[0][:0], points)
		return moved[:]
	}
	hatch := n.strokes(v.Strokes, pictureLine, whole, letters)
	for _, l := range v.Labels {
		if setLabel(letters, l, l.On, move); letters.Struck > enough {
			return letters.Struck
		}
	}
	n.lettering(letters, hatch, pictureLine)
	return letters.Struck
}

// lines is about how many lines the strokes and the leaders take.
func (v *view) lines() int {
	sum := len(v.Arrows) + len(v.Labels)
	for _, s := range v.Strokes {
		if !light(s.Role) {
			sum += len(s.Points) - 1
		}
	}
	return sum
}

// grays are the tones on paper: light enough for lines and letters to stand on, and
// apart by enough to be told from each other on a copy.
var grays = [...]float64{templates.White: 1, templates.Light: 0.93, templates.Middle: 0.82, templates.Dark: 0.5}

func (n *pen) area(gray float64, move geometry.Affine, points []geometry.Point) {
	if n != nil {
		n.page.Areas = append(n.page.Areas, page.Area{Gray: gray, Points: move.ApplyAll(points)})
	}
}

// arrow draws a line with filled heads, their length three times their width as is
// usual in technical drawings. A distance too short for two of them has them outside,
// on the line drawn on (common practice, no source).
func (n *pen) arrow(a templates.Arrow, move geometry.Affine, letters *label.Placer) {
	const long, half, short = 2.4, 0.4, 5
	tips := move.ApplyAll(a.Points)
	line, last := tips, len(tips)-1
	near, far := tips[1], tips[last-1] // what the heads come from
	if apart := tips[last].Sub(tips[0]); a.Both && last == 1 && apart.Norm() < short {
		on := apart.Unit().Mul(1.6 * long)
		near, far = tips[0].Sub(on), tips[1].Add(on)
		line = []geometry.Point{near, far}
	}
	n.line(pictured(templates.Construction), line...)
	letters.Bar(line...)
	head := func(tip, from geometry.Point) {
		back := from.Sub(tip).Unit().Mul(long)
		side := back.Perp().Mul(half / long)
		n.area(0, geometry.Identity(), []geometry.Point{tip, tip.Add(back).Add(side), tip.Add(back).Sub(side)})
	}
	head(tips[last], far)
	if a.Both {
		head(tips[0], near)
	}
}
