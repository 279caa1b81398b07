package checks

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strings"

	"rodsheet/geometry/joint"
	"rodsheet/geometry/measure"
	"rodsheet/templates/piece"
	"rodsheet/templates/piece/design"
	"rodsheet/templates/piece/shop"
	"rodsheet/templates/piece/wording"
)

// leastWood is the least wood in mm to be left at a joint: half of the depth at
// a lap, a cheek beside a slot, a tenon (common practice, no source).
const leastWood = 6.0

// askWoodLeft asks what the joints leave of the wood.
func askWoodLeft(p piece.Piece) []Check {
	cheek, _ := p.Bridle.Stretcher().Cheeks()
	ask := func(name string, left float64, words string) Check {
		return limited(name, "wood left", measure.Length(left), atLeast, measure.Length(leastWood), Warn).
			with("Enough wood is left.", words)
	}
	return []Check{
		ask("wood left at the laps", p.Frame.Ring.Depth-p.EndLap().BladeHeight(),
			"Little is left of the depth at the laps."),
		ask("cheeks of the bridle", cheek, "The cheeks beside the slot are thin."),
		ask("tenon of the bridle", p.Bridle.Tenon, "The tenon is thin."),
	}
}

func fixWoodLeft(p piece.Piece, c Check) []change {
	left := func(w piece.Piece) bool { return called(askWoodLeft(w), c.Name).Grade == Pass }
	out := search(p, parameter{
		now: p.Frame.Ring.Depth,
		set: func(d *design.Design, v float64) { d.Ring.Depth, d.Milled.Depth = v, 0 },
		words: func(v float64) string {
			return "make the stretchers " + p.MM(v) + " deep" + newStock(p.Design.Milled.Depth, "depth")
		},
	}, left)
	out = append(out, search(p, parameter{
		now: p.Frame.Ring.Width,
		set: func(d *design.Design, v float64) {
			d.Ring.Width, d.Milled.Width = v, 0
			carryLegs(p, d)
		},
		words: func(v float64) string {
			return "make the stretchers " + p.MM(v) + " wide and the legs as thick" + newStock(p.Design.Milled.Width, "width")
		},
	}, left)...)
	for _, down := range []bool{true, false} {
		out = append(out, search(p, parameter{
			now: p.Bridle.Tenon, down: down,
			set:   func(d *design.Design, v float64) { d.Legs.Tenon = v },
			words: func(v float64) string { return "make the tenon " + p.MM(v) + " thick" },
		}, left)...)
	}
	return out
}

// newStock says that a size as milled has no meaning any more, where there is one.
func newStock(milled float64, name string) string {
	if milled == 0 {
		return ""
	}
	return ", of new stock, and leave out its " + name + " as milled"
}

// leastTaperStart returns how far down the joint's shoulder on the leg comes
// where a taper cuts it, counted as a taper's start is: along the leg
// from the outer edge of its head, square across. The stretcher's underside
// crosses the outer edge at Depth/cos Splay and the inner edge Breadth·tan Splay
// nearer to the head.
func leastTaperStart(p piece.Piece) float64 {
	if head := p.Bridle.Head(); !p.Taper.Faces.Cut(joint.Back) && !p.Taper.Faces.Square() {
		return head.Shoulder(head.Width)
	}
	return p.Bridle.Head().Length()
}

// askTaper asks whether the taper begins below the joint: higher up it would
// eat the shoulder.
func askTaper(p piece.Piece) []Check {
	if p.Taper == nil {
		return nil
	}
	c := limited("taper and joint", "start of the taper", measure.Length(p.Taper.Start),
		atLeast, measure.Length(leastTaperStart(p)), Fail)
	out := []Check{c.with(
		"The taper begins below the joint.",
		fmt.Sprintf("The taper begins inside the joint and eats its shoulder: there it has taken off %s.",
			p.MM(p.Taper.Lost(leastTaperStart(p))))),
	}
	thickness := footThickness(p)
	foot := limited("foot", "smaller side of the foot", measure.Length(math.Min(p.Taper.Foot, thickness)),
		atLeast, measure.Length(leastFoot), Warn)
	return append(out, foot.with("The foot keeps enough wood.", "The foot is thin and chips on a hard floor."))
}

// leastFoot is the least a foot measures either way, mm (common practice, no
// source).
const leastFoot = 12.0

// footThickness returns what the foot measures square to the plane of its
// stretcher.
func footThickness(p piece.Piece) float64 {
	if p.Taper == nil {
		return p.Frame.Leg.Thickness
	}
	return p.Frame.Leg.Thickness - p.Taper.LostAcross()
}

