package shop

import (
	"cmp"
	"math"
	"slices"

	"rodsheet/templates/piece"
	"rodsheet/templates/piece/design"
)

// A roughPiece is one piece to be sawn from a board.
type roughPiece struct {
	Name string
	Size piece.StockSize
}

// A cuttingPlan says which piece comes from which board. Each board is ripped
// into lanes along its length, and each lane crosscut.
type cuttingPlan struct {
	Kerf   float64
	Boards []plannedBoard // those that are used
	Missed []roughPiece   // pieces for which there is no room
}

// A plannedBoard is one board as it is to be sawn.
//
// Frame: x along the board from one end, y across it from one edge.
type plannedBoard struct {
	design.Board
	Lanes []lane
}

// A lane is a strip ripped out of a board.
type lane struct {
	At, Width float64
	Places    []laid
}

// A laid is a piece in its lane.
type laid struct {
	roughPiece
	At float64
}

// end returns how far the pieces of a lane reach along the board.
func (l lane) end() float64 {
	if len(l.Places) == 0 {
		return 0
	}
	last := l.Places[len(l.Places)-1]
	return last.At + last.Size.Length
}

// edge returns how far the lanes of a board reach across it.
func (b plannedBoard) edge() float64 {
	if len(b.Lanes) == 0 {
		return 0
	}
	last := b.Lanes[len(b.Lanes)-1]
	return last.At + last.Width
}

// after returns where the next cut piece begins behind one that ends at x: the
// saw takes its kerf between two, and nothing at the edge of the board.
func after(x, kerf float64) float64 {
	if x == 0 {
		return 0
	}
	return x + kerf
}

// behind returns how much is left of a lane behind its last saw cut, along the
// board.
func (b plannedBoard) behind(l lane, kerf float64) float64 { return b.Length - l.end() - kerf }

// beside returns how much is left beside the last lane, across the board.
func (b plannedBoard) beside(kerf float64) float64 { return b.Width - b.edge() - kerf }

// listedBoards returns the boards at hand. Sizes that list the same ones mean
// the same heap.
func listedBoards(pieces []piece.Piece) []design.Board {
	var out []design.Board
	for i, p := range pieces {
		known := slices.ContainsFunc(pieces[:i], func(q piece.Piece) bool { return slices.Equal(p.Design.Wood.Boards, q.Design.Wood.Boards) })
		if !known {
			out = append(out, p.Design.Wood.Boards...)
		}
	}
	return out
}

// ripKerf returns the widest kerf among the sizes.
func ripKerf(pieces []piece.Piece) float64 {
	widest := 0.0
	for _, p := range pieces {
		widest = math.Max(widest, p.Kerf)
	}
	return widest
}

// NoRoom tells how many pieces find no room in the cutting plan of the boards at
// hand, and which. It is not listed where the design lists no boards.
func NoRoom(pieces []piece.Piece) (count int, names string, listed bool) {
	plan := newCutList(pieces).Boards
	if plan == nil {
		return 0, "", false
	}
	return len(plan.Missed), plan.missedText(), true
}

// planBoards places the pieces by first fit, the largest first. It tries what
// "largest" can mean and keeps the plan that leaves the fewest pieces out and,
// of those, takes the fewest boards, then the least length of lane.
func planBoards(pieces []roughPiece, boards []design.Board, kerf float64) cuttingPlan {
	var best cuttingPlan
	for i, order := range []func(roughPiece) [2]float64{
		func(p roughPiece) [2]float64 { return [2]float64{p.broad(), p.Size.Length} },
		func(p roughPiece) [2]float64 { return [2]float64{p.Size.Length, p.broad()} },
		func(p roughPiece) [2]float64 { return [2]float64{p.Size.Length * p.broad(), 0} },
	} {
		sorted := slices.Clone(pieces)
		slices.SortStableFunc(sorted, func(a, b roughPiece) int {
			ka, kb := order(a), order(b)
			return cmp.Or(cmp.Compare(kb[0], ka[0]), cmp.Compare(kb[1], ka[1]))
		})
		plan := firstFit(sorted, boards, kerf)
		if i == 0 || plan.better(best) {
			best = plan
		}
	}
	return best
}

// broad returns the larger size across the grain.
func (p roughPiece) broad() float64 { return math.Max(p.Size.Width, p.Size.Thickness) }

func (c cuttingPlan) better(d cuttingPlan) bool {
	return cmp.Or(
		cmp.Compare(len(c.Missed), len(d.Missed)),
		cmp.Compare(len(c.Boards), len(d.Boards)),
		cmp.Compare(c.sawn(), d.sawn()),
	) < 0
}

// sawn returns the area in mm² of all lanes, as far as they are used.
func (c cuttingPlan) sawn() float64 {
	sum := 0.0
	for _, b := range c.Boards {
		for _, l := range b.Lanes {
			sum += l.Width * l.end()
		}
	}
	return sum
}

// firstFit places the pieces in the order given: in the first lane with room,
// else in a new lane of the first board with room, else on a fresh board, the
// thinnest that serves.
func firstFit(pieces []roughPiece, heap []design.Board, kerf float64) cuttingPlan {
	heap = slices.Clone(heap)
	slices.SortStableFunc(heap, func(a, b design.Board) int { return cmp.Compare(a.Thickness, b.Thickness) })
	plan := cuttingPlan{Kerf: kerf}
	for _, p := range pieces {
		if !plan.joinLane(p) && !plan.openLane(p) && !plan.openBoard(p, heap) {
			plan.Missed = append(plan.Missed, p)
		}
	}
	return plan
}

func (c *cuttingPlan) joinLane(p roughPiece) bool {
	for i := range c.Boards {
		b := &c.Boards[i]
		for k := range b.Lanes {
			l := &b.Lanes[k]
			at := after(l.end(), c.Kerf)
			if p.Size.Ripped(b.Thickness) <= l.Width+piece.Slip && at+p.Size.Length <= b.Length+piece.Slip {
				l.Places = append(l.Places, laid{p, at})
				return true
			}
		}
	}
	return false
}

func (c *cuttingPlan) openLane(p roughPiece) bool {
	for i := range c.Boards {
		if c.Boards[i].open(p, c.Kerf) {
			return true
		}
	}
	return false
}

// open rips a new lane for p if the board has room for it.
func (b *plannedBoard) open(p roughPiece, kerf float64) bool {
	at, width := after(b.edge(), kerf), p.Size.Ripped(b.Thickness)
	if at+width > b.Width+piece.Slip || p.Size.Length > b.Length+piece.Slip {
		return false
	}
	b.Lanes = append(b.Lanes, lane{at, width, []laid{{p, 0}}})
	return true
}

func (c *cuttingPlan) openBoard(p roughPiece, heap []design.Board) bool {
	for i := range heap {
		fresh := plannedBoard{Board: heap[i]}
		fresh.Count = 1
		if heap[i].Count > 0 && fresh.open(p, c.Kerf) {
			heap[i].Count--
			c.Boards = append(c.Boards, fresh)
			return true
		}
	}
	return false
}
