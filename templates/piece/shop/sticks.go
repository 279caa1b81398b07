package shop

import (
	"cmp"
	"math"
	"slices"

	"rodsheet/templates/piece"
)

// A stick is what a small piece is sawn from: a length of planed wood that is held
// while the piece takes its shape at the end, and is cut free last.
type stick struct {
	from    Source
	section piece.StockSize // its length is left open
	takes   float64         // of its length for one piece, kerfs and all, mm
}

// stickParts are what the sticks are called in the cut list.
var stickParts = map[Source]Part{StretcherSticks: StretcherStick, LegSticks: LegStick, BlockSticks: BlockStick}

// IsStick reports whether a part is a stick that blocks are sawn from.
func (p Part) IsStick() bool { return p == StretcherStick || p == LegStick || p == BlockStick }

// sections returns the sections that are planed for the parts.
func sections(p piece.Piece) map[Source]piece.StockSize {
	of := func(s piece.StockSize) piece.StockSize { s.Length = 0; return s }
	return map[Source]piece.StockSize{StretcherSticks: of(p.SawnStretcher()), LegSticks: of(p.SawnLeg())}
}

// stickFor returns the stick that a piece so large comes out of, the first of from
// that is large enough, either way round, else one of its own section.
func stickFor(p piece.Piece, size piece.StockSize, takes float64, from ...Source) stick {
	size.Length = 0
	for _, f := range from {
		if s := sections(p)[f]; size.Ripped(s.Thickness) <= s.Width+piece.Slip {
			return stick{f, s, takes}
		}
	}
	return stick{BlockSticks, size, takes}
}

// stickItem tells the sticks of one section from others.
func (s stick) item() Item {
	return item(stickParts[s.from], Bought, s.section.Width, s.section.Thickness)
}

// stickRows returns the sticks that the rows are sawn from, and one for the test
// lap of a design without test pieces. No saw cut is made on a stick that is
// shorter than what is safely held: the last piece to come off one, the longest,
// leaves the rest of that length.
func stickRows(pieces []piece.Piece, rows []CutRow) []CutRow {
	wanted := map[Item][]stick{}
	var order []Item
	want := func(s stick, n int) {
		it := s.item()
		if wanted[it] == nil {
			order = append(order, it)
		}
		for range n {
			wanted[it] = append(wanted[it], s)
		}
	}
	for _, p := range pieces {
		if p.Design.Wood.Tests == 0 {
			want(stick{StretcherSticks, sections(p)[StretcherSticks], 2 * p.EndLap().EdgeLength()}, 1)
		}
	}
	for _, r := range rows {
		if r.stick.from != Bought {
			want(r.stick, r.Parts()+r.Serves+r.Spares)
		}
	}
	var out []CutRow
	for _, it := range order {
		for _, long := range stickLengths(pieces, wanted[it]) {
			out = appendStick(out, pieces[0], it, wanted[it][0].section, long)
		}
	}
	return out
}

// appendStick adds a stick so long, counted to one that is as long.
func appendStick(rows []CutRow, p piece.Piece, it Item, size piece.StockSize, long float64) []CutRow {
	size.Length = p.WholeUp(long)
	it.figures[2] = quantize(size.Length)
	return merged(rows, CutRow{Item: it, Serves: 1, Finished: size, Sawn: size, Rough: p.Roughed(size)},
		func(r CutRow) bool { return r.Item == it }, func(r *CutRow) { r.Serves++ })
}

// longestStick is so long that it comes out of the boards that the parts do: twice
// what is safely held, or the longest part, no longer than the boards at hand.
func longestStick(pieces []piece.Piece) float64 {
	most, board := 2*pieces[0].SafeLength(), 0.0
	for _, p := range pieces {
		most = math.Max(most, math.Max(p.RoughStretcher(), p.SawnLeg().Length))
		for _, b := range p.Design.Wood.Boards {
			board = math.Max(board, b.Length-p.Design.Wood.ExtraLength)
		}
	}
	return math.Min(most, cmp.Or(board, most))
}

// stickLengths shares pieces out among as few sticks as first fit takes.
func stickLengths(pieces []piece.Piece, all []stick) []float64 {
	safe, most := pieces[0].SafeLength(), longestStick(pieces)
	slices.SortStableFunc(all, func(a, b stick) int { return cmp.Compare(b.takes, a.takes) })
	var out []float64
	for _, s := range all {
		i := slices.IndexFunc(out, func(long float64) bool { return long+s.takes <= most })
		if i < 0 {
			out = append(out, math.Max(safe, s.takes))
			continue
		}
		out[i] += s.takes
	}
	return out
}
