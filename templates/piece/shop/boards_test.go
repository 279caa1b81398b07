package shop

import (
	"math"
	"math/rand/v2"
	"testing"

	"pgregory.net/rapid"

	"rodsheet/templates/piece"
	"rodsheet/templates/piece/design"
	"rodsheet/templates/piece/internal/piecetest"
)

func drawPieces(t *rapid.T) []RoughPiece {
	return rapid.SliceOfN(rapid.Custom(func(t *rapid.T) RoughPiece {
		return RoughPiece{
			Name: Name{Part: Leg},
			Size: piece.StockSize{
				Length:    rapid.Float64Range(100, 1500).Draw(t, "length"),
				Width:     rapid.Float64Range(10, 120).Draw(t, "width"),
				Thickness: rapid.Float64Range(10, 60).Draw(t, "thickness"),
			},
		}
	}), 0, 30).Draw(t, "pieces")
}

func drawBoards(t *rapid.T) []design.Board {
	return rapid.SliceOfN(rapid.Custom(func(t *rapid.T) design.Board {
		return design.Board{
			Length: rapid.Float64Range(200, 3000).Draw(t, "length"), Width: rapid.Float64Range(20, 300).Draw(t, "width"),
			Thickness: rapid.Float64Range(15, 70).Draw(t, "thickness"), Count: rapid.IntRange(0, 3).Draw(t, "count"),
		}
	}), 0, 4).Draw(t, "boards")
}

// Nothing overlaps, a kerf is kept, all is inside its board, no more boards
// are taken than there are, and every piece is placed or named.
func TestPlanCanBeSawn(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		pieces, boards := drawPieces(t), drawBoards(t)
		kerf := rapid.Float64Range(0, 5).Draw(t, "kerf")
		plan := planBoards(pieces, boards, kerf)
		left := map[RoughPiece]int{}
		for _, p := range pieces {
			left[p]++
		}
		heap := map[[3]float64]int{}
		for _, b := range boards {
			heap[[3]float64{b.Length, b.Width, b.Thickness}] += b.Count
		}
		for _, b := range plan.Boards {
			heap[[3]float64{b.Length, b.Width, b.Thickness}]--
			y := -kerf
			for _, l := range b.Lanes {
				if l.At < y+kerf-piece.Slip || l.At+l.Width > b.Width+piece.Slip {
					t.Fatalf("lane at %v, %v wide, after %v on a board %v wide", l.At, l.Width, y, b.Width)
				}
				y = l.At + l.Width
				checkLane(t, b, l, kerf)
				for _, p := range l.Places {
					left[p.RoughPiece]--
				}
			}
		}
		for _, p := range plan.Missed {
			left[p]--
		}
		for p, n := range left {
			if n != 0 {
				t.Fatalf("piece %v is placed or named %d times too few", p, n)
			}
		}
		for b, n := range heap {
			if n < 0 {
				t.Fatalf("%d boards %v too many are taken", -n, b)
			}
		}
	})
}

// checkLane wants the pieces of a lane a kerf apart, within the board, and each
// to come out of it one way round or the other.
func checkLane(t *rapid.T, b PlannedBoard, l Lane, kerf float64) {
	x := -kerf
	for _, p := range l.Places {
		if p.At < x+kerf-piece.Slip || p.At+p.Size.Length > b.Length+piece.Slip {
			t.Fatalf("piece at %v, %v long, after %v on a board %v long", p.At, p.Size.Length, x, b.Length)
		}
		x = p.At + p.Size.Length
		flat := p.Size.Width <= l.Width+piece.Slip && p.Size.Thickness <= b.Thickness+piece.Slip
		turned := p.Size.Thickness <= l.Width+piece.Slip && p.Size.Width <= b.Thickness+piece.Slip
		if !flat && !turned {
			t.Fatalf("piece %v does not come out of a lane %v wide, %v thick", p.Size, l.Width, b.Thickness)
		}
	}
}

// A piece is named as missed only where no board at hand has room for it alone,
// or all boards that have are taken.
func TestPlanMissesOnlyWhatHasNoRoom(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		pieces, boards := drawPieces(t), drawBoards(t)
		plan := planBoards(pieces, boards, 3)
		for _, p := range plan.Missed {
			for _, b := range boards {
				used := 0
				for _, u := range plan.Boards {
					if u.Length == b.Length && u.Width == b.Width && u.Thickness == b.Thickness {
						used++
					}
				}
				same := 0
				for _, c := range boards {
					if c.Length == b.Length && c.Width == b.Width && c.Thickness == b.Thickness {
						same += c.Count
					}
				}
				if used < same && p.Size.Length <= b.Length && p.Size.Ripped(b.Thickness) <= b.Width {
					t.Fatalf("%v is missed though board %v lies idle", p.Size, b)
				}
			}
		}
	})
}

