package shop

import (
	"slices"

	"rodsheet/geometry/lists"
	"rodsheet/templates/piece"
)

// A trial is a setting of a joint on stock of one section: every one has its test
// piece, or an end of one.
type trial struct {
	section [2]float64
	joint   [5]float64
}

// testedParts are the parts that have test pieces, and how their stock is sawn.
var testedParts = map[Part]struct {
	test Part
	sawn func(piece.Piece) piece.StockSize
}{
	Stretcher: {StretcherTest, piece.Piece.SawnStretcher},
	Leg:       {LegTest, piece.Piece.SawnLeg},
}

func trialOf(p piece.Piece, part Part) trial {
	s, b := testedParts[part].sawn(p), p.Bridle
	out := trial{[2]float64{s.Width, s.Thickness}, [5]float64{b.Angle, b.Leg, b.Depth, b.Third(), flag(b.Stretcher().Slot)}}
	for _, figures := range [][]float64{out.section[:], out.joint[:]} {
		for i := range figures {
			figures[i] = quantize(figures[i])
		}
	}
	return out
}

// trials returns the different joints on stock of the section that a size has, in
// the order in which they are cut.
func trials(pieces []piece.Piece, p piece.Piece, part Part) []trial {
	section := trialOf(p, part).section
	all := lists.Map(pieces, func(q piece.Piece) trial { return trialOf(q, part) })
	return lists.Unique(lists.Where(all, func(t trial) bool { return t.section == section }))
}

// asked returns how many test pieces the sizes ask for at most.
func asked(pieces []piece.Piece) int {
	return lists.Most(pieces, func(p piece.Piece) int { return p.Design.Wood.Tests })
}

// testsAt puts the test pieces to a batch that the i-th size brings to the rows of its
// joint: none where an earlier size has the same joint, their other end where an
// earlier joint has taken the one.
func (b Batch) testsAt(pieces []piece.Piece, i int) Batch {
	p := pieces[i]
	b.Tests, b.OtherEnd = 0, false
	if before := trials(pieces[:i], p, b.Part); !slices.Contains(before, trialOf(p, b.Part)) {
		b.Tests, b.OtherEnd = asked(pieces), len(before)%2 == 1
	}
	return b
}

// testRows returns the test pieces of each section: as many as the design asks for,
// both ends of each for a joint of its own.
func testRows(pieces []piece.Piece) []CutRow {
	var out []CutRow
	for i, p := range pieces {
		for _, part := range []Part{Stretcher, Leg} {
			tested := testedParts[part]
			s := p.TestPiece(tested.sawn(p))
			if asked(pieces) == 0 || !firstSection(pieces[:i], p, tested.sawn) {
				continue
			}
			out = append(out, CutRow{
				Item: testItem(part, s), Serves: asked(pieces) * ((len(trials(pieces, p, part)) + 1) / 2),
				Finished: s, Sawn: s, Rough: p.Roughed(s),
			})
		}
	}
	return out
}

// testItem is a test piece of the stock of a part: one of another length serves.
func testItem(part Part, stock piece.StockSize) Item {
	return item(testedParts[part].test, Bought, stock.Width, stock.Thickness)
}

// tests returns how many test pieces there are of the stock of a part.
func (c CutList) tests(part Part, stock piece.StockSize) int {
	return c.row(testItem(part, stock)).Serves
}
