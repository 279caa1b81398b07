package shop

import (
	"math"
	"slices"

	"rodsheet/geometry"
	"rodsheet/geometry/lists"
	"rodsheet/geometry/measure"
	"rodsheet/templates/piece"
	"rodsheet/templates/piece/design"
)

// A Hole is one place where a wooden top is held from below, on the centre line of
// a part of its frame.
type Hole struct {
	Part    int     // from 0, as its Line says
	At      float64 // from mid-length, of a stretcher above 0 towards the leg end, mm
	Off     float64 // from the middle line of the top, across its grain, mm
	Lean    float64 // of a slot to the edge of the part: it runs across the grain of the top
	Leans   Face    // the end that a leaning slot is nearer to at the outer side of a stretcher
	Slotted bool    // the top moves there
}

// A Line is the centre line of a part that holds a wooden top, in plan, mm.
type Line struct {
	Part int
	// Off is how far its mid-length lies from the middle line of the top, Rise how much
	// farther each mm along it.
	Off, Rise float64
	Out       float64   // what Rise is along the part, square to it towards the outer side
	Reach     float64   // how far from mid-length a hole may stand
	Half      float64   // how far it runs from mid-length itself
	Others    []float64 // where holes stand beside that on the middle line
}

// A Hold says what a wooden top is held to, and from how far below. Lengths in mm.
type Hold struct {
	Kind  design.FixingKind
	Lines []Line
	Depth float64 // of the parts, along the screw
	Gap   float64 // from them up to the top
	Top   float64 // its thickness
	Screw float64 // its length where it is given
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
	top := p.Design.Top
	if top.Kind != design.WoodTop || top.Fixing.Kind == design.NoFixing {
		return Fixing{}, false
	}
	return Hold{
		Kind: top.Fixing.Kind, Lines: lines(p), Depth: p.Frame.Ring.Depth, Gap: top.PadHeight(), Top: top.Thickness, Screw: top.Fixing.Screw,
	}.Fixing(p.Design), true
}

// Fixing works out holes and screws.
func (h Hold) Fixing(d design.Design) Fixing {
	f, share := Fixing{Kind: h.Kind}, TopShare(d)
	for _, l := range h.Lines {
		f.Holes = append(f.Holes, l.holes(sizesOfFixings(d.Unit), share)...)
	}
	for _, hole := range f.Holes {
		if hole.Slotted {
			f.Play = math.Max(f.Play, share*math.Abs(hole.Off))
		}
	}
	f.screw(d.Unit, h)
	return f
}

// TopShare returns what a top moves for each mm from its middle line. Where the wood is
// not known it is taken for a hundredth (common practice, no source).
func TopShare(d design.Design) float64 {
	if wood, known := d.Wood.Known(); known && d.Wood.MoistureFrom != d.Wood.MoistureTo {
		return piece.Piece{Design: d}.Swings(wood, 1).Most()
	}
	return 0.01
}

// screw works out the screw. It goes no farther into the top than two thirds of it
// (common practice, no source); so far a longer head hole pulls it back. The longest
// that the shop sells is taken, up to what leaves no more wood under the head than is
// wanted.
func (f *Fixing) screw(u measure.Unit, h Hold) {
	s, deepest := sizesOfFixings(u), h.Top*2/3
	depth, gap := h.Depth, h.Gap
	wanted, least := math.Min(s.left, depth), math.Min(s.leastLeft, depth)
	if f.Kind == design.Buttons {
		wanted, least, depth, gap = s.button, s.button, s.button, 0
	}
	f.Screw = h.Screw
	if f.Screw == 0 {
		for _, long := range s.lengths {
			if f.Screw == 0 || long <= wanted+gap+deepest+piece.Slip {
				f.Screw = long
			}
		}
	}
	left := math.Min(depth, math.Max(least, piece.WholeUp(u, f.Screw-gap-deepest)))
	f.Bore, f.Bite = depth-left, f.Screw-gap-left
}

