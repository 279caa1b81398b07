package shop

import (
	"math"
	"slices"

	"rodsheet/geometry"
	"rodsheet/geometry/measure"
	"rodsheet/templates/piece"
	"rodsheet/templates/piece/design"
)

// A Hole is one place where a wooden top is held from below, on the centre line of
// a stretcher.
type Hole struct {
	Stretcher int     // from 0
	At        float64 // from mid-length, above 0 towards the leg end, mm
	Off       float64 // from the middle line of the top, across its grain, mm
	Slotted   bool    // the top moves there
}

// A Fixing is how a wooden top is held down and still free to move across its grain:
// fast on its middle line, sliding everywhere else. Lengths in mm.
type Fixing struct {
	Kind  design.FixingKind
	Holes []Hole
	Screw float64 // its length
	Bore  float64 // how deep its head is let into the underside of the stretcher, 0 for not at all
	Bite  float64 // how far it goes into the top
	Play  float64 // what the top moves at the farthest hole, either way
}

// fixingSizes are round sizes in mm (common practice, no source): screws of 4 mm or
// No. 8, the hole that lets them through, that for their heads, that for their thread in
// hard wood and in soft, about their core; the wood that is left
// under a head, at least and where it can be chosen; how thick a button is; how near
// holes stand to each other and to the shoulder of a lap.
type fixingSizes struct {
	shank, head      float64
	core, softCore   float64
	left, leastLeft  float64
	button           float64
	apart, toLap     float64
	firm             float64 // a movement that a round hole still allows
	lengths          []float64
	longRing, groove float64 // of a ring with two holes on each stretcher; from its top to the groove of buttons
}

func sizesOfFixings(u measure.Unit) fixingSizes {
	lengths := []float64{16, 20, 25, 30, 35, 40, 45, 50, 60, 70, 80, 90, 100}
	if u == measure.Inch {
		for i, in := range []float64{0.625, 0.75, 1, 1.25, 1.5, 1.75, 2, 2.25, 2.5, 2.75, 3, 3.5, 4} {
			lengths[i] = in * measure.MillimetresPerInch
		}
	}
	return fixingSizes{
		shank: u.Round(4.5, 3.0/16), head: u.Round(10, 3.0/8), core: u.Round(3, 1.0/8), softCore: u.Round(2.5, 7.0/64),
		left: u.Round(25, 1), leastLeft: u.Round(12, 1.0/2), button: u.Round(12, 1.0/2),
		apart: u.Round(40, 1.5), toLap: u.Round(15, 5.0/8), firm: u.Round(0.5, 1.0/64),
		lengths: lengths, longRing: u.Round(200, 8), groove: u.Round(10, 3.0/8),
	}
}

// FixingOf returns how the top of a piece is held down, and whether anything does.
func FixingOf(p piece.Piece) (Fixing, bool) {
	kind := p.Design.Top.Fixing.Kind
	if p.Design.Top.Kind != design.WoodTop || kind == design.NoFixing {
		return Fixing{}, false
	}
	f := Fixing{Kind: kind, Holes: holes(p)}
	for _, h := range f.Holes {
		if h.Slotted {
			f.Play = math.Max(f.Play, topMoves(p, h.Off))
		}
	}
	f.screw(p)
	return f, true
}

// topMoves returns what the top moves at a place so far from its middle line. Where
// the wood is not known it is taken for a hundredth (common practice, no source).
func topMoves(p piece.Piece, off float64) float64 {
	share := 0.01
	if wood, known := p.Design.Wood.Known(); known && p.Design.Wood.MoistureFrom != p.Design.Wood.MoistureTo {
		share = p.Swings(wood, 1).Most()
	}
	return share * math.Abs(off)
}

// screw works out the screw. It goes no farther into the top than two thirds of it
// (common practice, no source); so far a longer head hole pulls it back. The longest
// that the shop sells is taken, up to what leaves no more wood under the head than is
// wanted.
func (f *Fixing) screw(p piece.Piece) {
	s, deepest := sizesOfFixings(p.Design.Unit), p.Design.Top.Thickness*2/3
	depth := p.Frame.Ring.Depth
	wanted, least, gap := math.Min(s.left, depth), math.Min(s.leastLeft, depth), p.Design.Top.PadHeight()
	if f.Kind == design.Buttons {
		wanted, least, depth, gap = s.button, s.button, s.button, 0
	}
	f.Screw = p.Design.Top.Fixing.Screw
	if f.Screw == 0 {
		for _, long := range s.lengths {
			if f.Screw == 0 || long <= wanted+gap+deepest+piece.Slip {
				f.Screw = long
			}
		}
	}
	left := math.Min(depth, math.Max(least, p.WholeUp(f.Screw-gap-deepest)))
	f.Bore, f.Bite = depth-left, f.Screw-gap-left
}

