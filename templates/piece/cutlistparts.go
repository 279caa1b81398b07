package piece

import (
	"math"

	"rodsheet/geometry/measure"
	"rodsheet/templates/piece/design"
)

// A topBoardKind is all that one board of a top can differ from another by.
type topBoardKind struct {
	finished Stick
	across   float64
}

// topRows returns the boards that a wooden top is glued up from.
func topRows(p Piece) []CutRow {
	if p.Design.Top.Kind != design.WoodTop {
		return nil
	}
	size, n := p.TopPanel(), p.topBoards()
	board := Stick{size.Length, size.Width / float64(n), size.Thickness}
	return []CutRow{{
		Part: "top board", Sizes: []SizeCount{{p.Design.Size, n}},
		Finished: board, Sawn: board, Rough: p.Roughed(board),
		Net:  p.TopArea() * p.Design.Top.Thickness / float64(n),
		kind: topBoardKind{Stick{steady(board.Length), steady(board.Width), steady(board.Thickness)}, steady(p.TopArea())},
	}}
}

// usualBoard is the width of board that a top is glued up from where the
// design lists none that serves (common practice, no source).
const usualBoard = 150.0

// topBoards returns how many boards of equal width the top is glued up from:
// as few as the widest listed board allows.
func (p Piece) topBoards() int {
	widest := 0.0
	for _, b := range p.Design.Wood.Boards {
		long := b.Length >= p.TopPanel().Length+p.Design.Wood.ExtraLength
		if b.Count > 0 && long && b.Thickness >= p.Design.Top.Thickness+p.Design.Wood.ExtraThickness {
			widest = math.Max(widest, b.Width)
		}
	}
	// A board hardly wider than its allowance yields nothing to glue.
	if widest -= p.Design.Wood.ExtraWidth; widest <= p.Design.Wood.ExtraWidth {
		widest = usualBoard
	}
	return int(math.Ceil(p.TopPanel().Width/widest - 1e-9))
}

// A testKind is the section of a test piece.
type testKind struct {
	part          string
	width, across float64
}

// testRows returns the test pieces, of each section as many as the design asks
// for, for all sizes together.
func testRows(p Piece) []CutRow {
	if p.Design.Wood.Tests == 0 {
		return nil
	}
	row := func(part string, s Stick) CutRow {
		s.Length = p.testLength()
		return CutRow{
			Part: "test piece, " + part + " stock", Serves: p.Design.Wood.Tests,
			Finished: s, Sawn: s, Rough: p.Roughed(s),
			kind: testKind{part, steady(s.Width), steady(s.Thickness)},
		}
	}
	return []CutRow{row("stretcher", p.SawnStretcher()), row("leg", p.SawnLeg())}
}

// testLength returns the length of a test piece: what is safely held at a saw,
// and no less than half a stretcher, so that the stop of the real lap serves.
func (p Piece) testLength() float64 { return math.Max(p.safeLength(), p.RoughReach()) }

// safeLength is the least length of wood to hold at a saw: 300 mm or 12 in
// (common practice, no source).
func (p Piece) safeLength() float64 {
	if p.Design.Unit == measure.Inch {
		return 12 * measure.MillimetresPerInch
	}
	return 300
}

// A blockKind is all that pads, cauls, wedges and filler strips differ by.
type blockKind struct {
	part string
	size Stick
	lean float64
	from string
}

// padRows returns wooden pads, turned from an offcut where one is large enough.
func padRows(p Piece) []CutRow {
	if p.Design.Top.PadHeight() == 0 || p.Design.Top.Pads.Bumpers {
		return nil
	}
	d := p.Design.Top.Pads.Diameter
	pad := Stick{d, d, p.Design.Top.Pads.Height}
	return []CutRow{{
		Part: "pad", Sizes: p.each(), Spares: p.Design.Wood.Spares,
		Finished: pad, Sawn: pad, From: p.offcutFor(d),
		kind: blockKind{"pad", Stick{steady(d), steady(d), steady(pad.Thickness)}, 0, ""},
	}}
}

// offcutFor names an offcut on whose face a round or block so wide finds room.
func (p Piece) offcutFor(width float64) string {
	switch {
	case width <= math.Max(p.Frame.Ring.Width, p.Frame.Ring.Depth):
		return "offcuts of stretcher stock"
	case width <= p.Frame.Leg.Breadth:
		return "offcuts of leg stock"
	}
	return "scrap"
}

// blockRows returns what holds and clamps the parts, from offcuts.
func blockRows(p Piece) []CutRow {
	var out []CutRow
	for _, b := range p.blocks() {
		size := b.Size()
		out = append(out, CutRow{
			Part: b.Name + ", " + p.Say(measure.Angle(b.Angle)), Serves: b.Count, Finished: size, Sawn: size, From: b.From,
			kind: blockKind{b.Name, Stick{steady(size.Length), steady(size.Width), steady(size.Thickness)}, steady(b.Angle), b.From},
		})
	}
	return out
}

// A SizeWood is the wood of one size, or of what serves all sizes.
type SizeWood struct {
	Size string // empty for a single size
	Wood float64
}

// BySize returns the rough volume in mm³ of the parts of each size.
func (c CutList) BySize() []SizeWood {
	var out []SizeWood
	for _, r := range c.Rows {
		if !r.bought() {
			continue
		}
		for _, s := range r.Sizes {
			out = addWood(out, SizeWood{s.Size, float64(s.Count) * r.Rough.Volume()})
		}
	}
	return out
}

func addWood(all []SizeWood, w SizeWood) []SizeWood {
	for i := range all {
		if all[i].Size == w.Size {
			all[i].Wood += w.Wood
			return all
		}
	}
	return append(all, w)
}

// SpareWood returns the rough volume in mm³ of spares and test pieces.
func (c CutList) SpareWood() float64 {
	sum := 0.0
	for _, r := range c.Rows {
		if r.bought() {
			sum += float64(r.Spares+r.Serves) * r.Rough.Volume()
		}
	}
	return sum
}

// Rough returns the rough volume in mm³ of everything bought for.
func (c CutList) Rough() float64 {
	sum := c.SpareWood()
	for _, s := range c.BySize() {
		sum += s.Wood
	}
	return sum
}

// Net returns the volume in mm³ of the wood in the finished pieces, pads from
// offcuts left out.
func (c CutList) Net() float64 {
	sum := 0.0
	for _, r := range c.Rows {
		sum += float64(r.Parts()) * r.Net
	}
	return sum
}

// Buy returns the volume in mm³ to buy: Rough and the stated waste.
func (c CutList) Buy() float64 { return c.Rough() * (1 + c.Waste) }

// roughPieces returns every piece to be sawn from boards.
func (c CutList) roughPieces() []RoughPiece {
	var out []RoughPiece
	for _, r := range c.Rows {
		if !r.bought() {
			continue
		}
		for _, s := range r.Sizes {
			out = appendPieces(out, s.Count, RoughPiece{ofSize(r.Part, s.Size), r.Rough})
		}
		out = appendPieces(out, r.Serves, RoughPiece{r.Part, r.Rough})
		out = appendPieces(out, r.Spares, RoughPiece{"spare " + r.Part, r.Rough})
	}
	return out
}

func appendPieces(all []RoughPiece, n int, p RoughPiece) []RoughPiece {
	for range n {
		all = append(all, p)
	}
	return all
}

// ofSize names a part and the size it belongs to.
func ofSize(part, size string) string {
	if size == "" {
		return part
	}
	return part + " " + size
}
