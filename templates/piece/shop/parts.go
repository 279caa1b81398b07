package shop

import (
	"math"

	"rodsheet/geometry/measure"
	"rodsheet/templates/piece"
	"rodsheet/templates/piece/design"
)

// A topBoardKind is all that one board of a top can differ from another by.
type topBoardKind struct {
	finished piece.StockSize
	across   float64
}

// topRows returns the boards that a wooden top is glued up from.
func topRows(p piece.Piece) []cutRow {
	if p.Design.Top.Kind != design.WoodTop {
		return nil
	}
	board, n := p.TopBoards()
	return []cutRow{{
		Part: "top board", Sizes: []sizeCount{{p.Design.Size, n}},
		Finished: board, Sawn: board, Rough: p.Roughed(board),
		Net:  p.TopArea() * p.Design.Top.Thickness / float64(n),
		kind: topBoardKind{steadied(board), quantize(p.TopArea())},
	}}
}

// A testKind is the section of a test piece.
type testKind struct {
	part          string
	width, across float64
}

func kindOfTest(part string, s piece.StockSize) testKind {
	return testKind{part, quantize(s.Width), quantize(s.Thickness)}
}

// tests returns how many test pieces there are of a section; part is
// "stretcher" or "leg".
func (c cutList) tests(part string, s piece.StockSize) int {
	for _, r := range c.Rows {
		if r.kind == kindOfTest(part, s) {
			return r.Serves
		}
	}
	return 0
}

// extras names what is milled with the parts.
func extras(tested bool) string {
	if tested {
		return "spares and test pieces"
	}
	return "spares"
}

// testRows returns the test pieces, of each section as many as the design asks
// for, for all sizes together.
func testRows(p piece.Piece) []cutRow {
	if p.Design.Wood.Tests == 0 {
		return nil
	}
	row := func(part string, stock piece.StockSize) cutRow {
		s := p.TestPiece(stock)
		return cutRow{
			Part: "test piece, " + part + " stock", Serves: p.Design.Wood.Tests,
			Finished: s, Sawn: s, Rough: p.Roughed(s),
			kind: kindOfTest(part, s),
		}
	}
	return []cutRow{row("stretcher", p.SawnStretcher()), row("leg", p.SawnLeg())}
}

// A blockKind is all that pads, cauls, wedges and filler strips differ by.
type blockKind struct {
	part string
	size piece.StockSize
	lean float64
	from string
}

// padRows returns wooden pads, turned from an offcut where one is large enough.
func padRows(p piece.Piece) []cutRow {
	if p.Design.Top.PadHeight() == 0 || p.Design.Top.Pads.Bumpers {
		return nil
	}
	d := p.Design.Top.Pads.Diameter
	pad := piece.StockSize{Length: d, Width: d, Thickness: p.Design.Top.Pads.Height}
	return []cutRow{{
		Part: "pad", Sizes: each(p), Spares: p.Design.Wood.Spares,
		Finished: pad, Sawn: pad, From: offcutFor(p, d),
		kind: blockKind{"pad", steadied(pad), 0, ""},
	}}
}

// offcutFor names an offcut on whose face a round or block so wide finds room.
func offcutFor(p piece.Piece, width float64) string {
	switch {
	case width <= math.Max(p.Frame.Ring.Width, p.Frame.Ring.Depth):
		return "offcuts of stretcher stock"
	case width <= p.Frame.Leg.Breadth:
		return "offcuts of leg stock"
	}
	return "scrap"
}

// kind returns what tells a block from others.
func (b Block) kind() blockKind {
	return blockKind{b.Name, steadied(b.stick()), quantize(b.Angle), b.From}
}

// blockRows returns what holds and clamps the parts of all sizes, from offcuts.
func blockRows(pieces []piece.Piece) []cutRow {
	var out []cutRow
	for _, l := range sharedBlocks(pieces) {
		b := l.What
		name := b.Name + ", " + pieces[0].Say(measure.Angle(b.Angle))
		out = append(out, cutRow{
			Part: piece.WithSizes(name, l.Sizes, len(pieces)), Serves: b.Count,
			Finished: b.stick(), Sawn: b.stick(), From: b.From, kind: b.kind(),
		})
	}
	return out
}

// A sizeWood is the wood of one size, or of what serves all sizes.
type sizeWood struct {
	Size string // empty for a single size
	Wood float64
}

// bySize returns the rough volume in mm³ of the parts of each size.
func (c cutList) bySize() []sizeWood {
	var out []sizeWood
	for _, r := range c.Rows {
		if !r.bought() {
			continue
		}
		for _, s := range r.Sizes {
			out = addWood(out, sizeWood{s.Size, float64(s.Count) * r.Rough.Volume()})
		}
	}
	return out
}

func addWood(all []sizeWood, w sizeWood) []sizeWood {
	for i := range all {
		if all[i].Size == w.Size {
			all[i].Wood += w.Wood
			return all
		}
	}
	return append(all, w)
}

// spareWood returns the rough volume in mm³ of spares and test pieces.
func (c cutList) spareWood() float64 {
	sum := 0.0
	for _, r := range c.Rows {
		if r.bought() {
			sum += float64(r.Spares+r.Serves) * r.Rough.Volume()
		}
	}
	return sum
}

// rough returns the rough volume in mm³ of everything bought for.
func (c cutList) rough() float64 {
	sum := c.spareWood()
	for _, s := range c.bySize() {
		sum += s.Wood
	}
	return sum
}

// net returns the volume in mm³ of the wood in the finished pieces, pads from
// offcuts left out.
func (c cutList) net() float64 {
	sum := 0.0
	for _, r := range c.Rows {
		sum += float64(r.parts()) * r.Net
	}
	return sum
}

// buy returns the volume in mm³ to buy: Rough and the stated waste.
func (c cutList) buy() float64 { return c.rough() * (1 + c.Waste) }

// roughPieces returns every piece to be sawn from boards.
func (c cutList) roughPieces() []roughPiece {
	var out []roughPiece
	for _, r := range c.Rows {
		if !r.bought() {
			continue
		}
		for _, s := range r.Sizes {
			out = appendPieces(out, s.Count, roughPiece{ofSize(r.Part, s.Size), r.Rough})
		}
		out = appendPieces(out, r.Serves, roughPiece{r.Part, r.Rough})
		out = appendPieces(out, r.Spares, roughPiece{"spare " + r.Part, r.Rough})
	}
	return out
}

func appendPieces(all []roughPiece, n int, p roughPiece) []roughPiece {
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
