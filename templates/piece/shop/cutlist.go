// Package shop works out how the parts of a piece are made: the cut list with
// its boards, the blocks, the operations in working order, and the glue-up. All
// of it is values; what is printed of them is the affair of package wording.
package shop

import (
	"math"
	"slices"

	"rodsheet/geometry/lists"
	"rodsheet/geometry/measure"
	"rodsheet/templates/piece"
	"rodsheet/templates/piece/design"
)

// A Plan is all that the parts of all sizes of one design are made by.
type Plan struct {
	Designs []design.Design // of the sizes
	Pieces  []piece.Piece   // those of rings
	Cuts    CutList
	Wares   []Ware // what is bought ready and follows from the design
	Blocks  []piece.Lot[Block]
	Cards   []Card // in working order
}

// NewPlan returns the plan of the sizes of one design.
func NewPlan(pieces []piece.Piece) Plan {
	blocks := sharedBlocks(pieces)
	list := newCutList(pieces, blocks)
	steps := workingOrder(counted(pieces, list, blocks))
	return Plan{designsOf(pieces), pieces, list, Wares(pieces), blocks, cards(steps)}
}

func designsOf(pieces []piece.Piece) []design.Design {
	return lists.Map(pieces, func(p piece.Piece) design.Design { return p.Design })
}

// ListPlan returns the plan of sizes of any kind: what their parts are sawn from, and
// what is bought. Of rows and wares that are one thing several sizes have the sum.
func ListPlan(designs []design.Design, rows []CutRow, wares []Ware) Plan {
	var c CutList
	for _, r := range rows {
		c.Rows = addRow(c.Rows, r)
	}
	c.planned(designs)
	return Plan{Designs: designs, Cuts: c, Wares: withUsedUp(wares, WoodGlue, Abrasive, TopCoat)}
}

// Row returns the row of a part of one size that is sawn from a board of its own: so
// many of a finished size, squared to another before it is worked, of a net volume in
// mm³. Parts of one name are one row where all of that and the figures agree.
func Row(d design.Design, part Part, count int, finished, sawn piece.StockSize, net float64, figures ...float64) CutRow {
	all := append([]float64{sawn.Length, sawn.Width, sawn.Thickness, finished.Length, net}, figures...)
	return CutRow{
		Item: item(part, Bought, all...), Sizes: []SizeCount{{d.Size, count}}, Spares: d.Wood.Spares,
		Finished: finished, Sawn: sawn, Rough: piece.Roughed(d, sawn), Net: net,
	}
}

// RowOfStock returns the row of one board that small pieces are sawn from, which has their
// spares in it.
func RowOfStock(d design.Design, part Part, board piece.StockSize, net float64) CutRow {
	row := Row(d, part, 1, board, board, net)
	row.Spares = 0
	return row
}

// A SizeCount is how many of a part one size takes.
type SizeCount struct {
	Size  string
	Count int
}

// An Item is all that two parts of a cut list can differ by: two of equal value
// are one.
type Item struct {
	Part Part
	From Source
	// figures are the sizes and angles by which those of one name differ, quantized.
	figures [16]float64
}

// item returns the item of a part that is told from others by some figures.
func item(part Part, from Source, figures ...float64) Item {
	out := Item{Part: part, From: from}
	for i, v := range figures {
		out.figures[i] = quantize(v)
	}
	return out
}

// A CutRow is one kind of part. Parts that are alike in several sizes are one
// row.
type CutRow struct {
	Item
	Sizes  []SizeCount // what each size takes; none for what serves all sizes
	Serves int         // pieces that serve all sizes alike: test pieces, cauls
	// For holds the sizes that a block serves, Angle is its own.
	For    []string
	Angle  float64
	Spares int
	// Finished is as designed or milled, from tip to tip; Sawn is squared to
	// length, before its ends are worked; Rough is Sawn and the allowances.
	// What is not sawn from a board has no Rough.
	Finished, Sawn, Rough piece.StockSize
	stick                 stick // that it is sawn from, if it is
	// Net is the volume in mm³ of one finished part, nothing for what is not
	// in the finished piece.
	Net float64
}

// Parts returns the number of parts that go into the finished pieces.
func (r CutRow) Parts() int { return lists.Sum(r.Sizes, func(s SizeCount) int { return s.Count }) }

// Bumpers are bought ready, of one size.
type Bumpers struct {
	Diameter, Height float64 // mm
	Count            int
}

// A CutList holds the parts of all sizes of one design.
type CutList struct {
	Unit    measure.Unit
	Rows    []CutRow
	Bumpers []Bumpers
	Waste   float64 // share to buy on top
	// NoSpares says that a size asks for no spares.
	NoSpares bool
	Boards   *CuttingPlan // nil where the design lists none
}

