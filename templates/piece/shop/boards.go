package shop

import (
	"cmp"
	"math"
	"slices"

	"rodsheet/templates/piece"
	"rodsheet/templates/piece/design"
)

// A Name says which part of which size a piece of a board becomes, and whether
// it is a spare one.
type Name struct {
	Part  Part
	Size  string // empty for a single size, and for what serves all
	Spare bool
}

// A RoughPiece is one piece to be sawn from a board.
type RoughPiece struct {
	Name Name
	Size piece.StockSize
}

// A CuttingPlan says which piece comes from which board. Each board is ripped
// into lanes along its length, and each lane crosscut.
type CuttingPlan struct {
	Kerf   float64
	Boards []PlannedBoard // those that are used
	Missed []RoughPiece   // pieces for which there is no room
}

// A PlannedBoard is one board as it is to be sawn.
//
// Frame: x along the board from one end, y across it from one edge.
type PlannedBoard struct {
	design.Board
	Lanes []Lane
}

// A Lane is a strip ripped out of a board.
type Lane struct {
	At, Width float64
	Places    []Placed
}

// A Placed is a piece in its lane.
type Placed struct {
	RoughPiece
	At float64
}

// end returns how far the pieces of a lane reach along the board.
func (l Lane) end() float64 {
	if len(l.Places) == 0 {
		return 0
	}
	last := l.Places[len(l.Places)-1]
	return last.At + last.Size.Length
}

// edge returns how far the lanes of a board reach across it.
func (b PlannedBoard) edge() float64 {
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

// Behind returns how much is left of a lane behind its last saw cut, along the
// board.
func (b PlannedBoard) Behind(l Lane, kerf float64) float64 { return b.Length - l.end() - kerf }

// Beside returns how much is left beside the last lane, across the board.
func (b PlannedBoard) Beside(kerf float64) float64 { return b.Width - b.edge() - kerf }

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

// Boards returns the cutting plan of the sizes of one design, nil where that lists
// no boards.
func Boards(pieces []piece.Piece) *CuttingPlan {
	if len(listedBoards(pieces)) == 0 {
		return nil
	}
	return newCutList(pieces, nil).Boards
}

// ripKerf returns the widest kerf among the sizes.
func ripKerf(pieces []piece.Piece) float64 {
	widest := 0.0
	for _, p := range pieces {
		widest = math.Max(widest, p.Kerf)
	}
	return widest
}

// A Missing is how many pieces of one name have no room.
type Missing struct {
	Name  Name
	Count int
}

// NoRoom returns the pieces that have no room on the boards, each name once.
func (c CuttingPlan) NoRoom() []Missing {
	var out []Missing
	for _, p := range c.Missed {
		k := slices.IndexFunc(out, func(m Missing) bool { return m.Name == p.Name })
		if k < 0 {
			k = len(out)
			out = append(out, Missing{Name: p.Name})
		}
		out[k].Count++
	}
	return out
}

// planBoards places the pieces by first fit, the largest first. It tries what
// "largest" can mean and keeps the plan that leaves the fewest pieces out and,
// of those, takes the fewest boards, then the least length of lane.
func planBoards(pieces []RoughPiece, boards []design.Board, kerf float64) CuttingPlan {
	var best CuttingPlan
	for i, order := range []func(RoughPiece) [2]float64{
		func(p RoughPiece) [2]float64 { return [2]float64{p.broad(), p.Size.Length} },
		func(p RoughPiece) [2]float64 { return [2]float64{p.Size.Length, p.broad()} },
		func(p RoughPiece) [2]float64 { return [2]float64{p.Size.Length * p.broad(), 0} },
	} {
		sorted := slices.Clone(pieces)
		slices.SortStableFunc(sorted, func(a, b RoughPiece) int {
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
func (p RoughPiece) broad() float64 { return math.Max(p.Size.Width, p.Size.Thickness) }

func (c CuttingPlan) better(d CuttingPlan) bool {
	return cmp.Or(
		cmp.Compare(len(c.Missed), len(d.Missed)),
		cmp.Compare(len(c.Boards), len(d.Boards)),
		cmp.Compare(c.sawn(), d.sawn()),
	) < 0
}

// sawn returns the area in mm² of all Lanes, as far as they are used.
func (c CuttingPlan) sawn() float64 {
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
func firstFit(pieces []RoughPiece, heap []design.Board, kerf float64) CuttingPlan {
	heap = slices.Clone(heap)
	slices.SortStableFunc(heap, func(a, b design.Board) int { return cmp.Compare(a.Thickness, b.Thickness) })
	plan := CuttingPlan{Kerf: kerf}
	for _, p := range pieces {
		if !plan.joinLane(p) && !plan.openLane(p) && !plan.openBoard(p, heap) {
			plan.Missed = append(plan.Missed, p)
		}
	}
	return plan
}

func (c *CuttingPlan) joinLane(p RoughPiece) bool {
	for i := range c.Boards {
		b := &c.Boards[i]
		for k := range b.Lanes {
			l := &b.Lanes[k]
			at := after(l.end(), c.Kerf)
			if p.Size.Ripped(b.Thickness) <= l.Width+piece.Slip && at+p.Size.Length <= b.Length+piece.Slip {
				l.Places = append(l.Places, Placed{p, at})
				return true
			}
		}
	}
	return false
}

func (c *CuttingPlan) openLane(p RoughPiece) bool {
	for i := range c.Boards {
		if c.Boards[i].open(p, c.Kerf) {
			return true
		}
	}
	return false
}

// open rips a new lane for p if the board has room for it.
func (b *PlannedBoard) open(p RoughPiece, kerf float64) bool {
	at, width := after(b.edge(), kerf), p.Size.Ripped(b.Thickness)
	if at+width > b.Width+piece.Slip || p.Size.Length > b.Length+piece.Slip {
		return false
	}
	b.Lanes = append(b.Lanes, Lane{at, width, []Placed{{p, 0}}})
	return true
}

func (c *CuttingPlan) openBoard(p RoughPiece, heap []design.Board) bool {
	for i := range heap {
		fresh := PlannedBoard{Board: heap[i]}
		fresh.Count = 1
		if heap[i].Count > 0 && fresh.open(p, c.Kerf) {
			heap[i].Count--
			c.Boards = append(c.Boards, fresh)
			return true
		}
	}
	return false
}
