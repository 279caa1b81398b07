package seat

import (
	"cmp"
	"math"
	"slices"

	"rodsheet/geometry/lists"
	"rodsheet/geometry/solid"
	"rodsheet/templates/piece"
	"rodsheet/templates/piece/design"
)

// What the cards say, as values: a test that follows them bores, saws and turns solids by
// nothing else.

// A boring is the hole of one sort of leg.
type boring struct {
	sort
	upper     bool    // bored from the upper face
	aside     float64 // from the centre line to the middle of the hole, either side
	forward   float64 // from the middle of the seat, forward of the front row; radius of a circle
	count     int     // of the row, or the circle
	sightline float64 // from the fore-and-aft line, forward or backward, to its side
	resultant float64
	bit       float64 // diameter; of a reamed hole that of its narrow end
	pilot     float64 // that of the bit to take: of a reamed hole a usual one, no larger
	large     float64 // diameter of a reamed hole on the axis at the underside; 0: not reamed
	reamer    float64 // included angle
	depth     float64 // along the bit on its axis, from the face that is bored; 0: right through
}

// boring returns what a leg of a sort is bored by.
func (s Seat) boring(l leg) boring {
	m, row := s.design.Seat.Mortise, s.row(l.sort.row)
	b := boring{
		sort: l.sort, upper: m.Upper, aside: math.Abs(l.at.X), forward: row.From, count: row.Legs,
		sightline: l.lean.Sightline(), resultant: l.lean.Resultant(), bit: m.Diameter, reamer: m.Taper,
	}
	if m.Taper > 0 {
		b.large, b.bit = m.Diameter, 2*s.radius(l, s.tip(l))
	}
	b.pilot = b.bit
	if step := s.unit().Round(1, 1.0/16); m.Taper > 0 && b.bit > step {
		b.pilot = math.Floor(b.bit/step) * step
	}
	if m.Depth > 0 {
		b.depth = math.Abs(s.tip(l))
	}
	return b
}

// A turning is a leg as it is made on the bench, before the tip is cut flush and the foot
// level. Lengths run down from the tip of the blank.
type turning struct {
	sort
	section   design.LegSection
	blank     piece.StockSize
	over      float64 // of the tip above the middle of the upper face, to cut flush
	shoulder  float64 // from the tip to where the tenon begins
	tip, root float64 // diameters of the tenon at the tip of the blank and at the shoulder
	size      float64 // across the flats at the shoulder
	end       float64 // the same at the end of the blank, below the foot
}

func (s Seat) turning(l leg) turning {
	t := turning{sort: l.sort, section: s.design.Seat.Legs.Section, size: s.design.Seat.Legs.Size}
	tip := s.tip(l)
	if s.design.Seat.Mortise.Depth == 0 {
		t.over = s.unit().Round(12, 1.0/2) + s.radius(l, tip)*math.Tan(l.lean.Resultant())
	}
	top, shoulder := tip-t.over, s.shoulder(l)
	// The slope of the sole, and what is left to be scribed and sawn off.
	end := l.foot + s.size(l, l.foot)/2*math.Tan(l.stake.FromPlumb()) + s.unit().Round(20, 3.0/4)
	t.shoulder, t.tip, t.root = shoulder-top, 2*s.radius(l, top), 2*s.radius(l, shoulder)
	t.end = s.size(l, end)
	t.blank = piece.StockSize{Length: end - top, Width: t.size, Thickness: t.size}
	return t
}

// A rodTurning is a stretcher as it is turned: from tip to tip, between its shoulders, and
// how long the tenon of either end is.
type rodTurning struct {
	whole, between float64
	tenons         [2]float64
}

func (r rod) turning() rodTurning {
	var t rodTurning
	t.whole, t.between = r.length()
	for i, e := range r.ends {
		t.tenons[i] = e.shoulder - e.surface + e.hole
	}
	return t
}

// A rodBoring is the hole for a stretcher in a leg, or in another stretcher.
type rodBoring struct {
	rod, end int
	along    float64 // in a leg from its shoulder to the middle of the hole, in a stretcher from mid-length
	lean     float64 // between the stretcher and what it enters, towards the foot of a leg, rad
	turn     float64 // round a leg from its outer side, counter-clockwise as seen from its foot, rad
	depth    float64 // from the surface
}

