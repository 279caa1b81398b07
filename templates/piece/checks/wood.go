package checks

import (
	"cmp"
	"math"
	"slices"

	"rodsheet/geometry/joint"
	"rodsheet/geometry/measure"
	"rodsheet/templates/piece"
	"rodsheet/templates/piece/design"
	"rodsheet/templates/piece/kind"
	"rodsheet/templates/piece/shop"
)

// leastWood returns the least wood in mm to be left at a joint: half of the depth
// at a lap, a cheek beside a slot, a tenon (common practice, no source).
func leastWood(p piece.Piece) float64 { return p.Design.Unit.Round(6, 1.0/4) }

func askLapWood(p piece.Piece) (Check, bool) {
	return atLeast("wood-left", p.Frame.Ring.Depth-p.EndLap().BladeHeight(), leastWood(p), kind.Warn), true
}

func askCheeks(p piece.Piece) (Check, bool) {
	cheek, _ := p.Bridle.Stretcher().Cheeks()
	return atLeast("wood-left", cheek, leastWood(p), kind.Warn), true
}

func askTenon(p piece.Piece) (Check, bool) {
	return atLeast("wood-left", p.Bridle.Tenon, leastWood(p), kind.Warn), true
}

// fixWood offers deeper or wider stretchers, and another tenon.
func fixWood(p piece.Piece, holds func(piece.Piece) bool) []change {
	return slices.Concat(
		search(p, "ring.depth", more, holds), search(p, "ring.width", more, holds),
		search(p, "legs.tenon", less, holds), search(p, "legs.tenon", more, holds))
}

// leastTaperStart returns how far down the joint's shoulder on the leg comes
// where a taper cuts it, counted as a taper's start is: along the leg
// from its back at the head, square across. The stretcher's underside
// crosses the back at Depth/cos Splay and the stretcher side Breadth·tan Splay
// nearer to the head.
func leastTaperStart(p piece.Piece) float64 {
	if head := p.Bridle.Head(); !p.Taper.Faces.Cut(joint.Back) && !p.Taper.Faces.Square() {
		return head.Shoulder(head.Width)
	}
	return p.Bridle.Head().Length()
}

// askTaperStart asks whether the taper begins below the joint: higher up it would
// eat the shoulder.
func askTaperStart(p piece.Piece) (Check, bool) {
	if p.Taper == nil {
		return Check{}, false
	}
	least := leastTaperStart(p)
	return atLeast("taper-start", p.Taper.Start, least, kind.Fail).with(p.Taper.Lost(least)), true
}

// leastFoot returns the least a foot measures either way, mm (common practice, no
// source).
func leastFoot(p piece.Piece) float64 { return p.Design.Unit.Round(12, 1.0/2) }

// askFoot asks whether a taper leaves enough of the foot.
func askFoot(p piece.Piece) (Check, bool) {
	if p.Taper == nil {
		return Check{}, false
	}
	across := p.Frame.Leg.Thickness - p.Taper.LostAcross() // square to the plane of its stretcher
	return atLeast("foot-side", math.Min(p.Taper.Foot, across), leastFoot(p), kind.Warn), true
}

// atSaw asks whether the saw reaches so far; it is not asked where the design does
// not say how far.
func atSaw(figure measure.ID, value, most float64) (Check, bool) {
	return atMost(figure, value, most, kind.Warn), most > 0
}

// ofSteps is atSaw of what the steps ask for; its remark names those that ask for more.
func ofSteps(figure measure.ID, p piece.Piece, most float64, ask func(piece.Piece) (float64, []shop.Note)) (Check, bool) {
	if most == 0 {
		return Check{}, false // what the shop would saw takes long to tell
	}
	value, beyond := ask(p)
	c, asked := atSaw(figure, value, most)
	c.Found.Steps = beyond
	return c, asked
}

func askThrough(p piece.Piece) (Check, bool) {
	return ofSteps("stock-sawn", p, p.Design.Saw.Highest, shop.Through)
}

func askLapBlade(p piece.Piece) (Check, bool) {
	return atSaw("blade-height", p.EndLap().BladeHeight(), p.Design.Saw.Highest)
}

// askBridleBlade asks it of the higher of the two cuts of a bridle, made with the
// part on its end.
func askBridleBlade(p piece.Piece) (Check, bool) {
	return atSaw("blade-height", math.Max(p.CutHeights()), p.Design.Saw.Highest)
}

func askStops(p piece.Piece) (Check, bool) {
	return ofSteps("farthest-stop", p, p.Design.Saw.StopReach, shop.Stops)
}

// askDado asks whether the dado set goes into a lap. Its remark says in how many
// passes it clears one.
func askDado(p piece.Piece) (Check, bool) {
	if p.Design.Saw.Dado == 0 {
		return Check{}, false
	}
	c := atMost("dado-width", p.Design.Saw.Dado, p.Frame.Ring.Width, kind.Warn)
	passes := math.Ceil(p.Frame.Ring.Width/p.Design.Saw.Dado - 1e-9)
	c.Found.Figures = []measure.Quantity{measure.Number(passes)}
	return c, true
}

// askBoards asks whether every blank comes out of the boards that are listed. A
// test piece no longer than its part comes out wherever that does, and without
// test pieces the piece can be made all the same.
func askBoards(m model) []Check {
	p := m.Piece
	if len(p.Design.Wood.Boards) == 0 {
		return nil
	}
	var out []Check
	var asked []piece.StockSize
	for _, b := range p.Blanks() {
		blank := p.Roughed(b.Sawn)
		shorter := func(s piece.StockSize) bool {
			return blank.Width == s.Width && blank.Thickness == s.Thickness && blank.Length <= s.Length
		}
		if slices.ContainsFunc(asked, shorter) {
			continue
		}
		c := askBoard(p, blank)
		c.Of.Blank = b.ID
		if b.Test && c.Grade == kind.Fail {
			c.Grade = kind.Warn
		}
		out, asked = append(out, c), append(asked, blank)
	}
	return out
}

// askBoard asks for a board that a blank comes out of, either way round. Its
// figure is the length, for wood can be glued up wider but not longer; where the
// length is there, it is the size that no board so long has.
func askBoard(p piece.Piece, blank piece.StockSize) Check {
	boards := p.Design.Wood.Boards
	longest := slices.MaxFunc(boards, func(a, b design.Board) int { return cmp.Compare(a.Length, b.Length) }).Length
	long := atMost("blank-length", blank.Length, longest, kind.Fail)
	if long.Grade != kind.Pass {
		return long
	}
	section := askSection(boards, blank)
	if section.Grade == kind.Pass {
		return long
	}
	section.Found = remark("section", lengths(blank.Width, blank.Thickness)...)
	return section
}

// askSection asks the boards that are as long as a blank for its thickness and,
// where that is there, for its width: the board that lacks the least.
func askSection(boards []design.Board, blank piece.StockSize) Check {
	thickest, lacks := 0.0, math.Inf(1)
	var wide Check
	for _, b := range boards {
		if blank.Length > b.Length+piece.Slip {
			continue
		}
		thickest = math.Max(thickest, b.Thickness)
		if ripped := blank.Ripped(b.Thickness); ripped-b.Width < lacks {
			lacks, wide = ripped-b.Width, atMost("blank-width", ripped, b.Width, kind.Warn)
		}
	}
	thick := atMost("blank-thickness", math.Min(blank.Width, blank.Thickness), thickest, kind.Warn)
	if thick.Grade != kind.Pass {
		return thick
	}
	return wide
}
