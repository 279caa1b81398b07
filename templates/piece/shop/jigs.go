package shop

import (
	"math"
	"slices"

	"rodsheet/geometry/measure"
	"rodsheet/templates/piece"
)

// A Jig holds parts at the saw. All are plain ones of our own (common practice, no
// source): boards of sheet, screwed, their sizes from the parts that they hold.
//
// Frame of a sled, seen from above: x from the near side of the blade towards the stop
// or the leg, y away from the maker from the near edge of the base. Of the tenoning jig,
// seen on its face: x from the end nearest to the maker, y up from the table.
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
	High             float64 // of the cleat of the tenoning jig
	Cover            float64 // of a sled for laps, behind its fence: how long the cover is over the blade
	Layers           int     // of the cover, one on the other
}

// JigSizes are sizes of jigs in mm, round in the unit of the job (common practice, no
// source).
type JigSizes struct {
	Sheet   float64 // thickness of what they are made of
	Beyond  float64 // of a sled for laps on the other side of the blade
	Fence   float64 // its fence and bridge above the base
	Cleat   float64 // width of cleat, and of the fence for tapers
	Base    float64 // depth of the base of a tenoning jig
	Covered float64 // width of the blade's cover
	Blade   float64 // diameter of the largest blade that the cover is long enough for
	room    float64 // for a clamp, for a stop
	highest float64 // of the face of a tenoning jig
	lowest  float64
	// runner is what one measures before it is fitted to the slot of the table.
	runner piece.StockSize
	step   float64
}

// JigSizesIn returns them for one unit.
func JigSizesIn(u measure.Unit) JigSizes {
	return JigSizes{
		Sheet: u.Round(18, 3.0/4), Beyond: u.Round(150, 6), Fence: u.Round(90, 3.5), Cleat: u.Round(45, 1.75),
		Base: u.Round(120, 5), Covered: u.Round(80, 3), Blade: u.Round(250, 10), room: u.Round(60, 2.5), highest: u.Round(400, 16), lowest: u.Round(200, 8),
		runner: piece.StockSize{Width: u.Round(20, 3.0/4), Thickness: u.Round(10, 3.0/8)}, step: u.Round(10, 1.0/2),
	}
}

func jigSizes(p piece.Piece) JigSizes { return JigSizesIn(p.Design.Unit) }

// up rounds the size of a jig up.
func (s JigSizes) up(mm float64) float64 { return s.step * math.Ceil(mm/s.step-1e-9) }

