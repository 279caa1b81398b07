package shop

import (
	"cmp"
	"math"
	"slices"

	"rodsheet/geometry"
	"rodsheet/geometry/joint"
	"rodsheet/geometry/lists"
	"rodsheet/geometry/measure"
	"rodsheet/templates/piece"
	"rodsheet/templates/piece/design"
)

// A BuyKind says what a line of the buying list is.
type BuyKind uint8

const (
	BoardToBuy BuyKind = iota // one of those that are listed
	WoodToBuy                 // so much of it
	GlassToBuy
	SheetToBuy // for jigs
	BumperToBuy
	WareToBuy // what holds the top
	ItemToBuy // as the design lists it
)

// A Buy is one line of the buying list.
type Buy struct {
	Kind BuyKind
	// Size is that of a board, a pane or a bumper; of a sheet its thickness.
	Size   piece.StockSize
	Ware   Ware
	Item   design.Item
	Sizes  []string // of the design, of which a pane is for
	Count  int      // 0 for what is bought by the amount, or as it is needed
	Amount float64  // of wood in mm³, of glass and sheet in mm²; all of the line
	Price  design.Price
	Per    design.Rate // the rate that wood and glass go by
}

// AsNeeded reports whether neither count nor amount follows from the design.
func (b Buy) AsNeeded() bool { return b.Count == 0 && b.Amount == 0 }

// Sum returns what a line costs, to a hundredth, so that the lines add up to the total
// as they are printed.
func (b Buy) Sum() design.Price {
	out := design.Price{Value: float64(b.Count) * b.Price.Value, Given: b.Price.Given}
	switch b.Kind {
	case BoardToBuy, WoodToBuy:
		out = design.Price{Value: b.Per.OfVolume(b.Amount), Given: b.Per.Given}
	case GlassToBuy:
		out = design.Price{Value: b.Per.OfArea(b.Amount), Given: b.Per.Given}
	}
	out.Value = math.Round(100*out.Value) / 100
	return out
}

// Buying returns all that is bought for the pieces, one of each size: wood, glass,
// sheet for the jigs, what is bought ready.
func (p Plan) Buying() []Buy {
	out := p.woodToBuy()
	rate := p.Designs[0].Prices.Glass
	for _, l := range p.GlassOrders() {
		for _, q := range p.Pieces {
			if q.Design.Size == l.Sizes[0] && q.Design.Top.Kind == design.GlassTop {
				box, n, u := paneShape(q).Size(), len(l.Sizes), q.Design.Unit
				size := piece.StockSize{Length: UpToSixteenths(box.X, u), Width: UpToSixteenths(box.Y, u), Thickness: paneThickness(q)}
				out = append(out, Buy{Kind: GlassToBuy, Size: size, Sizes: l.Sizes, Count: n, Amount: float64(n) * q.TopArea(), Per: rate})
			}
		}
	}
	if area := p.Cuts.SheetArea(); area > 0 {
		out = append(out, Buy{Kind: SheetToBuy, Size: piece.StockSize{Thickness: jigSizes(p.Pieces[0]).Sheet}, Amount: area})
	}
	for _, b := range p.Cuts.Bumpers {
		out = append(out, Buy{Kind: BumperToBuy, Size: piece.StockSize{Length: b.Diameter, Width: b.Diameter, Thickness: b.Height}, Count: b.Count})
	}
	for _, w := range p.Wares {
		out = append(out, Buy{Kind: WareToBuy, Ware: w, Size: piece.StockSize{Length: w.Length, Width: w.Width, Thickness: w.Thickness}, Count: w.Count})
	}
	for _, it := range p.Designs[0].Items {
		out = append(out, Buy{Kind: ItemToBuy, Item: it, Count: it.Count * len(p.Designs), Price: it.Price})
	}
	return out
}

// woodToBuy returns the boards that the plan takes and the wood for which it has no
// room, or where no boards are listed all wood with the stated waste.
func (p Plan) woodToBuy() []Buy {
	rate := p.Designs[0].Prices.Wood
	if p.Cuts.Boards == nil {
		return []Buy{{Kind: WoodToBuy, Amount: p.Cuts.Buy(), Per: rate}}
	}
	var out []Buy
	for _, b := range p.Cuts.Boards.Boards {
		size := piece.StockSize{Length: b.Length, Width: b.Width, Thickness: b.Thickness}
		if n := len(out); n == 0 || out[n-1].Size != size {
			out = append(out, Buy{Kind: BoardToBuy, Size: size, Per: rate})
		}
		last := &out[len(out)-1]
		last.Count++
		last.Amount += size.Volume()
	}
	lacking := lists.Sum(p.Cuts.Boards.Missed, func(m RoughPiece) float64 { return m.Size.Volume() * (1 + p.Cuts.Waste) })
	if lacking > 0 {
		out = append(out, Buy{Kind: WoodToBuy, Amount: lacking, Per: rate})
	}
	return out
}

// Thicknesses returns how thick the boards are at least that rough parts are sawn from, the
// thickest first: a part lies on its wider side.
func (c CutList) Thicknesses() []float64 {
	var out []float64
	for _, r := range c.Rows {
		if r.From == Bought {
			out = append(out, quantize(math.Min(r.Rough.Width, r.Rough.Thickness)))
		}
	}
	slices.Sort(out)
	slices.Reverse(out)
	return slices.Compact(out)
}

// Total returns what the lines cost together, and how many of them have no price.
func Total(lines []Buy) (sum float64, unpriced int) {
	for _, b := range lines {
		if cost := b.Sum(); cost.Given {
			sum += cost.Value
		} else {
			unpriced++
		}
	}
	return sum, unpriced
}