// holes returns the places on every stretcher, in their order along it. The middle
// line of the top runs along its grain through the centre of the ring; where it
// crosses a stretcher, or as near to that as the lap allows, the top is held fast. The
// others stand at quarter points, of a short stretcher at mid-length.
func holes(p piece.Piece) []Hole {
	s, r := sizesOfFixings(p.Design.Unit), p.Frame.Ring
	reach := math.Max(0, p.WholeDown(HoleReach(p)-s.toLap))
	var out []Hole
	for i := range r.Sides {
		ats := []float64{}
		if at, ok := middleOn(p, i); ok {
			ats = append(ats, math.Max(-reach, math.Min(reach, at)))
		}
		others := []float64{0}
		if r.Inside >= s.longRing {
			quarter := p.WholeDown(r.Inside / 4)
			others = []float64{-quarter, quarter}
		}
		for _, at := range others {
			if !slices.ContainsFunc(ats, func(other float64) bool { return math.Abs(other-at) < s.apart }) {
				ats = append(ats, at)
			}
		}
		slices.Sort(ats)
		for _, at := range ats {
			off := offMiddle(p, i, at)
			out = append(out, Hole{i, at, off, topMoves(p, off) > s.firm})
		}
	}
	return out
}

// HoleReach returns how far from mid-length the nearer shoulder of a lap stands, on
// the centre line of the stretcher.
func HoleReach(p piece.Piece) float64 {
	shoulder, _ := p.Frame.Ring.Shoulders(p.Frame.Ring.Width / 2)
	return shoulder
}

// offMiddle returns how far a place on the centre line of stretcher i lies from the
// middle line of the top.
func offMiddle(p piece.Piece, i int, at float64) float64 {
	q := p.Frame.Ring.Place(i, 0).Apply(geometry.Pt(at, p.Frame.Ring.Width/2))
	return q.Dot(p.TopAlong().Perp())
}

// middleOn returns where the middle line crosses the centre line of stretcher i, and
// whether it does so between the middles of its two laps.
func middleOn(p piece.Piece, i int) (at float64, ok bool) {
	off := offMiddle(p, i, 0)
	rise := offMiddle(p, i, 1) - off
	if math.Abs(rise) < 1e-9 {
		return 0, false
	}
	at = -off / rise
	half := p.Frame.Ring.Polygon().Offset(p.Frame.Ring.Width/2).Side() / 2
	return at, math.Abs(at) <= half+piece.Slip
}

// SlotAngle returns the corner that the slots of a stretcher make with its edge:
// they run across the grain of the top.
func SlotAngle(p piece.Piece, stretcher int) float64 {
	along := math.Abs(offMiddle(p, stretcher, 1) - offMiddle(p, stretcher, 0))
	return math.Acos(math.Min(1, along))
}

// Slot returns how long a slot is for the shank of a screw, and HeadSlot for its head:
// the top may move either way. Both are as wide as a round hole.
func (f Fixing) Slot(p piece.Piece) float64 {
	return p.WholeUp(sizesOfFixings(p.Design.Unit).shank + 2*f.Play)
}

func (f Fixing) HeadSlot(p piece.Piece) float64 {
	return p.WholeUp(sizesOfFixings(p.Design.Unit).head + 2*f.Play)
}

// Across returns how much of the width of its stretcher a hole takes. A slot of length
// l and width d that leans by a to the edge takes d + (l − d)·sin a.
func (f Fixing) Across(p piece.Piece, h Hole) float64 {
	wide, long := sizesOfFixings(p.Design.Unit).head, f.HeadSlot(p)
	if f.Bore == 0 {
		wide, long = sizesOfFixings(p.Design.Unit).shank, f.Slot(p)
	}
	if !h.Slotted {
		return wide
	}
	return wide + (long-wide)*math.Sin(SlotAngle(p, h.Stretcher))
}

