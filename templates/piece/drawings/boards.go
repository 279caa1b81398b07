package drawings

import (
	"math"

	"rodsheet/geometry"
	"rodsheet/geometry/measure"
	"rodsheet/templates"
	"rodsheet/templates/piece"
	"rodsheet/templates/piece/shop"
	"rodsheet/templates/piece/wording"
)

const (
	readableLane = 140.0 // a lane narrower than this on the board is stretched to it, mm
	mostStretch  = 6.0
	boardOnPaper = 120.0 // about so many mm long a board is on paper
	restHatch    = 45.0  // between the hatch lines of what is left over, mm
	leastHatch   = 3.0   // what is narrower is not hatched, mm
	leastRest    = 0.14  // of the board: what is shorter is worth no figure
)

// boardPictures shows every board as it is sawn, its grain from left to right.
func boardPictures(u measure.Unit, plan *shop.CuttingPlan) []templates.Picture {
	if plan == nil {
		return nil
	}
	var out []templates.Picture
	for i, b := range plan.Boards {
		out = append(out, boardPicture(u, i+1, b, plan.Kerf))
	}
	return out
}

// stretch returns how many times larger a board is drawn across than along, so that
// its lanes hold words.
func stretch(b shop.PlannedBoard) float64 {
	narrowest := b.Width
	for _, l := range b.Lanes {
		narrowest = math.Min(narrowest, l.Width)
	}
	return math.Max(1, math.Min(mostStretch, math.Ceil(readableLane/narrowest)))
}

// boardPicture shows one board: its lanes from the lower edge up, the rips numbered in
// order. The strips that lie behind the first one of a lane stand below the board.
func boardPicture(u measure.Unit, number int, b shop.PlannedBoard, kerf float64) templates.Picture {
	across := stretch(b)
	k := Sketch{Picture: templates.Picture{Wide: true}, To: geometry.Scale(1, across)}
	k.Heading = say(boardHeading, number, measure.Length(b.Length).Bare(u), measure.Length(b.Width).Bare(u), measure.Length(b.Thickness).Bare(u))
	if across > 1 {
		k.Heading += say(drawnWider, int(across))
	}
	unit := b.Length / boardOnPaper
	gap := 3 * unit / across
	for i, l := range b.Lanes {
		if edge := l.At + l.Width; edge < b.Width-piece.Slip {
			k.Line(templates.Construction, geometry.Pt(-24*unit, edge), geometry.Pt(0, edge))
			lower, upper := geometry.Pt(-3*unit, l.At), geometry.Pt(-3*unit, edge)
			k.Arrows = append(k.Arrows, templates.Arrow{Points: k.To.ApplyAll([]geometry.Point{lower, upper}), Both: true})
			k.named(lower.Lerp(upper, 0.5), tag("rip", i+1, wording.Coarse(l.Width, u))) // beside its lane, not the next
		}
	}
	below := 0.0
	for i, l := range b.Lanes {
		k.strip(b, l, 0, l.At, kerf, u)
		for s := range l.Strips[1:] {
			below -= l.Width + gap
			k.strip(b, l, s+1, below, kerf, u)
			k.noted(18*unit, below+l.Width/2, tag("strip-behind", i+1, s+2, wording.Coarse(l.Thickness, u)))
		}
	}
	k.rest(geometry.Box(0, b.Width-b.Beside(kerf), b.Length, b.Width))
	k.Line(templates.Cut, geometry.Closed(geometry.Box(0, 0, b.Length, b.Width).Corners())...)
	tail, head := geometry.Pt(b.Length*0.4, b.Width+gap), geometry.Pt(b.Length*0.6, b.Width+gap)
	k.Arrow(tail, head)
	k.Label(tail, head, tag("grain"))
	return k.Picture
}

// noted puts words on a line out of the end of the board.
func (k *Sketch) noted(long, y float64, t templates.Tag) {
	k.Line(templates.Construction, geometry.Pt(-long, y), geometry.Pt(0, y))
	k.Label(geometry.Pt(-long, y), geometry.Pt(0, y), t)
}

// named puts a label on a point.
func (k *Sketch) named(at geometry.Point, t templates.Tag) { k.Label(at, at, t) }

// strip draws the pieces of a strip, its lane at a height in the picture.
func (k *Sketch) strip(b shop.PlannedBoard, l shop.Lane, n int, y, kerf float64, u measure.Unit) {
	for _, p := range l.Strips[n] {
		wide := p.Size.Width
		if wide > l.Width+piece.Slip || p.Size.Thickness > l.Thickness+piece.Slip {
			wide = p.Size.Thickness
		}
		from, to := geometry.Pt(p.At, y), geometry.Pt(p.At+p.Size.Length, y+wide)
		k.Block(templates.Light, geometry.Box(from.X, from.Y, to.X, to.Y).Corners()...)
		k.named(from.Lerp(to, 0.5), templates.Tag{ID: "board-piece", Text: wording.PieceName(p.Name)})
		k.rest(geometry.Box(from.X, to.Y, to.X, y+l.Width))
	}
	left := geometry.Box(b.Length-b.Behind(l.Strips[n], kerf), y, b.Length, y+l.Width)
	k.rest(left)
	if left.Width() >= leastRest*b.Length {
		k.named(left.Centre(), tag("rest", wording.Coarse(left.Width(), u)))
	}
	if n > 0 {
		k.Line(templates.Outline, geometry.Closed(geometry.Box(0, y, b.Length, y+l.Width).Corners())...)
	}
}

// rest hatches what is left over.
func (k *Sketch) rest(r geometry.Rect) {
	if r.Width() < leastHatch || r.Height() < leastHatch {
		return
	}
	k.Line(templates.Outline, geometry.Closed(r.Corners())...)
	for _, h := range geometry.Hatch(k.To.ApplyAll(r.Corners()), math.Pi/4, restHatch) {
		k.Strokes = append(k.Strokes, templates.Stroke{Role: templates.Waste, Points: []geometry.Point{h.A, h.B}})
	}
}