// UpToEighths returns a size of boards as it is asked for in inches: no smaller, in
// eighths; in millimetres it is as it is.
func UpToEighths(mm float64, u measure.Unit) float64 {
	return wholeParts(mm, u, measure.MillimetresPerInch/8, math.Ceil)
}

// sixteenth is the part of an inch that boards are planed to and glass is ordered in, mm
// (common practice, no source).
const sixteenth = measure.MillimetresPerInch / 16

// UpToSixteenths returns a size in whole ones where inches are the unit: no smaller.
func UpToSixteenths(mm float64, u measure.Unit) float64 {
	return wholeParts(mm, u, sixteenth, math.Ceil)
}

// wholeParts returns a length in whole parts of an inch where that is the unit.
func wholeParts(mm float64, u measure.Unit, part float64, to func(float64) float64) float64 {
	const slip = 1e-6 // what is whole but for arithmetic stays
	if u != measure.Inch || math.Abs(mm/part-math.Round(mm/part)) <= slip {
		return mm
	}
	return part * to(mm/part)
}

// A GlassOrder is what a glass shop asks for, a line each; the empty ones have none.
type GlassOrder [9]Note

// paneShape returns a pane as it is ordered: nowhere smaller than drawn, so that nothing comes
// out from under it, and its corners worked no farther.
func paneShape(p piece.Piece) joint.Top {
	t, u := p.TopShape(), p.Design.Unit
	down := func(n float64) float64 { return math.Max(1, math.Floor(n)) }
	t.Diameter = UpToSixteenths(t.Diameter, u)
	t.Clip, t.Round = wholeParts(t.Clip, u, sixteenth, down), wholeParts(t.Round, u, sixteenth, down)
	if p.Design.Top.Outline == design.RingTop {
		apothem := p.RegularTop().Apothem // of its figures the one that the overhang follows
		t.Corners = lists.Map(t.Corners, func(q geometry.Point) geometry.Point { return q.Mul(UpToSixteenths(apothem, u) / apothem) })
	}
	return t
}

// glassMade are the thicknesses that glass is made in, mm (common sizes, from memory).
var glassMade = []float64{2, 3, 4, 5, 6, 8, 10, 12, 15, 16, 19, 22, 25}

// glassNearest returns that of them which a thickness means.
func glassNearest(mm float64) float64 {
	return slices.MinFunc(glassMade, func(a, b float64) int { return cmp.Compare(math.Abs(a-mm), math.Abs(b-mm)) })
}

// paneThickness is what glass of a thickness is ordered as: 3/8 in is the name of glass of
// 10 mm, 1/2 in of 12 mm (trade names, from memory).
func paneThickness(p piece.Piece) float64 {
	return wholeParts(p.Design.Top.Thickness, p.Design.Unit, sixteenth, math.Round)
}

// GlassOrders returns the glass to order, once for sizes that have it alike: one pane for
// each of them.
func (p Plan) GlassOrders() []piece.Lot[GlassOrder] {
	out := piece.Lots(piece.Sizes(p.Pieces), func(i int) []GlassOrder { return glassOrder(p.Pieces[i]) }, func(a, b GlassOrder) bool { return a == b })
	for i, l := range out {
		if n := len(l.Sizes); n > 1 {
			out[i].What[0] = note("glass.tops", number(n), l.What[0].Args[0])
		}
	}
	return out
}

// glassOrder returns the order for a piece, nothing where its top is none of glass.
func glassOrder(p piece.Piece) []GlassOrder {
	if p.Design.Top.Kind != design.GlassTop {
		return nil
	}
	pane := p.Pane()
	return []GlassOrder{{
		note("glass.top", length(paneThickness(p))), glassOutline(p), note("glass.finished"), inSixteenths(p), glassCorners(p),
		note("glass.edges"), note("glass.before-tempering"),
		note("glass.weight", figure(measure.Area(pane.Area)), figure(measure.Mass(pane.Mass()))), note("glass.safety"),
	}}
}

func glassOutline(p piece.Piece) Note {
	switch p.Design.Top.Outline {
	case design.RoundTop:
		return note("glass.round", length(paneShape(p).Diameter))
	case design.FreeOutline:
		box := geometry.Bounds(p.TopCorners()...)
		size := box.Max.Sub(box.Min)
		return note("glass.free", number(len(p.Design.Top.Points)), length(size.X), length(size.Y))
	}
	r := p.RegularTop()
	apothem := UpToSixteenths(r.Apothem, p.Design.Unit)
	return note("glass.regular", number(r.Sides), length(r.Side()*apothem/r.Apothem), length(apothem))
}

// inSixteenths says what was rounded for the order, and of how many mm the glass is.
func inSixteenths(p piece.Piece) Note {
	if p.Design.Unit != measure.Inch {
		return Note{}
	}
	return note("glass.sixteenths", number(int(glassNearest(p.Design.Top.Thickness))))
}

// glassCorners says how the corners are worked.
func glassCorners(p piece.Piece) Note {
	switch top := p.Design.Top; {
	case top.Outline == design.RoundTop:
		return note("glass.no-corners")
	case top.CornerSize == 0 || top.Corner == design.SharpCorner:
		return note("glass.sharp")
	case top.Corner == design.ClippedCorner:
		return note("glass.clipped", length(paneShape(p).Clip))
	}
	return note("glass.rounded", length(paneShape(p).Round))
}
