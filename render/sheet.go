package render

import (
	"cmp"
	"slices"
	"strings"

	"rodsheet/geometry"
	"rodsheet/geometry/lists"
	"rodsheet/render/label"
	"rodsheet/render/lettering"
	"rodsheet/render/page"
	"rodsheet/render/table"
	"rodsheet/templates"
)

// A place names one tile of one drawing, or a picture.
type place struct {
	drawing  *tiling
	row, col int
	picture  *view // and no drawing
}

// shows reports whether the drawing or the picture is what a view asks for, of that size
// or of all.
func (p place) shows(asked templates.View) bool {
	var views [2]templates.View
	if p.picture != nil {
		views[0] = p.picture.View
	} else {
		views = [2]templates.View{p.drawing.View, p.drawing.Also}
	}
	return slices.ContainsFunc(views[:], func(v templates.View) bool {
		return v.Part == asked.Part && v.Face == asked.Face && (v.Size == asked.Size || v.Size == "" || asked.Size == "")
	})
}

// name tells the tile from the others of its drawing.
func (p place) name() string {
	switch {
	case p.drawing.cols == 1:
		return say(rowN, p.row)
	case p.drawing.rows == 1:
		return say(columnN, p.col)
	}
	return say(rowColumn, p.row, p.col)
}

// tileSheets returns the sheet, from 1, on which each tile stands, and each picture
// that a card may call for.
func (p Plan) tileSheets() map[place]int {
	out := map[place]int{}
	for i, s := range p.sheets {
		for _, b := range s.blocks {
			switch {
			case b.tile != nil:
				out[place{drawing: b.tile.tiling, row: b.tile.row, col: b.tile.col}] = i + 1
			case b.view != nil && b.view.View != templates.View{}:
				out[place{picture: b.view}] = i + 1
			}
		}
	}
	return out
}

// A pen draws on one page. None draws nothing: room for lettering is looked for only.
type pen struct{ page page.Page }

func (n *pen) line(line int, points ...geometry.Point) {
	if n == nil {
		return
	}
	n.page.Strokes = append(n.page.Strokes, page.Stroke{Line: line, Points: points})
}

func (n *pen) text(x, y, height float64, s string) {
	if s != "" {
		n.page.Texts = append(n.page.Texts, page.Text{At: geometry.Pt(x, y), Height: height, String: s})
	}
}

// sheet draws sheet i.
func (p Plan) sheet(i int, where map[place]int) page.Page {
	s := p.sheets[i]
	paper := s.layout.Paper
	n := &pen{page.Page{Width: paper.Width, Height: paper.Height, Number: i + 1, Name: p.bookmark(i)}}
	for _, b := range s.blocks {
		switch {
		case b.tile != nil:
			s.drawTile(n, b, where)
			s.drawCaption(n, b)
		case b.view != nil:
			b.view.draw(n, s.upperLeft(b))
		case b.card != nil:
			b.card.draw(n, s.upperLeft(b), where)
		default:
			n.words(b.panel, s.upperLeft(b))
		}
	}
	p.drawFoot(n, i)
	return n.page
}

// bookmark names a sheet by the templates and pictures on it or, where it has
// none, by its first words.
func (p Plan) bookmark(i int) string {
	var names []string
	for _, b := range p.sheets[i].blocks {
		if b.named || len(names) == 0 {
			names = append(names, b.title())
		}
	}
	return say(bookmarkOf, i+1, strings.Join(names, "; "))
}

// light reports whether lettering may stand over strokes of the role.
func light(r templates.Role) bool { return r == templates.Waste }

