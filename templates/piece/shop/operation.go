package shop

import (
	"math"

	"rodsheet/geometry/joint"
	"rodsheet/geometry/measure"
)

// A Do is what is done in one step.
type Do uint8

const (
	Mill Do = iota
	Measure
	GluePanel
	Crosscut
	TestLap
	CutLap
	OpenEnd
	DryRing
	SawEnd // at the splay
	MakeJigs
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
	DrillFixings // and what else the top is held by
	FitPads
	SawTop
	FitTop
	Sand
	Finish
	ChangeBlade
)

// A Stage is a part of the work that has a heading of its own.
type Stage uint8

const (
	StockStage Stage = iota
	LapStage
	BridleStage
	TaperStage
	TopStage
	GlueStage
	FinishStage
)

// A Part is a kind of thing that is sawn, bought or fitted.
type Part uint8

const (
	Stretcher Part = iota + 1
	Leg
	TopBoard
	Top
	TestPiece // of any stock
	StretcherTest
	LegTest
	StretcherStick // sawn up into blocks, of the section of a stretcher
	LegStick
	BlockStick // of a section of its own
	Pad
	Bumper
	FillerStrip
	LegCaul
	EndCaul
	FoldingWedge
	TenoningJig
	TenoningJigFace
	TenoningJigBase
	TenoningJigBracket
	TenoningJigCleat
	LapSled
	LapSledBase
	LapSledFence
	LapSledBridge
	LapSledStop
	LapSledCover
	LapSledRunner
	SpacerBlock
	TaperSled
	TaperSledBase
	TaperSledFence
	TaperSledStop
	Apron // of a frame, all alike
	FrontApron
	SideApron
	FrontStretcher
	SideStretcher
	BoxSide
	BoxLongSide
	BoxEnd
	BoxSpline
	BoxWedge
	BoxBottom
	SeatBoard
	FrontLeg
	InnerFrontLeg
	BackLeg
	InnerBackLeg
	MiddleLeg
	InnerMiddleLeg
	SeatWedge
)

// A Source is what a part is sawn from.
type Source uint8

const (
	Bought          Source = iota // a board, as its own blank
	StretcherSticks               // block sticks, planed with the stretchers
	LegSticks                     // planed with the legs
	BlockSticks                   // planed by themselves
	TaperOffcuts
	Sheets // flat sheet, for jigs
)

// A Face is a face, edge or end of a part. The reference edge is the ring side
// of a stretcher and the back of a leg.
type Face uint8

const (
	NoFace Face = iota
	UpperFace
	Underside
	RingSide
	OuterSide
	StretcherSide
	Back
	LegEnd
	PlainEnd
	Head
	Foot
	RoughEnd    // the sawn end that a part stands on in the tenoning jig
	OppositeCut // the straight edge across from a tapered face
)

// A Point is what a distance along a part is counted from.
type Point uint8

const (
	NoPoint Point = iota
	SquaredEnd
	StretcherEnd // whichever end the lap is cut at
	ThePlainEnd
	FootEnd
	SawnHead
	HeadCorner // the long one, away from the fence
	JigFace    // to the near side of the blade
	EitherFace
)

// A Datum says where a distance is counted from and along which edge, NoFace
// where that is the one on the fence, or any.
type Datum struct {
	Point Point
	Along Face
	Inner bool // the distance is that of a lap's inner shoulder
}

// A How says what a part is held against at the saw.
type How uint8

const (
	AwayFromSaw How = iota
	OnGauge         // flat on the table, an edge on the mitre gauge's fence
	OnEnd           // in the tenoning jig
	OnTaper         // in the tapering jig
)

// A Reason says why a cut is made by hand.
type Reason uint8

const (
	AtSaw Reason = iota // it is not
	BladeTooLow
	SlotTooNarrow
)

// A Cut is how the saw stands for one step. Lengths in mm, angles in rad.
//
// Frame of the saw: x along the fence away from the stop, which stands at 0; y
// from the fence over the table. The side of the blade nearer the stop meets the
// fence at x = Stop and stands y·tan OffSquare farther at y, or nearer: farther
// where Longer is the edge away from the fence. What a cut that comes through leaves
// beyond the blade is waste; where there is a Line, what it leaves on the side of the
// end that the line is counted from, but of a block that is the block itself.
type Cut struct {
	How       How
	OffSquare float64 // on the gauge; in a jig, between part and jig
	// Longer is the edge along which the blade stands farther from the stop, or
	// from the point that Line is counted from; NoFace for a square cut.
	Longer  Face
	Tilt    float64
	Height  float64 // of the blade above the table
	Through bool    // the blade comes through the part
	// Stop is from the nearest edge of the blade along the fence, in the
	// tenoning jig from its face; At is what touches it. 0 for none.
	Stop   float64
	At     Datum
	Spacer float64 // between part and stop for the second cut; 0 for none
	// Passes says that the wood between the first cut and the last goes too, or
	// from the line out to the end.
	Passes bool
	Line   float64 // instead of a stop, to a line so far from From; 0 for none
	From   Datum
	// Along is how far a second line stands from the first, along the edge, where
	// there is no spacer; 0 for none.
	Along  float64
	Beyond bool // the stop does not reach so far
	By     Reason
}

// Bevel returns the corner that a bevel gauge encloses for this cut.
func (c Cut) Bevel() float64 { return math.Pi/2 - c.OffSquare }

// Depth returns how far the cut reaches along the edge of the part: a cut that is
// square to an end at OffSquare stands Height/cos OffSquare from it there.
func (c Cut) Depth() float64 { return c.Height / math.Cos(c.OffSquare) }

