package shop

import (
	"math"
	"slices"

	"rodsheet/geometry/joint"
	"rodsheet/geometry/lists"
	"rodsheet/geometry/measure"
	"rodsheet/templates/piece"
	"rodsheet/templates/piece/design"
)

// A Block is a small angled piece that holds or clamps the parts: a caul, a wedge
// or a filler strip.
//
// Frame: seen on its face, its grain along Length; one end or edge is straight,
// the other leans by Angle, so that it measures Thin at one side and Thick at
// the other.
type Block struct {
	Part        Part
	Count       int
	Angle       float64 // between the two faces that hold, rad
	Thin, Thick float64 // between those faces
	Across      float64 // how far it takes to come from Thin to Thick
	Width       float64 // square to the face
	Along       bool    // Thin and Thick are counted along the grain
	From        Source  // off the taper it comes as it is
	Pairs       bool    // two come from one length of the stick, head to tail
	stick       stick
}

// size returns the wood that the block takes.
func (b Block) size() piece.StockSize {
	if b.Along {
		return piece.StockSize{Length: b.Thick, Width: b.Across, Thickness: b.Width}
	}
	return piece.StockSize{Length: b.Across, Width: b.Thick, Thickness: b.Width}
}

const (
	wedgeSlope  = 8.0 // a folding wedge rises 1 in so many
	wedgeSteep  = 1.0 / 7
	wedgeGentle = 1.0 / 40
)

// blockSizes are the round sizes of blocks in mm.
type blockSizes struct {
	caulLeast, caulLong   float64 // along the grain of a caul: at its short side, and at its long one unless it leans more
	wedgeThin, wedgeLong  float64 // of a folding wedge; a strip is as thin
	stripShort, stripLong float64 // of a filler strip: shorter ones do not steady a part
}

func sizesOfBlocks(u measure.Unit) blockSizes {
	return blockSizes{
		caulLeast: u.Round(25, 1), caulLong: u.Round(60, 2.5),
		wedgeThin: u.Round(6, 1.0/4), wedgeLong: u.Round(120, 5),
		stripShort: u.Round(80, 3), stripLong: u.Round(200, 8),
	}
}

// Blocks returns every block that one size needs.
func Blocks(p piece.Piece) []Block {
	var out []Block
	if NeedsStrip(p) {
		out = append(out, fillerStrip(p))
	}
	if p.Frame.Leg.Splay > 0 {
		out = append(out, legCaul(p))
	}
	if slantedEnd(p) {
		out = append(out, endCaul(p))
	}
	return append(out, foldingWedge(p))
}

// sharedBlocks returns the blocks of all sizes, each once, with the sizes it
// serves. Sizes that take another count of one share the largest.
func sharedBlocks(pieces []piece.Piece) []piece.Lot[Block] {
	each := lists.Map(pieces, Blocks)
	alike := func(a, b Block) bool { return a.item() == b.item() }
	all := piece.Lots(piece.Sizes(pieces), func(i int) []Block { return each[i] }, alike)
	for i := range all {
		for _, b := range slices.Concat(each...) {
			if alike(b, all[i].What) {
				all[i].What.Count = max(all[i].What.Count, b.Count)
			}
		}
	}
	return all
}

// onEndAtSaw reports whether a part stands in the tenoning jig.
func onEndAtSaw(p piece.Piece) bool {
	slot, cheeks := p.CutHeights()
	if p.Bridle.Head().Slot {
		slot, cheeks = cheeks, slot
	}
	return rises(p, cheeks) || rises(p, slot) && p.Bridle.Tenon >= p.Kerf
}

// NeedsStrip reports whether a part stands in the tenoning jig leaning: not where
// slot and cheeks are both sawn by hand.
func NeedsStrip(p piece.Piece) bool { return p.Frame.Leg.Splay > 0 && onEndAtSaw(p) }

// slantedEnd reports whether the plain end is no place for a clamp: cut flush
// in a ring that is not square.
func slantedEnd(p piece.Piece) bool {
	return p.Design.Ring.Plain == design.FlushEnd && lapOffSquare(p) > 0
}