func drillFixings(p sized) (row, bool) {
	f, ok := FixingOf(p.Piece)
	s := sizesOfFixings(p.Design.Unit)
	then := notes(note("fixings-by-table"), note("drill-through", length(s.shank)))
	if f.Bore > 0 {
		then = notes(note("fixings-by-table"), note("bore-and-drill", length(s.head), length(f.Bore), length(s.shank)))
	}
	if f.Play > 0 {
		then = then.with(note("drill-slots", length(f.Slot(p.Piece))))
		if f.Bore > 0 {
			then = then.with(note("bore-slots", length(f.HeadSlot(p.Piece))))
		}
	}
	return plain(Operation{
		Do: DrillFixings, What: note("step.drill-fixings"), Then: then,
		Test: note("screw-stands-out", length(f.Bite), length(p.Design.Top.Thickness)), Caution: "clamp-to-drill",
	}, p.stretchers.real()), ok && f.Kind == design.Screws
}

// ButtonGroove returns what the tongues of buttons go into: how far below the top of its
// part, how high, how deep at least, and how much of the depth is left to a tongue that the
// top has drawn out (common practice, no source).
func ButtonGroove(u measure.Unit) (below, high, least, bite float64) {
	return sizesOfFixings(u).groove, u.Round(6, 1.0/4), u.Round(8, 5.0/16), u.Round(3, 1.0/8)
}

func grooveFixings(p sized) (row, bool) {
	f, ok := FixingOf(p.Piece)
	u := p.Design.Unit
	below, high, least, bite := ButtonGroove(u)
	deep := math.Max(least, p.WholeUp(2*f.Play+bite))
	return plain(Operation{
		Do: DrillFixings, What: note("step.groove-fixings"),
		Then: notes(
			note("mortise-buttons", length(below), length(high), length(deep)),
			note("mortise-long", length(p.WholeUp(u.Round(30, 1.25)+2*f.Play))), note("fixings-by-table"),
		),
		Test: note("button-pulls"), Caution: "clamp-to-drill",
	}, p.stretchers.real()), ok && f.Kind == design.Buttons
}

// fixed says how the top is held, behind where it lies.
func fixed(p piece.Piece) []Note {
	f, ok := FixingOf(p)
	s := sizesOfFixings(p.Design.Unit)
	pilot := note("pilot-holes", length(s.core), length(s.softCore), length(f.Bite))
	switch bond := p.Design.Top.Fixing.Bond; {
	case ok && f.Kind == design.Buttons:
		return []Note{note("buttons-up", number(len(f.Holes)), length(f.Screw)), pilot}
	case ok:
		return []Note{note("screws-up", number(len(f.Holes)), length(f.Screw)), pilot}
	case p.Design.Top.Kind == design.WoodTop:
		return []Note{note("fix-free")}
	case bond == design.Silicone:
		return []Note{note("glass-last"), note("silicone-bond")}
	}
	return []Note{note("glass-last"), note("lies-loose")}
}

// A WareKind is what is bought ready made. From WoodGlue on it is bought as it is needed.
type WareKind uint8

const (
	TopScrew WareKind = iota
	TopButton
	Silicone
	WoodGlue
	JigScrew
	Abrasive // of the grits that the cards name
	TopCoat
)

// A Ware is so many of a thing that is bought, 0 where no count follows from the design.
type Ware struct {
	What   WareKind
	Count  int
	Length float64 // of a screw, mm
}

// Wares returns what holds the tops of all sizes, and what the cards use up.
func Wares(pieces []piece.Piece) []Ware {
	var out []Ware
	for _, p := range pieces {
		f, ok := FixingOf(p)
		if ok {
			out = append(out, Ware{TopScrew, len(f.Holes), f.Screw})
		}
		if f.Kind == design.Buttons {
			out = append(out, Ware{What: TopButton, Count: len(f.Holes)})
		}
		if p.Design.Top.Kind == design.GlassTop && p.Design.Top.Fixing.Bond == design.Silicone && len(out) == 0 {
			out = append(out, Ware{What: Silicone, Count: 1})
		}
	}
	if len(Jigs(pieces)) > 0 {
		return withUsedUp(out, WoodGlue, JigScrew, Abrasive, TopCoat)
	}
	return withUsedUp(out, WoodGlue, Abrasive, TopCoat)
}

// withUsedUp puts wares that are alike on one line, and what the cards use up below them.
func withUsedUp(wares []Ware, usedUp ...WareKind) []Ware {
	var out []Ware
	for _, w := range wares {
		out = merged(out, w, func(o Ware) bool { return o.What == w.What && o.Length == w.Length }, func(o *Ware) { o.Count += w.Count })
	}
	for _, what := range usedUp {
		out = append(out, Ware{What: what})
	}
	return out
}