func fixTaper(p piece.Piece, c Check) []change {
	turn := func(now float64, set func(*design.Taper, float64), words string) []change {
		return search(p, parameter{
			now: now,
			set: func(d *design.Design, v float64) {
				t := *d.Legs.Taper
				set(&t, v)
				d.Legs.Taper = &t
			},
			words: func(v float64) string { return words + p.MM(v) },
		}, func(w piece.Piece) bool { return called(askTaper(w), c.Name).Grade == Pass })
	}
	if c.Name == "foot" {
		return turn(p.Taper.Foot, func(t *design.Taper, v float64) { t.Foot = v }, "leave the foot ")
	}
	return turn(p.Taper.Start, func(t *design.Taper, v float64) { t.Start = v }, "start the taper at ")
}

// askSaw asks whether the saw reaches what it is to cut.
func askSaw(p piece.Piece) []Check {
	var out []Check
	if p.Design.Saw.Highest > 0 {
		thickest, beyond := shop.Through(p)
		out = append(out,
			limited("blade and stock", "stock sawn through", measure.Length(thickest), atMost, measure.Length(p.Design.Saw.Highest), Warn).with(
				"The blade comes through everywhere.",
				"The blade does not come through at: "+stepNames(p, beyond)+". Saw these by hand or at the bandsaw, to knifed lines."),
			askBlade(p, "blade at the laps", p.EndLap().BladeHeight(), "Cut the laps by hand, or on another machine."),
			askBlade(p, "blade at the bridle", bridleCut(p), "Saw the cheeks and the slot by hand or on a bandsaw."))
	}
	if p.Design.Saw.StopReach > 0 {
		farthest, beyond := shop.Stops(p)
		out = append(out, limited("reach of the stop", "farthest stop from the blade", measure.Length(farthest), atMost, measure.Length(p.Design.Saw.StopReach), Warn).with(
			"Every stop that the settings ask for stands within reach.",
			"The stop does not reach so far for: "+stepNames(p, beyond)+". Clamp a longer board to the fence, or saw these to a knife line."))
	}
	if p.Design.Saw.Dado > 0 {
		width := measure.Length(p.Design.Saw.Dado)
		out = append(out, limited("dado set and lap", "width of the dado", width, atMost, measure.Length(p.Frame.Ring.Width), Warn).with(
			"The dado set clears a lap in "+p.DadoPasses(p.Frame.Ring.Width)+".",
			"The dado set is wider than the lap: take chippers out of it."))
	}
	return out
}

// stepNames names the steps that a saw cannot do.
func stepNames(p piece.Piece, steps []shop.Note) string {
	names := make([]string, len(steps))
	for i, n := range steps {
		names[i] = wording.Note(n, p.Design.Unit)
	}
	return strings.Join(names, "; ")
}

func askBlade(p piece.Piece, name string, height float64, otherwise string) Check {
	return limited(name, "blade height", measure.Length(height), atMost, measure.Length(p.Design.Saw.Highest), Warn).
		with("The blade rises high enough.", otherwise)
}

// bridleCut returns the higher of the two cuts of a bridle, made with the part
// on its end.
func bridleCut(p piece.Piece) float64 {
	stretcher, leg := p.CutHeights()
	return math.Max(stretcher, leg)
}

// askBoards asks whether every blank comes out of the boards that are listed. A
// test piece no longer than its part comes out wherever that does, and without
// test pieces the piece can be made all the same.
func askBoards(p piece.Piece) []Check {
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
		c.Name = "boards for the " + plural(b.Part)
		if strings.HasPrefix(b.Part, "test piece") && c.Grade == Fail {
			c.Grade = Warn
		}
		out, asked = append(out, c), append(asked, blank)
	}
	return out
}

// plural names several of a part: "test pieces, leg stock".
func plural(part string) string {
	name, stock, _ := strings.Cut(part, ",")
	return strings.TrimSuffix(name+"s,"+stock, ",")
}

// askBoard asks for a board that a blank comes out of, either way round. Its
// figure is the length, for wood can be glued up wider but not longer; where the
// length is there, it is the size that no board so long has.
func askBoard(p piece.Piece, blank piece.StockSize) Check {
	boards := p.Design.Wood.Boards
	longest := slices.MaxFunc(boards, func(a, b design.Board) int { return cmp.Compare(a.Length, b.Length) }).Length
	long := askBlank("length", blank.Length, longest, Fail).with(
		"Every blank comes out of the boards listed.", "No board listed is as long as the blank.")
	if long.Grade != Pass {
		return long
	}
	section := askSection(boards, blank)
	if section.Grade == Pass {
		return long
	}
	section.Words = fmt.Sprintf("No board listed is at once long, wide and thick enough for a blank with a section of %s × %s: glue it up.",
		p.Bare(blank.Width), p.MM(blank.Thickness))
	return section
}

func askBlank(size string, need, most float64, otherwise Grade) Check {
	return limited("", size+" of the blank", measure.Length(need), atMost, measure.Length(most), otherwise)
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
			lacks, wide = ripped-b.Width, askBlank("width", ripped, b.Width, Warn)
		}
	}
	thick := askBlank("thickness", math.Min(blank.Width, blank.Thickness), thickest, Warn)
	if thick.Grade != Pass {
		return thick
	}
	return wide
}