// drawTile draws one tile: its strokes, its marks, and its labels where they
// keep clear of both.
func (s sheet) drawTile(n *pen, b placed, where map[place]int) {
	t := b.tile
	corner := s.corner(b)
	move := geometry.Translate(corner.Sub(t.window.Min))
	letters := &label.Placer{Window: t.core().Add(corner.Sub(t.window.Min))}
	shown := func(points []geometry.Point) [][]geometry.Point {
		runs := geometry.ClipLine(t.turn.ApplyAll(points), t.window)
		for i, run := range runs {
			runs[i] = move.ApplyAll(run)
		}
		return runs
	}
	hatch := n.strokes(t.Strokes, 0, shown, letters)
	n.marks(t, move, letters)
	seams := n.trimLines(t, move, letters, where)
	letters = t.lettered(letters, move)
	for _, s := range seams { // last: along a seam there is more room than round a point
		letters.Set(s.words, small, s.line)
	}
	n.lettering(letters, hatch, 0)
}

// lettered sets the labels of a tile, in their order or, where that is better, the longest
// first: each away from the lines that others name, but where that leaves no room for one:
// to be struck is worse than to stand near a stranger.
func (t *tile) lettered(letters *label.Placer, move geometry.Affine) *label.Placer {
	shown := slices.DeleteFunc(slices.Clone(t.Labels), func(l templates.Label) bool { _, ok := t.shows(l); return !ok })
	longest := slices.Clone(shown)
	slices.SortStableFunc(longest, func(a, b templates.Label) int { return cmp.Compare(len(b.Text), len(a.Text)) })
	plain := letters.Copy()
	for _, l := range shown {
		on, _ := t.shows(l)
		nameLine(letters, move, on)
	}
	var best *label.Placer
	for _, of := range []*label.Placer{letters, plain} {
		for _, order := range [][]templates.Label{shown, longest} {
			p := of.Copy()
			for _, l := range order {
				on, _ := t.shows(l)
				setLabel(p, l, on, move)
			}
			if best == nil || cmp.Or(cmp.Compare(p.Struck, best.Struck), cmp.Compare(p.Cost, best.Cost)) < 0 {
				best = p
			}
			if best.Struck == of.Struck && best.Cost == of.Cost {
				return best
			}
		}
		if best.Struck == of.Struck {
			break
		}
	}
	return best
}

// strokes draws as open lines what there is to show of strokes, in the lines of
// roles from the first on. It returns the hatching for later: that gives way to
// the labels.
func (n *pen) strokes(strokes []templates.Stroke, first int, shown func([]geometry.Point) [][]geometry.Point, letters *label.Placer) (hatch []geometry.Segment) {
	for _, s := range strokes {
		for _, points := range shown(s.Points) {
			if light(s.Role) {
				hatch = append(hatch, chain(points)...)
				continue
			}
			n.line(first+int(s.Role), points...)
			letters.Bar(points...)
		}
	}
	return hatch
}

// lettering draws the hatching that was kept for later, and what a placer has
// set with its leaders, in the lines of roles from the first on.
func (n *pen) lettering(p *label.Placer, hatch []geometry.Segment, first int) {
	if n == nil {
		return
	}
	n.hatch(hatch, p.Boxes, first+int(templates.Waste))
	for _, l := range p.Leaders {
		n.line(leader, l.A, l.B)
		n.area(0, geometry.Translate(l.B), dot)
	}
	n.page.Texts = append(n.page.Texts, p.Texts...)
}

// dot ends a leader on what it names.
var dot = geometry.Arc(geometry.Point{}, 0.35, 0, fullTurn)[1:]

// setLabel places a label for on, which is moved to the page with its drawing.
func setLabel(p *label.Placer, l templates.Label, on geometry.Segment, move geometry.Affine) {
	p.Set(l.Text, letterHeight(l), geometry.Segment{A: move.Apply(on.A), B: move.Apply(on.B)})
}

// nameLine keeps lettering that speaks of anything else away from a line.
func nameLine(p *label.Placer, move geometry.Affine, on geometry.Segment) {
	if on.A != on.B {
		p.Named = append(p.Named, geometry.Segment{A: move.Apply(on.A), B: move.Apply(on.B)})
	}
}

func letterHeight(l templates.Label) float64 {
	if l.Big {
		return large
	}
	return small
}