// fewestBoards tries every way to lay the pieces in lanes, and the lanes on
// boards.
func fewestBoards(pieces []RoughPiece, b design.Board, kerf float64) int {
	best := math.MaxInt
	partitions(len(pieces), func(lane []int, lanes int) {
		long, wide := make([]float64, lanes), make([]float64, lanes)
		for i, l := range lane {
			if long[l] > 0 {
				long[l] += kerf
			}
			long[l] += pieces[i].Size.Length
			wide[l] = math.Max(wide[l], pieces[i].Size.Ripped(b.Thickness))
		}
		for _, l := range long {
			if l > b.Length {
				return
			}
		}
		partitions(lanes, func(board []int, boards int) {
			taken := make([]float64, boards)
			for l, k := range board {
				if taken[k] > 0 {
					taken[k] += kerf
				}
				if taken[k] += wide[l]; taken[k] > b.Width {
					return
				}
			}
			best = min(best, boards)
		})
	})
	return best
}

// partitions calls f for every way to put n things into groups.
func partitions(n int, f func(group []int, groups int)) {
	group := make([]int, n)
	var put func(i, groups int)
	put = func(i, groups int) {
		if i == n {
			f(group, groups)
			return
		}
		for g := range groups + 1 {
			group[i] = g
			put(i+1, max(groups, g+1))
		}
	}
	put(0, 0)
}

func TestPlanAgainstBruteForce(t *testing.T) {
	random := rand.New(rand.NewPCG(7, 11))
	between := func(lo, hi float64) float64 { return lo + (hi-lo)*random.Float64() }
	const cases, kerf = 300, 3
	best := 0
	for range cases {
		board := design.Board{Length: between(800, 1600), Width: between(90, 160), Thickness: 40, Count: 9}
		pieces := make([]RoughPiece, 3+random.IntN(4))
		for i := range pieces {
			pieces[i].Size = piece.StockSize{Length: between(200, 790), Width: between(25, 85), Thickness: 38}
		}
		plan := planBoards(pieces, []design.Board{board}, kerf)
		got, want := len(plan.Boards), fewestBoards(pieces, board, kerf)
		if got < want || got > want+1 || len(plan.Missed) > 0 {
			t.Errorf("%d boards and %d missed, the fewest are %d: %v on %v", got, len(plan.Missed), want, pieces, board)
		}
		if got == want {
			best++
		}
	}
	if best < cases*9/10 {
		t.Errorf("the fewest boards in %d cases of %d only", best, cases)
	}
	t.Logf("the fewest boards in %d of %d cases", best, cases)
}

func TestPlanByHand(t *testing.T) {
	stick := func(name Part, l, w, th float64) RoughPiece {
		return RoughPiece{Name{Part: name}, piece.StockSize{Length: l, Width: w, Thickness: th}}
	}
	boards := []design.Board{{Length: 1000, Width: 100, Thickness: 30, Count: 1}}
	// Two lanes of 48 and a kerf of 4 fill the width exactly; 498 + 4 + 498 the length.
	full := []RoughPiece{stick(Stretcher, 498, 48, 30), stick(Stretcher, 498, 48, 30), stick(Stretcher, 498, 48, 30), stick(Stretcher, 498, 48, 30)}
	plan := planBoards(append(full, stick(Leg, 50, 20, 20), stick(Pad, 200, 40, 31)), boards, 4)
	if len(plan.Boards) != 1 || len(plan.Boards[0].Lanes) != 2 || len(plan.Missed) != 2 {
		t.Fatalf("plan %+v", plan)
	}
	for _, m := range plan.NoRoom() {
		if m.Count != 1 || m.Name.Part != Leg && m.Name.Part != Pad {
			t.Errorf("missed %v", m)
		}
	}
	for _, left := range []float64{plan.Boards[0].Beside(4), plan.Boards[0].Behind(plan.Boards[0].Lanes[1], 4)} {
		if left > piece.Slip {
			t.Errorf("%.3f mm left of a full board", left)
		}
	}
	// One millimetre more and the second piece needs a lane of its own.
	long := planBoards([]RoughPiece{stick(Stretcher, 499, 48, 30), stick(Stretcher, 498, 48, 30)}, boards, 4)
	if len(long.Boards) != 1 || len(long.Boards[0].Lanes) != 2 {
		t.Errorf("plan %+v", long)
	}
	// On its edge a piece 40 wide comes out of a board 45 thick.
	edge := planBoards([]RoughPiece{stick(Pad, 200, 40, 31)}, []design.Board{{Length: 300, Width: 60, Thickness: 45, Count: 1}}, 4)
	if len(edge.Boards) != 1 || edge.Boards[0].Lanes[0].Width != 31 {
		t.Fatalf("plan %+v", edge)
	}
	piecetest.Nearly(t, "left behind", edge.Boards[0].Behind(edge.Boards[0].Lanes[0], 4), 96)
	piecetest.Nearly(t, "left beside", edge.Boards[0].Beside(4), 25)
}
