package shop

import (
	"slices"
	"strings"

	"rodsheet/templates/piece"
)

// uncounted returns a size without the counts of its parts, which move no stop, but
// for test pieces: they are sawn to a length of their own.
func uncounted(p piece.Piece) batchedPiece {
	return batchedPiece{
		Piece:      p,
		stretchers: batch{Part: "stretcher", Tests: p.Design.Wood.Tests},
		legs:       batch{Part: "leg"},
	}
}

// batched counts the parts of each size. A spare that serves several sizes is
// counted with the first of them, and so are test pieces and blocks.
func batched(pieces []piece.Piece) []batchedPiece {
	out := make([]batchedPiece, len(pieces))
	list, blocks := newCutList(pieces), sharedBlocks(pieces)
	for i, p := range pieces {
		counted := func(part string, kind any, sawn func(piece.Piece) piece.StockSize) batch {
			b := batch{Part: part, Size: p.Design.Size, Count: p.Frame.Ring.Sides}
			for _, r := range list.Rows {
				if r.kind == kind && r.Sizes[0].Size == p.Design.Size {
					b.Spares = r.Spares
				}
			}
			if firstSection(pieces[:i], p, sawn) {
				b.Tests = list.tests(part, sawn(p))
			}
			return b
		}
		out[i] = batchedPiece{
			Piece:      p,
			stretchers: counted("stretcher", kindOfStretcher(p), piece.Piece.SawnStretcher),
			legs:       counted("leg", kindOfLeg(p), piece.Piece.SawnLeg),
			tested:     list.tests("stretcher", p.SawnStretcher()) > 0,
			topBoards:  batch{Part: "top board", Size: p.Design.Size},
			blocks:     batchedBlocks(blocks, p, len(pieces)),
		}
		if rows := topRows(p); len(rows) > 0 {
			out[i].topBoards.Count = rows[0].parts()
		}
	}
	return out
}

// batchedBlocks returns the blocks that no size before p has alike.
func batchedBlocks(all []piece.Lot[Block], p piece.Piece, sizes int) []batchedBlock {
	var out []batchedBlock
	for _, l := range all {
		if l.Sizes[0] == p.Design.Size {
			part, _, _ := strings.Cut(l.What.Name, ",")
			out = append(out, batchedBlock{l.What, batch{
				Part: part, Count: l.What.Count, For: piece.SizeWords(l.Sizes, sizes),
			}})
		}
	}
	return out
}

// block returns the block of that name, if the size brings one of its own.
func (p batchedPiece) block(name string) (batchedBlock, bool) {
	i := slices.IndexFunc(p.blocks, func(b batchedBlock) bool { return b.Name == name })
	if i < 0 {
		return batchedBlock{}, false
	}
	return p.blocks[i], true
}

// firstSection reports whether p is the first size of its section.
func firstSection(before []piece.Piece, p piece.Piece, sawn func(piece.Piece) piece.StockSize) bool {
	section := func(p piece.Piece) [2]float64 {
		return [2]float64{quantize(sawn(p).Width), quantize(sawn(p).Thickness)}
	}
	return !slices.ContainsFunc(before, func(q piece.Piece) bool { return section(q) == section(p) })
}