// hatch draws hatching, but for what lettering and marks stand on.
func (n *pen) hatch(lines []geometry.Segment, boxes [][]geometry.Point, line int) {
	bounds := lists.Map(boxes, func(box []geometry.Point) geometry.Rect { return geometry.Bounds(box...) })
	var parts, rest []geometry.Segment
	for _, l := range lines {
		parts = append(parts[:0], l)
		around := geometry.Bounds(l.A, l.B)
		for i, box := range boxes {
			if !around.Overlaps(bounds[i]) {
				continue
			}
			rest = rest[:0]
			for _, part := range parts {
				rest = append(rest, geometry.CutOut(part, box)...)
			}
			parts, rest = rest, parts
		}
		for _, part := range parts {
			n.line(line, part.A, part.B)
		}
	}
}

// marks draws the registration marks, the verniers and the crosses of the
// check lengths that the window holds whole.
func (n *pen) marks(t *tile, move geometry.Affine, letters *label.Placer) {
	// In the narrowest overlap a mark reaches from side to side of the strip,
	// and rounding must not lose it.
	const rounding = 1e-6
	window := t.window.Offset(rounding)
	for _, at := range t.marks {
		if window.Holds(geometry.Rect{Min: at, Max: at}.Offset(2 * markRadius)) {
			c := move.Apply(at)
			n.cross(c, 2*markRadius)
			n.line(register, geometry.Arc(c, markRadius, 0, fullTurn)...)
			letters.Avoid(geometry.Rect{Min: c, Max: c}.Offset(2 * markRadius))
		}
	}
	for _, v := range t.verniers {
		if box := v.box(); t.window.Holds(box) {
			for _, pair := range v.pairs() {
				n.line(vernierLine, move.Apply(pair.trimmed.A), move.Apply(pair.trimmed.B))
				n.line(vernierLine, move.Apply(pair.under.A), move.Apply(pair.under.B))
			}
			letters.Avoid(geometry.Rect{Min: move.Apply(box.Min), Max: move.Apply(box.Max)})
		}
	}
	for _, x := range t.crosses {
		if t.window.Holds(geometry.Rect{Min: x.at, Max: x.at}.Offset(markRadius)) {
			c := move.Apply(x.at)
			for _, arm := range n.cross(c, markRadius) {
				letters.Bar(arm[:]...)
			}
			if t.owns(x.at) {
				letters.Set(x.name, large, geometry.Segment{A: c, B: c})
			}
		}
	}
}

func (n *pen) cross(c geometry.Point, arm float64) [2][2]geometry.Point {
	level := [2]geometry.Point{c.Sub(geometry.Pt(arm, 0)), c.Add(geometry.Pt(arm, 0))}
	plumb := [2]geometry.Point{c.Sub(geometry.Pt(0, arm)), c.Add(geometry.Pt(0, arm))}
	n.line(register, level[:]...)
	n.line(register, plumb[:]...)
	return [2][2]geometry.Point{level, plumb}
}

// A seamLine is where a tile is trimmed, or its neighbour laid, with what is said there.
type seamLine struct {
	line  geometry.Segment
	words string
}