// lines are the centre lines of the stretchers. Holes stand at their quarter points, of a
// short stretcher at mid-length.
func lines(p piece.Piece) []Line {
	s, r, across := sizesOfFixings(p.Design.Unit), p.Frame.Ring, p.TopAlong().Perp()
	// off is how far a place on the centre line lies from the middle line of the top.
	off := func(i int, at float64) float64 {
		return r.Place(i, 0).Apply(geometry.Pt(at, r.Width/2)).Dot(across)
	}
	others := []float64{0}
	if r.Inside >= s.longRing {
		quarter := p.WholeDown(r.Inside / 4)
		others = []float64{-quarter, quarter}
	}
	var all []Line
	reach := ToShoulder(p.Design.Unit, HoleReach(p))
	if p.Design.Top.Fixing.Kind == design.Buttons {
		reach = math.Min(reach, mortiseReach(p))
	}
	for i := range r.Sides {
		out := r.Place(i, 0).Apply(geometry.Pt(0, 1)).Sub(r.Place(i, 0).Apply(geometry.Pt(0, 0)))
		all = append(all, Line{
			Part: i, Off: off(i, 0), Rise: off(i, 1) - off(i, 0), Out: out.Dot(across), Others: others,
			Reach: reach, Half: r.Polygon().Offset(r.Width/2).Side() / 2,
		})
	}
	return all
}

// holes returns the places on one part, in their order along it. The middle line of the
// top runs along its grain through the centre of the frame; where it crosses a part, or as
// near to that as the joints allow, the top is held fast.
func (l Line) holes(s fixingSizes, share float64) []Hole {
	var ats []float64
	if at, ok := l.middle(); ok {
		ats = append(ats, math.Max(-l.Reach, math.Min(l.Reach, at)))
	}
	for _, at := range l.Others {
		if !slices.ContainsFunc(ats, func(other float64) bool { return math.Abs(other-at) < s.apart }) {
			ats = append(ats, at)
		}
	}
	slices.Sort(ats)
	var out []Hole
	lean := math.Acos(math.Min(1, math.Abs(l.Rise)))
	for _, at := range ats {
		off := l.Off + at*l.Rise
		out = append(out, Hole{l.Part, at, off, lean, l.leans(), share*math.Abs(off) > s.firm})
	}
	return out
}

// leans returns the end towards which the line across the grain runs on its way to the
// outer side; none where it runs along the part or square to it.
func (l Line) leans() Face {
	switch side := l.Rise * l.Out; {
	case side > 1e-9:
		return LegEnd
	case side < -1e-9:
		return PlainEnd
	}
	return NoFace
}

// middle returns where the middle line of the top crosses the centre line of the part, and
// whether it does so at all.
func (l Line) middle() (at float64, ok bool) {
	if math.Abs(l.Rise) < 1e-9 {
		return 0, false
	}
	at = -l.Off / l.Rise
	return at, math.Abs(at) <= l.Half+piece.Slip
}

// ToShoulder returns how far from mid-length a hole may stand, with the shoulder so far.
func ToShoulder(u measure.Unit, shoulder float64) float64 {
	return math.Max(0, -piece.WholeUp(u, sizesOfFixings(u).toLap-shoulder))
}

// mortiseReach returns how far from mid-length a button's mortise may stand: what is left
// between its end and the lap, which leans over the width, is as much as beside a hole. The
// top moves nowhere more than in the corners of the centre lines.
func mortiseReach(p piece.Piece) float64 {
	r, u := p.Frame.Ring, p.Design.Unit
	ringSide, _ := r.Shoulders(0)
	outer, _ := r.Shoulders(r.Width)
	middle := r.Polygon().Offset(r.Width / 2)
	play := TopShare(p.Design) * math.Hypot(middle.Apothem, middle.Side()/2)
	return math.Max(0, math.Min(ringSide, outer)-mortiseLong(p, play)/2-u.Round(5, 3.0/16))
}

// mortiseLong returns the length of the mortise of a button that moves so far either way
// (common practice, no source).
func mortiseLong(p piece.Piece, play float64) float64 {
	return p.WholeUp(p.Design.Unit.Round(30, 1.25) + 2*play)
}

// HoleReach returns how far from mid-length the nearer shoulder of a lap stands, on
// the centre line of the stretcher.
func HoleReach(p piece.Piece) float64 {
	shoulder, _ := p.Frame.Ring.Shoulders(p.Frame.Ring.Width / 2)
	return shoulder
}

// Slot returns how long a slot is for the shank of a screw, and HeadSlot for its head:
// the top may move either way. Both are as wide as a round hole.
func (f Fixing) Slot(u measure.Unit) float64 {
	return piece.WholeUp(u, sizesOfFixings(u).shank+2*f.Play)
}

func (f Fixing) HeadSlot(u measure.Unit) float64 {
	return piece.WholeUp(u, sizesOfFixings(u).head+2*f.Play)
}

// Bits returns the widths of the holes for shank and head.
func Bits(u measure.Unit) (shank, head float64) {
	s := sizesOfFixings(u)
	return s.shank, s.head
}

// Pilots returns the widths of the holes for the thread, in hard wood and in soft.
func Pilots(u measure.Unit) (hard, soft float64) {
	s := sizesOfFixings(u)
	return s.core, s.softCore
}

