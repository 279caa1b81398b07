package piece

import (
	"math"

	"rodsheet/geometry/measure"
)

// An Op is what is done in one step. Steps stand in rising Op, except where one
// setting of the saw serves several: laps and open ends come blade height by
// blade height, ends and shoulders at the splay angle by angle.
type Op uint8

const (
	Mill Op = iota
	Measure
	Crosscut
	TestLap
	CutLap
	OpenEnd
	DryRing
	SawEnd // at the splay
	SawBlocks
	KnifeShoulders
	CutSlot
	CutCheeks
	CutShoulders
	FitBridle
	SawFoot
	CutTaper
	TrimPlainEnd
	DryTrimmedRing // of one that goes together only then
	GlueLegs
	TrimHeads
	GlueRing
	FitPads
	FitTop
)

// A Stage is a part of the work that has a heading of its own.
type Stage uint8

const (
	StockStage Stage = iota
	LapStage
	BridleStage
	TaperStage
	GlueStage
)

// Stage returns the part of the work that the step belongs to.
func (o Op) Stage() Stage {
	switch {
	case o < TestLap:
		return StockStage
	case o < SawEnd:
		return LapStage
	case o < SawFoot:
		return BridleStage
	case o < GlueLegs:
		return TaperStage
	}
	return GlueStage
}

func (s Stage) String() string {
	switch s {
	case StockStage:
		return "stock"
	case LapStage:
		return "laps"
	case BridleStage:
		return "bridle joints"
	case TaperStage:
		return "feet, tapers, plain ends"
	case GlueStage:
		return "glue-up and after"
	}
	return "unknown"
}

// A Batch is the parts of one size that a step is done to.
type Batch struct {
	Part, Size           string
	Count, Spares, Tests int
}

// How says what a part is held against at the saw.
type How uint8

const (
	OnGauge How = iota // flat on the table, an edge on the mitre gauge's fence
	Upright            // in the upright jig, on its end
	OnTaper            // in the tapering jig
)

// A Cut is how the saw stands for one step. Lengths in mm, angles in rad.
type Cut struct {
	How     How
	Square  float64 // on the gauge, from square; in a jig, between part and jig
	Toward  string  // which way the gauge swings; empty where it is square
	Tilt    float64
	Height  float64 // of the blade above the table
	Through bool    // the blade comes through the part
	// Stop is from the nearest edge of the blade along the fence, in the
	// upright jig from its face; Against is what touches it. 0 for none.
	Stop    float64
	Against string
	Spacer  float64 // between part and stop for the second cut; 0 for none
	Line    float64 // instead of a stop, to a line so far from From; 0 for none
	From    string
	// Beyond says that the stop does not reach so far, ByHand that the blade
	// does not rise so high, or cuts too wide.
	Beyond, ByHand bool
}

// Edge returns the angle that a gauge shows which reads from the fence.
func (c Cut) Edge() float64 { return math.Pi/2 - c.Square }

// A Step is one row of the settings list.
type Step struct {
	Op          Op
	Name        string // "laps, both ends"
	Parts       []Batch
	Down, Fence string // the face that lies down and the edge on the fence
	Cut         *Cut   // nil for work away from the saw
	Then        []string
	Once        []string // reasons, given at the first step of its kind only
	Test        string   // what a test cut or a check must show
	Caution     string   // given once in the list
	unit        measure.Unit
	fromFence   bool
}

// A batchedPiece is one size with the parts it brings to every step.
type batchedPiece struct {
	Piece
	stretchers, legs, topBoards Batch
}