// ByHand reports whether the cut is made away from the saw.
func (c Cut) ByHand() bool { return c.By != AtSaw }

// A Lie is one way a part lies at the saw: the face down, the edge on the fence
// or the face on the jig, and the end at the stop.
type Lie struct{ Down, Fence, Rest Face }

// An Operation is what is done in one step: what it is, how the part lies and
// the saw stands, and what else there is to know. Two of equal value are one.
type Operation struct {
	Do      Do
	What    Note   // what it is called, with its figures
	Lies    [2]Lie // one after the other; the second is empty where there is one only
	From    Source // what the part is sawn from, for blocks
	Cut     Cut
	Then    Notes
	Test    Note // what a test cut or a check must show
	Caution NoteID
	Heed    Note // a caution with figures
	// Past is how far a top of free outline stands past each stretcher.
	Past Overhangs
}

// Overhangs are how far the edge of a top stands past the ring, at mid-length of
// each stretcher's outer side and at the outer corner by its leg end.
type Overhangs struct {
	Stretchers     int
	Sides, Corners [joint.RingMost]float64
}

// A Batch is the parts of one size that a step is done to.
type Batch struct {
	Part                 Part
	Size                 string
	Count, Spares, Tests int
	OtherEnd             bool // the test pieces are those of another joint, their other end
	// For holds the sizes that a part serves which is not of one size alone.
	For []string
}

// A Step is an operation with the parts it is done to.
type Step struct {
	Operation
	Stage Stage
	Parts []Batch
	// Saw is the same as the saw would do it: what the wood loses, also by hand.
	Saw Operation
	// Left is what it leaves at its line, mm, where the setting of a neighbour serves
	// it too: it is pared away.
	Left float64
}

// An Arg is a figure or a name that a note holds.
type Arg struct {
	Is     ArgKind
	Figure measure.Quantity
	Face   Face
	Part   Part
	Extras Extras
}

// An ArgKind says which of its fields an Arg holds.
type ArgKind uint8

const (
	NoArg ArgKind = iota
	FigureArg
	FaceArg
	PartArg
	ExtrasArg
)

func figure(q measure.Quantity) Arg { return Arg{Is: FigureArg, Figure: q} }
func length(mm float64) Arg         { return figure(measure.Length(mm)) }
func angle(rad float64) Arg         { return figure(measure.Angle(rad)) }
func number(n int) Arg              { return figure(measure.Number(float64(n))) }
func face(f Face) Arg               { return Arg{Is: FaceArg, Face: f} }
func called(p Part) Arg             { return Arg{Is: PartArg, Part: p} }
func along(e Extras) Arg            { return Arg{Is: ExtrasArg, Extras: e} }

// A NoteID says which one of all the things to know a note is; those that begin
// with "step." are what steps are called. Package wording has a sentence for each.
type NoteID measure.ID

// A Note is one thing to know of a step, with its figures.
type Note struct {
	ID   NoteID
	Args [3]Arg
}

func note(id NoteID, args ...Arg) Note {
	n := Note{ID: id}
	if copy(n.Args[:], args) < len(args) {
		panic(id) // more figures than a note holds
	}
	return n
}

// Notes are the things to know of a step in their order, the empty ones last.
type Notes [6]Note

func notes(all ...Note) Notes { return Notes{}.with(all...) }

// with puts notes behind those there are, leaving out empty ones.
func (n Notes) with(more ...Note) Notes {
	at := n.len()
	for _, m := range more {
		if m.ID != "" {
			n[at] = m
			at++
		}
	}
	return n
}

func (n Notes) len() int {
	for i, v := range n {
		if v.ID == "" {
			return i
		}
	}
	return len(n)
}

// All returns the notes that there are.
func (n Notes) All() []Note { return n[:n.len()] }

// Steps that differ by less than a card prints are one: 0.01 mm and 0.01°.
const (
	lengthGrid = 0.01
	angleGrid  = 0.01 * math.Pi / 180
)

// on returns a figure on a grid.
func on(grid, v float64) float64 { return grid * math.Round(v/grid) }

// putOn puts figures on a grid.
func putOn(grid float64, figures ...*float64) {
	for _, v := range figures {
		*v = on(grid, *v)
	}
}

func (n Note) onGrid() Note {
	for i := range n.Args {
		switch f := &n.Args[i].Figure; f.Kind {
		case measure.KindLength:
			putOn(lengthGrid, &f.Value)
		case measure.KindAngle:
			putOn(angleGrid, &f.Value)
		}
	}
	return n
}

func (n Notes) onGrid() Notes {
	for i := range n {
		n[i] = n[i].onGrid()
	}
	return n
}

// setting returns the operation with its figures on the grid: what two steps are
// compared by.
func (o Operation) setting() Operation {
	o.What, o.Then, o.Test, o.Heed = o.What.onGrid(), o.Then.onGrid(), o.Test.onGrid(), o.Heed.onGrid()
	putOn(lengthGrid, &o.Cut.Height, &o.Cut.Stop, &o.Cut.Spacer, &o.Cut.Line, &o.Cut.Along)
	putOn(angleGrid, &o.Cut.OffSquare, &o.Cut.Tilt)
	for i := range o.Past.Sides {
		putOn(lengthGrid, &o.Past.Sides[i], &o.Past.Corners[i])
	}
	return o
}

// anyStop returns the cut without what the end of the part comes to.
func (c Cut) anyStop() Cut {
	c.Stop, c.Line, c.Beyond = 0, 0, false
	return c
}
