// Package design reads design files: the few decisions that fix a whole piece,
// its wood and the saw that is to make it.
package design

import (
	"rodsheet/geometry"
	"rodsheet/geometry/joint"
	"rodsheet/geometry/measure"
)

// A Design holds the decisions for one size of a piece. Lengths are in mm and
// angles in radians.
type Design struct {
	Title string
	Size  string       // its name, "" where the file has one size only
	Kind  Kind         // which of the decisions below hold
	Unit  measure.Unit // in which its figures are printed
	// Written is the unit of the file: by its round sizes the piece is judged, in whatever
	// unit it is printed.
	Written measure.Unit
	Plan    Plan
	Ring    Ring
	Legs    Legs
	Top     Top
	Wood    Wood
	Saw     Saw
	Milled  Milled
	Frame   Frame // of the kind aprons
	Box     Box
	Seat    Seat // of the kind seat
	Items   []Item
	Prices  Prices
}

// A Kind is a family of pieces. Each has decisions of its own in a Design; title, plan,
// wood, saw, items and prices are those of all kinds.
type Kind uint8

// The kinds of piece, in the order of schemas.
const (
	RingKind   Kind = iota // stretchers lapped to a ring, splayed legs in bridles, a top
	ApronsKind             // aprons between legs that lean out, a top
	BoxKind                // sides that slope, a bottom
	SeatKind               // a slab on staked legs
)

// A Plan says whose drawing it is; each of its texts may be empty.
type Plan struct {
	Maker, Date, Revision string
	Note                  string // or terms of use
}

// An Item is bought ready made.
type Item struct {
	Name, Note string
	Count      int // for one piece
	Price      Price
}

// A Price is that of one of what it is for; Given is false where none is known.
type Price struct {
	Value float64
	Given bool
}

// Prices are those of what is bought by volume or area.
type Prices struct {
	Currency    string // as it is printed before a sum, or ""
	Wood, Glass Rate
}

// A Rate is the price of a cubic metre of wood and of a square metre of glass or,
// where its unit is the inch, of a board foot and of a square foot.
type Rate struct {
	Price
	Unit measure.Unit
}

// BoardFoot is the wood of a board 1 ft long, 1 ft wide and 1 in thick, in mm³;
// SquareFoot is in mm².
const (
	BoardFoot  = 144 * measure.MillimetresPerInch * measure.MillimetresPerInch * measure.MillimetresPerInch
	SquareFoot = 144 * measure.MillimetresPerInch * measure.MillimetresPerInch
)

// OfVolume returns what so many mm³ cost.
func (r Rate) OfVolume(mm3 float64) float64 {
	if r.Unit == measure.Inch {
		return r.Value * mm3 / BoardFoot
	}
	return r.Value * mm3 / 1e9
}

// OfArea returns what so many mm² cost.
func (r Rate) OfArea(mm2 float64) float64 {
	if r.Unit == measure.Inch {
		return r.Value * mm2 / SquareFoot
	}
	return r.Value * mm2 / 1e6
}

// A Ring is the frame: equal stretchers lapped end over end. At one end, the
// leg end, a stretcher runs on to its leg; the other is its plain end.
type Ring struct {
	joint.Ring
	// LegEndOver says that a stretcher passes over its neighbour at its leg
	// end, and so under the other neighbour at its plain end.
	LegEndOver bool
	Plain      PlainEnd
	// Horn is what the plain end runs past the outermost point of the
	// neighbour's outer side; 0 where it is flush.
	Horn float64
	// Slack is the play, square to the lap, that a closed plain end leaves; 0
	// for the others.
	Slack float64
}

// PlainEnd says how the end without a leg is cut.
type PlainEnd uint8

const (
	FlushEnd  PlainEnd = iota // in line with the neighbour's outer side
	OpenEnd                   // square, past the neighbour by the horn; the lap runs out to the end
	ClosedEnd                 // square, past the neighbour by the horn; the lap has an outer shoulder
)

// Legs are alike, one a stretcher, each splayed in the plane of its stretcher
// and joined to its leg end by a bridle.
type Legs struct {
	Breadth float64 // along the stretcher, square to the leg
	// Tenon is the thickness of the bridle's tenon; 0 is a third of the width.
	Tenon   float64
	Mortise joint.BridleMember
	Lean    Lean
	Given   float64 // what Lean says: an angle, or a length
	Height  float64
	To      HeightTo
	// At is the distance from mid-length of the stretcher to the back of
	// the leg, on the stretcher's top; 0 stands for the least that leaves Clear
	// between the leg and the neighbour.
	At    float64
	Clear float64
	Proud float64 // the head is left this much above the frame; 0 is trimmed flush
	Taper *Taper  // nil: the leg keeps its section
}

