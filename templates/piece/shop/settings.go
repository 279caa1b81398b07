package shop

import (
	"math"

	"rodsheet/geometry/measure"
	"rodsheet/templates/piece"
)

// An operation is what is done in one step. Steps stand in rising Op, except
// where one setting of the saw serves several: laps and open ends come blade
// height by blade height, ends and shoulders at the splay angle by angle.
type operation uint8

const (
	doMill operation = iota
	doMeasure
	doCrosscut
	doTestLap
	doCutLap
	doOpenEnd
	doDryRing
	doSawEnd // at the splay
	doSawBlocks
	doKnifeShoulders
	doCutSlot
	doCutCheeks
	doCutShoulders
	doFitBridle
	doSawFoot
	doCutTaper
	doTrimPlainEnd
	doDryTrimmedRing // of one that goes together only then
	doGlueLegs
	doTrimHeads
	doGlueRing
	doFitPads
	doFitTop
)

// A stage is a part of the work that has a heading of its own.
type stage uint8

const (
	stockStage stage = iota
	lapStage
	bridleStage
	taperStage
	glueStage
)

// stage returns the part of the work that the step belongs to.
func (o operation) stage() stage {
	switch {
	case o < doTestLap:
		return stockStage
	case o < doSawEnd:
		return lapStage
	case o < doSawFoot:
		return bridleStage
	case o < doGlueLegs:
		return taperStage
	}
	return glueStage
}

func (s stage) String() string {
	switch s {
	case stockStage:
		return "stock"
	case lapStage:
		return "laps"
	case bridleStage:
		return "bridle joints"
	case taperStage:
		return "feet, tapers, plain ends"
	case glueStage:
		return "glue-up and after"
	}
	return "unknown"
}

// A batch is the parts of one size that a step is done to.
type batch struct {
	Part, Size           string
	Count, Spares, Tests int
	// For says which sizes a part serves that is not of one size alone.
	For string
}

// how says what a part is held against at the saw.
type how uint8

const (
	onGauge how = iota // flat on the table, an edge on the mitre gauge's fence
	upright            // in the upright jig, on its end
	onTaper            // in the tapering jig
)

// A sawCut is how the saw stands for one step. Lengths in mm, angles in rad.
type sawCut struct {
	How     how
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
	// Along is how far a second line stands from the first, along the edge, where
	// there is no spacer; 0 for none.
	Along float64
	// Beyond says that the stop does not reach so far, ByHand that the blade
	// does not rise so high, or cuts too wide.
	Beyond, ByHand bool
}

// edge returns the angle that a gauge shows which reads from the fence.
func (c sawCut) edge() float64 { return math.Pi/2 - c.Square }

// handWork is what a step says where it is done by hand: all that is not empty
// stands in the place of what it says of the saw.
type handWork struct {
	Then, Once []string
	Test       string
	Line       float64 // from From, where that is not what the stop says
	From       string
}

// A step is one row of the settings list.
type step struct {
	Op          operation
	Name        string // "laps, both ends"
	Parts       []batch
	Down, Fence string  // the face that lies down and the edge on the fence
	Cut         *sawCut // nil for work away from the saw
	Then        []string
	Once        []string // reasons, given at the first step of its kind only
	Test        string   // what a test cut or a check must show
	Caution     string   // given once in the list
	Hand        handWork
	unit        measure.Unit
	fromFence   bool
}

// A batchedPiece is one size with the parts it brings to every step.
type batchedPiece struct {
	piece.Piece
	stretchers, legs, topBoards batch
	tested                      bool // there are test pieces of its sections
	// blocks are those of its own, and those it shares with later sizes.
	blocks []batchedBlock
}

// A batchedBlock is a block with the parts it brings to its step.
type batchedBlock struct {
	Block
	batch batch
}
