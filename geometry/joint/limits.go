package joint

import (
	"cmp"
	"math"
	"sync"

	"rodsheet/geometry/measure"
)

// What a workshop handles, and what keeps a slip of the keyboard from printing a
// thousand sheets (common practice, no source), in mm.
const (
	widestStock  = 1000
	longestPart  = 10000
	longestTaper = 3000
	widestTaper  = 600
	shortestSide = 1   // of a top: a shorter one is a slip
	flattestRise = 0.1 // of an arc: half the width of a pencil line
)

// mostCorners is where a polygon is better set out as a circle.
const mostCorners = 36

// LapFlattest is the flattest crossing of a lap, in rad: a flatter one runs out
// along the part more than five times its width and leaves feather edges.
// LapSteepest is the same on the other hand.
const (
	LapFlattest = 10 * math.Pi / 180
	LapSteepest = math.Pi - LapFlattest
)

// LeanSteepest is the largest lean from plumb in rad: beyond it a leg is more
// than twice as long as the piece is high, and its joint runs more than twice the
// breadth of the leg along the stretcher.
const LeanSteepest = math.Pi / 3

// leastResultant is the least lean that has a sightline, in rad: a smaller one is bored
// square.
const leastResultant = math.Pi / 360

// sawSteepest is the largest tilt of a blade, in rad (common practice, no source).
const sawSteepest = math.Pi / 4

// cornerFlattest is the flattest slope of a side, in rad: what is flatter is a flat frame.
const cornerFlattest = math.Pi / 180

// DovetailFlattest and DovetailSteepest bound the sides of a tail: a flatter one
// holds no better than a comb joint, the corners of a steeper one are short grain and
// break (common practice, no source). 1:6 to 1:8 is usual.
var (
	DovetailFlattest = math.Atan(1.0 / 16)
	DovetailSteepest = math.Atan(1.0 / 4)
)

// A limit bounds a figure by plain numbers: least ≤ value ≤ most, or < where that
// end is open. The hints say what to do below and above.
type limit struct {
	of                func(float64) measure.Quantity
	least, most       float64
	openLow, openHigh bool
	below, above      measure.ID
}