func newCutList(pieces []piece.Piece, blocks []piece.Lot[Block]) CutList {
	var c CutList
	for _, rows := range []func(piece.Piece) []CutRow{stretcherRows, legRows, topRows} {
		for _, p := range pieces {
			for _, r := range rows(p) {
				c.Rows = addRow(c.Rows, r)
			}
		}
	}
	c.Rows = append(c.Rows, testRows(pieces)...)
	small := blockRows(blocks)
	for _, p := range pieces {
		for _, r := range padRows(p) {
			small = addRow(small, r)
		}
	}
	small = append(small, jigRows(pieces)...)
	c.Rows = slices.Concat(c.Rows, stickRows(pieces, small), small)
	for _, p := range pieces {
		c.Bumpers = addBumpers(c.Bumpers, p)
	}
	c.planned(designsOf(pieces))
	return c
}

// planned adds what the designs say of the wood, and the cutting plan of their boards.
func (c *CutList) planned(designs []design.Design) {
	for _, d := range designs {
		c.Unit = d.Unit
		c.Waste = math.Max(c.Waste, d.Wood.Waste)
		c.NoSpares = c.NoSpares || d.Wood.Spares == 0
	}
	if boards := listedBoards(designs); len(boards) > 0 {
		plan := planBoards(c.roughPieces(), boards, ripKerf(designs))
		c.Boards = &plan
	}
}

// merged adds one of a kind or, where there is one like it, lets that take it up.
func merged[T any](all []T, one T, alike func(T) bool, take func(*T)) []T {
	if i := slices.IndexFunc(all, alike); i >= 0 {
		take(&all[i])
		return all
	}
	return append(all, one)
}

// addRow adds a row, or counts it to the one that is alike.
func addRow(rows []CutRow, r CutRow) []CutRow {
	return merged(rows, r, func(q CutRow) bool { return q.Item == r.Item }, func(q *CutRow) {
		q.Sizes = append(q.Sizes, r.Sizes...)
		q.Serves = max(q.Serves, r.Serves)
		q.Spares = max(q.Spares, r.Spares)
	})
}

// row returns the row of an item, which must be in the list.
func (c CutList) row(it Item) CutRow {
	row, _ := lists.First(c.Rows, func(r CutRow) bool { return r.Item == it })
	return row
}

func flag(b bool) float64 {
	if b {
		return 1
	}
	return 0
}

// quantize rounds away what arithmetic alone makes of one figure, to a millionth.
func quantize(v float64) float64 { return math.Round(v*1e6) / 1e6 }

func stretcherItem(p piece.Piece) Item {
	r, b := p.Frame.Ring, p.Bridle
	return item(Stretcher, Bought,
		float64(r.Sides), r.Inside, r.Width, r.Depth, p.Design.Ring.Slack,
		flag(p.Frame.Over), float64(p.Design.Ring.Plain), p.PlainReach, p.LegReach,
		b.Angle, b.Leg, b.Third(), flag(b.Stretcher().Slot))
}

func legItem(p piece.Piece) Item {
	l, b := p.Frame.Leg, p.Bridle
	start, foot, faces := 0.0, 0.0, -1.0
	if p.Taper != nil {
		start, foot, faces = p.Taper.Start, p.Taper.Foot, float64(p.Taper.Faces)
	}
	return item(Leg, Bought,
		l.Breadth, l.Thickness, l.Height, l.Splay, p.Design.Legs.Proud,
		b.Depth, b.Third(), flag(b.Head().Slot), start, foot, faces)
}

func stretcherRows(p piece.Piece) []CutRow {
	return eachRow(p, stretcherItem(p), p.FinishedStretcher(), p.SawnStretcher(), p.Stretcher().Volume())
}

func legRows(p piece.Piece) []CutRow {
	return eachRow(p, legItem(p), p.FinishedLeg(), p.SawnLeg(), p.Leg().Volume())
}

// eachRow is a part of which every side of the ring has one.
func eachRow(p piece.Piece, it Item, finished float64, sawn piece.StockSize, net float64) []CutRow {
	r := CutRow{Item: it, Sizes: each(p), Spares: p.Design.Wood.Spares, Finished: sawn, Sawn: sawn, Rough: p.Roughed(sawn), Net: net}
	r.Finished.Length = finished
	return []CutRow{r}
}

// topRows returns the boards that a wooden top is glued up from.
func topRows(p piece.Piece) []CutRow {
	if p.Design.Top.Kind != design.WoodTop {
		return nil
	}
	board, n := p.TopBoards()
	return []CutRow{{
		Item:     item(TopBoard, Bought, board.Length, board.Width, board.Thickness, p.TopArea()),
		Sizes:    []SizeCount{{p.Design.Size, n}},
		Finished: board, Sawn: board, Rough: p.Roughed(board),
		Net: p.TopArea() * p.Design.Top.Thickness / float64(n),
	}}
}

// Extras returns what there is beside the parts.
func (c CutList) Extras() Extras {
	out := NoExtras
	for _, r := range c.Rows {
		switch {
		case r.Part == StretcherTest:
			out |= Tests
		case r.From == Bought && r.Spares > 0:
			out |= Spares
		}
	}
	return out
}