// Across returns how much of the width of its part a hole takes. A slot of length
// l and width d that leans by a to the edge takes d + (l − d)·sin a.
func (f Fixing) Across(u measure.Unit, h Hole) float64 {
	wide, long := sizesOfFixings(u).head, f.HeadSlot(u)
	if f.Bore == 0 {
		wide, long = sizesOfFixings(u).shank, f.Slot(u)
	}
	if !h.Slotted {
		return wide
	}
	return wide + (long-wide)*math.Sin(h.Lean)
}

func drillFixings(p sized) (row, bool) {
	f, ok := FixingOf(p.Piece)
	s := sizesOfFixings(p.Design.Unit)
	then := notes(note("fixings-by-table"), note("drill-through", length(s.shank)))
	if f.Bore > 0 {
		then = notes(note("fixings-by-table"), note("bore-and-drill", length(s.head), length(f.Bore), length(s.shank)))
	}
	if f.Play > 0 {
		then = then.with(note("drill-slots", length(f.Slot(p.Design.Unit))))
		if f.Bore > 0 {
			then = then.with(note("bore-slots", length(f.HeadSlot(p.Design.Unit))))
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

// ButtonSize returns how wide and long a button is, its tongue with it (common practice, no
// source).
func ButtonSize(u measure.Unit) (wide, long float64) { return u.Round(25, 1), u.Round(40, 1.5) }

func grooveFixings(p sized) (row, bool) {
	f, ok := FixingOf(p.Piece)
	u := p.Design.Unit
	below, high, least, bite := ButtonGroove(u)
	deep := math.Max(least, p.WholeUp(2*f.Play+bite))
	return plain(Operation{
		Do: DrillFixings, What: note("step.groove-fixings"),
		Then: notes(
			note("mortise-buttons", length(below), length(high), length(deep)),
			note("mortise-long", length(mortiseLong(p.Piece, f.Play))), note("fixings-by-table"),
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
	GlueUpScrap // what the ring is glued up on and clamped with
)

// A Ware is so many of a thing that is bought, 0 where no count follows from the design.
type Ware struct {
	What   WareKind
	Count  int
	Length float64 // of a screw or a button, mm; how far the board of the glue-up reaches across
	// Width and Thickness are those of a button, its tongue with it.
	Width, Thickness float64
}

// Wares returns what holds the tops of all sizes, and what the cards use up.
func Wares(pieces []piece.Piece) []Ware {
	var out []Ware
	for _, p := range pieces {
		f, ok := FixingOf(p)
		if ok {
			out = append(out, Ware{What: TopScrew, Count: len(f.Holes), Length: f.Screw})
		}
		if f.Kind == design.Buttons {
			wide, long := ButtonSize(p.Design.Unit)
			out = append(out, Ware{TopButton, len(f.Holes), long, wide, sizesOfFixings(p.Design.Unit).button})
		}
		if p.Design.Top.Kind == design.GlassTop && p.Design.Top.Fixing.Bond == design.Silicone && len(out) == 0 {
			out = append(out, Ware{What: Silicone, Count: 1})
		}
	}
	usedUp := []WareKind{WoodGlue, Abrasive, TopCoat}
	if len(Jigs(pieces)) > 0 {
		usedUp = []WareKind{WoodGlue, JigScrew, Abrasive, TopCoat}
	}
	return append(withUsedUp(out, usedUp...), Ware{What: GlueUpScrap, Length: lists.Most(pieces, glueBoard)})
}

// glueBoard returns how far a board reaches across on which a ring is glued up: under all
// of its ends, and under the blocks and wedges outside the middle of every stretcher.
func glueBoard(p piece.Piece) float64 {
	outside := p.Frame.Ring.Polygon().Offset(p.Frame.Ring.Width).Apothem
	wedges := p.Design.Unit.Round(100, 4) // with their block (common practice, no source)
	ends := math.Hypot(outside, math.Max(p.PlainReach, p.LegReach))
	return jigSizes(p).up(2 * math.Max(ends, outside+wedges))
}

// withUsedUp puts wares that are alike on one line, and what the cards use up below them.
func withUsedUp(wares []Ware, usedUp ...WareKind) []Ware {
	var out []Ware
	thing := func(w Ware) Ware { w.Count = 0; return w }
	for _, w := range wares {
		out = merged(out, w, func(o Ware) bool { return thing(o) == thing(w) }, func(o *Ware) { o.Count += w.Count })
	}
	for _, what := range usedUp {
		out = append(out, Ware{What: what})
	}
	return out
}