// lapOffSquare returns by how much the laps are cut off square.
func lapOffSquare(p piece.Piece) float64 {
	square := p.EndLap().OffSquare()
	return quantize(square)
}

// sawnFrom puts a block on the stick that it is sawn from. A cut along the grain of
// a stick that is wide enough makes two, head to tail; of two cauls each takes a
// slanting and a square cut.
func (b Block) sawnFrom(p piece.Piece, from ...Source) Block {
	kerf := p.Kerf / math.Cos(b.Angle)
	size := b.size()
	b.stick = stickFor(p, size, size.Length+2*kerf, from...)
	const line = 0.1 // mm by which two and their kerf may be too wide: less than planing takes
	if wide := math.Max(b.stick.section.Width, b.stick.section.Thickness); !b.Along && b.Thin+b.Thick+kerf <= wide+line {
		b.stick.takes /= 2
		b.Pairs = true
	}
	b.From = b.stick.from
	return b
}

// fillerStrip returns the strip that holds a part leaning by the splay in a
// tenoning jig: as long as a diagonal of leg stock gives.
func fillerStrip(p piece.Piece) Block {
	s, tan := sizesOfBlocks(p.Design.Unit), math.Tan(p.Frame.Leg.Splay)
	long := math.Min(s.stripLong, math.Max(s.stripShort, p.WholeDown((p.Frame.Leg.Breadth-s.wedgeThin)/tan)))
	return Block{
		Part: FillerStrip, Count: 1, Angle: p.Frame.Leg.Splay,
		Thin: s.wedgeThin, Thick: s.wedgeThin + long*tan, Across: long, Width: p.Frame.Leg.Thickness,
	}.sawnFrom(p, LegSticks)
}

// legCaul returns the caul for the back of a leg, of stretcher stock, with one end
// at the splay. Its square end faces along the stretcher, so the clamp's jaws are
// parallel.
func legCaul(p piece.Piece) Block {
	return caul(p, LegCaul, p.Frame.Leg.Splay, p.Frame.Ring.Depth, p.Frame.Ring.Width)
}

// endCaul returns the caul for a plain end that is cut flush at the lap's
// angle.
func endCaul(p piece.Piece) Block {
	return caul(p, EndCaul, lapOffSquare(p), p.Frame.Ring.Width, p.Frame.Ring.Depth)
}

func caul(p piece.Piece, part Part, angle, across, width float64) Block {
	lean := across * math.Tan(angle)
	s := sizesOfBlocks(p.Design.Unit)
	long := math.Max(s.caulLong, p.WholeUp(s.caulLeast+lean))
	return Block{
		Part: part, Count: p.Frame.Ring.Sides, Angle: angle, Along: true,
		Thin: long - lean, Thick: long, Across: across, Width: width,
	}.sawnFrom(p, StretcherSticks)
}

// foldingWedge returns one of the wedges that close the ring on its board, two
// to a stretcher. The offcuts of the taper serve where their slope holds and
// they are thick enough.
func foldingWedge(p piece.Piece) Block {
	s := sizesOfBlocks(p.Design.Unit)
	b := Block{
		Part: FoldingWedge, Count: 2 * p.Frame.Ring.Sides, Angle: math.Atan(1 / wedgeSlope),
		Thin: s.wedgeThin, Thick: s.wedgeThin + s.wedgeLong/wedgeSlope, Across: s.wedgeLong,
		Width: p.Frame.Leg.Thickness,
	}
	if !taperWedges(p) {
		return b.sawnFrom(p, LegSticks)
	}
	t := p.Taper
	b.Angle, b.From, b.Thin = t.ToEdge(), TaperOffcuts, 0
	b.Across, b.Thick = taperOffcut(p)
	switch t.Faces {
	case joint.OneFace:
		b.Count = p.Frame.Ring.Sides // each makes two
	case joint.AdjacentFaces: // the second face has lost its width at the foot
		b.Width = math.Min(b.Width, t.Foot)
	}
	return b
}