// rodBoring returns the hole for an end of a stretcher.
func (s Seat) rodBoring(i, end int) rodBoring {
	r := s.rods[i]
	e, u := r.ends[end], r.along(end)
	b := rodBoring{rod: i, end: end, depth: e.hole}
	if r.kind == crossRod {
		b.lean = math.Acos(u.Dot(s.rods[e.into].along(0)))
		return b
	}
	l := s.legs[e.into]
	m := l.frame()
	b.along = e.at.Sub(l.at).Dot(l.axis) - s.shoulder(l)
	b.lean = math.Acos(u.Dot(m.Z))
	// z runs down to the foot: who looks from there, against z, sees x turn to y
	// counter-clockwise.
	b.turn = math.Atan2(u.Dot(m.Y), u.Dot(m.X))
	return b
}

// A wedging is what splits and holds a through tenon: the slot's depth from the tip of
// each sort of leg, in the order of sorts, and one size of wedge for all.
type wedging struct {
	slots            []float64
	wide, long, head float64
}

// slotShare is how far the slot reaches down the mortise from the upper face of the seat
// (common practice, no source).
const slotShare = 2.0 / 3

// wedging returns the wedge that goes into every slot without reaching its bottom. It is as
// wide as the narrowest tip: it enters there, and the hole is nowhere narrower.
func (s Seat) wedging() wedging {
	w := wedging{wide: math.Inf(1), head: s.unit().Round(4, 3.0/16)}
	for _, l := range s.sorts() {
		t := s.turning(l)
		w.slots = append(w.slots, t.over+slotShare*s.thickness()/math.Cos(l.lean.Resultant()))
		w.wide = math.Min(w.wide, t.tip)
	}
	step, room := s.unit().Round(1, 1.0/16), s.unit().Round(6, 1.0/4)
	w.long = math.Floor((slices.Min(w.slots)-room)/step) * step
	return w
}

// A levelling says how the seat is blocked up before the feet are scribed: its upper face
// so high over the table at the front edge and at the back edge, and the pencil so high.
type levelling struct{ front, back, pencil float64 }

// levelling lifts every foot clear of the table, by room for a wedge at least.
func (s Seat) levelling() levelling {
	k := s.design.Seat
	lowest := lists.Most(s.sorts(), s.below)
	step, room := s.unit().Round(5, 1.0/8), s.unit().Round(3, 1.0/8)
	up := math.Ceil((lowest+room)/step) * step
	return levelling{k.Height + up, cmp.Or(k.BackHeight, k.Height) + up, up}
}

// below returns how far a leg reaches below the floor before its foot is cut: the lowest
// corner of the end of its blank, which is square to the axis.
func (s Seat) below(l leg) float64 {
	t, low := s.turning(l), 0.0
	end := s.tip(l) - t.over + t.blank.Length
	n, m := flats(t.section), l.frame()
	for _, p := range ring(n, across(n, t.end, t.section == design.RoundLeg)) {
		low = math.Max(low, -s.height(m.Apply(solid.V(p.X, p.Y, end))))
	}
	return low
}

// boards returns those that the slab is glued up from, alike, their grain as decided: no wider
// than 150 mm or 6 in (common practice, no source).
func (s Seat) boards() (board piece.StockSize, count int) {
	box := s.box.Size()
	long, wide := box.X, box.Y
	if s.design.Seat.FrontToBack {
		long, wide = wide, long
	}
	count = int(math.Ceil(wide/s.unit().Round(150, 6) - 1e-9))
	return piece.StockSize{Length: long, Width: wide / float64(count), Thickness: s.thickness()}, count
}

// grain returns the direction of the grain of the slab.
func (s Seat) grain() solid.Vec {
	if s.design.Seat.FrontToBack {
		return solid.V(0, 1, 0)
	}
	return solid.V(1, 0, 0)
}

// mass returns that of all parts in kg. The outline and the mortises of the slab are
// reckoned as they are, not as the solids are that are drawn.
func (s Seat) mass() float64 { return s.built().volume * piece.DensityOf(*s.design) / 1e9 }
