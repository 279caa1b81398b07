package shop

import (
	"slices"

	"rodsheet/geometry/lists"
	"rodsheet/templates/piece"
)

// Extras are what is milled and sawn beside the parts.
type Extras uint8

const (
	NoExtras Extras = 0
	Spares   Extras = 1
	Tests    Extras = 2
)

// A sized is one size with the parts it brings to every step.
type sized struct {
	piece.Piece
	stretchers, legs, topBoards, pads Batch
	// joints are the stretchers and the legs as they go through the rows of the
	// joint, with the test pieces that are theirs.
	stretcherJoints, legJoints Batch
	testLaps                   int                // test pieces for its laps, none where an earlier size has the same
	tested                     bool               // there are test pieces of its sections
	bothEnds                   bool               // of some test pieces both ends serve, in whatever size
	extras                     Extras             // of all sizes
	withSticks                 bool               // block sticks are planed with parts, of whatever size
	blocks                     []piece.Lot[Block] // of all sizes
	// jigs are those, and spacers, of its own and those it shares with later sizes;
	// sticks what all of them are sawn from, with the first size.
	jigs, sticks []Batch
}

// uncounted returns a size without the counts of its parts, which move no stop, but
// for test pieces: they are sawn to a length of their own.
func uncounted(p piece.Piece) sized {
	return sized{
		Piece:           p,
		stretchers:      Batch{Part: Stretcher, Tests: p.Design.Wood.Tests},
		legs:            Batch{Part: Leg},
		stretcherJoints: Batch{Part: Stretcher},
		legJoints:       Batch{Part: Leg},
	}
}

// counted counts the parts of each size. A spare that serves several sizes is
// counted with the first of them, and so are test pieces and blocks.
func counted(pieces []piece.Piece, list CutList, blocks []piece.Lot[Block]) []sized {
	out := make([]sized, len(pieces))
	for i, p := range pieces {
		of := func(part Part, it Item, sawn func(piece.Piece) piece.StockSize) Batch {
			b := Batch{Part: part, Size: p.Design.Size, Count: p.Frame.Ring.Sides}
			if r := list.row(it); r.Sizes[0].Size == p.Design.Size {
				b.Spares = r.Spares
			}
			if firstSection(pieces[:i], p, sawn) {
				b.Tests = list.tests(part, sawn(p))
			}
			return b
		}
		out[i] = sized{
			Piece:      p,
			stretchers: of(Stretcher, stretcherItem(p), piece.Piece.SawnStretcher),
			legs:       of(Leg, legItem(p), piece.Piece.SawnLeg),
			tested:     list.tests(Stretcher, p.SawnStretcher()) > 0,
			bothEnds:   asked(pieces) > 0 && lists.Most(pieces, func(q piece.Piece) int { return max(len(trials(pieces, q, Stretcher)), len(trials(pieces, q, Leg))) }) > 1,
			extras:     list.Extras(),
			withSticks: slices.ContainsFunc(list.Rows, func(r CutRow) bool { return r.Part.IsStick() }),
			topBoards:  Batch{Part: TopBoard, Size: p.Design.Size},
			pads:       list.pads(p),
			blocks:     blocks,
			jigs:       batchedJigs(pieces, p),
		}
		out[i].stretcherJoints, out[i].legJoints = out[i].stretchers.testsAt(pieces, i), out[i].legs.testsAt(pieces, i)
		if !slices.ContainsFunc(pieces[:i], func(q piece.Piece) bool { return lapTrial(q) == lapTrial(p) }) {
			out[i].testLaps = asked(pieces)
		}
		if rows := topRows(p); len(rows) > 0 {
			out[i].topBoards.Count = rows[0].Parts()
		}
	}
	for _, r := range list.Rows {
		if r.Part.IsStick() {
			out[0].sticks = append(out[0].sticks, Batch{Part: r.Part, Count: r.Serves})
		}
	}
	return out
}

// pads returns the wooden pads of a size, the spare with the first that has them.
func (c CutList) pads(p piece.Piece) Batch {
	rows := padRows(p)
	if len(rows) == 0 {
		return Batch{}
	}
	b := Batch{Part: Pad, Size: p.Design.Size, Count: rows[0].Parts()}
	if row := c.row(rows[0].Item); row.Sizes[0].Size == p.Design.Size {
		b.Spares = row.Spares
	}
	return b
}

// block returns the block of that kind that no size before this one has alike, and what
// its step is done to.
func (p sized) block(part Part) (b Block, batch Batch, ok bool) {
	for _, l := range p.blocks {
		if b = l.What; b.Part == part && l.Sizes[0] == p.Design.Size {
			return b, Batch{Part: part, Count: b.Count, For: l.Sizes}, true
		}
	}
	return Block{}, Batch{}, false
}

// firstSection reports whether p is the first size of its section.
func firstSection(before []piece.Piece, p piece.Piece, sawn func(piece.Piece) piece.StockSize) bool {
	section := func(p piece.Piece) [2]float64 {
		return [2]float64{quantize(sawn(p).Width), quantize(sawn(p).Thickness)}
	}
	return !slices.ContainsFunc(before, func(q piece.Piece) bool { return section(q) == section(p) })
}