// Lean says which decision fixes the splay; the others follow from it.
type Lean uint8

const (
	BySplay      Lean = iota // Given is the splay from plumb
	ByFootCircle             // Given is the diameter of the circle through the middles of the backs of the feet
	ByFootSpread             // Given is the distance between those middles of neighbouring feet
)

// HeightTo says from where Height is counted down to the floor.
type HeightTo uint8

const (
	ToFrame HeightTo = iota // the top of the stretchers
	Overall                 // the top of the top
)

// A Taper narrows a leg from Start, below its head along the leg, to Foot.
type Taper struct {
	Start, Foot float64
	Faces       joint.TaperFaces
}

// A Top lies on pads over the ring, or straight on it.
type Top struct {
	Kind      TopKind
	Outline   TopOutline
	Thickness float64
	// Diameter is that of a round top. Overhang is what the others stand past
	// the outer sides of the ring; for a round top without a diameter it is
	// counted from the corners of the ring.
	Diameter, Overhang float64
	Corner             Corner
	CornerSize         float64          // radius, or length of the clip along a side
	Points             []geometry.Point // of a free outline, about the centre of the ring
	Pads               Pads
	Fixing             Fixing
}

// A Fixing holds the top down.
type Fixing struct {
	Kind  FixingKind // of a wooden top
	Screw float64    // length; 0: as it follows from what it goes through
	Bond  Bond       // of glass to pads or frame; bumpers stick by themselves
}

// FixingKind says how a wooden top is held and still free to move.
type FixingKind uint8

const (
	NoFixing FixingKind = iota
	Screws              // through round and slotted holes in the stretchers
	Buttons             // screwed under the top, hooked into grooves of the stretchers
)

// Bond says what glass sticks by.
type Bond uint8

const (
	NoBond Bond = iota
	Silicone
)

type TopKind uint8

const (
	NoTop TopKind = iota
	GlassTop
	WoodTop
)

type TopOutline uint8

const (
	RoundTop    TopOutline = iota
	RingTop                // the ring's polygon, moved outward
	FreeOutline            // Points
)

// Corner says how the corners of a top are worked.
type Corner uint8

const (
	SharpCorner Corner = iota
	ClippedCorner
	RoundedCorner
)

// Pads hold the top off the frame: one on each stretcher, its centre on the
// stretcher's centre line. None where Diameter is 0.
type Pads struct {
	Diameter, Height float64
	// At is from mid-length to the centre of the pad, towards the leg; Outermost
	// puts it as far out as it stays on its own stretcher instead.
	At        float64
	Outermost bool
	Bumpers   bool // bought, soft and stuck on, not turned from wood
}

// PadHeight returns what the pads hold the top off the frame, mm; 0 where
// there is no top or no pads.
func (t Top) PadHeight() float64 {
	if t.Kind == NoTop || t.Pads.Diameter == 0 {
		return 0
	}
	return t.Pads.Height
}

// Wood says what the frame is made of and how much more to prepare.
type Wood struct {
	Species string
	Density float64 // kg/m³; 0: the species' own, from the table
	// Rough allowances, added to the finished sizes.
	ExtraLength, ExtraWidth, ExtraThickness float64
	Spares, Tests                           int     // of each part, over all sizes alike
	MoistureFrom, MoistureTo                float64 // per cent, between which the movement is stated
	Waste                                   float64 // share of the volume to buy on top, 0.25 for a quarter
	Boards                                  []Board
}

// A Board is rough stock at hand.
type Board struct {
	Length, Width, Thickness float64
	Count                    int
}

// Saw holds what the settings depend on.
type Saw struct {
	Kerf      float64
	FlatTooth bool    // leaves a flat bottom
	Highest   float64 // most the blade rises; 0: not stated
	Dado      float64 // widest dado set; 0: none
	StopReach float64 // farthest the stop can stand from the blade; 0: not stated
	// FromFence says that the mitre gauge reads from the fence and not from
	// square.
	FromFence bool
}

// Milled holds sizes as they came out; they replace the designed ones
// wherever a saw is set. 0 stands for as designed.
type Milled struct {
	Width, Depth, Breadth, Kerf float64
}
