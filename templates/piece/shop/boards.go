package shop

import (
	"cmp"
	"math"
	"math/rand/v2"
	"slices"

	"rodsheet/geometry/lists"
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

// A CuttingPlan says which piece comes from which board. Each board is ripped into
// lanes along its length, a thick one resawn into strips, and each strip crosscut.
type CuttingPlan struct {
	Kerf   float64
	Boards []PlannedBoard // those that are used
	Missed []RoughPiece   // pieces for which there is no room
}

// A PlannedBoard is one board as it is to be sawn.
//
// Frame: x along the board and its grain from one end, y across it from one edge, z
// through it from one face.
type PlannedBoard struct {
	design.Board
	Lanes []Lane
}

// A Lane is what is ripped out of a board for pieces so wide and thick, its strips
// one behind the other along z: more than one where it is resawn.
type Lane struct {
	At, Width, Thickness float64
	Strips               [][]Placed
}

// A Placed is a piece in its strip. One that is smaller than its lane both ways round
// is ripped once more when it is crosscut.
type Placed struct {
	RoughPiece
	At     float64
	Second bool // it is ripped once more
}

// end returns how far the pieces of a strip reach along the board.
func end(strip []Placed) float64 {
	if len(strip) == 0 {
		return 0
	}
	last := strip[len(strip)-1]
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

// Behind returns how much is left of a strip behind its last saw cut, along the
// board.
func (b PlannedBoard) Behind(strip []Placed, kerf float64) float64 {
	return b.Length - end(strip) - kerf
}

// Beside returns how much is left beside the last lane, across the board.
func (b PlannedBoard) Beside(kerf float64) float64 { return b.Width - b.edge() - kerf }

// listedBoards returns the boards at hand. Sizes that list the same ones mean
// the same heap.
func listedBoards(designs []design.Design) []design.Board {
	var out []design.Board
	for i, d := range designs {
		known := slices.ContainsFunc(designs[:i], func(e design.Design) bool { return slices.Equal(d.Wood.Boards, e.Wood.Boards) })
		if !known {
			out = append(out, d.Wood.Boards...)
		}
	}
	return out
}

// Boards returns the cutting plan of the sizes of one design, nil where that lists
// no boards.
func Boards(pieces []piece.Piece) *CuttingPlan {
	if len(listedBoards(designsOf(pieces))) == 0 {
		return nil
	}
	return newCutList(pieces, nil).Boards
}

// ripKerf returns the widest kerf among the sizes.
func ripKerf(designs []design.Design) float64 {
	return lists.Most(designs, func(d design.Design) float64 { return cmp.Or(d.Milled.Kerf, d.Saw.Kerf) })
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
		out = merged(out, Missing{p.Name, 1}, func(m Missing) bool { return m.Name == p.Name }, func(m *Missing) { m.Count++ })
	}
	return out
}

// planBoards places the pieces by first fit, the largest first. It tries what
// "largest" can mean, and whether a second rip comes before a new lane or after it,
// then, while more boards than one are taken or pieces left out, orders at random
// near to the last of these. It keeps the plan that leaves the fewest pieces out and,
// of those, takes the fewest boards, then the least wood, then the fewest second rips.
func planBoards(pieces []RoughPiece, boards []design.Board, kerf float64) CuttingPlan {
	const tries = 60
	random := rand.New(rand.NewPCG(1, 1)) // the same plan every time
	orders := []func(RoughPiece) [2]float64{
		func(p RoughPiece) [2]float64 { return [2]float64{p.broad(), p.Size.Length} },
		func(p RoughPiece) [2]float64 { return [2]float64{p.Size.Length, p.broad()} },
		func(p RoughPiece) [2]float64 { return [2]float64{p.Size.Length * p.broad()} },
		func(p RoughPiece) [2]float64 {
			return [2]float64{p.Size.Length * p.broad() * (0.6 + 0.8*random.Float64())}
		},
	}
	var best CuttingPlan
	for i := range tries {
		if i >= len(orders) && len(best.Missed) == 0 && len(best.Boards) <= 1 {
			break
		}
		sorted := largestFirst(pieces, orders[min(i, len(orders)-1)])
		for k, laneFirst := range []bool{false, true} {
			plan := firstFit(sorted, boards, kerf, laneFirst)
			if i+k == 0 || plan.better(best) {
				best = plan
			}
		}
	}
	return best
}

// largestFirst sorts pieces by falling size, which is asked of each once.
func largestFirst(pieces []RoughPiece, size func(RoughPiece) [2]float64) []RoughPiece {
	type sized struct {
		RoughPiece
		by [2]float64
	}
	all := lists.Map(pieces, func(p RoughPiece) sized { return sized{p, size(p)} })
	slices.SortStableFunc(all, func(a, b sized) int {
		return cmp.Or(cmp.Compare(b.by[0], a.by[0]), cmp.Compare(b.by[1], a.by[1]))
	})
	return lists.Map(all, func(s sized) RoughPiece { return s.RoughPiece })
}

// broad returns the larger size across the grain.
func (p RoughPiece) broad() float64 { return math.Max(p.Size.Width, p.Size.Thickness) }

// lies returns the two ways in which a piece lies in a board: across it and through it.
func (p RoughPiece) lies() [2][2]float64 {
	return [2][2]float64{{p.Size.Width, p.Size.Thickness}, {p.Size.Thickness, p.Size.Width}}
}

func (c CuttingPlan) better(d CuttingPlan) bool {
	wood, rips := c.sawn()
	wood2, rips2 := d.sawn()
	return cmp.Or(
		cmp.Compare(len(c.Missed), len(d.Missed)),
		cmp.Compare(len(c.Boards), len(d.Boards)),
		cmp.Compare(wood, wood2),
		cmp.Compare(rips, rips2),
	) < 0
}

// sawn returns the area in mm² of all lanes, as far as they are used, and how many
// pieces are ripped twice.
func (c CuttingPlan) sawn() (area float64, second int) {
	for _, b := range c.Boards {
		for _, l := range b.Lanes {
			reach := 0.0
			for _, s := range l.Strips {
				reach = math.Max(reach, end(s))
				for _, p := range s {
					if p.Second {
						second++
					}
				}
			}
			area += l.Width * reach
		}
	}
	return area, second
}

// firstFit places the pieces in the order given: in a lane of their section, which is
// resawn once more where that gives another strip; in a larger lane; in a new lane of
// a board that is open; on a fresh board, the thinnest that serves.
func firstFit(pieces []RoughPiece, heap []design.Board, kerf float64, laneFirst bool) CuttingPlan {
	heap = slices.Clone(heap)
	slices.SortStableFunc(heap, func(a, b design.Board) int { return cmp.Compare(a.Thickness, b.Thickness) })
	plan := CuttingPlan{Kerf: kerf}
	for i, p := range pieces {
		left := pieces[i:]
		if plan.joinLane(p, false) || !laneFirst && plan.joinLane(p, true) || plan.openLane(left) ||
			laneFirst && plan.joinLane(p, true) || plan.openBoard(left, heap) {
			continue
		}
		plan.Missed = append(plan.Missed, p)
	}
	return plan
}

// joinLane puts a piece into a lane of its own section, or into the least one that is
// larger.
func (c *CuttingPlan) joinLane(p RoughPiece, larger bool) bool {
	var best *Lane
	strip := 0
	for i := range c.Boards {
		b := &c.Boards[i]
		for k := range b.Lanes {
			l := &b.Lanes[k]
			if !l.takes(p, larger) || best != nil && l.Width*l.Thickness >= best.Width*best.Thickness {
				continue
			}
			if s := b.strip(*l, p.Size.Length, c.Kerf); s >= 0 {
				best, strip = l, s
			}
		}
	}
	if best == nil {
		return false
	}
	if strip == len(best.Strips) {
		best.Strips = append(best.Strips, nil)
	}
	s := &best.Strips[strip]
	*s = append(*s, Placed{p, after(end(*s), c.Kerf), larger})
	return true
}

// takes reports whether a piece has the section of the lane, or a smaller one.
func (l Lane) takes(p RoughPiece, larger bool) bool {
	for _, lie := range p.lies() {
		across, through := l.Width-lie[0], l.Thickness-lie[1]
		if math.Abs(across) <= piece.Slip && math.Abs(through) <= piece.Slip || larger && across >= -piece.Slip && through >= -piece.Slip {
			return true
		}
	}
	return false
}

// strip returns the first strip of a lane with room for so long a piece, the number of
// strips for one more that can be resawn, -1 for none.
func (b PlannedBoard) strip(l Lane, long, kerf float64) int {
	for i, s := range l.Strips {
		if after(end(s), kerf)+long <= b.Length+piece.Slip {
			return i
		}
	}
	if long <= b.Length+piece.Slip && len(l.Strips) < strips(b.Thickness, l.Thickness, kerf) {
		return len(l.Strips)
	}
	return -1
}

// strips returns how many strips so thick a board yields: n of them and n − 1 kerfs.
// What the saw wanders is in the rough allowance of each.
func strips(board, thickness, kerf float64) int {
	return int((board + kerf + piece.Slip) / (thickness + kerf))
}

func (c *CuttingPlan) openLane(left []RoughPiece) bool {
	for i := range c.Boards {
		if c.Boards[i].open(left, c.Kerf) {
			return true
		}
	}
	return false
}

// open rips a new lane for the first piece if the board has room for it.
func (b *PlannedBoard) open(left []RoughPiece, kerf float64) bool {
	p, at := left[0], after(b.edge(), kerf)
	lie, ok := b.lie(left, b.Width-at, kerf)
	if ok {
		b.Lanes = append(b.Lanes, Lane{at, lie[0], lie[1], [][]Placed{{{RoughPiece: p}}}})
	}
	return ok
}

// lie returns how the first piece lies in a new lane no wider than room: the way that
// takes the least of the board's width for it and all others of its section, resawn
// where the board yields several.
func (b PlannedBoard) lie(left []RoughPiece, room, kerf float64) (best [2]float64, ok bool) {
	p, long := left[0], 0.0
	if p.Size.Length > b.Length+piece.Slip {
		return best, false
	}
	for _, q := range left {
		if q.Size.Width == p.Size.Width && q.Size.Thickness == p.Size.Thickness {
			long += q.Size.Length + kerf
		}
	}
	need, least := math.Ceil(long/(b.Length+kerf)), math.Inf(1)
	for _, lie := range p.lies() {
		n := strips(b.Thickness, lie[1], kerf)
		if n == 0 || lie[0] > room+piece.Slip {
			continue
		}
		if wide := lie[0] * math.Ceil(need/float64(n)); wide < least {
			best, least, ok = lie, wide, true
		}
	}
	return best, ok
}

func (c *CuttingPlan) openBoard(left []RoughPiece, heap []design.Board) bool {
	for i := range heap {
		fresh := PlannedBoard{Board: heap[i]}
		fresh.Count = 1
		if heap[i].Count > 0 && fresh.open(left, c.Kerf) {
			heap[i].Count--
			c.Boards = append(c.Boards, fresh)
			return true
		}
	}
	return false
}