// trimLines draws the trim line of every seam of the tile. The left and the
// upper sheet of a pair is trimmed and laid on the other.
func (n *pen) trimLines(t *tile, move geometry.Affine, letters *label.Placer, where map[place]int) (out []seamLine) {
	core, w := t.core(), t.window
	for _, seam := range []struct {
		row, col int // of the neighbour, from this tile
		line     geometry.Segment
		trimmed  bool
	}{
		{0, 1, geometry.Segment{A: geometry.Pt(core.Max.X, w.Min.Y), B: geometry.Pt(core.Max.X, w.Max.Y)}, true},
		{0, -1, geometry.Segment{A: geometry.Pt(core.Min.X, w.Min.Y), B: geometry.Pt(core.Min.X, w.Max.Y)}, false},
		{1, 0, geometry.Segment{A: geometry.Pt(w.Min.X, core.Min.Y), B: geometry.Pt(w.Max.X, core.Min.Y)}, true},
		{-1, 0, geometry.Segment{A: geometry.Pt(w.Min.X, core.Max.Y), B: geometry.Pt(w.Max.X, core.Max.Y)}, false},
	} {
		next := place{drawing: t.tiling, row: t.row + seam.row, col: t.col + seam.col}
		if where[next] == 0 {
			continue
		}
		s := geometry.Segment{A: move.Apply(seam.line.A), B: move.Apply(seam.line.B)}
		n.line(trim, s.A, s.B)
		letters.Bar(s.A, s.B)
		text := layToLine
		if seam.trimmed {
			text = trimHere
		}
		out = append(out, seamLine{s, say(text, numbers{tiles: where}.tile(next))})
	}
	return out
}

// shows returns the part of the labelled line, in laid coordinates, that the
// tile is to label, and reports whether there is one. A point belongs to the
// one tile whose core holds it. A line is labelled wherever enough of it
// shows, and always where most of it does.
func (t *tile) shows(l templates.Label) (geometry.Segment, bool) {
	on := geometry.Segment{A: t.turn.Apply(l.On.A), B: t.turn.Apply(l.On.B)}
	if t.rows*t.cols == 1 {
		return on, true
	}
	core := t.core()
	if part, ok := geometry.ClipSegment(on, core); ok && part.A != part.B &&
		(t.owns(on.Mid()) || part.Length() > lettering.Width(l.Text, small)+6) {
		return part, true
	}
	at := clamp(on.Mid(), core)
	return geometry.Segment{A: at, B: at}, t.owns(on.Mid())
}

func (t *tile) owns(p geometry.Point) bool {
	row, col := t.owner(p)
	return row == t.row && col == t.col
}

// drawCaption names the tile under its window and shows its place in the
// whole on a key map.
func (s sheet) drawCaption(n *pen, b placed) {
	t := b.tile
	corner := s.corner(b)
	x := corner.X
	if size, cell := t.mapSize(); cell > 0 {
		n.keyMap(t, geometry.Pt(x, corner.Y-1), cell)
		x += size.X + 2
	}
	for i, line := range b.caption {
		n.text(x, corner.Y-float64(i)*lettering.Pitch(small)-small-1, small, line)
	}
}

// keyMap draws the tiles of the whole from its upper left corner, the one at
// hand crossed.
func (n *pen) keyMap(t *tile, at geometry.Point, cell float64) {
	w, h := float64(t.cols)*cell, float64(t.rows)*cell
	for c := 0; c <= t.cols; c++ {
		x := at.X + float64(c)*cell
		n.line(rule, geometry.Pt(x, at.Y), geometry.Pt(x, at.Y-h))
	}
	for r := 0; r <= t.rows; r++ {
		y := at.Y - float64(r)*cell
		n.line(rule, geometry.Pt(at.X, y), geometry.Pt(at.X+w, y))
	}
	x, y := at.X+float64(t.col-1)*cell, at.Y-float64(t.row)*cell
	n.line(rule, geometry.Pt(x, y), geometry.Pt(x+cell, y+cell))
	n.line(rule, geometry.Pt(x, y+cell), geometry.Pt(x+cell, y))
}

func (s sheet) upperLeft(b placed) geometry.Point {
	l := s.layout
	return geometry.Pt(l.Margin+railWidth+b.at.X, l.Paper.Height-l.Margin-b.at.Y)
}

func (n *pen) words(w *table.Block, at geometry.Point) {
	for _, l := range w.Lines {
		line := rule
		if l.Fine {
			line = tableLine
		}
		n.line(line, at.Add(l.A), at.Add(l.B))
	}
	for _, t := range w.Texts {
		n.text(at.X+t.At.X, at.Y+t.At.Y, t.Height, t.String)
	}
}
