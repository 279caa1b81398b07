package render

import (
	"math"

	"rodsheet/geometry"
	"rodsheet/geometry/lists"
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
	drawn   geometry.Rect  // what all takes on paper with the air and the figures of spans
	struck  int            // labels that find no clear place on a card
	needs   float64        // on a card without bounds to its width: where one is as wide it looks the same
}

// reduction returns scale number n of ISO 5455, from 0: 1:1, 1:2, 1:5, 1:10
// and so on.
func reduction(n int) float64 { return [...]float64{1, 2, 5}[n%3] * math.Pow(10, float64(n/3)) }

// newView returns a picture reduced by a number of times, or one that is not
// to scale by any.
func newView(p templates.Picture, reduced float64) *view {
	v := &view{Picture: p, factor: 1 / reduced, scale: say(scaleOf, reduced), air: geometry.Pt(3, 3)}
	if p.NoScale {
		v.scale = say(notToScale)
	}
	if len(p.Labels)+len(p.Spans) > 0 {
		v.air = geometry.Pt(room, room)
	}
	v.bounds = p.Bounds()
	v.scaleTo(v.factor)
	return v
}

// scaleTo sets the scale, and what the picture then takes: strokes with the air round
// them, spans with their figures.
func (v *view) scaleTo(factor float64) {
	const clear = 1.01 // of the edge of the window, and rounding
	v.factor = factor
	v.drawn = geometry.Rect{Min: v.bounds.Min.Mul(factor).Sub(v.air), Max: v.bounds.Max.Mul(factor).Add(v.air)}
	for _, s := range v.Spans {
		feet := geometry.Segment{A: s.A.Mul(factor), B: s.B.Mul(factor)}
		v.drawn = v.drawn.Union(label.Room(s.Text, small, feet, s.Away.Mul(factor)).Offset(clear))
	}
}

// fill makes the strokes of a picture as large as one size allows them, and all of it
// another, of no round scale. What spans take on paper hardly shrinks with it: it is tried.
func (v *view) fill(strokes, most geometry.Point) {
	factor := min(max(strokes.X, 1)/max(v.bounds.Width(), 1), max(strokes.Y, 1)/max(v.bounds.Height(), 1))
	for least := factor / 2; ; factor *= 0.95 {
		if v.scaleTo(factor); v.within(most) || factor < least {
			return
		}
	}
}

func (v *view) within(most geometry.Point) bool {
	const rounding = 1e-9
	return v.drawn.Width() <= most.X+rounding && v.drawn.Height() <= most.Y+rounding
}

// size returns the width and height of the picture with its words. It is wide
// enough for the longest label and for a heading of two lines.
func (v *view) size() geometry.Point {
	const narrowest = 40.0
	width := max(narrowest, v.drawn.Width(), lettering.Width(v.Heading, large)/2+10)
	for _, l := range v.Labels {
		width = max(width, lettering.Width(l.Text, letterHeight(l))+2*v.air.X)
	}
	for _, s := range v.Spans {
		width = max(width, lettering.Width(s.Text, small)+2*v.air.X)
	}
	return geometry.Pt(width, v.top(width)+v.drawn.Height()+captionHeight(1))
}

func (v *view) top(width float64) float64 { return table.Top(v.Heading, width) }

func (v *view) block() block { return block{view: v, size: v.size(), named: true} }

// fits reports whether the picture needs no more than most, and its words no
// more height. A label may be wider: no scale would mend that.
func (v *view) fits(most geometry.Point) bool {
	return v.drawn.Width() <= most.X && v.size().Y <= most.Y
}

// fitted returns the picture as large as most allows, by no round scale.
func fitted(p templates.Picture, most geometry.Point) *view {
	v := newView(p, 1)
	words := v.size().Y - v.drawn.Height()
	most.Y -= words
	v.fill(most.Sub(v.air.Mul(2)), most)
	if v.factor > 1 {
		v.scaleTo(1)
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
		shapes := lists.Map(widths, func(width float64) block {
			return fitted(p, geometry.Pt(min(widths[0], width), min(most, 1.2*width))).block()
		})
		out = append(out, shapes)
	}
	return out, clear
}

// widen gives the picture more air where its lettering finds no clear place, as far as
// a width allows, and reports whether it then does.
func (v *view) widen(most float64) bool {
	usual := v.air
	for _, more := range [...]geometry.Point{{}, {X: 6}, {X: 6, Y: 6}, {X: 12}, {X: 12, Y: 12}, {X: 18, Y: 18}} {
		v.air = usual.Add(more)
		if v.scaleTo(v.factor); v.size().X > most {
			break
		}
		size := v.size()
		if v.inside(nil, geometry.Box(0, captionHeight(1), size.X, size.Y-v.top(size.X)), 0) == 0 {
			return true
		}
	}
	v.air = usual
	v.scaleTo(v.factor)
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
	move := geometry.Scale(v.factor, v.factor).Then(geometry.Translate(window.Centre().Sub(v.drawn.Centre())))
	letters.Reserve(v.lines())
	for _, a := range v.Areas {
		n.area(grays[a.Tone], move, a.Points)
		letters.Grounds = append(letters.Grounds, move.ApplyAll(a.Points))
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
		nameLine(letters, move, l.On)
	}
	feet := func(s templates.Span) geometry.Segment {
		return geometry.Segment{A: move.Apply(s.A), B: move.Apply(s.B)}
	}
	for _, s := range v.Spans {
		letters.Lead(feet(s), s.Away.Mul(v.factor))
	}
	for _, s := range v.Spans {
		n.span(letters.Span(s.Text, small, feet(s), s.Away.Mul(v.factor)))
		if letters.Struck > enough {
			return letters.Struck
		}
	}
	for _, l := range v.Labels {
		if setLabel(letters, l, l.On, move); letters.Struck > enough {
			return letters.Struck
		}
	}
	n.lettering(letters, hatch, pictureLine)
	return letters.Struck
}

// lines is about how many lines the strokes, the spans and the leaders take.
func (v *view) lines() int {
	sum := len(v.Arrows) + len(v.Labels) + 5*len(v.Spans)
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

// arrow draws a line with a head at its end, or at both.
func (n *pen) arrow(a templates.Arrow, move geometry.Affine, letters *label.Placer) {
	tips := move.ApplyAll(a.Points)
	n.line(pictured(templates.Construction), tips...)
	letters.Bar(tips...)
	last := len(tips) - 1
	n.head(tips[last], tips[last-1])
	if a.Both {
		n.head(tips[0], tips[1])
	}
}

// span draws a distance. One too short for two heads has them outside, on the line drawn
// on (common practice, no source).
func (n *pen) span(s label.Span) {
	on := label.DrawnOn(s.Line)
	for _, l := range s.Drawn() {
		n.line(pictured(templates.Construction), l.A, l.B)
	}
	from := geometry.Segment{A: s.Line.B, B: s.Line.A}
	if label.Short(s.Line) {
		from = on
	}
	n.head(s.Line.A, from.A)
	n.head(s.Line.B, from.B)
}

// head draws a filled head at a tip, its length three times its width as is usual in
// technical drawings.
func (n *pen) head(tip, from geometry.Point) {
	const half = 0.4
	back := from.Sub(tip).Unit().Mul(label.HeadLong)
	side := back.Perp().Mul(half / label.HeadLong)
	n.area(0, geometry.Identity(), []geometry.Point{tip, tip.Add(back).Add(side), tip.Add(back).Sub(side)})
}
