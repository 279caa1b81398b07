// Package shop writes the lists that the parts of a piece are made by: the cut
// list with its boards and the glass order, the settings in working order, and
// the glue-up.
package shop

import (
	"math"

	"rodsheet/geometry/measure"
	"rodsheet/templates/piece"
	"rodsheet/templates/piece/design"
)

// A sizeCount is how many of a part one size takes.
type sizeCount struct {
	Size  string
	Count int
}

// A cutRow is one kind of part. Parts that are alike in several sizes are one
// row.
type cutRow struct {
	Part   string
	Sizes  []sizeCount // what each size takes; none for what serves all sizes
	Serves int         // pieces that serve all sizes alike: test pieces, cauls
	Spares int
	// Finished is as designed or milled, from tip to tip; Sawn is squared to
	// length, before its ends are worked; Rough is Sawn and the allowances.
	// A part sawn from an offcut has no Rough.
	Finished, Sawn, Rough piece.StockSize
	From                  string // the offcut it comes from; empty for what is bought for
	// Net is the volume in mm³ of one finished part, nothing for what is not
	// in the finished piece.
	Net float64
	// kind holds all that parts of this name differ by.
	kind any
}

// parts returns the number of parts that go into the finished pieces.
func (r cutRow) parts() int {
	sum := 0
	for _, s := range r.Sizes {
		sum += s.Count
	}
	return sum
}

// bought reports whether wood is bought for the row.
func (r cutRow) bought() bool { return r.From == "" }

// hardware is what is bought ready.
type hardware struct {
	Name  string
	Count int
}

// A cutList holds the parts of all sizes of one design.
type cutList struct {
	Unit     measure.Unit
	Rows     []cutRow
	Hardware []hardware
	Waste    float64 // share to buy on top
	// Unasked says that the design asks for no spares, and that stretchers and
	// legs get one all the same.
	Unasked bool
	Boards  *cuttingPlan
}

// newCutList returns the cut list of the sizes of one design. The boards are
// nil where it lists none.
func newCutList(pieces []piece.Piece) cutList {
	var c cutList
	for _, rows := range []func(piece.Piece) []cutRow{stretcherRows, legRows, topRows, testRows, padRows} {
		for _, p := range pieces {
			for _, r := range rows(p) {
				c.Rows = addRow(c.Rows, r)
			}
		}
	}
	c.Rows = append(c.Rows, blockRows(pieces)...)
	for _, p := range pieces {
		c.Unit = p.Design.Unit
		c.Waste = math.Max(c.Waste, p.Design.Wood.Waste)
		c.Unasked = c.Unasked || p.Design.Wood.Spares == 0
		c.Hardware = addHardware(c.Hardware, p)
	}
	if boards := listedBoards(pieces); len(boards) > 0 {
		plan := planBoards(c.roughPieces(), boards, ripKerf(pieces))
		c.Boards = &plan
	}
	return c
}

// addRow adds a row, or counts it to the one that is alike.
func addRow(rows []cutRow, r cutRow) []cutRow {
	for i := range rows {
		if rows[i].kind != r.kind {
			continue
		}
		rows[i].Sizes = append(rows[i].Sizes, r.Sizes...)
		rows[i].Serves = max(rows[i].Serves, r.Serves)
		return rows
	}
	return append(rows, r)
}

// A stretcherKind is all that one stretcher can differ from another by.
type stretcherKind struct {
	frame       [5]float64 // sides, inside, width, depth, slack
	over        bool
	plain       design.PlainEnd
	left, right float64
	bridle      [3]float64 // angle, breadth, tenon
	mortise     bool
}

func kindOfStretcher(p piece.Piece) stretcherKind {
	r, b := p.Frame.Ring, p.Bridle
	return stretcherKind{
		[5]float64{float64(r.Sides), quantize(r.Inside), quantize(r.Width), quantize(r.Depth), quantize(p.Design.Ring.Slack)},
		p.Frame.Over, p.Design.Ring.Plain, quantize(p.PlainReach), quantize(p.LegReach),
		[3]float64{quantize(b.Angle), quantize(b.Leg), quantize(b.Third())}, b.Stretcher().Slot,
	}
}

// A legKind is all that one leg can differ from another by.
type legKind struct {
	leg     [5]float64 // breadth, thickness, height, splay, proud
	joint   [2]float64 // depth, tenon
	mortise bool
	taper   [2]float64 // start, foot
	faces   int        // −1 for none
}

func kindOfLeg(p piece.Piece) legKind {
	l, b := p.Frame.Leg, p.Bridle
	k := legKind{
		leg:     [5]float64{quantize(l.Breadth), quantize(l.Thickness), quantize(l.Height), quantize(l.Splay), quantize(p.Design.Legs.Proud)},
		joint:   [2]float64{quantize(b.Depth), quantize(b.Third())},
		mortise: b.Head().Slot,
		faces:   -1,
	}
	if p.Taper != nil {
		k.taper, k.faces = [2]float64{quantize(p.Taper.Start), quantize(p.Taper.Foot)}, int(p.Taper.Faces)
	}
	return k
}

// quantize rounds away what arithmetic alone makes of one figure, to a millionth.
func quantize(v float64) float64 { return math.Round(v*1e6) / 1e6 }

// steadied is steady for the sizes of a stick.
func steadied(s piece.StockSize) piece.StockSize {
	return piece.StockSize{Length: quantize(s.Length), Width: quantize(s.Width), Thickness: quantize(s.Thickness)}
}

// spareParts returns how many spares an angled part gets: never none, for a
// slip at the last cut must not cost all the settings before it.
func spareParts(p piece.Piece) int { return max(1, p.Design.Wood.Spares) }

func stretcherRows(p piece.Piece) []cutRow {
	finished := p.SawnStretcher()
	finished.Length = p.FinishedStretcher()
	return []cutRow{{
		Part: "stretcher", Sizes: each(p), Spares: spareParts(p),
		Finished: finished, Sawn: p.SawnStretcher(), Rough: p.Roughed(p.SawnStretcher()),
		Net: p.Stretcher().Volume(), kind: kindOfStretcher(p),
	}}
}

func legRows(p piece.Piece) []cutRow {
	finished := p.SawnLeg()
	finished.Length = p.FinishedLeg()
	return []cutRow{{
		Part: "leg", Sizes: each(p), Spares: spareParts(p),
		Finished: finished, Sawn: p.SawnLeg(), Rough: p.Roughed(p.SawnLeg()),
		Net: p.Leg().Volume(), kind: kindOfLeg(p),
	}}
}

// each returns one of a part for every stretcher.
func each(p piece.Piece) []sizeCount { return []sizeCount{{p.Design.Size, p.Frame.Ring.Sides}} }

// addHardware adds the bumpers of a size.
func addHardware(all []hardware, p piece.Piece) []hardware {
	if p.Design.Top.PadHeight() == 0 || !p.Design.Top.Pads.Bumpers {
		return all
	}
	name := "bumper, " + p.MM(p.Design.Top.Pads.Diameter) + " across, " + p.MM(p.Design.Top.Pads.Height) + " high"
	for i := range all {
		if all[i].Name == name {
			all[i].Count += p.Frame.Ring.Sides
			return all
		}
	}
	return append(all, hardware{name, p.Frame.Ring.Sides})
}