// padRows returns wooden pads, turned or sawn.
func padRows(p piece.Piece) []CutRow {
	if p.Design.Top.PadHeight() == 0 || p.Design.Top.Pads.Bumpers {
		return nil
	}
	d := p.Design.Top.Pads.Diameter
	pad := piece.StockSize{Length: d, Width: d, Thickness: p.Design.Top.Pads.Height}
	from := stickFor(p, pad, d+2*p.Kerf, StretcherSticks, LegSticks)
	return []CutRow{{
		Item:  item(Pad, from.from, pad.Width, pad.Thickness),
		Sizes: each(p), Spares: p.Design.Wood.Spares, Finished: pad, Sawn: pad, stick: from,
	}}
}

// item returns what tells a block from others.
func (b Block) item() Item {
	s := b.size()
	return item(b.Part, b.From, s.Length, s.Width, s.Thickness, b.Angle)
}

// blockRows returns what holds and clamps the parts of all sizes.
func blockRows(blocks []piece.Lot[Block]) []CutRow {
	var out []CutRow
	for _, l := range blocks {
		b := l.What
		out = append(out, CutRow{
			Item: b.item(), Serves: b.Count, For: l.Sizes, Angle: b.Angle, Finished: b.size(), Sawn: b.size(), stick: b.stick,
		})
	}
	return out
}

// each returns one of a part for every stretcher.
func each(p piece.Piece) []SizeCount { return []SizeCount{{p.Design.Size, p.Frame.Ring.Sides}} }

// addBumpers adds the bumpers of a size.
func addBumpers(all []Bumpers, p piece.Piece) []Bumpers {
	pads := p.Design.Top.Pads
	if p.Design.Top.PadHeight() == 0 || !pads.Bumpers {
		return all
	}
	like := func(b Bumpers) bool { return b.Diameter == pads.Diameter && b.Height == pads.Height }
	count := p.Frame.Ring.Sides
	return merged(all, Bumpers{pads.Diameter, pads.Height, count}, like, func(b *Bumpers) { b.Count += count })
}

// A SizeWood is the wood of one size.
type SizeWood struct {
	Size string // empty for a single size
	Wood float64
}

// BySize returns the rough volume in mm³ of the parts of each size.
func (c CutList) BySize() []SizeWood {
	var out []SizeWood
	for _, r := range c.Rows {
		if r.From != Bought {
			continue
		}
		for _, s := range r.Sizes {
			wood := float64(s.Count) * r.Rough.Volume()
			out = merged(out, SizeWood{s.Size, wood}, func(w SizeWood) bool { return w.Size == s.Size }, func(w *SizeWood) { w.Wood += wood })
		}
	}
	return out
}

// SpareWood returns the rough volume in mm³ of spares and test pieces.
func (c CutList) SpareWood() float64 { return c.beside(false) }

// StickWood returns the rough volume in mm³ of block sticks.
func (c CutList) StickWood() float64 { return c.beside(true) }

func (c CutList) beside(sticks bool) float64 {
	sum := 0.0
	for _, r := range c.Rows {
		if r.From == Bought && r.Part.IsStick() == sticks {
			sum += float64(r.Spares+r.Serves) * r.Rough.Volume()
		}
	}
	return sum
}

// Rough returns the rough volume in mm³ of everything bought for.
func (c CutList) Rough() float64 {
	sum := c.SpareWood() + c.StickWood()
	for _, s := range c.BySize() {
		sum += s.Wood
	}
	return sum
}

// Net returns the volume in mm³ of the wood in the finished pieces, pads left
// out.
func (c CutList) Net() float64 {
	return lists.Sum(c.Rows, func(r CutRow) float64 { return float64(r.Parts()) * r.Net })
}

// Buy returns the volume in mm³ to buy: Rough and the stated waste.
func (c CutList) Buy() float64 { return c.Rough() * (1 + c.Waste) }

// roughPieces returns every piece to be sawn from boards.
func (c CutList) roughPieces() []RoughPiece {
	var out []RoughPiece
	for _, r := range c.Rows {
		if r.From != Bought {
			continue
		}
		for _, s := range r.Sizes {
			out = appendPieces(out, s.Count, RoughPiece{Name{r.Part, s.Size, false}, r.Rough})
		}
		out = appendPieces(out, r.Serves, RoughPiece{Name{Part: r.Part}, r.Rough})
		spare := Name{Part: r.Part, Spare: true}
		if others := func(q CutRow) bool { return q.Part == r.Part && q.Rough != r.Rough }; len(r.Sizes) == 1 && slices.ContainsFunc(c.Rows, others) {
			spare.Size = r.Sizes[0].Size
		}
		out = appendPieces(out, r.Spares, RoughPiece{spare, r.Rough})
	}
	return out
}

func appendPieces(all []RoughPiece, n int, p RoughPiece) []RoughPiece {
	for range n {
		all = append(all, p)
	}
	return all
}