// Jigs returns the jigs of all sizes: one for work on end, a sled for every angle of
// the laps, and one for every taper.
func Jigs(pieces []piece.Piece) []piece.Lot[Jig] {
	return piece.Lots(piece.Sizes(pieces), func(i int) []Jig {
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
// longest part, and so wide that a part leans on its filler strip either way from the
// cleat, which stands at its end nearest to the maker. The cleat is no higher than the
// shortest filler strip: a part that leans over it would run into a higher one.
func tenoningJig(pieces []piece.Piece) Jig {
	s := jigSizes(pieces[0])
	var longest, side float64
	for _, q := range pieces {
		longest = math.Max(longest, math.Max(q.RoughStretcher(), q.SawnLeg().Length))
	}
	tall := s.up(math.Min(s.highest, math.Max(s.lowest, longest/2)))
	cleat := tall
	for _, q := range pieces {
		if NeedsStrip(q) {
			cleat = math.Min(cleat, fillerStrip(q).Across)
		}
		splay := q.Frame.Leg.Splay
		side = math.Max(side, sizesOfBlocks(q.Design.Unit).wedgeThin+tall*math.Tan(splay)+math.Max(q.Frame.Leg.Breadth, q.Frame.Ring.Depth)/math.Cos(splay))
	}
	return Jig{Kind: TenoningJig, Wide: s.up(s.Cleat + side + s.room), Tall: tall, High: cleat}
}

// lapSled returns the sled for the laps of p, large enough for all sizes that have the
// same angle.
func lapSled(pieces []piece.Piece, p piece.Piece) Jig {
	s := jigSizes(p)
	made, _ := cutLaps(uncounted(p))
	swing := Step{Operation: made.Operation, Parts: made.parts}.swing()
	j := Jig{Kind: LapSled, Angle: math.Abs(swing), Right: onGauge(Stretcher, made.Lies[0], made.Cut).turn.Det() < 0}
	high := 0.0
	for _, q := range pieces {
		if lapOffSquare(q) == lapOffSquare(p) {
			j.Stop, j.Room = math.Max(j.Stop, q.EndLap().Stop()), math.Max(j.Room, q.Frame.Ring.Width)
			high = math.Max(high, q.EndLap().BladeHeight())
		}
	}
	// A lap is sawn through when the middle of the blade stands under the fence: half of
	// what it shows above the table, a chord, is behind it then.
	above := high + s.Sheet
	j.Cover = s.up(math.Sqrt(above*(s.Blade-above)) - s.Sheet + s.room/3)
	j.Layers = int(math.Ceil((high + s.room/3) / s.Sheet))
	cos, rise := math.Cos(swing), math.Tan(swing) // of the fence away from the maker, from left to right
	if !j.Right {
		rise = -rise
	}
	j.Wide = s.up((j.Stop + s.room) * cos)
	j.Near = s.up(s.Sheet/cos + math.Max(math.Max(-rise*j.Wide, rise*s.Beyond)+s.room/3, j.Cover+math.Abs(rise)*s.Covered/2))
	j.Far = j.Near + rise*j.Wide
	j.Tall = s.up(math.Max(math.Max(j.Near, j.Far), j.Near-rise*s.Beyond) + j.Room/cos + s.Sheet + s.room/3)
	return j
}

// taperSled returns the sled that carries a leg along the blade, the line of its taper
// over the edge that the saw trims. Square to that line the back stands Breadth·cos a
// away where the taper starts and (Breadth − Loss)·cos a at the foot, Run·cos a farther
// along.
func taperSled(pieces []piece.Piece, p piece.Piece) Jig {
	s, t := jigSizes(p), p.Taper
	a := t.ToEdge()
	longest, breadth := 0.0, 0.0
	for _, q := range pieces {
		longest, breadth = math.Max(longest, q.SawnLeg().Length), math.Max(breadth, q.Frame.Leg.Breadth)
	}
	return Jig{
		Kind: TaperSled, Angle: a, Right: true, Room: p.Frame.Leg.Breadth,
		Wide: s.up(breadth + s.Cleat + s.room), Tall: s.up(longest + s.room),
		Near: p.Frame.Leg.Breadth * math.Cos(a), Far: (p.Frame.Leg.Breadth - t.Loss()) * math.Cos(a), Apart: t.Run() * math.Cos(a),
	}
}

// parts returns what a jig is screwed together from.
func (j Jig) parts(p piece.Piece) []CutRow {
	s := jigSizes(p)
	sheet := func(part Part, n int, long, wide float64) CutRow {
		size := piece.StockSize{Length: long, Width: wide, Thickness: s.Sheet}
		return CutRow{Item: item(part, Sheets, long, wide), Serves: n, Finished: size, Sawn: size}
	}
	switch j.Kind {
	case TenoningJig:
		return []CutRow{
			sheet(TenoningJigFace, 1, j.Wide, j.Tall), sheet(TenoningJigBase, 1, j.Wide, s.Base),
			sheet(TenoningJigBracket, 2, s.Base, s.Base), sheet(TenoningJigCleat, 1, j.High, s.Cleat),
		}
	case TaperSled:
		return []CutRow{
			sheet(TaperSledBase, 1, j.Tall, j.Wide), sheet(TaperSledFence, 1, j.Tall-s.room, s.Cleat),
			sheet(TaperSledStop, 1, s.room, s.Cleat),
		}
	}
	whole, runner := j.Wide+s.Beyond, s.runner
	runner.Length = j.Tall
	return []CutRow{
		sheet(LapSledBase, 1, whole, j.Tall), sheet(LapSledFence, 1, p.WholeUp(whole/math.Cos(j.Angle)), s.Fence),
		sheet(LapSledBridge, 1, whole, s.Fence), sheet(LapSledStop, 1, s.room, s.Cleat), sheet(LapSledCover, j.Layers, s.up(j.Cover+math.Tan(j.Angle)*s.Covered/2), s.Covered),
		fromStick(p, LapSledRunner, runner),
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
			again := r.Serves
			if l.What.Kind == TaperSled {
				again = 0
			}
			out = merged(out, r, func(q CutRow) bool { return q.Item == r.Item }, func(q *CutRow) { q.Serves += again })
		}
	}
	for _, p := range pieces {
		for _, size := range spacers(p) {
			out = addRow(out, fromStick(p, SpacerBlock, size))
		}
	}
	return out
}

// spacers returns the spacer for the laps of a size, if they are sawn by one.
func spacers(p piece.Piece) []piece.StockSize {
	long := p.EndLap().Spacer()
	if long <= 0 || !rises(p, p.EndLap().BladeHeight()) {
		return nil
	}
	return []piece.StockSize{{Length: quantize(long), Width: p.Frame.Ring.Depth, Thickness: p.Frame.Ring.Width}}
}

// batchedJigs returns the jigs and spacers that no size before p has alike. Of tapering
// jigs there is one: for every taper after the first its fence is set anew.
func batchedJigs(pieces []piece.Piece, p piece.Piece) []Batch {
	var out []Batch
	add := func(part Part, sizes []string) {
		if sizes[0] == p.Design.Size {
			out = append(out, Batch{Part: part, Count: 1, For: sizes})
		}
	}
	tapers := 0
	for _, l := range Jigs(pieces) {
		add(l.What.Kind, l.Sizes)
		if l.What.Kind != TaperSled {
			continue
		}
		if tapers++; tapers > 1 && l.Sizes[0] == p.Design.Size {
			out[len(out)-1].Count = 0
		}
	}
	alike := func(a, b piece.StockSize) bool { return a == b }
	for _, l := range piece.Lots(piece.Sizes(pieces), func(i int) []piece.StockSize { return spacers(pieces[i]) }, alike) {
		add(SpacerBlock, l.Sizes)
	}
	return out
}

func makeJig(kind Part) op {
	return func(p sized) (row, bool) {
		if len(p.jigsOf(kind)) == 0 {
			return row{}, false
		}
		return plain(Operation{
			Do: MakeJigs, What: note("step.jig", called(kind)), Then: notes(note("jigs-by-drawing")), Test: jigTrue(kind, p.Piece), Caution: "jig-screws",
		}, p.jigsOf(kind)...), true
	}
}

// jigTrue says what a jig must hold to.
func jigTrue(kind Part, p piece.Piece) Note {
	switch kind {
	case TenoningJig:
		return note("tenoning-jig-true")
	case LapSled:
		return note("lap-sled-true", angle(Cut{OffSquare: lapOffSquare(p)}.Bevel()))
	}
	j := taperSled([]piece.Piece{p}, p)
	return note("tapering-jig-true", length(j.Near), length(j.Far), length(j.Apart))
}

// makeSpacer leaves the length of the spacer until the kerf is known that it is worked
// out by.
func makeSpacer(p sized) (row, bool) {
	o := Operation{
		Do: MakeJigs, What: note("step.jig", called(SpacerBlock)), Then: notes(note("spacer-to-length", length(p.EndLap().Spacer()))),
		Test: note("spacer-true"), Caution: "small-parts",
	}
	return plain(o, p.jigsOf(SpacerBlock)...), len(p.jigsOf(SpacerBlock)) > 0
}

func (p sized) jigsOf(kind Part) []Batch {
	return slices.DeleteFunc(slices.Clone(p.jigs), func(b Batch) bool { return b.Part != kind })
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
