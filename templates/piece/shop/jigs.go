package shop

import (
	"math"

	"rodsheet/geometry/measure"
	"rodsheet/templates/piece"
)

// A Jig holds parts at the saw. All are plain ones of our own (common practice, no
// source): boards of sheet, screwed, their sizes from the parts that they hold.
//
// Frame of a sled, seen from above: x from the near side of the blade towards the stop
// or the leg, y away from the maker from the near edge of the base. Of the tenoning jig,
// seen on its face: x from the upright edge with the cleat, y up from the table.
type Jig struct {
	Kind Part // TenoningJig, LapSled or TaperSled
	// Wide and Tall are the sizes along x and y of its base, or of the face of the
	// tenoning jig.
	Wide, Tall float64
	Angle      float64 // off square for laps, to the edge for a taper
	Right      bool    // the sled, or the side of it with the stop, is on the right of the blade
	// Near and Far are where the fence meets the line of the blade, and the edge of the
	// base across from it, along y. For a taper they are how far along x the fence
	// stands from the blade at the start of the taper and at the foot, and Apart is how
	// far those places are apart along y.
	Near, Far, Apart float64
	Stop             float64 // of a sled for laps: the farthest, along the fence
	Room             float64 // of a part square to the fence
	Strip            float64 // the thick end of the thickest filler strip
}

// Sizes of jigs in mm (common practice, no source).
const (
	SledBeyond  = 150.0 // of a sled for laps on the other side of the blade
	SledFence   = 90.0  // its fence and bridge above the base
	CleatWide   = 45.0
	jigRoom     = 60.0  // for a clamp, for a stop
	jigHighest  = 400.0 // of the face of a tenoning jig
	jigLowest   = 200.0
	jigBaseDeep = 120.0
	runnerWide  = 20.0 // of a runner, before it is fitted to the slot of the table
	runnerHigh  = 10.0
)

// SheetThickness is that of what jigs are made of.
func SheetThickness(p piece.Piece) float64 {
	if p.Design.Unit == measure.Inch {
		return 0.75 * measure.MillimetresPerInch
	}
	return 18
}

// roundUp rounds the size of a jig up to 10 mm or half an inch.
func roundUp(p piece.Piece, mm float64) float64 {
	step := 10.0
	if p.Design.Unit == measure.Inch {
		step = measure.MillimetresPerInch / 2
	}
	return step * math.Ceil(mm/step-1e-9)
}

// Jigs returns the jigs of all sizes: one for work on end, a sled for every angle of
// the laps, and one for every taper.
func Jigs(pieces []piece.Piece) []piece.Lot[Jig] {
	return piece.Lots(pieces, func(i int) []Jig {
		var out []Jig
		if onEndAtSaw(pieces[i]) {
			out = append(out, tenoningJig(pieces))
		}
		if p := pieces[i]; rises(p, p.EndLap().BladeHeight()) {
			out = append(out, lapSled(pieces, p))
		}
		if p := pieces[i]; p.Taper != nil && rises(p, taperCut(p)) {
			out = append(out, taperSled(pieces, p))
		}
		return out
	}, func(a, b Jig) bool { return a == b })
}

// tenoningJig returns the one jig that serves all sizes: as high as holds half of the
// longest part, as wide as that leans with its strip.
func tenoningJig(pieces []piece.Piece) Jig {
	p := pieces[0]
	var longest, strip, breadth, tan float64
	for _, q := range pieces {
		longest = math.Max(longest, math.Max(q.RoughStretcher(), q.SawnLeg().Length))
		breadth = math.Max(breadth, math.Max(q.Frame.Leg.Breadth, q.Frame.Ring.Depth))
		tan = math.Max(tan, math.Tan(q.Frame.Leg.Splay))
		if NeedsStrip(q) {
			strip = math.Max(strip, fillerStrip(q).Thick)
		}
	}
	tall := roundUp(p, math.Min(jigHighest, math.Max(jigLowest, longest/2)))
	return Jig{Kind: TenoningJig, Wide: roundUp(p, CleatWide+tall*tan+strip+breadth+jigRoom), Tall: tall, Room: breadth, Strip: strip}
}

