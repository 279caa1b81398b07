// Package render lays drawings on paper at full size: it packs small ones
// together, tiles large ones with registration marks, and gives every sheet
// its rules. It knows paper and no joint.
package render

import (
	"cmp"
	"math"

	"rodsheet/geometry"
	"rodsheet/geometry/measure"
	"rodsheet/templates"
)

// A Layout is how a job is to stand on paper. Lengths are in mm.
type Layout struct {
	Paper     Paper
	Margin    float64 // blank at each side of a sheet
	Overlap   float64 // the strip that neighbouring tiles share
	Unit      measure.Unit
	Title     string // overrides the job's own
	Remark    string // a line of its own at the foot of every sheet; may be empty
	Imprint   string // small at the foot of every sheet: whose it is; may be empty
	MaxSheets int
	Correct   Correction // of the printer the job is meant for
	Plain     bool       // the plain grid: no sheet turned on its side, no tile dropped
	Only      []int      // the sheets to draw, from 1; none: all
	Milled    bool       // draw only what hangs on the sizes as milled
}

const (
	gap          = 4.0            // between blocks on a sheet
	room         = 8.0            // kept free round the strokes of a drawing for its labels
	railWidth    = 7.2            // the strip on the left with the upright rule
	levelHeight  = 8.5            // the strip with the level rule and the words beside it
	ruleLength   = 101.6          // 4 in; the 100 mm rule shares its zero
	leastOverlap = 4 * markRadius // so that a tile shows whole marks
	wholeLimit   = 5000           // longest side of a page: PDF stops at 14 400 pt = 5080 mm
	footText     = 72             // what the words beside the level rule need
)

// MostSheets is what one job may take at most: numbers of sheets have room for
// four figures.
const MostSheets = 9999

// DefaultLayout returns the layout used when nothing else is said. Printers
// leave 4 to 6 mm blank, so the margin is 8 mm.
func DefaultLayout(u measure.Unit, p Paper) Layout {
	return Layout{Paper: p, Margin: 8, Overlap: 15, Unit: u, MaxSheets: 400}
}

// Check reports the first figure of l that leaves no room for a job: a
// *measure.BoundError.
func (l Layout) Check() error {
	short, long := math.Min(l.Paper.Width, l.Paper.Height), math.Max(l.Paper.Width, l.Paper.Height)
	if l.Paper.Whole {
		short, long = wholeLimit, wholeLimit
	}
	mm := measure.Length
	clear := l.inset().clear()
	return cmp.Or(
		measure.AtMost("paper", mm(long), "page.longest", mm(wholeLimit), ""),
		measure.NotNegative("margin", mm(l.Margin)),
		measure.Below("margin", mm(l.Margin), "paper.half", mm(short/2), "margin.usual"),
		l.inset().checkSize(),
		measure.AtLeast("overlap", mm(l.Overlap), "", mm(leastOverlap), "overlap.marks"),
		l.checkOverlap(clear),
		measure.AtLeast("max-sheets", measure.Number(float64(l.MaxSheets)), "", measure.Number(1), ""),
		measure.AtMost("max-sheets", measure.Number(float64(l.MaxSheets)), "", measure.Number(MostSheets), ""),
	)
}

// checkSize keeps room for the calibration square beside the rules.
func (l Layout) checkSize() error {
	if l.Paper.Whole {
		return nil
	}
	const hint = "paper.square-and-rules"
	side := calibrationSide(l.Unit)
	return cmp.Or(
		measure.AtLeast("paper.width", measure.Length(l.Paper.Width), "",
			measure.Length(2*l.Margin+railWidth+side), hint),
		measure.AtLeast("paper.height", measure.Length(l.Paper.Height), "",
			measure.Length(2*l.Margin+l.footHeight()+side+captionHeight(1)), hint),
	)
}

// checkOverlap keeps the strips that a tile shares on both sides apart.
func (l Layout) checkOverlap(clear geometry.Point) error {
	if l.Paper.Whole {
		return measure.AtMost("overlap", measure.Length(l.Overlap), "", measure.Length(wholeLimit), "")
	}
	half := (math.Min(clear.X, clear.Y) - captionHeight(2)) / 2
	return measure.AtMost("overlap", measure.Length(l.Overlap), "tile.half", measure.Length(half), "")
}

// calibrationSide is what the calibration square takes on a sheet, with its
// labels and its caption.
func calibrationSide(u measure.Unit) float64 { return templates.CalibrationSide(u) + 2*room }

// clear is the width and height left for blocks. On whole paper it has no
// bound.
func (l Layout) clear() geometry.Point {
	if l.Paper.Whole {
		return geometry.Pt(math.Inf(1), math.Inf(1))
	}
	return geometry.Pt(
		l.Paper.Width-2*l.Margin-railWidth,
		l.Paper.Height-2*l.Margin-l.footHeight(),
	)
}

// Clear returns the width and height that one sheet offers the strokes of a
// drawing.
func (l Layout) Clear() geometry.Point {
	c := l.inset().clear()
	return geometry.Pt(c.X-2*room, c.Y-2*room-captionHeight(2))
}