// limits holds every figure that a plain number bounds. What one figure of a
// joint sets for another stands in that joint's Check.
var limits = sync.OnceValue(func() map[measure.ID]limit {
	more := func(of func(float64) measure.Quantity, most float64) limit {
		return limit{of: of, most: most, openLow: true}
	}
	length, angle, number, unbounded := measure.Length, measure.Angle, measure.Number, math.Inf(1)
	stock, part := more(length, widestStock), more(length, longestPart)
	lean := limit{of: angle, most: LeanSteepest, above: "lean.from-plumb"}
	moisture := limit{of: number, least: MoistureLeast, most: MoistureMost, below: "movement.in-per-cent", above: "movement.dry-first"}
	return map[measure.ID]limit{
		"lap.width": stock, "lap.crossing-width": stock, "lap.depth": stock,
		"lap.angle": {of: angle, least: LapFlattest, most: LapSteepest, below: "lap.angle-between", above: "lap.angle-between"},
		"lap.kerf":  more(length, unbounded),
		"lap.at":    {of: length, most: longestPart},

		"bridle.width": stock, "bridle.depth": stock, "bridle.leg": stock,
		"bridle.splay":   lean,
		"bridle.tenon":   {of: length, most: unbounded},
		"bridle.mortise": {of: number, most: float64(MortiseInLeg)},

		"dovetail.width": stock, "dovetail.tail-board": stock, "dovetail.pin-board": stock,
		"dovetail.slope":       {of: angle, least: DovetailFlattest, most: DovetailSteepest, below: "dovetail.slope-usual", above: "dovetail.slope-usual"},
		"dovetail.tails":       {of: number, least: 1, most: MostTails},
		"dovetail.pin":         {of: length, least: thinnestPin, most: widestStock},
		"dovetail.half-pin":    {of: length, least: thinnestPin, most: widestStock},
		"dovetail.lap":         {of: length, most: unbounded},
		"dovetail.corner":      {of: angle, least: math.Pi / 4, most: 5 * math.Pi / 6, above: "corner.inside"},
		"dovetail.board-slope": {of: angle, least: math.Pi / 6, most: math.Pi / 2, below: "corner.from-level", above: "corner.from-level"},

		"mortise.width": stock, "mortise.depth": stock, "mortise.leg": stock, "mortise.leg-width": stock,
		"mortise.splay": lean, "mortise.rake": lean,
		"mortise.turn":  {of: angle, least: -LeanSteepest, most: LeanSteepest},
		"mortise.edge":  {of: angle, most: LeanSteepest, above: "mortise.less-turn"},
		"mortise.tenon": {of: length, most: unbounded}, "mortise.length": {of: length, most: unbounded},
		"mortise.lower": {of: length, most: unbounded}, "mortise.upper": {of: length, most: unbounded},
		"mortise.haunch":        {of: number, most: float64(SlopingHaunch)},
		"mortise.haunch-length": {of: length, most: unbounded},
		"mortise.inset":         {of: length, most: widestStock}, "mortise.from-head": {of: length, most: longestPart},

		"ring.stretchers": {of: number, least: RingFewest, most: RingMost},
		"ring.inside":     part, "ring.width": stock, "ring.depth": stock,

		"leg.breadth": stock, "leg.thickness": stock, "leg.height": part, "leg.at": part,
		"leg.splay": lean, "leg.rake": lean, "leg.resultant": lean,
		"staked.height": {of: length, most: longestPart}, "staked.in": {of: length, most: widestStock},
		"leg.sightline": {of: angle, most: math.Pi / 2, above: "leg.sightline-to-side"},
		"frame.head":    more(length, unbounded),

		"taper.length": more(length, longestTaper), "taper.top": more(length, widestTaper),
		"taper.foot":  more(length, unbounded),
		"taper.start": {of: length, most: unbounded},
		"taper.faces": {of: number, most: float64(FourFaces)},

		"polygon.sides":   {of: number, least: 3, most: mostCorners, above: "polygon.as-circle"},
		"polygon.apothem": part,

		"outline.diameter": part,
		"outline.corners":  {of: number, least: 3, most: unbounded},
		"outline.reach":    {of: length, most: longestPart},
		"outline.side":     {of: length, least: shortestSide, most: unbounded, below: "outline.leave-out-corner"},
		"outline.turns":    {of: number, most: 1, above: "outline.sides-cross"},
		"outline.clip":     {of: length, most: unbounded},
		"outline.round":    {of: length, most: unbounded},

		"glass.area":      more(measure.Area, unbounded),
		"glass.thickness": {of: length, least: glassThinnest, most: glassThickest},

		"movement.width":       part,
		"movement.coefficient": {of: number, most: mostCoefficient, openLow: true, above: "movement.per-cent"},
		"movement.from":        moisture, "movement.to": moisture,

		"segment.chord": part, "segment.radius": more(length, unbounded),
		"segment.seen": {of: angle, least: math.Pi/2 - 1e-9, most: math.Pi, below: "segment.point-between"}, // less rounding
		"segment.rise": {of: length, least: flattestRise, most: unbounded, below: "segment.straight"},

		"oval.length": part, "oval.width": part,
		"oval.end-radius": {of: length, least: shortestSide, most: unbounded, below: "oval.pointed"},
		"oval.inset":      {of: length, most: unbounded},

		"segments.pieces": {of: number, least: 3, most: mostCorners}, "segments.outer": part, "segments.inner": part,
		"segments.board": stock, "segments.kerf": more(length, unbounded),
		"staves.pieces": {of: number, least: 3, most: mostCorners}, "staves.top": part, "staves.bottom": part,
		"staves.height": part, "staves.thickness": stock,

		"hopper.sides": {of: number, least: 3, most: 12, above: "hopper.as-staves"},
		"hopper.tilt":  {of: angle, most: sawSteepest, above: "hopper.no-saw"},

		"corner.slope":      {of: angle, least: cornerFlattest, most: math.Pi / 2, below: "corner.as-flat", above: "corner.from-level"},
		"corner.angle":      {of: angle, most: math.Pi, openLow: true, openHigh: true, above: "corner.inside"},
		"corner.off-square": {of: angle, most: math.Pi / 2, openHigh: true},
		"corner.tilt":       {of: angle, most: math.Pi / 2, openHigh: true},
	}
})

// within returns a *measure.BoundError for a value outside the limits of a
// figure.
func within(figure measure.ID, value float64) error {
	l := limits()[figure]
	low, high := measure.AtLeast, measure.AtMost
	if l.openLow {
		low = measure.Above
	}
	if l.openHigh {
		high = measure.Below
	}
	return cmp.Or(
		low(figure, l.of(value), "", l.of(l.least), l.below),
		high(figure, l.of(value), "", l.of(l.most), l.above),
	)
}