// lapSled returns the sled for the laps of p, large enough for all sizes that have the
// same angle.
func lapSled(pieces []piece.Piece, p piece.Piece) Jig {
	made, _ := cutLaps(uncounted(p))
	swing := Step{Operation: made.Operation, Parts: made.parts}.swing()
	j := Jig{Kind: LapSled, Angle: math.Abs(swing), Right: onGauge(Stretcher, made.Lies[0], made.Cut).turn.Det() < 0}
	for _, q := range pieces {
		if lapOffSquare(q) == lapOffSquare(p) {
			j.Stop, j.Room = math.Max(j.Stop, q.EndLap().Stop()), math.Max(j.Room, q.Frame.Ring.Width)
		}
	}
	cos, rise := math.Cos(swing), math.Tan(swing) // of the fence away from the maker, from left to right
	if !j.Right {
		rise = -rise
	}
	j.Wide = roundUp(p, (j.Stop+jigRoom)*cos)
	j.Near = roundUp(p, SheetThickness(p)/cos+math.Max(-rise*j.Wide, rise*SledBeyond)+jigRoom/3)
	j.Far = j.Near + rise*j.Wide
	j.Tall = roundUp(p, math.Max(math.Max(j.Near, j.Far), j.Near-rise*SledBeyond)+j.Room/cos+SheetThickness(p)+jigRoom/3)
	return j
}

// taperSled returns the sled that carries a leg along the blade, the line of its taper
// over the edge that the saw trims. Square to that line the back stands Breadth·cos a
// away where the taper starts and (Breadth − Loss)·cos a at the foot, Run·cos a farther
// along.
func taperSled(pieces []piece.Piece, p piece.Piece) Jig {
	t := p.Taper
	a := t.ToEdge()
	longest, breadth := 0.0, 0.0
	for _, q := range pieces {
		longest, breadth = math.Max(longest, q.SawnLeg().Length), math.Max(breadth, q.Frame.Leg.Breadth)
	}
	return Jig{
		Kind: TaperSled, Angle: a, Right: true, Room: p.Frame.Leg.Breadth,
		Wide: roundUp(p, breadth+CleatWide+jigRoom), Tall: roundUp(p, longest+jigRoom),
		Near: p.Frame.Leg.Breadth * math.Cos(a), Far: (p.Frame.Leg.Breadth - t.Loss()) * math.Cos(a), Apart: t.Run() * math.Cos(a),
	}
}

// parts returns what a jig is screwed together from.
func (j Jig) parts(p piece.Piece) []CutRow {
	sheet := func(part Part, n int, long, wide float64) CutRow {
		s := piece.StockSize{Length: long, Width: wide, Thickness: SheetThickness(p)}
		return CutRow{Item: item(part, Sheets, s.Length, s.Width), Serves: n, Finished: s, Sawn: s}
	}
	switch j.Kind {
	case TenoningJig:
		return []CutRow{
			sheet(TenoningJigFace, 1, j.Wide, j.Tall), sheet(TenoningJigBase, 1, j.Wide, jigBaseDeep),
			sheet(TenoningJigBracket, 2, jigBaseDeep, jigBaseDeep), sheet(TenoningJigCleat, 1, j.Tall, CleatWide),
		}
	case TaperSled:
		return []CutRow{
			sheet(TaperSledBase, 1, j.Tall, j.Wide), sheet(TaperSledFence, 1, j.Tall-jigRoom, CleatWide),
			sheet(TaperSledStop, 1, jigRoom, CleatWide),
		}
	}
	whole := j.Wide + SledBeyond
	return []CutRow{
		sheet(LapSledBase, 1, whole, j.Tall), sheet(LapSledFence, 1, p.WholeUp(whole/math.Cos(j.Angle)), SledFence),
		sheet(LapSledBridge, 1, whole, SledFence), sheet(LapSledStop, 1, jigRoom, SledFence/2),
		fromStick(p, LapSledRunner, piece.StockSize{Length: j.Tall, Width: runnerWide, Thickness: runnerHigh}),
	}
}

// fromStick is one piece that is sawn from a stick of stretcher stock.
func fromStick(p piece.Piece, part Part, size piece.StockSize) CutRow {
	s := stickFor(p, size, size.Length+2*p.Kerf, StretcherSticks, LegSticks)
	return CutRow{Item: item(part, s.from, size.Length, size.Width), Serves: 1, Finished: size, Sawn: size, stick: s}
}

// jigRows returns the parts of all jigs, and the spacers that go with a stop. One base
// serves every taper: what stands on it is screwed on anew.
func jigRows(pieces []piece.Piece) []CutRow {
	var out []CutRow
	for _, l := range Jigs(pieces) {
		for _, r := range l.What.parts(pieces[0]) {
			out = addRow(out, r)
		}
	}
	for _, p := range pieces {
		if long := p.EndLap().Spacer(); long > 0 && rises(p, p.EndLap().BladeHeight()) {
			size := piece.StockSize{Length: long, Width: p.Frame.Ring.Depth, Thickness: p.Frame.Ring.Width}
			out = addRow(out, fromStick(p, SpacerBlock, size))
		}
	}
	return out
}

// SheetArea returns the area in mm² of the sheet that the jigs take.
func (c CutList) SheetArea() float64 {
	sum := 0.0
	for _, r := range c.Rows {
		if r.From == Sheets {
			sum += float64(r.Serves) * r.Sawn.Length * r.Sawn.Width
		}
	}
	return sum
}
